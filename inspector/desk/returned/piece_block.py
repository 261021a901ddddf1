"""One piece of a returned sheet: its questions by number keys, its readings, what was remarked.

Where the sheet was read from a file, what was read stands there beforehand, with the piece of the photo below it.
"""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.fault_field import FaultField, fault_label
from inspector.desk.inspect.caution_line import AgainBox
from inspector.desk.inspect.grade_row import GradeRow
from inspector.desk.inspect.measure_box import MeasureBox
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, fill, hairline, row, said
from inspector.desk.returned.cut_out import box_pictures, written_part
from inspector.drawings.marks import outcome_word
from inspector.duties.take_returned import fault_words, typed_figure
from inspector.gear.kind import Grade, Measure
from inspector.gear.kit_check import AskedMeasure, KitPiece, Seen
from inspector.gear.photo_read import Answer, RoomRead
from inspector.gear.sheet_back import PieceBack
from inspector.language import tr

_GRADES = {Answer.GOOD: Grade.GOOD, Answer.FAULT: Grade.BAD}


class PieceBlock(QWidget):
    """changed: something else stands here. moves: a stop, and how many stops on the keys go."""

    changed = Signal()
    moves = Signal(QWidget, int)

    def __init__(self, piece: KitPiece, decimal: str, look: Look, back: PieceBack | None = None) -> None:
        super().__init__()
        self.piece, self._look = piece, look
        self._back = {one.tick.key: one for one in back.rows} if back else {}
        self._remarks = back.remarks if back else None
        self.rows = [GradeRow(check) for check in piece.asked]
        self.boxes = [MeasureBox(one.measure, piece.judged.dossier.item, decimal) for one in piece.measures]
        self.faults = [_fault_tick(one.measure) for one in piece.measures]
        self.note = FaultField(tr("Remarks on {tag}", tag=piece.tag))
        self._lost = _lost_faults(piece, back) if back else ()
        self.all_good = button(
            tr("All ticked good"), self.take_all_good, name=tr("All of {tag} is ticked good", tag=piece.tag)
        )
        self.fault = fault_label()
        self._take_back()
        fill(QVBoxLayout(self), self._parts(), GRID)
        for tick in self.faults:
            tick.toggled.connect(self.changed)
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
        measured = zip(self.boxes, self.faults, strict=True)
        fields = [stop for box, tick in measured for stop in (*box.fields, tick)]
        return [*self.rows, *fields, self.note]

    @property
    def is_written(self) -> bool:
        """Whether anything stands here."""
        graded = any(one.answer for one in self.rows)
        measured = any(not box.is_empty for box in self.boxes) or any(tick.isChecked() for tick in self.faults)
        return graded or measured or bool(self._lost) or bool(self.note.text().strip())

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
        measured = zip(self.piece.measures, self.faults, strict=True)
        ticked = [one.measure.name for one, tick in measured if tick.isChecked()]
        doubts = (*(fault_words(name) for name in ticked), *self._lost)
        return Seen(answers, readings, self.note.text().strip(), doubts), wrong

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
        written = self._written(self._remarks, self.note.accessibleName())
        remarks: list[QWidget] = [said(tr("Remarks"), Type.SMALL, faint=True), *written, self.note]
        graded = [part for one in self.rows for part in (one, *self._picture(one.check.key))]
        measured = [
            column([said(_limit(one), Type.SMALL, faint=True), *self._measured_pictures(one.measure), box, tick], 0)
            for one, box, tick in zip(piece.measures, self.boxes, self.faults, strict=True)
        ]
        top: list[QWidget] = [hairline(), said(head, Type.HEAD), self.fault, *made, row([self.all_good])]
        lost = [said(words, bold=True) for words in self._lost]
        return [*top, *graded, *measured, *lost, *remarks]

    def _take_back(self) -> None:
        """Let what was read stand in the fields; a figure that was only photographed is typed in by a person."""
        for one in self.rows:
            if (back := self._back.get(one.check.key)) and back.answer in _GRADES:
                one.give(_GRADES[back.answer])
        for box, tick in zip(self.boxes, self.faults, strict=True):
            lines = {point: self._back[key] for point, key in _keys(box.measure) if key in self._back}
            box.give({point: typed_figure(line) for point, line in lines.items()})
            tick.setChecked(any(line.answer is Answer.FAULT for line in lines.values()))
        if self._remarks:
            self.note.setText(self._remarks.text)

    def _picture(self, key: str) -> list[QWidget]:
        shown = box_pictures(self._back[key], self._look) if key in self._back else None
        return [shown] if shown else []

    def _measured_pictures(self, measure: Measure) -> list[QWidget]:
        keys = [key for _, key in _keys(measure) if key in self._back]
        boxes = [part for key in keys for part in self._picture(key)]
        lines = [self._back[key] for key in keys]
        return [*boxes, *(part for one in lines for part in self._written(one.reading, one.tick.text))]

    def _written(self, room: RoomRead | None, question: str) -> list[QWidget]:
        label = tr("Written at “{question}”:", question=question)
        return [written_part(room, label, self._look)] if room and room.picture else []

    def _mover(self, stop: QWidget) -> Callable[[int], None]:
        return lambda by: self.moves.emit(stop, by)


def _limit(one: AskedMeasure) -> str:
    return tr("On the sheet: {limit}", limit=one.limit)


def _keys(measure: Measure) -> list[tuple[str, str]]:
    """The places of a measure with the key of each one's line on the sheet."""
    return [(point, f"{measure.key}/{point}" if point else measure.key) for point in measure.points or ("",)]


def _fault_tick(measure: Measure) -> AgainBox:
    made = AgainBox()
    made.setText(tr("Ticked as a fault on the sheet"))
    made.setAccessibleName(tr("{measure}: ticked as a fault on the sheet", measure=measure.name))
    return made


def _lost_faults(piece: KitPiece, back: PieceBack) -> tuple[str, ...]:
    """Faults at questions that the piece's kind does not ask any more: they are kept as doubts."""
    asked = {one.key for one in piece.asked} | {key for one in piece.measures for _, key in _keys(one.measure)}
    lost = (one for one in back.rows if one.answer is Answer.FAULT and one.tick.key not in asked)
    return tuple(fault_words(one.tick.text) for one in lost)
