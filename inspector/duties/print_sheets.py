"""Print the pre-trip inspection sheet of a trip."""

import hashlib
from dataclasses import replace

from inspector.duties.before_use import asked_checks, asked_measures, why_not
from inspector.duties.keep_vehicles import kept_words
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tell_readiness import days_words
from inspector.duties.trip_readiness import Ready, readiness
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.kit_check import AskedMeasure
from inspector.gear.papers import GoingPiece, StayingPiece, TickLine, TripSheet, VehicleLine
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.register.page import Page
from inspector.rulebook.rigs.strap_band import band_words, strap_band, strap_words
from inspector.rulebook.words import marked_words
from inspector.units import Dimension, show

SHEET = "trip_sheet"  # what the register calls this kind of document
_LENGTHS = ("mm", "cm", "m", "in", "ft")


def print_trip_sheet(office: Office, ref: str) -> Paper:
    """Number, keep and print the sheet of the trip."""
    sheet, printed = _entered(office, ref)
    return put_out(office, sheet.imprint.number, printed)


def enter_trip_sheet(office: Office, ref: str) -> TripSheet:
    """Number and keep the sheet of the trip; what it says is in the book, no file is written."""
    return _entered(office, ref)[0]


def _entered(office: Office, ref: str) -> tuple[TripSheet, Printed]:
    """The sheet as it is kept: with the file that was printed, since what comes back is held against it."""
    ready = readiness(office, ref)
    with office.book.page() as page:
        number = next_number(page, "S", SHEET)
        sheet = _sheet(office, page, ready, number)
        printed = inspection_sheet(sheet, PageSize(office.page))
        digest = hashlib.sha256(printed.pdf).hexdigest()
        page.keep_bytes(digest, printed.pdf)
        sheet = replace(sheet, layout=printed.layout, pdf=digest)
        page.add_document(number, SHEET, office.today, ready.trip.id, sheet)
        page.enter("print sheet", by=office.officer.id, at=office.now, facts={"number": number, "trip": ready.trip.ref})
    return sheet, printed


def _sheet(office: Office, page: Page, ready: Ready, number: str) -> TripSheet:
    planned = ready.trip
    known, kept = {vehicle.tag: vehicle for vehicle in page.vehicles()}, page.kept_vehicles()
    absent = {one.tag: one.why for one in ready.away if one.lent}
    return TripSheet(
        imprint=imprint(office, page, tr("Pre-trip inspection sheet"), number),
        trip=planned.name,
        place=planned.place,
        dates=days_words(planned),
        leader=planned.leader,
        vehicles=tuple(_vehicle(office, known[tag], ready.going, kept_words(kept, tag)) for tag in planned.vehicles),
        going=tuple(_going(office, one) for one in ready.going),
        staying=(
            *(_staying(one, absent[one.dossier.item.tag]) for one in ready.gone),
            *(_staying(one, why_not(one)) for one in ready.staying),
        ),
    )


def _vehicle(office: Office, vehicle: Vehicle, going: tuple[Judged, ...], kept: str) -> VehicleLine:
    straps = [
        (one.dossier.item.tag, one.verdict.capacity.now_n)
        for one in going
        if _is_line(one) and one.verdict.capacity.now_n is not None
    ]
    band = band_words(strap_band(office.rules, vehicle.gvm.si), office.system)
    warnings = (kept, strap_words(office.rules, vehicle.gvm.si, straps))
    warning = " ".join(one for one in warnings if one)
    return VehicleLine(vehicle.tag, vehicle.name, vehicle.gvm.as_typed, band, warning)


def _is_line(one: Judged) -> bool:
    return one.dossier.kind.key in {"kinetic_strap", "kinetic_rope"}


def _going(office: Office, one: Judged) -> GoingPiece:
    kind, item = one.dossier.kind, one.dossier.item
    ticks = [TickLine(check.asks, key=check.key) for check in asked_checks(kind)]
    ticks += [_measured(asked) for asked in asked_measures(office, one)]
    return GoingPiece(
        tag=item.tag,
        kind_name=kind.name,
        marked=marked_words(item),
        now=_now(office, one),
        use_line=one.explanation.use_line,
        outcome=one.verdict.outcome,
        ticks=tuple(ticks),
    )


def _measured(asked: AskedMeasure) -> TickLine:
    """A length may be written in any unit; the one of the limit stands first."""
    measure = asked.measure
    units = _LENGTHS if measure.dimension is Dimension.LENGTH else ()
    first = next((unit for unit in asked.limit.split()[::-1] if unit in units), "")
    ordered = (first, *(unit for unit in units if unit != first)) if first else ()
    return TickLine(measure.name, asked.limit, measure.key, ordered)


def _now(office: Office, one: Judged) -> str:
    """Today's rating on the basis that the piece is marked in."""
    capacity = one.verdict.capacity
    if capacity.now_n is None or capacity.as_marked_n is None:  # a strength reckoned from sizes is no rating
        return ""
    if one.dossier.item.rating.basis is Basis.WLL and capacity.design_factor:
        limit = show(capacity.now_n / capacity.design_factor, Dimension.FORCE, office.system)
        return tr("WLL {limit}", limit=limit)
    return tr("MBS {strength}", strength=show(capacity.now_n, Dimension.FORCE, office.system))


def _staying(one: Judged, why: str) -> StayingPiece:
    return StayingPiece(one.dossier.item.tag, one.dossier.kind.name, one.verdict.outcome, why)
