"""The sums of fibre and steel hardware refuse every figure outside their range."""

import inspect
import math
from collections.abc import Callable
from types import ModuleType
from typing import Any

import pytest

from inspector.mechanics import (
    bend,
    chain,
    hook,
    knots,
    shackle,
    shackle_sizes,
    sling,
    stretch,
    temperature,
    tiedown,
    wear,
    wire_rope,
)
from inspector.mechanics.chain import ChainGrade
from inspector.mechanics.fibre import Fibre
from inspector.mechanics.shackle import NavyGrade
from inspector.mechanics.shackle_sizes import ShackleSteel
from inspector.mechanics.sling import SlingMode, TextileRule
from inspector.mechanics.temperature import Chemical
from inspector.mechanics.wear import WornPart
from inspector.mechanics.wire_rope import BreakSpread, CountedLength, RopeCore
from tests.each import each

Sum = Callable[..., Any]
MODULES: list[ModuleType] = [
    *(bend, chain, hook, knots, shackle, shackle_sizes, sling, stretch, temperature, tiedown, wear, wire_rope)
]
OVER_A_PIN = {"pin_m": 0.022, "rope_m": 0.011}
SIZES = {"original_m": 0.020, "now_m": 0.019}

GOOD: dict[Sum, dict[str, Any]] = {
    bend.bend_ratio: OVER_A_PIN,
    bend.wire_rope_bend_factor: OVER_A_PIN,
    bend.bent_wire_rope_n: OVER_A_PIN | {"breaking_n": 60e3},
    bend.termination_factor: {"termination": "hand splice"},
    bend.sling_reduction_factor: {"end_factor": 1.25, "bend_factor": 1.5},
    bend.fibre_bend_factor: {"pin_m": 0.030, "makers_least_m": 0.030},
    bend.fibre_least_pin_m: {"rope_m": 0.011},
    bend.may_bend_fibre: OVER_A_PIN,
    bend.eye_least_length_m: OVER_A_PIN,
    bend.may_open_eye: {"opening_rad": 0.3},
    bend.bearing_least_radius_m: {"bearing_width_m": 0.06},
    bend.is_sharp_edge: {"radius_m": 0.003, "thickness_m": 0.006},
    chain.chain_least_thickness_m: {"nominal_m": 0.010},
    chain.is_chain_worn: {"nominal_m": 0.010, "now_m": 0.0095},
    chain.chain_stretch_ratio: SIZES,
    chain.is_chain_stretched: SIZES,
    chain.is_chain_spoilt_by_heat: {"temperature_c": 20.0},
    chain.chain_breaking_n: {"bar_m": 0.010, "grade": ChainGrade.G8},
    chain.chain_proof_n: {"bar_m": 0.010},
    hook.throat_opening_ratio: SIZES,
    hook.throat_most_growth_m: {"original_m": 0.030},
    hook.is_throat_opened: SIZES,
    hook.hook_wear_limit_ratio: {},
    hook.is_hook_worn: SIZES,
    knots.knot_left_ratio: {"knot": "bowline"},
    knots.splice_left_ratio: {"splice": "eye"},
    shackle.may_spread: {"included_rad": 1.0},
    shackle.is_odd_pin: {"pin_m": 0.022, "bow_m": 0.019},
    shackle.unmarked_shackle_n: {"bow_m": 0.019},
    shackle.shackle_least_factor: {"working_load_n": 46e3},
    shackle.shackle_least_proof_n: {"working_load_n": 46e3},
    shackle.shackle_most_proof_n: {"working_load_n": 46e3},
    shackle.navy_shackle_n: {"proof_n": 90e3, "grade": NavyGrade.A},
    shackle.shackle_heat_factor: {"temperature_c": 20.0},
    shackle.in_shackle_temperature: {"temperature_c": 20.0},
    shackle_sizes.dee_body_m: {"working_load_n": 30e3, "steel": ShackleSteel.MILD},
    shackle_sizes.dee_pin_m: {"working_load_n": 30e3, "steel": ShackleSteel.MILD},
    shackle_sizes.dee_jaw_m: {"working_load_n": 30e3},
    shackle_sizes.dee_load_n: {"body_m": 0.019, "pin_m": 0.021},
    shackle_sizes.bow_load_n: {"bow_m": 0.019},
    shackle_sizes.bow_pin_m: {"bow_m": 0.019},
    sling.textile_design_factor: {"rule": TextileRule.EN_1492},
    sling.textile_working_load_n: {"breaking_n": 70e3, "rule": TextileRule.EN_1492},
    sling.sling_mode_factor: {"mode": SlingMode.BASKET, "from_upright_rad": 0.5},
    sling.sling_leg_factor: {"from_level_rad": 1.0},
    sling.sling_capacity_ratio: {"from_level_rad": 1.0},
    stretch.permanent_stretch_ratio: {"marked_m": 9.0, "now_m": 9.2},
    stretch.is_overstretched: {"stretch_ratio": 0.05},
    stretch.is_overload: {"peak_n": 20e3, "breaking_n": 80e3},
    stretch.cut_edge_loss_ratio: {"cut_m": 0.004, "width_m": 0.050, "edge_count": 1},
    stretch.is_webbing_cut_out: {"cut_m": 0.004, "width_m": 0.050, "at_edge": False},
    temperature.fibre_most_c: {"fibre": Fibre.NYLON},
    temperature.fibre_least_c: {},
    temperature.in_fibre_temperature: {"temperature_c": 20.0, "fibre": Fibre.NYLON},
    temperature.is_barred_chemical: {"fibre": Fibre.NYLON, "chemical": Chemical.ACID},
    temperature.is_barred_for_aluminium: {"chemical": Chemical.ACID},
    tiedown.unmarked_chain_n: {"size_m": 0.010},
    tiedown.unmarked_webbing_n: {"width_m": 0.050},
    tiedown.unmarked_wire_rope_n: {"size_m": 0.010},
    tiedown.quarter_strength_n: {"nominal_strength_n": 50e3},
    tiedown.weakest_part_n: {"parts_n": [20e3, 30e3]},
    wear.worn_ratio: SIZES,
    wear.round_bar_wear: SIZES,
    wear.wear_limit_ratio: {"part": WornPart.PIN},
    wear.is_worn_out: SIZES | {"part": WornPart.PIN},
    wire_rope.discard_wires_count: {"outer_wires_count": 42, "counted": CountedLength.SIX_DIAMETERS},
    wire_rope.lay_discard_wires_count: {"spread": BreakSpread.ANYWHERE},
    wire_rope.is_broken_by_share: {"broken_count": 3, "wires_count": 114},
    wire_rope.is_mine_rope_broken: {
        "broken_count": 3,
        "wires_count": 114,
        "strand_broken_count": 2,
        "strand_wires_count": 19,
    },
    wire_rope.is_outer_wire_worn: SIZES,
    wire_rope.thin_limit_ratio: {"core": RopeCore.STEEL},
    wire_rope.is_rope_too_thin: {"reference_m": 0.010, "now_m": 0.0099, "core": RopeCore.STEEL},
    wire_rope.is_fibre_core_spoilt: {"temperature_c": 20.0},
}

