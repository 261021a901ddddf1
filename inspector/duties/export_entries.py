"""What happened to the gear as tables for other programs: inspections, readings, uses, exposures, kept documents."""

from collections.abc import Callable, Iterator, Mapping

from msgspec import Struct

from inspector.duties.export_gear import rounded, word
from inspector.duties.office import Office
from inspector.gear.exported import Cell, ExportedTable
from inspector.gear.inspection import NewInspection, Reading
from inspector.gear.item import Item
from inspector.gear.kind import Grade, Kind
from inspector.gear.strike import NewStrike
from inspector.gear.use import NewExposure, NewUse
from inspector.language import tr
from inspector.register.exchange_page import EntryLine
from inspector.register.page import Page
from inspector.register.rows import from_body
from inspector.units import si_unit


class Told(Struct, frozen=True):
    """What every table of entries is told with. pieces: those wanted, by id; struck: entries that do not count."""

    page: Page
    pieces: Mapping[str, Item]
    kinds: Mapping[str, Kind]
    names: Mapping[str, str]
    struck: frozenset[str]

    def entries(self, table: str) -> Iterator[tuple[EntryLine, tuple[Cell, ...]]]:
        """Each entry of a wanted piece with its first cells: tag, kind, day, whether it was struck."""
        for line in self.page.entries(table):
            if item := self.pieces.get(line.item_id):
                kind = self.kinds.get(item.facts.kind)
                yield line, (item.tag, kind.name if kind else item.facts.kind, line.on, _yes(line.key in self.struck))

    def name(self, key: str) -> str:
        """A person's name; what was written down where it is no id."""
        return self.names.get(key, key)


def told(office: Office, page: Page, pieces: Mapping[str, Item]) -> Told:
    """What the tables of these pieces need. pieces: by id."""
    names = {one.id: one.name for one in page.people()}
    struck = frozenset(from_body(one.body, NewStrike).entry for one in page.entries("strike"))
    return Told(page, pieces, office.rules.kinds, names, struck)


def entry_tables(every: Told) -> tuple[ExportedTable, ...]:
    """Inspections, readings, uses and exposures."""
    return (inspections_table(every), readings_table(every), uses_table(every), exposures_table(every))


def _heads(*more: str) -> tuple[str, ...]:
    return (tr("tag"), tr("kind"), tr("day"), tr("struck, does not count"), *more)


def inspections_table(every: Told) -> ExportedTable:
    """One row an inspection or check: who looked, and every answer."""
    heads = _heads(
        tr("occasion"), tr("by"), tr("second name"), tr("competent for it"), tr("not good"), tr("all answers"),
        tr("trip"), tr("sheet"), tr("note"), tr("entry"),
    )  # fmt: skip
    return ExportedTable(tr("Inspections"), heads, tuple(_inspections(every)))


def _inspections(every: Told) -> Iterator[tuple[Cell, ...]]:
    for line, first in every.entries("inspection"):
        seen = from_body(line.body, NewInspection)
        answers = [(one.check, f"{one.check}={one.grade.value}{_note(one.note)}", one.grade) for one in seen.answers]
        faults = "; ".join(said for _, said, grade in answers if grade is not Grade.GOOD)
        people = (every.name(seen.by), every.name(seen.second), _yes(seen.competent))
        said = "; ".join(said for _, said, _ in answers)
        yield (*first, word(seen.kind), *people, faults, said, seen.trip, seen.sheet, seen.note, line.key)


def readings_table(every: Told) -> ExportedTable:
    """One row a reading, as it was typed and in SI."""
    heads = _heads(
        tr("measure"), tr("point"), tr("reading"), tr("reading in SI"), tr("SI unit"), tr("method"), tr("surface"),
        tr("gauge"), tr("tried on its block"), tr("by"), tr("entry"),
    )  # fmt: skip
    return ExportedTable(tr("Readings"), heads, tuple(_readings(every)))


def _readings(every: Told) -> Iterator[tuple[Cell, ...]]:
    for line, first in every.entries("inspection"):
        seen = from_body(line.body, NewInspection)
        for one in seen.readings:
            yield (*first, *_reading(one), every.name(seen.by), line.key)


def _reading(one: Reading) -> tuple[Cell, ...]:
    value = (one.figure.as_typed, rounded(one.figure.si), si_unit(one.figure.dimension))
    return (one.measure, one.point, *value, word(one.method), word(one.surface), one.gauge, _yes(one.block_checked))


def uses_table(every: Told) -> ExportedTable:
    """One row a day's pulls."""
    heads = _heads(tr("pulls"), tr("event"), tr("by"), tr("note"), tr("entry"))

    def cells(line: EntryLine) -> tuple[Cell, ...]:
        use = from_body(line.body, NewUse)
        return use.pull_count, word(use.event), every.name(use.by), use.note

    return ExportedTable(tr("Uses"), heads, _all(every, "piece_use", cells))


def exposures_table(every: Told) -> ExportedTable:
    """One row a day or season in salt, mud, sun, heat, chemicals or frost."""
    heads = _heads(
        tr("weather"), tr("days"), tr("rinsed"), tr("dried"), tr("hottest"), tr("by"), tr("note"), tr("entry")
    )

    def cells(line: EntryLine) -> tuple[Cell, ...]:
        sea = from_body(line.body, NewExposure)
        hottest = sea.hottest.as_typed if sea.hottest else ""
        state = (_yes(sea.rinsed), _yes(sea.dried), hottest)
        return (word(sea.weather), sea.days_count, *state, every.name(sea.by), sea.note)

    return ExportedTable(tr("Exposures"), heads, _all(every, "exposure", cells))


def _all(every: Told, table: str, cells: Callable[[EntryLine], tuple[Cell, ...]]) -> tuple[tuple[Cell, ...], ...]:
    return tuple((*first, *cells(line), line.key) for line, first in every.entries(table))


def documents_table(every: Told) -> ExportedTable:
    """One row a kept document, whatever it is about."""
    heads = (tr("number"), tr("document"), tr("day"), tr("about"))
    called = {**every.names, **_called(every.page), **{key: item.tag for key, item in every.pieces.items()}}
    rows = tuple(
        (one.number, one.kind.replace("_", " "), one.on, called.get(one.about, one.about))
        for one in every.page.documents()
    )
    return ExportedTable(tr("Documents"), heads, rows)


def _called(page: Page) -> dict[str, str]:
    """What trips, incidents and counts are called, by id."""
    called = {one.id: one.ref for one in page.trips()}
    called |= {one.id: one.ref for one in page.incidents()}
    return called | {one.id: one.ref for one in page.stock_takes()}


def _note(text: str) -> str:
    return f" ({text})" if text else ""


def _yes(said: bool | None) -> str:
    """Said or not said; nothing where nobody said."""
    return "" if said is None else tr("yes") if said else tr("no")
