"""The gear page: narrowing, order, columns, several pieces at once, and rows that come only when they are looked at."""

from collections.abc import Callable
from datetime import date

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QAbstractItemModelTester, QTest
from pytestqt.qtbot import QtBot

from inspector.desk.gear_list.chosen_bar import deeds
from inspector.desk.gear_list.columns import COLUMNS, DUE, KIND, MAKER, PLACE, TAG, USE, USUAL, column_names
from inspector.desk.gear_list.listed import PAGE, Sight, listed
from inspector.desk.gear_model import GearModel
from inspector.desk.gear_table import GearTable
from inspector.desk.window import DeskWindow
from inspector.duties.destroy_item import destroy_item
from inspector.duties.gear_list import answers
from inspector.duties.office import Office
from inspector.gear.lists import Due, Exposed, GearRow, Held, Order, Owned, Wanted
from inspector.gear.outcome import Outcome

TODAY = date(2026, 11, 25)


def row(tag: str) -> GearRow:
    """A row with a tag."""
    return GearRow(tag, "bow_shackle", "Bow shackle", "", "WLL 4.75 t", "club", "shelf", Outcome.FIT, "Fit", TODAY)


def tags_of(count: int) -> tuple[str, ...]:
    """So many tags."""
    return tuple(f"T-{number:04}" for number in range(count))


def page_of(tags: tuple[str, ...], number: int) -> tuple[GearRow, ...]:
    """The rows of one page."""
    return tuple(row(tag) for tag in tags[number * PAGE : (number + 1) * PAGE])


@pytest.fixture
def table(open_desk: Callable[[Office], DeskWindow], sample: Office) -> GearTable:
    """The gear page on the sample register."""
    return open_desk(sample).pages.table


def settled(qtbot: QtBot, table: GearTable) -> None:
    """Wait until the list is read and every row in view is here."""
    qtbot.waitUntil(lambda: table._background.is_idle and not table._pause.isActive())
    shown = table.view.sight.count
    qtbot.waitUntil(lambda: all(table.model.row_at(n) for n in range(min(shown, table.model.rowCount()))))


# --- rows that come when they are looked at ---


def test_only_what_is_looked_at_is_asked_for_and_it_takes_the_place_of_dots(qtbot: QtBot) -> None:
    model, tags = GearModel(TODAY), tags_of(10 * PAGE + 3)
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Warning)
    model.show_list(tags, {0: page_of(tags, 0)}, TODAY)
    qtbot.wait(60)  # the tester looks at cells of its own
    model.show_list(tags, {0: page_of(tags, 0)}, TODAY)
    assert model.rowCount() == len(tags) and model.index(0, KIND).data() == "Bow shackle"
    far = 7 * PAGE + 5
    with qtbot.waitSignal(model.needed) as needed:
        assert model.index(far, KIND).data() == "…" and model.index(far, TAG).data() == tags[far]
    assert needed.args == [(7,)]
    model.take(7, page_of(tags, 7))
    assert model.index(far, KIND).data() == "Bow shackle"
    assert tester.model() is model


def test_a_page_that_fits_the_list_no_more_is_left_out(qtbot: QtBot) -> None:
    model, tags = GearModel(TODAY), tags_of(2 * PAGE)
    model.show_list(tags, {}, TODAY)
    model.take(1, (*page_of(tags, 1)[:-1], row("relabelled")))
    assert model.index(PAGE, KIND).data() == "…"
    model.take(9, page_of(tags, 1))
    model.take(1, page_of(tags, 1))
    assert model.index(PAGE, KIND).data() == "Bow shackle"


def test_of_pages_scrolled_past_at_speed_only_the_last_are_asked_for(qtbot: QtBot) -> None:
    model, tags = GearModel(TODAY), tags_of(40 * PAGE)
    model.show_list(tags, {}, TODAY)
    with qtbot.waitSignal(model.needed) as needed:
        for number in range(40):
            model.row_at(number * PAGE)
    assert needed.args == [(36, 37, 38, 39)]


def test_the_worker_brings_the_rows_in_sight_of_the_bar_with_the_list(sample: Office) -> None:
    everything = answers(sample, Wanted()).tags
    found = listed(sample, Wanted(), Sight(everything[90], 10, 12))
    assert [one.tag for number in found.pages for one in found.pages[number]] == list(everything[PAGE:])
    assert found.tags == everything


def test_reading_again_leaves_the_bar_on_its_piece_and_where_it_stood(qtbot: QtBot, table: GearTable) -> None:
    table.view.verticalScrollBar().setValue(40)
    table.view.choose(45)
    before = table.view.sight
    table.refresh()
    settled(qtbot, table)
    assert table.view.sight == before and before.above == 5
    assert table.model.row_at(45) is not None, "no dots where the officer looks"