NUMBERS = [
    (deed, key) for deed, good in GOOD.items() for key, value in good.items() if not isinstance(value, str | bool)
]
WORDS = [(deed, key) for deed, good in GOOD.items() for key, value in good.items() if isinstance(value, str)]


def name_of(pair: tuple[Sum, str]) -> str:
    return f"{pair[0].__name__}-{pair[1]}"


def public_sums() -> set[Sum]:
    members = [(module, member) for module in MODULES for _, member in inspect.getmembers(module, inspect.isfunction)]
    return {member for module, member in members if member.__module__ == module.__name__ and member.__name__[0] != "_"}


def test_the_table_holds_every_sum_of_its_modules() -> None:
    assert set(GOOD) == public_sums()


@each("deed", GOOD, ids=lambda deed: deed.__name__)
def test_good_figures_are_taken(deed: Sum) -> None:
    assert deed(**GOOD[deed]) is not None


@each("bad", [math.nan, math.inf, -math.inf, -300.0])
@each("pair", NUMBERS, ids=name_of)
def test_figures_that_cannot_be_are_refused(pair: tuple[Sum, str], bad: float) -> None:
    deed, key = pair
    value = [bad] if isinstance(GOOD[deed][key], list) else bad
    with pytest.raises(ValueError, match="must"):
        deed(**GOOD[deed] | {key: value})


@each("pair", WORDS, ids=name_of)
def test_words_nobody_knows_are_refused(pair: tuple[Sum, str]) -> None:
    deed, key = pair
    with pytest.raises(ValueError, match="teapot"):
        deed(**GOOD[deed] | {key: "teapot"})
