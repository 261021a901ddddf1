"""Every deed about a piece from the window: its form, what it refuses at which field, and what comes of it."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from inspector.desk import piece_menu
from inspector.desk.deeds import of_piece, where
from inspector.desk.form.boxes import Box
from inspector.desk.form.form_page import FormPage
from inspector.desk.form.lines import LineBox
from inspector.desk.key_map import keys_of
from inspector.desk.place import Go
from inspector.desk.window import DeskWindow
from inspector.duties.keep_draft import kept
from inspector.duties.look_up import where_is
from inspector.duties.office import Office
from tests.desk.deed_forms import begin_anew, lacks

_MAKES = [make for _, makes in of_piece.groups() for make in makes]


@pytest.fixture
def form_for(qtbot: QtBot, desk: DeskWindow) -> Callable[[of_piece.Make, str], FormPage]:
    """Opens the form of a deed about a piece."""

    def opened(make: of_piece.Make, tag: str) -> FormPage:
        desk.pages.open_tag(tag)
        qtbot.waitUntil(lambda: desk.background.is_idle)
        piece = desk.pages.piece
        assert piece and piece.tag == tag
        page, deed = desk.pages.deed_page, make(piece)
        desk.pages.show_deed(deed, of_piece.about_of(make, piece), tag)
        qtbot.waitUntil(lambda: desk.background.is_idle)
        assert desk.pages.currentWidget() is page
        return page

    return opened


def _type(box: Box, text: str) -> None:
    assert isinstance(box, LineBox)
    box.line.setText(text)


def test_the_form_of_each_deed_has_names_and_says_what_it_lacks_at_that_field_and_keeps_the_rest(
    form_for: Callable[[of_piece.Make, str], FormPage],
) -> None:
    wrong: list[str] = []
    for make in _MAKES:
        page = form_for(make, "SH-001")
        if not (page.deed and page.do_button.text()):
            wrong.append(f"{make.__name__}: no deed, or its button has no word")
        if len({box.asked.key for box in page.boxes}) != len(page.boxes):
            wrong.append(f"{make.__name__}: two fields of one key")
        wrong += [f"{make.__name__}: {lack}" for lack in lacks(page)]
        begin_anew(page)
    assert not wrong, "\n".join(wrong)
    assert len(_MAKES) >= 30


def test_a_piece_that_cannot_be_found_is_missing_once_it_was_said_where_it_was_seen(
    qtbot: QtBot, desk: DeskWindow, office: Office, form_for: Callable[[of_piece.Make, str], FormPage]
) -> None:
    page = form_for(where.missing, "SH-001")
    _type(page.box("seen_at"), "on the beach")
    page.box("why").give("not in the bag")

    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)

    assert "missing" in where_is(office, "SH-001")
    assert "SH-001 is missing." in desk.notice.text


def test_what_the_duty_refuses_stands_at_the_field_it_names(
    qtbot: QtBot, office: Office, form_for: Callable[[of_piece.Make, str], FormPage]
) -> None:
    page = form_for(where.place_it, "SH-001")
    _type(page.box("place"), "shelf 3")
    _type(page.box("on"), "2031-01-01")

    page.try_do()
    qtbot.waitUntil(lambda: bool(page.box("on").fault_text))

    assert "future" in page.box("on").fault_text
    assert page.box("place").draft == "shelf 3"


def test_a_day_that_cannot_be_read_is_said_at_once(form_for: Callable[[of_piece.Make, str], FormPage]) -> None:
    page = form_for(where.place_it, "SH-001")
    box = page.box("on")
    assert isinstance(box, LineBox)

    box.line.setText("soon")
    box.line.editingFinished.emit()

    assert "no day" in box.fault_text


def test_what_was_typed_is_set_aside_when_it_is_left_and_stands_there_again(
    qtbot: QtBot, desk: DeskWindow, form_for: Callable[[of_piece.Make, str], FormPage]
) -> None:
    page = form_for(where.missing, "SH-001")
    _type(page.box("seen_at"), "on the beach")

    desk.back()
    assert "set aside" in desk.notice.text

    assert form_for(where.missing, "SH-001").box("seen_at").draft == "on the beach"
    assert form_for(where.missing, "SH-002").box("seen_at").draft == ""


def test_a_draft_goes_once_the_deed_is_done_or_begun_anew(
    qtbot: QtBot, desk: DeskWindow, office: Office, form_for: Callable[[of_piece.Make, str], FormPage]
) -> None:
    page = form_for(where.missing, "SH-001")
    _type(page.box("seen_at"), "on the beach")
    desk.back()
    page = form_for(where.missing, "SH-001")

    page._begin_anew()
    desk.back()

    assert form_for(where.missing, "SH-001").box("seen_at").draft == ""


def test_a_closed_window_keeps_what_was_typed(
    qtbot: QtBot, desk: DeskWindow, office: Office, form_for: Callable[[of_piece.Make, str], FormPage]
) -> None:
    page = form_for(where.missing, "SH-001")
    _type(page.box("seen_at"), "on the beach")
    key = page._draft_key

    desk.close()

    draft = kept(office, key)
    assert draft and draft.values["seen_at"] == "on the beach"


def _entries(menu: QMenu) -> list[tuple[str, bool, str]]:
    found: list[tuple[str, bool, str]] = []
    for action in menu.actions():
        under = action.menu()
        assert isinstance(under, QMenu)
        found += [(one.text(), one.isEnabled(), one.toolTip()) for one in under.actions()]
    return found


def test_the_menu_of_a_piece_has_every_deed_and_says_why_one_cannot_be_done(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.open_tag("SH-001")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    menu = QMenu()
    asked: list[Go] = []
    piece = desk.pages.piece
    assert piece
    piece_menu.fill(menu, piece, asked.append)

    entries = _entries(menu)
    assert len(entries) == len(_MAKES)
    unusable = next(one for one in entries if one[0].startswith("It was made unusable"))
    assert unusable[1:] == (False, "It is not retired.")


def test_the_keys_are_told_as_the_menus_have_them(desk: DeskWindow) -> None:
    told = dict(keys_of(desk.menuBar()))
    assert told["Ctrl+S"] == "Keep what is written"
    assert told["F1"] == "Keys"
