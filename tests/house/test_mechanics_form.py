"""Every sum says its units, formula, range, source and a worked example, and is held against the outside world."""

import doctest
import importlib
import inspect
import re
import subprocess
import sys
from collections.abc import Callable
from enum import StrEnum
from pathlib import Path
from typing import Any, get_type_hints

import pytest
from msgspec import Struct
from msgspec.structs import fields

from inspector.rulebook.load import packaged
from inspector.rulebook.sum_texts import dimension_of, text_of
from inspector.rulebook.sums import functions
from tests.each import each
from tests.mechanics_table import full_name, marks, table, unchecked
from tests.written_table import written

HERE = Path(__file__).resolve().parents[2]
SUMS = list(functions().values())
MODULES = sorted({function.__module__ for function in SUMS})
LEAST_VALUES, LEAST_SOURCES = 80, 25
Sum = Callable[..., Any]


def speaks(name: str, hint: Any) -> bool:
    """Whether a name tells its unit, or needs none."""
    if hint is bool or hint is str or (isinstance(hint, type) and issubclass(hint, StrEnum)):
        return True
    return dimension_of(name) is not None


@each("function", SUMS, ids=full_name)
def test_every_name_says_its_unit(function: Sum) -> None:
    hints = get_type_hints(function)
    result = hints.pop("return")
    silent = [name for name, hint in hints.items() if not speaks(name, hint)]
    if isinstance(result, type) and issubclass(result, Struct):
        silent += [field.name for field in fields(result) if not speaks(field.name, field.type)]
    elif result is bool:
        silent += [] if re.match(r"(is|may|in|has)_", function.__name__) else [function.__name__]
    elif not speaks(function.__name__, result):
        silent.append(function.__name__)
    assert silent == []


@each("function", SUMS, ids=full_name)
def test_every_docstring_has_its_parts_and_real_sources(function: Sum) -> None:
    said = text_of(function)
    known = packaged().sources
    assert said.title.endswith(".") and said.formula and said.valid and said.has_example
    assert said.sources and [key for key in said.sources if key not in known] == []


@pytest.mark.parametrize("module", MODULES)
def test_the_worked_examples_come_out(module: str) -> None:
    done = doctest.testmod(importlib.import_module(module))
    assert done.attempted > 0 and done.failed == 0


def test_a_name_stands_once() -> None:
    named = [
        name
        for module in MODULES
        for name, member in vars(importlib.import_module(module)).items()
        if inspect.isfunction(member) and member.__module__ == module and not name.startswith("_")
    ]
    assert sorted(named) == sorted(set(named))


def test_every_sum_is_checked_against_the_outside_or_says_why_not() -> None:
    named = {full_name(function) for function in SUMS}
    checked = {name for name, _, _ in marks()}
    assert checked - named == set(), "a mark names a sum that does not exist"
    assert set(unchecked()) - named == set()
    assert named - checked - set(unchecked()) == set()
    assert set(unchecked()) & checked == set(), "checked after all: take it off the list"
    assert all(len(reason) > 20 for reason in unchecked().values())


def test_the_table_in_the_document_is_that_of_the_code() -> None:
    assert written("sums") == table(), "renew it: python tests/mechanics_table.py --write"


def test_there_are_enough_outside_values_from_enough_sources() -> None:
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", "tests/published"]
    done = subprocess.run(command, cwd=HERE, capture_output=True, text=True, check=False)
    counted = re.search(r"(\d+)  values from (\d+) sources", done.stdout)
    assert counted, done.stdout[-2000:]
    assert int(counted[1]) >= LEAST_VALUES and int(counted[2]) >= LEAST_SOURCES
