"""The bench: the parts that can go into the rig, found as one types, drawn into the chain or put in by Return."""

from collections.abc import Sequence

from PySide6.QtCore import QMimeData, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import mark_icon
from inspector.desk.plain import said
from inspector.desk.rig_build.rungs import draw, part_data
from inspector.drawings.marks import outcome_word
from inspector.duties.rig_bench import BenchPart
from inspector.language import tr

_MARK_PX = 24


class PartsBench(QWidget):
    """put: this tag goes into the chosen place. back: the keys go back to the chain. drawn: a part is on its way."""

    put = Signal(str)
    back = Signal()
    drawn = Signal(bool)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.parts: tuple[BenchPart, ...] = ()
        self.line = _FindLine()
        self.list = _PartsList(look)
        self.told = said("", Type.SMALL, faint=True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        for part in (said(tr("Parts"), Type.HEAD), self.line, self.told):
            layout.addWidget(part)
        layout.addWidget(self.list, 1)
        self.line.textChanged.connect(lambda _: self._show())
        self.line.along.connect(self._along)
        self.line.entered.connect(self._enter)
        self.line.left.connect(self._leave)
        self.list.itemActivated.connect(lambda item: self.put.emit(item.data(Qt.ItemDataRole.UserRole)))
        self.list.drawn.connect(self.drawn)
        look.changed.connect(self._show)

    def offer(self, parts: Sequence[BenchPart]) -> None:
        """Other parts."""
        self.parts = tuple(parts)
        self._show()

    def part(self, tag: str) -> BenchPart | None:
        """The part with this tag, in any case."""
        return next((one for one in self.parts if one.tag.casefold() == tag.casefold()), None)

    def look_for(self, text: str) -> None:
        """Look for a part by letters that were typed in the chain."""
        self.line.setFocus()
        self.line.setText(text)

    @property
    def found(self) -> tuple[str, ...]:
        """The tags that are shown."""
        return tuple(self.list.item(row).data(Qt.ItemDataRole.UserRole) for row in range(self.list.count()))

    def _show(self) -> None:
        words = self.line.text().casefold().split()
        self.list.clear()
        for one in self.parts:
            if all(word in f"{one.tag} {one.name} {one.where}".casefold() for word in words):
                self.list.addItem(self._row(one))
        self.list.setCurrentRow(self._best() if self.list.count() else -1)
        self.told.setText(self._words())

    def _best(self) -> int:
        """A tag typed in full is meant before one that only begins so."""
        typed = self.line.text().strip().casefold()
        return next((row for row, tag in enumerate(self.found) if tag.casefold() == typed), 0)

    def _row(self, one: BenchPart) -> QListWidgetItem:
        word = outcome_word(one.outcome) if one.outcome else tr("no tag")
        head = one.name if one.outcome is None else f"{one.tag} · {one.name}"
        below = one.bears if one.outcome is None else f"{word} · {one.bears}\n{one.where}"
        item = QListWidgetItem(f"{head}\n{below}")
        if one.outcome:
            item.setIcon(mark_icon(one.outcome, self._look, self._look.px(_MARK_PX)))
        item.setData(Qt.ItemDataRole.UserRole, one.tag)
        item.setData(Qt.ItemDataRole.AccessibleTextRole, ", ".join([head, *below.splitlines()]))
        return item

    def _words(self) -> str:
        if self.list.count():
            return tr("Draw a part to its place, or choose the place and press Return.")
        if self.line.text().strip():
            return tr("No part here is called that. Return puts in what is typed, by its tag.")
        return tr("Choose who pulls and who is stuck: their parts stand here.")

    def _along(self, step: int) -> None:
        if self.list.count():
            self.list.setCurrentRow((self.list.currentRow() + step) % self.list.count())

    def _enter(self) -> None:
        """The part that is marked; where none is found, what is typed."""
        row, found = self.list.currentRow(), self.found
        tag = found[row] if 0 <= row < len(found) else "".join(self.line.text().split())
        if tag:
            self.line.clear()
            self.put.emit(tag)

    def _leave(self) -> None:
        self.line.clear()
        self.back.emit()


class _FindLine(QLineEdit):
    """along: so many parts on. entered: the marked one. left: Escape was pressed."""

    along = Signal(int)
    entered = Signal()
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Find a part for the rig"))
        self.setPlaceholderText(tr("Tag or any word of the part"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The arrows go along the parts, Return takes the marked one, Escape goes back to the chain."""
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Down, Qt.Key.Key_Up}:
            self.along.emit(1 if key is Qt.Key.Key_Down else -1)
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.entered.emit()
        elif key is Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)


class _PartsList(QListWidget):
    """The parts, each of which can be drawn."""

    drawn = Signal(bool)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.setAccessibleName(tr("Parts that can go into the rig"))
        self.setWordWrap(True)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setDragEnabled(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTextElideMode(Qt.TextElideMode.ElideNone)

    def startDrag(self, actions: Qt.DropAction) -> None:
        """Draw the marked part."""
        if items := self.selectedItems():
            self.drawn.emit(True)
            draw(self, self.mimeData(items))
            self.drawn.emit(False)

    def mimeData(self, items: Sequence[QListWidgetItem]) -> QMimeData:
        """The tag of a part."""
        return part_data(items[0].data(Qt.ItemDataRole.UserRole))
