"""Look things up: the gear list, one piece with its verdict as it was said, its history, people, vehicles, trips."""

import json
from dataclasses import dataclass

from inspector.duties.judging import judged
from inspector.duties.office import Office
from inspector.gear.item import Item, NewItem
from inspector.gear.kind import Kind
from inspector.gear.lists import GearRow, HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.verdict import Judged
from inspector.language import tr, tr_n
from inspector.refused import Refused
from inspector.register.lists import Asked, GearLine, HistoryLine
from inspector.register.rows import from_body
from inspector.rulebook.words import marked_words


@dataclass(frozen=True, slots=True)
class Found:
    """Rows of the gear list and how many there are in all."""

    rows: tuple[GearRow, ...]
    count: int


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
        return Found(tuple(_row(office, line) for line in page.gear(asked)), page.gear_count(asked))


def _row(office: Office, line: GearLine) -> GearRow:
    facts = from_body(line.body, NewItem)
    kind = office.rules.kinds.get(line.kind)
    return GearRow(
        tag=line.tag,
        kind=line.kind,
        kind_name=kind.name if kind else line.kind,
        maker_mark=facts.maker_mark,
        marked=marked_words(Item("", office.today, facts)),
        owner=facts.owner,
        place=facts.place or facts.fitted_to,
        outcome=Outcome(line.outcome),
        headline=line.headline,
        next_due=line.next_due,
    )


def open_item(office: Office, tag: str) -> Judged:
    """The piece with its stored verdict and words: shown as said, never worked out again."""
    with office.book.reading() as page:
        item = page.item(tag)
        verdict, words = page.latest_verdict(item.id)
        dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
    return Judged(dossier, verdict, words)


def as_of_last_day(office: Office, tag: str, trip: Trip) -> Judged:
    """The piece judged for the last day of a trip, on what is known today. Nothing is kept."""
    with office.book.reading() as page:
        item = page.item(tag)
        dossier = page.dossier(item, office.kind(item.facts.kind), max(office.today, trip.last_on))
    return judged(office, dossier)


def history_of(office: Office, tag: str) -> tuple[HistoryRow, ...]:
    """What happened to a piece, newest first, in words."""
    with office.book.reading() as page:
        item = page.item(tag)
        names = {person.id: person.name for person in page.people()}
        lines = page.history(item.id)
    return tuple(_history_row(line, office.kind(item.facts.kind), names) for line in lines)


def _history_row(line: HistoryLine, kind: Kind, names: dict[str, str]) -> HistoryRow:
    if line.what == "document":
        return HistoryRow(line.on, tr("Document"), tr(line.body.replace("_", " ")), "")
    body = json.loads(line.body)
    by = names.get(body.get("by", ""), body.get("by", ""))
    if line.what == "verdict":
        return HistoryRow(line.on, tr("Verdict"), body["headline"], "")
    if line.what == "inspection":
        return HistoryRow(line.on, tr("Inspection"), _seen(body, kind), by)
    if line.what == "use":
        event = "" if body["event"] == "none" else ", " + tr(body["event"].replace("_", " "))
        return HistoryRow(line.on, tr("Use"), tr_n("{count} pull", "{count} pulls", body["pull_count"]) + event, by)
    days = tr_n("{count} day", "{count} days", body["days_count"])
    return HistoryRow(line.on, tr("Exposure"), f"{tr(body['weather'])}, {days}", by)


def _seen(body: dict[str, list[dict[str, str | dict[str, str]]]], kind: Kind) -> str:
    """Faults and readings of an inspection, or that all was good."""
    checks = {check.key: check.name for check in kind.checks}
    parts = [
        f"{checks.get(str(one['check']), one['check'])}: {tr(str(one['grade']).replace('_', ' '))}"
        for one in body["answers"]
        if one["grade"] != "good"
    ]
    for one in body["readings"]:
        figure = one["figure"]
        typed = figure["as_typed"] if isinstance(figure, dict) else ""
        parts.append(f"{one['point'] or one['measure']} {typed}".replace("_", " "))
    return "; ".join(parts) or tr("all good")


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
