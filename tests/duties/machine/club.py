"""The small register that each run of the machine begins with, and a clock that only goes forward."""

import shutil
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.found_club import found_club
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.look_up import club_officer, people
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.gear.item import NewItem
from inspector.gear.person import Competence, Person
from inspector.gear.trip import Ground, Trip
from inspector.rulebook.load import Rulebook, packaged
from tests.duties.gear import (
    HOLE,
    POINT_READINGS,
    SHACKLE_READINGS,
    STRAP_READINGS,
    all_good,
    kilograms,
    mount,
    point,
    shackle,
    strap,
)
from tests.fresh import fresh_book

EVENING = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)
OFFICER, SECOND, MEMBER = "Ada Officer", "Bo Rigger", "Di Member"
VEHICLES = ("V-1", "V-2")
AT_FIRST = ("SH-1", "SH-2", "KS-1", "BM-1", "RP-1")
LATER = ("SH-3", "KS-2")  # booked in during a run
VISITOR = "KS-3"  # a member's own, which may come along on a trip
TAGS = (*AT_FIRST, *LATER, VISITOR)
NEW: dict[str, NewItem] = {
    "SH-1": shackle("SH-1"),
    "SH-2": shackle("SH-2", MEMBER),
    "SH-3": shackle("SH-3"),
    "KS-1": strap("KS-1"),
    "KS-2": strap("KS-2", SECOND),
    VISITOR: replace(strap(VISITOR, MEMBER), serial="D 3"),
    "BM-1": mount("BM-1"),
    "RP-1": point("RP-1"),
}
SOUND = {
    "SH": SHACKLE_READINGS,
    "KS": STRAP_READINGS,
    "BM": {"wall@top": "5 mm", "wall@bottom": "5 mm", **HOLE},
    "RP": POINT_READINGS,
}


class Clock:
    """Tells the moment, and goes forward alone."""

    def __init__(self) -> None:
        self.moment = EVENING

    def __call__(self) -> datetime:
        return self.moment

    def wait(self, days: int) -> None:
        """Let days pass."""
        self.moment += timedelta(days=days)


@cache
def rules() -> Rulebook:
    """The packaged rulebook, read once."""
    return packaged()


def office_in(folder: Path, clock: Clock) -> Office:
    """The office on a register, its officer at the desk where it has one."""
    office = Office(
        fresh_book(folder / "register.db"), rules(), folder / "documents", Person("nobody", "nobody", ""), clock, "test"
    )
    seated = [one for one in people(office) if one.id == club_officer(office)]
    return replace(office, officer=seated[0]) if seated else office


@cache
def _built() -> Path:
    folder = Path(mkdtemp(prefix="machine-"))
    empty = office_in(folder, Clock())
    office = replace(empty, officer=found_club(empty, "Test Club", OFFICER))
    held = (Competence("all", office.today - timedelta(days=1)),)  # who is entered today is no second name yet
    add_person(office, Person("", SECOND, "inspector", held), "course, card 12")
    add_person(office, Person("", MEMBER, "member"))
    for tag in VEHICLES:
        add_vehicle(office, tag, f"Truck {tag}", "Club", kilograms("3000 kg"))
    for tag in AT_FIRST:
        kind = book_in(office, NEW[tag]).dossier.kind
        record_inspection(office, tag, all_good(office, kind, SOUND[tag[:2]]))
    last = office.today + timedelta(days=3)
    kit = ("SH-1", "SH-2", "KS-1")
    plan_trip(
        office, Trip("", "T-1", "Beach days", "Long Sand", Ground.BEACH, office.today, last, OFFICER, VEHICLES, kit)
    )
    office.book.close()
    return folder


def new_club(clock: Clock) -> tuple[Office, Path]:
    """A copy of the register of its own, and its folder."""
    folder = Path(mkdtemp(prefix="machine-"))
    shutil.copy(_built() / "register.db", folder / "register.db")
    return office_in(folder, clock), folder
