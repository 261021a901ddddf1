"""Take a copy of the register along on a trip, and know which copies are out."""

from datetime import date
from pathlib import Path

from msgspec import Struct

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.who import person_of
from inspector.gear.merging import FieldCopy
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.chains import MERGE
from inspector.register.field_copy import take_copy
from inspector.register.rows import from_facts
from inspector.register.where_it_lies import REGISTER_FILE


class Taken(Struct, frozen=True):
    """A copy that was made. file: the register to open on the other machine; head: where its history goes on from."""

    copy: FieldCopy
    file: Path
    head: str


def take_field_copy(
    office: Office, folder: Path, holder: str, what_for: str = "", *, with_contacts: bool = False
) -> Taken:
    """Make a copy of the register to work on elsewhere, and enter who has it; both histories go on by themselves.

    folder: one that holds no register. holder: name or id of who takes it. with_contacts: whether the copy also holds
    how to reach people.
    """
    check_line(tr("what for"), what_for.strip())
    with office.book.reading() as page:
        person = person_of(page, holder, tr("taken by"))
        if page.is_copy():
            why = tr("This is a field copy itself.")
            raise Refused(tr("copy"), why, tr("Take the copy from the register at home."))
    file = folder / REGISTER_FILE
    origin = take_copy(office.book, file, with_contacts=with_contacts)
    taken = FieldCopy(origin, office.today, person.id, what_for.strip())
    with office.book.page() as page:
        page.enter(
            "take field copy", by=office.officer.id, at=office.now, facts={"as": taken, "contacts": with_contacts}
        )
    return Taken(taken, file, _begin(office, file, taken))


def _begin(office: Office, file: Path, taken: FieldCopy) -> str:
    """Write the copy's own first line, from which on its chain is its own; the head it goes on from."""
    book = open_book(file)
    try:
        with book.page() as page:
            head = page.head()
            facts = {"as": taken, "of": office.book.origin, "head": head}
            page.enter("begin field copy", by=office.officer.id, at=office.now, facts=facts)
    finally:
        book.close()
    return head


def field_copies(office: Office) -> tuple[FieldCopy, ...]:
    """Every copy that was taken from this register, the newest first, with the day its deeds were last taken over."""
    copies: dict[str, FieldCopy] = {}
    back: dict[str, date] = {}
    with office.book.reading() as page:
        for line in page.lines_of(("take field copy", MERGE)):
            if line.deed != MERGE:
                one = from_facts(line.facts["as"], FieldCopy)
                copies[one.origin] = one
            elif line.at:
                back.setdefault(str(line.facts.get("copy", "")), line.at.date())
    return tuple(
        FieldCopy(one.origin, one.taken_on, one.holder, one.what_for, back.get(one.origin)) for one in copies.values()
    )


def copy_words(office: Office) -> str:
    """What must be said of this register where it is a field copy; empty at home."""
    with office.book.reading() as page:
        if not page.is_copy():
            return ""
        begun = page.last_line(("begin field copy",))
        taken = from_facts(begun.facts["as"], FieldCopy) if begun else None
    day = show_day(taken.taken_on) if taken else tr("a day that is not known")
    return tr(
        "Field copy {origin}, taken on {day}. Bring it back, so that the register at home knows of it.",
        origin=office.book.origin,
        day=day,
    )
