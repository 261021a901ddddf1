"""The page of a trip: ready or not at once, who can bring out whom, and what is begun from there."""

from collections.abc import Callable
from threading import Event

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QFontMetrics
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk import trip_page
from inspector.desk.background import Background
from inspector.desk.look import Type
from inspector.desk.pair_model import up_to_words
from inspector.desk.trip_page import TripPage
from inspector.desk.window import DeskWindow
from inspector.duties.look_up import trip
from inspector.duties.office import Office
from inspector.duties.plan_rides import plan_rides
from inspector.duties.trip_readiness import readiness
from inspector.duties.work_rigs import pair_trip
from inspector.refused import Refused
from tests.desk.cut_off import SIZES, cramped_buttons, wide_areas, wrong_at
from tests.desk.outing import beach as beach
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_names import controls
from tests.duties.returned import kept

Opener = Callable[[Office], DeskWindow]


@pytest.fixture
def desk(open_desk: Opener, beach: Office) -> DeskWindow:
    """The window on the register of the beach trip."""
    return open_desk(beach)


@pytest.fixture
def page(qtbot: QtBot, desk: DeskWindow) -> TripPage:
    """The page with its pairs worked out."""
    return to_trip(qtbot, desk)


def to_trip(qtbot: QtBot, desk: DeskWindow) -> TripPage:
    """Ctrl+J."""
    QTest.keyClick(focused(), Qt.Key.Key_J, Qt.KeyboardModifier.ControlModifier)
    settle(qtbot, desk)
    return desk.pages.trip


def settle(qtbot: QtBot, desk: DeskWindow) -> None:
    """Until nothing is under way."""
    qtbot.waitUntil(lambda: desk.background.is_idle)


def pressed(page: QWidget, text: str) -> None:
    """Press the button with this text."""
    made = next(one for one in page.findChildren(QPushButton) if one.isVisible() and one.text() == text)
    QTest.mouseClick(made, Qt.MouseButton.LeftButton)


def test_ctrl_j_shows_the_next_trip_and_whether_it_is_ready(page: TripPage, beach: Office) -> None:
    """Name, place, what goes and stays, and why."""
    told, ready = shown_texts(page), readiness(beach, "T-1")
    assert page.trip and page.trip.trip.ref == "T-1"
    assert len(ready.going) == 3 and [one.dossier.item.tag for one in ready.staying] == ["SH-3"]
    for text in ("Beach days", "the spit, 28 Nov 2026, beach", "3", "pieces of the kit go", "piece stays at home"):
        assert text in told
    assert ready.staying[0].explanation.reasons[0].sentence in told
    assert "wagon V-1" in told and "front left · Recovery point · Fit" in told


def test_what_the_kit_lacks_by_need_is_told(page: TripPage) -> None:
    """No spare strap, no damper."""
    told = shown_texts(page)
    assert "Missing in the kit" in told and "A spare kinetic strap." in told and "Laying over the line" in told


def test_each_pair_stands_in_the_table_as_the_deed_told_it(qtbot: QtBot, page: TripPage, beach: Office) -> None:
    """Word, speed and sentence, for eyes and for a screen reader."""
    lines = pair_trip(beach, "T-1").lines
    view = page.pair_part.views[0]
    model = view.model()
    assert len(lines) == 2 and (model.rowCount(), model.columnCount()) == (2, 2)
    for line in lines:
        view.choose(line)
        assert view.line == line
        says = line.says
        qtbot.waitUntil(lambda says=says: says in shown_texts(page))  # type: ignore[misc]
        spoken = view.currentIndex().data(Qt.ItemDataRole.AccessibleTextRole)
        assert spoken.startswith(f"{line.pulling} pulls {line.bogged} by strap:")
        assert ("up to" in spoken) == (line.up_to_m_per_s is not None)
    assert model.index(0, 0).data() == ""
    view.setCurrentIndex(model.index(1, 1))
    qtbot.waitUntil(lambda: "V-2 does not pull itself." in shown_texts(page))
    assert lines[0].says not in shown_texts(page) and lines[1].says not in shown_texts(page)


