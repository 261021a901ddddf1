"""Rigs that hang together on paper and nowhere else: refused, or never said to be sound."""

from collections.abc import Callable

import pytest
from msgspec.structs import replace

from inspector.gear.fitting import End
from inspector.gear.rig import Angle, Conditions, Footing, Method, Rig, RigFacts, RigPiece
from inspector.gear.rig_result import RigOutcome
from inspector.refused import Refused
from tests.each import each
from tests.rulebook.rigs.made import (
    ANCHOR,
    BOGGED,
    PULLING,
    TREE,
    angle,
    around,
    check,
    findings,
    hung_block,
    length,
    line,
    link,
    piece,
    point,
    redirect,
    shackle,
    single_line,
    snatch,
    speed,
    strap,
    vehicle,
    winch,
)

GENTLE = Conditions(bogged_in=Footing.SOFT_DRY_SAND, pulling_on=Footing.SOFT_DRY_SAND, speed=speed("4 km/h"), wet=False)
RECEIVER = piece("R", "hitch_receiver", "7 t", on=PULLING, end=End.REAR)
PIN, INSERT = piece("PIN", "hitch_pin", "7 t"), piece("INS", "receiver_insert", "30 t")
BEYOND = ("INS", "S-P", "K", "S-B", "P-B")
TOW = strap("K", "20 t", "9 m", "static_strap")


def runs(given: RigFacts, *wanted: tuple[str, ...], **more: object) -> RigFacts:
    """The same pieces in other runs."""
    return replace(given, rig=replace(given.rig, runs=wanted, **more))


def through_receiver(*more: RigPiece, run: tuple[str, ...] = ("R", "PIN", *BEYOND)) -> RigFacts:
    """A snatch through an insert pinned in the pulling vehicle's receiver."""
    return runs(snatch(GENTLE, instead=(RECEIVER, PIN, INSERT, *more)), run)


def bar(tag: str, on: str = PULLING, end: End = End.REAR, rated: str = "30 t") -> RigPiece:
    """A tow bar; one without a rating is on hold."""
    return piece(tag, "tow_bar", rated, on=on, end=end)


def bridled(*, to: End = End.FRONT, said: str = "", long: str = "1.1 m") -> RigFacts:
    """A bridle over two points 1 m apart at the front of the stuck vehicle, or with one leg led elsewhere."""
    more = (piece("B", "bridle_strap", long=long), shackle("S-M"), shackle("S-C"), point("P-C", BOGGED, to))
    pair = (vehicle(BOGGED, front="1 m"), vehicle(PULLING))
    made = snatch(GENTLE, instead=more, vehicles=pair)
    angles = (Angle("B", angle(said)),) if said else ()
    return runs(made, ("P-P", "S-P", "K", "S-M", "B", "S-B", "P-B"), ("B", "S-C", "P-C"), angles=angles)


def point_between() -> RigFacts:
    """One strap to the stuck vehicle's point and another on from it."""
    more = (point("P-C", BOGGED), shackle("S-M"), shackle("S-N"), strap("K2"))
    return runs(snatch(GENTLE, instead=more), ("P-P", "S-P", "K", "S-M", "P-B", "S-B", "K2", "S-N", "P-C"))


def bridle_and_line() -> RigFacts:
    """A bridle's leg on a point that holds an anchored line as well."""
    more = (shackle("S-X"), strap("K2", kind="static_strap"), shackle("S-Y"))
    made = bridled(long="3 m")
    given = replace(made, pieces={**made.pieces, **{one.tag: one for one in more}})
    return runs(given, *made.rig.runs, ("P-C", "S-X", "K2", "S-Y", ANCHOR))


def block_of_two_holds() -> RigFacts:
    """A block that hangs on a tree and on a vehicle at once."""
    made = redirect("90 °", GENTLE, instead=(shackle("S-X"), point("P-C", BOGGED)))
    return runs(made, *made.rig.runs, ("R", "S-X", "P-C"))


def block_of_two_lines() -> RigFacts:
    """A second line over the same block."""
    made = redirect("90 °", GENTLE, instead=(line("L2"), shackle("S-X"), shackle("S-Y"), point("P-C", BOGGED)))
    return runs(made, *made.rig.runs, ("R", "L2", "S-X", "P-C"), ("L2", "S-Y", ANCHOR))


def tree_of_two_straps() -> RigFacts:
    """The tree that holds the block holds a strap to the winching vehicle as well."""
    made = redirect("90 °", GENTLE, instead=(around("T2"), shackle("S-X")))
    return runs(made, *made.rig.runs, (TREE, "T2", "S-X", "P-P"))


