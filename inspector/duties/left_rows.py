"""Write the rows of a list that were not taken into a file of their own, each with its reason."""

from pathlib import Path

from inspector.duties.import_list import import_called
from inspector.duties.office import Office
from inspector.duties.plain_lines import file_name
from inspector.gear.exported import ExportedTable
from inspector.gear.import_list import Imported
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.exchange.write_csv import csv_bytes


def write_left(office: Office, made: Imported, beside: Path | None = None) -> Path | None:
    """The file with the rows that were not taken, in the folder `beside`, else in the out tray; None where all were.

    The rows are in the register too, so a full disk loses nothing.
    """
    if not made.left:
        return None
    name = f"{file_name(Path(made.file).stem)}-{made.number}.csv"
    data = csv_bytes(_table(made), office.decimal)
    folders = [office.out_tray] if beside is None else [beside, office.out_tray]
    for folder in folders:
        try:
            folder.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes(data)
        except OSError as error:
            fault = error
            continue
        return folder / name
    why = tr("{place} cannot be written ({why}).", place=folders[-1] / name, why=fault.strerror)
    what = tr("The import itself is kept, and these rows with it. Make room, then write the file anew.")
    raise Refused(tr("rows not taken"), why, what)


def write_left_again(office: Office, number: str, beside: Path | None = None) -> Path | None:
    """The same file of an import of some time ago."""
    with office.book.reading() as page:
        made = import_called(page, number)
    return write_left(office, made, beside)


def _table(made: Imported) -> ExportedTable:
    width = max([len(made.heads), *(len(one.cells) for one in made.left)])
    heads = (*made.heads, *("" for _ in range(width - len(made.heads))), tr("row"), tr("why it was not taken"))
    rows = tuple((*one.cells, *("" for _ in range(width - len(one.cells))), str(one.row), one.why) for one in made.left)
    return ExportedTable("", heads, rows)
