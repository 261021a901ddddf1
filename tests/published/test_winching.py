"""Ground, grade, tackle and drum against figures in print.

Sources: [tips] a winch maker's public winching tips, p. 34; [theory] a public page on winch theory; [trade] the tow
trade's scale; [press] a press article on recovery; [seller] a winch seller's page on mud depth, which restates the
army's 1, 2 and 3 times the weight; [note] a strap seller's note, 2 in 600 mm of heavy mud; [chart] a maker's chart of
slopes in per cent; [receipts] Workshop Receipts, old series 5, tackles with white rope; [builder] US Navy builder's
training manual, tackle; [lesson] US Army lesson 63H34F01, solution sheet: 10 % for each sheave; [WRUM] Wire Rope Users
Manual, 4th ed., pp. 86-88; [pipe] Pipeline Rules of Thumb Handbook, p. 6; [TM] TM 9-2320-279-10-2 table 2-7; [alert]
Workplace Health and Safety Queensland, incident alert 2018; [LR] Lloyd's Register code for lifting appliances ch 8,
5.1.1.
"""

import math

import pytest

from inspector.mechanics import drum, grade, ground, tackle
from inspector.mechanics.drum import LayerRule
from inspector.mechanics.grade import GradeRule
from inspector.mechanics.ground import Ground, ResistanceScale
from tests.each import each
from tests.printed import printed

KGF = 9.80665
POUND_KG = 0.45359237
POUND_FORCE_N = POUND_KG * KGF


@pytest.mark.printed("Winching tips of a winch maker", "ground.ground_resistance_ratio")
@each(
    ("where", "share"),
    [
        *((Ground.HARD_ROAD, "0.04"), (Ground.GRASS, "0.145"), (Ground.HARD_WET_SAND, "0.17"), (Ground.GRAVEL, "0.20")),
        *((Ground.SOFT_WET_SAND, "0.20"), (Ground.SOFT_DRY_SAND, "0.25"), (Ground.SHALLOW_MUD, "0.33")),
        (Ground.BOG, "0.50"),
    ],
)
def test_the_civil_scale(where: Ground, share: str) -> None:
    assert ground.ground_resistance_ratio(where, ResistanceScale.CIVIL) == printed(share)
    assert ground.ground_resistance_ratio(where) >= ground.ground_resistance_ratio(where, ResistanceScale.CIVIL)


@pytest.mark.printed("Winch theory page", "ground.ground_resistance_ratio")
@each(
    ("where", "parts"),
    [
        *((Ground.HARD_ROAD, "25"), (Ground.GRASS, "7"), (Ground.HARD_WET_SAND, "6"), (Ground.GRAVEL, "5")),
        *((Ground.SOFT_DRY_SAND, "4"), (Ground.SHALLOW_MUD, "3"), (Ground.BOG, "2")),
    ],
)
def test_the_civil_scale_in_fractions(where: Ground, parts: str) -> None:
    assert 1 / ground.ground_resistance_ratio(where, ResistanceScale.CIVIL_FRACTION) == pytest.approx(float(parts))


@pytest.mark.printed("Tow trade scale", "ground.ground_resistance_ratio")
@each(
    ("where", "share"),
    [
        *((Ground.HARD_ROAD, "0.10"), (Ground.GRASS, "0.33"), (Ground.GRAVEL, "0.33"), (Ground.WHEEL_DEEP_MUD, "1.00")),
        *((Ground.SILL_DEEP_MUD, "2.00"), (Ground.CAB_DEEP_MUD, "3.00"), (Ground.WHEELS_LOCKED, "0.67")),
    ],
)
def test_the_tow_trades_scale(where: Ground, share: str) -> None:
    assert ground.ground_resistance_ratio(where, ResistanceScale.TOW_TRADE) == printed(share)


@pytest.mark.printed("Winch seller's page on mud depth", "ground.ground_resistance_ratio", "ground.load_resistance_n")
@each(("where", "tons"), [(Ground.WHEEL_DEEP_MUD, "2"), (Ground.SILL_DEEP_MUD, "4"), (Ground.CAB_DEEP_MUD, "6")])
def test_the_armys_mire_scale_for_a_two_ton_vehicle(where: Ground, tons: str) -> None:
    share = ground.ground_resistance_ratio(where, ResistanceScale.MILITARY)
    assert ground.load_resistance_n(2000, share) / (1000 * KGF) == pytest.approx(float(tons))


@pytest.mark.printed("Press article on recovery", "ground.ground_resistance_ratio")
def test_the_press_on_a_hard_road() -> None:
    assert ground.ground_resistance_ratio(Ground.HARD_ROAD, ResistanceScale.PRESS) == printed("0.05")


