"""A paper on its way to a printer, a page at a time: the worker draws a page, the window hands it over."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QRect, Qt, Signal
from PySide6.QtGui import QImage, QPainter
from PySide6.QtPrintSupport import QPrinter

from inspector.desk.background import Background
from inspector.duties.page_pictures import PaperPages, page_picture
from inspector.language import tr
from inspector.refused import Refused

_DPI = 300  # sharp enough for the smallest type of a sheet; more only fills the memory of old printers


class Printout(QObject):
    """Sends pages to a printer. went: so many of all are over; failed: it ended early, with the refusal."""

    went = Signal(int)
    failed = Signal(object)

    def __init__(self, pages: PaperPages, background: Background, parent: QObject) -> None:
        super().__init__(parent)
        self._pages, self._background = pages, background
        self._numbers: list[int] = []
        self._painter: QPainter | None = None
        self._printer: QPrinter | None = None

    def begin(self, printer: QPrinter) -> None:
        """Print the pages that were chosen at the printer, or all of them."""
        self._printer, self._painter = printer, QPainter()
        first, last = printer.fromPage() or 1, printer.toPage() or len(self._pages.sizes)
        self._numbers = list(range(first - 1, min(last, len(self._pages.sizes))))
        printer.setFullPage(True)  # the sheets keep margins of their own
        if not self._painter.begin(printer):
            self._end(tr("It takes no paper now."))
        else:
            self._next(0)

    @property
    def page_count(self) -> int:
        """How many pages go."""
        return len(self._numbers)

    def stop(self) -> None:
        """End before all pages are over; what the printer already has, it prints."""
        if self._painter:
            self._end(tr("It was stopped before the last page."))

    def _next(self, at: int) -> None:
        if at == len(self._numbers):
            self._finish()
            return
        self._background.run(
            page_picture, self._pages, self._numbers[at], _DPI, done=self._drawn(at), failed=self._refuse
        )

    def _drawn(self, at: int) -> Callable[[bytes], None]:
        def drawn(png: bytes) -> None:
            if self._painter and self._printer:
                if at and not self._printer.newPage():
                    self._end(tr("It takes no more paper."))
                    return
                image, room = QImage.fromData(png), self._painter.viewport()
                size = image.size().scaled(room.size(), Qt.AspectRatioMode.KeepAspectRatio)
                self._painter.drawImage(QRect(room.topLeft(), size), image)
                self.went.emit(at + 1)
                self._next(at + 1)

        return drawn

    def _finish(self) -> None:
        if self._painter:
            self._painter.end()
        self._painter = self._printer = None

    def _end(self, why: str) -> None:
        self._refuse(Refused(tr("printer"), why, tr("Look at the printer, then print it again.")))

    def _refuse(self, refusal: Refused) -> None:
        if self._painter and self._painter.isActive():
            self._painter.end()
        self._painter = self._printer = None
        self.failed.emit(refusal)
