"""Working loads of textile slings and of tie-down gear without a mark, against figures in print.

Sources: [manual] a user manual of webbing slings to EN 1492-1, table of loads by colour; [US] web slings, ASME B30.9;
[EN] a sheet on EN 1492-2 roundslings; [CI] CI 1401-06; [legs] sling tension factors of a catalogue; [talk] a public
toolbox talk; [393] 49 CFR 393.108 as a compliance page prints its tables; kilograms of force.
"""

import math

import pytest

from inspector.mechanics import sling, tiedown
from inspector.mechanics.sling import SlingMode, TextileRule
from inspector.mechanics.tiedown import TiedownGrade
from tests.each import each
from tests.printed import printed

KGF = 9.80665
SMALL, WIDE = math.radians(45), math.radians(60)

# [manual] straight, basket upright, choked; basket, two legs, three or four legs: each to 45 and to 60 degrees
MODES = [
    *((SlingMode.STRAIGHT, 0.0), (SlingMode.BASKET, 0.0), (SlingMode.CHOKED, 0.0)),
    *((SlingMode.BASKET, SMALL), (SlingMode.BASKET, WIDE), (SlingMode.TWO_LEGS, SMALL), (SlingMode.TWO_LEGS, WIDE)),
    *((SlingMode.FOUR_LEGS, SMALL), (SlingMode.FOUR_LEGS, WIDE)),
]
LOADS_T = [
    "1.0 2.0 0.8 1.4 1.0 1.4 1.0 2.1 1.5",
    "2.0 4.0 1.6 2.8 2.0 2.8 2.0 4.2 3.0",
    "3.0 6.0 2.4 4.2 3.0 4.2 3.0 6.3 4.5",
    "4.0 8.0 3.2 5.6 4.0 5.6 4.0 8.4 6.0",
    "5.0 10.0 4.0 7.0 5.0 7.0 5.0 10.5 7.5",
    "6.0 12.0 4.8 8.4 6.0 8.4 6.0 12.6 9.0",
    "8.0 16.0 6.4 11.2 8.0 11.2 8.0 16.8 12.0",
    "10.0 20.0 8.0 14.0 10.0 14.0 10.0 21.0 15.0",
]


@pytest.mark.printed("User manual of webbing slings to EN 1492-1", "sling.sling_mode_factor", values=9)
@each("row", LOADS_T)
def test_loads_of_webbing_slings_by_the_way_they_are_laid(row: str) -> None:
    loads = row.split()
    found = [float(loads[0]) * sling.sling_mode_factor(mode, angle_rad) for mode, angle_rad in MODES]
    assert found == [printed(load) for load in loads]


@pytest.mark.printed("US web slings", "sling.textile_design_factor", "sling.textile_working_load_n")
def test_factor_of_us_web_slings() -> None:
    assert sling.textile_design_factor(TextileRule.US_WEB_SLINGS) == printed("5")
    assert 100e3 / sling.textile_working_load_n(100e3, TextileRule.US_WEB_SLINGS) == printed("5")


@pytest.mark.printed("Sheet on EN 1492-2 roundslings", "sling.textile_design_factor", "sling.textile_working_load_n")
def test_factor_of_european_textile_slings() -> None:
    assert sling.textile_design_factor(TextileRule.EN_1492) == printed("7")
    assert 100e3 / sling.textile_working_load_n(100e3, TextileRule.EN_1492) == printed("7")


@pytest.mark.printed("CI 1401-06", "sling.textile_design_factor", values=2)
def test_factors_of_rope() -> None:
    assert sling.textile_design_factor(TextileRule.ROPE_LEAST) == printed("5")
    assert sling.textile_design_factor(TextileRule.ROPE_MOST) == printed("12")


# [legs] degrees from the horizontal, tension factor
@pytest.mark.printed("Sling tension factors of a catalogue", "sling.sling_leg_factor")
@each(("degrees", "factor"), [(90, "1.000"), (75, "1.035"), (60, "1.155"), (45, "1.414"), (30, "2.000")])
def test_tension_of_sloping_legs(degrees: float, factor: str) -> None:
    assert sling.sling_leg_factor(math.radians(degrees)) == printed(factor)


