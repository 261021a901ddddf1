"""Let the machine run long: `python tests/duties/machine/long_run.py 200` makes 200 runs of up to 80 deeds each.

Prints how often each deed was done and refused. A broken law ends it with the shortest sequence of deeds that shows it.
"""

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from hypothesis import HealthCheck, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.duties.machine.all_deeds import AllDeeds

_STEPS = 80


def main(runs: int) -> None:
    """Run, and print the figures."""
    began = time.monotonic()
    profile = settings(
        max_examples=runs,
        stateful_step_count=_STEPS,
        deadline=None,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    try:
        run_state_machine_as_test(AllDeeds, settings=profile)
    finally:
        tally = AllDeeds.tally
        print(f"{tally.runs} runs, {tally.steps} deeds tried, {time.monotonic() - began:.0f} s")
        print(f"{'deed':24}{'done':>8}{'refused':>9}")
        for deed in sorted(set(tally.done) | set(tally.refused)):
            print(f"{deed:24}{tally.done[deed]:8}{tally.refused[deed]:9}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100)
