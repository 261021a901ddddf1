"""The form of an inspection: nothing is assumed, a bad number stays where it is, nothing typed is lost."""

from collections.abc import Callable
from unittest import mock

from PySide6.QtCore import QDate, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.look import TextSize
from inspector.desk.pen import Mark
from inspector.desk.window import DeskWindow
from inspector.gear.inspection import InspectionKind, Method
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.refused import Refused


def test_nothing_is_graded_beforehand_and_every_grade_is_told_what_it_means(form: InspectForm) -> None:
    """Silence is not consent: no grade, no reading, no verdict. Question and words for slight and bad stand in the row;
    a page scrolled by does not change what was chosen."""
    assert all(row.grade is None for row in form.rows)
    assert not any(button.isChecked() for row in form.rows for button in row.buttons.values())
    facts, faults = form.facts()
    assert (facts.answers, facts.readings, faults) == ((), (), 0)
    assert form.preview.judged is None
    assert "Nothing is written yet" in form.preview.text
    for row in form.rows:
        told = row.accessibleDescription()
        assert row.check.asks in told
        assert row.check.bad in told
        assert row.check.slight in told
    event = mock.Mock()
    form.head.occasion.box.wheelEvent(event)
    event.ignore.assert_called_once_with()
    assert form.head.occasion.value is InspectionKind.PERIODIC


def test_a_number_key_grades_and_goes_on_and_delete_takes_the_grade_away(qtbot: QtBot, form: InspectForm) -> None:
    """One key a check; where a check knows only good and bad, that for slight does nothing but say so."""
    row = next(row for row in form.rows if row.check.slight)
    for key, grade in (("1", Grade.GOOD), ("2", Grade.SLIGHT), ("3", Grade.BAD), ("0", Grade.NOT_SEEN)):
        assert row.grade is None and not form.is_written, key
        row.setFocus()
        QTest.keyClicks(row, key)
        assert row.grade is grade, key
        assert row.buttons[grade].isChecked(), key
        assert not row.hasFocus(), key
        assert form.is_written, key
        QTest.keyClick(row, Qt.Key.Key_Delete)
        assert row.grade is None, key
        assert not any(button.isChecked() for button in row.buttons.values()), key
    short = next(row for row in form.rows if not row.check.slight)
    QTest.keyClicks(short, "2")
    assert short.grade is None
    assert short._hint.isVisible()
    assert Grade.SLIGHT not in short.buttons


def test_the_verdict_is_shown_while_one_types(qtbot: QtBot, form: InspectForm) -> None:
    """A bad grade turns the preview; nothing is kept of it."""
    row = next(row for row in form.rows if row.check.key == "cracks")
    QTest.keyClicks(row, "3")
    qtbot.waitUntil(lambda: form.preview.judged is not None)
    assert form.preview.judged and form.preview.judged.verdict.outcome is Outcome.RETIRE
    assert "Retire" in form.preview.text


def test_a_bad_number_is_told_at_its_field_and_the_rest_stands(
    qtbot: QtBot, desk: DeskWindow, form: InspectForm
) -> None:
    """Nothing is sent, nothing is lost, and the keys go where the fault is."""
    QTest.keyClicks(form.rows[0], "1")
    bad, good = form.boxes[0].fields[0], form.boxes[1].fields[0]
    QTest.keyClicks(bad, "abc")
    QTest.keyClicks(good, "21.9 mm")
    with mock.patch("inspector.desk.opened.inspected") as kept:
        form.try_save()
        qtbot.waitUntil(bad.hasFocus)
    kept.assert_not_called()
    assert "does not begin with a number" in bad.fault.text()
    assert bad.is_faulty and not good.is_faulty
    assert "does not begin with a number" in bad.accessibleDescription()
    assert "One reading cannot be taken" in desk.notice.text
    assert (bad.text(), good.text(), form.rows[0].grade) == ("abc", "21.9 mm", Grade.GOOD)
    bad.setText("18.9 mm")
    form.look_ahead()
    assert not bad.is_faulty


