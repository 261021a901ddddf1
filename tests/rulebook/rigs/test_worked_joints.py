"""Joints that no strength makes right, each with the strongest parts there are, and the sums beside them by hand.

Every part but the forbidden one stands 100 t here, so that nothing but the joint decides.
"""

import itertools
import math

import pytest
from msgspec.structs import replace

from inspector.gear.fitting import End
from inspector.gear.rig import Conditions, LooseEnd, Method, NamedJoint, Rig
from inspector.gear.rig_result import JointUse, RigOutcome, RigResult
from tests.each import each
from tests.rulebook.dossiers import BOOK
from tests.rulebook.rigs.made import (
    BOGGED,
    PULLING,
    SHACKLES,
    G,
    check,
    findings,
    piece,
    point,
    shackle,
    share,
    snatch,
    speed,
    strap,
    vehicle,
)

WAGONS = (vehicle(BOGGED, "3,000 kg", "2,500 kg"), vehicle(PULLING, "3,000 kg", "2,500 kg"))
SLOW = Conditions(speed=speed("1 km/h"), drive=share("5 %"))
BALL = piece("BL", "tow_ball", "", size=(("shank_diameter", "22 mm"), ("lever", "60 mm")))
MOUNT = piece("BM", "ball_mount", "", size=(("outside", "50 mm"), ("wall", "4 mm"), ("lever", "40 mm")))
RECEIVER = piece(
    "RC", "hitch_receiver", "100 t", size=(("outside", "60 mm"), ("wall", "4 mm")), on=BOGGED, end=End.REAR
)
BAR = piece("TB", "tow_bar", "100 t", on=BOGGED, end=End.REAR)
PIN = piece("PN", "hitch_pin", "100 t", size=(("pin_diameter", "15.875 mm"),))
STRONG = (
    *(BALL, MOUNT, RECEIVER, PIN, BAR, piece("IN", "receiver_insert", "100 t"), piece("SO", "soft_shackle", "100 t")),
    *(point("P-B", BOGGED, rated="100 t"), point("P-P", PULLING, End.REAR, "100 t")),
    *(piece("S-B", "bow_shackle", "100 t"), piece("S-P", "bow_shackle", "100 t"), piece("H", "winch_hook", "100 t")),
    *(piece("X", "static_strap", "100 t", long="9 m"), piece("T", "tree_strap", "100 t", long="4 m")),
    *(piece("R", "snatch_block", "100 t"), piece("L", "fibre_winch_line", "100 t", long="25 m")),
    piece("B", "bridle_strap", "100 t", long="3 m"),
)


def ended(*end: str, joints: tuple[NamedJoint, ...] = ()) -> RigResult:
    """A slow snatch whose far end is this."""
    run = (*end, "K", "S-P", "P-P")
    return check(snatch(SLOW, kinetic=strap(), instead=STRONG, run=run, vehicles=WAGONS, joints=joints))


def joint(result: RigResult, how: str) -> JointUse:
    """The joint made so."""
    return next(one for one in result.joints if one.how == how)


NEVER = {
    "strap over a tow ball": (("TB", "BL"), "ball"),
    "shackle on a tow ball": (("TB", "BL", "S-B"), "ball"),
    "soft shackle on a ball on its mount": (("RC", "PN", "BM", "BL", "SO"), "ball"),
    "shackle in the ball hole of a mount": (("RC", "PN", "BM", "S-B"), "ball_hole"),
    "strap round a ball mount": (("RC", "PN", "BM"), "ball_hole"),
    "shackle in the chain hole of a bare receiver": (("RC", "S-B"), "chain_hole"),
    "strap's eye over the pin of a bare receiver": (("RC", "PN"), "eye_over_pin"),
    "shackle over that pin": (("RC", "PN", "S-B"), "eye_over_pin"),
    "insert without its pin": (("RC", "IN", "S-B"), "insert_without_pin"),
    "shackle on a tie-down point": (("tie_down@V-B", "S-B"), "tie_down"),
    "strap on a tie-down point": (("tie_down@V-B",), "tie_down"),
    "shackle on a safety-chain plate": (("chain_plate@V-B", "S-B"), "chain_plate"),
}


