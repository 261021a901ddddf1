"""Bring in the list that the club kept before: read it, tell what becomes of each row, take those that pass."""

from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from msgspec import Struct

from inspector.duties.attach import NamedFile, keep_file
from inspector.duties.book_in import add_pieces
from inspector.duties.importing.columns import find_head, propose, questions
from inspector.duties.importing.fates import fates, known_of
from inspector.duties.importing.figures import text_of
from inspector.duties.importing.photos import Folder, folder_of, photo_bytes
from inspector.duties.importing.reader import reader
from inspector.duties.importing.remember import IMPORT, recalled
from inspector.duties.importing.twins import names_of
from inspector.duties.office import Office
from inspector.duties.out_tray import next_number
from inspector.duties.take_photos import picture_of
from inspector.gear.attachment import PaperKind
from inspector.gear.import_list import (
    Brought,
    Fate,
    Fates,
    Field,
    Imported,
    LeftRow,
    Matching,
    RowFate,
    Sheet,
    TableFile,
)
from inspector.gear.item import Item
from inspector.language import tr, tr_n
from inspector.refused import Refused
from inspector.register.exchange.read_tables import read_tables
from inspector.register.exchange.table_limits import MOST_BYTES
from inspector.register.page import Page
from inspector.register.rows import from_body


class Known(Struct, frozen=True):
    """What is known of a CSV file better than the file tells: its encoding and the sign between cells."""

    encoding: str = ""
    delimiter: str = ""


