"""Tell of a count: its pieces with their marks, what came of a scan, and what its close wrote or would write."""

from collections.abc import Iterable, Mapping
from datetime import date

from msgspec import Struct

from inspector.duties.close_count import Closed
from inspector.duties.count_checks import Told
from inspector.duties.counts import Count, count_called, names_of, walked
from inspector.duties.office import Office
from inspector.duties.print_count import COUNT_LIST
from inspector.duties.tell_whereabouts import brief_words
from inspector.gear.item import Item
from inspector.gear.stock_take import Counted
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import from_facts


class CountedPiece(Struct, frozen=True):
    """A piece of a count with its last mark. place: where the register has it, or in words where else it is.

    is_expected: the count looks for it; others are out by the register, or turned up. seen_at, note: of the mark.
    """

    tag: str
    kind_name: str
    place: str
    counted: Counted
    is_expected: bool
    seen_at: str = ""
    note: str = ""


class CountTold(Struct, frozen=True):
    """A count as it stands. pieces: the expected ones in the order in which places are walked, then all others.

    labels: seen, and no piece has them. closed: the day; list_number: of its printed list, empty where none was.
    """

    ref: str
    scope: str
    begun: date
    closed: date | None
    pieces: tuple[CountedPiece, ...]
    labels: tuple[str, ...]
    list_number: str

    def expected(self, *counted: Counted) -> tuple[CountedPiece, ...]:
        """The expected pieces, or those of them with one of these marks."""
        return tuple(one for one in self.pieces if one.is_expected and (not counted or one.counted in counted))

    def piece(self, tag: str) -> CountedPiece | None:
        """The piece with this tag, if it has to do with the count."""
        return next((one for one in self.pieces if one.tag == tag), None)


def count_told(office: Office, ref: str) -> CountTold:
    """The count with this reference, open or closed."""
    kinds = {key: kind.name for key, kind in office.rules.kinds.items()}
    with office.book.reading() as page:
        count = count_called(page, ref)
        printed = page.latest_document(COUNT_LIST, count.taken.id)
        return CountTold(
            ref=count.ref,
            scope=count.taken.facts.scope,
            begun=count.taken.facts.on,
            closed=count.closed.on if count.closed else None,
            pieces=_pieces(page, count, kinds),
            labels=count.labels,
            list_number=printed[0] if printed else "",
        )


def _pieces(page: Page, count: Count, kinds: Mapping[str, str]) -> tuple[CountedPiece, ...]:
    turned_up = {key: mark.item for key, mark in count.marks.items()}
    others = {**count.elsewhere, **turned_up}
    every = {**others, **count.expected}
    where, names = page.whereabouts(every.values()), names_of(page)

    def told(item: Item) -> CountedPiece:
        return _piece(count, item, where[item.id], kinds, names)

    expected = sorted(count.expected.values(), key=lambda one: walked(where[one.id].at))
    rest = (told(item) for key, item in others.items() if key not in count.expected)
    by_place = sorted(rest, key=lambda one: walked(one.place))
    return (*(told(item) for item in expected), *by_place)


def _piece(
    count: Count, item: Item, where: Whereabouts, kinds: Mapping[str, str], names: dict[str, str]
) -> CountedPiece:
    mark = count.marks.get(item.id)
    return CountedPiece(
        tag=item.tag,
        kind_name=kinds.get(item.facts.kind, item.facts.kind),
        place=where.at if where.where is Where.IN_STORE else brief_words(where, names),
        counted=count.counted(item),
        is_expected=item.id in count.expected,
        seen_at=mark.entry.place if mark else "",
        note=mark.entry.note if mark else "",
    )


def places_to_count(office: Office) -> tuple[str, ...]:
    """Places where the register has pieces in store, and the larger places that hold them, as they are walked."""
    with office.book.reading() as page:
        where = page.whereabouts(page.every_item())
    found = {one.at for one in where.values() if one.where is Where.IN_STORE and one.at}
    found |= {at.partition(",")[0].strip() for at in found}
    return tuple(sorted(found, key=walked))


def closed_told(office: Office, ref: str) -> Closed:
    """What the close of a count wrote, as it was entered on that day."""
    with office.book.reading() as page:
        count = count_called(page, ref)
        for line in page.ledger_lines():
            if line.deed == "close count" and line.facts.get("ref") == count.ref:
                return from_facts(line.facts, Closed)
    raise Refused(tr("count"), tr("The count {ref} is not closed yet.", ref=count.ref), tr("Close it first."))


class ClosedPart(Struct, frozen=True):
    """A part of what a close writes. pieces: tag, and the place where that matters; of labels no piece has the tag."""

    title: str
    pieces: tuple[tuple[str, str], ...]
    are_labels: bool = False


def closed_parts(told: Closed) -> tuple[ClosedPart, ...]:
    """What a close writes, or would write, without the parts that hold nothing."""
    parts = (
        ClosedPart(tr("Missing from now on"), _tags(told.gone)),
        ClosedPart(tr("Found again, held until inspected"), _tags(told.found)),
        ClosedPart(tr("Lies at another place than before"), told.moved),
        ClosedPart(tr("Not there, and the register knows where else"), _tags(told.absent)),
        ClosedPart(tr("NOT SEEN, nobody looked; it stays where the register has it"), _tags(told.not_seen)),
        ClosedPart(tr("Turned up though it was sold or made unusable: look at the label"), _tags(told.turned_up)),
        ClosedPart(tr("Labels that no piece has"), _tags(told.labels), are_labels=True),
    )
    return tuple(one for one in parts if one.pieces)


def _tags(tags: Iterable[str]) -> tuple[tuple[str, str], ...]:
    return tuple((tag, "") for tag in tags)


def not_counted_words(one: Told) -> str:
    """That a piece is not counted, why, and what to do."""
    return tr("{tag} is NOT counted. {why} {what}", tag=one.tag, why=one.why, what=one.what_to_do)


def labels_words(labels: Iterable[str]) -> str:
    """That no piece has these labels."""
    return tr("No piece has these labels; they are kept with the count: {tags}", tags=", ".join(labels))
