"""A kit proposed for a trip."""

from msgspec import Struct


class Taken(Struct, frozen=True):
    """A piece to take. need: what it is for, in words."""

    tag: str
    kind_name: str
    need: str


class Packed(Struct, frozen=True):
    """The pieces to take, what no piece of the store serves, and the pieces left in the store with the reason."""

    takes: tuple[Taken, ...]
    lacks: tuple[str, ...]
    stays: tuple[tuple[str, str], ...] = ()