@each("what", NEVER)
def test_never_whatever_the_strength(what: str) -> None:
    end, how = NEVER[what]
    result = ended(*end)
    assert result.outcome is RigOutcome.NEVER and joint(result, how).outcome is RigOutcome.NEVER
    found = findings(result, f"joint.{how}")[0]
    assert found.says and found.source and set(found.about) <= set(result.rig.tags) | {"TB"}
    assert found.says in result.headline


FORBIDDEN = ("ball", "ball_mount", "tie_down", "chain_plate")
TRAILER = (("ball", "ball_mount"), ("ball_mount", "pin"), ("ball_mount", "receiver"))
MAKES_A_TRAILER = {frozenset(pair) for pair in TRAILER}
CARRIES = {"pin", "receiver", "bar", "winch", "tree", "ground_anchor", "towing_eye"}


@pytest.mark.parametrize("end", FORBIDDEN)
def test_nothing_that_carries_a_recovery_load_has_another_joint_with_them(end: str) -> None:
    """Block, bridle, strap, rope, line, hook, shackle: each is told never, none is told that it is merely unknown."""
    roles = sorted({role.key for role in BOOK.roles.values()} - {"damper", *FORBIDDEN, *CARRIES, "insert", "point"})
    for role in roles:
        usual = next((one for one in BOOK.joints if one.fits(end, role)), None)
        assert usual is not None and usual.outcome is RigOutcome.NEVER, f"{end} and {role}"


def test_only_the_joints_of_a_trailer_are_sound_at_a_ball_or_its_mount() -> None:
    roles = {role.key for role in BOOK.roles.values()} | {one.value for one in LooseEnd}
    for end, other in itertools.product(FORBIDDEN, roles):
        for one in BOOK.joints:
            if one.fits(end, other) and frozenset((end, other)) not in MAKES_A_TRAILER:
                assert one.outcome is RigOutcome.NEVER, one.key


def test_no_name_for_a_joint_makes_a_forbidden_one_right() -> None:
    """Whoever names the joint gets one of its pair, and each of those is never too."""
    pairs = {("RC", "S-B"): ("RC", "S-B"), ("RC", "SO"): ("RC", "SO")}
    for pair, end in pairs.items():
        for how in ("chain_hole", "eye_over_pin"):
            assert ended(*end, joints=(NamedJoint(*pair, how),)).outcome is RigOutcome.NEVER


def test_one_forbidden_end_decides_over_everything_else() -> None:
    """A retired strap, no damper, a weak shackle: still never, and that stands first."""
    weak = (piece("K", "static_strap", "100 kg", long="9 m"), shackle("S-B", "0.5 t"))
    result = check(snatch(SLOW, instead=weak, run=("tie_down@V-B", "S-B", "K", "S-P", "P-P"), vehicles=WAGONS))
    assert result.outcome is RigOutcome.NEVER and result.findings[0].outcome is RigOutcome.NEVER


# --- the sums beside them ---


def test_the_lever_of_a_ball() -> None:
    """22 mm shank, 60 mm lever: W = pi 22^3 / 32 = 1,045.37 mm3, stress = F 60 / W; yields from 235 x 1,045.37 / 60 =
    4,094 N; plastic d^3 / 6 = 1,774.67 mm3: 235 x 1,774.67 / 60 = 6,951 N."""
    result = ended("TB", "BL")
    used = joint(result, "ball")
    pull_n = result.load.pull_n
    assert used.force_n == pytest.approx(pull_n) and used.planes == 1 and used.picture == "single_shear"
    assert used.figure("moment_n_m") == pytest.approx(0.06 * pull_n)
    assert used.figure("stress_pa") == pytest.approx(pull_n * 0.06 / 1.04537e-6, rel=1e-5)
    assert used.figure("first_set_n") == pytest.approx(4094, abs=1)
    assert used.figure("strength_n") == pytest.approx(6951, abs=1)


def test_the_wall_beside_the_weld_of_a_ball_mount() -> None:
    """50 x 50 x 4: A = 6.95 cm2, W = 9.49 cm3 (EN 10219-2); 40 mm off the middle: F / A + F 0.04 / W."""
    result = ended("RC", "PN", "BM", "S-B")
    used = joint(result, "ball_hole")
    pull_n = result.load.pull_n
    assert used.picture == "weld_tension"
    assert used.figure("stress_pa") == pytest.approx(pull_n / 6.95e-4 + pull_n * 0.04 / 9.49e-6, rel=1e-3)
    assert used.figure("first_set_n") == pytest.approx(235e6 * pull_n / (used.figure("stress_pa") or 0))


