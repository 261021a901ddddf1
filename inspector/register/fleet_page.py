"""The part of a page that holds vehicles, fitted parts and trips."""

from inspector.gear.changes import NewTripChange, NewVehicleChange
from inspector.gear.fitting import Fitted, Fitting, NewFitting
from inspector.gear.item import Item
from inspector.gear.trip import Trip, Vehicle
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import fleet, tables
from inspector.register.leaf import Leaf
from inspector.register.rows import to_body


class FleetPage(Leaf):
    """Vehicles, what sits on them, and the trips they go on."""

    def add_vehicle(self, vehicle: Vehicle) -> None:
        """Keep a vehicle as it came into the register."""
        self._add(tables.vehicle, {"id": vehicle.id, "tag": vehicle.tag, "body": to_body(vehicle)})

    def add_vehicle_change(self, facts: NewVehicleChange) -> None:
        """Keep new facts of a vehicle; they stand from now on."""
        self._add_dated(tables.vehicle_change, "vehicle_id", facts.vehicle.id, facts.on, facts)

    def add_fitting(self, item: Item, facts: NewFitting) -> None:
        """Keep that a part was fitted or taken off."""
        self._add_event(tables.fitting, item, facts.on, facts)

    def add_trip(self, trip: Trip) -> None:
        """Keep a trip as it was first planned."""
        self._add(tables.trip, {"id": trip.id, "ref": trip.ref, "first_on": trip.first_on, "body": to_body(trip)})

    def add_trip_change(self, facts: NewTripChange) -> None:
        """Keep a trip's new plan; it stands from now on."""
        self._add_dated(tables.trip_change, "trip_id", facts.trip.id, facts.on, facts)

    def vehicles(self) -> tuple[Vehicle, ...]:
        """Every vehicle by tag, with its standing facts."""
        return fleet.vehicles(self._connection)

    def vehicle(self, tag: str) -> Vehicle:
        """The vehicle with this tag, in any case; refused where there is none."""
        known = self.vehicles()
        for one in known:
            if one.tag.casefold() == tag.strip().casefold():
                return one
        why = tr("No vehicle has the tag “{tag}”.", tag=tag.strip())
        named = ", ".join(one.tag for one in known)
        what = tr("Use one of: {tags}.", tags=named) if named else tr("Write the vehicle into the register first.")
        raise Refused(tr("vehicle"), why, what)

    def vehicle_changes(self, vehicle: Vehicle) -> tuple[NewVehicleChange, ...]:
        """A vehicle's life, oldest first; the first entry is how it came into the register."""
        return fleet.vehicle_changes(self._connection, vehicle.id)

    def fittings(self) -> dict[str, Fitted]:
        """Where each fitted part sits now, by the piece's id; loose pieces are left out."""
        return fleet.fittings(self._connection)

    def last_fittings(self) -> dict[str, Fitting]:
        """What was fitted or taken off last, by the piece's id; a piece that was never moved is left out."""
        return fleet.last_fittings(self._connection)

    def fitted(self, item: Item) -> Fitted | None:
        """Where a piece sits now: where it was fitted last, else where it was booked; None for a loose piece."""
        moved = self.fittings_of(item)
        return moved[-1].to if moved else item.facts.fitted

    def fittings_of(self, item: Item) -> tuple[NewFitting, ...]:
        """What was fitted and taken off of one piece after its booking, oldest first."""
        return fleet.fittings_of(self._connection, item)

    def all_fittings(self) -> tuple[tuple[Item, tuple[NewFitting, ...]], ...]:
        """Every piece that was ever on a vehicle, with what was fitted and taken off after its booking."""
        return tuple(fleet.all_fittings(self._connection))

    def trips(self) -> tuple[Trip, ...]:
        """Every trip as it is planned now, by its first day."""
        return fleet.trips(self._connection)

    def trip_changes(self, trip: Trip) -> tuple[NewTripChange, ...]:
        """A trip's plans, oldest first; the first entry is how it was planned."""
        return fleet.trip_changes(self._connection, trip.id)
