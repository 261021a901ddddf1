"""What becomes of each row: taken, refused with a reason, a duplicate shown beside what it is like, or blank."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.book_in_forms import in_form
from inspector.duties.importing.photos import Folder, with_photos
from inspector.duties.importing.reader import Reader
from inspector.duties.importing.rows import is_blank, read_row
from inspector.duties.importing.words import plain
from inspector.duties.office import Office, told_of
from inspector.gear.import_list import Beside, Fate, Row, RowFate, Sheet
from inspector.gear.item import Item, NewItem
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.words import marked_words

_NO_DAY = date.min  # the words for a rating do not ask when a piece was booked


class Known(Struct, frozen=True):
    """What the register has: pieces by every tag in small letters, vehicles' tags, and pieces by serial and maker."""

    tags: Mapping[str, Item]
    vehicles: frozenset[str]
    serials: Mapping[str, Sequence[Item]]

    def like(self, facts: NewItem, *, shared_serials: bool) -> tuple[str, NewItem | None]:
        """Why a row cannot be a new piece, and the piece that it is like; empty where it can."""
        if found := self.tags.get(facts.tag.casefold()):
            return tr("The tag “{tag}” is in the register already.", tag=facts.tag), found.facts
        if facts.tag.casefold() in self.vehicles:
            return tr("A vehicle has the tag “{tag}”.", tag=facts.tag), None
        if not shared_serials:
            for item in self.serials.get(plain(facts.serial), ()):
                if same_maker(item.facts, facts):
                    why = tr(
                        "The serial {serial} is in the register already, as {tag}.", serial=facts.serial, tag=item.tag
                    )
                    return why, item.facts
        return "", None


def known_of(page: Page) -> Known:
    """What the register has now."""
    every = page.every_item()
    serials: dict[str, list[Item]] = defaultdict(list)
    for item in every:
        if item.facts.serial:
            serials[plain(item.facts.serial)].append(item)
    now = {item.tag: item for item in every}
    tags = {tag.casefold(): item for tag, item in now.items()}
    tags |= {
        old.casefold(): now[tag] for old, tag in page.tags_now().items() if old.casefold() not in tags and tag in now
    }
    return Known(tags, frozenset(one.tag.casefold() for one in page.vehicles()), serials)


def same_maker(one: NewItem, other: NewItem) -> bool:
    """Whether two pieces may be of one maker: the same mark, or one of them has none written down."""
    first, second = plain(one.maker_mark), plain(other.maker_mark)
    return not first or not second or first == second


def fates(reads: Reader, page: Page, sheet: Sheet, folder: Folder | None) -> tuple[RowFate, ...]:
    """What becomes of each row of the sheet, in their order."""
    head = reads.matching.head
    above = [_above(row, number, is_head=number == head) for number, row in enumerate(sheet.rows[:head], 1)]
    below = [(number, row) for number, row in enumerate(sheet.rows[head:], head + 1)]
    heading = sheet.rows[head - 1] if head else ()
    read = [_fate(reads, page, row, number, heading) for number, row in told_of(reads.office, below)]
    return (*above, *_without_doubles(reads, known_of(page), with_photos(read, folder)))


def _above(row: Row, number: int, *, is_head: bool) -> RowFate:
    if is_head:
        return RowFate(number, Fate.BLANK, why=tr("These are the headings."))
    if is_blank(row):
        return RowFate(number, Fate.BLANK, why=tr("Nothing stands in the row."))
    return RowFate(
        number, Fate.REFUSED, why=tr("It stands above the headings."), what_to_do=tr("It tells of no piece.")
    )


def _fate(reads: Reader, page: Page, row: Row, number: int, heading: Row) -> RowFate:
    if is_blank(row):
        return RowFate(number, Fate.BLANK, why=tr("Nothing stands in the row."))
    if heading and row == heading:
        what = tr("It tells of no piece.")
        return RowFate(number, Fate.REFUSED, why=tr("The headings stand here once more."), what_to_do=what)
    try:
        facts, told, photos = read_row(reads, row, number)
        kept = in_form(page, facts, reads.today)
    except Refused as refusal:
        why = f"{refusal.field}: {refusal.why}"
        return RowFate(number, Fate.REFUSED, why=why, what_to_do=refusal.what_to_do)
    return RowFate(number, Fate.TAKEN, facts.tag, facts=kept, told=told, photos=photos)


