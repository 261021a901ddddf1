"""The place of the vehicles: the list, the record beside it, and the deeds about a vehicle."""

from collections.abc import Callable

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton, QWidget
from pytestqt.modeltest import ModelTester
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import vehicles as deeds
from inspector.desk.fleet.fleet_model import NAME
from inspector.desk.fleet.fleet_page import FleetPage
from inspector.desk.form.boxes import ChoiceBox
from inspector.desk.pen import Picture
from inspector.desk.place import Go
from inspector.desk.places import FLEET
from inspector.desk.window import DeskWindow
from inspector.duties.book_in import book_in
from inspector.duties.fit_parts import fit_part
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle
from inspector.duties.look_up import vehicles
from inspector.duties.office import Office
from inspector.duties.vehicle_record import vehicle_record
from inspector.gear.fitting import End, Fitted, Side
from inspector.units import Dimension, read
from tests.desk.deed_forms import begin_anew, faults, form_of_deed, keep, write
from tests.duties.gear import point


@pytest.fixture
def two_vehicles(office: Office) -> Office:
    """A register with a weighed wagon and one that nobody weighed."""
    add_vehicle(office, "V1", "wagon, grey", "Di Member", read("2700 kg", Dimension.MASS, field="gvm"),
                read("2190 kg", Dimension.MASS, field="mass"))  # fmt: skip
    add_vehicle(office, "V2", "pick-up, black", "", read("3500 kg", Dimension.MASS, field="gvm"))
    book_in(office, point("RP-001"))
    return office


@pytest.fixture
def desk(open_desk: Callable[[Office], DeskWindow], two_vehicles: Office) -> DeskWindow:
    """The window on it."""
    return open_desk(two_vehicles)


def fleet_of(qtbot: QtBot, desk: DeskWindow, tag: str = "") -> FleetPage:
    desk.pages.go(Go(FLEET, tag or None))
    qtbot.waitUntil(lambda: desk.background.is_idle)
    page = desk.pages.currentWidget()
    assert isinstance(page, FleetPage)
    return page


def words_of(page: QWidget) -> str:
    return "\n".join(one.text() for one in page.findChildren(QLabel) if one.isVisibleTo(page))


def test_the_list_tells_who_they_are_and_the_record_what_is_known(qtbot: QtBot, desk: DeskWindow) -> None:
    page = fleet_of(qtbot, desk)
    assert [one.vehicle.tag for one in page.model.lines] == ["V1", "V2"]
    assert page.model.data(page.model.index(0, NAME)) == "wagon, grey\nDi Member"
    told = words_of(page._area)
    assert "V1" in told and "2190 kg" in told and "Fit a part" in told


def test_the_arrows_choose_and_what_is_not_known_is_said(qtbot: QtBot, desk: DeskWindow) -> None:
    page = fleet_of(qtbot, desk)
    QTest.keyClick(page.view, Qt.Key.Key_Down)
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert page.record and page.record.vehicle.tag == "V2"
    assert words_of(page._area).count("not known") == 4  # owner, mass, both spacings


def test_every_row_is_as_high_as_its_words(qtbot: QtBot, desk: DeskWindow) -> None:
    page = fleet_of(qtbot, desk)
    line = QFontMetrics(desk.look.font()).lineSpacing()
    assert page.view.rowHeight(0) >= 2 * line > page.view.rowHeight(1) - line  # name and owner; a name alone


def test_the_model_of_the_list_holds(qtbot: QtBot, desk: DeskWindow, qtmodeltester: ModelTester) -> None:
    qtmodeltester.check(fleet_of(qtbot, desk).model, force_py=True)  # type: ignore[no-untyped-call]


def test_a_letter_begins_a_search_and_return_goes_to_the_deeds(qtbot: QtBot, desk: DeskWindow) -> None:
    page = fleet_of(qtbot, desk)
    with qtbot.waitSignal(page.typed) as heard:
        QTest.keyClick(page.view, Qt.Key.Key_S)
    assert heard.args == ["s"]
    page.view.setFocus()
    QTest.keyClick(page.view, Qt.Key.Key_Return)
    assert page.change_button.hasFocus()