def test_no_word_of_a_pair_is_wider_than_its_cell(page: TripPage, beach: Office) -> None:
    """However many vehicles share the width."""
    view = page.pair_part.views[0]
    view.setFixedWidth(300)
    metrics = QFontMetrics(page.window().look.font(Type.SMALL))  # type: ignore[attr-defined]
    words = [up_to_words(line, beach.system) for line in pair_trip(beach, "T-1").lines]
    assert any(words)
    for text in words:
        assert view.columnWidth(0) >= metrics.horizontalAdvance(text) + 36


def test_return_goes_from_the_choice_to_the_pairs_and_opens_a_rig(qtbot: QtBot, page: TripPage) -> None:
    """By keys alone."""
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    view = page.pair_part.views[0]
    assert focused() is view
    QTest.keyClick(view, Qt.Key.Key_Down)
    QTest.keyClick(view, Qt.Key.Key_Left)
    with qtbot.waitSignal(page.rig) as asked:
        QTest.keyClick(view, Qt.Key.Key_Return)
    assert asked.args
    ask = asked.args[0]
    assert (ask.trip, ask.pulling, ask.bogged) == ("T-1", "V-2", "V-1")


def test_a_trip_that_is_over_can_be_looked_at(qtbot: QtBot, page: TripPage, desk: DeskWindow) -> None:
    """It stands last, says so, and offers no check and no sheet."""
    assert page.choice
    assert page.choice.box.itemText(1).endswith("(over)")
    page.choice.box.setCurrentIndex(1)
    settle(qtbot, desk)
    assert "The trip is over; every piece is judged for today." in shown_texts(page)
    buttons = {one.text() for one in page.findChildren(QPushButton) if one.isVisible()}
    assert not {"Check the kit", "Print sheet", "Propose a kit"} & buttons


def test_a_kit_is_proposed_and_taken(qtbot: QtBot, page: TripPage, desk: DeskWindow, beach: Office) -> None:
    """What for, what is lacking, what stays; Esc leaves it; taking it changes the trip."""
    page.propose_kit()
    settle(qtbot, desk)
    told = shown_texts(page)
    assert page.is_kit_shown and "Kinetic pull with V-1, V-2 as the lighter vehicle" in told
    assert "The store lacks" in told and "No longer taken: SH-3." in told
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert not page.is_kit_shown and trip(beach, "T-1").kit == ("KS-1", "SH-1", "SH-2", "SH-3")
    page.propose_kit()
    settle(qtbot, desk)
    pressed(page, "Make this the kit")
    settle(qtbot, desk)
    assert set(trip(beach, "T-1").kit) == {"KS-1", "SH-1", "SH-2"}
    assert not page.is_kit_shown and "The kit is 3 pieces now." in desk.notice.text


def test_a_tag_opens_its_record_and_escape_comes_back(qtbot: QtBot, page: TripPage, desk: DeskWindow) -> None:
    """Pressed or scanned."""
    pressed(page, "SH-3")
    settle(qtbot, desk)
    assert desk.pages.record.opened and desk.pages.record.opened.tag == "SH-3"
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert desk.pages.currentWidget() is page
    for sign in "KS-1":
        QTest.keyClicks(focused(), sign)
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    settle(qtbot, desk)
    assert desk.pages.piece is not None
    assert desk.pages.piece.tag == "KS-1"


def test_a_tag_scanned_on_the_choice_of_trips_chooses_no_trip(qtbot: QtBot, page: TripPage, desk: DeskWindow) -> None:
    """The box leaves letters and figures to the search."""
    assert page.choice
    page.choice.box.setFocus()
    for sign in "2SH-1":
        QTest.keyClicks(focused(), sign)
    assert desk.search.text() == "2SH-1" and page.choice.value == "T-1"


def test_the_check_begins_with_the_trip_shown(qtbot: QtBot, page: TripPage, desk: DeskWindow) -> None:
    """Not with whichever is next."""
    pressed(page, "Check the kit")
    settle(qtbot, desk)
    start = desk.pages.trailhead.start
    assert desk.pages.currentWidget() is desk.pages.trailhead
    assert start.trip and start.trip.value.ref == "T-1"


def which_sheet(desk: DeskWindow, words: str) -> None:
    """Choose a sheet in the menu below the button."""
    menu = desk.printing.sheets
    next(one for one in menu.actions() if one.text() == words).trigger()
    menu.close()
    desk.activateWindow()  # as a real screen does by itself


