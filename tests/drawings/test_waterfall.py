"""What has become of a strength, and which part of a steel piece gives way first."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.drawings.shapes import Drawing, Ink, Line, RoundedRect
from inspector.drawings.strength_bars import has_strength_bars, strength_bars
from inspector.drawings.waterfall import has_waterfall, waterfall
from inspector.gear.capacity import Capacity, CapacityStep, SteelStrength
from inspector.units import System
from tests.drawings.walls import assert_inside, assert_texts_apart, said, texts

WORDS = st.sampled_from(["", "the pin crushes the two walls", "the weld tears, " * 9, "unbreakable" * 12])
FORCES = st.floats(0.0, 1e6)


@st.composite
def strengths(draw: st.DrawFn) -> SteelStrength:
    """Any strength a piece could have."""
    sound, left = draw(st.none() | st.floats(1.0, 1e6)), draw(st.none() | st.floats(0.0, 1.0))
    now = None if sound is None or left is None else sound * left
    set_n = draw(st.none() | FORCES)
    return SteelStrength("mode", draw(WORDS), sound, now, left, set_n, draw(WORDS), "source", draw(st.booleans()))


@st.composite
def capacities(draw: st.DrawFn) -> Capacity:
    """Any strength with its losses, marked or reckoned."""
    begins, shares = draw(st.floats(1.0, 1e6)), draw(st.lists(st.floats(0.0, 1.0), max_size=5))
    steps, after = [], begins
    for share in shares:
        after *= 1 - share
        steps.append(CapacityStep("c", share, after, "s", draw(WORDS)))
    now = draw(st.none() | st.just(after))
    marked = draw(st.booleans())
    return Capacity(
        begins if marked else None,
        now,
        tuple(steps),
        as_new_n=None if marked else begins,
        strengths=tuple(draw(st.lists(strengths(), max_size=6))),
        left_out=tuple(draw(st.lists(WORDS, max_size=3))),
        wall_m=draw(st.none() | st.floats(0.0, 0.02)),
        wall_on=date(2027, 1, 1),
        estimated=draw(st.booleans()),
    )


@given(capacities())
def test_every_shape_lies_in_the_frame_and_no_text_on_another(capacity: Capacity) -> None:
    for system in System:
        for drawing in (waterfall(capacity, system), strength_bars(capacity, system)):
            assert_inside(drawing)
            assert_texts_apart(drawing)
            assert drawing.width_mm == 88.0


def bars(drawing: Drawing, fill: Ink) -> list[RoundedRect]:
    """The pieces of bars in a fill, from top to bottom."""
    return [shape for shape in drawing.shapes if isinstance(shape, RoundedRect) and shape.fill is fill]


CRUSHED = SteelStrength("pin_bearing", "the pin crushes the two walls", 60e3, 40e3, 40 / 60, 16e3, "weak steel", "s")
TORN = SteelStrength("tube_net", "the tube pulls apart", 300e3, 200e3, 200 / 300, None, "weak steel", "s")
CHAIN = SteelStrength("chain_hole", "a pull from the chain hole", 40e3, 20e3, 0.5, None, "weak steel", "s", beside=True)
RUSTED = Capacity(
    None,
    40e3,
    (CapacityStep("steel_loss.pin_bearing", 1 / 3, 40e3, "s", "Steel lost (the pin crushes the two walls)"),),
    as_new_n=60e3,
    strengths=(TORN, CRUSHED, CHAIN),
    left_out=("the weld: not measured",),
    wall_m=0.0041,
    wall_on=date(2027, 1, 1),
)
AGED = Capacity(
    100e3,
    72e3,
    (CapacityStep("ageing_loss", 0.2, 80e3, "s", "Lost to age"), CapacityStep("a", 0.1, 72e3, "s", "Lost to rubbing")),
)


def test_each_loss_hangs_from_what_was_left_before_it() -> None:
    first, second = bars(waterfall(AGED), Ink.THIN)
    full = bars(waterfall(AGED), Ink.BAND)[0]
    assert first.wide_mm / full.wide_mm == pytest.approx(0.2)
    assert second.wide_mm / full.wide_mm == pytest.approx(0.08)
    assert first.corner[0] == pytest.approx(second.corner[0] + second.wide_mm)
    now = bars(waterfall(AGED), Ink.STEEL)[0]
    assert now.wide_mm / full.wide_mm == pytest.approx(0.72)
    assert now.corner[0] + now.wide_mm == pytest.approx(second.corner[0])


def test_the_words_name_marking_losses_and_now() -> None:
    words = said(waterfall(AGED))
    for one in ("as marked", "100 kN", "Lost to age", "−20 %", "Lost to rubbing", "−10 %", "now", "72 kN"):
        assert one in words
    assert "as new, reckoned from its sizes" in said(waterfall(RUSTED))
    assert "72 kN" in waterfall(AGED).describes


def test_what_is_not_known_now_is_a_dashed_frame_and_said() -> None:
    drawing = waterfall(replace(AGED, now_n=None, steps=()))
    assert "not known" in said(drawing)
    assert not bars(drawing, Ink.STEEL)
    assert [one for one in drawing.shapes if isinstance(one, RoundedRect) and one.dash_mm and one.fill is None]


def test_an_estimate_is_dashed_and_said() -> None:
    drawing = waterfall(replace(RUSTED, estimated=True))
    assert "estimated: no reading" in said(drawing)
    assert bars(drawing, Ink.STEEL)[0].dash_mm


def test_the_part_that_gives_way_first_stands_on_top_by_word_and_ink() -> None:
    drawing = strength_bars(RUSTED)
    first = texts(drawing)[0]
    assert (first.text, first.bold) == ("first: the pin crushes the two walls", True)
    assert drawing.title == "What gives way first"
    steel = bars(drawing, Ink.STEEL)
    assert [one.ink for one in steel] == [Ink.LIMIT, Ink.INK]
    assert steel[0].wide_mm / steel[1].wide_mm == pytest.approx(40 / 200)


def test_what_is_shown_to_warn_stands_last_and_is_no_steel_bar() -> None:
    drawing = strength_bars(RUSTED)
    order = [one.text for one in texts(drawing) if not one.text.endswith("kN")]
    assert order.index("a pull from the chain hole") > order.index("the tube pulls apart")
    assert len(bars(drawing, Ink.STEEL)) == 2


def test_the_first_lasting_set_is_a_stroke_at_its_pull() -> None:
    drawing = strength_bars(RUSTED)
    (tick,) = [one for one in drawing.shapes if isinstance(one, Line)]
    steel = bars(drawing, Ink.STEEL)[0]
    assert (tick.start[0] - steel.corner[0]) / steel.wide_mm == pytest.approx(16 / 40)
    assert "16 kN" in tick.tells
    assert "Thick stroke" in said(drawing)


def test_a_marking_below_all_parts_names_none_first() -> None:
    marked = replace(RUSTED, as_marked_n=30e3, as_new_n=None)
    drawing = strength_bars(marked)
    assert drawing.title == "The strength of its parts"
    assert "first:" not in said(drawing)
    assert "The marking is lower than all of these" in said(drawing)


def test_shares_are_told_in_per_cent_and_whole_ones_only_among_themselves() -> None:
    worn = SteelStrength("body_bending", "the body in bending", None, None, 0.73, None, "cube", "s")
    whole = replace(worn, part="the pin in bending", left_ratio=1.0)
    shares = Capacity(100e3, 73e3, strengths=(worn, whole))
    assert "most: the body in bending" in said(strength_bars(shares)) and "73 % left" in said(strength_bars(shares))
    assert "100 % left" in said(strength_bars(shares))
    mixed = replace(RUSTED, strengths=(CRUSHED, whole))
    assert "100 %" not in said(strength_bars(mixed))


def test_nothing_to_tell_is_no_picture() -> None:
    sound = Capacity(100e3, 100e3)
    assert not has_waterfall(sound) and not has_strength_bars(sound)
    assert has_waterfall(AGED) and not has_strength_bars(AGED)
    assert has_waterfall(RUSTED) and has_strength_bars(RUSTED)


def test_every_bar_tells_its_figures() -> None:
    tells = [one.tells for one in waterfall(AGED).shapes if one.tells]
    assert tells == [
        "as marked: 100 kN",
        "Lost to age: −20 %, from 100 kN to 80 kN",
        "Lost to rubbing: −10 %, from 80 kN to 72 kN",
        "now: 72 kN",
    ]
    bars_tell = [one.tells for one in strength_bars(RUSTED).shapes if one.tells]
    assert "the pin crushes the two walls, now: 40 kN (weak steel)" in bars_tell
    unknown = waterfall(replace(AGED, now_n=None, steps=(), why_unknown="Its age is not known."))
    assert "now: not known. Its age is not known." in [one.tells for one in unknown.shapes]
