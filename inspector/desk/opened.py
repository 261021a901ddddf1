"""What the pages need from the register, fetched in one go: deeds for the worker, results without any tie to it."""

from collections.abc import Mapping
from dataclasses import dataclass

from inspector.duties.keep_draft import forget
from inspector.duties.log_inspection import Written, log_inspection
from inspector.duties.look_up import RegisterFacts, list_gear, open_item, people, register_facts, trips
from inspector.duties.office import Office
from inspector.duties.tell_history import history_of
from inspector.duties.whereabouts import where_is
from inspector.gear.judged import Judged
from inspector.gear.lists import GearRow, HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.gear.verdict import Fact
from inspector.language import tr

_MOST_ROWS = 500


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the list is asked for. order: "tag", "due" or "worst"."""

    search: str = ""
    outcome: Outcome | None = None
    order: str = "due"


@dataclass(frozen=True, slots=True)
class Listed:
    """The rows found. counts: pieces that answer the search, by outcome; all under None."""

    wanted: Wanted
    rows: tuple[GearRow, ...]
    counts: Mapping[Outcome | None, int]
    register: RegisterFacts


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


def listed(office: Office, wanted: Wanted) -> Listed:
    """The gear list."""
    found = list_gear(office, wanted.search, outcome=wanted.outcome, order=wanted.order, limit=_MOST_ROWS)
    counts: dict[Outcome | None, int] = {one: found.counts[one] for one in Outcome}
    counts[None] = sum(found.counts.values())
    return Listed(wanted, found.rows, counts, register_facts(office))


def opened(office: Office, tag: str) -> Opened:
    """The piece with this tag."""
    return Opened(open_item(office, tag), history_of(office, tag), people(office), where_is(office, tag))


def inspected(office: Office, tag: str, written: Written) -> Opened:
    """Log the inspection, and let go of its draft; the piece as it stands then."""
    log_inspection(office, tag, written)
    forget(office, draft_key(tag))
    return opened(office, tag)


def draft_key(tag: str) -> str:
    """Under which key the draft of an inspection is kept."""
    return f"inspect {tag}"


def trips_ahead(office: Office) -> tuple[Trip, ...]:
    """Trips that have not ended, the nearest first."""
    return tuple(one for one in trips(office) if one.last_on >= office.today)
