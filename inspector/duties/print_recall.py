"""Call pieces in: a letter to everybody who has one, owns it or bought it, with a slip to answer on."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inspector.duties.called_in import Called, Reader, called
from inspector.duties.judge_anew import judge_anew
from inspector.duties.named_pieces import kept_as
from inspector.duties.office import Office, told_of
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.plain_lines import check_text
from inspector.duties.print_letters import check_bring
from inspector.gear.item import Item
from inspector.gear.recall import CalledPiece, RecallLetter
from inspector.language import tr
from inspector.paper.page_style import PageSize
from inspector.paper.recall_letter import recall_letter
from inspector.refused import Refused
from inspector.register.page import Page

RECALL = "recall_letter"


@dataclass(frozen=True, slots=True)
class Recalled:
    """What a call came to. unwritten: pieces of which nobody gets a letter, with where they are; not_held: pieces that
    the register still lets go, since a letter holds nothing.
    """

    letters: tuple[RecallLetter, ...]
    papers: tuple[Paper, ...]
    unwritten: tuple[str, ...]
    not_held: tuple[str, ...]


def print_recall(
    office: Office, tags: Sequence[str], reason: str, *, send_to: str = "", send_by: date | None = None
) -> Recalled:
    """Number, keep and print a letter to each person whom the pieces concern.

    tags: by any name the pieces ever had; reason: as it is to be read by everybody. Nothing is held by it.
    """
    letters, found = enter_recall(office, tags, reason, send_to=send_to, send_by=send_by)
    papers = tuple(_printed(office, one) for one in told_of(office, letters))
    return Recalled(letters, papers, found.unwritten, found.not_held)


def print_recall_again(office: Office, number: str) -> Paper:
    """Print a letter again as it was kept, by its number; the address is the one written down now."""
    unknown = tr("No recall letter has the number {number}.", number=number)
    return _printed(office, kept_as(office, RECALL, number, RecallLetter, unknown))


def enter_recall(
    office: Office, tags: Sequence[str], reason: str, *, send_to: str = "", send_by: date | None = None
) -> tuple[tuple[RecallLetter, ...], Called]:
    """Number and keep the letters; no file is written."""
    send, said = check_bring(office, send_to, send_by), _checked(reason)
    judge_anew(office)  # whoever is told that a piece is not held must be told so of today
    with office.book.page() as page:
        items = _items(page, tags)
        found = called(office, page, items)
        if not found.letters:
            why = tr("None of these pieces is with anybody whom a letter could reach: {pieces}",
                     pieces="; ".join(found.unwritten))  # fmt: skip
            raise Refused(tr("pieces"), why, tr("Go to the store and put them apart."))
        first = next_number(page, "C", RECALL)
        letters = tuple(_kept(office, page, one, first, said, send) for one in found.letters.items())
        facts = {
            "numbers": [one.imprint.number for one in letters],
            "people": [one.person or one.name for one in letters],
            "tags": [one.tag for one in items],
            "why": said,
        }
        page.enter("print recall letters", by=office.officer.id, at=office.now, facts=facts)
    return letters, found


def _checked(reason: str) -> str:
    check_text(tr("reason"), reason)
    if not reason.strip():
        what = tr("Write what is known of these pieces, and from whom.")
        raise Refused(tr("reason"), tr("Nobody stops using a piece without knowing why."), what)
    return reason.strip()


def _items(page: Page, tags: Sequence[str]) -> tuple[Item, ...]:
    """The pieces, each once; every tag must be one."""
    found = {item.id: item for item in (page.item(tag) for tag in tags)}
    if not found:
        raise Refused(tr("pieces"), tr("No piece is named."), tr("Name the pieces that are called in by their tags."))
    return tuple(sorted(found.values(), key=lambda one: one.tag))


def _kept(
    office: Office,
    page: Page,
    whom: tuple[Reader, tuple[CalledPiece, ...]],
    call: str,
    reason: str,
    send: tuple[str, str],
) -> RecallLetter:
    (person, name), pieces = whom
    number = next_number(page, "C", RECALL)
    head = imprint(office, page, tr("Do not use: called in"), number)
    letter = RecallLetter(head, person, name, call, reason, send[0], send[1], pieces)
    page.add_document(number, RECALL, office.today, person or name, letter)
    return letter


def _printed(office: Office, letter: RecallLetter) -> Paper:
    """An address is looked up as the letter is printed and is kept nowhere with it."""
    with office.book.reading() as page:
        contact = page.contact(letter.person) if letter.person else None
    address = contact.address if contact else ""
    return put_out(office, letter.imprint.number, recall_letter(letter, address, PageSize(office.page)))