def test_an_overloaded_vehicle_is_warned_of_in_words(qtbot: QtBot, desk: DeskWindow) -> None:
    page = fleet_of(qtbot, desk, "V1")
    QTest.keyClick(page.change_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    write(desk.pages.deed_page, mass="2800 kg", why="weighed with the canopy")
    keep(qtbot, desk)

    assert desk.pages.currentWidget() is page
    assert "Warning: V1 is overloaded" in words_of(page._area)
    assert "Overloaded" in str(page.model.data(page.model.index(0, NAME)))
    assert "weighed with the canopy" in words_of(page._area)


def test_an_emptied_mass_is_not_known_any_more(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    stands = vehicles(office)[0]
    page = form_of_deed(qtbot, desk, deeds.change(stands), stands)
    write(page, mass="", why="it got another tray")
    keep(qtbot, desk)
    assert vehicles(office)[0].mass is None and vehicles(office)[0].gvm == stands.gvm


def test_what_somebody_else_changed_meanwhile_stays(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    stands = vehicles(office)[0]
    page = form_of_deed(qtbot, desk, deeds.change(stands), stands)
    change_vehicle(office, "V1", lambda now: replace(now, owner="Ro Other"), "sold")
    write(page, name="wagon, silver", why="painted")
    keep(qtbot, desk)
    now = vehicles(office)[0]
    assert (now.name, now.owner, now.mass) == ("wagon, silver", "Ro Other", stands.mass)


def test_what_cannot_be_is_said_at_its_field(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    stands = vehicles(office)[0]
    wrong: list[str] = []
    for field, text in (
        ("gvm", "20 kg"), ("mass", "20 kg"), ("mass", "9 t"), ("front_spacing", "9 m"), ("rear_spacing", "1 mm"),
        ("on", "2031-01-01"),
    ):  # fmt: skip
        page = form_of_deed(qtbot, desk, deeds.change(stands), stands)
        write(page, **{field: text, "why": "weighed", "note": "tools on board"})
        keep(qtbot, desk)
        if list(faults(page)) != [field] or page.box(field).draft != text:
            wrong.append(f"{field} {text}: {faults(page)}")
        begin_anew(page)
    assert not wrong, "\n".join(wrong)


def test_a_change_without_a_reason_is_not_kept(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    stands = vehicles(office)[0]
    page = form_of_deed(qtbot, desk, deeds.change(stands), stands)
    write(page, name="wagon, silver")
    keep(qtbot, desk)
    assert list(faults(page)) == ["why"] and vehicles(office)[0] == stands


def test_a_vehicle_is_entered_and_a_taken_tag_is_said_at_its_field(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    fleet_of(qtbot, desk)
    page = form_of_deed(qtbot, desk, deeds.add(), None)
    write(page, tag="v1", name="tray truck", gvm="4490 kg", front_spacing="0.9 m")
    keep(qtbot, desk)
    assert list(faults(page)) == ["tag"]
    write(page, tag="V3")
    keep(qtbot, desk)
    kept = vehicles(office)[-1]
    assert (kept.tag, kept.mass, kept.front_spacing and kept.front_spacing.as_typed) == ("V3", None, "0.9 m")
    assert "V3 tray truck stands in the register." in desk.notice.text


def test_a_part_comes_onto_it_and_off_again(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    page = fleet_of(qtbot, desk, "V1")
    assert not page.off_button.isEnabled()
    QTest.keyClick(page.fit_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    write(desk.pages.deed_page, piece="RP-001", end="front", side="left")
    keep(qtbot, desk)

    assert page.record and [one.fitted for one in page.record.parts] == [Fitted("V1", End.FRONT, Side.LEFT)]
    drawing = page._area.findChildren(Picture)[0].drawing
    assert "front, left: RP-001" in drawing.describes
    assert "front left · Recovery point" in words_of(page._area)

    QTest.keyClick(page.off_button, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.background.is_idle and bool(desk.pages.deed_page.boxes))
    keep(qtbot, desk)
    assert list(faults(desk.pages.deed_page)) == ["piece"]  # which one is never guessed
    which = desk.pages.deed_page.box("piece")
    assert isinstance(which, ChoiceBox)
    which.choice.choose("RP-001")
    keep(qtbot, desk)
    assert vehicle_record(office, "V1").parts == ()
    assert "Part taken off" in words_of(page._area)


def test_what_is_retired_or_unknown_is_refused_at_the_tag(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    stands = vehicles(office)[0]
    page = form_of_deed(qtbot, desk, deeds.fit_onto(stands), stands)
    for tag in ("HR-007", "ZZ-1"):
        write(page, piece=tag)
        keep(qtbot, desk)
        assert list(faults(page)) == ["piece"]


def test_the_tag_of_a_part_opens_its_record(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    fit_part(office, "RP-001", Fitted("V2"))
    page = fleet_of(qtbot, desk, "V2")
    assert "Nobody wrote down where these sit: RP-001." in " ".join(
        getattr(shape, "text", "") for shape in page._area.findChildren(Picture)[0].drawing.shapes
    )
    tag = next(one for one in page._area.findChildren(QPushButton) if one.text() == "RP-001")
    QTest.keyClick(tag, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert desk.pages.piece and desk.pages.piece.tag == "RP-001"


def test_a_register_without_vehicles_says_what_to_do(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], empty_office: Office
) -> None:
    desk = open_desk(empty_office)
    page = fleet_of(qtbot, desk)
    assert "No vehicle stands in the register yet." in words_of(page)
    assert page.record is None


def test_of_two_who_write_into_the_same_field_the_second_sees_both_values(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    stands = vehicles(office)[0]
    page = form_of_deed(qtbot, desk, deeds.change(stands), stands)
    change_vehicle(office, "V1", lambda now: replace(now, owner="Ro Other", note="theirs"), "sold")
    write(page, owner="Kim Third", note="mine", name="wagon, silver", why="sold and painted")
    keep(qtbot, desk)
    said = faults(page)
    assert set(said) == {"owner", "note"}, said
    assert "“Ro Other”" in said["owner"] and "“Kim Third”" in said["owner"] and "“theirs”" in said["note"]
    assert page.box("why").draft == "sold and painted"
    assert vehicles(office)[0].owner == "Ro Other"

    write(page, note="theirs")
    keep(qtbot, desk)
    now = vehicles(office)[0]
    assert (now.owner, now.note, now.name) == ("Kim Third", "theirs", "wagon, silver")
