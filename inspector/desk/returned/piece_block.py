"""One piece of a returned sheet: its questions by number keys, its readings, what was remarked."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.fault_field import FaultField, fault_label
from inspector.desk.inspect.grade_row import GradeRow
from inspector.desk.inspect.measure_box import MeasureBox
from inspector.desk.look import GRID, Type
from inspector.desk.plain import button, column, fill, hairline, row, said
from inspector.drawings.marks import outcome_word
from inspector.gear.kind import Grade
from inspector.gear.kit_check import AskedMeasure, KitPiece, Seen
from inspector.language import tr


class PieceBlock(QWidget):
    """changed: something else stands here. moves: a stop, and how many stops on the keys go."""

    changed = Signal()
    moves = Signal(QWidget, int)

    def __init__(self, piece: KitPiece, decimal: str) -> None:
        super().__init__()
        self.piece = piece
        self.rows = [GradeRow(check) for check in piece.asked]
        self.boxes = [MeasureBox(one.measure, piece.judged.dossier.item, decimal) for one in piece.measures]
        self.note = FaultField(tr("Remarks on {tag}", tag=piece.tag))
        self.all_good = button(
            tr("All ticked good"), self.take_all_good, name=tr("All of {tag} is ticked good", tag=piece.tag)
        )
        self.fault = fault_label()
        fill(QVBoxLayout(self), self._parts(), GRID)
        for one in self.rows:
            one.graded.connect(self.changed)
        for box in self.boxes:
            box.typed.connect(self.changed)
        self.note.textChanged.connect(self.changed)
        for stop in self.stops:
            stop.moves.connect(self._mover(stop))  # type: ignore[attr-defined]

    @property
    def stops(self) -> list[QWidget]:
        """Where the keys go in turn."""
        fields = [field for box in self.boxes for field in box.fields]
        return [*self.rows, *fields, self.note]

    @property
    def is_written(self) -> bool:
        """Whether anything stands here."""
        graded = any(one.answer for one in self.rows)
        return graded or any(not box.is_empty for box in self.boxes) or bool(self.note.text().strip())

    def take_all_good(self) -> None:
        """Every question of the piece is ticked good on the paper; what is graded otherwise stays."""
        for one in self.rows:
            if one.grade is None:
                one.give(Grade.GOOD)

    def seen(self) -> tuple[Seen, QWidget | None]:
        """What stands here, and the first field that cannot be read."""
        answers = tuple(answer for one in self.rows if (answer := one.answer))
        found = [box.readings() for box in self.boxes]
        readings = tuple(reading for clear, _ in found for reading in clear)
        wrong = next((box.first_fault() for box, (_, unclear) in zip(self.boxes, found, strict=True) if unclear), None)
        return Seen(answers, readings, self.note.text().strip()), wrong

    def tell(self, fault: str) -> None:
        """Say what is wrong with the piece, or nothing."""
        self.fault.setText(fault)
        self.fault.setVisible(bool(fault))

    def _parts(self) -> list[QWidget]:
        piece = self.piece
        head = tr("{tag} · {kind}", tag=piece.tag, kind=piece.kind_name)
        already = tr("Checked already by {who}.", who=", ".join(piece.checked_by))
        made = [said(already, faint=True)] if piece.made else []
        stays = tr("It stays in the shed now ({outcome}): {why}", outcome=outcome_word(piece.outcome), why=piece.why)
        made += [] if piece.goes else [said(stays)]
        remarks: list[QWidget] = [said(tr("Remarks"), Type.SMALL, faint=True), self.note]
        measured = [
            column([said(_limit(one), Type.SMALL, faint=True), box], 0)
            for one, box in zip(piece.measures, self.boxes, strict=True)
        ]
        top: list[QWidget] = [hairline(), said(head, Type.HEAD), self.fault, *made, row([self.all_good])]
        return [*top, *self.rows, *measured, *remarks]

    def _mover(self, stop: QWidget) -> Callable[[int], None]:
        return lambda by: self.moves.emit(stop, by)


def _limit(one: AskedMeasure) -> str:
    return tr("On the sheet: {limit}", limit=one.limit)
