"""Block loads, side pull on shackles, sling legs and wet nylon, against figures in print.

Sources: [blocks] block load tables as three makers print them, some entries cut off and not rounded; one of the three
prints 1.98 at 10 degrees, a fourth 1.95 at 30; [figure] WAC 296-155-33905 figure 17, the same figure as in ASME B30.26,
for the angles of side pull; [sheets] five trade sheets for the shares 70 % at 45 degrees and 50 % at 90 degrees (that
each holds for a whole step of the figure is from memory); [legs] sling leg factors by angle from the horizontal, as a
sling catalogue prints them, last digit cut off at 40 degrees and rounded up at 65; [UFC] UFC 4-159-03 (Moorings, 2005)
table 6-8; [TB] TB 55-1900-232-10 table 5-4 note 4; [spec] RR-C-271D minimum ultimate loads, quoted in a city utility's
material standard 6966.15.
"""

import math

import pytest

from inspector.mechanics import bridle, fibre, rating, tackle
from tests.each import each
from tests.printed import printed

POUND_FORCE_N = 4.4482216152605

# [blocks] degrees between the two lines, load per line pull
BLOCK_TABLE = [
    *((0, "2.00"), (10, "1.99"), (20, "1.97"), (30, "1.93"), (40, "1.87"), (45, "1.84"), (50, "1.81"), (60, "1.73")),
    *((70, "1.64"), (80, "1.53"), (90, "1.41"), (100, "1.29"), (110, "1.15"), (120, "1.00"), (130, "0.84")),
    *((135, "0.76"), (140, "0.68"), (150, "0.52"), (160, "0.35"), (170, "0.17"), (180, "0.00")),
]


@pytest.mark.printed("Block load tables of three makers", "rating.block_load_factor", "tackle.block_load_n")
@each(("degrees", "factor"), BLOCK_TABLE)
def test_block_loads_as_tabled(degrees: float, factor: str) -> None:
    assert rating.block_load_factor(math.radians(degrees)) == printed(factor, cut_off=True)
    assert tackle.block_load_n(1.0, math.radians(degrees)) == printed(factor, cut_off=True)


@pytest.mark.printed("Block load tables of three makers", "rating.block_load_factor", values=2)
def test_two_misprints_of_block_tables_are_not_followed() -> None:
    assert rating.block_load_factor(math.radians(10)) != printed("1.98", cut_off=True)
    assert rating.block_load_factor(math.radians(30)) != printed("1.95", cut_off=True)


@pytest.mark.printed("Block load table of a fourth maker", "rating.block_load_factor")
def test_the_fourth_table_rounds_at_45_degrees() -> None:
    assert rating.block_load_factor(math.radians(45)) == printed("1.85")


# [blocks] worked examples for a pull of 1,000 lb: the table's factor times the pull, so the last digits are the table's
@pytest.mark.printed("Block load tables of three makers", "tackle.block_load_n")
@each(("degrees", "load_lb"), [(50, 1810), (135, 760)])
def test_block_load_of_a_thousand_pound_pull(degrees: float, load_lb: float) -> None:
    assert tackle.block_load_n(1000, math.radians(degrees)) / 1000 == printed(f"{load_lb / 1000:.2f}", cut_off=True)


# [figure] in line 0-5, 6-45, 46-90; [sheets] 100, 70 and 50 %. What lies between 5 and 6 goes to the stricter step
SIDE_STEPS = [(0, 1.00), (5, 1.00), (5.5, 0.70), (6, 0.70), (45, 0.70), (45.5, 0.50), (46, 0.50), (90, 0.50)]


@pytest.mark.printed("WAC 296-155-33905 figure 17 and trade sheets", "rating.side_load_factor")
@each(("degrees", "share"), SIDE_STEPS)
def test_share_of_a_shackle_left_under_side_pull(degrees: float, share: float) -> None:
    assert rating.side_load_factor(math.radians(degrees)) == share


@pytest.mark.printed("WAC 296-155-33905 figure 17 and trade sheets", "rating.side_load_factor")
def test_no_side_pull_above_ninety_degrees() -> None:
    # [figure] over 90 degrees not unless the maker or a qualified person allows it
    with pytest.raises(ValueError, match="angle_rad"):
        rating.side_load_factor(math.radians(91))


# [legs] degrees from the horizontal, tension of a leg against an upright one; 60 degrees is 1.154 in another
LEG_TABLE = [
    *((90, "1.000"), (85, "1.004"), (80, "1.015"), (75, "1.035"), (70, "1.064"), (65, "1.104"), (60, "1.155")),
    *((55, "1.221"), (50, "1.305"), (45, "1.414"), (40, "1.555"), (30, "2.000")),
]


@pytest.mark.printed("Sling tension factors of a catalogue", "rating.bridle_leg_factor", "bridle.bridle_leg_n")
@each(("degrees", "factor"), LEG_TABLE)
def test_sling_legs_as_tabled(degrees: float, factor: str) -> None:
    included_rad = math.radians(180 - 2 * degrees)
    assert 2 * rating.bridle_leg_factor(included_rad) == printed(factor, cut_off=True)
    assert bridle.bridle_leg_n(2.0, included_rad) == printed(factor, cut_off=True)


@pytest.mark.printed("Sling tension factors of a catalogue", "rating.bridle_leg_factor")
def test_the_catalogues_slip_at_35_degrees_is_not_followed() -> None:
    assert 2 * rating.bridle_leg_factor(math.radians(110)) != printed("1.742", cut_off=True)


@pytest.mark.printed("UFC 4-159-03 table 6-8", "fibre.wet_nylon_strength_n")
@pytest.mark.printed("TB 55-1900-232-10 table 5-4", "fibre.wet_nylon_strength_n")
def test_wet_nylon_loses_fifteen_percent() -> None:
    assert 1 - fibre.wet_nylon_strength_n(100e3) / 100e3 == printed("0.15")


# [spec] grade A: short tons at factor 5, minimum ultimate in lbf
@pytest.mark.printed("RR-C-271D ultimate loads", "rating.ultimate_n")
@each(("short_tons", "ultimate_lbf"), [(2, "20000"), (3.25, "32500"), (4.75, "47500")])
def test_shackle_ultimate_loads_as_specified(short_tons: float, ultimate_lbf: str) -> None:
    ultimate_n = rating.ultimate_n(short_tons * 2000 * POUND_FORCE_N, 5)
    assert ultimate_n / POUND_FORCE_N == printed(ultimate_lbf)
