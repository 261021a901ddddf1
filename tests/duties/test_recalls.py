"""Pieces that are called in: everybody whom one concerns is told, nobody else, and what no letter reaches is named."""

from datetime import timedelta
from pathlib import Path

import pytest

from inspector.duties.fit_parts import fit_part
from inspector.duties.give_opinion import doubt
from inspector.duties.keep_contact import write_contact
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of, print_kept
from inspector.duties.print_recall import RECALL, Recalled, print_recall_again, recall_pieces
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_missing, sell
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.outcome import Outcome
from inspector.gear.recall import CalledPiece, RecallLetter
from inspector.paper.printed import Printed
from inspector.refused import Refused
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, kilograms, point, shackle
from tests.duties.incidents import beach, reported
from tests.duties.rigs import fit, member
from tests.paper.reading import all_text

DI, WHY = "Di Member", "Pins of this batch were hardened wrongly.\nThe dealer wrote on 20 November."
STREET = "7 Tidewrack Lane, Pellick"


@pytest.fixture
def club(office: Office) -> Office:
    """One lent to Di, one of her own, one in store, a part on her vehicle."""
    member(office)
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    fit(office, shackle("SH-2", owner=DI), SHACKLE_READINGS)
    fit(office, shackle("SH-3"), SHACKLE_READINGS)
    add_vehicle(office, "V-1", "Truck", DI, kilograms("3000 kg"), None)
    fit(office, point("RP-1"), POINT_READINGS)
    fit_part(office, "RP-1", Fitted("V-1", End.REAR, Side.LEFT))
    lend(office, ["SH-1"], DI, office.today + timedelta(days=60))
    return office


def only(done: Recalled) -> RecallLetter:
    """Its one letter."""
    (letter,) = done.letters
    return letter


def piece(letter: RecallLetter, tag: str) -> CalledPiece:
    """What it says of a piece."""
    return next(one for one in letter.pieces if one.tag == tag)


def text(path: Path) -> str:
    """What stands on a printed paper."""
    return all_text(Printed(path.read_bytes(), 0, ()))


def test_who_has_owns_or_drives_one_gets_one_letter_and_the_store_is_told_apart(club: Office) -> None:
    done = recall_pieces(club, ["SH-1", "SH-2", "SH-3", "RP-1"], WHY, send_to="the shed")
    letter = only(done)
    assert letter.name == DI and [one.tag for one in letter.pieces] == ["RP-1", "SH-1", "SH-2"]
    assert piece(letter, "SH-1").do == "Do not use it any more, not even once. Send it back."
    assert "leave the part on it" in piece(letter, "RP-1").do
    assert done.unwritten == ("SH-3: in store, place not written down",)
    printed = text(done.papers[0].path)
    for said in ("Stop using these 3 pieces now", "hardened wrongly", "To: the shed.", letter.call, "My answer"):
        assert said in printed
    for said in letter.imprint.cautions:
        assert said in printed


def test_what_is_called_in_is_held_in_the_same_deed_and_the_letter_names_the_recall(club: Office) -> None:
    done = recall_pieces(club, ["SH-1", "RP-1", "SH-3"], WHY)
    for tag in ("SH-1", "RP-1", "SH-3"):
        assert "recall" in {one.rule for one in open_item(club, tag).verdict.findings if one.outcome is Outcome.HOLD}
    assert f"Recall {done.ref}" in text(done.papers[0].path)


def test_of_what_nobody_can_be_written_for_the_recall_is_kept_all_the_same(club: Office) -> None:
    done = recall_pieces(club, ["SH-3"], WHY)
    assert done.letters == () and done.unwritten == ("SH-3: in store, place not written down",)
    assert open_item(club, "SH-3").verdict.outcome is Outcome.HOLD


def test_an_owner_whose_piece_is_with_somebody_else_is_told_that_he_is_asked(club: Office) -> None:
    lend(club, ["SH-2"], club.officer.name, club.today + timedelta(days=9))
    done = recall_pieces(club, ["SH-2"], WHY)
    said = {one.name: piece(one, "SH-2").do for one in done.letters}
    assert said[DI] == "It is with somebody else, who is asked for it."
    assert said[club.officer.name].endswith("Send it back.")
    assert {one.call for one in done.letters} == {done.letters[0].imprint.number}


