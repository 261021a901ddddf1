"""A kind of gear: what it is made of, how it is rated, what is measured and asked, and how often."""

from enum import StrEnum
from functools import cached_property

from msgspec import Struct

from inspector.gear.outcome import Purpose
from inspector.language import tr
from inspector.units import Dimension


class Basis(StrEnum):
    """What the figure on the piece means."""

    WLL = "wll"  # working load limit: a design factor stands between it and failure
    MBS = "mbs"  # minimum breaking strength: the failure load itself
    TOWED_MASS = "towed_mass"  # greatest mass of the trailer
    LINE_PULL = "line_pull"  # what a winch pulls on the first layer
    UNRATED = "unrated"


class Service(StrEnum):
    """How hard a life a piece leads; it sets the time between inspections."""

    NORMAL = "normal"
    SEVERE = "severe"  # salt or mud, or a past that nobody knows
    SPECIAL = "special"  # an event, heat or chemicals within the last year


class Grade(StrEnum):
    """What was seen at one check."""

    GOOD = "good"
    SLIGHT = "slight"
    BAD = "bad"
    NOT_SEEN = "not_seen"


def kind_word(written: str) -> str:
    """A word of a kind's file in the officer's language: the name of a measure's point, a material, a grade of steel.

    Readings and rules are held against such words, so the register and the kinds keep them as the file has them. What
    a person wrote himself comes back as it is.
    """
    return tr(written)


class Check(Struct, frozen=True):
    """One thing to look at. `asks` is what the checker reads; `slight` and `bad` say what those grades mean."""

    key: str
    name: str
    asks: str
    bad: str
    slight: str = ""  # empty: the check knows only good and bad
    before_use: bool = True  # also asked on the pre-trip sheet
    hidden: bool = False  # cannot be seen when the piece is in use: periodic inspection only


class Measure(Struct, frozen=True):
    """One thing to measure. points: the named places; empty for one place, the worst.

    compare_with: the size of the item this is held against, e.g. a bow's diameter as new.
    """

    key: str
    name: str
    dimension: Dimension
    how: str
    points: tuple[str, ...] = ()
    compare_with: str = ""
    required: bool = True


class Size(Struct, frozen=True):
    """A dimension of the piece as new, asked when it is booked in."""

    key: str
    name: str
    dimension: Dimension = Dimension.LENGTH
    required: bool = False


class Barred(Struct, frozen=True):
    """A purpose this kind must never serve, and the reason a person understands."""

    purpose: Purpose
    why: str


class Kind(Struct, frozen=True, dict=True):  # dict: for what is worked out once
    """A kind of gear as its data file describes it."""

    key: str
    name: str
    family: str
    what: str
    material: str
    rated_by: tuple[Basis, ...]
    purposes: tuple[Purpose, ...]
    barred: tuple[Barred, ...]
    sizes: tuple[Size, ...]
    measures: tuple[Measure, ...]
    checks: tuple[Check, ...]
    every_days: int
    every_days_severe: int
    every_days_special: int
    reading_every_days: int = 0  # 0: no wall reading is asked of this kind
    steel_grade: str = ""
    look_first: int = 50  # place in the walk round vehicle and bag
    source: str = ""

    def check(self, key: str) -> Check | None:
        """The check with this key."""
        return self._checks.get(key)

    @cached_property
    def _checks(self) -> dict[str, Check]:
        return {one.key: one for one in reversed(self.checks)}  # the first of a name is the one

    def measure(self, key: str) -> Measure | None:
        """The measure with this key."""
        return self._measures.get(key)

    @cached_property
    def _measures(self) -> dict[str, Measure]:
        return {one.key: one for one in reversed(self.measures)}

    @cached_property
    def served(self) -> tuple[Purpose, ...]:
        """The purposes it is meant for and not barred from."""
        return tuple(one for one in self.purposes if self.may(one))

    def may(self, purpose: Purpose) -> bool:
        """Whether this kind is ever meant for the purpose."""
        return purpose in self.purposes and all(bar.purpose is not purpose for bar in self.barred)
