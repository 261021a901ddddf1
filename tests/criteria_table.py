"""The table of DEVELOPERS.md: each published criterion of removal, and the rule that holds it or why none does.

`python tests/criteria_table.py --write` renews it; tests/rulebook/test_criteria.py holds it against the data.
"""

import sys
from pathlib import Path

import tomli
from msgspec import Struct

HERE = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(HERE))

from tests.written_table import print_or_write  # noqa: E402 - the checkout must be on the path first

CRITERIA = HERE / "tests" / "rulebook" / "criteria.toml"


class Criterion(Struct, frozen=True):
    """One line of a published list. rules: the ids that hold it; why_not: the reason where none does."""

    of: str
    says: str
    source: str
    rules: tuple[str, ...] = ()
    why_not: str = ""


def criteria() -> tuple[Criterion, ...]:
    """All of them, in the order of the file."""
    tables = tomli.loads(CRITERIA.read_text(encoding="utf-8"))["criterion"]
    return tuple(Criterion(**{**one, "rules": tuple(one.get("rules", ()))}) for one in tables)


def table() -> str:
    """The table as Markdown."""
    lines = ["| gear | criterion | source | rule, or why none |", "|---|---|---|---|"]
    for one in criteria():
        told = ", ".join(f"`{rule}`" for rule in one.rules) or f"– {one.why_not}"
        lines.append(f"| {one.of} | {one.says} | {one.source} | {told} |")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.exit(print_or_write("criteria", table))
