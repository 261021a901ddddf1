"""What is typed in an inspection survives a closed window; nobody gets rid of a bad reading by closing it."""

from collections.abc import Callable
from unittest import mock

from PySide6.QtCore import QDate, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.window import DeskWindow
from inspector.duties.keep_draft import Draft, drafts, keep, kept
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.tell_ledger import told_ledger
from inspector.gear.inspection import Method, Surface
from inspector.gear.kind import Grade
from inspector.refused import Refused

KEY = "inspect HR-007"
Open = Callable[[Office], DeskWindow]


def form_in(qtbot: QtBot, desk: DeskWindow, tag: str) -> InspectForm:
    """The form of a piece, once its draft was looked for."""
    desk.pages.open_tag(tag)
    qtbot.waitUntil(lambda: desk.pages.piece is not None and desk.pages.piece.tag == tag)
    desk.pages.inspect()
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.pages.form
    return desk.pages.form


def close(desk: DeskWindow) -> None:
    """Close the window without a question."""
    desk._may_close = True
    desk.close()


def draft_of(office: Office) -> Draft:
    """The one draft."""
    found = kept(office, KEY)
    assert found
    return found


def write(form: InspectForm) -> None:
    """A little of everything."""
    QTest.keyClicks(form.rows[0], "1")
    QTest.keyClicks(form.rows[1], "3")
    box = form.boxes[0]
    box.how_box.method.choose(Method.ULTRASONIC_BARE)
    box.how_box.surface.choose(Surface.DRESSED)
    box.how_box.block.choose(True)
    QTest.keyClicks(box.fields[1], "2.1 m")
    form.head.note.setPlainText("half way")
    form.head.more.gauge.setText("Gauge 3")
    form.head.on.setDate(QDate(2026, 11, 24))


