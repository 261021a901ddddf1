"""What stands in the cells of a column: each is looked at once for all the rows that say the same."""

from collections.abc import Callable, Mapping
from datetime import date

from msgspec import Struct

from inspector.duties.importing.columns import DAYS, field_words
from inspector.duties.importing.days import read_day_cell
from inspector.duties.importing.figures import text_of
from inspector.duties.importing.words import plain, table
from inspector.duties.plain_lines import check_line
from inspector.gear.import_list import Cell, Column, Field
from inspector.gear.item import Provenance
from inspector.language import show_day, tr
from inspector.refused import Refused

LINES = (Field.MAKER, Field.SERIAL, Field.MATERIAL, Field.OWNER, Field.PLACE, Field.FROM_WHOM, Field.PAPER)
_NOTHING = frozenset(
    {"", "-", "–", "—", "?", "n/a", "na", "none", "not known", "k.a.", "k. a.", "keine", "unbekannt", "unknown"}
)
_READ_WHATEVER_IT_IS = (Field.TAG, Field.NOTE, Field.INSPECTED)
_EACH_ITS_OWN = (Field.TAG, Field.SERIAL)  # what no other row says is kept for none
_MOST_KEPT = 4096  # looks of a column: in one of remarks hardly any may come twice, however long the list


class Look(Struct, frozen=True, gc=False):
    """What a cell says. at: its column's place; aside: for the note, empty for nothing.

    counts: whether it tells what its column means; a dash, an empty cell and a remark do not. What follows is of one
    that counts alone. text: as a person would type it; day, past: what it means in such a column; told: what is to be
    told of it; also: what it adds to the note, both empty for nothing; fault: why it cannot mean what its column means.
    """

    at: int
    cell: Cell
    aside: str = ""
    counts: bool = False
    text: str = ""
    day: date | None = None
    past: Provenance = Provenance.UNKNOWN
    told: str = ""
    also: str = ""
    fault: Refused | None = None


class Looks(dict[Cell, Look]):
    """The looks at the cells of one column, by what stands in them; for one list, read on one day in one language.

    pasts: how a piece came, by the words for it. before: what stands before a remark in the note, so that it is known
    of what it speaks. is_odd: whether any look so far is for the note, is told of or cannot be.
    """

    def __init__(self, column: Column, today: date, pasts: Mapping[str, Provenance]) -> None:
        super().__init__({"": Look(column.at, "")})
        self.column, self.today, self.pasts, self.is_odd = column, today, pasts, False
        is_note = not column.heading or table("fields").get(plain(column.heading)) == Field.NOTE
        self.before = "" if is_note else f"{column.heading}: "
        self.word = field_words().get(column.field, "")
        self._most = 0 if column.field in _EACH_ITS_OWN else _MOST_KEPT
        self._read = _READ.get(column.field, _word)
        self._nothing = () if column.field in _READ_WHATEVER_IT_IS else _NOTHING

    def __missing__(self, cell: Cell) -> Look:
        text = text_of(cell)
        if text.casefold() in self._nothing and isinstance(cell, str):
            look = _nothing(self.column, cell)
        else:
            look = self._read(self, cell, text)
        if not look.counts or look.fault or look.told:
            self.is_odd = True
        if len(self) < self._most:
            self[cell] = look
        return look


def _nothing(column: Column, cell: str) -> Look:
    """A sign or word for nothing tells nothing, but to whoever reads the note."""
    said = f"{column.heading}: {cell}" if column.heading else cell
    return Look(column.at, cell, "" if column.field == Field.PAST else said)


def _word(looks: Looks, cell: Cell, text: str) -> Look:
    return Look(looks.column.at, cell, "", True, text)


def _remark(looks: Looks, cell: Cell, text: str) -> Look:
    return Look(looks.column.at, cell, looks.before + text)


def _claim(looks: Looks, cell: Cell, text: str) -> Look:
    said = tr(
        "The list says of an inspection ({heading}): {said}. It counts as none.",
        heading=looks.column.heading,
        said=text,
    )
    return Look(looks.column.at, cell, said)


def _line(looks: Looks, cell: Cell, text: str) -> Look:
    try:
        check_line(looks.word, text)
    except Refused as refusal:
        return _fault(looks, cell, text, refusal)
    return Look(looks.column.at, cell, "", True, text)


def _fault(looks: Looks, cell: Cell, text: str, refusal: Refused) -> Look:
    return Look(looks.column.at, cell, "", True, text, fault=refusal.with_traceback(None))


def _day(looks: Looks, cell: Cell, text: str) -> Look:
    column = looks.column
    try:
        day, is_vague = read_day_cell(cell, column, looks.today)
    except Refused as refusal:
        return _fault(looks, cell, text, refusal)
    if not is_vague:
        return Look(column.at, cell, "", True, text, day)
    told = tr("“{said}” is taken as {day}, the earliest it can be.", said=text, day=show_day(day))
    return Look(column.at, cell, "", True, text, day, told=told, also=f"{column.heading}: {text}")


def _past(looks: Looks, cell: Cell, text: str) -> Look:
    """A word that nobody knows is no word: the past is unknown, and the word stands in the note."""
    at = looks.column.at
    if (past := looks.pasts.get(plain(text))) or not text:
        return Look(at, cell, "", True, text, past=past or Provenance.UNKNOWN)
    told = tr("“{said}” tells nothing certain of its past; it counts as unknown.", said=text)
    return Look(at, cell, "", True, text, told=told, also=tr("How it came, as the list says: {said}", said=text))


_READ: Mapping[str, Callable[[Looks, Cell, str], Look]] = {
    Field.NOTE: _remark,
    Field.INSPECTED: _claim,
    Field.PAST: _past,
    **dict.fromkeys(LINES, _line),
    **dict.fromkeys(DAYS, _day),
}
