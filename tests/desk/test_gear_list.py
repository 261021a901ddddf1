"""The gear list: a sound model, a search that finds, empty states that say what to do."""

from collections.abc import Callable
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from pytestqt.qtbot import QtBot

from inspector.desk.gear_list.columns import DUE, OWNER, TAG, VERDICT
from inspector.desk.gear_list.listed import Listed
from inspector.desk.gear_model import GearModel, outcome_at
from inspector.desk.look import TextSize
from inspector.desk.window import DeskWindow
from inspector.duties.look_up import RegisterFacts
from inspector.duties.office import Office
from inspector.gear.lists import GearRow, Order, Wanted
from inspector.gear.outcome import Outcome

TODAY = date(2026, 11, 25)


def row(tag: str, outcome: Outcome | None, due: date | None) -> GearRow:
    """A row with a tag, an outcome and a day."""
    return GearRow(tag, "bow_shackle", "Bow shackle", "", "WLL 4.75 t", "club", "shelf", outcome, "Hold: why", due)


def listed(model: GearModel, *rows: GearRow) -> None:
    """Show a short list whose rows are all here."""
    model.show_list(tuple(one.tag for one in rows), {0: rows} if rows else {}, TODAY)


def tags(desk: DeskWindow) -> list[str]:
    """The tags shown, in their order."""
    return list(desk.pages.table.model.tags)


def test_the_model_holds_together_under_qts_own_tester(qapp: object) -> None:
    """Any complaint of the tester fails this test by itself."""
    model = GearModel(TODAY)
    tester = QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Warning)
    listed(model, row("A", Outcome.FIT, TODAY), row("B", None, None))
    listed(model)
    assert tester.model() is model
    assert model.rowCount() == 0


def test_an_overdue_piece_says_so_and_an_outcome_comes_with_its_word(qapp: object) -> None:
    """No colour alone tells anything."""
    model = GearModel(TODAY)
    listed(model, row("A", Outcome.HOLD, date(2026, 6, 3)), row("B", None, None))
    assert model.index(0, DUE).data() == "3 Jun 2026, overdue"
    assert model.index(1, DUE).data() == "–"
    assert model.index(0, VERDICT).data() == "Hold"
    assert outcome_at(model.index(0, VERDICT)) is Outcome.HOLD
    assert outcome_at(model.index(1, VERDICT)) is None


def test_typing_finds_pieces_while_one_types(qtbot: QtBot, desk: DeskWindow) -> None:
    """No key but the letters is needed."""
    assert len(tags(desk)) == 3
    QTest.keyClicks(desk.search, "hitch")
    qtbot.waitUntil(lambda: tags(desk) == ["HR-007"])


