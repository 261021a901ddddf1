"""A list of gear that somebody kept before: its cells, what its columns mean, and what becomes of each row."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.item import NewItem

Cell = str | float | date
Row = tuple[Cell, ...]
SIZE_SIGN = "size:"  # before the key of a size in the name of a field


class Sheet(Struct, frozen=True):
    """A table of cells. The first row is row 1, as programs for such files count; an empty cell is ""."""

    name: str
    rows: tuple[Row, ...]
    is_hidden: bool = False


class TableFile(Struct, frozen=True):
    """A file that was read. encoding, delimiter: what was taken for a CSV file; empty for a workbook."""

    name: str
    sha256: str
    sheets: tuple[Sheet, ...]
    encoding: str = ""
    delimiter: str = ""


class Field(StrEnum):
    """What a column tells. A column of a size has the key of the size behind SIZE_SIGN instead."""

    LEFT_OUT = ""  # only the officer leaves a column out
    TAG = "tag"
    KIND = "kind"
    MAKER = "maker_mark"
    SERIAL = "serial"
    MATERIAL = "material"
    OWNER = "owner"
    PLACE = "place"
    RATING = "rating"
    BASIS = "basis"
    FACTOR = "design_factor"
    MADE_ON = "made_on"
    IN_SERVICE = "in_service_on"
    PAST = "provenance"
    FROM_WHOM = "from_whom"
    UNTIL = "borrowed_until"
    PAPER = "paper"
    FIXED_BY = "fixed_by"
    NOTE = "note"
    INSPECTED = "last_inspection"  # a claim: it goes into the note and passes nothing
    PHOTO = "photo"


class Asks(StrEnum):
    """What about a column can be read in two ways."""

    UNIT = "unit"
    BASIS = "basis"
    DECIMAL = "decimal"
    ORDER = "order"


class Column(Struct, frozen=True):
    """What a column means. at: its place, from 0; field: a Field, or SIZE_SIGN and the key of a size.

    unit: of figures that have none in their cell; basis: "wll", "mbs", "towed_mass" or "line_pull"; decimal: "." or
    ","; order: of days, "dmy", "mdy", "ymd", or "count" for numbers that a spreadsheet counts days by. Each is empty
    where it is not known; then whatever needs it is refused. proven: those of them that the column itself proves.
    """

    at: int
    heading: str
    field: str
    unit: str = ""
    basis: str = ""
    decimal: str = ""
    order: str = ""
    proven: tuple[Asks, ...] = ()

    @property
    def letter(self) -> str:
        """The place as programs for such files write it: A, B, ... AA."""
        number, found = self.at + 1, ""
        while number:
            number, rest = divmod(number - 1, 26)
            found = chr(ord("A") + rest) + found
        return found


class Matching(Struct, frozen=True):
    """How a sheet is read. head: the row of its headings, 0 where it has none.

    stated_on: where the ratings of the list were read off; nobody's word is worth what memory is worth. shared_serials:
    the officer says that pieces which bear the same serial are different ones.
    """

    sheet: str
    head: int
    columns: tuple[Column, ...]
    stated_on: str = "memory"
    shared_serials: bool = False


class Question(Struct, frozen=True):
    """What must be told of a column before its cells can be read. choices: the answer and its words."""

    at: int
    heading: str
    about: Asks
    asks: str
    choices: tuple[tuple[str, str], ...]
    answer: str = ""  # what the column itself proves, or what was answered


class Fate(StrEnum):
    """What becomes of a row."""

    TAKEN = "taken"
    REFUSED = "refused"
    DUPLICATE = "duplicate"
    BLANK = "blank"


class Beside(Struct, frozen=True):
    """One fact of a row beside the same of the piece it may be. theirs: what stands in the register or another row."""

    name: str
    ours: str
    theirs: str


class RowFate(Struct, frozen=True, gc=False):
    """What becomes of a row. number: its row in the file; photos: names of files that go with the piece.

    like: for a duplicate, what it is like; beside: the facts of both, side by side.
    """

    number: int
    fate: Fate
    tag: str = ""
    why: str = ""
    what_to_do: str = ""
    like: str = ""
    beside: tuple[Beside, ...] = ()
    facts: NewItem | None = None
    photos: tuple[str, ...] = ()
    told: tuple[str, ...] = ()  # what is to be known though the row is taken


class Fates(Struct, frozen=True):
    """A dry run. told: what is to be known of the whole file; photos_in: the folder of the photos, empty for none."""

    file: TableFile
    matching: Matching
    questions: tuple[Question, ...]
    rows: tuple[RowFate, ...]
    told: tuple[str, ...] = ()
    photos_in: str = ""

    def count(self, fate: Fate) -> int:
        """How many rows have this fate."""
        return sum(1 for one in self.rows if one.fate is fate)

    @property
    def passed(self) -> tuple[RowFate, ...]:
        """The rows that would be taken."""
        return tuple(one for one in self.rows if one.fate is Fate.TAKEN)


class Brought(Struct, frozen=True):
    """A piece that came with an import: its id, tag, and row in the file; files: ids of the photos kept with it."""

    id: str
    tag: str
    row: int
    files: tuple[str, ...] = ()


class LeftRow(Struct, frozen=True):
    """A row that was not taken. cells: as they stood in the file, as texts."""

    row: int
    why: str
    cells: tuple[str, ...]


class Imported(Struct, frozen=True):
    """An import as it is kept. by: a person's id; heads: the headings; left: every row that was not taken; matching:
    how its columns were read, for the next list with the same headings."""

    number: str
    on: date
    file: str
    sha256: str
    by: str
    heads: tuple[str, ...]
    pieces: tuple[Brought, ...]
    left: tuple[LeftRow, ...]
    matching: Matching
    told: tuple[str, ...] = ()  # photos that turned out unusable


class Withdrawal(Struct, frozen=True):
    """What withdrawing an import would do. later: tags of pieces of which more was written down since, with what.

    gone: how many were withdrawn before.
    """

    number: str
    free: tuple[str, ...]
    later: tuple[tuple[str, str], ...]
    gone: int = 0
