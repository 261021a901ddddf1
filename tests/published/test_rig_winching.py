"""Whole winch rigs against figures in print: blocks, stall pull, tackle, drum layers, ground and slope.

Sources: [blocks] block load tables as three makers print them, some entries cut off and not rounded; [alert] Workplace
Health and Safety Queensland, incident alert 2018: every part on the line stands twice the winch's stall pull, the
block, its connections and its anchor twice that again, 10 t and 20 t at 5 t; [lesson] US Army lesson 63H34F01 and
slides 63B34G01: tackle resistance 10 % of the load resistance for each sheave, fall line = total / mechanical
advantage, dead line = fall line x the lines it holds, half the pull on a full drum; [TM] TM 9-2320-279-10-2 table 2-7;
[trade] pages on winch layers, 10 to 15 % less for each; [tips] a winch maker's public winching tips, p. 34; [theory] a
public page on winch theory; [press] a press article on recovery; [chart] a winch maker's chart of slopes in per cent;
[mire] the army's 1, 2 and 3 times the weight, restated by two trade pages; [tow] the tow trade's scale; [basket] sling
leg factors by angle from the horizontal, as a sling catalogue prints them.
"""

import math

import pytest

from inspector.gear.rig import Conditions, Footing
from inspector.gear.rig_result import RigResult
from tests.each import each
from tests.printed import printed
from tests.published.test_blocks_and_sides import BLOCK_TABLE
from tests.rulebook.rigs.made import (
    BOGGED,
    PULLING,
    TONNE_FORCE,
    G,
    angle,
    around,
    check,
    hung_block,
    line,
    link,
    piece,
    redirect,
    single_line,
    tackle,
    vehicle,
    winch,
)

POUND_FORCE_N = 4.4482216152605


def stalled_at_five(line_t: str, block_t: str, degrees: str, legs: str = "0 °") -> RigResult:
    """A redirect whose winch stalls at 5 t; what the line stands, and what the block, its shackle and strap stand."""
    instead = (
        winch(pull="1 t", stall="5 t"),
        line(rated=line_t),
        hung_block("R", block_t),
        piece("S-R", "bow_shackle", block_t),
        around(rated=block_t),
    )
    return check(redirect(degrees, instead=instead, legs=legs))


# [blocks] degrees between the two lines, load per line pull
@pytest.mark.printed("Block load tables of three makers")
@each(("degrees", "factor"), [one for one in BLOCK_TABLE if one[0] < 180])
def test_a_redirects_block_and_shackle_bear_what_the_tables_print(degrees: float, factor: str) -> None:
    result = stalled_at_five("40 t", "80 t", f"{degrees} °")
    for tag in ("R", "S-R"):
        assert link(result, tag).force_n / (5 * TONNE_FORCE) == printed(factor, cut_off=True)
    assert link(result, "S-B").force_n / (5 * TONNE_FORCE) == pytest.approx(1), "the vehicle's end is pulled once"


# [alert] 10 t for the line's parts, 20 t for block, connections and anchor, whatever the angle
@pytest.mark.printed("Queensland incident alert 2018", values=2)
@each("degrees", ["0 °", "60 °", "90 °", "120 °", "150 °"])
def test_a_winch_that_stalls_at_five_tonnes_asks_for_ten_on_the_line_and_twenty_at_the_block(degrees: str) -> None:
    just = stalled_at_five("10 t", "20 t", degrees)
    assert [link(just, tag).outcome.value for tag in ("L", "R", "S-R")] == ["sound"] * 3
    assert [link(just, tag).use_ratio for tag in ("L", "R", "S-R")] == pytest.approx([1, 1, 1])
    below = stalled_at_five("9.99 t", "19.98 t", degrees)
    assert [link(below, tag).outcome.value for tag in ("L", "R", "S-R")] == ["unsound"] * 3


# [alert] the chain round the tree broke: the anchor too stands four times the stall pull
@pytest.mark.printed("Queensland incident alert 2018")
def test_a_strap_round_the_tree_that_bears_the_block_alone_stands_twenty_tonnes_too() -> None:
    assert link(stalled_at_five("10 t", "20 t", "0 °", "120 °"), "T").use_ratio == pytest.approx(1)
    assert link(stalled_at_five("10 t", "19.98 t", "0 °", "120 °"), "T").outcome.value == "unsound"


