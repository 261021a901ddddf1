"""One row of a list as a booking; refused with the reason where it cannot be one."""

from collections.abc import Mapping
from datetime import date

from msgspec import Struct, field

from inspector.duties.importing import days, figures
from inspector.duties.importing.asked import NotTold
from inspector.duties.importing.columns import DAYS, dimension_of, field_words, kind_names
from inspector.duties.importing.headings import heading_meant
from inspector.duties.importing.words import kind_meant, plain, table
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.gear.import_list import SIZE_SIGN, Asks, Cell, Column, Field, Matching, Row
from inspector.gear.item import Fixing, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Kind
from inspector.language import show_day, tr, within
from inspector.refused import Refused
from inspector.rulebook.words import provenance_word
from inspector.units import Dimension, Figure

_NOTHING = {"", "-", "–", "—", "?", "n/a", "na", "none", "not known", "k.a.", "k. a.", "keine", "unbekannt", "unknown"}
_SOLE = ((Basis.TOWED_MASS,), (Basis.LINE_PULL,))
_LINES = (Field.MAKER, Field.SERIAL, Field.MATERIAL, Field.OWNER, Field.PLACE, Field.FROM_WHOM, Field.PAPER)


class Reader(Struct, frozen=True):
    """What every row is read with. file: the name of the list, which the notes name."""

    office: Office
    matching: Matching
    file: str
    kinds: Mapping[str, str]
    dimensions: Mapping[str, Dimension | None]
    pasts: Mapping[str, str]


class _Cells(Struct):
    """The cells of a row by what they mean, and what is told of them beside the booking."""

    number: int
    by_field: dict[str, list[tuple[Column, Cell]]]
    note: list[str] = field(default_factory=list)
    told: list[str] = field(default_factory=list)

    def text(self, name: str) -> str:
        """The text of a field; of several columns the first that has one."""
        return next((figures.text_of(cell) for _, cell in self.by_field.get(name, ())), "")


def reader(office: Office, matching: Matching, file: str) -> Reader:
    """What the rows of a sheet are read with."""
    dimensions = {one.field: dimension_of(office, one.field) for one in matching.columns}
    pasts = {plain(provenance_word(one)): one.value for one in Provenance} | dict(table("pasts"))
    return Reader(office, matching, file, kind_names(office), dimensions, pasts)


def is_blank(reads: Reader, row: Row) -> bool:
    """Whether nothing stands in any column of the row."""
    return all(cell == "" for cell in row)


def read_row(reads: Reader, row: Row, number: int) -> tuple[NewItem, tuple[str, ...], tuple[str, ...]]:
    """The booking, what is to be told of it, and the names of its photos. number: the row in the file."""
    cells = _parted(reads, row, number)
    kind = _kind(reads, cells)
    tag = cells.text(Field.TAG)
    if not tag:
        raise Refused(tr("tag"), tr("No tag stands in the row."), tr("Write one into the list, and read it again."))
    given = _days(reads, cells)
    lines = {one.value: _line(cells, one) for one in _LINES}
    rating, sizes = _rating(reads, cells, kind), _sizes(reads, cells, kind)
    past, fixing = _past(reads, cells), _fixing(cells)
    photos = _photos(cells)
    facts = NewItem(
        tag=tag,
        kind=kind.key,
        rating=rating,
        sizes=sizes,
        provenance=past,
        fixed_by=fixing,
        made_on=given.get(Field.MADE_ON),
        in_service_on=given.get(Field.IN_SERVICE),
        borrowed_until=given.get(Field.UNTIL),
        note=_note(reads, cells),
        **lines,  # type: ignore[arg-type] # every one is a text
    )
    check_text(tr("note"), facts.note)
    return facts, tuple(cells.told), photos


def _parted(reads: Reader, row: Row, number: int) -> _Cells:
    cells = _Cells(number, {})
    for one in reads.matching.columns:
        cell = row[one.at] if one.at < len(row) else ""
        if cell == "" or one.field == Field.LEFT_OUT:
            continue
        if one.field in {Field.NOTE, Field.INSPECTED}:
            cells.note.append(_noted(one, cell))
        elif isinstance(cell, str) and figures.text_of(cell).casefold() in _NOTHING and one.field != Field.TAG:
            if one.field not in {Field.PAST}:
                cells.note.append(f"{one.heading}: {cell}" if one.heading else cell)
        else:
            cells.by_field.setdefault(one.field, []).append((one, cell))
    return cells


def _noted(column: Column, cell: Cell) -> str:
    said = figures.text_of(cell)
    if column.field == Field.INSPECTED:
        return tr(
            "The list says of an inspection ({heading}): {said}. It counts as none.", heading=column.heading, said=said
        )
    is_note = table("fields").get(plain(column.heading)) == Field.NOTE
    return said if is_note or not column.heading else f"{column.heading}: {said}"


def _kind(reads: Reader, cells: _Cells) -> Kind:
    said = cells.text(Field.KIND)
    if not said:
        why = tr("It is not told what kind of gear it is.")
        raise Refused(tr("kind"), why, tr("Write the kind into the list, and read it again."))
    if not (key := kind_meant(said, reads.kinds)):
        why = tr("“{said}” is no kind of gear of the register, or could be several.", said=said)
        raise Refused(tr("kind"), why, tr("Write one of the kinds that `inspector kinds` lists, and read it again."))
    if plain(said) not in reads.kinds:
        kind = reads.office.kind(key)
        cells.told.append(tr("“{said}” is taken as: {kind}.", said=said, kind=within(tr(kind.name))))
    return reads.office.kind(key)


