"""Is a number fit to be put into a formula? Anything outside its valid range raises ValueError, naming the argument.

SAME_RATIO: two figures closer than this, relative, are one figure, so that the unit in which a figure was typed cannot
move it across a limit.
"""

import math

SAME_RATIO = 1e-9


def positive(**values: float) -> None:
    """Each value is finite and above zero."""
    for name, value in values.items():
        if not 0 < value < math.inf:
            raise ValueError(f"{name} must be a finite number above zero, not {value!r}")


def at_least(least: float, **values: float) -> None:
    """Each value is finite and not below `least`."""
    for name, value in values.items():
        if not least <= value < math.inf:
            raise ValueError(f"{name} must be finite and at least {least}, not {value!r}")


def between(least: float, most: float, **values: float) -> None:
    """Each value lies from `least` to `most`, both ends allowed."""
    for name, value in values.items():
        if not least <= value <= most:
            raise ValueError(f"{name} must lie from {least} to {most}, not {value!r}")


def whole(**counts: int) -> None:
    """Each count is a whole number, one or more."""
    for name, count in counts.items():
        if not (count >= 1 and count % 1 == 0):
            raise ValueError(f"{name} must be a whole number, one or more, not {count!r}")
