"""A rig as a graph: parts, how neighbours are joined, and which vehicle each end hangs on. Bad rigs are refused."""

from itertools import pairwise

from msgspec import Struct, field

from inspector.gear.rig import GROUND, LooseEnd, RigFacts, RigPiece
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rig_texts import Joint, Role


class Part(Struct, frozen=True):
    """One part of a rig. role: a key of joints.toml or of LooseEnd. body: the vehicle's tag or "ground" it sits on."""

    tag: str
    role: str
    text: Role | None = None
    piece: RigPiece | None = None
    body: str = ""

    @property
    def name(self) -> str:
        """What it is, for a sentence."""
        if self.piece is not None:
            return self.piece.judged.dossier.kind.name
        return loose_name(self.role)


class Joined(Struct, frozen=True):
    """Two neighbours; joint None: joints.toml knows no way to join them."""

    one: str
    other: str
    joint: Joint | None


class Layout(Struct, frozen=True):
    """The rig's parts by tag and its joints."""

    facts: RigFacts
    book: Rulebook
    parts: dict[str, Part]
    joined: tuple[Joined, ...]
    _near: dict[str, list[str]] = field(default_factory=dict)

    def near(self, tag: str) -> tuple[str, ...]:
        """The neighbours of a part, in the order of the runs."""
        return tuple(self._near.get(tag, ()))

    def between(self, one: str, other: str) -> Joined:
        """The joint of two neighbours."""
        return next(each for each in self.joined if {each.one, each.other} == {one, other})

    def of_role(self, *roles: str) -> tuple[Part, ...]:
        """The parts with one of these roles."""
        return tuple(part for part in self.parts.values() if part.role in roles)

    def on_body(self, body: str) -> tuple[Part, ...]:
        """The parts that sit on a vehicle or the ground."""
        return tuple(part for part in self.parts.values() if part.body == body)


def loose_name(role: str) -> str:
    """What an end that no register holds is called."""
    names = {
        LooseEnd.TREE: tr("Tree"),
        LooseEnd.GROUND_ANCHOR: tr("Ground anchor"),
        LooseEnd.TOWING_EYE: tr("Towing eye"),
        LooseEnd.TIE_DOWN: tr("Tie-down point"),
        LooseEnd.CHAIN_PLATE: tr("Safety-chain plate"),
    }
    return names[LooseEnd(role)]


def lay_out(facts: RigFacts, book: Rulebook) -> Layout:
    """The rig as a graph. Refused where it does not hold together as a drawing: loose ends, rings, unknown parts."""
    runs = [_with_bars(facts, book, run) for run in facts.rig.runs]
    tags = tuple(dict.fromkeys(tag for run in runs for tag in run))
    parts = {tag: _part(facts, book, tag) for tag in tags}
    pairs = list(dict.fromkeys(tuple(pair) for run in runs for pair in pairwise(run)))
    near: dict[str, list[str]] = {tag: [] for tag in tags}
    for one, other in pairs:
        if other in near[one]:
            raise bad(tr("{one} and {other} are joined twice.", one=one, other=other))
        near[one].append(other)
        near[other].append(one)
    joined = tuple(Joined(one, other, _joint(facts, book, parts[one], parts[other])) for one, other in pairs)
    made = Layout(facts, book, parts, joined, near)
    _check_vehicles(facts)
    _check_runs(facts)
    return made


def bad(why: str, to_do: str = "", name: str = "") -> Refused:
    """A refusal of the runs, or of another field by its name."""
    return Refused(name or tr("runs"), why, to_do or tr("Write each run from one end to the other, part by part."))


def _with_bars(facts: RigFacts, book: Rulebook, run: tuple[str, ...]) -> list[str]:
    """The run with the tow bar put before the receiver it carries, where the register knows one at that end."""
    found = list(run)
    for place, side in ((0, 0), (-1, len(found))):
        piece = facts.pieces.get(found[place]) if found else None
        if piece is None or piece.kind != "hitch_receiver" or piece.fitted is None:
            continue
        bar = bar_behind(facts, piece)
        if bar and bar not in facts.rig.tags and bar not in found:
            found.insert(side if side == 0 else len(found), bar)
    return found


def bar_behind(facts: RigFacts, receiver: RigPiece) -> str:
    """The tag of the tow bar that carries the receiver, empty where the register knows none; refused where it may be
    one of several."""
    bars = [one for one in facts.pieces.values() if one.kind == "tow_bar" and carries(one, receiver)]
    there = [one for one in bars if one.fitted and receiver.fitted and one.fitted.end == receiver.fitted.end] or bars
    if len(there) > 1:
        why = tr("{bars} may each carry {receiver}.", bars=", ".join(one.tag for one in there), receiver=receiver.tag)
        raise bad(why, tr("Write down where each sits, and take off in the register what is off the vehicle."))
    return there[0].tag if there else ""


