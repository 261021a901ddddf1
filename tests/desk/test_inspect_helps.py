"""What helps at the form of an inspection: cautions at the field, points on the drawing, photos, a second name."""

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QDate, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.choice import Choice
from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.inspect.measure_box import MeasureBox
from inspector.desk.window import DeskWindow
from inspector.drawings.reading_points import reading_points
from inspector.duties.attach import attachments
from inspector.duties.change_item import change_owner
from inspector.duties.keep_draft import kept
from inspector.duties.keep_passphrases import set_passphrase, set_wish, vouch_second
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.gear.inspection import Method
from inspector.gear.outcome import Outcome
from inspector.gear.person import Passphrases
from tests.desk.people import OWN_WORDS, SECOND, peopled, with_passphrase
from tests.paper.test_photo import PDF, picture

BENS = "nine grey gulls at noon"
FormOf = Callable[[str], InspectForm]


def notice(desk: DeskWindow) -> str:
    """What the strip says."""
    return desk.notice.text


def walls(form: InspectForm) -> MeasureBox:
    """The wall's fields, the gauge chosen."""
    form.boxes[0].how_box.method.choose(Method.ULTRASONIC_BARE)
    return form.boxes[0]


def kept_note(office: Office, tag: str) -> str:
    """The note of the last inspection."""
    return max(open_item(office, tag).dossier.inspections, key=lambda one: one.id).facts.note


def drop(form: InspectForm, mime: QMimeData) -> bool:
    """Drag something onto the form and let it go; whether it was taken."""
    at, act = QPoint(40, 40), Qt.DropAction.CopyAction
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(at, act, mime, buttons, keys)
    enter.ignore()
    QApplication.sendEvent(form, enter)
    if enter.isAccepted():
        QApplication.sendEvent(form, QDropEvent(QPointF(at), act, mime, buttons, keys))
    return enter.isAccepted()


def form_in(qtbot: QtBot, desk: DeskWindow, tag: str) -> InspectForm:
    """The form of a piece in a window."""
    desk.pages.open_tag(tag)
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    desk.pages.inspect()
    assert desk.pages.form
    return desk.pages.form


def all_good_in(form: InspectForm) -> None:
    """Grade every check of a shackle good, and write its two sizes."""
    for row in form.rows:
        QTest.keyClicks(row, "1")
    for box, text in zip(form.boxes, ("18.9 mm", "21.9 mm"), strict=False):
        box.fields[0].setText(text)


def words_of(choice: Choice[str]) -> list[str]:
    """What may be chosen."""
    return [choice.box.itemText(number) for number in range(choice.box.count())]


def files(*paths: Path) -> QMimeData:
    """Files as they are dragged from a folder."""
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    return mime


def test_a_reading_out_of_the_ordinary_is_cautioned_at_its_field_and_kept_after_a_second_look(
    qtbot: QtBot, desk: DeskWindow, form_of: FormOf, office: Office
) -> None:
    form = form_of("HR-007")
    field = walls(form).fields[0]
    field.setFocus()
    QTest.keyClicks(field, "5.4 mm")
    form.look_ahead()
    assert "It was 5 mm as new" in field.caution.text.text() and field.caution.isVisible()
    assert not field.is_faulty, "a caution is no refusal"
    assert form.preview.judged is not None, "the verdict is shown all the same"
    form.try_save()
    qtbot.waitUntil(field.caution.again.hasFocus)
    assert "Look again" in notice(desk) and form.save_button.isEnabled()
    QTest.keyClick(field.caution.again, Qt.Key.Key_Space)
    assert field.caution.again.text().startswith("✓")
    form.try_save()
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert kept_note(office, "HR-007") == "Read again and confirmed: Wall thickness, top 5.4 mm."


def test_a_tick_holds_for_what_it_was_set_at_and_for_nothing_typed_since(qtbot: QtBot, form_of: FormOf) -> None:
    form = form_of("HR-007")
    field = walls(form).fields[0]
    QTest.keyClicks(field, "5.4 mm")
    form.look_ahead()
    field.caution.again.click()
    form.look_ahead()
    assert field.caution.confirmed
    field.setText("5.5 mm")
    form.look_ahead()
    assert field.caution.is_open
    field.setText("2.9 mm")
    form.look_ahead()
    assert field.caution.isHidden() and field.caution.confirmed is None


