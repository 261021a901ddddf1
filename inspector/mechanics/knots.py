"""What a knot or a splice leaves of a line's strength. Webbing with a knot in it is out of use, whatever is left."""

from enum import StrEnum


class Knot(StrEnum):
    """A knot in a line. SQUARE is also called reef."""

    SQUARE = "square"
    BOWLINE = "bowline"
    TWO_BOWLINES = "two bowlines"
    BECKET = "becket"
    ROUND_TURN = "round turn"
    TIMBER_HITCH = "timber hitch"
    CLOVE_HITCH = "clove hitch"
    FIGURE_EIGHT = "figure eight loop"
    OTHER = "other"


class KnotTest(StrEnum):
    """Whose figure: the least of all, or one test by name."""

    LEAST = "least"
    COAST_GUARD = "coast guard"
    YACHTING = "yachting"
    ROPE_GUIDE = "rope guide"


class Splice(StrEnum):
    """How a line is spliced."""

    EYE = "eye"
    SHORT = "short"


class SplicedEnd(StrEnum):
    """Which end of the published range."""

    LEAST = "least"
    MOST = "most"


_LEFT_RATIO: dict[KnotTest, dict[Knot, float]] = {
    KnotTest.COAST_GUARD: {
        Knot.SQUARE: 0.54,
        Knot.BOWLINE: 0.63,
        Knot.TWO_BOWLINES: 0.57,
        Knot.BECKET: 0.59,
        Knot.ROUND_TURN: 0.65,  # 65-70
        Knot.TIMBER_HITCH: 0.65,  # 65-70
        Knot.CLOVE_HITCH: 0.60,
    },
    KnotTest.YACHTING: {Knot.BOWLINE: 0.70, Knot.FIGURE_EIGHT: 0.72, Knot.SQUARE: 0.50},
    KnotTest.ROPE_GUIDE: {Knot.OTHER: 0.50},  # as much as 50 % lost
}
_SPLICED_RATIO: dict[Splice, dict[SplicedEnd, float]] = {
    Splice.EYE: {SplicedEnd.LEAST: 0.90, SplicedEnd.MOST: 0.95},
    Splice.SHORT: {SplicedEnd.LEAST: 0.85, SplicedEnd.MOST: 0.85},
}


def knot_left_ratio(knot: Knot, test: KnotTest = KnotTest.LEAST) -> float:
    """Share of a line's strength left with a knot in it; where tests differ, the smaller unless one is named.

    Formula: table by knot; a knot not in the tables 0.50
    Valid: the knots listed; a test named must have tried the knot
    Source: coast_guard_knots, yachting_knots, ci_1401_knots – a bowline keeps 0.63 in one test and 0.70 in the other;
        where a table prints a range, its lower end

    >>> knot_left_ratio(Knot.BOWLINE), knot_left_ratio(Knot.BOWLINE, KnotTest.YACHTING)
    (0.63, 0.7)
    """
    knot, test = Knot(knot), KnotTest(test)
    tests = _LEFT_RATIO.values() if test is KnotTest.LEAST else [_LEFT_RATIO[test]]
    found = [tried[knot] for tried in tests if knot in tried]
    if not found:
        raise ValueError(f"knot must be one that the test “{test}” has tried, not {knot.value!r}")
    return min(found)


def splice_left_ratio(splice: Splice, end: SplicedEnd = SplicedEnd.LEAST) -> float:
    """Share of a line's strength left with a splice in it.

    Formula: eye splice 0.90 (to 0.95), short splice 0.85
    Valid: a splice made as the rope's maker says
    Source: coast_guard_knots

    >>> splice_left_ratio(Splice.EYE)
    0.9
    """
    return _SPLICED_RATIO[Splice(splice)][SplicedEnd(end)]
