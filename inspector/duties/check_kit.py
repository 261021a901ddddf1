"""The check before a trip: what is to be looked at, in the order of the walk round, and what was looked at by whom."""

from collections.abc import Iterator, Mapping
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.before_use import asked_checks, asked_measures, goes, why_not
from inspector.duties.look_up import people, trip
from inspector.duties.office import Office
from inspector.duties.plan_rides import ride_words
from inspector.duties.tell_readiness import sits_words
from inspector.duties.trip_readiness import Walk, walk_round
from inspector.duties.use_limits import marked_and_now
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, InspectionKind
from inspector.gear.judged import Judged
from inspector.gear.kit_check import CheckMade, KitCheck, KitPiece, Seen
from inspector.gear.outcome import Outcome
from inspector.gear.papers import TRIP_SHEET
from inspector.gear.trip import Trip
from inspector.language import tr, tr_n
from inspector.register.page import Page


def kit_check(office: Office, ref: str) -> KitCheck:
    """The kit of a trip and the parts on its vehicles, with questions and limits, and the checks that count for it.

    Counted are checks made for this trip since its first sheet was printed, or today where none was. A pull after a
    check asks for a new one.
    """
    planned = trip(office, ref)
    with office.book.reading() as page:
        sheets = sheets_of(page, planned)
    since = min((day for _, day in sheets), default=office.today)
    made = _Made(planned, since, {person.id: person.name for person in people(office)})
    walk = walk_round(office, planned)
    pieces = (*_parts(office, walk, made), *_bag(office, walk, made))
    return KitCheck(planned, tuple(number for number, _ in sheets), since, pieces)


def tell_progress(found: KitCheck) -> str:
    """How much of what is to be checked needs no more looking, and what is counted."""
    done, count = found.done_count, len(found.to_check)
    if not found.part_count:
        return tr("{done} of {count} pieces checked", done=done, count=count)
    pieces = tr_n("one piece", "{count} pieces", count - found.part_count)
    parts = tr_n("one part on the vehicles", "{count} parts on the vehicles", found.part_count)
    return tr("{done} of {count} checked ({pieces}, {parts})", done=done, count=count, pieces=pieces, parts=parts)


def sheets_of(page: Page, planned: Trip) -> list[tuple[str, date]]:
    """Number and day of each sheet printed for the trip, the latest first."""
    lines = page.history(planned.id)
    return [(line.key, line.on) for line in lines if line.what == "document" and line.body == TRIP_SHEET]


def tell_piece(piece: KitPiece) -> str:
    """What becomes of a piece, in plain words."""
    if piece.part_of:
        return _tell_part(piece)
    if piece.outcome is Outcome.RETIRE:
        return tr("Stays in the shed and is never used again: {why}", why=piece.why)
    if not piece.goes:
        return tr("Stays in the shed: {why}", why=piece.why)
    use = piece.judged.explanation.use_line
    if not piece.made:
        return tr("Not checked yet. Once checked and good: {use}.", use=use)
    if piece.open:
        return tr("Not checked in full: {open}. It does not go like this.", open=_open_words(piece))
    return tr("Goes: {use}.", use=use)


def _tell_part(piece: KitPiece) -> str:
    """What becomes of a part that sits on a vehicle: it goes along whatever it is fit for."""
    if piece.outcome is Outcome.RETIRE:
        return tr("Must never be used again: {why}", why=piece.why)
    if not piece.goes:
        return tr("Must not be used on this trip: {why}", why=piece.why)
    use = piece.judged.explanation.use_line
    if not piece.made:
        return tr("Not checked yet. Once checked and good: {use}.", use=use)
    if piece.open:
        return tr("Not checked in full: {open}. It must not be used like this.", open=_open_words(piece))
    return tr("May be used: {use}.", use=use)


def _open_words(piece: KitPiece) -> str:
    return tr_n("one question has no answer", "{count} questions have no answer", len(piece.open))


def tell_checked(piece: KitPiece) -> str:
    """Who looked at it; empty where nobody did."""
    return tr("checked by {who}", who=", ".join(piece.checked_by)) if piece.made else ""


class _Made(Struct, frozen=True):
    """By what a check is found to count: the trip, the first day, and the names of people by id."""

    planned: Trip
    since: date
    names: Mapping[str, str]


def _parts(office: Office, walk: Walk, made: _Made) -> Iterator[KitPiece]:
    for vehicle in walk.vehicles:
        for part in vehicle.parts:
            found = _piece(office, part.judged, made)
            kept = walk.barred.get(found.tag, "")
            found = replace(found, goes=False, why=kept) if kept else found
            yield replace(found, part_of=vehicle.vehicle.tag, where=sits_words(part))


def _bag(office: Office, walk: Walk, made: _Made) -> Iterator[KitPiece]:
    for one in walk.bag:
        found = _piece(office, one, made)
        yield replace(found, where=ride_words(made.planned, found.tag, "", walk.lies.get(found.tag, "")))


def _piece(office: Office, one: Judged, made: _Made) -> KitPiece:
    counted = [seen for seen in one.dossier.inspections if _counts(seen, one.dossier, made.planned, made.since)]
    return KitPiece(
        judged=one,
        asked=asked_checks(one.dossier.kind),
        measures=asked_measures(office, one),
        marked=marked_and_now(office, one),
        goes=goes(one),
        why="" if goes(one) else why_not(one),
        made=tuple(_made(seen, made.names) for seen in counted),
    )


def _counts(seen: Inspection, dossier: Dossier, planned: Trip, since: date) -> bool:
    """A check before use, for this trip or for none by name, and no pull since."""
    facts = seen.facts
    if facts.kind is not InspectionKind.BEFORE_USE or facts.trip not in {planned.ref, ""} or facts.on < since:
        return False
    return all((use.facts.on, use.id) < (facts.on, seen.id) for use in dossier.uses)


def _made(seen: Inspection, names: Mapping[str, str]) -> CheckMade:
    facts = seen.facts
    looked = Seen(facts.answers, facts.readings, facts.note)
    return CheckMade(names.get(facts.by, facts.by), facts.on, facts.sheet, looked)