def test_return_goes_from_a_field_to_its_tick_and_passes_over_ticks_that_are_not_shown(
    qtbot: QtBot, form_of: FormOf
) -> None:
    form = form_of("HR-007")
    first, second, third = walls(form).fields[:3]
    first.setFocus()
    QTest.keyClicks(first, "29 mm")
    form.look_ahead()
    QTest.keyClick(first, Qt.Key.Key_Return)
    assert first.caution.again.hasFocus()
    QTest.keyClick(first.caution.again, Qt.Key.Key_Return)
    assert second.hasFocus() and not first.caution.again.isChecked()
    QTest.keyClick(second, Qt.Key.Key_Return)
    assert third.hasFocus()


def test_a_day_before_the_last_inspection_is_cautioned_beside_the_day(qtbot: QtBot, form_of: FormOf) -> None:
    form = form_of("SH-001")
    QTest.keyClicks(form.rows[0], "1")
    form.head.on.setDate(QDate(2026, 11, 20))
    form.look_ahead()
    assert "24 Nov 2026" in form.head.caution.text.text() and form.head.caution.isVisible()
    form.head.on.setDate(QDate(2026, 11, 25))
    form.look_ahead()
    assert form.head.caution.isHidden()


def test_the_field_that_has_the_keys_is_ringed_on_the_drawing_and_a_click_goes_to_a_field(
    qtbot: QtBot, form_of: FormOf
) -> None:
    box = form_of("HR-007").boxes[0]
    drawn = box.picture
    assert drawn and [spot.point for spot in drawn.spots] == list(box.measure.points)
    box.fields[1].setFocus()
    assert "The keys are at “bottom”." in drawn.accessibleDescription()
    QTest.keyClicks(box.fields[1], "2.2 mm")
    assert "bottom: 2.2 mm" in drawn.accessibleDescription()
    left = next(spot for spot in drawn.spots if spot.point == "left")
    factor = drawn.width() / drawn.drawing.width_mm
    QTest.mouseClick(
        drawn, Qt.MouseButton.LeftButton, pos=QPoint(round(left.at[0] * factor), round(left.at[1] * factor))
    )
    assert box.fields[2].hasFocus() and "The keys are at “left”." in drawn.accessibleDescription()
    QTest.mouseClick(drawn, Qt.MouseButton.LeftButton, pos=QPoint(1, 1))
    assert box.fields[2].hasFocus(), "a click beside every point goes nowhere"


def test_a_shackle_shows_its_places_on_its_sign_and_a_strap_has_no_picture(form_of: FormOf, office: Office) -> None:
    assert all(box.picture is not None for box in form_of("SH-001").boxes)
    strap = office.kind("kinetic_strap")
    assert all(reading_points(strap, one, None, at=None, typed={}) is None for one in strap.measures)


def test_what_was_seen_last_is_shown_and_never_taken_over(qtbot: QtBot, form_of: FormOf) -> None:
    """No button, no key and no field begins with what was there last time; each check is graded by its own key."""
    form = form_of("HR-007")
    assert all(row.grade is None for row in form.rows)
    assert all(box.is_empty for box in form.boxes) and form.facts()[0].answers == ()
    assert "Last: good, 20 Nov 2026" in form.rows[0].accessibleDescription()
    assert form.boxes[0].fields[1].last.text() == "Last: 2.2 mm, 20 Nov 2026"
    before = {id(one) for one in form.rows}
    names = [one.accessibleName().lower() + one.text().lower() for one in form.findChildren(QPushButton)]
    assert not [name for name in names if "same" in name or "last" in name or "all good" in name or "every" in name]
    for button in form.findChildren(QPushButton):
        if button is form.save_button or "Leave" in button.accessibleName() or button is form.photos.add_button:
            continue
        button.click()
        graded = [row for row in form.rows if row.grade]
        assert len(graded) <= 1, f"{button.accessibleName()} grades more than its own check"
        for row in graded:
            row.give(None)
        assert all(box.is_empty for box in form.boxes), f"{button.accessibleName()} types a reading"
    assert {id(one) for one in form.rows} == before


def test_photos_are_dropped_shown_small_taken_out_and_kept_with_the_inspection(
    qtbot: QtBot, desk: DeskWindow, form_of: FormOf, office: Office, tmp_path: Path
) -> None:
    form = form_of("SH-001")
    for name, data in (("bow.jpg", picture("JPEG", 640, 400)), ("pin.png", picture("PNG", 300, 300)), ("c.pdf", PDF)):
        (tmp_path / name).write_bytes(data)
    assert drop(form, files(tmp_path / "bow.jpg", tmp_path / "pin.png", tmp_path / "c.pdf", tmp_path / "none.jpg"))
    qtbot.waitUntil(lambda: not form.photos.is_busy)
    assert sorted(one.name for one in form.photos.photos) == ["bow.jpg", "pin.png"] and form.is_written
    assert "c.pdf: It is no picture." in form.photos.refused.text()
    assert "none.jpg: It cannot be read" in form.photos.refused.text()

    def shown() -> int:
        return sum(not one.pixmap().isNull() for one in form.photos.findChildren(QLabel))

    qtbot.waitUntil(lambda: shown() == 2)  # those of before the last one came are taken away in a turn of their own
    taken = next(one for one in form.photos.findChildren(QPushButton) if one.accessibleName() == "Take out pin.png")
    QTest.keyClick(taken, Qt.Key.Key_Space)
    assert [one.name for one in form.photos.photos] == ["bow.jpg"]
    QTest.keyClicks(form.rows[0], "1")
    form.try_save()
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    assert [(one.facts.name, one.facts.note) for one in attachments(office, "SH-001")] == [
        ("bow.jpg", "Inspection of 25 Nov 2026")
    ]


