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
from inspector.duties.importing.said import Said, said_in
from inspector.duties.importing.twins import Names, names_of, plain_serial, same_maker, say_the_same, twins_in
from inspector.duties.office import Office, told_of
from inspector.gear.import_list import Beside, Fate, Row, RowFate, Sheet
from inspector.gear.item import Item, NewItem
from inspector.language import once_a_language, show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.words import marked_words

_TOLD_EACH = 100  # rows that are held against others; most are like none, and telling of it would take as long
_NO_DAY = date.min  # the words for a rating do not ask when a piece was booked


class Known(Struct, frozen=True):
    """What the register has: pieces by every tag in small letters, vehicles' tags, and pieces by serial and maker."""

    tags: Mapping[str, Item]
    vehicles: frozenset[str]
    serials: Mapping[str | None, Sequence[Item]]

    def like(self, facts: NewItem, names: Names) -> tuple[str, NewItem | None]:
        """Why a row cannot be a new piece, and the piece that it is like; empty where it can. names: of the row."""
        if found := self.tags.get(names.tag):
            return tr("The tag “{tag}” is in the register already.", tag=facts.tag), found.facts
        if names.tag in self.vehicles:
            return tr("A vehicle has the tag “{tag}”.", tag=facts.tag), None
        for item in self.serials.get(names.serial, ()):
            if same_maker(item.facts, facts):
                why = tr("The serial {serial} is in the register already, as {tag}.", serial=facts.serial, tag=item.tag)
                return why, item.facts
        return "", None


def known_of(page: Page) -> Known:
    """What the register has now."""
    every = page.every_item()
    serials: dict[str | None, list[Item]] = defaultdict(list)
    for item in every:
        if serial := plain_serial(item.facts):
            serials[serial].append(item)
    now = {item.tag: item for item in every}
    tags = {tag.casefold(): item for tag, item in now.items()}
    tags |= {
        old.casefold(): now[tag] for old, tag in page.tags_now().items() if old.casefold() not in tags and tag in now
    }
    return Known(tags, frozenset(one.tag.casefold() for one in page.vehicles()), serials)


def fates(reads: Reader, page: Page, sheet: Sheet, folder: Folder | None) -> tuple[RowFate, ...]:
    """What becomes of each row of the sheet, in their order."""
    head = reads.matching.head
    above = [_above(row, number, is_head=number == head) for number, row in enumerate(sheet.rows[:head], 1)]
    below = sheet.rows[head:]
    heading = sheet.rows[head - 1] if head else ()
    told = told_of(reads.office, below, after=len(below))
    said = zip(told, said_in(reads, below), strict=True)
    read = [_fate(reads, page, one, number, heading) for number, (_, one) in enumerate(said, head + 1)]
    return (*above, *_without_doubles(reads, known_of(page), with_photos(read, folder)))


def _above(row: Row, number: int, *, is_head: bool) -> RowFate:
    if is_head:
        return RowFate(number, Fate.BLANK, why=tr("These are the headings."))
    if is_blank(row):
        return RowFate(number, Fate.BLANK, why=tr("Nothing stands in the row."))
    return RowFate(
        number, Fate.REFUSED, why=tr("It stands above the headings."), what_to_do=tr("It tells of no piece.")
    )


def _fate(reads: Reader, page: Page, said: Said, number: int, heading: Row) -> RowFate:
    if is_blank(said.row):
        return RowFate(number, Fate.BLANK, why=tr("Nothing stands in the row."))
    if heading and said.row == heading:
        what = tr("It tells of no piece.")
        return RowFate(number, Fate.REFUSED, why=tr("The headings stand here once more."), what_to_do=what)
    try:
        facts, told, photos = read_row(reads, said, number)
        kept = in_form(page, facts, reads.today)
    except Refused as refusal:
        why = f"{refusal.field}: {refusal.why}"
        return RowFate(number, Fate.REFUSED, why=why, what_to_do=refusal.what_to_do)
    return RowFate(number, Fate.TAKEN, facts.tag, facts=kept, told=told, photos=photos)


def _without_doubles(reads: Reader, known: Known, rows: Sequence[RowFate]) -> Iterator[RowFate]:
    """Rows that are in the register already, or twice in the list, are set aside beside what they are like."""
    shared = reads.matching.shared_serials
    names = [names_of(one.facts, shared_serials=shared) if one.facts else None for one in rows]
    twins = twins_in(rows, names)
    told = told_of(reads.office, rows, before=len(rows), each=_TOLD_EACH)
    for one, called in zip(told, names, strict=True):
        if one.facts is None or called is None:
            yield one
            continue
        why, theirs = known.like(one.facts, called)
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
    is_same = other.number < one.number and say_the_same(one.facts, other.facts)
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


def beside(office: Office, ours: NewItem, theirs: NewItem | None) -> tuple[Beside, ...]:
    """The facts of a row beside those of what it is like."""
    if theirs is None:
        return ()
    told = zip(_names(), _told(office, ours), _told(office, theirs), strict=True)
    return tuple(Beside(name, mine, other) for name, mine, other in told if mine or other)


@once_a_language
def _names() -> tuple[str, ...]:
    return (
        tr("tag"), tr("kind"), tr("maker's mark"), tr("serial"), tr("rating"), tr("owner"), tr("place"), tr("made on"),
    )  # fmt: skip


def _told(office: Office, facts: NewItem) -> tuple[str, ...]:
    """What a row says under each of these names."""
    rated = marked_words(Item("", _NO_DAY, facts))
    made = show_day(facts.made_on) if facts.made_on else ""
    kind = tr(office.kind(facts.kind).name)
    return facts.tag, kind, facts.maker_mark, facts.serial, rated, facts.owner, facts.place, made
