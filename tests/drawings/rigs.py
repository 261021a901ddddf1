"""Invented rigs, checked by hand: the sums stand beside the figures."""

from datetime import date
from itertools import pairwise

from msgspec.structs import replace

from inspector.gear.rig import Angle, Conditions, Footing, Method, Rig
from inspector.gear.rig_result import (
    Assumption,
    Change,
    Flying,
    JointUse,
    LinkUse,
    Load,
    RigFinding,
    RigOutcome,
    RigResult,
    Sensitivity,
)
from inspector.gear.trip import Vehicle
from inspector.units import Dimension, read

ON = date(2026, 6, 13)
SOUND, CAUTION, UNSOUND, NEVER = RigOutcome
NAMES = {
    "kinetic_strap": "Kinetic strap",
    "static_strap": "Static strap",
    "bridle_strap": "Bridle strap",
    "tree_strap": "Tree strap",
    "fibre_winch_line": "Fibre winch line",
    "bow_shackle": "Bow shackle",
    "dee_shackle": "Dee shackle",
    "soft_shackle": "Soft shackle",
    "recovery_point": "Recovery point",
    "hitch_receiver": "Hitch receiver",
    "receiver_insert": "Receiver insert",
    "hitch_pin": "Hitch pin",
    "ball_mount": "Ball mount",
    "tow_ball": "Tow ball",
    "tow_bar": "Tow bar",
    "snatch_block": "Snatch block",
    "sheave_ring": "Sheave ring",
    "winch_hook": "Winch hook",
    "winch": "Winch",
    "tree": "Tree",
    "tie_down": "Tie-down point",
    "ground_anchor": "Ground anchor",
    "kinetic_rope": "Kinetic rope",
    "wire_winch_rope": "Wire winch rope",
    "towing_eye": "Towing eye",
    "chain_plate": "Safety-chain plate",
    "damper": "Damper",
}
CAUTIONS = (
    "This sheet helps to decide; it does not certify any part. A competent person decides.",
    "The maker's instructions, local law, codes and an engineer's or certified inspector's word go before it.",
    "Stay clear of a loaded line: nobody within one and a half times its length, nobody in line with it.",
)


def mass(typed: str) -> Vehicle:
    """A vehicle of this mass."""
    figure = read(typed, Dimension.MASS, field="mass")
    return Vehicle("", "", "", "", figure, figure)


VEHICLES = (
    replace(mass("2,850 kg"), id="1", tag="V-01", name="Grey long-wheelbase wagon"),
    replace(mass("1,450 kg"), id="2", tag="V-02", name="Small two-door"),
)


def link(
    tag: str, kind: str, force_kn: float, capacity_kn: float | None, margin: float = 2.0, side: str = ""
) -> LinkUse:
    """A part with what it bears and stands in kN; its outcome follows from the two."""
    capacity_n = None if capacity_kn is None else capacity_kn * 1e3
    fits = capacity_n is not None and force_kn * 1e3 * margin <= capacity_n
    why = "" if capacity_n is not None else "No marking tells its strength, and no certificate is filed."
    return LinkUse(
        tag,
        NAMES[kind],
        "in the line",
        force_kn * 1e3,
        capacity_n,
        margin,
        why,
        SOUND if fits else UNSOUND,
        side,
        kind=kind,
    )


def joint(one: str, other: str, name: str = "Shackle pin through an eye", picture: str = "") -> JointUse:
    """A joint as it should be, 45 kN through it."""
    source = "common practice, no published source"
    planes = 2 if picture == "double_shear" else 0
    return JointUse(
        one, other, "pin_in_eye", name, 45e3, SOUND, "The pin is held on both sides.", source, picture, planes
    )


def joints_of(*runs: tuple[str, ...]) -> tuple[JointUse, ...]:
    """Every joint of the runs, as it should be."""
    pairs = dict.fromkeys(pair for run in runs for pair in pairwise(run))
    return tuple(joint(one, other) for one, other in pairs)


