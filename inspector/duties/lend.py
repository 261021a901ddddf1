"""Hand pieces out, one or a whole kit, and tell who has what since when."""

from collections.abc import Iterable, Sequence
from datetime import date

from msgspec import Struct

from inspector.duties.judging import judged
from inspector.duties.look_up import trip as trip_called
from inspector.duties.not_ours import check_may_be_lent
from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import evidence_words, gone_words
from inspector.duties.who import person_of
from inspector.gear.custody import Hands, Loan, NewCustody
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.gear.verdict import Verdict
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.hands import Out
from inspector.register.lists import Asked
from inspector.register.page import Page


def lend(
    office: Office, tags: Sequence[str], holder: str, due: date | None = None, trip: str = "", note: str = ""
) -> tuple[Loan, ...]:
    """Hand pieces out today, all of them or none. holder: a person's name or id.

    due: the day they are to be back; the last day of the trip where none is given.
    """
    planned = trip_called(office, trip) if trip else None
    back_by = _due(office, due, planned)
    with office.book.page() as page:
        borrower = person_of(page, holder, tr("holder"))
        pieces = _pieces(page, tags)
        check_may_be_lent(pieces, planned, back_by)
        looked = [_judged_today(office, page, item) for item in pieces]
        _check_may_leave(office, page, looked)
        ref = planned.ref if planned else ""
        facts = NewCustody(office.today, Hands.LENT, borrower.id, back_by, ref, office.officer.id, note.strip())
        for item in pieces:
            page.add_custody(item, facts)
        handed = {"tags": [item.tag for item in pieces], "as": facts}
        page.enter("lend", by=office.officer.id, at=office.now, facts=handed)
    return tuple(_lent(one, facts, borrower) for one in looked)


def lend_kit(office: Office, trip: str, holder: str, due: date | None = None, note: str = "") -> tuple[Loan, ...]:
    """Hand out the whole kit of a trip, all of it or nothing."""
    planned = trip_called(office, trip)
    if not planned.kit:
        why = tr("The trip {ref} has no kit.", ref=planned.ref)
        raise Refused(tr("trip"), why, tr("Plan its kit first, or name the pieces by their tags."))
    return lend(office, _loose(office, planned), holder, due, planned.ref, note)


def _loose(office: Office, planned: Trip) -> tuple[str, ...]:
    """The kit without what sits on a vehicle of the trip and goes where that goes."""
    with office.book.reading() as page:
        sits = {item.tag for item, _ in page.fitted_items(planned.vehicles)}
    return tuple(tag for tag in planned.kit if tag not in sits)


def loans(office: Office) -> tuple[Loan, ...]:
    """Every piece that is out, the one due first at the head."""
    with office.book.reading() as page:
        names = {one.id: one.name for one in page.people()}
        out = page.out()
        tags = tuple(one.item.tag for one in out)
        looks = {line.tag: line.next_due for line in page.gear(Asked(tags=tags, limit=len(tags)))} if tags else {}
        found = [_loan(office, one, names, looks.get(one.item.tag)) for one in out]
    return tuple(sorted(found, key=lambda one: (one.due or date.max, one.tag)))


class MayLeave(Struct, frozen=True):
    """Whether a piece could be handed out today. why: what keeps it here, empty where it may leave.

    use: what whoever takes it may do with it. due: the day of its next inspection or reading.
    """

    tag: str
    kind_name: str
    outcome: Outcome
    use: str
    why: str
    due: date | None = None


def may_leave(office: Office, tag: str, trip: str = "") -> MayLeave:
    """What handing out this piece would say of it, before it is done. trip: for which it would go, if it is known."""
    planned = trip_called(office, trip) if trip else None
    with office.book.reading() as page:
        item = page.item(tag)
        names = {one.id: one.name for one in page.people()}
        one = _judged_today(office, page, item)
        why = _why_it_stays(page, one, names) or _why_not_ours(item, planned, office.today)
    verdict = one.verdict
    return MayLeave(item.tag, one.dossier.kind.name, verdict.outcome, one.explanation.use_line, why, verdict.next_due)


