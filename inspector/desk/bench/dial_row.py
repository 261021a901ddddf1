"""One dial of the bench: its name, a slider, the figure with its unit, and how that came; both always agree."""

import math

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QSlider, QWidget

from inspector.desk.fault_field import FigureField
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import said, short
from inspector.duties.bench import set_to, step_of
from inspector.duties.office import Office
from inspector.gear.bench import Dial, Given
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Figure

_FIELD_PX = 18 * GRID
_PAGE_STEPS = 10
_EPSILON = 1e-6
_TURNS = {Qt.Key.Key_PageUp: _PAGE_STEPS, Qt.Key.Key_PageDown: -_PAGE_STEPS}


class DialRow(QWidget):
    """turned: a figure was turned or typed. faulty: what is typed cannot be taken, and the field says why."""

    turned = Signal(object)
    faulty = Signal()

    def __init__(self, dial: Dial, office: Office, look: Look) -> None:
        super().__init__()
        self.dial, self._office, self._look = dial, office, look
        self._step = step_of(office, dial)
        self._standing = dial.usual
        self._refusal: Refused | None = None  # what the sums say against the figure that stands
        self._is_unread = False  # whether the field holds something that could not be taken
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.field = FigureField(dial.name, dial.dimension, dial.usual.as_typed, office.decimal)
        self.came = said("", Type.SMALL, faint=True)
        look.changed.connect(self._resized)  # a method of its own: Qt lets go of it with the row
        self._resized()
        self._set_range()
        self._lay_out()
        self.slider.valueChanged.connect(self._slid)
        self.field.textEdited.connect(lambda _text: self._typed(is_done=False))
        self.field.editingFinished.connect(self.look_over)
        self.field.entered.connect(self.look_over)
        self.field.moves.connect(lambda steps: self._turn(-steps))

    @property
    def is_unread(self) -> bool:
        """Whether the field holds something that could not be taken."""
        return self._is_unread

    def show_given(self, given: Given | None) -> None:
        """Let a figure stand here, the usual one where none is given; nothing is emitted."""
        self._standing = figure = given.figure if given else self.dial.usual
        self._is_unread = False
        self.field.give(figure)
        self.field.setCursorPosition(0)
        self._show_place(figure.si, figure.as_typed)

    def tell_came(self, came: str) -> None:
        """Say how the figure came here."""
        self.came.setText(came)

    def tell(self, refusal: Refused | None) -> None:
        """Say at the field what the sums have against the figure that stands, or nothing; what is unread stays told."""
        self._refusal = refusal
        if not self._is_unread:
            self.field.tell(refusal)

    def look_over(self) -> None:
        """Take what is typed, or say at the field why it cannot be taken."""
        self._typed(is_done=True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Page up and down turn far, also from the field."""
        if turns := _TURNS.get(Qt.Key(event.key())):
            self._turn(turns)
        else:
            super().keyPressEvent(event)

    def _resized(self) -> None:
        self.field.setFixedWidth(self._look.px(_FIELD_PX))

    def _set_range(self) -> None:
        stops = self.dial.stops
        if stops:
            self.slider.setRange(0, len(stops) - 1)
            self.slider.setPageStep(1)
        else:
            least = math.ceil(self.dial.least_si / self._step - _EPSILON)
            self.slider.setRange(least, math.floor(self.dial.most_si / self._step + _EPSILON))
            self.slider.setPageStep(_PAGE_STEPS)
        self.slider.setSingleStep(1)
        self.slider.setAccessibleName(tr("{name}, slider", name=self.dial.name))

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(2 * GRID)
        grid.setVerticalSpacing(GRID // 2)
        grid.addWidget(short(self.dial.name, bold=True), 0, 0, 1, 2)
        grid.addWidget(self.slider, 1, 0)
        grid.addWidget(self.field, 1, 1)
        grid.addWidget(self.field.fault, 2, 0, 1, 2)
        grid.addWidget(self.came, 3, 0, 1, 2)
        grid.setColumnStretch(0, 1)

    def _slid(self, place: int) -> None:
        stops = self.dial.stops
        figure = self.dial.shown(stops[place] if stops else place * self._step, self._office.system)
        self._standing, self._is_unread = figure, False
        self.field.give(figure)
        self._describe(figure.as_typed)
        self.turned.emit(Given(self.dial.key, figure))

    def _turn(self, steps: int) -> None:
        """From a figure between two places of the slider, to the next place in that direction."""
        before = self.slider.value()
        self.slider.setValue(before + steps)
        if self.slider.value() == before:
            self._slid(before)

    def _typed(self, *, is_done: bool) -> None:
        """Take a figure as soon as it can be read; what cannot be taken is told once typing has come to its end."""
        try:
            figure = self._read()
        except Refused as refusal:
            self._is_unread = True
            if is_done:
                self.field.tell(refusal)
            self.faulty.emit()
            return
        if figure == self._standing and not self._is_unread:
            self.field.tell(self._refusal)
            return
        self._is_unread = False
        self._standing = figure
        self._show_place(figure.si, figure.as_typed)
        self.turned.emit(Given(self.dial.key, figure))

    def _read(self) -> Figure:
        """What is typed; refused where it cannot be read, is out of range, or is nothing at all."""
        figure = self.field.figure()
        if figure is None:
            do = tr("Write a figure, for example {usual}.", usual=self.dial.usual.as_typed)
            raise Refused(self.dial.name, tr("Nothing is typed here."), do)
        return set_to(self._office, self.dial, figure).figure

    def _show_place(self, si: float, text: str) -> None:
        """The slider goes to the nearest place and says the figure itself; it emits nothing."""
        stops = self.dial.stops
        nearest = min(range(len(stops)), key=lambda n: abs(stops[n] - si)) if stops else round(si / self._step)
        self.slider.blockSignals(True)
        self.slider.setValue(nearest)
        self.slider.blockSignals(False)
        self._describe(text)

    def _describe(self, text: str) -> None:
        self.slider.setAccessibleDescription(text)
        self.slider.setToolTip(text)
