"""The page of one piece: its verdict and reasons first, the drawing beside them, then all that is known of it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk import record_parts as parts
from inspector.desk.columns import Columns
from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look, Type
from inspector.desk.opened import Opened
from inspector.desk.plain import button, column, said, scroll, short
from inspector.gear.outcome import Outcome
from inspector.language import tr
from inspector.units import System


class Record(QWidget):
    """back, inspect, sheet, notice: what the officer asks for. typed: a letter that belongs to the search."""

    back = Signal()
    inspect = Signal()
    sheet = Signal()
    notice = Signal()
    typed = Signal(str)

    def __init__(self, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._system = look, system
        self.opened: Opened | None = None
        self.setObjectName("page")
        self._tag, self._kind = short("", Type.DISPLAY), said("", Type.HEAD, faint=True)
        self.inspect_button = button(tr("Inspect"), self.inspect.emit, rank="first")
        self.sheet_button = button(tr("Print trip sheet"), self.sheet.emit)
        self.notice_button = button(tr("Print retirement notice"), self.notice.emit)
        self._area = scroll(QWidget(), tr("Record of the piece"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.setSpacing(GRID)
        layout.addLayout(self._head())
        layout.addWidget(self._area, 1)

    def show_piece(self, opened: Opened) -> None:
        """Show a piece from the top."""
        self.opened = opened
        dossier = opened.judged.dossier
        self._tag.setText(dossier.item.tag)
        self._kind.setText(dossier.kind.name)
        self.notice_button.setVisible(opened.judged.verdict.outcome is Outcome.RETIRE)
        self._area.setWidget(self._page(opened))
        self._area.verticalScrollBar().setValue(0)

    def focus_start(self) -> None:
        """Where the keys go when the page opens: to what is done most."""
        self.inspect_button.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A letter or figure begins a search."""
        if text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def _head(self) -> QHBoxLayout:
        layout = QHBoxLayout()
        layout.setSpacing(GRID)
        back = button("‹ " + tr("Gear list"), self.back.emit, name=tr("Back to the gear list"))
        names = column([self._tag, self._kind], gap=0)
        layout.addWidget(back, 0, Qt.AlignmentFlag.AlignTop)
        layout.addSpacing(GRID)
        layout.addWidget(names, 1)
        for made in (self.inspect_button, self.sheet_button, self.notice_button):
            layout.addWidget(made, 0, Qt.AlignmentFlag.AlignTop)
        return layout

    def _page(self, opened: Opened) -> QWidget:
        judged, words = opened.judged, opened.judged.explanation
        wide: list[QWidget] = [parts.verdict_part(judged, self._look, headline=not words.reasons)]
        if words.reasons:
            wide.append(parts.reasons_part(words.reasons, self._look))
        if words.sums:
            wide.append(parts.facts_part(tr("The figures"), words.sums))
        margin = [*parts.drawings_part(judged, self._look, self._system)]
        margin.append(parts.facts_part(tr("The piece"), opened.piece))
        top = Columns(column(wide, 3 * GRID), column(margin, 3 * GRID), self._look)
        below = [
            parts.passes_part(words.passes),
            *([parts.terms_part(words.terms)] if words.terms else []),
            parts.history_part(opened.history),
            parts.cautions_part(words.cautions),
        ]
        page = column([top, *below], 3 * GRID)
        page.setObjectName("page")
        layout = page.layout()
        if layout:
            layout.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
        return page
