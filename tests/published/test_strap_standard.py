"""Straps against the Consumer Goods (Motor Vehicle Recovery Straps) Safety Standard 2017, F2017L01560, section 8.

Breaking strength 2 to 3 times the GVM of the lighter vehicle. The windows below are those that the figures give:
1.9 t 3.8-5.7 t, 2.8 t 5.6-8.4 t, 3.2 t 6.4-9.6 t, 4.5 t 9.0-13.5 t; an 8 t strap suits 2.67-4.0 t, an 11 t strap
3.67-5.5 t (calculated from the standard's band).
"""

import pytest

from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.strap_band import SUITS, TOO_STRONG, TOO_WEAK, strap_band, strap_fit
from inspector.units import STANDARD_GRAVITY_M_PER_S2, Dimension, read
from tests.each import each

TONNE_FORCE_N = 1000 * STANDARD_GRAVITY_M_PER_S2


@pytest.mark.printed("F2017L01560 section 8", "fibre.strap_band_ratio", values=2)
@each(("gvm_t", "least_t", "most_t"), [(1.9, 3.8, 5.7), (2.8, 5.6, 8.4), (3.2, 6.4, 9.6), (4.5, 9.0, 13.5)])
def test_the_window_of_a_vehicle(rules: Rulebook, gvm_t: float, least_t: float, most_t: float) -> None:
    band = strap_band(rules, gvm_t * 1000)
    assert (band.least_n / TONNE_FORCE_N, band.most_n / TONNE_FORCE_N) == pytest.approx((least_t, most_t))


@each(("strap", "lightest_t", "heaviest_t"), [("8 t", 2.67, 4.0), ("11 t", 3.67, 5.5)])
def test_the_vehicles_of_a_strap(rules: Rulebook, strap: str, lightest_t: float, heaviest_t: float) -> None:
    strength = read(strap, Dimension.FORCE, field="r").si
    fits = [strap_fit(rules, gvm_t * 1000, strength) for gvm_t in (lightest_t, heaviest_t)]
    assert fits == [SUITS, SUITS]
    assert strap_fit(rules, (lightest_t - 0.02) * 1000, strength) == TOO_STRONG
    assert strap_fit(rules, (heaviest_t + 0.02) * 1000, strength) == TOO_WEAK
