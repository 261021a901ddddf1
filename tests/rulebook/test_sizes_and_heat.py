"""What sizes as new tell of a piece: its pin, its coupling, the build of its rope; and heat with its degrees."""

import pytest

from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome
from inspector.gear.use import Weather
from inspector.rulebook.case import Case
from inspector.rulebook.catalogue import quantity
from inspector.rulebook.judge import judge
from inspector.rulebook.limits import measure_limit
from inspector.rulebook.wording import explain
from inspector.units import System
from tests.each import each
from tests.rulebook.dossiers import BOOK
from tests.rulebook.sound import BOOKED, sound, with_exposure, with_facts, with_reading, with_size

ROPE = BOOK.kinds["wire_winch_rope"]


def rope(outer_wires: int | None) -> Dossier:
    dossier = sound(ROPE)
    if outer_wires is not None:
        return with_size(dossier, "outer_wires", outer_wires)
    kept = tuple(one for one in dossier.item.facts.sizes if one.key != "outer_wires")
    return with_facts(dossier, sizes=kept)


def outcome_of(dossier: Dossier) -> Outcome:
    return judge(dossier, BOOK, "test").outcome


def words_of(dossier: Dossier) -> str:
    return explain(dossier, judge(dossier, BOOK, "test"), BOOK).headline


@pytest.mark.parametrize(
    ("outer_wires", "held", "ended", "held_long", "ended_long"),
    [
        (None, 1, 4, 2, 8),  # Lang lay; a drum of many layers: the fewest of all ropes
        (42, 1, 2, 2, 4),  # 6x7
        (114, 2, 5, 5, 10),  # 6x19
        (216, 3, 6, 9, 18),  # 6x36: 4 and 9 by the table, no more than a winch's lay length may show
        (301, 1, 4, 2, 8),  # beyond the table: as if nobody knew
    ],
)
def test_how_many_broken_wires_hold_and_end_a_rope(
    outer_wires: int | None, held: int, ended: int, held_long: int, ended_long: int
) -> None:
    case = Case(rope(outer_wires), BOOK)
    names = ("wires_held", "wires_discard", "wires_held_long", "wires_discard_long")
    values = [quantity(case, name).value for name in names]
    assert [value.number if value else None for value in values] == [held, ended, held_long, ended_long]


@each(
    ("outer_wires", "broken", "outcome"),
    [
        (None, 0, Outcome.FIT),
        (None, 1, Outcome.HOLD),
        (None, 3, Outcome.HOLD),
        (None, 4, Outcome.RETIRE),
        (114, 1, Outcome.FIT),
        (114, 2, Outcome.HOLD),
        (114, 5, Outcome.RETIRE),
    ],
)
def test_broken_wires_of_a_rope_of_known_and_unknown_build(
    outer_wires: int | None, broken: int, outcome: Outcome
) -> None:
    assert outcome_of(with_reading(rope(outer_wires), "broken_wires", broken)) is outcome


def test_scattered_broken_wires_end_a_rope_that_shows_few_in_any_one_place() -> None:
    worn = with_reading(with_reading(rope(114), "broken_wires", 1), "broken_wires_long", 10)
    assert outcome_of(worn) is Outcome.RETIRE


def test_the_sheet_tells_the_count_for_this_rope() -> None:
    measure = ROPE.measure("broken_wires_long")
    assert measure is not None
    assert measure_limit(rope(114), measure, BOOK, System.METRIC) == "less than 5"
    assert measure_limit(rope(None), measure, BOOK, System.METRIC) == "less than 2"


@pytest.mark.parametrize(("pin_m", "outcome"), [(0.019, Outcome.HOLD), (0.02, Outcome.HOLD), (0.0201, Outcome.FIT)])
def test_a_pin_no_thicker_than_the_body_is_an_odd_one(pin_m: float, outcome: Outcome) -> None:
    shackle = with_size(sound(BOOK.kinds["bow_shackle"]), "pin_diameter", pin_m)  # body 20 mm
    assert outcome_of(with_reading(shackle, "pin_diameter", pin_m)) is outcome


@pytest.mark.parametrize(
    ("ball_m", "coupler_m", "outcome"),
    [(0.05, 0.05, Outcome.FIT), (0.05, 0.051, Outcome.FIT), (0.05, 0.0524, Outcome.HOLD), (0.05, 0.0476, Outcome.HOLD)],
)
def test_a_ball_belongs_in_a_coupling_of_its_size(ball_m: float, coupler_m: float, outcome: Outcome) -> None:
    ball = with_size(with_size(sound(BOOK.kinds["tow_ball"]), "ball_diameter", ball_m), "coupler", coupler_m)
    assert outcome_of(ball) is outcome


def test_a_ball_whose_coupling_nobody_wrote_down_rests_on_the_check() -> None:
    ball = sound(BOOK.kinds["tow_ball"])
    alone = with_facts(ball, sizes=tuple(one for one in ball.item.facts.sizes if one.key != "coupler"))
    assert outcome_of(alone) is Outcome.FIT
    assert not any(one.rule == "ball-in-coupler" for one in judge(alone, BOOK, "test").findings)


