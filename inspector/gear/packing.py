"""A kit proposed for a trip."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Taken:
    """A piece to take. need: what it is for, in words."""

    tag: str
    kind_name: str
    need: str


@dataclass(frozen=True, slots=True)
class Packed:
    """The pieces to take, what no piece of the store serves, and the pieces left in the store with the reason."""

    takes: tuple[Taken, ...]
    lacks: tuple[str, ...]
    stays: tuple[tuple[str, str], ...] = ()
