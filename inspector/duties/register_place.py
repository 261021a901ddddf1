"""Where a register lies: a folder of this machine, or a database on a server by its address."""

from pathlib import Path
from typing import TYPE_CHECKING

from inspector.language import tr
from inspector.register.where_it_lies import is_address

if TYPE_CHECKING:
    from inspector.duties.office import Office

Place = Path | str


def place_of(text: str) -> Place:
    """A folder, or an address as text. Refused: an address that is none, or with a password in it."""
    if not is_address(text):
        return Path(text).expanduser()
    from inspector.register.address import checked_address

    return checked_address(text)


def moved_away_to(office: "Office") -> str:
    """Where the register went; empty where it is still here."""
    with office.book.reading() as page:
        return page.moved_to()


def moved_away_words(to: str) -> str:
    """What to say as it is opened."""
    return tr("This register was moved to {to}; it can be looked at, and nothing is written here any more.", to=to)
