"""Look things up: the gear list, one piece with its verdict as it was said, people, vehicles, trips."""

from collections.abc import Mapping

from msgspec import Struct

from inspector.duties.gear_list import answers, rows_of
from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import back_words, where_words
from inspector.duties.who import register_name
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.kind import Kind
from inspector.gear.lists import GearRow, Order, Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.seats import Role
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


class Found(Struct, frozen=True):
    """Rows of the gear list. counts: the pieces that answer the search, by outcome, whatever outcome was asked for.

    count: how many rows there would be without a limit.
    """

    rows: tuple[GearRow, ...]
    count: int
    counts: Mapping[Outcome, int]


def list_gear(
    office: Office,
    search: str = "",
    *,
    outcome: Outcome | None = None,
    kind: str = "",
    order: str = "tag",
    limit: int = 500,
) -> Found:
    """Pieces, gone ones too, whose tags, kind, maker's mark, serial, owner, place or note hold every word searched for.

    order: a value of Order.
    """
    if order not in {one.value for one in Order}:
        words = tr("Use one of: {orders}.", orders=", ".join(one.value for one in Order))
        raise Refused(tr("order"), tr("“{order}” is no order.", order=order), words)
    found = answers(office, Wanted(search, outcome, kind, gone_too=True, order=Order(order)))
    return Found(rows_of(office, found.tags[:limit]), len(found.tags), found.counts)


def open_item(office: Office, tag: str) -> Judged:
    """The piece with its stored verdict and words: shown as said, never worked out again."""
    with office.book.reading() as page:
        item = page.item(tag)
        verdict, words = page.latest_verdict(item.id)
        dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
    return Judged(dossier, verdict, words)


def where_is(office: Office, tag: str) -> str:
    """Where a piece is, in words, and of a loan when it is to be back; every piece is somewhere."""
    with office.book.reading() as page:
        item = page.item(tag)
        return told_where(office, page, item, page.whereabouts_of(item))


def told_where(office: Office, page: Page, item: Item, found: Whereabouts) -> str:
    """The same, of a piece of which that is known."""
    names = {one.id: one.name for one in page.people()}
    entry = page.out_entry(item) if found.where is Where.ON_LOAN else None
    return where_words(found, names) + (back_words(entry.facts.due, office.today) if entry else "")


class RegisterFacts(Struct, frozen=True):
    """What the register is: whose, and how many pieces it holds. login: what it may do, if not all."""

    club: str
    piece_count: int
    login: str = ""


def register_facts(office: Office) -> RegisterFacts:
    """The club and the number of its pieces."""
    with office.book.reading() as page:
        return RegisterFacts(register_name(page), page.piece_count(), _login_words(office.book.role))


def _login_words(role: Role) -> str:
    if role is Role.MEMBER:
        return tr("this login adds checks")
    return tr("this login reads") if role is Role.READER else ""


def people(office: Office) -> tuple[Person, ...]:
    """Everybody in the register."""
    with office.book.reading() as page:
        return page.people()


def club_officer(office: Office) -> str:
    """The id of the club's equipment officer; empty for a register that was not begun."""
    with office.book.reading() as page:
        return page.setting("officer")


def vehicles(office: Office) -> tuple[Vehicle, ...]:
    """Every vehicle."""
    with office.book.reading() as page:
        return page.vehicles()


def trips(office: Office) -> tuple[Trip, ...]:
    """Every trip, by its first day."""
    with office.book.reading() as page:
        return page.trips()


def trip(office: Office, ref: str) -> Trip:
    """A trip by its reference, or "next" for the next one that has not ended."""
    known = trips(office)
    for one in known:
        if one.ref.casefold() == ref.strip().casefold() or (ref == "next" and one.last_on >= office.today):
            return one
    why = tr("No trip has the reference “{ref}”.", ref=ref)
    raise Refused(
        tr("trip"), why, tr("Use one of: {refs}.", refs=", ".join(one.ref for one in known) or tr("none yet"))
    )


def kinds(office: Office) -> tuple[Kind, ...]:
    """Every kind of gear, by name."""
    return tuple(sorted(office.rules.kinds.values(), key=lambda kind: kind.name))
