"""The catalogue of named sums: every public function of the mechanics room, worked with typed figures.

The functions speak for themselves: a parameter's name says its unit, the docstring formula, range and source. So a new
function is in the catalogue as soon as it is written.
"""

import importlib
import inspect
import pkgutil
from collections.abc import Callable, Mapping, Sequence
from enum import StrEnum
from functools import cache
from typing import Any, get_type_hints

from msgspec import Struct
from msgspec.structs import fields

import inspector.mechanics
from inspector.gear.sums import NamedSum, SumInput, WorkedSum
from inspector.gear.verdict import Fact
from inspector.language import later, tr
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.rulebook.sum_texts import dimension_of, text_of
from inspector.units import Dimension, System, read, show

_HELPERS = {"checked"}
_NEAREST = 6


@cache
def functions() -> dict[str, Callable[..., Any]]:
    """Every sum by its name. A name stands once in the whole room."""
    found: dict[str, Callable[..., Any]] = {}
    for info in pkgutil.iter_modules(inspector.mechanics.__path__):
        module = importlib.import_module(f"inspector.mechanics.{info.name}")
        for name, member in vars(module).items():
            own = inspect.isfunction(member) and member.__module__ == module.__name__
            if own and not name.startswith("_") and info.name not in _HELPERS:
                found[name] = member
    return dict(sorted(found.items()))


def catalogue() -> tuple[NamedSum, ...]:
    """The sums there are, by topic."""
    listed = [_named(name, function) for name, function in functions().items()]
    return tuple(sorted(listed, key=lambda one: (one.topic, one.name)))


def _named(name: str, function: Callable[..., Any]) -> NamedSum:
    topic = function.__module__.rpartition(".")[2].replace("_", " ")
    wanted = inspect.signature(function).parameters.values()
    hints = get_type_hints(function)
    inputs = tuple(SumInput(one.name, _how(one.name, hints[one.name]), _otherwise(one)) for one in wanted)
    return NamedSum(name, topic, text_of(function).title, inputs)


_MEASURED: dict[Dimension, str] = {
    Dimension.LENGTH: later("length"), Dimension.FORCE: later("force"), Dimension.MASS: later("mass"),
    Dimension.TORQUE: later("torque"), Dimension.SPEED: later("speed"), Dimension.ANGLE: later("angle"),
    Dimension.DAYS: later("days"), Dimension.YEARS: later("years"), Dimension.SECONDS: later("seconds"),
    Dimension.STRESS: later("stress"), Dimension.AREA: later("area"), Dimension.MODULUS: later("modulus"),
    Dimension.INERTIA: later("inertia"), Dimension.STIFFNESS: later("stiffness"), Dimension.ENERGY: later("energy"),
    Dimension.RATE: later("rate"), Dimension.LINEAR_MASS: later("linear mass"), Dimension.RATIO: later("ratio"),
    Dimension.ACCELERATION: later("acceleration"), Dimension.TEMPERATURE: later("temperature"),
    Dimension.FACTOR: later("factor"), Dimension.COUNT: later("count"),
}  # fmt: skip


def _how(name: str, hint: Any) -> str:
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return tr("one of: {words}", words=", ".join(word.value for word in hint))
    if hint is bool:
        return tr("yes or no")
    dimension = dimension_of(name)
    word = tr(_MEASURED[dimension or Dimension.FACTOR])
    return tr("{what}, several parted by semicolons", what=word) if _is_sequence(hint) else word


def _is_sequence(hint: Any) -> bool:
    return getattr(hint, "__origin__", None) in {Sequence, tuple, list}


def _otherwise(parameter: inspect.Parameter) -> str:
    return "" if parameter.default is inspect.Parameter.empty else f"{parameter.default}"


def work(name: str, typed: Mapping[str, str], book: Rulebook, system: System, decimal: str) -> WorkedSum:
    """Work the sum with typed figures. Refused: an unknown sum or input, one that is missing, figures out of range."""
    function = _function(name)
    return _worked(function, _given(function, typed, decimal), typed, book, system)[1]


def reckon(name: str, given: Mapping[str, Any], book: Rulebook, system: System) -> tuple[Any, WorkedSum]:
    """The value of the sum in SI and the sum as it is shown, from values in SI. Refused: figures out of range."""
    return _worked(_function(name), given, {}, book, system)


