"""A table as CSV that opens cleanly: every cell quoted, texts guarded, marked as UTF-8.

Where the club writes a decimal comma, numbers have one and a semicolon stands between cells, as spreadsheets there
expect it; else a point and a comma. Days are written 2026-11-25, which no program reads two ways.
"""

import csv
from datetime import date
from io import StringIO

from inspector.gear.exported import Cell, ExportedTable
from inspector.register.exchange.guard import guarded

_MARK = "utf-8-sig"  # without it a spreadsheet takes the bytes for those of an older alphabet


def csv_bytes(table: ExportedTable, decimal: str = ".") -> bytes:
    """The table as the bytes of a file. decimal: the sign between whole and part, "." or ","."""
    text = StringIO(newline="")
    writer = csv.writer(text, delimiter=";" if decimal == "," else ",", quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    writer.writerow([guarded(one) for one in table.heads])
    for row in table.rows:
        writer.writerow([_written(cell, decimal) for cell in row])
    return text.getvalue().encode(_MARK)


def _written(cell: Cell, decimal: str) -> str:
    if cell is None:
        return ""
    if isinstance(cell, str):
        return guarded(cell)
    if isinstance(cell, date):
        return cell.isoformat()
    return repr(cell).replace(".", decimal)
