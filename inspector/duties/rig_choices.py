"""What can be chosen of a pull, in words: the ground, whose scale for it, whose rule for the distance."""

from msgspec import Struct

from inspector.gear.rig import Footing
from inspector.rulebook.rigs.flying import rule_choices
from inspector.rulebook.rigs.resistance import footing_word, scale_choices


class RigChoices(Struct, frozen=True):
    """Words with what they stand for."""

    footings: tuple[tuple[str, Footing], ...]
    scales: tuple[tuple[str, str], ...]
    distances: tuple[tuple[str, str], ...]


def rig_choices() -> RigChoices:
    """Everything that can be chosen."""
    footings = tuple((footing_word(one), one) for one in Footing)
    return RigChoices(footings, scale_choices(), rule_choices())
