"""The trainer's bench: its laws for every place of every dial, and that it says what the named sums say."""

from collections.abc import Callable, Mapping

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.gear.bench import BenchTopic, Given, Worked
from inspector.mechanics import corrosion, energy, fibre, sections, shear, single_shear, snatch, weld_group
from inspector.refused import Refused
from inspector.rulebook.bench.work import topics, work_topic
from inspector.rulebook.load import Rulebook, packaged
from inspector.rulebook.sums import functions
from inspector.units import Dimension, Figure, System, read

BOOK = packaged()
TOPICS = {one.key: one for one in topics(BOOK, System.METRIC)}
KEYS = pytest.mark.parametrize("key", TOPICS)


def worked(key: str, **set_to: str | float) -> Worked:
    """A topic in metric units with some dials set, as text or in SI."""
    return worked_in(System.METRIC, key, set_to)


def worked_in(system: System, key: str, set_to: Mapping[str, str | float] | None = None) -> Worked:
    """The same in any units."""
    given = [put(TOPICS[key], name, value) for name, value in (set_to or {}).items()]
    return work_topic(key, given, BOOK, system)


def put(topic: BenchTopic, name: str, value: str | float) -> Given:
    """A figure for a dial."""
    dial = next(one for one in topic.dials if one.key == name)
    figure = read(value, dial.dimension, field=name) if isinstance(value, str) else dial.shown(value, System.METRIC)
    return Given(name, figure)


@st.composite
def places(draw: st.DrawFn, key: str) -> dict[str, float]:
    """Any place of every dial of a topic that go together."""
    found = {
        one.key: draw(st.sampled_from(one.stops) if one.stops else st.floats(one.least_si, one.most_si))
        for one in TOPICS[key].dials
    }
    if key == "wall":
        found["now"] = min(found["now"], found["new"])
    return found


@settings(deadline=None, max_examples=60)
@given(places("pin"))
def test_double_shear_bears_more_than_single_wherever_the_dials_stand(at: dict[str, float]) -> None:
    found = worked("pin", **at)
    assert found.amount("double_n") > found.amount("single_n")
    assert found.amount("double_n") >= 2 * found.amount("single_n") * (1 - 1e-9)


@settings(deadline=None, max_examples=60)
@given(places("wall"), st.floats(0.0, 1.0))
def test_a_thinner_wall_is_never_stronger_and_never_lasts_longer(at: dict[str, float], share: float) -> None:
    thick, thin = worked("wall", **at), worked("wall", **(at | {"now": at["now"] * share}))
    for name in ("then_m", "left_ratio", "bears_n"):
        assert thin.amount(name) <= thick.amount(name) * (1 + 1e-9)


@settings(deadline=None, max_examples=60)
@given(places("wall"), st.floats(0.0, 1.0))
def test_more_years_or_more_rust_never_leave_more(at: dict[str, float], share: float) -> None:
    for name in ("years", "rate"):
        less = worked("wall", **(at | {name: at[name] * share}))
        assert worked("wall", **at).amount("then_m") <= less.amount("then_m")


@settings(deadline=None, max_examples=60)
@given(places("speed"), st.floats(0.0, 1.0))
def test_energy_pull_and_throw_never_fall_with_speed(at: dict[str, float], share: float) -> None:
    least = next(one.least_si for one in TOPICS["speed"].dials if one.key == "speed")
    slow = worked("speed", **(at | {"speed": max(at["speed"] * share, least)}))
    fast = worked("speed", **at)
    for name in ("energy_j", "peak_n", "thrown", "soft", "range_m"):
        assert fast.amount(name) >= slow.amount(name) * (1 - 1e-9)


@settings(deadline=None, max_examples=60)
@given(places("speed"), st.floats(0.01, 1.0))
def test_a_lighter_part_takes_no_energy_out_of_the_line_and_leaves_faster(at: dict[str, float], share: float) -> None:
    least = next(one.least_si for one in TOPICS["speed"].dials if one.key == "part")
    light, heavy = worked("speed", **(at | {"part": max(at["part"] * share, least)})), worked("speed", **at)
    assert light.amount("energy_j") == heavy.amount("energy_j")
    assert light.amount("thrown") >= heavy.amount("thrown")


@settings(deadline=None, max_examples=60)
@given(places("weld"), st.floats(0.0, 1.0))
def test_a_pull_beside_the_middle_or_more_rust_never_leaves_a_stronger_weld(at: dict[str, float], share: float) -> None:
    found = worked("weld", **at)
    assert found.amount("beside_n") <= found.amount("straight_n")
    for name in ("off", "rust"):
        less = worked("weld", **(at | {name: at[name] * share}))
        assert found.amount("beside_n") <= less.amount("beside_n") * (1 + 1e-9)


