"""Everything that decides whether the program is sound: lint, format, types, import contracts, tests.

Run from a checkout with the `tests` extra installed; nothing is installed or changed by it. `--coverage` measures which
lines the tests reach.
"""

import subprocess
import sys
from pathlib import Path

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


def main() -> int:
    """Run every step, even after one has failed; 0 when all passed."""
    failed = []
    for name, command in STEPS:
        print(f"== {name}", flush=True)
        if subprocess.run([str(BIN / command[0]), *command[1:]], cwd=HERE, check=False).returncode:
            failed.append(name)
    print("== " + (f"FAILED: {', '.join(failed)}" if failed else "all passed"))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
