"""Write lists and histories for other programs: CSV, a workbook, or every row of the register as lines of JSON.

Nothing is entered in the ledger: the register stays as it is. A file that is there already is never written over.
"""

from collections.abc import Mapping, Sequence
from enum import StrEnum
from pathlib import Path

from msgspec import Struct

from inspector.duties.export_entries import (
    Told,
    documents_table,
    entry_tables,
    exposures_table,
    inspections_table,
    readings_table,
    told,
    uses_table,
)
from inspector.duties.export_gear import gear_table
from inspector.duties.named_files import write_new_bytes, write_new_parts
from inspector.duties.office import Office
from inspector.gear.exported import ExportedTable
from inspector.gear.item import Item
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.exchange.line_schema import shipped_schema
from inspector.register.exchange.write_csv import csv_bytes
from inspector.register.exchange.write_xlsx import xlsx_bytes
from inspector.register.page import Page
from inspector.rulebook.wording import cautions


class What(StrEnum):
    """Which table is wanted, where a file holds one."""

    GEAR = "gear"
    INSPECTIONS = "inspections"
    READINGS = "readings"
    USES = "uses"
    EXPOSURES = "exposures"
    DOCUMENTS = "documents"


class Exported(Struct, frozen=True):
    """What was written. rows: how many in all its tables; beside: the file of the schema, where there is one."""

    file: Path
    rows: int
    beside: Path | None = None


def export_list(office: Office, tags: Sequence[str], file: Path, what: What = What.GEAR) -> Exported:
    """Write these pieces, or what happened to them, into a new file; its ending says how: .csv or .xlsx.

    A workbook holds all the tables, whatever was wanted; a CSV file holds the one that was.
    """
    ending = file.suffix.lower()
    if ending == ".xlsx":
        tables = _all_tables(office, tags)
        data = xlsx_bytes((*tables, _about(office, tables[0])), office.now)
    elif ending == ".csv":
        tables = (_table(office, tags, what),)
        data = csv_bytes(tables[0], office.decimal)
    else:
        why = tr("“{name}” says by no ending how it is to be written.", name=file.name)
        raise Refused(tr("file"), why, tr("End its name in .xlsx for a workbook, or in .csv for a plain table."))
    write_new_bytes(file, data)
    return Exported(file, sum(len(one.rows) for one in tables))


def export_lines(office: Office, file: Path) -> Exported:
    """Write every row of the history as a line of JSON into a new file, and the schema of the lines beside it."""
    beside = file.with_name(f"{file.stem}.schema.json")
    if beside.exists():
        why = tr("{file} is there already and stays as it is.", file=beside)
        raise Refused(tr("file"), why, tr("Name another file, or move that one away first."))
    with office.book.reading() as page:
        rows = write_new_parts(file, page.json_lines())
    try:
        write_new_bytes(beside, shipped_schema())
    except Refused:
        file.unlink()
        raise
    return Exported(file, rows, beside)


def _table(office: Office, tags: Sequence[str], what: What) -> ExportedTable:
    with office.book.reading() as page:
        if what is What.GEAR:
            return gear_table(office, page, tags)
        every = told(office, page, _pieces(page, tags))
        makes = {
            What.INSPECTIONS: inspections_table,
            What.READINGS: readings_table,
            What.USES: uses_table,
            What.EXPOSURES: exposures_table,
            What.DOCUMENTS: documents_table,
        }
        return makes[what](every)


def _all_tables(office: Office, tags: Sequence[str]) -> tuple[ExportedTable, ...]:
    with office.book.reading() as page:
        every: Told = told(office, page, _pieces(page, tags))
        return (gear_table(office, page, tags), *entry_tables(every), documents_table(every))


def _pieces(page: Page, tags: Sequence[str]) -> Mapping[str, Item]:
    return {item.id: item for item in page.items(tags).values()}


def _about(office: Office, gear: ExportedTable) -> ExportedTable:
    """A last sheet: whose it is, of which day and head, and what is to be minded."""
    with office.book.reading() as page:
        club, head = page.setting("club"), page.head()
    rows = [
        (tr("club"), club),
        (tr("day"), show_day(office.today)),
        (tr("written by"), office.officer.name),
        (tr("pieces"), str(len(gear.rows))),
        (tr("ledger head"), head),
        *((tr("mind"), one) for one in cautions(office.rules)),
    ]
    return ExportedTable(tr("About"), (tr("what"), tr("said")), tuple(rows))