@pytest.mark.printed("Strap seller's note on mud", "ground.ground_resistance_ratio")
def test_a_strap_sellers_note() -> None:
    assert ground.ground_resistance_ratio(Ground.SILL_DEEP_MUD, ResistanceScale.SELLER) == printed("2.00")
    assert ground.ground_resistance_ratio(Ground.SILL_DEEP_MUD) == printed("2.00")


@pytest.mark.printed("from memory", "ground.righting_resistance_n")
def test_an_overturned_vehicle_takes_half_its_weight_to_right() -> None:
    assert ground.righting_resistance_n(1000) / (1000 * KGF) == printed("0.5")


@pytest.mark.printed("Public recovery guide, own truck as an anchor", "ground.anchor_value_n")
def test_a_braked_truck_as_an_anchor() -> None:
    assert ground.anchor_value_n(1000) / (1000 * KGF) == printed("0.666")


@pytest.mark.printed(
    "Winching tips of a winch maker",
    "ground.load_resistance_n",
    "ground.total_resistance_n",
    "grade.grade_resistance_ratio",
    "grade.grade_resistance_n",
    values=3,
)
def test_two_tonnes_on_gravel_at_fifteen_degrees() -> None:
    level_n = ground.load_resistance_n(2000, ground.ground_resistance_ratio(Ground.GRAVEL, ResistanceScale.CIVIL))
    slope_n = grade.grade_resistance_n(2000, grade.grade_resistance_ratio(math.radians(15), GradeRule.SIXTIETH))
    assert level_n / KGF == printed("400")
    assert slope_n / KGF == printed("500")
    assert ground.total_resistance_n(level_n, slope_n) / KGF == printed("900")


@pytest.mark.printed(
    "Press article on recovery",
    "ground.load_resistance_n",
    "ground.total_resistance_n",
    "ground.ground_resistance_ratio",
    "grade.grade_resistance_n",
    values=3,
)
def test_a_body_deep_vehicle_at_fifteen_degrees() -> None:
    mass_kg = 5700 * POUND_KG
    share = ground.ground_resistance_ratio(Ground.SILL_DEEP_MUD, ResistanceScale.PRESS)
    level_n = ground.load_resistance_n(mass_kg, share)
    slope_n = grade.grade_resistance_n(mass_kg, 0.25)
    assert level_n / POUND_FORCE_N == printed("8550")
    assert slope_n / POUND_FORCE_N == printed("1425")
    assert ground.total_resistance_n(level_n, slope_n) / POUND_FORCE_N == printed("9975")


@pytest.mark.printed("Winch theory page", "ground.load_resistance_n", "ground.ground_resistance_ratio")
def test_4500_pounds_on_hard_wet_sand() -> None:
    share = ground.ground_resistance_ratio(Ground.HARD_WET_SAND, ResistanceScale.CIVIL_FRACTION)
    assert ground.load_resistance_n(4500 * POUND_KG, share) / POUND_FORCE_N == printed("750")


@pytest.mark.printed("Winch maker's slope chart", "grade.slope_angle_rad", "grade.grade_resistance_ratio")
@each(("per_cent", "share"), [(20, "0.20"), (40, "0.37"), (60, "0.51"), (80, "0.62"), (100, "0.71")])
def test_the_chart_of_slopes_in_per_cent(per_cent: int, share: str) -> None:
    assert grade.grade_resistance_ratio(grade.slope_angle_rad(per_cent / 100)) == printed(share)


@pytest.mark.printed("US Army lesson 63H34F01", "tackle.tackle_resistance_n", "tackle.tackle_total_n")
@pytest.mark.printed("US Navy builder's manual, tackle", "tackle.tackle_resistance_n", "tackle.tackle_total_n")
def test_ten_percent_for_each_sheave() -> None:
    assert tackle.tackle_resistance_n(100, 1) == pytest.approx(10)
    assert tackle.tackle_total_n(100, 1) == pytest.approx(100 + 10)


@pytest.mark.printed("Workshop Receipts, tackle", "tackle.tackle_resistance_n", values=2)
def test_six_sheaves_under_27_tons() -> None:
    assert tackle.tackle_resistance_n(27, 1) == printed("2.7")
    assert tackle.tackle_resistance_n(27, 6) == printed("16.2")


@pytest.mark.printed("Workshop Receipts, tackle", "tackle.fall_line_n")
def test_a_single_sheave_of_white_rope() -> None:
    assert tackle.fall_line_n(1, 1, 1) == printed("1.1")


# [receipts] white rope: useful work 81 % down to 59 %, pull as a share of the load
@pytest.mark.printed("Workshop Receipts, tackle", "tackle.fall_line_n")
@each(("parts", "pull"), [(2, 0.62), (3, 0.45), (4, 0.37), (5, 0.32), (6, 0.28)])
def test_white_rope_took_more_than_the_rule_of_ten_percent_grants(parts: int, pull: float) -> None:
    """The rule holds for sheaves of 0.90 or better; old rope tackles were worse. It is no bound for them."""
    assert 0.86 * pull < tackle.fall_line_n(1, parts, parts - 1) < pull


