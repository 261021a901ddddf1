"""How large a table may be: more than any club owns, less than what fills a small computer's memory."""

from collections.abc import Iterable, Iterator, Sequence
from typing import TypeVar

from inspector.language import tr
from inspector.refused import Refused

MOST_BYTES = 50_000_000  # of a file as it lies on the disk
MOST_UNPACKED_BYTES = 100_000_000
MOST_ROWS = 100_000
MOST_COLUMNS = 500
MOST_CELLS = 5_000_000

Cells = TypeVar("Cells", bound=Sequence[object])


def check_bytes(data: bytes, name: str) -> None:
    """Refuse an empty file, and one that is too large to be a list of gear."""
    if not data:
        raise Refused(name, tr("The file is empty."), tr("Choose the file with the list."))
    if len(data) > MOST_BYTES:
        why = tr("It has more than {most} MB.", most=MOST_BYTES // 10**6)
        raise Refused(name, why, tr("Save only the sheet with the gear, without pictures, and choose that."))


def check_shape(rows: Iterable[Cells], name: str) -> Iterator[Cells]:
    """The rows again; refused as soon as they are too many or too wide."""
    cells = 0
    for number, row in enumerate(rows, 1):
        width = len(row)
        cells += width
        if number > MOST_ROWS or width > MOST_COLUMNS or cells > MOST_CELLS:
            raise too_large(name)
        yield row


def check_extent(rows: int, columns: int, name: str) -> None:
    """Refuse a table of so many rows and columns where that is too large."""
    if rows > MOST_ROWS or columns > MOST_COLUMNS or rows * columns > MOST_CELLS * 10:
        raise too_large(name)


def too_large(name: str) -> Refused:
    """The refusal of a table that is too large."""
    why = tr("It has more than {rows} rows or {columns} columns.", rows=MOST_ROWS, columns=MOST_COLUMNS)
    return Refused(name, why, tr("Keep only the rows and columns with gear in it, and choose that file."))
