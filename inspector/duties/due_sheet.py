"""The calendar as the window shows it: the lines up to a day, narrowed and sorted, and what it can be narrowed to."""

from collections.abc import Iterator, Sequence
from datetime import date

from inspector.duties.due_views import View, at_place, of_person, sorted_by
from inspector.duties.office import Office
from inspector.duties.what_falls_due import Held, due_lines, held, last_day
from inspector.gear.falls_due import DueSheet
from inspector.gear.whereabouts import Where


def due_sheet(
    office: Office, until: date | None = None, view: View = View.DAY, person: str = "", place: str = ""
) -> DueSheet:
    """The sheet; refused for a day that is past, for somebody nobody knows, and for a place where nothing lies."""
    last = last_day(office, until)
    with office.book.reading() as page:
        pieces = held(office, page)
        lines = due_lines(office, page, pieces, last)
        people = tuple(one.name for one in page.people())
        vehicles = [one.tag for one in page.vehicles()]
    if person:
        lines = of_person(office, lines, person)
    if place:
        lines = at_place(office, lines, place)
    return DueSheet(
        last=last,
        lines=lines,
        groups=sorted_by(lines, view),
        outcomes={one.item.tag: one.verdict.outcome for one in pieces},
        people=people,
        places=tuple(sorted({*_places(pieces), *vehicles}, key=str.casefold)),
    )


def _places(pieces: Sequence[Held]) -> Iterator[str]:
    """Where pieces lie in the store, and what such a place lies in: "Shed, hook 1" lies in "Shed"."""
    for one in pieces:
        if one.where.where is Where.IN_STORE and one.where.at.strip():
            place = one.where.at.strip()
            yield place
            yield place.partition(",")[0].strip()
