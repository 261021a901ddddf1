"""A CSV file of whatever alphabet and separator as rows of texts."""

import codecs
import csv
from collections import Counter
from collections.abc import Iterable
from io import StringIO

from inspector.gear.import_list import Row
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.exchange.guard import Cleaned
from inspector.register.exchange.table_limits import check_shape

_MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
_DELIMITERS = (";", "\t", "|", ",")
_LOOKED_AT = 200  # rows by which the separator is told
_LONGEST_CELL = 32_767
_NO_TEXT_RATIO = 0.02  # of signs that no text has


def csv_rows(data: bytes, name: str, encoding: str = "", delimiter: str = "") -> tuple[tuple[Row, ...], str, str]:
    """The rows, and the encoding and separator that were taken. Refuses what is no text, or too large a table."""
    text, taken = _decoded(data, name, encoding)
    head, _, rest = text.partition("\n")
    if head.strip().lower().startswith("sep=") and len(head.strip()) == len("sep=") + 1:
        delimiter, text = delimiter or head.strip()[-1], "\n" + rest  # the line stays as an empty one: rows keep number
    lines = StringIO(text, newline="")
    delimiter = delimiter or _delimiter(lines)
    cleaned = Cleaned().__getitem__
    try:
        rows = tuple([tuple(map(cleaned, one)) for one in check_shape(_parsed(lines, delimiter), name)])
    except (csv.Error, TypeError) as error:
        why = tr("It cannot be read as a table ({why}).", why=error)
        raise Refused(name, why, tr("Save it anew as CSV or XLSX from the program it comes from.")) from error
    return rows, taken, delimiter


def _decoded(data: bytes, name: str, encoding: str) -> tuple[str, str]:
    ways = (encoding,) if encoding else _encodings(data)
    for way in ways:
        try:
            text = data.decode(way)
        except (UnicodeDecodeError, LookupError):
            continue
        if _is_text(text):
            return text.replace("\r\n", "\n"), way.removesuffix("-sig")
    why = tr("It is no text in any alphabet that can be told apart.")
    raise Refused(name, why, tr("Save it anew as CSV (UTF-8) or XLSX from the program it comes from."))


def _encodings(data: bytes) -> tuple[str, ...]:
    """The encodings to try, the surest first. Every byte is a sign of latin-1, so it comes last."""
    for mark, way in _MARKS:
        if data.startswith(mark):
            return (way,)
    sample = data[:4000]
    if sample.count(0) > len(sample) // 4:
        return ("utf-16-le", "utf-16-be") if sample[1::2].count(0) > sample[::2].count(0) else ("utf-16-be",)
    return ("utf-8", "cp1252", "latin-1")


def _is_text(text: str) -> bool:
    """Whether hardly a sign is one that no text has, and none is a NUL."""
    if "\0" in text:
        return False
    some = text[:20_000]
    strange = {one for one in set(some) if not one.isprintable() and one not in "\r\n\t\x0b\x0c\xa0\u202f\ufeff\xad"}
    return sum(map(some.count, strange)) <= len(some) * _NO_TEXT_RATIO


def _delimiter(lines: StringIO) -> str:
    """The sign that parts most rows into the same number of cells; a decimal comma parts them unevenly."""
    return max(_DELIMITERS, key=lambda one: _evenness(lines, one))


def _evenness(lines: StringIO, delimiter: str) -> tuple[float, float, int]:
    widths = []
    try:
        for cells in _parsed(lines, delimiter):
            if any(map(str.strip, cells)):
                widths.append(len(cells))
            if len(widths) == _LOOKED_AT:
                break
    except csv.Error:
        return (0.0, 0.0, 0)
    wide = Counter(one for one in widths if one > 1)
    if not wide:
        return (0.0, 0.0, 0)
    width, rows = wide.most_common(1)[0]
    is_headed = float(any(one == width for one in widths[:3]))
    return (rows / len(widths) if is_headed else 0.0, is_headed, width)


def _parsed(lines: StringIO, delimiter: str) -> Iterable[list[str]]:
    lines.seek(0)
    csv.field_size_limit(_LONGEST_CELL * 4)
    return csv.reader(lines, delimiter=delimiter)
