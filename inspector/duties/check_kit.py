"""The check before a trip: what is to be looked at, in the order of the walk round, and what was looked at by whom."""

from datetime import date

from inspector.duties.before_use import asked_checks, asked_measures, goes, why_not
from inspector.duties.look_up import people, trip
from inspector.duties.office import Office
from inspector.duties.print_sheets import SHEET
from inspector.duties.trip_readiness import judged_kit
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, InspectionKind
from inspector.gear.judged import Judged
from inspector.gear.kit_check import CheckMade, KitCheck, KitPiece, Seen
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Trip
from inspector.language import tr, tr_n
from inspector.register.page import Page
from inspector.rulebook.words import marked_words


def kit_check(office: Office, ref: str) -> KitCheck:
    """The kit of a trip with its questions and limits, and the checks that count for this trip.

    Counted are checks made for this trip since its first sheet was printed, or today where none was. A pull after a
    check asks for a new one.
    """
    planned = trip(office, ref)
    with office.book.reading() as page:
        sheets = sheets_of(page, planned)
    since = min((day for _, day in sheets), default=office.today)
    names = {person.id: person.name for person in people(office)}
    pieces = tuple(_piece(office, one, planned, since, names) for one in judged_kit(office, planned))
    return KitCheck(planned, tuple(number for number, _ in sheets), since, pieces)


def sheets_of(page: Page, planned: Trip) -> list[tuple[str, date]]:
    """Number and day of each sheet printed for the trip, the latest first."""
    lines = page.history(planned.id)
    return [(line.key, line.on) for line in lines if line.what == "document" and line.body == SHEET]


def tell_piece(piece: KitPiece) -> str:
    """What becomes of a piece, in plain words."""
    if piece.outcome is Outcome.RETIRE:
        return tr("Stays in the shed and is never used again: {why}", why=piece.why)
    if not piece.goes:
        return tr("Stays in the shed: {why}", why=piece.why)
    use = piece.judged.explanation.use_line
    if not piece.made:
        return tr("Not checked yet. Once checked and good: {use}.", use=use)
    if piece.open:
        open_ones = tr_n("one question has no answer", "{count} questions have no answer", len(piece.open))
        return tr("Not checked in full: {open}. It does not go like this.", open=open_ones)
    return tr("Goes: {use}.", use=use)


def tell_checked(piece: KitPiece) -> str:
    """Who looked at it; empty where nobody did."""
    return tr("checked by {who}", who=", ".join(piece.checked_by)) if piece.made else ""


def _piece(office: Office, one: Judged, planned: Trip, since: date, names: dict[str, str]) -> KitPiece:
    counted = [seen for seen in one.dossier.inspections if _counts(seen, one.dossier, planned, since)]
    return KitPiece(
        judged=one,
        asked=asked_checks(one.dossier.kind),
        measures=asked_measures(office, one),
        marked=marked_words(one.dossier.item),
        goes=goes(one),
        why="" if goes(one) else why_not(one),
        made=tuple(_made(seen, names) for seen in counted),
    )


def _counts(seen: Inspection, dossier: Dossier, planned: Trip, since: date) -> bool:
    """A check before use, for this trip or for none by name, and no pull since."""
    facts = seen.facts
    if facts.kind is not InspectionKind.BEFORE_USE or facts.trip not in {planned.ref, ""} or facts.on < since:
        return False
    return all((use.facts.on, use.id) < (facts.on, seen.id) for use in dossier.uses)


def _made(seen: Inspection, names: dict[str, str]) -> CheckMade:
    facts = seen.facts
    looked = Seen(facts.answers, facts.readings, facts.note)
    return CheckMade(names.get(facts.by, facts.by), facts.on, facts.sheet, looked)
