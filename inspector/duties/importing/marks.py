"""What a row says of its piece that many pieces share: its kind, its rating, its sizes, how it is fixed."""

from collections.abc import Mapping, Sequence

from inspector.duties.importing import figures
from inspector.duties.importing.asked import NotTold
from inspector.duties.importing.headings import heading_meant
from inspector.duties.importing.looks import Look
from inspector.duties.importing.reader import Marks, Reader
from inspector.duties.importing.words import kind_meant, kinds_near, plain, table
from inspector.gear.import_list import SIZE_SIGN, Asks, Cell, Column, Field, Row
from inspector.gear.item import BOLT_COUNT, Fixing, Rating, SizeAsNew
from inspector.gear.kind import Basis, Kind
from inspector.language import tr, within
from inspector.refused import Refused
from inspector.units import Dimension, Figure

_SOLE = ((Basis.TOWED_MASS,), (Basis.LINE_PULL,))
_By = Mapping[str, Sequence[Look]]


def kind_of(reads: Reader, said: str) -> tuple[Kind, tuple[str, ...]]:
    """The kind that a cell names, and what is to be told of that; refused where it names none."""
    if not said:
        why = tr("It is not told what kind of gear it is.")
        raise Refused(tr("kind"), why, tr("Write the kind into the list, and read it again."))
    if not (key := kind_meant(said, reads.kinds)):
        why = tr("“{said}” is no kind of gear of the register, or could be several.", said=said)
        what = tr("Write one of the kinds that `inspector kinds` lists, and read it again.")
        near = [within(tr(reads.kind(one).name)) for one in kinds_near(said, reads.kinds)]
        nearest = [tr("It comes near: {names}.", names=", ".join(near))] if near else []
        raise Refused(tr("kind"), why, " ".join((*nearest, what)))
    kind = reads.kind(key)
    if plain(said) in reads.kinds:
        return kind, ()
    return kind, (tr("“{said}” is taken as: {kind}.", said=said, kind=within(tr(kind.name))),)


def marks_of(reads: Reader, row: Row, kind: Kind, told: tuple[str, ...]) -> Marks:
    """The marks of a piece of this kind, of which that is told; refused where a cell cannot be read."""
    given, notes = reads.given(row), list[str]()
    rating, sizes = _rating(reads, given, kind, notes), _sizes(reads, given, kind, notes)
    return Marks(kind, told, rating, sizes, _fixing(_text(given, Field.FIXED_BY)), tuple(notes))


def ask_for_sizes(reads: Reader, row: Row, kind: Kind, marks: Marks) -> None:
    """Refuse a piece without a size that it must have where a column that only tells notes may hold it."""
    given = {one.key for one in marks.sizes}
    missing = [one for one in kind.sizes if one.required and one.key not in {*given, BOLT_COUNT}]
    notes = [one for one in reads.matching.columns if one.field == Field.NOTE and one.heading and one.at < len(row)]
    may = next((one for one in notes if any(map(str.isdigit, str(row[one.at])))), None)
    if missing and may:
        what = tr(
            "If the column “{heading}” holds it, say so: `--column {column}=size:{size}`, or in the window what that "
            "column means. Else measure the piece.",
            heading=may.heading, column=may.letter, size=missing[0].key,
        )  # fmt: skip
        raise Refused(", ".join(one.name for one in missing), tr("No column of the list was read as it."), what)


def _text(given: _By, name: str) -> str:
    return given[name][0].text if name in given else ""


def _rating(reads: Reader, given: _By, kind: Kind, notes: list[str]) -> Rating:
    """The rating that the kind goes by; of two the WLL, and the other is told in the note."""
    by = _text(given, Field.BASIS)
    found = [_one_rating(by, kind, reads.column(one), one.cell) for one in given.get(Field.RATING, ())]
    if not found:
        return Rating(Basis.UNRATED, None, None, "none")
    found.sort(key=lambda one: (one[0] not in kind.rated_by, one[0] is not Basis.WLL))
    basis, figure, _ = found[0]
    notes += [f"{column.heading}: {other.as_typed}" for _, other, column in found[1:]]
    return Rating(basis, figure, _factor(reads, given), reads.matching.stated_on)


def _one_rating(by: str, kind: Kind, column: Column, cell: Cell) -> tuple[Basis, Figure, Column]:
    basis = _basis(by, kind, column, cell)
    dimension = Dimension.MASS if basis is Basis.TOWED_MASS else Dimension.FORCE
    return basis, figures.read_figure(cell, column, dimension, column.heading or tr("rating")), column


def _basis(by: str, kind: Kind, column: Column, cell: Cell) -> Basis:
    """What the figure is: by its cell, the row's word, the column, or as the only thing that a kind is marked with."""
    said = figures.without_basis(figures.text_of(cell))[1] or table("bases").get(plain(by), "")
    if said:
        return Basis(said)
    if column.basis and (Basis(column.basis) in kind.rated_by or heading_meant(column.heading, {}).basis):
        return Basis(column.basis)
    if kind.rated_by in _SOLE:
        return kind.rated_by[0]
    if column.basis:
        return Basis(column.basis)
    raise NotTold(column, Asks.BASIS, figures.text_of(cell))


def _factor(reads: Reader, given: _By) -> float | None:
    for one in given.get(Field.FACTOR, ())[:1]:
        column = reads.column(one)
        typed = one.cell.replace(" ", "") if isinstance(one.cell, str) else one.cell
        return figures.read_figure(typed, column, Dimension.FACTOR, column.heading).si
    return None


def _sizes(reads: Reader, given: _By, kind: Kind, notes: list[str]) -> tuple[SizeAsNew, ...]:
    """The sizes that the kind has; what stands in a column of another kind's size goes into the note."""
    known = {size.key: size for size in kind.sizes}
    found = []
    for name, looks in given.items():
        if not name.startswith(SIZE_SIGN):
            continue
        key = name.removeprefix(SIZE_SIGN)
        for one in looks[: 1 if key in known else 0]:
            column = reads.column(one)
            found.append(SizeAsNew(key, figures.read_figure(one.cell, column, known[key].dimension, column.heading)))
        left = looks[1:] if key in known else looks
        notes += [f"{reads.column(one).heading}: {one.text}" for one in left]
    return tuple(found)


def _fixing(said: str) -> Fixing:
    if not said:
        return Fixing.UNKNOWN
    if not (known := table("fixings").get(plain(said))):
        why = tr("“{said}” is neither bolts nor welds.", said=said)
        raise Refused(tr("fixed by"), why, tr("Mend it in the list, or leave it empty."))
    return Fixing(known)
