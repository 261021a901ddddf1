"""The gear as a table for other programs: one row a piece, all that was written down of it and what it was judged.

Names of columns are words of the officer's language; what stands in a column of choices (basis, past, kept for …) is
the register's own word and the same in every language, so that the table can be read in again anywhere.
"""

from collections.abc import Iterator, Sequence
from enum import StrEnum

from msgspec import Struct

from inspector.drawings.marks import outcome_word
from inspector.duties.gear_list import gear_rows
from inspector.duties.office import Office
from inspector.gear.exported import Cell, ExportedTable
from inspector.gear.fitting import NewFitting
from inspector.gear.item import NewItem, SizeAsNew
from inspector.gear.lists import GearRow
from inspector.gear.outcome import Outcome
from inspector.gear.standing import StandingWords
from inspector.language import tr
from inspector.register.current import facts_of
from inspector.register.lists import GearLine
from inspector.register.page import Page
from inspector.register.rows import from_body
from inspector.units import si_unit

_AT_ONCE = 500
_HUNDREDTHS = 100


def gear_table(office: Office, page: Page, tags: Sequence[str]) -> ExportedTable:
    """The pieces with these tags, in their order; a column for each size that any of them has."""
    pieces = [one for some in _shares(tags) for one in _pieces(office, page, some)]
    sizes = tuple(dict.fromkeys(size.key for piece in pieces for size in piece.facts.sizes))
    named = tuple(key.replace("_", " ") for key in sizes)
    heads = (*_judged_heads(), *_marked_heads(), *named, tr("sizes in SI"), *_booked_heads())
    return ExportedTable(tr("Gear"), heads, tuple(_cells(one, sizes) for one in pieces))


class _Piece(Struct, frozen=True):
    """A piece as it is listed, and what is written down of it now."""

    line: GearLine
    row: GearRow
    facts: NewItem


def _pieces(office: Office, page: Page, tags: Sequence[str]) -> Iterator[_Piece]:
    lines = page.gear_lines(tags)
    for line, row in zip(lines, gear_rows(office, page, lines), strict=True):
        yield _Piece(line, row, _facts(line))


def _cells(piece: _Piece, sizes: Sequence[str]) -> tuple[Cell, ...]:
    typed = {one.key: one.figure.as_typed for one in piece.facts.sizes}
    marked = (*_marked(piece.facts), *(typed.get(key, "") for key in sizes), _sizes_si(piece.facts.sizes))
    return (*_judged(piece.line, piece.row), *marked, *_booked(piece.line, piece.row, piece.facts))


def word(value: StrEnum) -> str:
    """The register's own word of a choice, with blanks."""
    return value.value.replace("_", " ")


def rounded(si: float) -> float:
    """A value without the tail that reckoning from other units leaves behind."""
    return float(f"{si:.12g}")


def _shares(tags: Sequence[str]) -> Iterator[Sequence[str]]:
    return (tags[at : at + _AT_ONCE] for at in range(0, len(tags), _AT_ONCE))


def _sizes_si(sizes: Sequence[SizeAsNew]) -> str:
    """Sizes as new in SI, each by its key."""
    return "; ".join(f"{one.key}={rounded(one.figure.si)} {si_unit(one.figure.dimension)}" for one in sizes)


def _facts(line: GearLine) -> NewItem:
    """What is written down now, with the vehicle it sits on since it was fitted last."""
    facts = facts_of(line.body, line.changed)
    return facts.after(from_body(line.fitting, NewFitting)) if line.fitting else facts


def _judged_heads() -> tuple[str, ...]:
    return (
        tr("tag"), tr("kind"), tr("kind key"), tr("verdict"), tr("verdict in a line"), tr("may be used for"),
        tr("reasons"), tr("without loosened limits"), tr("next due"), tr("last inspected"),
    )  # fmt: skip


def _judged(line: GearLine, row: GearRow) -> tuple[Cell, ...]:
    said = from_body(line.words, StandingWords)
    reasons = " | ".join(dict.fromkeys(one.sentence for one in said.reasons))
    else_ = outcome_word(row.unloosened) if row.unloosened else ""
    verdict = outcome_word(Outcome(line.outcome))
    days = (row.next_due, row.inspected_on)
    return (row.tag, row.kind_name, row.kind, verdict, said.headline, said.use_line, reasons, else_, *days)


def _marked_heads() -> tuple[str, ...]:
    return (
        tr("rating"), tr("rating in SI"), tr("SI unit"), tr("basis"), tr("design factor"), tr("stated on"),
        tr("maker's mark"), tr("serial"), tr("material"),
    )  # fmt: skip


def _marked(facts: NewItem) -> tuple[Cell, ...]:
    rating, figure = facts.rating, facts.rating.figure
    marked = (figure.as_typed, rounded(figure.si), si_unit(figure.dimension)) if figure else ("", None, "")
    stated = (word(rating.basis), rating.design_factor, rating.stated_on)
    return (*marked, *stated, facts.maker_mark, facts.serial, facts.material)


def _booked_heads() -> tuple[str, ...]:
    return (
        tr("owner"), tr("place"), tr("where it is"), tr("on vehicle"), tr("end"), tr("side"), tr("fixed by"),
        tr("kept for"), tr("provenance"), tr("from whom"), tr("paper"), tr("borrowed until"),
        tr("along for trip"), tr("along until"), tr("made on"), tr("in service since"), tr("booked on"),
        tr("worth"), tr("currency"), tr("note"),
    )  # fmt: skip


def _booked(line: GearLine, row: GearRow, facts: NewItem) -> tuple[Cell, ...]:
    worth = facts.worth
    sits = (facts.fitted_to, word(facts.fitted_end), word(facts.fitted_side), word(facts.fixed_by))
    came = (word(facts.provenance), facts.from_whom, facts.paper, facts.borrowed_until)
    visit = (facts.visiting_for, facts.visiting_until)
    value = (worth.hundredths / _HUNDREDTHS, worth.currency) if worth else (None, "")
    kept_for = "; ".join(map(word, facts.kept_for))
    days = (facts.made_on, facts.in_service_on, line.booked_on)
    return (facts.owner, row.place, row.where, *sits, kept_for, *came, *visit, *days, *value, facts.note)
