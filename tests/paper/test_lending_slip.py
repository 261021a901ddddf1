"""The lending slip: who takes what, for what, back by when, and where both sign."""

import pytest
from msgspec.structs import replace

from inspector.gear.lending_slip import LendingSlip, LentPiece
from inspector.gear.outcome import Outcome
from inspector.paper.lending_slip import lending_slip
from inspector.paper.page_style import PageSize
from tests.paper.conftest import imprint
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    page_texts,
    sign_heights,
    squeezed,
)

FIT = LentPiece(
    "SH-014", "Bow shackle", "WLL 4.75 t, factor 6", "", Outcome.FIT, True, "Only for kinetic pull and static pull.",
    "Not for road towing.", "", "26 Nov 2026", "20 Dec 2026", "Ada Officer",
)  # fmt: skip
DERATED = replace(
    FIT, tag="BR-02", limit="Bears only MBS 79.4 kN now.", outcome=Outcome.DERATE, mind="Strength lost: 10 %."
)
HELD = replace(
    FIT, tag="KR-01", outcome=Outcome.HOLD, may_use=False, may_for="", not_for="Do not use it for anything.",
    mind="A doubt was voiced.",
)  # fmt: skip


def slip(*pieces: LentPiece, **more: str) -> LendingSlip:
    """A slip for Nell."""
    said = {"trip": "Dune day", "bring_back": "20 Dec 2026", "lent": "26 Nov 2026", "handed_by": "Ada Officer", **more}
    return LendingSlip(imprint("Lending slip", "B-ABCD-0001"), "id-1", "Nell Hobbery", pieces=pieces, **said)


@pytest.mark.parametrize("page", PageSize)
def test_it_says_all_of_each_piece_and_has_room_for_both_to_sign(page: PageSize) -> None:
    printed = lending_slip(slip(HELD, DERATED, FIT), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.missing_glyphs == ()
    text = all_text(printed)
    for one in (FIT, DERATED, HELD):
        for said in (one.tag, one.kind_name, one.marked, one.may_for, one.not_for, one.mind):
            assert squeezed(said) in squeezed(text), said
    assert "Bears only MBS 79.4 kN now." in text and text.count("Bears only") == 1
    assert "Who borrows: Nell Hobbery" in text and "For the club: Ada Officer" in text
    assert text.count("Signature") == 2 and "Taken back by, signature" in text
    for said in (*imprint("", "").cautions, "Dune day", "Stay clear of a loaded line.", "B-ABCD-0001"):
        assert said in text


def test_the_day_to_be_back_is_the_largest_thing_below_the_title() -> None:
    printed = lending_slip(slip(FIT), PageSize.A4)
    assert "Bring back by 20 Dec 2026" in all_text(printed) and printed.page_count == 1
    heights = sign_heights(printed)
    assert heights["2"] > 15 and "To be back by" not in all_text(printed)
    assert "Bring back when asked" in all_text(lending_slip(slip(replace(FIT, due=""), bring_back=""), PageSize.A4))


def test_what_differs_from_piece_to_piece_stands_beside_the_piece() -> None:
    later = replace(FIT, tag="SH-015", due="24 Dec 2026", since="25 Nov 2026", handed_by="Bo Deputy")
    text = all_text(lending_slip(slip(FIT, later, lent="", handed_by=""), PageSize.A4))
    assert "To be back by 24 Dec 2026." in text and text.count("To be back by") == 1
    assert "Handed out on 25 Nov 2026 by Bo Deputy." in text and "Handed out on 26 Nov 2026 by Ada Officer." in text
    assert "For the club" in text and "For the club:" not in text
    assert "No day was named." in all_text(lending_slip(slip(FIT, replace(FIT, due="")), PageSize.A4))


@pytest.mark.parametrize("page", PageSize)
def test_a_long_slip_runs_over_pages_and_loses_nothing(page: PageSize) -> None:
    note = "Noted: " + "the pin was oiled and the thread is stiff in the cold, turn it back a quarter. " * 12
    many = [replace(DERATED, tag=f"SH-{number:03}") for number in range(60)]
    printed = lending_slip(slip(replace(HELD, mind=note), *many), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    text = all_text(printed)
    assert squeezed(note) in squeezed(text) and all(one.tag in text for one in many)
    assert all("A competent person decides." in said for said in page_texts(printed))
    signed = next(said for said in page_texts(printed) if "Who borrows" in said)
    assert "Mind:" in signed  # who signs has the cautions on the same page
