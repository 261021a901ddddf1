"""The shapes of joints.toml: what each kind is in a rig, and how two neighbours may be joined."""

from functools import cache

from msgspec import Struct

from inspector.gear.rig import LooseEnd
from inspector.gear.rig_result import RigOutcome
from inspector.units import Dimension, read


class Role(Struct, frozen=True, forbid_unknown_fields=True):
    """What kinds of gear are in a rig. margin: which settings tell what it must keep.

    fitted: it sits on a vehicle; sits: it may be left there as a part of it.

    weighs: a generic one; per_metre: each metre of it. stretch_least, stretch_most: settings, for what stretches.
    """

    key: str
    kinds: tuple[str, ...]
    margin: str
    weighs: str
    picture: str
    fitted: bool = False
    sits: bool = False
    per_metre: bool = False
    fibre: str = ""
    stretch_least: str = ""
    stretch_most: str = ""

    @property
    def may_sit(self) -> bool:
        """Whether it may be written down as a part of a vehicle; what it may not rides along and is lent."""
        return self.fitted or self.sits

    @property
    def weighs_kg(self) -> float:
        """Kilograms, or kilograms per metre."""
        return _kilograms(self.weighs)


@cache
def _kilograms(text: str) -> float:
    """A weight's text is read once, not for each part that may fly."""
    return read(text, Dimension.MASS, field=text).si


class Joint(Struct, frozen=True, forbid_unknown_fields=True):
    """One way to join two roles. between: any of the first with any of the second. left: share of strength left."""

    key: str
    between: tuple[tuple[str, ...], tuple[str, ...]]
    name: str
    outcome: RigOutcome
    says: str
    source: str
    picture: str = ""
    planes: int = 0
    left: str = ""

    def fits(self, one: str, other: str) -> bool:
        """Whether it joins these two roles, in either order."""
        first, second = self.between
        return (one in first and other in second) or (other in first and one in second)

    @property
    def left_ratio(self) -> float:
        """Share of the strap's strength that the joint leaves."""
        return read(self.left, Dimension.RATIO, field=self.key).si if self.left else 1.0


def rig_faults(
    roles: list[Role], joints: list[Joint], kinds: set[str], sources: set[str], settings: set[str]
) -> list[str]:
    """What does not hold together: unknown kinds, roles, sources, settings; a kind without a role or with two."""
    named = [kind for role in roles for kind in role.kinds]
    known = {role.key for role in roles} | {end.value for end in LooseEnd}
    faults = [f"role of {kind!r}: no such kind" for kind in sorted(set(named) - kinds)]
    faults += [f"kind {kind!r} has no role in joints.toml" for kind in sorted(kinds - set(named))]
    faults += [f"kind {kind!r} has two roles" for kind in sorted({one for one in named if named.count(one) > 1})]
    for role in roles:
        asked = {key for key in (role.stretch_least, role.stretch_most) if key}
        faults += [f"role {role.key!r}: no setting {key!r}" for key in sorted(asked - settings)]
    for joint in joints:
        missing = {one for side in joint.between for one in side} - known
        faults += [f"joint {joint.key!r}: no role {one!r}" for one in sorted(missing)]
        faults += [f"joint {joint.key!r}: unknown source" for _ in {joint.source} - sources]
    return faults
