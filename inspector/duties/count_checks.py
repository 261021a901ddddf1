"""What may be marked in a count, and what must be told of a piece that turns up."""

from collections.abc import Iterator

from msgspec import Struct

from inspector.duties.counts import Count, covers
from inspector.duties.tell_whereabouts import brief_words
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.stock_take import Counted
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import tr
from inspector.register.page import Page


class Told(Struct, frozen=True):
    """What is said of a piece, and what to do."""

    tag: str
    why: str
    what_to_do: str


def why_not_counted(
    count: Count, item: Item, where: Whereabouts, counted: Counted, place: str, names: dict[str, str]
) -> Told | None:
    """Why a piece cannot be marked so; None where it can. A mark may always be taken back."""
    if counted is Counted.UNKNOWN:
        return None
    if where.where is Where.ON_LOAN:
        return _lent(item, where, counted, names)
    if counted is Counted.PRESENT:
        return _loose_part(count, item, where, place) if where.where is Where.ON_VEHICLE else None
    return _not_absent(count, item, where, names)


def _lent(item: Item, where: Whereabouts, counted: Counted, names: dict[str, str]) -> Told:
    why = tr("It is {where} by the register.", where=brief_words(where, names))
    if counted is Counted.PRESENT:
        return Told(item.tag, why, tr("Book its return first, with what it went through; then count it."))
    return Told(item.tag, why, tr("Ask whoever has it. If it is lost, report it missing."))


def _loose_part(count: Count, item: Item, where: Whereabouts, place: str) -> Told | None:
    """A fitted part is counted on its vehicle, and nowhere else."""
    if (place or count.taken.facts.scope).casefold() == where.at.casefold():
        return None
    why = tr("It sits on vehicle {vehicle} by the register.", vehicle=where.at)
    what = tr("If it sits there, mark it at {vehicle}. If it lies here, enter first that it was taken off.")
    return Told(item.tag, why, what.format(vehicle=where.at))


def _not_absent(count: Count, item: Item, where: Whereabouts, names: dict[str, str]) -> Told | None:
    """Only what this count looks for can be absent: a piece of another place is not lost for not lying here."""
    if where.where.is_closed:
        why = tr("It is {where} by the register.", where=brief_words(where, names))
        return Told(item.tag, why, tr("Nothing is to be looked for. Look at the label again."))
    if item.id not in count.expected and item.id not in count.elsewhere:
        why = tr("It is not among what this count looks for.")
        return Told(item.tag, why, tr("Count the place where it belongs, or report it missing by itself."))
    return None


def kept_apart(page: Page, item: Item, where: Whereabouts) -> Iterator[Told]:
    """What must be known at once of a piece that turned up."""
    if where.where is Where.DESTROYED:
        why = tr("It was recorded as made unusable.")
        yield Told(item.tag, why, tr("Keep it apart and do not use it. Look at the label again: is it this piece?"))
    elif where.where is Where.SOLD:
        yield Told(item.tag, tr("It was sold."), tr("Keep it apart: it is not the club's. Look at the label again."))
    elif page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
        why = tr("It is retired and may never be used again.")
        yield Told(item.tag, why, tr("Keep it apart, and make it unusable as its notice says."))
    if where.where in {Where.MISSING, Where.STOLEN, Where.GIVEN_BACK}:
        why = tr("It was {where}.", where=brief_words(where, {}))
        yield Told(item.tag, why, tr("Keep it apart: from the close of the count it is held until inspected."))
    if kept := page.open_quarantines(item):
        why = tr("It is kept as found, as evidence of {refs}.", refs=", ".join(kept))
        yield Told(item.tag, why, tr("Leave it as it is and where it is."))


def lies_elsewhere(where: Whereabouts, count: Count, place: str) -> str:
    """The place where a piece in store was seen, if that is another than the register's; else empty."""
    seen = place or count.taken.facts.scope
    return seen if seen and not covers(seen, where.at) else ""
