"""The club's own limits as a text: changed, checked, compared on every piece, and only then adopted."""

from msgspec import Struct
from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QFontDatabase
from PySide6.QtWidgets import QPlainTextEdit, QVBoxLayout, QWidget

from inspector.desk.deeds.rulebook import Compared
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, row, said, scroll
from inspector.language import tr

_PAUSE_MS = 1000


class Told(Struct, frozen=True):
    """What a check or a comparison found."""

    head: str
    text: str


class ClubBook(QWidget):
    """check, compare: the text as it stands. adopt: a Compared. written: the text, a second after the last key.

    add, take: a limit, a packaged set is to be put in. drop: the packaged rulebook again. read, write: a file.
    """

    check = Signal(str)
    compare = Signal(str)
    adopt = Signal(object)
    written = Signal(str)
    add = Signal()
    take = Signal()
    drop = Signal()
    read = Signal()
    write = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.compared: Compared | None = None
        self.text = QPlainTextEdit()
        self.text.setAccessibleName(tr("The club's own limits"))
        self.text.setTabChangesFocus(True)
        self.text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont))
        self.head, self.told = said("", Type.HEAD), said("")
        self.adopt_button = button(tr("Adopt"), self._adopt, rank="first")
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(lambda: self.written.emit(self.text.toPlainText()))
        self.text.textChanged.connect(self._changed)
        self._lay_out()
        self.adopt_button.setEnabled(False)
        self.text.setReadOnly(True)  # until what was kept is read: nothing empty may take its place

    def show_text(self, text: str) -> None:
        """Let a text stand here; one that stands here already is left alone."""
        self.text.setReadOnly(False)
        if text != self.text.toPlainText():
            self.text.setPlainText(text)

    def tell(self, told: Told, compared: Compared | None = None) -> None:
        """Say what was found; what was compared may be adopted while the text stays as it is."""
        self.head.setText(told.head)
        self.told.setText(told.text)
        self.compared = compared
        self.adopt_button.setEnabled(compared is not None)
        is_packaged = compared is not None and not compared.text
        self._name_adopt(tr("Adopt the packaged rulebook") if is_packaged else tr("Adopt"))

    def flush(self) -> None:
        """Keep what was typed last."""
        if self._pause.isActive():
            self._pause.stop()
            self.written.emit(self.text.toPlainText())

    def _lay_out(self) -> None:
        deeds = [
            button(tr("Check"), lambda: self.check.emit(self.text.toPlainText())),
            button(tr("Compare"), lambda: self.compare.emit(self.text.toPlainText()),
                   name=tr("Compare on every piece with the rulebook in force")),
            self.adopt_button,
        ]  # fmt: skip
        others = [
            button(tr("Another limit…"), self.add.emit),
            button(tr("Packaged set…"), self.take.emit),
            button(tr("Open a file…"), self.read.emit),
            button(tr("Write it into a file…"), self.write.emit),
            button(tr("Packaged rulebook again…"), self.drop.emit),
        ]
        says = tr("What the club sets otherwise than the packaged rulebook. Nothing holds before it is adopted.")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        for part in (said(says), row(others), self.text, row(deeds)):
            layout.addWidget(part)
        layout.addWidget(scroll(column([self.head, self.told], GRID), tr("What was found")), 1)
        layout.setStretch(2, 1)

    def _changed(self) -> None:
        """Another text was never compared."""
        self.compared = None
        self.adopt_button.setEnabled(False)
        self._name_adopt(tr("Adopt"))
        self._pause.start()

    def _name_adopt(self, words: str) -> None:
        """The button says which book it adopts, since the text stands beside it either way."""
        self.adopt_button.setText(words)
        self.adopt_button.setAccessibleName(words)

    def _adopt(self) -> None:
        if self.compared:
            self.adopt.emit(self.compared)
