"""Sheets that came back as files, in the window: what is not clear is asked, all is looked through, then kept."""

from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.piece.handed import Handed
from inspector.desk.returned.returned_page import ReturnedPage
from inspector.desk.window import DeskWindow
from inspector.duties.attach import attachments
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_sheets import print_trip_sheet
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.gear.photo_read import Answer
from inspector.gear.sheet_back import Incoming
from inspector.gear.sheet_fields import reading_name, remarks_name, signed_name
from tests.desk.outing import beach as beach
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_returned_sheet import desk as desk
from tests.desk.test_returned_sheet import page as page
from tests.desk.test_trip_page import settle
from tests.duties.returned import kept, names, photographed
from tests.paper.filling import by_library

PARTS = ("RP-1F", "RP-1R", "RP-2F", "RP-2R")
ALL = {tag: {"*": "good"} for tag in ("SH-1", "SH-2", "KS-1", *PARTS)}
DOUBTFUL = {**ALL, "SH-1": {"*": "good", "bend": "both", "nicks": "both"}}


@pytest.fixture
def sheet(beach: Office) -> Paper:
    """The printed sheet of T-1."""
    return print_trip_sheet(beach, "T-1")


def put(folder: Path, files: list[Incoming]) -> tuple[Path, ...]:
    """The files on the disk."""
    for one in files:
        (folder / one.name).write_bytes(one.data)
    return tuple(folder / one.name for one in files)


def form_of(beach: Office, sheet: Paper, answers: dict[str, dict[str, str]], texts: dict[str, str]) -> Incoming:
    """The form, filled in on a screen."""
    ticked = names(kept(beach, sheet.path.stem), answers)
    return Incoming("form.pdf", by_library(sheet.path.read_bytes(), ticked, texts))


def test_what_is_not_clear_is_said_by_keys_then_all_is_looked_through_and_kept(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, beach: Office, sheet: Paper, tmp_path: Path
) -> None:
    photos = photographed(beach, sheet, DOUBTFUL)
    page.read(Handed(put(tmp_path, photos)))
    settle(qtbot, desk)
    assert page.doubts and page.form is None
    assert [row.back.tick.key for row in page.doubts.rows] == ["bend", "nicks"] and focused() is page.doubts.rows[0]
    QTest.keyClick(focused(), Qt.Key.Key_Return)  # moving on says nothing
    page.doubts.go_button.click()
    assert focused() is page.doubts.rows[0] and page.doubts.isVisible()
    QTest.keyClick(focused(), Qt.Key.Key_1)
    QTest.keyClick(focused(), Qt.Key.Key_3)
    assert focused() is page.doubts.go_button and "All is said" in page.doubts.left.text()
    page.doubts.go_button.click()
    settle(qtbot, desk)
    form = page.form
    assert form
    grades = {(block.piece.tag, row.check.key): row.grade for block in form.blocks for row in block.rows}
    assert grades["SH-1", "bend"] is Grade.GOOD and grades["SH-1", "nicks"] is Grade.BAD
    assert set(grades.values()) == {Grade.GOOD, Grade.BAD}
    assert sum(label.pixmap().width() > 0 for label in form.findChildren(QLabel)) > 2 * len(grades)
    form.by.choose(people(beach)[0])
    form.day.setText("today")
    form.keep_button.click()
    settle(qtbot, desk)
    assert "7 pieces were checked" in desk.notice.text and page.form is None
    assert open_item(beach, "SH-1").verdict.outcome.severity >= Outcome.HOLD.severity
    assert len(attachments(beach, "T-1")) == len(photos)


