"""The deeds of trips as forms: plan, change, kit, files, a member's piece, the menu that has them all."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk import trip_menu
from inspector.desk.deeds import trips as deeds
from inspector.desk.deeds import visits
from inspector.desk.form.boxes import ProseBox
from inspector.desk.form.some_box import SomeBox
from inspector.desk.place import Go
from inspector.desk.places import TRIP
from inspector.desk.window import DeskWindow
from inspector.duties.exchange_trip import export_trip
from inspector.duties.look_up import kinds, list_gear, open_item, trip, trips
from inspector.duties.office import Office
from inspector.duties.plan_rides import plan_rides
from inspector.duties.plan_trip import change_trip
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Ground, Ride
from tests.desk.deed_forms import begin_anew, faults, form_of_deed, keep, write


@pytest.fixture
def desk(qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], one_trip: Office) -> DeskWindow:
    """The window on a register with one trip, on its page."""
    window = open_desk(one_trip)
    window.pages.go(Go(TRIP))
    qtbot.waitUntil(lambda: window.background.is_idle)
    return window


def test_a_trip_is_planned_by_its_form(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    page = form_of_deed(qtbot, desk, deeds.plan(), None)
    write(page, ref="T7", name="Mud day", ground="mud", first_on="2026-12-20", vehicles="V1", kit="sh-001 HR-007",
          people=office.officer.id)  # fmt: skip
    keep(qtbot, desk)

    kept = trip(office, "T7")
    assert (kept.name, kept.ground, kept.last_on) == ("Mud day", Ground.MUD, date(2026, 12, 20))
    assert (kept.vehicles, kept.kit, kept.people) == (("V1",), ("SH-001", "HR-007"), (office.officer.id,))
    assert "HR-007 is retired" in desk.notice.text


def test_what_is_needed_is_asked_for_and_the_ground_is_not_guessed(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    page = form_of_deed(qtbot, desk, deeds.plan(), None)
    keep(qtbot, desk)
    assert set(faults(page)) == {"ref", "name", "ground", "first_on"}
    assert len(trips(office)) == 1


def test_what_the_plan_refuses_stands_at_its_field(qtbot: QtBot, desk: DeskWindow) -> None:
    wrong: list[str] = []
    for given, field in (
        ({"ref": "t1"}, "ref"), ({"ref": "next"}, "ref"), ({"last_on": "2026-12-19"}, "last_on"),
        ({"last_on": "2029-12-19"}, "last_on"), ({"kit": "SH-001 ZZ-9"}, "kit"),
    ):  # fmt: skip
        page = form_of_deed(qtbot, desk, deeds.plan(), None)
        write(page, **({"ref": "T7", "name": "Mud day", "ground": "mud", "first_on": "2026-12-20"} | given))
        keep(qtbot, desk)
        if list(faults(page)) != [field]:
            wrong.append(f"{given}: {faults(page)}, not {field}")
        begin_anew(page)
    assert not wrong, "\n".join(wrong)


def test_a_changed_plan_keeps_what_somebody_else_changed(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    shown = trip(office, "T1")
    page = form_of_deed(qtbot, desk, deeds.change(shown), shown)
    change_trip(office, "T1", lambda stands: replace(stands, leader="Ro Other", people=(office.officer.id,)))
    write(page, place="the short beach", vehicles="", why="the long one is closed")
    keep(qtbot, desk)
    now = trip(office, "T1")
    assert (now.place, now.leader, now.people, now.vehicles, now.kit) == (
        "the short beach", "Ro Other", (office.officer.id,), (), shown.kit,
    )  # fmt: skip


def test_nothing_changed_is_refused_and_kept_open(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    shown = trip(office, "T1")
    form_of_deed(qtbot, desk, deeds.change(shown), shown)
    keep(qtbot, desk)
    assert "Nothing would change." in desk.notice.text
    assert desk.pages.currentWidget() is desk.pages.deed_page


def test_the_kit_is_changed_by_scanning(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    shown = trip(office, "T1")
    page = form_of_deed(qtbot, desk, deeds.change_kit(shown), shown)
    box = page.box("kit")
    assert isinstance(box, ProseBox)
    QTest.keyClicks(box.text, "SH-002")  # right after what stands there
    keep(qtbot, desk)
    assert trip(office, "T1").kit == ("SH-001", "HR-007", "SH-002")
    assert "3 pieces are in the kit now." in desk.notice.text

    shown = trip(office, "T1")
    page = form_of_deed(qtbot, desk, deeds.change_kit(shown), shown)
    write(page, kit="sh-001", why="the rest stays")
    keep(qtbot, desk)
    assert trip(office, "T1").kit == ("SH-001",)


def test_a_trip_goes_into_a_file_and_comes_out_of_it(
    qtbot: QtBot, desk: DeskWindow, office: Office, tmp_path: Path
) -> None:
    shown = trip(office, "T1")
    page = form_of_deed(qtbot, desk, deeds.write_out(shown), shown)
    write(page, folder=str(tmp_path))
    keep(qtbot, desk)
    file = tmp_path / "T1.toml"
    assert file.read_text(encoding="utf-8") == export_trip(office, "T1")

    page = form_of_deed(qtbot, desk, deeds.write_out(shown), shown)
    write(page, folder=str(tmp_path))
    keep(qtbot, desk)
    assert list(faults(page)) == ["name"] and "there already" in faults(page)["name"]

    page = form_of_deed(qtbot, desk, deeds.take_in(), None)
    write(page, file=str(file))
    keep(qtbot, desk)
    assert "has a trip T1 already" in desk.notice.text
    write(page, as_ref="T8")
    keep(qtbot, desk)
    assert trip(office, "T8").kit == shown.kit


def test_a_members_piece_comes_along_and_stands_in_the_kit(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    shown, kind = trip(office, "T1"), office.kind("bow_shackle")
    page = form_of_deed(qtbot, desk, visits.visit(shown, kind), shown)
    keep(qtbot, desk)
    assert set(faults(page)) == {"owner", "size bow_diameter", "size pin_diameter"}
    write(page, owner="Di Member", rating="4.75 t", factor="6", maker_mark="VYK", stated_on="on the piece itself")
    page.box("size bow_diameter").give("19 mm")
    page.box("size pin_diameter").give("22 mm")
    keep(qtbot, desk)
    assert "It came along as VG-1" in desk.notice.text
    kept = open_item(office, "VG-1").dossier.item.facts
    assert (kept.owner, kept.visiting_for, len(kept.sizes)) == ("Di Member", "T1", 2)
    assert "VG-1" in trip(office, "T1").kit
    assert open_item(office, "VG-1").verdict.outcome is not Outcome.FIT  # nobody has looked at it


def test_the_clubs_own_gear_is_no_visitor(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    shown = trip(office, "T1")
    before = list_gear(office).count
    page = form_of_deed(qtbot, desk, visits.visit(shown, office.kind("bow_shackle")), shown)
    write(page, owner="club", rating="4.75 t", factor="6", stated_on="on the piece itself")
    page.box("size bow_diameter").give("19 mm")
    page.box("size pin_diameter").give("22 mm")
    keep(qtbot, desk)
    assert list(faults(page)) == ["owner"], desk.notice.text
    page = form_of_deed(qtbot, desk, visits.again(shown), shown)
    write(page, tag="SH-001")
    keep(qtbot, desk)
    assert list(faults(page)) == ["tag"] and list_gear(office).count == before


def test_the_space_bar_ticks_and_return_goes_on(qtbot: QtBot, desk: DeskWindow) -> None:
    page = form_of_deed(qtbot, desk, deeds.plan(), None)
    box = page.box("vehicles")
    assert isinstance(box, SomeBox)
    box.take_keys()
    QTest.keyClick(box.ticks, Qt.Key.Key_Space)
    assert box.draft == "V1"
    QTest.keyClick(box.ticks, Qt.Key.Key_Space)
    assert box.draft == ""
    QTest.keyClick(box.ticks, Qt.Key.Key_Return)
    assert desk.focusWidget() is page.box("note").control


def test_a_key_goes_on_before_qt_has_shown_the_form(qtbot: QtBot, desk: DeskWindow) -> None:
    page = form_of_deed(qtbot, desk, deeds.plan(), None)
    box = page.box("vehicles")
    forms = (one for one in page.children() if isinstance(one, QWidget) and one.isAncestorOf(box))
    next(forms).hide()  # as a new form stands until the next turn of the window
    box.moves.emit(1)
    assert desk.focusWidget() is page.box("note").control


def test_the_menu_has_every_deed_of_a_trip_and_goes_there(office: Office, one_trip: Office) -> None:
    menu, asked = QMenu(), list[Go]()
    trip_menu.fill(menu, trip(one_trip, "T1"), kinds(office), asked.append)
    names = [one.text() for one in menu.actions() if one.text()]
    assert names == [
        "Plan a trip…", "Change the plan…", "Change the kit…", "Plan what rides where…",
        "Take a member's piece along", "Hand the kit out…",
        "The kit came back…", "Write it into a file…", "Read a trip from a file…",
    ]  # fmt: skip
    menu.actions()[1].trigger()
    what = asked[0].what
    assert isinstance(what, tuple)
    assert (what[0].key, what[1].ref, what[2]) == ("change trip", "T1", "T1")


def test_without_a_trip_one_can_be_planned_or_read_in(office: Office) -> None:
    menu = QMenu()
    trip_menu.fill(menu, None, (), lambda _: None)
    assert [one.text() for one in menu.actions() if one.text()] == ["Plan a trip…", "Read a trip from a file…"]


def test_what_rides_where_is_planned_by_its_form(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    shown = trip(office, "T1")
    page = form_of_deed(qtbot, desk, deeds.rides(shown), shown)
    write(page, on_V1="sh-001", why="it is light")
    keep(qtbot, desk)
    assert trip(office, "T1").rides == (Ride("SH-001", "V1"),)
    assert "One piece of the kit rides on no vehicle by plan." in desk.notice.text


def test_a_piece_taken_out_of_the_field_rides_nowhere_and_what_is_not_in_the_kit_is_told(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    plan_rides(office, "T1", {"SH-001": "V1"})
    shown = trip(office, "T1")
    page = form_of_deed(qtbot, desk, deeds.rides(shown), shown)
    write(page, on_V1="SH-001 ZZ-9")
    keep(qtbot, desk)
    assert list(faults(page)) == ["on_V1"] and trip(office, "T1").rides
    write(page, on_V1="")
    keep(qtbot, desk)
    assert trip(office, "T1").rides == ()