def _why_not_ours(item: Item, planned: Trip | None, today: date) -> str:
    """Why a piece that is here for a time may not leave; the day it is to be back is asked for later."""
    try:
        check_may_be_lent([item], planned, planned.last_on if planned else today)
    except Refused as refusal:
        return refusal.why
    return ""


def _with_whom(name: str, facts: NewCustody) -> str:
    return tr("on loan to {name} since {day}", name=name, day=show_day(facts.on))


def _due(office: Office, due: date | None, trip: Trip | None) -> date:
    """A loan without a day would never be overdue, so one is always known."""
    day = due or (trip.last_on if trip else None)
    if day is None:
        why = tr("Nobody said when it is to be back.")
        raise Refused(tr("due"), why, tr("Write the day, or name the trip it goes on."))
    if day < office.today:
        why = tr("{day} is past.", day=show_day(day))
        raise Refused(tr("due"), why, tr("Write a day from today on."))
    return day


def _pieces(page: Page, tags: Iterable[str]) -> tuple[Item, ...]:
    pieces = tuple(page.item(tag) for tag in tags)
    named = [item.tag for item in pieces]
    if not named:
        raise Refused(tr("tag"), tr("No piece is named."), tr("Write the tags of the pieces that go out."))
    if twice := sorted({tag for tag in named if named.count(tag) > 1}):
        why = tr("{tags} stands there twice.", tags=", ".join(twice))
        raise Refused(tr("tag"), why, tr("Name each piece once."))
    return pieces


def _judged_today(office: Office, page: Page, item: Item) -> Judged:
    """The piece as it stands today; nothing is kept of this look."""
    return judged(office, page.dossier(item, office.kind(item.facts.kind), office.today))


def _check_may_leave(office: Office, page: Page, looked: Iterable[Judged]) -> None:
    names = {one.id: one.name for one in page.people()}
    stays = {one.dossier.item.tag: why for one in looked if (why := _why_it_stays(page, one, names))}
    if stays:
        (first, why), *others = stays.items()
        if others:
            why = " ".join(f"{tag}: {reason}" for tag, reason in stays.items())
        what = tr("Nothing was handed out. Leave these pieces out, or settle what keeps them here first.")
        raise Refused(tr("pieces") if others else first, why, what)


def _why_it_stays(page: Page, one: Judged, names: dict[str, str]) -> str:
    """The reason why a piece may not leave; empty where it may."""
    item = one.dossier.item
    if why := gone_words(page.whereabouts_of(item), names) or evidence_words(page.open_quarantines(item)):
        return why
    if entry := page.out_entry(item):
        holder = names.get(entry.facts.holder, entry.facts.holder)
        return tr("It is {loan} already.", loan=_with_whom(holder, entry.facts))
    if refs := page.open_quarantines(item):
        return tr("It is kept as found, as evidence of {refs}.", refs=", ".join(refs))
    if one.verdict.outcome is Outcome.RETIRE or _is_held_for_all(one.verdict):
        return one.explanation.headline
    if sits := page.fitted(item):
        return tr("It sits on {vehicle}; take it off there first.", vehicle=sits.vehicle)
    return ""


def _is_held_for_all(verdict: Verdict) -> bool:
    """Whether it may be used for nothing that it is kept for."""
    held = all(one.outcome.severity >= Outcome.HOLD.severity for one in verdict.by_purpose)
    return verdict.outcome is Outcome.HOLD and held


def _lent(one: Judged, facts: NewCustody, borrower: Person) -> Loan:
    look_due = one.verdict.next_due
    before_it_is_back = look_due if look_due and facts.due and look_due <= facts.due else None
    item, kind = one.dossier.item, one.dossier.kind
    return Loan(item.tag, kind.name, borrower.name, facts.on, facts.due, facts.trip, before_it_is_back)


def _loan(office: Office, out: Out, names: dict[str, str], look_due: date | None) -> Loan:
    facts, kind = out.lent.facts, office.rules.kinds.get(out.item.facts.kind)
    kind_name = kind.name if kind else out.item.facts.kind
    back_by = max(facts.due, office.today) if facts.due else date.max  # one that is overdue is out today as well
    meanwhile = look_due if look_due and look_due <= back_by else None
    holder = names.get(facts.holder, facts.holder)
    return Loan(out.item.tag, kind_name, holder, facts.on, facts.due, facts.trip, meanwhile)
