"""Block loads, side pull on shackles, sling legs and wet nylon, against figures in print.

Sources: [blocks] block load tables as three makers print them, some entries cut off and not rounded, hence 0.01;
[figure] WAC 296-155-33905 figure 17, the same figure as in ASME B30.26, for the angles of side pull; [sheets] five
trade sheets for the shares 70 % at 45 degrees and 50 % at 90 degrees (that each holds for a whole step of the figure is
from memory); [legs] sling leg factors by angle from the horizontal, as in rigging tables; [UFC] UFC 4-159-03
(Moorings, 2005) table 6-8; [TB] TB 55-1900-232-10 table 5-4 note 4; [spec] RR-C-271D minimum ultimate loads, quoted in
a city utility's material standard 6966.15.
"""

import math

import pytest

from inspector.mechanics import fibre, rating

POUND_FORCE_N = 4.4482216152605

# [blocks] degrees between the two lines, load per line pull
BLOCK_TABLE = [
    *((0, 2.00), (10, 1.99), (20, 1.97), (30, 1.93), (40, 1.87), (45, 1.84), (50, 1.81), (60, 1.73), (70, 1.64)),
    *((80, 1.53), (90, 1.41), (100, 1.29), (110, 1.15), (120, 1.00), (130, 0.84), (135, 0.76), (140, 0.68)),
    *((150, 0.52), (160, 0.35), (170, 0.17), (180, 0.00)),
]


@pytest.mark.parametrize(("degrees", "factor"), BLOCK_TABLE)
def test_block_loads_as_tabled(degrees: float, factor: float) -> None:
    assert rating.block_load_factor(math.radians(degrees)) == pytest.approx(factor, abs=0.01)


# [blocks] worked examples for a pull of 1,000 lb; tolerance 0.01 of the pull, as in the table
@pytest.mark.parametrize(("degrees", "load_lb"), [(50, 1810), (135, 760)])
def test_block_load_of_a_thousand_pound_pull(degrees: float, load_lb: float) -> None:
    assert 1000 * rating.block_load_factor(math.radians(degrees)) == pytest.approx(load_lb, abs=10)


# [figure] in line 0-5, 6-45, 46-90; [sheets] 100, 70 and 50 %. What lies between 5 and 6 goes to the stricter step
SIDE_STEPS = [(0, 1.00), (5, 1.00), (5.5, 0.70), (6, 0.70), (45, 0.70), (45.5, 0.50), (46, 0.50), (90, 0.50)]


@pytest.mark.parametrize(("degrees", "share"), SIDE_STEPS)
def test_share_of_a_shackle_left_under_side_pull(degrees: float, share: float) -> None:
    assert rating.side_load_factor(math.radians(degrees)) == share


def test_no_side_pull_above_ninety_degrees() -> None:
    # [figure] over 90 degrees not unless the maker or a qualified person allows it
    with pytest.raises(ValueError, match="angle_rad"):
        rating.side_load_factor(math.radians(91))


# [legs] degrees from the horizontal, tension of a leg against an upright one; 60 degrees printed 1.155 and 1.154
@pytest.mark.parametrize(("degrees", "factor"), [(90, 1.000), (75, 1.035), (60, 1.155), (45, 1.414), (30, 2.000)])
def test_sling_legs_as_tabled(degrees: float, factor: float) -> None:
    included_rad = math.radians(180 - 2 * degrees)
    assert 2 * rating.bridle_leg_factor(included_rad) == pytest.approx(factor, abs=0.0005)


def test_wet_nylon_loses_fifteen_percent() -> None:
    # [UFC], [TB] 15 %
    assert fibre.wet_nylon_strength_n(100e3) == pytest.approx(85e3)


# [spec] grade A: short tons at factor 5, minimum ultimate in lbf
@pytest.mark.parametrize(("short_tons", "ultimate_lbf"), [(2, 20_000), (3.25, 32_500), (4.75, 47_500)])
def test_shackle_ultimate_loads_as_specified(short_tons: float, ultimate_lbf: float) -> None:
    ultimate_n = rating.ultimate_n(short_tons * 2000 * POUND_FORCE_N, 5)
    assert ultimate_n / POUND_FORCE_N == pytest.approx(ultimate_lbf, abs=0.5)
