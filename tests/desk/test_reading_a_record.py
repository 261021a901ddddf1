"""A record is read by keys, takes files, and passes on what is asked of it."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QColor, QDragEnterEvent, QDropEvent, QGuiApplication, QImage, QImageWriter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from inspector.desk.background import Background
from inspector.desk.flow import flowing
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.desk.opened import opened
from inspector.desk.piece import file_deeds
from inspector.desk.piece.file_deeds import FileDeeds
from inspector.desk.piece.life_picture import LifePicture
from inspector.desk.piece.thumbs import thumb
from inspector.desk.piece.walked import Readable, Walked
from inspector.desk.plain import button
from inspector.desk.record import Record
from inspector.drawings.shapes import Text
from inspector.duties.attach import attach
from inspector.duties.office import Office
from inspector.duties.print_kept import print_kept
from inspector.duties.retire_item import print_notice
from inspector.gear.attachment import PaperKind

Show = Callable[[str], Record]


def png(wide: int = 60, high: int = 40) -> bytes:
    """A picture as a file."""
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(QColor("teal"))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"PNG")).write(image)
    return bytes(buffer.data().data())


@pytest.fixture
def show(qtbot: QtBot, office: Office, look: Look) -> Show:
    """Opens the record of a piece."""

    def shown(tag: str) -> Record:
        record = Record(look, office.system)
        qtbot.addWidget(record)
        record.resize(1280, 720)
        record.show()
        record.show_piece(opened(office, tag))
        qtbot.waitUntil(lambda: record.whole)
        record.activateWindow()
        qtbot.waitUntil(record.isActiveWindow)
        return record

    return shown


@pytest.fixture
def served(qtbot: QtBot, office: Office, show: Show) -> Iterator[Callable[[str], tuple[Record, Notice]]]:
    """Opens a record whose files open and which takes what is dropped."""
    background = Background()

    def made(tag: str) -> tuple[Record, Notice]:
        record, notice = show(tag), Notice()
        qtbot.addWidget(notice)
        FileDeeds(office, background, notice, record)
        return record, notice

    yield made
    background.close()


def picture(record: Record, title: str) -> Walked:
    """The picture of this title."""
    return next(one for one in record.findChildren(Walked) if one.drawing.title == title)


def line_of(made: Walked) -> str:
    """What stands below a picture while the keys are in it."""
    parent = made.parentWidget()
    assert isinstance(parent, Readable)
    return parent.line.text() if parent.line.isVisible() else ""


@pytest.mark.parametrize("title", ["The wall over the years", "What is left of the wall", "Its life"])
def test_every_mark_of_a_picture_is_read_by_keys(qtbot: QtBot, show: Show, title: str) -> None:
    """Right goes through all that hovering tells, each once; the text stands below and is told to a screen reader."""
    made = picture(show("HR-007"), title)
    made.setFocus()
    assert "Left and Right read" in line_of(made)
    heard = []
    for _ in made.stops:
        QTest.keyClick(made, Qt.Key.Key_Right)
        heard.append(line_of(made))
        assert made.accessibleDescription() == heard[-1]
    assert set(heard) == {shape.tells for shape in made.drawing.shapes if shape.tells}
    assert len(heard) == len(set(heard))
    QTest.keyClick(made, Qt.Key.Key_Right)
    assert line_of(made) == heard[-1]
    QTest.keyClick(made, Qt.Key.Key_Left)
    assert line_of(made) == heard[-2]
    QTest.keyClick(made, Qt.Key.Key_Home)
    assert line_of(made) == heard[0]


def test_the_mark_that_is_read_is_framed_and_the_line_goes_with_the_keys(qtbot: QtBot, show: Show) -> None:
    record = show("HR-007")
    made = picture(record, "The wall over the years")
    qtbot.waitUntil(lambda: made.height() == made.heightForWidth(made.width()))
    before = made.grab().toImage()
    made.setFocus()
    made.stop_at(2)
    assert made.grab().toImage() != before
    record.inspect_button.setFocus()
    assert line_of(made) == ""
    assert made.accessibleDescription() == made.drawing.describes
    qtbot.waitUntil(lambda: made.grab().toImage() == before)


def test_the_wall_of_a_tube_tells_how_each_reading_was_taken(show: Show) -> None:
    tells = [one.tells for one in picture(show("HR-007"), "What is left of the wall").stops]
    expected = "bottom: 2.2 mm on 20 Nov 2026, thickness gauge on bare metal, face dressed, tried on its block, by"
    assert any(one.startswith(expected) for one in tells)


def test_up_and_down_change_the_row_of_a_life(qtbot: QtBot, show: Show) -> None:
    made = picture(show("HR-007"), "Its life")
    made.setFocus()
    QTest.keyClick(made, Qt.Key.Key_End)
    rows = []
    for _ in range(3):
        rows.append(made.stops[made.at or 0].box.center().y())
        QTest.keyClick(made, Qt.Key.Key_Up)
    assert rows == sorted(rows, reverse=True) and len(set(rows)) == 3


def test_a_life_is_drawn_anew_for_its_width_and_its_type_keeps_its_size(qtbot: QtBot, show: Show, look: Look) -> None:
    record = show("HR-007")
    made = picture(record, "Its life")
    assert isinstance(made, LifePicture)
    for width in (1280, 820):
        record.resize(width, 720)
        qtbot.waitUntil(lambda: abs(made.width() - made.drawing.width_mm * 13 / 2.8) < 2)
    sizes = {shape.size_mm for shape in made.drawing.shapes if isinstance(shape, Text)}
    assert sizes == {2.8}
    assert made.heightForWidth(made.width()) == pytest.approx(made.drawing.height_mm * 13 / 2.8, abs=2)


def test_buttons_that_find_no_room_stand_in_a_line_below(qtbot: QtBot) -> None:
    made = flowing([button(f"a longer button {number}", lambda: None) for number in range(4)])
    qtbot.addWidget(made)
    made.resize(1200, 100)
    assert made.heightForWidth(1200) < made.heightForWidth(400) < made.heightForWidth(160)


def press(record: QWidget, name: str) -> None:
    """Press the button with this accessible name."""
    next(one for one in record.findChildren(QPushButton) if one.accessibleName() == name).click()


def test_what_is_asked_of_the_record_is_passed_on(qtbot: QtBot, office: Office, show: Show) -> None:
    number = print_notice(office, "HR-007").path.stem
    record = show("HR-007")
    with qtbot.waitSignal(record.why) as why, qtbot.waitSignal(record.deeds) as deeds:
        press(record, "Show why, on the bench")
        press(record, "More deeds")
    assert why.args == ["HR-007"] and deeds.args == [record.more_button]
    with qtbot.waitSignal(record.attach), qtbot.waitSignal(record.again) as again:
        press(record, "Add a file")
        press(record, f"Print {number} again")
    assert again.args == [number] and print_kept(office, "HR-007", number).path.stem == number


def labels(record: Record) -> str:
    """What is written on the record."""
    return "\n".join(one.text() for one in record.findChildren(QLabel) if one.isVisibleTo(record))


def test_what_would_change_the_verdict_stands_beside_its_reasons(office: Office, show: Show) -> None:
    written = labels(show("SH-001"))
    assert "What would change this" in written
    assert "With time" in written and "else: Retire" in written


def test_without_files_the_page_says_how_to_add_one(show: Show) -> None:
    written = labels(show("SH-001"))
    assert "No photo and no paper yet. Drop one onto this page, paste a picture, or add a file." in written
    assert "No document names it yet." in written


def test_a_photo_is_seen_small_and_opens_from_the_out_tray(
    qtbot: QtBot,
    office: Office,
    served: Callable[[str], tuple[Record, Notice]],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    attach(office, "SH-001", "bow.png", png(), PaperKind.PHOTO, note="after the rinse")
    attach(office, "SH-001", "note.txt", b"bought new", PaperKind.OTHER)
    places: list[Path] = []
    monkeypatch.setattr(file_deeds, "open_file", places.append)
    record, notice = served("SH-001")
    assert "after the rinse" in labels(record)
    tile = next(one for one in record.findChildren(QPushButton) if "Open the photo bow.png" in one.accessibleName())
    assert not tile.icon().isNull()
    tile.click()
    qtbot.waitUntil(lambda: bool(places))
    assert places[0].parent == office.out_tray and not QImage(str(places[0])).isNull()
    press(record, "Open the file note.txt")
    qtbot.waitUntil(lambda: len(places) == 2)
    assert places[1].read_bytes() == b"bought new"
    assert str(places[1]) in notice.text


def test_a_broken_picture_has_no_thumb(qapp: object) -> None:
    assert thumb(b"\x89PNG\r\n\x1a\nbroken").isNull()
    assert thumb(png(900, 300)).width() == 320


def drop(record: Record, data: QMimeData) -> None:
    """Drop this onto the middle of the page."""
    actions, buttons, keys = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(QPoint(300, 300), actions, data, buttons, keys)
    record.dragEnterEvent(enter)
    assert enter.isAccepted()
    record.dropEvent(QDropEvent(QPointF(300, 300), actions, data, buttons, keys))


def test_dropped_files_are_read_and_handed_on(
    qtbot: QtBot, tmp_path: Path, served: Callable[[str], tuple[Record, Notice]]
) -> None:
    record, notice = served("SH-001")
    taken: list[tuple[tuple[str, bytes], ...]] = []
    record.dropped.connect(taken.append)
    for name in ("a.png", "b.png"):
        (tmp_path / name).write_bytes(png())
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(tmp_path / name)) for name in ("a.png", "b.png")])
    drop(record, data)
    qtbot.waitUntil(lambda: bool(taken))
    assert taken == [(("a.png", png()), ("b.png", png()))]
    data.setUrls([QUrl.fromLocalFile(str(tmp_path / "gone.png"))])
    drop(record, data)
    qtbot.waitUntil(lambda: "gone.png is no file" in notice.text)
    assert len(taken) == 1


def test_a_pasted_picture_is_handed_on_and_a_pasted_text_is_not(
    qtbot: QtBot, served: Callable[[str], tuple[Record, Notice]]
) -> None:
    record, _ = served("SH-001")
    taken: list[tuple[tuple[str, bytes], ...]] = []
    record.dropped.connect(taken.append)
    QGuiApplication.clipboard().setText("a text")
    QTest.keyClick(record, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    image = QImage(30, 20, QImage.Format.Format_RGB32)
    image.fill(QColor("teal"))
    QGuiApplication.clipboard().setImage(image)
    QTest.keyClick(record, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    qtbot.waitUntil(lambda: bool(taken))
    (((name, data),),) = taken
    assert name.endswith(".png") and QImage.fromData(data).size() == image.size()


def test_without_anybody_to_read_files_none_is_taken(show: Show) -> None:
    assert not show("SH-001").acceptDrops()
