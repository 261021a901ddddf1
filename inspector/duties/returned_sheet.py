"""A trip sheet that came back on paper: its pieces in the order of the paper, with what is asked of each."""

from datetime import date

from msgspec import Struct

from inspector.duties.check_kit import kit_check, sheets_of
from inspector.duties.check_piece import trip_of_sheet
from inspector.duties.look_up import people
from inspector.duties.office import Office
from inspector.gear.kit_check import KitPiece
from inspector.gear.papers import TripSheet
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.register.rows import from_body


class ReturnedSheet(Struct, frozen=True):
    """number: as printed. pieces: those that it asks about, in its order. gone: tags on it that the kit has no more.

    people: who may have looked.
    """

    number: str
    printed_on: date
    trip: Trip
    pieces: tuple[KitPiece, ...]
    gone: tuple[str, ...]
    people: tuple[Person, ...]


def returned_sheet(office: Office, number: str) -> ReturnedSheet:
    """What stands on the sheet with this number; refused where no trip has one."""
    planned, own = trip_of_sheet(office, number)
    with office.book.reading() as page:
        printed = dict(sheets_of(page, planned))
        said = from_body(page.document_body(own), TripSheet)
    kit = kit_check(office, planned.ref)
    found = {one.tag: kit.piece(one.tag) for one in said.going}
    pieces = tuple(one for one in found.values() if one is not None)
    gone = tuple(tag for tag, one in found.items() if one is None)
    return ReturnedSheet(own, printed[own], planned, pieces, gone, people(office))
