"""The letter to a holder and the slips: everything that must be read stands there, on A4 and on Letter."""

import pytest
from msgspec.structs import replace

from inspector.gear.letters import DueSlip, HolderLetter, LetterLine, LetterPiece, SlipSheet
from inspector.gear.outcome import Outcome
from inspector.paper.due_slips import due_slips
from inspector.paper.holder_letter import holder_letter
from inspector.paper.page_style import PageSize
from tests.each import each
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts, squeezed

ADDRESS = "7 Tidewrack Lane, Pellick"
DUE = (LetterLine("5 Dec 2026", "next inspection"), LetterLine("now", "to be back from its loan, OVERDUE by 9 days"))
LONG = "The sizes differ or the stamp cannot be read, and nobody who may judge it has seen all of it since. " * 12


def piece(tag: str, outcome: Outcome, says: str = "Any pull up to its limit.", do: str = "") -> LetterPiece:
    """A piece of the letter."""
    usable = outcome in {Outcome.FIT, Outcome.DERATE}
    return LetterPiece(tag, "Bow shackle", "WLL 4.75 t", outcome, usable, says, "Your own", do, DUE)


def a_letter(*pieces: LetterPiece, bring: tuple[str, ...] = ("SH-1",)) -> HolderLetter:
    """A letter with place and day."""
    others = (LetterLine("1 Jan 2027", "last day on which Ada Member may judge all gear"),)
    made = imprint("Gear in your hands", "L-ABCD-0001")
    return HolderLetter(made, "id-1", "Ada Member", "24 Feb 2027", bring, "the shed", "5 Dec 2026", pieces, others)


PIECES = (
    piece("SH-1", Outcome.HOLD, "Hold: not inspected.", "Do not use it until you are told that it may be used again."),
    piece("SH-2", Outcome.RETIRE, "Retire: cracked.", "Never use it again."),
    piece("SH-3", Outcome.FIT),
    piece("SH-4", Outcome.DERATE),
)


@pytest.mark.parametrize("page", PageSize)
def test_the_letter_says_all_of_every_piece_and_what_to_bring_where_and_when(page: PageSize) -> None:
    printed = holder_letter(a_letter(*PIECES), ADDRESS, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.page_count == 1 and printed.missing_glyphs == ()
    text = all_text(printed)
    assert "Ada Member" in text and ADDRESS in text and "L-ABCD-0001" in text
    assert "Please bring: SH-1" in text and "To: the shed. By: 5 Dec 2026." in text
    for one in PIECES:
        assert one.tag in text and one.says in text and one.do in text
    assert text.count("5 Dec 2026 next inspection") == len(PIECES)
    held, free = text.index("Must not be used"), text.index("May be used, but only")
    assert held < text.index("SH-2 ") < free < text.index("SH-3 ") and "may judge all gear" in text
    for said in (*a_letter().imprint.cautions, "Stay clear of a loaded line."):
        assert said in text


def test_without_address_place_or_day_it_says_whom_to_ask(page: PageSize = PageSize.A4) -> None:
    bare = replace(a_letter(*PIECES), bring_to="", bring_by="")
    text = all_text(holder_letter(bare, "", page))
    assert "To: ask the equipment officer where. By: as soon as you can." in text and "Tidewrack" not in text
    assert "Nothing is to be brought now." in all_text(holder_letter(a_letter(PIECES[2], bring=()), "", page))


def test_a_lost_piece_never_stands_there_with_a_mark_that_lets_it_go() -> None:
    lost = replace(piece("SH-9", Outcome.FIT, "The register has it as missing."), may_use=False)
    text = all_text(holder_letter(a_letter(lost), "", PageSize.A4))
    assert "Not at hand" in text and "Fit" not in text.split() and "May be used" not in text


@pytest.mark.parametrize("page", PageSize)
def test_a_long_letter_runs_over_pages_and_loses_nothing(page: PageSize) -> None:
    many = [piece(f"SH-{n:03}", Outcome.HOLD, LONG.strip(), "Bring it.") for n in range(14)]
    printed = holder_letter(a_letter(*many), ADDRESS, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.page_count > 2
    assert squeezed(all_text(printed)).count(squeezed("nobody who may judge it has seen all")) == 12 * len(many)
    assert all("A competent person decides." in text for text in page_texts(printed))


def slip(number: int, says: str = "Hold: not inspected.", may_use: bool = False) -> DueSlip:
    """A slip."""
    tag = f"SH-{number:03}"
    return DueSlip(tag, "Bow shackle", "WLL 4.75 t", may_use, says, DUE, f"Ada {tag}", f"To: the shed, {tag}. By: now.")


def sheet(*slips: DueSlip) -> SlipSheet:
    """A sheet of slips."""
    return SlipSheet(imprint("Slips", "L-ABCD-0002"), slips)


@each("page", PageSize)
@each(("count", "pages"), [(1, 1), (8, 1), (9, 2), (16, 2), (17, 3)])
def test_eight_slips_stand_on_a_page_each_whole(page: PageSize, count: int, pages: int) -> None:
    printed = due_slips(sheet(*(slip(n) for n in range(count))), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.page_count == pages
    text = all_text(printed)
    for n in range(count):
        assert f"Ada SH-{n:03}" in text and f"To: the shed, SH-{n:03}. By: now." in text
    assert text.count("DO NOT USE. Hold: not inspected.") == count
    assert text.count("5 Dec 2026 next inspection") == count
    cut_apart = "Sandbar Touring Club, 13 Jun 2026. A decision aid. A competent person decides."
    assert squeezed(text).count(squeezed(cut_apart)) == count
    assert text.count("Mind:") == 1


def test_a_slip_with_more_to_say_is_higher_and_one_that_may_be_used_says_for_what() -> None:
    printed = due_slips(
        sheet(slip(1, LONG.strip()), *(slip(n, "Static pull only.", True) for n in range(2, 9))), PageSize.LETTER
    )
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    text = all_text(printed)
    assert squeezed(LONG) in squeezed(text) and text.count("DO NOT USE") == 1
    assert text.count("Static pull only.") == 7 and printed.page_count == 2
