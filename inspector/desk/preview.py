"""A printed paper inside the window: page by page, larger and smaller, to a printer, or as a copy elsewhere."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QKeySequence, QPixmap, QResizeEvent, QShortcut
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QFileDialog, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.look import GRID
from inspector.desk.plain import button, said, scroll
from inspector.desk.printout import Printout
from inspector.duties.named_files import write_new_bytes
from inspector.duties.page_pictures import PaperPages, page_picture, read_pages
from inspector.language import tr, tr_n
from inspector.refused import Refused

_POINTS_PER_INCH = 72
_USUAL_DPI, _LEAST_DPI, _MOST_DPI = 96.0, 40.0, 300.0
_STEP = 1.25
_USUAL_SIZE = (980, 720)


class Preview(QDialog):
    """The paper in a file. The worker draws a page when it comes into sight; what goes wrong is said above them."""

    def __init__(self, file: Path, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setObjectName("page")
        self.setWindowTitle(file.stem)
        self.resize(*_USUAL_SIZE)
        self._file, self._dpi = file, _USUAL_DPI
        self._paper = PaperPages(b"", ())
        self._asked: set[int] = set()
        self._are_drawn: set[int] = set()
        self._printout: Printout | None = None
        self.background = Background(self)
        self.told = said(tr("Reading the paper…"))
        self.pages: list[QLabel] = []
        self.print_button = button(tr("Print…"), self.ask_printer, rank="first")
        self.copy_button = button(tr("Save a copy…"), self._ask_copy)
        self._area = scroll(QWidget(), tr("Pages of {name}", name=file.stem))
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._area.verticalScrollBar().valueChanged.connect(self._draw_what_is_seen)
        self._lay_out()
        self._let(False)
        self.finished.connect(self._end)
        self.background.run(read_pages, file, done=self._show, failed=self._refuse)

    def larger(self) -> None:
        """Larger pages."""
        self._zoom(self._dpi * _STEP)

    def smaller(self) -> None:
        """Smaller pages."""
        self._zoom(self._dpi / _STEP)

    def ask_printer(self) -> None:
        """Choose a printer, and print."""
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setDocName(self._file.stem)
        dialog = QPrintDialog(printer, self)
        dialog.setOption(QPrintDialog.PrintDialogOption.PrintPageRange)
        dialog.setMinMax(1, max(len(self.pages), 1))
        if dialog.exec() == QDialog.DialogCode.Accepted:
            self.print_on(printer)

    def print_on(self, printer: QPrinter) -> None:
        """Hand the pages to a printer."""
        self._let(False)
        self.told.setText(tr("Printing…"))
        self._printout = Printout(self._paper, self.background, self)
        self._printout.went.connect(self._went)
        self._printout.failed.connect(self._refuse)
        self._printout.begin(printer)

    def save_copy(self, to: Path) -> None:
        """A copy elsewhere; a file that is there already stays as it is."""
        told = tr("A copy lies at {file}.", file=to)
        self.background.run(
            write_new_bytes, to, self._paper.pdf, done=lambda _: self.told.setText(told), failed=self._refuse
        )

    def is_drawn(self, number: int) -> bool:
        """Whether a page, from 0, shows what stands on it in the size that was asked for."""
        return number in self._are_drawn

    def resizeEvent(self, event: QResizeEvent) -> None:
        """More pages may be in sight."""
        super().resizeEvent(event)
        QTimer.singleShot(0, self, self._draw_what_is_seen)

    def _lay_out(self) -> None:
        foot = QHBoxLayout()
        parts = (
            self.print_button,
            self.copy_button,
            button(tr("Larger"), self.larger),
            button(tr("Smaller"), self.smaller),
        )
        for part in parts:
            foot.addWidget(part)
        foot.addStretch(1)
        foot.addWidget(button(tr("Close"), self.close))
        layout = QVBoxLayout(self)
        layout.setSpacing(GRID)
        layout.addWidget(self.told)
        layout.addWidget(self._area, 1)
        layout.addLayout(foot)
        for keys, does in (("Ctrl++", self.larger), ("Ctrl+=", self.larger), ("Ctrl+-", self.smaller),
                           ("Ctrl+P", self.print_button.click)):  # fmt: skip
            QShortcut(QKeySequence(keys), self, does)

    def _let(self, may: bool) -> None:
        self.print_button.setEnabled(may)
        self.copy_button.setEnabled(may)

    def _show(self, paper: PaperPages) -> None:
        self._paper = paper
        sheet = QWidget()
        pages = QVBoxLayout(sheet)
        pages.setSpacing(2 * GRID)
        for number in range(len(paper.sizes)):
            page = QLabel()
            page.setObjectName("paper")
            page.setAccessibleName(tr("Page {number} of {count}", number=number + 1, count=len(paper.sizes)))
            pages.addWidget(page, 0, Qt.AlignmentFlag.AlignHCenter)
            self.pages.append(page)
        sheet.setObjectName("page")
        self._area.setWidget(sheet)
        self.told.setText(tr_n("{count} page", "{count} pages", len(paper.sizes)))
        self._let(True)
        self._zoom(self._dpi)
        self._area.setFocus()

    def _zoom(self, dpi: float) -> None:
        self._dpi = min(max(dpi, _LEAST_DPI), _MOST_DPI)
        self._asked.clear()
        self._are_drawn.clear()
        for page, (width, height) in zip(self.pages, self._paper.sizes, strict=True):
            scale = self._dpi / _POINTS_PER_INCH
            page.setFixedSize(QSize(round(width * scale), round(height * scale)))
            if not page.pixmap().isNull():  # blurred until it is drawn anew
                page.setPixmap(page.pixmap().scaled(page.size()))
        QTimer.singleShot(0, self, self._draw_what_is_seen)

    def _draw_what_is_seen(self) -> None:
        """Ask for the pages in sight; a page is drawn with the dots of this screen."""
        dots = self._dpi * self.devicePixelRatioF()
        for number, page in enumerate(self.pages):
            if number not in self._asked and not page.visibleRegion().isEmpty():
                self._asked.add(number)
                drawn = partial(self._drawn, number, dots)
                self.background.run(page_picture, self._paper, number, dots, done=drawn, failed=self._refuse)

    def _drawn(self, number: int, dots: float, png: bytes) -> None:
        if dots == self._dpi * self.devicePixelRatioF():  # else it was made larger or smaller meanwhile
            picture = QPixmap()
            picture.loadFromData(png)
            picture.setDevicePixelRatio(self.devicePixelRatioF())
            self.pages[number].setPixmap(picture)
            self._are_drawn.add(number)

    def _went(self, count: int) -> None:
        if self._printout and count == self._printout.page_count:
            self._let(True)
            self.told.setText(tr_n("{count} page went to the printer.", "{count} pages went to the printer.", count))
        else:
            self.told.setText(tr("Printing: page {number}", number=count))

    def _ask_copy(self) -> None:
        if name := QFileDialog.getSaveFileName(self, tr("Save a copy"), self._file.name, "*.pdf")[0]:
            self.save_copy(Path(name))

    def _refuse(self, refusal: Refused) -> None:
        self._let(bool(self.pages))
        self.told.setText(f"{refusal.why} {refusal.what_to_do}")

    def _end(self) -> None:
        if self._printout:
            self._printout.stop()
        self.background.close()
