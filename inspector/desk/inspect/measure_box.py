"""One measure of an inspection: a field for each named place, how it was taken, and its places on the drawing."""

from collections.abc import Mapping

from msgspec import Struct
from PySide6.QtCore import Signal
from PySide6.QtGui import QFocusEvent, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from inspector.desk.choice import StillBox
from inspector.desk.columns import Columns
from inspector.desk.fault_field import FaultField
from inspector.desk.inspect.caution_line import AgainBox, CautionLine
from inspector.desk.inspect.how_box import LABEL_PX, HowBox
from inspector.desk.inspect.points_picture import ReadingPoints
from inspector.desk.inspect.typed_reading import must_say_method, reading_of, with_unit
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import column, said, short
from inspector.drawings.reading_points import PointsPicture, reading_points
from inspector.duties.last_time import last_reading
from inspector.duties.plausible import Caution, reading_name
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Reading
from inspector.gear.item import Item
from inspector.gear.kind import Measure, kind_word
from inspector.gear.verdict import WallForecast
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.units import Dimension

_NARROW_PX = 560

Stop = StillBox | FaultField | AgainBox


class Past(Struct, frozen=True):
    """What is known of the piece, to be shown beside the fields: what was read last, and the wall as judged."""

    dossier: Dossier
    wall: WallForecast | None
    look: Look


