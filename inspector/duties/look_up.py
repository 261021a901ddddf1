"""Look things up: the gear list, one piece with its verdict as it was said, people, vehicles, trips."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import where_words
from inspector.gear.fitting import NewFitting
from inspector.gear.item import Item, NewItem
from inspector.gear.judged import Judged
from inspector.gear.kind import Kind
from inspector.gear.lists import GearRow
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.current import facts_of
from inspector.register.lists import Asked, GearLine
from inspector.register.page import Page
from inspector.register.rows import from_body
from inspector.rulebook.words import fitted_words, marked_words


@dataclass(frozen=True, slots=True)
class Found:
    """Rows of the gear list. counts: the pieces that answer the search, by outcome, whatever outcome was asked for.

    count: how many rows there would be without a limit.
    """

    rows: tuple[GearRow, ...]
    count: int
    counts: dict[Outcome, int]


def list_gear(
    office: Office,
    search: str = "",
    *,
    outcome: Outcome | None = None,
    kind: str = "",
    order: str = "tag",
    limit: int = 500,
) -> Found:
    """Pieces whose tag, kind, maker's mark, serial, owner, place or note hold every word of the search.

    order: "tag", "due" (next inspection first) or "worst".
    """
    if order not in {"tag", "due", "worst"}:
        raise Refused(tr("order"), tr("“{order}” is no order.", order=order), tr("Use tag, due or worst."))
    asked = Asked(tuple(search.split()), outcome.value if outcome else "", kind, order=order, limit=limit)
    with office.book.reading() as page:
        lines = page.gear(asked)
        moved = not_as_booked(page, [line.tag for line in lines])
        rows = tuple(gear_row(office, line, moved) for line in lines)
        counted = page.outcome_counts(asked)
    counts = {one: counted.get(one.value, 0) for one in Outcome}
    return Found(rows, counts[outcome] if outcome else sum(counts.values()), counts)


def not_as_booked(page: Page, tags: Sequence[str]) -> dict[str, str]:
    """By tag, where a piece is in words, of those that are out, gone, or were put at a place since the booking."""
    names = {one.id: one.name for one in page.people()}
    items = page.items(tags)
    where = page.whereabouts(items.values())
    found = {tag: where[item.id] for tag, item in items.items()}
    return {
        tag: where_words(replace(one, since=None), names)
        for tag, one in found.items()
        if one.where is Where.ON_LOAN or one.where.is_gone or (one.where is Where.IN_STORE and one.since)
    }


def gear_row(office: Office, line: GearLine, moved: dict[str, str]) -> GearRow:
    """A line of the list with the kind's name and the place where the piece is. moved: see `not_as_booked`."""
    facts = facts_of(line.body, line.changed)
    kind = office.rules.kinds.get(line.kind)
    return GearRow(
        tag=line.tag,
        kind=line.kind,
        kind_name=kind.name if kind else line.kind,
        maker_mark=facts.maker_mark,
        marked=marked_words(Item("", office.today, facts)),
        owner=facts.owner,
        place=moved.get(line.tag) or _place(facts, line.fitting),
        outcome=Outcome(line.outcome),
        headline=line.headline,
        next_due=line.next_due,
        unloosened=Outcome(line.unloosened) if line.unloosened and line.unloosened != line.outcome else None,
    )


def _place(facts: NewItem, fitting: str | None) -> str:
    """Where it sits since it was fitted or taken off last; without that the place it was booked with."""
    if fitting is None:
        return facts.place or (fitted_words(facts.fitted) if facts.fitted else "")
    to = from_body(fitting, NewFitting).to
    return fitted_words(to) if to else tr("taken off its vehicle")


def open_item(office: Office, tag: str) -> Judged:
    """The piece with its stored verdict and words: shown as said, never worked out again."""
    with office.book.reading() as page:
        item = page.item(tag)
        verdict, words = page.latest_verdict(item.id)
        dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
    return Judged(dossier, verdict, words)


@dataclass(frozen=True, slots=True)
class RegisterFacts:
    """What the register is: whose, and how many pieces it holds."""

    club: str
    piece_count: int


def register_facts(office: Office) -> RegisterFacts:
    """The club and the number of its pieces."""
    with office.book.reading() as page:
        return RegisterFacts(page.setting("club"), sum(page.outcome_counts(Asked()).values()))


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
