"""Names in any script: joined, in order, in a font that has them, and read back as they were given."""

import unicodedata
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from inspector.paper.fonts import main_font, missing_in
from inspector.paper.page_style import BODY, HEAD, PageSize, Type
from inspector.paper.press import Press
from inspector.paper.printed import Printed
from inspector.paper.reading_order import in_order
from inspector.paper.shaping import pieces, text_width_pt
from inspector.paper.wrap import lines_of
from tests.paper.reading import NAMES, opened

_NAMES = [*NAMES.values(), "علي\u200cرضا", "שִׁירָה", "a\u0331\u0301 q\u0303", "さくら・サクラ", "Zoë"]


def printed(*lines: str, type_: Type = BODY) -> Printed:
    """A page with these lines."""
    press = Press(PageSize.A4)
    for number, line in enumerate(lines):
        press.text(100, 100 + 30 * number, line, type_)
    press.next_page()
    return Printed(press.finished(), 1, press.missing_glyphs)


def read_by_viewer(made: Printed) -> list[str]:
    """The lines as a viewer's search and copying see them, in the letters' plain forms."""
    document = opened(made.pdf)
    lines = document[0].get_textpage().get_text_range().split("\r\n")
    document.close()
    return [unicodedata.normalize("NFKC", line) for line in lines]


def read_by_another(made: Printed) -> list[str]:
    """The same by a reader of PDFs that was written apart from it."""
    lines = PdfReader(BytesIO(made.pdf)).pages[0].extract_text().split("\n")
    return [unicodedata.normalize("NFKC", line) for line in lines]


@pytest.mark.parametrize("type_", [BODY, HEAD], ids=["regular", "bold"])
def test_every_name_is_read_back_as_it_was_given(type_: Type) -> None:
    made = printed(*_NAMES, type_=type_)
    assert made.missing_glyphs == ()
    given = [unicodedata.normalize("NFKC", one) for one in _NAMES]
    assert read_by_viewer(made) == read_by_another(made) == given


def test_arabic_with_its_vowels_is_read_back_too() -> None:
    """By one reader; the viewer's takes the raised marks for words of their own."""
    assert read_by_another(printed("شِيرَة")) == ["شِيرَة"]


def test_arabic_letters_join_and_lam_takes_alef() -> None:
    (alone,), (joined,) = pieces("ب", False), pieces("ببب", False)
    assert len(joined.text) == 3 and not set(alone.text) & set(joined.text), "first, middle and last form"
    assert joined.em != pytest.approx(3 * alone.em, abs=0.05)
    assert len(pieces("لا", False)[0].text) == 1


def test_a_mark_stands_over_its_letter() -> None:
    signs = opened(printed("q\u0303").pdf)[0].get_textpage()
    letter, mark = (signs.get_charbox(number) for number in range(2))
    assert mark[1] > letter[1] and letter[0] < (mark[0] + mark[2]) / 2 < letter[2] + 1


def stretches(text: str) -> list[tuple[str, bool]]:
    return [(one.text, one.leftwards) for one in in_order(text)]


def test_a_date_after_a_name_keeps_its_place_whoever_is_named() -> None:
    assert stretches("Prepared by נועה, 12 June 2026") == [
        ("Prepared by ", False),
        ("נועה", True),
        (", 12 June 2026", False),
    ]
    assert stretches("נועה בת אברהם, 12 Jun 2026")[-1] == (", 12 Jun 2026", False)
    assert stretches("נועה gave SH-01 to שירה") == [("נועה", True), (" gave SH-01 to ", False), ("שירה", True)]


def test_a_line_wholly_to_the_left_keeps_tags_and_figures_as_they_are_read() -> None:
    assert stretches("נועה SH-01 12.5 שירה") == [(" שירה", True), ("SH-01 12.5", False), ("נועה ", True)]


def test_two_leftward_scripts_in_a_line_stand_the_later_to_the_left() -> None:
    left, right = pieces("נועה نورة", False)
    assert left.text == pieces("نورة", False)[0].text
    assert right.text.endswith(pieces("נועה", False)[0].text)


def test_words_of_two_scripts_are_read_by_their_fonts() -> None:
    fonts = [(one.font, one.thick) for one in pieces("王 (officer)", True)]
    assert fonts == [("DroidSansFallback", True), (main_font(True).fontName, False)]
    assert next(one.font for one in pieces("王 נועה Zoë", False)) == "DroidSansFallback"


def test_an_east_asian_text_breaks_between_its_signs_but_not_before_a_full_stop() -> None:
    text = "沙洲のクラブ。" * 6
    lines = lines_of(text, 100.0, BODY)
    assert "".join(lines) == text and len(lines) > 2
    assert all(text_width_pt(line, BODY.size_pt) <= 100.0 for line in lines)
    assert not any(line.startswith("。") for line in lines)


def test_an_arabic_text_is_broken_in_the_order_of_reading() -> None:
    text = " ".join(f"{NAMES['Arabic']}" for _ in range(8))
    lines = lines_of(text, 100.0, BODY)
    assert len(lines) > 2 and " ".join(lines) == text
    assert all(text_width_pt(line, BODY.size_pt) <= 100.0 for line in lines)


def test_a_word_too_wide_is_not_cut_between_a_letter_and_its_mark() -> None:
    lines = lines_of("q\u0303" * 60, 50.0, BODY)
    assert "".join(lines) == "q\u0303" * 60 and len(lines) > 3
    assert all(unicodedata.combining(line[0]) == 0 for line in lines)


_SIGNS = st.characters(codec="utf-8", exclude_categories=("Cs", "Cn"))
_MIXED = st.text(st.one_of(_SIGNS, st.sampled_from("aB1 ,(-בגدلا٣沙。\u0301\u200c🦊")), max_size=24)


@settings(max_examples=60)
@given(text=_MIXED)
def test_any_text_is_set_whole_and_as_wide_as_its_glyphs(text: str) -> None:
    line = text.replace("\n", " ")
    set_ = pieces(line, False)
    assert sum(one.em for one in set_) * 10 == pytest.approx(text_width_pt(line, 10.0))
    assert "".join(sorted("".join(one.text for one in in_order(line)))) == "".join(sorted(line))
    assert all(sign in line or sign in unicodedata.normalize("NFC", line) for sign in missing_in(line))
    printed(line)
