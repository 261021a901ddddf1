"""No text of the window is missed, and none is cut off where it grows longer."""

import pytest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.place import Go
from inspector.desk.places import places
from inspector.desk.window import DeskWindow
from tests.desk.cut_off import cut_off
from tests.language.conftest import KNOWN
from tests.language.shown import assert_none_missed, shown_in


def settled(qtbot: QtBot, desk: DeskWindow) -> None:
    qtbot.waitUntil(lambda: desk.background.is_idle)
    qtbot.wait(30)  # what is built in the next turn of the window
    qtbot.waitUntil(lambda: desk.background.is_idle and getattr(desk.pages.currentWidget(), "is_whole", True))
    qtbot.wait(30)  # the last part finds its height in the turn after


def test_no_text_of_any_place_is_missed(qtbot: QtBot, desk: DeskWindow) -> None:
    told: list[tuple[str, str]] = []
    for entry in places():
        desk.pages.go(Go(entry.key, None))
        settled(qtbot, desk)
        page = desk.pages.currentWidget()
        assert page
        told += [(f"{entry.key}: {where}", text) for where, text in shown_in(page)]
    assert len(told) > 500
    assert_none_missed(told, KNOWN)


def test_no_text_around_the_places_is_missed(qtbot: QtBot, desk: DeskWindow) -> None:
    settled(qtbot, desk)

    assert_none_missed(shown_in(desk), KNOWN)


@pytest.mark.parametrize("tag", ["SH-001", "SH-002", "HR-007"])
def test_no_text_of_a_record_and_its_form_is_missed(qtbot: QtBot, desk: DeskWindow, tag: str) -> None:
    desk.pages.open_tag(tag)
    settled(qtbot, desk)
    assert_none_missed(shown_in(desk.pages.record), KNOWN)

    desk.pages.inspect()
    settled(qtbot, desk)
    assert desk.pages.form
    assert_none_missed(shown_in(desk.pages.form), KNOWN)


def test_nothing_is_cut_off_where_every_text_is_a_third_longer(qtbot: QtBot, desk: DeskWindow) -> None:
    """At 1280 by 720 pixels no page is wider than its place, and no button and no line of text is cut off."""
    desk.resize(1280, 720)
    cut: dict[str, list[str]] = {}
    for entry in places():
        desk.pages.go(Go(entry.key, None))
        settled(qtbot, desk)
        page = desk.pages.currentWidget()
        assert page
        cut[entry.key] = cut_off(page)

    assert (desk.width(), desk.height()) == (1280, 720)
    assert {key: found for key, found in cut.items() if found} == {}


def test_a_text_that_is_cut_off_would_be_found(qtbot: QtBot) -> None:
    page = QWidget()
    qtbot.addWidget(page)
    label = QLabel("A text that is far longer than its place", page)
    label.setFixedWidth(20)
    page.show()

    assert cut_off(page) == ["A text that is far longer than its place (QWidget: 20)"]
