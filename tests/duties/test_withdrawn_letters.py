"""Whoever was written to by a recall that was withdrawn is told so, once, with how each piece stands now."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.bring_back import bring_back
from inspector.duties.field_copies import take_field_copy
from inspector.duties.give_opinion import doubt
from inspector.duties.import_list import take
from inspector.duties.keep_contact import write_contact
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of, print_kept
from inspector.duties.print_recall import print_recall
from inspector.duties.print_withdrawal import (
    WITHDRAWAL,
    enter_withdrawal_letters,
    print_letter_again,
    print_withdrawal,
    print_withdrawal_again,
)
from inspector.duties.recall_answers import note_answer
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.tell_recall import recall_told
from inspector.duties.verify_book import verify_book
from inspector.duties.what_falls_due import what_falls_due
from inspector.duties.what_needs_me import what_needs_me
from inspector.duties.whereabouts import report_missing, sell
from inspector.duties.withdraw_import import withdraw_import
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.falls_due import Due
from inspector.gear.outcome import Outcome
from inspector.gear.recall import FreedPiece, WithdrawnLetter
from inspector.gear.recall_notice import Answer, Meant, NewRecallEntry, RecallEntryKind
from inspector.refused import Refused
from inspector.register.book import open_book
from tests.duties.lists import HEADS, listed, run, shackle_line
from tests.duties.notices import MEANT, booked, entered
from tests.duties.rigs import member
from tests.duties.test_opinions import add
from tests.duties.test_recalls import text

DI, BO, BUYER = "Di Member", "Bo Second", "Cal Buyer"
STREET = "7 Tidewrack Lane, Pellick"
WHY = "It is another maker's notice."


@pytest.fixture
def club(office: Office) -> Office:
    """Four of the notice: one sold, three lent to Di."""
    member(office)
    add(office, BO)
    for number in range(4):
        booked(office, f"SH-{number}", f"KS24010{number}")
    sell(office, "SH-0", BUYER)
    lend(office, ["SH-1", "SH-2", "SH-3"], DI, office.today + timedelta(days=60))
    return office


def written(office: Office) -> str:
    """The recall is entered and its letters printed."""
    ref = entered(office, replace(MEANT, batches=())).recall.ref
    assert {one.name for one in print_recall(office, ref).letters} == {DI, BUYER}
    return ref


def withdrawn(office: Office) -> str:
    """It is withdrawn, once letters went out."""
    ref = written(office)
    withdraw_recall(office, ref, WHY, second=BO)
    return ref


def to(letters: tuple[WithdrawnLetter, ...], name: str) -> WithdrawnLetter:
    """The letter to somebody."""
    return next(one for one in letters if one.name == name)


def piece(letter: WithdrawnLetter, tag: str) -> FreedPiece:
    """What it says of a piece."""
    return next(one for one in letter.pieces if one.tag == tag)


def test_everybody_who_got_a_letter_gets_one_more_with_how_each_piece_stands(club: Office) -> None:
    ref = written(club)
    doubt(club, "SH-2", "It clicked.")
    report_missing(club, "SH-3", "the dunes", "gone")
    withdraw_recall(club, ref, WHY, second=BO)
    letters = enter_withdrawal_letters(club, ref)
    own = to(letters, DI)
    assert [(one.tag, one.outcome) for one in own.pieces] == [
        ("SH-1", Outcome.FIT), ("SH-2", Outcome.HOLD), ("SH-3", None)
    ]  # fmt: skip
    assert piece(own, "SH-1").do == "It may be used again, once it was checked as before any use."
    assert piece(own, "SH-2").do.startswith("Still do not use it. Hold:")
    assert piece(own, "SH-3").do == "If you find it, do not use it, and tell the equipment officer."
    sold = piece(to(letters, BUYER), "SH-0")
    assert sold.outcome is None and "have it inspected before use" in sold.do
    assert own.reason == WHY and own.recall == ref and own.letters[0].startswith("C-")
    assert verify_book(club).faults == ()


def test_until_they_are_told_it_waits_and_then_nothing_falls_due(club: Office) -> None:
    ref = withdrawn(club)
    (line,) = [one for one in what_falls_due(club) if one.about == ref]
    assert line.what is Due.RECALL and DI in line.says and BUYER in line.says
    assert [one.about for one in what_needs_me(club).recalls] == [ref]
    assert set(recall_told(club, ref).untold) == {DI, BUYER}
    assert len(print_withdrawal(club, ref)) == 2
    assert [one for one in what_falls_due(club) if one.about == ref] == [] == list(what_needs_me(club).recalls)
    told = recall_told(club, ref)
    assert told.untold == () and {one[1] for one in told.added[-2:]} == {
        f"Letter to {DI}: withdrawn", f"Letter to {BUYER}: withdrawn"
    }  # fmt: skip
    (line_, *_) = told_ledger(club)
    assert line_.in_full and f"that the recall {ref} is withdrawn" in line_.sentence and DI in line_.sentence
    with pytest.raises(Refused, match="knows that it was withdrawn"):
        print_withdrawal(club, ref)
    with pytest.raises(Refused, match="was withdrawn on"):
        print_recall(club, ref, remind=True)


def test_one_that_stands_is_taken_back_by_no_letter(club: Office) -> None:
    with pytest.raises(Refused, match="was not withdrawn"):
        print_withdrawal(club, written(club))


def test_a_piece_that_somebody_answered_not_to_have_is_not_said_to_be_fit(club: Office) -> None:
    ref = written(club)
    note_answer(club, ref, ["SH-1"], DI, Answer.PASSED_ON, BUYER)
    withdraw_recall(club, ref, WHY, second=BO)
    assert piece(to(enter_withdrawal_letters(club, ref), DI), "SH-1").outcome is Outcome.HOLD


def test_of_a_piece_that_was_booked_in_by_mistake_it_says_that_the_club_has_none(club: Office, tmp_path: Path) -> None:
    ref = entered(club, Meant("Kelpline")).recall.ref
    made = take(club, run(club, listed(tmp_path, f"{shackle_line('A-1')};Kelpline", heads=f"{HEADS};Maker's mark")))
    with club.book.page() as page:  # a letter that was kept and names it, as one to its buyer would
        sent = NewRecallEntry(club.today, RecallEntryKind.WRITTEN, club.officer.id, "", BUYER, "C-1", ("A-1",))
        page.add_recall_entry(page.recalls()[-1], sent)
        page.enter("note", by=club.officer.id, at=club.now, facts={})
    assert open_item(club, "A-1").dossier.calls
    assert withdraw_import(club, made.number, "another club's").free == ("A-1",)
    withdraw_recall(club, ref, WHY, second=BO)
    (letter,) = enter_withdrawal_letters(club, ref)
    assert piece(letter, "A-1").outcome is None and "no more" in piece(letter, "A-1").do
    assert recall_told(club, ref).untold == () and verify_book(club).faults == ()


def test_it_is_printed_with_the_address_of_now_and_again_as_it_was_said(club: Office) -> None:
    ref = withdrawn(club)
    write_contact(club, DI, address=STREET)
    papers = {text(one.path): one for one in print_withdrawal(club, ref)}
    said, paper = next((said, one) for said, one in papers.items() if DI in said and STREET in said)
    number = paper.path.stem
    assert number.startswith("W-") and WHY in said and f"The recall {ref} is withdrawn" in said
    with club.book.reading() as page:
        body = page.document_of(WITHDRAWAL, number)
    assert body and STREET not in body
    before = paper.path.read_bytes()
    doubt(club, "SH-1", "It clicked.")
    for again in (print_withdrawal_again, print_letter_again):
        assert again(club, number).path.read_bytes() == before
    assert print_kept(club, "SH-1", number).path.read_bytes() == before
    assert ("Letter of withdrawal", True) in {(one.what, one.again) for one in papers_of(club, open_item(club, "SH-1"))}
    calls_in = recall_told(club, ref).numbers[0]
    assert print_letter_again(club, calls_in).path.stem == calls_in
    with pytest.raises(Refused, match="No letter of a withdrawal has the number"):
        print_withdrawal_again(club, "W-none")


def test_who_was_written_to_on_a_copy_that_did_not_know_of_the_withdrawal_is_told_too(
    club: Office, tmp_path: Path
) -> None:
    ref = entered(club, replace(MEANT, batches=())).recall.ref
    taken = take_field_copy(club, tmp_path / "away", club.officer.name, "the dunes")
    away = replace(club, book=open_book(taken.file), out_tray=tmp_path / "out")
    print_recall(away, ref)
    away.book.close()
    withdraw_recall(club, ref, WHY, second=BO)
    assert recall_told(club, ref).untold == ()
    bring_back(club, taken.file)
    assert set(recall_told(club, ref).untold) == {DI, BUYER}
    assert len(print_withdrawal(club, ref)) == 2 and verify_book(club).faults == ()
