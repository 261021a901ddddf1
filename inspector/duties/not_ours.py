"""Pieces that are here for a time: borrowed until a day, or come along for one trip."""

from collections.abc import Iterable

from inspector.gear.item import Item
from inspector.gear.trip import Trip
from inspector.language import show_day, tr


def kept_from(items: Iterable[Item], planned: Trip) -> dict[str, str]:
    """By tag, why a piece that is here for a time may not go on this trip."""
    found = {one.tag: _why(one, planned) for one in items}
    return {tag: why for tag, why in found.items() if why}


def _why(item: Item, planned: Trip) -> str:
    facts = item.facts
    if facts.visiting_until and (facts.visiting_for != planned.ref or facts.visiting_until < planned.last_on):
        day = show_day(facts.visiting_until)
        return tr("It came along for {trip} alone, to {day}.", trip=facts.visiting_for, day=day)
    if facts.borrowed_until and facts.borrowed_until < planned.last_on:
        day = show_day(facts.borrowed_until)
        return tr("It is borrowed and goes back to {name} by {day}.", name=facts.owner or facts.from_whom, day=day)
    return ""
