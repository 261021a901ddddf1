"""What was changed of a vehicle or a trip after it was first written down: the full new facts, by whom and why."""

from datetime import date

from msgspec import Struct

from inspector.gear.trip import Trip, Vehicle


class NewVehicleChange(Struct, frozen=True):
    """A vehicle's facts from a day on: weighed anew, its GVM raised, sold to another member. by: a person's id."""

    on: date
    vehicle: Vehicle
    by: str
    why: str


class NewTripChange(Struct, frozen=True):
    """A trip as it is planned from a day on. by: a person's id; why may be empty."""

    on: date
    trip: Trip
    by: str
    why: str = ""
