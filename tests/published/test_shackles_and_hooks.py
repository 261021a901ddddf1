"""Shackles and hooks: wear, spread, heat, proof loads, a missing mark, sizes, throat and saddle, against print.

Sources: [ISO] ISO 16855:2013; [UK] a UK guide to BS EN 13889; [US] field sheets and slinging guides under ASME B30.26;
[DOE] DOE-STD-1090-96 15.4.8; [B30] ASME B30.26-2010 26-1.2, 26-1.4.2; [sheet] trade sheets on shackles to EN 13889 and
RR-C-271; [navy] TB 55-1900-232-10, appendix D and table 5-4; [steel] NAVEDTRA 14251 ch. 6; [LR] Lloyd's Register, Code
for Lifting Appliances (July 2022) table 8.5.1; [list 1] dealer's sheet to RR-C-271 and EN 13889, [list 2] Australian
lifting card to AS 2741; [WAC] WAC 296-155-55800 table 12; [German] guides on slinging, DGUV 215-320; [dogging]
Australian guide for doggers.
"""

import math

import pytest

from inspector.mechanics import hook, shackle, shackle_sizes, wear
from inspector.mechanics.hook import HookRule
from inspector.mechanics.shackle import NavyGrade, ShackleHeatRule, UnitForm
from inspector.mechanics.shackle_sizes import ShackleSteel, SizeList
from inspector.mechanics.wear import WearRule, WornPart
from tests.each import each
from tests.printed import printed

TONNE_N, SHORT_TON_N = 9806.65, 907.18474 * 9.80665
MM = 1e-3


# [ISO] pins more than 6 %, other parts more than 10 %
@pytest.mark.printed("ISO 16855:2013", "wear.wear_limit_ratio", "wear.is_worn_out", "wear.worn_ratio")
@each(("part", "limit"), [(WornPart.PIN, "0.06"), (WornPart.BODY, "0.10")])
def test_wear_of_ships_gear(part: WornPart, limit: str) -> None:
    check_wear(part, WearRule.ISO_16855, limit, at_limit=False)


# [UK] 8 % of the diameter, body or pin
@pytest.mark.printed("UK guide to BS EN 13889", "wear.wear_limit_ratio", "wear.is_worn_out", "wear.worn_ratio")
@each("part", WornPart)
def test_wear_in_the_uk_guide(part: WornPart) -> None:
    check_wear(part, WearRule.UK_GUIDE, "0.08", at_limit=False)


# [US] a 10 % reduction, body or pin: the limit itself is out
@pytest.mark.printed("US lists under ASME B30.26", "wear.wear_limit_ratio", "wear.is_worn_out", "wear.worn_ratio")
@each("part", WornPart)
def test_wear_in_us_practice(part: WornPart) -> None:
    check_wear(part, WearRule.US_PRACTICE, "0.10", at_limit=True)


# [DOE] deformed by more than 15 % of its size when new
@pytest.mark.printed("DOE-STD-1090-96", "wear.wear_limit_ratio", "wear.is_worn_out")
def test_wear_in_the_old_and_loosest_standard() -> None:
    check_wear(WornPart.BODY, WearRule.DOE, "0.15", at_limit=False)


def check_wear(part: WornPart, rule: WearRule, limit: str, *, at_limit: bool) -> None:
    """The limit as printed; a part of 20 mm just short of it, at it and just past it."""
    assert wear.wear_limit_ratio(part, rule) == printed(limit)
    left_m = 0.020 * (1 - float(limit))
    assert wear.worn_ratio(0.020, left_m) == pytest.approx(float(limit))
    assert not wear.is_worn_out(0.020, left_m + 1e-5, part, rule)
    assert wear.is_worn_out(0.020, left_m, part, rule) is at_limit
    assert wear.is_worn_out(0.020, left_m - 1e-5, part, rule)


@pytest.mark.printed("ISO 16855:2013", "wear.wear_limit_ratio")
def test_of_the_published_limits_the_strictest_stands_for_a_pin() -> None:
    assert wear.wear_limit_ratio(WornPart.PIN) == printed("0.06")