BALL = JointUse(
    one="SS-12",
    other="TB-03",
    how="over_ball",
    name="Loop over a tow ball",
    force_n=45e3,
    outcome=NEVER,
    says="A tow ball is held on one side only: the pull bends its neck, and a ball that snaps off flies.",
    source="common practice, no published source",
    picture="single_shear",
    planes=1,
    sums=(
        "45 kN × 0.046 m = 2070 N m at the neck.",
        "2070 N m / (π × 0.025³ m³ / 32) = 1349 MPa, far beyond the 400 MPa at which weak steel first bends for good.",
        "It first bends for good at 400 MPa × 1.534 cm³ / 0.046 m = 13.3 kN.",
    ),
    # W = pi 0.025^3 / 32 = 1.5340e-6 m3; 2070 / W = 1349 MPa; 400e6 W / 0.046 = 13.34 kN
    figures=(
        ("lever_m", 0.046),
        ("shank_m", 0.025),
        ("moment_n_m", 2070.0),
        ("stress_pa", 1.349e9),
        ("first_set_n", 13.34e3),
    ),
)
WELD = replace(
    BALL,
    one="SH-13",
    other="BM-02",
    how="in_ball_hole",
    name="Shackle in the ball hole of a ball mount",
    says="The hole lies off the shank's middle: the pull opens the weld from one side, and nobody has rated it.",
    picture="weld_tension",
    planes=0,
    sums=("45 kN × 0.050 m = 2250 N m on the weld.",),
    figures=(("lever_m", 0.050), ("moment_n_m", 2250.0), ("stress_pa", 239e6), ("strength_n", 42.8e3)),
)
PIN = replace(
    joint("RI-04", "HR-01", "Hitch pin through receiver and insert", "double_shear"),
    sums=("45 kN / 2 = 22.5 kN on each of two sections.",),
    # pi/4 0.0159^2 = 198.6 mm2; 22.5 kN / 198.6 mm2 = 113 MPa
    figures=(("pin_m", 0.0159), ("stress_pa", 113e6), ("strength_n", 190e3)),
)
TUBE = replace(
    BALL,
    one="KS-11",
    other="HR-01",
    how="eye_over_pin",
    name="Strap's eye over the hitch pin in the bare receiver",
    says="The pin bends over the whole width of the tube, and the edges of the tube cut the strap.",
    picture="bare_tube",
    planes=2,
    sums=("45 kN / 2 × 0.0255 m = 574 N m in the pin.",),
    figures=(("pin_m", 0.0159), ("lever_m", 0.0255), ("moment_n_m", 574.0), ("first_set_n", 12.3e3)),
)
TIE_DOWN = replace(
    BALL,
    one="SH-13",
    other="tie_down@V-01",
    how="in_tie_down",
    name="Shackle in a tie-down point",
    says="It was made to hold a parked vehicle on a trailer, and nobody has rated it for a pull.",
    picture="tie_down",
    planes=0,
    sums=(),
    figures=(("strength_n", 9.8e3),),
)

CHAIN = ("RP-01", "SS-12", "KS-11", "SH-13", "RP-02")
SOURCE = "balance of energy"


def chain_links() -> tuple[LinkUse, ...]:
    """Recovery point, soft shackle, strap, bow shackle, recovery point: 45 kN in all."""
    strap = replace(link("KS-11", "kinetic_strap", 45, 108.2, 2.0), length_m=9.0)
    return (
        link("RP-01", "recovery_point", 45, 98.1, 2.0, "V-02"),
        link("SS-12", "soft_shackle", 45, 130.0),
        replace(strap, taken_off=("15 % for wet nylon",)),
        link("SH-13", "bow_shackle", 45, 228.8, 2.0),
        link("RP-02", "recovery_point", 45, 110.0, 2.0, "V-01"),
    )


def rig(
    *runs: tuple[str, ...], method: Method = Method.KINETIC, pulling: str = "V-01", angles: tuple[Angle, ...] = ()
) -> Rig:
    """A rig that brings V-02 out of wheel-deep mud."""
    conditions = Conditions(bogged_in=Footing.WHEEL_DEEP_MUD, pulling_on=Footing.GRASS)
    return Rig("North end of the spit", method, "V-02", pulling, runs, conditions, angles)