def _worked(
    function: Callable[..., Any], given: Mapping[str, Any], typed: Mapping[str, str], book: Rulebook, system: System
) -> tuple[Any, WorkedSum]:
    said = text_of(function)
    try:
        result = function(**given)
    except (ValueError, OverflowError) as error:
        why = tr("The sum does not hold for these figures: {why}.", why=error)
        raise Refused(function.__name__, why, tr("It is valid for: {valid}", valid=said.valid)) from error
    sources = [book.source_text(key) for key in said.sources if key in book.sources]
    return result, WorkedSum(
        name=function.__name__,
        title=said.title,
        formula=said.formula,
        valid=said.valid,
        inputs=tuple(Fact(key, typed.get(key, "") or _shown(key, value, system)) for key, value in given.items()),
        results=_results(function.__name__, result, system),
        sources=tuple([*sources, said.note] if said.note else sources),
    )


def _function(name: str) -> Callable[..., Any]:
    known = functions()
    wanted = name.strip().replace("-", "_").casefold()
    if wanted in known:
        return known[wanted]
    near = [one for one in known if wanted in one or any(part in one for part in wanted.split("_") if len(part) > 3)]
    hint = ", ".join(near[:_NEAREST]) if near else tr("the list of `inspector sums`")
    raise Refused(tr("sum"), tr("There is no sum called “{name}”.", name=name), tr("See: {hint}.", hint=hint))


def _given(function: Callable[..., Any], typed: Mapping[str, str], decimal: str) -> dict[str, Any]:
    parameters = inspect.signature(function).parameters
    for key in typed:
        if key not in parameters:
            names = ", ".join(parameters)
            raise Refused(key, tr("The sum has no such input."), tr("It wants: {names}.", names=names))
    hints = get_type_hints(function)
    given: dict[str, Any] = {}
    for key, parameter in parameters.items():
        if key in typed:
            given[key] = _value(key, hints[key], typed[key], decimal)
        elif parameter.default is inspect.Parameter.empty:
            how = _how(key, hints[key])
            raise Refused(key, tr("This input is missing."), tr("Write {key}=…, {how}.", key=key, how=how))
        else:
            given[key] = parameter.default
    return given


def _yes_or_no(key: str, text: str) -> bool:
    said = {"yes": True, "true": True, "1": True, "no": False, "false": False, "0": False}
    said |= {tr("yes").casefold(): True, tr("no").casefold(): False}
    found = said.get(text.strip().casefold())
    if found is None:
        raise Refused(key, tr("“{text}” is neither yes nor no.", text=text.strip()), tr("Write yes or no."))
    return found


def _value(key: str, hint: Any, text: str, decimal: str) -> Any:
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return _word(key, hint, text)
    if hint is bool:
        return _yes_or_no(key, text)
    dimension = dimension_of(key) or Dimension.FACTOR
    if _is_sequence(hint):
        return tuple(read(one, dimension, field=key, decimal=decimal).si for one in text.split(";"))
    figure = read(text, dimension, field=key, decimal=decimal).si
    if hint is not int:
        return figure
    if figure != int(figure):
        raise Refused(key, tr("A count is a whole number."), tr("Write a whole number, for example 2."))
    return int(figure)


def _word(key: str, words: type[StrEnum], text: str) -> StrEnum:
    try:
        return words(text.strip().casefold())
    except ValueError as error:
        listed = ", ".join(word.value for word in words)
        raise Refused(key, tr("“{text}” is none of them.", text=text), tr("Use one of: {w}.", w=listed)) from error


def _results(name: str, result: Any, system: System) -> tuple[Fact, ...]:
    if isinstance(result, Struct):
        named = ((field.name, getattr(result, field.name)) for field in fields(result))
        return tuple(Fact(key, _shown(key, value, system)) for key, value in named)
    return (Fact(name, _shown(name, result, system)),)


def _shown(key: str, value: Any, system: System) -> str:
    if isinstance(value, bool):
        return tr("yes") if value else tr("no")
    if isinstance(value, str | None):
        return str(value) if value is not None else tr("none")
    if isinstance(value, tuple | list):
        return "; ".join(_shown(key, one, system) for one in value)
    dimension = dimension_of(key) or Dimension.FACTOR
    exact = 2 if dimension in {Dimension.FACTOR, Dimension.LENGTH, Dimension.YEARS} else 0
    return show(float(value), dimension, system, exact) if isinstance(value, int | float) else str(value)
