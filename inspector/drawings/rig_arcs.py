"""Round shapes as runs of short lines. Millimetres, angles in degrees from the right, turning downwards."""

import math

from inspector.drawings.shapes import Circle, Ink, Point

_STEP_DEG = 15.0


def arc(centre: Point, radius_mm: float, start_deg: float, end_deg: float) -> tuple[Point, ...]:
    """Points along a part of a circle, both ends included."""
    steps = max(round(abs(end_deg - start_deg) / _STEP_DEG), 1)
    turns = [math.radians(start_deg + (end_deg - start_deg) * step / steps) for step in range(steps + 1)]
    return tuple((centre[0] + radius_mm * math.cos(turn), centre[1] + radius_mm * math.sin(turn)) for turn in turns)


def ring(centre: Point, radius_mm: float, width_mm: float) -> Circle:
    """A ring with nothing in it."""
    return Circle(centre, radius_mm, width_mm=width_mm, fill=Ink.PAPER)