CASES: dict[str, Callable[[], RigFacts]] = {
    "a point between two straps": point_between,
    "a point that holds a bridle's leg and a line": bridle_and_line,
    "a block that two parts hold": block_of_two_holds,
    "a block over which two lines run": block_of_two_lines,
    "a tree with two straps": tree_of_two_straps,
    "a block over which nothing runs": lambda: runs(
        snatch(GENTLE, instead=(TOW, hung_block("R"), shackle("S-M")), method=Method.TOW_OUT),
        ("P-B", "S-B", "K", "S-M", "R", "S-P", "P-P"),
    ),
    "a pulling vehicle that nothing is fixed to": lambda: runs(snatch(GENTLE), ("P-B", "S-B", "K", "S-P", ANCHOR)),
    "a winching vehicle named that takes no part": lambda: runs(
        single_line(GENTLE, instead=(winch(on=BOGGED),)), ("W", "L", "S-B", ANCHOR)
    ),
    "the legs of a bridle at two ends of a vehicle": lambda: bridled(to=End.REAR, said="10 °"),
    "a bar at the other end": lambda: through_receiver(bar("BAR", end=End.FRONT), run=("BAR", "R", "PIN", *BEYOND)),
    "a bar of the other vehicle": lambda: through_receiver(bar("BAR", BOGGED), run=("BAR", "R", "PIN", *BEYOND)),
    "a sound bar named in place of the held one": lambda: through_receiver(
        bar("BAR", end=End.FRONT), bar("HELD", rated=""), run=("BAR", "R", "PIN", *BEYOND)
    ),
    "a bar of no known end named in place of the held one": lambda: through_receiver(
        bar("BAR", end=End.UNKNOWN), bar("HELD", rated=""), run=("BAR", "R", "PIN", *BEYOND)
    ),
    "two bars that may carry one receiver": lambda: through_receiver(bar("BAR"), bar("OLD", rated="")),
    "a pin that sits in no receiver": lambda: through_receiver(
        piece("PIN2", "hitch_pin", "7 t"),
        piece("INS2", "receiver_insert", "30 t"),
        run=("R", "PIN", "INS2", "PIN2", *BEYOND),
    ),
    "a ball mount between two pins": lambda: through_receiver(
        piece("PIN2", "hitch_pin", "7 t"), piece("BM", "ball_mount", ""), run=("R", "PIN", "BM", "PIN2", *BEYOND)
    ),
    "two receivers in one line": lambda: through_receiver(
        piece("R2", "hitch_receiver", "7 t", on=PULLING, end=End.FRONT),
        piece("PIN2", "hitch_pin", "7 t"),
        run=("R2", "PIN2", "R", "PIN", *BEYOND),
    ),
}


@each("what", CASES)
def test_what_cannot_be_rigged_or_reckoned_is_refused_at_the_runs(what: str) -> None:
    with pytest.raises(Refused) as refusal:
        check(CASES[what]())
    assert refusal.value.field == "runs"
    assert refusal.value.why and refusal.value.what_to_do


@pytest.mark.parametrize("on", [PULLING, BOGGED])
def test_no_vehicle_pulls_on_a_winch(on: str) -> None:
    """Its brake and gears hold what they wind in; a vehicle that drives off asks more of them than anybody knows."""
    made = snatch(GENTLE, instead=(winch(on=on), line(), TOW, shackle("S-M")), method=Method.TOW_OUT)
    far = ("S-M", "P-B") if on == PULLING else ("S-M", "P-P")
    result = check(runs(made, ("W", "L", "S-P", "K", *far)))
    assert result.outcome is RigOutcome.UNSOUND
    assert link(result, "W").outcome is RigOutcome.UNSOUND


def test_slack_in_a_static_strap_counts_whatever_speed_was_said() -> None:
    """3 m at 3 m/s² are 4.24 m/s: nobody talks that away by writing "0 km/h" beside it."""
    with_speed = replace(GENTLE, slack=length("3 m"), speed=speed("0 km/h"))
    tow = [
        check(snatch(said, instead=(TOW,), method=Method.TOW_OUT))
        for said in (replace(with_speed, speed=None), with_speed)
    ]
    assert tow[0].load.pull_n == tow[1].load.pull_n
    faster = check(snatch(replace(with_speed, speed=speed("20 km/h")), instead=(TOW,), method=Method.TOW_OUT))
    assert faster.load.pull_n > tow[0].load.pull_n


def test_a_typed_angle_never_makes_a_bridle_milder_than_its_points_and_its_length() -> None:
    """1.1 m over points 1 m apart open 130.8 degrees, whatever is written down; a wider angle is believed."""
    measured, said, wider = check(bridled()), check(bridled(said="10 °")), check(bridled(said="150 °"))
    assert link(said, "P-B").force_n == link(measured, "P-B").force_n < link(wider, "P-B").force_n
    assert findings(said, "bridle")[0].outcome is RigOutcome.CAUTION


