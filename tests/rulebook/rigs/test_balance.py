"""Forces balance at every part, at every vehicle and at the ground, drawn at random.

Nothing here asks the program for a share: each part's own joints are added up along the lines that meet in it.
"""

import math
from collections import defaultdict

from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.gear.rig_result import RigResult
from tests.rulebook.rigs.drawn import Drawn, bridled, moving_block, rigs
from tests.rulebook.rigs.made import BOGGED, PULLING, between, check, double_line, link, redirect, tackle
from tests.rulebook.rigs.test_rig_laws import check_load_never_lower

NEAR = 1e-9

FEWER = settings(max_examples=max(settings().max_examples // 3, 25))  # a rig costs ten dossiers


def joints_at(result: RigResult) -> dict[str, dict[str, float]]:
    """For each part, what passes through to each neighbour."""
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for one in result.joints:
        found[one.one][one.other] = one.force_n
        found[one.other][one.one] = one.force_n
    return found


def same(*forces: float) -> bool:
    """Whether they are one force."""
    return all(math.isclose(one, forces[0], rel_tol=NEAR, abs_tol=1e-6) for one in forces)


@FEWER
@given(rigs())
def test_every_part_is_in_balance(made: Drawn) -> None:
    result = check(made)
    angles = {one.at: one.figure.si for one in made.rig.angles}
    roles = {one.tag: one.role for one in result.links}
    for tag, forces in joints_at(result).items():
        used = link(result, tag)
        if roles[tag] == "line":
            ends = [force for other, force in forces.items() if roles[other] != "block"]
            assert len(ends) == 2 and same(*ends, result.load.pull_n, used.force_n)
        elif roles[tag] == "block":
            turned = 2 * math.cos(angles.get(tag, 0.0) / 2)
            assert len(forces) == 2 and same(*forces.values(), used.force_n, turned * result.load.pull_n)
        elif roles[tag] == "bridle":
            *legs, middle = sorted(forces.values(), key=lambda force: abs(force - result.load.pull_n) < 1e-6)
            assert len(legs) == 2 and same(*legs, used.force_n) and same(middle, result.load.pull_n)
            opened = angles.get(tag, math.radians(90))
            assert same(sum(leg * math.cos(opened / 2) for leg in legs), middle)
        elif roles[tag] == "around":
            opened = angles.get(tag, math.radians(120))
            assert same(*forces.values(), 2 * used.force_n * math.cos(opened / 2))
        else:
            assert len(forces) <= 2 and same(*forces.values(), used.force_n)


@FEWER
@given(st.floats(0, 2.9))
def test_a_redirect_is_in_balance_in_the_plane(radians: float) -> None:
    """At the block: the two parts of the line and what holds it, 2 T cos(A / 2) along the bisector; and so on its way
    to the ground."""
    result = check(redirect(f"{radians:.12f} rad"))
    pull_n = result.load.pull_n
    lines = [(pull_n * math.cos(turn), pull_n * math.sin(turn)) for turn in (radians / 2, -radians / 2)]
    held = (-between(result, "R", "S-R"), 0.0)
    assert all(abs(sum(force[axis] for force in (*lines, held))) < 1e-6 * pull_n for axis in (0, 1))
    assert same(between(result, "R", "S-R"), between(result, "S-R", "T"), between(result, "T", "tree@ground"))


@FEWER
@given(st.integers(2, 5))
def test_what_a_tackle_puts_on_one_side_it_puts_on_the_other(parts: int) -> None:
    """Parallel parts: the stuck vehicle is drawn by as many as there are, and so are the anchors together."""
    result = check(tackle(parts))
    drawn = sum(link(result, one.tag).force_n for one in result.links if one.side == BOGGED)
    held = sum(one.force_n for one in result.links if one.side in {"ground", PULLING})
    assert same(drawn, held, parts * result.load.pull_n)


@FEWER
@given(st.floats(0, 2.9))
def test_a_double_line_draws_the_vehicle_as_hard_as_the_anchor_is_pulled(radians: float) -> None:
    """Both parts lie A / 2 off the way to the block: the vehicle gets what the block bears, less the sheave."""
    result = check(double_line(degrees=f"{radians:.12f} rad"))
    brought = result.load.offered_n * 1.1 / (4 * 1000 * 9.80665 / 2)  # a full drum brings half of 4 t
    assert math.isclose(brought, link(result, "R").force_n / result.load.pull_n, rel_tol=1e-9)


@FEWER
@given(st.floats(0, 2.9))
def test_a_moving_block_brings_what_it_bears(radians: float) -> None:
    result = check(moving_block(radians))
    brought = result.load.offered_n * 1.1 / (4 * 1000 * 9.80665 / 2)
    assert math.isclose(brought, link(result, "P-B").force_n / result.load.pull_n, rel_tol=1e-9)


@FEWER
@given(st.floats(0, 2.9), st.floats(0, 2.9))
def test_a_wider_bridle_never_lowers_what_its_points_bear(one: float, other: float) -> None:
    narrow, wide = sorted((one, other))
    better, worse = (check(bridled(str(opened), "")) for opened in (narrow, wide))
    check_load_never_lower(worse, better)


@FEWER
@given(st.floats(0, 2.9))
def test_a_bridles_legs_bring_the_whole_pull_to_the_vehicle(opened: float) -> None:
    result = check(bridled(str(opened), ""))
    along = sum(link(result, tag).force_n * math.cos(opened / 2) for tag in ("P-B", "P-C"))
    assert same(along, result.load.pull_n) and same(result.load.offered_n, result.load.pull_n)