def load() -> Load:
    """What a strap of 9 m at 1.6 m/s can put on, with its assumptions."""
    return Load(
        pull_n=45e3,
        at=("KS-11",),
        likely_n=31e3,
        needed_n=28.4e3,  # 1450 kg x 9.80665 x 2.0
        offered_n=45e3,
        energy_j=3.65e3,
        steps=(
            "The towing vehicle brings 2850 kg at 5.8 km/h: 3.7 kJ.",
            "All of it goes into the strap, the stuck vehicle taken as an anchor that does not give way.",
            "A strap with 108.2 kN and 28 % stretch at that pull reaches 45 kN with it.",
        ),
        assumptions=(
            Assumption("Speed as the line comes taut", "5.8 km/h", "Typed for this pull.", "the officer", True),
            Assumption(
                "Stretch at breaking",
                "20 %",
                "Nobody said; the stiffest of the printed band stands.",
                "strap standard, section 8",
            ),
            Assumption("Stuck vehicle", "does not give way", "The severe case: an anchor.", "balance of energy"),
        ),
        scales=(("military scale", 28.4e3), ("civil scale", 14.2e3)),
    )


FINDINGS = (
    RigFinding(
        "strap_band",
        SOUND,
        "The strap's strength is 2.7 times the laden weight of the lighter vehicle: 2 to 3 times suits it.",
        "strap standard, section 8",
        ("KS-11",),
    ),
    RigFinding("damper", CAUTION, "No damper lies on the line.", "common practice, no published source"),
    RigFinding(
        "one_basis",
        SOUND,
        "All strengths were compared as least breaking strengths.",
        "common practice, no published source",
    ),
)
FLYING = (
    Flying("SH-13", ("SH-13", "KS-11"), 3.1, 48.5, 3.65e3, "Shackle and strap fly towards V-02 at up to 175 km/h."),
    Flying(
        "RP-01",
        ("RP-01", "SS-12", "KS-11"),
        4.4,
        40.7,
        3.65e3,
        "Recovery point, soft shackle and strap fly towards V-01 at up to 147 km/h.",
    ),
)
CHANGES = (
    Change("slower", "Come up to the strap at no more than 4 km/h.", SOUND, 2.6),
    Change(
        "soft",
        "A soft shackle in place of the bow shackle takes 0.9 kg off what flies; the distance stays the same.",
        CAUTION,
        2.2,
    ),
)
SENSITIVITY = Sensitivity(
    speeds=((0.0, 8.0e3), (0.8, 24e3), (1.6, 45e3), (2.4, 66e3), (3.2, 88e3)),
    depths=(
        ("shallow_mud", "in shallow mud", 4.7e3, 4.0e3),
        ("wheel_deep_mud", "wheel-deep in mud", 28.4e3, 21e3),
        ("sill_deep_mud", "mud up to the sills", 42.7e3, None),
    ),
    greatest_speed_m_per_s=1.75,
    limits_at="RP-01",
)


def result(made: Rig, links: tuple[LinkUse, ...], joints: tuple[JointUse, ...]) -> RigResult:
    """The account of a rig, its outcome the worst of what is in it."""
    said = (*(one.outcome for one in links), *(one.outcome for one in joints), *(one.outcome for one in FINDINGS))
    outcome = max(said, key=lambda one: one.severity)
    known = [one for one in links if one.safety_factor is not None]
    found = min(known, key=lambda one: one.safety_factor or 0.0)
    headlines = {
        CAUTION: "This rig may be pulled with care: no damper lies on the line.",
        UNSOUND: "Do not pull with this rig: a part bears more than it may, or nobody knows what it stands.",
        NEVER: "Never pull on this rig: one of its joints can send a part flying at any strength.",
    }
    return RigResult(
        rig=made,
        on=ON,
        outcome=outcome,
        headline=headlines[outcome],
        load=load(),
        links=links,
        joints=joints,
        findings=FINDINGS,
        weakest=found.tag,
        safety_factor=found.safety_factor,
        flying=FLYING,
        stand_off_m=27.0,
        stand_off_rule="one and a half times the length of the line, stretched, to both sides",
        changes=CHANGES,
        sensitivity=SENSITIVITY,
        cautions=CAUTIONS,
        rulebook="3f2a91bb0c4e",
        program="0.1.0",
    )