# --- narrowing ---


def test_each_box_narrows_the_list_and_the_line_above_says_how(qtbot: QtBot, table: GearTable) -> None:
    settled(qtbot, table)
    table.filters.owner.choose((Owned.CLUB, ""))
    table.filter.buttons[Outcome.HOLD].click()
    settled(qtbot, table)
    count = len(answers(table._office, Wanted(outcome=Outcome.HOLD, owned=Owned.CLUB)).tags)
    assert 0 < count < 20 and table.model.rowCount() == count
    assert table._told.text().startswith(f"{count} of 116 pieces – on hold, owner club")
    table.filters.due.choose(Due.OVERDUE)
    table.filters.exposed.choose(Exposed.SALT)
    table.filters.held.choose(Held.ON_VEHICLE)
    settled(qtbot, table)
    wanted = table.wanted
    assert (wanted.due, wanted.exposed, wanted.held) == (Due.OVERDUE, Exposed.SALT, Held.ON_VEHICLE)
    assert "overdue, wetted by salt, on a vehicle" in table._told.text()


def test_one_button_shows_everything_again(qtbot: QtBot, table: GearTable) -> None:
    everything = table.model.rowCount()
    table.filters.kind.choose("bow_shackle")
    settled(qtbot, table)
    assert "Bow shackle" in table._told.text() and 0 < table.model.rowCount() < everything
    with qtbot.waitSignal(table.cleared):
        QTest.keyClick(table.clear_button, Qt.Key.Key_Space)
    settled(qtbot, table)
    assert table.model.rowCount() == everything and not table.clear_button.isVisible()


def test_a_named_owner_can_be_chosen(qtbot: QtBot, table: GearTable) -> None:
    settled(qtbot, table)
    words = [table.filters.owner.box.itemText(n) for n in range(table.filters.owner.box.count())]
    assert "Owner: Joss Ferrabel" in words and not any("Owner: Club" in one for one in words)
    table.filters.owner.box.setCurrentIndex(words.index("Owner: Joss Ferrabel"))
    settled(qtbot, table)
    assert "owner Joss Ferrabel" in table._told.text()
    rows = [table.model.row_at(number) for number in range(table.model.rowCount())]
    assert rows and {one.owner for one in rows if one} == {"Joss Ferrabel"}


def test_what_is_gone_is_counted_but_not_listed_until_it_is_asked_for(
    open_desk: Callable[[Office], DeskWindow], qtbot: QtBot, office: Office
) -> None:
    destroy_item(office, "HR-007", how="cut through")
    table = open_desk(office).pages.table
    assert "HR-007" not in table.model.tags
    assert "1 that is gone is not listed" in table._told.text()
    table.search("HR-007")
    settled(qtbot, table)
    assert table._empty.text() == "Only 1 piece that is gone answers."
    table.filters.held.choose(Held.GONE)
    settled(qtbot, table)
    assert table.model.tags == ("HR-007",)


def test_nothing_behind_the_filters_says_what_to_do(qtbot: QtBot, table: GearTable) -> None:
    table.filters.due.choose(Due.NO_DAY)
    table.filters.held.choose(Held.LOST)
    settled(qtbot, table)
    assert table._empty.text() == "No piece answers to all of this: no day due, missing or stolen."
    assert "press Esc" in table._next.text() and not table.bar.isVisible()


# --- order and columns ---


