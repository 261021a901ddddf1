"""The letters by which a recall is withdrawn: to everybody who got a letter of it, with how each piece stands now."""

from collections.abc import Sequence

from inspector.duties.due_days import has_left, is_lost
from inspector.duties.judge_anew import judge_anew
from inspector.duties.named_pieces import kept_as
from inspector.duties.office import Office, told_of
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.print_recall import print_recall_again
from inspector.duties.recall_checks import recall_called
from inspector.duties.recall_untold import Untold, untold
from inspector.duties.recall_words import notice_words
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.recall import FreedPiece, WithdrawnLetter
from inspector.gear.recall_notice import NewRecallEntry, Recall, RecallEntryKind
from inspector.gear.whereabouts import Whereabouts
from inspector.language import tr
from inspector.paper.page_style import PageSize
from inspector.paper.withdrawn_letter import withdrawn_letter
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.words import marked_words

WITHDRAWAL = "recall_withdrawal"


def print_withdrawal(office: Office, ref: str) -> tuple[Paper, ...]:
    """Number, keep and print a letter to each person who was written to by a withdrawn recall and does not know yet."""
    letters = enter_withdrawal_letters(office, ref)
    return tuple(_printed(office, one) for one in told_of(office, letters))


def print_withdrawal_again(office: Office, number: str) -> Paper:
    """Print a letter again as it was kept, by its number; the address is the one written down now."""
    unknown = tr("No letter of a withdrawal has the number {number}.", number=number)
    return _printed(office, kept_as(office, WITHDRAWAL, number, WithdrawnLetter, unknown))


def print_letter_again(office: Office, number: str) -> Paper:
    """Print any letter of a recall again, by its number: one that called in, or one that took it back."""
    with office.book.reading() as page:
        is_withdrawal = page.document_of(WITHDRAWAL, number.strip()) is not None
    return print_withdrawal_again(office, number) if is_withdrawal else print_recall_again(office, number)


def enter_withdrawal_letters(office: Office, ref: str) -> tuple[WithdrawnLetter, ...]:
    """Number and keep the letters; no file is written. Refused where it stands, and where everybody knows."""
    judge_anew(office)  # whoever is told of a piece must be told of today
    with office.book.page() as page:
        recall = recall_called(page, ref)
        said = page.withdrawal_of(recall)
        if said is None:
            why = tr("{ref} was not withdrawn.", ref=recall.ref)
            raise Refused(tr("recall"), why, tr("Withdraw it first, if it was entered wrongly."))
        wanted = untold(page, recall)
        if not wanted:
            why = tr("Everybody who was written to knows that it was withdrawn, or nobody was written to.")
            raise Refused(tr("letters"), why, tr("Print a letter again by its number."))
        letters = tuple(_kept(office, page, recall, said.text, one) for one in wanted)
        facts = {
            "recall": recall.ref,
            "numbers": [one.imprint.number for one in letters],
            "people": [one.person or one.name for one in letters],
        }
        page.enter("print withdrawal letters", by=office.officer.id, at=office.now, facts=facts)
    return letters


def _kept(office: Office, page: Page, recall: Recall, reason: str, whom: Untold) -> WithdrawnLetter:
    person, name = whom.reader
    number = next_number(page, "W", WITHDRAWAL)
    head = imprint(office, page, tr("A recall is withdrawn"), number)
    items = page.items_with(whom.pieces)
    letter = WithdrawnLetter(
        head, person, name, recall.ref, notice_words(recall.facts), whom.letters, reason, _freed(office, page, items)
    )
    page.add_document(number, WITHDRAWAL, office.today, person or name, letter)
    tags = tuple(one.tag for one in items)
    page.add_recall_entry(
        recall, NewRecallEntry(office.today, RecallEntryKind.TOLD, office.officer.id, person, name, number, tags)
    )
    return letter


def _freed(office: Office, page: Page, items: Sequence[Item]) -> tuple[FreedPiece, ...]:
    places, stands = page.whereabouts(items), page.standing_verdicts(items)
    found = []
    for item in items:
        kind = office.rules.kinds.get(item.facts.kind)
        marks = " ".join(one for one in (item.facts.maker_mark, item.facts.serial) if one)
        verdict, said = stands.get(item.id, (None, None))
        outcome, do = _stands(places[item.id], verdict.outcome if verdict else None, said.headline if said else "")
        name = kind.name if kind else item.facts.kind
        found.append(FreedPiece(item.tag, name, marked_words(item), marks, outcome, do))
    return tuple(found)


def _stands(where: Whereabouts, outcome: Outcome | None, why: str) -> tuple[Outcome | None, str]:
    """How a piece stands, and what its reader may do. The club says nothing of one that it does not have.

    outcome: None of one that was booked in by mistake.
    """
    if outcome is Outcome.RETIRE:
        return outcome, tr("Never use it again. {why}", why=why)
    if outcome is None:
        return None, tr("The club has it in its register no more.")
    if is_lost(where):
        return None, tr("If you find it, do not use it, and tell the equipment officer.")
    if has_left(where):
        said = tr("The club no longer calls it in. It has not seen it since it left: have it inspected before use.")
        return None, said
    if outcome is Outcome.HOLD:
        return outcome, tr("Still do not use it. {why}", why=why)
    if outcome is Outcome.DERATE:
        return outcome, tr("It may be used again, within its limits. {why}", why=why)
    return outcome, tr("It may be used again, once it was checked as before any use.")


def _printed(office: Office, letter: WithdrawnLetter) -> Paper:
    """An address is looked up as the letter is printed and is kept nowhere with it."""
    with office.book.reading() as page:
        contact = page.contact(letter.person) if letter.person else None
    address = contact.address if contact else ""
    return put_out(office, letter.imprint.number, withdrawn_letter(letter, address, PageSize(office.page)))