def plain() -> RigResult:
    """Five links in a row; the recovery point of the stuck vehicle is the weakest."""
    return result(rig(CHAIN), chain_links(), joints_of(CHAIN))


def with_receiver() -> RigResult:
    """Nine links: receiver, pin and insert at the pulling vehicle."""
    run = ("RP-01", "SS-12", "KS-11", "SH-13", "RI-04", "HP-05", "HR-01")
    more = (
        link("RI-04", "receiver_insert", 45, 150),
        link("HP-05", "hitch_pin", 45, 190),
        link("HR-01", "hitch_receiver", 45, 120, 2.0, "V-01"),
    )
    joints = (*joints_of(run[:5]), replace(PIN, other="HP-05"), replace(PIN, one="HP-05"))
    return result(rig(run), (*chain_links()[:4], *more), joints)


LONG_KINDS = (
    "recovery_point", "bow_shackle", "static_strap", "bow_shackle", "kinetic_strap", "soft_shackle", "kinetic_rope",
    "soft_shackle", "static_strap", "dee_shackle", "receiver_insert", "hitch_pin", "hitch_receiver", "bow_shackle",
)  # fmt: skip


def long_chain() -> RigResult:
    """Fourteen links, as many as anybody would ever join."""
    run = (
        "RP-01",
        "SH-21",
        "BR-01",
        "SH-13",
        "KS-11",
        "SS-12",
        "KS-22",
        "SS-23",
        "ST-24",
        "SH-25",
        "RI-04",
        "HP-05",
        "HR-01",
        "SH-26",
    )
    known = {one.tag: one for one in chain_links()}
    kinds = dict(zip(run, LONG_KINDS, strict=True))
    links = tuple(
        known.get(tag) or link(tag, kinds[tag], 45, 140, 2.0, "V-01" if tag == "SH-26" else "") for tag in run
    )
    return result(rig(run), links, joints_of(run))


def bridled() -> RigResult:
    """A bridle at 60 degrees at the stuck vehicle: 45 kN / (2 cos 30 deg) = 26 kN in each leg."""
    runs = (("RP-L", "SH-L", "BR-01"), ("RP-R", "SH-R", "BR-01"), ("BR-01", "SS-12", "KS-11", "SH-13", "RP-02"))
    legs = [link(f"{kind}-{side}", name, 26, 98.1 if kind == "RP" else 130, 2.0, "V-02" if kind == "RP" else "")
            for side in "LR" for kind, name in (("RP", "recovery_point"), ("SH", "bow_shackle"))]  # fmt: skip
    bridle = replace(link("BR-01", "bridle_strap", 26, 80), legs=2)
    angle = Angle("BR-01", read("60°", Dimension.ANGLE, field="angle"))
    return result(rig(*runs, angles=(angle,)), (*legs, bridle, *chain_links()[1:]), joints_of(*runs))


WINCH = (
    replace(link("WI-01", "winch", 40, None, 2.0, "V-02"), passes_on=True, outcome=SOUND, why="It stalls at 40 kN."),
    replace(link("WL-02", "fibre_winch_line", 40, 92), length_m=28.0),
    link("SB-03", "snatch_block", 80, 196.0, 4.0),
    link("WH-04", "winch_hook", 40, 88),
    link("RP-01", "recovery_point", 40, 98.1, 2.0, "V-02"),
    link("SH-13", "bow_shackle", 80, 228.8, 2.0),
    link("TS-05", "tree_strap", 80, 180.0, 2.0),
    replace(link("tree@ground", "tree", 80, None), kind="", kind_name="Tree", passes_on=True, outcome=CAUTION),
)


