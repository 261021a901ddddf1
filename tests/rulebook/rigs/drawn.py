"""Rigs drawn at random, for the laws: shape, strengths, vehicles and conditions."""

from collections.abc import Callable
from functools import cache

from hypothesis import strategies as st
from hypothesis.strategies import DrawFn
from hypothesis.vendor.pretty import RepresentationPrinter
from msgspec.structs import replace

from inspector.gear.fitting import End
from inspector.gear.rig import Angle, Conditions, Footing, Method, Rig, RigFacts, RigPiece
from inspector.gear.trip import Vehicle
from inspector.units import Dimension, Figure
from tests.rulebook.rigs.made import (
    BOGGED,
    DAMPER,
    POINTS,
    PULLING,
    SHACKLES,
    check,
    double_line,
    facts,
    hung_block,
    line,
    piece,
    point,
    redirect,
    shackle,
    single_line,
    snatch,
    strap,
    tackle,
    vehicle,
    weakened,
    winch,
)

LARGEST = {
    Footing.HARD_ROAD: 0.10,
    Footing.HARD_WET_SAND: 0.17,
    Footing.SOFT_WET_SAND: 0.20,
    Footing.SOFT_DRY_SAND: 0.25,
    Footing.GRASS: 0.33,
    Footing.GRAVEL: 0.33,
    Footing.SHALLOW_MUD: 1 / 3,
    Footing.BOG: 0.5,
    Footing.WHEELS_LOCKED: 0.67,
    Footing.WHEEL_DEEP_MUD: 1.0,
    Footing.SILL_DEEP_MUD: 2.0,
    Footing.CAB_DEEP_MUD: 3.0,
}  # the largest share of the weight that is printed for each
GROUNDS = list(LARGEST)


def figure(si: float, dimension: Dimension) -> Figure:
    """A figure in SI."""
    return Figure(si, f"{si!r} SI", dimension)


@st.composite
def conditions(draw: DrawFn) -> Conditions:
    """What is known of a pull; much of it may be unsaid."""

    def maybe(least: float, most: float, dimension: Dimension) -> Figure | None:
        said = draw(st.none() | st.floats(least, most))
        return None if said is None else figure(said, dimension)

    return Conditions(
        bogged_in=draw(st.none() | st.sampled_from(GROUNDS)),
        pulling_on=draw(st.none() | st.sampled_from(GROUNDS)),
        slope=maybe(0, 0.6, Dimension.ANGLE),
        speed=maybe(0.05, 6, Dimension.SPEED),
        slack=maybe(0, 5, Dimension.LENGTH),
        drive=maybe(0.01, 1, Dimension.RATIO),
        wet=draw(st.sampled_from([None, True, False])),
        layers=draw(st.none() | st.integers(1, 5)),
    )


@st.composite
def vehicles(draw: DrawFn) -> tuple[Vehicle, Vehicle]:
    """Two vehicles, weighed or not; nobody measured their points."""
    found = []
    for tag in (BOGGED, PULLING):
        gvm = draw(st.sampled_from([1900, 2500, 3000, 3500, 4500]))
        day = draw(st.none() | st.integers(1000, gvm))
        found.append(vehicle(tag, f"{gvm} kg", f"{day} kg" if day else ""))
    return found[0], found[1]


@cache
def bridles() -> tuple[RigPiece, ...]:
    """Two bridles with what holds them."""
    more = (shackle("S-M"), shackle("S-N"), shackle("S-C"), shackle("S-D"))
    points = (point("P-C", BOGGED), point("P-D", PULLING, End.REAR))
    return (piece("B", "bridle_strap", long="3 m"), piece("B2", "bridle_strap", long="3 m"), *more, *points)


def bridled(one: str, other: str) -> RigFacts:
    """A snatch with a bridle at the stuck vehicle, and at the other too where other names its angle."""
    runs = [("P-P", "S-P", "K", "S-M", "B", "S-B", "P-B"), ("B", "S-C", "P-C")]
    angles = [Angle("B", figure(float(one), Dimension.ANGLE))] if one else []
    if other:
        runs[0] = ("P-P", "S-P", "B2", "S-N", *runs[0][2:])
        runs.append(("B2", "S-D", "P-D"))
        angles.append(Angle("B2", figure(float(other), Dimension.ANGLE)))
    rig = Rig("bridled", Method.KINETIC, BOGGED, PULLING, tuple(runs), angles=tuple(angles), dampers=("D",))
    return facts(rig, (*POINTS, *SHACKLES, strap(), DAMPER, *bridles()))


