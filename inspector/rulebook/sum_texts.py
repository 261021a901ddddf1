"""What a sum says of itself: the parts of its docstring, and what its names say of units."""

import re
from collections.abc import Callable
from functools import cache
from inspect import cleandoc
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from inspector.language import tr
from inspector.units import Dimension

_SUFFIXES: dict[str, Dimension] = {
    "_m_per_year": Dimension.RATE,
    "_m_per_s2": Dimension.ACCELERATION,
    "_m_per_s": Dimension.SPEED,
    "_kg_per_m": Dimension.LINEAR_MASS,
    "_n_per_m2": Dimension.STRESS,
    "_n_per_m": Dimension.STIFFNESS,
    "_n_m": Dimension.TORQUE,
    "_m2": Dimension.AREA,
    "_m3": Dimension.MODULUS,
    "_m4": Dimension.INERTIA,
    "_years": Dimension.YEARS,
    "_days": Dimension.DAYS,
    "_ratio": Dimension.RATIO,
    "_factor": Dimension.FACTOR,
    "_count": Dimension.COUNT,
    "_rad": Dimension.ANGLE,
    "_pa": Dimension.STRESS,
    "_kg": Dimension.MASS,
    "_m": Dimension.LENGTH,
    "_n": Dimension.FORCE,
    "_j": Dimension.ENERGY,
    "_s": Dimension.SECONDS,
    "_c": Dimension.TEMPERATURE,
}
_PARTS = ("Formula", "Valid", "Source")


def dimension_of(name: str) -> Dimension | None:
    """What the unit at the end of a name measures; the plural of a sequence counts too. None for a name without one."""
    for suffix, dimension in _SUFFIXES.items():
        if name.endswith(suffix) or name == suffix[1:]:
            return dimension
    return None


class SumText(Struct, frozen=True):
    """The parts of a sum's docstring. sources: keys of sources.toml; note: what is said beside them."""

    title: str
    formula: str
    valid: str
    sources: tuple[str, ...]
    note: str
    has_example: bool


def text_of(function: Callable[..., Any]) -> SumText:
    """The parts of a function's docstring in the officer's language; parts it lacks are empty."""
    told = _written_of(function)
    return replace(told, title=tr(told.title), formula=tr(told.formula), valid=tr(told.valid), note=tr(told.note))


@cache
def _written_of(function: Callable[..., Any]) -> SumText:
    words = cleandoc(function.__doc__ or "")
    before, _, _ = words.partition(">>>")
    parts = {name: _part(before, name) for name in _PARTS}
    keys, _, note = parts["Source"].partition(" – ")
    return SumText(
        title=re.split(r"\n\s*\n|\nFormula:", before)[0].replace("\n", " ").strip(),
        formula=parts["Formula"],
        valid=parts["Valid"],
        sources=tuple(filter(None, (key.strip().rstrip(".") for key in keys.split(",")))),
        note=note,
        has_example=">>>" in words,
    )


def _part(words: str, name: str) -> str:
    ends = "|".join(rf"\n{other}:" for other in _PARTS)
    found = re.search(rf"(?:^|\n){name}:\s*(.*?)(?={ends}|\n\s*\n|$)", words, re.DOTALL)
    return re.sub(r"\s+", " ", found[1]).strip() if found else ""
