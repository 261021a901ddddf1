"""The marks of the four outcomes, in the geometry of ISO 3864-1. Shape alone tells them apart; the word stands beside.

What may not be used carries the accent, what may be used is plain ink: one strong colour, no scale of colours.
"""

import math
from collections.abc import Callable

from inspector.drawings.shapes import Circle, Drawing, Ink, Line, Point, Polygon, Polyline, RoundedRect, Shape
from inspector.gear.outcome import Outcome
from inspector.language import once_a_language, tr


def outcome_word(outcome: Outcome) -> str:
    """The word that stands beside the mark."""
    return _outcome_words()[outcome]


@once_a_language
def _outcome_words() -> dict[Outcome, str]:
    return {
        Outcome.FIT: tr("Fit"),
        Outcome.DERATE: tr("Derate"),
        Outcome.HOLD: tr("Hold"),
        Outcome.RETIRE: tr("Retire"),
    }


def outcome_meaning(outcome: Outcome) -> str:
    """What the outcome means for the person with the piece in hand."""
    meanings = {
        Outcome.FIT: tr("use it as its line says"),
        Outcome.DERATE: tr("reduced use, only as its line says"),
        Outcome.HOLD: tr("do not use until the equipment officer releases it"),
        Outcome.RETIRE: tr("never use it again"),
    }
    return meanings[outcome]


def outcome_mark(outcome: Outcome, size_mm: float) -> Drawing:
    """The mark of an outcome in a square frame of size_mm."""
    word = outcome_word(outcome)
    return Drawing(size_mm, size_mm, _BUILDERS[outcome](size_mm), word, f"{word}: {outcome_meaning(outcome)}")


def _prohibition(size: float) -> tuple[Shape, ...]:
    """A ring and a bar from top left to bottom right; ring a tenth, bar 0.08 of the diameter."""
    half, radius = size / 2, size * 0.45
    reach = radius * math.sqrt(0.5)
    ring = Circle((half, half), radius, ink=Ink.MARK, width_mm=size * 0.1, fill=Ink.PAPER)
    bar = Line((half - reach, half - reach), (half + reach, half + reach), ink=Ink.MARK, width_mm=size * 0.08)
    return ring, bar


def _mandatory(size: float) -> tuple[Shape, ...]:
    """A full disc with the sign "!" left white."""
    disc = Circle((size / 2, size / 2), size * 0.5, ink=None, fill=Ink.MARK)
    return disc, *_exclamation(size, top=0.18, waist=0.60, foot=0.76, ink=Ink.PAPER, thick=0.11)


def _warning(size: float) -> tuple[Shape, ...]:
    """A triangle with its point upwards and "!" in it."""
    line = size * 0.085
    side = size - 2 * line
    top = (size - side * math.sqrt(0.75)) / 2 + line * 0.2
    foot = top + side * math.sqrt(0.75)
    points: tuple[Point, ...] = ((size / 2, top), (size / 2 + side / 2, foot), (size / 2 - side / 2, foot))
    triangle = Polygon(points, ink=Ink.INK, width_mm=line, fill=Ink.PAPER)
    return triangle, *_exclamation(size, top=0.38, waist=0.64, foot=0.77, ink=Ink.INK, thick=0.085)


def _safe(size: float) -> tuple[Shape, ...]:
    """A full square with a white tick."""
    square = RoundedRect((size * 0.03, size * 0.03), size * 0.94, size * 0.94, size * 0.06, ink=None, fill=Ink.INK)
    points: tuple[Point, ...] = ((size * 0.23, size * 0.54), (size * 0.42, size * 0.73), (size * 0.78, size * 0.29))
    return square, Polyline(points, ink=Ink.PAPER, width_mm=size * 0.11)


def _exclamation(size: float, *, top: float, waist: float, foot: float, ink: Ink, thick: float) -> tuple[Shape, ...]:
    """A bar from top to waist and a dot at the foot, as shares of the size."""
    bar = Line((size / 2, size * top), (size / 2, size * waist), ink=ink, width_mm=size * thick)
    dot = Circle((size / 2, size * foot), size * thick * 0.6, ink=None, fill=ink)
    return bar, dot


_BUILDERS: dict[Outcome, Callable[[float], tuple[Shape, ...]]] = {
    Outcome.FIT: _safe,
    Outcome.DERATE: _warning,
    Outcome.HOLD: _mandatory,
    Outcome.RETIRE: _prohibition,
}
