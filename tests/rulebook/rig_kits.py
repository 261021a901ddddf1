"""Small kits for rigs: sound pieces of given strength, vehicles, and every rig that could be built of them by hand."""

from collections.abc import Iterator
from itertools import combinations, permutations, product

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.item import Rating
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis
from inspector.gear.rig import Conditions, Method, Rig, RigFacts, RigPiece
from inspector.gear.trip import Vehicle
from inspector.rulebook.judge import judge
from inspector.rulebook.load import packaged
from inspector.rulebook.wording import explain
from inspector.units import Dimension, Figure, System, read
from tests.rulebook.dossiers import TODAY
from tests.rulebook.sound import sound, with_facts, with_reading, with_size

BOOK = packaged()
CONNECTORS = {"bow_shackle", "soft_shackle"}


def figure(text: str, dimension: Dimension) -> Figure:
    """A figure as it would be typed."""
    return read(text, dimension, field=text)


def vehicle(tag: str, mass: str = "2,400 kg", gvm: str = "2,900 kg", spacing: str = "") -> Vehicle:
    """A vehicle of a trip. spacing: of its two front points."""
    made = Vehicle(f"id-{tag}", tag, tag, "", figure(gvm, Dimension.MASS), figure(mass, Dimension.MASS))
    return replace(made, front_spacing=figure(spacing, Dimension.LENGTH)) if spacing else made


def piece(
    tag: str, kind: str, strength: str, on: str = "", end: End = End.FRONT, dossier: Dossier | None = None
) -> RigPiece:
    """A sound piece of the kind, marked with a breaking strength (or line pull), on a vehicle if one is named."""
    key = BOOK.kind(kind)
    made = dossier or sound(key)
    basis = Basis.LINE_PULL if kind == "winch" else Basis.MBS
    if strength and basis in key.rated_by:
        made = with_facts(made, rating=Rating(basis, figure(strength, Dimension.FORCE), None, "piece"))
    made = with_facts(made, tag=tag)
    made = replace(made, item=replace(made.item, id=f"id-{tag}"))
    return judged_piece(made, Fitted(on, end, Side.MIDDLE) if on else None)


def judged_piece(dossier: Dossier, fitted: Fitted | None = None) -> RigPiece:
    """The piece judged by the packaged book."""
    verdict = judge(dossier, BOOK, "test")
    return RigPiece(Judged(dossier, verdict, explain(dossier, verdict, BOOK, System.METRIC)), fitted)


def strap(tag: str, strength: str, length: str = "9 m", kind: str = "kinetic_strap") -> RigPiece:
    """A sound strap of a length."""
    made = with_size(sound(BOOK.kind(kind)), "length", figure(length, Dimension.LENGTH).si)
    readings = made.inspections[-1].facts.readings
    now = tuple(
        replace(one, figure=figure(length, Dimension.LENGTH)) if one.measure == "length" else one for one in readings
    )
    last = replace(made.inspections[-1], facts=replace(made.inspections[-1].facts, readings=now))
    return piece(tag, kind, strength, dossier=replace(made, inspections=(last,)))


def sized(dossier: Dossier, key: str, text: str) -> Dossier:
    """A size as new, and read so today."""
    si = figure(text, Dimension.LENGTH).si
    return with_reading(with_size(dossier, key, si), key, si)


def facts_of(pieces: list[RigPiece], vehicles: list[Vehicle], rig: Rig) -> RigFacts:
    """All that checking reads."""
    return RigFacts(rig, TODAY, {one.tag: one for one in pieces}, {one.tag: one for one in vehicles})


def every_rig(facts: RigFacts, method: Method, conditions: Conditions) -> Iterator[Rig]:
    """Each rig that a patient person could lay out of the kit, one strap between the two vehicles."""
    line = "kinetic_strap" if method is Method.KINETIC else "static_strap"
    connectors = [one.tag for one in facts.pieces.values() if one.kind in CONNECTORS]
    for near, strap_tag, far in product(_ends(facts, "B"), _tags(facts, line), _ends(facts, "A")):
        if set(near[1]) & set(far[1]):
            continue
        runs = _runs(near, strap_tag, far)
        places = sum(run.count("?") for run in runs)
        for chosen in permutations(connectors, places):
            tags = iter(chosen)
            filled = tuple(tuple(next(tags) if tag == "?" else tag for tag in run) for run in runs)
            yield Rig("", method, "B", "A", filled, conditions)


Ends = tuple[list[list[str]], list[str], str]


def _runs(near: Ends, strap_tag: str, far: Ends) -> list[list[str]]:
    runs = [[*leg, "?", end[2]] for end in (near, far) if end[2] for leg in end[0]]
    first, last = ([end[2]] if end[2] else end[0][0] for end in (near, far))
    return [*runs, [*first, "?", strap_tag, "?", *reversed(last)]]


def _ends(facts: RigFacts, body: str) -> list[Ends]:
    """Inner runs, tags used, and the bridle, for each way to fix a line to a vehicle."""
    here = [one for one in facts.pieces.values() if one.fitted and one.fitted.vehicle == body]
    points = [one.tag for one in here if one.kind == "recovery_point"]
    found: list[Ends] = [([[tag]], [tag], "") for tag in points]
    for receiver, pin, insert in product(
        [one.tag for one in here if one.kind == "hitch_receiver"],
        _tags(facts, "hitch_pin"),
        _tags(facts, "receiver_insert"),
    ):
        found.append(([[receiver, pin, insert]], [receiver, pin, insert], ""))
    for (one, other), bridle in product(combinations(points, 2), _tags(facts, "bridle_strap")):
        found.append(([[one], [other]], [one, other, bridle], bridle))
    return found


def _tags(facts: RigFacts, kind: str) -> list[str]:
    return [one.tag for one in facts.pieces.values() if one.kind == kind]
