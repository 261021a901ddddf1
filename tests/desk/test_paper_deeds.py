"""Papers from the window: a piece's record, the report on the gear, letters that call pieces in."""

from datetime import timedelta

import pytest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import papers
from inspector.desk.gear_list import chosen_bar
from inspector.desk.window import DeskWindow
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of
from inspector.gear.outcome import Outcome
from tests.desk.deed_forms import OpenForm, faults, form_of_deed, keep, write


@pytest.fixture
def form(qtbot: QtBot, desk: DeskWindow) -> OpenForm:
    """Opens the form of a deed."""
    return lambda deed, about: form_of_deed(qtbot, desk, deed, about)


def printed(office: Office) -> set[str]:
    """What lies in the out tray, by the letter of its number."""
    return {one.name[0] for one in office.out_tray.glob("*.pdf")}


def test_a_record_is_printed_from_its_menu_and_again_from_its_papers(
    qtbot: QtBot, desk: DeskWindow, office: Office, form: OpenForm
) -> None:
    desk.pages.open_tag("SH-001")
    qtbot.waitUntil(lambda: desk.background.is_idle)
    piece = desk.pages.piece
    assert piece
    form(papers.record(piece), piece)
    keep(qtbot, desk)
    assert printed(office) == {"P"}
    (made,) = papers_of(office, open_item(office, "SH-001"))
    assert made.what == "Record of the piece" and made.again
    desk.pages.record.again.emit(made.number)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.notice.isVisible()


def test_the_report_is_printed_since_a_day_and_again(
    qtbot: QtBot, desk: DeskWindow, office: Office, form: OpenForm
) -> None:
    page = form(papers.report(), None)
    write(page, since="31 Dec 2099")
    keep(qtbot, desk)
    assert "since" in faults(page) and printed(office) == set()
    write(page, since="1 Jan 2026")
    keep(qtbot, desk)
    assert printed(office) == {"Y"}


def test_the_report_stands_in_the_menu_of_the_register(qtbot: QtBot, desk: DeskWindow) -> None:
    (menu,) = [one for one in desk.menuBar().findChildren(QMenu) if one.title() == "&Register"]
    next(one for one in menu.actions() if "Report on the" in one.text()).trigger()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.deed_page.deed and desk.pages.deed_page.deed.key == "print report"


def test_chosen_pieces_are_called_in_and_held_and_what_no_letter_reaches_is_said(
    qtbot: QtBot, desk: DeskWindow, office: Office, form: OpenForm
) -> None:
    lend(office, ["SH-001"], office.officer.name, office.today + timedelta(days=30))
    desk.pages.table.asked.emit(chosen_bar.RECALL, ("SH-001", "HR-007"))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    page = desk.pages.deed_page
    assert page.deed and page.deed.key == "recall"
    keep(qtbot, desk)
    assert "why" in faults(page) and printed(office) == set()
    write(page, why="Pins were hardened wrongly.", send_to="the shed")
    keep(qtbot, desk)
    assert printed(office) == {"C"}
    said = desk.notice.text
    assert "No letter goes out for HR-007" in said
    assert open_item(office, "SH-001").verdict.outcome is Outcome.HOLD
