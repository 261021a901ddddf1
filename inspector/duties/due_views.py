"""What falls due as it is looked at: of one person or place alone, and sorted by day, piece, person or place."""

from collections.abc import Callable
from enum import StrEnum

from inspector.duties.counts import covers
from inspector.duties.office import Office
from inspector.duties.tell_due import day_words
from inspector.duties.who import person_of
from inspector.gear.falls_due import DueLine
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import tr
from inspector.refused import Refused

Lines = tuple[DueLine, ...]


class View(StrEnum):
    """How the lines are sorted."""

    DAY = "day"
    PIECE = "piece"
    PERSON = "person"
    PLACE = "place"


def of_person(office: Office, lines: Lines, name: str) -> Lines:
    """The lines that concern a person, by name or id; refused for somebody nobody knows."""
    with office.book.reading() as page:
        person = person_of(page, name, tr("person"))
    return tuple(one for one in lines if person.name in one.people)


def at_place(office: Office, lines: Lines, place: str) -> Lines:
    """The lines of pieces at a place of the store, or on the vehicle with this tag; refused where there is none."""
    with office.book.reading() as page:
        items = page.every_item()
        where = page.whereabouts(items)
        tags = {one.tag for one in items if _is_at(where[one.id], place)}
        is_vehicle = any(one.tag.casefold() == place.strip().casefold() for one in page.vehicles())
    if not tags and not is_vehicle:
        why = tr("No piece lies at “{place}”, and no vehicle has that tag.", place=place.strip())
        raise Refused(tr("place"), why, tr("Write it as the list of gear does, or leave it out."))
    return tuple(one for one in lines if one.what.is_of_piece and one.about in tags)


def _is_at(where: Whereabouts, place: str) -> bool:
    if where.where is Where.ON_VEHICLE:
        return where.at.casefold() == place.strip().casefold()
    return where.where is Where.IN_STORE and bool(place.strip()) and covers(place, where.at)


def sorted_by(lines: Lines, view: View) -> tuple[tuple[str, Lines], ...]:
    """The lines in groups with their titles; every line is in a group, in several where it concerns several people."""
    titles: dict[View, Callable[[DueLine], tuple[str, ...]]] = {
        View.DAY: lambda one: (day_words(one),),
        View.PIECE: lambda one: (tr("{about} · {name}", about=one.about, name=one.name),),
        View.PERSON: lambda one: one.people or (tr("Nobody by name: the club"),),
        View.PLACE: lambda one: (one.place or tr("No place"),),
    }
    groups: dict[str, list[DueLine]] = {}
    for one in lines:
        for title in titles[view](one):
            groups.setdefault(title, []).append(one)
    in_order = groups if view is View.DAY else sorted(groups, key=str.casefold)
    return tuple((title, tuple(groups[title])) for title in in_order)
