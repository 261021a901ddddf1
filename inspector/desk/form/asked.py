"""What a form asks, as data. A form is a list of these; its page makes the fields."""

from collections.abc import Sequence
from datetime import date

from msgspec import Struct, field

from inspector.units import Dimension


class Asked(Struct, frozen=True, kw_only=True):
    """One field. key: under which its value is found. hint: what helps to fill it in, below it.

    needed: the deed refuses without it; it is said beside the label. names: what refusals call it beside its label.
    more: folded away, since it is seldom filled in. drafted: whether it may be set aside: not what may hold a password.
    """

    key: str
    label: str
    hint: str = ""
    needed: bool = False
    names: tuple[str, ...] = ()
    more: bool = False
    drafted: bool = True

    @property
    def called(self) -> frozenset[str]:
        """All names by which a refusal may mean this field, in small letters."""
        return frozenset(one.casefold() for one in (self.label, self.key, self.key.replace("_", " "), *self.names))


class Line(Asked, frozen=True, kw_only=True):
    """A line of text. offers: what may be meant, shown while typing. stands: what it says before anybody typed."""

    example: str = ""
    offers: tuple[str, ...] = ()
    stands: str = ""


class Prose(Asked, frozen=True, kw_only=True):
    """A text of several lines."""

    stands: str = ""


class Number(Asked, frozen=True, kw_only=True):
    """A figure with its unit. stands: as it was typed once."""

    dimension: Dimension
    example: str = ""
    stands: str = ""


class Count(Asked, frozen=True, kw_only=True):
    """A whole number without a unit, not below least."""

    least: int = 0
    stands: str = ""


class Day(Asked, frozen=True, kw_only=True):
    """A day. stands: the day it says beforehand; None where it begins empty."""

    stands: date | None = None


class OneOf(Asked, frozen=True, kw_only=True):
    """One of several, as words and values. stands: the value chosen beforehand; else the first."""

    choices: Sequence[tuple[str, object]] = ()
    stands: object = None


class SomeOf(Asked, frozen=True, kw_only=True):
    """Any number of a list, as words and the texts they stand for. stands: those chosen beforehand."""

    choices: Sequence[tuple[str, str]] = ()
    stands: tuple[str, ...] = ()


class Tick(Asked, frozen=True, kw_only=True):
    """A statement that is made or not. The label is what is stated."""

    stands: bool = False


class Tags(Asked, frozen=True, kw_only=True):
    """Tags of pieces, scanned or typed, with blanks or line ends between them."""

    stands: tuple[str, ...] = ()


class Secret(Asked, frozen=True, kw_only=True):
    """A passphrase: shown as dots and never kept in a draft."""


class Files(Asked, frozen=True, kw_only=True):
    """Files of this machine, by their paths. one: no more than one. folder: a folder instead. new: it need not be there
    yet."""

    one: bool = False
    folder: bool = False
    new: bool = False
    stands: tuple[str, ...] = ()


class Part(Struct, frozen=True):
    """A part of a form under a heading; fields without one come first."""

    title: str
    fields: tuple[Asked, ...] = field(default_factory=tuple)
