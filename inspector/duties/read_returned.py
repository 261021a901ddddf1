"""Read sheets that came back as files: forms filled in on a screen, photos and scans of paper.

Nothing is kept here: what was read waits for a person, who looks at it and says who checked. `keep_returned` then takes
the road of any member's check.
"""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from msgspec import Struct, field
from msgspec.structs import replace

from inspector.duties.attach import read_file
from inspector.duties.kept_sheet import KeptSheet, check_unaltered, kept_sheet
from inspector.duties.office import Office
from inspector.duties.returned_sheet import ReturnedSheet, returned_sheet
from inspector.gear.papers import GoingPiece
from inspector.gear.photo_read import BoxRead, BoxState, RoomRead, row_answer
from inspector.gear.sheet_back import Incoming, PieceBack, RowBack, Unread
from inspector.gear.sheet_fields import reading_name, remarks_name, signed_name, tick_name, unit_name
from inspector.language import tr
from inspector.paper.filled_form import read_form
from inspector.paper.photo_sheet.codes import FoundCode
from inspector.paper.photo_sheet.opening import Photo, open_photo
from inspector.paper.photo_sheet.reading import codes_in, read_page
from inspector.refused import Refused

_PDF_HEAD, _HEAD_WITHIN = b"%PDF-", 1024


class SheetBack(Struct, frozen=True):
    """One sheet, all of it that came back. pieces: those whose page came, without those that are kept already.

    signed: what stands in the lines at its end, by "name", "signature", "when" and the line's number. missing: pages
    with questions that did not come. already: tags that this sheet was read for before. files: it was read from.
    """

    sheet: ReturnedSheet
    pieces: tuple[PieceBack, ...]
    signed: tuple[tuple[str, RoomRead], ...]
    missing: tuple[int, ...]
    already: tuple[str, ...]
    files: tuple[Incoming, ...]

    @property
    def number(self) -> str:
        """As printed."""
        return self.sheet.number

    @property
    def doubtful(self) -> tuple[tuple[PieceBack, RowBack], ...]:
        """The rows that a person has to look at, in the order of the paper."""
        return tuple((piece, row) for piece in self.pieces for row in piece.rows if row.is_doubtful)


class ReadBack(Struct, frozen=True):
    """What a heap of files came to."""

    sheets: tuple[SheetBack, ...]
    unread: tuple[Unread, ...]


class _Heap(Struct):
    """What was read of one sheet so far, by the names of its fields."""

    kept: KeptSheet
    boxes: dict[str, BoxRead] = field(default_factory=dict)
    rooms: dict[str, RoomRead] = field(default_factory=dict)
    pages: set[int] = field(default_factory=set)
    files: list[Incoming] = field(default_factory=list)

    def take(self, incoming: Incoming, pages: set[int], boxes: Sequence[BoxRead], rooms: Sequence[RoomRead]) -> None:
        """A page that comes twice must say the same; where it does not, a person looks."""
        for one in boxes:
            self.boxes[one.name] = _both(self.boxes[one.name], one) if one.name in self.boxes else one
        self.rooms |= {one.name: one for one in rooms if one.text or one.name not in self.rooms}
        self.pages |= pages
        if incoming not in self.files:
            self.files.append(incoming)


def read_returned(office: Office, files: Sequence[Incoming]) -> ReadBack:
    """Read files in any order; several may belong to one sheet, one may hold several pages.

    A file or page that cannot be taken is named with the reason, and does not keep the others back. After each file
    `office.told` is called.
    """
    heaps: dict[str, _Heap] = {}
    unread: list[Unread] = []
    for number, one in enumerate(files, 1):
        unread += _read(office, one, heaps)
        office.told(number, len(files))
    sheets = []
    for heap in heaps.values():
        try:
            sheets.append(_sheet(office, heap))
        except Refused as refusal:
            unread += [Unread(one.name, refusal) for one in heap.files]
    return ReadBack(tuple(sheets), tuple(unread))


def read_files(office: Office, places: Sequence[Path], pasted: Sequence[Incoming] = ()) -> ReadBack:
    """The same of files on a disk, and of pictures that have no place; one that cannot be opened is named."""
    came, unread = list(pasted), []
    for place in places:
        try:
            came.append(Incoming(place.name, read_file(place)))
        except Refused as refusal:
            unread.append(Unread(place.name, refusal))
    found = read_returned(office, came)
    return replace(found, unread=(*unread, *found.unread))


