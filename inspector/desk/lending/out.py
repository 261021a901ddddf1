"""What is out, fetched in one go by the worker and put under headings by person or by trip."""

from collections.abc import Iterable
from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.duties.keep_rigs import rigs
from inspector.duties.lend import loans
from inspector.duties.look_up import trips
from inspector.duties.office import Office
from inspector.gear.custody import Loan
from inspector.gear.rig import KeptRig
from inspector.gear.trip import Trip
from inspector.language import show_day, tr, tr_n


class Grouped(StrEnum):
    """Under which headings it stands."""

    PERSON = "person"
    TRIP = "trip"


class LentOut(Struct, frozen=True):
    """Every loan, the one due first at the head; the trips, the last one first; the kept rigs."""

    loans: tuple[Loan, ...]
    trips: tuple[Trip, ...]
    rigs: tuple[KeptRig, ...]
    today: date


class Group(Struct, frozen=True):
    """A heading with its loans. late: how many of them should be back by now."""

    title: str
    loans: tuple[Loan, ...]
    late: int


def lent_out(office: Office) -> LentOut:
    """Read it all in the worker."""
    return LentOut(loans(office), tuple(reversed(trips(office))), rigs(office), office.today)


def groups(out: LentOut, by: Grouped) -> tuple[Group, ...]:
    """The loans under their headings; those with something overdue first, then by name."""
    names = {one.ref: tr("{ref} {name}", ref=one.ref, name=one.name) for one in out.trips}
    titles = {one.tag: _title(one, by, names) for one in out.loans}
    made = [_group(title, [one for one in out.loans if titles[one.tag] == title], out.today)
            for title in dict.fromkeys(titles.values())]  # fmt: skip
    return tuple(sorted(made, key=lambda one: (not one.late, one.title.casefold())))


def _title(one: Loan, by: Grouped, names: dict[str, str]) -> str:
    if by is Grouped.PERSON:
        return one.holder
    return names.get(one.trip, one.trip) if one.trip else tr("For no trip")


def _group(title: str, listed: Iterable[Loan], today: date) -> Group:
    found = tuple(listed)
    return Group(title, found, sum(bool(one.overdue_days(today)) for one in found))


def group_words(one: Group) -> str:
    """The heading with how many it holds and how many are late."""
    count = tr_n("{count} piece", "{count} pieces", len(one.loans))
    if one.late:
        late = tr_n("{count} overdue", "{count} overdue", one.late)
        return tr("{title}: {count}, {late}", title=one.title, count=count, late=late)
    return tr("{title}: {count}", title=one.title, count=count)


def due_words(one: Loan, today: date) -> str:
    """The day it is to be back, and how late it is in words."""
    if one.due is None:
        return tr("no day was named")
    day = show_day(one.due)
    if days := one.overdue_days(today):
        return tr_n("{day}, {count} day late", "{day}, {count} days late", days, day=day)
    return tr("{day}, today", day=day) if one.due == today else day


def meanwhile_words(one: Loan, today: date) -> str:
    """The day of the inspection or reading that falls due while it is out; empty where none does."""
    if one.look_due is None:
        return ""
    day = show_day(one.look_due)
    return tr("{day}, overdue", day=day) if one.look_due < today else day
