"""The place of lending: what is out, scanning out, taking back, a trip's kit, the trip told afterwards, letters."""

from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import debriefs, letters
from inspector.desk.form.form_page import FormPage
from inspector.desk.lending.lending_page import LendingPage
from inspector.desk.lending.loan_model import DUE, MEANWHILE, TAG
from inspector.desk.lending.out import Grouped
from inspector.desk.place import Go
from inspector.desk.places import LENDING
from inspector.desk.window import DeskWindow
from inspector.duties.keep_rigs import keep_rig, rigs
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend, loans
from inspector.duties.look_up import open_item, trip
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method, Rig
from inspector.gear.trip import Ground, Trip
from inspector.units import Dimension, read
from tests.desk.conftest import NOW
from tests.desk.deed_forms import begin_anew, faults, form_of_deed, keep, write

OFFICER = "First officer"


def lending_of(qtbot: QtBot, desk: DeskWindow) -> LendingPage:
    desk.pages.go(Go(LENDING))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    page = desk.pages.currentWidget()
    assert isinstance(page, LendingPage)
    return page


def words_of(page: QWidget) -> str:
    return "\n".join(one.text() for one in page.findChildren(QLabel) if one.isVisibleTo(page))


def scan(qtbot: QtBot, desk: DeskWindow, page: LendingPage, tag: str) -> None:
    QTest.keyClicks(page.scan.line, tag)
    QTest.keyClick(page.scan.line, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: desk.background.is_idle)


@pytest.fixture
def travelled(office: Office) -> Office:
    """Two vehicles, a trip that ended yesterday, and a rig of the one shackle kept for it."""
    for tag in ("V1", "V2"):
        add_vehicle(office, tag, "wagon", "", read("2700 kg", Dimension.MASS, field="gvm"))
    days = date(2026, 11, 24), date(2026, 11, 25)
    plan_trip(office, Trip("", "T1", "Dune day", "", Ground.BEACH, *days, "", ("V1", "V2"), ("SH-001",)))
    rig = Rig("Tow-out", Method.TOW_OUT, "V1", "V2", (("towing_eye@V1", "SH-001", "towing_eye@V2"),), trip="T1")
    keep_rig(office, "R-01", rig)
    return office


