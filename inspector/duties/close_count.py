"""Close a count: what differs from the register becomes the register's, and what nobody looked for is not seen."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.count_checks import lies_elsewhere
from inspector.duties.counts import Count, Marked, open_count
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.whereabouts import leave_behind, untold_return
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.stock_take import Counted, NewStockEntry, StockStep
from inspector.gear.whereabouts import NewWhereabouts, Where, Whereabouts
from inspector.language import tr
from inspector.register.page import Page

_CAME_BACK = {Where.MISSING, Where.STOLEN, Where.GIVEN_BACK}


class Closed(Struct, frozen=True):
    """What came of a count, by tag. gone: missing from now on; found: here again, held until inspected.

    moved: seen at another place, with the place; not_seen: nobody looked; turned_up: sold or made unusable, and seen;
    absent: marked so, or lost since they were seen; the register tells already where they are.
    """

    ref: str
    present: tuple[str, ...]
    gone: tuple[str, ...]
    found: tuple[str, ...]
    moved: tuple[tuple[str, str], ...]
    not_seen: tuple[str, ...]
    turned_up: tuple[str, ...]
    absent: tuple[str, ...]
    labels: tuple[str, ...]
    judged: tuple[Judged, ...] = ()


def close_count(office: Office, ref: str) -> Closed:
    """Close a count and write what it found into the register, all in one deed."""
    with office.book.page() as page:
        count = open_count(page, ref)
        told = _told(page, count)
        entry = NewStockEntry(office.today, StockStep.CLOSED, office.officer.id, unknown_tags=told.labels)
        judged = _write(office, page, count, told)
        page.add_stock_entry(count.taken, entry)
        page.enter("close count", by=office.officer.id, at=office.now, facts=told)
    return replace(told, judged=judged)


def what_closing_writes(office: Office, ref: str) -> Closed:
    """What closing the count would write as its marks stand now; nothing is written."""
    with office.book.reading() as page:
        return _told(page, open_count(page, ref))


def _told(page: Page, count: Count) -> Closed:
    """What the marks say, held against where the pieces are now: a piece may have gone out since it was looked for."""
    marked = [*count.marks.values()]
    where = page.whereabouts([one.item for one in marked])
    seen = [one for one in marked if one.entry.counted is Counted.PRESENT]
    missed = [one.item for one in marked if one.entry.counted is Counted.ABSENT]
    gone = [one for one in missed if _is_lost(where[one.id])]
    lost_since = [one.item for one in seen if _lost_since(one, where[one.item.id])]
    return Closed(
        ref=count.ref,
        present=tuple(one.item.tag for one in seen if not where[one.item.id].where.is_gone),
        gone=tuple(one.tag for one in gone),
        found=tuple(one.item.tag for one in seen if _came_back(one, where[one.item.id])),
        moved=tuple(_moved(page, count, seen, where)),
        not_seen=tuple(one.tag for one in count.seen(Counted.UNKNOWN)),
        turned_up=tuple(one.item.tag for one in seen if where[one.item.id].where.is_closed),
        absent=tuple(one.tag for one in (*missed, *lost_since) if one not in gone),
        labels=tuple(label for label in count.labels if not page.has_tag(label)),
    )


def _is_lost(where: Whereabouts) -> bool:
    """Whether the register still says that the club has it where it was looked for."""
    return where.where in {Where.IN_STORE, Where.ON_VEHICLE}


def _came_back(mark: Marked, where: Whereabouts) -> bool:
    """Whether it was away when it was seen, and is so still: what was lost after it was seen was not found by it."""
    return where.where in _CAME_BACK and mark.entry.was in _CAME_BACK


def _lost_since(mark: Marked, where: Whereabouts) -> bool:
    return where.where in _CAME_BACK and mark.entry.was not in _CAME_BACK


def _moved(page: Page, count: Count, seen: list[Marked], where: dict[str, Whereabouts]) -> list[tuple[str, str]]:
    """Pieces in store that lie elsewhere than the register says. Evidence is not written as moved: it must not be."""
    found = []
    for one in seen:
        now = where[one.item.id]
        stands = now.where is Where.IN_STORE and (now.since is None or now.since <= one.entry.on)
        place = lies_elsewhere(now, count, one.entry.place) if stands else ""
        if place and not page.open_quarantines(one.item):
            found.append((one.item.tag, place))
    return found


def _write(office: Office, page: Page, count: Count, told: Closed) -> tuple[Judged, ...]:
    """New whereabouts of every piece that is not where the register had it, each judged anew."""
    by_tag = {one.item.tag: one for one in count.marks.values()}
    where = page.whereabouts([one.item for one in by_tag.values()])
    entries: list[tuple[Item, NewWhereabouts]] = []
    for tag in told.gone:
        last_seen = where[by_tag[tag].item.id].at
        entries.append((by_tag[tag].item, _entry(office, count, Where.MISSING, last_seen, tr("absent in the count"))))
    for tag in told.found:
        place = by_tag[tag].entry.place or count.taken.facts.scope
        entries.append((by_tag[tag].item, _entry(office, count, Where.IN_STORE, place, tr("seen in the count"), True)))
    for tag, place in told.moved:
        entries.append((by_tag[tag].item, _entry(office, count, Where.IN_STORE, place, tr("seen there in the count"))))
    for item, facts in entries:
        if facts.where is Where.MISSING:
            leave_behind(page, item, facts)
        if facts.found:
            page.add_custody(item, untold_return(page, item, facts, where[item.id].since))
        page.add_whereabouts(item, facts)
    return tuple(judge_and_keep(office, page, item) for item, _ in entries)


def _entry(office: Office, count: Count, where: Where, place: str, why: str, found: bool = False) -> NewWhereabouts:
    by = office.officer.id
    return NewWhereabouts(office.today, where, place, by=by, why=f"{why} {count.ref}", paper=count.ref, found=found)
