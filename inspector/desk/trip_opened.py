"""What the page of a trip needs from the register, fetched in one go by the worker."""

from msgspec import Struct

from inspector.duties.look_up import people, trips
from inspector.duties.office import Office
from inspector.duties.tell_changes import trip_history
from inspector.duties.trip_readiness import Ready, readiness
from inspector.duties.work_rigs import kit_lacks, set_kit
from inspector.gear.lists import HistoryRow
from inspector.gear.packing import Packed
from inspector.gear.trip import Trip


class OpenedTrip(Struct, frozen=True):
    """A trip, whether it is ready, who goes by name, what its kit lacks, the trips to choose among, its history."""

    ready: Ready
    people: tuple[str, ...]
    lacks: tuple[str, ...]
    is_over: bool
    trips: tuple[Trip, ...]
    history: tuple[HistoryRow, ...]

    @property
    def trip(self) -> Trip:
        """The trip itself."""
        return self.ready.trip


def all_trips(office: Office) -> tuple[Trip, ...]:
    """The next trip first, the later ones, then those over, the last one first."""
    known = trips(office)
    ahead = [one for one in known if one.last_on >= office.today]
    over = [one for one in known if one.last_on < office.today]
    return (*ahead, *reversed(over))


def opened_trip(office: Office, ref: str) -> OpenedTrip | None:
    """The trip with this reference, the next one where none is named; None where the register holds none."""
    known = all_trips(office)
    if not known:
        return None
    ready = readiness(office, ref or known[0].ref)
    names = {one.id: one.name for one in people(office)}
    who = tuple(names.get(key, key) for key in ready.trip.people)
    over = ready.trip.last_on < office.today
    lacks, history = kit_lacks(office, ready.trip.ref, ready), trip_history(office, ready.trip.ref)
    return OpenedTrip(ready, who, lacks, over, known, history)


def with_kit(office: Office, ref: str, found: Packed) -> OpenedTrip | None:
    """Take a proposed kit; the trip as it stands then."""
    set_kit(office, ref, found)
    return opened_trip(office, ref)