def test_a_draft_is_kept_a_second_after_the_last_key(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = form_in(qtbot, desk, "HR-007")
    QTest.keyClicks(form.rows[0], "1")
    assert drafts(office) == ()
    qtbot.waitUntil(lambda: bool(drafts(office)), timeout=3000)
    assert draft_of(office).values["grades"] == {form.rows[0].check.key: "good"}
    QTest.keyClick(form.rows[0], Qt.Key.Key_Delete)
    qtbot.waitUntil(lambda: drafts(office) == (), timeout=3000)
    desk._may_close = True


def test_a_closed_window_loses_nothing_and_the_form_offers_to_go_on(
    qtbot: QtBot, open_desk: Open, office: Office
) -> None:
    desk = open_desk(office)
    write(form_in(qtbot, desk, "HR-007"))
    close(desk)
    again = open_desk(office)
    form = form_in(qtbot, again, "HR-007")
    assert form.offer.isVisible() and form.offer.go_on.hasFocus()
    assert form.offer.head.text() == "You began this on 25 Nov 2026, 19:00."
    assert "2 checks graded. One reading typed. A note." in form.offer.text.text()
    assert not form.body.isEnabled() and not form.save_button.isEnabled() and form.rows[0].grade is None
    QTest.keyClick(form.offer.go_on, Qt.Key.Key_Space)
    assert form.offer.isHidden() and form.body.isEnabled()
    assert [row.grade for row in form.rows[:3]] == [Grade.GOOD, Grade.BAD, None] and form.rows[2].hasFocus()
    box = form.boxes[0]
    assert box.fields[1].text() == "2.1 m", "what cannot be read yet is kept as it was typed"
    assert (box.how_box.how.method, box.how_box.how.surface, box.how_box.how.block_checked) == (
        Method.ULTRASONIC_BARE, Surface.DRESSED, True,
    )  # fmt: skip
    assert (form.head.note_text, form.head.more.gauge_text) == ("half way", "Gauge 3")
    assert form.head.on.date() == QDate(2026, 11, 24) and form.head.more.gauge.isVisible()
    again._may_close = True


def test_a_bad_reading_is_not_got_rid_of_by_closing_the_window(qtbot: QtBot, open_desk: Open, office: Office) -> None:
    """What retired the piece in a preview stands with the draft, and goes with whatever is logged in its place."""
    desk = open_desk(office)
    form = form_in(qtbot, desk, "SH-001")
    row = next(row for row in form.rows if row.check.key == "cracks")
    QTest.keyClicks(row, "3")
    form.look_ahead()
    assert [one.typed for one in form.noted] == ["bad"]
    close(desk)
    again = open_desk(office)
    form = form_in(qtbot, again, "SH-001")
    assert [one.typed for one in form.noted] == ["bad"]
    QTest.keyClick(form.offer.go_on, Qt.Key.Key_Space)
    row = next(row for row in form.rows if row.check.key == "cracks")
    QTest.keyClicks(row, "1")
    form.try_save()
    qtbot.waitUntil(lambda: again.pages.piece is not None)
    last = max(open_item(office, "SH-001").dossier.inspections, key=lambda one: one.id)
    assert [(one.observation, one.typed) for one in last.facts.first_values] == [("cracks", "bad")]
    assert drafts(office) == (), "what is saved leaves no draft"


def test_begin_anew_tells_the_ledger_what_the_preview_had_shown(qtbot: QtBot, open_desk: Open, office: Office) -> None:
    desk = open_desk(office)
    form = form_in(qtbot, desk, "SH-001")
    QTest.keyClicks(next(row for row in form.rows if row.check.key == "cracks"), "3")
    form.look_ahead()
    close(desk)
    again = open_desk(office)
    form = form_in(qtbot, again, "SH-001")
    assert "held or retired it by “bad”" in form.offer.text.text()
    QTest.keyClick(form.offer.begin_anew, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: form.offer.isHidden())
    assert drafts(office) == () and form.noted == () and not form.is_written
    assert form.body.isEnabled() and form.rows[0].hasFocus()
    assert any("left an inspection of SH-001 unwritten" in one.sentence for one in told_ledger(office))


def test_what_was_noted_is_not_lost_by_emptying_the_form(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = form_in(qtbot, desk, "SH-001")
    row = next(row for row in form.rows if row.check.key == "cracks")
    QTest.keyClicks(row, "3")
    form.look_ahead()
    QTest.keyClick(row, Qt.Key.Key_Delete)
    assert form.is_written, "leaving asks, and throwing away tells the ledger"
    qtbot.waitUntil(lambda: bool(drafts(office)), timeout=3000)
    found = kept(office, "inspect SH-001")
    assert found and found.values["noted"] == [["cracks", "", "bad", "retire"]]
    desk._may_close = True


def test_thrown_away_is_thrown_away(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = form_in(qtbot, desk, "HR-007")
    QTest.keyClicks(form.rows[0], "1")
    form.keeper.flush()
    assert drafts(office)
    gone: list[bool] = []
    form.throw_away(lambda: gone.append(True))
    qtbot.waitUntil(lambda: gone == [True])
    desk._may_close = True
    desk.close()
    assert drafts(office) == ()


def test_a_refused_save_goes_on_keeping_the_draft(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = form_in(qtbot, desk, "HR-007")
    QTest.keyClicks(form.rows[0], "1")
    with mock.patch("inspector.desk.opened.inspected", side_effect=Refused("register", "It is in use.", "Wait.")):
        form.try_save()
        qtbot.waitUntil(desk.notice.isVisible)
    qtbot.waitUntil(lambda: bool(drafts(office)), timeout=3000)
    desk._may_close = True


def test_a_draft_that_makes_no_sense_breaks_no_form(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    """Its file may be of another program's version, or somebody has written into it."""
    keep(office, KEY, {
        "by": 7, "on": "yesterday", "occasion": "never", "note": ["x"], "second": "nobody we know", "gauge": None,
        "grades": {"tube_cracks": "slight", "no_such": "good", "bent": 3, "pin_hole_shape": ["good"]},
        "readings": {"wall": {"top": 5, "nowhere": "2 mm", "left": "2.9 mm"}, "hole": "3 mm"},
        "how": {"wall": {"method": "by eye", "surface": 3, "block": "yes"}, "pin_hole": 4},
        "noted": [["wall", "top"], 3, ["wall", "top", "2 mm", "scrap"], [1, 2, 3, 4]], "photos": "many", "files": [3],
    })  # fmt: skip
    form = form_in(qtbot, desk, "HR-007")
    QTest.keyClick(form.offer.go_on, Qt.Key.Key_Space)
    assert form.boxes[0].fields[2].text() == "2.9 mm" and form.noted == ()
    assert all(row.grade is None for row in form.rows) and form.head.day == office.today
    desk._may_close = True


def test_a_draft_that_cannot_be_kept_is_told_once(qtbot: QtBot, desk: DeskWindow, office: Office) -> None:
    form = form_in(qtbot, desk, "HR-007")
    (office.out_tray.parent / "drafts").write_text("a file where the folder should be")
    form.keeper._timer.setInterval(50)  # how long it waits is held above
    QTest.keyClicks(form.rows[0], "1")
    qtbot.waitUntil(lambda: "cannot be written" in desk.notice.text, timeout=3000)
    desk.notice.dismiss()
    with qtbot.waitSignal(form.keeper._timer.timeout):
        QTest.keyClicks(form.rows[1], "1")
    qtbot.waitUntil(lambda: desk.background.is_idle)
    assert desk.notice.isHidden()
    desk._may_close = True