def doubled(*, line_branches: bool = False) -> RigResult:
    """The winch on the stuck vehicle, its line round a block at a tree and back: 40 kN twice, 80 kN on the block.

    line_branches: the runs written so that the line, not the block, stands in several.
    """
    anchor = ("SB-03", "SH-13", "TS-05", "tree@ground")
    runs: tuple[tuple[str, ...], ...] = (("WI-01", "WL-02", "SB-03"), ("RP-01", "WH-04", "SB-03"), anchor)
    if line_branches:
        runs = (("WI-01", "WL-02", "WH-04", "RP-01"), ("WL-02", *anchor))
    angle = Angle("SB-03", read("0°", Dimension.ANGLE, field="angle"))
    made = rig(*runs, method=Method.WINCH, pulling="", angles=(angle,))
    return result(made, WINCH, joints_of(*runs))


def redirected() -> RigResult:
    """The winch on V-01, its line turned at a tree: 2 x 40 kN x cos(90 deg / 2) = 56.6 kN on the block."""
    runs = (("RP-01", "WH-04", "WL-02", "SB-03"), ("SB-03", "WI-01"), ("SB-03", "SH-13", "TS-05", "tree@ground"))
    turned = {"SB-03": 56.6, "SH-13": 56.6, "TS-05": 56.6, "tree@ground": 56.6}
    links = tuple(
        replace(one, force_n=turned.get(one.tag, 40) * 1e3, side="V-01" if one.tag == "WI-01" else one.side)
        for one in WINCH
    )
    angle = Angle("SB-03", read("90°", Dimension.ANGLE, field="angle"))
    made = rig(*runs, method=Method.WINCH, angles=(angle,))
    return result(made, links, joints_of(*runs))


def over_ball() -> RigResult:
    """A soft shackle over the ball of the pulling vehicle."""
    run = ("RP-01", "SS-12", "KS-11", "SS-14", "TB-03")
    more = (link("SS-14", "soft_shackle", 45, 130), link("TB-03", "tow_ball", 45, 60, 2.0, "V-01"))
    joints = (*joints_of(run[:4]), replace(BALL, one="SS-14"))
    return result(rig(run), (*chain_links()[:3], *more), joints)


def in_ball_hole() -> RigResult:
    """A shackle in the ball hole of a ball mount."""
    run = ("RP-01", "SS-12", "KS-11", "SH-13", "BM-02", "HR-01")
    more = (link("BM-02", "ball_mount", 45, 42.8), link("HR-01", "hitch_receiver", 45, 120, 2.0, "V-01"))
    joints = (*joints_of(run[:4]), WELD, replace(PIN, one="BM-02"))
    return result(rig(run), (*chain_links()[:4], *more), joints)


def at_tie_down() -> RigResult:
    """A shackle in a tie-down point."""
    run = ("RP-01", "SS-12", "KS-11", "SH-13", "tie_down@V-01")
    more = (replace(link("tie_down@V-01", "tie_down", 45, 9.8), kind=""),)
    return result(rig(run), (*chain_links()[:4], *more), (*joints_of(run[:4]), TIE_DOWN))


def on_bare_tube() -> RigResult:
    """The strap's eye over the pin of an empty receiver."""
    run = ("RP-01", "SS-12", "KS-11", "HR-01")
    more = (link("HR-01", "hitch_receiver", 45, 120, 2.0, "V-01"),)
    return result(rig(run), (*chain_links()[:3], *more), (*joints_of(run[:3]), TUBE))


def unknown() -> RigResult:
    """A bow shackle without a marking."""
    links = tuple(link("SH-13", "bow_shackle", 45, None) if one.tag == "SH-13" else one for one in chain_links())
    return result(rig(CHAIN), links, joints_of(CHAIN))


def overloaded() -> RigResult:
    """A recovery point that stands less than what it must keep: 2 x 45 kN against 62 kN."""
    links = (link("RP-01", "recovery_point", 45, 62.0, 2.0, "V-02"), *chain_links()[1:])
    return result(rig(CHAIN), links, joints_of(CHAIN))


RIGS = {
    "plain": plain,
    "with_receiver": with_receiver,
    "long_chain": long_chain,
    "bridled": bridled,
    "doubled": doubled,
    "line_branches": lambda: doubled(line_branches=True),
    "redirected": redirected,
    "over_ball": over_ball,
    "in_ball_hole": in_ball_hole,
    "at_tie_down": at_tie_down,
    "on_bare_tube": on_bare_tube,
    "unknown": unknown,
    "overloaded": overloaded,
}