@settings(deadline=None, max_examples=60)
@given(places("ball"), st.floats(0.2, 1.0))
def test_a_higher_pull_never_takes_more_to_bend_the_ball(at: dict[str, float], share: float) -> None:
    low = worked("ball", **(at | {"height": max(at["height"] * share, 0.02)}))
    assert worked("ball", **at).amount("over_n") <= low.amount("over_n") * (1 + 1e-9)


@settings(deadline=None, max_examples=60)
@given(places("strap"), st.floats(1.0, 3.0))
def test_a_stronger_strap_pulls_harder_at_the_same_speed(at: dict[str, float], times: float) -> None:
    most = next(one.most_si for one in TOPICS["strap"].dials if one.key == "strength")
    strong = worked("strap", **(at | {"strength": min(at["strength"] * times, most)}))
    assert strong.amount("peak_n") >= worked("strap", **at).amount("peak_n") * (1 - 1e-9)
    assert strong.amount("give_m") <= worked("strap", **at).amount("give_m") * (1 + 1e-9)


def test_the_pin_says_what_the_named_sums_say() -> None:
    found = worked("pin", pin="20 mm", **{"class": "8.8"}, between="40 mm", play="2 mm")
    moment = shear.pin_moment_resistance_n_m(0.020, 640e6)
    plane = shear.pin_shear_per_plane_n(0.020, 800e6, 1.0)
    double = shear.pin_combined_pull_n(shear.pin_lever_m(0.040, 0.002, 0.004), moment, plane)
    single = single_shear.single_shear_pull_n(single_shear.single_shear_lever_m(0.040, 0.002, 0.004), moment, plane)
    assert (found.amount("double_n"), found.amount("single_n")) == pytest.approx((double, single))


def test_the_ball_says_what_the_named_sums_say() -> None:
    found = worked("ball", shank="25 mm", height="55 mm", **{"class": "4.6"})
    assert found.amount("first_n") == pytest.approx(shear.shank_elastic_limit_n(0.025, 0.055, 240e6))
    assert found.amount("over_n") == pytest.approx(shear.shank_plastic_limit_n(0.025, 0.055, 240e6))


def test_the_weld_says_what_the_named_sums_say() -> None:
    found = worked("weld", side="60 mm", throat="4 mm", rust="1 mm", off="50 mm")
    strength = 360e6 / (3**0.5 * 0.8)
    beside = weld_group.tube_weld_capacity_n(0.050, 0.060, 0.008, 0.003, strength)
    assert found.amount("beside_n") == pytest.approx(beside)
    assert found.amount("times") == pytest.approx(weld_group.eccentric_over_straight_ratio(0.050, 0.060, 0.008))


def test_the_wall_says_what_the_named_sums_say() -> None:
    found = worked("wall", outside="60 mm", new="4 mm", now="3.5 mm", rate="0.1 mm/year", years="5 years")
    then = sections.square_tube_modulus_m3(0.060, 0.003, 0.008) / sections.square_tube_modulus_m3(0.060, 0.004, 0.008)
    assert found.amount("then_m") == pytest.approx(0.003)
    assert found.amount("left_ratio") == pytest.approx(then)
    life = corrosion.remaining_life_years(0.0035, 0.8 * 0.004, 0.0001)
    assert f"in {life:.0f} years" in found.means


def test_strap_and_speed_say_what_the_named_sums_say() -> None:
    strap = worked("strap", strength="100 kN", mass="2500 kg", stretch="20 %", length="9 m")
    stiffness = snatch.strap_stiffness_n_per_m(100e3, 0.2, 9.0)
    speed = BOOK.setting("kinetic_speed_unsaid")
    assert strap.amount("ratio") == pytest.approx(fibre.strap_band_ratio(100e3, 2500))
    assert strap.amount("peak_n") == pytest.approx(snatch.anchored_peak_n(0.0, stiffness, 2500, speed))
    fast = worked("speed", speed="20 km/h", mass="2500 kg", part="1 kg")
    assert fast.amount("energy_j") == pytest.approx(energy.kinetic_energy_j(2500, 20 / 3.6))
    assert fast.amount("thrown") == pytest.approx(energy.thrown_speed_m_per_s(fast.amount("energy_j"), 1.0))


