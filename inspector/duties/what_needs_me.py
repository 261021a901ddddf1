"""Everything that waits for the equipment officer, read in one go: what the window's first page shows."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta

from msgspec.structs import replace

from inspector.duties.before_use import may_go
from inspector.duties.due_days import is_lost, open_incidents, waits_to_be_destroyed
from inspector.duties.field_copies import field_copies
from inspector.duties.forecast_ends import Ends
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import unfit_lines, waiting_lines
from inspector.duties.tell_readiness import days_words
from inspector.duties.trip_readiness import Ready, readiness
from inspector.duties.what_falls_due import Held, due_lines, held
from inspector.duties.who import register_name
from inspector.duties.work_rigs import kit_lacks
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.needs import (
    Backed,
    Ending,
    HeldPiece,
    IncidentLine,
    NeedLine,
    Needs,
    RetiredPiece,
    TripGlance,
    Work,
    WorkGroup,
)
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Trip
from inspector.refused import Refused
from inspector.register.lists import Asked
from inspector.register.page import Page
from inspector.rulebook.wording import cautions

SOON_DAYS = 30  # what the first page calls soon: the next few evenings in the shed; no piece is held by it
_COPIES = ("back up", "hand over", "restore")  # deeds after which a copy of all before them is known to exist
_WORK = {
    Due.FIRST_INSPECTION: Work.INSPECT,
    Due.INSPECTION: Work.INSPECT,
    Due.READING: Work.READ,
    Due.WALL: Work.READ,
    Due.LOAN: Work.BACK,
    Due.BACK: Work.BACK,
    Due.VERDICT: Work.JUDGE,
    Due.COMPETENCE: Work.PEOPLE,
    Due.TRIP: Work.TRIPS,
    Due.ANSWER: Work.ANSWERS,
}
_LOOKS = {Due.FIRST_INSPECTION, Due.INSPECTION, Due.READING, Due.WALL}


def what_needs_me(office: Office) -> Needs:
    """What waits today, what falls due within SOON_DAYS, and which pieces time alone will end."""
    with office.book.reading() as page:
        passed = _Passed(office)
        lines = due_lines(office, page, passed.by(held(office, page)), date.max)
        planned = _next_trip(office, page)
        found = _Found(office, passed, lines, planned)
        return Needs(
            on=office.today,
            club=register_name(page),
            piece_count=sum(page.outcome_counts(Asked()).values()),
            rulebook=(*waiting_lines(office), *unfit_lines(office)),
            trip=_glance(office, planned) if planned else None,
            held=found.held(),
            late=found.late(),
            incidents=tuple(_incidents(page, passed.asking)),
            counts=tuple(one for one in lines if one.what is Due.COUNT),
            recalls=tuple(one for one in lines if one.what is Due.RECALL),
            retired=found.retired(),
            work=found.work(),
            endings=passed.endings(),
            backup=_backed(office, page),
            next_due=found.next_due(),
            cautions=cautions(office.rules),
        )


class _Passed:
    """What is kept of every piece as it passes by: whole only those that are held or retired."""

    def __init__(self, office: Office) -> None:
        self._ends = Ends(office)
        self.outcomes: dict[str, Outcome] = {}
        self.asking: list[Held] = []

    def by(self, pieces: Iterable[Held]) -> Iterator[Held]:
        """The pieces, one after the other."""
        for one in pieces:
            self.outcomes[one.item.tag] = one.verdict.outcome
            self._ends.note(one)
            if one.verdict.outcome in {Outcome.HOLD, Outcome.RETIRE} or one.kept_by:
                self.asking.append(one)
            yield one

    def endings(self) -> tuple[Ending, ...]:
        """Which of them time alone will end."""
        return self._ends.found()


class _Found:
    """Pieces and lines of the calendar, sorted by what they ask of the officer."""

    def __init__(self, office: Office, passed: _Passed, lines: tuple[DueLine, ...], planned: Trip | None) -> None:
        self._today, self._soon = office.today, office.today + timedelta(days=SOON_DAYS)
        self._pieces, self._lines = passed.asking, lines
        self._trip = planned.ref if planned else ""
        self._outcomes = passed.outcomes
        self._on_hold = [one for one in self._pieces if one.verdict.outcome is Outcome.HOLD and not is_lost(one.where)]

    def held(self) -> tuple[HeldPiece, ...]:
        """Every piece on hold that the club has; what serves nobody first. What is missing stands among the late."""
        return tuple(sorted(map(_held_piece, self._on_hold), key=lambda one: (one.serves, one.tag)))

    def late(self) -> tuple[NeedLine, ...]:
        """What is not at hand, and what is overdue to come back; the longest first."""
        return self._needs(one for one in self._lines if self._is_late(one))

    def _is_late(self, one: DueLine) -> bool:
        overdue = one.what in {Due.LOAN, Due.BACK} and one.overdue_days(self._today) > 0
        return one.what is Due.MISSING or overdue

    def work(self) -> tuple[WorkGroup, ...]:
        """What is overdue or due soon, by sort of work; each group that has any line."""
        groups: dict[Work, list[DueLine]] = {one: [] for one in Work}
        soon = [one for one in self._lines if one.what in _WORK and (one.on is None or one.on <= self._soon)]
        held_back = {one.item.tag for one in self._on_hold}
        looked_at = {one.about for one in soon if one.what in _LOOKS} | held_back
        for one in soon:
            if not (self._is_late(one) or self._is_told(one, held_back, looked_at)):
                groups[_WORK[one.what]].append(one)
        return tuple(WorkGroup(work, self._needs(some)) for work, some in groups.items() if some)

    def _is_told(self, one: DueLine, held_back: set[str], looked_at: set[str]) -> bool:
        """Whether another line of the page says the same: the trip's own, a hold's, or a look's that comes first."""
        if one.what is Due.VERDICT:
            return one.about in looked_at
        return (one.what is Due.FIRST_INSPECTION and one.about in held_back) or (
            one.what is Due.TRIP and one.about == self._trip
        )

    def retired(self) -> tuple[RetiredPiece, ...]:
        """Retired and not yet unusable; those without a notice first."""
        unprinted = {one.about for one in self._lines if one.what is Due.NOTICE}
        waiting = (one for one in self._pieces if waits_to_be_destroyed(one.verdict.outcome, one.where))
        made = (_retired_piece(one, one.item.tag not in unprinted) for one in waiting)
        return tuple(sorted(made, key=lambda one: (one.has_notice, one.since or date.min, one.tag)))

    def next_due(self) -> DueLine | None:
        """The first line with a day beyond what is soon."""
        later = (one for one in self._lines if one.on and one.on > self._soon and one.what is not Due.VERDICT)
        return next(later, None)

    def _needs(self, lines: Iterable[DueLine]) -> tuple[NeedLine, ...]:
        """By day, or by the day since when it waits; what has neither first."""
        by_day = sorted(lines, key=lambda one: (one.on or one.since or date.min, one.about))
        return tuple(NeedLine(one, self._outcomes.get(one.about) if one.what.is_of_piece else None) for one in by_day)


