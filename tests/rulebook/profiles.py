"""How many dossiers the laws are held against: a fast profile for every run, a long one for a release.

`python tests/rulebook/long_laws.py` runs the long one. What was drawn and judged is counted here, so that a long run
can say which kinds and rules it met.
"""

import atexit
import json
import os
from collections import Counter
from pathlib import Path

from hypothesis import HealthCheck, settings

from inspector.gear.dossier import Dossier
from inspector.gear.verdict import Status, Verdict

COUNTED: Counter[str] = Counter()
LONG_EXAMPLES = int(os.environ.get("LAWS_EXAMPLES", "12000"))
_TALLY = os.environ.get("LAWS_TALLY", "")

settings.register_profile("laws", deadline=None, max_examples=52, derandomize=True)
settings.register_profile(
    "laws-long",
    deadline=None,
    max_examples=LONG_EXAMPLES,
    database=None,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)
settings.load_profile("laws-long" if _TALLY else "laws")


def count_drawn(dossier: Dossier) -> None:
    """One more dossier was drawn."""
    COUNTED["dossiers"] += 1
    COUNTED[f"kind {dossier.kind.key}"] += 1


def count_judged(verdict: Verdict) -> None:
    """One more verdict was given; which rules failed in it."""
    COUNTED["verdicts"] += 1
    for finding in verdict.findings:
        missing = finding.must == "present" and finding.status is Status.UNKNOWN
        if missing or finding.status in {Status.FAILS, Status.NOTE}:
            COUNTED[f"rule {finding.rule}"] += 1


def _write_tally() -> None:
    Path(_TALLY).write_text(json.dumps(COUNTED), encoding="utf-8")


if _TALLY:
    atexit.register(_write_tally)
