"""The window as a whole: its places, its menus, somebody else sitting down, long work stopped, words explained."""

from collections.abc import Callable
from pathlib import Path
from threading import Event

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QMenu, QToolTip
from pytestqt.qtbot import QtBot

from inspector.desk.look import Look
from inspector.desk.open_desk import OpenDesk
from inspector.desk.place import Go
from inspector.desk.places import DEED, NEEDS, PEOPLE, RUN, places
from inspector.desk.window import DeskWindow
from inspector.desk.word_help import WordList, told_of, words_on
from inspector.duties.add_people import add_person
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.gear.person import Person
from inspector.refused import Refused


def test_every_place_opens_and_is_marked_at_the_side(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.resize(1280, 720)
    wrong: list[str] = []
    for key in (one.key for one in places()):
        desk.pages.go(Go(key))
        qtbot.waitUntil(lambda: desk.background.is_idle)

        marked = [one for one, made in desk.rail.buttons.items() if made.isChecked()]
        if desk.pages.place_shown != key or marked != ([key] if key in desk.rail.buttons else []):
            wrong.append(f"{key}: {desk.pages.place_shown} is shown, {marked} is marked")
        desk.back()
        qtbot.waitUntil(lambda: desk.background.is_idle)
    assert not wrong, "\n".join(wrong)


def test_every_key_of_the_menus_is_given_once(desk: DeskWindow) -> None:
    keys = [
        action.shortcut().toString()
        for top in desk.menuBar().actions()
        if isinstance(top.menu(), QMenu)
        for action in top.menu().actions()  # type: ignore[attr-defined]
        if not action.shortcut().isEmpty()
    ]
    assert len(set(keys)) == len(keys) >= 20


def test_chosen_pieces_go_to_the_form_that_their_button_names(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.table.asked.emit("lend", ("SH-001", "SH-002"))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.deed_page.box("tags").draft.split() == ["SH-001", "SH-002"]

    desk.pages.table.asked.emit("hold", ("SH-001",))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.deed_page.deed and desk.pages.deed_page.deed.key == "hold"


def test_chosen_pieces_are_inspected_one_after_another(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.table.asked.emit("inspect", ("SH-001", "SH-002"))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.place_shown == RUN


def test_several_pieces_are_held_in_one_deed(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.table.asked.emit("hold", ("SH-001", "SH-002"))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    desk.pages.deed_page.box("why").give("The maker calls this batch back.")
    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert "2 pieces are held." in desk.notice.text


def test_from_a_record_the_bench_is_begun_with_the_piece(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.open_tag("HR-007")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    desk.pages.record.why_button.click()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.place_shown == "why"
    desk.back()
    assert desk.pages.piece and desk.pages.piece.tag == "HR-007"


def test_a_dropped_picture_is_set_aside_and_stands_in_the_form(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    desk.pages.open_tag("SH-001")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    desk.pages.record.dropped.emit((("label.txt", b"WLL 4.75 t"), ("back.txt", b"heat 7")))
    qtbot.waitUntil(lambda: desk.pages.currentWidget() is desk.pages.deed_page)
    qtbot.waitUntil(lambda: desk.background.is_idle)

    assert desk.pages.deed_page.box("files").draft.count(".txt") == 2
    desk.pages.save()
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert "2 files are kept with SH-001." in desk.notice.text
    assert not list((office.out_tray.parent / "drafts").rglob("*.txt"))


def test_where_somebody_else_sits_down_the_window_stands_anew(qtbot: QtBot, office: Office, look: Look) -> None:
    other = add_person(office, Person("", "Second officer", "member"))
    desk = OpenDesk(office, look)
    desk.window.show()
    before = desk.window
    before.pages.go(Go(PEOPLE))
    qtbot.waitUntil(lambda: before.background.is_idle)

    before.seated.emit(replace(office, officer=other))
    qtbot.waitUntil(lambda: desk.window.background.is_idle)

    assert desk.window is not before
    assert desk.window.pages.place_shown == PEOPLE
    assert "Second officer" in desk.window.status.facts.text()
    assert "Second officer is at the desk." in desk.window.notice.text

    desk.window.seated.emit(replace(office, officer=other, page="letter"))
    qtbot.addWidget(desk.window)
    qtbot.waitUntil(lambda: desk.window.background.is_idle)
    assert "at the desk" not in desk.window.notice.text  # nobody sat down: the club's settings are others
    desk.window.close_for_good()


def test_the_window_stands_where_it_was_left(qtbot: QtBot, office: Office, look: Look, tmp_path: Path) -> None:
    machine = MachineSettings(tmp_path / "window.json")
    first = OpenDesk(replace(office, machine=machine), look)
    first.show()
    first.window.showNormal()
    first.window.resize(960, 640)
    qtbot.waitUntil(lambda: first.window.background.is_idle)
    first.window.close()

    again = OpenDesk(replace(office, machine=MachineSettings(tmp_path / "window.json")), look)
    again.show()
    qtbot.waitUntil(lambda: again.window.background.is_idle)
    assert (again.window.width(), again.window.height()) == (960, 640), "within the screen there is"
    again.window.close()


def test_long_work_is_told_and_can_be_stopped(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    go_on = Event()
    refusals: list[Refused] = []

    def slow(heard: Office) -> None:
        heard.told(1, 3)
        go_on.wait(5)
        heard.told(2, 3)

    failed: Callable[[Refused], object] = refusals.append
    desk.background.run_long(slow, office, done=lambda _: None, failed=failed, says="Printing…")
    qtbot.waitUntil(lambda: desk.status._bar.value() == 1)
    assert desk.status.stop_button.isVisible()

    desk.status.stop_button.click()
    go_on.set()
    qtbot.waitUntil(lambda: bool(refusals))
    assert not desk.status.stop_button.isVisible()


def test_words_of_the_trade_are_explained(qtbot: QtBot, desk: DeskWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    assert "most its maker lets it bear" in told_of("WLL 4.75 t")
    assert told_of("a plain word") == ""

    desk.pages.open_tag("SH-001")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    found = [one.label for one in words_on(desk.pages)]
    assert "WLL" in found
    sheet = WordList(desk.pages, desk)
    qtbot.addWidget(sheet)

    said: list[str] = []
    monkeypatch.setattr(QToolTip, "showText", lambda _at, text, _widget: said.append(text))
    label = next(one for one in desk.findChildren(QLabel) if told_of(one.text()) and _is_in_sight(desk, one))
    at = label.rect().center()
    QApplication.sendEvent(label, QHelpEvent(QEvent.Type.ToolTip, at, label.mapToGlobal(at)))
    assert said == [told_of(label.text())]


def _is_in_sight(desk: DeskWindow, label: QLabel) -> bool:
    at = label.mapToGlobal(label.rect().center())
    return label.isVisible() and desk.childAt(desk.mapFromGlobal(at)) is label


def test_the_trip_page_offers_what_can_be_done_without_a_trip(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.go(Go("trip"))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    desk.pages.trip.plan()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.deed_page.deed and desk.pages.deed_page.deed.key == "plan trip"


def test_a_notice_is_printed_from_what_needs_the_officer(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.pages.go(Go(NEEDS))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    page = desk.pages.places.page(NEEDS)
    page.notices.emit(("HR-007",))  # type: ignore[attr-defined]
    qtbot.waitUntil(lambda: "notice is printed" in desk.notice.text)


def test_a_place_that_nobody_knows_is_a_fault(desk: DeskWindow) -> None:
    with pytest.raises(KeyError):
        desk.pages.places.page("nowhere")
    assert DEED not in [one.key for one in places()]