def test_a_buyer_whom_the_register_knows_by_name_alone_gets_a_letter_too(club: Office) -> None:
    sell(club, "SH-3", "Cal Buyer")
    letter = only(recall_pieces(club, ["SH-3"], WHY))
    assert letter.person == "" and letter.name == "Cal Buyer"
    assert "sold to Cal Buyer" in piece(letter, "SH-3").why and "do not hand it on" in piece(letter, "SH-3").do
    number = letter.imprint.number
    assert papers_of(club, open_item(club, "SH-3"))[0].number == number
    assert print_kept(club, "SH-3", number).path.stem == number


def test_an_owner_who_is_no_person_of_the_register_is_told_by_name(club: Office) -> None:
    fit(club, shackle("SH-4", owner="Another Club"), SHACKLE_READINGS)
    letter = only(recall_pieces(club, ["SH-4"], WHY))
    assert letter.name == "Another Club" and "The club has it" in piece(letter, "SH-4").do


def test_of_a_lost_piece_its_owner_is_told_not_to_use_it_and_of_the_club_s_nobody(club: Office) -> None:
    report_missing(club, "SH-2", "the beach", "gone")
    report_missing(club, "SH-3", "the beach", "gone")
    done = recall_pieces(club, ["SH-2", "SH-3"], WHY)
    assert piece(only(done), "SH-2").do == "If you find it, do not use it, and tell the equipment officer."
    assert done.unwritten[0].startswith("SH-3: missing")


def test_evidence_is_never_asked_for(office: Office) -> None:
    beach(office)
    lend(office, ["SH-1"], DI, office.today + timedelta(days=9))
    reported(office)
    done = recall_pieces(office, ["SH-1"], WHY)
    for letter in done.letters:
        said = piece(letter, "SH-1").do
        assert "as evidence of" in said and "Send it back" not in said


def test_an_address_is_looked_up_as_it_is_printed_and_kept_nowhere(club: Office) -> None:
    write_contact(club, DI, address=STREET)
    done = recall_pieces(club, ["SH-1"], WHY)
    assert STREET in text(done.papers[0].path)
    with club.book.reading() as page:
        body = page.document_of(RECALL, only(done).imprint.number)
    assert body and STREET not in body


def test_it_is_printed_again_as_it_was_said(club: Office) -> None:
    done = recall_pieces(club, ["SH-1"], WHY)
    before = done.papers[0].path.read_bytes()
    doubt(club, "SH-1", "called in", "")
    again = print_recall_again(club, only(done).imprint.number)
    assert again.path.read_bytes() == before
    number = only(recall_pieces(club, ["SH-1"], WHY)).imprint.number
    assert number != only(done).imprint.number


def test_the_ledger_tells_of_it_and_holds(club: Office) -> None:
    letter = only(recall_pieces(club, ["SH-1", "SH-3"], "Cracked."))
    (told, before, *_) = told_ledger(club)
    ref = letter.recall
    said = f"Ada Officer printed the letters {letter.imprint.number} of the recall {ref} for SH-1 to {DI}."
    assert told.sentence == said
    assert before.sentence == (
        f"Ada Officer entered the recall {ref} (the club's own) and held 2 pieces for certain, 0 pieces to ask: "
        "“Cracked.”."
    )
    assert verify_book(club).faults == ()
    assert {one.id for one in people(club)} >= {letter.person}


@pytest.mark.parametrize(("tags", "why", "field"), [([], WHY, "pieces"), (["SH-1"], "  ", "reason")])
def test_without_pieces_or_a_reason_it_is_refused(club: Office, tags: list[str], why: str, field: str) -> None:
    with pytest.raises(Refused) as refused:
        recall_pieces(club, tags, why)
    assert refused.value.field == field
    assert told_ledger(club)[0].sentence.find("called in") < 0


def test_a_day_that_is_past_and_an_unknown_number_are_refused(club: Office) -> None:
    with pytest.raises(Refused, match="is past"):
        recall_pieces(club, ["SH-1"], WHY, send_by=club.today - timedelta(days=1))
    with pytest.raises(Refused, match="No recall letter has the number"):
        print_recall_again(club, "C-XXXX-0001")
