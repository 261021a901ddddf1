"""What stands in the cells of a column: each is looked at once for all the rows that say the same."""

from msgspec import Struct

from inspector.duties.importing.figures import text_of
from inspector.duties.importing.words import plain, table
from inspector.gear.import_list import Cell, Column, Field
from inspector.language import tr

_NOTHING = {"", "-", "–", "—", "?", "n/a", "na", "none", "not known", "k.a.", "k. a.", "keine", "unbekannt", "unknown"}
_ASIDE = (Field.NOTE, Field.INSPECTED)
_MOST_KEPT = 4096  # looks of a column: in one of tags or serials none comes twice, however long the list


class Look(Struct, frozen=True):
    """What a cell says. at: its column's place; text: as a person would type it; aside: for the note, None for nothing.

    counts: whether it tells what its column means; a dash, an empty cell and a remark do not.
    """

    at: int
    cell: Cell
    text: str
    aside: str | None = None
    counts: bool = False


class Looks(dict[Cell, Look]):
    """The looks at the cells of one column, by what stands in them; for one list, read in one language."""

    def __init__(self, column: Column) -> None:
        super().__init__({"": Look(column.at, "", "")})
        self.column = column

    def __missing__(self, cell: Cell) -> Look:
        look = _look(self.column, cell)
        if len(self) < _MOST_KEPT:
            self[cell] = look
        return look


def _look(column: Column, cell: Cell) -> Look:
    text, field = text_of(cell), column.field
    if field in _ASIDE:
        return Look(column.at, cell, text, _noted(column, text))
    if isinstance(cell, str) and text.casefold() in _NOTHING and field != Field.TAG:
        said = f"{column.heading}: {cell}" if column.heading else cell
        return Look(column.at, cell, text, None if field == Field.PAST else said)
    return Look(column.at, cell, text, counts=True)


def _noted(column: Column, said: str) -> str:
    if column.field == Field.INSPECTED:
        return tr(
            "The list says of an inspection ({heading}): {said}. It counts as none.", heading=column.heading, said=said
        )
    is_note = table("fields").get(plain(column.heading)) == Field.NOTE
    return said if is_note or not column.heading else f"{column.heading}: {said}"
