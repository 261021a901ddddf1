"""What is looked at in a packed workbook before anybody unpacks it: its size, and how far its cells reach.

The reader makes room for the whole rectangle that the cells span, so one cell far out in a tiny file would ask for more
memory than any machine has.
"""

import io
import re
import zipfile
import zlib
from collections.abc import Iterator

from inspector.language import tr
from inspector.refused import Refused
from inspector.register.exchange.table_limits import MOST_UNPACKED_BYTES, check_extent

_BROKEN = (zipfile.BadZipFile, zlib.error, OSError, EOFError, ValueError, NotImplementedError, RuntimeError)
_MOST_PARTS = 10_000
_MOST_RATIO = 1000.0
_CELL = re.compile(rb"[\s:]r\s*=\s*[\"']\$?([A-Za-z]{1,9})\$?(\d{1,12})[\"']")
_ROW = re.compile(rb"<(?:\w+:)?row[\s][^>]{0,400}?\br\s*=\s*[\"'](\d{1,12})[\"']")
_REPEATED = re.compile(
    rb"<table:table-cell(?P<cell>[^>]*)(?P<empty>/?)>|<table:table-row(?P<row>[^>]*)>|</table:table-row>"
)
_TIMES = re.compile(rb"number-(?:columns|rows)-repeated=\"(\d{1,12})\"")


def check_packed(data: bytes, name: str) -> None:
    """Refuse a packed workbook that unpacks to too much or whose cells lie too far out. Other files pass."""
    if not data.startswith(b"PK"):
        return
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            _check_size(packed, len(data), name)
            for part in packed.infolist():
                if re.search(r"worksheets/[^/]+\.xml$", part.filename, re.IGNORECASE):
                    _check_cells(packed.read(part), name)
                elif part.filename == "content.xml":
                    _check_repeats(packed.read(part), name)
    except _BROKEN as error:
        why = tr("It is broken: it cannot be unpacked.")
        raise Refused(name, why, tr("Save it anew as XLSX or CSV from the program it comes from.")) from error


def _check_size(packed: zipfile.ZipFile, size_bytes: int, name: str) -> None:
    parts = packed.infolist()
    whole = sum(one.file_size for one in parts)
    if whole > MOST_UNPACKED_BYTES or len(parts) > _MOST_PARTS or whole > size_bytes * _MOST_RATIO:
        why = tr("It unpacks to more than {most} MB.", most=MOST_UNPACKED_BYTES // 10**6)
        raise Refused(name, why, tr("Save only the sheet with the gear, without pictures, and choose that."))


def _check_cells(text: bytes, name: str) -> None:
    """The rectangle that the cells of an XLSX sheet span."""
    cells = _CELL.findall(text)
    columns = max(map(_column, {letters for letters, _ in cells}), default=0)
    rows = max(map(int, {*_ROW.findall(text), *(number for _, number in cells)}), default=0)
    check_extent(rows, columns, name)


def _column(letters: bytes) -> int:
    number = 0
    for sign in letters.upper():
        number = number * 26 + sign - ord("A") + 1
    return number


def _check_repeats(text: bytes, name: str) -> None:
    """How far the cells with a value of an ODS sheet reach once those that are said to repeat are laid out."""
    for rows, columns in _reach(text):
        check_extent(rows, columns, name)


def _reach(text: bytes) -> Iterator[tuple[int, int]]:
    rows = columns = times = 0
    is_filled = False
    for found in _REPEATED.finditer(text):
        if found["row"] is not None:
            columns, is_filled, times = 0, False, _times(found["row"])
            if found["row"].endswith(b"/"):
                rows += times
        elif found["cell"] is not None:
            columns += _times(found["cell"])
            if b"office:" in found["cell"] or not (found["empty"] or found["cell"].endswith(b"/")):
                is_filled = True
                yield 0, columns
        else:
            rows += times
            if is_filled:
                yield rows, 0


def _times(attributes: bytes) -> int:
    found = _TIMES.search(attributes)
    return int(found[1]) if found else 1
