"""A short run of the calibration with fixed seeds; `python tests/calibration/run.py` is the long one.

The bounds are the bars of the long run widened by chance: three standard errors of the number of cases counted here.
"""

import math
from collections import Counter
from pathlib import Path
from random import Random

import pytest

from inspector.gear.outcome import Outcome
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from tests.calibration import bands, simulate, world
from tests.calibration.world import LINEAR, POWER, Process

JUDGEMENTS, PIECES = 1200, 400
MOST_FALSE, LEAST_CLEAR = 0.001, 0.90
BAND, MOST_BELOW = (0.93, 0.97), 0.025
SEED = 20261125


def give(share: float, cases: int) -> float:
    """Three standard errors of a share among so many cases."""
    return 3 * math.sqrt(share * (1 - share) / cases)


@pytest.fixture(scope="module", params=[LINEAR, POWER], ids=lambda process: process.name)
def judged(request: pytest.FixtureRequest, rules: Rulebook) -> Counter[str]:
    process: Process = request.param
    return simulate.judged(process, SEED, JUDGEMENTS, rules)


def test_a_wall_too_thin_is_hardly_ever_fit_for_a_pull(judged: Counter[str]) -> None:
    cases = judged["pull below"]
    assert cases > 150
    assert judged["pull below, fit"] / cases <= MOST_FALSE + give(MOST_FALSE, cases)


def test_a_sound_wall_read_as_it_should_be_is_mostly_fit(judged: Counter[str]) -> None:
    cases = judged["pull clear by two"]
    assert cases > 90
    assert judged["pull clear by two, fit"] / cases >= LEAST_CLEAR - give(LEAST_CLEAR, cases)


def test_no_wall_is_ever_fit_for_a_pull_by_readings_of_a_member_alone(rules: Rulebook) -> None:
    rng, passed = Random(SEED), 0
    for _ in range(150):
        made = simulate.gear(rng, LINEAR, rules)
        alone = simulate.with_rounds(made, [simulate.by_a_member(one) for one in made.rounds])
        verdict = judge(simulate.dossier(alone, made.rounds[-1].day, made.rounds[-1].day), rules, "calibration")
        passed += any(one.purpose in simulate.PULLS and one.outcome in simulate.OPEN for one in verdict.by_purpose)
    assert passed == 0


def test_new_readings_lie_in_the_band_of_a_straight_line(rules: Rulebook) -> None:
    count = bands.tried(LINEAR, SEED, PIECES, rules)
    for name in ("today", "next reading"):
        cases = count[name]
        inside = 1 - (count[f"{name}, below"] + count[f"{name}, above"]) / cases
        assert cases > 300
        assert BAND[0] - give(0.95, cases) <= inside <= BAND[1] + give(0.95, cases)


def test_under_a_power_law_few_new_readings_fall_below_the_band(rules: Rulebook) -> None:
    count = bands.tried(POWER, SEED, PIECES, rules)
    for name in ("today", "next reading"):
        assert count[name] > 300
        assert count[f"{name}, below"] / count[name] <= MOST_BELOW + give(MOST_BELOW, count[name])


def test_what_the_world_asks_of_a_wall_is_what_the_judge_asks(rules: Rulebook) -> None:
    """Both reckon it by themselves; a difference would make every count above worthless."""
    rng = Random(SEED)
    for _ in range(60):
        made = simulate.gear(rng, LINEAR, rules)
        wall = judge(simulate.dossier(made, made.booked + 900, made.booked + 900), rules, "calibration").wall
        assert wall is not None
        assert wall.required_m * 1e3 == pytest.approx(made.required, rel=1e-9)


def test_the_counts_would_show_a_judge_who_passes_everything(rules: Rulebook) -> None:
    """The same counting over walls known to be too thin, all called fit, breaks the bound by far."""
    rng, count = Random(SEED), Counter[str]()
    made = simulate.gear(rng, LINEAR, rules)
    day = made.booked + world.WATCHED_DAYS
    while made.kind.key == "ball_mount" or made.truth.thinnest(day) >= made.required:
        made = simulate.gear(rng, LINEAR, rules)
    simulate.tally(made, day, simulate.called(made, day, Outcome.FIT, rules), count)
    simulate.tally(made, day, simulate.called(made, day, Outcome.HOLD, rules), count)
    assert (count["pull below"], count["pull below, fit"]) == (2, 1)


def test_the_world_knows_nothing_of_the_judge() -> None:
    here = Path(__file__).parent
    assert "inspector" not in (here / "world.py").read_text(encoding="utf-8").replace("inspectors", "")
    for name in ("simulate.py", "bands.py"):
        text = (here / name).read_text(encoding="utf-8")
        assert "mechanics" not in text and "rulebook.wall" not in text
