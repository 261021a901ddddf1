"""The look: light and dark from the same roles, readable, and nothing cut off in large text."""

from collections.abc import Callable

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from inspector.desk.look import DARK, LIGHT, Colours, Look, Scheme, TextSize, Type
from inspector.desk.window import DeskWindow
from inspector.drawings.shapes import Ink
from inspector.duties.office import Office
from tests.desk.cut_off import cramped_buttons, wide_areas


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.1 defines it."""
    parts = (QColor(colour).redF(), QColor(colour).greenF(), QColor(colour).blueF())
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio as WCAG 2.1 defines it."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("colours", [LIGHT, DARK])
def test_both_looks_give_every_role_a_colour(colours: Colours) -> None:
    """A drawing may use any ink."""
    assert set(colours.inks) == set(Ink)


@pytest.mark.parametrize("colours", [LIGHT, DARK])
@pytest.mark.parametrize("ink", [Ink.INK, Ink.FAINT, Ink.MARK, Ink.LIMIT])
@pytest.mark.parametrize("ground", [Ink.PAPER, Ink.BAND])
def test_what_is_written_can_be_read(colours: Colours, ink: Ink, ground: Ink) -> None:
    """At least 4.5 to 1, which WCAG 2.1 asks of text, on paper and on the chosen row."""
    assert contrast(colours.inks[ink], colours.inks[ground]) >= 4.5


def test_the_contrast_sum_knows_black_on_white() -> None:
    """21 to 1, the greatest there is."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)


def test_light_and_dark_are_chosen_and_reach_the_program(look: Look) -> None:
    """The ground that widgets paint on follows."""
    for scheme, colours in ((Scheme.DARK, DARK), (Scheme.LIGHT, LIGHT)):
        look.choose(scheme)
        assert QApplication.palette().window().color() == QColor(colours.inks[Ink.PAPER])
    assert not look.is_dark


def test_large_text_is_half_as_large_again(look: Look) -> None:
    """Type and lengths grow together."""
    small, length = look.type_px(Type.BODY), look.px(100)
    look.set_text(TextSize.LARGE)
    assert look.type_px(Type.BODY) == pytest.approx(small * 1.5, abs=1)
    assert look.px(100) == length * 1.5
    look.set_text(TextSize.USUAL)


def test_the_packaged_type_is_the_one_in_use(look: Look) -> None:
    """The window and the paper share a face, whose figures all have one width."""
    font = look.font()
    assert "Condensed" in font.family()


def test_nothing_is_cut_off_sideways(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office) -> None:
    """Record and form fit the width they have, in usual and in large text, and every button shows its whole word."""
    desk = open_desk(office)
    wrong: list[str] = []
    for text, *size in ((TextSize.USUAL, 1024, 700), (TextSize.LARGE, 1280, 720), (TextSize.LARGE, 1024, 700)):
        desk.look.set_text(text)
        desk.resize(*size)
        desk.pages.open_tag("HR-007")
        qtbot.waitUntil(lambda: desk.background.is_idle and desk.pages.piece is not None)
        desk.pages.inspect()
        qtbot.wait(50)  # layouts settle
        found = wide_areas(desk, hidden=True) + cramped_buttons(desk)
        if [desk.width(), desk.height()] != size:
            found.append(f"the window is {desk.width()} by {desk.height()}")
        wrong += [f"{text} {size}: {one}" for one in found]
    assert not wrong, "\n".join(wrong)
