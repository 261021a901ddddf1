"""The letters of a recall: to everybody who has a piece, owns it or bought it, with a slip to answer on."""

from collections.abc import Iterator, Sequence
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.call_in import call_in
from inspector.duties.called_in import Called, Reader, called
from inspector.duties.judge_anew import judge_anew
from inspector.duties.named_pieces import kept_as
from inspector.duties.office import Office, told_of
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.print_letters import check_bring
from inspector.duties.recall_answers import answers_for
from inspector.duties.recall_checks import recall_called
from inspector.duties.recall_words import notice_words
from inspector.gear.item import Item
from inspector.gear.recall import CalledPiece, RecallLetter
from inspector.gear.recall_notice import (
    Answer,
    Issuer,
    Meant,
    NewRecall,
    NewRecallEntry,
    Recall,
    RecallEntryKind,
    Step,
    Sure,
)
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.paper.page_style import PageSize
from inspector.paper.recall_letter import recall_letter
from inspector.refused import Refused
from inspector.register.page import Page

RECALL = "recall_letter"


class Recalled(Struct, frozen=True):
    """What the letters of a recall came to. unwritten: pieces of which nobody gets a letter, with where they are."""

    ref: str
    letters: tuple[RecallLetter, ...]
    papers: tuple[Paper, ...]
    unwritten: tuple[str, ...]


class _Said(Struct, frozen=True):
    """What stands in each letter of a call."""

    recall: Recall
    call: str
    send_to: str
    send_by: str
    remind: bool


def recall_pieces(
    office: Office, tags: Sequence[str], reason: str, *, send_to: str = "", send_by: date | None = None
) -> Recalled:
    """The club itself calls pieces in that it names: hold them and print their letters.

    tags: by any name the pieces ever had; reason: as it is to be read by everybody.
    """
    check_bring(office, send_to, send_by)
    if not tags:
        raise Refused(tr("pieces"), tr("No piece is named."), tr("Name the pieces that are called in by their tags."))
    with office.book.together():
        told = NewRecall(office.today, Issuer.CLUB, Meant(tags=tuple(tags)), reason)
        ref = call_in(office, told).recall.ref
        letters, found = enter_recall_letters(office, ref, send_to=send_to, send_by=send_by)
    return _out(office, ref, letters, found)


def print_recall(
    office: Office, ref: str, *, send_to: str = "", send_by: date | None = None, remind: bool = False
) -> Recalled:
    """Number, keep and print a letter to each person whom its open pieces concern and who was not written to yet.

    remind: instead to those who were written to and have not answered.
    """
    letters, found = enter_recall_letters(office, ref, send_to=send_to, send_by=send_by, remind=remind)
    return _out(office, ref, letters, found)


def print_recall_again(office: Office, number: str) -> Paper:
    """Print a letter again as it was kept, by its number; the address is the one written down now."""
    unknown = tr("No recall letter has the number {number}.", number=number)
    return _printed(office, kept_as(office, RECALL, number, RecallLetter, unknown))


def enter_recall_letters(
    office: Office, ref: str, *, send_to: str = "", send_by: date | None = None, remind: bool = False
) -> tuple[tuple[RecallLetter, ...], Called]:
    """Number and keep the letters; no file is written. Where nobody can be written to none is kept."""
    send = check_bring(office, send_to, send_by)
    judge_anew(office)  # whoever is told of a piece must be told of today
    with office.book.page() as page:
        recall = recall_called(page, ref, is_open=True)
        found = called(office, page, _open_items(page, recall), _passed_on(page, recall))
        wanted = {
            reader: _with_what_to_read(page, recall, pieces)
            for reader, pieces in _to_write(page, recall, found, remind=remind)
        }
        if not wanted:
            _check_nobody(found, remind=remind)
            return (), found
        said = _Said(recall, next_number(page, "C", RECALL), *send, remind)
        letters = tuple(_kept(office, page, one, said) for one in wanted.items())
        facts = {
            "recall": recall.ref,
            "numbers": [one.imprint.number for one in letters],
            "people": [one.person or one.name for one in letters],
            "tags": sorted({piece.tag for one in letters for piece in one.pieces}),
        }
        page.enter("print recall letters", by=office.officer.id, at=office.now, facts=facts)
    return letters, found