def _without_doubles(reads: Reader, known: Known, rows: Sequence[RowFate]) -> Iterator[RowFate]:
    """Rows that are in the register already, or twice in the list, are set aside beside what they are like."""
    shared = reads.matching.shared_serials
    twins = _twins(rows, shared_serials=shared)
    for one in rows:
        if one.facts is None:
            yield one
            continue
        why, theirs = known.like(one.facts, shared_serials=shared)
        if why:
            what = tr("Look whether it is the same piece; if not, give it another tag.")
            yield replace(
                one, fate=Fate.DUPLICATE, why=why, what_to_do=what,
                like=theirs.tag if theirs else one.tag, beside=beside(reads.office, one.facts, theirs),
            )  # fmt: skip
        elif other := twins.get(one.number):
            yield _twin(reads, one, other)
        else:
            yield one


def _twin(reads: Reader, one: RowFate, other: RowFate) -> RowFate:
    assert one.facts is not None
    assert other.facts is not None
    is_same = other.number < one.number and _same(one.facts, other.facts)
    why = tr("Row {number} has the same tag or serial.", number=other.number)
    what = (
        tr("It says the same, and that row is taken.")
        if is_same
        else tr("Nobody can tell which is right: mend the list.")
    )
    like = tr("row {number}", number=other.number)
    return replace(
        one,
        fate=Fate.DUPLICATE,
        why=why,
        what_to_do=what,
        like=like,
        beside=beside(reads.office, one.facts, other.facts),
    )


def _twins(rows: Sequence[RowFate], *, shared_serials: bool) -> dict[int, RowFate]:
    """By the number of a row another one with its tag or serial. Of rows that say the same the first is free."""
    groups: dict[str, list[RowFate]] = defaultdict(list)
    for one in rows:
        if one.facts:
            groups[f"tag {one.tag.casefold()}"].append(one)
            if one.facts.serial and not shared_serials:
                groups[f"serial {plain(one.facts.serial)}"].append(one)
    found: dict[int, RowFate] = {}
    for group in (some for some in groups.values() if len(some) > 1):
        for one in group:
            if other := _other(one, group):
                found.setdefault(one.number, other)
    return found


def _other(one: RowFate, group: Sequence[RowFate]) -> RowFate | None:
    assert one.facts is not None
    others = [other for other in group if other is not one and _may_be(one, other)]
    same = [other for other in others if other.facts and _same(one.facts, other.facts)]
    if others and len(same) == len(others):
        return same[0] if same[0].number < one.number else None
    return next((other for other in others if other not in same), None)


def _may_be(one: RowFate, other: RowFate) -> bool:
    """Whether two rows of one tag or serial may speak of one piece."""
    same_tag = one.tag.casefold() == other.tag.casefold()
    return same_tag or (one.facts is not None and other.facts is not None and same_maker(one.facts, other.facts))


def _same(one: NewItem, other: NewItem) -> bool:
    """Whether two rows say the same of the same tag; where they stand in the list is no difference."""
    return replace(one, note="") == replace(other, note="")


def beside(office: Office, ours: NewItem, theirs: NewItem | None) -> tuple[Beside, ...]:
    """The facts of a row beside those of what it is like."""
    if theirs is None:
        return ()
    pairs = zip(_told(office, ours), _told(office, theirs), strict=True)
    return tuple(Beside(name, mine, other) for (name, mine), (_, other) in pairs if mine or other)


def _told(office: Office, facts: NewItem) -> list[tuple[str, str]]:
    rated = marked_words(Item("", _NO_DAY, facts))
    return [
        (tr("tag"), facts.tag),
        (tr("kind"), tr(office.kind(facts.kind).name)),
        (tr("maker's mark"), facts.maker_mark),
        (tr("serial"), facts.serial),
        (tr("rating"), rated),
        (tr("owner"), facts.owner),
        (tr("place"), facts.place),
        (tr("made on"), show_day(facts.made_on) if facts.made_on else ""),
    ]
