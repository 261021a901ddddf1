"""Where a register lies: a folder of this machine, or a database on a server by its address."""

from pathlib import Path

from inspector.duties.office import Office
from inspector.language import tr
from inspector.register import move as carrying
from inspector.register.address import checked_address, is_address
from inspector.register.book import REGISTER_FILE
from inspector.register.move import Moved

Place = Path | str
LAST_PLACE = "register"  # under which this machine remembers the register opened last


def place_of(text: str) -> Place:
    """A folder, or an address as text. Refused: an address that is none, or with a password in it."""
    return checked_address(text) if is_address(text) else Path(text).expanduser()


def move_register(office: Office, to: Place) -> Moved:
    """Carry the register over to an empty database or folder, and close the one that is left.

    Papers, drafts and copies beside the register stay where they are. This machine opens the new place from now on.
    """
    target = to / REGISTER_FILE if isinstance(to, Path) else to
    moved = carrying.move(office.book, target, office.officer.id, office.now, office.told)
    office.machine.put(LAST_PLACE, carrying.place_kept(target))
    return moved


def moved_words(moved: Moved) -> tuple[str, ...]:
    """What came of a move."""
    said = [
        tr("The register lies in {to} now: {rows} rows, the same as before.", to=moved.to, rows=f"{moved.row_count:,}"),
        tr("`verify` found both sides whole; both hold the head {head}.", head=moved.head),
        tr("What lay here stays as it was and takes no deed any more."),
    ]
    if moved.again:
        said.append(tr("The move had been begun before, and is complete now."))
    return tuple(said)


def moved_away_to(office: Office) -> str:
    """Where the register went; empty where it is still here."""
    with office.book.reading() as page:
        return page.moved_to()


def moved_away_words(to: str) -> str:
    """What to say as it is opened."""
    return tr("This register was moved to {to}; it can be looked at, and nothing is written here any more.", to=to)
