"""The letter of withdrawal: which letters count no more, why, and how each piece stands now."""

import pytest
from msgspec.structs import replace

from inspector.gear.outcome import Outcome
from inspector.gear.recall import FreedPiece, WithdrawnLetter
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.paper.withdrawn_letter import withdrawn_letter
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins

ADDRESS = "7 Tidewrack Lane, Pellick"
STANDS = (Outcome.FIT, Outcome.DERATE, Outcome.HOLD, Outcome.RETIRE, None)
DO = {
    Outcome.FIT: "It may be used again, once it was checked as before any use.",
    Outcome.DERATE: "It may be used again, within its limits. Derate: 3.2 t.",
    Outcome.HOLD: "Still do not use it. A doubt is open.",
    Outcome.RETIRE: "Never use it again. A crack was seen.",
    None: "The club no longer calls it in.",
}


def piece(number: int) -> FreedPiece:
    """A piece; of five in a row each stands otherwise."""
    stands = STANDS[number % len(STANDS)]
    return FreedPiece(f"SH-{number:03}", "Bow shackle", "WLL 4.75 t", f"ZUF Z8-{number:03}", stands, DO[stands])


def letter(*pieces: FreedPiece) -> WithdrawnLetter:
    """A letter."""
    made = imprint("A recall is withdrawn", "W-ABCD-0002")
    sent = ("C-ABCD-0001 of 25 Nov 2026", "C-ABCD-0004 of 9 Dec 2026")
    notice = "the maker's notice, 20 Nov 2026, Safety notice 7"
    return WithdrawnLetter(
        made, "id", "Ada Member", "N-ABCD-0001", notice, sent, "Another maker's.\nSeen late.", pieces
    )


def checked(made: WithdrawnLetter, page: PageSize, address: str = ADDRESS) -> Printed:
    """The letter, with nothing outside the page or on another thing."""
    printed = withdrawn_letter(made, address, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.missing_glyphs == ()
    return printed


@pytest.mark.parametrize("page", PageSize)
def test_it_tells_what_counts_no_more_and_why_and_how_each_piece_stands(page: PageSize) -> None:
    printed = checked(letter(*(piece(number) for number in range(5))), page)
    text = all_text(printed)
    for said in (
        "The recall N-ABCD-0001 is withdrawn", "Ada Member", ADDRESS, "C-ABCD-0001 of 25 Nov 2026",
        "C-ABCD-0004 of 9 Dec 2026", "Safety notice 7", "Another maker's.", "Seen late.", *DO.values(),
    ):  # fmt: skip
        assert said in text, said
    assert [text.count(word) for word in ("Fit", "Derate", "Hold", "Retire")] == [1, 2, 1, 1]


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("count", [1, 60])
def test_one_piece_or_many_and_no_address(page: PageSize, count: int) -> None:
    made = replace(
        letter(*(piece(number) for number in range(count))), letters=("C-ABCD-0001 of 25 Nov 2026",), notice=""
    )
    printed = checked(made, page, "")
    assert "This letter to you counts no more" in all_text(printed)
    assert (printed.page_count == 1) is (count == 1)
