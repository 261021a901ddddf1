"""Which pieces may not be at hand for a trip: out with somebody, in another kit, or a member's who stays at home."""

from collections.abc import Collection, Iterable, Mapping
from datetime import date

from msgspec import Struct

from inspector.duties.not_ours import kept_from
from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import evidence_words, gone_words
from inspector.duties.who import owns
from inspector.gear.custody import NewCustody
from inspector.gear.item import Item
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.language import show_day, tr
from inspector.register.page import Page


class Away(Struct, frozen=True):
    """A piece that may not be at hand, and why. lent: it is out and not for this trip, gone, or evidence."""

    tag: str
    why: str
    lent: bool


def away(office: Office, page: Page, planned: Trip, tags: Collection[str]) -> tuple[Away, ...]:
    """Of these pieces, by tag, those that are out on another loan on the trip's days or that another trip takes."""
    if planned.last_on < office.today:
        return ()
    names = {one.id: one.name for one in page.people()}
    lent = {one.item.tag: one.lent.facts for one in page.out()}
    found = {tag: _why_lent(lent[tag], planned, office.today, names) for tag in tags if tag in lent}
    found |= kept_from(page.items(tuple(tags)).values(), planned) | not_to_be_had(page, tags)
    taken = _taken(page.trips(), planned)
    every = {
        tag: why for tag in tags if (why := " ".join(one for one in (found.get(tag, ""), taken.get(tag, "")) if one))
    }
    return tuple(Away(tag, every[tag], bool(found.get(tag))) for tag in sorted(every))


def not_to_be_had(page: Page, tags: Collection[str]) -> dict[str, str]:
    """By tag, why the club does not have a piece or must leave it as it was found."""
    names = {one.id: one.name for one in page.people()}
    items = page.items(tuple(tags))
    where = page.whereabouts(items.values())
    why = {
        tag: gone_words(where[one.id], names) or evidence_words(page.open_quarantines(one))
        for tag, one in items.items()
    }
    return {tag: said for tag, said in why.items() if said}


def lent_away(office: Office, page: Page, planned: Trip) -> dict[str, str]:
    """The pieces of a trip's kit that are out on another loan on its days, and with whom."""
    return {one.tag: one.why for one in away(office, page, planned, planned.kit) if one.lent}


def stays_with_owner(page: Page, planned: Trip, items: Iterable[Item]) -> dict[str, str]:
    """By tag, whose of these pieces are a member's own who does not go: the club cannot pack them."""
    people = page.people()
    at_home = [one for one in people if not _goes(one, planned)]
    owner = {item.tag: next((one for one in at_home if owns(one, item)), None) for item in items}
    why = tr("It belongs to {name}, who does not go on this trip.")
    return {tag: why.format(name=one.name) for tag, one in owner.items() if one is not None}


def _goes(person: Person, planned: Trip) -> bool:
    return person.id in planned.people or person.name.casefold() == planned.leader.strip().casefold()


def _why_lent(loan: NewCustody, planned: Trip, today: date, names: Mapping[str, str]) -> str:
    """Empty where it goes out for this very trip, or is due back before it begins."""
    back_before = loan.due is not None and today <= loan.due < planned.first_on
    if loan.trip == planned.ref or back_before:
        return ""
    due = show_day(loan.due) if loan.due else tr("no known day")
    return tr("It is on loan to {name}, due back on {day}.", name=names.get(loan.holder, loan.holder), day=due)


def _taken(trips: Iterable[Trip], planned: Trip) -> dict[str, str]:
    """By tag, the other trips that take a piece on a day of this one."""
    found: dict[str, str] = {}
    for other in trips:
        if other.id == planned.id or other.last_on < planned.first_on or planned.last_on < other.first_on:
            continue
        why = tr("It stands in the kit of {ref} as well, from {first} to {last}.")
        said = why.format(ref=other.ref, first=show_day(other.first_on), last=show_day(other.last_on))
        found |= {tag: f"{found.get(tag, '')} {said}".strip() for tag in other.kit}
    return found
