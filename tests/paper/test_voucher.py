"""The voucher: all that is signed for stands above the signatures, on the same sheet, however long the life was."""

import re
from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.gear.lists import HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact
from inspector.gear.voucher import Voucher
from inspector.gear.whereabouts import Where
from inspector.paper.page_style import PageSize
from inspector.paper.voucher import voucher
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts

LONG = "Dug the sand out with a drill, dressed the face to bright steel and read it three times. " * 3
MIND = ("It is RETIRED: it may never be used again.", "The club gives no word for its fitness.")


def life(rows: int, text: str = "1 pull") -> tuple[HistoryRow, ...]:
    """The newest first; every third a long one."""
    last = date(2026, 6, 13)
    what = ("Use", "Exposure", "Inspection")
    return tuple(
        HistoryRow(last - timedelta(n), what[n % 3], LONG if n % 3 == 2 else f"{text} {n}", "Ada") for n in range(rows)
    )


@pytest.fixture
def paper() -> Voucher:
    """A retired rope that goes back to its owner."""
    return a_voucher()


def a_voucher() -> Voucher:
    """The same, made."""
    piece = (Fact("Marked", "MBS 64 kN"), Fact("As new", "Length 25 m, Diameter 9.2 mm"), Fact("Owner", "Di Member"))
    return Voucher(
        imprint("Voucher", "V-ABCD-0001"),
        Where.GIVEN_BACK,
        "entry",
        date(2026, 6, 13),
        "WR-2",
        "Wire winch rope",
        piece,
        Outcome.RETIRE,
        "Retire: Broken wires: 5, must be less than 5.",
        "This piece must not be used again, for anything.",
        "Di Member",
        "wanted it back",
        "Ada Officer",
        MIND,
        life(3),
    )


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("rows", [0, 1, 8, 9, 10, 11, 12, 13, 14, 60])
def test_who_signs_has_on_one_sheet_all_that_is_signed_for(paper: Voucher, page: PageSize, rows: int) -> None:
    printed = voucher(replace(paper, life=life(rows)), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    (text,) = page_texts(printed)
    told = ("WR-2 · Wire winch rope went back to its owner", paper.headline, paper.plain, "MBS 64 kN", "wanted it back")
    signs = text.index("Owner: I have read all of this. It is RETIRED")
    for said in (*told, *MIND, *paper.imprint.cautions):
        assert said in text[:signs], said


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("rows", [20, 60, 61])
def test_what_there_is_no_room_for_is_counted(paper: Voucher, page: PageSize, rows: int) -> None:
    every = life(rows)
    text = all_text(voucher(replace(paper, life=every), page))
    shown = sum(f"{one.on.day} {one.on:%b %Y} {one.what}" in text for one in every)
    counted = [int(number) for number in re.findall(r"(\d+) × ", text)]
    assert 0 < shown < rows and shown + sum(counted) == rows
    first = every[-1].on
    assert f"Before that, from {first.day} {first:%b %Y} on" in text


def test_a_short_life_is_told_whole(paper: Voucher) -> None:
    text = all_text(voucher(replace(paper, life=life(5)), PageSize.A4))
    assert "Before that" not in text and "×" not in text


@pytest.mark.parametrize(
    ("where", "outcome", "signed"),
    [
        (Where.SOLD, Outcome.FIT, "Buyer: I have read all of this"),
        (Where.SOLD, Outcome.HOLD, "Buyer: I have read all of this. It is ON HOLD"),
        (Where.GIVEN_BACK, Outcome.DERATE, "Owner: I have read all of this"),
        (Where.DESTROYED, Outcome.RETIRE, "Made unusable by"),
    ],
)
def test_two_sign_and_a_buyer_or_owner_signs_what_he_knows(
    paper: Voucher, where: Where, outcome: Outcome, signed: str
) -> None:
    text = all_text(voucher(replace(paper, where=where, outcome=outcome), PageSize.A4))
    assert signed in text and text.count("Signature") == 2
    assert text.count("It is ON HOLD") == (outcome is Outcome.HOLD)
    assert (paper.plain in text) is (outcome is Outcome.HOLD)  # neither to what may be used nor to what is no more


def test_texts_as_long_as_they_may_be_run_over_and_lose_nothing(paper: Voucher) -> None:
    long = " ".join(f"word{n}" for n in range(900))
    printed = voucher(replace(paper, how=long, life=life(60)), PageSize.LETTER)
    assert_within_margins(printed)
    text = all_text(printed)
    assert "word0" in text and "word899" in text and "It is RETIRED" in text
