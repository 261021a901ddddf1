"""Back the register up, and put a copy in its place."""

from pathlib import Path

from inspector.duties.office import Office
from inspector.duties.register_place import Place
from inspector.language import tr
from inspector.refused import Refused
from inspector.register import backup
from inspector.register.backup import Backup
from inspector.register.where_it_lies import REGISTER_FILE


def back_up(office: Office, folder: Path | None = None) -> Backup:
    """Copy the register into a folder, its own `backups` where none is named, and enter which copy was made."""
    made = backup.back_up(office.book, folder or usual_folder(office), office.today, office.told)
    with office.book.page() as page:
        page.enter("back up", by=office.officer.id, at=office.now, facts=facts_of(made))
    return made


def usual_folder(office: Office) -> Path:
    """Where copies go when no folder is named: beside the register, to be carried to another disk from there."""
    return office.out_tray.parent / backup.FOLDER


def facts_of(made: Backup) -> dict[str, object]:
    """What the ledger tells of a copy: its name without the folders of this machine."""
    return {"file": made.file.name, "bytes": made.size_bytes, "sha256": made.sha256, "head": made.head}


def restore(file: Path, place: Place, head: str = "") -> Backup:
    """Put a copy into a folder that has no register. head: one printed on a document, which the copy must hold."""
    return backup.restore(file, file_in(place), head.strip().lower())


def file_in(place: Place) -> Path:
    """The file of a register in a folder; refused for an address."""
    if isinstance(place, str):
        why = tr("A copy is a file, and is put back into a folder.")
        raise Refused(tr("folder"), why, tr("Put it into an empty folder, and move it to the server from there."))
    return place / REGISTER_FILE


def enter_restored(office: Office, made: Backup) -> None:
    """Enter into a restored register which copy it was made from."""
    with office.book.page() as page:
        page.enter("restore", by=office.officer.id, at=office.now, facts=facts_of(made))
