"""Opens the file of another copy of a register to read from it."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from inspector.gear.lists import Verified
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.backup import opened_copy
from inspector.register.guards import guarded_engine
from inspector.register.merging import Other
from inspector.register.proof import prove


@contextmanager
def other_copy(file: Path) -> Iterator[Other]:
    """Open the file of another copy by a copy of it, so that it stays as it is; refused where it is not whole."""
    with TemporaryDirectory(prefix="register-") as folder:
        place = opened_copy(file, Path(folder) / "other.db")
        engine = guarded_engine(f"sqlite:///{place}")
        try:
            with engine.connect() as connection:
                found = prove(connection)
                if found.faults:
                    raise _not_whole(file, found)
                yield Other(connection, found)
        finally:
            engine.dispose()


def _not_whole(file: Path, found: Verified) -> Refused:
    first = found.faults[0]
    why = tr("The history in {file} is not whole ({where}: {why}).", file=file.name, where=first.where, why=first.why)
    what = tr("Nothing was taken over. Check that copy with verify, and rescue what can be read of it.")
    return Refused(tr("copy"), why, what)
