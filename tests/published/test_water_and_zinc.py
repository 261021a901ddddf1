"""Steel in water and earth, and galvanising, against tables in print.

Sources: [NA] UK National Annex to BS EN 1993-5:2007, table 4.1; [SEA] EN 1993-5:2007 table 4.2, sea rows, quoted in
public code; [FRESH] the fresh-water rows of that table, from memory; [LR] cold regions report LR-03-19 (2003);
[BS] BS 6349-1-4:2021 in public code; [TROPIC] Shiou Ting et al. 2013; [NAVY] US Navy P-1010; [ARMY] a web page on the
US Army Corps of Engineers; [WIND] offshore wind practice, from memory; [1461] ISO 1461:2009 in two copies, and AS/NZS
4680:2006 beside it; [14713] ISO 14713-1:2017 table 2, from memory.
"""

import math

import pytest

from inspector.mechanics import sea_zones, zinc
from inspector.mechanics.atmosphere import Corrosivity
from inspector.mechanics.sea_zones import Exposure, SplashRate
from tests.each import each
from tests.printed import printed

MIL_M = 25.4e-6
COLUMNS_YEARS = (5, 25, 50, 75, 100, 125)


def check_row(exposure: Exposure, row: str) -> None:
    for years, figure in zip(COLUMNS_YEARS, row.split(), strict=False):
        assert sea_zones.tabulated_loss_m(exposure, years) * 1e3 == printed(figure)


# [NA] mm by 5, 25, 50, 75, 100 and 125 years
@pytest.mark.printed("UK NA to BS EN 1993-5:2007 Table 4.1", "sea_zones.tabulated_loss_m", values=6)
@each(
    ("exposure", "row"),
    [
        (Exposure.NATURAL_SOIL, "0.00 0.30 0.60 0.90 1.20 1.50"),
        (Exposure.POLLUTED_SOIL, "0.15 0.75 1.50 2.25 3.00 3.75"),
        (Exposure.AGGRESSIVE_SOIL, "0.20 1.00 1.75 2.50 3.25 4.00"),
        (Exposure.LOOSE_FILL, "0.18 0.70 1.20 1.70 2.20 2.70"),
        (Exposure.AGGRESSIVE_FILL, "0.50 2.00 3.25 4.50 5.75 7.00"),
    ],
)
def test_losses_in_earth(exposure: Exposure, row: str) -> None:
    check_row(exposure, row)


# [SEA] mm by 5, 25, 50, 75 and 100 years
@pytest.mark.printed("EN 1993-5:2007 Table 4.2, sea rows", "sea_zones.tabulated_loss_m", values=5)
@each(
    ("exposure", "row"),
    [(Exposure.SPLASH, "0.55 1.90 3.75 5.60 7.50"), (Exposure.IMMERSED, "0.25 0.90 1.75 2.60 3.50")],
)
def test_losses_in_the_sea(exposure: Exposure, row: str) -> None:
    check_row(exposure, row)


# [FRESH] from memory
@pytest.mark.printed("EN 1993-5:2007 Table 4.2, fresh-water rows, from memory", "sea_zones.tabulated_loss_m", values=5)
@each(
    ("exposure", "row"),
    [(Exposure.FRESH_WATER, "0.15 0.55 0.90 1.15 1.40"), (Exposure.POLLUTED_WATER, "0.30 1.30 2.30 3.30 4.30")],
)
def test_losses_in_fresh_water(exposure: Exposure, row: str) -> None:
    check_row(exposure, row)


# Calculated here: straight lines between the columns
@each(
    ("exposure", "years", "loss_mm"),
    [
        (Exposure.SPLASH, 1, ".11"),
        (Exposure.SPLASH, 2, ".22"),
        (Exposure.SPLASH, 3, ".33"),
        (Exposure.SPLASH, 15, "1.225"),
        (Exposure.IMMERSED, 10, ".4125"),
    ],
)
def test_losses_between_the_columns_as_calculated_here(exposure: Exposure, years: float, loss_mm: str) -> None:
    assert sea_zones.tabulated_loss_m(exposure, years) * 1e3 == printed(loss_mm)


@pytest.mark.printed("LR-03-19 (2003) and BS 6349-1-4:2021, splash zone", "sea_zones.splash_rate_m_per_year", values=2)
def test_mean_splash_rates() -> None:
    """[LR] .075, [BS] .09 mm a year."""
    assert sea_zones.splash_rate_m_per_year(SplashRate.COLD_REGIONS) * 1e3 == printed("0.075")
    assert sea_zones.splash_rate_m_per_year(SplashRate.BS_MEAN) * 1e3 == printed("0.09")


@pytest.mark.printed("EN 1993-5:2007 Table 4.2, sea rows", "sea_zones.splash_rate_m_per_year", values=2)
def test_splash_rates_of_the_table() -> None:
    """[SEA] 0.55 mm in 5 years, 7.50 mm in 100."""
    assert sea_zones.splash_rate_m_per_year(SplashRate.EN_EARLY) * 5e3 == printed("0.55")
    assert sea_zones.splash_rate_m_per_year(SplashRate.EN_LATER) * 100e3 == printed("7.50")


@pytest.mark.printed("Shiou Ting et al. 2013", "sea_zones.splash_rate_m_per_year", values=2)
def test_tropical_splash_rates() -> None:
    """[TROPIC] 12 mm in 30 years; 0.20 mm a year proposed."""
    assert sea_zones.splash_rate_m_per_year(SplashRate.TROPICAL_ALLOWANCE) * 30e3 == printed("12")
    assert sea_zones.splash_rate_m_per_year(SplashRate.TROPICAL_PROPOSED) * 1e3 == printed("0.20")


