"""Open an archive: its register is put into a folder that has none, once all of it was proved."""

from pathlib import Path

from inspector.language import tr
from inspector.refused import Refused
from inspector.register import backup
from inspector.register.archive.prove import Proved, proved


def open_archive(file: Path, target: Path, head: str = "", key: str = "") -> Proved:
    """Put the register of an archive in the place of one that is not there. head, key: as `proved` takes them.

    Nothing is written into the target's folder before all of the archive was found as it was written. The register
    takes a new name of its own for its documents, so that no number is issued twice.
    """
    with proved(file, head, key) as found:
        if found.faults:
            first = found.faults[0]
            why = tr("The archive is not as it was written: {where}: {why}", where=first.where, why=first.why)
            raise Refused(tr("archive"), why, tr("Use another copy of it; nothing was put in its place."))
        backup.restore(found.database, target)
        return found
