"""Pieces that are here for a time: borrowed until a day, or come along for one trip."""

from collections.abc import Iterable
from datetime import date

from inspector.gear.item import Item
from inspector.gear.trip import Trip
from inspector.language import show_day, tr
from inspector.refused import Refused


def kept_from(items: Iterable[Item], planned: Trip) -> dict[str, str]:
    """By tag, why a piece that is here for a time may not go on this trip."""
    found = {one.tag: _why(one, planned) for one in items}
    return {tag: why for tag, why in found.items() if why}


def check_may_be_lent(items: Iterable[Item], planned: Trip | None, back_by: date | None) -> None:
    """Refuse to lend what came along for another trip, or beyond the day on which it goes back to its owner."""
    for one in items:
        facts = one.facts
        if facts.visiting_for and (planned is None or planned.ref != facts.visiting_for):
            why = tr("{tag} came along for {trip} alone.", tag=one.tag, trip=facts.visiting_for)
            raise Refused(tr("tag"), why, tr("Lend it for that trip, or leave it with its owner."))
        if facts.borrowed_until and (back_by is None or back_by > facts.borrowed_until):
            day = show_day(facts.borrowed_until)
            why = tr("{tag} is borrowed and goes back to its owner by {day}.", tag=one.tag, day=day)
            raise Refused(tr("due"), why, tr("Lend it until that day at most."))


def _why(item: Item, planned: Trip) -> str:
    facts = item.facts
    if facts.visiting_until and (facts.visiting_for != planned.ref or facts.visiting_until < planned.last_on):
        day = show_day(facts.visiting_until)
        return tr("It came along for {trip} alone, to {day}.", trip=facts.visiting_for, day=day)
    if facts.borrowed_until and facts.borrowed_until < planned.last_on:
        day = show_day(facts.borrowed_until)
        return tr("It is borrowed and goes back to {name} by {day}.", name=facts.owner or facts.from_whom, day=day)
    return ""
