"""An evening at the desk, by keyboard alone."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.window import DeskWindow
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.gear.inspection import InspectionKind
from inspector.gear.outcome import Outcome


def focused() -> QWidget:
    """Where the keys go."""
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


def shown_texts(widget: QWidget) -> str:
    """All that is written on a page."""
    return "\n".join(label.text() for label in widget.findChildren(QLabel) if label.isVisible())


def open_form(qtbot: QtBot, desk: DeskWindow, tag: str) -> None:
    """Scan a tag, then Ctrl+I."""
    QTest.keyClicks(desk.search, tag)
    QTest.keyClick(desk.search, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    QTest.keyClick(focused(), Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier)
    assert desk.pages.form is not None


def save(qtbot: QtBot, desk: DeskWindow) -> None:
    """Ctrl+S, and wait until the record shows what came of it."""
    QTest.keyClick(focused(), Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.pages.piece is not None and desk.background.is_idle)


def test_a_shackle_is_scanned_inspected_and_found_fit(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    """Search, record, form, number keys, readings, save, verdict: no mouse."""
    assert desk.search.hasFocus()
    open_form(qtbot, desk, "SH-001")
    form = desk.pages.form
    assert form
    for _ in form.rows:
        QTest.keyClicks(focused(), "1")
    QTest.keyClicks(focused(), "18.8 mm")
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    QTest.keyClicks(focused(), "21.8 mm")
    save(qtbot, desk)
    kept = open_item(office, "SH-001")
    latest = kept.dossier.inspections[-1].facts
    assert kept.verdict.outcome is Outcome.FIT
    assert latest.kind is InspectionKind.PERIODIC and latest.competent
    assert [one.figure.as_typed for one in latest.readings] == ["18.8 mm", "21.8 mm"]
    assert len(latest.answers) == len(kept.dossier.kind.checks)
    assert kept.explanation.plain in shown_texts(desk.pages.record)
    assert "The inspection of SH-001 is kept." in desk.notice.text


def test_a_crack_retires_a_shackle_and_the_record_says_why(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    """The reasons stand there at once, with value, limit and source; the notice can be printed."""
    open_form(qtbot, desk, "SH-001")
    form = desk.pages.form
    assert form
    for row in form.rows:
        QTest.keyClicks(focused(), "3" if row.check.key == "cracks" else "1")
    save(qtbot, desk)
    kept = open_item(office, "SH-001")
    told = shown_texts(desk.pages.record)
    assert kept.verdict.outcome is Outcome.RETIRE
    for reason in kept.explanation.reasons:
        for part in (reason.sentence, reason.value, reason.limit, reason.source):
            assert part in told
    assert desk.pages.record.notice_button.isEnabled()
    assert desk.actions_at_times.notice.isEnabled()


def test_the_list_follows_what_was_saved(qtbot: QtBot, desk: DeskWindow) -> None:
    """Back on the list, the bar stands on the piece and its verdict is the new one."""
    open_form(qtbot, desk, "SH-001")
    QTest.keyClicks(focused(), "1")
    QTest.keyClicks(focused(), "3")
    save(qtbot, desk)
    QTest.keyClick(focused(), Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    table = desk.pages.table
    row = table.model.row_at(table.model.row_of("SH-001"))
    assert row and row.tag == "SH-001" and row.outcome is not Outcome.FIT
    assert table.model.tags[table.view.currentIndex().row()] == "SH-001"


def test_a_letter_on_the_record_begins_a_search(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office
) -> None:
    """A tag may be scanned on any page."""
    desk = open_desk(office)
    desk.pages.open_tag("SH-001")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    QTest.keyClicks(focused(), "H")
    QTest.keyClicks(desk.search, "R-007")
    QTest.keyClick(desk.search, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.pages.piece is not None and desk.pages.piece.tag == "HR-007")


class Watch(QObject):
    """Notes every window that appears."""

    def __init__(self) -> None:
        super().__init__()
        self.appeared: list[str] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's own name
        """Note it and let it pass."""
        if event.type() is QEvent.Type.Show and isinstance(watched, QWidget) and watched.isWindow():
            self.appeared.append(type(watched).__name__)
        return False


def test_no_page_flashes_up_as_a_window_of_its_own(qtbot: QtBot, desk: DeskWindow, qapp: QApplication) -> None:
    """A part shown before it has its place would take the keys away from the window."""
    watch = Watch()
    qapp.installEventFilter(watch)
    for tag in ("HR-007", "SH-001"):
        desk.pages.open_tag(tag)
        qtbot.waitUntil(lambda: desk.pages.piece is not None)
        desk.pages.inspect()
        qtbot.waitUntil(lambda: desk.pages.form is not None)
        desk.pages.show_list()
    qapp.removeEventFilter(watch)
    assert watch.appeared == []
    assert desk.isActiveWindow()
