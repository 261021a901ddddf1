"""How far from a loaded line people stand, by each published rule; the longest unless one is named."""

from enum import StrEnum

from inspector.mechanics import checked

TWENTY_M = 20.0


class DistanceRule(StrEnum):
    """Whose rule."""

    LONGEST = "longest"
    ONE_LINE = "one_line"
    TWO_LINES = "two_lines"
    STRAP_AND_HALF = "strap_and_half"
    FOUR_STRAPS = "four_straps"
    TWENTY_METRES = "twenty_metres"


_LINES = {DistanceRule.ONE_LINE: 1.0, DistanceRule.TWO_LINES: 2.0}
_STRAPS = {DistanceRule.STRAP_AND_HALF: 1.5, DistanceRule.FOUR_STRAPS: 4.0}


def stand_off_m(line_m: float, strap_m: float, rule: DistanceRule = DistanceRule.LONGEST) -> float:
    """The distance from a loaded line that a rule asks for; never in its path, whatever the distance.

    Formula: one line L; two lines 2 L; strap and half 1.5 S, from either vehicle; four straps 4 S; twenty metres 20 m;
        longest: the greatest of them; L the line paid out, S the strap unstretched
    Valid: L, S >= 0, 0 where there is none; a rule named must have the length it needs above 0
    Source: fm_stand_off, tm_356_stand_off, strap_stand_off, trainer_stand_off, blog_stand_off – one safety text prints
        one and two line lengths side by side; the longest stands

    >>> stand_off_m(25.0, 9.0), stand_off_m(0.0, 9.0, DistanceRule.STRAP_AND_HALF)
    (50.0, 13.5)
    """
    checked.at_least(0, line_m=line_m, strap_m=strap_m)
    if rule in _LINES:
        checked.positive(line_m=line_m)
    if rule in _STRAPS:
        checked.positive(strap_m=strap_m)
    distances_m = _distances_m(line_m, strap_m)
    return max(distances_m.values()) if rule is DistanceRule.LONGEST else distances_m[rule]


def governing_distance_rule(line_m: float, strap_m: float) -> DistanceRule:
    """Which rule asks for the longest distance.

    Formula: the rule with the greatest distance
    Valid: L, S >= 0, 0 where there is none
    Source: fm_stand_off, tm_356_stand_off, strap_stand_off, trainer_stand_off, blog_stand_off

    >>> governing_distance_rule(25.0, 9.0).value
    'two_lines'
    """
    checked.at_least(0, line_m=line_m, strap_m=strap_m)
    distances_m = _distances_m(line_m, strap_m)
    return max(distances_m, key=lambda rule: distances_m[rule])


def _distances_m(line_m: float, strap_m: float) -> dict[DistanceRule, float]:
    lines_m = {rule: times * line_m for rule, times in _LINES.items()}
    straps_m = {rule: times * strap_m for rule, times in _STRAPS.items()}
    return lines_m | straps_m | {DistanceRule.TWENTY_METRES: TWENTY_M}
