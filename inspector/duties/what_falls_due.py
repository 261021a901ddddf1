"""Everything that falls due up to a day, of the pieces, the people, the trips, the reports and the counts."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.before_use import may_go
from inspector.duties.counts import counts
from inspector.duties.due_days import (
    LOOK_AHEAD_DAYS,
    competences_ending,
    has_left,
    is_lost,
    open_incidents,
    verdict_days,
    waits_to_be_destroyed,
)
from inspector.duties.notices_printed import printed_notices
from inspector.duties.office import Office
from inspector.duties.recalls_due import recall_lines
from inspector.duties.tell_due import piece_says, trip_says
from inspector.duties.tell_whereabouts import evidence_words, where_words
from inspector.duties.who import ids_by_name, plain_name
from inspector.gear.custody import NewCustody
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person, scope_word
from inspector.gear.standing import StandingVerdict, StandingWords
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.verdict import Status
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page

_AT_ONCE = 50  # pieces whose verdicts are read at one time; many at once would stop the window as they are let go
_LAST_SEEN = "inspection_age"  # asked of every piece; nobody knows it of one that was never seen in full


class Held(Struct, frozen=True):
    """A piece that was not sold, made unusable or given back, as its stored verdict says and with whom it is.

    words: what the verdict said; loan: the entry by which it is out. people: who has it, owns it, or owns the vehicle
    it sits on. retired_on: when it was retired, where it was; has_notice: whether its retirement was printed.
    """

    item: Item
    kind_name: str
    verdict: StandingVerdict
    words: StandingWords
    where: Whereabouts
    place: str
    people: tuple[Person, ...]
    loan: NewCustody | None
    kept_by: tuple[str, ...]
    retired_on: date | None
    has_notice: bool
    never_seen: bool  # nobody competent has ever seen all of it


def last_day(office: Office, until: date | None) -> date:
    """The day up to which is looked; refused where it is past, since what is overdue is told anyway."""
    day = until or office.today + timedelta(days=LOOK_AHEAD_DAYS)
    if day < office.today:
        why = tr("{day} is past.", day=show_day(day))
        raise Refused(tr("until"), why, tr("Write a day from today on; what is overdue is always told."))
    return day


def what_falls_due(office: Office, until: date | None = None) -> tuple[DueLine, ...]:
    """Every line up to the day, 90 days from today where none is given: what waits first, then by day.

    What is overdue or waits without a day is always among them.
    """
    last = last_day(office, until)
    with office.book.reading() as page:
        return due_lines(office, page, held_up_to(office, page, last), last)


def due_lines(office: Office, page: Page, pieces: Iterable[Held], last: date) -> tuple[DueLine, ...]:
    """Those lines, for these pieces: at least those that `held_up_to` gives."""
    found = [
        *(line for one in pieces for line in of_piece(one)),
        *_of_people(page, last),
        *_of_trips(office, page),
        *_open(page),
        *recall_lines(office, page),
    ]
    due = (one for one in found if one.on is None or one.on <= last)
    return tuple(sorted(due, key=lambda one: (one.on or date.min, one.about, one.what)))


def held_up_to(office: Office, page: Page, last: date) -> Iterator[Held]:
    """Those of the pieces of which anything may fall due up to that day."""
    without_wall = [key for key, kind in office.rules.kinds.items() if kind.measure("wall") is None]
    return held(office, page, page.keys_to_tell(last, without_wall))


def held(office: Office, page: Page, keys: Sequence[str] | None = None) -> Iterator[Held]:
    """Of the pieces with these ids, by tag, those that the club has or ought to have; of all where none are given.

    They are read a share at a time, and let go as they are passed over.
    """
    wanted = page.keys() if keys is None else keys
    people, vehicles = page.people(), {one.tag: one for one in page.vehicles()}
    loans = {one.item.id: one.lent.facts for one in page.out()}
    common = _Common(office, people, ids_by_name(people), vehicles, loans, page.every_open_quarantine())
    for at in range(0, len(wanted), _AT_ONCE):
        yield from _held(page, common, page.items_with(wanted[at : at + _AT_ONCE]))


class _Common(Struct, frozen=True):
    """What is read once for all pieces; loans and kept by the piece's id, ids of people by each name of theirs."""

    office: Office
    people: tuple[Person, ...]
    ids: Mapping[str, frozenset[str]]
    vehicles: Mapping[str, Vehicle]
    loans: Mapping[str, NewCustody]
    kept: Mapping[str, tuple[str, ...]]


