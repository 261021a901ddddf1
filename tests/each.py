"""Many small cases in one test: all are tried, each that fails is told by its name, and none stops the others.

A test of its own costs more than a trifle does, so a mass of trifles is one test. What is dear, what changes a fixture
and what is read one by one stays with pytest's own parametrize.
"""

import functools
import inspect
import traceback
from collections.abc import Callable, Iterable, Sequence
from typing import Any

import pytest

Test = Callable[..., None]
Ids = Callable[[Any], object] | Iterable[str] | None
_FAILS = (Exception, pytest.fail.Exception, pytest.skip.Exception)  # the last two are no exceptions of Python's sort


def each(names: str | Sequence[str], cases: Iterable[Any], ids: Ids = None) -> Callable[[Test], Test]:
    """Run the test for each case, as pytest.mark.parametrize would, but as one test; one laid on another makes pairs.

    names: of the arguments, one text with commas or several; with more than one, a case is a tuple of them. ids: a name
    for each case, or what makes one of an argument. Raises ValueError where there is no case: that test could not fail.
    """
    keys = [one.strip() for one in names.split(",")] if isinstance(names, str) else list(names)
    rows = [(one,) if len(keys) == 1 else tuple(one) for one in cases]
    if not rows or any(len(row) != len(keys) for row in rows):
        raise ValueError(f"{names}: no case, or a case of another length")
    named = _named(rows, ids)

    def laid_on(test: Test) -> Test:
        def tries(**fixtures: Any) -> None:
            faults = [
                f"{name}: {fault}"
                for name, row in zip(named, rows, strict=True)
                if (fault := _fault_of(test, fixtures | dict(zip(keys, row, strict=True))))
            ]
            if faults:
                pytest.fail(f"{len(faults)} of {len(rows)} cases:\n" + "\n".join(faults), pytrace=False)

        whole = functools.update_wrapper(tries, test)
        wanted = inspect.signature(test).parameters
        if missing := set(keys) - set(wanted):
            raise ValueError(f"{test.__name__} takes no {', '.join(sorted(missing))}")
        left = [one for name, one in wanted.items() if name not in keys]
        vars(whole)["__signature__"] = inspect.Signature(left)
        vars(whole)["case_count"] = len(rows) * case_count(test)
        return whole

    return laid_on


def case_count(test: object) -> int:
    """How many cases a test goes through: 1 for a plain one."""
    return int(getattr(test, "case_count", 1))


def _named(rows: list[tuple[Any, ...]], ids: Ids) -> list[str]:
    if ids is not None and not callable(ids):
        given = [str(one) for one in ids]
        if len(given) != len(rows):
            raise ValueError(f"{len(given)} names for {len(rows)} cases")
        return given
    name = ids or (lambda value: getattr(value, "__name__", None) or repr(value)[:60])
    return ["-".join(str(name(value)) for value in row) for row in rows]


def _fault_of(test: Test, arguments: dict[str, Any]) -> str:
    """What a case says of itself when it fails, with its line; "" when it does not."""
    try:
        test(**arguments)
    except _FAILS as reason:
        lines = [step.lineno for step in traceback.extract_tb(reason.__traceback__) if step.filename != __file__]
        said = str(reason).replace("\n", "\n    ")
        return f"line {lines[0] if lines else '?'}: {type(reason).__name__}: {said}"
    return ""
