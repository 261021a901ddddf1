"""The table of DEVELOPERS.md: each sum, its source, and the check against the outside world.

`python tests/mechanics_table.py --write` renews it; a house test holds it against the code.
"""

import ast
import sys
from collections import defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import tomli

HERE = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(HERE))

from inspector.rulebook.sum_texts import text_of  # noqa: E402 - the checkout must be on the path first
from inspector.rulebook.sums import functions  # noqa: E402
from tests.written_table import print_or_write  # noqa: E402

PUBLISHED = HERE / "tests" / "published"


def full_name(function: Callable[..., Any]) -> str:
    """ "shear.pin_shear_n"."""
    return f"{function.__module__.rpartition('.')[2]}.{function.__name__}"


def marks() -> Iterator[tuple[str, str, str]]:
    """Function, source and test of every `printed` mark."""
    for path in sorted(PUBLISHED.glob("test_*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef):
                for source, names in _marked(node):
                    for name in names:
                        yield name, source, f"{path.stem}::{node.name}"


def _marked(node: ast.FunctionDef) -> Iterator[tuple[str, list[str]]]:
    for mark in node.decorator_list:
        if isinstance(mark, ast.Call) and isinstance(mark.func, ast.Attribute) and mark.func.attr == "printed":
            words = [one.value for one in mark.args if isinstance(one, ast.Constant)]
            yield str(words[0]), [str(word) for word in words[1:]]


def unchecked() -> dict[str, str]:
    """Functions without an outside check, and why."""
    named: dict[str, str] = tomli.loads((PUBLISHED / "unchecked.toml").read_text(encoding="utf-8"))["reason"]
    return named


def table() -> str:
    """The table as Markdown."""
    checks: dict[str, dict[str, None]] = defaultdict(dict)
    for name, _, test in marks():
        checks[name][test.partition("::")[0].removeprefix("test_")] = None
    reasons = unchecked()
    lines = ["| sum | source | checked against print in |", "|---|---|---|"]
    for function in sorted(functions().values(), key=full_name):
        name = full_name(function)
        told = ", ".join(checks[name]) or f"– {reasons.get(name, '')}"
        lines.append(f"| `{name}` | {', '.join(text_of(function).sources)} | {told} |")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.exit(print_or_write("sums", table))
