"""Let the machine run long: `python tests/duties/machine/long_run.py 200` makes 200 runs of up to 80 deeds each.

Prints how often each deed was done and refused. A broken law ends it with the sequence of deeds that shows it.
"""

import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.duties.machine.all_deeds import AllDeeds
from tests.house.deeds import entered

_STEPS = 80


def main(runs: int) -> None:
    """Run, and print the figures."""
    began = time.monotonic()
    profile = settings(
        max_examples=runs,
        phases=(Phase.generate,),
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
        print(f"lines of the ledger, by deed: {', '.join(sorted(tally.lines)) or 'none'}")
        names = {name for one in entered() for name in one.names}
        print(f"deeds of the program that no run has done: {', '.join(sorted(names - tally.lines)) or 'none'}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 100)
