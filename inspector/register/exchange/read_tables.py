"""A file of tables, by what it holds and not by what it is called: CSV of any make, XLSX, ODS, XLS."""

import hashlib

from inspector.gear.import_list import Sheet, TableFile
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.exchange.read_csv import csv_rows
from inspector.register.exchange.read_workbook import workbook_sheets
from inspector.register.exchange.table_limits import check_bytes

_WORKBOOKS = (b"PK\x03\x04", b"PK\x05\x06", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1")


def read_tables(data: bytes, name: str, encoding: str = "", delimiter: str = "") -> TableFile:
    """The sheets of a file with at least one cell. encoding, delimiter: of a CSV file, where somebody knows better.

    Refuses under the file's name what is no table, is broken, locked, empty or too large.
    """
    check_bytes(data, name)
    if data.startswith(_WORKBOOKS):
        sheets, encoding, delimiter = workbook_sheets(data, name), "", ""
    else:
        rows, encoding, delimiter = csv_rows(data, name, encoding, delimiter)
        sheets = (Sheet("", rows),)
    filled = tuple(one for one in sheets if any(cell != "" for row in one.rows for cell in row))
    if not filled:
        raise Refused(name, tr("Nothing stands in it."), tr("Choose the file with the list."))
    return TableFile(name, hashlib.sha256(data).hexdigest(), filled, encoding, delimiter)
