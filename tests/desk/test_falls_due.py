"""The calendar's page: sorted, narrowed, and the papers that are made of it, by keys."""

from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QDate, QSignalBlocker, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from inspector.desk.choice import Choice
from inspector.desk.look import TextSize
from inspector.desk.needs.due_page import DuePage
from inspector.desk.place import Go
from inspector.duties.due_sheet import due_sheet
from inspector.duties.due_views import View
from inspector.duties.office import Office
from inspector.duties.what_falls_due import what_falls_due
from tests.desk.cut_off import settled
from tests.desk.needs_pages import Open, Stand, named, settle
from tests.desk.needs_pages import due_on as due_on
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_names import unnamed
from tests.desk.test_needs import cut_off, unfold

HOLDER = "Hanne Lodewell"


def page_of(stand: Stand) -> DuePage:
    """The page itself."""
    assert isinstance(stand.page, DuePage)
    return stand.page


def chosen(qtbot: QtBot, stand: Stand, name: str, value: object) -> None:
    """Go down a box of choices by the arrow key onto the value; the way there is not waited for."""
    page = page_of(stand)
    boxes: dict[str, Choice[Any]] = {
        "until": page.until.choice, "view": page.view, "person": page.person, "place": page.place,
    }  # fmt: skip
    choice = boxes[name]
    choice.box.setFocus()
    at = choice._values.index(value)
    with QSignalBlocker(choice.box):
        choice.box.setCurrentIndex(max(at - 1, 0) if at else 1)
    QTest.keyClick(choice.box, Qt.Key.Key_Down if at else Qt.Key.Key_Home)
    settle(qtbot, stand)
    assert choice.value == value


def tags(stand: Stand) -> set[str]:
    """What the lines are about, all folds open."""
    unfold(stand)
    names = [one.accessibleName() for one in stand.findChildren(type(named(stand, "Print letters"))) if one.isVisible()]
    return {name.removeprefix("Open ") for name in names if name.startswith("Open ")}


def test_it_shows_ninety_days_by_day_what_waits_first_and_each_line_leads_to_what_it_is_about(
    due_on: Open, sample: Office
) -> None:
    stand = due_on(sample)
    told, lines = shown_texts(stand), what_falls_due(sample)
    late = sum(1 for one in lines if one.overdue_days(sample.today))
    assert f"{len(lines)} lines until 23 Feb 2027, {late} of them overdue" in told
    assert told.index("\nNow\n") < told.index("OVERDUE by")
    assert tags(stand) == {one.about for one in lines}
    for about in ("SB-03", "T-05"):
        QTest.keyClick(named(stand, f"Open {about}"), Qt.Key.Key_Return)
    assert stand.left == [("opened", "SB-03"), ("go", Go("trip", "T-05"))]
    page_of(stand).focus_start()
    QTest.keyClicks(focused(), "s")
    bring = page_of(stand).papers.bring_to
    bring.setFocus()
    QTest.keyClicks(bring, "x")
    assert stand.left[2:] == [("typed", "s")] and bring.text() == "x", "in a field letters stay"


def test_the_boxes_narrow_and_sort_it(qtbot: QtBot, due_on: Open, sample: Office) -> None:
    stand = due_on(sample)
    chosen(qtbot, stand, "person", HOLDER)
    own = due_sheet(sample, person=HOLDER)
    assert tags(stand) == {one.about for one in own.lines} != set()
    chosen(qtbot, stand, "view", View.PLACE)
    assert [title for title, _ in own.groups] != [title for title, _ in due_sheet(sample, None, View.PLACE).groups]
    assert all(title[:1].upper() + title[1:] in shown_texts(stand)
               for title, _ in due_sheet(sample, None, View.PLACE, HOLDER).groups)  # fmt: skip
    chosen(qtbot, stand, "person", "")
    chosen(qtbot, stand, "place", "V-06")
    assert tags(stand) == {one.about for one in due_sheet(sample, place="V-06").lines} != set()


def test_another_day_is_written_and_one_that_is_past_cannot_be(qtbot: QtBot, due_on: Open, sample: Office) -> None:
    stand = due_on(sample)
    until = page_of(stand).until
    chosen(qtbot, stand, "until", -1)
    assert until.day.isVisible()
    day = sample.today + timedelta(days=200)
    until.day.setDate(QDate(day.year, day.month, day.day))
    settle(qtbot, stand)
    sheet = page_of(stand).sheet
    assert sheet and sheet.last == day and sheet.lines == what_falls_due(sample, day)
    until.day.setDate(QDate(2020, 1, 1))
    assert until.value == sample.today


def test_where_nothing_falls_due_it_says_so(due_on: Open, empty_office: Office) -> None:
    assert "Nothing falls due." in shown_texts(due_on(empty_office))


