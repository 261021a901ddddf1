"""One row of a list as a booking; refused with the reason where it cannot be one."""

from inspector.duties.book_in import check_days, check_marks, check_tag
from inspector.duties.importing.marks import ask_for_sizes, kind_of, marks_of
from inspector.duties.importing.reader import Marks, Reader
from inspector.duties.importing.said import Said
from inspector.duties.plain_lines import check_text
from inspector.gear.import_list import Row
from inspector.gear.item import NewItem
from inspector.language import tr
from inspector.refused import Refused


def is_blank(row: Row) -> bool:
    """Whether nothing stands in any column of the row."""
    return not any(row) and all(cell == "" for cell in row)


def read_row(reads: Reader, said: Said, number: int) -> tuple[NewItem, tuple[str, ...], tuple[str, ...]]:
    """The booking, what is to be told of it, and the names of its photos. number: the row in the file.

    Refused where it does not hold together. Marks that many rows share are read and checked with the first of them.
    """
    known = reads.marks.get(said.alike)
    kind, told = (known.kind, known.told) if known else kind_of(reads, said.kind.text)
    _check_cells(said)
    marks = known or marks_of(reads, said.row, kind, told)
    facts = _facts(reads, said, marks, number)
    check_text(tr("note"), facts.note)
    check_tag(facts.tag)
    if not known:
        ask_for_sizes(reads, said.row, kind, marks)
        check_marks(facts, kind)
        reads.marks[said.alike] = marks
    check_days(facts, reads.today)
    if said.odd:
        told += tuple([look.told for look in said.odd if look.told])
    return facts, told, _photos(said) if said.photos else ()


def _check_cells(said: Said) -> None:
    if not said.tag.text:
        raise Refused(tr("tag"), tr("No tag stands in the row."), tr("Write one into the list, and read it again."))
    for look in said.odd:
        if fault := look.fault:
            raise Refused(fault.field, fault.why, fault.what_to_do)  # itself it would hold the row it was raised for


def _facts(reads: Reader, said: Said, marks: Marks, number: int) -> NewItem:
    return NewItem(  # some by their place: more names than fifteen would go through a dict first
        said.tag.text,
        marks.kind.key,
        marks.rating,
        said.maker_mark.text,
        said.serial.text,
        said.material.text,
        marks.sizes,
        owner=said.owner.text,
        place=said.place.text,
        provenance=said.provenance.past,
        made_on=said.made_on.day,
        in_service_on=said.in_service_on.day,
        note=_note(reads, said, marks, number),
        fixed_by=marks.fixed_by,
        from_whom=said.from_whom.text,
        paper=said.paper.text,
        borrowed_until=said.borrowed_until.day,
    )


def _note(reads: Reader, said: Said, marks: Marks, number: int) -> str:
    before, after = reads.source
    parts = [*filter(None, said.asides), *marks.notes]
    if said.provenance.also:
        parts.append(said.provenance.also)
    told = dict.fromkeys(parts) if len(parts) > 1 else parts
    return " · ".join((*told, f"{before}{number}{after}"))


def _photos(said: Said) -> tuple[str, ...]:
    texts = [look.text for look in said.photos if look.counts]
    return tuple(name.strip() for text in texts for name in text.replace("|", ";").split(";") if name.strip())
