"""The table of DEVELOPERS.md: each published criterion of removal, and the rule that holds it or why none does.

`python tests/criteria_table.py --write` renews it; tests/rulebook/test_criteria.py holds it against the data.
"""

import sys
import tomllib
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).resolve().parent.parent
CRITERIA = HERE / "tests" / "rulebook" / "criteria.toml"
DOCUMENT = HERE / "DEVELOPERS.md"
BEGINS, ENDS = "<!-- criteria: begin -->", "<!-- criteria: end -->"


@dataclass(frozen=True, slots=True)
class Criterion:
    """One line of a published list. rules: the ids that hold it; why_not: the reason where none does."""

    of: str
    says: str
    source: str
    rules: tuple[str, ...] = ()
    why_not: str = ""


def criteria() -> tuple[Criterion, ...]:
    """All of them, in the order of the file."""
    tables = tomllib.loads(CRITERIA.read_text(encoding="utf-8"))["criterion"]
    return tuple(Criterion(**{**one, "rules": tuple(one.get("rules", ()))}) for one in tables)


def table() -> str:
    """The table as Markdown."""
    lines = ["| gear | criterion | source | rule, or why none |", "|---|---|---|---|"]
    for one in criteria():
        told = ", ".join(f"`{rule}`" for rule in one.rules) or f"– {one.why_not}"
        lines.append(f"| {one.of} | {one.says} | {one.source} | {told} |")
    return "\n".join(lines)


def written() -> str:
    """The table that stands in the document."""
    return DOCUMENT.read_text(encoding="utf-8").partition(BEGINS)[2].partition(ENDS)[0].strip()


def main() -> int:
    """Print the table, or write it into the document."""
    if "--write" not in sys.argv:
        print(table())
        return 0
    before, _, rest = DOCUMENT.read_text(encoding="utf-8").partition(BEGINS)
    DOCUMENT.write_text(f"{before}{BEGINS}\n{table()}\n{ENDS}{rest.partition(ENDS)[2]}", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
