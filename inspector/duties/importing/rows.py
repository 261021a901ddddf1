"""One row of a list as a booking; refused with the reason where it cannot be one."""

from datetime import date

from msgspec import Struct, field

from inspector.duties.book_in import check_days, check_marks, check_tag
from inspector.duties.importing.columns import DAYS, field_words
from inspector.duties.importing.days import read_day_cell
from inspector.duties.importing.looks import Look
from inspector.duties.importing.marks import kind_of, marks_of
from inspector.duties.importing.reader import Reader
from inspector.duties.importing.words import plain
from inspector.duties.plain_lines import check_line, check_text
from inspector.gear.import_list import Field, Row
from inspector.gear.item import NewItem, Provenance
from inspector.language import show_day, tr
from inspector.refused import Refused

_LINES = (Field.MAKER, Field.SERIAL, Field.MATERIAL, Field.OWNER, Field.PLACE, Field.FROM_WHOM, Field.PAPER)


class _Cells(Struct):
    """The cells of a row by what they mean, of several columns the first that tells it, and what is told beside."""

    row: Row
    number: int
    said: dict[str, Look] = field(default_factory=dict)
    note: list[str] = field(default_factory=list)
    told: list[str] = field(default_factory=list)

    def text(self, name: str) -> str:
        """The text of a field."""
        return self.said[name].text if name in self.said else ""


def is_blank(row: Row) -> bool:
    """Whether nothing stands in any column of the row."""
    return not any(row) and all(cell == "" for cell in row)


def read_row(reads: Reader, row: Row, number: int) -> tuple[NewItem, tuple[str, ...], tuple[str, ...]]:
    """The booking, what is to be told of it, and the names of its photos. number: the row in the file.

    Refused where it does not hold together. Marks that many rows share are read and checked with the first of them.
    """
    cells = _parted(reads, row, number)
    alike = reads.marked(cells.row)
    known = reads.marks.get(alike)
    kind, told = (known.kind, known.told) if known else kind_of(reads, cells.text(Field.KIND))
    cells.told += told
    tag = cells.text(Field.TAG)
    if not tag:
        raise Refused(tr("tag"), tr("No tag stands in the row."), tr("Write one into the list, and read it again."))
    given = _days(reads, cells)
    lines = _lines(cells)
    marks = known or marks_of(reads, cells.row, kind, told)
    cells.note += marks.notes
    past = _past(reads, cells)
    photos = _photos(reads, cells)
    facts = NewItem(
        tag=tag,
        kind=kind.key,
        rating=marks.rating,
        sizes=marks.sizes,
        provenance=past,
        fixed_by=marks.fixed_by,
        made_on=given.get(Field.MADE_ON),
        in_service_on=given.get(Field.IN_SERVICE),
        borrowed_until=given.get(Field.UNTIL),
        note=_note(reads, cells),
        **lines,  # type: ignore[arg-type] # every one is a text
    )
    check_text(tr("note"), facts.note)
    check_tag(tag)
    if not known:
        check_marks(facts, kind)
        reads.marks[alike] = marks
    check_days(facts, reads.today)
    return facts, tuple(cells.told), photos


def _parted(reads: Reader, row: Row, number: int) -> _Cells:
    if len(row) < reads.width:
        row += ("",) * (reads.width - len(row))
    cells = _Cells(row, number)
    said, note = cells.said, cells.note
    for at, name, looks in reads.columns:
        look = looks[row[at]]
        if look.aside is not None:
            note.append(look.aside)
        elif look.counts and name not in said:
            said[name] = look
    return cells


def _lines(cells: _Cells) -> dict[str, str]:
    words, found = field_words(), dict[str, str]()
    for name in _LINES:
        if look := cells.said.get(name):
            check_line(words[name], look.text)
            found[name] = look.text
    return found


def _days(reads: Reader, cells: _Cells) -> dict[str, date]:
    found: dict[str, date] = {}
    for name in DAYS:
        if look := cells.said.get(name):
            day, is_vague = _day(reads, look)
            found[name] = day
            if is_vague:
                cells.told.append(
                    tr("“{said}” is taken as {day}, the earliest it can be.", said=look.text, day=show_day(day))
                )
                cells.note.append(f"{reads.column(look).heading}: {look.text}")
    return found


def _day(reads: Reader, look: Look) -> tuple[date, bool]:
    if found := reads.days.get((look.at, look.cell)):
        return found
    column = reads.column(look)
    found = reads.days[look.at, look.cell] = read_day_cell(look.cell, column, reads.today, column.heading)
    return found


def _past(reads: Reader, cells: _Cells) -> Provenance:
    """How it came. A word that nobody knows is no word: its past is unknown, and the word stands in the note."""
    said = cells.text(Field.PAST)
    if known := reads.pasts.get(plain(said)):
        return Provenance(known)
    if said:
        cells.note.append(tr("How it came, as the list says: {said}", said=said))
        cells.told.append(tr("“{said}” tells nothing certain of its past; it counts as unknown.", said=said))
    return Provenance.UNKNOWN


def _photos(reads: Reader, cells: _Cells) -> tuple[str, ...]:
    if Field.PHOTO not in cells.said:
        return ()
    texts = [look.text for look in reads.given(cells.row)[Field.PHOTO]]
    return tuple(name.strip() for text in texts for name in text.replace("|", ";").split(";") if name.strip())


def _note(reads: Reader, cells: _Cells) -> str:
    source = tr("From the list {file}, row {number}.", file=reads.file, number=cells.number)
    return " · ".join((*dict.fromkeys(cells.note), source))
