"""The page of a rig: asked by keys, its whole account at once, changes taken, wrong ones tried, nothing typed lost."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.form.form_page import FormPage
from inspector.desk.pen import Picture
from inspector.desk.place import Go
from inspector.desk.places import RIG
from inspector.desk.rig_asked import RigAsked
from inspector.desk.rig_form import RigForm
from inspector.desk.rig_page import RigPage
from inspector.desk.window import DeskWindow
from inspector.drawings.rig_words import rig_word
from inspector.duties.keep_rigs import rigs
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip
from inspector.duties.work_rigs import conditions_of, propose_rig
from inspector.gear.rig import Footing, Method
from inspector.gear.rig_result import RigOutcome, RigResult
from tests.desk.cut_off import SIZES, cramped_buttons, wide_areas, wrong_at
from tests.desk.outing import beach as beach
from tests.desk.outing import beach_desk as beach_desk
from tests.desk.outing import without_kit
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_names import controls
from tests.desk.test_trip_page import pressed, settle, to_trip

Opener = Callable[[Office], DeskWindow]
BEST = "RP-1F SH-1 KS-1 SH-2 RP-2F"


@pytest.fixture
def page(qtbot: QtBot, desk: DeskWindow) -> RigPage:
    """Ctrl+R."""
    QTest.keyClick(focused(), Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier)
    settle(qtbot, desk)
    return desk.pages.rig


@pytest.fixture
def shown(qtbot: QtBot, page: RigPage, desk: DeskWindow) -> RigPage:
    """The page with a proposed rig: V-2 pulls V-1."""
    desk.pages.go(Go(RIG, RigAsked("T-1", Method.KINETIC, "V-2", "V-1")))
    settle(qtbot, desk)
    settle(qtbot, desk)
    return page


def form_of(page: RigPage) -> RigForm:
    """The form."""
    assert page.form
    return page.form


def result_of(page: RigPage) -> RigResult:
    """The rig shown."""
    assert page.account.result
    return page.account.result


def check(qtbot: QtBot, page: RigPage, desk: DeskWindow, runs: str) -> None:
    """Type runs by hand, Ctrl and Return."""
    edit = form_of(page).runs.runs
    edit.setFocus()
    edit.setPlainText(runs)
    QTest.keyClick(edit, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    settle(qtbot, desk)


def test_the_page_begins_with_the_next_trip_and_its_ground(page: RigPage) -> None:
    """The account says what to do; nothing is empty."""
    form = form_of(page)
    assert form.trip.value and form.trip.value.ref == "T-1"
    assert (form.pulling.value, form.bogged.value) == ("V-1", "V-2")
    assert form.conditions.bogged_in.value is Footing.SOFT_DRY_SAND
    told = shown_texts(page)
    assert "No rig is shown yet." in told and "No rig is kept yet." in told
    assert focused() is form.pulling.box


def test_return_proposes_the_best_rig_and_all_of_it_is_shown(
    qtbot: QtBot, page: RigPage, desk: DeskWindow, beach: Office
) -> None:
    """The same as the deed's own answer, part by part."""
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    settle(qtbot, desk)
    shown = result_of(page)
    conditions = conditions_of(form_of(page).trip.value)  # type: ignore[arg-type]
    wanted = propose_rig(beach, "T-1", Method.KINETIC, "V-1", "V-2", conditions).result
    assert wanted and shown == wanted
    told = shown_texts(page)
    assert told.count(rig_word(shown.outcome)) >= 1 and shown.headline in told
    for link in shown.links:
        assert f"{link.tag} · {link.kind_name}" in told
    for joint in shown.joints:
        assert f"{joint.one} to {joint.other}" in told and joint.says in told
    for assumption in shown.load.assumptions:
        assert assumption.what in told and assumption.value in told
    for change in shown.changes:
        assert change.says in told
    for step in shown.load.steps:
        assert step in told
    assert "Where to stand, and what flies" in told and all(one in told for one in shown.cautions)
    titles = {one.drawing.title for one in page.findChildren(Picture)}
    assert {"The rig, from the stuck vehicle to the far end", "Greatest pull by speed"} <= titles


