"""The names of the deeds that the program enters in the ledger, read from its source."""

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from msgspec import Struct

HERE = Path(__file__).resolve().parents[2]
_DEED = "enter"  # what a page calls it


class Entered(Struct, frozen=True):
    """A place that enters a deed. names: what the deed may be called there; none where it cannot be read."""

    place: str
    names: frozenset[str]


@cache
def entered() -> tuple[Entered, ...]:
    """Every place of the program that closes a deed with a ledger line."""
    texts = {path: path.read_text("utf-8") for path in sorted((HERE / "inspector").rglob("*.py"))}
    calling = {path: text for path, text in texts.items() if _DEED in text}  # to take the others apart costs seconds
    return tuple(one for path, text in calling.items() for one in entered_in(ast.parse(text), name_of(path)))


def name_of(path: Path) -> str:
    """The path as it is called in a message."""
    return path.relative_to(HERE).as_posix()


def entered_in(module: ast.Module, file: str) -> Iterator[Entered]:
    """The places of one module. A name may be written there, chosen in its function, or handed to the function."""
    for function in [node for node in ast.walk(module) if isinstance(node, ast.FunctionDef)]:
        for call in _calls(function):
            if _enters(call):
                yield Entered(f"{file}:{call.lineno}", frozenset(_texts(_first(call), function, module)))


def _calls(node: ast.AST) -> Iterator[ast.Call]:
    return (one for one in ast.walk(node) if isinstance(one, ast.Call))


def _enters(call: ast.Call) -> bool:
    named = isinstance(call.func, ast.Attribute) and call.func.attr == _DEED
    return named and {"by", "at", "facts"} <= {one.arg for one in call.keywords}


def _first(call: ast.Call) -> ast.expr:
    return call.args[0] if call.args else next(one.value for one in call.keywords if one.arg == "deed")


def _texts(value: ast.expr, function: ast.FunctionDef, module: ast.Module) -> Iterator[str]:
    """Every text that an expression may be."""
    if isinstance(value, ast.Constant) and isinstance(value.value, str):
        yield value.value
    elif isinstance(value, ast.IfExp):
        yield from _texts(value.body, function, module)
        yield from _texts(value.orelse, function, module)
    elif isinstance(value, ast.Subscript):
        yield from _texts(value.value, function, module)
    elif isinstance(value, ast.Dict):
        for one in value.values:
            yield from _texts(one, function, module)
    elif isinstance(value, ast.Name):
        yield from _named(value.id, function, module)


def _named(name: str, function: ast.FunctionDef, module: ast.Module) -> Iterator[str]:
    """The texts of a name: given in the function, at the head of the module, or by whoever calls the function."""
    for node in (*ast.walk(function), *module.body):
        targets = node.targets if isinstance(node, ast.Assign) else [getattr(node, "target", None)]
        value = node.value if isinstance(node, ast.Assign | ast.AnnAssign) else None
        if value is not None and any(isinstance(one, ast.Name) and one.id == name for one in targets):
            yield from _texts(value, function, module)
    parameters = [one.arg for one in (*function.args.args, *function.args.kwonlyargs)]
    if name not in parameters:
        return
    at = parameters.index(name)
    for caller in [node for node in ast.walk(module) if isinstance(node, ast.FunctionDef)]:
        for call in _calls(caller):
            if isinstance(call.func, ast.Name) and call.func.id == function.name:
                handed = [one.value for one in call.keywords if one.arg == name] or call.args[at : at + 1]
                for one in handed:
                    yield from _texts(one, caller, module)
