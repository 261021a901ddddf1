"""Codes are read back off the rendered page as the text they were made of."""

from importlib import import_module
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.paper.page_style import MM, PageSize
from inspector.paper.press import Press
from inspector.paper.qr_code import draw_qr, least_side_pt, modules_across, qr_code
from tests.each import each
from tests.paper.reading import opened

_ZXING: Any = import_module("zxingcpp")  # carries no types
_DPI = 200
_TAGS = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=24).filter(
    lambda text: text.isprintable() and text == text.strip()
)


def _codes(text: str, side_pt: float) -> list[Any]:
    """What a reader sees of a page that bears this code alone."""
    press = Press(PageSize.A4)
    qr_code(text, side_pt).draw(press, 40.0, 40.0)
    press.next_page()
    document = opened(press.finished())
    beyond = (0, press.page.height_pt - side_pt - 80, press.page.width_pt - side_pt - 80, 0)
    picture = document[0].render(scale=_DPI / 72, crop=beyond).to_pil()
    document.close()
    return list(_ZXING.read_barcodes(picture))


@settings(max_examples=60, deadline=None)
@given(_TAGS)
def test_any_tag_is_read_back_as_it_is_written(tag: str) -> None:
    assert [one.text for one in _codes(tag, least_side_pt(tag))] == [tag]


_SCRIPTS = ["SH-014", "Ü-01", "ΓΑΝ-7", "ШК-3", "シャ-01", "شد-٤", "0", "a" * 24, "\U0001f9f0" * 24]


@each("tag", _SCRIPTS)
def test_tags_in_other_scripts_are_read_back(tag: str) -> None:
    assert [one.text for one in _codes(tag, least_side_pt(tag))] == [tag]


def test_the_least_side_gives_each_module_its_half_millimetre_and_the_quiet_zone() -> None:
    across = modules_across("SH-014")
    assert across == 21
    assert least_side_pt("SH-014") == pytest.approx((across + 8) * 0.5 * MM)
    assert qr_code("SH-014", 100.0).height_pt == 100.0


def test_the_code_stands_where_it_was_placed() -> None:
    """The reader's corners are those of the square without its quiet zone."""
    side = 29 * 4.0
    (code,) = _codes("SH-014", side)
    scale = _DPI / 72
    left, top = 40.0 + 4 * 4.0, 40.0 + 4 * 4.0
    assert code.position.top_left.x / scale == pytest.approx(left, abs=1.5)
    assert code.position.top_left.y / scale == pytest.approx(top, abs=1.5)
    assert code.position.bottom_right.x / scale == pytest.approx(left + 84.0, abs=1.5)


def test_a_version_and_a_strength_are_kept_as_asked() -> None:
    press = Press(PageSize.LETTER)
    draw_qr(press, 40.0, 40.0, 120.0, "S-1", version=3, error="h")
    assert press.finished().startswith(b"%PDF")
    assert modules_across("S-1", version=3, error="h") == 29
    assert modules_across("A" * 20) == 21  # no stronger level is taken unasked, which would make it larger
