"""Reads what a person wrote in a TOML file: each value with its sort, every fault with its field and the words allowed.

Nothing is ignored: a key that is not known is refused, since it may be a known one misspelt.
"""

from collections.abc import Collection, Mapping
from datetime import date, datetime
from enum import StrEnum
from typing import TypeVar

import tomli

from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Dimension, Figure, read

_MOST_SIGNS = 200_000
_DECIMAL = "decimal"

Word = TypeVar("Word", bound=StrEnum)
Value = TypeVar("Value")


def decoded(body: bytes, what: str) -> str:
    """The text of a file's bytes. what: its name, for the refusal."""
    try:
        return body.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = body.count(b"\n", 0, error.start) + 1
        why = tr("Line {line} holds signs that are not UTF-8.", line=line)
        raise Refused(what, why, tr("Save the file as UTF-8 text.")) from error


def tables_in(text: str, what: str) -> dict[str, object]:
    """The tables of a file as they are. what: its name, for the refusal."""
    if len(text) > _MOST_SIGNS:
        raise Refused(what, tr("It is far too long."), tr("Write one rig or one trip in a file."))
    try:
        return tomli.loads(text)
    except (ValueError, RecursionError) as error:
        why = tr("It cannot be read: {why}.", why=str(error).rstrip("."))
        raise Refused(what, why, tr("Mend that line: a text stands in quotation marks, a list in [ ].")) from error


class Typed:
    """One table of a file, read key by key. where: what stands before a key in a refusal, e.g. "conditions."."""

    def __init__(self, table: Mapping[str, object], where: str, decimal: str) -> None:
        self._table = table
        self._where = where
        self._decimal = decimal

    @classmethod
    def of_file(cls, text: str, what: str, decimal: str) -> "Typed":
        """A whole file. Its own decimal sign, if it names one, goes before the one given."""
        top = cls(tables_in(text, what), "", decimal)
        own = top.text(_DECIMAL) or decimal
        if own not in {".", ","}:
            raise Refused(_DECIMAL, tr("“{sign}” is no decimal sign.", sign=own), tr("Write “.” or “,”."))
        return cls(top._table, "", own)

    def field(self, key: str) -> str:
        """The key with what stands before it."""
        return f"{self._where}{key}"

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys, in the order of the file."""
        return tuple(self._table)

    def has(self, key: str) -> bool:
        """Whether the key is there at all."""
        return key in self._table

    def is_table(self, key: str) -> bool:
        """Whether a table of its own stands there."""
        return isinstance(self._table.get(key), dict)

    def check_keys(self, known: Collection[str]) -> None:
        """Refuse a key that is not one of these."""
        for key in self._table:
            if key not in known:
                why = tr("“{key}” is not known here.", key=key)
                raise Refused(self.field(key), why, tr("Use one of: {words}.", words=", ".join(known)))

    def need(self, *keys: str) -> None:
        """Refuse a table that lacks one of these."""
        for key in keys:
            if key not in self._table:
                raise Refused(self.field(key), tr("It is missing."), tr("Write a line for it."))

    def text(self, key: str) -> str:
        """A text; empty where it is not there."""
        return self._of(key, str, tr("Write a text in quotation marks.")) or ""

    def whole(self, key: str) -> int | None:
        """A whole number, or None."""
        return self._of(key, int, tr("Write a whole number, without quotation marks."))

    def yes(self, key: str) -> bool | None:
        """True or false, or None."""
        return self._of(key, bool, tr("Write true or false, without quotation marks."))

    def day(self, key: str) -> date | None:
        """A day, or None."""
        return self._of(key, date, tr("Write the day without quotation marks, for example 2026-11-25."))

    def word(self, key: str, words: type[Word]) -> Word | None:
        """One of the words of an enumeration, or None."""
        typed = self.text(key) if self.has(key) else None
        if typed is None:
            return None
        try:
            return words(typed)
        except ValueError as error:
            why = tr("“{typed}” is not one of its words.", typed=typed)
            listed = ", ".join(one.value for one in words)
            raise Refused(self.field(key), why, tr("Use one of: {words}.", words=listed)) from error

    def figure(self, key: str, dimension: Dimension) -> Figure | None:
        """A figure with its unit, or None."""
        typed = self._of(key, str, tr("Write it with its unit in quotation marks, for example “6 km/h”."))
        return None if typed is None else read(typed, dimension, field=self.field(key), decimal=self._decimal)

    def table(self, key: str) -> "Typed":
        """A table below this one; an empty one where it is not there."""
        found = self._of(key, dict, tr("Write a table: [{key}] on a line of its own.", key=self.field(key)))
        return Typed(found or {}, f"{self.field(key)}.", self._decimal)

    def tables(self, key: str) -> tuple["Typed", ...]:
        """The tables of a list, each told by its number."""
        what = tr("Write a table for each: [[{key}]] on a line of its own.", key=self.field(key))
        found = self._of(key, list, what) or []
        if not all(isinstance(one, dict) for one in found):
            raise Refused(self.field(key), tr("That is something else."), what)
        return tuple(
            Typed(one, f"{self.field(key)} {number}.", self._decimal) for number, one in enumerate(found, start=1)
        )

    def texts(self, key: str) -> tuple[str, ...]:
        """A list of texts."""
        what = tr('Write a list of texts in quotation marks: ["A", "B"].')
        found = self._of(key, list, what) or []
        if not all(isinstance(one, str) for one in found):
            raise Refused(self.field(key), tr("That is something else."), what)
        return tuple(found)

    def lists(self, key: str) -> tuple[tuple[str, ...], ...]:
        """A list of lists of texts."""
        what = tr('Write lists of tags in quotation marks: [["A", "B"], ["B", "C"]].')
        found = self._of(key, list, what) or []
        for one in found:
            if not isinstance(one, list) or not all(isinstance(tag, str) for tag in one):
                raise Refused(self.field(key), tr("That is something else."), what)
        return tuple(tuple(one) for one in found)

    def _of(self, key: str, sort: type[Value], what_to_do: str) -> Value | None:
        """The value if it is of this sort; true is no number and a moment is no day."""
        value = self._table.get(key)
        if value is None:
            return None
        odd = (isinstance(value, bool) and sort is not bool) or isinstance(value, datetime)
        if odd or not isinstance(value, sort):
            raise Refused(self.field(key), tr("“{value}” is something else.", value=value), what_to_do)
        return value
