"""What a gauge's reading is worth, many readings of one wall, and pits, against print and independent libraries.

Sources: [PORT] port inspection code, annex E: tolerance 0.2 mm; [ROUGH] J. JSNDI 53(5), p. 294: +0.6 to +2.2 mm;
[SOUND] NDT Handbook, volume 7, speeds of sound, quoted in a forum with the 2.9 % that follow; [COURSE] preparatory
notes for an ultrasonic examination: 1.3 mm (0.05 in); [GUM] JCGM 100:2008 table G.1, from memory: 1.960 for 95 %;
[579] API 579-1 part 4 in inspectors' notes, its worked readings from memory; [PITS] a public corrosion code's defaults;
[UNCERTAINTIES] computed with uncertainties 3.2.3, [NUMPY] with numpy 2.4.6, both apart from this program.
"""

import pytest

from inspector.mechanics import gauge, points
from inspector.mechanics.gauge import Face, GaugeClaim
from inspector.mechanics.points import PitScatter
from tests.each import each
from tests.printed import printed

# [579] readings in mm, from memory; and a rough wall made up here
WORKED = [13, 12, 11, 13, 10, 12, 11, 12, 13, 13, 11, 12, 12, 13, 13]
ROUGH = [4.1, 3.9, 4.0, 3.2, 3.6, 4.4, 4.2, 2.9, 3.8, 4.0, 3.7, 3.5, 4.1, 2.6, 3.9, 4.0]


@pytest.mark.printed("Port inspection code for steel structures, annex E", "gauge.gauge_accuracy_m")
def test_the_tolerance_of_the_port_code_stands_unless_another_is_named() -> None:
    assert gauge.gauge_accuracy_m() * 1e3 == printed("0.2")
    assert gauge.gauge_accuracy_m(GaugeClaim.TRADE) * 1e3 == printed("0.1")  # common practice, no source


@pytest.mark.printed("J. JSNDI 53(5), p. 294", "gauge.over_reading_m", "gauge.relied_reading_m")
@each(("face", "over_mm"), [(Face.ROUGH_LEAST, "0.6"), (Face.ROUGH, "2.2")])
def test_a_rough_face_reads_too_thick(face: Face, over_mm: str) -> None:
    over_m = gauge.over_reading_m(face)
    assert over_m * 1e3 == printed(over_mm)
    assert 5.0 - gauge.relied_reading_m(0.005, 0.0, over_m) * 1e3 == printed(over_mm)
    assert gauge.over_reading_m() == gauge.over_reading_m(Face.ROUGH)


@pytest.mark.printed("NDT Handbook, volume 7, quoted in a forum", "gauge.velocity_error_ratio")
def test_a_gauge_set_to_carbon_steel_on_stainless_steel() -> None:
    """[SOUND] means of 5830 to 5900 and of 5660 to 5740 m/s: 2.9 % too thick."""
    error = gauge.velocity_error_ratio((5830 + 5900) / 2, (5660 + 5740) / 2)
    assert error * 100 == printed("2.9")


@pytest.mark.printed("Preparatory notes for an ultrasonic examination", "gauge.is_below_probe")
def test_thin_walls_are_beyond_the_common_probe() -> None:
    """[COURSE] overstated below 1.3 mm (0.05 in)."""
    assert gauge.is_below_probe(0.0012999)
    assert gauge.is_below_probe(0.0499 * 0.0254)
    assert not gauge.is_below_probe(0.0013, least_m=0.0013)


@pytest.mark.printed("JCGM 100:2008 Table G.1, from memory", "gauge.rate_half_width_m_per_year")
def test_the_coverage_factor_of_95_percent() -> None:
    ratio = gauge.rate_half_width_m_per_year(1e-4, 2) / gauge.rate_error_m_per_year(1e-4, 2)
    assert ratio == printed("1.960")


