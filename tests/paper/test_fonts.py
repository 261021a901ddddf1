"""The packaged type: found, wide enough a guess, honest about what it lacks."""

import pytest

from inspector.drawings.extent import text_width_mm
from inspector.paper.font_files import font_files
from inspector.paper.fonts import MISSING, composed, missing_in, printable
from inspector.paper.page_style import BODY
from inspector.paper.shaping import text_width_pt
from inspector.paper.wrap import lines_of
from tests.each import each
from tests.paper.reading import NAMES


def test_both_files_lie_in_the_package() -> None:
    regular, bold = font_files()
    assert regular.is_file() and bold.is_file()
    assert regular != bold


@pytest.mark.parametrize(
    "text", ["Πλάγια Ακτή", "Песчаная коса", "Bãi Cát Dài ở phía Bắc", "Żółta łacha, Zoë", "½ × 3 ≥ 2 – “a” ✂"]
)
def test_european_and_vietnamese_texts_are_complete(text: str) -> None:
    assert missing_in(text) == missing_in(text, bold=True) == ()
    assert printable(text) == composed(text)


def test_a_sign_the_type_lacks_becomes_a_square_and_is_named_once() -> None:
    assert missing_in("हनह club") == ("ह", "न")
    assert printable("हनह club") == f"{MISSING * 3} club"
    assert missing_in("🦊 \ue123 \uf6c5") == ("🦊", "\ue123", "\uf6c5"), "whose meaning nobody else knows, or none has"


def test_loose_accents_join_their_letters_and_control_signs_become_spaces() -> None:
    assert composed("Zoe\u0308\tA\nB") == "Zoë A\nB"


@each("bold", [False, True])
@each(
    "text",
    [
        "must keep 3.8 mm",
        "illit fjord",
        "Экран Ελλάδα Żółć",
        "11/64 in (2020)",
        "now 12\u202f000 mm",
        "WAMW@%",
        "沙洲",
        "हन",
    ],
)
def test_the_drawings_guess_is_never_narrower_than_the_type(text: str, bold: bool) -> None:
    real = text_width_pt(text, 10.0, bold=bold)
    assert real <= text_width_mm(text, 10.0, bold=bold) <= 1.6 * real


@each("name", NAMES.values(), ids=NAMES)
def test_the_guess_holds_for_names_in_any_script(name: str) -> None:
    assert text_width_pt(name, 10.0) <= text_width_mm(name, 10.0)


def test_what_is_never_seen_takes_no_room_and_is_not_missed() -> None:
    assert missing_in("a\u200e\u2066b\u2069\ufe0f\u00adc") == ()
    assert text_width_pt("a\u200e\u2066b\u2069\ufe0f\u00adc", 10.0) == text_width_pt("abc", 10.0)


def test_lines_fit_and_nothing_is_lost() -> None:
    text = "A long sentence about a strap, then " + "W" * 120 + "\nand a new line"
    lines = lines_of(text, 150.0, BODY)
    assert all(text_width_pt(line, BODY.size_pt) <= 150.0 for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "").replace("\n", "")
    assert lines[-1] == "and a new line"
