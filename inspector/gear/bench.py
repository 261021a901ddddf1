"""The trainer's bench: a question, dials to turn, and the sum with its picture that answers it. SI inside."""

from enum import StrEnum

from msgspec import Struct

from inspector.units import Dimension, Figure, System, show


class Came(StrEnum):
    """Where a figure on the bench came from."""

    ASSUMED = "assumed"  # the usual figure: nobody said otherwise
    SET = "set"  # turned or typed here
    PIECE = "piece"  # taken over from a piece or a vehicle of the register


class Dial(Struct, frozen=True):
    """A figure to turn, from least to most, both allowed. steps: a turn in metric and in imperial units, as text.

    stops: the only values there are, where not every one between is one. usual: what stands while nobody says else;
    source: where that comes from, as it prints. finer_places: more decimal places than usual, for small values.
    """

    key: str
    name: str
    dimension: Dimension
    least_si: float
    most_si: float
    steps: tuple[str, str]
    usual: Figure
    source: str
    stops: tuple[float, ...] = ()
    finer_places: int = 0

    def shown(self, si: float, system: System) -> Figure:
        """A value of this dial as it is written in a system of units."""
        return Figure(si, show(si, self.dimension, system, self.finer_places), self.dimension)


class BenchTopic(Struct, frozen=True):
    """Something to show: its question in plain words, and the dials it has."""

    key: str
    title: str
    question: str
    dials: tuple[Dial, ...]


class Given(Struct, frozen=True):
    """A figure for a dial, or for something fixed that a piece knows better. said: which piece, and from when."""

    key: str
    figure: Figure
    came: Came = Came.SET
    said: str = ""


class Preset(Struct, frozen=True):
    """A topic with the figures a piece lends it. said: what stays assumed and what could not be taken over."""

    topic: str
    given: tuple[Given, ...]
    said: tuple[str, ...]


class BenchStart(Struct, frozen=True):
    """The bench begun from a piece or a vehicle: the topics it fits, the best first; none: why not, in words."""

    tag: str
    presets: tuple[Preset, ...]
    why_none: str = ""


class BenchLine(Struct, frozen=True):
    """A sum: what it is for, its name in the catalogue, its formula, the figures filled in, and what comes out.

    valid: the range it may be used in.
    """

    says: str
    name: str
    formula: str
    filled: str
    result: str
    valid: str


class BenchFigure(Struct, frozen=True):
    """A figure that went into the sums: whose, how it prints, how it came here, and its source as it prints."""

    label: str
    text: str
    came: str
    source: str


class Worked(Struct, frozen=True):
    """A topic worked with its figures. means: a plain sentence or two.

    amounts: name and value in SI, for the picture. sources: those of the sums; left_out: what they do not reckon with.
    """

    topic: str
    title: str
    question: str
    figures: tuple[BenchFigure, ...]
    lines: tuple[BenchLine, ...]
    means: str
    left_out: tuple[str, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    amounts: tuple[tuple[str, float], ...]

    def amount(self, name: str) -> float:
        """A value by its name, in SI. KeyError where the topic has none of this name."""
        return dict(self.amounts)[name]