@each(
    ("material", "heat", "outcome"),
    [
        ("nylon webbing", "82 °C", Outcome.FIT),
        ("nylon webbing", "82.2 °C", Outcome.FIT),
        ("nylon webbing", "83 °C", Outcome.HOLD),
        ("nylon webbing", "179 °F", Outcome.FIT),
        ("nylon webbing", "180 °F", Outcome.HOLD),  # 82.22 °C; of the two figures in print the rounded one is stricter
        ("HMPE rope", "61 °C", Outcome.HOLD),
        ("webbing", "61 °C", Outcome.HOLD),  # nobody knows which fibre
    ],
)
def test_a_strap_that_was_too_hot_is_held_even_after_an_inspection(material: str, heat: str, outcome: Outcome) -> None:
    strap = with_facts(sound(BOOK.kinds["kinetic_strap"]), material=material)
    assert outcome_of(with_exposure(strap, Weather.HEAT, on=BOOKED, heat=heat)) is outcome


@each(
    ("kind", "material", "limit_c"),
    [
        ("soft_shackle", "", 60.0),
        ("soft_shackle", "polyester cover", 60.0),  # the kind itself is of HMPE
        ("soft_shackle", "UHMWPE core, polyester cover", 60.0),
        ("static_strap", "aramid core, polyester cover", 60.0),
        ("static_strap", "polyester and who knows what", 60.0),
        ("static_strap", "polyester webbing", 82.2),
        ("kinetic_rope", "nylon core, polyester cover", 82.2),
        ("kinetic_rope", "Nylon, double-braided", 82.2),
        ("kinetic_rope", "PA66", 60.0),
        ("static_strap", "polyester, polypropylene sleeve", 80.0),
    ],
)
def test_the_weakest_fibre_in_it_sets_the_heat_and_an_unknown_word_may_be_one(
    kind: str, material: str, limit_c: float
) -> None:
    piece = with_facts(sound(BOOK.kinds[kind]), material=material)
    hot = with_exposure(piece, Weather.HEAT, on=BOOKED, heat="95 °C")
    (found,) = [one for one in judge(hot, BOOK, "test").findings if one.rule == "too-hot-fibre"]
    assert found.limit is not None and found.limit.number == limit_c


@pytest.mark.parametrize(
    ("material", "heat", "outcome"),
    [
        ("steel wire, fibre core", "93 °C", Outcome.FIT),
        ("steel wire, fibre core", "94 °C", Outcome.RETIRE),
        ("steel wire", "94 °C", Outcome.HOLD),
        ("steel wire, steel core", "94 °C", Outcome.FIT),
    ],
)
def test_heat_ends_a_fibre_core_that_nobody_sees(material: str, heat: str, outcome: Outcome) -> None:
    heated = with_exposure(with_facts(sound(ROPE), material=material), Weather.HEAT, on=BOOKED, heat=heat)
    assert outcome_of(heated) is outcome


@each(
    ("kind", "material", "fit_at", "held_at"),
    [
        ("bow_shackle", "", "204 °C", "205 °C"),
        ("bow_shackle", "", "399 °F", "400 °F"),  # 204.4 °C; of the two figures in print the rounded one is stricter
        ("bow_shackle", "aluminium", "80 °C", "81 °C"),
        ("hitch_pin", "", "204 °C", "500 °C"),
        ("winch_hook", "", "204 °C", "500 °C"),
        ("snatch_block", "", "204 °C", "500 °C"),
        ("tow_ball", "", "204 °C", "500 °C"),
        ("recovery_point", "", "204 °C", "500 °C"),
        ("hitch_receiver", "", "204 °C", "500 °C"),
        ("sheave_ring", "", "80 °C", "81 °C"),  # its kind may be of aluminium
        ("sheave_ring", "aluminium", "80 °C", "81 °C"),
        ("sheave_ring", "steel", "204 °C", "205 °C"),
        ("receiver_insert", "", "80 °C", "81 °C"),
        ("receiver_insert", "something", "80 °C", "81 °C"),
        ("receiver_insert", "steel and aluminum", "80 °C", "81 °C"),
        ("wire_winch_rope", "steel wire, steel core", "204 °C", "205 °C"),
    ],
)
def test_metal_that_was_too_hot_is_held_even_after_an_inspection(
    kind: str, material: str, fit_at: str, held_at: str
) -> None:
    piece = with_facts(sound(BOOK.kinds[kind]), material=material)
    for heat, outcome in ((fit_at, Outcome.FIT), (held_at, Outcome.HOLD)):
        assert outcome_of(with_exposure(piece, Weather.HEAT, on=BOOKED, heat=heat)) is outcome


def test_the_words_tell_value_and_limit() -> None:
    strap = with_exposure(sound(BOOK.kinds["kinetic_strap"]), Weather.HEAT, on=BOOKED, heat="95 °C")
    assert words_of(strap) == "Hold: Greatest heat: 95 °C, must be at most 82.2 °C."
    pin = with_reading(with_size(sound(BOOK.kinds["hitch_pin"]), "pin_diameter", 0.0127), "pin_diameter", 0.0127)
    assert words_of(pin) == "Hold: Pin diameter as new: 12.7 mm, must be at least 15.5 mm."
    odd = with_size(sound(BOOK.kinds["dee_shackle"]), "pin_diameter", 0.019)
    assert words_of(odd) == "Hold: Pin against body: no thicker than the body."


def test_a_frozen_rope_waits_for_an_inspection_and_one_settles_it() -> None:
    kind = BOOK.kinds["kinetic_rope"]
    assert outcome_of(with_exposure(sound(kind), Weather.FROST)) is Outcome.HOLD
    assert outcome_of(with_exposure(sound(kind), Weather.FROST, on=BOOKED)) is Outcome.FIT
