"""Every deed that the command line can do has its place in the window as well."""

import ast
from pathlib import Path

from tests.house.deeds import HERE

_ONLY_TOLD = {
    "copy_if_due",  # the window makes it by itself as it opens, and any copy by hand
    "check_pieces",  # the ticks of a sheet in one line; the window types them in as the paper has them
    "record_inspection",  # the window keeps photos with it
    "show_papers",  # specimens off a copy, to look at the papers themselves; nothing is kept
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
    modules = {
        f"inspector.duties.{path.stem}": ast.parse(path.read_text("utf-8"))
        for path in sorted((HERE / "inspector" / "duties").rglob("*.py"))
    }
    functions = {
        (place, node.name): node
        for place, module in modules.items()
        for node in module.body
        if isinstance(node, ast.FunctionDef)
    }
    calls = {one: _called_in(node, one[0], modules[one[0]]) for one, node in functions.items()}
    found = {one for one, node in functions.items() if _opens_a_page(node)}
    while more := {one for one in functions if one not in found and calls[one] & found}:
        found |= more
    return {name for _, name in found if not name.startswith("_")}


def _called_in(node: ast.FunctionDef, place: str, module: ast.Module) -> set[tuple[str, str]]:
    """Module and name of what a function calls: imported by its name, else of its own module."""
    imported = {
        alias.asname or alias.name: (one.module or "", alias.name)
        for one in ast.walk(module)
        if isinstance(one, ast.ImportFrom)
        for alias in one.names
    }
    names = [one.func.id for one in ast.walk(node) if isinstance(one, ast.Call) and isinstance(one.func, ast.Name)]
    return {imported.get(name, (place, name)) for name in names}


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
