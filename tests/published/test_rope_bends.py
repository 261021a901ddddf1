"""Rope and webbing over pins and edges, against figures in print.

Sources: [0027] Guidelines for marine lifting and lowering operations 0027/ND rev 11 (2016), 7.7 and table 7-1; [rope]
guidance of the rope trade; [manual] a user manual of webbing slings with the text of EN 1492-1 annex D; [DGUV] DGUV
Regel 109-017 s 7.4.
"""

import math

import pytest

from inspector.mechanics import bend
from inspector.mechanics.bend import EyeRule, FibreBend, Termination
from tests.each import each
from tests.printed import printed

# [0027] table 7-1: D/d, bending factor of steel wire rope
TABLE_7_1 = [
    *((1.0, "2.00"), (1.5, "1.69"), (2.0, "1.55"), (3.0, "1.41"), (4.0, "1.33"), (5.0, "1.29"), (6.0, "1.26")),
    (7.0, "1.23"),
]


@pytest.mark.printed(
    "0027/ND sections 7.7 and 7.8", "bend.wire_rope_bend_factor", "bend.bent_wire_rope_n", "bend.bend_ratio"
)
@each(("ratio", "factor"), TABLE_7_1)
def test_bending_factors_of_wire_rope(ratio: float, factor: str) -> None:
    pin_m, rope_m = ratio * 0.012, 0.012
    assert bend.bend_ratio(pin_m, rope_m) == pytest.approx(ratio)
    assert bend.wire_rope_bend_factor(pin_m, rope_m) == printed(factor)
    assert 80e3 / bend.bent_wire_rope_n(80e3, pin_m, rope_m) == printed(factor)


# [0027] the copy of the formula has lost the sign of its square root; with D/d itself it does not give the table
@pytest.mark.printed("0027/ND sections 7.7 and 7.8", "bend.wire_rope_bend_factor")
def test_the_formula_without_its_square_root_is_not_followed() -> None:
    assert bend.wire_rope_bend_factor(0.048, 0.012) != pytest.approx(1 / (1 - 0.5 / 4), abs=0.1)


# [0027] 7.8.5: under no circumstances less than 1.0 d
@pytest.mark.printed("0027/ND sections 7.7 and 7.8", "bend.wire_rope_bend_factor")
def test_a_pin_thinner_than_the_rope_is_refused() -> None:
    with pytest.raises(ValueError, match="pin_m over rope_m"):
        bend.wire_rope_bend_factor(0.0119, 0.012)


# [0027] 7.7.1: least termination factors
ENDS = [
    *((Termination.HAND_SPLICE, "1.25"), (Termination.STEEL_FERRULE, "1.12"), (Termination.RESIN_SOCKET, "1.00")),
    *((Termination.SWAGED_EYE, "1.00"), (Termination.ALUMINIUM_FERRULE, "2.0"), (Termination.HMPE_SPLICE, "1.0")),
    (Termination.CABLE_LAID_SPLICE, "1.33"),
]


@pytest.mark.printed("0027/ND sections 7.7 and 7.8", "bend.termination_factor")
@each(("end", "factor"), ENDS)
def test_termination_factors(end: Termination, factor: str) -> None:
    assert bend.termination_factor(end) == printed(factor)


# [0027] 7.6.1, 7.7.2: the greater of the two, never both at once
@pytest.mark.printed("0027/ND sections 7.7 and 7.8", "bend.sling_reduction_factor")
@each(("end", "bent", "factor"), [(1.25, 1.55, "1.55"), (1.25, 1.23, "1.25")])
def test_end_and_bend_are_not_multiplied(end: float, bent: float, factor: str) -> None:
    assert bend.sling_reduction_factor(end, bent) == printed(factor)


# [0027] 7.8.4: 1.0 from the maker's least diameter up
@pytest.mark.printed("0027/ND sections 7.7 and 7.8", "bend.fibre_bend_factor")
def test_fibre_rope_over_its_makers_pin() -> None:
    assert bend.fibre_bend_factor(0.030, 0.030) == printed("1.0")
    with pytest.raises(ValueError, match="pin_m"):
        bend.fibre_bend_factor(0.029, 0.030)


# [rope] pin 3 d, 2 d for some types, sheaves 5 to 20 d
@pytest.mark.printed("Rope trade guidance on bends", "bend.fibre_least_pin_m", "bend.may_bend_fibre")
@each(
    ("over", "ratio"),
    [
        (FibreBend.PIN, "3"),
        (FibreBend.PIN_SOME_TYPES, "2"),
        (FibreBend.SHEAVE_LEAST, "5"),
        (FibreBend.SHEAVE_MOST, "20"),
    ],
)
def test_pins_and_sheaves_of_fibre_rope(over: FibreBend, ratio: str) -> None:
    least_m = bend.fibre_least_pin_m(0.012, over)
    assert least_m / 0.012 == pytest.approx(float(ratio))
    assert bend.may_bend_fibre(float(ratio) * 0.012, 0.012, over)
    assert not bend.may_bend_fibre(0.99 * float(ratio) * 0.012, 0.012, over)


# [rope] inside length of an eye: at least 3, better 5 pins, and at least 6 ropes
@pytest.mark.printed("Rope trade guidance on bends", "bend.eye_least_length_m", values=3)
def test_length_of_an_eye() -> None:
    assert bend.eye_least_length_m(0.030, 0.012) == pytest.approx(5 * 0.030)
    assert bend.eye_least_length_m(0.030, 0.012, EyeRule.LEAST) == pytest.approx(3 * 0.030)
    assert bend.eye_least_length_m(0.010, 0.012) == pytest.approx(6 * 0.012)


# [manual] the angle in the eye should not exceed 20 degrees
@pytest.mark.printed("User manual of webbing slings to EN 1492-1", "bend.may_open_eye")
def test_opening_of_a_webbing_eye() -> None:
    assert bend.may_open_eye(math.radians(20))
    assert not bend.may_open_eye(math.radians(20.1))


# [manual] straight, unless the bearing width is not more than 75 mm: then a radius of at least 0.75 times the width
@pytest.mark.printed("User manual of webbing slings to EN 1492-1", "bend.bearing_least_radius_m", values=2)
def test_curve_of_a_hook_in_a_webbing_eye() -> None:
    assert bend.bearing_least_radius_m(0.060) / 0.060 == printed("0.75")
    assert bend.bearing_least_radius_m(0.075) > 0
    with pytest.raises(ValueError, match="bearing_width_m"):
        bend.bearing_least_radius_m(0.0751)


# [DGUV] sharp: radius smaller than the strap is thick
@pytest.mark.printed("DGUV Regel 109-017", "bend.is_sharp_edge")
def test_a_sharp_edge_has_less_radius_than_the_strap_has_thickness() -> None:
    assert bend.is_sharp_edge(0.0059, 0.006)
    assert not bend.is_sharp_edge(0.006, 0.006)