@pytest.mark.printed("US Navy builder's manual, tackle", "tackle.mechanical_advantage_count", "tackle.dead_line_n")
@each(("load_lb", "pull_lb", "parts"), [(600, 200, 3), (200, 100, 2), (50, 10, 5)])
def test_parts_of_a_tackle(load_lb: float, pull_lb: float, parts: int) -> None:
    assert tackle.mechanical_advantage_count(load_lb, pull_lb) == parts
    assert tackle.dead_line_n(pull_lb, parts) == pytest.approx(load_lb)
    assert tackle.geometric_fall_line_n(load_lb, parts, 1.0) == pytest.approx(pull_lb)


@pytest.mark.printed("Wire Rope Users Manual 4th ed.", "tackle.geometric_fall_line_n", values=4)
def test_lead_line_of_four_parts_with_plain_bearings() -> None:
    plain = 1 / 1.09
    assert tackle.geometric_fall_line_n(6000, 4, 1.0) == printed("1500")
    assert tackle.geometric_fall_line_n(1, 4, plain, 1) == printed("0.309")
    assert tackle.geometric_fall_line_n(1, 4, plain, 3) == printed("0.367")
    # the manual multiplies its rounded factor: 6000 x 0.367 = 2202
    assert tackle.geometric_fall_line_n(6000, 4, plain, 3) == pytest.approx(2202, abs=6000 * 0.0005)


@pytest.mark.printed("Pipeline Rules of Thumb Handbook p. 6", "tackle.geometric_fall_line_n", values=2)
def test_a_handbooks_four_part_tackle_is_rounded_upwards() -> None:
    """Printed 3.25 from its own 0.917 x 0.293 / 0.083, which is 3.24; its pull of 325 lb is a slip for 1,000."""
    gain = 1 / tackle.geometric_fall_line_n(1, 4, 0.917, 1)
    assert gain == pytest.approx(0.917 * 0.293 / 0.083, rel=0.001)
    assert gain != printed("3.25")
    assert tackle.geometric_fall_line_n(3250, 4, 0.917, 1) == pytest.approx(1000, rel=0.005)


@pytest.mark.printed("TM 9-2320-279-10-2 table 2-7", "drum.layer_pull_n")
@each(("layer", "pull_lbf"), [(1, 20000), (2, 18173), (3, 16663), (4, 15361), (5, 14254)])
def test_pull_by_layer_as_tabled(layer: int, pull_lbf: float) -> None:
    assert drum.layer_pull_n(20000, layer, LayerRule.ARMY) == pytest.approx(pull_lbf, rel=0.003)
    assert drum.layer_pull_n(20000, layer) <= pull_lbf


@pytest.mark.printed("TM 9-2320-279-10-2 table 2-7", "drum.drum_layer_pull_n")
@each(("layer", "pull_lbf"), [(3, 16663), (4, 15361), (5, 14254)])
def test_one_drum_explains_the_whole_table(layer: int, pull_lbf: float) -> None:
    """Drum over rope taken from layers 1 and 2 alone."""
    drum_per_rope = 2 / (20000 / 18173 - 1) - 1
    assert drum.drum_layer_pull_n(20000, drum_per_rope, 1, layer) == pytest.approx(pull_lbf, rel=0.001)


@pytest.mark.printed("Trade pages on winch layers", "drum.layer_pull_n")
def test_fifteen_percent_less_and_it_compounds() -> None:
    assert drum.layer_pull_n(100, 2) == pytest.approx(85)
    assert drum.layer_pull_n(100, 3) == pytest.approx(85 * 0.85)


@pytest.mark.printed("US Army recovery lesson slides 63B34G01", "drum.full_drum_pull_n")
def test_half_the_pull_on_a_full_drum() -> None:
    assert drum.full_drum_pull_n(100) == pytest.approx(50)


@pytest.mark.printed(
    "Queensland incident alert 2018", "tackle.stall_line_strength_n", "tackle.stall_block_strength_n", values=2
)
def test_the_parts_of_a_winch_that_stalls_at_five_tonnes() -> None:
    assert tackle.stall_line_strength_n(5) == pytest.approx(10)
    assert tackle.stall_block_strength_n(5) == pytest.approx(20)


@pytest.mark.printed("Lloyd's Register code ch 8, 5.1.1", "tackle.block_shackle_rating_n")
def test_the_shackle_of_a_block_bears_twice_the_block() -> None:
    assert tackle.block_shackle_rating_n(1) == pytest.approx(2)