# [UNCERTAINTIES] t1, t2, required (mm), years between, u: rate error (mm a year), life, its error (years)
@pytest.mark.printed("uncertainties 3.2.3", "gauge.rate_error_m_per_year", "gauge.life_error_years", values=2)
@each(
    ("earlier", "now", "required", "years", "accuracy", "rate_error", "life_error"),
    [
        (3.4, 3.0, 2.0, 2, 0.1, "0.070711", "2.150581"),
        (4.0, 3.1, 2.5, 5, 0.2, "0.056569", "1.994505"),
        (6.0, 5.0, 2.0, 10, 0.05, "0.007071", "2.500000"),
    ],
)
def test_errors_of_a_rate_and_of_a_life(
    earlier: float, now: float, required: float, years: float, accuracy: float, rate_error: str, life_error: str
) -> None:
    rate = (earlier - now) / years
    life = (now - required) / rate
    assert gauge.rate_error_m_per_year(accuracy * 1e-3, years) * 1e3 == printed(rate_error)
    assert gauge.life_error_years(life, rate * 1e-3, accuracy * 1e-3, years) == printed(life_error)


def test_a_gauges_error_is_as_large_as_a_coasts_first_year() -> None:
    # Calculated here: two readings, 0.1 mm each, 2 years apart
    assert gauge.rate_error_m_per_year(1e-4, 2) * 1e3 == printed(".071")
    assert gauge.rate_half_width_m_per_year(1e-4, 2) * 1e3 == printed(".139")
    # Calculated here: (3.0 - 0.1 - 2.0) / (0.2 + 0.0707) years instead of 5
    assert gauge.least_life_years(0.003, 0.002, 0.0002, 0.0001, 2) == printed("3.325")


@pytest.mark.printed("numpy 2.4.6", "points.point_spread", values=3)
@each(
    ("readings", "mean", "deviation", "variation"),
    [
        (WORKED, "12.066666666667", "0.961150104723", "0.079653323596"),
        (ROUGH, "3.74375", "0.485755425429", "0.129751031834"),
    ],
)
def test_spread_of_a_library(readings: list[float], mean: str, deviation: str, variation: str) -> None:
    spread = points.point_spread([one * 1e-3 for one in readings])
    assert spread.mean_m * 1e3 == printed(mean)
    assert spread.deviation_m * 1e3 == printed(deviation)
    assert spread.variation_ratio == printed(variation)
    assert (spread.least_m * 1e3, spread.reading_count) == pytest.approx((min(readings), len(readings)))


@pytest.mark.printed("API 579-1 part 4, inspectors' notes", "points.may_average", "points.point_spread", values=2)
def test_readings_may_be_averaged_up_to_ten_percent_of_spread_and_from_fifteen_on() -> None:
    """[579] at least 15 readings, spread not above 10 %; its worked readings pass, a grid near 14 % does not."""
    assert points.may_average([one * 1e-3 for one in WORKED])
    assert not points.may_average([one * 1e-3 for one in ROUGH])
    with pytest.raises(ValueError, match="15"):
        points.may_average([0.012] * 14)
    within, beyond = ([1.0 + step] * 8 + [1.0 - step] * 8 for step in (0.0968, 0.0969))  # COV .09997 and .10008
    assert points.may_average(within)
    assert not points.may_average(beyond)


@pytest.mark.printed("API 579-1 limiting thickness, second hand", "points.thickness_floor_m")
@each(("required", "nominal", "floor_mm"), [(8.0, 12.0, "4.0"), (3.0, 20.0, "4.0"), (3.0, 4.0, "2.5")])
def test_the_floor_is_the_largest_of_three(required: float, nominal: float, floor_mm: str) -> None:
    assert points.thickness_floor_m(required * 1e-3, nominal * 1e-3) * 1e3 == printed(floor_mm)


@pytest.mark.printed(
    "Public corrosion code, pitting factors", "points.deepest_pit_m", "points.pitting_factor", values=2
)
def test_pitting_factors() -> None:
    """[PITS] 3 in the middle, 5 for nine in ten; ASTM G46: deepest divided by average."""
    for scatter, factor in ((PitScatter.CENTRAL, "3"), (PitScatter.HIGH, "5")):
        deepest_m = points.deepest_pit_m(0.0003, scatter)
        assert points.pitting_factor(deepest_m, 0.0003) == printed(factor)
    assert points.deepest_pit_m(0.0003) == points.deepest_pit_m(0.0003, PitScatter.HIGH)
