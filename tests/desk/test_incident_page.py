"""The bad day in the window: reported in few lines, kept as found, added to, released by two, bundled and proved."""

import threading
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.deeds import report
from inspector.desk.form.boxes import Box
from inspector.desk.form.form_page import FormPage
from inspector.desk.form.lines import LineBox
from inspector.desk.incident import incident_page
from inspector.desk.incident.incident_page import IncidentPage
from inspector.desk.incident.opened_incident import OpenedIncident, opened_incident
from inspector.desk.pen import Picture
from inspector.desk.place import Go
from inspector.desk.places import INCIDENTS
from inspector.desk.window import DeskWindow
from inspector.duties.add_people import add_person
from inspector.duties.attach import attachments
from inspector.duties.book_in import book_in
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.report_incident import report_incident
from inspector.duties.rig_files import rig_text
from inspector.duties.tell_incident import incident_told, incidents
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.rig import Method, Rig
from inspector.units import Dimension, read
from tests.desk.conftest import shackle
from tests.desk.deed_forms import begin_anew, faults
from tests.duties.incidents import beach
from tests.duties.rigs import SAND, SNATCH


@pytest.fixture
def told(office: Office) -> Office:
    """An accident in which SH-001 broke; SH-003 may be of one batch with it; a vehicle was there."""
    made = replace(shackle("SH-003"), maker_mark="ABC", serial="77-0412")
    book_in(office, made)
    book_in(office, replace(made, tag="SH-004", serial="77-0413"))
    add_vehicle(office, "V1", "wagon", "club", read("3200 kg", Dimension.MASS, field="mass"), None)
    add_person(
        office, Person("", "Bo Second", "", (Competence("all", office.today - timedelta(days=1)),)), "certificate 12"
    )
    report_incident(
        office,
        NewIncident(
            office.today, Gravity.ACCIDENT, "the long beach", "A shackle opened.", ("SH-003",), ("V1",),
            witnesses=("Ned Watcher",), broken=("SH-003",),
        ),
    )  # fmt: skip
    return office


@pytest.fixture
def page(qtbot: QtBot, told: Office, open_desk: Callable[[Office], DeskWindow]) -> tuple[DeskWindow, IncidentPage]:
    """The window on the accident."""
    desk = open_desk(told)
    desk.pages.go(Go(INCIDENTS, ref_of(told)))
    idle(qtbot, desk)
    found = desk.pages.currentWidget()
    assert isinstance(found, IncidentPage)
    return desk, found


def ref_of(office: Office) -> str:
    """The reference of the only report."""
    (row,) = incidents(office)
    return row.ref


def idle(qtbot: QtBot, desk: DeskWindow) -> None:
    """Wait until nothing is under way."""
    qtbot.waitUntil(lambda: desk.background.is_idle)


def texts(inside: QWidget) -> str:
    """All that labels and buttons say there."""
    labels = [one.text() for one in inside.findChildren(QLabel) if not one.isHidden()]
    return "\n".join([*labels, *(one.text() for one in inside.findChildren(QPushButton))])


def press(qtbot: QtBot, desk: DeskWindow, inside: QWidget, name: str) -> FormPage:
    """Press the button with this accessible name; the form that may open."""
    found = [one for one in inside.findChildren(QPushButton) if one.accessibleName() == name and one.isVisible()]
    assert len(found) == 1, [one.accessibleName() for one in inside.findChildren(QPushButton)]
    found[0].setFocus()
    QTest.keyClick(found[0], Qt.Key.Key_Space)
    idle(qtbot, desk)
    return desk.pages.deed_page


def give(box: Box, text: str) -> None:
    """Write into a field."""
    if isinstance(box, LineBox):
        box.line.setText(text)
    else:
        box.give(text)


def done(qtbot: QtBot, desk: DeskWindow, form: FormPage, page: QWidget) -> None:
    """Do the deed by its key and come back."""
    QTest.keyClick(desk, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: desk.pages.currentWidget() is page, timeout=5000)
    idle(qtbot, desk)


def refused_at(qtbot: QtBot, form: FormPage, key: str) -> str:
    """Try the deed; what is said at this field."""
    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box(key).fault_text))
    return form.box(key).fault_text


