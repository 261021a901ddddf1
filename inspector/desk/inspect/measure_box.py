"""One measure of an inspection: a field for each named place, and how it was taken."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from inspector.desk.choice import StillBox
from inspector.desk.fault_field import FaultField
from inspector.desk.inspect.how_box import LABEL_PX, HowBox
from inspector.desk.look import GRID, Type
from inspector.desk.plain import said, short
from inspector.desk.inspect.typed_reading import must_say_method, reading_of, with_unit
from inspector.gear.inspection import Reading
from inspector.gear.item import Item
from inspector.gear.kind import Measure
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension


class PointField(FaultField):
    """A reading at one place, with its fault below it."""

    def __init__(self, measure: Measure, point: str) -> None:
        super().__init__(f"{measure.name}, {point}" if point else measure.name, _example(measure.dimension))
        self.point = point


class MeasureBox(QWidget):
    """typed: something here changed."""

    typed = Signal()

    def __init__(self, measure: Measure, item: Item, decimal: str) -> None:
        super().__init__()
        self.measure, self._decimal = measure, decimal
        self.fields = [PointField(measure, point) for point in measure.points or ("",)]
        self.how_box = HowBox(measure)
        self.fault = said("", Type.SMALL, bold=True)
        self.fault.hide()
        self._lay_out(item)
        self.how_box.chosen.connect(self.typed)
        for field in self.fields:
            field.textChanged.connect(self.typed)
            field.editingFinished.connect(self._add_units)

    @property
    def stops(self) -> list[StillBox | PointField]:
        """Where the keys go in turn; the way it is taken is one of them where it must be said."""
        first: list[StillBox | PointField] = [self.how_box.method.box] if must_say_method(self.measure) else []
        return [*first, *self.fields]

    @property
    def is_empty(self) -> bool:
        """Whether no figure was typed."""
        return not any(field.text().strip() for field in self.fields)

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

    def first_fault(self) -> QWidget | None:
        """Where the keys should go to mend what is wrong."""
        wrong: list[QWidget] = [field for field in self.fields if field.is_faulty]
        return next(iter(wrong), None if self.fault.isHidden() else self.how_box.method.box)

    def refuse(self, refusal: Refused | None) -> None:
        """Show what is not taken of this measure as a whole, or nothing."""
        self.fault.setText(f"{refusal.why} {refusal.what_to_do}" if refusal else "")
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

    def _lay_out(self, item: Item) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(GRID + GRID // 2, GRID, GRID, GRID)
        layout.setSpacing(GRID // 2)
        new = item.size(self.measure.compare_with) if self.measure.compare_with else None
        name = tr("{name} (as new {size})", name=self.measure.name, size=new.as_typed) if new else self.measure.name
        layout.addWidget(said(name, bold=True))
        layout.addWidget(said(self.measure.how, Type.SMALL, faint=True))
        layout.addWidget(self.how_box)
        layout.addWidget(self.fault)
        layout.addLayout(self._grid())

    def _grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.setColumnMinimumWidth(0, LABEL_PX)
        grid.setColumnStretch(1, 1)
        for number, field in enumerate(self.fields):
            grid.addWidget(short(field.point[:1].upper() + field.point[1:] or tr("Reading")), 2 * number, 0)
            grid.addWidget(field, 2 * number, 1)
            grid.addWidget(field.fault, 2 * number + 1, 1)
        return grid


def _example(dimension: Dimension) -> str:
    """What a figure may look like; worded so that nobody takes it for a reading."""
    examples = {Dimension.LENGTH: tr("for example 2.9 mm"), Dimension.COUNT: tr("for example 4")}
    return examples.get(dimension, "")