@pytest.mark.printed("UK guide to BS EN 13889", "wear.wear_limit_ratio")
def test_of_the_published_limits_the_strictest_stands_for_a_body() -> None:
    assert wear.wear_limit_ratio(WornPart.BODY) == printed("0.08")


# [sheet] two legs in the bow up to 120 degrees
@pytest.mark.printed("Trade sheets on shackles", "shackle.may_spread")
def test_spread_of_two_legs_in_the_bow() -> None:
    assert shackle.may_spread(math.radians(120))
    assert not shackle.may_spread(math.radians(120.1))


# [sheet] up to 200 C 100 %, 201-300 C 90 %, 301-400 C 75 %, above not to be used
@pytest.mark.printed("Trade sheets on shackles", "shackle.shackle_heat_factor")
@each(
    ("temperature_c", "left"),
    [(20, "1.00"), (200, "1.00"), (201, "0.90"), (300, "0.90"), (301, "0.75"), (400, "0.75")],
)
def test_hot_shackles(temperature_c: float, left: str) -> None:
    assert shackle.shackle_heat_factor(temperature_c) == printed(left)


@pytest.mark.printed("Trade sheets on shackles", "shackle.shackle_heat_factor", "shackle.in_shackle_temperature")
def test_above_400_degrees_no_shackle_is_used() -> None:
    with pytest.raises(ValueError, match="temperature_c"):
        shackle.shackle_heat_factor(400.1)
    assert shackle.in_shackle_temperature(200) and not shackle.in_shackle_temperature(200.1)


# [B30] -40 to 204 C; -20 C of EN 13889 is from memory
@pytest.mark.printed("ASME B30.26-2010", "shackle.in_shackle_temperature", values=2)
def test_temperatures_of_us_shackles() -> None:
    within = [shackle.in_shackle_temperature(one, ShackleHeatRule.ASME) for one in (-41, -40, 204, 205)]
    assert within == [False, True, True, False]


@pytest.mark.printed("EN 13889, from memory", "shackle.in_shackle_temperature")
def test_cold_european_shackles() -> None:
    assert [shackle.in_shackle_temperature(one) for one in (-21, -20)] == [False, True]


# [B30] factor 5, proof 2 to 2.2 up to 150 short tons; factor 4, proof 1.33 to 2 above
@pytest.mark.printed(
    "ASME B30.26-2010",
    "shackle.shackle_least_factor",
    "shackle.shackle_least_proof_n",
    "shackle.shackle_most_proof_n",
    values=3,
)
@each(
    ("short_tons", "factor", "least", "most"),
    [(4.75, "5", "2.0", "2.2"), (150, "5", "2.0", "2.2"), (151, "4", "1.33", "2")],
)
def test_factors_and_proof_loads(short_tons: float, factor: str, least: str, most: str) -> None:
    load_n = short_tons * SHORT_TON_N
    assert shackle.shackle_least_factor(load_n) == printed(factor)
    assert shackle.shackle_least_proof_n(load_n) / load_n == printed(least)
    assert shackle.shackle_most_proof_n(load_n) / load_n == printed(most)


# [navy] working load 50 % of proof in grade A, 40 % in grade B
@pytest.mark.printed("TB 55-1900-232-10 table 5-4", "shackle.navy_shackle_n")
@each(("grade", "share"), [(NavyGrade.A, "0.50"), (NavyGrade.B, "0.40")])
def test_navy_safety_shackles(grade: NavyGrade, share: str) -> None:
    assert shackle.navy_shackle_n(100e3, grade) / 100e3 == printed(share)


# [steel] D 5/8 in: 1.1719 short tons, 2,343.8 lb; D 1.59 cm: 1.05 t
@pytest.mark.printed("NAVEDTRA 14251 chapter 6", "shackle.unmarked_shackle_n", values=3)
def test_a_shackle_without_a_mark() -> None:
    in_tons = shackle.unmarked_shackle_n(5 / 8 * 0.0254, UnitForm.US) / SHORT_TON_N
    assert in_tons == printed("1.1719")
    assert in_tons * 2000 == printed("2343.8")
    assert shackle.unmarked_shackle_n(0.0159) / TONNE_N == printed("1.05")


