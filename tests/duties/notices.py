"""Short words for recalls: a maker's notice, and pieces that are of it, may be of it, or are not."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, timedelta
from pathlib import Path
from shutil import copyfile

from msgspec.structs import replace

from inspector.duties.call_in import CalledIn, call_in
from inspector.duties.found_club import found_club
from inspector.duties.lend import lend
from inspector.duties.look_up import club_officer, open_item, people
from inspector.duties.office import Office
from inspector.gear.item import NewItem
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Issuer, Meant, NewRecall
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import SHACKLE_READINGS, shackle
from tests.duties.rigs import fit, member
from tests.duties.test_opinions import add

MEANT = Meant("Kelpline", ("bow_shackle",), ("QX7",), "KS240100", "KS240199")
DI = "Di Member"
WHY = "Pins of this batch were hardened wrongly."
REMEDY = "Send the pin back; the maker replaces it."


def marked(tag: str, serial: str, mark: str = "KELPLINE", **more: object) -> NewItem:
    """A shackle with these marks."""
    return replace(shackle(tag), maker_mark=mark, serial=serial, **more)


def booked(office: Office, tag: str, serial: str, mark: str = "KELPLINE", **more: object) -> None:
    """A shackle with these marks, inspected and fit."""
    fit(office, marked(tag, serial, mark, **more), SHACKLE_READINGS)


def notice(office: Office, meant: Meant = MEANT) -> NewRecall:
    """The maker's notice."""
    return NewRecall(office.today, Issuer.MAKER, meant, WHY, REMEDY, "Safety notice 7", date(2026, 11, 20))


def entered(office: Office, meant: Meant = MEANT) -> CalledIn:
    """The maker's notice, entered."""
    return call_in(office, notice(office, meant))


def built(folder: Path, rules: Rulebook, *more: str) -> Path:
    """The file of a club: one of the notice, one whose serial nobody can read, one of another row, one lent to Di.

    more: names of more competent people.
    """
    made = office_in(folder, rules)
    office = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    member(office)
    for name in more:
        add(office, name)
    for tag, serial in (("SH-1", "KS240150"), ("SH-2", ""), ("SH-3", "KS230007"), ("SH-4", "KS240101")):
        booked(office, tag, serial)
    lend(office, ["SH-4"], DI, office.today + timedelta(days=60))
    office.book.close()
    return folder / "register.db"


@contextmanager
def seated_at(file: Path, folder: Path, rules: Rulebook) -> Iterator[Office]:
    """A copy of it with its officer at the desk."""
    copyfile(file, folder / "register.db")
    made = office_in(folder, rules)
    yield replace(made, officer=next(one for one in people(made) if one.id == club_officer(made)))
    made.book.close()


def outcome(office: Office, tag: str) -> Outcome:
    """How a piece stands."""
    return open_item(office, tag).verdict.outcome