def carries(bar: RigPiece, receiver: RigPiece) -> bool:
    """Whether the receiver sits on the bar: at one end of one vehicle; an end nobody wrote down may be that one."""
    return bar.fitted is not None and receiver.fitted is not None and bar.fitted.may_share_end(receiver.fitted)


def _part(facts: RigFacts, book: Rulebook, tag: str) -> Part:
    if "@" in tag:
        return _loose(facts, tag)
    piece = facts.pieces.get(tag)
    if piece is None:
        why = tr("No piece has the tag “{tag}”.", tag=tag)
        raise bad(why, tr("Use tags of the register, or an end such as tree@ground or tie_down@V-05."))
    role = book.roles[piece.kind]
    if role.key == "damper":
        why = tr("{tag} is a damper; it bears nothing and joins nothing.", tag=tag)
        raise bad(why, tr("Take it out of the runs and name it under dampers."))
    if not role.fitted:
        return Part(tag, role.key, role, piece)
    if piece.fitted is None:
        why = tr("Nobody wrote down on which vehicle {tag} sits.", tag=tag)
        raise bad(why, tr("Write it down first: inspector fit {tag} --vehicle …", tag=tag))
    return Part(tag, role.key, role, piece, piece.fitted.vehicle)


def _loose(facts: RigFacts, tag: str) -> Part:
    role, _, body = tag.partition("@")
    listed = ", ".join(end.value for end in LooseEnd)
    if role not in {end.value for end in LooseEnd}:
        raise bad(tr("“{role}” is no end of a rig.", role=role), tr("Use one of: {ends}.", ends=listed))
    bodies = (facts.rig.bogged, facts.rig.pulling, GROUND)
    if body not in bodies or not body:
        why = tr("{tag} sits on nothing that takes part.", tag=tag)
        raise bad(why, tr("After the @ write ground or one of the two vehicles."))
    if (role in {LooseEnd.TREE.value, LooseEnd.GROUND_ANCHOR.value}) != (body == GROUND):
        raise bad(
            tr("{tag} cannot be.", tag=tag), tr("Trees and anchors stand on ground, the other ends on a vehicle.")
        )
    return Part(tag, role, body=body)


def _joint(facts: RigFacts, book: Rulebook, one: Part, other: Part) -> Joint | None:
    fitting = [joint for joint in book.joints if joint.fits(one.role, other.role)]
    named = next((joint.how for joint in facts.rig.joints if {joint.one, joint.other} == {one.tag, other.tag}), "")
    if not named:
        return fitting[0] if fitting else None
    found = next((joint for joint in fitting if joint.key == named), None)
    if found is None:
        why = tr("{one} and {other} cannot be joined by “{how}”.", one=one.tag, other=other.tag, how=named)
        listed = ", ".join(joint.key for joint in fitting) or tr("none")
        raise bad(why, tr("Ways to join the two: {ways}.", ways=listed), tr("joints"))
    return found


def _check_vehicles(facts: RigFacts) -> None:
    rig = facts.rig
    for name, tag in ((tr("bogged"), rig.bogged), (tr("pulling"), rig.pulling)):
        if tag and tag not in facts.vehicles:
            raise bad(tr("No vehicle has the tag “{tag}”.", tag=tag), tr("Write it into the register first."), name)
    for tag in (rig.bogged, rig.pulling):
        vehicle = facts.vehicles.get(tag)
        if vehicle is not None and min(one.si for one in (vehicle.gvm, vehicle.mass) if one is not None) <= 0:
            raise bad(tr("{tag} weighs nothing.", tag=tag), tr("Write down what it weighs."), tr("mass"))
    if not rig.bogged:
        raise bad(tr("Nobody said which vehicle is stuck."), tr("Write its tag under bogged."), tr("bogged"))
    if rig.bogged == rig.pulling:
        raise bad(tr("One vehicle cannot pull itself."), tr("Name another, or leave it empty."), tr("pulling"))


def _check_runs(facts: RigFacts) -> None:
    if not facts.rig.runs:
        raise bad(tr("There is no run."))
    for run in facts.rig.runs:
        if len(run) < 2:
            raise bad(tr("A run has at least two parts, not: {run}.", run=", ".join(run) or tr("none")))
        if len(set(run)) < len(run):
            raise bad(tr("A part stands twice in one run: {run}.", run=", ".join(run)))
    tags = set(facts.rig.tags)
    for named in (
        *(one.at for one in facts.rig.angles),
        *(tag for one in facts.rig.joints for tag in (one.one, one.other)),
    ):
        if named not in tags:
            raise bad(tr("{tag} has an angle or a joint and is no part of the rig.", tag=named), tr("Correct the tag."))
