"""The look: light and dark from the same roles, readable, and nothing cut off in large text."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtGui import QColor, QGuiApplication
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import delete

from inspector.desk.look import DARK, LIGHT, Colours, Look, Scheme, TextSize, Type
from inspector.desk.place import Go
from inspector.desk.places import places
from inspector.desk.window import DeskWindow
from inspector.drawings.shapes import Ink
from inspector.duties.office import Office
from tests.desk.cut_off import cramped_buttons, wide_areas, wrong_at


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

    def begin() -> None:
        desk.pages.open_tag("HR-007")
        qtbot.waitUntil(lambda: desk.background.is_idle and desk.pages.piece is not None)
        desk.pages.inspect()

    def found() -> list[str]:
        return wide_areas(desk, hidden=True) + cramped_buttons(desk)

    sizes = ((TextSize.USUAL, 1024, 700), (TextSize.LARGE, 1280, 720), (TextSize.LARGE, 1024, 700))
    wrong = wrong_at(qtbot, sizes, desk, found, begin)
    assert not wrong, "\n".join(wrong)


def test_pictures_are_painted_as_dense_as_the_densest_screen(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Screen:
        def __init__(self, ratio: float) -> None:
            self._ratio = ratio

        def devicePixelRatio(self) -> float:  # noqa: N802
            return self._ratio

    found = []
    for ratios in ((1.0,), (1.0, 1.5), (2.0, 1.0), ()):
        monkeypatch.setattr(QGuiApplication, "screens", lambda ratios=ratios: [Screen(one) for one in ratios])
        found.append(tuple(Look.densities()))
    assert found == [(1,), (1, 2), (1, 2), (1,)]


def test_a_screen_that_is_plugged_in_has_all_pictures_painted_anew(qapp: QApplication, qtbot: QtBot) -> None:
    before = qapp.receivers("2screenAdded(QScreen*)")
    look = Look()
    assert qapp.receivers("2screenAdded(QScreen*)") == before + 1
    with qtbot.waitSignal(look.changed, timeout=1000):
        look._screen_added(qapp.primaryScreen())


def test_a_part_that_is_gone_is_not_fitted_any_more(qapp: QApplication, look: Look) -> None:
    """A window gives way to another one under the same look, and its parts with it."""
    gone, here = QLabel("gone"), QLabel("here")
    look.fit(gone, QWidget.setMaximumWidth, 100)
    look.fit(here, QWidget.setMinimumWidth, 200)
    assert (gone.maximumWidth(), here.minimumWidth()) == (100, 200)
    gone.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    look.set_text(TextSize.LARGE)
    assert here.minimumWidth() == look.px(200) > 200


def test_a_part_may_outlive_the_look(qtbot: QtBot) -> None:
    """As the program ends, in whatever order; what is raised fails this test."""
    look, part = Look(), QLabel("here")
    qtbot.addWidget(part)
    look.fit(part, QWidget.setMinimumWidth, 200)
    delete(look)
    part.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.mark.parametrize("key", [one.key for one in places()])
def test_the_pages_of_a_window_that_is_gone_hear_of_no_new_look(
    qtbot: QtBot, office: Office, look: Look, key: str
) -> None:
    """As the next one at the desk makes the text larger; what an ear of theirs raises fails this test."""
    desk = DeskWindow(office, look)
    desk.show()
    desk.go(Go(key))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    desk.close_for_good()
    desk.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    look.set_text(TextSize.LARGE)


def test_each_window_wears_the_look_and_the_program_none(qapp: QApplication, look: Look) -> None:
    """What lies in no window yet is not dressed at each step of being put together."""
    one, other, gone = QWidget(), QWidget(), QWidget()
    for window in (one, other, gone):
        look.dress(window)
    gone.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    look.choose(Scheme.DARK)
    dark = one.styleSheet()
    look.choose(Scheme.LIGHT)
    assert qapp.styleSheet() == ""
    assert one.styleSheet() == other.styleSheet() != dark
    assert DARK.field in dark and LIGHT.field in one.styleSheet()