def test_the_picture_tells_on_hover_and_says_itself(shown: RigPage) -> None:
    """For those who see it and those who do not."""
    chain = next(one for one in shown.findChildren(Picture) if one.drawing.title.startswith("The rig, from"))
    assert "KS-1" in chain.accessibleDescription()
    told = {shape.tells for shape in chain.drawing.shapes}
    assert any(text.startswith("KS-1") for text in told)


def test_a_figure_typed_with_its_unit_reaches_the_sum(qtbot: QtBot, page: RigPage, desk: DeskWindow) -> None:
    """Typed for this pull, shown as typed."""
    speed = form_of(page).conditions.speed
    speed.setFocus()
    QTest.keyClicks(speed, "3 mph")
    QTest.keyClick(speed, Qt.Key.Key_Return)
    settle(qtbot, desk)
    told = [one for one in result_of(page).load.assumptions if one.typed]
    assert [one.value for one in told if "Speed" in one.what] == ["3 mph"]
    assert speed.text() == "3 mph"


def test_a_figure_without_its_unit_is_refused_at_its_field_and_stays(
    qtbot: QtBot, page: RigPage, desk: DeskWindow
) -> None:
    """Nothing is worked out, nothing typed is lost."""
    speed = form_of(page).conditions.speed
    speed.setFocus()
    QTest.keyClicks(speed, "6")
    QTest.keyClick(speed, Qt.Key.Key_Return)
    settle(qtbot, desk)
    assert page.account.result is None
    assert speed.is_faulty and speed.fault.text().startswith("The unit is missing.")
    assert speed.text() == "6" and focused() is speed
    speed.setText("6 km/h")
    QTest.keyClick(speed, Qt.Key.Key_Return)
    settle(qtbot, desk)
    assert not speed.is_faulty and page.account.result is not None


def test_what_cannot_be_is_refused_at_its_field(qtbot: QtBot, shown: RigPage, desk: DeskWindow) -> None:
    """The rig that is shown stays."""
    before, wrong = result_of(shown), []
    for field, typed, says in (
        ("slope", "95 °", "slope"), ("slack", "-2 m", "below 0"), ("layers", "2.5", "whole number"),
    ):  # fmt: skip
        box = getattr(form_of(shown).conditions, field)
        stood = box.text()
        box.setText(typed)
        form_of(shown).try_propose()
        settle(qtbot, desk)
        if not box.is_faulty or says not in box.fault.text().lower() or box.text() != typed:
            wrong.append(f"{field} {typed}: “{box.fault.text()}”, {box.text()} stands")
        if result_of(shown) is not before:
            wrong.append(f"{field} {typed}: another rig is shown")
        box.setText(stood)
    assert not wrong, "\n".join(wrong)


def test_a_tie_down_typed_into_the_run_is_never_and_shows_its_section(
    qtbot: QtBot, shown: RigPage, desk: DeskWindow
) -> None:
    """A wrong rig is tried for a class: the joint is refused with the section and its numbers."""
    check(qtbot, shown, desk, "RP-1F SH-1 KS-1 SH-2 tie_down@V-2")
    found = result_of(shown)
    assert found.outcome is RigOutcome.NEVER and found.rig.runs[0][-1] == "tie_down@V-2"
    told = shown_texts(shown)
    never = next(one for one in found.joints if one.outcome is RigOutcome.NEVER)
    assert "Never" in told and never.says in told and all(line in told for line in never.sums)
    assert any(one.drawing.title.endswith("tie-down point of V-2") for one in shown.findChildren(Picture))