def moving_block(radians: float) -> RigFacts:
    """The pulling vehicle winches the bogged one by a block on its point, back to itself."""
    runs = (("W", "L", "R", "S-R", "P-B"), ("L", "S-P", "P-P"))
    angles = (Angle("R", figure(radians, Dimension.ANGLE)),)
    rig = Rig("moving", Method.WINCH, BOGGED, PULLING, runs, angles=angles, dampers=("D",))
    return facts(rig, (winch(), line(), hung_block("R"), shackle("S-R", "10 t"), *SHACKLES, *POINTS, DAMPER))


@st.composite
def shapes(draw: DrawFn) -> RigFacts:
    """One of the usual shapes."""
    name, spread = draw(st.sampled_from(sorted(SHAPES))), draw(st.floats(0, 2.9))
    return SHAPES[name](spread)


def two_straps(_: float) -> RigFacts:
    """Two straps in a row, a shackle between them."""
    run = ("P-B", "S-B", "K", "S-M", "K2", "S-P", "P-P")
    return snatch(run=run, instead=(strap("K2", "11,000 kg"), shackle("S-M")))


def steady(_: float) -> RigFacts:
    """A steady pull by a static strap."""
    return snatch(kinetic=strap(kind="static_strap", rated="10,000 kg"), method=Method.TOW_OUT)


SHAPES: dict[str, Callable[[float], RigFacts]] = {
    "snatch, weak strap": lambda _: snatch(kinetic=strap(rated="5,000 kg")),
    "snatch": lambda _: snatch(),
    "snatch, strong strap": lambda _: snatch(kinetic=strap(rated="11,000 kg")),
    "two straps": two_straps,
    "bridle": lambda spread: bridled(str(spread), ""),
    "two bridles": lambda spread: bridled(str(spread), "0.5"),
    "tow": steady,
    "single line": lambda _: single_line(),
    "redirect": lambda spread: redirect(f"{spread:.12f} rad"),
    "double line": lambda spread: double_line(degrees=f"{spread:.12f} rad"),
    "moving block": moving_block,
    "three parts": lambda _: tackle(3),
    "five parts": lambda _: tackle(5),
}


class Drawn(RigFacts, frozen=True):
    """A drawn rig that says of itself only what a reader of a failing case asks for."""

    def _repr_pretty_(self, printer: RepresentationPrinter, _: bool) -> None:
        """For a failing case: its shape, vehicles, conditions and strengths."""
        strong = {tag: one.judged.verdict.capacity.now_n for tag, one in self.pieces.items() if tag in self.rig.tags}
        heavy = {tag: (one.gvm.si, one.mass and one.mass.si) for tag, one in self.vehicles.items()}
        printer.text(f"{self.rig.name} {self.rig.runs} {self.rig.angles} {self.rig.conditions} {heavy} {strong}")


@st.composite
def rigs(draw: DrawFn) -> RigFacts:
    """A rig under random conditions; its parts stand about what is asked of them, one in ten nobody knows."""
    made = draw(shapes())
    pair = draw(vehicles())
    rig = replace(made.rig, conditions=draw(conditions()), dampers=draw(st.sampled_from([("D",), ()])))
    pieces = dict(made.pieces)
    if "W" in pieces:
        body = BOGGED if not rig.pulling or rig.name == "tackle" else PULLING
        pieces["W"] = winch(pull=draw(st.sampled_from(["0.8 t", "2 t", "4 t"])), on=body)
    made = replace(made, rig=rig, pieces=pieces, vehicles={one.tag: one for one in pair})
    for one in check(made).links:
        known = pieces.get(one.tag)
        if known is None or one.passes_on or draw(st.integers(0, 2)) == 0:
            continue
        wanted_n = one.force_n * one.margin_factor * draw(st.floats(0.7, 1.6))
        unknown = draw(st.integers(0, 9)) == 0
        marked_n = known.judged.verdict.capacity.begins_n or wanted_n
        pieces[one.tag] = weakened(known, None if unknown else min(wanted_n, marked_n))
    return Drawn(rig, made.on, pieces, made.vehicles)


def with_conditions(made: RigFacts, **what: object) -> RigFacts:
    """The same rig under other conditions."""
    return replace(made, rig=replace(made.rig, conditions=replace(made.rig.conditions, **what)))


def with_mass(made: RigFacts, tag: str, kilograms: float | None) -> RigFacts:
    """The same rig, one vehicle of another mass on the day."""
    day = None if kilograms is None else figure(kilograms, Dimension.MASS)
    return replace(made, vehicles={**made.vehicles, tag: replace(made.vehicles[tag], mass=day)})