@pytest.mark.printed("US Navy P-1010 corrosion case", "sea_zones.splash_rate_m_per_year")
def test_the_worst_rate_read_is_the_default() -> None:
    """[NAVY] .704 in to .500 in within 4 years; rounded to .01 mm a year."""
    assert sea_zones.splash_rate_m_per_year() * 1e3 == printed("1.30")


@pytest.mark.printed("US Army figure for sheet piles at sea, a web page", "sea_zones.splash_rate_m_per_year", values=2)
def test_the_army_range() -> None:
    """[ARMY] 2 to 10 mils a year, printed there as 0.05 to 0.25 mm a year."""
    assert sea_zones.splash_rate_m_per_year(SplashRate.MARINE_LOW) / MIL_M == printed("2")
    assert sea_zones.splash_rate_m_per_year(SplashRate.MARINE_HIGH) / MIL_M == printed("10")


@pytest.mark.printed("Offshore wind splash allowance, from memory", "sea_zones.splash_rate_m_per_year", values=2)
def test_offshore_allowances_from_memory() -> None:
    """[WIND] 0.30 temperate, 0.40 warm."""
    assert sea_zones.splash_rate_m_per_year(SplashRate.OFFSHORE_TEMPERATE) * 1e3 == printed("0.30")
    assert sea_zones.splash_rate_m_per_year(SplashRate.OFFSHORE_WARM) * 1e3 == printed("0.40")


# [1461] steel in mm, least local and least mean zinc in um
@pytest.mark.printed("ISO 1461:2009 Table 3", "zinc.least_local_zinc_m", "zinc.least_mean_zinc_m", values=2)
@each(
    ("steel_mm", "local_um", "mean_um"),
    [(8.0, "70", "85"), (6.0, "55", "70"), (4.0, "55", "70"), (3.0, "45", "55"), (2.0, "45", "55"), (1.0, "35", "45")],
)
def test_zinc_when_new(steel_mm: float, local_um: str, mean_um: str) -> None:
    assert zinc.least_local_zinc_m(steel_mm * 1e-3) * 1e6 == printed(local_um)
    assert zinc.least_mean_zinc_m(steel_mm * 1e-3) * 1e6 == printed(mean_um)


@pytest.mark.printed(
    "AS/NZS 4680:2006, a galvaniser's table", "zinc.least_local_zinc_m", "zinc.least_mean_zinc_m", values=2
)
def test_zinc_at_the_limit_where_two_standards_differ() -> None:
    """AS/NZS 4680 counts 1.5 mm with the thin steel (35/45), ISO 1461 with the next (45/55): the thinner stands."""
    assert zinc.least_local_zinc_m(0.0015) * 1e6 == printed("35")
    assert zinc.least_mean_zinc_m(0.0015) * 1e6 == printed("45")


# [14713] from memory: zinc in um, class, shortest and longest life in years
@pytest.mark.printed(
    "ISO 14713-1:2017 Table 2, from memory",
    "zinc.least_zinc_life_years",
    "zinc.most_zinc_life_years",
    "zinc.zinc_life_years",
    values=2,
)
@each(
    ("zinc_um", "category", "least", "most"),
    [
        (85, Corrosivity.C4, "20", "40"),
        (85, Corrosivity.C5, "10", "20"),
        (85, Corrosivity.CX, "3", "10"),
        (140, Corrosivity.C4, "33", "67"),
        (140, Corrosivity.C5, "17", "33"),
        (140, Corrosivity.CX, "6", "17"),
        (200, Corrosivity.C4, "48", "95"),
        (200, Corrosivity.C5, "24", "48"),
        (200, Corrosivity.CX, "8", "24"),
    ],
)
def test_lives_of_zinc(zinc_um: float, category: Corrosivity, least: str, most: str) -> None:
    assert zinc.least_zinc_life_years(zinc_um * 1e-6, category) == printed(least)
    assert zinc.most_zinc_life_years(zinc_um * 1e-6, category) == printed(most)


@pytest.mark.printed(
    "ISO 14713-1:2017 Table 2, from memory", "zinc.least_zinc_life_years", "zinc.most_zinc_life_years", values=2
)
@each(("zinc_um", "least"), [(85, "40"), (140, "67"), (200, "95")])
def test_lives_of_zinc_in_mild_air_are_over_a_hundred_years_at_best(zinc_um: float, least: str) -> None:
    assert zinc.least_zinc_life_years(zinc_um * 1e-6, Corrosivity.C3) == printed(least)
    assert 100 < zinc.most_zinc_life_years(zinc_um * 1e-6, Corrosivity.C3) < math.inf


# Calculated here: the least local zinc of a 4 mm tube, 55 um
@each(
    ("category", "least", "most"), [(Corrosivity.C4, "13", "26"), (Corrosivity.C5, "6.5", "13.1"), ("cx", "2.2", "6.5")]
)
def test_lives_of_a_tubes_zinc_as_calculated_here(category: str, least: str, most: str) -> None:
    assert zinc.least_zinc_life_years(55e-6, Corrosivity(category)) == printed(least)
    assert zinc.most_zinc_life_years(55e-6, Corrosivity(category)) == printed(most)
