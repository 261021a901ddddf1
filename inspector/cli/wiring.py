"""What app hands to the command line, and what every command gets."""

from collections.abc import Callable
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

import click
from msgspec import Struct

if TYPE_CHECKING:
    from inspector.duties.office import Office, Told
    from inspector.duties.register_place import Place
    from inspector.duties.rescue_register import RescueDone


class Wiring(Struct, frozen=True):
    """Doors to the rooms that the command line does not open itself. usual_place: where the register lies.

    welcome: asks which register is to be worked on, where a folder has none, and opens the window on it.
    note_fault: writes down a fault that nobody foresaw and returns the file it stands in.
    """

    version: str
    usual_place: "Place"
    has_register: "Callable[[Place], bool]"
    open_office: "Callable[[Place], Office]"
    rescue: "Callable[[Path, Path], RescueDone]"
    open_window: "Callable[[Callable[[Told], Office], str], int]"
    welcome: "Callable[[Place], int]"
    has_display: Callable[[], bool]
    note_fault: Callable[[Exception], Path]


class Desk(Struct, frozen=True):
    """What every command gets: the doors, the folder or address of the register and who is at the desk."""

    wiring: Wiring
    folder: "Place"
    officer: str

    def office_if_any(self) -> "Office | None":
        """The office, or None where there is no register."""
        return self.office() if self.wiring.has_register(self.folder) else None

    def office(self) -> "Office":
        """The office with its officer seated, and everything judged that time has changed."""
        from inspector.cli.opened import opened

        return opened(self)

    def opening(self, told: "Told") -> "Office":
        """The office for the window; told hears how far judging has come. Refused where the register was moved."""
        from inspector.cli.opened import opened_for_window

        return opened_for_window(self, told)

    def seated(self) -> "Office":
        """The office with its officer seated, and nothing judged."""
        from inspector.cli.opened import seated

        return seated(self)


class PlaceType(click.ParamType["Place"]):
    """A folder, or the address of a database on a server."""

    name = "place"

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> "Place":
        """The place; an address is refused where it is none or carries a password."""
        from inspector.duties.register_place import place_of

        return value if isinstance(value, Path) else place_of(str(value))


def choice(words: type[StrEnum]) -> click.Choice[str]:
    """An option that takes the values of an enumeration."""
    return click.Choice([word.value for word in words])