# [steel] 0.417 is no exact conversion of 3 D^2: that would be 0.4218. Each form keeps its own figure, the lower stands
@pytest.mark.printed("NAVEDTRA 14251 chapter 6", "shackle.unmarked_shackle_n")
def test_the_two_forms_of_the_rule_are_not_mixed() -> None:
    metric_t = shackle.unmarked_shackle_n(0.01) / TONNE_N
    assert metric_t == printed("0.417")
    assert shackle.unmarked_shackle_n(0.01, UnitForm.US) / TONNE_N != printed("0.417")
    assert shackle.unmarked_shackle_n(0.01) < shackle.unmarked_shackle_n(0.01, UnitForm.US)


# [LR] SWL t, jaw a, mild steel d1 d2, higher tensile steel d1 d2, mm
DEES = [
    *("1.0 20 13 15 11 12", "1.6 25 17 19 13 15", "2.0 28 19 21 15 17", "2.5 31 21 24 17 19", "3.2 35 24 27 19 21"),
    *("4.0 40 26 30 21 23", "5.0 44 29 33 23 26", "6.3 50 33 37 26 29", "8.0 56 37 42 29 33", "10.0 63 41 47 33 37"),
    *("12.5 70 46 53 36 42", "16.0 79 52 60 41 47", "20.0 89 59 67 46 52", "25.0 99 65 75 51 59"),
    *("32.0 112 74 84 58 66", "40.0 125 83 94 65 74", "50.0 140 92 106 72 83", "63.0 157 104 119 81 93"),
    "80.0 177 117 134 91 105",
]


@pytest.mark.printed(
    "Lloyd's Register Code for Lifting Appliances table 8.5.1",
    "shackle_sizes.dee_jaw_m",
    "shackle_sizes.dee_body_m",
    "shackle_sizes.dee_pin_m",
    "shackle_sizes.dee_load_n",
    values=5,
)
@each("row", DEES)
def test_dee_shackles_as_tabled(row: str) -> None:
    load, jaw, *sizes = row.split()
    load_n = float(load) * TONNE_N
    assert shackle_sizes.dee_jaw_m(load_n) / MM == printed(jaw)
    for steel, body, pin in zip(ShackleSteel, sizes[::2], sizes[1::2], strict=True):
        assert shackle_sizes.dee_body_m(load_n, steel) / MM == printed(body)
        assert shackle_sizes.dee_pin_m(load_n, steel) / MM == printed(pin)
        assert shackle_sizes.dee_load_n(float(body) * MM, float(pin) * MM, steel) == pytest.approx(load_n)


# [list 1], [list 2] bow mm, pin mm, working load t
BOWS_1 = [
    *((6, "8", "0.5"), (8, "10", "0.75"), (9, "11", "1.0"), (11, "13", "1.5"), (13, "16", "2.0"), (16, "19", "3.25")),
    *((19, "22", "4.75"), (22, "25", "6.5"), (25, "28", "8.5"), (28, "32", "9.5"), (32, "35", "12.0")),
]
BOWS_2 = [
    *((6, "8", "0.5"), (8, "10", "0.75"), (10, "11", "1.0"), (11, "13", "1.5"), (13, "16", "2.0"), (16, "19", "3.2")),
    *((19, "22", "4.7"), (22, "25", "6.5"), (25, "29", "8.5")),
]


@pytest.mark.printed(
    "Bow shackle list to RR-C-271 and EN 13889",
    "shackle_sizes.bow_load_n",
    "shackle_sizes.bow_pin_m",
    "shackle.is_odd_pin",
    values=2,
)
@each(("bow_mm", "pin_mm", "load_t"), BOWS_1)
def test_bow_shackles_of_the_us_and_european_list(bow_mm: float, pin_mm: str, load_t: str) -> None:
    check_bow(SizeList.US_EN, bow_mm, pin_mm, load_t)


@pytest.mark.printed(
    "Bow shackle list to AS 2741",
    "shackle_sizes.bow_load_n",
    "shackle_sizes.bow_pin_m",
    "shackle.is_odd_pin",
    values=2,
)
@each(("bow_mm", "pin_mm", "load_t"), BOWS_2)
def test_bow_shackles_of_the_australian_list(bow_mm: float, pin_mm: str, load_t: str) -> None:
    check_bow(SizeList.AUSTRALIAN, bow_mm, pin_mm, load_t)


