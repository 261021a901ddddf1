"""A count as its entries tell it: what was expected, what was marked last, what is left."""

import re

from msgspec import Struct

from inspector.gear.item import Item
from inspector.gear.stock_take import Counted, NewStockEntry, StockStep, StockTake
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


class Marked(Struct, frozen=True):
    """A piece with its last mark."""

    item: Item
    entry: NewStockEntry


class Count(Struct, frozen=True):
    """A count. expected, marks: by the piece's id; labels: seen, and no piece had them; closed: its close, if any."""

    taken: StockTake
    expected: dict[str, Item]
    elsewhere: dict[str, Item]
    marks: dict[str, Marked]
    labels: tuple[str, ...]
    closed: NewStockEntry | None

    @property
    def ref(self) -> str:
        """What the count is called by."""
        return self.taken.ref

    def counted(self, item: Item) -> Counted:
        """What its last mark says; a piece without one is not known to be there."""
        mark = self.marks.get(item.id)
        return mark.entry.counted if mark else Counted.UNKNOWN

    def seen(self, said: Counted) -> tuple[Item, ...]:
        """The expected pieces of which this stands."""
        return tuple(item for item in self.expected.values() if self.counted(item) is said)


def count_called(page: Page, ref: str) -> Count:
    """The count with this reference."""
    known = page.stock_takes()
    for one in known:
        if one.ref.casefold() == ref.strip().casefold():
            return _read(page, one)
    why = tr("No count has the reference “{ref}”.", ref=ref.strip())
    listed = ", ".join(one.ref for one in known) or tr("none yet")
    raise Refused(tr("count"), why, tr("Use one of: {refs}.", refs=listed))


def open_count(page: Page, ref: str) -> Count:
    """The count with this reference; a closed one takes nothing more."""
    found = count_called(page, ref)
    if found.closed:
        why = tr("The count {ref} is closed and takes nothing more.", ref=found.ref)
        raise Refused(tr("count"), why, tr("Begin a new count."))
    return found


def counts(page: Page) -> tuple[Count, ...]:
    """Every count, the oldest first."""
    return tuple(_read(page, one) for one in page.stock_takes())


def _read(page: Page, taken: StockTake) -> Count:
    entries = [one.facts for one in page.stock_entries(taken)]
    tags = [*taken.facts.expected, *(tag for tag, _ in taken.facts.elsewhere), *(one.tag for one in entries if one.tag)]
    items = page.items(tags)
    marks = {items[one.tag].id: Marked(items[one.tag], one) for one in entries if one.tag in items}
    return Count(
        taken,
        {items[tag].id: items[tag] for tag in taken.facts.expected},
        {items[tag].id: items[tag] for tag, _ in taken.facts.elsewhere},
        marks,
        _labels(entries),
        next((one for one in entries if one.step is StockStep.CLOSED), None),
    )


def _labels(entries: list[NewStockEntry]) -> tuple[str, ...]:
    """Labels without a piece, as they were marked last: seen, or a slip."""
    found: dict[str, bool] = {}
    for one in entries:
        if one.step is StockStep.MARKED:
            found |= dict.fromkeys(one.unknown_tags, one.counted is Counted.PRESENT)
    return tuple(label for label, stands in found.items() if stands)


def covers(scope: str, place: str) -> bool:
    """Whether a place lies in what is counted: "Shed" holds "Shed, hook 1"; an empty scope holds everything."""
    whole, part = scope.casefold().strip(), place.casefold().strip()
    return not whole or part == whole or (part.startswith(whole) and not part[len(whole)].isalnum())


def walked(place: str) -> tuple[bool, list[tuple[str, int]]]:
    """The order in which places are walked: hook 2 comes before hook 10, and no place at all comes last."""
    parts = re.findall(r"(\D*)(\d{0,9})", place.casefold())
    return not place, [(text, int(figure or 0)) for text, figure in parts]


def names_of(page: Page) -> dict[str, str]:
    """The names of people by their ids."""
    return {one.id: one.name for one in page.people()}
