"""The page of one piece: its verdict and reasons first, the drawing beside them, then all that is known of it."""

from PySide6.QtCore import QMimeData, Qt, QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk import record_parts as parts
from inspector.desk.columns import Columns
from inspector.desk.flow import flowing
from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look, Type
from inspector.desk.opened import Opened
from inspector.desk.piece.files_part import FilesPart
from inspector.desk.piece.handed import handed
from inspector.desk.plain import button, column, said, scroll, short
from inspector.gear.outcome import Outcome
from inspector.language import tr
from inspector.units import System

_MOST_BESIDE_FACTS = 2  # pictures that leave room below them; of more the other column is the shorter one


class Record(QWidget):
    """back, inspect, sheet, notice: what the officer asks for. typed: a letter that belongs to the search.

    deeds: the button below which all else that can be done is offered; why: the tag to be shown on the trainer's bench.
    attach: a file is to be added; file: a kept one (Attachment) is to be looked at; again: the number of a document to
    be printed again. handed: what was dropped or pasted (Handed), not yet read; dropped: all of it, names and bytes.
    """

    back = Signal()
    inspect = Signal()
    sheet = Signal()
    notice = Signal()
    typed = Signal(str)
    deeds = Signal(object)
    why = Signal(str)
    attach = Signal()
    file = Signal(object)
    again = Signal(str)
    handed = Signal(object)
    dropped = Signal(object)

    def __init__(self, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._system = look, system
        self.opened: Opened | None = None
        self.whole = False  # whether all of the page is built
        self.setObjectName("page")
        self._tag, self._kind = short("", Type.DISPLAY), said("", Type.HEAD, faint=True)
        self.inspect_button = button(tr("Inspect"), self.inspect.emit, rank="first")
        self.sheet_button = button(tr("Print trip sheet"), self.sheet.emit)
        self.notice_button = button(tr("Print retirement notice"), self.notice.emit)
        self.why_button = button(tr("Show why"), lambda: self.why.emit(self.tag), name=tr("Show why, on the bench"))
        self.more_button = button(tr("More…"), lambda: self.deeds.emit(self.more_button), name=tr("More deeds"))
        self._area = scroll(QWidget(), tr("Record of the piece"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.setSpacing(GRID)
        layout.addLayout(self._head())
        layout.addWidget(self._area, 1)

    @property
    def tag(self) -> str:
        """The tag of the piece shown; empty before one was."""
        return self.opened.tag if self.opened else ""

    def show_piece(self, opened: Opened) -> None:
        """Show a piece from the top."""
        self.opened, self.whole = opened, False
        dossier = opened.judged.dossier
        self._tag.setText(dossier.item.tag)
        self._kind.setText(dossier.kind.name)
        self.notice_button.setVisible(opened.judged.verdict.outcome is Outcome.RETIRE)
        self._area.setWidget(self._page(opened))
        self._area.verticalScrollBar().setValue(0)
        QTimer.singleShot(0, self, lambda: self._show_below(opened))  # what is read first is there at once

    def focus_start(self) -> None:
        """Where the keys go when the page opens: to what is done most."""
        self.inspect_button.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A letter or figure begins a search; a picture or files are pasted."""
        if event.matches(QKeySequence.StandardKey.Paste) and self.acceptDrops():
            self._take(QGuiApplication.clipboard().mimeData())
        elif text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped here."""
        if handed(event.mimeData()).is_something:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take what was dropped."""
        self._take(event.mimeData())
        event.acceptProposedAction()

    def _take(self, data: QMimeData) -> None:
        given = handed(data)
        if given.is_something:
            self.handed.emit(given)

    def _head(self) -> QHBoxLayout:
        layout = QHBoxLayout()
        layout.setSpacing(GRID)
        back = button("‹ " + tr("Gear list"), self.back.emit, name=tr("Back to the gear list"))
        names = column([self._tag, self._kind], gap=0)
        layout.addWidget(back, 0, Qt.AlignmentFlag.AlignTop)
        layout.addSpacing(GRID)
        layout.addWidget(names, 1)
        deeds = (self.inspect_button, self.sheet_button, self.notice_button, self.why_button, self.more_button)
        layout.addWidget(flowing(list(deeds)), 0, Qt.AlignmentFlag.AlignTop)
        return layout

    def _page(self, opened: Opened) -> QWidget:
        judged, words = opened.judged, opened.judged.explanation
        wide: list[QWidget] = [parts.verdict_part(judged, self._look, headline=not words.reasons)]
        if words.reasons:
            wide.append(parts.reasons_part(words.reasons, self._look))
        if opened.turns:
            wide.append(parts.facts_part(tr("What would change this"), opened.turns))
        if words.sums:
            wide.append(parts.facts_part(tr("The figures"), words.sums))
        margin = parts.drawings_part(judged, self._look, self._system, opened.how)
        shorter = wide if len(margin) > _MOST_BESIDE_FACTS else margin
        shorter.append(parts.facts_part(tr("The piece"), opened.piece))
        top = Columns(column(wide, 3 * GRID), column(margin, 3 * GRID), self._look)
        page = column([top], 3 * GRID)
        page.setObjectName("page")
        if layout := page.layout():
            layout.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
        return page

    def _show_below(self, opened: Opened) -> None:
        """Add what lies below the verdict, the figures and the pictures, in the next turn of the window."""
        page = self._area.widget()
        layout = page.layout() if page else None
        if self.opened is opened and isinstance(layout, QVBoxLayout):
            for number, one in enumerate(self._below(opened), start=1):
                layout.insertWidget(number, one)
                one.show()  # Qt would wait for yet another turn
            self.whole = True

    def _below(self, opened: Opened) -> list[QWidget]:
        """What follows over the whole width: its life, what belongs to it, what was done, what is folded away."""
        words = opened.judged.explanation
        files = FilesPart(opened.files, opened.thumbs, opened.file_words, self._look)
        files.attach.connect(self.attach)
        files.opened.connect(self.file)
        papers = parts.papers_part(opened.papers, self.again.emit)
        return [
            parts.life_part(opened.life, self._look),
            Columns(files, column([papers]), self._look, (1, 1)),
            parts.history_part(opened.history),
            parts.passes_part(words.passes),
            *([parts.terms_part(words.terms)] if words.terms else []),
            parts.cautions_part(words.cautions),
        ]