def test_a_receiver_is_not_sound_where_nobody_wrote_down_what_carries_it() -> None:
    """A bar that nobody entered bears the pull as a bar does that somebody did: silence makes nothing milder."""
    assert check(through_receiver(bar("BAR"))).outcome is RigOutcome.SOUND
    held = check(through_receiver(bar("BAR", rated="")))
    without = check(through_receiver())
    assert without.outcome is held.outcome is RigOutcome.UNSOUND
    (found,) = findings(without, "bar")
    assert found.about == ("R",) and found.outcome is RigOutcome.UNSOUND and "Book the bar in" in found.says


def test_a_light_bar_without_a_receiver_is_a_case_for_care_only_where_its_strength_is_known() -> None:
    run = ("BAR", "S-P", "K", "S-B", "P-B")
    assert check(runs(snatch(GENTLE, instead=(bar("BAR"),)), run)).outcome is RigOutcome.CAUTION
    assert check(runs(snatch(GENTLE, instead=(bar("BAR", rated=""),)), run)).outcome is RigOutcome.UNSOUND


@pytest.mark.parametrize("on", [None, Footing.SOFT_DRY_SAND, Footing.BOG, Footing.GRASS])
def test_the_hold_of_a_braked_vehicle_is_known_on_firm_ground_alone(on: Footing | None) -> None:
    weighed = (vehicle(BOGGED), vehicle(PULLING, "3,000 kg", "3,000 kg"))
    light = (winch(pull="1 t"),)
    firm = check(single_line(replace(GENTLE, pulling_on=Footing.HARD_ROAD), instead=light, vehicles=weighed))
    soft = check(single_line(replace(GENTLE, pulling_on=on), instead=light, vehicles=weighed))
    assert findings(firm, "anchor")[0].outcome is RigOutcome.SOUND
    assert findings(soft, "anchor")[0].outcome is RigOutcome.CAUTION


MISFITS = {
    "a shackle pin thicker than the point's hole": lambda: snatch(
        GENTLE, instead=(piece("P-B", "recovery_point", on=BOGGED, end=End.FRONT, size=(("hole_diameter", "20 mm"),)),)
    ),
    "a shackle pin thicker than the insert's hole": lambda: through_receiver(
        bar("BAR"), piece("INS", "receiver_insert", "30 t", size=(("hole_diameter", "20 mm"),))
    ),
    "a hitch pin thicker than its hole": lambda: through_receiver(
        bar("BAR"), piece("PIN", "hitch_pin", "9 t", size=(("pin_diameter", "25 mm"),))
    ),
    "an insert wider than the tube": lambda: through_receiver(
        bar("BAR"), piece("INS", "receiver_insert", "30 t", size=(("block_side", "50 mm"),))
    ),
    "an insert loose in the tube": lambda: through_receiver(
        bar("BAR"), piece("INS", "receiver_insert", "30 t", size=(("block_side", "38 mm"),))
    ),
}


@pytest.mark.parametrize("what", MISFITS)
def test_what_does_not_go_together_by_its_sizes_is_unsound(what: str) -> None:
    result = check(MISFITS[what]())
    assert result.outcome is RigOutcome.UNSOUND
    found = findings(result, "fit")
    assert len(found) == 1 and found[0].outcome is RigOutcome.UNSOUND and "mm" in found[0].says


def test_a_rig_of_parts_in_their_usual_places_is_still_reckoned() -> None:
    """The refusals above leave what is right alone: a bridle, a receiver with its bar, a redirect."""
    for made in (bridled(long="3 m"), through_receiver(bar("BAR")), redirect("90 °", GENTLE)):
        assert isinstance(check(made).rig, Rig)


@pytest.mark.parametrize("rule", ["strap_and_half", "twenty_metres"])
def test_a_rule_that_lets_people_stand_nearer_than_another_is_never_taken_without_a_word(rule: str) -> None:
    """A strap of 9 m: four lengths are 36 m, and the two others ask for less."""
    longest, nearer = check(snatch(GENTLE)), check(snatch(replace(GENTLE, distance_rule=rule)))
    assert longest.outcome is RigOutcome.SOUND and not findings(longest, "distance")
    assert nearer.stand_off_m < longest.stand_off_m == 36
    assert nearer.outcome is RigOutcome.CAUTION and "36 m" in findings(nearer, "distance")[0].says
    assert not findings(check(snatch(replace(GENTLE, distance_rule="four_straps"))), "distance")
