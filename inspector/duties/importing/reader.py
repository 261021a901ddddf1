"""What every row of a list is read with: made once for the list, and what rows have in common is read once."""

from collections.abc import Mapping, Sequence
from datetime import date

from msgspec import Struct, field

from inspector.duties.importing.columns import kind_names
from inspector.duties.importing.looks import Look, Looks
from inspector.duties.importing.words import plain, table
from inspector.duties.office import Office
from inspector.gear.import_list import SIZE_SIGN, Cell, Column, Field, Matching, Row
from inspector.gear.item import Fixing, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Kind
from inspector.language import tr
from inspector.rulebook.words import provenance_word

_NUMBER = "\0"  # no file's name has it
_MARKED = (Field.KIND, Field.RATING, Field.BASIS, Field.FACTOR, Field.FIXED_BY)


class Marks(Struct, frozen=True):
    """What a row says of its piece that many pieces share. told: of its kind; notes: what goes into the note."""

    kind: Kind
    told: tuple[str, ...]
    rating: Rating
    sizes: tuple[SizeAsNew, ...]
    fixed_by: Fixing
    notes: tuple[str, ...]


class Reader(Struct, frozen=True):
    """What every row is read with. source: what a note says before and after the number of its row.

    looks: at the columns that are not left out; telling: which of them, by what they mean; width: how many cells a row
    must have for them. marked: the places of the cells on which the kind and the marks of a row hang; marks: what was
    read of them, and found right, by these cells; for one list, read in one language.
    """

    office: Office
    today: date
    matching: Matching
    source: tuple[str, str]
    kinds: Mapping[str, str]
    looks: tuple[Looks, ...]
    telling: Mapping[str, Sequence[int]]
    width: int
    marked: tuple[int, ...]
    marks: dict[tuple[Cell, ...], Marks] = field(default_factory=dict)

    def kind(self, key: str) -> Kind:
        """A kind of gear."""
        return self.office.kind(key)

    def column(self, look: Look) -> Column:
        """The column in which a cell stands."""
        return self.matching.columns[look.at]

    def given(self, row: Row) -> dict[str, list[Look]]:
        """The cells of a row by what they mean, those alone that tell it."""
        found: dict[str, list[Look]] = {}
        for looks in self.looks:
            at = looks.column.at
            if at < len(row) and (look := looks[row[at]]).counts:
                found.setdefault(looks.column.field, []).append(look)
        return found


def reader(office: Office, matching: Matching, file: str) -> Reader:
    """What the rows of a sheet are read with."""
    pasts = {plain(provenance_word(one)): one for one in Provenance}
    pasts |= {word: Provenance(one) for word, one in table("pasts").items()}
    read = [one for one in matching.columns if one.field != Field.LEFT_OUT]
    looks = tuple(Looks(one, office.today, pasts) for one in read)
    telling: dict[str, list[int]] = {}
    for at, one in enumerate(read):
        telling.setdefault(one.field, []).append(at)
    marked = tuple(one.at for one in read if one.field in _MARKED or one.field.startswith(SIZE_SIGN))
    width = max((one.at + 1 for one in read), default=0)
    before, _, after = tr("From the list {file}, row {number}.", file=file, number=_NUMBER).partition(_NUMBER)
    return Reader(office, office.today, matching, (before, after), kind_names(office), looks, telling, width, marked)
