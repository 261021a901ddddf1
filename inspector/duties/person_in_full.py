"""Everything that is shown of one person: what he may judge and until when, what he has out, what he owns."""

from collections.abc import Iterator
from datetime import date, timedelta

from msgspec import Struct

from inspector.duties.add_people import families
from inspector.duties.due_days import LOOK_AHEAD_DAYS, competences_ending, has_left
from inspector.duties.gear_list import gear_rows
from inspector.duties.lend import loans
from inspector.duties.office import Office
from inspector.duties.tell_people import PersonRow, open_person
from inspector.duties.who import owns, owns_vehicle
from inspector.gear.custody import Loan
from inspector.gear.item import Item
from inspector.gear.lists import GearRow, HistoryRow
from inspector.gear.person import Competence, Person, scope_word
from inspector.gear.seats import Role
from inspector.gear.trip import Vehicle
from inspector.language import show_day, tr, tr_n
from inspector.register.current import facts_of
from inspector.register.lists import Asked, GearLine
from inspector.register.page import Page

ALL = "all"
_EVERY = 1_000_000


class Held(Struct, frozen=True):
    """A competence in words. stands: whether it runs, ends soon or has ended, and when.

    soon: it ends within the days that are looked ahead, or has ended, and nothing carries it on.
    """

    competence: Competence
    scope: str
    stands: str
    soon: bool


class PersonInFull(Struct, frozen=True):
    """A person without the contact details; has_contact: whether there are any. at_desk: sits there now.

    contact_is_closed: this login may not read them, so nobody can tell whether there are any.
    held: competences, those that run first. changes: the newest first.
    """

    row: PersonRow
    held: tuple[Held, ...]
    has_contact: bool
    loans: tuple[Loan, ...]
    owned: tuple[GearRow, ...]
    vehicles: tuple[Vehicle, ...]
    changes: tuple[HistoryRow, ...]
    at_desk: bool
    contact_is_closed: bool = False

    @property
    def person(self) -> Person:
        """The person."""
        return self.row.person


def in_full(office: Office, who: str) -> PersonInFull:
    """One person; who: name or id."""
    record = open_person(office, who)
    person = record.row.person
    out = tuple(one for one in loans(office) if one.holder == person.name)
    with office.book.reading() as page:
        owned = tuple(_owned(office, page, person))
        vehicles = tuple(one for one in page.vehicles() if owns_vehicle(person, one))
    return PersonInFull(
        row=record.row,
        held=held_in_words(office, person),
        has_contact=record.contact is not None,
        loans=out,
        owned=owned,
        vehicles=vehicles,
        changes=record.changes,
        at_desk=person.id == office.officer.id,
        contact_is_closed=office.book.role is not Role.OFFICER,
    )


def scopes(office: Office) -> tuple[tuple[str, str], ...]:
    """What a person may be competent for: words and scope, all gear first, then each family with its kinds."""
    return tuple((scope_words(office, one), one) for one in (ALL, *families(office)))


def scope_words(office: Office, scope: str) -> str:
    """A scope with the kinds of gear in it."""
    if scope == ALL:
        return tr("all gear")
    names = [kind.name for kind in office.rules.kinds.values() if kind.family == scope]
    return tr("{family} ({kinds})", family=scope_word(scope), kinds=", ".join(names)) if names else scope


def held_in_words(office: Office, person: Person) -> tuple[Held, ...]:
    """Every competence of a person, those that run first."""
    ahead = office.today + timedelta(days=LOOK_AHEAD_DAYS)
    ending = {held for _, held, _ in competences_ending((person,), ahead)}
    told = [Held(one, scope_words(office, one.scope), _stands(one, office.today), one in ending)
            for one in person.competences]  # fmt: skip
    return tuple(sorted(told, key=lambda one: one.competence.until is not None and one.competence.until < office.today))


def brief_held(person: Person, today: date) -> str:
    """What a person may judge, for a line of a list: scopes, and the day where one ends."""
    running = [one for one in person.competences if one.until is None or one.until >= today]
    return ", ".join(map(_brief, running))


def _brief(held: Competence) -> str:
    scope = tr("all gear") if held.scope == ALL else held.scope
    return tr("{scope} until {day}", scope=scope, day=show_day(held.until)) if held.until else scope


def _stands(held: Competence, today: date) -> str:
    if held.since > today:
        return tr("counts from {day} on", day=show_day(held.since))
    since = show_day(held.since)
    if held.until is None:
        return tr("since {day}, without an end", day=since)
    last, days = show_day(held.until), (held.until - today).days
    if days < 0:
        return tr("ended: it counted from {since} until {until}", since=since, until=last)
    left = tr_n("one day left", "{count} days left", days) if days else tr("today is its last day")
    return tr("since {since} until {until}, {left}", since=since, until=last, left=left)


def _owned(office: Office, page: Page, person: Person) -> Iterator[GearRow]:
    """What is written down as this person's, and has not left; the search narrows it before names are compared."""
    lines: dict[str, GearLine] = {}
    for name in (person.name, person.id, *person.former_names):
        lines |= {one.tag: one for one in page.gear(Asked(words=tuple(name.split()), limit=_EVERY))}
    mine = [one for one in lines.values() if owns(person, Item("", office.today, facts_of(one.body, one.changed)))]
    items = page.items([one.tag for one in mine])
    where = page.whereabouts(items.values())
    here = [one for one in sorted(mine, key=lambda one: one.tag) if not has_left(where[items[one.tag].id])]
    yield from gear_rows(office, page, here)
