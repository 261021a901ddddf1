"""The shapes of the rulebook's data files and the conversion that checks them.

Each table is converted on its own, so one reading lists one fault per kind or rule instead of stopping at the first.
What a person reads of a table is looked up in the officer's language here and nowhere else; keys, figures, limits,
materials and the names of points are what readings and rules are held against, and stay as written.
"""

from collections.abc import Callable, Iterable, Mapping
from datetime import date
from typing import Any, TypeVar

import msgspec
import tomli
from msgspec import Struct

from inspector.gear.kind import Barred, Basis, Check, Kind, Measure, Size
from inspector.gear.outcome import Purpose

_SPOKEN = frozenset({"name", "what", "asks", "slight", "bad", "how", "why", "says", "text"})


class KindText(Struct, frozen=True, forbid_unknown_fields=True):
    """A kind's data file; `checks` names entries of checks.toml."""

    key: str
    name: str
    family: str
    what: str
    material: str
    rated_by: tuple[Basis, ...]
    purposes: tuple[Purpose, ...]
    checks: tuple[str, ...]
    every_days: int
    every_days_severe: int
    every_days_special: int
    source: str
    look_first: int
    reading_every_days: int = 0
    steel_grade: str = ""
    size: tuple[Size, ...] = ()
    measure: tuple[Measure, ...] = ()
    barred: tuple[Barred, ...] = ()

    def as_kind(self, checks: dict[str, Check]) -> Kind:
        """The kind with its checks in full. Raises KeyError where a check is not in checks.toml."""
        return Kind(
            key=self.key,
            name=self.name,
            family=self.family,
            what=self.what,
            material=self.material,
            rated_by=self.rated_by,
            purposes=self.purposes,
            barred=self.barred,
            sizes=self.size,
            measures=self.measure,
            checks=tuple(checks[key] for key in self.checks),
            every_days=self.every_days,
            every_days_severe=self.every_days_severe,
            every_days_special=self.every_days_special,
            reading_every_days=self.reading_every_days,
            steel_grade=self.steel_grade,
            look_first=self.look_first,
            source=self.source,
        )


class Example(Struct, frozen=True, forbid_unknown_fields=True):
    """One example of a rule, run as a test: given this value (and limit), expect this outcome."""

    given: str
    expect: str
    limit: str = ""


class Rule(Struct, frozen=True, forbid_unknown_fields=True, rename={"for_": "for", "otherwise": "else"}):
    """One rule of the law.

    for_: kinds or families, or "*". must: at_least, at_most, above, below (numbers); none_of (words); present.
    limit: a text with unit, or words; limit_is: the named quantity that is the limit. otherwise: retire, hold, derate
    or note. derate_by: the named quantity that is lost. missing: what an unknown value does: hold or note.
    fixed: no club may loosen its limit, since a single one of what it counts is a fault.
    """

    id: str
    for_: tuple[str, ...]
    quantity: str
    must: str
    otherwise: str
    missing: str
    says: str
    source: str
    since: date
    purposes: tuple[Purpose, ...] = ()
    limit: str = ""
    words: tuple[str, ...] = ()
    limit_is: str = ""
    derate_by: str = ""
    answerable: bool = True  # False: a slight fault that no opinion answers, since it takes a test or a look
    example: tuple[Example, ...] = ()
    fixed: bool = False


class Setting(Struct, frozen=True, forbid_unknown_fields=True):
    """A figure the sums need that a club may set. dimension: of units.Dimension.

    stricter: which way is the safe one, "more" or "less"; where that is not said, no club may set it.
    """

    key: str
    value: str
    dimension: str
    says: str
    source: str
    stricter: str = ""


class Source(Struct, frozen=True, forbid_unknown_fields=True):
    """Where a limit comes from. text prints; certainty: read, second_hand, from_memory, common_practice, club."""

    key: str
    text: str
    certainty: str


class Profile(Struct, frozen=True, forbid_unknown_fields=True):
    """A named set of changes that another printed source carries. limit, setting, interval, outcome: as in a club's
    file, read by club_texts. source: a key of sources.toml."""

    key: str
    says: str
    source: str
    since: date
    limit: tuple[dict[str, Any], ...] = ()
    setting: tuple[dict[str, Any], ...] = ()
    interval: tuple[dict[str, Any], ...] = ()
    outcome: tuple[dict[str, Any], ...] = ()


class CheckText(Struct, frozen=True, forbid_unknown_fields=True):
    """An entry of checks.toml."""

    key: str
    name: str
    asks: str
    bad: str
    slight: str = ""
    before_use: bool = True
    hidden: bool = False

    def as_check(self) -> Check:
        """The check as the rooms share it."""
        return Check(self.key, self.name, self.asks, self.bad, self.slight, self.before_use, self.hidden)


Shape = TypeVar("Shape")
Say = Callable[[str], str]


def converted(tables: Iterable[Any], shape: type[Shape], where: str, say: Say) -> tuple[list[Shape], list[str]]:
    """Each table as the shape, and one line per table that is not one. say: puts a text into the officer's language."""
    good: list[Shape] = []
    faults: list[str] = []
    for table in tables:
        name = table.get("id") or table.get("key") or "?" if isinstance(table, dict) else "?"
        try:
            good.append(msgspec.convert(_spoken(table, say), shape))
        except msgspec.ValidationError as error:
            faults.append(f"{where}: {name}: {error}")
    return good, faults


def _spoken(given: Any, say: Say) -> Any:
    """The same with every text that is read by people in the officer's language, in tables within tables too."""
    if isinstance(given, dict):
        return {
            key: say(one) if key in _SPOKEN and isinstance(one, str) else _spoken(one, say)
            for key, one in given.items()
        }
    return [_spoken(one, say) for one in given] if isinstance(given, list) else given


def taken(
    named_texts: Mapping[str, str], name: str, table: str, shape: type[Shape], say: Say, faults: list[str]
) -> list[Shape]:
    """What the tables called `table` of a file say; the faults of those that are not of the shape are added to."""
    good, bad = converted(tables_of(named_texts[name], table), shape, name, say)
    faults += bad
    return good


def tables_of(text: str, name: str) -> list[Any]:
    """The array of tables called `name` in a TOML text."""
    found: list[Any] = tomli.loads(text).get(name, [])
    return found
