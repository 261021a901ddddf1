"""What the pages need from the register, fetched in one go: deeds for the worker, results without any tie to it."""

from dataclasses import dataclass

from inspector.duties.look_up import open_item, people, trips
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_history import history_of
from inspector.duties.whereabouts import where_is
from inspector.gear.inspection import NewInspection
from inspector.gear.judged import Judged
from inspector.gear.lists import HistoryRow
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.gear.verdict import Fact
from inspector.language import tr


@dataclass(frozen=True, slots=True)
class Opened:
    """A piece with its verdict as it was said, its history, the people, and where it is."""

    judged: Judged
    history: tuple[HistoryRow, ...]
    people: tuple[Person, ...]
    where: str

    @property
    def tag(self) -> str:
        """The tag of the piece."""
        return self.judged.dossier.item.tag

    @property
    def piece(self) -> tuple[Fact, ...]:
        """What is known of the piece, with where it is now."""
        return (Fact(tr("Where it is"), self.where), *self.judged.explanation.piece)


def opened(office: Office, tag: str) -> Opened:
    """The piece with this tag."""
    return Opened(open_item(office, tag), history_of(office, tag), people(office), where_is(office, tag))


def inspected(office: Office, tag: str, facts: NewInspection) -> Opened:
    """Log the inspection; the piece as it stands then."""
    record_inspection(office, tag, facts)
    return opened(office, tag)


def trips_ahead(office: Office) -> tuple[Trip, ...]:
    """Trips that have not ended, the nearest first."""
    return tuple(one for one in trips(office) if one.last_on >= office.today)