def _held(page: Page, common: _Common, share: Sequence[Item]) -> Iterator[Held]:
    """A share of the pieces: what was read of them for a look is let go with it."""
    office, names = common.office, {one.id: one.name for one in common.people}
    places = page.whereabouts(share)
    some = [one for one in share if not has_left(places[one.id])]
    said = page.standing_verdicts(some)
    retired = page.retired([one.id for one in some if said[one.id][0].outcome is Outcome.RETIRE])
    printed = printed_notices(page, retired) if retired else {}
    for one in some:
        (verdict, words), where = said[one.id], places[one.id]
        kind = office.rules.kinds.get(one.facts.kind)
        yield Held(
            item=one,
            kind_name=kind.name if kind else one.facts.kind,
            verdict=verdict,
            words=words,
            where=where,
            place=where_words(replace(where, since=None), names),
            people=tuple(_concerned(one, where, common)),
            loan=common.loans.get(one.id) if where.where is Where.ON_LOAN else None,
            kept_by=common.kept.get(one.id, ()),
            retired_on=retired[one.id].on if one.id in retired else None,
            has_notice=one.id in printed,
            never_seen=any(one.quantity == _LAST_SEEN and one.status is Status.UNKNOWN for one in verdict.findings),
        )


def _concerned(item: Item, where: Whereabouts, common: _Common) -> Iterator[Person]:
    """Who has the piece, who owns it, and who owns the vehicle it sits on."""
    vehicle = common.vehicles.get(where.at) if where.where is Where.ON_VEHICLE else None
    owners = (item.facts.owner, *([vehicle.owner] if vehicle else []))
    ids = {key for owner in owners for key in common.ids.get(plain_name(owner), ())}
    if where.where is Where.ON_LOAN:
        ids.add(where.at)
    return (one for one in common.people if one.id in ids)


def of_piece(one: Held) -> Iterator[DueLine]:
    """What falls due of one piece, whatever the day. One that is lost is asked for nothing but to be found."""
    if is_lost(one.where):
        yield _line(one, Due.MISSING, None, since=one.where.since)
    else:
        yield from _looks(one)
        if one.verdict.outcome is Outcome.HOLD and not may_go(one.verdict) and not one.never_seen:
            yield _line(one, Due.HOLD, None, one.words.headline)
        if one.item.facts.borrowed_until:
            yield _line(one, Due.BACK, one.item.facts.borrowed_until)
        if one.loan:
            yield _line(one, Due.LOAN, one.loan.due, since=one.loan.on)
    if waits_to_be_destroyed(one.verdict.outcome, one.where):
        if one.retired_on and not one.has_notice:
            yield _line(one, Due.NOTICE, None, since=one.retired_on)
        yield _line(one, Due.DESTRUCTION, None, evidence_words(one.kept_by), since=one.retired_on)


def _looks(one: Held) -> Iterator[DueLine]:
    """Inspections and readings. Of what nobody competent has ever seen in full, no day can be told."""
    days = verdict_days(one.verdict)
    for what, day in days.items():
        if what is Due.INSPECTION and one.never_seen:
            yield _line(one, Due.FIRST_INSPECTION, None, since=one.item.booked_on)
        else:
            yield _line(one, what, day)
    if days and one.verdict.wall and one.verdict.wall.unread_points and Due.READING not in days:
        yield _line(one, Due.READING, None, ", ".join(one.verdict.wall.unread_points))


def _line(one: Held, what: Due, on: date | None, more: str = "", since: date | None = None) -> DueLine:
    people = tuple(person.name for person in one.people)
    says = piece_says(what, more)
    return DueLine(what, f"{what}:{one.item.id}", on, one.item.tag, one.kind_name, says, people, one.place, since)


def _of_people(page: Page, until: date) -> Iterator[DueLine]:
    for person, held_, last in competences_ending(page.people(), until):
        scope = scope_word(held_.scope)
        key = f"{Due.COMPETENCE}:{person.id}:{held_.scope}:{last.isoformat()}"
        says = tr("last day on which {name} may judge {scope}", name=person.name, scope=scope)
        yield DueLine(Due.COMPETENCE, key, last, person.name, scope, says, (person.name,))


def _of_trips(office: Office, page: Page) -> Iterator[DueLine]:
    """Trips that have not ended; one that is under way is told by its first day."""
    people = page.people()
    for one in page.trips():
        if one.last_on >= office.today:
            goes = tuple(person.name for person in people if _goes(person, one))
            key = f"{Due.TRIP}:{one.id}"
            yield DueLine(Due.TRIP, key, one.first_on, one.ref, one.name, trip_says(one), goes, one.place)


def _goes(person: Person, trip: Trip) -> bool:
    return person.id in trip.people or plain_name(trip.leader) in {plain_name(person.name), person.id}


def _open(page: Page) -> Iterator[DueLine]:
    """Reports and counts that are still open: no day was set for them, so they wait now."""
    names = {one.id: one.name for one in page.people()}
    for report in open_incidents(page):
        told = report.facts
        key, by = f"{Due.INCIDENT}:{report.id}", names.get(told.by)
        says = tr("the report is still open")
        yield DueLine(
            Due.INCIDENT, key, None, report.ref, told.what, says, (by,) if by else (), told.place, since=told.on
        )
    for one in counts(page):
        if one.closed is None:
            facts = one.taken.facts
            by, place = names.get(facts.by), facts.scope or tr("everything")
            says = tr("the count is still open")
            key = f"{Due.COUNT}:{one.taken.id}"
            yield DueLine(Due.COUNT, key, None, one.ref, tr("Count"), says, (by,) if by else (), place, since=facts.on)
