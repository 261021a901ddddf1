"""What is known of a pull: the ground, the slope, the speed and the like; what nobody says stays unsaid."""

from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QVBoxLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.fault_field import FigureField, fault_label, tell_fault
from inspector.desk.look import GRID, Type
from inspector.desk.plain import said
from inspector.duties.rig_choices import rig_choices
from inspector.gear.rig import Conditions, Footing
from inspector.language import later, tr
from inspector.refused import Refused
from inspector.units import Dimension

_FIELDS = (later("slope"), later("speed"), later("slack"), later("drive"), later("layers"))
_LEAST_SIGNS = 10  # of a box of choices that yields to the form's width


def labelled(label: str, field: QWidget, *faults: QWidget) -> QWidget:
    """A field below its label, its faults below it."""
    if isinstance(field, QComboBox):
        field.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        field.setMinimumContentsLength(_LEAST_SIGNS)
    made = QWidget()
    layout = QVBoxLayout(made)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(GRID // 2)
    for part in (said(label, Type.SMALL, faint=True), field, *faults):
        layout.addWidget(part)
    layout.addStretch(1)
    return made


class ConditionsBox(QWidget):
    """entered: Return was pressed. changed: something else stands here."""

    entered = Signal()
    changed = Signal()

    def __init__(self, decimal: str) -> None:
        super().__init__()
        known = rig_choices()
        unsaid: list[tuple[str, Footing | None]] = [(tr("nobody said"), None)]
        footings = [*unsaid, *known.footings]
        wet: list[tuple[str, bool | None]] = [(tr("nobody said: wet"), None), (tr("wet"), True), (tr("dry"), False)]
        self.bogged_in = Choice(tr("The stuck one stands in"), footings, scans=True)
        self.pulling_on = Choice(tr("The other one stands on"), footings, scans=True)
        self.wet = Choice(tr("Nylon"), wet, scans=True)
        self.scale = Choice(tr("Scale for the ground"), known.scales, scans=True)
        self.distance = Choice(tr("Rule for the distance"), known.distances, scans=True)
        self.slope = FigureField(tr("Slope"), Dimension.ANGLE, tr("for example 12 °"), decimal)
        self.speed = FigureField(tr("Speed"), Dimension.SPEED, tr("for example 6 km/h"), decimal)
        self.slack = FigureField(tr("Slack"), Dimension.LENGTH, tr("for example 2 m"), decimal)
        self.drive = FigureField(tr("Drive"), Dimension.RATIO, tr("for example 40 %"), decimal)
        self.layers = _LayersField(tr("Layers on the drum"), Dimension.COUNT, tr("for example 3"), decimal)
        self.scale_fault = fault_label()
        self._lay_out()
        self.show_conditions(Conditions())

    @property
    def figures(self) -> tuple[FigureField, ...]:
        """The typed fields."""
        return self.slope, self.speed, self.slack, self.drive, self.layers

    @property
    def choices(self) -> tuple[Choice[Any], ...]:
        """The boxes."""
        return self.bogged_in, self.pulling_on, self.wet, self.scale, self.distance

    def conditions(self) -> Conditions | None:
        """What stands here; None where a figure cannot be read, which is said at its field."""
        tell_fault(self.scale_fault, None)
        for field in self.figures:
            field.look_over()
        if self.first_fault():
            return None
        layers = self.layers.figure()
        return Conditions(
            bogged_in=self.bogged_in.value,
            pulling_on=self.pulling_on.value,
            slope=self.slope.figure(),
            speed=self.speed.figure(),
            slack=self.slack.figure(),
            drive=self.drive.figure(),
            wet=self.wet.value,
            layers=round(layers.si) if layers else None,
            scale=self.scale.value,
            distance_rule=self.distance.value,
        )

    def take_ground(self, usual: Conditions) -> None:
        """Take what a trip's ground says; what is typed stays."""
        self.bogged_in.choose(usual.bogged_in)
        self.pulling_on.choose(usual.pulling_on)

    def show_conditions(self, known: Conditions) -> None:
        """Let other conditions stand here."""
        self.bogged_in.choose(known.bogged_in)
        self.pulling_on.choose(known.pulling_on)
        self.wet.choose(known.wet)
        with suppress(ValueError):  # a scale of another version stays the largest
            self.scale.choose(known.scale)
            self.distance.choose(known.distance_rule)
        for field, figure in zip(
            (self.slope, self.speed, self.slack, self.drive),
            (known.slope, known.speed, known.slack, known.drive),
            strict=True,
        ):
            field.give(figure)
        self.layers.give(None)
        self.layers.setText("" if known.layers is None else str(known.layers))

    def take_over(self, old: "ConditionsBox") -> None:
        """Let stand here what stands in another box, also what cannot be read."""
        for mine, theirs in zip(self.choices, old.choices, strict=True):
            mine.choose(theirs.value)
        for field, other in zip(self.figures, old.figures, strict=True):
            field.setText(other.text())

    def first_fault(self) -> QWidget | None:
        """Where the keys go to mend what is wrong."""
        return next((field for field in self.figures if field.is_faulty), None)

    def refuse(self, refusal: Refused) -> QWidget | None:
        """Say a refusal at the field it names; that field, or None where it is none of these."""
        named: dict[str, FigureField] = {
            **{f"conditions.{key}": field for key, field in self._by_key()},
            **{tr(key): field for key, field in self._by_key()},
        }
        if field := named.get(refusal.field):
            field.tell(refusal)
            return field
        if refusal.field in {tr("scale"), tr("distance rule")}:
            tell_fault(self.scale_fault, refusal)
            return self.scale.box if refusal.field == tr("scale") else self.distance.box
        return None

    def _by_key(self) -> Iterator[tuple[str, FigureField]]:
        yield from zip(_FIELDS, self.figures, strict=True)

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(GRID)
        grid.addWidget(labelled(tr("The stuck one stands in"), self.bogged_in.box), 0, 0, 1, 2)
        grid.addWidget(labelled(tr("The other one stands on"), self.pulling_on.box), 1, 0, 1, 2)
        labels = (tr("Slope, uphill"), tr("Speed as it comes taut"), tr("Slack on the ground"),
                  tr("Pull of the wheels"), tr("Layers on the drum"))  # fmt: skip
        for number, (label, field) in enumerate(zip(labels, self.figures, strict=True)):
            wide = 2 if number == len(labels) - 1 else 1
            grid.addWidget(labelled(label, field, field.fault), 2 + number // 2, number % 2, 1, wide)
            field.entered.connect(self.entered)
            field.textEdited.connect(self.changed)
            field.moves.connect(partial(self._move, field))
        grid.addWidget(labelled(tr("Nylon"), self.wet.box), 5, 0, 1, 2)
        grid.addWidget(labelled(tr("Whose scale for the ground"), self.scale.box, self.scale_fault), 6, 0, 1, 2)
        grid.addWidget(labelled(tr("Whose rule for the distance"), self.distance.box), 7, 0, 1, 2)
        for number in (0, 1):
            grid.setColumnStretch(number, 1)
        for choice in self.choices:
            choice.box.moves.connect(lambda _: self.entered.emit())
            choice.box.activated.connect(lambda _: self.changed.emit())

    def _move(self, field: FigureField, step: int) -> None:
        at = self.figures.index(field) + step
        if 0 <= at < len(self.figures):
            self.figures[at].setFocus()


class _LayersField(FigureField):
    """A whole number; a bare one needs no unit."""

    def figure(self) -> Any:
        """The count; refused where it is not whole."""
        found = super().figure()
        if found is not None and found.si != round(found.si):
            why = tr("“{typed}” is no whole number.", typed=found.as_typed)
            raise Refused(tr("layers"), why, tr("Write how many layers are left on it."))
        return found
