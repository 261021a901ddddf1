"""The kinetic pull in general: an own integration of the motion, the safe bound, limits and directions."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.mechanics import snatch, snatch_motion, snatch_peaks, strap_stiffness
from tests.each import each

KGF = 9.80665
drives_n = st.floats(0.0, 30e3)
resistances_n = st.floats(0.0, 120e3)
stiffnesses = st.floats(5e3, 300e3)
masses_kg = st.floats(800.0, 8000.0)
speeds = st.floats(0.05, 8.0)
State = tuple[float, float, float, float]


def moved(state: State, rates: State, step: float) -> State:
    return tuple(one + rate * step for one, rate in zip(state, rates, strict=True))  # type: ignore[return-value]


def run(towing_kg: float, bogged_kg: float, stiffness: float, speed: float, ground_n: float, drive_n: float) -> State:
    """Peak, time, stretch, speed by Runge-Kutta 4; the bogged vehicle stands until the strap outpulls the ground."""

    def rates(state: State) -> State:
        pull_n = stiffness * (state[0] - state[2])
        return state[1], (drive_n - pull_n) / towing_kg, state[3], max(pull_n - ground_n, 0.0) / bogged_kg

    state, time_s, step = (0.0, speed, 0.0, 0.0), 0.0, 1e-4
    while state[1] > state[3]:
        before, first = state, rates(state)
        second = rates(moved(before, first, step / 2))
        third = rates(moved(before, second, step / 2))
        fourth = rates(moved(before, third, step))
        mean = tuple((a + 2 * b + 2 * c + d) / 6 for a, b, c, d in zip(first, second, third, fourth, strict=True))
        state, time_s = moved(before, mean, step), time_s + step  # type: ignore[arg-type]
    stretch_m = state[0] - state[2]
    return stiffness * stretch_m, time_s, stretch_m, state[3]


# towing kg, bogged kg, N/m, km/h, resistance N, drive N
CASES = [
    (2500, 1e9, 43585, 10, 1e9, 0),
    (2500, 2500, 43585, 10, 0, 0),
    (2800, 3000, 39227, 12, 15e3, 0),
    (2800, 3000, 39227, 12, 15e3, 8e3),
    (2000, 3000, 43585, 8, 60e3, 0),
    (3500, 1800, 29060, 6, 9e3, 12e3),
]


@each(("towing_kg", "bogged_kg", "stiffness", "kmh", "ground_n", "drive_n"), CASES)
def test_an_own_integration_reaches_the_same_peak(
    towing_kg: float, bogged_kg: float, stiffness: float, kmh: float, ground_n: float, drive_n: float
) -> None:
    peak_n, time_s, stretch_m, speed = run(towing_kg, bogged_kg, stiffness, kmh / 3.6, ground_n, drive_n)
    pull = (drive_n, ground_n, stiffness, towing_kg, bogged_kg, kmh / 3.6)
    assert snatch_peaks.snatch_peak_n(*pull) == pytest.approx(peak_n, rel=1e-6)
    assert snatch_motion.peak_time_s(*pull) == pytest.approx(time_s, abs=1.1e-4)
    assert snatch_motion.stretch_m(snatch_peaks.snatch_peak_n(*pull), stiffness) == pytest.approx(stretch_m, rel=1e-6)
    assert snatch_motion.pulled_speed_m_per_s(*pull) == pytest.approx(speed, abs=1e-3)


@given(drives_n, resistances_n, stiffnesses, masses_kg, masses_kg, speeds)
def test_the_anchor_is_the_safe_bound(
    drive_n: float, ground_n: float, stiffness: float, towing_kg: float, bogged_kg: float, speed: float
) -> None:
    bound_n = snatch.anchored_peak_n(drive_n, stiffness, towing_kg, speed) * (1 + 1e-9)
    peak_n = snatch_peaks.snatch_peak_n(drive_n, ground_n, stiffness, towing_kg, bogged_kg, speed)
    assert snatch_peaks.free_peak_n(stiffness, towing_kg, bogged_kg, speed) <= peak_n * (1 + 1e-9)
    assert peak_n <= bound_n
    assert snatch_peaks.resisted_peak_n(ground_n, stiffness, towing_kg, bogged_kg, speed) <= peak_n * (1 + 1e-9)


@given(drives_n, resistances_n, stiffnesses, masses_kg, masses_kg, speeds, st.floats(1.0, 2.0))
def test_faster_or_with_more_drive_never_pulls_less(
    drive_n: float, ground_n: float, stiffness: float, towing_kg: float, bogged_kg: float, speed: float, more: float
) -> None:
    peak_n = snatch_peaks.snatch_peak_n(drive_n, ground_n, stiffness, towing_kg, bogged_kg, speed) * (1 - 1e-9)
    deed = snatch_peaks.snatch_peak_n
    assert deed(drive_n * more, ground_n, stiffness, towing_kg, bogged_kg, speed) >= peak_n
    assert deed(drive_n, ground_n, stiffness, towing_kg, bogged_kg, speed * more) >= peak_n
    assert deed(drive_n, ground_n * more, stiffness, towing_kg, bogged_kg, speed) >= peak_n
    assert deed(drive_n, ground_n, stiffness, towing_kg, bogged_kg * more, speed) >= peak_n


@given(stiffnesses, masses_kg, masses_kg, speeds)
def test_without_ground_and_drive_the_general_form_is_the_free_one(
    stiffness: float, towing_kg: float, bogged_kg: float, speed: float
) -> None:
    free_n = snatch_peaks.free_peak_n(stiffness, towing_kg, bogged_kg, speed)
    assert snatch_peaks.snatch_peak_n(0, 0, stiffness, towing_kg, bogged_kg, speed) == pytest.approx(free_n)
    assert snatch_peaks.resisted_peak_n(0, stiffness, towing_kg, bogged_kg, speed) == pytest.approx(free_n)
    assert snatch_peaks.free_peak_n(stiffness, bogged_kg, towing_kg, speed) == pytest.approx(free_n)
    heavy_n = snatch_peaks.free_peak_n(stiffness, towing_kg, 1e15, speed)
    assert heavy_n == pytest.approx(snatch.anchored_peak_n(0, stiffness, towing_kg, speed))


@given(resistances_n, stiffnesses, masses_kg, masses_kg, speeds)
def test_without_drive_the_general_form_is_the_resisted_one(
    ground_n: float, stiffness: float, towing_kg: float, bogged_kg: float, speed: float
) -> None:
    resisted_n = snatch_peaks.resisted_peak_n(ground_n, stiffness, towing_kg, bogged_kg, speed)
    general_n = snatch_peaks.snatch_peak_n(0, ground_n, stiffness, towing_kg, bogged_kg, speed)
    assert general_n == pytest.approx(resisted_n, rel=1e-7)


def test_equal_masses_pull_0_707_of_an_anchor() -> None:
    share = snatch_peaks.free_peak_n(40e3, 2500, 2500, 3) / snatch.anchored_peak_n(0, 40e3, 2500, 3)
    assert share == pytest.approx(math.sqrt(0.5))


def test_what_just_holds_does_not_move_and_the_peak_does_not_jump_there() -> None:
    held_n = snatch.anchored_peak_n(8e3, 40e3, 2500, 3)
    assert not snatch_peaks.is_pulled_loose(8e3, held_n, 40e3, 2500, 3)
    assert snatch_peaks.is_pulled_loose(8e3, held_n * 0.999, 40e3, 2500, 3)
    assert snatch_motion.pulled_speed_m_per_s(8e3, held_n, 40e3, 2500, 3000, 3) == 0
    for share in (1 - 1e-9, 1 + 1e-9):
        peak_n = snatch_peaks.snatch_peak_n(8e3, held_n * share, 40e3, 2500, 3000, 3)
        assert peak_n == pytest.approx(held_n, rel=1e-4)
    with pytest.raises(ValueError, match="nothing moves"):
        snatch_peaks.breakout_n(8e3, held_n, 40e3, 2500, 3)


@given(drives_n, stiffnesses, masses_kg, speeds)
def test_the_greatest_speed_leads_back_to_the_limit(
    drive_n: float, stiffness: float, mass_kg: float, speed: float
) -> None:
    peak_n = snatch.anchored_peak_n(drive_n, stiffness, mass_kg, speed)
    found = snatch_peaks.greatest_speed_m_per_s(peak_n, drive_n, stiffness, mass_kg)
    assert snatch.anchored_peak_n(drive_n, stiffness, mass_kg, found) == pytest.approx(peak_n, rel=1e-9)


def test_drive_alone_may_pass_the_limit() -> None:
    assert snatch_peaks.greatest_speed_m_per_s(16e3, 8e3, 40e3, 2500) == 0
    with pytest.raises(ValueError, match="limit_n"):
        snatch_peaks.greatest_speed_m_per_s(15.9e3, 8e3, 40e3, 2500)


# Calculated apart: strap over weight, stretch at break, km/h that breaks it, share at 10 km/h
@pytest.mark.parametrize(
    ("ratio", "stretch", "kmh", "share"),
    [(2, 0.12, 16.6, 0.604), (2.5, 0.20, 23.9, 0.418), (3, 0.25, 29.3, 0.341), (3, 0.30, 32.1, 0.312)],
)
def test_the_vehicles_mass_drops_out(ratio: float, stretch: float, kmh: float, share: float) -> None:
    assert snatch_peaks.breaking_speed_m_per_s(ratio, stretch, 9) * 3.6 == pytest.approx(kmh, abs=0.051)
    assert snatch_peaks.peak_share_ratio(ratio, stretch, 9, 10 / 3.6) == pytest.approx(share, abs=0.00051)


@pytest.mark.parametrize(("acceleration", "slack_m", "kmh"), [(2, 2, 10.2), (3, 3, 15.3), (0, 3, 0), (3, 0, 0)])
def test_the_speed_at_the_end_of_the_slack(acceleration: float, slack_m: float, kmh: float) -> None:
    assert snatch_peaks.slack_speed_m_per_s(acceleration, slack_m) * 3.6 == pytest.approx(kmh, abs=0.051)


def test_what_a_stiffer_strap_does() -> None:
    """One size up, 8 to 11 t: +17 %; worn from 20 to 12 %: +29 %; two in series: -29 %; stretch at half MBS: -29 %."""
    strap = snatch.strap_stiffness_n_per_m(8000 * KGF, 0.20, 9)
    others = [
        snatch.strap_stiffness_n_per_m(11000 * KGF, 0.20, 9),
        snatch.strap_stiffness_n_per_m(8000 * KGF, 0.12, 9),
        strap_stiffness.series_stiffness_n_per_m([strap, strap]),
        strap_stiffness.stiffness_at_share_n_per_m(8000 * KGF, 0.5, 0.20, 9),
    ]
    peak_n = snatch.anchored_peak_n(0, strap, 2500, 3)
    changes = [snatch.anchored_peak_n(0, other, 2500, 3) / peak_n - 1 for other in others]
    assert changes == pytest.approx([0.17, 0.29, -0.29, -0.29], abs=0.0051)


@given(st.lists(stiffnesses, min_size=1, max_size=5), stiffnesses)
def test_straps_end_to_end_are_softer_than_the_softest(straps: list[float], more: float) -> None:
    joined = strap_stiffness.series_stiffness_n_per_m(straps)
    assert joined <= min(straps) * (1 + 1e-12)
    assert strap_stiffness.series_stiffness_n_per_m([*straps, more]) < joined


@pytest.mark.parametrize("straps", [[], [0.0], [40e3, -1.0], [math.nan], [math.inf]])
def test_no_strap_or_none_that_holds_is_refused(straps: list[float]) -> None:
    with pytest.raises(ValueError, match="stiffnesses_n_per_m"):
        strap_stiffness.series_stiffness_n_per_m(straps)


def test_nylon_that_were_straight_would_stretch_28_percent() -> None:
    stiffness = strap_stiffness.axial_stiffness_n_per_m(strap_stiffness.nylon_axial_n(80e3), 9)
    assert snatch_motion.stretch_m(80e3, stiffness) / 9 == pytest.approx(0.282, abs=0.00051)


@given(st.floats(0, 0.25), st.floats(0, 0.02))
def test_light_damping_only_lowers_the_peak(damping: float, more: float) -> None:
    factor = snatch_motion.damped_peak_factor(damping)
    assert snatch_motion.damped_peak_factor(0) == 1
    assert 0.80 < snatch_motion.damped_peak_factor(min(damping + more, 0.25)) <= factor <= 1


def test_heavy_damping_lowers_nothing() -> None:
    assert snatch_motion.damped_peak_factor(0.5) == pytest.approx(1)
    with pytest.raises(ValueError, match="damping_ratio"):
        snatch_motion.damped_peak_factor(0.51)


def test_the_wave_is_far_shorter_than_the_pull() -> None:
    wave_s = snatch_motion.wave_time_s(2.5, 43585)
    shortest_s = min(snatch_motion.peak_time_s(t, r, k, m, b, v / 3.6) for m, b, k, v, r, t in CASES)
    assert wave_s < shortest_s / 30


def test_a_stretch_quoted_above_the_strength_is_refused() -> None:
    whole = strap_stiffness.stiffness_at_share_n_per_m(80e3, 1.0, 0.2, 9)
    assert whole == pytest.approx(snatch.strap_stiffness_n_per_m(80e3, 0.2, 9))
    with pytest.raises(ValueError, match="share_ratio"):
        strap_stiffness.stiffness_at_share_n_per_m(80e3, 1.01, 0.2, 9)
