"""Pins after EN 1993-1-8:2005 Table 3.10, against figures printed elsewhere.

Sources: [chart] Brandenburg Bautechnisches Prüfamt, Tipp 22/05 (charts for pins, read through a repository of worked
checks); [paper] Conde, da Silva, Tankova, Simões, Abecasis, Journal of Constructional Steel Research 201 (2023) 107752
(the counter-example read through the same repository). Tables marked "calculated here" have no printed counterpart:
they were worked out apart from this program. Tolerance: half a unit of the last printed digit, and where the input is
itself printed in round figures, what that rounding can do.
"""

import pytest

from inspector.mechanics import pin_service, shear
from tests.each import each
from tests.printed import printed

MPA, MM, KN = 1e6, 1e-3, 1e3
KSI_IN_MPA = 6.894757


# [chart] shear of one plane, fup 490 MPa, gM2 1.25: d in mm, Fv,Rd in kN
@pytest.mark.printed(
    "Brandenburg Bautechnisches Prüfamt, Tipp 22/05", "shear.pin_shear_per_plane_n", "shear.pin_area_m2"
)
@each(("d", "shear_kn"), [(16, "47.29"), (20, "73.89"), (24, "106.40")])
def test_shear_of_one_plane_as_charted(d: float, shear_kn: str) -> None:
    assert shear.pin_shear_per_plane_n(d * MM, 490 * MPA) / KN == printed(shear_kn)


# [chart] bearing Fb,Rd / t in kN/mm and bending MRd in kN m: d in mm, fy in MPa
CHARTED = [(24, 355, "12.78", "0.723"), (20, 355, "10.65", "0.418"), (24, 235, "8.46", "0.478")]


@pytest.mark.printed(
    "Brandenburg Bautechnisches Prüfamt, Tipp 22/05", "shear.pin_bearing_n", "shear.pin_moment_resistance_n_m", values=2
)
@each(("d", "fy", "bearing_kn", "moment_kn_m"), CHARTED)
def test_bearing_and_bending_as_charted(d: float, fy: float, bearing_kn: str, moment_kn_m: str) -> None:
    assert shear.pin_bearing_n(1 * MM, d * MM, fy * MPA, 1) / KN == printed(bearing_kn)
    assert shear.pin_moment_resistance_n_m(d * MM, fy * MPA) / 1e3 == printed(moment_kn_m)


@pytest.mark.printed("Brandenburg Bautechnisches Prüfamt, Tipp 22/05", "shear.bearing_wall_needed_m")
def test_the_wall_the_chart_asks_for() -> None:
    # [chart] 12.78 kN per mm of one wall: 25.56 kN on two walls need 1 mm each
    assert shear.bearing_wall_needed_m(25.56 * KN, 24 * MM, 355 * MPA, 2) / MM == printed("1.00")


@pytest.mark.printed(
    "Conde et al., J. Constr. Steel Research 201 (2023) 107752",
    "shear.pin_lever_m",
    "shear.pin_bending_pull_n",
    "shear.pin_moment_n_m",
    values=3,
)
def test_the_counter_example_where_bending_and_not_shear_governs() -> None:
    # [paper] d 16, fyp 355, fup 510, a 8, b 12, c 5: 49.2 kN a plane, 214 N m, 35.7 kN by bending
    moment_n_m = shear.pin_moment_resistance_n_m(16 * MM, 355 * MPA)
    lever_m = shear.pin_lever_m(12 * MM, 5 * MM, 8 * MM)
    assert shear.pin_shear_per_plane_n(16 * MM, 510 * MPA) / KN == printed("49.2")
    assert moment_n_m == printed("214")
    assert shear.pin_bending_pull_n(lever_m, moment_n_m) / KN == printed("35.7")
    assert shear.pin_moment_n_m(35.7 * KN, 12 * MM, 5 * MM, 8 * MM) == printed("214")


# [paper] tested pins: d (printed to 0.1 mm), fup, gM2, double shear in kN
@pytest.mark.printed(
    "Conde et al., J. Constr. Steel Research 201 (2023) 107752", "shear.pin_shear_n", "shear.shear_plane_stress_pa"
)
@each(("d", "fu", "gamma", "double_kn"), [(35.8, 670.84, 1.0, 808.1), (19.8, 777.65, 1.25, 229.4)])
def test_double_shear_of_the_tested_pins(d: float, fu: float, gamma: float, double_kn: float) -> None:
    rounding = (1 + 0.05 / d) ** 2 - 1
    found_kn = shear.pin_shear_n(d * MM, fu * MPA, 2, gamma_m2_factor=gamma) / KN
    assert found_kn == pytest.approx(double_kn, rel=rounding)
    stress_pa = shear.shear_plane_stress_pa(double_kn * KN, d * MM, 2)
    assert stress_pa == pytest.approx(0.6 * fu * MPA / gamma, rel=rounding)


@pytest.mark.printed("Conde et al., J. Constr. Steel Research 201 (2023) 107752", "shear.pin_bearing_n")
def test_bearing_of_the_tested_pin_in_two_lugs() -> None:
    # [paper] d 35.8 of fyp 321.16 in two 10.1 mm lugs of fy 395.27 (the lower counts): 347.9 kN, d and t to 0.1 mm
    rounding = (1 + 0.05 / 35.8) * (1 + 0.05 / 10.1) - 1
    found_kn = shear.pin_bearing_n(10.1 * MM, 35.8 * MM, 321.16 * MPA, 2) / KN
    assert found_kn == pytest.approx(347.9, rel=rounding)


