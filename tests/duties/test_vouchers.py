"""What leaves the club closes with its paper, printed again as it was said."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item, where_is
from inspector.duties.office import Office
from inspector.duties.print_voucher import print_voucher
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import hand_to_owner, report_found, sell
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap
from tests.duties.rigs import fit, member


def said(path: Path) -> str:
    """The words of a PDF."""
    return " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)


def own_strap(office: Office) -> None:
    """A strap of a member's own, inspected and sound."""
    member(office)
    book_in(office, replace(strap(), owner="Di Member"))
    record_inspection(office, "KS-1", all_good(office, office.kind("kinetic_strap"), STRAP_READINGS))


def test_a_sold_piece_closes_with_a_voucher_that_says_the_same_ever_after(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    sell(office, "SH-1", "A buyer", why="one too many")
    paper = print_voucher(office, "SH-1")
    words = said(paper.path)
    assert paper.path.name.startswith("V-") and "SH-1 · Bow shackle was sold" in words
    assert "A buyer" in words and "one too many" in words and "no word for its fitness" in words
    assert "Buyer: I have read all of this" in words and "Inspection" in words
    later = office.at(office.now + timedelta(days=900))
    again = print_voucher(later, "SH-1")
    assert again.path == paper.path and said(again.path) == words
    assert sum("printed the voucher" in line.sentence for line in told_ledger(office)) == 1
    assert verify_book(office).faults == ()


def test_what_the_owner_takes_back_on_hold_he_takes_knowingly(office: Office) -> None:
    own_strap(office)
    record_inspection(office, "KS-1", all_good(office, office.kind("kinetic_strap"), STRAP_READINGS, edge_cuts="bad"))
    assert open_item(office, "KS-1").verdict.outcome is Outcome.RETIRE
    with pytest.raises(Refused, match="must not be used") as refusal:
        hand_to_owner(office, "KS-1")
    assert refusal.value.field == "as it is"
    hand_to_owner(office, "KS-1", as_it_is=True)
    assert where_is(office, "KS-1").startswith("given back to its owner Di Member")
    words = said(print_voucher(office, "KS-1").path)
    assert "went back to its owner" in words and "It is RETIRED: it may never be used again" in words
    assert "before it bears a load" not in words, "no look brings a retired piece back, so none is asked for"


def test_a_piece_that_goes_back_twice_has_two_vouchers(office: Office) -> None:
    own_strap(office)
    hand_to_owner(office, "KS-1")
    first = print_voucher(office, "KS-1").path
    with pytest.raises(Refused, match="given back"):
        lend(office, ["KS-1"], "Ada Officer", office.today + timedelta(days=1))
    assert report_found(office, "KS-1", "shelf 3").verdict.outcome is Outcome.HOLD
    with pytest.raises(Refused, match="neither sold nor given back"):
        print_voucher(office, "KS-1")
    hand_to_owner(office, "KS-1", as_it_is=True)
    second = print_voucher(office, "KS-1").path
    assert first != second and "ON HOLD" in said(second) and "ON HOLD" not in said(first)


def test_a_destroyed_piece_closes_with_who_saw_it(office: Office) -> None:
    own_strap(office)
    record_inspection(office, "KS-1", all_good(office, office.kind("kinetic_strap"), STRAP_READINGS, edge_cuts="bad"))
    destroy_item(office, "KS-1", "cut into four", witness="Di Member")
    assert where_is(office, "KS-1").startswith("made unusable")
    words = said(print_voucher(office, "KS-1").path)
    assert "KS-1 · Kinetic strap was made unusable" in words and "cut into four" in words and "Di Member" in words
    assert "must not be put together again" in words


def test_a_piece_that_is_here_has_no_voucher(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    with pytest.raises(Refused, match="neither sold nor given back") as refusal:
        print_voucher(office, "SH-1")
    assert refusal.value.what_to_do
