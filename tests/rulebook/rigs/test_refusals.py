"""Rigs that are no rig are refused at the field, with reason and what to do; extreme figures give no nonsense."""

import math
from collections.abc import Callable

import pytest
from msgspec.structs import replace

from inspector.gear.fitting import End
from inspector.gear.rig import Angle, Conditions, Footing, Method, NamedJoint, RigFacts
from inspector.gear.rig_result import RigResult
from inspector.refused import Refused
from tests.each import each
from tests.rulebook.rigs.made import (
    BOGGED,
    PULLING,
    SNATCH,
    angle,
    check,
    double_line,
    length,
    line,
    mass,
    piece,
    point,
    redirect,
    shackle,
    share,
    single_line,
    snatch,
    speed,
    strap,
    vehicle,
    winch,
)


def changed(made: RigFacts, **what: object) -> RigFacts:
    """The rig otherwise."""
    return replace(made, rig=replace(made.rig, **what))


def run(*tags: str) -> RigFacts:
    """The snatch along another run."""
    return changed(snatch(instead=(shackle("S-M"), strap("K2"))), runs=(tags,))


def said(**conditions: object) -> RigFacts:
    """The snatch under other conditions."""
    return snatch(Conditions(**conditions))  # type: ignore[arg-type]


def winched(**conditions: object) -> RigFacts:
    """The single line under other conditions."""
    return single_line(Conditions(**conditions))  # type: ignore[arg-type]


def other_vehicle() -> RigFacts:
    """The stuck vehicle's point sits on a third one."""
    return snatch(instead=(point("P-B", "V-X"),))


def unfitted() -> RigFacts:
    """Nobody wrote down where the point sits."""
    return snatch(instead=(piece("P-B", "recovery_point"),))


def short_bridle() -> RigFacts:
    """A bridle of 0.8 m over points 0.9 m apart."""
    runs = (("P-P", "S-P", "K", "S-M", "B", "S-B", "P-B"), ("B", "S-C", "P-C"))
    more = (piece("B", "bridle_strap", long="0.8 m"), shackle("S-M"), shackle("S-C"), point("P-C", BOGGED))
    made = snatch(instead=more, vehicles=(vehicle(BOGGED, front="0.9 m"), vehicle(PULLING)))
    return changed(made, runs=runs)


def bridle_by_a_leg() -> RigFacts:
    """The line comes to one leg; middle and other leg go to two vehicles' points."""
    runs = (("P-P", "S-P", "K", "S-M", "B", "S-B", "P-B"), ("B", "S-C", "P-C"))
    more = (piece("B", "bridle_strap", long="3 m"), shackle("S-M"), shackle("S-C"), point("P-C", PULLING))
    return changed(snatch(instead=more), runs=runs)


def three_ends() -> RigFacts:
    """A winch line that ends at two places besides its drum."""
    made = single_line(instead=(point("P-C", BOGGED), shackle("S-C")))
    return changed(made, runs=(("W", "L", "S-B", "P-B"), ("L", "S-C", "P-C")))


def lost_end() -> RigFacts:
    """A line over a block, and nobody said where it ends."""
    made = double_line()
    return changed(made, runs=(made.rig.runs[0],))


def two_winches() -> RigFacts:
    """Each vehicle's winch on one end of the line between them."""
    more = (winch("W2", on=BOGGED), line("L2"), shackle("S-M"))
    return changed(single_line(instead=more), runs=(("W", "L", "S-M", "L2", "W2"),))