def test_a_tag_and_enter_opens_the_piece_at_once(qtbot: QtBot, desk: DeskWindow) -> None:
    """As a scanner does it: letters and Return in one burst, before any list has come."""
    QTest.keyClicks(desk.search, "sh-002")
    QTest.keyClick(desk.search, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert desk.pages.piece and desk.pages.piece.tag == "SH-002"
    assert desk.search.text() == ""


def test_a_word_and_enter_goes_to_what_was_found(qtbot: QtBot, desk: DeskWindow) -> None:
    """A word that is no tag leads to the rows, and Return there opens the piece."""
    QTest.keyClicks(desk.search, "receiver")
    QTest.keyClick(desk.search, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: tags(desk) == ["HR-007"] and desk.pages.table.view.hasFocus())
    qtbot.waitUntil(lambda: desk.background.is_idle)
    QTest.keyClick(desk.pages.table.view, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)


def test_a_letter_typed_on_the_list_begins_a_search(qtbot: QtBot, desk: DeskWindow) -> None:
    """Wherever the bar stands, a scanned tag lands in the search line."""
    desk.pages.table.view.setFocus()
    QTest.keyClicks(desk.pages.table.view, "s")
    assert desk.search.text() == "s"
    assert desk.search.hasFocus()


def test_choosing_an_outcome_shows_only_its_pieces(qtbot: QtBot, desk: DeskWindow) -> None:
    """The choices carry their counts; the list follows."""
    retired = desk.pages.table.filter.buttons[Outcome.RETIRE]
    assert retired.text().split() == ["Retire", "1"]
    QTest.mouseClick(retired, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: tags(desk) == ["HR-007"])


def test_the_order_can_be_chosen(qtbot: QtBot, desk: DeskWindow) -> None:
    """Next due first, by tag, worst first."""
    assert tags(desk) == ["SH-002", "SH-001", "HR-007"]
    desk.pages.table.order.choose(Order.TAG)
    qtbot.waitUntil(lambda: tags(desk) == ["HR-007", "SH-001", "SH-002"])
    desk.pages.table.order.choose(Order.WORST)
    qtbot.waitUntil(lambda: tags(desk) == ["HR-007", "SH-002", "SH-001"])


@pytest.mark.parametrize(
    ("search", "outcome", "why", "next_step"),
    [
        ("zzz", None, "No piece answers to “zzz”.", "press Esc to see all 3 pieces"),
        ("", Outcome.DERATE, "No piece here is derated.", "Choose “All”"),
    ],
)
def test_where_nothing_is_found_it_says_why_and_what_to_do(
    qtbot: QtBot, desk: DeskWindow, search: str, outcome: Outcome | None, why: str, next_step: str
) -> None:
    """An empty list is never just empty."""
    table = desk.pages.table
    QTest.keyClicks(desk.search, search)
    table.filter.buttons[outcome].click()
    qtbot.waitUntil(lambda: not tags(desk) and desk.background.is_idle)
    assert table._empty.text() == why
    assert next_step in table._next.text()
    assert table._empty.isVisible()


def test_escape_shows_every_piece_again(qtbot: QtBot, desk: DeskWindow) -> None:
    """One key undoes search and choice."""
    QTest.keyClicks(desk.search, "zzz")
    qtbot.waitUntil(lambda: not tags(desk))
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: len(tags(desk)) == 3)
    assert desk.search.text() == ""


def test_an_empty_register_says_how_to_begin(open_desk: Callable[[Office], DeskWindow], empty_office: Office) -> None:
    """The first evening."""
    table = open_desk(empty_office).pages.table
    assert "no gear yet" in table._empty.text()
    assert "Ctrl+N" in table._next.text()


def test_the_reason_behind_the_chosen_row_stands_below_the_list(qtbot: QtBot, desk: DeskWindow) -> None:
    """Moving the bar tells why, without opening anything."""
    view = desk.pages.table.view
    view.choose(desk.pages.table.model.row_of("HR-007"))
    assert desk.pages.table._foot.text().startswith("HR-007   Retire")


def test_columns_yield_where_the_window_is_narrow_but_never_the_verdict(qtbot: QtBot, desk: DeskWindow) -> None:
    """Large text in a small window: what yields is in the record."""
    view = desk.pages.table.view
    desk.resize(1280, 720)
    assert not view.isColumnHidden(OWNER)
    desk.look.set_text(TextSize.LARGE)
    desk.resize(1024, 700)
    qtbot.waitUntil(lambda: view.isColumnHidden(OWNER))
    assert not any(view.isColumnHidden(column) for column in (TAG, VERDICT, DUE))
    desk.look.set_text(TextSize.USUAL)


def test_the_status_line_tells_what_the_register_holds(desk: DeskWindow) -> None:
    """Pieces, who is at the desk, the rulebook, the day."""
    told = desk.status.facts.text()
    assert "3 pieces" in told
    assert "First officer" in told
    assert "25 Nov 2026" in told


def test_an_answer_to_an_older_search_is_not_shown(desk: DeskWindow) -> None:
    """Answers may come in any order; only the one to what is asked now counts."""
    table = desk.pages.table
    table._show(Listed(Wanted("something else"), (), {}, {}, RegisterFacts("", 3)))
    assert len(tags(desk)) == 3
    table._show(Listed(table.wanted, (), {}, {}, RegisterFacts("", 3)))
    assert tags(desk) == []
