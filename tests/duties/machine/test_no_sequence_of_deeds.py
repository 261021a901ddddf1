"""No sequence of deeds brings back what is retired or destroyed, packs what is not there or held, or harms evidence.

Each deed done is one line of the ledger that can be told; each refusal names its field, the reason and what to do, and
changes nothing. `python tests/duties/machine/long_run.py 200` makes many more runs than the tests do.
"""

from hypothesis import HealthCheck, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.duties.machine.all_deeds import AllDeeds

RUNS, STEPS = 6, 50


def test_no_sequence_of_deeds_breaks_what_must_hold() -> None:
    profile = settings(
        max_examples=RUNS,
        stateful_step_count=STEPS,
        deadline=None,
        database=None,
        suppress_health_check=list(HealthCheck),
        print_blob=False,
    )
    run_state_machine_as_test(AllDeeds, settings=profile)
    assert AllDeeds.tally.steps > RUNS * STEPS / 2, "too few deeds were tried to show anything"
