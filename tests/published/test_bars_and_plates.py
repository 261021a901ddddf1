"""A round bar and a plate with a hole, against an independent section program (sectionproperties 3.10.2).

Computed apart from this program; it cuts a circle into 512 chords.
"""

import pytest

from inspector.mechanics import plate, sections, tube_faces
from tests.each import each


@pytest.mark.printed(
    "sectionproperties 3.10.2", "sections.round_inertia_m4", "sections.round_plastic_modulus_m3", values=2
)
def test_a_round_bar_of_22_mm() -> None:
    assert sections.round_inertia_m4(0.022) * 1e12 == pytest.approx(11498.44, rel=1e-4)
    assert sections.round_plastic_modulus_m3(0.022) * 1e9 == pytest.approx(1774.60, rel=1e-4)


@pytest.mark.printed(
    "sectionproperties 3.10.2",
    "plate.plate_net_inertia_m4",
    "plate.plate_net_modulus_m3",
    "plate.plate_net_area_m2",
    values=2,
)
def test_a_plate_of_60_by_10_mm_across_its_hole() -> None:
    assert plate.plate_net_area_m2(0.060, 0.010, 0.0159) * 1e6 == pytest.approx(441.0)
    assert plate.plate_net_inertia_m4(0.060, 0.010, 0.0159) * 1e12 == pytest.approx(176650.27, rel=1e-7)
    assert plate.plate_net_modulus_m3(0.060, 0.010, 0.0159) * 1e9 == pytest.approx(176650.27 / 30, rel=1e-7)


# B, H, ro, sides, top, bottom in mm; plastic modulus mm3
ONE_FACE = [
    ((60, 60, 8, 4, 4, 2), 14151.48),
    ((60, 60, 8, 4, 4, 1.5), 13226.86),
    ((50, 50, 10, 5, 5, 2.2), 10584.65),
    ((50, 100, 8, 4, 4, 2), 29309.82),
]


@pytest.mark.printed("sectionproperties 3.10.2", "tube_faces.faced_tube_plastic_modulus_m3")
@each(("walls", "plastic"), ONE_FACE)
def test_the_plastic_modulus_of_a_tube_with_one_thin_face(walls: tuple[float, ...], plastic: float) -> None:
    """The program's own search for the axis is good to a few parts in ten thousand."""
    width, height, radius, sides, top, bottom = (length / 1e3 for length in walls)
    found = tube_faces.faced_tube_plastic_modulus_m3(width, height, radius, sides, top, bottom)
    assert found * 1e9 == pytest.approx(plastic, rel=5e-4)
