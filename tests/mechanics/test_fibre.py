"""Webbing: water, sun, the worst of one group, and the strap against the vehicle."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import fibre
from tests.each import each

KGF = 9.80665
years_out = st.floats(0.0, 10.0)
losses = st.lists(st.floats(0.0, 1.0), min_size=1, max_size=4)


def test_nylon_loses_evenly_until_36_months_and_is_then_at_sixty_percent() -> None:
    # 1.7 % a month and 60 % at 36 months: a line derived from the upper end of the exposure tests, not published as one
    assert fibre.nylon_sun_loss_ratio(0) == 0
    assert fibre.nylon_sun_loss_ratio(1 / 12) == pytest.approx(0.017, abs=0.0005)
    assert fibre.nylon_sun_loss_ratio(1.5) == pytest.approx(0.30)
    assert fibre.nylon_sun_loss_ratio(3) == pytest.approx(0.60)
    assert fibre.nylon_sun_loss_ratio(7.5) == pytest.approx(0.60)


def test_polyester_loses_thirty_percent_in_its_first_year_and_no_more() -> None:
    assert fibre.polyester_sun_loss_ratio(0.5) == pytest.approx(0.15)
    assert fibre.polyester_sun_loss_ratio(1) == pytest.approx(0.30)
    assert fibre.polyester_sun_loss_ratio(5) == pytest.approx(0.30)


def test_age_and_sun_are_not_multiplied() -> None:
    # the product would leave 0.9 x 0.7 = 0.63
    assert fibre.strength_left_n(100e3, fibre.ageing_loss_ratio([0.10, 0.30])) == pytest.approx(70e3)


def test_an_8000_kg_strap_suits_a_vehicle_of_3200_kg() -> None:
    ratio = fibre.strap_band_ratio(8000 * KGF, 3200)
    assert ratio == pytest.approx(2.5)
    assert fibre.in_strap_band(ratio)


@pytest.mark.parametrize(("gvm_kg", "suits"), [(4001, False), (4000, True), (2666.667, True), (2666.0, False)])
def test_an_8000_kg_strap_suits_from_2_67_to_4_tonnes(gvm_kg: float, suits: bool) -> None:
    # calculated here from 2 to 3 times GVM
    assert fibre.in_strap_band(fibre.strap_band_ratio(8000 * KGF, gvm_kg)) is suits


@each("mass_kg", [1900.0, 2800.0, 3200.0, 4500.0, 1333.3])
@each("times", [2, 3])
def test_both_ends_of_the_band_are_in_it_whatever_the_rounding(mass_kg: float, times: int) -> None:
    assert fibre.in_strap_band(fibre.strap_band_ratio(mass_kg * times * KGF, mass_kg))


def test_a_loss_above_the_whole_is_refused() -> None:
    with pytest.raises(ValueError, match="loss_ratio"):
        fibre.ageing_loss_ratio([0.1, 1.01])
    with pytest.raises(ValueError, match="loss_ratio"):
        fibre.strength_left_n(80e3, 1.01)


def test_just_outside_the_band_is_outside() -> None:
    assert not fibre.in_strap_band(1.99999)
    assert not fibre.in_strap_band(3.00001)


@given(years_out, years_out)
def test_longer_in_the_sun_never_loses_less(one: float, other: float) -> None:
    few, many = sorted((one, other))
    assert fibre.nylon_sun_loss_ratio(few) <= fibre.nylon_sun_loss_ratio(many) <= 0.60
    assert fibre.polyester_sun_loss_ratio(few) <= fibre.polyester_sun_loss_ratio(many) <= 0.30


@given(losses, st.floats(0.0, 1.0))
def test_one_more_loss_never_lessens_the_worst(group: list[float], further: float) -> None:
    assert fibre.ageing_loss_ratio([*group, further]) >= fibre.ageing_loss_ratio(group)


@given(st.floats(0.0, 500e3), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_a_greater_loss_never_leaves_more(strength_n: float, one: float, other: float) -> None:
    small, great = sorted((one, other))
    assert 0 <= fibre.strength_left_n(strength_n, great) <= fibre.strength_left_n(strength_n, small) <= strength_n


@given(st.floats(0.0, 500e3), st.floats(500.0, 12e3), st.floats(500.0, 12e3))
def test_a_heavier_vehicle_never_raises_the_ratio(breaking_n: float, one_kg: float, other_kg: float) -> None:
    light_kg, heavy_kg = sorted((one_kg, other_kg))
    assert fibre.strap_band_ratio(breaking_n, heavy_kg) <= fibre.strap_band_ratio(breaking_n, light_kg)


@given(st.floats(0.0, 500e3))
def test_wet_nylon_is_never_stronger_than_dry(dry_n: float) -> None:
    assert fibre.wet_nylon_strength_n(dry_n) <= dry_n


@given(st.sampled_from(fibre.Fibre), years_out)
def test_a_fibre_without_a_figure_never_loses_less_in_the_sun_than_one_with(kind: fibre.Fibre, years: float) -> None:
    known = {fibre.Fibre.NYLON: fibre.nylon_sun_loss_ratio, fibre.Fibre.POLYESTER: fibre.polyester_sun_loss_ratio}
    loss = fibre.sunlight_loss_ratio(kind, years)
    if kind in known:
        assert loss == known[kind](years)
    else:
        assert loss >= max(of_known(years) for of_known in known.values())


@each("kind", [fibre.Fibre.POLYESTER, fibre.Fibre.HMPE, fibre.Fibre.POLYPROPYLENE])
@each("published", fibre.WetFigure)
def test_only_nylon_is_weaker_when_wet(kind: fibre.Fibre, published: fibre.WetFigure) -> None:
    assert fibre.wet_loss_ratio(kind, published) == 0
    assert fibre.wet_loss_ratio(fibre.Fibre.NYLON, published) > 0


def test_the_two_sums_of_wet_nylon_agree() -> None:
    left = fibre.strength_left_n(80e3, fibre.wet_loss_ratio(fibre.Fibre.NYLON))
    assert left == pytest.approx(fibre.wet_nylon_strength_n(80e3))


@given(st.floats(0.0, 500e3), st.floats(1.0, 500e3), st.floats(0.1, 10.0))
def test_what_a_sister_piece_kept_is_a_share_whatever_the_unit(measured: float, new: float, scale: float) -> None:
    share = fibre.residual_strength_ratio(measured, new)
    assert 0 <= share <= 1
    assert fibre.residual_strength_ratio(measured * scale, new * scale) == pytest.approx(share)


@pytest.mark.parametrize("word", ["cotton", "Nylon "])
def test_an_unknown_fibre_is_refused(word: str) -> None:
    with pytest.raises(ValueError, match=word):
        fibre.sunlight_loss_ratio(word, 1.0)  # type: ignore[arg-type]
