"""A run through many pieces from the keyboard: after each save the next one waits at its first check."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.background import Background
from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.inspect.run import InspectRun
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.duties.book_in import book_in
from inspector.duties.keep_draft import drafts
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger
from inspector.gear.outcome import Outcome
from tests.desk.conftest import shackle

TAGS = ("SH-001", "SH-002", "SH-003")


@pytest.fixture
def run(qtbot: QtBot, look: Look, office: Office) -> Iterator[InspectRun]:
    """A run through three shackles, in a window with its strip for messages."""
    book_in(office, shackle("SH-003"))
    window, notice = QWidget(), Notice()
    background = Background(window)
    made = InspectRun(office, background, notice, look)
    layout = QVBoxLayout(window)
    layout.addWidget(notice)
    layout.addWidget(made, 1)
    qtbot.addWidget(window)
    window.resize(1280, 720)
    look.dress(window)
    window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    made.begin(TAGS)
    yield made
    background.close()


def go_away(run: InspectRun, then: Callable[[], object]) -> None:
    """Leave as the window does: where something is written, it asks first."""
    if found := run.unsaved:
        choices = (found.keep_word, found.keep), (found.drop_word, lambda: found.drop(then))
        run._notice.ask(found.head, found.text, *choices)
    else:
        then()


def form_for(qtbot: QtBot, run: InspectRun, tag: str) -> InspectForm:
    """The form of this piece, once it is shown with the keys at its first check."""
    qtbot.waitUntil(lambda: run.form is not None and run.form.tag == tag and run.form.rows[0].hasFocus())
    assert run.form
    return run.form


def grade_all(form: InspectForm, key: str = "1") -> None:
    """The same key at every check: it goes on by itself."""
    for row in form.rows:
        QTest.keyClicks(row, key)


def measure(form: InspectForm) -> None:
    """Both diameters, as they were typed last time, so that nothing is out of the ordinary."""
    for box, text in zip(form.boxes, ("18.9 mm", "21.9 mm"), strict=False):
        QTest.keyClicks(box.fields[0], text)


def press_skip(run: InspectRun, key: Qt.Key = Qt.Key.Key_PageDown) -> None:
    """Ctrl with PageDown or PageUp, pressed where the keys are."""
    assert run.form
    QTest.keyClick(run.form.rows[0], key, Qt.KeyboardModifier.ControlModifier)


def notice_button(run: InspectRun, text: str) -> QPushButton:
    """A button of the strip."""
    return next(one for one in run._notice.findChildren(QPushButton) if one.text() == text)


def test_after_a_save_the_next_piece_waits_at_its_first_check(qtbot: QtBot, run: InspectRun, office: Office) -> None:
    for number, tag in enumerate(TAGS, 1):
        form = form_for(qtbot, run, tag)
        assert run.place.text() == f"{number} of 3  ·  {tag}"
        grade_all(form)
        measure(form)
        QTest.keyClick(form.save_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: run.pages.currentWidget() is run.summary)
    assert run.summary._head.text() == "3 of 3 pieces inspected"
    assert set(run.run.outcomes) == set(TAGS) and run.bar.value() == 3
    assert all(len(open_item(office, tag).dossier.inspections) >= 1 for tag in TAGS)
    assert run.summary.done_button.hasFocus() and run.summary.again_button.isHidden()
    with qtbot.waitSignal(run.leave):
        QTest.keyClick(run.summary.done_button, Qt.Key.Key_Space)


def test_a_piece_that_is_skipped_stays_in_the_list(qtbot: QtBot, run: InspectRun) -> None:
    form_for(qtbot, run, "SH-001")
    press_skip(run)
    form_for(qtbot, run, "SH-002")
    press_skip(run, Qt.Key.Key_PageUp)
    form_for(qtbot, run, "SH-001")
    assert not run.back_button.isEnabled()
    for tag in ("SH-002", "SH-003"):
        press_skip(run)
        form_for(qtbot, run, tag)
    press_skip(run)
    assert run.pages.currentWidget() is run.summary
    told = [label.text() for label in run.summary.findChildren(QLabel)]
    assert "0 of 3 pieces inspected" in told
    assert "3 pieces are not inspected: SH-001, SH-002, SH-003." in told
    QTest.keyClick(run.summary.again_button, Qt.Key.Key_Space)
    form_for(qtbot, run, "SH-001")


def test_what_is_written_in_a_skipped_piece_is_there_again(qtbot: QtBot, run: InspectRun, office: Office) -> None:
    form = form_for(qtbot, run, "SH-001")
    QTest.keyClicks(form.rows[0], "1")
    press_skip(run)
    form_for(qtbot, run, "SH-002")
    assert run.unsaved and run.written == ("SH-001",)
    assert [one.key for one in drafts(office)] == ["inspect SH-001"], "a skipped form is kept as a draft at once"
    press_skip(run, Qt.Key.Key_PageUp)
    qtbot.waitUntil(lambda: run.form is form)
    assert form.rows[0].grade is not None


def test_the_end_of_a_run_tells_what_is_written_and_asks_before_it_is_lost(
    qtbot: QtBot, run: InspectRun, office: Office
) -> None:
    form = form_for(qtbot, run, "SH-001")
    QTest.keyClicks(form.rows[0], "1")
    QTest.mouseClick(
        next(one for one in run.findChildren(QPushButton) if one.text() == "End the run"), Qt.MouseButton.LeftButton
    )
    told = [label.text() for label in run.summary.findChildren(QLabel)]
    assert "Written and not saved: SH-001." in told
    left: list[bool] = []
    run.leave.connect(lambda: go_away(run, lambda: left.append(True)))
    QTest.keyClick(run.summary.done_button, Qt.Key.Key_Space)
    assert run._notice.is_asking
    QTest.keyClick(notice_button(run, "Keep writing"), Qt.Key.Key_Space)
    assert run.form is form and form.rows[0].grade is not None
    QTest.mouseClick(
        next(one for one in run.findChildren(QPushButton) if one.text() == "End the run"), Qt.MouseButton.LeftButton
    )
    QTest.keyClick(run.summary.done_button, Qt.Key.Key_Space)
    QTest.keyClick(notice_button(run, "Throw it away"), Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: left == [True])
    assert drafts(office) == ()


def test_the_summary_tells_each_outcome_and_opens_the_record(qtbot: QtBot, run: InspectRun) -> None:
    form = form_for(qtbot, run, "SH-001")
    QTest.keyClicks(next(row for row in form.rows if row.check.key == "cracks"), "3")
    form.try_save()
    form_for(qtbot, run, "SH-002")
    assert "SH-001 is kept. Retire" in run.told.text()
    QTest.mouseClick(
        next(one for one in run.findChildren(QPushButton) if one.text() == "End the run"), Qt.MouseButton.LeftButton
    )
    assert run.run.outcomes["SH-001"].verdict.outcome is Outcome.RETIRE
    line = next(one for one in run.summary.findChildren(QPushButton) if one.text() == "SH-001")
    with qtbot.waitSignal(run.opened) as asked:
        line.click()
    assert asked.args == ["SH-001"]
    assert run.back(), "from the summary one step back goes to what was left out"
    form_for(qtbot, run, "SH-002")


def test_leaving_asks_where_something_is_written_and_tells_the_ledger(
    qtbot: QtBot, run: InspectRun, office: Office
) -> None:
    left: list[bool] = []
    form = form_for(qtbot, run, "SH-001")
    go_away(run, lambda: left.append(True))
    assert left == [True] and not run._notice.is_asking
    run.begin(TAGS)
    form = form_for(qtbot, run, "SH-001")
    QTest.keyClicks(next(row for row in form.rows if row.check.key == "cracks"), "3")
    form.look_ahead()
    go_away(run, lambda: left.append(True))
    assert run._notice.is_asking and "SH-001" in run._notice.text
    QTest.keyClick(notice_button(run, "Keep writing"), Qt.Key.Key_Space)
    assert left == [True] and run.form is form
    go_away(run, lambda: left.append(True))
    QTest.keyClick(notice_button(run, "Throw it away"), Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: left == [True, True])
    assert drafts(office) == () and run.unsaved is None
    assert any("left an inspection of SH-001 unwritten" in one.sentence for one in told_ledger(office))


def test_a_tag_that_is_none_is_told_and_stays_among_those_left_out(qtbot: QtBot, run: InspectRun) -> None:
    run.begin(("SH-001", "NO-1"))
    form_for(qtbot, run, "SH-001")
    press_skip(run)
    qtbot.waitUntil(run._notice.isVisible)
    assert "NO-1" in run._notice.text and run.pages.currentWidget() is run.summary


def test_a_run_through_nothing_says_what_to_do(run: InspectRun) -> None:
    run.begin(())
    assert run.pages.currentWidget() is run.empty and "gear list" in run.empty.text()
    assert run.unsaved is None and not run.back()


def test_a_second_press_while_it_saves_neither_saves_twice_nor_skips(
    qtbot: QtBot, run: InspectRun, office: Office
) -> None:
    form = form_for(qtbot, run, "SH-001")
    before = len(open_item(office, "SH-001").dossier.inspections)
    QTest.keyClicks(form.rows[0], "1")
    form.try_save()
    form.try_save()
    run.step(1)
    form_for(qtbot, run, "SH-002")
    assert len(open_item(office, "SH-001").dossier.inspections) == before + 1
    assert run.run.at == 1
