"""What a form was opened on, held against what stands when it is kept: nobody's word is written over unseen.

What somebody else wrote meanwhile into another field stays as it is. Where it is the same field, the deed is refused
once with both values; whoever then does it again has seen the other one and lets his own stand.
"""

from collections.abc import Callable, Mapping
from datetime import date
from enum import Enum
from typing import Any, Generic, TypeVar

from msgspec.structs import replace

from inspector.language import show_day, tr
from inspector.refused import Refused

Facts = TypeVar("Facts")
_SHOWN_SIGNS = 60


class Overtaken(Refused):
    """Somebody else wrote into the same fields meanwhile.

    seen: what the form goes on from: as it was opened, but with the others' values in these fields. parts: a refusal
    for each of the fields.
    """

    def __init__(self, seen: object, parts: tuple[Refused, ...]) -> None:
        super().__init__(parts[0].field, parts[0].why, parts[0].what_to_do)
        self.seen, self.parts = seen, parts


def typed_anew(seen: Facts, wanted: Facts, names: Mapping[str, str]) -> Callable[[Facts], Facts]:
    """The change of what was typed anew alone. names: the fields it may be, and how a refusal calls each."""

    def edited(stands: Facts) -> Facts:
        check_overtaken(seen, stands, wanted, names)
        new = {key: getattr(wanted, key) for key in names if getattr(wanted, key) != getattr(seen, key)}
        return replace(stands, **new)  # type: ignore[type-var]

    return edited


def check_overtaken(seen: Any, stands: Any, wanted: Any, names: Mapping[str, str]) -> None:
    """Refuse a change of a field that somebody else changed to something else since the form was opened.

    seen: as the form was opened on; stands: as it is now; wanted: as it would be.
    """
    lost = [key for key in names if _is_lost(*(getattr(one, key) for one in (seen, stands, wanted)))]
    if lost:
        parts = tuple(_refused(names[key], getattr(stands, key), getattr(wanted, key)) for key in lost)
        raise Overtaken(replace(seen, **{key: getattr(stands, key) for key in lost}), parts)


def _is_lost(seen: object, stands: object, wanted: object) -> bool:
    return stands != seen and wanted not in (seen, stands)


def _refused(name: str, theirs: object, own: object) -> Refused:
    values = {"theirs": value_words(theirs), "own": value_words(own)}
    why = tr("Somebody wrote {theirs} here meanwhile; you wrote {own}.", **values)
    return Refused(name, why, tr("Do it again to let yours stand, or write the other one."))


def value_words(value: Any) -> str:
    """A value as a reader knows it, in quotation marks; what is long only by its beginning."""
    if isinstance(value, date):
        return show_day(value)
    text = str(getattr(value, "as_typed", value.value if isinstance(value, Enum) else value or ""))
    if not text:
        return tr("nothing")
    return tr("“{text}”", text=text if len(text) <= _SHOWN_SIGNS else f"{text[:_SHOWN_SIGNS]}…")


class Noted(Generic[Facts]):
    """A change that remembers what stood before it, for whoever types a command without having seen it."""

    def __init__(self, edit: Callable[[Facts], Facts], names: Mapping[str, str]) -> None:
        self._edit, self._names, self._stood = edit, names, list[Facts]()

    def __call__(self, stands: Facts) -> Facts:
        """Make the change."""
        self._stood.append(stands)
        return self._edit(stands)

    def words(self, kept: Facts) -> tuple[str, ...]:
        """What it took the place of, a line for each field."""
        pairs = {key: (getattr(self._stood[-1], key), getattr(kept, key)) for key in self._names}
        said = tr("{name}: {after}, before {before}.")
        return tuple(
            said.format(name=self._names[key], after=value_words(now), before=value_words(then))
            for key, (then, now) in pairs.items()
            if then != now
        )
