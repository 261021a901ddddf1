"""The recall letter: what must stop, why, how to send it back, and a slip with three answers for each piece."""

import pytest
from msgspec.structs import replace

from inspector.gear.recall import CalledPiece, RecallLetter
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.paper.recall_letter import recall_letter
from tests.paper.conftest import imprint
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    fields_by_page,
    page_texts,
    squeezed,
)

ADDRESS = "7 Tidewrack Lane, Pellick"
LONG = "Pins of this batch were hardened wrongly and may snap without warning at a load that they are marked for. " * 15
DO = "Do not use it any more, not even once. Send it back."


def piece(number: int) -> CalledPiece:
    """A piece."""
    return CalledPiece(f"SH-{number:03}", "Bow shackle", "WLL 4.75 t", f"ZUF Z8-{number:03}", "Your own", DO)


def letter(*pieces: CalledPiece, reason: str = "Pins were hardened wrongly.\nThe dealer wrote so.") -> RecallLetter:
    """A letter."""
    made = imprint("Do not use: called in", "C-ABCD-0002")
    return RecallLetter(made, "id", "Ada Member", "C-ABCD-0001", reason, "the shed", "5 Dec 2026", pieces)


def checked(made: RecallLetter, page: PageSize, address: str = ADDRESS) -> Printed:
    """The letter, with nothing outside the page or on another thing."""
    printed = recall_letter(made, address, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.missing_glyphs == ()
    return printed


@pytest.mark.parametrize("page", PageSize)
def test_a_letter_of_a_notice_tells_whose_it_is_what_it_asks_for_and_that_it_is_a_reminder(page: PageSize) -> None:
    notice = "the maker's notice, 7 Nov 2026, Notice 4"
    made = replace(letter(piece(1)), recall="N-ABCD-0001", notice=notice, remedy="Send the pin back.\nA new one comes.")
    text = all_text(checked(made, page))
    for said in (
        f"Recall N-ABCD-0001: {notice}.",
        "What the notice asks for",
        "Send the pin back.",
        "A new one comes.",
    ):
        assert said in text, said
    reminder = "This is a reminder: no answer of yours has come in yet."
    assert reminder not in text
    assert reminder in all_text(checked(replace(made, is_reminder=True), page))


@pytest.mark.parametrize("page", PageSize)
def test_one_piece_is_one_page_with_all_that_must_be_read(page: PageSize) -> None:
    printed = checked(letter(piece(1)), page)
    assert printed.page_count == 1
    text = all_text(printed)
    for said in (
        "Stop using this piece now", "Ada Member", ADDRESS, "Pins were hardened wrongly.", "The dealer wrote so.",
        "ZUF Z8-001", DO, "To: the shed. By: 5 Dec 2026.", "C-ABCD-0001", "My answer", "Belongs to letter C-ABCD-0002",
        "I have it, out of use", "I do not have it any more", "It is destroyed", "Signature",
        *letter().imprint.cautions,
    ):  # fmt: skip
        assert said in text, said
    (fields,) = fields_by_page(printed)
    assert set(fields) == {"0.have", "0.gone", "0.destroyed"}


@pytest.mark.parametrize(
    ("count", "page"), [(8, PageSize.A4), (8, PageSize.LETTER), (9, PageSize.LETTER), (300, PageSize.A4)]
)
def test_each_piece_is_told_and_may_be_answered(page: PageSize, count: int) -> None:
    printed = checked(letter(*(piece(n) for n in range(count))), page)
    text = squeezed(all_text(printed))
    assert text.count(squeezed(DO)) == count
    assert all(text.count(f"SH-{n:03}·Bowshackle") == 1 for n in range(count))
    assert sum(len(one) for one in fields_by_page(printed)) == 3 * count
    assert text.count("Signature") == 1
    assert all("A competent person decides." in one for one in page_texts(printed))


def test_a_slip_of_few_pieces_is_never_cut_in_two() -> None:
    for length in range(1, 12, 2):
        made = letter(*(piece(n) for n in range(8)), reason=LONG[: 120 * length])
        on_page = [one for one in page_texts(checked(made, PageSize.A4)) if "My answer" in one or "Signature" in one]
        assert len(on_page) == 1


@pytest.mark.parametrize("page", PageSize)
def test_long_names_and_reasons_lose_nothing(page: PageSize) -> None:
    name = "Maximiliane-Theodora von und zu Hinterobertrauchgauer-Wattenbüttel-Sandstrandhausen " * 2
    long = replace(piece(1), kind_name="Fibre winch line " * 9, marks="X" * 90, why=LONG, tag="SH-" + "9" * 30)
    printed = checked(replace(letter(long, reason=LONG), name=name), page)
    text = squeezed(all_text(printed))
    assert squeezed(name) in text and squeezed(LONG) in text and "X" * 90 in text


@pytest.mark.parametrize("name", ["Ελένη Παπαδοπούλου", "Мария Береговая", "Žofie Čápková"])
def test_names_in_other_scripts_are_printed(name: str) -> None:
    printed = checked(replace(letter(piece(1)), name=name), PageSize.A4)
    assert name in all_text(printed)


def test_without_place_day_or_address_it_says_whom_to_ask() -> None:
    text = all_text(checked(replace(letter(piece(1)), send_to="", send_by=""), PageSize.A4, ""))
    assert "To: ask the equipment officer where. By: as soon as you can." in text and "Tidewrack" not in text
    assert "none written down" in all_text(checked(letter(replace(piece(1), marks="")), PageSize.A4))
