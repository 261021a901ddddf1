"""What was typed into a form, by key; each getter knows what it gives."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import TypeVar

from inspector.units import Figure

Value = TypeVar("Value")


class Values:
    """The values of a form's fields. A getter for another sort of field is a fault of the program and raises."""

    def __init__(self, given: Mapping[str, object]) -> None:
        self._given = given

    def has(self, key: str) -> bool:
        """Whether the form asks for it."""
        return key in self._given

    def text(self, key: str) -> str:
        """What was written, without blanks around it."""
        return self._of(key, str).strip()

    def figure(self, key: str) -> Figure | None:
        """A figure, or None where none was typed."""
        return None if self._given[key] is None else self._of(key, Figure)

    def number(self, key: str) -> int | None:
        """A whole number, or None where none was typed."""
        return None if self._given[key] is None else self._of(key, int)

    def day(self, key: str) -> date | None:
        """A day, or None where none was typed."""
        return None if self._given[key] is None else self._of(key, date)

    def tick(self, key: str) -> bool:
        """Whether a statement was made."""
        return self._of(key, bool)

    def one(self, key: str, of: type[Value]) -> Value:
        """What was chosen, of this type."""
        return self._of(key, of)

    def said(self, key: str) -> bool | None:
        """Yes, no, or None where nobody said."""
        return None if self._given[key] is None else self._of(key, bool)

    def tags(self, key: str) -> tuple[str, ...]:
        """The tags, each once, in the order in which they were written."""
        return tuple(dict.fromkeys(self._of(key, str).split()))

    def some(self, key: str) -> tuple[str, ...]:
        """Those of a list that were chosen."""
        return tuple(self._of(key, str).splitlines())

    def files(self, key: str) -> tuple[Path, ...]:
        """The files named."""
        return tuple(Path(one) for one in self._of(key, str).splitlines() if one.strip())

    def _of(self, key: str, of: type[Value]) -> Value:
        value = self._given[key]
        if not isinstance(value, of):
            raise TypeError(f"{key} holds {type(value).__name__}, not {of.__name__}")
        return value
