"""A table in DEVELOPERS.md between two marks: read, or written anew by a script."""

import sys
from collections.abc import Callable
from pathlib import Path

DOCUMENT = Path(__file__).resolve().parent.parent / "DEVELOPERS.md"


def written(name: str) -> str:
    """The table of this name as it stands in the document."""
    return DOCUMENT.read_text(encoding="utf-8").partition(_begins(name))[2].partition(_ends(name))[0].strip()


def print_or_write(name: str, table: Callable[[], str]) -> int:
    """Print the table, or with --write put it into the document."""
    if "--write" not in sys.argv:
        print(table())
        return 0
    before, begins, rest = DOCUMENT.read_text(encoding="utf-8").partition(_begins(name))
    if not begins:
        raise SystemExit(f"DEVELOPERS.md has no mark {_begins(name)}")
    after = rest.partition(_ends(name))[2]
    DOCUMENT.write_text(f"{before}{begins}\n{table()}\n{_ends(name)}{after}", encoding="utf-8")
    return 0


def _begins(name: str) -> str:
    return f"<!-- {name}: begin -->"


def _ends(name: str) -> str:
    return f"<!-- {name}: end -->"