def test_it_can_be_begun_for_a_person_and_return_in_the_name_of_the_file_writes_what_is_shown(
    qtbot: QtBot, due_on: Open, sample: Office, tmp_path: Path
) -> None:
    stand, file = due_on(sample), tmp_path / "mine.ics"
    page_of(stand).begin(HOLDER)
    settle(qtbot, stand)
    sheet = page_of(stand).sheet
    assert sheet and sheet.lines == due_sheet(sample, person=HOLDER).lines and page_of(stand).person.value == HOLDER
    field = page_of(stand).papers.file
    field.clear()
    QTest.keyClicks(field, str(file))
    QTest.keyClick(field, Qt.Key.Key_Return)
    settle(qtbot, stand)
    count = len(due_sheet(sample, person=HOLDER).lines)
    assert file.read_bytes().count(b"BEGIN:VEVENT") == count and str(file) in stand.notice.text


def test_where_the_file_goes_can_be_chosen_and_a_file_of_another_kind_is_left_alone_and_told_at_its_field(
    qtbot: QtBot, due_on: Open, sample: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    stand, file = due_on(sample), tmp_path / "letter.txt"
    file.write_text("dear all")
    papers = page_of(stand).papers
    before = papers.file.text()
    for given, stands in (("", before), ("/elsewhere/x.ics", "/elsewhere/x.ics")):
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_, given=given: (given, ""))
        QTest.keyClick(named(stand, "Choose where the calendar file goes"), Qt.Key.Key_Space)
        assert papers.file.text() == stands
    papers.file.setText(str(file))
    QTest.keyClick(named(stand, "Save calendar file"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    assert file.read_text() == "dear all" and papers.file.text() == str(file)
    assert "is no calendar file" in papers.file.fault.text() and papers.file.fault.isVisible()
    papers.file.setText(str(tmp_path / "other.ics"))
    QTest.keyClick(named(stand, "Save calendar file"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    assert not papers.file.fault.isVisible() and (tmp_path / "other.ics").exists()


def test_a_letter_goes_to_the_person_chosen_with_what_to_bring_where(
    qtbot: QtBot, due_on: Open, sample: Office
) -> None:
    stand = due_on(sample)
    chosen(qtbot, stand, "person", HOLDER)
    papers = page_of(stand).papers
    assert papers.to_whom.text() == f"To {HOLDER}."
    QTest.keyClicks(papers.bring_to, "The shed")
    QTest.keyClick(papers.bring_to, Qt.Key.Key_Return)
    assert focused() is papers.bring_by.choice.box
    QTest.keyClick(papers.bring_by.choice.box, Qt.Key.Key_Down)
    QTest.keyClick(named(stand, "Print letters"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    (kept,) = letters_to(sample, HOLDER)
    assert '"bring_to":"The shed"' in kept and '"bring_by":"2 Dec 2026"' in kept
    assert "1 paper is printed." in stand.notice.text and len(list(sample.out_tray.glob("*.pdf"))) == 1
    QTest.keyClick(named(stand, "Print the last letters again"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    assert letters_to(sample, HOLDER) == [kept]


def letters_to(office: Office, name: str) -> list[str]:
    """The last letter kept for a person."""
    with office.book.reading() as page:
        person = next(one for one in page.people() if one.name == name)
        found = page.latest_document("letter", person.id)
    return [found[1]] if found else []


def test_letters_to_everybody_and_slips_for_a_place_are_printed_and_none_again_that_never_were(
    qtbot: QtBot, due_on: Open, sample: Office
) -> None:
    stand = due_on(sample)
    QTest.keyClick(named(stand, "Print the last slips again"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    assert "No slips were printed yet." in stand.notice.text
    QTest.keyClick(named(stand, "Print letters"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    letters = len(list(sample.out_tray.glob("*.pdf")))
    assert letters > 3 and f"{letters} papers are printed." in stand.notice.text
    chosen(qtbot, stand, "place", "V-06")
    papers = page_of(stand).papers
    assert "at V-06" in papers.which.text() and "wherever it is" in papers.to_whom.text()
    QTest.keyClick(named(stand, "Print slips"), Qt.Key.Key_Space)
    settle(qtbot, stand)
    with sample.book.reading() as page:
        kept = page.latest_document("letter", "slips")
    assert kept and len(list(sample.out_tray.glob("*.pdf"))) == letters + 1
    assert all(tag in kept[1] for tag in {one.about for one in due_sheet(sample, place="V-06").lines})


def test_every_control_has_a_name_and_no_word_is_cut_off(qtbot: QtBot, due_on: Open, sample: Office) -> None:
    stand = due_on(sample)
    unfold(stand)
    look = page_of(stand)._look
    for text, size in ((TextSize.USUAL, (1280, 720)), (TextSize.USUAL, (960, 600)), (TextSize.LARGE, (1280, 720))):
        look.set_text(text)
        stand.resize(*size)
        assert settled(qtbot, lambda: unnamed(stand) + cut_off(stand)) == []
