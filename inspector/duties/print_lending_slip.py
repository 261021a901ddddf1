"""The lending slip: what one person takes along, for what, back by when; both sign it. Numbered and kept."""

from collections.abc import Iterable, Sequence
from datetime import date

from inspector.duties.before_use import goes, why_not
from inspector.duties.judge_anew import judge_anew
from inspector.duties.look_up import open_item
from inspector.duties.look_up import trip as trip_called
from inspector.duties.named_pieces import kept_as
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.use_limits import bears_only, not_for, only_for
from inspector.duties.who import person_of
from inspector.gear.custody import NewCustody
from inspector.gear.judged import Judged
from inspector.gear.lending_slip import LendingSlip, LentPiece
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.language import show_day, tr
from inspector.paper.lending_slip import lending_slip
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.hands import Out
from inspector.register.page import Page
from inspector.rulebook.words import marked_words

SLIP = "lending_slip"  # what the register calls this kind of document


def print_lending_slip(office: Office, holder: str, tags: Sequence[str] = (), trip: str = "") -> Paper:
    """Number, keep and print the slip of all that a person has on loan, or of these pieces, or of a trip's.

    holder: a name or an id.
    """
    return _printed(office, enter_lending_slip(office, holder, tags, trip))


def print_lending_slip_again(office: Office, number: str) -> Paper:
    """Print a lending slip as it was kept."""
    return _printed(office, kept_as(office, SLIP, number, LendingSlip))


def _printed(office: Office, slip: LendingSlip) -> Paper:
    return put_out(office, slip.imprint.number, lending_slip(slip, PageSize(office.page)))


def enter_lending_slip(office: Office, holder: str, tags: Sequence[str] = (), trip: str = "") -> LendingSlip:
    """Number and keep the slip; no file is written."""
    judge_anew(office)  # no slip may say what time alone has ended
    ref = trip_called(office, trip).ref if trip else ""
    with office.book.reading() as page:
        person = person_of(page, holder, tr("holder"))
        out = _out(page, person, tags, ref)
    pieces = [(open_item(office, one.item.tag), one.lent.facts) for one in out]
    with office.book.page() as page:
        number = next_number(page, "B", SLIP)
        slip = _slip(office, page, person, pieces, number)
        page.add_document(number, SLIP, office.today, person.id, slip)
        facts = {"number": number, "holder": person.id, "tags": [one.tag for one in slip.pieces]}
        page.enter("print lending slip", by=office.officer.id, at=office.now, facts=facts)
    return slip


def _out(page: Page, person: Person, tags: Sequence[str], ref: str) -> tuple[Out, ...]:
    """What the person has on loan of what is asked for; refused where that is nothing, or a named piece is not."""
    wanted = {page.item(tag).id for tag in tags}
    found = [one for one in page.out() if one.lent.facts.holder == person.id]
    missing = [page.item(tag).tag for tag in tags if page.item(tag).id not in {one.item.id for one in found}]
    chosen = [one for one in found if (not wanted or one.item.id in wanted) and ref in {"", one.lent.facts.trip}]
    if missing or not chosen:
        listed = tr("{name} does not have {tags} on loan.", name=person.name, tags=", ".join(missing))
        why = listed if missing else tr("{name} has nothing of this on loan.", name=person.name)
        raise Refused(tr("lending slip"), why, tr("Hand the pieces out first; the slip tells what is out."))
    return tuple(chosen)


def _slip(
    office: Office, page: Page, person: Person, pieces: Sequence[tuple[Judged, NewCustody]], number: str
) -> LendingSlip:
    names = {one.id: one.name for one in page.people()}
    loans = [facts for _, facts in pieces]
    trips = {one.ref: one.name for one in page.trips()}
    lines = (_piece(office, one, facts, names) for one, facts in pieces)
    return LendingSlip(
        imprint=imprint(office, page, tr("Lending slip"), number),
        holder=person.id,
        name=person.name,
        trip=_common(trips.get(one.trip, one.trip) for one in loans),
        bring_back=_day(min((one.due for one in loans if one.due), default=None)),
        lent=_common(show_day(one.on) for one in loans),
        handed_by=_common(names.get(one.by, one.by) for one in loans),
        pieces=tuple(sorted(lines, key=lambda one: one.may_use)),
    )


def _common(said: Iterable[str]) -> str:
    """What all of them say; empty where they differ."""
    found = set(said)
    return found.pop() if len(found) == 1 else ""


def _day(day: date | None) -> str:
    return show_day(day) if day else ""


def _piece(office: Office, one: Judged, facts: NewCustody, names: dict[str, str]) -> LentPiece:
    verdict, item = one.verdict, one.dossier.item
    return LentPiece(
        tag=item.tag,
        kind_name=one.dossier.kind.name,
        marked=marked_words(item),
        limit=bears_only(office, one),
        outcome=verdict.outcome,
        may_use=goes(one),
        may_for=only_for(one),
        not_for=not_for(one),
        mind=" ".join(_mind(one, facts)),
        since=show_day(facts.on),
        due=_day(facts.due),
        handed_by=names.get(facts.by, facts.by),
    )


def _mind(one: Judged, facts: NewCustody) -> Iterable[str]:
    """Its state where that is not fit, what was noted as it went out, and what falls due before it is back."""
    if one.verdict.outcome is not Outcome.FIT:
        yield why_not(one)
    if facts.note:
        yield tr("Noted: {note}", note=facts.note)
    look = one.verdict.next_due
    if look and facts.due and look <= facts.due:
        yield tr("An inspection or reading falls due on {day}, before it is to be back.", day=show_day(look))
    turns = one.verdict.turns_first
    if turns and facts.due and turns <= facts.due:
        yield tr("From {day} on time alone may change its verdict: ask before you use it.", day=show_day(turns))
