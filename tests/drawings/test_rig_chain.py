"""The rig from end to end: nothing left out, nothing on top of another, readable without colour."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.extent import Box, extent
from inspector.drawings.rig_cell import LIMIT_RATIO
from inspector.drawings.rig_chain import rig_chain, rig_strips
from inspector.drawings.rig_graph import graph_of
from inspector.drawings.rig_grid import Cell, grid_of
from inspector.drawings.rig_words import part_name, rig_mark, rig_word
from inspector.drawings.shapes import Circle, Drawing, Ink, Line, Polygon, RoundedRect, Text
from inspector.gear.rig import LooseEnd, Rig
from inspector.gear.rig_result import RigOutcome, RigResult
from inspector.units import System
from tests.drawings import rigs
from tests.drawings.walls import assert_inside, assert_texts_apart, said, texts

Make = Callable[[], RigResult]
EVERY_RIG = pytest.mark.parametrize("make", rigs.RIGS.values(), ids=rigs.RIGS.keys())


@EVERY_RIG
@pytest.mark.parametrize("system", System)
def test_it_lies_in_its_frame_and_no_text_on_another(make: Make, system: System) -> None:
    drawing = rig_chain(make(), rigs.VEHICLES, system)
    assert drawing.width_mm == 178.0
    assert_inside(drawing)
    assert_texts_apart(drawing)


@EVERY_RIG
def test_no_line_of_the_rig_runs_through_words(make: Make) -> None:
    drawing = rig_chain(make(), rigs.VEHICLES)
    lines = [extent(shape) for shape in drawing.shapes if isinstance(shape, Line) and shape.width_mm == 0.5]
    boxes = [(text.text, extent(text)) for text in texts(drawing)]
    assert lines
    assert [text for text, box in boxes for line in lines if box.overlaps(line)] == []


TAGS = st.sampled_from(
    [f"{kind}-{number:02}" for kind in ("SH", "KS", "RP", "BR") for number in range(6)] + ["tree@ground"]
)
RUNS = st.lists(st.lists(TAGS, min_size=1, max_size=8, unique=True).map(tuple), min_size=1, max_size=4).map(tuple)


@given(RUNS, st.sampled_from(list(rigs.NAMES)), st.floats(0.0, 1e6), st.none() | st.floats(0.0, 1e6), st.data())
def test_any_runs_are_drawn_whole(
    runs: tuple[tuple[str, ...], ...], kind: str, force_n: float, capacity_n: float | None, data: st.DataObject
) -> None:
    """Even runs that make rings or do not hang together: every part stands once, in its frame, off the others."""
    tags = dict.fromkeys(tag for run in runs for tag in run)
    sides = st.sampled_from(["", "V-01", "V-02"])
    one = replace(rigs.link("x", kind, 1, 1), force_n=force_n, capacity_n=capacity_n, length_m=9.0)
    links = tuple(replace(one, tag=tag, side=data.draw(sides)) for tag in tags)
    joints = tuple(replace(one, outcome=data.draw(st.sampled_from(list(RigOutcome)))) for one in rigs.joints_of(*runs))
    made = replace(
        rigs.plain(), rig=rigs.rig(*runs), links=links, joints=joints, weakest=data.draw(st.sampled_from(list(tags)))
    )
    drawing = rig_chain(made, rigs.VEHICLES)
    assert_inside(drawing)
    assert sorted(cell.tag for cell in grid_of(made).cells if not cell.is_body) == sorted(tags)
    places = [(cell.column, cell.lane) for cell in grid_of(made).cells]
    assert len(places) == len(set(places))


@st.composite
def sane_rigs(draw: st.DrawFn) -> RigResult:
    """A chain of any length, a bridle or not at either end, a turn with its anchor or not in between."""
    chain = tuple(f"P-{number:02}" for number in range(draw(st.integers(3, 9))))
    runs, sides = [chain], {chain[0]: "V-02", chain[-1]: "V-01"}
    for name, hub, side in (("L", chain[1], "V-02"), ("R", chain[-2], "V-01"), ("T", chain[len(chain) // 2], "")):
        leg = tuple(f"{name}-{number:02}" for number in range(draw(st.integers(0, 4))))
        if leg:
            runs.append((hub, *leg) if side else (hub, *leg, "tree@ground"))
            sides[leg[-1]] = side
    tags = dict.fromkeys(tag for run in runs for tag in run)
    kinds, outcomes = st.sampled_from(list(rigs.NAMES)), st.sampled_from(list(RigOutcome))
    links = tuple(
        rigs.link(tag, draw(kinds), 45, draw(st.none() | st.floats(1, 999)), 2.0, sides.get(tag, "")) for tag in tags
    )
    joints = tuple(replace(one, outcome=draw(outcomes)) for one in rigs.joints_of(*runs))
    weakest = draw(st.sampled_from(list(tags)))
    return replace(rigs.plain(), rig=rigs.rig(*runs), links=links, joints=joints, weakest=weakest)


@given(sane_rigs(), st.sampled_from(list(System)))
def test_chains_with_bridles_and_turns_keep_their_words_apart(result: RigResult, system: System) -> None:
    drawing = rig_chain(result, rigs.VEHICLES, system)
    assert_inside(drawing)
    assert_texts_apart(drawing)


def test_the_words_of_two_joints_in_the_last_column_of_a_row_keep_apart() -> None:
    """The one beside an upright line begins where the line is, the other ends at the frame: both want the same room."""
    chain = tuple(f"P-{number:02}" for number in range(8))
    runs = (chain, ("P-06", "R-00", "R-01", "R-02", "R-03"), ("P-04", "T-00", "T-01", "T-02", "T-03", "tree@ground"))
    sides = {"P-00": "V-02", "P-07": "V-01", "R-03": "V-01"}
    tags = dict.fromkeys(tag for run in runs for tag in run)
    links = tuple(rigs.link(tag, "kinetic_strap", 45, None, 2.0, sides.get(tag, "")) for tag in tags)
    every = enumerate(rigs.joints_of(*runs), 1)
    joints = tuple(replace(one, outcome=RigOutcome.NEVER if at in {12, 13} else one.outcome) for at, one in every)
    drawing = rig_chain(replace(rigs.plain(), rig=rigs.rig(*runs), links=links, joints=joints), rigs.VEHICLES)
    assert {"12 never", "13 never"} <= {text.text for text in texts(drawing)}
    assert_inside(drawing)
    assert_texts_apart(drawing)


@EVERY_RIG
def test_every_part_is_named_with_what_it_bears_and_stands(make: Make) -> None:
    result = make()
    drawing = rig_chain(result, rigs.VEHICLES)
    words = said(drawing)
    for link in result.links:
        assert part_name(link.tag) in words
        assert part_name(link.tag).casefold() in drawing.describes.casefold()
        assert f"bears {link.force_n / 1e3:g} kN" in words
        if link.capacity_n is not None:
            assert f"stands {link.capacity_n / 1e3:g} kN" in words


@EVERY_RIG
def test_every_joint_has_its_number(make: Make) -> None:
    result = make()
    numbers = {text.text.split()[0] for text in texts(rig_chain(result, rigs.VEHICLES))}
    assert {str(number) for number in range(1, len(result.joints) + 1)} <= numbers


def bars(drawing: Drawing, tells: str) -> list[RoundedRect]:
    """The pieces of bars that say this."""
    return [shape for shape in drawing.shapes if isinstance(shape, RoundedRect) and shape.tells == tells]


def test_all_bars_have_one_scale_and_the_limit_at_one_place() -> None:
    drawing = rig_chain(rigs.plain())
    used, may = bars(drawing, "Used"), bars(drawing, "What it may bear")
    assert len(used) == len(may) == 5
    for link, bar, frame in zip(rigs.plain().links, used, may, strict=True):
        assert bar.wide_mm / frame.wide_mm == pytest.approx(link.use_ratio)


def test_what_is_beyond_the_limit_is_drawn_beyond_it() -> None:
    drawing = rig_chain(rigs.overloaded())
    (over,) = bars(drawing, "Beyond what it may bear")
    frame = bars(drawing, "What it may bear")[0]
    assert over.corner[0] == pytest.approx(frame.corner[0] + frame.wide_mm)
    full_mm = frame.wide_mm / LIMIT_RATIO
    assert over.wide_mm == pytest.approx(min(2 * 45 / 62 - 1, 1 / LIMIT_RATIO - 1) * LIMIT_RATIO * full_mm)
    assert "146 %" in said(drawing)  # 145.2 %, never milder in print


def test_an_unknown_strength_is_hollow_and_said() -> None:
    drawing = rig_chain(rigs.unknown())
    (hollow,) = bars(drawing, "Nobody knows what it stands")
    assert hollow.fill is None and hollow.dash_mm
    assert "used: not known" in said(drawing)


@EVERY_RIG
def test_the_weakest_is_marked_by_word_arrow_and_frame(make: Make) -> None:
    result = make()
    drawing = rig_chain(result)
    (word,) = [text for text in texts(drawing) if text.text.partition(",")[0] == "weakest"]
    (frame,) = [one for one in drawing.shapes if isinstance(one, RoundedRect) and one.tells == "Weakest part"]
    assert any(isinstance(one, Polygon) and one.tells == "Weakest part" for one in drawing.shapes)
    box = extent(frame)
    tag = next(
        text
        for text in texts(drawing)
        if part_name(result.weakest).startswith(text.text) and text.bold and box.holds(extent(text))
    )
    assert box.left < word.at[0] < box.right and tag.at[1] > word.at[1]


@pytest.mark.parametrize("make", [rigs.over_ball, rigs.in_ball_hole, rigs.at_tie_down, rigs.on_bare_tube])
def test_a_joint_that_is_never_right_is_crossed_and_says_so(make: Make) -> None:
    drawing = rig_chain(make())
    assert [text.text for text in texts(drawing) if text.text.endswith(" never")]
    rings = [one for one in drawing.shapes if isinstance(one, Circle) and one.ink is Ink.MARK]
    assert len(rings) == 2  # on the joint, and in what the signs mean
    assert "never" in drawing.describes


def column(result: RigResult, tag: str) -> Cell:
    return next(cell for cell in grid_of(result).cells if cell.tag == tag)


def test_a_bridle_has_two_legs_side_by_side_that_meet_in_it() -> None:
    result = rigs.bridled()
    left, right, bridle = (column(result, tag) for tag in ("SH-L", "SH-R", "BR-01"))
    assert left.column == right.column == bridle.column - 1
    assert {left.lane, right.lane} == {0, 1}
    assert column(result, "RP-L").column == column(result, "RP-R").column


@pytest.mark.parametrize("line_branches", [False, True])
def test_a_doubled_line_runs_in_two_lanes_to_the_block_however_it_was_written(line_branches: bool) -> None:
    result = rigs.doubled(line_branches=line_branches)
    line, hook, block, tree = (column(result, tag) for tag in ("WL-02", "WH-04", "SB-03", "tree@ground"))
    assert line.lane == 0 and hook.lane == 1
    assert block.column > max(line.column, hook.column)
    assert tree.lane == block.lane and tree.column > block.column


def test_a_turned_line_goes_on_in_one_lane_and_its_anchor_in_another() -> None:
    result = rigs.redirected()
    block, winch, anchor = (column(result, tag) for tag in ("SB-03", "WI-01", "SH-13"))
    assert winch.lane == block.lane and anchor.lane != block.lane
    assert "90°" in said(rig_chain(result))


def test_the_stuck_vehicle_stands_on_the_left_and_the_pulling_one_on_the_right() -> None:
    result = rigs.with_receiver()
    cells = grid_of(result).cells
    assert column(result, "V-02").column == 0
    assert column(result, "V-01").column == max(cell.column for cell in cells)


def test_vehicles_carry_tag_name_and_mass() -> None:
    words = said(rig_chain(rigs.plain(), rigs.VEHICLES))
    assert "V-02" in words and "Small two-door" in words and "1,450 kg" in words
    assert "stuck" in words and "pulls" in words


def test_fourteen_links_take_three_rows_that_are_no_smaller() -> None:
    strips = rig_strips(rigs.long_chain(), rigs.VEHICLES)
    assert len(strips) == 4
    assert {text.size_mm for strip in strips for text in texts(strip)} == {2.8}
    assert sum(strip.height_mm for strip in strips) == pytest.approx(
        rig_chain(rigs.long_chain(), rigs.VEHICLES).height_mm
    )


def test_a_broken_line_tells_how_long_it_is() -> None:
    assert "9 m" in said(rig_chain(rigs.plain()))
    assert "29.5 ft" in said(rig_chain(rigs.plain(), system=System.IMPERIAL))


def test_the_signs_of_kinds_differ() -> None:
    def shapes(kind: str) -> tuple[object, ...]:
        made = replace(rigs.plain(), rig=rigs.rig(("A",)), links=(rigs.link("A", kind, 1, 9),), joints=(), weakest="")
        return tuple(one for one in rig_chain(made).shapes if not isinstance(one, Text) and one.tells.startswith("A"))

    bare = [tuple(replace(one, tells="") for one in shapes(kind)) for kind in rigs.NAMES]  # type: ignore[type-var]
    alike = {"kinetic_strap", "static_strap", "bridle_strap", "tree_strap", "kinetic_rope", "fibre_winch_line"}
    assert len(set(bare)) >= len(rigs.NAMES) - len(alike)


def test_a_line_through_a_block_ends_at_it() -> None:
    graph = graph_of(rigs.doubled(line_branches=True))
    assert graph.hubs == ("SB-03",)
    assert set(graph.around("SB-03")) == {"WL-02", "WH-04", "SH-13"}


@pytest.mark.parametrize("outcome", RigOutcome)
def test_each_outcome_has_a_mark_with_its_own_word(outcome: RigOutcome) -> None:
    mark = rig_mark(outcome, 10.0)
    assert mark.title == rig_word(outcome) and mark.describes.startswith(rig_word(outcome))
    assert len({rig_mark(one, 10.0).shapes for one in RigOutcome}) == len(RigOutcome)


@pytest.mark.parametrize("end", LooseEnd)
def test_a_loose_end_is_named_in_words(end: LooseEnd) -> None:
    assert "@" not in part_name(f"{end}@ground") and "V-05" in part_name(f"{end}@V-05")


def test_an_empty_rig_is_an_empty_picture() -> None:
    made = replace(rigs.plain(), rig=Rig("x", rigs.plain().rig.method, "V-02", "", ()), links=(), joints=(), weakest="")
    assert_inside(rig_chain(made))


def test_hovering_over_a_part_tells_all_of_it() -> None:
    drawing = rig_chain(rigs.plain())
    told = {shape.tells for shape in drawing.shapes}
    assert "RP-01 · Recovery point: bears 45 kN, stands 98.1 kN, used 92 %" in told
    frame = Box(0, 0, drawing.width_mm, drawing.height_mm)
    assert all(frame.holds(extent(shape), 1e-6) for shape in drawing.shapes if shape.tells)