class PointField(FaultField):
    """A reading at one place, with its fault and its caution below it. reached: the keys came or went."""

    reached = Signal()

    def __init__(self, measure: Measure, point: str, past: Past | None) -> None:
        super().__init__(reading_name(measure, point), _example(measure.dimension))
        self.point = point
        self.caution = CautionLine()
        self.last = said(_last_words(past, measure, point), Type.SMALL, faint=True)
        self.setAcceptDrops(False)  # a picture dropped here belongs to the form

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keys came."""
        super().focusInEvent(event)
        self.reached.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keys went."""
        super().focusOutEvent(event)
        self.reached.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A picture that is pasted belongs to the form."""
        if event.matches(QKeySequence.StandardKey.Paste) and not QGuiApplication.clipboard().mimeData().hasText():
            event.ignore()
        else:
            super().keyPressEvent(event)


class MeasureBox(QWidget):
    """typed: something here changed."""

    typed = Signal()

    def __init__(self, measure: Measure, item: Item, decimal: str, past: Past | None = None) -> None:
        super().__init__()
        self.measure, self._decimal = measure, decimal
        self.fields = [PointField(measure, point, past) for point in measure.points or ("",)]
        self.how_box = HowBox(measure)
        self.picture = _picture(measure, past)
        self.fault = said("", Type.SMALL, bold=True)
        self.fault.hide()
        self._lay_out(item, past)
        self.how_box.chosen.connect(self.typed)
        for field in self.fields:
            field.textChanged.connect(self.typed)
            field.textChanged.connect(self._draw)
            field.reached.connect(self._draw)
            field.caution.changed.connect(self.typed)
            field.editingFinished.connect(self._add_units)
        if self.picture:
            self.picture.chosen.connect(self._go_to)

    @property
    def stops(self) -> list[Stop]:
        """Where the keys go in turn; the way it is taken is one of them where it must be said."""
        first: list[Stop] = [self.how_box.method.box] if must_say_method(self.measure) else []
        return [*first, *(stop for field in self.fields for stop in (field, field.caution.again))]

    @property
    def is_empty(self) -> bool:
        """Whether no figure was typed."""
        return not any(field.text().strip() for field in self.fields)

    @property
    def unclear(self) -> list[str]:
        """The names of the readings that are typed and not clear; all of them until it is said how they were taken."""
        unsaid = self.how_box.how.method is None
        wrong = [one for one in self.fields if one.is_faulty or (unsaid and one.text().strip())]
        return [reading_name(self.measure, one.point) for one in wrong]

    @property
    def typed_texts(self) -> dict[str, str]:
        """By point, what stands in its field."""
        return {field.point: field.text().strip() for field in self.fields if field.text().strip()}

    def give(self, texts: Mapping[str, str]) -> None:
        """Let texts stand in the fields as they were typed once."""
        for field in self.fields:
            field.setText(texts.get(field.point, ""))

    def readings(self) -> tuple[list[Reading], int]:
        """The readings that are clear, and how many are not; the faults are shown at their fields."""
        found = [self._reading(field) for field in self.fields]
        clear = [one for one in found if isinstance(one, Reading)]
        unclear = sum(isinstance(one, Refused) for one in found)
        if clear and self.how_box.how.method is None:
            why = tr("It is not said what it was measured with.")
            self.refuse(Refused(self.measure.name, why, tr("Choose it above.")))
            return [], unclear + len(clear)
        self.refuse(None)
        return clear, unclear

    def caution(self, found: Mapping[tuple[str, str], Caution]) -> None:
        """Say at each field what is out of the ordinary there. found: by measure and point."""
        for field in self.fields:
            field.caution.tell(found.get((self.measure.key, field.point)))

    def first_fault(self) -> QWidget | None:
        """Where the keys should go to mend what is wrong."""
        wrong: list[QWidget] = [field for field in self.fields if field.is_faulty]
        return next(iter(wrong), None if self.fault.isHidden() else self.how_box.method.box)

    def is_named_by(self, refusal: Refused) -> bool:
        """Whether a refusal speaks of this measure, or of one of its places."""
        return refusal.field in {self.measure.name, *(reading_name(self.measure, one.point) for one in self.fields)}

    def refuse(self, refusal: Refused | None) -> None:
        """Show what is not taken of this measure, with its place where it has one, or nothing."""
        place = "" if refusal is None or refusal.field == self.measure.name else f"{refusal.field}: "
        self.fault.setText(f"{place}{refusal.why} {refusal.what_to_do}" if refusal else "")
        self.fault.setVisible(refusal is not None)

    def _reading(self, field: PointField) -> Reading | Refused | None:
        """What stands in a field: a reading, a fault shown there, or nothing."""
        if not (text := field.text().strip()):
            field.tell(None)
            return None
        try:
            reading = reading_of(self.measure, field.point, text, self.how_box.how, self._decimal)
        except Refused as refusal:
            field.tell(refusal)
            return refusal
        field.tell(None)
        return reading

    def _add_units(self) -> None:
        """A unit typed once holds for the other places; it is written out, so that nothing is taken silently."""
        for field in self.fields:
            others = tuple(one.text() for one in self.fields if one is not field)
            if not field.hasFocus() and (text := with_unit(field.text(), others)) != field.text():
                field.setText(text)

    def _draw(self) -> None:
        """The drawing follows the fields."""
        if self.picture:
            at = next((field.point for field in self.fields if field.hasFocus()), None)
            self.picture.show_points(at, self.typed_texts)

    def _go_to(self, point: str) -> None:
        next(field for field in self.fields if field.point == point).setFocus()

    def _lay_out(self, item: Item, past: Past | None) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(GRID + GRID // 2, GRID, GRID, GRID)
        layout.setSpacing(GRID // 2)
        new = item.size(self.measure.compare_with) if self.measure.compare_with else None
        name = tr("{name} (as new {size})", name=self.measure.name, size=new.as_typed) if new else self.measure.name
        layout.addWidget(said(name, bold=True))
        layout.addWidget(said(self.measure.how, Type.SMALL, faint=True))
        layout.addWidget(column([self.how_box, self.fault], GRID // 2))
        fields = self._grid()
        if self.picture and past:
            fields = Columns(column([fields]), column([self.picture]), past.look, (1, 0), _NARROW_PX)
        layout.addWidget(fields)

    def _grid(self) -> QWidget:
        made = QWidget()
        grid = QGridLayout(made)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.setColumnMinimumWidth(0, LABEL_PX)
        grid.setColumnStretch(1, 1)
        for number, field in enumerate(self.fields):
            grid.addWidget(short(_point_name(field.point) or tr("Reading")), 2 * number, 0)
            grid.addWidget(field, 2 * number, 1)
            below: list[QWidget] = [field.last] if field.last.text() else []
            grid.addWidget(column([field.fault, field.caution, *below], 0), 2 * number + 1, 1)
        return made


def _picture(measure: Measure, past: Past | None) -> ReadingPoints | None:
    if past is None:
        return None

    def draw(at: str | None, typed: Mapping[str, str]) -> PointsPicture | None:
        return reading_points(past.dossier.kind, measure, past.wall, at=at, typed=typed)

    first = draw(None, {})
    return ReadingPoints(first, draw, past.look) if first else None


def _point_name(point: str) -> str:
    name = kind_word(point)
    return name[:1].upper() + name[1:]


def _last_words(past: Past | None, measure: Measure, point: str) -> str:
    """What was read there last; shown, and never taken over."""
    found = last_reading(past.dossier, measure.key, point) if past else None
    if found is None:
        return ""
    return tr("Last: {value}, {day}", value=found[1].figure.as_typed, day=show_day(found[0].on))


def _example(dimension: Dimension) -> str:
    """What a figure may look like; worded so that nobody takes it for a reading."""
    examples = {Dimension.LENGTH: tr("for example 2.9 mm"), Dimension.COUNT: tr("for example 4")}
    return examples.get(dimension, "")
