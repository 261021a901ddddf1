"""Count what is there: begin, mark by tags, close. Nothing is there because nobody said that it is not."""

from collections.abc import Sequence
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.count_checks import Told, kept_apart, why_not_counted
from inspector.duties.counts import Count, counts, covers, names_of, open_count
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.tell_whereabouts import brief_words
from inspector.duties.typed_tables import decoded
from inspector.gear.item import Item
from inspector.gear.stock_take import Counted, NewStockEntry, NewStockTake, StockStep, StockTake
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


class Scanned(Struct, frozen=True):
    """What came of a scan. kept: tags marked; labels: no piece has them, and they are kept with the count.

    not_counted: pieces that could not be marked so, and why; told: what to know at once of pieces that were.
    """

    kept: tuple[str, ...]
    labels: tuple[str, ...]
    not_counted: tuple[Told, ...]
    told: tuple[Told, ...]


def begin_count(office: Office, ref: str, scope: str = "") -> StockTake:
    """Begin to count a place or a vehicle, or everything where none is named."""
    named, place = ref.strip(), scope.strip()
    for field, text in ((tr("count"), named), (tr("place"), place)):
        check_line(field, text)
    with office.book.page() as page:
        named = page.own_ref(named)
        _check_free(page, named, place)
        facts = _begun(office, page, place)
        made = page.add_stock_take(named, facts)
        told = {"ref": named, "scope": place, "expected": list(facts.expected), "elsewhere": list(facts.elsewhere)}
        page.enter("begin count", by=office.officer.id, at=office.now, facts=told)
    return made


def _check_free(page: Page, ref: str, scope: str) -> None:
    if not ref:
        raise Refused(tr("count"), tr("It has no reference."), tr("Give it a short one, for example 2026-11."))
    for one in page.stock_takes():
        if one.ref.casefold() == ref.casefold():
            why = tr("A count is called {ref} already.", ref=one.ref)
            raise Refused(tr("count"), why, tr("Choose another reference."))
        overlaps = covers(scope, one.facts.scope) or covers(one.facts.scope, scope)
        if overlaps and not any(entry.facts.step is StockStep.CLOSED for entry in page.stock_entries(one)):
            why = tr("The count {ref} is open and has some of the same pieces.", ref=one.ref)
            raise Refused(tr("place"), why, tr("Go on with that count, or close it first."))


def _begun(office: Office, page: Page, scope: str) -> NewStockTake:
    """What ought to lie there by the book, and what is out or on a vehicle."""
    items = page.every_item()
    found, names = page.whereabouts(items), names_of(page)
    in_store = [one for one in items if found[one.id].where is Where.IN_STORE]
    expected = [one for one in items if _ought_to_lie(found[one.id], scope)]
    if not expected and scope:
        known = sorted({found[one.id].at for one in in_store} - {""})
        why = tr("By the register no piece in store lies at “{place}”.", place=scope)
        raise Refused(tr("place"), why, tr("Use one of these, or a part of it: {places}.", places="; ".join(known)))
    away = [one for one in items if one not in expected and _is_away(one, found[one.id], scope)]
    elsewhere = tuple((one.tag, brief_words(found[one.id], names)) for one in away)
    return NewStockTake(office.today, scope, tuple(one.tag for one in expected), elsewhere, office.officer.id)


def _ought_to_lie(where: Whereabouts, scope: str) -> bool:
    """In store at the place, or on the vehicle that is counted."""
    on_it = where.where is Where.ON_VEHICLE and where.at.casefold() == scope.casefold()
    return on_it or (where.where is Where.IN_STORE and covers(scope, where.at))


def _is_away(item: Item, where: Whereabouts, scope: str) -> bool:
    """Out or on a vehicle; of a place, what was booked in there."""
    return where.where in {Where.ON_LOAN, Where.ON_VEHICLE} and covers(scope, item.facts.place)