def test_a_form_stands_there_as_it_was_typed(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, beach: Office, sheet: Paper, tmp_path: Path
) -> None:
    going = kept(beach, sheet.path.stem).going
    number = next(at for at, one in enumerate(going, 1) if one.tag == "SH-1")
    line = next(at for at, tick in enumerate(going[number - 1].ticks, 1) if tick.key == "bow_diameter")
    texts = {reading_name(number, line): "18.4", remarks_name(number): "pin stiff", signed_name(1, "name"): "Bo"}
    answers = {**ALL, "SH-1": {"*": "good", "pin_diameter": "fault"}}
    page.read(Handed(put(tmp_path, [form_of(beach, sheet, answers, texts)])))
    settle(qtbot, desk)
    form = page.form
    assert form and "Name: Bo" in shown_texts(form)
    block = next(one for one in form.blocks if one.piece.tag == "SH-1")
    assert [box.typed_texts for box in block.boxes if not box.is_empty] == [{"": "18.4 mm"}]
    assert [tick.isChecked() for tick in block.faults] == [
        one.measure.key == "pin_diameter" for one in block.piece.measures
    ]
    assert block.note.text() == "pin stiff"
    seen, wrong = block.seen()
    assert wrong is None and len(seen.doubts) == 1 and len(seen.readings) == 1


def test_what_is_not_taken_is_told_and_the_sheet_can_be_opened_all_the_same(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, beach: Office, sheet: Paper, tmp_path: Path
) -> None:
    files = put(tmp_path, [Incoming("notes.txt", b"fine"), form_of(beach, sheet, ALL, {})])
    page.read(Handed((*files, tmp_path / "gone.jpg")))
    settle(qtbot, desk)
    told = shown_texts(page)
    assert "notes.txt" in told and "gone.jpg" in told and "7 pieces were read." in told
    look = next(one for one in page.findChildren(QPushButton) if one.text() == "Look through it" and one.isVisible())
    look.click()
    settle(qtbot, desk)
    assert page.form is not None
    assert page.form.is_written and desk.pages.currentWidget() is page
    assert page.unsaved


def test_files_are_dropped_or_chosen_and_a_picture_is_pasted(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, beach: Office, sheet: Paper, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    (place,) = put(tmp_path, [form_of(beach, sheet, ALL, {})])
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(place))])
    page.dropEvent(QDropEvent(QPointF(5, 5), Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton,
                              Qt.KeyboardModifier.NoModifier))  # fmt: skip
    settle(qtbot, desk)
    assert page.form and page.form.sheet.number == sheet.path.stem
    page._drop(lambda: None)
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: ([str(place)], ""))
    page.files.choose_button.click()
    settle(qtbot, desk)
    assert page.unsaved is not None
    page._drop(lambda: None)
    picture = QImage(600, 400, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.white)
    page.read(Handed(image=picture))
    settle(qtbot, desk)
    assert page.form is None and "pasted picture.png" in shown_texts(page)


def test_nothing_of_a_sheet_is_kept_where_its_files_cannot_be(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, beach: Office, sheet: Paper, tmp_path: Path
) -> None:
    page.read(Handed(put(tmp_path, [form_of(beach, sheet, ALL, {})])))
    settle(qtbot, desk)
    assert page.form and page._back
    page._back = replace(page._back, files=(Incoming("form.pdf", b"no paper at all \x00\x01"),))
    page.form.by.choose(people(beach)[0])
    page.form.day.setText("today")
    page.form.keep_button.click()
    settle(qtbot, desk)
    assert page.form is not None
    assert page.form.fault.text() and not open_item(beach, "SH-1").dossier.inspections[-1].facts.sheet


def test_a_doubt_never_becomes_good_by_itself(
    qtbot: QtBot, desk: DeskWindow, page: ReturnedPage, beach: Office, sheet: Paper, tmp_path: Path
) -> None:
    page.read(Handed(put(tmp_path, photographed(beach, sheet, DOUBTFUL))))
    settle(qtbot, desk)
    assert page.doubts
    for row in page.doubts.rows:
        row.give(Answer.NONE)
    page.doubts.try_go_on()
    settle(qtbot, desk)
    assert page.form
    block = next(one for one in page.form.blocks if one.piece.tag == "SH-1")
    assert {row.check.key for row in block.rows if row.grade is None} == {"bend", "nicks"}
