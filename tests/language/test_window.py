"""No text of the window is missed, and none is cut off where it grows longer."""

import pytest
from pytestqt.qtbot import QtBot

from inspector.desk.place import Go
from inspector.desk.places import places
from inspector.desk.window import DeskWindow
from tests.language.conftest import KNOWN
from tests.language.shown import assert_none_missed, shown_in


def _settled(qtbot: QtBot, desk: DeskWindow) -> None:
    qtbot.waitUntil(lambda: desk.background.is_idle)
    qtbot.wait(30)  # what is built in the next turn of the window
    qtbot.waitUntil(lambda: desk.background.is_idle)


@pytest.mark.parametrize("key", [one.key for one in places()])
def test_no_text_of_a_place_is_missed(qtbot: QtBot, desk: DeskWindow, key: str) -> None:
    desk.pages.go(Go(key, None))
    _settled(qtbot, desk)

    page = desk.pages.currentWidget()
    assert page
    assert_none_missed(shown_in(page), KNOWN)


def test_no_text_around_the_places_is_missed(qtbot: QtBot, desk: DeskWindow) -> None:
    _settled(qtbot, desk)

    assert_none_missed(shown_in(desk), KNOWN)


@pytest.mark.parametrize("tag", ["SH-001", "SH-002", "HR-007"])
def test_no_text_of_a_record_and_its_form_is_missed(qtbot: QtBot, desk: DeskWindow, tag: str) -> None:
    desk.pages.open_tag(tag)
    _settled(qtbot, desk)
    assert_none_missed(shown_in(desk.pages.record), KNOWN)

    desk.pages.inspect()
    _settled(qtbot, desk)
    assert desk.pages.form
    assert_none_missed(shown_in(desk.pages.form), KNOWN)
