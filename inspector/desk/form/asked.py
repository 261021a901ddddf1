"""What a form asks, as data. A form is a list of these; its page makes the fields."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date

from inspector.units import Dimension


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Line(Asked):
    """A line of text. offers: what may be meant, shown while typing. stands: what it says before anybody typed."""

    example: str = ""
    offers: tuple[str, ...] = ()
    stands: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose(Asked):
    """A text of several lines."""

    stands: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Number(Asked):
    """A figure with its unit. stands: as it was typed once."""

    dimension: Dimension
    example: str = ""
    stands: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Count(Asked):
    """A whole number without a unit, not below least."""

    least: int = 0
    stands: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Day(Asked):
    """A day. stands: the day it says beforehand; None where it begins empty."""

    stands: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OneOf(Asked):
    """One of several, as words and values. stands: the value chosen beforehand; else the first."""

    choices: Sequence[tuple[str, object]] = ()
    stands: object = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SomeOf(Asked):
    """Any number of a list, as words and the texts they stand for. stands: those chosen beforehand."""

    choices: Sequence[tuple[str, str]] = ()
    stands: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick(Asked):
    """A statement that is made or not. The label is what is stated."""

    stands: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Tags(Asked):
    """Tags of pieces, scanned or typed, with blanks or line ends between them."""

    stands: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Secret(Asked):
    """A passphrase: shown as dots and never kept in a draft."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Files(Asked):
    """Files of this machine, by their paths. one: no more than one. folder: a folder instead. new: it need not be there
    yet."""

    one: bool = False
    folder: bool = False
    new: bool = False
    stands: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a form under a heading; fields without one come first."""

    title: str
    fields: tuple[Asked, ...] = field(default_factory=tuple)
