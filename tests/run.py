"""Everything that decides whether the program is sound: lint, format, types, import contracts, tests.

Run from a checkout with the `tests` extra installed; nothing is installed or changed by it. `--coverage` measures which
lines the tests reach.
"""

import os
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import TextIO

HERE = Path(__file__).resolve().parent.parent
BIN = Path(sys.executable).parent
COVERAGE = ["--cov", "--cov-report=term"] if "--coverage" in sys.argv[1:] else []  # a third slower with it
STEPS = (
    ("lint", ["ruff", "check", "."]),
    ("format", ["ruff", "format", "--check", "."]),
    ("types", ["mypy"]),
    ("import contracts", ["lint-imports"]),
    ("tests", ["pytest", "-n", "2", "--dist", "worksteal", *COVERAGE]),
)


def _fails(name: str, words: list[str], around: dict[str, str], told: TextIO = sys.stdout) -> bool:
    """Run one step; what it says goes to `told`. around: its environment."""
    print(f"== {name}", file=told, flush=True)
    command = [str(BIN / words[0]), *words[1:]]
    done = subprocess.run(command, cwd=HERE, check=False, stdout=told, stderr=subprocess.STDOUT, env=around)
    return bool(done.returncode)


def _around(compiled: str) -> dict[str, str]:
    """The environment of the steps. What one process compiled is kept for the run: the tests start hundreds more."""
    around = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return around | {"PYTHONPYCACHEPREFIX": compiled}


def main() -> int:
    """Run every step, even after one has failed; 0 when all passed. What is not the tests runs beside them."""
    *others, (last, tests) = STEPS
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as compiled,
        tempfile.TemporaryFile("w+") as told,
        ThreadPoolExecutor(1) as beside,
    ):
        around = _around(compiled)
        failing = beside.submit(lambda: [name for name, words in others if _fails(name, words, around, told)])
        tests_failed = _fails(last, tests, around)
        failed = [*failing.result(), *([last] if tests_failed else [])]
        told.seek(0)
        print(told.read())
    print("== " + (f"FAILED: {', '.join(failed)}" if failed else "all passed"))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