# [basket] degrees of a leg from the horizontal, tension of a leg against an upright one
@pytest.mark.printed("Sling tension factors of a catalogue")
@each(("degrees", "factor"), [(90, "1.000"), (75, "1.035"), (60, "1.155"), (45, "1.414")])
def test_the_legs_of_a_strap_round_a_tree_bear_as_those_of_a_sling(degrees: float, factor: str) -> None:
    result = stalled_at_five("40 t", "80 t", "0 °", f"{180 - 2 * degrees} °")
    assert link(result, "T").legs == 2
    assert link(result, "T").force_n / (5 * TONNE_FORCE) == printed(factor, cut_off=True)


# [lesson] parts of line, sheaves: 10 % of the load for each, total / MA in the fall line, to be below the winch's pull
@pytest.mark.printed("US Army lesson 63H34F01")
@each(("parts", "fall_line_per_load"), [(2, "0.550"), (3, "0.400"), (4, "0.325"), (5, "0.280")])
def test_what_a_tackle_brings_is_the_load_whose_fall_line_is_the_winchs_pull(
    parts: int, fall_line_per_load: str
) -> None:
    """LR (1 + 0.1 x (MA - 1)) / MA = FL: 1.1 / 2, 1.2 / 3, 1.3 / 4, 1.4 / 5."""
    result = check(tackle(parts, Conditions(layers=1)))
    assert 4 * TONNE_FORCE / result.load.offered_n == printed(fall_line_per_load)


# [lesson] the deciding check: the fall line lies below the winch's capacity, else raise MA and repeat
@pytest.mark.printed("US Army lesson 63H34F01", values=2)
def test_a_six_tonne_load_on_a_winch_of_four_takes_two_parts_of_line() -> None:
    """6 t in mud to the hubs, 1 x the weight: LR = 6 t. One part: FL = 6 > 4. Two: 6 x 1.1 / 2 = 3.3 < 4."""
    stuck = Conditions(bogged_in=Footing.WHEEL_DEEP_MUD, scale="military", layers=1)
    heavy = (vehicle(BOGGED, "6,000 kg"), vehicle(PULLING))
    assert check(single_line(stuck, vehicles=heavy)).load.moves is False
    two = tackle(2, stuck)
    two.vehicles[BOGGED] = heavy[0]
    assert check(two).load.moves is True
    assert check(two).load.needed_n == pytest.approx(6 * TONNE_FORCE)


# [lesson] the dead line holds the fall line once for each part of line: chosen by what the winch can put on
@pytest.mark.printed("US Army lesson 63H34F01")
@each("parts", [2, 3, 4, 5])
def test_every_dead_line_of_a_tackle_holds_two_parts_and_the_end_holds_one(parts: int) -> None:
    result = check(tackle(parts, instead=(winch(pull="1 t", stall="5 t", on=BOGGED),)))
    held = [link(result, f"SR{at}").force_n / (5 * TONNE_FORCE) for at in range(1, parts)]
    assert held == pytest.approx([2] * (parts - 1))
    assert link(result, "S-B").force_n / (5 * TONNE_FORCE) == pytest.approx(1)


# [TM] lbf on layers 1 to 5; [trade] the program takes the lower pull, 15 % less for each layer
@pytest.mark.printed("TM 9-2320-279-10-2 table 2-7")
@pytest.mark.printed("Trade pages on winch layers")
@each(("layer", "pull_lbf"), [(1, 20000), (2, 18173), (3, 16663), (4, 15361), (5, 14254)])
def test_a_winch_brings_no_more_on_a_layer_than_the_manual_tables(layer: int, pull_lbf: float) -> None:
    strong = (winch(pull="20,000 lbf"), line(rated="40 t"))
    offered_n = check(single_line(Conditions(layers=layer), instead=strong)).load.offered_n
    assert offered_n <= pull_lbf * POUND_FORCE_N * (1 + 1e-9)
    assert offered_n / POUND_FORCE_N == pytest.approx(20000 * 0.85 ** (layer - 1))


@pytest.mark.printed("US Army recovery lesson slides 63B34G01")
def test_a_full_drum_brings_half_where_nobody_counted_the_layers() -> None:
    result = check(single_line(instead=(winch(pull="20,000 lbf"),)))
    assert result.load.offered_n / POUND_FORCE_N == pytest.approx(10000)


