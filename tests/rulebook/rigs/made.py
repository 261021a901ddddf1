"""Pieces, vehicles and rigs put together for the checks: sound pieces judged by the packaged book.

"Bogged" is V-B, "pulling" is V-P; whatever hangs on them is tagged with that letter.
"""

from collections.abc import Callable
from functools import cache

from msgspec.structs import replace
from msgspec.structs import replace as struct_replace

from inspector.gear.dossier import Dossier
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.item import Rating
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.rig import Angle, Conditions, Method, NamedJoint, Rig, RigFacts, RigPiece
from inspector.gear.rig_result import LinkUse, RigFinding, RigResult
from inspector.gear.trip import Vehicle
from inspector.rulebook.judge import judge
from inspector.rulebook.rigs.check import checked
from inspector.rulebook.wording import explain
from inspector.units import Dimension, Figure, System, read
from tests.rulebook.dossiers import BOOK, TODAY
from tests.rulebook.sound import sound, with_facts, with_reading, with_size

G = 9.80665
KN = 1000.0
TONNE_FORCE = 1000 * G
BOGGED, PULLING = "V-B", "V-P"
TREE, ANCHOR = "tree@ground", "ground_anchor@ground"
NOTHING_SAID = Conditions()

Change = Callable[[Dossier], Dossier]


def force(text: str) -> Figure:
    """A force as somebody types it."""
    return read(text, Dimension.FORCE, field="force")


def mass(text: str) -> Figure:
    """A mass as somebody types it."""
    return read(text, Dimension.MASS, field="mass")


def speed(text: str) -> Figure:
    """A speed as somebody types it."""
    return read(text, Dimension.SPEED, field="speed")


def length(text: str) -> Figure:
    """A length as somebody types it."""
    return read(text, Dimension.LENGTH, field="length")


def angle(text: str) -> Figure:
    """An angle as somebody types it."""
    return read(text, Dimension.ANGLE, field="angle")


def share(text: str) -> Figure:
    """A share as somebody types it."""
    return read(text, Dimension.RATIO, field="share")


def vehicle(tag: str, gvm: str = "3,000 kg", day: str = "", front: str = "", rear: str = "") -> Vehicle:
    """A vehicle; day: its mass on the day; front, rear: between its points there."""
    return Vehicle(
        f"id-{tag}",
        tag,
        tag,
        "the club",
        mass(gvm),
        mass(day) if day else None,
        front_spacing=length(front) if front else None,
        rear_spacing=length(rear) if rear else None,
    )


def same(dossier: Dossier) -> Dossier:
    """Nothing changed."""
    return dossier


@cache
def piece(
    tag: str,
    kind: str,
    rated: str = "20 t",
    *,
    wll: float = 0.0,
    size: tuple[tuple[str, str], ...] = (),
    long: str = "",
    on: str = "",
    end: End = End.UNKNOWN,
    side: Side = Side.UNKNOWN,
    stated: str = "piece",
    change: Change = same,
) -> RigPiece:
    """A sound piece. rated: its breaking strength, or its WLL where wll gives the factor; "" for none.

    size: sizes as new and as read today. change: what else is otherwise about it.
    """
    dossier = with_facts(sound(BOOK.kinds[kind]), tag=tag, rating=_rating(kind, rated, wll, stated))
    for key, text in (*size, *([("length", long)] if long else [])):
        figure = read(text, next(one.dimension for one in dossier.kind.sizes if one.key == key), field=key)
        dossier = with_reading(with_size(dossier, key, figure.si), key, figure.si)
        sizes = (replace(one, figure=figure) if one.key == key else one for one in dossier.item.facts.sizes)
        dossier = with_facts(dossier, sizes=tuple(sizes))
    dossier = change(dossier)
    verdict = judge(dossier, BOOK, "test")
    fitted = Fitted(on, end, side) if on else None
    return RigPiece(Judged(dossier, verdict, explain(dossier, verdict, BOOK)), fitted)