def test_the_changed_rig_is_shown_when_a_change_is_taken_and_the_one_before_comes_back(
    qtbot: QtBot, shown: RigPage, desk: DeskWindow
) -> None:
    """The form follows."""
    before = result_of(shown)
    change = next(one for one in before.changes if one.rig and one.key == "slower")
    assert change.rig and change.rig.conditions.speed
    pressed(shown, "Take it")
    settle(qtbot, desk)
    after = result_of(shown)
    assert (after.rig.conditions, after.rig.trip) == (change.rig.conditions, "T-1")
    assert after.outcome is change.outcome and after.safety_factor == change.safety_factor
    assert form_of(shown).conditions.speed.text() == change.rig.conditions.speed.as_typed
    pressed(shown, "The rig before")
    assert result_of(shown) is before and form_of(shown).conditions.speed.text() == ""


def test_an_unknown_tag_is_told_at_the_runs(qtbot: QtBot, shown: RigPage, desk: DeskWindow) -> None:
    """What was typed stays."""
    check(qtbot, shown, desk, "RP-1F SH-77 KS-1")
    runs = form_of(shown).runs
    assert "SH-77" in runs.fault.text() and runs.typed == (("RP-1F", "SH-77", "KS-1"),)
    assert result_of(shown).rig.runs[0][1] == "SH-1"


def test_runs_are_read_however_they_are_parted(page: RigPage) -> None:
    """Blanks, commas, dashes with blanks, arrows; one run a line."""
    runs = form_of(page).runs
    runs.runs.setPlainText("RP-1F, SH-1 – KS-1 - SH-2 → RP-2F\n\n SB-1  BR-1 ")
    assert runs.typed == (tuple(BEST.split()), ("SB-1", "BR-1"))


def test_no_run_typed_is_said_there(page: RigPage) -> None:
    """Ctrl and Return on nothing."""
    form_of(page).try_check()
    assert form_of(page).runs.fault.text().startswith("No run is typed yet.")


def test_another_figure_marks_the_account_as_an_older_answer(page: RigPage, shown: RigPage) -> None:
    """Nobody takes it for the answer to what is typed now."""
    stale = "What is asked was changed since"
    assert stale not in shown_texts(shown)
    QTest.keyClicks(form_of(shown).conditions.slope, "5")
    assert stale in shown_texts(shown)


def test_a_kit_that_makes_no_rig_says_what_it_lacks(qtbot: QtBot, page: RigPage, desk: DeskWindow) -> None:
    """And what to do."""
    form_of(page).method.choose(Method.WINCH)
    form_of(page).try_propose()
    settle(qtbot, desk)
    told = shown_texts(page)
    assert "No rig: V-1 cannot pull V-2 with this kit." in told and "It lacks a fit winch on V-1." in told
    assert "Choose another method" in told and page.account.result is None


def test_a_rig_is_kept_and_opened_again(qtbot: QtBot, shown: RigPage, desk: DeskWindow, beach: Office) -> None:
    """Under a reference of the officer's own; a second one of that name is refused at its field."""
    rig = result_of(shown).rig
    shown.account.ref.setText("R-01")
    QTest.keyClick(shown.account.ref, Qt.Key.Key_Return)
    settle(qtbot, desk)
    settle(qtbot, desk)
    assert [one.rig for one in rigs(beach)] == [rig] and "R-01 is kept" in desk.notice.text
    QTest.keyClick(shown.account.ref, Qt.Key.Key_Return)
    settle(qtbot, desk)
    assert "Another rig has the reference" in shown.account.ref.fault.text()
    check(qtbot, shown, desk, "RP-1F SH-1 KS-1 SH-2 tie_down@V-2")
    assert result_of(shown).rig != rig
    form_of(shown).kept_rigs._open()
    settle(qtbot, desk)
    assert result_of(shown).rig == rig and form_of(shown).runs.typed == rig.runs


def test_the_sheet_of_the_rig_is_printed(qtbot: QtBot, shown: RigPage, desk: DeskWindow) -> None:
    """What is shown, not a new sum."""
    pressed(shown, "Print the rig sheet")
    settle(qtbot, desk)
    assert "is printed." in desk.notice.text and "Rig sheet of" in desk.notice.text


