"""What forms offer to choose among: people, vehicles and trips that the register knows."""

from datetime import date

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.who import seconds_prove
from inspector.gear.person import Person
from inspector.gear.trip import Trip, Vehicle


class FormFacts(Struct, frozen=True):
    """Everybody by name, every vehicle, the trips, the last one first; the club's name and the day.

    seconds_prove: whether a second name is asked for its passphrase.
    """

    people: tuple[Person, ...]
    vehicles: tuple[Vehicle, ...]
    trips: tuple[Trip, ...]
    club: str
    today: date
    seconds_prove: bool


def form_facts(office: Office) -> FormFacts:
    """Read them all in one look."""
    with office.book.reading() as page:
        return FormFacts(
            people=tuple(sorted(page.people(), key=lambda one: one.name.casefold())),
            vehicles=page.vehicles(),
            trips=tuple(reversed(page.trips())),
            club=page.setting("club"),
            today=office.today,
            seconds_prove=seconds_prove(office, page),
        )