# [talk] 866, 707 and 500 lb of 1,000; they belong to 60, 45 and 30 degrees from the horizontal
@pytest.mark.printed("Toolbox talk on sling angles", "sling.sling_capacity_ratio")
@each(("degrees", "pounds"), [(90, "1000"), (60, "866"), (45, "707"), (30, "500")])
def test_what_a_sloping_leg_lifts_of_a_thousand_pounds(degrees: float, pounds: str) -> None:
    assert 1000 * sling.sling_capacity_ratio(math.radians(degrees)) == printed(pounds)


# [talk] the same list a row off: 1,000 at a level leg, 866 at 30 degrees, 500 at 45
@pytest.mark.printed("Toolbox talk on sling angles", "sling.sling_capacity_ratio", values=2)
def test_the_shifted_list_is_not_followed() -> None:
    with pytest.raises(ValueError, match="from_level_rad"):
        sling.sling_capacity_ratio(0)
    assert 1000 * sling.sling_capacity_ratio(math.radians(45)) != printed("500")


# [393] size, kg by grade 30, 43, 70, 80, 100; the law lists no grade 80 or 100 at 11 mm
CHAIN_KG = [
    (0.00635, "580 1180 1430 1570 1950"),
    (0.008, "860 1770 2130 2000 2600"),
    (0.010, "1200 2450 2990 3200 4000"),
    (0.011, "1680 3270 3970"),
    (0.013, "2030 4170 5130 5400 6800"),
    (0.016, "3130 5910 7170 8200 10300"),
]
CHAIN_CELLS = [
    (size_m, grade, load)
    for size_m, loads in CHAIN_KG
    for grade, load in zip(TiedownGrade, loads.split(), strict=False)
]


@pytest.mark.printed("49 CFR 393.108", "tiedown.unmarked_chain_n")
@each(("size_m", "grade", "load_kg"), CHAIN_CELLS)
def test_chain_without_a_marked_load(size_m: float, grade: TiedownGrade, load_kg: str) -> None:
    assert tiedown.unmarked_chain_n(size_m, grade) / KGF == printed(load_kg)


# [393] (d): a chain of unknown grade counts as grade 30
@pytest.mark.printed("49 CFR 393.108", "tiedown.unmarked_chain_n")
def test_chain_of_unknown_grade_counts_as_grade_30() -> None:
    assert tiedown.unmarked_chain_n(0.013) / KGF == printed("2030")


# [393] at 8 mm grade 70 is printed above grade 80; "the higher the grade, the more" would be wrong
@pytest.mark.printed("49 CFR 393.108", "tiedown.unmarked_chain_n", values=2)
def test_at_8_mm_grade_80_does_not_hold_more_than_grade_70() -> None:
    assert tiedown.unmarked_chain_n(0.008, TiedownGrade.G80) < tiedown.unmarked_chain_n(0.008, TiedownGrade.G70)


@pytest.mark.printed("49 CFR 393.108", "tiedown.unmarked_webbing_n")
@each(("width_m", "load_kg"), [(0.045, "790"), (0.050, "910"), (0.075, "1360"), (0.100, "1810")])
def test_webbing_without_a_marked_load(width_m: float, load_kg: str) -> None:
    assert tiedown.unmarked_webbing_n(width_m) / KGF == printed(load_kg)


WIRE_KG = [
    *((0.00635, "640"), (0.008, "950"), (0.010, "1360"), (0.011, "1860"), (0.013, "2400"), (0.016, "3770")),
    (0.020, "4940"),
]


@pytest.mark.printed("49 CFR 393.108", "tiedown.unmarked_wire_rope_n")
@each(("size_m", "load_kg"), WIRE_KG)
def test_wire_rope_without_a_marked_load(size_m: float, load_kg: str) -> None:
    assert tiedown.unmarked_wire_rope_n(size_m) / KGF == printed(load_kg)


# [393] (e)(1) one-fourth of the nominal strength; (a) the lowest of its components and anchor points
@pytest.mark.printed("49 CFR 393.108", "tiedown.quarter_strength_n", "tiedown.weakest_part_n", values=2)
def test_a_quarter_of_the_strength_and_the_weakest_part() -> None:
    assert 100e3 / tiedown.quarter_strength_n(100e3) == printed("4")
    assert tiedown.weakest_part_n([9e3, 6e3, 7e3]) == 6e3