def _rating(kind: str, rated: str, wll: float, stated: str) -> Rating:
    if not rated:
        return Rating(Basis.UNRATED, None, None, "none")
    basis = Basis.LINE_PULL if kind == "winch" else Basis.WLL if wll else Basis.MBS
    return Rating(basis, force(rated), wll or None, stated)


def weakened(given: RigPiece, strength_n: float | None) -> RigPiece:
    """The same piece with another strength today; its marking, and so its stiffness, as before."""
    verdict = given.judged.verdict
    capacity = struct_replace(verdict.capacity, now_n=strength_n, why_unknown="" if strength_n else "nobody knows")
    return replace(given, judged=replace(given.judged, verdict=replace(verdict, capacity=capacity)))


def facts(rig: Rig, pieces: tuple[RigPiece, ...], vehicles: tuple[Vehicle, ...] = ()) -> RigFacts:
    """A rig with all that is known of it. Of two pieces with one tag the later stands."""
    pair = vehicles or (vehicle(BOGGED), vehicle(PULLING))
    return RigFacts(rig, TODAY, {one.tag: one for one in pieces}, {one.tag: one for one in pair})


def check(given: RigFacts, system: System = System.METRIC) -> RigResult:
    """The rig checked."""
    return checked(given, BOOK, "test", system).result


def link(result: RigResult, tag: str) -> LinkUse:
    """The use of one part."""
    found = result.link(tag)
    assert found is not None, f"{tag} is no part"
    return found


def findings(result: RigResult, key: str) -> tuple[RigFinding, ...]:
    """The findings with this key."""
    return tuple(one for one in result.findings if one.key == key)


def between(result: RigResult, one: str, other: str) -> float:
    """What passes through one joint, in newtons."""
    return next(each.force_n for each in result.joints if {each.one, each.other} == {one, other})


# --- usual rigs ---


def point(tag: str, on: str, end: End = End.FRONT, rated: str = "20 t") -> RigPiece:
    """A recovery point."""
    return piece(tag, "recovery_point", rated, on=on, end=end)


def shackle(tag: str, rated: str = "4.75 t", factor: float = 5.0) -> RigPiece:
    """A bow shackle by its WLL."""
    return piece(tag, "bow_shackle", rated, wll=factor)


def strap(tag: str = "K", rated: str = "8,000 kg", long: str = "9 m", kind: str = "kinetic_strap") -> RigPiece:
    """A kinetic strap, or another strap."""
    return piece(tag, kind, rated, long=long)


DAMPER = piece("D", "damper", "")
POINTS = (point("P-B", BOGGED), point("P-P", PULLING, End.REAR))
SHACKLES = (shackle("S-B"), shackle("S-P"))
SNATCH = ("P-B", "S-B", "K", "S-P", "P-P")


def snatch(
    conditions: Conditions = NOTHING_SAID,
    *,
    kinetic: RigPiece | None = None,
    instead: tuple[RigPiece, ...] = (),
    run: tuple[str, ...] = SNATCH,
    vehicles: tuple[Vehicle, ...] = (),
    method: Method = Method.KINETIC,
    joints: tuple[NamedJoint, ...] = (),
) -> RigFacts:
    """Point, shackle, strap, shackle, point; a damper over it. instead: pieces that replace or join those."""
    rig = Rig("snatch", method, BOGGED, PULLING, (run,), conditions, joints=joints, dampers=("D",))
    return facts(rig, (*POINTS, *SHACKLES, kinetic or strap(), DAMPER, *instead), vehicles)


def winch(tag: str = "W", pull: str = "4 t", stall: str = "", on: str = PULLING, end: End = End.FRONT) -> RigPiece:
    """A winch by the line pull of its plate, and its stall pull if somebody wrote it down."""
    stalls = (("stall_pull", stall),) if stall else ()
    return piece(tag, "winch", pull, size=stalls, on=on, end=end, change=same if stall else _without_stall)


def _without_stall(dossier: Dossier) -> Dossier:
    return with_facts(dossier, sizes=tuple(one for one in dossier.item.facts.sizes if one.key != "stall_pull"))


def line(tag: str = "L", rated: str = "20 t", long: str = "25 m") -> RigPiece:
    """A fibre winch line."""
    return piece(tag, "fibre_winch_line", rated, long=long)


