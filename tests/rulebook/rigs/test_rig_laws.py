"""The laws of rigs: worse is never better, silence is not consent, units and order change nothing.

What the bound and the outcome owe: heavier, faster, more slack, more drive never lower the pull; deeper, steeper and a
heavier stuck vehicle never lower what is needed; none of them makes milder what the parts, joints, band, bridle and
speed say. One finding may turn for the better by them, and rightly: whether the vehicle moves ("moves"), since a harder
pull does bring it out; and whether the winching vehicle stands its ground ("anchor"), since a heavier one does.

Silence that stands for the worst: wet (as wet), what the puller stands on (firm), masses (the greatest on the plate),
the angle at a block (the lines parallel, two pulls), what the stuck vehicle stands in (never sound), a part's strength
(never sound), the mass of a vehicle that a winch is anchored to (cautioned). Silence that stands for a figure of the
club, which somebody may say worse than: speed (5 mph), slack of a static line (0.3 m), the drive's share (80 %), the
stretch at break, a bridle's angle (90 degrees), the legs round a tree (120 degrees), a stall pull (5/4 of the plate),
the layers on the drum (half the pull, as on the fifth).
"""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.rig import Conditions, Footing, Method, RigFacts
from inspector.gear.rig_result import RigOutcome, RigResult
from inspector.units import Dimension, System
from tests.rulebook.rigs.drawn import GROUNDS, LARGEST, figure, rigs, with_conditions, with_mass
from tests.rulebook.rigs.made import (
    BOGGED,
    PULLING,
    angle,
    check,
    double_line,
    length,
    link,
    piece,
    redirect,
    share,
    single_line,
    snatch,
    speed,
    strap,
    weakened,
)

A_HAIR = 1e-12

