"""Print the pre-trip inspection sheet of a trip, or one for each of its vehicles."""

import hashlib

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.sheet_pieces import going, staying, vehicle_line, vehicles_within
from inspector.duties.sheet_rigs import planned_rigs
from inspector.duties.tell_readiness import days_words
from inspector.duties.trip_readiness import Ready, readiness
from inspector.gear.papers import TRIP_SHEET, SheetScope, TripSheet
from inspector.gear.trip import Trip
from inspector.language import tr
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.refused import Refused
from inspector.register.page import Page

WHOLE = SheetScope()


def print_trip_sheet(office: Office, ref: str, scope: SheetScope = WHOLE) -> Paper:
    """Number, keep and print the sheet of the trip, or of what of it the scope says."""
    sheet, printed = _entered(office, readiness(office, ref), scope)
    return put_out(office, sheet.imprint.number, printed)


def print_each_sheet(office: Office, ref: str) -> tuple[Paper, ...]:
    """A sheet for each vehicle of the trip and one for what rides on none, numbered and kept together."""
    ready = readiness(office, ref)
    loose = any(not ready.trip.rides_on(tag) and tag not in ready.sits for tag in ready.trip.kit)
    wanted = [scope for scope in scopes_of(ready.trip) if loose or not scope.is_rest]
    with office.book.together():
        entered = [_entered(office, ready, scope) for scope in wanted]
    return tuple(put_out(office, sheet.imprint.number, printed) for sheet, printed in entered)


def enter_trip_sheet(office: Office, ref: str, scope: SheetScope = WHOLE) -> TripSheet:
    """Number and keep the sheet of the trip; what it says is in the book, no file is written."""
    return _entered(office, readiness(office, ref), scope)[0]


def scopes_of(planned: Trip) -> tuple[SheetScope, ...]:
    """The sheets that a trip falls into: one for each vehicle, and one for the kit that rides on none by plan."""
    if not planned.vehicles:
        return (WHOLE,)
    rest = any(not planned.rides_on(tag) for tag in planned.kit)
    return (*(SheetScope(tag) for tag in planned.vehicles), *((SheetScope(is_rest=True),) if rest else ()))


def scope_words(scope: SheetScope) -> str:
    """Of what a sheet is, in words."""
    if scope.is_rest:
        return tr("What rides on no vehicle by plan")
    return tr("Vehicle {tag}", tag=scope.vehicle) if scope.vehicle else tr("The whole trip")


def _entered(office: Office, ready: Ready, scope: SheetScope) -> tuple[TripSheet, Printed]:
    """The sheet as it is kept: with the file that was printed, since what comes back is held against it."""
    known = _known(ready.trip, scope)
    rigs = planned_rigs(office, ready, known.vehicle)
    with office.book.page() as page:
        number = next_number(page, "S", TRIP_SHEET)
        sheet = replace(_sheet(office, page, ready, known, number), rigs=rigs)
        printed = inspection_sheet(sheet, PageSize(office.page))
        digest = hashlib.sha256(printed.pdf).hexdigest()
        page.keep_bytes(digest, printed.pdf)
        sheet = replace(sheet, layout=printed.layout, pdf=digest)
        page.add_document(number, TRIP_SHEET, office.today, ready.trip.id, sheet)
        facts = {"number": number, "trip": ready.trip.ref, "of": known}
        page.enter("print sheet", by=office.officer.id, at=office.now, facts=facts)
    return sheet, printed


def _known(planned: Trip, scope: SheetScope) -> SheetScope:
    """The scope with the vehicle's tag as the trip has it; refused where that vehicle does not go."""
    wanted = scope.vehicle.strip()
    if not wanted:
        return replace(scope, vehicle="")
    if found := next((one for one in planned.vehicles if one.casefold() == wanted.casefold()), ""):
        return replace(scope, vehicle=found)
    why = tr("{tag} does not go on the trip {ref}.", tag=wanted, ref=planned.ref)
    listed = ", ".join(planned.vehicles) or tr("none yet")
    raise Refused(tr("vehicle"), why, tr("Use one of: {tags}.", tags=listed))


def _sheet(office: Office, page: Page, ready: Ready, scope: SheetScope, number: str) -> TripSheet:
    planned = ready.trip
    return TripSheet(
        imprint=imprint(office, page, tr("Pre-trip inspection sheet"), number),
        trip=planned.name,
        place=planned.place,
        dates=days_words(planned),
        leader=planned.leader,
        vehicles=tuple(vehicle_line(office, one, ready) for one in vehicles_within(ready, scope)),
        going=tuple(going(office, ready, scope)),
        staying=tuple(staying(ready, scope)),
        scope=scope,
    )
