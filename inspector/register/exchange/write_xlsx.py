"""Tables as an XLSX workbook: texts stay texts, numbers are numbers, days are days, and the heading stands still.

The writer is imported with the first workbook: a list is exported a few times a year.
"""

from collections.abc import Sequence
from datetime import date, datetime
from io import BytesIO
from typing import TYPE_CHECKING

from inspector.gear.exported import Cell, ExportedTable
from inspector.language import tr

if TYPE_CHECKING:
    from xlsxwriter.format import Format
    from xlsxwriter.worksheet import Worksheet

_LONGEST_TEXT = 32_767  # signs that a cell of such a file holds, as the program's own limit
_LONGEST_NAME = 31
_FIRST_DAY = date(1900, 3, 1)  # before it spreadsheets disagree on the number of a day
_WIDEST = 60
_NARROWEST = 10
_SET = {"strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False, "in_memory": True}


def xlsx_bytes(tables: Sequence[ExportedTable], made_at: datetime) -> bytes:
    """The tables as the bytes of a workbook, a sheet each. made_at: what it says of its making."""
    from xlsxwriter import Workbook

    stream = BytesIO()
    book = Workbook(stream, _SET)
    book.set_properties({"created": made_at.replace(tzinfo=None)})
    head = book.add_format({"bold": True, "bottom": 1})
    day = book.add_format({"num_format": "yyyy-mm-dd", "align": "left"})
    for table in tables:
        _fill(book.add_worksheet(table.name[:_LONGEST_NAME]), table, head, day)
    book.close()
    return stream.getvalue()


def _fill(sheet: "Worksheet", table: ExportedTable, head: "Format", day: "Format") -> None:
    widths = [len(one) for one in table.heads]
    for column, text in enumerate(table.heads):
        sheet.write_string(0, column, text, head)
    for number, row in enumerate(table.rows, 1):
        for column, cell in enumerate(row):
            _write(sheet, number, column, cell, day)
            widths[column] = max(widths[column], len(str(cell or "")))
    sheet.freeze_panes(1, 1)
    if table.rows:
        sheet.autofilter(0, 0, len(table.rows), len(table.heads) - 1)
    for column, width in enumerate(widths):
        sheet.set_column(column, column, min(max(width + 2, _NARROWEST), _WIDEST))


def _write(sheet: "Worksheet", row: int, column: int, cell: Cell, day: "Format") -> None:
    if cell is None or cell == "":
        return
    if isinstance(cell, date) and cell >= _FIRST_DAY:
        sheet.write_datetime(row, column, datetime(cell.year, cell.month, cell.day), day)  # noqa: DTZ001 - a day has no zone
    elif isinstance(cell, int | float):
        sheet.write_number(row, column, cell)
    else:
        sheet.write_string(row, column, _fitting(str(cell)))


def _fitting(text: str) -> str:
    """The text as far as a cell holds it; what is cut says so."""
    if len(text) <= _LONGEST_TEXT:
        return text
    cut = tr(" … (cut here; a CSV file has all of it)")
    return text[: _LONGEST_TEXT - len(cut)] + cut
