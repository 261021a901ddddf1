"""A trip sheet that came back on paper: found by its number, typed in by keys, kept whole or not at all."""

from collections.abc import Callable

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk.place import Go
from inspector.desk.places import RETURNED
from inspector.desk.returned.returned_page import ReturnedPage
from inspector.desk.returned.sheet_form import SheetForm
from inspector.desk.window import DeskWindow
from inspector.duties.check_kit import kit_check
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from tests.desk.outing import beach as beach
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_trip_page import settle


@pytest.fixture
def number(beach: Office) -> str:
    """The number of the printed sheet of T-1."""
    return enter_trip_sheet(beach, "T-1").imprint.number


@pytest.fixture
def desk(open_desk: Callable[[Office], DeskWindow], beach: Office) -> DeskWindow:
    """The window."""
    return open_desk(beach)


@pytest.fixture
def page(qtbot: QtBot, desk: DeskWindow) -> ReturnedPage:
    """The page."""
    desk.pages.go(Go(RETURNED))
    settle(qtbot, desk)
    shown = desk.pages.currentWidget()
    assert isinstance(shown, ReturnedPage)
    return shown


def typed_number(qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, number: str) -> None:
    """The number, then Return."""
    QTest.keyClicks(page.number, number)
    QTest.keyClick(page.number, Qt.Key.Key_Return)
    settle(qtbot, desk)


@pytest.fixture
def form(qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, number: str) -> SheetForm:
    """The sheet."""
    typed_number(qtbot, desk, page, number.lower())
    assert page.form
    return page.form


def signed(form: SheetForm, beach: Office) -> None:
    """Who looked, and when."""
    form.by.choose(people(beach)[0])
    form.day.setText("today")


def test_a_number_that_no_sheet_has_is_told_and_stays(qtbot: QtBot, desk: DeskWindow, page: ReturnedPage) -> None:
    typed_number(qtbot, desk, page, "S-0000-9999")
    assert "No trip has a sheet" in page.number.fault.text() and page.number.text() == "S-0000-9999"


def test_the_pieces_come_in_the_order_of_the_paper_and_nothing_is_answered(
    form: SheetForm, beach: Office, number: str
) -> None:
    kit = [one for one in kit_check(beach, "T-1").pieces if one.goes]
    tags = [block.piece.tag for block in form.blocks]
    assert tags == [one.tag for one in kit] and "SH-3" not in tags
    assert all(check.asks in shown_texts(form) for one in kit for check in one.asked) and not form.is_written


def test_a_sheet_is_typed_in_by_keys_and_kept_at_once(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, form: SheetForm, beach: Office, number: str
) -> None:
    signed(form, beach)
    form.blocks[0].rows[0].setFocus()
    for _ in form.blocks[0].rows:
        QTest.keyClick(focused(), Qt.Key.Key_1)
    form.blocks[1].rows[0].setFocus()
    QTest.keyClick(focused(), Qt.Key.Key_3)
    form.blocks[1].all_good.click()
    assert form.blocks[1].rows[0].grade is Grade.BAD, "what is graded stays"
    form.keep_button.click()
    settle(qtbot, desk)
    assert page.form is None and "2 pieces were checked" in desk.notice.text
    for piece in form.sheet.pieces[:2]:
        assert open_item(beach, piece.tag).dossier.inspections[-1].facts.sheet == number
    assert open_item(beach, form.sheet.pieces[1].tag).verdict.outcome in {Outcome.HOLD, Outcome.RETIRE}
    assert open_item(beach, form.sheet.pieces[2].tag).dossier.inspections[-1].facts.sheet == ""


def test_nothing_is_kept_without_a_name_a_day_and_an_answer(form: SheetForm, beach: Office) -> None:
    form.try_keep()
    assert "Choose who looked" in form.by_fault.text() and focused() is form.by.box
    form.by.choose(people(beach)[0])
    form.try_keep()
    assert form.day.is_faulty and focused() is form.day
    form.day.setText("today")
    form.try_keep()
    assert "Nothing of the sheet is typed in yet." in form.fault.text()


def test_one_fault_keeps_the_whole_sheet_back_and_is_told_at_its_piece(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, form: SheetForm, beach: Office
) -> None:
    signed(form, beach)
    at, gone = next((at, one.piece.tag) for at, one in enumerate(form.blocks) if at and not one.piece.part_of)
    for block in form.blocks:
        block.take_all_good()
    change_trip(beach, "T-1", lambda one: replace(one, kit=tuple(tag for tag in one.kit if tag != gone)), "left")
    form.try_keep()
    settle(qtbot, desk)
    assert page.form is form and "not in the kit" in form.blocks[at].fault.text()
    assert form.blocks[0].is_written
    assert open_item(beach, form.blocks[0].piece.tag).dossier.inspections[-1].facts.sheet == ""