CASES: dict[str, tuple[Callable[[], RigFacts], str]] = {
    "no run": (lambda: changed(snatch(), runs=()), "runs"),
    "an empty run": (lambda: changed(snatch(), runs=((),)), "runs"),
    "one part alone": (lambda: run("K"), "runs"),
    "a part twice": (lambda: run("P-B", "S-B", "K", "S-B", "P-P"), "runs"),
    "a joint twice": (lambda: changed(snatch(), runs=(SNATCH, ("K", "S-B"))), "runs"),
    "an unknown tag": (lambda: run("P-B", "S-9", "K", "S-P", "P-P"), "runs"),
    "a loose end": (lambda: run("P-B", "S-B", "K"), "runs"),
    "both ends at one vehicle": (
        lambda: changed(snatch(instead=(point("P-C", BOGGED),)), runs=(("P-B", "S-B", "K", "S-P", "P-C"),)),
        "runs",
    ),
    "the stuck vehicle left out": (
        lambda: changed(snatch(instead=(point("P-C", PULLING),)), runs=(("P-C", "S-B", "K", "S-P", "P-P"),)),
        "runs",
    ),
    "parts that hang on nothing": (
        lambda: changed(
            snatch(instead=(strap("K2"), shackle("S-M"), point("P-C", BOGGED), shackle("S-C"), point("P-D", PULLING))),
            runs=(SNATCH, ("P-C", "S-M", "K2", "S-C", "P-D")),
        ),
        "runs",
    ),
    "a ring": (
        lambda: changed(
            snatch(instead=(strap("K2"), shackle("S-M"))),
            runs=(("P-B", "S-B", "K", "S-P", "P-P"), ("S-B", "K2", "S-P")),
        ),
        "runs",
    ),
    "a shackle that holds three": (
        lambda: changed(
            snatch(instead=(strap("K2"), shackle("S-M"), point("P-D", PULLING))),
            runs=(SNATCH, ("S-B", "K2", "S-M", "P-D")),
        ),
        "runs",
    ),
    "a line with three ends": (three_ends, "runs"),
    "a line whose end nobody said": (lost_end, "runs"),
    "two winches": (two_winches, "runs"),
    "a damper in the run": (lambda: run("P-B", "S-B", "K", "D", "S-P", "P-P"), "runs"),
    "a part of another vehicle": (other_vehicle, "runs"),
    "a point nobody fitted": (unfitted, "runs"),
    "an end of no kind": (lambda: run("hedge@ground", "S-B", "K", "S-P", "P-P"), "runs"),
    "an end on nothing": (lambda: run("tree@nowhere", "S-B", "K", "S-P", "P-P"), "runs"),
    "a tree on a vehicle": (lambda: run("tree@V-B", "S-B", "K", "S-P", "P-P"), "runs"),
    "a towing eye on the ground": (lambda: run("towing_eye@ground", "S-B", "K", "S-P", "P-P"), "runs"),
    "a bridle too short": (short_bridle, "runs"),
    "a bridle pulled by its leg": (bridle_by_a_leg, "runs"),
    "no strap at all": (lambda: run("P-B", "S-B", "S-P", "P-P"), "runs"),
    "a winch rig without a winch": (lambda: changed(snatch(), method=Method.WINCH), "runs"),
    "nobody stuck": (lambda: changed(snatch(), bogged=""), "bogged"),
    "an unknown vehicle stuck": (lambda: changed(snatch(), bogged="V-9"), "bogged"),
    "nobody pulling": (
        lambda: changed(snatch(), pulling="", runs=(("P-B", "S-B", "K", "S-P", "tree@ground"),)),
        "pulling",
    ),
    "a vehicle that pulls itself": (lambda: changed(snatch(), pulling=BOGGED), "pulling"),
    "an unknown vehicle pulling": (lambda: changed(snatch(), pulling="V-9"), "pulling"),
    "an angle at no part": (lambda: changed(snatch(), angles=(Angle("Z", angle("10 °")),)), "runs"),
    "a joint of no part": (lambda: changed(snatch(), joints=(NamedJoint("Z", "K", "eye_in_shackle"),)), "runs"),
    "a joint that does not fit": (lambda: changed(snatch(), joints=(NamedJoint("S-B", "K", "ball"),)), "joints"),
    "a line straight past its block": (lambda: redirect("180 °"), "angles"),
    "a block angle beyond a half turn": (lambda: redirect("200 °"), "angles"),
    "a negative block angle": (lambda: redirect("-10 °"), "angles"),
    "legs round a tree beyond 179 degrees": (lambda: redirect("0 °", legs="180 °"), "angles"),
    "a negative speed": (lambda: said(speed=speed("-1 km/h")), "speed"),
    "a negative slack": (lambda: said(slack=length("-1 m")), "slack"),
    "a negative drive": (lambda: said(drive=share("-1 %")), "drive"),
    "a slope downhill": (lambda: said(bogged_in=Footing.BOG, slope=angle("-5 °")), "slope"),
    "a slope straight up": (lambda: said(bogged_in=Footing.BOG, slope=angle("90 °")), "slope"),
    "no such scale": (lambda: said(bogged_in=Footing.BOG, scale="imperial"), "scale"),
    "a scale that is silent on this ground": (lambda: said(bogged_in=Footing.BOG, scale="military"), "scale"),
    "no such rule for the distance": (lambda: said(distance_rule="ten_paces"), "distance rule"),
    "a rule that needs a line where there is none": (lambda: said(distance_rule="two_lines"), "distance rule"),
    "no speed and no drive": (lambda: said(speed=speed("0 km/h"), drive=share("0 %")), "speed"),
    "a vehicle that weighs nothing": (
        lambda: snatch(vehicles=(vehicle(BOGGED), vehicle(PULLING, "3,000 kg", "0 kg"))),
        "mass",
    ),
    "a winch that pulls nothing": (lambda: single_line(instead=(winch(pull="0 t"),)), "rating"),
    "no layer on the drum": (lambda: winched(layers=0), "layers"),
    "a winch whose pull nobody wrote down": (
        lambda: single_line(instead=(piece("W", "winch", "", on=PULLING, end=End.FRONT),)),
        "rating",
    ),
}