def read_list(path: Path, known: Known | None = None) -> TableFile:
    """The sheets of a file. Refused: what cannot be read, is no table, or is too large."""
    told = known or Known()
    try:
        if path.stat().st_size > MOST_BYTES:
            why = tr("It has more than {most} MB.", most=MOST_BYTES // 10**6)
            raise Refused(path.name, why, tr("Save only the sheet with the gear, without pictures, and choose that."))
        data = path.read_bytes()
    except (OSError, ValueError) as error:
        why = tr("It cannot be read ({why}).", why=getattr(error, "strerror", None) or error)
        raise Refused(path.name, why, tr("Look whether the file is still there and may be read.")) from error
    return read_tables(data, path.name, told.encoding, told.delimiter)


def sheet_called(file: TableFile, name: str = "") -> Sheet:
    """The sheet with this name; without a name the only one that is not hidden, else it must be told."""
    if name:
        for one in file.sheets:
            if one.name.casefold() == name.casefold():
                return one
    shown = [one for one in file.sheets if not one.is_hidden] or list(file.sheets)
    if not name and len(shown) == 1:
        return shown[0]
    names = ", ".join(one.name for one in file.sheets)
    why = tr("It has no sheet “{name}”.", name=name) if name else tr("It has several sheets, and it is not told which.")
    raise Refused(tr("sheet"), why, tr("Choose one of: {names}.", names=names))


def matching_of(office: Office, file: TableFile, sheet: str = "", head: int | None = None) -> Matching:
    """How the columns of a sheet are read: as somebody said of the same headings last time, else as proposed."""
    chosen = sheet_called(file, sheet)
    row = find_head(office, chosen) if head is None else head
    if not 0 <= row <= len(chosen.rows):
        raise Refused(tr("headings"), tr("The sheet has no row {row}.", row=row), tr("Name the row of the headings."))
    proposed = propose(office, chosen, row)
    with office.book.reading() as page:
        return recalled(page, proposed) or proposed


def dry_run(office: Office, file: TableFile, matching: Matching, photos_in: Path | None = None) -> Fates:
    """What would become of each row. Nothing is kept."""
    sheet = sheet_called(file, matching.sheet)
    folder = folder_of(photos_in) if photos_in else None
    reads = reader(office, matching, file.name)
    with office.book.reading() as page:
        rows = fates(reads, page, sheet, folder)
    asked = questions(office, sheet, matching)
    return Fates(file, matching, asked, rows, _told(file, sheet), str(photos_in) if photos_in else "")


def _told(file: TableFile, sheet: Sheet) -> tuple[str, ...]:
    told = []
    if file.encoding:
        signs = {"\t": tr("a tab"), " ": tr("a space")}
        sign = signs.get(file.delimiter, file.delimiter)
        told.append(tr("Read as {encoding}, cells parted by {sign}", encoding=file.encoding, sign=sign))
    for one in file.sheets:
        if one is not sheet:
            many = tr_n("{count} row", "{count} rows", len(one.rows))
            told.append(tr("The sheet “{name}” ({rows}) was not read", name=one.name, rows=many))
    return tuple(told)


def take(office: Office, run: Fates) -> Imported:
    """Keep exactly the rows that the dry run passed, in one transaction, with their photos.

    Refused, and nothing is kept: where none passed, and where the register has changed since so that one would not.
    """
    if not run.passed:
        raise Refused(tr("rows"), tr("No row of the list can be taken."), tr("Look at the reasons, and mend the list."))
    folder = folder_of(Path(run.photos_in)) if run.photos_in else None
    with office.book.page() as page:
        _check_still_passing(page, run)
        told: list[str] = []
        brought = tuple(_bring(office, page, run, folder, told))
        number = next_number(page, "I", IMPORT)
        made = _imported(office, run, number, brought, told)
        page.add_document(number, IMPORT, office.today, page.origin, made)
        facts = {"import": number, "file": made.file, "sha256": made.sha256, "left": len(made.left)}
        tags = [one.tag for one in brought]
        page.enter("import list", by=office.officer.id, at=office.now, facts={**facts, "tags": tags})
    return made


def _check_still_passing(page: Page, run: Fates) -> None:
    known, shared = known_of(page), run.matching.shared_serials
    for one in run.passed:
        if one.facts and (why := known.like(one.facts, names_of(one.facts, shared_serials=shared))[0]):
            said = tr("The register has changed since: row {number} would not pass. {why}", number=one.number, why=why)
            raise Refused(tr("rows"), said, tr("Nothing was taken. Read the list again, and look at it once more."))


def _bring(office: Office, page: Page, run: Fates, folder: Folder | None, told: list[str]) -> Iterator[Brought]:
    passed = run.passed
    booked = add_pieces(office, page, [one.facts for one in passed if one.facts])
    for done, (row, (item, _)) in enumerate(zip(passed, booked, strict=True), 1):
        files = tuple(_photos(office, page, item, row, folder, told)) if folder else ()
        yield Brought(item.id, item.tag, row.number, files)
        office.told(done, len(passed))


def _photos(office: Office, page: Page, item: Item, row: RowFate, folder: Folder, told: list[str]) -> Iterator[str]:
    """The photos of a piece; one that cannot be used is told, and the piece is taken all the same."""
    for name in row.photos:
        try:
            data = photo_bytes(folder, name)
            yield keep_file(office, page, item.id, NamedFile(name, data, picture_of(name, data), PaperKind.PHOTO)).id
        except Refused as refusal:
            told.append(tr("{tag}: the photo {name} was not taken. {why}", tag=item.tag, name=name, why=refusal.why))


def _imported(office: Office, run: Fates, number: str, brought: tuple[Brought, ...], told: list[str]) -> Imported:
    sheet = sheet_called(run.file, run.matching.sheet)
    head = run.matching.head
    heads = tuple(map(text_of, sheet.rows[head - 1])) if head else ()
    left = tuple(left_rows(run, sheet))
    file, by = run.file, office.officer.id
    return Imported(number, office.today, file.name, file.sha256, by, heads, brought, left, run.matching, tuple(told))


def left_rows(run: Fates, sheet: Sheet) -> Iterator[LeftRow]:
    """Every row that holds anything and is not taken; the headings stand above them."""
    for one in run.rows:
        if one.fate in {Fate.REFUSED, Fate.DUPLICATE}:
            why = " ".join(part for part in (one.why, one.what_to_do) if part)
            yield LeftRow(one.number, why, tuple(map(text_of, sheet.rows[one.number - 1])))


def imports(office: Office) -> tuple[Imported, ...]:
    """Every import, the newest first."""
    with office.book.reading() as page:
        return tuple(from_body(body, Imported) for _, body in page.every_document(IMPORT))


def import_called(page: Page, number: str) -> Imported:
    """The import with this number; refused where there is none."""
    wanted = number.strip().upper()
    if found := page.document(wanted):
        with suppress(ValueError):
            return from_body(found[1], Imported)
    why = tr("No import has the number “{number}”.", number=number.strip())
    raise Refused(tr("import"), why, tr("Look at the list: `inspector import --list`."))


def likeliest_sheet(office: Office, file: TableFile) -> str:
    """The name of the sheet in which most columns are known, those that are shown before hidden ones."""

    def known(one: Sheet) -> tuple[bool, int]:
        columns = propose(office, one, find_head(office, one)).columns
        return not one.is_hidden, len({column.field for column in columns} - {Field.NOTE.value})

    return max(file.sheets, key=known).name
