"""An old list in the window: chosen or dropped, its columns looked through, its rows told, taken and withdrawn."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.deeds.imports import withdraw
from inspector.desk.importing.import_page import ImportPage
from inspector.desk.importing.look_part import COLUMNS, ROWS, LookPart
from inspector.desk.place import Go
from inspector.desk.places import IMPORT
from inspector.desk.window import DeskWindow
from inspector.duties.attach import attachments
from inspector.duties.import_list import imports
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.gear.import_list import Asks, Fate
from tests.desk.deed_forms import faults, form_of_deed, keep, write
from tests.desk.outing import beach as beach
from tests.desk.test_trip_page import settle
from tests.paper.test_photo import picture

LIST = """Our gear;;;;;
Tag;Kind;Load;Body (mm);Pin (mm);Colour
A-1;Bow shackle;4,75;19;22;red
A-2;Shackle;2;13;16;
SH-1;Bow shackle;2;13;16;
"""


@pytest.fixture
def desk(open_desk: Callable[[Office], DeskWindow], beach: Office) -> DeskWindow:
    """The window."""
    return open_desk(beach)


@pytest.fixture
def page(qtbot: QtBot, desk: DeskWindow) -> ImportPage:
    """The page."""
    desk.pages.go(Go(IMPORT))
    settle(qtbot, desk)
    shown = desk.pages.currentWidget()
    assert isinstance(shown, ImportPage)
    return shown


@pytest.fixture
def old_list(tmp_path: Path) -> Path:
    """A list in a file."""
    path = tmp_path / "list.csv"
    path.write_text(LIST, "utf-8")
    return path


def looked_at(page: ImportPage) -> LookPart:
    assert page.look_part is not None
    return page.look_part


def answer(qtbot: QtBot, desk: DeskWindow, page: ImportPage, about: Asks, value: str) -> None:
    """Answer the question about this."""
    box = next(box for one, box in looked_at(page).columns.answers if one.about is about)
    box.choose(value)
    settle(qtbot, desk)


def read(qtbot: QtBot, desk: DeskWindow, page: ImportPage, path: Path) -> None:
    page.read(path)
    settle(qtbot, desk)


def test_a_list_is_chosen_asked_about_corrected_taken_and_withdrawn(
    qtbot: QtBot, desk: DeskWindow, page: ImportPage, beach: Office, old_list: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(old_list), ""))
    page.start.choose_button.click()
    settle(qtbot, desk)
    part = looked_at(page)
    assert part.shown == COLUMNS and not part.take_button.isEnabled()
    assert part.parts[COLUMNS].text() == "Columns · 2 questions are open"
    answer(qtbot, desk, page, Asks.UNIT, "t")
    answer(qtbot, desk, page, Asks.BASIS, "wll")
    part = looked_at(page)
    assert part.take_button.text() == "Take 1 piece" and part.parts[COLUMNS].text() == "Columns"
    part.columns.fields[5].choose("material")
    settle(qtbot, desk)
    part = looked_at(page)
    assert part.shown == COLUMNS and part.run.passed[0].facts and part.run.passed[0].facts.material == "red"
    part.take_button.click()
    settle(qtbot, desk)
    made = imports(beach)[0]
    assert [one.tag for one in made.pieces] == ["A-1"] and page.look_part is None
    assert f"1 piece was taken as import {made.number}" in desk.notice.text
    assert (old_list.parent / f"list-{made.number}.csv").exists()
    assert any(made.number in one.text() for one in page.start.findChildren(QLabel))
    form = form_of_deed(qtbot, desk, withdraw(), made)
    keep(qtbot, desk)
    assert "why" in faults(form)
    write(form, why="the wrong list")
    keep(qtbot, desk)
    assert "1 piece was withdrawn." in desk.notice.text


def test_the_rows_are_filtered_and_the_one_in_hand_is_shown_beside_what_it_is_like(
    qtbot: QtBot, desk: DeskWindow, page: ImportPage, old_list: Path
) -> None:
    read(qtbot, desk, page, old_list)
    answer(qtbot, desk, page, Asks.UNIT, "t")
    answer(qtbot, desk, page, Asks.BASIS, "wll")
    part = looked_at(page)
    part.show_part(ROWS)
    rows = part.rows
    assert rows.model.rowCount() == 5
    rows.filters[Fate.DUPLICATE].click()
    assert rows.model.rowCount() == 1 and rows.model.index(0, 2).data() == "SH-1"
    rows.table.selectRow(0)
    texts = [one.text() for one in rows.detail.findChildren(QLabel)]
    assert (
        "The tag “SH-1” is in the register already. Look whether it is the same piece; if not, give it another tag."
        in texts
    )
    assert "WLL 2 t (from memory)" in texts and "this row" in texts
    assert page.back() and page.look_part is None and not page.back()


def test_a_dropped_list_is_read_and_a_broken_one_is_told(
    qtbot: QtBot, desk: DeskWindow, page: ImportPage, old_list: Path, tmp_path: Path
) -> None:
    given = QMimeData()
    given.setUrls([QUrl.fromLocalFile(str(old_list))])
    page.dropEvent(QDropEvent(QPointF(5, 5), Qt.DropAction.CopyAction, given, Qt.MouseButton.LeftButton,
                              Qt.KeyboardModifier.NoModifier))  # fmt: skip
    settle(qtbot, desk)
    assert looked_at(page).run.file.name == "list.csv"
    (tmp_path / "broken.xlsx").write_bytes(b"PK\x03\x04 broken")
    read(qtbot, desk, page, tmp_path / "broken.xlsx")
    assert "cannot be unpacked" in desk.notice.text


def test_photos_of_a_folder_go_with_their_pieces_and_another_row_may_be_the_headings(
    qtbot: QtBot, desk: DeskWindow, page: ImportPage, beach: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "list.csv"
    path.write_text("Tag;Kind;WLL (t);Body (mm);Pin (mm)\nA-1;Bow shackle;4.75;19;22\n", "utf-8")
    folder = tmp_path / "photos"
    folder.mkdir()
    (folder / "A-1.jpg").write_bytes(picture("JPEG"))
    read(qtbot, desk, page, path)
    assert looked_at(page).shown == ROWS
    looked_at(page).columns.head.choose(0)
    settle(qtbot, desk)
    assert looked_at(page).run.matching.head == 0
    looked_at(page).columns.head.choose(1)
    settle(qtbot, desk)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    next(one for one in looked_at(page).findChildren(QPushButton) if one.text() == "Photos…").click()
    settle(qtbot, desk)
    assert any(one.text() == "1 photo goes with them" for one in looked_at(page).findChildren(QPushButton))
    looked_at(page).columns.stated.choose("piece")
    settle(qtbot, desk)
    looked_at(page).take_button.click()
    settle(qtbot, desk)
    assert len(attachments(beach, "A-1")) == 1
    assert open_item(beach, "A-1").dossier.item.facts.rating.stated_on == "piece"


def test_taking_a_list_is_told_as_it_goes_and_stopped_it_leaves_nothing(
    qtbot: QtBot, desk: DeskWindow, page: ImportPage, beach: Office, tmp_path: Path
) -> None:
    path = tmp_path / "long.csv"
    lines = [f"L-{number:03};Bow shackle;4,75 t;19 mm;22 mm" for number in range(200)]
    path.write_text("\n".join(["Tag;Kind;WLL;Body;Pin", *lines]), "utf-8")
    read(qtbot, desk, page, path)
    before = verify_book(beach).line_count
    assert len(looked_at(page).run.passed) == 200
    looked_at(page).take_button.click()
    qtbot.waitUntil(lambda: 0 < desk.status._bar.value() < 200)
    assert desk.status.stop_button.isVisible()
    desk.status.stop_button.click()
    settle(qtbot, desk)
    assert imports(beach) == () and verify_book(beach).line_count == before and verify_book(beach).faults == ()
    assert sorted(one.name for one in tmp_path.glob("*.csv")) == ["long.csv"]
    looked_at(page).take_button.click()
    settle(qtbot, desk)
    assert len(imports(beach)[0].pieces) == 200, "what was looked through still stands there to be taken"
