"""Every deed that the command line can do has its place in the window as well."""

import ast
from pathlib import Path

from tests.house.deeds import HERE

_ONLY_TOLD = {
    "check_pieces",  # the ticks of a sheet in one line; the window types them in as the paper has them
    "record_inspection",  # the window keeps photos with it
}  # fmt: skip


def done_in(*rooms: str) -> set[str]:
    """The functions of duties that a room uses, by name: imported, or called on an imported module."""
    used: set[str] = set()
    for room in rooms:
        place = HERE / "inspector" / room
        for path in sorted(place.rglob("*.py")) if place.is_dir() else [place]:
            used |= _used(ast.parse(path.read_text("utf-8")))
    return used


def _used(module: ast.Module) -> set[str]:
    imported = [one for one in ast.walk(module) if isinstance(one, ast.ImportFrom)]
    names = {
        alias.name for one in imported if (one.module or "").startswith("inspector.duties.") for alias in one.names
    }
    modules = {
        alias.asname or alias.name for one in imported if one.module == "inspector.duties" for alias in one.names
    }
    calls = [one for one in ast.walk(module) if isinstance(one, ast.Attribute) and isinstance(one.value, ast.Name)]
    return names | {one.attr for one in calls if isinstance(one.value, ast.Name) and one.value.id in modules}


def writing() -> set[str]:
    """The functions of duties that open a page to write on, or print a paper, and those that call them."""
    functions = {
        node.name: node
        for path in sorted((HERE / "inspector" / "duties").rglob("*.py"))
        for node in ast.parse(path.read_text("utf-8")).body
        if isinstance(node, ast.FunctionDef)
    }
    found = {name for name, node in functions.items() if _opens_a_page(node)}
    while more := {name for name, node in functions.items() if name not in found and _called_in(node) & found}:
        found |= more
    return {name for name in found if not name.startswith("_")}


def _called_in(node: ast.FunctionDef) -> set[str]:
    calls = [one.func for one in ast.walk(node) if isinstance(one, ast.Call)]
    return {one.id for one in calls if isinstance(one, ast.Name)}


def _opens_a_page(node: ast.FunctionDef) -> bool:
    attributes = [one.attr for one in ast.walk(node) if isinstance(one, ast.Attribute)]
    return bool({"page", "together"} & set(attributes))


def test_no_deed_is_done_by_command_alone() -> None:
    by_command = done_in("cli") & writing()
    assert len(by_command) > 60
    assert by_command - done_in("desk", "app.py") == _ONLY_TOLD


def test_a_deed_without_a_place_would_be_found() -> None:
    module = ast.parse("from inspector.duties import stock\nfrom inspector.duties.lend import lend\nstock.begin(1)")
    assert _used(module) == {"lend", "begin", "stock"} - {"stock"}
    assert Path(HERE, "inspector", "duties").is_dir()
