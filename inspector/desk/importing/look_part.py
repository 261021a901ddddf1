"""A list that was read: its columns with what is asked, its rows with what becomes of them, and the taking."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.importing.columns_part import ColumnsPart
from inspector.desk.importing.rows_part import RowsPart
from inspector.desk.look import GRID, Look
from inspector.desk.plain import button, over_foot, row, said, scroll
from inspector.duties.import_list import sheet_called
from inspector.duties.importing.columns import meanings
from inspector.duties.office import Office
from inspector.duties.tell_import import fate_counts, open_questions
from inspector.gear.import_list import Fates
from inspector.language import tr, tr_n

COLUMNS, ROWS = range(2)


class LookPart(QWidget):
    """changed: another matching; turned: another sheet or row of headings; photos: a folder is to be chosen.

    take: keep what passes; other: another file. shown: the part to show first, the columns where something is asked.
    """

    changed = Signal(object)
    turned = Signal(str, object)
    photos = Signal()
    take = Signal()
    other = Signal()
    typed = Signal(str)

    def __init__(self, office: Office, run: Fates, look: Look, shown: int | None = None) -> None:
        super().__init__()
        self.run = run
        self.columns = ColumnsPart(office, run, meanings(office))
        self.rows = RowsPart(run, sheet_called(run.file, run.matching.sheet), look)
        self.columns.changed.connect(self.changed)
        self.columns.turned.connect(self.turned)
        self.rows.typed.connect(self.typed)
        self._stack = QStackedWidget()
        self._stack.addWidget(scroll(self.columns, tr("What the columns mean")))
        self._stack.addWidget(scroll(self.rows, tr("What becomes of each row")))
        self.parts = self._buttons()
        self.take_button = self._take_button()
        top = QWidget()
        layout = QVBoxLayout(top)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(row(self.parts))
        layout.addWidget(self._stack, 1)
        photos = button(self._photo_words(), self.photos.emit)
        other = button(tr("Another file"), self.other.emit)
        over_foot(self, top, [self.take_button, photos, other, said(fate_counts(run))])
        self.show_part(shown if shown is not None else ROWS if not open_questions(run) else COLUMNS)

    @property
    def shown(self) -> int:
        """Which part is shown."""
        return self._stack.currentIndex()

    def show_part(self, part: int) -> None:
        """Show the columns or the rows."""
        self.parts[part].setChecked(True)
        self._stack.setCurrentIndex(part)

    def focus_start(self) -> None:
        """The keys go to the part that is shown."""
        self.parts[self.shown].setFocus()

    def _buttons(self) -> list[QPushButton]:
        count = open_questions(self.run)
        asked = tr_n("Columns · {count} question is open", "Columns · {count} questions are open", count)
        words = (asked if count else tr("Columns"), tr("What becomes of each row"))
        group = QButtonGroup(self)
        made = [button(text, partial(self.show_part, at), rank="filter") for at, text in enumerate(words)]
        for one in made:
            one.setCheckable(True)
            group.addButton(one)
        return made

    def _take_button(self) -> QPushButton:
        count = len(self.run.passed)
        made = button(tr_n("Take {count} piece", "Take {count} pieces", count), self.take.emit, rank="first")
        made.setEnabled(count > 0)
        return made

    def _photo_words(self) -> str:
        count = sum(len(one.photos) for one in self.run.passed) if self.run.photos_in else 0
        return tr_n("{count} photo goes with them", "{count} photos go with them", count) if count else tr("Photos…")
