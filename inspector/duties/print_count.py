"""Print the list of a count to tick by hand, and type the ticked list in."""

from collections.abc import Iterable, Sequence
from itertools import count as numbers

from inspector.duties.counts import Count, count_called, names_of, open_count, walked
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.take_stock import Scanned, mark
from inspector.duties.tell_whereabouts import brief_words
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.papers import CountLine, CountList, CountPlace, ElsewhereLine
from inspector.gear.stock_take import Counted
from inspector.language import show_day, tr
from inspector.paper.count_list import count_list
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import from_body
from inspector.rulebook.words import marked_words

COUNT_LIST = "count_list"  # what the register calls this kind of document


def print_count(office: Office, ref: str) -> Paper:
    """Print the list of a count. The first time it is numbered and kept; later the kept one is printed again."""
    with office.book.page() as page:
        count = count_called(page, ref)
        kept = page.latest_document(COUNT_LIST, count.taken.id)
        listed = from_body(kept[1], CountList) if kept else _new_list(office, page, count)
    return put_out(office, listed.imprint.number, count_list(listed, PageSize(office.page)))


def _new_list(office: Office, page: Page, count: Count) -> CountList:
    count = open_count(page, count.ref)
    number = next_number(page, "K", COUNT_LIST)
    listed = CountList(
        imprint=imprint(office, page, tr("Count list"), number),
        ref=count.ref,
        scope=count.taken.facts.scope or tr("everything in store"),
        begun=show_day(count.taken.facts.on),
        places=_places(office, page, count),
        elsewhere=tuple(_elsewhere(office, page, count)),
    )
    page.add_document(number, COUNT_LIST, office.today, count.taken.id, listed)
    facts = {"number": number, "ref": count.ref}
    page.enter("print count list", by=office.officer.id, at=office.now, facts=facts)
    return listed


def _places(office: Office, page: Page, count: Count) -> tuple[CountPlace, ...]:
    """The expected pieces by place, those without one last, numbered through."""
    where = page.whereabouts(count.expected.values())
    by_place: dict[str, list[Item]] = {}
    for item in count.expected.values():
        by_place.setdefault(where[item.id].at, []).append(item)
    number = numbers(1)
    return tuple(
        CountPlace(name or tr("Place not written down"), tuple(_line(office, page, one, next(number)) for one in items))
        for name, items in sorted(by_place.items(), key=lambda one: walked(one[0]))
    )


def _line(office: Office, page: Page, item: Item, number: int) -> CountLine:
    apart = ""
    if page.open_quarantines(item):
        apart = tr("Evidence: leave it as it is.")
    elif page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
        apart = tr("Retired: keep it apart, never use it.")
    return CountLine(number, item.tag, _kind_name(office, item), marked_words(item), apart)


def _kind_name(office: Office, item: Item) -> str:
    kind = office.rules.kinds.get(item.facts.kind)
    return kind.name if kind else item.facts.kind


def _elsewhere(office: Office, page: Page, count: Count) -> Iterable[ElsewhereLine]:
    where, names = page.whereabouts(count.elsewhere.values()), names_of(page)
    for item in count.elsewhere.values():
        yield ElsewhereLine(item.tag, _kind_name(office, item), brief_words(where[item.id], names))


def type_list(
    office: Office, number: str, present: str = "", absent: str = "", labels: Sequence[str] = ()
) -> tuple[Scanned, ...]:
    """Type a ticked list in. present, absent: its lines, as in "1-14, 16"; labels: those written in by hand.

    A line with neither tick stays not looked for; what cannot be counted so is told.
    """
    listed = _kept_list(office, number)
    tags = {line.number: line.tag for place in listed.places for line in place.lines}
    there, gone = _lines(present, tags, tr("present")), _lines(absent, tags, tr("absent"))
    if both := sorted(set(there) & set(gone)):
        why = tr("{lines} stand as present and as absent.", lines=", ".join(f"{one} ({tags[one]})" for one in both))
        raise Refused(tr("lines"), why, tr("Look at the list again. Where both boxes are ticked, look for the piece."))
    wanted = (
        ((*(tags[one] for one in there), *labels), Counted.PRESENT),
        (tuple(tags[one] for one in gone), Counted.ABSENT),
    )
    if not any(some for some, _ in wanted):
        raise Refused(tr("lines"), tr("No line was typed."), tr("Type the numbers of the lines that were ticked."))
    with office.book.together():
        return tuple(mark(office, listed.ref, some, counted) for some, counted in wanted if some)


def _kept_list(office: Office, number: str) -> CountList:
    with office.book.reading() as page:
        kept = page.document(number.strip().upper())
        known = [page.latest_document(COUNT_LIST, one.id) for one in page.stock_takes()]
    numbers_known = [one[0] for one in known if one]
    if kept is None or number.strip().upper() not in numbers_known:
        why = tr("No count list has the number “{number}”.", number=number.strip())
        listed = ", ".join(numbers_known) or tr("none yet")
        raise Refused(tr("list"), why, tr("The number stands at its head; known are: {numbers}.", numbers=listed))
    return from_body(kept[1], CountList)


def _lines(text: str, known: dict[int, str], field: str) -> list[int]:
    """The numbers of "1-14, 16", each a line of the list."""
    found: dict[int, None] = {}
    for part in text.replace(",", " ").split():
        first, sign, last = part.partition("-")
        ends = (first, last) if sign else (first,)
        if not all(one.isascii() and one.isdigit() and len(one) < 6 for one in ends):
            raise Refused(field, tr("“{text}” is no line.", text=part), tr("Write numbers, as in 1-14, 16."))
        span = range(int(ends[0]), int(ends[-1]) + 1)
        if not span or any(one not in known for one in span):
            why = tr("“{text}” is not on the list, which has the lines 1 to {last}.", text=part, last=len(known))
            raise Refused(field, why, tr("Look at the numbers on the list again."))
        found |= dict.fromkeys(span)
    return list(found)
