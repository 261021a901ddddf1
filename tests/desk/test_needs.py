"""The first page: ten seconds for the officer's evening, each line a way, by keys and by the mouse."""

from collections.abc import Callable
from datetime import datetime, timedelta

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QToolButton, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.look import TextSize
from inspector.desk.needs import needs_page
from inspector.desk.needs.needs_page import NeedsPage
from inspector.desk.needs.retire_chart import RetireChart
from inspector.desk.place import Go
from inspector.drawings.retire_line import ending_words
from inspector.duties.back_up import back_up
from inspector.duties.book_in import book_in
from inspector.duties.give_opinion import doubt
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.what_needs_me import what_needs_me
from inspector.gear.needs import Needs
from inspector.refused import Refused
from tests.desk.conftest import looked_at, shackle
from tests.desk.cut_off import settled
from tests.desk.needs_pages import Open, Stand, named, settle
from tests.desk.needs_pages import needs_on as needs_on
from tests.desk.outing import beach as beach
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_names import unnamed


def page_of(stand: Stand) -> NeedsPage:
    """The page itself."""
    assert isinstance(stand.page, NeedsPage)
    return stand.page


def test_counts_stand_large_each_hold_tells_itself_and_the_rest_is_behind_a_fold_with_its_count(
    qtbot: QtBot, needs_on: Open, sample: Office
) -> None:
    stand, needs = needs_on(sample), what_needs_me(sample)
    told = shown_texts(stand).split("\n")
    for count, words in (
        (len(needs.held), "pieces are on hold"),
        (needs.overdue_count, "things are overdue or missing"),
        (len(needs.retired), "retired pieces are not unusable yet"),
    ):
        assert told[told.index(words) - 1] == str(count)
    first = needs.held[0]
    assert _has(stand, f"{first.kind_name} · Hold") and _has(stand, first.why)
    assert first.release and _has(stand, f"To settle it: {first.release}.")
    rest = len(needs.held) - 6
    assert rest > 0 and _has(stand, needs.held[5].why) and not _tag_shown(stand, needs.held[-1].tag)
    fold = next(
        one for one in stand.findChildren(QToolButton) if one.isVisible() and one.text().endswith(f"{rest} more")
    )
    fold.setFocus()
    QTest.keyClick(fold, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: _tag_shown(stand, needs.held[-1].tag))
    unfold(stand)
    assert [one.tag for one in needs.held if not _tag_shown(stand, one.tag)] == []


def _has(stand: Stand, text: str) -> bool:
    return text in shown_texts(stand)


def _tag_shown(stand: Stand, tag: str) -> bool:
    names = (one.accessibleName() for one in stand.findChildren(QPushButton) if one.isVisible())
    return f"Open {tag}" in names


def unfold(stand: Stand) -> None:
    """Open every fold, those within folds too."""
    while closed := [one for one in stand.findChildren(QToolButton) if one.isVisible() and not one.isChecked()]:
        for one in closed:
            one.setChecked(True)


def test_return_on_a_line_opens_its_piece_and_the_keys_come_back_to_it(
    qtbot: QtBot, needs_on: Open, sample: Office
) -> None:
    stand = needs_on(sample)
    tag = what_needs_me(sample).held[2].tag
    line = named(stand, f"Open {tag}")
    line.setFocus()
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert stand.left == [("opened", tag)]
    chart_of(stand).setFocus()
    again(qtbot, stand)
    assert focused() is line, "nothing changed, so the page stays as it is"
    doubt(sample, "SH-01", "it fell from the roof")
    again(qtbot, stand)
    assert focused().accessibleName() == f"Open {tag}" and focused() is not line