def test_the_sheet_of_the_trip_is_printed(qtbot: QtBot, page: TripPage, desk: DeskWindow) -> None:
    """Without asking which trip."""
    pressed(page, "Print sheet")
    which_sheet(desk, "The whole trip on one sheet")
    settle(qtbot, desk)
    assert "Trip sheet of Beach days is printed." in desk.notice.text


def test_one_sheet_for_each_vehicle_is_printed_and_each_can_be_looked_at(
    qtbot: QtBot, page: TripPage, desk: DeskWindow, beach: Office
) -> None:
    """Two vehicles, and a kit that rides on none by plan."""
    pressed(page, "Print sheet")
    which_sheet(desk, "One sheet for each vehicle")
    settle(qtbot, desk)
    papers = sorted(beach.out_tray.glob("S-*.pdf"))
    assert len(papers) == 3 and "The sheets of Beach days are printed." in desk.notice.text
    assert all(str(one) in desk.notice.text for one in papers)
    pressed(page, "Print sheet")
    which_sheet(desk, "Vehicle V-2")
    settle(qtbot, desk)
    (fourth,) = set(beach.out_tray.glob("S-*.pdf")) - set(papers)
    assert kept(beach, fourth.stem).scope.vehicle == "V-2"


def test_the_kit_says_where_each_piece_rides(qtbot: QtBot, open_desk: Opener, beach: Office) -> None:
    """Planned, or where it lies now."""
    plan_rides(beach, "T-1", {"SH-1": "V-2"})
    desk = open_desk(beach)
    page = to_trip(qtbot, desk)
    settle(qtbot, desk)
    next(one for one in page.findChildren(QToolButton) if "Goes (3)" in one.text()).click()
    told = shown_texts(page)
    assert "Rides on V-2." in told and told.count("Not planned where it rides.") == 2


def test_without_a_trip_the_page_says_what_to_do(qtbot: QtBot, open_desk: Opener, empty_office: Office) -> None:
    """No empty panel."""
    page = to_trip(qtbot, open_desk(empty_office))
    told = shown_texts(page)
    assert "No trip is planned yet." in told and "Plan one with its vehicles" in told
    assert isinstance(focused(), QPushButton)


def test_one_vehicle_makes_no_pair(qtbot: QtBot, open_desk: Opener, one_trip: Office) -> None:
    """Said, with what to do."""
    page = to_trip(qtbot, open_desk(one_trip))
    qtbot.waitUntil(lambda: "fewer than two vehicles" in shown_texts(page))
    assert "No part is written down for it" in shown_texts(page)


def test_progress_is_told_and_the_work_can_be_stopped(
    qtbot: QtBot, desk: DeskWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Step by step, in the window's thread; stopped, it can be begun again."""
    go_on = Event()

    def slow(office: Office, ref: str) -> None:
        office.told(3, 8)
        assert go_on.wait(5)
        office.told(4, 8)
        raise AssertionError("it went on though it was stopped")

    monkeypatch.setattr(trip_page, "pair_trip", slow)
    QTest.keyClick(focused(), Qt.Key.Key_J, Qt.KeyboardModifier.ControlModifier)
    page = desk.pages.trip
    qtbot.waitUntil(lambda: "3 of 8 pairs worked out…" in shown_texts(page))
    pressed(page, "Stop")
    go_on.set()
    settle(qtbot, desk)
    assert "It was stopped before it was done." in shown_texts(page)
    monkeypatch.undo()
    pressed(page, "Work them out")
    settle(qtbot, desk)
    assert len(page.pair_part.views) == 1


def test_closing_stops_what_takes_long(qtbot: QtBot) -> None:
    """Closing waits for the next step only."""
    background = Background()
    progress = background.progress()
    background.close()
    with pytest.raises(Refused):
        progress.told(1, 2)


def test_every_control_has_a_name(page: TripPage) -> None:
    """For whoever cannot see the page."""
    found = list(controls(QAccessible.queryAccessibleInterface(page)))
    assert len(found) > 5
    assert [type(one.object()).__name__ for one in found if not one.text(QAccessible.Text.Name)] == []


def test_nothing_is_cut_off_sideways(qtbot: QtBot, page: TripPage, desk: DeskWindow) -> None:
    """And every button a finger may press is 48 pixels high."""

    def found() -> list[str]:
        return wide_areas(page, hidden=True) + cramped_buttons(page, least_px=48)

    wrong = wrong_at(qtbot, SIZES, desk, found)
    assert not wrong, "\n".join(wrong)
