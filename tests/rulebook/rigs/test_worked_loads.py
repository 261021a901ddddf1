"""Rigs worked by hand: what the line bears, what comes to the ends, and what is stored and thrown. Sums shown.

Everywhere g = 9.80665; an 8,000 kg strap breaks at Fb = 78,453.2 N; stretched 12 % at break, 9 m give xb = 1.08 m. A
curve of power p stores Fb xb / (p + 1) x (x / xb)^(p + 1), and at the peak that is m v^2 / 2 + T x. The roots were
found by halving, apart from the program.
"""

import math

import pytest
from msgspec.structs import replace

from inspector.gear.rig import Angle, Conditions, Footing, Method, Rig
from inspector.gear.rig_result import RigOutcome
from tests.rulebook.rigs.made import (
    BOGGED,
    DAMPER,
    KN,
    POINTS,
    PULLING,
    SHACKLES,
    SNATCH,
    TONNE_FORCE,
    TREE,
    G,
    angle,
    around,
    between,
    check,
    double_line,
    facts,
    findings,
    hung_block,
    length,
    line,
    link,
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

WAGONS = (vehicle(BOGGED, "3,000 kg", "2,500 kg"), vehicle(PULLING, "3,000 kg", "2,500 kg"))
GENTLE = Conditions(speed=speed("5 km/h"), drive=share("40 %"))
BEACH = snatch(GENTLE, vehicles=WAGONS)


def test_the_bound_of_a_gentle_snatch_is_that_of_the_curve_that_pulls_hardest() -> None:
    """v = 1.38889 m/s, m v^2 / 2 = 2,411.27 J, T = 0.4 x 2,500 g = 9,806.65 N.

    p = 1: T + sqrt(T^2 + k m v^2), k = 78,453.2 / 1.08 = 72,641.9: 9,806.65 + sqrt(9.6170e7 + 3.5032e8) = 30,936.9 N.
    p = 1.5: x = 0.62117 m, 34,221.1 N. p = 2: 28,243.2 y^3 - 10,591.2 y - 2,411.27 = 0, y = 0.704415, Fb y^2 =
    38,928.5 N, the greatest.
    """
    assert check(BEACH).load.pull_n == pytest.approx(38928.5, abs=0.1)


def test_a_single_line_has_one_tension_from_end_to_end() -> None:
    result = check(BEACH)
    assert {round(link(result, tag).force_n, 1) for tag in SNATCH} == {38928.5}
    assert {round(one.force_n, 1) for one in result.joints} == {38928.5}


def test_the_energy_is_that_of_the_softest_strap() -> None:
    """30 % at break: xb = 2.7 m. p = 2: 70,607.9 y^3 - 26,478.0 y - 2,411.27 = 0, y = 0.653641, x = 1.76483 m.

    2,411.27 + 9,806.65 x 1.76483 = 19,718.3 J; p = 1 gives 10,909 J, p = 1.5 16,007 J.
    """
    assert check(BEACH).load.energy_j == pytest.approx(19718.3, abs=0.1)


@pytest.mark.parametrize(
    ("lets_go", "flies", "mass_kg", "metres_per_s"),
    [
        ("S-B", {"S-B"}, 0.7, 237.36),
        ("P-B", {"P-B", "S-B"}, 2.2, 133.89),
        ("K", {"K"}, 2.52, 125.10),
        ("P-P", {"P-P", "S-P"}, 2.2, 133.89),
    ],
)
def test_what_flies_takes_all_the_energy(lets_go: str, flies: set[str], mass_kg: float, metres_per_s: float) -> None:
    """v = sqrt(2 E / m): a shackle 0.7 kg, a point 1.5 kg, the strap 9 x 0.28 kg; E = 19,718.3 J."""
    one = next(one for one in check(BEACH).flying if one.link == lets_go)
    assert set(one.parts) == flies and one.mass_kg == pytest.approx(mass_kg)
    assert one.speed_m_per_s == pytest.approx(metres_per_s, abs=0.01)


def test_slack_of_three_metres_is_a_run_of_fifteen_kilometres_an_hour() -> None:
    """v = sqrt(2 x 3 x 3) = 4.2426 m/s; 3,000 kg: 27,000 J. p = 2: Fb (27,000 / 28,243.2)^(2/3) = 76,133.8 N."""
    result = check(snatch(Conditions(slack=length("3 m"), drive=share("0 %"))))
    assert result.load.pull_n == pytest.approx(76133.8, abs=0.1)
    assert findings(result, "speed"), "15.3 km/h is faster than advised"


def test_little_slack_does_not_lower_the_speed_that_stands_when_nobody_says_one() -> None:
    """0.5 m: sqrt(2 x 3 x 0.5) = 1.73 m/s, below 5 mph = 2.2352 m/s. p = 1: v sqrt(k m) = 2.2352 sqrt(72,641.9 x
    3,000) = 32,996.7 N."""
    for slack in (length("0.5 m"), None):
        result = check(snatch(Conditions(slack=slack, drive=share("0 %"))))
        assert result.load.pull_n == pytest.approx(32996.7, abs=0.1)


def test_two_straps_in_a_row_are_softer_than_one() -> None:
    """Twice the stretch: xb = 2.16 m. p = 2: 56,486.3 y^3 - 21,182.4 y - 2,411.27 = 0, Fb y^2 = 34,472.2 N."""
    run = ("P-B", "S-B", "K", "S-M", "K2", "S-P", "P-P")
    result = check(snatch(GENTLE, run=run, instead=(strap("K2"), shackle("S-M")), vehicles=WAGONS))
    assert result.load.pull_n == pytest.approx(34472.2, abs=0.1)
    assert set(result.load.at) == {"K", "K2"}
    assert findings(result, "in_line")[0].outcome is RigOutcome.CAUTION
    assert result.stand_off_m == pytest.approx(4 * 18)


def test_of_two_straps_in_a_row_each_stretches_by_its_own_strength() -> None:
    """8 t and 11 t, 9 m each; at 78,453 N the 11 t one stretches 1.08 (8/11)^(1/2) = 0.92103 m: xb = 2.00103 m for
    p = 2. Root: 34,844.4 N, between one strap (38,928) and two of 8 t (34,472)."""
    run = ("P-B", "S-B", "K", "S-M", "K2", "S-P", "P-P")
    result = check(snatch(GENTLE, run=run, instead=(strap("K2", "11,000 kg"), shackle("S-M")), vehicles=WAGONS))
    assert result.load.pull_n == pytest.approx(34844.4, abs=0.1)


# --- a steady pull by another vehicle ---

TOWERS = (vehicle(BOGGED, "3,000 kg"), vehicle(PULLING, "3,000 kg", "2,000 kg"))


def towed(conditions: Conditions) -> float:
    """The pull through a 10 t static strap of 5 m; 5 % at break is 0.25 m."""
    static = strap(rated="10,000 kg", long="5 m", kind="static_strap")
    return check(snatch(conditions, kinetic=static, vehicles=TOWERS, method=Method.TOW_OUT)).load.pull_n


def test_slack_in_a_static_strap_is_reckoned_as_a_snatch() -> None:
    """0.3 m at 3 m/s2: v^2 = 1.8; 2,000 kg: 1,800 J; T = 0.5 x 2,000 g = 9,806.65 N; Fb = 98,066.5 N.

    p = 1: 9,806.65 + sqrt(9.6170e7 + 392,266 x 2,000 x 1.8) = 48,643.8 N; p = 1.5: 51,994.4; p = 2: 57,603.2 N.
    """
    assert towed(Conditions(slack=length("0.3 m"), drive=share("50 %"))) == pytest.approx(57603.2, abs=0.1)
    assert towed(Conditions(drive=share("50 %"))) == pytest.approx(57603.2, abs=0.1), "0.3 m where nobody said it"


def test_a_pull_from_a_stand_is_at_least_the_drive_put_on_at_once() -> None:
    """No slack, no run: a drive that comes all at once makes 2 T in a straight-line strap, 3 T where p = 2."""
    assert towed(Conditions(slack=length("0 m"), drive=share("50 %"))) == pytest.approx(3 * 9806.65)


# --- a winch ---


def test_a_winch_whose_stall_nobody_knows_is_taken_to_stall_a_quarter_above_its_plate() -> None:
    """4 t on the plate: 5 t = 49,033 N in line, hook and point; full drum 2 t to the vehicle; 3,000 kg with all
    brakes on hold 0.666 x 3 = 1.998 t and slide before 5 t."""
    result = check(single_line())
    assert [link(result, tag).force_n for tag in ("L", "S-B", "P-B")] == pytest.approx([49033.25] * 3)
    assert result.load.offered_n == pytest.approx(2 * TONNE_FORCE)
    assert findings(result, "anchor")[0].about == (PULLING,)


def test_a_double_line_to_an_anchor_and_back() -> None:
    """5 t in the line: the block, its shackle and the strap bear 10 t, the winch and the point 5 t each; the vehicle is
    drawn by two parts: on layer 1, 4 x 2 / 1.1 = 7.2727 t. Tree strap, legs 60 degrees: 10 / (2 cos 30) = 5.7735 t."""
    made = double_line(Conditions(layers=1))
    legs = (Angle("R", angle("0 °")), Angle("T", angle("60 °")))
    result = check(replace(made, rig=replace(made.rig, angles=legs)))
    bears = {tag: link(result, tag).force_n / TONNE_FORCE for tag in ("L", "W", "P-B", "S-B", "R", "S-R", "T")}
    expected = {"L": 5, "W": 5, "P-B": 5, "S-B": 5, "R": 10, "S-R": 10, "T": 10 / (2 * math.cos(math.radians(30)))}
    assert bears == pytest.approx(expected)
    assert link(result, "T").legs == 2
    assert result.load.offered_n / TONNE_FORCE == pytest.approx(8 / 1.1)


def test_a_double_line_whose_parts_spread_draws_less_than_two() -> None:
    """60 degrees between the parts: each lies 30 degrees off the way to the block; 2 cos 30 = 1.7321 of the pull come
    to the vehicle, as they come to the block. Layer 1: 4 x 1.7321 / 1.1 = 6.2984 t."""
    result = check(double_line(Conditions(layers=1), degrees="60 °"))
    assert link(result, "R").force_n / (5 * TONNE_FORCE) == pytest.approx(math.sqrt(3))
    assert result.load.offered_n / TONNE_FORCE == pytest.approx(4 * math.sqrt(3) / 1.1)


def test_a_redirect_at_a_right_angle() -> None:
    """The anchor bears 5 x 1.41421 = 7.0711 t, the bogged vehicle 5 t, the winching vehicle 5 t."""
    result = check(redirect("90 °"))
    assert link(result, "R").force_n / TONNE_FORCE == pytest.approx(5 * math.sqrt(2))
    assert between(result, "S-R", "T") / TONNE_FORCE == pytest.approx(5 * math.sqrt(2))
    assert between(result, "T", TREE) / TONNE_FORCE == pytest.approx(5 * math.sqrt(2))
    assert [link(result, tag).force_n / TONNE_FORCE for tag in ("W", "S-B", "P-B")] == pytest.approx([5, 5, 5])


def test_a_moving_block_on_the_bogged_vehicle_doubles_the_pull_on_its_point() -> None:
    """Winch and line's end on the pulling vehicle, the block on the bogged one: its point bears 10 t, the puller's two
    points 5 t each."""
    runs = (("W", "L", "R", "S-R", "P-B"), ("L", "S-P", "P-P"))
    rig = Rig("moving", Method.WINCH, BOGGED, PULLING, runs, dampers=("D",))
    pieces = (winch(), line(), hung_block("R"), shackle("S-R", "10 t"), *SHACKLES, *POINTS, DAMPER)
    result = check(facts(rig, pieces))
    assert link(result, "P-B").force_n / TONNE_FORCE == pytest.approx(10)
    assert [link(result, tag).force_n / TONNE_FORCE for tag in ("W", "P-P")] == pytest.approx([5, 5])


def test_a_double_line_through_a_bridle() -> None:
    """The block hangs in the middle of a bridle on two points of the bogged vehicle, legs 60 degrees apart: 10 t to its
    middle, 10 / (2 cos 30) = 5.7735 t in each leg, shackle and point."""
    runs = (("W", "L", "R", "S-R", "B", "S-B", "P-B"), ("B", "S-C", "P-C"), ("L", "S-P", "P-P"))
    rig = Rig("bridle", Method.WINCH, BOGGED, PULLING, runs, angles=(Angle("B", angle("60 °")),), dampers=("D",))
    more = (piece("B", "bridle_strap", "20 t", long="3 m"), shackle("S-C"), point("P-C", BOGGED))
    pieces = (winch(), line(), hung_block("R"), shackle("S-R", "10 t"), *SHACKLES, *POINTS, *more, DAMPER)
    result = check(facts(rig, pieces))
    assert link(result, "S-R").force_n / TONNE_FORCE == pytest.approx(10)
    for tag in ("B", "S-B", "P-B", "S-C", "P-C"):
        assert link(result, tag).force_n / TONNE_FORCE == pytest.approx(10 / math.sqrt(3))


def test_a_bridle_that_nobody_measured_is_taken_at_ninety_degrees() -> None:
    """1 / (2 cos 45) = 0.70711 in each leg, and the assumption is told."""
    runs = (("P-P", "S-P", "K", "S-M", "B", "S-B", "P-B"), ("B", "S-C", "P-C"))
    rig = Rig("bridle", Method.KINETIC, BOGGED, PULLING, runs, GENTLE, dampers=("D",))
    more = (piece("B", "bridle_strap", "20 t", long="3 m"), shackle("S-C"), shackle("S-M"), point("P-C", BOGGED))
    result = check(facts(rig, (*POINTS, *SHACKLES, strap(), DAMPER, *more), WAGONS))
    assert link(result, "P-B").force_n / result.load.pull_n == pytest.approx(math.sqrt(0.5))
    assert any("B" in one.what and not one.typed for one in result.load.assumptions)
    assert findings(result, "bridle")[0].outcome is RigOutcome.CAUTION


def test_a_winch_line_stores_what_its_stretch_takes_up() -> None:
    """25 m at 5 %: xb = 1.25 m, Fb = 20 t, pull 5 t, so F / Fb = 1/4. F xb r^(1/p) / (p + 1): p = 1 7,661 J, p = 1.5
    9,729 J, p = 2 49,033.25 x 1.25 x 0.5 / 3 = 10,215.3 J."""
    assert check(single_line()).load.energy_j == pytest.approx(10215.3, abs=0.1)


def test_a_strap_that_lengthens_the_winch_line_stores_besides() -> None:
    """10 m of 20 t static strap at 15 %: xb = 1.5 m; p = 2: 49,033.25 x 1.5 x 0.5 / 3 = 12,258.3 J more."""
    runs = (("W", "L", "S-M", "X", "S-B", "P-B"),)
    rig = Rig("longer", Method.WINCH, BOGGED, PULLING, runs, dampers=("D",))
    longer = strap("X", "20 t", "10 m", "static_strap")
    result = check(facts(rig, (winch(), line(), longer, shackle("S-M"), *SHACKLES, *POINTS, DAMPER)))
    assert result.load.energy_j == pytest.approx(10215.3 + 12258.3, abs=0.2)


# --- whether it moves ---


@pytest.mark.parametrize(("slope", "moves"), [("0 °", True), ("5 °", True), ("30 °", False)])
def test_whether_a_winch_moves_the_vehicle(slope: str, moves: bool) -> None:
    """3,000 kg in soft dry sand: 0.25 x 3 = 0.75 t; at 30 degrees 1.5 t more is 2.25 t, above the 2 t of a full drum;
    at 5 degrees 0.75 + 3 x 0.0872 = 1.01 t."""
    result = check(single_line(Conditions(bogged_in=Footing.SOFT_DRY_SAND, slope=angle(slope))))
    needed_t = 0.75 + 3 * math.sin(math.radians(float(slope.split()[0])))
    assert result.load.needed_n is not None and result.load.needed_n / TONNE_FORCE == pytest.approx(needed_t)
    assert result.load.moves is moves
    assert (findings(result, "moves")[0].outcome is RigOutcome.SOUND) is moves


def test_where_nobody_said_what_it_stands_in_moving_is_not_known() -> None:
    result = check(single_line())
    assert result.load.needed_n is None and result.load.moves is None
    assert findings(result, "moves")[0].outcome is RigOutcome.CAUTION


def test_a_likely_pull_lies_between_the_resistance_and_the_bound() -> None:
    """Both 2,500 kg, k = 72,641.9 N/m, R = 0.25 x 24,516.6 = 6,129.2 N, T = 9,806.65 N, v = 1.38889 m/s.

    me = 1,250 kg; C = 1,250 (R / 2,500 + T / 2,500) = 7,967.9 N; v1^2 = 1.929012 + (2 T R - R^2) / (k x 2,500) =
    1.929012 + (1.202132e8 - 3.75666e7) / 1.816047e8 = 2.384103; F = C + sqrt((R - C)^2 + k me v1^2) = 7,967.9 +
    sqrt(3.38093e6 + 2.164821e8) = 22,795.9 N.
    """
    conditions = Conditions(speed=speed("5 km/h"), drive=share("40 %"), bogged_in=Footing.SOFT_DRY_SAND)
    load = check(snatch(conditions, vehicles=WAGONS)).load
    assert load.likely_n == pytest.approx(22795.9, abs=1)
    assert load.needed_n == pytest.approx(0.25 * 2500 * G)
    assert load.needed_n and load.likely_n
    assert load.needed_n < load.likely_n < load.pull_n and load.pull_n / KN == pytest.approx(38.93, abs=0.01)


def test_a_strap_round_a_tree_by_the_angle_of_its_legs() -> None:
    """Line end on the strap, 5 t: legs 0 degrees 2.5 t each, 90 degrees 5 / 1.41421 = 3.5355 t, 120 degrees 5 t."""
    for degrees, tonnes in (("0 °", 2.5), ("90 °", 5 / math.sqrt(2)), ("120 °", 5.0)):
        runs = (("W", "L", "S-R", "T", TREE),)
        rig = Rig("tree", Method.WINCH, BOGGED, "", runs, angles=(Angle("T", angle(degrees)),), dampers=("D",))
        result = check(facts(rig, (winch(on=BOGGED), line(), around(), shackle("S-R"), DAMPER)))
        assert link(result, "T").force_n / TONNE_FORCE == pytest.approx(tonnes)