def test_the_trip_leads_to_itself_notices_are_asked_for_and_a_letter_goes_to_the_search_wherever_the_keys_are(
    needs_on: Open, sample: Office
) -> None:
    stand, needs = needs_on(sample), what_needs_me(sample)
    trip, tags = needs.trip, needs.without_notice
    QTest.keyClicks(focused(), "h")
    chart_of(stand).setFocus()
    QTest.keyClicks(chart_of(stand), "7")
    assert stand.left == [("typed", "h"), ("typed", "7")]
    assert trip and _has(stand, "It is not ready yet.") and _has(stand, "in 3 days")
    QTest.mouseClick(named(stand, f"Open {trip.name}"), Qt.MouseButton.LeftButton)
    assert stand.left[2:] == [("go", Go("trip", trip.ref))]
    QTest.keyClick(named(stand, f"Print the notice of {tags[0]}"), Qt.Key.Key_Space)
    QTest.keyClick(named(stand, f"Print the {len(tags)} notices not yet printed"), Qt.Key.Key_Space)
    assert len(tags) > 3 and stand.left[3:] == [("notice", tags[0]), ("notices", tags)]


def test_no_copy_is_said_then_its_day_then_what_was_written_since(
    qtbot: QtBot,
    needs_on: Open,
    beach: Office,
) -> None:
    stand = needs_on(beach)
    assert _has(stand, "No copy of this register was ever made.")
    QTest.keyClick(named(stand, "Back up the register"), Qt.Key.Key_Return)
    assert stand.left == [("go", Go("register"))]
    back_up(beach)
    again(qtbot, stand)
    assert _has(stand, "The last copy is of 25 Nov 2026.") and _has(stand, "Nothing was written since.")
    doubt(beach, "SH-1", "it fell from the roof")
    again(qtbot, stand)
    assert _has(stand, "1 deed was written since: it is in no copy.")
    assert _tag_shown(stand, "SH-1")


def again(qtbot: QtBot, stand: Stand) -> None:
    """Read anew."""
    page_of(stand).begin()
    settle(qtbot, stand)


def chart_of(stand: Stand) -> RetireChart:
    """The time line."""
    return next(one for one in stand.findChildren(RetireChart) if one.isVisible())


def test_the_arrows_and_pointing_tell_each_forecast_end_return_and_pressing_open_it(
    needs_on: Open, sample: Office
) -> None:
    stand, ends = needs_on(sample), what_needs_me(sample).endings
    chart = chart_of(stand)
    chart.setFocus()
    assert len(ends) > 3 and chart.told.text() == ending_words(ends[0]) == chart.accessibleDescription()
    QTest.keyClick(chart, Qt.Key.Key_Down)
    assert chart.told.text() == ending_words(ends[1])
    QTest.keyClick(chart, Qt.Key.Key_End)
    QTest.keyClick(chart, Qt.Key.Key_Down)
    assert chart.told.text() == ending_words(ends[min(len(ends), 10) - 1])
    QTest.keyClick(chart, Qt.Key.Key_Home)
    QTest.keyClick(chart, Qt.Key.Key_Return)
    assert stand.left == [("opened", ends[0].tag)]
    places = {chart.row_at(QPoint(300, y).toPointF()): QPoint(300, y) for y in range(0, chart.height(), 4)}
    for row in (1, 0):
        assert chart.tells(places[row].toPointF()) == ending_words(ends[row])
        QTest.mouseClick(chart, Qt.MouseButton.LeftButton, pos=places[row])
    QTest.mouseClick(chart, Qt.MouseButton.LeftButton, pos=places[None])
    assert stand.left[1:] == [("opened", ends[1].tag), ("opened", ends[0].tag)]


def test_an_empty_register_says_what_to_do_first(needs_on: Open, empty_office: Office) -> None:
    stand = needs_on(empty_office)
    assert _has(stand, "There is no gear in the register yet.")
    QTest.keyClick(named(stand, "Book in a piece"), Qt.Key.Key_Return)
    QTest.keyClick(named(stand, "People"), Qt.Key.Key_Return)
    assert stand.left == [("go", Go("book")), ("go", Go("people"))]


def test_where_nothing_waits_it_says_so_and_when_the_next_thing_falls_due(
    needs_on: Open, one_quiet_piece: Office
) -> None:
    stand, line = needs_on(one_quiet_piece), what_needs_me(one_quiet_piece).next_due
    assert line and line.on and _has(stand, "Nothing needs you this evening.")
    assert f"Next, on {line.on.day} " in shown_texts(stand) and "SH-001" in shown_texts(stand)