def test_a_pair_opens_its_rig_at_the_speed_it_holds_up_to(qtbot: QtBot, desk: DeskWindow) -> None:
    """From the trip's table; Esc goes back to the trip."""
    trip = to_trip(qtbot, desk)
    view = trip.pair_part.views[0]
    line = view.line
    assert line and line.up_to_m_per_s
    QTest.keyClick(view, Qt.Key.Key_Return)
    settle(qtbot, desk)
    settle(qtbot, desk)
    found = result_of(desk.pages.rig)
    assert (found.rig.pulling, found.rig.bogged) == (line.pulling, line.bogged)
    assert found.rig.conditions.speed and found.rig.conditions.speed.si == line.up_to_m_per_s
    assert found.rig.runs == line.runs and found.outcome is line.outcome
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert desk.pages.currentWidget() is trip


def test_what_is_typed_is_there_again_after_a_piece_was_looked_up(
    qtbot: QtBot, page: RigPage, desk: DeskWindow
) -> None:
    """Scanned on a box of choices, which chooses nothing; Esc comes back."""
    form = form_of(page)
    form.conditions.slack.setText("2 metr")
    form.pulling.box.setFocus()
    for sign in "SH-1":
        QTest.keyClicks(focused(), sign)
    assert form.pulling.value == "V-1"
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    settle(qtbot, desk)
    assert desk.pages.piece and desk.pages.piece.tag == "SH-1"
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert desk.pages.currentWidget() is page
    assert form_of(page).conditions.slack.text() == "2 metr"


def test_another_plan_keeps_what_is_typed(qtbot: QtBot, page: RigPage, desk: DeskWindow, beach: Office) -> None:
    """The choices follow the register, the fields stay."""
    form_of(page).conditions.slack.setText("2 metr")
    form_of(page).runs.runs.setPlainText(BEST)
    change_trip(beach, "T-1", without_kit, "packed anew")
    desk.pages.go(Go(RIG))
    settle(qtbot, desk)
    form = form_of(page)
    assert form.trip.value and form.trip.value.kit == ()
    assert form.conditions.slack.text() == "2 metr" and form.runs.typed == (tuple(BEST.split()),)


def test_without_trips_the_page_says_so_and_offers_the_hand(
    qtbot: QtBot, open_desk: Opener, empty_office: Office
) -> None:
    """Proposing takes a trip's kit."""
    desk = open_desk(empty_office)
    desk.pages.go(Go(RIG))
    settle(qtbot, desk)
    form = form_of(desk.pages.rig)
    assert form.trip.value is None and not form.propose_button.isEnabled()
    assert "type the rig by hand" in form.trip.box.currentText()
    assert "inspector trip plan" not in shown_texts(desk.pages.rig)
    QTest.keyClick(form.pulling.box, Qt.Key.Key_Return)
    assert form.runs.fault.text().startswith("No run is typed yet.")
    next(one for one in desk.pages.rig.findChildren(QPushButton) if one.text() == "Plan a trip").click()
    qtbot.waitUntil(lambda: isinstance(desk.pages.currentWidget(), FormPage))


def test_a_narrow_window_shows_the_account_and_escape_the_form(qtbot: QtBot, shown: RigPage, desk: DeskWindow) -> None:
    """One at a time."""
    desk.resize(960, 600)
    qtbot.wait(20)
    assert shown.account.isVisible() and not form_of(shown).isVisible()
    QTest.keyClick(focused(), Qt.Key.Key_Escape)
    assert form_of(shown).isVisible() and not shown.account.isVisible()


def test_every_control_has_a_name(shown: RigPage) -> None:
    """For whoever cannot see the page."""
    found = list(controls(QAccessible.queryAccessibleInterface(shown)))
    assert len(found) > 15
    assert [type(one.object()).__name__ for one in found if not one.text(QAccessible.Text.Name)] == []


def test_nothing_is_cut_off_sideways(qtbot: QtBot, shown: RigPage, desk: DeskWindow) -> None:
    """And every button a finger may press is 48 pixels high."""

    def found() -> list[str]:
        return wide_areas(shown) + cramped_buttons(shown, least_px=48)

    wrong = wrong_at(qtbot, SIZES, desk, found)
    assert not wrong, "\n".join(wrong)
