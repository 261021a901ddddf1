"""The pre-trip inspection sheet: what stays, what goes, what to look at, and who looked."""

import hashlib
import json
from base64 import b32encode
from collections.abc import Sequence

from inspector.gear.papers import TripSheet, VehicleLine
from inspector.gear.sheet_code import SheetCode
from inspector.gear.sheet_fields import SHEET_NAME, signed_name
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.paper import form
from inspector.paper.blocks import Block, blank, boxed, row, rule, stack, words
from inspector.paper.common import cautions, facts, heading, listed
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed
from inspector.paper.trip_pieces import going, staying
from inspector.paper.trip_rigs import planned_rigs

_MARK_SIGNS = 5


def inspection_sheet(sheet: TripSheet, page: PageSize) -> Printed:
    """The sheet as a PDF, its boxes to be ticked with a pen or on a screen, and where they lie."""
    width = page.column_pt
    blocks = (
        *_of_what(sheet, width),
        facts(_trip_facts(sheet), width, 4),
        cautions(sheet.imprint.cautions, width).below(2 * GRID),
        *staying(sheet.staying, width),
        *([] if sheet.scope.is_rest else _vehicles(sheet.vehicles, width)),
        *planned_rigs(sheet.rigs, sheet.scope.vehicle, width),
        *going(sheet, width),
        *_ending(sheet, width),
    )
    mark = fingerprint(sheet)
    number = sheet.imprint.number

    def code(at: int) -> str:
        return SheetCode(number, at, mark).text

    return Document(sheet.imprint, _subject(sheet), (*blocks, _known_by(code(0))), code).printed(page)


def fingerprint(sheet: TripSheet) -> str:
    """Five signs that tell a sheet from one that asks anything else: of its pieces, questions and limits in order."""
    asked = [[one.tag, one.now, one.use_line, *([tick.text, tick.limit] for tick in one.ticks)] for one in sheet.going]
    said = json.dumps([sheet.imprint.number, sheet.trip, asked], ensure_ascii=False)
    return b32encode(hashlib.sha256(said.encode()).digest()).decode()[:_MARK_SIGNS]


def _subject(sheet: TripSheet) -> str:
    """What later pages and the file's own description say it is of."""
    trip = tr("{trip}, {place}", trip=sheet.trip, place=sheet.place) if sheet.place else sheet.trip
    what = _scope_words(sheet)
    return tr("{what}: {trip}", what=what, trip=trip) if what else trip


def _scope_words(sheet: TripSheet) -> str:
    """Of which vehicle it is, or that it is of what rides on none; empty for the whole trip."""
    if sheet.scope.is_rest:
        return tr("What rides on no vehicle by plan")
    return "".join(_vehicle_name(one) for one in sheet.vehicles) if sheet.scope.vehicle else ""


def _vehicle_name(vehicle: VehicleLine) -> str:
    return f"{vehicle.tag} · {vehicle.name}"


def _of_what(sheet: TripSheet, width_pt: float) -> list[Block]:
    """The vehicle of a sheet that is of one, larger than all else below the title."""
    what = _scope_words(sheet)
    return [words(what, width_pt, HEAD)] if what else []


def _known_by(code: str) -> Block:
    """The field by which a filled form is known; nothing is seen of it."""
    return Block(0.0, lambda press, left, top: form.kept_word(press, SHEET_NAME, code))


def _trip_facts(sheet: TripSheet) -> list[Fact]:
    return [
        Fact(tr("Trip"), sheet.trip),
        Fact(tr("Place"), sheet.place or tr("not written down")),
        Fact(tr("Dates"), sheet.dates),
        Fact(tr("Trip leader"), sheet.leader),
    ]


def _vehicles(vehicles: Sequence[VehicleLine], width_pt: float) -> list[Block]:
    title = heading(tr("Vehicles"), width_pt)
    if not vehicles:
        return [title, words(tr("No vehicle is listed for this trip."), width_pt, BODY)]
    return [title, *(_vehicle(vehicle, width_pt) for vehicle in vehicles)]


def _vehicle(vehicle: VehicleLine, width_pt: float) -> Block:
    """Tag and name, laden mass, the straps that suit it, and a warning below in bold."""
    name_pt, gvm_pt = width_pt * 0.42, width_pt * 0.2
    band_pt = width_pt - name_pt - gvm_pt
    name = words(_vehicle_name(vehicle), name_pt - 2 * GRID, BODY.in_bold())
    gvm = words(tr("GVM {mass}", mass=vehicle.gvm), gvm_pt - 2 * GRID, BODY)
    band = words(tr("Straps that suit it: {band}", band=vehicle.band), band_pt, BODY)
    lines = [row((0, name), (name_pt, gvm), (name_pt + gvm_pt, band))]
    if vehicle.warning:
        lines.append(words(tr("Mind: {warning}", warning=vehicle.warning), width_pt, BODY.in_bold()))
    return stack([*lines, rule(width_pt).below(GRID)]).below(GRID)


def _ending(sheet: TripSheet, width_pt: float) -> list[Block]:
    """What to do with a fault, and who checked."""
    names = [_vehicle_name(one) for one in sheet.vehicles] or [_scope_words(sheet) or tr("Kit of this trip")]
    first, *others = [_signature(number, name, width_pt) for number, name in enumerate(names, 1)]
    signed = stack([heading(tr("Checked by"), width_pt), first, *others])
    return [_fault_box(width_pt).below(4 * GRID), signed]


def _fault_box(width_pt: float) -> Block:
    inner_pt = width_pt - 6 * GRID
    steps = (
        tr("Do not use the piece, not even once and not for a light pull."),
        tr("Put it aside, away from the kit, and tie this sheet's number or a note to it."),
        tr("Tell the trip leader now and the equipment officer before the next trip: the tag and what you saw."),
        tr("Only the equipment officer or a competent person may release it again."),
    )
    title = words(tr("If you find a fault"), inner_pt, BODY.in_bold())
    return boxed(stack([title, *(listed(step, inner_pt) for step in steps)]), width_pt)


def _signature(number: int, name: str, width_pt: float) -> Block:
    """One vehicle: who checked, the signature, the time."""
    who_pt, sign_pt = width_pt * 0.38, width_pt * 0.34
    time_pt = width_pt - who_pt - sign_pt
    who = blank(tr("Name"), who_pt - 2 * GRID, SMALL, 9 * MM, signed_name(number, "name"))
    sign = blank(tr("Signature"), sign_pt - 2 * GRID, SMALL, 9 * MM, signed_name(number, "signature"))
    time = blank(tr("Date and time"), time_pt, SMALL, 9 * MM, signed_name(number, "when"))
    lines = row((0, who), (who_pt, sign), (who_pt + sign_pt, time))
    return stack([words(name, width_pt, BODY.in_bold()), lines]).below(2 * GRID)
