"""The guards before the sums: what they let through and what they refuse, with the argument's name in the message."""

import math

import pytest

from inspector.mechanics import checked


def test_positive_takes_small_figures_above_zero() -> None:
    checked.positive(wall_m=1e-12, pull_n=1)
    with pytest.raises(ValueError, match="wall_m"):
        checked.positive(wall_m=-1e-12, pull_n=1)


@pytest.mark.parametrize("value", [0.0, -0.001, math.nan, math.inf])
def test_positive_refuses_zero_negative_and_unreal_figures_by_name(value: float) -> None:
    with pytest.raises(ValueError, match="wall_m must be a finite number above zero"):
        checked.positive(pull_n=1.0, wall_m=value)


def test_at_least_takes_its_own_limit() -> None:
    checked.at_least(0, wall_m=0.0)
    with pytest.raises(ValueError, match="wall_m"):
        checked.at_least(0, wall_m=-1e-12)


@pytest.mark.parametrize("value", [0.999, -1.0, math.nan, math.inf])
def test_at_least_refuses_below_the_limit_and_unreal_figures(value: float) -> None:
    with pytest.raises(ValueError, match="design_factor must be finite and at least 1"):
        checked.at_least(1, design_factor=value)


def test_between_takes_both_ends() -> None:
    checked.between(0, 1, loss_ratio=0.0, other_ratio=1.0)
    with pytest.raises(ValueError, match="other_ratio"):
        checked.between(0, 1, loss_ratio=0.0, other_ratio=1.0 + 1e-12)


@pytest.mark.parametrize("value", [-1e-9, 1.000001, math.nan, math.inf])
def test_between_refuses_what_lies_outside(value: float) -> None:
    with pytest.raises(ValueError, match="loss_ratio must lie from 0 to 1"):
        checked.between(0, 1, loss_ratio=value)


@pytest.mark.parametrize("value", [0, -1, 1.5, math.nan, math.inf])
def test_whole_refuses_none_negative_and_parts(value: float) -> None:
    with pytest.raises(ValueError, match="plane_count must be a whole number"):
        checked.whole(plane_count=value)  # type: ignore[arg-type]


def test_whole_takes_one() -> None:
    checked.whole(plane_count=1)
    with pytest.raises(ValueError, match="plane_count"):
        checked.whole(plane_count=0)
