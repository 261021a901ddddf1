"""What every row of a list is read with: made once for the list, and what rows have in common is read once."""

from collections.abc import Callable, Mapping
from datetime import date
from operator import itemgetter

from msgspec import Struct, field

from inspector.duties.importing.columns import kind_names
from inspector.duties.importing.looks import Look, Looks
from inspector.duties.importing.words import plain, table
from inspector.duties.office import Office
from inspector.gear.import_list import SIZE_SIGN, Cell, Column, Field, Matching, Row
from inspector.gear.item import Fixing, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Kind
from inspector.rulebook.words import provenance_word

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
    """What every row is read with. file: the name of the list, which the notes name.

    columns: place, field and looks of those that are not left out; width: how many cells a row must have for them.
    marked: the cells of a row on which its kind and marks hang. marks, days: what was read of such cells and of days,
    and found right, by the cells; for one list, read in one language.
    """

    office: Office
    today: date
    matching: Matching
    file: str
    kinds: Mapping[str, str]
    pasts: Mapping[str, str]
    columns: tuple[tuple[int, str, Looks], ...]
    width: int
    marked: Callable[[Row], object]
    marks: dict[object, Marks] = field(default_factory=dict)
    days: dict[tuple[int, Cell], tuple[date, bool]] = field(default_factory=dict)

    def kind(self, key: str) -> Kind:
        """A kind of gear."""
        return self.office.kind(key)

    def column(self, look: Look) -> Column:
        """The column in which a cell stands."""
        return self.matching.columns[look.at]

    def given(self, row: Row) -> dict[str, list[Look]]:
        """The cells of a row by what they mean, those alone that tell it."""
        found: dict[str, list[Look]] = {}
        for at, name, looks in self.columns:
            look = looks[row[at]]
            if look.counts:
                found.setdefault(name, []).append(look)
        return found


def reader(office: Office, matching: Matching, file: str) -> Reader:
    """What the rows of a sheet are read with."""
    pasts = {plain(provenance_word(one)): one.value for one in Provenance} | dict(table("pasts"))
    read = [one for one in matching.columns if one.field != Field.LEFT_OUT]
    columns = tuple((one.at, one.field, Looks(one)) for one in read)
    marked = [one.at for one in read if one.field in _MARKED or one.field.startswith(SIZE_SIGN)]
    width = max((one.at + 1 for one in read), default=0)
    names = kind_names(office)
    return Reader(office, office.today, matching, file, names, pasts, columns, width, _getter(marked))


def _getter(places: list[int]) -> Callable[[Row], object]:
    return itemgetter(*places) if places else lambda _: ()