def test_a_picture_is_pasted_from_a_check_and_from_the_note(qtbot: QtBot, form_of: FormOf) -> None:
    form = form_of("SH-001")
    for number, place in enumerate((form.rows[0], form.head.note, form.boxes[0].fields[0]), 1):
        image = QImage(40 + number, 30, QImage.Format.Format_RGB32)
        image.fill(Qt.GlobalColor.darkGreen)
        QGuiApplication.clipboard().setImage(image)
        place.setFocus()
        QTest.keyClick(place, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
        qtbot.waitUntil(lambda number=number: len(form.photos.photos) == number)  # type: ignore[misc]
    assert [one.name for one in form.photos.photos] == ["pasted 1.png", "pasted 2.png", "pasted 3.png"]
    assert Image.open(io.BytesIO(form.photos.photos[0].data)).size == (41, 30)
    QGuiApplication.clipboard().setText("some words")
    QTest.keyClick(form.head.note, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert form.head.note_text == "some words" and len(form.photos.photos) == 3


def test_what_is_no_file_and_no_picture_is_not_taken(form_of: FormOf) -> None:
    mime = QMimeData()
    mime.setText("words")
    assert not drop(form_of("SH-001"), mime)


def test_the_same_picture_twice_is_told(qtbot: QtBot, form_of: FormOf, tmp_path: Path) -> None:
    form = form_of("SH-001")
    (tmp_path / "bow.jpg").write_bytes(picture("JPEG", 640, 400))
    for _ in range(2):
        form.photos.take_files([tmp_path / "bow.jpg"])
        qtbot.waitUntil(lambda: not form.photos.is_busy)
    assert len(form.photos.photos) == 1 and "It is here already." in form.photos.refused.text()


def test_second_name_gauge_and_days_reach_the_register(
    qtbot: QtBot, desk: DeskWindow, form_of: FormOf, office: Office
) -> None:
    form = form_of("SH-001")
    assert not form.head.more.gauge.isVisible(), "the form is calm until somebody asks for more"
    QTest.mouseClick(form.head.more.fold.head, Qt.MouseButton.LeftButton)
    assert form.head.more.gauge.isVisible()
    QTest.keyClicks(form.head.more.gauge, "Calliper 2")
    QTest.keyClicks(form.head.more.next_within, "abc")
    QTest.keyClicks(form.boxes[0].fields[0], "18.9 mm")
    form.try_save()
    qtbot.waitUntil(form.head.more.next_within.hasFocus)
    assert "no number of days" in form.head.more.next_within.fault.text()
    form.head.more.next_within.setText("90")
    form.try_save()
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    kept = max(open_item(office, "SH-001").dossier.inspections, key=lambda one: one.id).facts
    assert kept.next_within_days == 90 and [one.gauge for one in kept.readings] == ["Calliper 2"]


def test_nobody_is_second_name_for_himself_and_it_is_told_there(qtbot: QtBot, form_of: FormOf) -> None:
    form = form_of("SH-001")
    QTest.keyClicks(form.rows[0], "1")
    form.head.more.second.choose(form.head.inspector.id)
    form.look_ahead()
    assert "cannot be both names" in form.head.more._second_fault.text()
    assert form.head.more.second.box.isVisible(), "it unfolds where something is wrong"


def test_where_passphrases_are_required_the_preview_under_another_name_passes_as_little_as_the_deed(
    office: Office, open_desk: Callable[[Office], DeskWindow], qtbot: QtBot
) -> None:
    proved = with_passphrase(peopled(office))
    ben = next(one for one in people(proved) if one.name == SECOND)
    set_passphrase(proved, ben.id, BENS)
    set_wish(proved, Passphrases.REQUIRED)
    desk = open_desk(proved)
    form = form_in(qtbot, desk, "SH-002")
    all_good_in(form)
    form.look_ahead()
    assert form.preview.judged and form.preview.judged.verdict.outcome is Outcome.FIT
    form.head.choose_inspector(ben.id)
    form.look_ahead()
    written = record_inspection(proved, "SH-002", form.facts()[0])
    shown, said = form.preview.judged.verdict, written.verdict
    assert said.outcome is Outcome.HOLD
    assert (shown.outcome, [(one.rule, one.status) for one in shown.findings]) == (
        said.outcome, [(one.rule, one.status) for one in said.findings],
    )  # fmt: skip
    desk._may_close = True


def test_the_second_name_is_proved_beside_it_where_the_club_requires_that_and_then_one_s_own_gear_is_passed(
    office: Office, open_desk: Callable[[Office], DeskWindow], qtbot: QtBot
) -> None:
    proved = with_passphrase(peopled(office))
    set_passphrase(proved, SECOND, BENS)
    set_wish(proved, Passphrases.REQUIRED)
    change_owner(vouch_second(proved, SECOND, BENS), "SH-002", proved.officer.name, "bought", second=SECOND)
    desk = open_desk(proved)
    form = form_in(qtbot, desk, "SH-002")
    more = form.head.more
    qtbot.waitUntil(lambda: not more.proof.isHidden())
    assert more.proof.echoMode() is QLineEdit.EchoMode.Password
    more.open()
    more.second.box.setFocus()
    QTest.keyClick(more.second.box, Qt.Key.Key_Tab)
    assert more.proof.hasFocus()
    QTest.keyClick(more.proof, Qt.Key.Key_Tab)
    assert more.gauge.hasFocus()
    all_good_in(form)
    more.second.box.setCurrentText(next(one for one in words_of(more.second) if one.startswith(SECOND)))
    form.look_ahead()
    assert form.preview.judged and form.preview.judged.verdict.outcome is Outcome.HOLD

    more.proof.setText(OWN_WORDS)
    form.look_ahead()
    assert "Fit" in form.preview.text
    form.try_save()
    qtbot.waitUntil(lambda: more.proof.is_faulty)
    assert "It is not that of Ben Second." in more.proof.fault.text() and more.proof.isVisible()
    assert more.proof.text() == OWN_WORDS and not open_item(proved, "SH-002").dossier.inspections
    assert form.save_button.isEnabled()

    form.keeper.flush()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    draft = kept(proved, "inspect SH-002")
    assert draft and OWN_WORDS not in str(draft.values)

    more.proof.setText(BENS)
    form.try_save()
    qtbot.waitUntil(lambda: "is kept" in notice(desk))
    assert open_item(proved, "SH-002").verdict.outcome is Outcome.FIT and "passes nothing" not in notice(desk)


def test_without_it_the_inspection_is_kept_and_passes_nothing_and_elsewhere_nobody_is_asked(
    office: Office, open_desk: Callable[[Office], DeskWindow], qtbot: QtBot
) -> None:
    proved = with_passphrase(peopled(office))
    desk = open_desk(proved)
    form = form_in(qtbot, desk, "SH-002")
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert form.head.more.proof.isHidden(), "they are only wanted"
    desk.pages.leave_form(lambda: None)
    change_owner(proved, "SH-002", proved.officer.name, "bought", second=SECOND)
    set_passphrase(proved, SECOND, BENS)
    set_wish(proved, Passphrases.REQUIRED)
    form = form_in(qtbot, desk, "SH-002")
    all_good_in(form)
    form.head.more.second.box.setCurrentText(next(w for w in words_of(form.head.more.second) if w.startswith(SECOND)))
    form.try_save()
    qtbot.waitUntil(lambda: "is kept" in notice(desk))
    assert "none was given here for: Ben Second" in notice(desk)
    assert open_item(proved, "SH-002").verdict.outcome is Outcome.HOLD


def test_every_option_of_the_command_has_its_place(form_of: FormOf) -> None:
    """The window can say what the command can; only to grade all good at once is left to the command line."""
    from inspector.cli.writing import inspect

    form = form_of("HR-007")
    how = form.boxes[0].how_box
    places = {
        "grades": form.rows, "readings": form.boxes, "method": how.method, "surface": how.surface,
        "gauge": form.head.more.gauge, "block_checked": how.block, "on": form.head.on, "kind": form.head.occasion,
        "by": form.head.by, "second": form.head.more.second, "next_within": form.head.more.next_within,
        "note": form.head.note, "again": form.boxes[0].fields[0].caution.again,
    }  # fmt: skip
    assert {one.name for one in inspect.params} - {"tag", "all_good"} == set(places)


@pytest.fixture(autouse=True)
def _clean_clipboard(qapp: QApplication) -> None:
    QGuiApplication.clipboard().clear()
