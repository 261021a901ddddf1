"""Hold the laws of judgement against a great many dossiers and say what was met. Run from a checkout.

python tests/rulebook/long_laws.py [examples a law, in each of two processes]
"""

import json
import os
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

HERE = Path(__file__).resolve().parents[2]
LAWS = ["tests/rulebook/test_laws.py", "tests/rulebook/test_release.py"]
PROCESSES = 2


def main() -> int:
    """Run the laws in two processes with seeds of their own; 0 when all held."""
    examples = sys.argv[1] if len(sys.argv) > 1 else "6000"
    began = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        tallies = [Path(folder) / f"{number}.json" for number in range(PROCESSES)]
        running = [_start(number, tally, examples) for number, tally in enumerate(tallies)]
        codes = [process.wait() for process in running]
        counted: Counter[str] = Counter()
        for tally in tallies:
            counted.update(json.loads(tally.read_text(encoding="utf-8")))
    _tell(counted, time.monotonic() - began)
    print("A LAW WAS BROKEN" if any(codes) else "every law held")
    return 1 if any(codes) else 0


def _start(number: int, tally: Path, examples: str) -> "subprocess.Popen[bytes]":
    variables = {**os.environ, "LAWS_TALLY": str(tally), "LAWS_EXAMPLES": examples, "PYTHONPATH": str(HERE)}
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", f"--hypothesis-seed={7919 + number}"]
    return subprocess.Popen([*command, *LAWS], cwd=HERE, env=variables)


def _tell(counted: Counter[str], seconds: float) -> None:
    from inspector.rulebook.load import packaged

    book = packaged()
    print(f"{counted['dossiers']:,} dossiers drawn, {counted['verdicts']:,} verdicts given, {seconds / 60:.0f} minutes")
    for key in sorted(book.kinds):
        print(f"  {key:<20}{counted[f'kind {key}']:>10,}")
    met = {rule.id: counted[f"rule {rule.id}"] for rule in book.rules}
    print(f"{sum(count > 0 for count in met.values())} of {len(met)} rules failed at least once")
    print("never failed: " + (", ".join(sorted(key for key, count in met.items() if not count)) or "none"))


if __name__ == "__main__":
    sys.exit(main())
