"""Registers of which each test has its own without making it: they are made once a process or run, and copied.

A new one has tables and triggers and nothing else; each makes its own name when it is opened. The migrations themselves
run in tests/register/test_upgrade.py, in test_history_is_kept.py and by `inspector begin` in tests/cli.
"""

from functools import cache
from pathlib import Path
from shutil import copyfile
from tempfile import TemporaryDirectory

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.register.book import Book, open_book
from inspector.register.guards import guarded_engine
from inspector.register.upgrade import bring_up


def fresh_book(place: Path) -> Book:
    """The register at the place, opened; begun there where none is."""
    if not place.exists():
        place.write_bytes(_tables_alone())
    return open_book(place)


@cache
def _tables_alone() -> bytes:
    with TemporaryDirectory() as folder:
        place = Path(folder) / "register.db"
        engine = guarded_engine(f"sqlite:///{place}")
        bring_up(engine)
        engine.dispose()
        return place.read_bytes()


def copied(built: Office, folder: Path) -> Office:
    """The office on a copy in the folder of a register that was built and closed."""
    copyfile(built.out_tray.parent / "register.db", folder / "register.db")
    return replace(built, book=open_book(folder / "register.db"), out_tray=folder / "documents")
