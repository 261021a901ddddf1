"""What the columns of a list mean: proposed by their headings and by what is in them, and what is to be asked."""

from collections import Counter
from collections.abc import Callable
from itertools import pairwise

from msgspec.structs import replace

from inspector.duties.importing import days, figures
from inspector.duties.importing.headings import MANY_WEIGHTS, heading_meant
from inspector.duties.importing.words import kind_meant, plain
from inspector.duties.office import Office
from inspector.gear.import_list import SIZE_SIGN, Asks, Cell, Column, Field, Matching, Question, Row, Sheet
from inspector.gear.kind import Basis
from inspector.language import once_a_language, tr
from inspector.units import Dimension

DAYS = (Field.MADE_ON, Field.IN_SERVICE, Field.UNTIL)
_ONCE = {*Field} - {Field.LEFT_OUT, Field.NOTE, Field.PHOTO, Field.RATING, Field.INSPECTED}
_LOOKED_FOR_HEAD = 30
_ENOUGH_RATIO = 0.6


def cells_below(sheet: Sheet, matching: Matching, at: int) -> list[Cell]:
    """The cells of a column below its heading that hold anything."""
    rows = sheet.rows[matching.head :]
    return [row[at] for row in rows if at < len(row) and row[at] != ""]


def said_below(sheet: Sheet, matching: Matching, at: int) -> list[Cell]:
    """The same, each only once: in a long list most cells of a column say what others said."""
    said = {row[at]: None for row in sheet.rows[matching.head :] if at < len(row)}
    said.pop("", None)
    return list(said)


def kind_names(office: Office) -> dict[str, str]:
    """Keys of kinds by their own names, in the officer's language too."""
    return {plain(name): one.key for one in office.rules.kinds.values() for name in (one.key, one.name, tr(one.name))}


def size_names(office: Office) -> dict[str, str]:
    """Keys of sizes by the names that the kinds give them; a name that means several is left out."""
    found: dict[str, set[str]] = {}
    for kind in office.rules.kinds.values():
        for size in kind.sizes:
            for name in (size.key, size.name, tr(size.name)):
                found.setdefault(plain(name), set()).add(size.key)
    return {name: keys.pop() for name, keys in found.items() if len(keys) == 1}


def dimension_of(office: Office, field: str) -> Dimension | None:
    """What a column with figures measures; None for a column of words or days."""
    if field == Field.RATING:
        return Dimension.FORCE
    if field == Field.FACTOR:
        return Dimension.FACTOR
    key = field.removeprefix(SIZE_SIGN)
    sizes = (size for kind in office.rules.kinds.values() for size in kind.sizes)
    known = (size.dimension for size in sizes if size.key == key)
    return next(known, None) if field.startswith(SIZE_SIGN) else None


def find_head(office: Office, sheet: Sheet) -> int:
    """The row of the headings: of the first rows the one in which most cells are known headings.

    Where none are known: the first row of several words without a figure over one that has figures; 0 for none.
    """
    sizes = size_names(office)
    rows = sheet.rows[:_LOOKED_FOR_HEAD]
    said = {cell for row in rows for cell in row if isinstance(cell, str)}
    headings = {cell for cell in said if cell and heading_meant(cell, sizes).field}
    best, most = 0, 1
    for number, row in enumerate(rows, 1):
        known = sum(cell in headings for cell in row)
        if known > most:
            best, most = number, known
    return best or _head_by_figures(sheet)


def _head_by_figures(sheet: Sheet) -> int:
    filled = [(number, row) for number, row in enumerate(sheet.rows[:_LOOKED_FOR_HEAD], 1) if any(row)]
    for (number, row), (_, below) in pairwise(filled):
        if sum(1 for cell in row if cell != "") > 1 and not _has_figures(row) and _has_figures(below):
            return number
    return 0


def _has_figures(row: Row) -> bool:
    return any(any(sign.isdigit() for sign in figures.text_of(cell)) for cell in row)