@KEYS
def test_the_same_figures_in_inches_and_pounds_come_to_the_same(key: str) -> None:
    metric, imperial = worked(key), worked_in(System.IMPERIAL, key)
    assert dict(imperial.amounts) == pytest.approx(dict(metric.amounts))
    text = " ".join((imperial.means, *(f"{one.filled} {one.result}" for one in imperial.lines)))
    assert not any(f" {unit}" in text for unit in ("mm", "kN", "km/h", "MPa", "kJ"))


def test_a_typed_inch_is_the_same_pin_as_its_millimetres() -> None:
    inches, millimetres = worked("pin", pin="5/8 in"), worked("pin", pin="15.875 mm")
    assert dict(inches.amounts) == pytest.approx(dict(millimetres.amounts))


@KEYS
def test_every_sum_is_one_of_the_catalogue_with_its_signs_and_its_range(key: str) -> None:
    found = worked(key)
    assert len(found.lines) >= 4
    for line in found.lines:
        assert line.name in functions()
        assert line.formula and line.valid and line.result
        signs = [one.split(" = ")[0] for one in line.filled.split(", ") if " = " in one]
        missing = [sign for sign in signs if sign not in line.formula + line.valid]
        assert missing == [], line.name


@KEYS
def test_every_figure_has_a_source_and_says_how_it_came(key: str) -> None:
    found = worked(key)
    assert [one.label for one in found.figures if not one.source or not one.came] == []
    assert found.sources and found.left_out and found.question.endswith("?")


@KEYS
def test_the_facts_of_the_trade_stand_beside_every_topic(key: str) -> None:
    cautions = " ".join(worked(key).cautions)
    assert "Never recover from a tow ball, a ball mount or a bare receiver (common practice, no published" in cautions
    assert "a solid insert held by its pin in double shear, in a sound bar (common practice" in cautions
    assert "Stay clear of a loaded line" in cautions and "certifies" in cautions


def refused(call: Callable[[], object]) -> Refused:
    """The refusal of a call."""
    with pytest.raises(Refused) as caught:
        call()
    return caught.value


@KEYS
def test_both_ends_of_every_dial_are_allowed_and_beyond_them_it_is_refused_by_name(key: str) -> None:
    for dial in TOPICS[key].dials:
        for end, way in ((dial.least_si, -1), (dial.most_si, 1)):
            beyond = end + way * 0.02 * (dial.most_si - dial.least_si)
            assert refused(lambda name=dial.key, si=beyond: worked(key, **{name: si})).field == dial.name  # type: ignore[misc]
            others = {"now": 0.0} if key == "wall" and dial.key == "new" else {}
            others |= {"new": dial.most_si} if dial.key == "now" else {}
            assert worked(key, **(others | {dial.key: end})).means


def test_a_wall_thicker_than_new_is_refused_at_the_wall_now() -> None:
    refusal = refused(lambda: worked("wall", new="3 mm", now="3.5 mm"))
    assert refusal.field == "Wall now" and "3.5 mm is more than 3 mm" in refusal.why


def test_a_class_that_is_none_is_refused_with_those_there_are() -> None:
    assert "4.6, 8.8, 10.9" in refused(lambda: worked("pin", **{"class": "5.6"})).what_to_do


def test_a_topic_that_is_none_is_refused_with_those_there_are() -> None:
    assert "pin, ball, weld, wall, strap, speed" in refused(lambda: work_topic("x", (), BOOK, System.METRIC)).what_to_do


@pytest.mark.parametrize(("strength", "says"), [("40 kN", "too weak"), ("80 kN", "It suits"), ("120 kN", "too strong")])
def test_the_band_of_a_strap_has_two_sides(strength: str, says: str) -> None:
    assert says in worked("strap", strength=strength, mass="3200 kg").means


def test_a_limit_that_a_piece_brings_along_counts_where_it_is_the_severer(rules: Rulebook) -> None:
    must = Given("must", Figure(0.0039, "3.9 mm", Dimension.LENGTH))
    assert work_topic("wall", [must], rules, System.METRIC).amount("must_m") == 0.0039
    mild = Given("must", Figure(0.0010, "1 mm", Dimension.LENGTH))
    assert work_topic("wall", [mild], rules, System.METRIC).amount("must_m") == pytest.approx(0.0032)


def test_where_a_ball_is_thicker_than_the_pin_it_is_no_recovery_point_all_the_same() -> None:
    found = worked("ball", shank="40 mm", height="20 mm", pin="6 mm")
    assert found.amount("over_n") > found.amount("pin_n")
    assert "no recovery point" in found.means
