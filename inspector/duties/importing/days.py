"""A cell with a day in any local form. What can be two days is refused until the order of the column is told."""

import re
from collections.abc import Sequence
from datetime import date, timedelta

from inspector.duties.importing.asked import NotTold
from inspector.duties.importing.figures import text_of
from inspector.duties.importing.words import plain, table
from inspector.gear.import_list import Asks, Cell, Column
from inspector.language import tr
from inspector.refused import Refused

DMY, MDY, YMD, COUNT = "dmy", "mdy", "ymd", "count"
_CLOCK = re.compile(r"[T ]\d{1,2}:\d{2}(:\d{2})?(\.\d+)?Z?$")
_ISO = re.compile(r"^\d{4}-\d\d-\d\d$", re.ASCII)
_YEAR_FIRST = re.compile(r"^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$")
_THREE = re.compile(r"^(\d{1,2})\s*([./-])\s*(\d{1,2})\s*\2\s*(\d{4}|\d{2})$")
_NAMED = (
    re.compile(r"^(?P<d>\d{1,2})\W+(?P<m>[^\W\d]+)\W+(?P<y>\d{4})$"),
    re.compile(r"^(?P<m>[^\W\d]+)\W+(?P<d>\d{1,2})(?:st|nd|rd|th)?\W+(?P<y>\d{4})$"),
)
_MONTH = (
    re.compile(r"^(?P<m>\d{1,2})\s*[./-]\s*(?P<y>\d{4})$"),
    re.compile(r"^(?P<y>\d{4})\s*[./-]\s*(?P<m>\d{1,2})$"),
    re.compile(r"^(?P<m>[^\W\d]+)\W+(?P<y>\d{4})$"),
)
_YEAR = re.compile(r"^(19|20)\d{2}$")
_FIRST_COUNTED = date(1899, 12, 30)  # a spreadsheet's day 0, as it stands after its error about 29 February 1900
_COUNTED = range(20_000, 80_000)


def read_day_cell(cell: Cell, column: Column, today: date) -> tuple[date, bool]:
    """The day, and whether it is the first of a month or a year of which no day was written.

    Refused (NotTold) where day and month can change places and nobody said which comes first.
    """
    if isinstance(cell, date):
        return cell, False
    text = _without_clock(cell)
    try:
        if found := _whole(text, column, today):
            return found, False
        if found := _vague(text):
            return found, True
        if _is_count(text):
            if column.order != COUNT:
                raise NotTold(column, Asks.ORDER, text)
            return _FIRST_COUNTED + timedelta(days=int(text)), False
    except ValueError:
        pass
    raise Refused(column.heading, tr("“{text}” is no day.", text=text), tr("Mend it in the list, or leave it empty."))


def _without_clock(cell: Cell) -> str:
    text = text_of(cell)
    return _CLOCK.sub("", text) if ":" in text else text


def _whole(text: str, column: Column, today: date) -> date | None:
    if _ISO.match(text):
        return date.fromisoformat(text)
    if found := _YEAR_FIRST.match(text):
        return date(int(found[1]), int(found[2]), int(found[3]))
    if found := _THREE.match(text):
        first, second = int(found[1]), int(found[3])
        return _ordered(first, second, found[4], _order(first, second, found[2], column, text), today)
    for form in _NAMED:
        if (found := form.match(text)) and (month := _month(found["m"])):
            return date(int(found["y"]), month, int(found["d"]))
    return None


def _order(first: int, second: int, sign: str, column: Column, text: str) -> str:
    """Which part is the day. A point parts day, month and year; else the column tells, or the numbers themselves."""
    if column.order in {DMY, MDY, YMD}:
        return column.order
    if sign == "." or first > 12 >= second or first == second:
        return DMY
    if second > 12 >= first:
        return MDY
    raise NotTold(column, Asks.ORDER, text)


def _ordered(first: int, second: int, last: str, order: str, today: date) -> date:
    if order == YMD and len(last) == 2:
        return date(_century(first, today), second, int(last))
    year = int(last) if len(last) == 4 else _century(int(last), today)
    day, month = (second, first) if order == MDY else (first, second)
    return date(year, month, day)


def _century(year: int, today: date) -> int:
    """A year of two figures is the last one that has come."""
    return 2000 + year if 2000 + year <= today.year else 1900 + year


def _vague(text: str) -> date | None:
    """The first day of a month or a year: the earliest it can be, so that no piece is taken for younger than it is."""
    for form in _MONTH:
        if (found := form.match(text)) and (month := _month(found["m"])):
            return date(int(found["y"]), month, 1)
    return date(int(text), 1, 1) if _YEAR.match(text) else None


def _month(text: str) -> int:
    return int(text) if text.isdigit() else int(table("months").get(plain(text), 0))


def order_proven(cells: Sequence[Cell]) -> str:
    """The order that the days of a column prove: one has a day past 12; empty where none or both orders are proven."""
    parts = [(int(found[1]), int(found[3])) for found in _unsure(cells)]
    proven = {DMY for first, _ in parts if first > 12} | {MDY for _, second in parts if second > 12}
    return proven.pop() if len(proven) == 1 else ""


def hangs_on_order(cells: Sequence[Cell]) -> bool:
    """Whether a day of the column can be two days, or is a mere count."""
    parts = [(int(found[1]), int(found[3])) for found in _unsure(cells)]
    texts = [text_of(one) for one in cells if not isinstance(one, date)]
    counts = any(_is_count(text) for text in texts)
    return counts or any(first <= 12 and second <= 12 and first != second for first, second in parts)


def _is_count(text: str) -> bool:
    """Whether a text may be a spreadsheet's count of days."""
    return text.isdecimal() and len(text.lstrip("0")) == 5 and int(text.lstrip("0")) in _COUNTED


def _unsure(cells: Sequence[Cell]) -> list[re.Match[str]]:
    """Those with a day and a month in some order; four figures at the head of a cell are a year, which tells it."""
    texts = [_without_clock(one) for one in cells if isinstance(one, str) and not one[:4].isdigit()]
    return [found for text in texts if (found := _THREE.match(text)) and found[2] != "."]