def test_the_preview_says_what_it_leaves_out(qtbot: QtBot, form: InspectForm) -> None:
    """A verdict without an unclear reading is not shown as if it had it."""
    QTest.keyClicks(form.rows[0], "3")
    QTest.keyClicks(form.boxes[0].fields[0], "19")
    form.look_ahead()
    shown = [label.text() for label in form.preview.findChildren(type(form.boxes[0].fault))]
    assert "Without one reading that is not clear. Not clear yet: Body at the thinnest place." in shown


def test_a_preview_without_an_unclear_reading_shows_no_mark_of_fit_and_names_the_reading(
    qtbot: QtBot, form_of: Callable[[str], InspectForm]
) -> None:
    """Typed and waited, nothing saved: what the verdict leaves out may be what holds the piece."""
    form = form_of("SH-001")
    for row in form.rows:
        QTest.keyClicks(row, "1")
    body, pin = form.boxes[0].fields[0], form.boxes[1].fields[0]
    QTest.keyClicks(body, "19 mm")
    QTest.keyClicks(pin, "22 mm")
    qtbot.waitUntil(lambda: marks(form) == {Outcome.FIT})
    pin.setText("22")
    qtbot.waitUntil(lambda: "Not clear yet: Pin" in preview_text(form))
    assert marks(form) == set() and "Fit" not in preview_text(form)
    pin.setText("22 mm")
    qtbot.waitUntil(lambda: marks(form) == {Outcome.FIT})


def test_a_preview_that_holds_or_retires_is_shown_whatever_is_not_clear(
    qtbot: QtBot, form_of: Callable[[str], InspectForm]
) -> None:
    """No reading that is still unclear makes it better."""
    form = form_of("SH-001")
    QTest.keyClicks(form.rows[0], "3")
    QTest.keyClicks(form.boxes[1].fields[0], "22")
    qtbot.waitUntil(lambda: marks(form) == {Outcome.RETIRE})


def test_what_it_was_measured_with_is_asked_for_until_it_is_said(
    qtbot: QtBot, form_of: Callable[[str], InspectForm]
) -> None:
    form = form_of("HR-007")
    box = form.boxes[0]
    QTest.keyClicks(box.fields[0], "4.9 mm")
    QTest.keyClicks(box.fields[1], "-2 mm")
    qtbot.waitUntil(lambda: "not said what it was measured with" in box.fault.text() and box.fault.isVisible())
    form.try_save()
    box.how_box.method.choose(Method.ULTRASONIC_BARE)
    qtbot.waitUntil(lambda: "not said what it was measured with" not in box.fault.text())
    qtbot.waitUntil(lambda: "bottom: “-2 mm” cannot be" in box.fault.text())
    assert box.fields[1].caution.isHidden()


def marks(form: InspectForm) -> set[Outcome]:
    """The outcomes whose marks the preview shows."""
    shown = [one for one in form.preview.findChildren(Mark) if one.isVisible()]
    return {one.outcome for one in shown if isinstance(one.outcome, Outcome)}


def preview_text(form: InspectForm) -> str:
    """All that the preview says."""
    return "\n".join(one.text() for one in form.preview.findChildren(QLabel) if one.isVisible())


def test_a_wall_reading_waits_until_it_is_said_what_it_was_taken_with(
    qtbot: QtBot, form_of: Callable[[str], InspectForm]
) -> None:
    """Neither the gauge nor the calliper is taken for granted."""
    form = form_of("HR-007")
    box = form.boxes[0]
    QTest.keyClicks(box.fields[0], "2.9 mm")
    facts, faults = form.facts()
    assert (facts.readings, faults) == ((), 1)
    assert "not said what it was measured with" in box.fault.text()
    assert box.first_fault() is box.how_box.method.box
    box.how_box.method.choose(Method.ULTRASONIC_BARE)
    facts, faults = form.facts()
    assert faults == 0
    assert [(one.point, one.method) for one in facts.readings] == [("top", Method.ULTRASONIC_BARE)]


def test_a_unit_typed_once_is_written_into_the_next_field(qtbot: QtBot, form_of: Callable[[str], InspectForm]) -> None:
    """Return goes from place to place; the unit follows, in plain sight."""
    first, second, third = form_of("HR-007").boxes[0].fields[:3]
    QTest.keyClicks(first, "2.9 mm")
    second.setFocus()
    QTest.keyClicks(second, "2.2")
    QTest.keyClick(second, Qt.Key.Key_Return)
    assert third.hasFocus()
    assert second.text() == "2.2 mm"