def propose(office: Office, sheet: Sheet, head: int) -> Matching:
    """What each column means, as far as its heading or its cells tell. What means nothing known goes into the note."""
    sizes = size_names(office)
    width = max((len(row) for row in sheet.rows), default=0)
    heads = sheet.rows[head - 1] if head else ()
    columns = []
    taken: set[str] = set()
    for at in range(width):
        heading = figures.text_of(heads[at]) if at < len(heads) else ""
        meant = heading_meant(heading, sizes)
        field = meant.field if meant.field not in taken or meant.field not in _ONCE else ""
        taken.add(field)
        columns.append(Column(at, heading, field, meant.unit, meant.basis))
    matching = Matching(sheet.name, head, tuple(columns))
    return _proven(office, sheet, _by_content(office, sheet, matching))


def _by_content(office: Office, sheet: Sheet, matching: Matching) -> Matching:
    """Tag and kind are told by what is in a column where no heading names them; the rest goes into the note."""
    fields = {one.field for one in matching.columns}
    columns = []
    names = kind_names(office)
    for one in matching.columns:
        field = one.field
        if not field:
            field = _content_means(cells_below(sheet, matching, one.at), names, fields) or Field.NOTE
            fields.add(field)
        columns.append(replace(one, field=field))
    return replace(matching, columns=tuple(columns))


def _content_means(cells: list[Cell], names: dict[str, str], taken: set[str]) -> str:
    texts = [figures.text_of(one) for one in cells]
    if not texts:
        return ""
    if Field.KIND not in taken and _share(texts, lambda one: bool(kind_meant(one, names))):
        return Field.KIND
    is_tag = len(set(texts)) == len(texts) > 1 and all(any(sign.isdigit() for sign in one) for one in texts)
    if Field.TAG not in taken and is_tag and all(len(one) <= 12 and any(map(str.isalpha, one)) for one in texts):
        return Field.TAG
    return ""


def _share(texts: list[str], holds: Callable[[str], bool]) -> bool:
    return sum(count for text, count in Counter(texts).items() if holds(text)) >= len(texts) * _ENOUGH_RATIO


def _proven(office: Office, sheet: Sheet, matching: Matching) -> Matching:
    """With the decimal sign and the order of days that each column proves by itself."""
    for one in matching.columns:
        matching = reproven(office, sheet, matching, one.at)
    return matching


def reproven(office: Office, sheet: Sheet, matching: Matching, at: int) -> Matching:
    """With what one column proves by itself."""
    one = matching.columns[at]
    if dimension_of(office, one.field):
        if sign := figures.decimal_proven(said_below(sheet, matching, at)):
            one = replace(one, decimal=sign, proven=(*one.proven, Asks.DECIMAL))
    elif one.field in DAYS and (order := days.order_proven(said_below(sheet, matching, at))):
        one = replace(one, order=order, proven=(*one.proven, Asks.ORDER))
    else:
        return matching
    return replace(matching, columns=(*matching.columns[:at], one, *matching.columns[at + 1 :]))


def questions(office: Office, sheet: Sheet, matching: Matching) -> tuple[Question, ...]:
    """What must be told of the columns before all their cells can be read, with what was told already."""
    has_basis = any(one.field == Field.BASIS for one in matching.columns)
    found: list[Question] = []
    for one in matching.columns:
        if dimension := dimension_of(office, one.field):
            found += _of_figures(one, said_below(sheet, matching, one.at), dimension, has_basis)
        elif one.field in DAYS and days.hangs_on_order(said_below(sheet, matching, one.at)):
            asks = tr("In which order are the days of “{name}” written?", name=one.heading)
            found.append(Question(one.at, one.heading, Asks.ORDER, asks, _orders(), one.order))
    return tuple(found)


