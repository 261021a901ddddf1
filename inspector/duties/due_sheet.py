"""The calendar as the window shows it: the lines up to a day, narrowed and sorted, and what it can be narrowed to."""

from collections.abc import Iterable, Iterator
from datetime import date

from inspector.duties.due_views import View, at_place, of_person, sorted_by
from inspector.duties.office import Office
from inspector.duties.what_falls_due import Held, due_lines, held_up_to, last_day
from inspector.gear.falls_due import DueSheet
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import Where
from inspector.register.page import Page

_AT_ONCE = 500  # pieces whose places are looked up by one question


def due_sheet(
    office: Office, until: date | None = None, view: View = View.DAY, person: str = "", place: str = ""
) -> DueSheet:
    """The sheet; refused for a day that is past, for somebody nobody knows, and for a place where nothing lies."""
    last = last_day(office, until)
    with office.book.reading() as page:
        outcomes: dict[str, Outcome] = {}
        lines = due_lines(office, page, _noted(held_up_to(office, page, last), outcomes), last)
        people = tuple(one.name for one in page.people())
        vehicles = [one.tag for one in page.vehicles()]
        places = {*_places(page), *vehicles}
    if person:
        lines = of_person(office, lines, person)
    if place:
        lines = at_place(office, lines, place)
    return DueSheet(
        last=last,
        lines=lines,
        groups=sorted_by(lines, view),
        outcomes=outcomes,
        people=people,
        places=tuple(sorted(places, key=str.casefold)),
    )


def _noted(pieces: Iterable[Held], outcomes: dict[str, Outcome]) -> Iterator[Held]:
    """The pieces as they pass, their outcomes noted by tag."""
    for one in pieces:
        outcomes[one.item.tag] = one.verdict.outcome
        yield one


def _places(page: Page) -> Iterator[str]:
    """Where pieces lie in the store, and what such a place lies in: "Shed, hook 1" lies in "Shed"."""
    keys = page.keys()
    for at in range(0, len(keys), _AT_ONCE):
        for one in page.whereabouts(page.items_with(keys[at : at + _AT_ONCE])).values():
            if one.where is Where.IN_STORE and one.at.strip():
                yield one.at.strip()
                yield one.at.partition(",")[0].strip()
