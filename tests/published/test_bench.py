"""The trainer's bench against print: the same band of strap strengths as its source states."""

import pytest

from inspector.gear.bench import Given
from inspector.rulebook.bench.work import work_topic
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, System, read
from tests.each import each


@pytest.mark.printed("F2017L01560 section 8", "fibre.strap_band_ratio")
@each(("gvm_t", "least_t", "most_t"), [(1.9, 3.8, 5.7), (2.8, 5.6, 8.4), (4.5, 9.0, 13.5)])
def test_the_bench_calls_the_printed_band_suited_and_what_lies_beyond_not(
    rules: Rulebook, gvm_t: float, least_t: float, most_t: float
) -> None:
    mass = Given("mass", read(f"{gvm_t} t", Dimension.MASS, field="mass"))

    def said(strength_t: float) -> str:
        strength = Given("strength", read(f"{strength_t:.2f} t", Dimension.FORCE, field="strength"))
        return work_topic("strap", [mass, strength], rules, System.METRIC).means

    assert "It suits" in said(least_t) and "It suits" in said(most_t)
    assert "too weak" in said(least_t - 0.05) and "too strong" in said(most_t + 0.05)