def _of_figures(one: Column, cells: list[Cell], dimension: Dimension, has_basis: bool) -> list[Question]:
    found = []
    if dimension in {Dimension.FORCE, Dimension.LENGTH} and figures.hangs_on_unit(cells):
        units = figures.LENGTHS if dimension is Dimension.LENGTH else figures.WEIGHTS
        if heading_meant(one.heading, {}).unit != one.unit or one.unit in {"", *MANY_WEIGHTS}:
            asks = tr("In which unit are the figures of “{name}”?", name=one.heading)
            told = "" if one.unit in MANY_WEIGHTS else one.unit
            found.append(Question(one.at, one.heading, Asks.UNIT, asks, tuple((unit, unit) for unit in units), told))
    if figures.hangs_on_decimal(cells):
        asks = tr("Which sign stands before the fractions in “{name}”?", name=one.heading)
        found.append(Question(one.at, one.heading, Asks.DECIMAL, asks, _signs(), one.decimal))
    says_basis = has_basis or one.field != Field.RATING or bool(heading_meant(one.heading, {}).basis)
    if not says_basis and any(not figures.without_basis(figures.text_of(cell))[1] for cell in cells):
        asks = tr("What are the figures of “{name}”?", name=one.heading)
        found.append(Question(one.at, one.heading, Asks.BASIS, asks, _bases(), one.basis))
    return found


def _signs() -> tuple[tuple[str, str], ...]:
    return (".", tr("a point: 1.250 is one and a quarter")), (",", tr("a comma: 1,250 is one and a quarter"))


def _bases() -> tuple[tuple[str, str], ...]:
    wll, mbs = tr("working load limits (WLL)"), tr("minimum breaking strengths (MBS)")
    return (Basis.WLL.value, wll), (Basis.MBS.value, mbs)


def _orders() -> tuple[tuple[str, str], ...]:
    return (
        (days.DMY, tr("day, month, year: 3/5/2024 is 3 May")),
        (days.MDY, tr("month, day, year: 3/5/2024 is 5 March")),
        (days.YMD, tr("year, month, day: 24-05-03 is 3 May 2024")),
        (days.COUNT, tr("a spreadsheet's count of days: 45415 is 3 May 2024")),
    )


def meanings(office: Office) -> tuple[tuple[str, str], ...]:
    """Everything that a column may mean, with its words."""
    sizes = {SIZE_SIGN + size.key: tr(size.name) for kind in office.rules.kinds.values() for size in kind.sizes}
    words = {**field_words(), **dict(sorted(sizes.items(), key=lambda one: one[1]))}
    return tuple(words.items())


@once_a_language
def field_words() -> dict[str, str]:
    """What a column may mean beside a size, in words."""
    return {
        Field.TAG.value: tr("tag"),
        Field.KIND.value: tr("kind"),
        Field.MAKER.value: tr("maker's mark"),
        Field.SERIAL.value: tr("serial"),
        Field.MATERIAL.value: tr("material"),
        Field.OWNER.value: tr("owner"),
        Field.PLACE.value: tr("place"),
        Field.RATING.value: tr("rating"),
        Field.BASIS.value: tr("what the rating is: WLL or MBS"),
        Field.FACTOR.value: tr("design factor"),
        Field.MADE_ON.value: tr("made on"),
        Field.IN_SERVICE.value: tr("in service since"),
        Field.PAST.value: tr("how it came: new, second-hand, a gift …"),
        Field.FROM_WHOM.value: tr("from whom"),
        Field.UNTIL.value: tr("borrowed until"),
        Field.PAPER.value: tr("certificate or receipt"),
        Field.FIXED_BY.value: tr("fixed by bolts or welds"),
        Field.INSPECTED.value: tr("last inspection, as the list says: goes into the note"),
        Field.PHOTO.value: tr("names of photo files"),
        Field.NOTE.value: tr("note, with the heading before it"),
        Field.LEFT_OUT.value: tr("left out"),
    }
