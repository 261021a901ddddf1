"""What was seen and measured on one day."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.kind import Grade, Measure
from inspector.gear.outcome import Outcome
from inspector.units import Dimension, Figure


class InspectionKind(StrEnum):
    """Why the piece was looked at."""

    BEFORE_USE = "before_use"
    PERIODIC = "periodic"
    AFTER_EVENT = "after_event"


class Method(StrEnum):
    """How a thickness or size was taken."""

    ULTRASONIC_BARE = "ultrasonic_bare"
    ULTRASONIC_PAINT = "ultrasonic_paint"
    CALLIPER = "calliper"
    TAPE = "tape"
    COUNTED = "counted"


class Surface(StrEnum):
    """The face the gauge stood on."""

    DRESSED = "dressed"
    ROUGH = "rough"
    NOT_STATED = "not_stated"


class Answer(Struct, frozen=True, gc=False):
    """The grade given at one check."""

    check: str
    grade: Grade
    note: str = ""


class Reading(Struct, frozen=True, gc=False):
    """One measured value in the measure's SI unit. block_checked: the gauge was tried on its block that day."""

    measure: str
    figure: Figure
    point: str = ""
    method: Method = Method.CALLIPER
    surface: Surface = Surface.NOT_STATED
    gauge: str = ""
    block_checked: bool | None = None


def method_for(measure: Measure, wall_method: Method) -> Method:
    """How a measure was taken, where one method was stated for the inspection: it speaks of the walls."""
    if measure.key == "wall":
        return wall_method
    return Method.COUNTED if measure.dimension is Dimension.COUNT else Method.CALLIPER


class FirstValue(Struct, frozen=True):
    """What stood in a field when the preview held or retired the piece by it, where something else was logged.

    observation: the check or measure; typed: the grade or figure as it was; outcome: what it came to.
    """

    observation: str
    point: str
    typed: str
    outcome: Outcome


class NewInspection(Struct, frozen=True, gc=False):
    """An inspection before it is logged. by: a person's id; second: of another one, where the law asks for two names.

    competent: whether it can pass the piece. next_within_days: a shorter time to the next one, as the inspector says.
    first_values: what was typed first, where it was changed after a preview had held or retired the piece. trip: the
    reference of the trip it was made for; sheet: the number of the paper it came back on. vouched: whether `by` gave
    the passphrase at the desk; else the name is as stated.
    """

    on: date
    kind: InspectionKind
    by: str
    competent: bool
    answers: tuple[Answer, ...] = ()
    readings: tuple[Reading, ...] = ()
    note: str = ""
    second: str = ""
    next_within_days: int | None = None
    first_values: tuple[FirstValue, ...] = ()
    trip: str = ""
    sheet: str = ""
    vouched: bool = False


class Inspection(Struct, frozen=True, gc=False):
    """A logged inspection."""

    id: str
    item_id: str
    facts: NewInspection

    @property
    def on(self) -> date:
        """The day of the inspection."""
        return self.facts.on

    @property
    def is_thorough(self) -> bool:
        """Whether it can pass the piece: by a competent person, periodic or after an event."""
        return self.facts.competent and self.facts.kind is not InspectionKind.BEFORE_USE