def _read(office: Office, incoming: Incoming, heaps: dict[str, _Heap]) -> Iterator[Unread]:
    try:
        if _PDF_HEAD in incoming.data[:_HEAD_WITHIN] and _take_form(office, incoming, heaps):
            return
        photos = open_photo(incoming.data)
    except Refused as refusal:
        yield Unread(incoming.name, refusal)
        return
    for number, photo in enumerate(photos, 1):
        try:
            for code in codes_in(photo):
                _take_page(office, incoming, photo, code, heaps)
        except Refused as refusal:
            yield Unread(_named(incoming, number, len(photos)), refusal)


def _take_form(office: Office, incoming: Incoming, heaps: dict[str, _Heap]) -> bool:
    """Whether it was a form of ours that nobody drew on; a scan, a flattened or drawn on copy is read as a picture."""
    form = read_form(incoming.data)
    if form is None or form.is_drawn:
        return False
    kept, _ = kept_sheet(office, form.code)
    check_unaltered(kept, form)
    pages = set(range(1, len(kept.layout.pages) + 1))
    _heap(heaps, kept).take(incoming, pages, form.boxes, form.rooms)
    return True


def _take_page(office: Office, incoming: Incoming, photo: Photo, found: FoundCode, heaps: dict[str, _Heap]) -> None:
    kept, code = kept_sheet(office, found.text)
    page = kept.page(code)
    if not page.boxes and not page.rooms:  # nothing is asked there
        return
    read = read_page(photo, found, page, kept.layout)
    _heap(heaps, kept).take(incoming, {code.page}, read.boxes, read.rooms)


def _heap(heaps: dict[str, _Heap], kept: KeptSheet) -> _Heap:
    return heaps.setdefault(kept.number, _Heap(kept))


def _both(one: BoxRead, other: BoxRead) -> BoxRead:
    """One box read twice: the surer of two that agree, else unsure."""
    alike = one.state is other.state and (one.solid, one.ringed) == (other.solid, other.ringed)
    surer = max(one, other, key=lambda box: box.confidence)
    if alike:
        return surer
    return BoxRead(surer.name, BoxState.UNSURE, 0.0, surer.solid, surer.ringed, surer.picture)


def _sheet(office: Office, heap: _Heap) -> SheetBack:
    sheet = returned_sheet(office, heap.kept.number)
    already = {one.tag for one in sheet.pieces if any(made.sheet == sheet.number for made in one.made)}
    going = heap.kept.sheet.going
    came = [(number, one) for number, one in enumerate(going, 1) if _came(heap, number, one)]
    if came and all(one.tag in already for _, one in came):
        why = tr("The sheet {number} was read in before.", number=sheet.number)
        what = tr("Look at the check of its trip; what is wrong there is mended by a new check.")
        raise Refused(tr("sheet"), why, what)
    asked = [number for number, page in enumerate(heap.kept.layout.pages, 1) if page.boxes]
    return SheetBack(
        sheet=sheet,
        pieces=tuple(_piece(heap, number, one) for number, one in came if one.tag not in already),
        signed=_signed(heap),
        missing=tuple(number for number in asked if number not in heap.pages),
        already=tuple(one.tag for _, one in came if one.tag in already),
        files=tuple(heap.files),
    )


def _came(heap: _Heap, number: int, piece: GoingPiece) -> bool:
    return any(tick_name(number, check, "good") in heap.boxes for check in range(1, len(piece.ticks) + 1))


def _piece(heap: _Heap, number: int, piece: GoingPiece) -> PieceBack:
    rows = tuple(
        row for check in range(1, len(piece.ticks) + 1) if (row := _row(heap, number, check, piece)) is not None
    )
    return PieceBack(piece.tag, rows, heap.rooms.get(remarks_name(number)))


def _row(heap: _Heap, number: int, check: int, piece: GoingPiece) -> RowBack | None:
    """None where a long piece runs over pages and this one's did not come."""
    good, fault = (heap.boxes.get(tick_name(number, check, answer)) for answer in ("good", "fault"))
    if good is None or fault is None:
        return None
    read = row_answer(good, fault)
    unit = heap.rooms.get(unit_name(number, check))
    return RowBack(
        tick=piece.ticks[check - 1],
        answer=read.answer,
        confidence=read.confidence,
        pictures=(good.picture, fault.picture),
        reading=heap.rooms.get(reading_name(number, check)),
        unit=unit.text if unit else "",
    )


def _signed(heap: _Heap) -> tuple[tuple[str, RoomRead], ...]:
    lines = range(1, max(len(heap.kept.sheet.vehicles), 1) + 1)
    names: Mapping[str, str] = {
        signed_name(line, what): what for line in lines for what in ("name", "signature", "when")
    }
    return tuple((what, heap.rooms[name]) for name, what in names.items() if name in heap.rooms)


def _named(incoming: Incoming, number: int, count: int) -> str:
    return incoming.name if count == 1 else tr("{file}, page {number}", file=incoming.name, number=number)
