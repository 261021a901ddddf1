"""The count in the window: scanned, ticked by keys, undone, typed in from paper, and closed after a look ahead."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton, QTableView, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.form.boxes import Box
from inspector.desk.form.lines import LineBox
from inspector.desk.place import Go
from inspector.desk.places import STOCK
from inspector.desk.stock.counting import Counting
from inspector.desk.stock.stock_page import StockPage
from inspector.desk.window import DeskWindow
from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import fit_part
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import where_is
from inspector.duties.office import Office
from inspector.duties.print_count import print_count
from inspector.duties.take_stock import begin_count, count_states, left, mark
from inspector.duties.tell_count import closed_told, count_told
from inspector.duties.whereabouts import report_missing
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.person import Person
from inspector.gear.stock_take import Counted
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.desk.conftest import shackle, tube

WAYS = {"mark back": Counted.UNKNOWN, "not there": Counted.ABSENT, "seen": Counted.PRESENT}


@pytest.fixture
def counted(office: Office) -> Office:
    """Five pieces in store, two of them at another place, and an open count of everything."""
    for tag in ("SH-003", "SH-004"):
        book_in(office, replace(shackle(tag), place="Shed, hook 2"))
    begin_count(office, "2026-11")
    return office


@pytest.fixture
def page(qtbot: QtBot, counted: Office, open_desk: Callable[[Office], DeskWindow]) -> tuple[DeskWindow, StockPage]:
    """The window on the open count."""
    desk = open_desk(counted)
    desk.pages.go(Go(STOCK, "2026-11"))
    idle(qtbot, desk)
    found = desk.pages.currentWidget()
    assert isinstance(found, StockPage)
    return desk, found


def idle(qtbot: QtBot, desk: DeskWindow) -> None:
    """Wait until nothing is under way."""
    qtbot.waitUntil(lambda: desk.background.is_idle)


def scan(qtbot: QtBot, desk: DeskWindow, counting: Counting, tag: str) -> str:
    """Scan a tag as a scanner does, and the answer."""
    QTest.keyClicks(counting.scan, tag)
    QTest.keyClick(counting.scan, Qt.Key.Key_Return)
    idle(qtbot, desk)
    return counting.answer.text


def press(inside: QWidget, name: str) -> None:
    """Press the button with this accessible name."""
    found = [one for one in inside.findChildren(QPushButton) if one.accessibleName() == name]
    assert len(found) == 1, [one.accessibleName() for one in inside.findChildren(QPushButton)]
    QTest.mouseClick(found[0], Qt.MouseButton.LeftButton)


def give(box: Box, text: str) -> None:
    """Write into a field."""
    assert isinstance(box, LineBox)
    box.line.setText(text)


def texts(inside: QWidget) -> str:
    """All that labels and buttons say there."""
    labels = [one.text() for one in inside.findChildren(QLabel) if not one.isHidden()]
    return "\n".join([*labels, *(one.text() for one in inside.findChildren(QPushButton))])


def marks(office: Office) -> dict[str, Counted]:
    """What is marked how in the count."""
    return {one.tag: one.counted for one in count_told(office, "2026-11").pieces}


def test_ctrl_6_opens_the_counts_and_an_empty_list_says_what_to_do(
    qtbot: QtBot, office: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(office)

    QTest.keyClick(desk, Qt.Key.Key_6, Qt.KeyboardModifier.ControlModifier)
    idle(qtbot, desk)

    found = desk.pages.currentWidget()
    assert isinstance(found, StockPage)
    assert "Begin a count of everything, of one place or of a vehicle" in texts(found)


def test_the_scan_line_has_the_keys_and_a_scan_marks_at_once_and_tells_how_far_the_count_is(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    assert stock.counting.scan.hasFocus()

    answer = scan(qtbot, desk, stock.counting, "sh-003")

    assert answer == "SH-003 seen, 1 of 5"
    assert marks(counted)["SH-003"] is Counted.PRESENT
    assert stock.counting.scan.text() == ""
    assert stock.counting.scan.hasFocus()


def test_scans_that_come_faster_than_the_register_writes_are_all_marked_in_their_order(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    for tag in ("SH-001", "SH-002", "SH-003", "SH-004"):
        QTest.keyClicks(stock.counting.scan, tag)
        QTest.keyClick(stock.counting.scan, Qt.Key.Key_Return)
    idle(qtbot, desk)

    assert stock.counting.answer.text == "SH-004 seen, 4 of 5"
    assert [one.tag for one, _ in left(counted, "2026-11")] == ["HR-007"]


def test_a_label_nobody_knows_is_kept_and_said_and_undone_again(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page

    answer = scan(qtbot, desk, stock.counting, "CLUB 4")

    assert "CLUB 4: no piece has this label" in answer
    assert "kept with the count" in answer
    assert count_told(counted, "2026-11").labels == ("CLUB 4",)
    assert "no piece has these labels: CLUB 4" in texts(stock)

    press(stock, "Undo the mark of CLUB 4")
    idle(qtbot, desk)
    assert count_told(counted, "2026-11").labels == ()


def test_what_cannot_be_counted_says_why_and_stays_to_be_read_after_the_next_scan(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    add_person(counted, Person("", "Ned Borrower", ""))
    lend(counted, ("SH-001",), "Ned Borrower", date(2026, 12, 1))

    answer = scan(qtbot, desk, stock.counting, "SH-001")
    assert "SH-001 is NOT counted" in answer
    assert "on loan to Ned Borrower" in answer
    assert marks(counted)["SH-001"] is Counted.UNKNOWN

    scan(qtbot, desk, stock.counting, "SH-002")
    assert "SH-001 is NOT counted" in stock.counting.answer.earlier.text()


def test_a_piece_made_unusable_that_turns_up_is_to_be_kept_apart(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    destroy_item(counted, "HR-007", "cut in two", None, "")

    answer = scan(qtbot, desk, stock.counting, "HR-007")

    assert "HR-007: It was recorded as made unusable. Keep it apart" in answer


@pytest.mark.parametrize("way", ["not there", "mark back"])
def test_the_switch_marks_what_is_scanned_and_says_so_as_long_as_it_stands(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office, way: str
) -> None:
    desk, stock = page
    scan(qtbot, desk, stock.counting, "SH-003")

    press(stock, f"Mark as: {way}")
    assert stock.counting.scan.hasFocus()
    assert {"not there": "NOT THERE", "mark back": "taken back"}[way] in texts(stock.counting.how)
    scan(qtbot, desk, stock.counting, "SH-003")

    assert marks(counted)["SH-003"] is WAYS[way]


def test_a_piece_that_lies_elsewhere_is_marked_there_with_its_note(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    QTest.keyClicks(stock.counting.how.place, "Trailer, bay 2")
    QTest.keyClicks(stock.counting.how.note, "pin missing")
    QTest.keyClick(stock.counting.how.note, Qt.Key.Key_Return)
    assert stock.counting.scan.hasFocus()
    assert "marked as seen now lies at Trailer, bay 2, until that line is emptied" in texts(stock.counting.how)

    scan(qtbot, desk, stock.counting, "SH-003")

    piece = count_told(counted, "2026-11").piece("SH-003")
    assert piece
    assert (piece.seen_at, piece.note) == ("Trailer, bay 2", "pin missing")


def test_a_place_that_cannot_be_one_is_said_at_its_line_and_nothing_is_marked(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    stock.counting.how.place.setText("Trailer " * 60)

    answer = scan(qtbot, desk, stock.counting, "SH-003")

    assert "SH-003 is NOT counted" in answer
    assert stock.counting.how.place.is_faulty
    assert marks(counted)["SH-003"] is Counted.UNKNOWN


def test_a_fitted_part_is_marked_on_its_vehicle_from_the_list_of_what_is_elsewhere(
    qtbot: QtBot, counted: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    add_vehicle(counted, "V1", "wagon", "club", read("3200 kg", Dimension.MASS, field="mass"), None)
    begin = book_in(counted, replace(tube("HR-008"), place=""))
    fit_part(counted, begin.dossier.item.tag, Fitted("V1", End.REAR, Side.MIDDLE))
    mark(counted, "2026-11", ["HR-008"], place="V1")
    desk = open_desk(counted)
    desk.pages.go(Go(STOCK, "2026-11"))
    idle(qtbot, desk)
    stock = desk.pages.currentWidget()
    assert isinstance(stock, StockPage)
    QTest.mouseClick(stock.counting.filters[3], Qt.MouseButton.LeftButton)
    assert [(one.tag, one.place) for one in stock.counting.model.pieces] == [("HR-008", "on vehicle V1")]

    QTest.keyClick(stock.counting.view, Qt.Key.Key_Space)
    idle(qtbot, desk)
    assert "mark it at V1" in stock.counting.answer.text

    QTest.keyClicks(stock.counting.how.place, "V1")
    QTest.keyClick(stock.counting.view, Qt.Key.Key_Space)
    idle(qtbot, desk)
    assert "HR-008 seen, and not among the 5 looked for" in stock.counting.answer.text


def test_every_control_of_the_count_has_a_name(page: tuple[DeskWindow, StockPage]) -> None:
    every = [*page[1].findChildren(QPushButton), *page[1].findChildren(QLineEdit), *page[1].findChildren(QTableView)]

    assert len(every) > 12
    assert [one for one in every if not one.accessibleName()] == []


def test_the_last_mark_is_undone_and_its_piece_is_not_looked_for_again(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    assert not stock.counting.undo_button.isEnabled()
    scan(qtbot, desk, stock.counting, "SH-003")
    scan(qtbot, desk, stock.counting, "SH-004")

    press(stock, "Undo the mark of SH-004")
    idle(qtbot, desk)

    assert marks(counted)["SH-004"] is Counted.UNKNOWN
    assert marks(counted)["SH-003"] is Counted.PRESENT
    assert "SH-004: the mark is taken back, 1 of 5 seen" in stock.counting.answer.text


def test_what_is_left_stands_by_place_and_is_ticked_by_keys(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    counting = stock.counting
    places = [one.place for one in counting.model.pieces]
    assert places == ["Shed, hook 2", "Shed, hook 2", "shelf 2", "shelf 2", "vehicle 2"]
    assert [counting.model.index(row, 0).data() for row in range(3)] == ["Shed, hook 2", "", "shelf 2"]

    QTest.keyClick(counting.scan, Qt.Key.Key_Down)
    assert counting.view.hasFocus()
    first, second = (one.tag for one in counting.model.pieces[:2])
    QTest.keyClick(counting.view, Qt.Key.Key_Space)
    idle(qtbot, desk)
    QTest.keyClick(counting.view, Qt.Key.Key_Delete)
    idle(qtbot, desk)

    assert marks(counted)[first] is Counted.PRESENT
    assert marks(counted)[second] is Counted.ABSENT
    assert len(counting.model.pieces) == 3
    assert counting.view.hasFocus()


def test_a_letter_in_the_list_belongs_to_the_scan_line_and_return_opens_the_record(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage]
) -> None:
    desk, stock = page
    counting = stock.counting
    QTest.keyClick(counting.scan, Qt.Key.Key_Down)
    QTest.keyClicks(counting.view, "S")
    assert counting.scan.text() == "S"
    assert counting.scan.hasFocus()

    QTest.keyClick(counting.scan, Qt.Key.Key_Down)
    tag = counting.model.pieces[0].tag
    QTest.keyClick(counting.view, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert desk.pages.piece
    assert desk.pages.piece.tag == tag


def test_the_other_lists_tell_what_was_seen_and_an_empty_one_says_what_to_do(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage]
) -> None:
    desk, stock = page
    scan(qtbot, desk, stock.counting, "SH-003")

    QTest.mouseClick(stock.counting.filters[1], Qt.MouseButton.LeftButton)
    assert [one.tag for one in stock.counting.model.pieces] == ["SH-003"]
    assert stock.counting.filters[1].text() == "Seen (1)"

    QTest.mouseClick(stock.counting.filters[2], Qt.MouseButton.LeftButton)
    assert not stock.counting.view.isVisible()
    assert "Nothing is marked as not there" in texts(stock)


def test_the_model_of_the_list_holds(page: tuple[DeskWindow, StockPage], counted: Office) -> None:
    model = page[1].counting.model
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Warning)
    pieces = count_told(counted, "2026-11").pieces
    model.show_pieces(pieces[:2])
    assert model.rowCount() == 2
    model.show_pieces(pieces)
    assert model.rowCount() == 5
    assert tester.model() is model  # what it finds is logged as a warning, and a warning fails the test


def test_tags_of_a_file_are_marked_and_its_unknown_ones_told(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office, tmp_path: Path
) -> None:
    desk, stock = page
    file = tmp_path / "scanned.txt"
    file.write_text("SH-001 SH-002\nNOBODY-1\n", encoding="utf-8")
    press(stock, "Mark the tags of a file")
    idle(qtbot, desk)
    form = desk.pages.deed_page
    form.box("file").give(str(file))

    form.try_do()
    qtbot.waitUntil(lambda: desk.pages.currentWidget() is stock)
    idle(qtbot, desk)

    assert "2 pieces are marked" in desk.notice.text
    assert "NOBODY-1" in desk.notice.text
    assert len(left(counted, "2026-11")) == 3
    assert stock.counting.filters[1].text() == "Seen (2)"


def test_the_list_is_printed_and_typed_in_and_a_line_that_is_not_on_it_is_said_at_its_field(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    press(stock, "Print list to tick")
    idle(qtbot, desk)
    assert "is printed" in desk.notice.text
    press(stock, "Type a ticked list in")
    idle(qtbot, desk)
    form = desk.pages.deed_page
    assert form.box("number").draft == print_count(counted, "2026-11").path.stem

    give(form.box("present"), "1-2")
    give(form.box("absent"), "99")
    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("absent").fault_text))
    assert form.box("present").draft == "1-2"

    give(form.box("absent"), "3")
    form.try_do()
    qtbot.waitUntil(lambda: desk.pages.currentWidget() is stock)
    assert list(marks(counted).values()).count(Counted.PRESENT) == 2
    assert list(marks(counted).values()).count(Counted.ABSENT) == 1


def test_closing_shows_first_what_it_writes_and_escape_goes_back_to_the_count(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    report_missing(counted, "SH-002", "the beach", "not in the bag")
    mark(counted, "2026-11", ["SH-001"])
    mark(counted, "2026-11", ["SH-002"], place="shelf 2")
    mark(counted, "2026-11", ["SH-003"], Counted.ABSENT)
    mark(counted, "2026-11", ["SH-004"], place="Trailer")

    press(stock, "Close the count")
    idle(qtbot, desk)

    said = texts(stock)
    assert "Missing from now on (1)" in said
    assert "Found again, held until inspected (1)" in said
    assert "Lies at another place than before (1)" in said
    assert "NOT SEEN, nobody looked; it stays where the register has it (1)" in said
    assert count_states(counted)[0].closed is None

    QTest.keyClick(desk, Qt.Key.Key_Escape)
    assert stock.is_counting
    assert stock.counting.scan.hasFocus()


def test_the_answer_that_loses_nothing_has_the_keys_and_closing_writes_what_was_shown(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    mark(counted, "2026-11", ["SH-003"], Counted.ABSENT)
    stock.preview_close("2026-11")
    idle(qtbot, desk)
    focused = desk.focusWidget()
    assert isinstance(focused, QPushButton)
    assert focused.text() == "Go on counting"

    closing = stock._closing.widget()
    assert closing
    press(closing, "Close the count")
    idle(qtbot, desk)

    assert count_states(counted)[0].closed == counted.today
    assert "missing" in where_is(counted, "SH-003")
    assert "The count 2026-11 is closed" in texts(stock)
    press(stock._closing, "Open SH-003")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)


def test_a_closed_count_tells_what_its_close_wrote(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage], counted: Office
) -> None:
    desk, stock = page
    mark(counted, "2026-11", ["SH-001"])
    mark(counted, "2026-11", ["SH-003"], Counted.ABSENT)
    stock.close_count("2026-11")
    idle(qtbot, desk)
    report_missing(counted, "SH-001", "the beach", "lost since")

    desk.pages.go(Go(STOCK))
    idle(qtbot, desk)
    press(stock, "Open the count 2026-11")
    idle(qtbot, desk)

    said = texts(stock)
    assert "1 piece was seen." in said
    assert "Missing from now on (1)" in said
    assert "NOT SEEN, nobody looked; it stays where the register has it (3)" in said


def test_a_count_is_begun_in_a_form_and_opened(
    qtbot: QtBot, office: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(office)
    desk.pages.go(Go(STOCK))
    idle(qtbot, desk)
    stock = desk.pages.currentWidget()
    assert isinstance(stock, StockPage)
    press(stock, "Begin a count")
    idle(qtbot, desk)
    form = desk.pages.deed_page
    give(form.box("ref"), "shelf")
    give(form.box("place"), "shelf 2")

    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("place").fault_text))
    form.box("scope").give("one place")
    form.try_do()
    qtbot.waitUntil(lambda: desk.pages.currentWidget() is stock)
    idle(qtbot, desk)

    assert count_states(office)[0].scope == "shelf 2"
    assert stock.is_counting
    assert stock.counting.scan.hasFocus()


def test_a_second_count_of_the_same_pieces_is_refused_at_its_field(
    qtbot: QtBot, page: tuple[DeskWindow, StockPage]
) -> None:
    desk, stock = page
    stock.begin_count()
    idle(qtbot, desk)
    form = desk.pages.deed_page
    give(form.box("ref"), "2026-11")

    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("ref").fault_text))
    assert "called 2026-11 already" in form.box("ref").fault_text

    give(form.box("ref"), "second")
    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("place").fault_text))
    assert "The count 2026-11 is open" in form.box("place").fault_text


def test_what_a_count_is_closed_against_is_refused_where_it_is_open(counted: Office) -> None:
    with pytest.raises(Refused, match="not closed yet"):
        closed_told(counted, "2026-11")
