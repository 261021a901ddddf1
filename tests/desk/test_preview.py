"""A paper inside the window: its pages, larger and smaller, to a printer, as a copy."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk.preview import Preview
from inspector.desk.window import DeskWindow
from inspector.duties.office import Office
from inspector.duties.retire_item import print_notice
from tests.paper.reading import opened as opened_pdf

Shown = Callable[[], Preview]


@pytest.fixture
def notice(office: Office) -> Path:
    """The printed notice of the thinned tube."""
    return print_notice(office, "HR-007").path


@pytest.fixture
def shown(qtbot: QtBot, notice: Path) -> Shown:
    """Opens the notice and waits for its first page."""

    def opened() -> Preview:
        made = Preview(notice, None)
        made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
        qtbot.addWidget(made)
        made.show()
        qtbot.waitUntil(lambda: bool(made.pages) and _is_drawn(made))
        return made

    return opened


def page_count(file: Path) -> int:
    return len(opened_pdf(file.read_bytes()))


def _is_drawn(preview: Preview) -> bool:
    return preview.is_drawn(0)


def _pdf_printer(file: Path) -> QPrinter:
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(file))
    return printer


def test_every_page_is_there_and_named(shown: Shown, notice: Path) -> None:
    preview = shown()
    assert len(preview.pages) == page_count(notice)
    assert preview.pages[0].accessibleName() == f"Page 1 of {page_count(notice)}"
    picture = preview.pages[0].pixmap().toImage()
    dots = [picture.pixelColor(x, y).lightness() for x in range(0, 700, 7) for y in range(0, 900, 3)]
    assert min(dots) < 60 and max(dots) == 255, "the page is empty"
    assert preview.pages[0].pixmap().size() == preview.pages[0].size()


def test_pages_grow_and_shrink_by_keys(qtbot: QtBot, shown: Shown) -> None:
    preview = shown()
    before = preview.pages[0].width()
    QTest.keyClick(preview, Qt.Key.Key_Plus, Qt.KeyboardModifier.ControlModifier)
    assert preview.pages[0].width() == pytest.approx(1.25 * before, abs=2)
    qtbot.waitUntil(lambda: _is_drawn(preview))
    for _ in range(9):
        QTest.keyClick(preview, Qt.Key.Key_Minus, Qt.KeyboardModifier.ControlModifier)
    assert preview.pages[0].width() == pytest.approx(before * 40 / 96, abs=2), "no smaller than can be seen"


def test_it_is_printed_page_by_page(qtbot: QtBot, shown: Shown, notice: Path, tmp_path: Path) -> None:
    preview, printed = shown(), tmp_path / "printed.pdf"
    preview.print_on(_pdf_printer(printed))
    assert not preview.print_button.isEnabled(), "a second print would run into the first"
    qtbot.waitUntil(lambda: "went to the printer" in preview.told.text(), timeout=20_000)

    assert page_count(printed) == page_count(notice)
    assert preview.print_button.isEnabled()


def test_only_the_pages_that_were_chosen_are_printed(qtbot: QtBot, shown: Shown, tmp_path: Path) -> None:
    preview, printed = shown(), tmp_path / "printed.pdf"
    printer = _pdf_printer(printed)
    printer.setFromTo(1, 1)
    preview.print_on(printer)
    qtbot.waitUntil(lambda: preview.told.text() == "1 page went to the printer.", timeout=20_000)

    assert page_count(printed) == 1


def test_a_printer_that_takes_nothing_says_so(qtbot: QtBot, shown: Shown, tmp_path: Path) -> None:
    preview = shown()
    preview.print_on(_pdf_printer(tmp_path / "no such folder" / "printed.pdf"))
    qtbot.waitUntil(lambda: "takes no paper" in preview.told.text())
    assert preview.print_button.isEnabled()


def test_a_preview_that_is_closed_while_it_prints_leaves_nothing_running(shown: Shown, tmp_path: Path) -> None:
    preview = shown()
    preview.print_on(_pdf_printer(tmp_path / "printed.pdf"))
    QTest.keyClick(preview, Qt.Key.Key_Escape)
    assert preview.isHidden() and preview.background.is_idle


def test_a_copy_never_takes_the_place_of_another_file(qtbot: QtBot, shown: Shown, notice: Path, tmp_path: Path) -> None:
    preview, copy = shown(), tmp_path / "copy.pdf"
    preview.save_copy(copy)
    qtbot.waitUntil(lambda: "A copy lies at" in preview.told.text())
    assert copy.read_bytes() == notice.read_bytes()

    preview.save_copy(copy)
    qtbot.waitUntil(lambda: "is there already" in preview.told.text())


@pytest.mark.parametrize(("held", "said"), [(None, "cannot be read"), (b"no document", "cannot be read as a PDF")])
def test_a_paper_that_is_gone_or_spoilt_says_so(qtbot: QtBot, tmp_path: Path, held: bytes | None, said: str) -> None:
    file = tmp_path / "gone.pdf"
    if held is not None:
        file.write_bytes(held)
    preview = Preview(file, None)
    preview.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
    qtbot.addWidget(preview)
    preview.show()
    qtbot.waitUntil(lambda: said in preview.told.text())
    assert not preview.print_button.isEnabled()


def test_it_is_opened_from_the_message_that_tells_of_the_paper(qtbot: QtBot, desk: DeskWindow) -> None:
    desk.printing.retirement_notice("HR-007")
    qtbot.waitUntil(lambda: "is printed" in desk.notice.text)
    look = next(one for one in desk.notice.findChildren(QPushButton) if one.text() == "Look at it")
    look.click()
    made = next(one for one in desk.findChildren(Preview))
    qtbot.waitUntil(lambda: bool(made.pages))

    desk.close_for_good()
    assert made.isHidden() and made.background.is_idle, "it goes with the window"