def opened(qtbot: QtBot, desk: DeskWindow) -> IncidentPage:
    """The list of reports."""
    QTest.keyClick(desk, Qt.Key.Key_7, Qt.KeyboardModifier.ControlModifier)
    idle(qtbot, desk)
    found = desk.pages.currentWidget()
    assert isinstance(found, IncidentPage)
    return found


def test_an_empty_list_says_what_an_accident_and_a_near_miss_are(qtbot: QtBot, desk: DeskWindow) -> None:
    assert "No incident was reported." in texts(opened(qtbot, desk))


def test_an_accident_is_reported_in_three_lines_and_its_record_is_shown_at_once(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    place = opened(qtbot, desk)
    form = press(qtbot, desk, place, "Report an accident")
    assert form.deed
    assert "no cleaning, no repair, no use" in form.deed.says
    assert [box.asked.key for box in form.boxes if box.asked.needed] == ["what", "place"]

    give(form.box("what"), "The strap broke and hit the door.")
    give(form.box("place"), "the long beach")
    give(form.box("broken"), "SH-001")
    done(qtbot, desk, form, place)

    assert "1 piece and 0 vehicles stay as they were found" in desk.notice.text
    assert place.is_record_shown
    assert "The strap broke and hit the door." in texts(place)
    assert open_item(office, "SH-001").verdict.outcome is Outcome.HOLD
    assert [one.tag for one in incident_told(office, ref_of(office)).kept] == ["SH-001"]


def test_all_that_the_report_can_say_is_kept(
    qtbot: QtBot, one_trip: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    desk = open_desk(one_trip)
    place = opened(qtbot, desk)
    form = press(qtbot, desk, place, "Report an accident")
    given = {
        "what": "It let go.", "place": "the long beach", "on": "24 Nov 2026", "pieces": "SH-001 HR-007",
        "broken": "HR-007", "vehicles": "V1", "witnesses": "Ned Watcher\nAnn Other",
        "distances": "hook; bystander; 12 m\nline; nearest person; 9 m",
    }  # fmt: skip
    for key, text in given.items():
        give(form.box(key), text)
    form.box("trip").give("1 Dec 2026: Beach day 1")

    done(qtbot, desk, form, place)

    found = incident_told(one_trip, ref_of(one_trip))
    facts = {one.label: one.text for one in found.facts}
    assert facts["Day"] == "24 Nov 2026"
    assert facts["Trip"] == "T1 Beach day 1"
    assert facts["Witnesses, names as stated"] == "Ned Watcher, Ann Other"
    assert facts["Broke or let go"] == "HR-007"
    assert {one.tag for one in found.pieces} == {"SH-001", "HR-007"}
    assert found.kept_vehicles == ("V1",)
    assert [(one.one, one.other, one.figure.si) for one in found.distances] == [
        ("hook", "bystander", 12.0), ("line", "nearest person", 9.0)
    ]  # fmt: skip
    assert "The distances that were measured, to one scale" in [
        one.drawing.title for one in place.findChildren(Picture)
    ]


def test_what_is_refused_of_a_report_stands_at_its_field_and_all_that_was_typed_stays(
    qtbot: QtBot, desk: DeskWindow, office: Office
) -> None:
    form = press(qtbot, desk, opened(qtbot, desk), "Report an accident")
    wrong: list[str] = []
    for key, text, says in (
        ("on", "1 Jan 2031", "future"),
        ("pieces", "NOBODY-1", "No piece has the tag"),
        ("vehicles", "V-99", "No vehicle has the tag"),
        ("distances", "hook; 12 m", "three parts"),
        ("distances", "hook; man; far", "far"),
    ):
        for field, said in {"what": "It broke.", "place": "the beach", "broken": "SH-001"}.items():
            give(form.box(field), said)
        give(form.box(key), text)
        form.try_do()
        idle(qtbot, desk)
        if says not in faults(form).get(key, "nothing"):
            wrong.append(f"{key} {text}: {faults(form)}, not “{says}”")
        assert form.deed, [*wrong, f"{key} {text} was reported, and no more can be tried"]
        if form.box("what").draft != "It broke.":
            wrong.append(f"{key} {text}: what was typed did not stay")
        begin_anew(form)
    assert not wrong, "\n".join(wrong)
    assert incidents(office) == ()


def test_a_report_of_nothing_that_was_there_is_refused_where_it_is_asked(qtbot: QtBot, desk: DeskWindow) -> None:
    form = press(qtbot, desk, opened(qtbot, desk), "Report an accident")
    give(form.box("what"), "It broke.")
    give(form.box("place"), "the beach")

    assert "Neither a piece nor a vehicle is named" in refused_at(qtbot, form, "rig")


def test_a_near_miss_holds_what_bore_the_pull_and_keeps_nothing(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    place = opened(qtbot, desk)
    form = press(qtbot, desk, place, "Report a near miss")
    assert form.deed
    assert "report an accident" in form.deed.says
    assert "broken" not in [box.asked.key for box in form.boxes]
    for key, text in {"what": "A jerk.", "place": "the beach", "pieces": "SH-001"}.items():
        give(form.box(key), text)

    done(qtbot, desk, form, place)

    assert "1 piece that bore the pull is held" in desk.notice.text
    found = incident_told(office, ref_of(office))
    assert found.is_near_miss
    assert found.kept == ()
    assert open_item(office, "SH-001").verdict.outcome is Outcome.HOLD
    assert "Keep one more piece: Nothing is kept for a near miss." in texts(place)


def test_the_record_tells_what_may_not_be_done_where_each_piece_is_and_why_there_is_no_sum(
    page: tuple[DeskWindow, IncidentPage],
) -> None:
    said = texts(page[1])

    assert "Do not clean, dry, oil, repair" in said
    assert "broke or let go; kept as found" in said
    assert "in store at shelf 2" in said
    assert "There is no sum: Nobody wrote down how it was rigged." in said
    assert "Close the report: Still kept as evidence: SH-003, V1." in said
    assert "no verdict here certifies a part" in said


def test_every_button_of_the_record_has_a_name(page: tuple[DeskWindow, IncidentPage]) -> None:
    every = [one for one in page[1].findChildren(QPushButton) if one.isVisible()]

    assert len(every) > 8
    assert [one for one in every if not one.accessibleName()] == []


def test_a_statement_is_added_in_the_words_of_the_witness(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    form = press(qtbot, desk, place, "Add a statement")
    give(form.box("witness"), "Ned Watcher")
    give(form.box("text"), "I heard a bang.")

    done(qtbot, desk, form, place)

    assert "Statement of Ned Watcher" in texts(place)
    assert "I heard a bang. (written down by First officer)" in texts(place)


def test_a_hand_over_of_nothing_is_refused_and_of_a_piece_is_written_down(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    form = press(qtbot, desk, place, "Who holds a piece")
    give(form.box("holder"), "Ann Locker")
    assert "Nothing is ticked" in refused_at(qtbot, form, "tag SH-003")

    form.box("tag SH-003").give("yes")
    give(form.box("text"), "seal 0031")
    done(qtbot, desk, form, place)

    (piece,) = incident_told(told, ref_of(told)).pieces
    assert piece.now.startswith("Ann Locker since 25 Nov 2026")
    assert piece.now in texts(place)


def test_one_more_piece_is_kept_and_a_tag_nobody_knows_is_said_at_its_field(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    form = press(qtbot, desk, place, "Keep one more piece")
    give(form.box("tag"), "SH-999")
    give(form.box("why"), "It lay beside it.")
    assert "No piece has the tag" in refused_at(qtbot, form, "tag")

    give(form.box("tag"), "SH-001")
    done(qtbot, desk, form, place)

    assert [one.tag for one in incident_told(told, ref_of(told)).kept] == ["SH-003", "SH-001"]


def test_two_different_people_release_pieces_and_vehicles_and_then_the_report_is_closed(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    form = press(qtbot, desk, place, "Release pieces or vehicles")
    for key in ("tag SH-003", "tag V1"):
        form.box(key).give("yes")
    give(form.box("why"), "The inquiry is over.")
    form.box("second").give("First officer")
    assert "cannot be both names" in refused_at(qtbot, form, "second")
    assert len(incident_told(told, ref_of(told)).kept) == 1

    form.box("second").give("Bo Second")
    done(qtbot, desk, form, place)
    assert "Released: SH-003, V1." in desk.notice.text
    found = incident_told(told, ref_of(told))
    assert (found.kept, found.kept_vehicles) == ((), ())
    assert open_item(told, "SH-003").verdict.outcome is Outcome.HOLD

    form = press(qtbot, desk, place, "Close the report")
    give(form.box("text"), "A worn pin.")
    done(qtbot, desk, form, place)
    assert incident_told(told, ref_of(told)).is_closed
    assert "Add a statement: The report is closed." in texts(place)


def test_a_photo_is_put_to_the_report_and_shown(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office, tmp_path: Path
) -> None:
    desk, place = page
    photo = tmp_path / "scene.png"
    image = QImage(900, 600, QImage.Format.Format_RGB32)
    image.fill(QColor("grey"))
    assert image.save(str(photo))
    form = press(qtbot, desk, place, "Add a paper or photo")
    give(form.box("files"), str(photo))
    form.box("kind").give("photo")

    done(qtbot, desk, form, place)

    assert [one.facts.name for one in attachments(told, ref_of(told))] == ["scene.png"]
    shown = [one for one in place.findChildren(QPushButton) if not one.icon().isNull() and one.isVisible()]
    assert [one.accessibleName() for one in shown] == ["Open the photo scene.png of 25 Nov 2026"]

    out = tmp_path / "out"
    form = press(qtbot, desk, place, "Take its files out")
    give(form.box("folder"), str(out))
    done(qtbot, desk, form, place)
    assert [one.name for one in out.iterdir()] == ["scene.png"]


def test_the_evidence_list_is_printed_and_printed_again(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    press(qtbot, desk, place, "Print the evidence list")
    idle(qtbot, desk)
    number = incident_told(told, ref_of(told)).list_number
    assert number in desk.notice.text
    paper = told.out_tray / f"{number}.pdf"
    paper.unlink()

    press(qtbot, desk, place, f"Print {number} again")

    assert paper.exists()
    assert incident_told(told, ref_of(told)).list_number == number


def test_a_bundle_is_written_into_a_new_folder_and_a_change_in_it_is_found(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office, tmp_path: Path
) -> None:
    desk, place = page
    folder = tmp_path / "bundle"
    form = press(qtbot, desk, place, "Bundle all of it")
    give(form.box("folder"), str(folder))
    done(qtbot, desk, form, place)
    assert (folder / "report.json").exists()
    assert "sha256 of the checksum file" in desk.notice.text

    form = press(qtbot, desk, place, "Bundle all of it")
    give(form.box("folder"), str(folder))
    assert "not empty" in refused_at(qtbot, form, "folder")
    desk.back()

    place = opened(qtbot, desk)
    for change, says in (("", "Nothing was changed."), ("{}", "report.json: It was changed.")):
        if change:
            (folder / "report.json").write_text(change, encoding="utf-8")
        form = press(qtbot, desk, place, "Check a bundle")
        give(form.box("folder"), str(folder))
        done(qtbot, desk, form, place)
        assert says in desk.notice.text


def test_a_piece_of_one_batch_with_what_broke_is_shown_and_can_be_doubted(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    assert "like SH-003: same mark, and the serial begins with 77-" in texts(place)

    form = press(qtbot, desk, place, "Doubt SH-004")
    give(form.box("why"), "One like it broke.")
    done(qtbot, desk, form, place)

    assert "SH-004 is held." in desk.notice.text
    assert place.is_record_shown


def test_escape_goes_from_a_report_to_the_list_which_tells_what_is_still_kept(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office
) -> None:
    desk, place = page
    QTest.keyClick(desk, Qt.Key.Key_Escape)
    idle(qtbot, desk)

    assert not place.is_record_shown
    assert "Still kept: SH-003, V1" in texts(place)
    press(qtbot, desk, place, f"Open the report {ref_of(told)}")
    assert place.is_record_shown


def test_what_was_asked_for_last_is_shown_however_long_an_older_answer_takes(
    qtbot: QtBot, page: tuple[DeskWindow, IncidentPage], told: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk, place = page
    go_on = threading.Event()

    def slowly(office: Office, ref: str) -> OpenedIncident:
        go_on.wait(5)
        return opened_incident(office, ref)

    monkeypatch.setattr(incident_page, "opened_incident", slowly)
    place.open_incident(ref_of(told))
    place.begin()
    qtbot.waitUntil(lambda: not place.is_record_shown)
    go_on.set()
    idle(qtbot, desk)

    assert not place.is_record_shown


def rigged(office: Office) -> Rig:
    """A kept rig with SH-001 between two vehicles."""
    for tag in ("V1", "V2"):
        add_vehicle(office, tag, "wagon", "club", read("3200 kg", Dimension.MASS, field="mass"), None)
    rig = Rig("By the dune", Method.TOW_OUT, "V2", "V1", (("tie_down@V1", "SH-001", "towing_eye@V2"),))
    return keep_rig(office, "R-01", rig).rig


def test_a_kept_rig_brings_its_pieces_and_vehicles_with_it_and_its_sum_is_shown(
    qtbot: QtBot, empty_office: Office, open_desk: Callable[[Office], DeskWindow]
) -> None:
    beach(empty_office)
    rig = keep_rig(empty_office, "R-02", replace(SNATCH, conditions=SAND)).rig
    desk = open_desk(empty_office)
    place = opened(qtbot, desk)
    form = press(qtbot, desk, place, "Report an accident")
    for field, said in {"what": "It broke.", "place": "the beach", "rig": f"R-02: {rig.name}"}.items():
        give(form.box(field), said)

    done(qtbot, desk, form, place)

    found = incident_told(empty_office, ref_of(empty_office))
    assert {one.tag for one in found.pieces} == {"SH-1", "KS-1", "SH-2", "RP-1"}
    assert set(found.kept_vehicles) == {"V-1", "V-2"}
    assert found.result, found.why_no_result
    assert found.result.headline in texts(place)
    assert "It does not tell why it happened." in texts(place)


def test_a_rig_of_a_file_is_taken_but_not_beside_a_kept_one_and_a_broken_file_is_said_at_its_field(
    qtbot: QtBot, office: Office, open_desk: Callable[[Office], DeskWindow], tmp_path: Path
) -> None:
    good, bad = tmp_path / "rig.toml", tmp_path / "bad.toml"
    good.write_text(rig_text(rigged(office)), encoding="utf-8")
    bad.write_text("name = [", encoding="utf-8")
    desk = open_desk(office)
    place = opened(qtbot, desk)
    form = press(qtbot, desk, place, "Report an accident")
    for field, said in {"what": "It broke.", "place": "the beach", "rig_file": str(bad)}.items():
        give(form.box(field), said)
    assert refused_at(qtbot, form, "rig_file")
    assert incidents(office) == ()

    give(form.box("rig_file"), str(good))
    give(form.box("rig"), "R-01: By the dune")
    assert "A kept rig is chosen and a file is named." in refused_at(qtbot, form, "rig_file")
    give(form.box("rig"), "none of these, or nobody knows")
    done(qtbot, desk, form, place)

    assert [one.tag for one in incident_told(office, ref_of(office)).pieces] == ["SH-001"]


@pytest.mark.parametrize("make", [report.accident, report.near_miss])
def test_every_field_of_a_report_has_a_name_and_its_lacks_are_told(
    qtbot: QtBot, desk: DeskWindow, make: Callable[[report.ToReport], object]
) -> None:
    place = opened(qtbot, desk)
    name = {report.accident: "Report an accident", report.near_miss: "Report a near miss"}
    form = press(qtbot, desk, place, next(words for one, words in name.items() if one is make))

    form.try_do()
    qtbot.waitUntil(lambda: bool(form.box("what").fault_text))

    assert form.box("place").fault_text
    for box in form.boxes:
        assert box.control.accessibleName() or box.control.focusProxy()


def test_what_may_be_of_one_batch_is_called_in_by_letters(qtbot: QtBot, page: tuple[DeskWindow, IncidentPage]) -> None:
    desk, place = page
    form = press(qtbot, desk, place, "Call them in by letter")
    assert form.deed and form.deed.key == "recall" and form.box("tags").draft.split() == ["SH-004"]