def check_bow(sizes: SizeList, bow_mm: float, pin_mm: str, load_t: str) -> None:
    """Load and pin as printed; the pin is thicker than the bow, one as thick as the bow is odd."""
    assert shackle_sizes.bow_load_n(bow_mm * MM, sizes) / TONNE_N == printed(load_t)
    assert shackle_sizes.bow_pin_m(bow_mm * MM, sizes) / MM == printed(pin_mm)
    assert not shackle.is_odd_pin(float(pin_mm) * MM, bow_mm * MM)
    assert shackle.is_odd_pin(bow_mm * MM, bow_mm * MM)


# [LR] 19 mm in mild steel carries 2.0 t, [list 2] in grade S 4.7 t: size alone does not tell the load
@pytest.mark.printed(
    "Lloyd's Register Code for Lifting Appliances table 8.5.1", "shackle_sizes.dee_load_n", "shackle_sizes.bow_load_n"
)
def test_the_same_thickness_in_mild_steel_carries_less_than_half() -> None:
    assert shackle_sizes.dee_load_n(0.019, 0.022) < shackle_sizes.bow_load_n(0.019) / 2


# [WAC] throat 5 %, at most a quarter inch (6 mm); saddle 10 %. [German] 10 % and 5 %. [dogging] 5 % and 10 %


def check_hook(rule: HookRule, opening: str, worn: str) -> None:
    """A throat of 40 mm and a saddle of 40 mm, just short of the limits and just past them."""
    assert hook.throat_most_growth_m(0.040, rule) / 0.040 == printed(opening)
    limit_m = 0.040 * (1 + float(opening))
    assert hook.throat_opening_ratio(0.040, limit_m) == pytest.approx(float(opening))
    assert not hook.is_throat_opened(0.040, limit_m - 1e-5, rule)
    assert hook.is_throat_opened(0.040, limit_m + 1e-5, rule)
    assert hook.hook_wear_limit_ratio(rule) == printed(worn)
    left_m = 0.040 * (1 - float(worn))
    assert not hook.is_hook_worn(0.040, left_m, rule)
    assert hook.is_hook_worn(0.040, left_m - 1e-5, rule)


@pytest.mark.printed(
    "WAC 296-155-55800 table 12",
    "hook.throat_most_growth_m",
    "hook.throat_opening_ratio",
    "hook.is_throat_opened",
    "hook.hook_wear_limit_ratio",
    "hook.is_hook_worn",
    values=3,
)
def test_hooks_in_us_rules() -> None:
    check_hook(HookRule.US, "0.05", "0.10")
    assert hook.is_throat_opened(0.040, 0.042, HookRule.US), "an increase of 5 % is out"
    assert hook.throat_most_growth_m(0.200, HookRule.US) / MM == printed("6")
    assert hook.is_throat_opened(0.200, 0.206, HookRule.US)


@pytest.mark.printed(
    "German practice on hooks",
    "hook.throat_most_growth_m",
    "hook.is_throat_opened",
    "hook.hook_wear_limit_ratio",
    "hook.is_hook_worn",
    values=2,
)
def test_hooks_in_german_practice_have_the_two_figures_swapped() -> None:
    check_hook(HookRule.GERMAN, "0.10", "0.05")
    assert not hook.is_throat_opened(0.040, 0.044, HookRule.GERMAN), "more than 10 % is out"


@pytest.mark.printed(
    "Australian guide for doggers",
    "hook.throat_most_growth_m",
    "hook.is_throat_opened",
    "hook.hook_wear_limit_ratio",
    "hook.is_hook_worn",
    values=2,
)
def test_hooks_in_australian_practice() -> None:
    check_hook(HookRule.AUSTRALIAN, "0.05", "0.10")


@pytest.mark.printed("WAC 296-155-55800 table 12", "hook.throat_most_growth_m", "hook.hook_wear_limit_ratio")
def test_five_percent_stands_for_both_unless_a_rule_is_named() -> None:
    check_hook(HookRule.STRICTEST, "0.05", "0.05")
    assert hook.is_throat_opened(0.200, 0.206)
