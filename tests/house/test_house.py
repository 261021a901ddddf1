"""The code's own rules: sizes a reader holds in mind, words on every public thing, nothing of one machine."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from tests.each import each

HERE = Path(__file__).resolve().parents[2]
ROOMS = sorted((HERE / "inspector").rglob("*.py"))
TEXTS = [
    path
    for name in ("inspector", "migrations", "tests", "sample_register")
    for path in sorted((HERE / name).rglob("*"))
    if path.suffix in {".py", ".toml", ".csv", ".txt", ".md", ".mako"}
] + [HERE / "README.md", HERE / "DEVELOPERS.md", HERE / "pyproject.toml"]
LONGEST_FILE = 300
LONGEST_FUNCTION = 45
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", ".gitignore"} | {
    "inspector",
    "migrations",
    "tests",
    "sample_register",
    ".ci",
}


def name_of(path: Path) -> str:
    return path.relative_to(HERE).as_posix()


@each("path", ROOMS, ids=name_of)
def test_no_file_grows_past_what_a_reader_holds_in_mind(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LONGEST_FILE


def functions(module: ast.Module) -> Iterator[ast.FunctionDef | ast.ClassDef]:
    """Functions and classes of the module and the methods of its classes; what lies inside a function is its own."""
    classes = [node for node in module.body if isinstance(node, ast.ClassDef)]
    for node in [*module.body, *(inner for one in classes for inner in one.body)]:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node


@each("path", ROOMS, ids=name_of)
def test_every_public_thing_has_words_and_no_function_is_long(path: Path) -> None:
    faults = []
    module = ast.parse(path.read_text(encoding="utf-8"))
    assert ast.get_docstring(module), "the module says nothing of itself"
    for node in functions(module):
        length = (node.end_lineno or 0) - node.lineno + 1
        qt_override = node.name[:1].islower() and node.name != node.name.lower()
        if not node.name.startswith("_") and not qt_override and not ast.get_docstring(node):
            faults.append(f"{node.name} has no docstring")
        if isinstance(node, ast.FunctionDef) and length > LONGEST_FUNCTION:
            faults.append(f"{node.name} has {length} lines")
    assert not faults, ", ".join(faults)


@each("path", TEXTS, ids=name_of)
def test_no_text_names_a_machine_or_leaves_work_open(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    open_work = "|".join(("TO" + "DO", "FIX" + "ME"))
    assert not re.search(rf"\b({open_work})\b", text)
    assert not re.search(r"/(home|work|root|Users)/\w", text)


def test_the_top_level_holds_what_the_design_says_and_no_more() -> None:
    made_by_tools = {".git", ".venv", "dist", "build", ".coverage", ".hypothesis"}
    found = {path.name for path in HERE.iterdir() if not path.name.endswith("_cache")}
    strays = {name for name in found - made_by_tools - TOP_LEVEL if not name.startswith(".coverage.")}
    assert TOP_LEVEL - found == set()
    assert {name for name in strays if not is_ignored(name)} == set()


def is_ignored(name: str) -> bool:
    """A register somebody made in the checkout to look at is no part of it."""
    return (HERE / name / "register.db").exists()


def test_what_waits_for_the_event_loop_goes_with_its_widget() -> None:
    """A single shot without a context calls into a widget that may be gone by then."""
    desk = sorted((HERE / "inspector" / "desk").rglob("*.py"))
    without = [path.name for path in desk if re.search(r"singleShot\([^,()]+, (?!self,)", path.read_text("utf-8"))]
    assert without == []