def test_a_pin_across_a_bare_tube() -> None:
    """Tube 60 x 4: 52 mm inside. The strap pulls in the middle: M = F (52 + 4) / 4 mm; 5/8 in pin: 1.5 x 392.77 mm3 x
    235 MPa = 138.45 N m, so it bends from 4 x 138.45 / 0.056 = 9,889 N."""
    result = ended("RC", "PN")
    used = joint(result, "eye_over_pin")
    assert used.figure("moment_n_m") == pytest.approx(result.load.pull_n * 0.056 / 4)
    assert used.figure("first_set_n") == pytest.approx(9889, abs=1)


def test_a_shackle_pin_in_a_point_shares_the_pull_between_two_sections() -> None:
    """Pin 22 mm: 380.13 mm2 each; F / 2 through each."""
    measured = piece("S-B", "bow_shackle", "100 t", size=(("bow_diameter", "19 mm"), ("pin_diameter", "22 mm")))
    result = check(snatch(SLOW, instead=(*STRONG, measured), vehicles=WAGONS))
    used = next(one for one in result.joints if {one.one, one.other} == {"P-B", "S-B"})
    assert used.how == "pin_in_point" and used.planes == 2 and used.outcome is RigOutcome.SOUND
    assert used.figure("per_plane_n") == pytest.approx(result.load.pull_n / 2)
    assert used.figure("stress_pa") == pytest.approx(result.load.pull_n / (2 * math.pi * 0.011**2))


def test_a_tie_down_beside_what_the_law_asks_of_the_towing_eye() -> None:
    """3,000 kg: 1,500 g = 14,710 N."""
    assert joint(ended("tie_down@V-B", "S-B"), "tie_down").figure("towing_eye_n") == pytest.approx(1500 * G)


# --- joints for caution, and unknown ones ---


@pytest.mark.parametrize(
    ("end", "how"),
    [
        (("P-B",), "eye_on_point"),
        (("P-B", "SO"), "soft_in_point"),
        (("towing_eye@V-B", "S-B"), "on_towing_eye"),
        (("TB", "S-B"), "on_bare_bar"),
    ],
)
def test_joints_for_care(end: tuple[str, ...], how: str) -> None:
    assert joint(ended(*end), how).outcome is RigOutcome.CAUTION
    assert ended(*end).outcome is not RigOutcome.SOUND


def test_two_straps_looped_through_each_other_are_for_care() -> None:
    second = strap("K2")
    run = ("P-B", "S-B", "K2", "K", "S-P", "P-P")
    assert joint(check(snatch(SLOW, instead=(second,), run=run, vehicles=WAGONS)), "straps_in_line").says


def test_a_joint_that_nobody_knows_is_not_sound() -> None:
    """An insert's own eye under a strap with no shackle between."""
    result = ended("RC", "PN", "IN")
    unknown = next(one for one in result.joints if {one.one, one.other} == {"IN", "K"})
    assert unknown.how == "" and unknown.outcome is RigOutcome.UNSOUND and unknown.says


def test_every_joint_of_a_sound_rig_is_told() -> None:
    """4 joints; nothing is hidden because it passes."""
    result = check(snatch(SLOW, vehicles=WAGONS))
    assert [one.how for one in result.joints] == ["pin_in_point", "eye_in_shackle", "eye_in_shackle", "pin_in_point"]
    assert {one.tag for one in SHACKLES} < {one.tag for one in result.links}


def test_a_block_hung_on_a_ball_is_never() -> None:
    """The winch on the pulling vehicle, the block hung straight on the stuck vehicle's ball."""
    runs = (("W", "L", "R", "BL", "TB"), ("L", "S-P", "P-P"))
    rig = Rig("ball", Method.WINCH, BOGGED, PULLING, runs, dampers=("D",))
    made = snatch(SLOW, instead=(*STRONG, piece("W", "winch", "4 t", on=PULLING, end=End.FRONT)), vehicles=WAGONS)
    made.pieces["L"] = piece("L", "fibre_winch_line", "20 t", long="25 m")
    assert check(replace(made, rig=rig)).outcome is RigOutcome.NEVER
