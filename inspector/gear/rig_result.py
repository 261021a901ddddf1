"""What checking a rig returns: data with its words; forces in newtons, lengths in metres, energy in joules."""

from datetime import date
from enum import StrEnum

from msgspec import Struct

from inspector.gear.rig import Rig


class RigOutcome(StrEnum):
    """Worst wins: never > unsound > caution > sound."""

    SOUND = "sound"
    CAUTION = "caution"
    UNSOUND = "unsound"  # as it is rigged, or as long as something is unknown
    NEVER = "never"  # a joint that no strength makes right

    @property
    def severity(self) -> int:
        """0 for sound to 3 for never."""
        return list(RigOutcome).index(self)


class Assumption(Struct, frozen=True):
    """Something the sums take for granted: what, the value as it prints, why, the source as it prints.

    typed: somebody wrote it for this pull; otherwise the rulebook's own figure stands.
    """

    what: str
    value: str
    why: str
    source: str
    typed: bool = False


class Load(Struct, frozen=True):
    """The pull in the line that the method can put on, an upper bound.

    at: tags of the parts it arises in. likely_n: with the bogged vehicle giving way; None where that has no meaning.
    needed_n: what the ground and slope ask for at the bogged vehicle; offered_n: what the method brings there.
    energy_j: in the line at that pull. steps: the sum in words, one line each. scales: whose figures differ for this
    ground: name and needed_n.
    """

    pull_n: float
    at: tuple[str, ...]
    likely_n: float | None
    needed_n: float | None
    offered_n: float
    energy_j: float
    steps: tuple[str, ...]
    assumptions: tuple[Assumption, ...]
    scales: tuple[tuple[str, float], ...] = ()

    @property
    def moves(self) -> bool | None:
        """Whether the pull overcomes what holds the vehicle; None where nobody said what it stands in."""
        return None if self.needed_n is None else self.offered_n > self.needed_n


class LinkUse(Struct, frozen=True):
    """One part of the rig: what it bears, what it stands, and how much of that is used.

    capacity_n: characteristic minimum breaking strength on the day, wet and joint taken off; None: nobody knows, and
    why says so. margin_factor: what the kind must keep over the force. passes_on: it bears the pull by its own make
    (a winch that stalls) and has no strength to compare. side: the vehicle's tag it hangs on, or empty between.
    kind: the key of its kind, or of a loose end, which tells how it is drawn; length_m: of a line, where it is known.
    """

    tag: str
    kind_name: str
    role: str
    force_n: float
    capacity_n: float | None
    margin_factor: float
    why: str
    outcome: RigOutcome
    side: str = ""
    legs: int = 1  # how many like legs bear force_n each
    passes_on: bool = False
    taken_off: tuple[str, ...] = ()  # what was taken from its strength for this rig, in words
    kind: str = ""
    length_m: float | None = None

    @property
    def safety_factor(self) -> float | None:
        """Strength over force."""
        return self.capacity_n / self.force_n if self.capacity_n is not None and self.force_n > 0 else None

    @property
    def use_ratio(self) -> float | None:
        """Share of what it may bear: 1 is the limit."""
        return None if self.capacity_n is None else _share(self.force_n * self.margin_factor, self.capacity_n)


def _share(force_n: float, capacity_n: float) -> float:
    return force_n / capacity_n if capacity_n > 0 else float("inf")


class JointUse(Struct, frozen=True):
    """How two neighbours are joined and what passes through.

    picture: which section shows it: "double_shear", "single_shear", "weld_tension", "bare_tube", "tie_down", "" for
    none. planes: how many sections of a pin share the pull; 0 where it is no pin. sums: the numbers of this rig in
    words; figures: the same in SI by name (pin_m, lever_m, shank_m, moment_n_m, stress_pa, first_set_n, strength_n).
    """

    one: str
    other: str
    how: str
    name: str
    force_n: float
    outcome: RigOutcome
    says: str
    source: str
    picture: str = ""
    planes: int = 0
    sums: tuple[str, ...] = ()
    figures: tuple[tuple[str, float], ...] = ()

    def figure(self, name: str) -> float | None:
        """One of the numbers in SI."""
        return next((value for key, value in self.figures if key == name), None)


class RigFinding(Struct, frozen=True):
    """Something that decides the outcome, or that was looked at and passes. about: tags."""

    key: str
    outcome: RigOutcome
    says: str
    source: str
    about: tuple[str, ...] = ()


class Flying(Struct, frozen=True):
    """What flies if one part lets go, all the energy taken as motion. parts: tags that fly; speed in m/s."""

    link: str
    parts: tuple[str, ...]
    mass_kg: float
    speed_m_per_s: float
    energy_j: float
    says: str


class Change(Struct, frozen=True):
    """A change worth making and what comes of it: the outcome and the least safety factor after it.

    rig: the changed rig, where it is one that can be taken as it stands.
    """

    key: str
    says: str
    outcome: RigOutcome
    safety_factor: float | None
    rig: Rig | None = None


class Sensitivity(Struct, frozen=True):
    """How the pull grows: (speed in m/s, bound in N) and (footing key, its word, needed N, likely N or None).

    greatest_speed_m_per_s: at which the first part has used up what it may bear; None where no speed helps or the
    method has none. limits_at: that part's tag.
    """

    speeds: tuple[tuple[float, float], ...] = ()
    depths: tuple[tuple[str, str, float, float | None], ...] = ()
    greatest_speed_m_per_s: float | None = None
    limits_at: str = ""


class RigResult(Struct, frozen=True):
    """A rig checked. weakest: the tag with the least strength over force. headline: one sentence for a member.

    Nothing is hidden: links, joints and findings hold those that pass too.
    """

    rig: Rig
    on: date
    outcome: RigOutcome
    headline: str
    load: Load
    links: tuple[LinkUse, ...]
    joints: tuple[JointUse, ...]
    findings: tuple[RigFinding, ...]
    weakest: str
    safety_factor: float | None
    flying: tuple[Flying, ...]
    stand_off_m: float
    stand_off_rule: str
    changes: tuple[Change, ...]
    sensitivity: Sensitivity
    cautions: tuple[str, ...]
    rulebook: str
    program: str

    def link(self, tag: str) -> LinkUse | None:
        """The part with this tag."""
        return next((one for one in self.links if one.tag == tag), None)

    @property
    def least_margin(self) -> float | None:
        """The least of strength over what is asked for (force times margin); 1 is the limit. None: not all known."""
        shares = [one.use_ratio for one in self.links if not one.passes_on]
        if not shares or any(share is None for share in shares):
            return None
        most = max(share for share in shares if share is not None)
        return 1 / most if most > 0 else float("inf")


class PairLine(Struct, frozen=True):
    """Whether the kit makes a sound rig for one vehicle to pull another. outcome None: it makes none at all.

    up_to_m_per_s: the speed it is sound up to, where that is less than the speed that stands when nobody said one.
    says: one sentence. runs: of the best rig.
    """

    method: str
    pulling: str
    bogged: str
    outcome: RigOutcome | None
    says: str
    runs: tuple[tuple[str, ...], ...] = ()
    up_to_m_per_s: float | None = None
    safety_factor: float | None = None


class LeftOut(Struct, frozen=True):
    """A piece of the kit that the proposed rig does not use, and why."""

    tag: str
    why: str


class Proposed(Struct, frozen=True):
    """The best rig found for two vehicles and a method; None where no kit piece makes one, and missing says what."""

    method: str
    pulling: str
    bogged: str
    result: RigResult | None
    left_out: tuple[LeftOut, ...] = ()
    missing: tuple[str, ...] = ()