def needed_n(gvm: str, footing: Footing, scale: str = "largest", slope: str = "") -> float:
    """What moving a vehicle asks for."""
    conditions = Conditions(bogged_in=footing, scale=scale, slope=angle(slope) if slope else None)
    found = check(single_line(conditions, vehicles=(vehicle(BOGGED, gvm), vehicle(PULLING)))).load.needed_n
    assert found is not None
    return found


@pytest.mark.printed("Winching tips of a winch maker", values=2)
def test_two_tonnes_on_gravel_at_fifteen_degrees_need_at_least_the_nine_hundred_in_print() -> None:
    """Printed 400 + 500 by degrees / 60, which is 3 to 5 % low here: 2,000 x sin 15 = 517.6."""
    level_n = needed_n("2,000 kg", Footing.GRAVEL, "civil")
    assert level_n / G == printed("400")
    steep_n = needed_n("2,000 kg", Footing.GRAVEL, "civil", "15 °")
    assert 900 <= steep_n / G <= 400 + 500 * 1.05


@pytest.mark.printed("Press article on recovery", values=2)
def test_5700_pounds_to_the_sills_at_fifteen_degrees_need_at_least_what_the_press_prints() -> None:
    """Printed 8,550 + 1,425 with 0.25 for the slope; the sine is 0.2588."""
    assert needed_n("5,700 lb", Footing.SILL_DEEP_MUD, "press") / POUND_FORCE_N == printed("8550")
    steep_n = needed_n("5,700 lb", Footing.SILL_DEEP_MUD, "press", "15 °")
    assert 9975 <= steep_n / POUND_FORCE_N <= 8550 + 1425 * 1.05


@pytest.mark.printed("Winch theory page")
def test_4500_pounds_on_hard_wet_sand_need_750() -> None:
    assert needed_n("4,500 lb", Footing.HARD_WET_SAND, "civil_fraction") / POUND_FORCE_N == printed("750")


@pytest.mark.printed("Winch maker's slope chart")
@each(("per_cent", "part"), [(20, "0.20"), (40, "0.37"), (60, "0.51"), (80, "0.62"), (100, "0.71")])
def test_the_slope_adds_what_the_chart_prints(per_cent: int, part: str) -> None:
    slope = f"{math.degrees(math.atan(per_cent / 100))!r} °"
    added_n = needed_n("2,000 kg", Footing.GRAVEL, slope=slope) - needed_n("2,000 kg", Footing.GRAVEL)
    assert added_n / (2000 * G) == printed(part)


# [mire] times the weight; [tips] the civil scale stops at a half
@pytest.mark.printed("Winch seller's page on mud depth")
@each(("footing", "tons"), [(Footing.WHEEL_DEEP_MUD, "2"), (Footing.SILL_DEEP_MUD, "4"), (Footing.CAB_DEEP_MUD, "6")])
def test_the_armys_mire_scale_for_a_two_tonne_vehicle_is_the_default(footing: Footing, tons: str) -> None:
    assert needed_n("2,000 kg", footing, "military") / TONNE_FORCE == printed(tons)
    assert needed_n("2,000 kg", footing) / TONNE_FORCE == printed(tons)


@pytest.mark.printed("Winching tips of a winch maker")
@pytest.mark.printed("Winch seller's page on mud depth")
@each(("deep", "times"), [(Footing.WHEEL_DEEP_MUD, 2), (Footing.SILL_DEEP_MUD, 4)])
def test_for_one_bogging_the_civil_and_the_army_figures_differ_by_two_to_four(deep: Footing, times: int) -> None:
    civil_n = needed_n("2,000 kg", Footing.BOG, "civil")
    assert needed_n("2,000 kg", deep, "military") / civil_n == pytest.approx(times)


# [tips] 0.145, [theory] 1/7, [tow] 0.33 for grass: all are offered, the largest stands
@pytest.mark.printed("Winching tips of a winch maker")
@pytest.mark.printed("Winch theory page")
@pytest.mark.printed("Tow trade scale")
def test_every_scale_that_names_the_ground_is_offered_and_the_largest_stands() -> None:
    load = check(single_line(Conditions(bogged_in=Footing.GRASS))).load
    offered = sorted(asked_n / (3000 * G) for _, asked_n in load.scales)
    assert offered == pytest.approx([1 / 7, 0.145, 0.33])
    assert load.needed_n == pytest.approx(0.33 * 3000 * G)