def hung_block(tag: str, rated: str = "40 t") -> RigPiece:
    """A snatch block by its breaking strength."""
    return piece(tag, "snatch_block", rated)


def around(tag: str = "T", rated: str = "40 t") -> RigPiece:
    """A tree strap."""
    return piece(tag, "tree_strap", rated, long="4 m")


def single_line(
    conditions: Conditions = NOTHING_SAID, *, instead: tuple[RigPiece, ...] = (), vehicles: tuple[Vehicle, ...] = ()
) -> RigFacts:
    """The pulling vehicle winches the bogged one in a single line."""
    rig = Rig("single", Method.WINCH, BOGGED, PULLING, (("W", "L", "S-B", "P-B"),), conditions, dampers=("D",))
    pieces = (winch(), line(), *SHACKLES, *POINTS, DAMPER, *instead)
    return facts(rig, pieces, vehicles)


def redirect(
    degrees: str = "", conditions: Conditions = NOTHING_SAID, *, instead: tuple[RigPiece, ...] = (), legs: str = "0 °"
) -> RigFacts:
    """The pulling vehicle winches the bogged one round a block at a tree. degrees: between the two lines."""
    runs = (("W", "L", "R", "S-R", "T", TREE), ("L", "S-B", "P-B"))
    angles = (*([Angle("R", angle(degrees))] if degrees else []), *([Angle("T", angle(legs))] if legs else []))
    rig = Rig("redirect", Method.WINCH, BOGGED, PULLING, runs, conditions, angles=angles, dampers=("D",))
    pieces = (winch(), line(), hung_block("R"), shackle("S-R", "10 t"), around(), *SHACKLES, *POINTS, DAMPER, *instead)
    return facts(rig, pieces)


def double_line(
    conditions: Conditions = NOTHING_SAID, *, instead: tuple[RigPiece, ...] = (), degrees: str = "0 °"
) -> RigFacts:
    """The bogged vehicle winches itself: line to a block at a tree and back to its own point."""
    runs = (("W", "L", "R", "S-R", "T", TREE), ("L", "S-B", "P-B"))
    angles = (*([Angle("R", angle(degrees))] if degrees else []), Angle("T", angle("0 °")))
    rig = Rig("double", Method.WINCH, BOGGED, "", runs, conditions, angles=angles, dampers=("D",))
    pieces = (
        *(winch(on=BOGGED), line(), hung_block("R"), shackle("S-R", "10 t"), around()),
        *(*SHACKLES, *POINTS, DAMPER, *instead),
    )
    return facts(rig, pieces)


FAR = (("T", TREE), (ANCHOR,), ("P-P",))
NEAR = (("P-B",), ("P-C",), ("P-D",))


def tackle(parts: int, conditions: Conditions = NOTHING_SAID, *, instead: tuple[RigPiece, ...] = ()) -> RigFacts:
    """The bogged vehicle winches itself with 2 to 5 parallel parts of line: blocks in turn far off and at itself.

    Far off stand a tree, a ground anchor and the other vehicle.
    """
    ends = [FAR[at // 2] if at % 2 else NEAR[at // 2 - 1] for at in range(1, parts + 1)]
    runs = [("L", f"R{at}", f"SR{at}", *ends[at - 1]) for at in range(1, parts)]
    runs[0] = ("W", *runs[0])
    rig = Rig(
        "tackle",
        Method.WINCH,
        BOGGED,
        PULLING if parts == 5 else "",
        (*runs, ("L", "S-B", *ends[-1])),
        conditions,
        angles=(Angle("T", angle("0 °")),),
        dampers=("D",),
    )
    hung = tuple(hung_block(f"R{at}") for at in range(1, parts))
    held = tuple(shackle(f"SR{at}", "10 t") for at in range(1, parts))
    points = (*POINTS, point("P-C", BOGGED), point("P-D", BOGGED))
    return facts(rig, (winch(on=BOGGED), line(), around(), *hung, *held, *points, *SHACKLES, DAMPER, *instead))
