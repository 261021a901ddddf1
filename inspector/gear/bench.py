"""The trainer's bench: a question, dials to turn, and the sum with its picture that answers it. SI inside."""

from dataclasses import dataclass
from enum import StrEnum

from inspector.units import Dimension, Figure


class Came(StrEnum):
    """Where a figure on the bench came from."""

    ASSUMED = "assumed"  # the usual figure: nobody said otherwise
    SET = "set"  # turned or typed here
    PIECE = "piece"  # taken over from a piece or a vehicle of the register


@dataclass(frozen=True, slots=True)
class Dial:
    """A figure to turn, from least to most, both allowed. steps: a turn in metric and in imperial units, as text.

    stops: the only values there are, where not every one between is one. usual: what stands while nobody says else;
    source: where that comes from, as it prints.
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


@dataclass(frozen=True, slots=True)
class BenchTopic:
    """Something to show: its question in plain words, and the dials it has."""

    key: str
    title: str
    question: str
    dials: tuple[Dial, ...]


@dataclass(frozen=True, slots=True)
class Given:
    """A figure for a dial, or for something fixed that a piece knows better. said: which piece, and from when."""

    key: str
    figure: Figure
    came: Came = Came.SET
    said: str = ""


@dataclass(frozen=True, slots=True)
class BenchStart:
    """A topic begun from a piece or a vehicle. said: what was taken over and what stays assumed, a sentence each."""

    topic: str
    tag: str
    given: tuple[Given, ...]
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BenchLine:
    """A sum: what it is for, its name in the catalogue, its formula, the figures filled in, and what comes out.

    valid: the range it may be used in.
    """

    says: str
    name: str
    formula: str
    filled: str
    result: str
    valid: str


@dataclass(frozen=True, slots=True)
class BenchFigure:
    """A figure that went into the sums: whose, how it prints, how it came here, and its source as it prints."""

    label: str
    text: str
    came: str
    source: str


@dataclass(frozen=True, slots=True)
class Worked:
    """A topic worked with its figures. amounts: name and value in SI, for the picture; means: one plain sentence or two.

    sources: those of the sums; left_out: what the sums do not reckon with; from_piece: what a piece lent, in words.
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
    from_piece: tuple[str, ...] = ()

    def amount(self, name: str) -> float:
        """A value by its name, in SI. KeyError where the topic has none of this name."""
        return dict(self.amounts)[name]
