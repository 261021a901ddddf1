"""Student's t for whole degrees of freedom, in closed form: how far a small set of readings may stray."""

import math
from functools import cache

from inspector.mechanics import checked

MOST_FREEDOM = 1000
_BISECTIONS = 100


def student_probability_ratio(t_factor: float, freedom_count: int) -> float:
    """The probability that Student's t lies at or below a value.

    Formula: P = 1/2 + A/2, A a finite sum of powers of cos(theta), theta = arctan(t / sqrt(nu))
    Valid: nu 1 to 1000, whole
    Source: abramowitz_26_7

    >>> round(student_probability_ratio(2.353, 3), 4)
    0.95
    """
    checked.between(-math.inf, math.inf, t_factor=t_factor)
    _check_freedom(freedom_count)
    return 0.5 + _central(math.atan(t_factor / math.sqrt(freedom_count)), freedom_count) / 2


def student_t_factor(probability_ratio: float, freedom_count: int) -> float:
    """The value that Student's t stays at or below with a given probability: its quantile.

    Formula: P(t) = p, solved for t by bisection over theta = arctan(t / sqrt(nu))
    Valid: p 0.0001 to 0.9999; nu 1 to 1000, whole
    Source: abramowitz_26_7

    >>> round(student_t_factor(0.95, 3), 3)
    2.353
    """
    checked.between(0.0001, 0.9999, probability_ratio=probability_ratio)
    _check_freedom(freedom_count)
    return _solved(probability_ratio, freedom_count)


@cache
def _solved(probability_ratio: float, freedom_count: int) -> float:
    """The quantile; one band asks for the same few again and again."""
    low, high = -math.pi / 2, math.pi / 2
    for _ in range(_BISECTIONS):
        middle = (low + high) / 2
        below = 0.5 + _central(middle, freedom_count) / 2 < probability_ratio
        low, high = (middle, high) if below else (low, middle)
    return math.sqrt(freedom_count) * math.tan((low + high) / 2)


def _check_freedom(freedom_count: int) -> None:
    checked.whole(freedom_count=freedom_count)
    checked.between(1, MOST_FREEDOM, freedom_count=freedom_count)


def _central(theta: float, freedom: int) -> float:
    """A(t | nu), the probability between -t and t, with the sign of t; Abramowitz and Stegun 26.7.3 and 26.7.4."""
    odd = freedom % 2 == 1
    term = math.cos(theta) if odd else 1.0
    total = term if freedom > 1 else 0.0
    for step in range(3 if odd else 2, freedom - 1, 2):
        term *= math.cos(theta) ** 2 * (step - 1) / step
        total += term
    return (theta + math.sin(theta) * total) * 2 / math.pi if odd else math.sin(theta) * total