@pytest.fixture
def one_quiet_piece(empty_office: Office) -> Office:
    """A register whose only piece is fit."""
    book_in(empty_office, shackle("SH-001"))
    record_inspection(empty_office, "SH-001", looked_at(empty_office, "SH-001", "bow_shackle", empty_office.today))
    return empty_office


def test_an_answer_to_an_older_question_is_dropped(
    qtbot: QtBot,
    needs_on: Open,
    beach: Office,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    stand = needs_on(beach)
    page = page_of(stand)
    old = page.needs
    answers: list[Callable[[Needs], object]] = []
    monkeypatch.setattr(stand.background, "run", lambda *_given, done, **_other: answers.append(done))
    page.begin()
    page.begin()
    assert old
    answers[1](replace(old, club="The newer answer"))
    answers[0](replace(old, club="The older answer"))
    qtbot.wait(20)
    assert page.needs and page.needs.club == "The newer answer" and "The newer answer" in shown_texts(stand)


def test_a_register_that_cannot_be_read_is_told_and_can_be_looked_at_again(
    qtbot: QtBot,
    needs_on: Open,
    beach: Office,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refuses(_office: Office) -> Needs:
        raise Refused("register", "Another window is writing to it.", "Wait a moment.")

    monkeypatch.setattr(needs_page, "what_needs_me", refuses)
    stand = needs_on(beach)
    assert "Another window is writing to it." in stand.notice.text and page_of(stand).needs is None
    monkeypatch.undo()
    QTest.keyClick(named(stand, "Look again"), Qt.Key.Key_Return)
    settle(qtbot, stand)
    assert _tag_shown(stand, "SH-3")


def test_every_control_has_a_name_and_no_word_is_cut_off(qtbot: QtBot, needs_on: Open, sample: Office) -> None:
    stand = needs_on(sample)
    unfold(stand)
    for text, size in ((TextSize.USUAL, (1280, 720)), (TextSize.USUAL, (960, 600)), (TextSize.LARGE, (1280, 720))):
        page_of(stand)._ways.look.set_text(text)
        stand.resize(*size)
        assert settled(qtbot, lambda: unnamed(stand) + cut_off(stand)) == []


def cut_off(widget: QWidget) -> list[str]:
    """Labels and buttons that are narrower or lower than their words need."""
    found = []
    for label in widget.findChildren(QLabel):
        if label.isVisible() and label.text():
            needs = label.heightForWidth(label.width()) if label.wordWrap() else label.sizeHint().height()
            narrow = not label.wordWrap() and label.width() < label.sizeHint().width()
            if label.height() < needs or narrow:
                found.append(label.text())
    buttons = (one for one in widget.findChildren(QPushButton) if one.isVisible())
    return found + [one.text() for one in buttons if one.width() < one.sizeHint().width()]


def test_the_test_for_cut_off_words_can_fail(qtbot: QtBot) -> None:
    label = QLabel("A long sentence in one line")
    qtbot.addWidget(label)
    label.show()
    label.resize(20, label.height())
    assert cut_off(_parent_of(label, qtbot)) == ["A long sentence in one line"]


def _parent_of(label: QLabel, qtbot: QtBot) -> QWidget:
    parent = QWidget()
    qtbot.addWidget(parent)
    label.setParent(parent)
    parent.show()
    label.show()
    return parent


def test_the_window_is_not_held_up_while_it_reads(qtbot: QtBot, needs_on: Open, sample: Office) -> None:
    """The page is asked for, and events go on before the answer is there."""
    stand = needs_on(sample)
    page_of(stand).begin()
    assert not stand.background.is_idle
    QApplication.processEvents()
    settle(qtbot, stand)
    assert page_of(stand).needs


def test_a_day_later_the_page_tells_that_day(qtbot: QtBot, needs_on: Open, sample: Office) -> None:
    later = sample.at(datetime.combine(sample.today + timedelta(days=1), datetime.min.time(), sample.now.tzinfo))
    assert _has(needs_on(later), "26 Nov 2026")