@each("what", CASES)
def test_refused_at_the_field_with_a_reason_and_what_to_do(what: str) -> None:
    made, field = CASES[what]
    with pytest.raises(Refused) as refused:
        check(made())
    assert refused.value.field == field
    assert refused.value.why.strip() and refused.value.what_to_do.strip()


# --- extreme figures ---


def numbers(result: RigResult) -> list[float]:
    """Every number of a result."""
    load = result.load
    found = [load.pull_n, load.offered_n, load.energy_j, result.stand_off_m, load.likely_n or 0, load.needed_n or 0]
    found += [one.force_n for one in result.links] + [one.capacity_n or 0 for one in result.links]
    found += [one.margin_factor for one in result.links]
    found += [value for one in result.joints for value in (one.force_n, *(each for _, each in one.figures))]
    found += [value for one in result.flying for value in (one.mass_kg, one.speed_m_per_s, one.energy_j)]
    found += [value for pair in result.sensitivity.speeds for value in pair]
    found += [value for one in result.sensitivity.depths for value in (one[2], one[3] or 0)]
    return found


def sane(made: RigFacts) -> None:
    """Refused, or a result in which every number is a finite one; never another error."""
    try:
        result = check(made)
    except Refused as refused:
        assert refused.field and refused.why and refused.what_to_do
        return
    assert all(math.isfinite(one) and one >= 0 for one in numbers(result))
    assert all(not math.isnan(one.use_ratio) for one in result.links if one.use_ratio is not None)


EXTREME = ["0", "0.000001", "1", "1000", "1000000000000", "1" + "0" * 40, "1" + "0" * 50]


@each("number", EXTREME)
@each("field", ["speed", "slack", "drive", "pulling mass", "bogged mass", "gvm", "all"])
def test_extreme_figures_of_a_snatch_give_numbers_or_a_refusal(field: str, number: str) -> None:
    conditions = Conditions(
        speed=speed(f"{number} km/h") if field in {"speed", "all"} else None,
        slack=length(f"{number} m") if field in {"slack", "all"} else None,
        drive=share(f"{number} %") if field in {"drive", "all"} else None,
        bogged_in=Footing.CAB_DEEP_MUD,
    )
    big = mass(f"{number} kg")
    pair = (vehicle(BOGGED), vehicle(PULLING))
    if field in {"pulling mass", "all"}:
        pair = (pair[0], replace(pair[1], mass=big))
    if field in {"bogged mass", "all"}:
        pair = (replace(pair[0], mass=big), pair[1])
    if field in {"gvm", "all"}:
        pair = (replace(pair[0], gvm=big), replace(pair[1], gvm=big))
    sane(snatch(conditions, vehicles=pair))
    static = strap(kind="static_strap")
    sane(snatch(conditions, vehicles=pair, kinetic=static, method=Method.TOW_OUT))


@each("number", EXTREME)
@each("field", ["mass", "pull", "length", "strength", "layers", "stall"])
def test_extreme_figures_of_a_winch_rig_give_numbers_or_a_refusal(field: str, number: str) -> None:
    instead = {
        "pull": lambda: winch(pull=f"{number} kg"),
        "stall": lambda: winch(stall=f"{number} kg"),
        "length": lambda: line(long=f"{number} m"),
        "strength": lambda: line(rated=f"{number} kg"),
    }
    pair = (replace(vehicle(BOGGED), mass=mass(f"{number} kg")), vehicle(PULLING)) if field == "mass" else ()
    layers = int(float(number)) if field == "layers" else None
    more = (instead[field](),) if field in instead else ()
    sane(single_line(Conditions(bogged_in=Footing.BOG, layers=layers), instead=more, vehicles=pair))


@each("number", EXTREME)
@each("field", ["length", "strength"])
def test_extreme_straps_give_numbers_or_a_refusal(field: str, number: str) -> None:
    kinetic = strap(long=f"{number} m") if field == "length" else strap(rated=f"{number} kg")
    sane(snatch(kinetic=kinetic))


@each("degrees", ["0 °", "1 °", "89.999 °", "90 °", "179 °", "179.999999 °", "180 °", "360 °", "1000000 °"])
def test_extreme_angles_give_numbers_or_a_refusal(degrees: str) -> None:
    sane(redirect(degrees))
    sane(redirect("0 °", legs=degrees))
    sane(double_line(degrees=degrees))
    sane(snatch(Conditions(bogged_in=Footing.BOG, slope=angle(degrees))))
    runs = (("P-P", "S-P", "K", "S-M", "B", "S-B", "P-B"), ("B", "S-C", "P-C"))
    more = (piece("B", "bridle_strap", long="3 m"), shackle("S-M"), shackle("S-C"), point("P-C", BOGGED))
    sane(changed(snatch(instead=more), runs=runs, angles=(Angle("B", angle(degrees)),)))
