"""What is doubtful on a sheet that was read from a photo, on one screen: the picture, and a key for each answer."""

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QButtonGroup, QFrame, QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, over_foot, said, scroll
from inspector.desk.returned.cut_out import answer_word, box_pictures
from inspector.duties.read_returned import SheetBack
from inspector.gear.photo_read import Answer
from inspector.gear.sheet_back import PieceBack, RowBack
from inspector.language import tr, tr_n

_WIDEST_PX = 760
_KEYS = {Qt.Key.Key_1: Answer.GOOD, Qt.Key.Key_3: Answer.FAULT, Qt.Key.Key_0: Answer.NONE}
_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Return: 1, Qt.Key.Key_Enter: 1, Qt.Key.Key_Up: -1}


class DoubtRow(QFrame):
    """One row that was not clear. said_so: somebody said what stands there; moves: go so many rows on."""

    said_so = Signal()
    moves = Signal(int)

    def __init__(self, piece: PieceBack, back: RowBack, look: Look) -> None:
        super().__init__()
        self.piece, self.back = piece, back
        self.answer: Answer | None = None
        self.setObjectName("grade")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._group = QButtonGroup(self)
        self.buttons = {answer: self._button(key, answer) for key, answer in _KEYS.items()}
        self._lay_out(look)
        self._tell()

    def give(self, answer: Answer) -> None:
        """Say what stands there."""
        self.answer = answer
        self.buttons[answer].setChecked(True)
        self._tell()
        self.said_so.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """1 good, 3 fault, 0 nothing ticked; arrows and Return move."""
        key = Qt.Key(event.key())
        if key in _KEYS:
            self.give(_KEYS[key])
            self.moves.emit(1)
        elif key in _STEPS:
            self.moves.emit(_STEPS[key])
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click anywhere on the row takes the keys there."""
        self.setFocus()

    def _button(self, key: Qt.Key, answer: Answer) -> QPushButton:
        made = QPushButton(f"{key.value - Qt.Key.Key_0.value}  {answer_word(answer)}")
        made.setProperty("rank", "grade")
        made.setCheckable(True)
        made.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the row has the keys
        made.setAccessibleName(tr("{check}: {grade}", check=self.back.tick.text, grade=answer_word(answer)))
        made.clicked.connect(lambda: self.give(answer))
        self._group.addButton(made)
        return made

    def _lay_out(self, look: Look) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(GRID, GRID, GRID, GRID)
        layout.setSpacing(GRID // 2)
        layout.addWidget(said(f"{self.piece.tag} · {self.back.tick.text}", bold=True))
        line = QHBoxLayout()
        line.setSpacing(2 * GRID)
        if pictures := box_pictures(self.back, look):
            line.addWidget(pictures, 1)
        else:
            line.addWidget(said(tr("Both boxes are ticked, or one only in part."), faint=True), 1)
        for made in self.buttons.values():
            line.addWidget(made, 0, Qt.AlignmentFlag.AlignBottom)
        layout.addLayout(line)

    def _tell(self) -> None:
        given = answer_word(self.answer) if self.answer else tr("not said yet")
        self.setAccessibleName(f"{self.piece.tag}, {self.back.tick.text}: {given}")


class DoubtPage(QWidget):
    """settled: the sheet, every doubtful row of it answered by a person."""

    settled = Signal(object)

    def __init__(self, back: SheetBack, look: Look) -> None:
        super().__init__()
        self.back = back
        self.rows = [DoubtRow(piece, one, look) for piece, one in back.doubtful]
        self.go_button = button(tr("Go on to the sheet"), self.try_go_on, rank="first")
        self.left = said("", Type.SMALL, faint=True)
        self._area = self._laid_out(look)
        for row in self.rows:
            row.said_so.connect(self._tell)
            row.moves.connect(self._mover(row))
        self._tell()

    def focus_start(self) -> None:
        """The keys go to the first row that nobody has answered."""
        self._reach(next((row for row in self.rows if row.answer is None), self.rows[0]))

    def try_go_on(self) -> None:
        """Hand the sheet on, once all is said."""
        if any(row.answer is None for row in self.rows):
            self.focus_start()
            return
        said_so = {(row.piece.tag, row.back.tick.key): row.answer for row in self.rows}
        pieces = tuple(replace(piece, rows=tuple(_settled(piece, row, said_so) for row in piece.rows))
                       for piece in self.back.pieces)  # fmt: skip
        self.settled.emit(replace(self.back, pieces=pieces))

    def _mover(self, row: DoubtRow) -> object:
        def move(step: int) -> None:
            at = self.rows.index(row) + step
            if at >= len(self.rows):
                self.go_button.setFocus()
            elif at >= 0:
                self._reach(self.rows[at])

        return move

    def _reach(self, row: DoubtRow) -> None:
        row.setFocus()
        self._area.ensureWidgetVisible(row, 0, 6 * GRID)

    def _tell(self) -> None:
        left = sum(row.answer is None for row in self.rows)
        self.left.setText(tr_n("One is left to say.", "{count} are left to say.", left) if left else tr("All is said."))

    def _laid_out(self, look: Look) -> QScrollArea:
        head = tr("Sheet {number}: what was not clear", number=self.back.number)
        says = tr(
            "Say what the pen meant. 1 good, 3 fault, 0 nothing ticked. When in doubt it is a fault, or nothing: "
            "neither lets a piece go."
        )
        inside = column([said(head, Type.DISPLAY), said(says), *self.rows], GRID)
        look.fit(inside, QWidget.setMaximumWidth, _WIDEST_PX)
        area = scroll(inside, head)
        over_foot(self, area, (self.go_button, self.left))
        return area


def _settled(piece: PieceBack, row: RowBack, said_so: dict[tuple[str, str], Answer | None]) -> RowBack:
    answer = said_so.get((piece.tag, row.tick.key)) if row.is_doubtful else None
    return replace(row, answer=answer, confidence=1.0) if answer else row
