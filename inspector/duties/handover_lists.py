"""What is told at a handover: what the count found, and everything that is still open."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from inspector.duties.counts import Count, names_of
from inspector.duties.due_days import LOOK_AHEAD_DAYS, competences_ending, has_left, is_lost, open_incidents
from inspector.duties.keep_incident import kept_pieces, kept_vehicles
from inspector.duties.lend import loans
from inspector.duties.office import Office
from inspector.duties.tell_due import day_words, late_words
from inspector.duties.tell_whereabouts import brief_words
from inspector.duties.what_falls_due import held, of_piece
from inspector.gear.custody import Loan
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.incident import Gravity, Incident
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.papers import ProtocolTable
from inspector.gear.person import Person
from inspector.gear.stock_take import Counted
from inspector.gear.verdict import Explanation, Needed, Status, Verdict
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import show_day, tr, tr_n
from inspector.register.lists import Asked
from inspector.register.page import Page

_ALL = 1_000_000
_LOOKS = {Due.FIRST_INSPECTION, Due.INSPECTION, Due.READING}
_THREE, _FOUR = (0.16, 0.24, 0.6), (0.16, 0.24, 0.3, 0.3)
_HELD = (0.1, 0.16, 0.3, 0.44)


def tables(office: Office, page: Page, count: Count) -> tuple[ProtocolTable, ...]:
    """Every list of the protocol, in the order in which it is read."""
    items = page.every_item()
    where = page.whereabouts(items)
    return (
        counted(office, page, count, where),
        _missing(office, page, items, where),
        holds(office, page, items, where),
        _retired(office, page, items, where),
        _loans(loans(office), office.today),
        looks_due(office, page),
        _competences(page.people(), office.today),
        _incidents(page),
    )


def kind_name(office: Office, item: Item) -> str:
    """What a piece is."""
    kind = office.rules.kinds.get(item.facts.kind)
    return kind.name if kind else item.facts.kind


def counted(office: Office, page: Page, count: Count, where: Mapping[str, Whereabouts]) -> ProtocolTable:
    """All that was not simply there; a piece nobody looked for is told as such."""
    names = names_of(page)
    lines = [
        (item.tag, kind_name(office, item), said, brief_words(where[item.id], names))
        for item, said in (*_differs(count), *_not_sought(page, count, where))
    ]
    assert count.closed is not None  # an open count lets nobody hand over
    lines += [(label, "–", tr("seen; no piece has this label"), "–") for label in count.closed.unknown_tags]
    there, total = len(count.seen(Counted.PRESENT)), len(count.expected)
    said = tr("Count {ref} of everything, closed on {day}: {there} of {total} expected pieces were seen.")
    told = said.format(ref=count.ref, day=show_day(count.closed.on), there=there, total=total)
    columns = (tr("Tag"), tr("Piece"), tr("In the count"), tr("By the register now"))
    none = tr("Every expected piece was seen, and nothing else turned up.")
    return ProtocolTable(tr("The count"), told, columns, _FOUR, tuple(lines), none)


def _differs(count: Count) -> Iterator[tuple[Item, str]]:
    for item in count.expected.values():
        if count.counted(item) is Counted.UNKNOWN:
            yield item, tr("not seen: nobody looked for it")
    for mark in count.marks.values():
        if mark.entry.counted is Counted.ABSENT:
            yield mark.item, tr("looked for, not there")
        elif mark.entry.counted is Counted.PRESENT and mark.entry.was and mark.entry.was.is_gone:
            was = brief_words(Whereabouts(mark.entry.was), {})
            yield mark.item, tr("seen, though it was {where}", where=was)


def _not_sought(page: Page, count: Count, where: Mapping[str, Whereabouts]) -> Iterator[tuple[Item, str]]:
    """What the club has and the count neither looked for nor saw: on a vehicle, or booked in or come back since."""
    for item in page.every_item():
        is_here = where[item.id].where in {Where.IN_STORE, Where.ON_VEHICLE}
        if is_here and item.id not in count.expected and count.counted(item) is Counted.UNKNOWN:
            yield item, tr("not among what was looked for")


def _missing(office: Office, page: Page, items: Sequence[Item], where: Mapping[str, Whereabouts]) -> ProtocolTable:
    names = names_of(page)
    gone = [one for one in items if is_lost(where[one.id])]
    lines = ((one.tag, kind_name(office, one), _since(where[one.id], names)) for one in gone)
    columns = (tr("Tag"), tr("Piece"), tr("Since when, and where it was seen last"))
    return ProtocolTable(tr("Missing or stolen"), "", columns, _THREE, tuple(lines), tr("No piece is missing."))


def _since(where: Whereabouts, names: dict[str, str]) -> str:
    said = brief_words(where, names)
    return tr("{where}, since {day}", where=said, day=show_day(where.since)) if where.since else said


def _standing(page: Page, items: Sequence[Item], where: Mapping[str, Whereabouts], outcome: Outcome) -> list[Item]:
    """The pieces with this verdict that the club has or ought to have."""
    tags = {line.tag for line in page.gear(Asked(outcome=outcome.value, limit=_ALL))}
    return [one for one in items if one.tag in tags and not has_left(where[one.id])]


def holds(office: Office, page: Page, items: Sequence[Item], where: Mapping[str, Whereabouts]) -> ProtocolTable:
    """Every piece on hold, why, and what would release it."""
    lines = []
    for item in _standing(page, items, where, Outcome.HOLD):
        verdict, words = page.latest_verdict(item.id)
        release = _release(verdict, words) or tr("Nothing that can be named: look at its record.")
        lines.append((item.tag, kind_name(office, item), words.headline, release))
    columns = (tr("Tag"), tr("Piece"), tr("What holds it"), tr("What would release it, all together"))
    return ProtocolTable(tr("On hold"), "", columns, _HELD, tuple(lines), tr("No piece is on hold."))


def _release(verdict: Verdict, words: Explanation) -> str:
    """What would release it; an inspection of all of it has the single looks in it that are lacking."""
    needed = {one.rule: one.needed for one in verdict.releases}
    in_full = Needed.INSPECTION in needed.values()
    held = [
        one.release
        for one in words.reasons
        if one.release and not (in_full and one.status is Status.UNKNOWN and needed.get(one.rule) is Needed.GRADE)
    ]
    return "; ".join(dict.fromkeys(held))


def _retired(office: Office, page: Page, items: Sequence[Item], where: Mapping[str, Whereabouts]) -> ProtocolTable:
    names = names_of(page)
    lines = [
        (item.tag, kind_name(office, item), brief_words(where[item.id], names))
        for item in _standing(page, items, where, Outcome.RETIRE)
    ]
    columns = (tr("Tag"), tr("Piece"), tr("Where it is"))
    none = tr("No retired piece waits to be made unusable.")
    return ProtocolTable(tr("Retired and not yet made unusable"), "", columns, _THREE, tuple(lines), none)


def _loans(out: Sequence[Loan], today: date) -> ProtocolTable:
    lines = [(one.tag, one.kind_name, one.holder, _back_by(one, today)) for one in out]
    columns = (tr("Tag"), tr("Piece"), tr("With whom"), tr("Since when, and due"))
    return ProtocolTable(tr("On loan"), "", columns, _FOUR, tuple(lines), tr("Nothing is out."))


def _back_by(loan: Loan, today: date) -> str:
    due = show_day(loan.due) if loan.due else tr("no known day")
    said = tr("since {since}, due {due}", since=show_day(loan.since), due=due)
    days = loan.overdue_days(today)
    return said + tr_n(" – OVERDUE by {count} day", " – OVERDUE by {count} days", days) if days else said


def looks_due(office: Office, page: Page) -> ProtocolTable:
    """Inspections and wall readings whose day is here or past, of pieces the club has; those never seen first."""
    today = office.today
    due = (line for one in held(office, page) for line in of_piece(one) if line.what in _LOOKS)
    here = sorted((line for line in due if line.on is None or line.on <= today), key=lambda one: one.about)
    lines = [(one.about, one.name, _was_due(one, today), one.says) for one in here]
    columns = (tr("Tag"), tr("Piece"), tr("Was due on"), tr("What is due"))
    none = tr("No inspection and no reading is due.")
    return ProtocolTable(tr("Inspections and readings overdue"), "", columns, _FOUR, tuple(lines), none)


def _was_due(one: DueLine, today: date) -> str:
    late = late_words(one, today)
    return tr("{day}, {late}", day=day_words(one), late=late) if late else day_words(one)


def _competences(people: Sequence[Person], today: date) -> ProtocolTable:
    until = today + timedelta(days=LOOK_AHEAD_DAYS)
    lines = [(one.name, held.scope, _end(last, today)) for one, held, last in competences_ending(people, until)]
    columns = (tr("Who"), tr("For"), tr("Until when"))
    said = tr("Those that have ended or end within {days} days.", days=LOOK_AHEAD_DAYS)
    return ProtocolTable(tr("Competences that end"), said, columns, _THREE, tuple(lines), tr("None ends soon."))


def _end(until: date, today: date) -> str:
    ended = until < today
    return tr("ENDED on {day}", day=show_day(until)) if ended else tr("ends on {day}", day=show_day(until))


def _incidents(page: Page) -> ProtocolTable:
    words = {Gravity.ACCIDENT: tr("Accident"), Gravity.NEAR_MISS: tr("Near miss")}
    lines = [
        (one.ref, tr("{what}, {day}", what=words[one.facts.gravity], day=show_day(one.facts.on)), _what(page, one))
        for one in open_incidents(page)
    ]
    columns = (tr("Report"), tr("What and when"), tr("Where, and what happened"))
    return ProtocolTable(tr("Incidents still open"), "", columns, _THREE, tuple(lines), tr("No report is open."))


def _what(page: Page, one: Incident) -> str:
    said = tr("{place}: {what}", place=one.facts.place, what=one.facts.what)
    kept = (*kept_pieces(page, one), *kept_vehicles(page, one))
    return f"{said} {tr('Kept as found: {tags}.', tags=', '.join(kept))}" if kept else said