def _line(cells: _Cells, name: Field) -> str:
    text = cells.text(name)
    check_line(field_words()[name], text)
    return text


def _days(reads: Reader, cells: _Cells) -> dict[str, date]:
    found = {}
    for name in DAYS:
        for column, cell in cells.by_field.get(name, ())[:1]:
            day, is_vague = days.read_day_cell(cell, column, reads.office.today, column.heading)
            found[name.value] = day
            if is_vague:
                said = figures.text_of(cell)
                cells.told.append(
                    tr("“{said}” is taken as {day}, the earliest it can be.", said=said, day=show_day(day))
                )
                cells.note.append(f"{column.heading}: {said}")
    return found


def _rating(reads: Reader, cells: _Cells, kind: Kind) -> Rating:
    """The rating that the kind goes by; of two the WLL, and the other is told in the note."""
    given = [_one_rating(reads, cells, kind, column, cell) for column, cell in cells.by_field.get(Field.RATING, ())]
    if not given:
        return Rating(Basis.UNRATED, None, None, "none")
    given.sort(key=lambda one: (one[0] not in kind.rated_by, one[0] is not Basis.WLL))
    basis, figure, _ = given[0]
    cells.note += [f"{column.heading}: {other.as_typed}" for _, other, column in given[1:]]
    return Rating(basis, figure, _factor(reads, cells), reads.matching.stated_on)


def _one_rating(reads: Reader, cells: _Cells, kind: Kind, column: Column, cell: Cell) -> tuple[Basis, Figure, Column]:
    basis = _basis(cells, kind, column, cell)
    dimension = Dimension.MASS if basis is Basis.TOWED_MASS else Dimension.FORCE
    return basis, figures.read_figure(cell, column, dimension, column.heading or tr("rating")), column


def _basis(cells: _Cells, kind: Kind, column: Column, cell: Cell) -> Basis:
    """What the figure is: by its cell, the row's word, the column, or as the only thing that a kind is marked with."""
    said = figures.without_basis(figures.text_of(cell))[1] or table("bases").get(plain(cells.text(Field.BASIS)), "")
    if said:
        return Basis(said)
    if column.basis and (Basis(column.basis) in kind.rated_by or heading_meant(column.heading, {}).basis):
        return Basis(column.basis)
    if kind.rated_by in _SOLE:
        return kind.rated_by[0]
    if column.basis:
        return Basis(column.basis)
    raise NotTold(column, Asks.BASIS, figures.text_of(cell))


def _factor(reads: Reader, cells: _Cells) -> float | None:
    for column, cell in cells.by_field.get(Field.FACTOR, ())[:1]:
        typed = cell.replace(" ", "") if isinstance(cell, str) else cell
        return figures.read_figure(typed, column, Dimension.FACTOR, column.heading).si
    return None


def _sizes(reads: Reader, cells: _Cells, kind: Kind) -> tuple[SizeAsNew, ...]:
    """The sizes that the kind has; what stands in a column of another kind's size goes into the note."""
    known = {size.key: size for size in kind.sizes}
    found = []
    for name, given in cells.by_field.items():
        if not name.startswith(SIZE_SIGN):
            continue
        key = name.removeprefix(SIZE_SIGN)
        for column, cell in given[: 1 if key in known else 0]:
            found.append(SizeAsNew(key, figures.read_figure(cell, column, known[key].dimension, column.heading)))
        left = given[1:] if key in known else given
        cells.note += [f"{column.heading}: {figures.text_of(cell)}" for column, cell in left]
    return tuple(found)


def _past(reads: Reader, cells: _Cells) -> Provenance:
    """How it came. A word that nobody knows is no word: its past is unknown, and the word stands in the note."""
    said = cells.text(Field.PAST)
    if known := reads.pasts.get(plain(said)):
        return Provenance(known)
    if said:
        cells.note.append(tr("How it came, as the list says: {said}", said=said))
        cells.told.append(tr("“{said}” tells nothing certain of its past; it counts as unknown.", said=said))
    return Provenance.UNKNOWN


def _fixing(cells: _Cells) -> Fixing:
    said = cells.text(Field.FIXED_BY)
    if said and not (known := table("fixings").get(plain(said))):
        why = tr("“{said}” is neither bolts nor welds.", said=said)
        raise Refused(tr("fixed by"), why, tr("Mend it in the list, or leave it empty."))
    return Fixing(known) if said and known else Fixing.UNKNOWN


def _photos(cells: _Cells) -> tuple[str, ...]:
    texts = [figures.text_of(cell) for _, cell in cells.by_field.get(Field.PHOTO, ())]
    return tuple(name.strip() for text in texts for name in text.replace("|", ";").split(";") if name.strip())


def _note(reads: Reader, cells: _Cells) -> str:
    source = tr("From the list {file}, row {number}.", file=reads.file, number=cells.number)
    return " · ".join((*dict.fromkeys(cells.note), source))