FEWER = settings(max_examples=max(settings().max_examples // 3, 25))  # a rig costs ten dossiers


def severities(result: RigResult) -> dict[str, int]:
    """The worst outcome of each thing that was looked at: "band" for all that is said of the band."""
    found: dict[str, int] = {}
    for one in result.findings:
        thing = one.key.partition(".")[0]
        found[thing] = max(found.get(thing, 0), one.outcome.severity)
    return found


def check_nothing_milder(worse: RigResult, better: RigResult, *but: str) -> None:
    """Each thing that was looked at comes out no milder, but for those named; without such, the outcome neither."""
    mine, theirs = severities(worse), severities(better)
    milder = {thing for thing in theirs if mine.get(thing, 0) < theirs[thing]}
    assert milder <= set(but)
    if not but:
        assert worse.outcome.severity >= better.outcome.severity


def check_load_never_lower(worse: RigResult, better: RigResult) -> None:
    """Pull, energy, what is needed, and what each part bears."""
    assert worse.load.pull_n >= better.load.pull_n * (1 - A_HAIR)
    assert worse.load.energy_j >= better.load.energy_j * (1 - A_HAIR)
    if worse.load.needed_n is not None and better.load.needed_n is not None:
        assert worse.load.needed_n >= better.load.needed_n * (1 - A_HAIR)
    for one, other in zip(worse.links, better.links, strict=True):
        assert one.force_n >= other.force_n * (1 - A_HAIR)


def check_never_better(worse: RigResult, better: RigResult) -> None:
    """Safety factor, least margin and the parts' outcomes."""
    for one, other in ((worse.safety_factor, better.safety_factor), (worse.least_margin, better.least_margin)):
        if one is not None and other is not None:
            assert one <= other * (1 + A_HAIR)
        assert not (one is not None and other is None), "what was unknown is not known by making it worse"
    for mine, theirs in zip(worse.links, better.links, strict=True):
        assert mine.outcome.severity >= theirs.outcome.severity
    assert worse.stand_off_m >= better.stand_off_m


PULLED_HARDER = {
    "speed": (Dimension.SPEED, 0.0, 6.0),
    "slack": (Dimension.LENGTH, 0.0, 5.0),
    "drive": (Dimension.RATIO, 0.0, 1.0),
}


@pytest.mark.parametrize("what", PULLED_HARDER)
@FEWER
@given(made=rigs(), data=st.data())
def test_a_harder_pull_never_lowers_the_load_nor_makes_anything_but_moving_milder(
    what: str, made: RigFacts, data: st.DataObject
) -> None:
    dimension, least, most = PULLED_HARDER[what]
    less, more = sorted(data.draw(st.tuples(st.floats(least, most), st.floats(least, most))))
    assume(less > 0.001)
    better = check(with_conditions(made, **{what: figure(less, dimension)}))
    worse = check(with_conditions(made, **{what: figure(more, dimension)}))
    check_load_never_lower(worse, better)
    check_never_better(worse, better)
    check_nothing_milder(worse, better, "moves")


@FEWER
@given(rigs(), st.sampled_from([BOGGED, PULLING]), st.floats(800, 4500), st.floats(1, 3))
def test_a_heavier_vehicle_never_lowers_the_load(made: RigFacts, tag: str, kilograms: float, times: float) -> None:
    better, worse = check(with_mass(made, tag, kilograms)), check(with_mass(made, tag, kilograms * times))
    check_load_never_lower(worse, better)
    check_never_better(worse, better)
    check_nothing_milder(worse, better, "moves", "anchor")
    if tag == BOGGED:
        check_nothing_milder(worse, better)


@FEWER
@given(rigs(), st.sampled_from(GROUNDS), st.sampled_from(GROUNDS))
def test_deeper_is_never_milder(made: RigFacts, one: Footing, other: Footing) -> None:
    shallow, deep = sorted((one, other), key=lambda where: LARGEST[where])
    better, worse = (check(with_conditions(made, bogged_in=where)) for where in (shallow, deep))
    check_load_never_lower(worse, better)
    check_nothing_milder(worse, better)
    if better.load.likely_n is not None and worse.load.likely_n is not None:
        assert worse.load.likely_n >= better.load.likely_n * (1 - 1e-9)
        assert worse.load.likely_n <= worse.load.pull_n * (1 + A_HAIR)


@FEWER
@given(rigs(), st.floats(0, 1.5), st.floats(0, 1.5))
def test_steeper_is_never_milder(made: RigFacts, one: float, other: float) -> None:
    flat, steep = sorted((one, other))
    better, worse = (check(with_conditions(made, slope=figure(up, Dimension.ANGLE))) for up in (flat, steep))
    check_load_never_lower(worse, better)
    check_nothing_milder(worse, better)


@FEWER
@given(rigs())
def test_wetter_is_never_milder_and_never_pulls_less(made: RigFacts) -> None:
    dry, wet = (check(with_conditions(made, wet=said)) for said in (False, True))
    assert wet.load.pull_n == dry.load.pull_n and wet.load.energy_j == dry.load.energy_j
    check_never_better(wet, dry)
    check_nothing_milder(wet, dry)


@FEWER
@given(rigs(), st.data(), st.floats(0.01, 1) | st.none())
def test_a_weaker_part_never_raises_factor_margin_or_outcome(
    made: RigFacts, data: st.DataObject, left: float | None
) -> None:
    """left None: nobody knows it any more."""
    tag = data.draw(st.sampled_from([tag for tag in made.rig.tags if tag in made.pieces]))
    now_n = made.pieces[tag].judged.verdict.capacity.now_n
    assume(now_n is not None and made.pieces[tag].kind != "winch")
    assert now_n is not None
    weak = weakened(made.pieces[tag], None if left is None else now_n * left)
    better, worse = check(made), check(replace(made, pieces={**made.pieces, tag: weak}))
    assert worse.load.pull_n == better.load.pull_n, "its stiffness is its marking's"
    check_never_better(worse, better)
    check_nothing_milder(worse, better)


@FEWER
@given(rigs(), st.integers(0, 9), st.floats(0.8, 5))
def test_a_soft_shackle_of_the_same_strength_is_never_milder_nearer_or_calmer(
    made: RigFacts, place: int, times: float
) -> None:
    steel = [tag for tag in made.rig.tags if tag in made.pieces and made.pieces[tag].kind == "bow_shackle"]
    tag = steel[place % len(steel)]
    strength_n = link(check(made), tag).force_n * times
    hard, soft = (weakened(one, strength_n) for one in (made.pieces[tag], piece(tag, "soft_shackle", "20 t")))
    better, worse = (check(replace(made, pieces={**made.pieces, tag: one})) for one in (hard, soft))
    check_nothing_milder(worse, better)
    assert link(worse, tag).outcome.severity >= link(better, tag).outcome.severity
    assert worse.stand_off_m >= better.stand_off_m
    assert worse.load.energy_j == better.load.energy_j
    assert [one.energy_j for one in worse.flying] == [one.energy_j for one in better.flying]


@FEWER
@given(rigs(), st.sampled_from(["tie_down", "chain_plate"]))
def test_a_forbidden_end_is_never_right_whatever_else(made: RigFacts, end: str) -> None:
    last = made.rig.runs[-1] if made.rig.runs[-1][-1].startswith("P-") else made.rig.runs[0]
    assume(last[-1].startswith("P-"))
    body = made.pieces[last[-1]].fitted
    assert body is not None
    loose = f"{end}@{body.vehicle}"
    runs = tuple((*run[:-1], loose) if run is last else run for run in made.rig.runs)
    result = check(replace(made, rig=replace(made.rig, runs=runs)))
    assert result.outcome is RigOutcome.NEVER and result.findings[0].outcome is RigOutcome.NEVER


@FEWER
@given(rigs())
def test_nothing_is_hidden_and_every_finding_names_its_source(made: RigFacts) -> None:
    result = check(made)
    assert result.findings and result.headline and result.cautions and result.stand_off_rule
    assert all(one.says.strip() and one.source.strip() and one.key for one in result.findings)
    assert all(one.what and one.value and one.why and one.source for one in result.load.assumptions)
    assert result.outcome.severity == max(one.outcome.severity for one in result.findings)
    severities = [one.outcome.severity for one in result.findings]
    assert severities == sorted(severities, reverse=True)
    told = {tag for one in result.findings if one.key == "part" for tag in one.about}
    assert told == {one.tag for one in result.links} and len(told) >= len(result.rig.tags)
    bad = {frozenset((one.one, one.other)) for one in result.joints if one.outcome is not RigOutcome.SOUND}
    assert bad <= {frozenset(one.about) for one in result.findings if one.key.startswith("joint.")}
    assert all(one.source and one.says for one in result.joints)


# --- order and units ---


def told(result: RigResult) -> object:
    """All of a result that is no order: outcome, numbers, and what was found of which parts."""
    return (
        result.outcome,
        result.safety_factor,
        result.least_margin,
        result.load.pull_n,
        result.load.energy_j,
        result.load.offered_n,
        result.load.needed_n,
        result.load.likely_n,
        result.stand_off_m,
        {(one.tag, one.force_n, one.capacity_n, one.margin_factor, one.outcome, one.legs) for one in result.links},
        {(frozenset((one.one, one.other)), one.how, one.force_n, one.outcome) for one in result.joints},
        {(one.key, one.outcome, frozenset(one.about)) for one in result.findings},
        {(one.link, frozenset(one.parts), one.speed_m_per_s) for one in result.flying},
    )


@FEWER
@given(rigs(), st.randoms(use_true_random=False))
def test_order_and_direction_of_the_runs_change_nothing(made: RigFacts, chance: object) -> None:
    runs = [run[::-1] if chance.random() < 0.5 else run for run in made.rig.runs]  # type: ignore[attr-defined]
    chance.shuffle(runs)  # type: ignore[attr-defined]
    other = replace(made, rig=replace(made.rig, runs=tuple(runs)))
    rounded = [_rounded(told(check(one))) for one in (made, other)]
    assert rounded[0] == rounded[1]


def _rounded(value: object) -> object:
    """Every float to eleven digits, so that the order of a sum does not show."""
    if isinstance(value, float):
        return float(f"{value:.10e}")
    if isinstance(value, (tuple, set, frozenset)):
        return type(value)(_rounded(one) for one in value)
    return value


FACTORS = {"mph": 1609.344 / 3600, "km/h": 1 / 3.6, "m/s": 1.0, "ft": 0.3048, "in": 0.0254, "m": 1.0}
FACTORS |= {"rad": 1.0, "deg": math.pi / 180, "lb": 0.45359237, "kg": 1.0, "t": 1000.0}


@FEWER
@given(
    speed_si=st.floats(0.1, 5),
    slack_si=st.floats(0, 3),
    slope_si=st.floats(0, 1),
    turn_si=st.floats(0, 2.5),
    mass_si=st.floats(900, 4000),
    ground=st.sampled_from(GROUNDS),
)
def test_the_same_rig_in_other_units_is_the_same_rig(
    speed_si: float, slack_si: float, slope_si: float, turn_si: float, mass_si: float, ground: Footing
) -> None:
    def typed(si: float, unit: str) -> str:
        return f"{si / FACTORS[unit]:.15f} {unit}"

    found = []
    for fast, long, turn, heavy in (("km/h", "m", "deg", "kg"), ("mph", "ft", "rad", "lb"), ("m/s", "in", "deg", "t")):
        said = Conditions(ground, slope=angle(typed(slope_si, turn)), speed=speed(typed(speed_si, fast)))
        slack = Conditions(ground, slack=length(typed(slack_si, long)))
        for conditions in (said, slack):
            for made in (snatch(conditions), redirect(typed(turn_si, turn), conditions)):
                weighed = with_mass(made, PULLING, float(typed(mass_si, heavy).split()[0]) * FACTORS[heavy])
                found += [check(weighed, system) for system in System]
    one_kind = len(found) // 3
    for first, *others in zip(*(found[at * one_kind : (at + 1) * one_kind] for at in range(3)), strict=True):
        assert all(one.outcome is first.outcome and one.weakest == first.weakest for one in others)
        for one in others:
            assert one.load.pull_n == pytest.approx(first.load.pull_n, rel=1e-9)
            assert [each.force_n for each in one.links] == pytest.approx([each.force_n for each in first.links])
            assert [each.key for each in one.findings] == [each.key for each in first.findings]


LIMITS = [("5 mph", "8.04672 km/h"), ("2.2352 m/s", "5 mph")]


@pytest.mark.parametrize(("one", "other"), LIMITS)
def test_a_limit_is_met_alike_in_every_unit(one: str, other: str) -> None:
    """The advised 5 mph, typed in kilometres, is not faster than advised."""
    keys = [[each.key for each in check(snatch(Conditions(speed=speed(said)))).findings] for said in (one, other)]
    assert keys[0] == keys[1] and "speed" not in keys[0]


# --- silence that stands for the worst ---


@FEWER
@given(rigs())
def test_nobody_said_dry_is_wet(made: RigFacts) -> None:
    wet, unsaid = (told(check(with_conditions(made, wet=said))) for said in (True, None))
    assert wet == unsaid


@FEWER
@given(rigs(), st.sampled_from(GROUNDS))
def test_silence_about_the_pullers_ground_is_never_milder(made: RigFacts, where: Footing) -> None:
    worse, better = (check(with_conditions(made, pulling_on=said)) for said in (None, where))
    check_load_never_lower(worse, better)
    check_nothing_milder(worse, better, "moves")


@FEWER
@given(rigs(), st.sampled_from([BOGGED, PULLING]), st.floats(0.3, 1))
def test_silence_about_a_mass_is_never_milder_than_any_the_plate_allows(made: RigFacts, tag: str, part: float) -> None:
    worse = check(with_mass(made, tag, None))
    better = check(with_mass(made, tag, part * made.vehicles[tag].gvm.si))
    check_load_never_lower(worse, better)
    check_nothing_milder(worse, better, "moves")


@FEWER
@given(rigs(), st.sampled_from(GROUNDS))
def test_silence_about_what_it_stands_in_is_never_sound_nor_milder(made: RigFacts, where: Footing) -> None:
    unsaid, said = (check(with_conditions(made, bogged_in=what)) for what in (None, where))
    assert unsaid.outcome is not RigOutcome.SOUND and unsaid.load.needed_n is None
    check_nothing_milder(unsaid, said)


@FEWER
@given(st.floats(0, 3))
def test_silence_about_a_blocks_angle_is_never_milder(radians: float) -> None:
    said = f"{radians:.12f} rad"
    for unsaid, known in ((redirect(), redirect(said)), (double_line(degrees=""), double_line(degrees=said))):
        worse, better = check(unsaid), check(known)
        check_load_never_lower(worse, better)
        check_nothing_milder(worse, better)


# --- silence that stands for a figure of the club ---

CLUB = {
    "speed": (Conditions(), Conditions(speed=speed("5 mph")), Method.KINETIC),
    "slack": (Conditions(), Conditions(slack=length("0.3 m")), Method.TOW_OUT),
    "drive": (Conditions(), Conditions(drive=share("80 %")), Method.KINETIC),
}


@pytest.mark.parametrize("what", CLUB)
def test_silence_stands_for_the_clubs_figure_and_tells_it(what: str) -> None:
    unsaid, said, method = CLUB[what]
    kinetic = strap() if method is Method.KINETIC else strap(kind="static_strap")
    silent, spoken = (check(snatch(one, kinetic=kinetic, method=method)) for one in (unsaid, said))
    assert silent.load.pull_n == pytest.approx(spoken.load.pull_n)
    mine = {(one.what, one.typed) for one in silent.load.assumptions}
    theirs = {(one.what, one.typed) for one in spoken.load.assumptions}
    assert {typed for _, typed in theirs - mine} == {True} and {typed for _, typed in mine - theirs} <= {False}


@FEWER
@given(st.integers(1, 5))
def test_silence_about_the_drum_brings_no_more_than_any_of_five_layers(layers: int) -> None:
    silent, said = (check(single_line(Conditions(layers=one))) for one in (None, layers))
    assert silent.load.offered_n <= said.load.offered_n


@FEWER
@given(st.floats(0, math.pi / 2), st.floats(0, 2 * math.pi / 3))
def test_silence_about_a_bridle_or_a_tree_strap_is_as_bad_as_the_clubs_angle(bridle: float, legs: float) -> None:
    from tests.rulebook.rigs.drawn import bridled

    worse, better = check(bridled("", "")), check(bridled(str(bridle), ""))
    assert link(worse, "P-B").force_n >= link(better, "P-B").force_n * (1 - A_HAIR)
    worse, better = check(redirect("0 °", legs="")), check(redirect("0 °", legs=f"{legs:.12f} rad"))
    assert link(worse, "T").force_n >= link(better, "T").force_n * (1 - A_HAIR)