def mark(
    office: Office, ref: str, tags: Sequence[str], counted: Counted = Counted.PRESENT, place: str = "", note: str = ""
) -> Scanned:
    """Mark pieces by their tags, many at once; the last mark of a piece counts. place: where they lie.

    What cannot be marked stops nothing else; only where nothing at all can be kept is it refused.
    """
    check_line(tr("place"), place.strip())
    with office.book.page() as page:
        count = open_count(page, ref)
        scanned, found = _sorted_out(office, page, count, tags, counted, place.strip())
        if not scanned.kept and not scanned.labels:
            _refuse(scanned)
        facts = NewStockEntry(
            office.today, StockStep.MARKED, office.officer.id, "", counted, place.strip(), note.strip()
        )
        _keep(page, count, scanned, found, facts)
        told = {"ref": count.ref, "as": facts, "tags": list(scanned.kept), "labels": list(scanned.labels)}
        page.enter("count", by=office.officer.id, at=office.now, facts=told)
    return scanned


def tags_in(body: bytes, what: str) -> tuple[str, ...]:
    """The tags that a scanner wrote into a file, with blanks or line ends between them. what: the file's name."""
    return tuple(decoded(body, what).split())


def _keep(page: Page, count: Count, scanned: Scanned, found: dict[str, Item], facts: NewStockEntry) -> None:
    where = page.whereabouts(found.values())
    for tag in scanned.kept:
        page.add_stock_entry(count.taken, replace(facts, tag=tag, was=where[found[tag].id].where))
    if scanned.labels:
        page.add_stock_entry(count.taken, replace(facts, unknown_tags=scanned.labels))


def _sorted_out(
    office: Office, page: Page, count: Count, tags: Sequence[str], counted: Counted, place: str
) -> tuple[Scanned, dict[str, Item]]:
    """Which tags are marked, which are labels nobody knows, which are not counted and why."""
    typed = list(dict.fromkeys(tag.strip() for tag in tags if tag.strip()))
    items = page.items(typed)
    found = {item.tag: item for item in items.values()}
    where = page.whereabouts(found.values())
    names = names_of(page)
    not_counted = [
        told for one in found.values() if (told := why_not_counted(count, one, where[one.id], counted, place, names))
    ]
    stopped = {one.tag for one in not_counted}
    labels = [tag for tag in typed if tag not in items and (counted is Counted.PRESENT or tag in count.labels)]
    lost = [tag for tag in typed if tag not in items and tag not in labels]
    not_counted += [_nobody_has(tag) for tag in lost]
    kept = tuple(tag for tag in found if tag not in stopped)
    apart = [one for tag in kept for one in kept_apart(page, found[tag], where[found[tag].id])]
    at_once = tuple(apart) if counted is Counted.PRESENT else ()
    return Scanned(kept, tuple(labels), tuple(not_counted), at_once), found


def _nobody_has(label: str) -> Told:
    why = tr("No piece has the tag “{tag}”.", tag=label)
    return Told(label, why, tr("Look at the label again, or search the list for the piece."))


def _refuse(scanned: Scanned) -> None:
    if not scanned.not_counted:
        raise Refused(tr("tag"), tr("No tag was scanned."), tr("Scan or type the tags of the pieces."))
    one = scanned.not_counted[0]
    others = " ".join(f"{other.tag}: {other.why}" for other in scanned.not_counted[1:])
    raise Refused(one.tag, f"{one.why} {others}".strip(), one.what_to_do)


def left(office: Office, ref: str) -> tuple[tuple[Item, Whereabouts], ...]:
    """The expected pieces that nobody has marked yet, with where they ought to be."""
    with office.book.reading() as page:
        count = open_count(page, ref)
        items = count.seen(Counted.UNKNOWN)
        where = page.whereabouts(items)
    return tuple((one, where[one.id]) for one in items)


class CountState(Struct, frozen=True):
    """How far a count is: of so many expected pieces, those marked present and absent. closed: the day, if it is."""

    ref: str
    scope: str
    begun: date
    expected: int
    seen: int
    absent: int
    closed: date | None


def count_states(office: Office) -> tuple[CountState, ...]:
    """Every count, the oldest first."""
    with office.book.reading() as page:
        return tuple(_state(one) for one in counts(page))


def _state(count: Count) -> CountState:
    facts = count.taken.facts
    there, gone = len(count.seen(Counted.PRESENT)), len(count.seen(Counted.ABSENT))
    closed = count.closed.on if count.closed else None
    return CountState(count.ref, facts.scope, facts.on, len(count.expected), there, gone, closed)