def _held_piece(one: Held) -> HeldPiece:
    holding = [reason for reason in one.words.reasons if reason.outcome is Outcome.HOLD]
    release = next((reason.release for reason in holding if reason.release), "")
    return HeldPiece(
        tag=one.item.tag,
        kind_name=one.kind_name,
        why=holding[0].sentence if holding else one.words.headline,
        release=release,
        more=max(len(holding) - 1, 0),
        serves=may_go(one.verdict),
        evidence=one.kept_by,
        people=tuple(person.name for person in one.people),
        place=one.place,
    )


def _retired_piece(one: Held, has_notice: bool) -> RetiredPiece:
    return RetiredPiece(one.item.tag, one.kind_name, one.retired_on, has_notice, one.kept_by, one.place)


def _incidents(page: Page, pieces: Sequence[Held]) -> Iterator[IncidentLine]:
    """Open reports, the oldest first, with what is kept for them: while anything is, none can be closed."""
    vehicles = page.kept_vehicles()
    for one in open_incidents(page):
        kept = tuple(piece.item.tag for piece in pieces if one.ref in piece.kept_by)
        cars = tuple(tag for tag, refs in vehicles.items() if one.ref in refs)
        yield IncidentLine(one.ref, one.facts.what, one.facts.on, one.facts.place, kept, cars)


def _next_trip(office: Office, page: Page) -> Trip | None:
    ahead = (one for one in page.trips() if one.last_on >= office.today)
    return min(ahead, key=lambda one: (one.first_on, one.ref), default=None)


def _glance(office: Office, planned: Trip) -> TripGlance:
    """Whether it is ready. What cannot be judged hides nothing else of the page: it is said in its place."""
    named = TripGlance(planned.ref, planned.name, planned.place, days_words(planned), planned.first_on)
    try:
        ready = readiness(office, planned.ref)
        lacks = kit_lacks(office, planned.ref, ready)
    except Refused as refusal:
        return replace(named, trouble=f"{refusal.why} {refusal.what_to_do}")
    return replace(
        named,
        going=len(ready.going),
        staying=len(ready.staying),
        due=len({one.tag for one in ready.due}),
        bad_parts=_bad_parts(ready),
        gone=len(ready.gone),
        may_be_away=sum(not one.lent for one in ready.away),
        lacks=lacks,
        warnings=tuple(one.warning for one in ready.vehicles if one.warning),
    )


def _bad_parts(ready: Ready) -> int:
    bad = {Outcome.HOLD, Outcome.RETIRE}
    return sum(part.judged.verdict.outcome in bad for one in ready.vehicles for part in one.parts)


def _backed(office: Office, page: Page) -> Backed:
    """What the ledger knows of the last copy: a backup, the one of a handover, or the one it was put back from."""
    last = page.last_line(_COPIES, [one.origin for one in field_copies(office)])
    told = last.facts.get("backup", last.facts) if last else {}
    return Backed(
        at=last.at if last else None,
        file=str(told.get("file", "")) if isinstance(told, Mapping) else "",
        deeds_since=page.lines_after(last.number if last else 0),
        is_file=office.book.file is not None,
    )
