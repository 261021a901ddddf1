"""Carry the register over to another folder or a server, whole and proved."""

from pathlib import Path

from inspector.duties.machine_settings import LAST_PLACE
from inspector.duties.office import Office
from inspector.duties.register_place import Place
from inspector.language import tr
from inspector.register import move as carrying
from inspector.register.move import Moved
from inspector.register.where_it_lies import REGISTER_FILE


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