@pytest.fixture
def told_form(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], travelled: Office
) -> tuple[DeskWindow, FormPage]:
    """The form that tells how the trip went, begun at its button."""
    desk = open_desk(travelled)
    page = lending_of(qtbot, desk)
    page.trip_row.choice.choose("T1")
    QTest.keyClick(page.trip_row.tell_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    return desk, desk.pages.deed_page


def test_where_nothing_is_out_it_says_what_to_do(qtbot: QtBot, desk: DeskWindow) -> None:
    page = lending_of(qtbot, desk)
    assert "Nothing is out." in words_of(page) and not page.view.isVisible()
    assert not page.trip_row.out_button.isEnabled()
    assert page.trip_row.out_button.toolTip() == "No trip is planned."


def test_what_is_scanned_is_judged_at_once_and_goes_out(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    page = lending_of(qtbot, desk)
    QTest.keyClick(page.out_button, Qt.Key.Key_Space)
    assert page.is_scanning and page.scan.line.hasFocus() and not page.scan.go_button.isEnabled()

    scan(qtbot, desk, page, "sh-001")
    scan(qtbot, desk, page, "HR-007")
    assert page.scan.tags == ("SH-001",)
    qtbot.waitUntil(lambda: "Hitch receiver · Retire · stays here" in words_of(page.scan))
    assert "1 piece goes. 1 stays here." in words_of(page.scan)

    QTest.keyClick(page.scan.line, Qt.Key.Key_Return)  # nothing more to scan
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    form = desk.pages.deed_page
    assert form.box("tags").draft.split() == ["SH-001"]
    write(form, holder=OFFICER, due="2026-12-24")
    keep(qtbot, desk)

    assert [one.tag for one in loans(office)] == ["SH-001"]
    assert desk.pages.currentWidget() is page and not page.is_scanning
    assert [row.loan.tag for row in page.model.rows if row.loan] == ["SH-001"]


def test_a_tag_that_nobody_knows_stays_in_the_line(qtbot: QtBot, desk: DeskWindow) -> None:
    page = lending_of(qtbot, desk)
    page.hand_out()
    scan(qtbot, desk, page, "ZZ-9")
    assert page.scan.line.text() == "ZZ-9" and "No piece has the tag" in page.scan.line.fault.text()


def test_a_scan_goes_to_the_line_wherever_the_keys_are(qtbot: QtBot, desk: DeskWindow) -> None:
    page = lending_of(qtbot, desk)
    page.hand_out()
    scan(qtbot, desk, page, "SH-001")
    page.scan.go_button.setFocus()
    QTest.keyClick(page.scan.go_button, Qt.Key.Key_H)
    assert page.scan.line.hasFocus() and page.scan.line.text() == "h"


def test_a_piece_scanned_twice_stands_there_once_and_may_be_taken_out(qtbot: QtBot, desk: DeskWindow) -> None:
    page = lending_of(qtbot, desk)
    page.hand_out()
    scan(qtbot, desk, page, "SH-001")
    scan(qtbot, desk, page, "sh-001")
    assert page.scan.tags == ("SH-001",) and "stands in the list already" in words_of(page.scan)
    page.scan._drop("SH-001")
    assert not page.scan.tags


def test_what_was_scanned_stands_when_the_form_is_left(qtbot: QtBot, desk: DeskWindow) -> None:
    page = lending_of(qtbot, desk)
    page.hand_out()
    scan(qtbot, desk, page, "SH-001")
    QTest.keyClick(page.scan.go_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    desk.back()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert page.is_scanning and page.scan.tags == ("SH-001",)
    desk.back()
    assert not page.is_scanning


def lent_late(office: Office) -> None:
    """A fit shackle that was lent today for two days, seen five days later."""
    lend(office, ["SH-001"], OFFICER, date(2026, 11, 27))


def test_what_is_late_is_said_in_words(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office) -> None:
    lent_late(office)
    page = lending_of(qtbot, open_desk(office.at(datetime(2026, 11, 30, 9, 0, tzinfo=NOW.tzinfo))))
    assert page.model.data(page.model.index(1, DUE)) == "27 Nov 2026, 3 days late"
    assert page.model.data(page.model.index(0, TAG)) == f"{OFFICER}: 1 piece, 1 overdue"
    assert "1 piece is out. 1 is overdue." in words_of(page)


def test_what_falls_due_while_it_is_out_is_told(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office
) -> None:
    lend(office, ["SH-001"], OFFICER, date(2028, 1, 1))
    page = lending_of(qtbot, open_desk(office))
    due = open_item(office, "SH-001").verdict.next_due
    assert due and str(due.year) in page.model.data(page.model.index(1, MEANWHILE))


def test_ticked_pieces_are_taken_back(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office) -> None:
    lent_late(office)
    desk = open_desk(office)
    page = lending_of(qtbot, desk)
    QTest.keyClick(page.view, Qt.Key.Key_Down)
    QTest.keyClick(page.view, Qt.Key.Key_Space)
    assert page.model.chosen == ("SH-001",)
    assert "1 is ticked to be taken back." in words_of(page)
    assert page.model.data(page.model.index(0, TAG), Qt.ItemDataRole.CheckStateRole) is Qt.CheckState.Checked

    QTest.keyClick(page.back_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    form = desk.pages.deed_page
    assert form.box("tags").draft.split() == ["SH-001"]
    write(form, by=OFFICER, nothing="yes")
    keep(qtbot, desk)
    assert not loans(office) and not page.model.chosen


def test_the_headings_turn_to_trips_and_a_heading_ticks_all_below_it(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], one_trip: Office, qtmodeltester: ModelTester
) -> None:
    lend(one_trip, ["SH-001"], OFFICER, trip="T1")
    page = lending_of(qtbot, open_desk(one_trip))
    page.grouped.choose(Grouped.TRIP)
    assert page.model.data(page.model.index(0, TAG)) == "T1 Beach day 1: 1 piece"
    page.view.setFocus()
    QTest.keyClick(page.view, Qt.Key.Key_Space)
    assert page.model.chosen == ("SH-001",)
    qtmodeltester.check(page.model, force_py=True)  # type: ignore[no-untyped-call]


def test_the_kit_of_a_trip_is_refused_whole_and_says_why(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], one_trip: Office
) -> None:
    desk = open_desk(one_trip)
    page = lending_of(qtbot, desk)
    assert not page.trip_row.back_button.isEnabled() and page.trip_row.back_button.toolTip() == "Nothing is out for it."
    assert page.trip_row.tell_button.toolTip() == "It has not begun."
    QTest.keyClick(page.trip_row.out_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    write(desk.pages.deed_page, holder=OFFICER)
    keep(qtbot, desk)
    assert "HR-007" in desk.notice.text and "Nothing was handed out" in desk.notice.text
    assert loans(one_trip) == ()


def test_a_trip_is_told_and_every_piece_of_the_rig_bears_its_pulls(
    qtbot: QtBot, told_form: tuple[DeskWindow, FormPage], office: Office
) -> None:
    desk, form = told_form
    form.box("R-01 pulls").give("2")
    form.box("R-01 jerked").give("no")
    form.box("R-01 missed").give("no")
    write(form, apart="SH-002", apart__pulls="1")
    keep(qtbot, desk)

    assert "Trip T1 was told on 25 Nov 2026." in desk.notice.text
    assert [one.facts.pull_count for one in open_item(office, "SH-001").dossier.uses] == [2]
    assert [one.facts.pull_count for one in open_item(office, "SH-002").dossier.uses] == [1]
    assert open_item(office, "SH-001").verdict.outcome is Outcome.FIT


def test_a_jerk_holds_the_pieces(qtbot: QtBot, told_form: tuple[DeskWindow, FormPage], office: Office) -> None:
    desk, form = told_form
    for key, text in (("pulls", "1"), ("jerked", "yes"), ("missed", "no")):
        form.box(f"R-01 {key}").give(text)
    keep(qtbot, desk)
    assert open_item(office, "SH-001").verdict.outcome is Outcome.HOLD


SILENT: tuple[tuple[dict[str, str], str], ...] = (
    ({}, "none"),
    ({"R-01 pulls": "1"}, "R-01 jerked"),
    ({"R-01 pulls": "1", "R-01 jerked": "no"}, "R-01 missed"),
    ({"R-01 pulls": "1", "R-01 jerked": "no", "R-01 missed": "yes"}, "R-01 near_miss"),
    (
        {"R-01 pulls": "1", "R-01 jerked": "no", "R-01 missed": "no", "R-01 near_miss": "it slipped"},
        "R-01 near_miss",
    ),
    ({"R-01 pulls": "1", "R-01 jerked": "no", "R-01 missed": "no", "R-01 hardest": "0 kN"}, "R-01 hardest"),
    ({"R-01 pulls": "1", "R-01 jerked": "no", "R-01 missed": "no", "R-01 on": "2026-11-20"}, "R-01 on"),
    ({"R-01 pulls": "1", "R-01 jerked": "no", "R-01 missed": "no", "none": "yes"}, "none"),
    ({"none": "yes", "apart": "SH-002"}, "apart pulls"),
    ({"none": "yes", "apart": "ZZ-9", "apart pulls": "1"}, "apart"),
    ({"none": "yes", "apart": "SH-002", "apart pulls": "1", "apart on": "2031-01-01"}, "apart on"),
    ({"none": "yes", "on": "2031-01-01"}, "on"),
)  # fmt: skip


def test_silence_about_a_trip_is_asked_for_at_its_field(
    qtbot: QtBot, told_form: tuple[DeskWindow, FormPage], office: Office
) -> None:
    desk, form = told_form
    wrong: list[str] = []
    for given, field in SILENT:
        for key, text in given.items():
            form.box(key).give(text)
        keep(qtbot, desk)
        if list(faults(form)) != [field]:
            wrong.append(f"{given}: {faults(form)}, not {field}; {desk.notice.text}")
        assert form.deed, [*wrong, f"{given} was told, and no more can be tried"]
        begin_anew(form)
    assert not wrong, "\n".join(wrong)
    assert open_item(office, "SH-001").dossier.uses == () and open_item(office, "SH-002").dossier.uses == ()


def test_the_rigs_of_a_trip_are_asked_and_those_of_its_vehicles(travelled: Office) -> None:
    loose = Rig("Any", Method.TOW_OUT, "V1", "V2", (("towing_eye@V1", "SH-001", "towing_eye@V2"),))
    other = Rig("Other", Method.TOW_OUT, "V1", "V2", (("towing_eye@V1", "SH-001", "towing_eye@V2"),), trip="T2")
    plan_trip(travelled, Trip("", "T2", "Later", "", Ground.MUD, date(2026, 12, 1), date(2026, 12, 1), ""))
    keep_rig(travelled, "R-02", loose)
    keep_rig(travelled, "R-03", other)
    asked = debriefs.asked_of(trip(travelled, "T1"), rigs(travelled))
    assert [one.ref for one in asked.rigs] == ["R-01", "R-02"]


def test_a_trip_may_be_told_in_a_file(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], travelled: Office, tmp_path: Path
) -> None:
    desk = open_desk(travelled)
    lending_of(qtbot, desk)
    file = tmp_path / "told.toml"
    file.write_text('trip = "T1"\non = 2026-11-25\n[[used]]\nrig = "R-01"\npulls = 3\non = 2026-11-25\n'
                    'jerked = false\nnear_miss = ""\n')  # fmt: skip
    form = form_of_deed(qtbot, desk, debriefs.from_file(), None)
    write(form, file=str(file))
    keep(qtbot, desk)
    assert [one.facts.pull_count for one in open_item(travelled, "SH-001").dossier.uses] == [3]


def test_letters_are_printed_and_printed_again(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], office: Office
) -> None:
    lent_late(office)
    desk = open_desk(office.at(datetime(2026, 11, 30, 9, 0, tzinfo=NOW.tzinfo)))
    lending_of(qtbot, desk)
    form = form_of_deed(qtbot, desk, letters.letters(), None)
    write(form, person=OFFICER, bring_to="the shed", bring_by="2026-11-29")
    keep(qtbot, desk)
    assert list(faults(form)) == ["bring_by"]
    write(form, bring_by="2026-12-05")
    keep(qtbot, desk)
    assert "One letter is printed." in desk.notice.text and ".pdf" in desk.notice.text
    form = form_of_deed(qtbot, desk, letters.letters(), None)
    write(form, person=OFFICER, again="yes")
    keep(qtbot, desk)
    assert "One letter is printed." in desk.notice.text
