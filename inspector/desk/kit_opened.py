"""What the page of the check before a trip needs from the register, fetched in one go by the worker."""

from msgspec import Struct

from inspector.desk.opened import trips_ahead
from inspector.duties.check_kit import kit_check
from inspector.duties.check_piece import check_piece
from inspector.duties.look_up import people
from inspector.duties.office import Office
from inspector.gear.kit_check import KitCheck, Seen
from inspector.gear.person import Person
from inspector.gear.trip import Trip


class Choices(Struct, frozen=True):
    """The trips that have not ended, the next one first, and the people who may look."""

    trips: tuple[Trip, ...]
    people: tuple[Person, ...]


def choices(office: Office) -> Choices:
    """What there is to choose among."""
    return Choices(trips_ahead(office), people(office))


def checked(office: Office, ref: str, tag: str, member: str, seen: Seen) -> KitCheck:
    """Keep a check of one piece; the kit as it stands then."""
    check_piece(office, ref, tag, member, seen)
    return kit_check(office, ref)
