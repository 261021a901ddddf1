"""Square hollow sections after the annex formulas of EN 10219-2, against published section tables.

Sources: [UK] UK section tables for cold-formed square hollow sections to EN 10219-2 (ro = 2t, ri = t); [AISC] AISC
shapes table, HSS with design wall (ro = 2t). Thinned tubes are "calculated here" with a general section program
that cuts arcs into chords: no table prints them. Tolerance: half a unit of the last printed digit; 0.05 % for that
program.
"""

import pytest

from inspector.mechanics import sections, tube_faces
from tests.each import each
from tests.printed import printed

INCH_M = 0.0254


# [UK] side mm, wall mm, A cm2, I cm4, Wel cm3
UK_TABLE = [
    (50, 3, "5.41", "19.5", "7.79"),
    (50, 4, "6.95", "23.7", "9.49"),
    (50, 5, "8.36", "27.0", "10.8"),
    (60, 3, "6.61", "35.1", "11.7"),
    (60, 4, "8.55", "43.6", "14.5"),
    (60, 5, "10.4", "50.5", "16.8"),
    (60, 6, "12.0", "56.1", "18.7"),
]


@pytest.mark.printed(
    "UK section tables, EN 10219-2",
    "sections.square_tube_area_m2",
    "sections.square_tube_inertia_m4",
    "sections.square_tube_modulus_m3",
    values=3,
)
@each(("side", "wall", "area", "inertia", "modulus"), UK_TABLE)
def test_cold_formed_tubes_as_tabled(side: float, wall: float, area: str, inertia: str, modulus: str) -> None:
    tube = (side / 1e3, wall / 1e3, 2 * wall / 1e3)
    assert sections.square_tube_area_m2(*tube) * 1e4 == printed(area)
    assert sections.square_tube_inertia_m4(*tube) * 1e8 == printed(inertia)
    assert sections.square_tube_modulus_m3(*tube) * 1e6 == printed(modulus)


@pytest.mark.printed(
    "AISC shapes table, HSS", "sections.square_tube_area_m2", "tube_faces.tube_plastic_modulus_m3", values=4
)
def test_the_american_tube_of_two_and_a_half_inches_as_tabled() -> None:
    # [AISC] HSS 2-1/2 x 2-1/2 x 1/4, design wall .233 in: A 1.97 in2, I 1.63 in4, S 1.30 in3
    tube = (2.5 * INCH_M, 0.233 * INCH_M, 2 * 0.233 * INCH_M)
    assert sections.square_tube_area_m2(*tube) / INCH_M**2 == printed("1.97")
    assert sections.square_tube_inertia_m4(*tube) / INCH_M**4 == printed("1.63")
    assert sections.square_tube_modulus_m3(*tube) / INCH_M**3 == printed("1.30")
    assert tube_faces.tube_plastic_modulus_m3(*tube) / INCH_M**3 == printed("1.63")


@pytest.mark.printed("misprinted section tables, 60x60x4", "sections.square_tube_inertia_m4", values=2)
def test_no_rounded_tube_passes_the_sharp_cornered_one() -> None:
    # Tables exist with 47.7 and 50.8 cm4 for 60 x 60 x 4; even sharp-cornered it has only 47.07 (calculated here)
    assert sections.square_tube_inertia_m4(0.060, 0.004, 0.0) * 1e8 == printed("47.07")
    assert sections.square_tube_inertia_m4(0.060, 0.004, 0.008) * 1e8 < 47.07


# Calculated here: tube thinned from inside, outer radius 8 mm kept: side mm, wall mm, A cm2, I cm4, Wel cm3
THINNED = [
    (50, 3.0, 5.305, 18.81, 7.526),
    (50, 2.0, 3.600, 13.25, 5.301),
    (50, 1.5, 2.723, 10.21, 4.086),
    (60, 3.0, 6.505, 34.20, 11.40),
    (60, 2.5, 5.460, 29.15, 9.718),
    (60, 2.0, 4.400, 23.86, 7.954),
    (60, 1.5, 3.323, 18.31, 6.102),
    (65, 2.0, 4.800, 30.81, 9.480),
    (65, 1.5, 3.623, 23.60, 7.260),
]


@pytest.mark.printed("sectionproperties 3.10.2", "sections.square_tube_area_m2", values=3)
@each(("side", "wall", "area", "inertia", "modulus"), THINNED)
def test_thinned_tubes_as_calculated_here(
    side: float, wall: float, area: float, inertia: float, modulus: float
) -> None:
    tube = (side / 1e3, wall / 1e3, 0.008)
    assert sections.square_tube_area_m2(*tube) * 1e4 == pytest.approx(area, rel=5e-4)
    assert sections.square_tube_inertia_m4(*tube) * 1e8 == pytest.approx(inertia, rel=5e-4)
    assert sections.square_tube_modulus_m3(*tube) * 1e6 == pytest.approx(modulus, rel=5e-4)


PLASTIC = [
    (50, 3, "9.39"),
    (50, 4, "11.7"),
    (50, 5, "13.7"),
    (60, 3, "14.0"),
    (60, 4, "17.6"),
    (60, 5, "20.9"),
    (60, 6, "23.7"),
]


@pytest.mark.printed("UK section tables, EN 10219-2", "tube_faces.tube_plastic_modulus_m3")
@each(("side", "wall", "plastic"), PLASTIC)
def test_plastic_moduli_as_tabled(side: float, wall: float, plastic: str) -> None:
    found = tube_faces.tube_plastic_modulus_m3(side / 1e3, wall / 1e3, 2 * wall / 1e3)
    assert found * 1e6 == printed(plastic)


# Computed apart from this program: B, H, r, sides, top, bottom in mm; A mm2, centroid over the bottom mm, I mm4
ONE_FACE = [
    ((60, 60, 8, 4, 4, 2), 737.042, 33.8098, 340282.0),
    ((60, 60, 8, 4, 4, 1.5), 711.042, 34.9821, 312580.7),
    ((50, 50, 10, 5, 5, 2.2), 702.128, 28.4136, 203145.3),
    ((50, 100, 8, 4, 4, 2), 997.042, 53.9597, 1112169.7),
]


@pytest.mark.printed(
    "sectionproperties 3.10.2",
    "tube_faces.faced_tube_area_m2",
    "tube_faces.faced_tube_centroid_m",
    "tube_faces.faced_tube_inertia_m4",
    "tube_faces.faced_tube_modulus_m3",
    values=4,
)
@each(("walls", "area", "centroid", "inertia"), ONE_FACE)
def test_a_tube_with_one_thin_face(walls: tuple[float, ...], area: float, centroid: float, inertia: float) -> None:
    """The program cuts arcs into 64 chords a quarter: 0.01 %."""
    width, height, radius, sides, top, bottom = (length / 1e3 for length in walls)
    given = (width, height, radius, sides, top, bottom)
    assert tube_faces.faced_tube_area_m2(*given) * 1e6 == pytest.approx(area, rel=1e-4)
    assert tube_faces.faced_tube_centroid_m(*given) * 1e3 == pytest.approx(centroid, rel=1e-4)
    assert tube_faces.faced_tube_inertia_m4(*given) * 1e12 == pytest.approx(inertia, rel=1e-4)
    farther = max(centroid, height * 1e3 - centroid)
    assert tube_faces.faced_tube_modulus_m3(*given) * 1e9 == pytest.approx(inertia / farther, rel=2e-4)