# Calculated here: 15.875 mm (5/8 in) pin, 60 x 60 x 4 receiver, solid 50 mm insert, 1 mm gaps, gM2 1.25
# (the last three of SAE J429 grade 2, 5 and 8)
# fy MPa, fu MPa, one plane kN, double kN, MRd N m, F by bending kN, F by both kN
HITCH_PINS = [
    (235, 360, "34.2", "68.4", "138", "17.9", "17.3"),
    (355, 510, "48.5", "96.9", "209", "27.0", "26.0"),
    (240, 400, "38.0", "76.0", "141", "18.2", "17.7"),
    (640, 800, "76.0", "152.0", "377", "48.7", "46.3"),
    (900, 1000, "95.0", "190.0", "530", "68.4", "64.4"),
    (57 * KSI_IN_MPA, 74 * KSI_IN_MPA, "48.5", "96.9", "232", "29.9", "28.6"),
    (92 * KSI_IN_MPA, 120 * KSI_IN_MPA, "78.6", "157.2", "374", "48.2", "46.1"),
    (130 * KSI_IN_MPA, 150 * KSI_IN_MPA, "98.3", "196.5", "528", "68.1", "64.4"),
]


@each(("fy", "fu", "single", "double", "moment", "bending", "both"), HITCH_PINS)
def test_a_hitch_pin_as_calculated_here(
    fy: float, fu: float, single: str, double: str, moment: str, bending: str, both: str
) -> None:
    pin_m, lever_m = 15.875 * MM, shear.pin_lever_m(50 * MM, 1 * MM, 4 * MM)
    moment_n_m = shear.pin_moment_resistance_n_m(pin_m, fy * MPA)
    plane_n = shear.pin_shear_per_plane_n(pin_m, fu * MPA)
    assert shear.pin_shear_n(pin_m, fu * MPA, 1) / KN == printed(single)
    assert shear.pin_shear_n(pin_m, fu * MPA, 2) / KN == printed(double)
    assert moment_n_m == printed(moment)
    assert shear.pin_bending_pull_n(lever_m, moment_n_m) / KN == printed(bending)
    assert shear.pin_combined_pull_n(lever_m, moment_n_m, plane_n) / KN == printed(both)


def test_the_area_of_a_hitch_pin_as_calculated_here() -> None:
    assert shear.pin_area_m2(15.875 * MM) * 1e6 == printed("197.9")


# Calculated here: bearing of one receiver wall under a 15.9 mm pin: t mm, kN at fy 235, 275, 355
WALLS = [(4.0, "22.4", "26.2", "33.9"), (3.0, "16.8", "19.7", "25.4"), (1.5, "8.4", "9.8", "12.7")]


@each(("t", "s235", "s275", "s355"), WALLS)
def test_bearing_of_a_receiver_wall_as_calculated_here(t: float, s235: str, s275: str, s355: str) -> None:
    for fy, bearing_kn in ((235, s235), (275, s275), (355, s355)):
        assert shear.pin_bearing_n(t * MM, 15.9 * MM, fy * MPA, 1) / KN == printed(bearing_kn)


# [paper] P1: d 35.8, 321.16/670.84, lugs 2 x 10.1, middle 15, gap 2, partial factors 1: 358.4 kN by bending and shear
@pytest.mark.printed(
    "Conde et al., J. Constr. Steel Research 201 (2023) 107752",
    "shear.pin_combined_pull_n",
    "shear.pin_utilisation_ratio",
    values=2,
)
@each(
    ("d", "fy", "fu", "gamma", "combined_kn"), [(35.8, 321.16, 670.84, 1.0, 358.4), (19.8, 457.06, 777.65, 1.25, 88.9)]
)
def test_bending_and_shear_together_of_the_tested_pins(
    d: float, fy: float, fu: float, gamma: float, combined_kn: float
) -> None:
    """Sizes are printed to 0.1 mm; the recomputed figure is 0.5 % off, which that rounding of d^3 can do."""
    rounding = (1 + 0.05 / d) ** 3 - 1 + 0.002
    lever_m = shear.pin_lever_m(15 * MM, 2 * MM, 10.1 * MM)
    moment_n_m = shear.pin_moment_resistance_n_m(d * MM, fy * MPA)
    plane_n = shear.pin_shear_per_plane_n(d * MM, fu * MPA, gamma)
    assert shear.pin_combined_pull_n(lever_m, moment_n_m, plane_n) / KN == pytest.approx(combined_kn, rel=rounding)
    pull_n = combined_kn * KN
    used = shear.pin_utilisation_ratio(pull_n * lever_m, moment_n_m, pull_n / 2, plane_n)
    assert used == pytest.approx(1.0, rel=2 * rounding)


@pytest.mark.printed("EN 1993-1-8:2005 Table 3.10", "pin_service.pin_contact_pa")
def test_the_constant_of_contact_stress_is_that_of_the_table() -> None:
    """0.591: the stress for E (d0 - d) F / (d^2 t) of one."""
    one = pin_service.pin_contact_pa(1 / pin_service.STEEL_MODULUS_PA, 1.0, 2.0, 1.0)
    assert one == printed("0.591")


@pytest.mark.printed("anastruct 1.7.0", "shear.pin_moment_n_m")
def test_the_pin_as_a_beam() -> None:
    """Computed apart from this program: 7.747 N m for each kN, pull spread over the middle plate, 50 x 1 x 4 mm."""
    assert shear.pin_moment_n_m(1e3, 0.050, 0.001, 0.004) == pytest.approx(7.747, abs=0.004)