def test_a_click_on_a_head_sorts_and_another_turns_it_round(qtbot: QtBot, table: GearTable) -> None:
    head = table.view.horizontalHeader()
    place = QPoint(head.sectionViewportPosition(KIND) + 10, head.height() // 2)
    QTest.mouseClick(head.viewport(), Qt.MouseButton.LeftButton, pos=place)
    settled(qtbot, table)
    assert table.model.tags == answers(table._office, Wanted(order=Order.KIND)).tags
    assert table.model.headerData(KIND, Qt.Orientation.Horizontal) == "Kind ▲"
    role = Qt.ItemDataRole.AccessibleTextRole
    assert table.model.headerData(KIND, Qt.Orientation.Horizontal, role) == "Kind, sorted by this, first to last"
    QTest.mouseClick(head.viewport(), Qt.MouseButton.LeftButton, pos=place)
    settled(qtbot, table)
    assert table.model.headerData(KIND, Qt.Orientation.Horizontal) == "Kind ▼"
    assert table.model.tags == answers(table._office, Wanted(order=Order.KIND, falling=True)).tags
    assert len(table.view.chosen) == 1, "a click on a head chooses no piece"


def test_the_keyboard_sorts_too(qtbot: QtBot, table: GearTable) -> None:
    QTest.keyClick(table.order.box, Qt.Key.Key_Down)
    QTest.keyClick(table.sorting.turn, Qt.Key.Key_Space)
    settled(qtbot, table)
    assert list(table.model.tags) == sorted(table.model.tags, reverse=True)


def test_columns_are_chosen_from_a_menu_and_told(qtbot: QtBot, table: GearTable) -> None:
    assert table.columns == USUAL and table.view.isColumnHidden(MAKER)
    with qtbot.waitSignal(table.columns_chosen) as told:
        table.sorting._actions["maker"].trigger()
    assert told.args == [(*USUAL, "maker")] and table.columns == told.args[0]
    assert not table.view.isColumnHidden(MAKER)
    with qtbot.assertNotEmitted(table.columns_chosen):
        table.choose_columns(("use", "nonsense"))
    assert table.columns == ("tag", "verdict", "use")
    assert [n for n in range(len(COLUMNS)) if not table.view.isColumnHidden(n)] == [TAG, 2, USE]


def test_every_column_has_a_name_and_every_order_a_word(qapp: object, table: GearTable) -> None:
    assert len(column_names()) == len(COLUMNS)
    assert {one for one in Order if table.order.has(one)} == set(Order)


# --- several at once ---


def test_shift_and_arrows_choose_several_and_a_button_asks_for_a_deed(qtbot: QtBot, table: GearTable) -> None:
    table.view.choose(0)
    table.view.setFocus()
    for _ in range(2):
        QTest.keyClick(table.view, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    assert table.bar.told.text() == "3 chosen"
    with qtbot.waitSignal(table.asked) as asked:
        QTest.keyClick(table.bar.buttons["hold"], Qt.Key.Key_Space)
    assert asked.args == ["hold", table.model.tags[:3]]
    assert [one.key for one in deeds()] == list(table.bar.buttons)


def test_the_space_bar_adds_a_row_and_takes_it_away(qtbot: QtBot, table: GearTable) -> None:
    table.view.choose(0)
    for _ in range(3):
        QTest.keyClick(table.view, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(table.view, Qt.Key.Key_Space)
    assert table.view.chosen == (table.model.tags[0], table.model.tags[3])
    QTest.keyClick(table.view, Qt.Key.Key_Space)
    assert table.view.chosen == table.model.tags[:1]


def test_all_are_chosen_with_the_rows_that_nobody_has_looked_at(qtbot: QtBot, table: GearTable) -> None:
    QTest.keyClick(table.view, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    assert table.view.chosen == table.model.tags
    assert table.bar.told.text() == f"{len(table.model.tags)} chosen"


def test_chosen_pieces_stay_chosen_when_the_list_is_read_again_and_are_let_go_when_it_hides_them(
    qtbot: QtBot, table: GearTable
) -> None:
    table.view.choose(0)
    table.view.choose_also([2, 5])
    chosen = table.view.chosen
    table.refresh()
    settled(qtbot, table)
    assert table.view.chosen == chosen
    table.search(chosen[2])
    settled(qtbot, table)
    assert set(table.view.chosen) <= set(table.model.tags), "no deed may reach a piece that is not seen"


def test_chosen_rows_are_copied_with_tabs_between(qtbot: QtBot, table: GearTable) -> None:
    table.view.choose(0)
    table.view.choose_also([1])
    QGuiApplication.clipboard().setText("")
    QTest.keyClick(table.view, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: bool(QGuiApplication.clipboard().text()))
    lines = [line.split("\t") for line in QGuiApplication.clipboard().text().splitlines()]
    assert lines[0] == list(column_names()[: PLACE + 1])
    assert [line[0] for line in lines[1:]] == list(table.model.tags[:2])
    assert lines[1][DUE] == table.model.index(0, DUE).data()


def test_a_letter_typed_on_a_box_begins_a_search(qtbot: QtBot, table: GearTable) -> None:
    with qtbot.waitSignal(table.typed) as typed:
        QTest.keyClick(table.filters.kind.box, Qt.Key.Key_B)
    assert typed.args == ["b"] and table.filters.kind.value == ""


def test_an_answer_that_comes_late_is_read_anew_and_the_last_question_counts(qtbot: QtBot, table: GearTable) -> None:
    for text in ("s", "sh", "sh-0", "sh-04"):
        table.search(text)
        table._read()
    settled(qtbot, table)
    assert table.model.tags == answers(table._office, Wanted("sh-04")).tags


def test_every_control_has_a_name(table: GearTable) -> None:
    named = [*(box for box in table.filters._boxes()), table.order.box, table.sorting.turn, table.clear_button]
    named += [table.sorting.columns_button, *table.bar.buttons.values(), table.view]
    assert all(one.accessibleName() for one in named)