def test_a_day_to_come_is_refused_beside_the_day(qtbot: QtBot, form: InspectForm) -> None:
    """The register's own refusal, shown at its field."""
    form.head.on.setDate(QDate(2027, 1, 1))
    QTest.keyClicks(form.rows[0], "1")
    form.look_ahead()
    assert "future" in form.head.fault.text()
    assert form.head.fault.isVisible()
    assert form.preview.judged is None


def test_what_the_register_refuses_leaves_the_form_as_it_is(qtbot: QtBot, desk: DeskWindow, form: InspectForm) -> None:
    """A failing save loses nothing and may be tried again."""
    QTest.keyClicks(form.rows[0], "1")
    form.head.note.setPlainText("a note")
    refusal = Refused("register", "Another window is writing to it.", "Wait a moment.")
    with mock.patch("inspector.desk.opened.inspected", side_effect=refusal):
        form.try_save()
        assert not form.save_button.isEnabled()
        qtbot.waitUntil(desk.notice.isVisible)
    assert "Another window is writing to it." in desk.notice.text
    assert "Wait a moment." in desk.notice.text
    assert desk.pages.form is form
    assert (form.rows[0].grade, form.head.note_text) == (Grade.GOOD, "a note")
    assert form.save_button.isEnabled()


def test_the_tab_key_goes_through_the_form_from_top_to_bottom(qtbot: QtBot, form: InspectForm) -> None:
    """Checks, then measures, then the note, then the button that saves."""
    stops = [form.rows[0], form.boxes[0].fields[0], form.boxes[-1].fields[0], form.head.note, form.save_button]
    form.rows[0].setFocus()
    met: list[QWidget] = []
    for _ in range(40):
        focused = QApplication.focusWidget()
        assert focused is not None
        met.append(focused)
        QTest.keyClick(focused, Qt.Key.Key_Tab)
    assert [one for one in met if one in stops][: len(stops)] == stops


def test_where_the_keys_go_stays_in_sight(
    qtbot: QtBot, desk: DeskWindow, form_of: Callable[[str], InspectForm]
) -> None:
    """Choices that open above a field do not push it out of the window."""
    desk.resize(1024, 700)
    form = form_of("HR-007")
    box = form.boxes[0]
    field = box.fields[-1]
    field.setFocus()
    QTest.keyClicks(field, "abc")
    box.how_box.method.choose(Method.ULTRASONIC_BARE)
    form.look_ahead()
    area = form._area.viewport()
    qtbot.waitUntil(
        lambda: field.is_faulty and area.rect().contains(field.fault.mapTo(area, field.fault.rect().center()))
    )


def test_a_form_that_was_left_at_once_reads_nothing_any_more_and_previews_when_it_is_back(
    qtbot: QtBot, desk: DeskWindow, form: InspectForm
) -> None:
    """Behind a closed window the register may be closed as well."""
    QTest.keyClicks(form.rows[0], "1")
    assert form._pause.isActive()
    with mock.patch("inspector.desk.inspect.inspect_form.preview_verdict") as asked:
        desk.hide()
        qtbot.wait(2 * form._pause.interval())
        assert not asked.called
    desk.show()
    qtbot.waitUntil(lambda: form.preview.judged is not None)


def test_in_double_text_the_tag_stays_in_sight_and_the_form_has_more_room_than_the_verdict(
    qtbot: QtBot, desk: DeskWindow, form: InspectForm
) -> None:
    """The head scrolls away with the questions; whoever inspects one piece after another must see which it is."""
    desk.look.set_text(TextSize.DOUBLE)
    desk.resize(1280, 720)
    row = form.rows[-1]
    row.setFocus()
    form._area.ensureWidgetVisible(row)
    qtbot.waitUntil(lambda: form._area.height() > form.preview.height())
    tag = form._opened.tag
    shown = [one for one in form.findChildren(QLabel) if one.text() == tag and not one.visibleRegion().isEmpty()]
    assert shown and (desk.width(), desk.height()) == (1280, 720)
    assert row.height() <= form._area.viewport().height(), "a whole question is seen at once"