def _check_nobody(found: Called, *, remind: bool) -> None:
    if remind:
        raise Refused(tr("remind"), tr("Everybody who was written to has answered, or nobody was written to yet."),
                      tr("Look at the recall's letters and answers."))  # fmt: skip
    if found.letters:
        raise Refused(tr("letters"), tr("Everybody whom these pieces concern was written to."),
                      tr("Print a letter again by its number, or remind those who have not answered."))  # fmt: skip


def _out(office: Office, ref: str, letters: tuple[RecallLetter, ...], found: Called) -> Recalled:
    papers = tuple(_printed(office, one) for one in told_of(office, letters))
    return Recalled(letters[0].recall if letters else ref, letters, papers, found.unwritten)


def _open_items(page: Page, recall: Recall) -> tuple[Item, ...]:
    """What still stands under the recall and was not made unusable."""
    calls = page.standing_calls(recall.ref)
    under = [key for key, one in calls.items() if one.facts.step is Step.CALLED]
    items = sorted(page.items_with(under), key=lambda one: one.tag)
    where = page.whereabouts(items)
    return tuple(one for one in items if where[one.id].where is not Where.DESTROYED)


def _passed_on(page: Page, recall: Recall) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for one in page.recall_entries(recall):
        if one.facts.answer is Answer.PASSED_ON:
            for tag in one.facts.tags:
                found.setdefault(page.item(tag).id, []).append(one.facts.text.strip())
    return found


def _to_write(
    page: Page, recall: Recall, found: Called, *, remind: bool
) -> Iterator[tuple[Reader, tuple[CalledPiece, ...]]]:
    """For each reader the pieces that he was not told of yet; of reminders those that he has not answered for."""
    entries = [one.facts for one in page.recall_entries(recall)]
    for reader, pieces in found.letters.items():
        sent = [one for one in entries if one.number and (one.person, one.name) == reader]
        told = {page.item(tag).tag for one in sent for tag in one.tags}
        answered = {page.item(tag).tag for one in entries if answers_for(one, *reader) for tag in one.tags}
        unanswered = told - answered
        if left := tuple(one for one in pieces if (one.tag in unanswered if remind else one.tag not in told)):
            yield reader, left


def _with_what_to_read(page: Page, recall: Recall, pieces: Sequence[CalledPiece]) -> tuple[CalledPiece, ...]:
    """The pieces; of those that nobody can tell from what is meant the reader is asked what stands on them."""
    calls = page.standing_calls(recall.ref)
    asked = tr("Nobody here can tell whether it is meant: write on the slip what you read on it.")
    return tuple(
        replace(one, do=f"{one.do} {asked}") if calls[page.item(one.tag).id].facts.sure is Sure.TO_ASK else one
        for one in pieces
    )


def _kept(office: Office, page: Page, whom: tuple[Reader, tuple[CalledPiece, ...]], said: _Said) -> RecallLetter:
    (person, name), pieces = whom
    number, told = next_number(page, "C", RECALL), said.recall.facts
    head = imprint(office, page, tr("Do not use: called in"), number)
    letter = RecallLetter(
        head, person, name, said.call, told.reason, said.send_to, said.send_by, pieces, said.recall.ref,
        notice_words(told), told.remedy, said.remind,
    )  # fmt: skip
    page.add_document(number, RECALL, office.today, person or name, letter)
    kind = RecallEntryKind.REMINDED if said.remind else RecallEntryKind.WRITTEN
    tags = tuple(one.tag for one in pieces)
    entry = NewRecallEntry(office.today, kind, office.officer.id, person, name, number, tags)
    page.add_recall_entry(said.recall, entry)
    return letter


def _printed(office: Office, letter: RecallLetter) -> Paper:
    """An address is looked up as the letter is printed and is kept nowhere with it."""
    with office.book.reading() as page:
        contact = page.contact(letter.person) if letter.person else None
    address = contact.address if contact else ""
    return put_out(office, letter.imprint.number, recall_letter(letter, address, PageSize(office.page)))
