"""How the window comes to a register: what app hands to it."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct, field

from inspector.duties.machine_settings import MachineSettings

if TYPE_CHECKING:
    from inspector.duties.office import Office, Told
    from inspector.duties.register_place import Place

Opening = Callable[["Told"], "Office"]  # opens the register; it calls what it is given after each step of long work


class Doors(Struct, frozen=True):
    """How a register comes to be open, or is refused. begin: place, club, officer; open, sample: place.

    A place is a folder or an address on a server. restore: folder, the file of a copy or an archive, a ledger head
    that it must hold or "". rescue: folder, a damaged file.
    """

    begin: "Callable[[Place, str, str], Office]"
    open: "Callable[[Place], Office]"
    sample: "Callable[[Place], Office]"
    restore: "Callable[[Place, Path, str], Office]"
    rescue: "Callable[[Place, Path], Office]"


class Start(Struct, frozen=True):
    """How the program comes to a register. place: the folder or address to propose; font_files: the type.

    machine: what this machine remembers of the window.
    """

    doors: Doors
    place: str
    font_files: tuple[Path, ...]
    machine: MachineSettings = field(default_factory=MachineSettings)
