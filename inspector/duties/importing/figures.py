"""A cell with a figure, read with the unit and the decimal sign of its column where it has none that tells."""

import re
from datetime import date

from msgspec.structs import replace

from inspector.duties.importing.asked import NotTold
from inspector.duties.importing.headings import MANY_WEIGHTS
from inspector.duties.importing.words import plain, table
from inspector.gear.import_list import Asks, Cell, Column
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read

WEIGHTS = ("t", "kg", "kN", "lb", "short ton", "long ton")
LENGTHS = ("mm", "cm", "m", "in", "ft")
_WITHOUT_UNIT = {Dimension.COUNT, Dimension.FACTOR}
_FIGURE = re.compile(r"^(?P<number>[-+]?[\d¼½¾⅛⅜⅝⅞][\d.,'’ \u00a0\u202f/¼½¾⅛⅜⅝⅞]*)(?P<unit>.*)$", re.DOTALL)
_EITHER_WAY = re.compile(r"^[1-9]\d{0,2}[.,]\d{3}$")
_COMMA = re.compile(r"^(?:\d+,(?:\d{1,2}|\d{4,})|0,\d+|[\d. ]*\.\d{3},\d+|\d{1,3}(?:\.\d{3}){2,}|\d{4,},\d+)$")
_POINT = re.compile(r"^(?:\d+\.(?:\d{1,2}|\d{4,})|0\.\d+|[\d, ]*,\d{3}\.\d+|\d{1,3}(?:,\d{3}){2,}|\d{4,}\.\d+)$")


def text_of(cell: Cell) -> str:
    """A cell as a person would type it: a whole number without a point, a day as 2024-05-03."""
    if isinstance(cell, str):
        return " ".join(cell.split())
    if isinstance(cell, date):
        return cell.isoformat()
    return str(int(cell)) if cell == int(cell) and abs(cell) < 1e15 else repr(cell)


def read_figure(cell: Cell, column: Column, dimension: Dimension, field: str) -> Figure:
    """The figure of a cell. Refused (NotTold) where its unit or its decimal sign is not told."""
    if isinstance(cell, date):
        why = tr("It is a day ({day}), not a figure; a program may have made one of “3/4”.", day=cell.isoformat())
        raise Refused(field, why, tr("Write the figure into the list as text, and read the list again."))
    shown = text_of(cell)
    number, unit = parted(shown)
    if not number:
        raise Refused(field, tr("“{text}” is no figure.", text=shown), tr("Mend it in the list, or leave it empty."))
    decimal = column.decimal if isinstance(cell, str) else "."
    if isinstance(cell, str) and not decimal and _EITHER_WAY.match(number):
        raise NotTold(column, Asks.DECIMAL, shown)
    named = "" if dimension in _WITHOUT_UNIT and not unit else _unit(unit, column, shown)
    written = f"{number} {named}".strip()
    if decimal and _EITHER_WAY.match(number):  # the column has settled which it is
        clear = written.replace("." if decimal == "," else ",", "", 1)
        return replace(read(clear, dimension, field=field, decimal=decimal), as_typed=written)
    return read(written, dimension, field=field, decimal=decimal or ".")


def parted(text: str) -> tuple[str, str]:
    """The number of a cell and the unit behind it; both empty where it does not begin with a number."""
    found = _FIGURE.match(without_basis(text)[0])
    if not found:
        return "", ""
    number = re.sub(r"(?<=\d)['’](?=\d{3}(?!\d))", "", found["number"])
    return number.strip(), found["unit"].strip().rstrip(".")


def _unit(written: str, column: Column, shown: str) -> str:
    if written.casefold() in MANY_WEIGHTS:
        if column.unit not in WEIGHTS or not column.unit.endswith(("t", "ton")):
            raise NotTold(column, Asks.UNIT, shown)
        return column.unit
    if written:
        return written
    if not column.unit or column.unit in MANY_WEIGHTS:
        raise NotTold(column, Asks.UNIT, shown)
    return column.unit


def without_basis(text: str) -> tuple[str, str]:
    """A cell without the words for a kind of rating, and that kind: "WLL 4.75 t", "86 kN (MBS)"."""
    bases = table("bases")
    kept, found = [], ""
    for word in text.split():
        meant = bases.get(plain(word), "")
        found = found or meant
        if not meant:
            kept.append(word)
    return (" ".join(kept).strip(" :=()"), found) if found else (text, "")


def decimal_proven(cells: list[Cell]) -> str:
    """The decimal sign that the texts of a column prove; empty where none does, or both are proven."""
    numbers = [parted(one)[0] for one in cells if isinstance(one, str)]
    proven = {sign for sign, form in ((",", _COMMA), (".", _POINT)) if any(form.match(one) for one in numbers)}
    return proven.pop() if len(proven) == 1 else ""


def hangs_on_decimal(cells: list[Cell]) -> bool:
    """Whether a number of the column can be read in two ways."""
    return any(isinstance(one, str) and _EITHER_WAY.match(parted(one)[0]) for one in cells)


def hangs_on_unit(cells: list[Cell]) -> bool:
    """Whether a number of the column has no unit, or one that can mean several."""
    parts = [parted(text_of(one)) for one in cells if not isinstance(one, date)]
    return any(number and (not unit or unit.casefold() in MANY_WEIGHTS) for number, unit in parts)
