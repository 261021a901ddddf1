"""What the page of the check before a trip needs from the register, fetched in one go by the worker."""

from collections.abc import Sequence

from msgspec import Struct

from inspector.desk.opened import trips_ahead
from inspector.duties.check_again import check_ahead, read_again
from inspector.duties.check_kit import kit_check
from inspector.duties.check_piece import check_piece
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.plausible import Caution
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


def checked(office: Office, ref: str, tag: str, member: str, seen: Seen, confirmed: Sequence[Caution] = ()) -> KitCheck:
    """Keep a check of one piece, where all that is odd was confirmed; the kit as it stands then."""
    odd = check_ahead(office, open_item(office, tag).dossier, seen).odd if seen.readings else ()
    check_piece(office, ref, tag, member, read_again(seen, odd, confirmed))
    return kit_check(office, ref)
