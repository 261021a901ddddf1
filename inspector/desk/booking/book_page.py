"""The page on which a booking begins: the kinds of gear with what each is, found as one types."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QListWidgetItem, QVBoxLayout

from inspector.desk.background import Background
from inspector.desk.deeds.booking import book
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import said
from inspector.desk.wrapped_list import WrappedList
from inspector.duties.look_up import kinds
from inspector.duties.office import Office
from inspector.gear.kind import Kind
from inspector.language import tr


class BookPage(Place):
    """Choosing a kind goes to its form."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self._kinds: tuple[Kind, ...] = ()
        self.line, self.list = QLineEdit(), WrappedList(tr("Kinds of gear"), look)
        self.line.setPlaceholderText(tr("Which kind of gear? Type a word of it"))
        self.line.setAccessibleName(tr("Kind of gear"))
        self._none = said(
            tr("No kind is called so. Try another word, for example shackle, strap, rope, pin, bar. What no pull goes "
               "through, as a jack, a recovery board, a shovel or a compressor, is outside this register.")
        )  # fmt: skip
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        for part in (said(tr("Book a piece in"), Type.DISPLAY), self.line, self._none, self.list):
            layout.addWidget(part)
        layout.setStretch(3, 1)
        self.line.textChanged.connect(self._find)
        self.line.installEventFilter(self)
        self.line.returnPressed.connect(self._choose)
        self.list.itemActivated.connect(lambda _: self._choose())

    def begin(self, what: object = None) -> None:
        """Offer every kind again."""
        self._kinds = kinds(self._office)  # they are in the rulebook that is open; nothing is read
        self.line.clear()
        self._find("")

    def focus_start(self) -> None:
        """The keys go to the line."""
        self.line.setFocus()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The arrows move the bar of the list while the line has the keys."""
        if watched is self.line and isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()))
            if step:
                self.list.setCurrentRow(max(0, min(self.list.currentRow() + step, self.list.count() - 1)))
                return True
        return super().eventFilter(watched, event)

    def _find(self, text: str) -> None:
        words = text.casefold().split()
        found = [one for one in self._kinds if all(word in f"{one.name} {one.what}".casefold() for word in words)]
        self.list.clear()
        for one in found:
            item = QListWidgetItem(tr("{name}: {what}", name=one.name, what=one.what))
            item.setData(Qt.ItemDataRole.UserRole, one.key)
            self.list.addItem(item)
        self.list.setCurrentRow(0)
        self._none.setVisible(not found)

    def _choose(self) -> None:
        if self.list.currentRow() >= 0:
            kind = self._office.kind(self.list.currentItem().data(Qt.ItemDataRole.UserRole))
            self.go.emit(Go(DEED, (book(kind), kind, kind.key)))
