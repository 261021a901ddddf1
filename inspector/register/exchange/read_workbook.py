"""A workbook (XLSX, ODS or XLS) as sheets of cells; the values of formulas as they were last worked out."""

import io
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta

from python_calamine import CalamineSheet, CalamineWorkbook, PasswordError, SheetTypeEnum, SheetVisibleEnum

from inspector.gear.import_list import Cell, Row, Sheet
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.exchange.guard import Cleaned
from inspector.register.exchange.table_limits import MOST_CELLS, check_extent, check_shape, too_large
from inspector.register.exchange.workbook_guard import check_packed

_Merged = tuple[tuple[int, int], tuple[int, int]]
_MOST_SHEETS = 100


def workbook_sheets(data: bytes, name: str) -> tuple[Sheet, ...]:
    """Every sheet with cells. A merged cell over several rows of one column stands for each of them."""
    check_packed(data, name)
    try:
        return _sheets(data, name)
    except Refused:
        raise
    except PasswordError as error:
        why = tr("It is locked with a password.")
        raise Refused(name, why, tr("Save it without one, and choose that file.")) from error
    except BaseException as error:
        if isinstance(error, KeyboardInterrupt | SystemExit):
            raise
        why = tr("It cannot be read as a workbook ({why}).", why=_brief(error))
        raise Refused(name, why, tr("Save it anew as XLSX or CSV from the program it comes from.")) from error


def _brief(error: BaseException) -> str:
    return " ".join(str(error).split())[:120] or type(error).__name__


def _sheets(data: bytes, name: str) -> tuple[Sheet, ...]:
    book = CalamineWorkbook.from_filelike(io.BytesIO(data))
    found, cells = [], 0
    tables = [one for one in book.sheets_metadata if one.typ is SheetTypeEnum.WorkSheet]
    if len(tables) > _MOST_SHEETS:
        why = tr("It has more than {most} sheets.", most=_MOST_SHEETS)
        raise Refused(name, why, tr("Save only the sheet with the gear, and choose that."))
    for one in tables:
        sheet = book.get_sheet_by_name(one.name)
        height, width = sheet.total_height + 1, sheet.total_width + 1
        check_extent(height, width, name)
        cells += height * width
        if cells > MOST_CELLS * 10:
            raise too_large(name)
        rows = _rows(sheet, name)
        if rows:
            found.append(Sheet(one.name, rows, one.visible is not SheetVisibleEnum.Visible))
    return tuple(found)


def _rows(sheet: CalamineSheet, name: str) -> tuple[Row, ...]:
    if sheet.start is None:
        return ()
    every = sheet.to_python(skip_empty_area=False)  # so that rows and columns keep their numbers
    cleaned = Cleaned()
    rows: list[Row] = [tuple([_cell(cell, cleaned) for cell in one]) for one in check_shape(every, name)]
    _spread(rows, sheet.merged_cell_ranges or ())
    return tuple(rows)


def _spread(rows: list[Row], merged: Iterable[_Merged]) -> None:
    """The value of a cell that was merged down a column, in each of its rows."""
    spread = 0
    for (top, left), (bottom, right) in merged:
        if left != right or bottom <= top or top >= len(rows) or left >= len(rows[top]):
            continue
        for at in range(top + 1, min(bottom + 1, len(rows))):
            if left < len(rows[at]) and rows[at][left] == "":
                rows[at] = (*rows[at][:left], rows[top][left], *rows[at][left + 1 :])
            spread += 1
            if spread > MOST_CELLS // 50:
                return


def _cell(value: object, cleaned: Cleaned) -> Cell:
    if isinstance(value, str):
        return cleaned[value]
    if isinstance(value, float):
        return value
    if isinstance(value, bool):
        return str(value).upper()
    if isinstance(value, int):
        return float(value)
    if isinstance(value, datetime):
        return value.date() if value.time() == time() else value.isoformat(sep=" ", timespec="minutes")
    if isinstance(value, date):
        return value
    return str(value) if isinstance(value, time | timedelta) else ""
