"""Strengths of steel parts: against tables worked by hand, never higher for less steel, the least one named."""

import math
from datetime import date, timedelta

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.capacity import Capacity, SteelStrength
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.gear.use import Exposure, NewExposure, Weather
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.rulebook.strength_wall import next_quarter
from inspector.rulebook.strength_words import strength_lines
from inspector.rulebook.wording import explain
from inspector.units import Dimension, System, read
from tests.rulebook.dossiers import BOOK
from tests.rulebook.sound import sound, with_facts

TODAY = date(2026, 11, 25)
GAMMA_M2 = 1.25  # in the tables below, which print design values; strengths here hold no partial factor


class Piece:
    """A piece with its sizes, its marking and what was measured today."""

    def __init__(self, kind: str, sizes: dict[str, str], readings: dict[str, str], rules: Rulebook = BOOK) -> None:
        self.rules, self.kind = rules, rules.kind(kind)
        self.sizes, self.readings = sizes, readings
        self.rating = Rating(Basis.UNRATED, None, None, "none")
        self.material, self.provenance, self.competent = "", Provenance.NEW, True
        self.in_service_on, self.on, self.salt = TODAY, TODAY, False

    def marked(self, typed: str, stated_on: str = "piece", factor: float | None = None) -> "Piece":
        basis = Basis.MBS if factor is None else Basis.WLL
        self.rating = Rating(basis, read(typed, Dimension.FORCE, field="r"), factor, stated_on)
        return self

    def dossier(self) -> Dossier:
        known = {size.key: size.dimension for size in self.kind.sizes}
        new = tuple(SizeAsNew(key, read(text, known[key], field=key)) for key, text in self.sizes.items())
        facts = NewItem("T", self.kind.key, self.rating, sizes=new, material=self.material, provenance=self.provenance)
        item = Item("i", self.in_service_on, facts)
        taken = tuple(self._reading(place, typed) for place, typed in self.readings.items())
        seen = NewInspection(TODAY, InspectionKind.PERIODIC, "p", self.competent, readings=taken)
        sea = (Exposure("e", "i", NewExposure(self.in_service_on, Weather.SALT)),) if self.salt else ()
        return Dossier(self.kind, item, self.on, (Inspection("1", "i", seen),) if taken else (), exposures=sea)

    def _reading(self, place: str, typed: str) -> Reading:
        key, _, point = place.partition("@")
        measure = self.kind.measure(key)
        assert measure is not None
        return Reading(key, read(typed, measure.dimension, field=key), point, Method.CALLIPER, Surface.DRESSED)

    def capacity(self) -> Capacity:
        return judge(self.dossier(), self.rules, "t").capacity

    def lines(self, system: System = System.METRIC) -> dict[str, str]:
        verdict = judge(self.dossier(), self.rules, "t")
        return {fact.label: fact.text for fact in explain(self.dossier(), verdict, self.rules, system).sums}

    def way(self, mode: str) -> SteelStrength:
        return next(one for one in self.capacity().strengths if one.mode == mode)


def pin(read_now: str = "15.875 mm", grade: str = "") -> Piece:
    sizes = {"pin_diameter": "15.875 mm"} | ({"pin_class": grade} if grade else {})
    return Piece("hitch_pin", sizes, {"pin_diameter": read_now})


def receiver(wall_now: str = "4.2 mm", wall: str = "4 mm", **sizes: str) -> Piece:
    """A 60 mm receiver, its wall and its pin hole read today."""
    new = {"outside": "60 mm", "wall": wall, "pin_hole": "15.9 mm", "corner_radius": "8 mm"} | sizes
    found = {"wall@top": wall_now, "pin_hole@left wall": "15.9 mm", "pin_hole@right wall": "15.9 mm"}
    return Piece("hitch_receiver", new, found)


def test_the_settings_are_those_of_the_table() -> None:
    settings = {key: BOOK.setting(f"hitch_{key}") for key in ("insert_side", "insert_play", "receiver_wall")}
    assert settings == pytest.approx({"insert_side": 0.050, "insert_play": 0.001, "receiver_wall": 0.004})
    assert BOOK.setting("hitch_pin_diameter") == pytest.approx(0.015875)


@pytest.mark.parametrize(
    ("grade", "double_kn", "bending_kn"),
    [("4.6", 76.0, 18.2), ("8.8", 152.0, 48.7), ("10.9", 190.0, 68.4)],
)
def test_a_hitch_pin_is_as_strong_as_the_table_says(grade: str, double_kn: float, bending_kn: float) -> None:
    """5/8 in pin, 4 mm walls, 1 mm play, 50 mm solid insert: MEd = 7.75 N m per kN."""
    made = pin(grade=grade)
    assert made.way("pin_shear").now_n == pytest.approx(double_kn * 1e3 * GAMMA_M2, abs=0.05e3 * GAMMA_M2)
    assert made.way("pin_bends").now_n == pytest.approx(bending_kn * 1e3, abs=0.05e3)
    both = 1 / math.hypot(1 / bending_kn, 1 / (double_kn * GAMMA_M2))
    assert made.way("pin_combined").now_n == pytest.approx(both * 1e3, abs=0.06e3)


def test_an_unmarked_hitch_pin_bends_first_in_assumed_class_4_6() -> None:
    made = pin()
    first = made.capacity().governing
    assert first is not None and first.mode == "pin_combined"
    assert made.capacity().now_n == pytest.approx(17.9e3, abs=0.05e3)
    assert made.capacity().as_marked_n is None
    said = made.lines()["Gives way first"]
    assert "the pin bends in a solid insert" in said and "17.9 kN" in said and "class 4.6" in said
    assert "no marking tells it" in made.lines()["Strength as new"]


def test_a_pin_takes_its_first_lasting_bend_at_0_8_of_its_elastic_moment() -> None:
    """0.8 x 392.8 mm3 x 240 MPa over 7.75 mm."""
    assert pin().capacity().first_set_n == pytest.approx(0.8 * 392.8e-9 * 240e6 / 0.00775, rel=1e-3)


@pytest.mark.parametrize(("wall", "one_wall_kn"), [("4 mm", 22.4), ("3 mm", 16.8), ("2 mm", 11.2), ("1.5 mm", 8.4)])
def test_a_pin_crushes_the_walls_as_the_table_says(wall: str, one_wall_kn: float) -> None:
    made = receiver("7 mm", wall, pin_hole="15.9 mm")
    found = made.way("pin_bearing")
    assert found.sound_n == pytest.approx(2 * one_wall_kn * 1e3 * 15.875 / 15.9, abs=0.11e3)
    assert found.set_n == pytest.approx((found.now_n or 0.0) * 0.6 / 1.5)


@pytest.mark.parametrize(("wall", "area_cm2"), [("4 mm", 8.548), ("3 mm", 6.505), ("2 mm", 4.400), ("1.5 mm", 3.323)])
def test_the_section_beside_the_hole_is_that_of_the_table_less_the_hole(wall: str, area_cm2: float) -> None:
    made = receiver("7 mm", wall)
    net_mm2 = area_cm2 * 100 - 2 * 15.9 * float(wall.split()[0])
    assert made.way("tube_net").sound_n == pytest.approx(0.9 * net_mm2 * 360, rel=1e-3)
    assert made.way("walls_net").sound_n == pytest.approx(
        0.9 * 360 * (area_cm2 * 50 - 2 * 15.9 * float(wall.split()[0])), rel=2e-3
    )


def test_the_weld_is_that_of_the_study_on_a_rounded_tube() -> None:
    """S235, a = 3 mm, 60 mm: 149.6 kN design on sharp corners, straight; rounded L 226.3 for 240, Sw 4353 for 4800."""
    made = receiver("7 mm", weld_throat="3 mm", chain_hole="50 mm")
    straight = 149.6e3 * GAMMA_M2 * 226.3 / 240
    assert made.way("weld_straight").sound_n == pytest.approx(straight, rel=1e-3)
    lever = made.way("chain_hole_weld")
    assert lever.sound_n == pytest.approx(straight * (1 / 226.3) / (1 / 226.3 + 50 / 4353), rel=1e-3)
    assert made.way("chain_hole_wall").sound_n == pytest.approx(50.9e3, abs=0.1e3)
    assert lever.beside and lever not in made.capacity().counted


def test_the_throat_is_no_thicker_than_the_wall_behind_it() -> None:
    thick = receiver("7 mm", "4 mm", weld_throat="3 mm").way("weld_straight")
    thin = receiver("7 mm", "2 mm", weld_throat="3 mm").way("weld_straight")
    assert thin.sound_n == pytest.approx((thick.sound_n or 0.0) * 2 / 3)


def test_tearing_out_needs_the_distance_to_the_end() -> None:
    """Two walls, two planes each: 4 x 0.6 x 360 MPa x 4 mm x (25 + 15.875 / 2) mm."""
    without = receiver("7 mm")
    assert any("tearing out" in one for one in without.capacity().left_out)
    made = receiver("7 mm", end_distance="25 mm").way("pin_tears")
    assert made.sound_n == pytest.approx(4 * 0.6 * 360e6 * 0.004 * (0.025 + 0.015875 / 2))


@pytest.mark.parametrize(
    ("shank", "height", "first_kn", "last_kn"), [(22, 50, 4.9, 8.3), (24, 75, 4.3, 7.2), (25, 50, 7.2, 12.2)]
)
def test_a_ball_bends_at_a_few_kilonewtons(shank: int, height: int, first_kn: float, last_kn: float) -> None:
    made = Piece("tow_ball", {"ball_diameter": "50 mm", "shank_diameter": f"{shank} mm", "lever": f"{height} mm"}, {})
    assert made.way("shank").set_n == pytest.approx(first_kn * 1e3, abs=0.05e3)
    assert made.way("shank").now_n == pytest.approx(last_kn * 1e3, abs=0.05e3)
    assert made.capacity().now_n == made.way("shank").now_n


def test_even_the_best_ball_takes_a_lasting_bend_from_a_recovery_pull() -> None:
    """22 mm, 50 mm high, fy 900: 18.8 kN elastic, 31.9 kN plastic."""
    best = Piece("tow_ball", {"ball_diameter": "50 mm", "shank_diameter": "22 mm", "lever": "50 mm"}, {}).way(
        "shank_best"
    )
    assert best.set_n == pytest.approx(18.8e3, abs=0.05e3)
    assert best.now_n == pytest.approx(31.9e3, abs=0.06e3)
    assert best.beside


@pytest.mark.parametrize(("size", "tensile_kn"), [("12 mm", 33.7), ("14 mm", 46.2), ("16 mm", 62.7)])
def test_bolts_shear_at_0_6_of_their_tensile_load(size: str, tensile_kn: float) -> None:
    sizes = {"bolt_count": "4", "bolt_diameter": size}
    made = Piece("recovery_point", sizes, {"bolts_sound": "3"}).marked("80 kN")
    bolts = made.way("bolts")
    assert made.capacity().is_marking_lower == (bolts.now_n is not None and bolts.now_n > 80e3)
    assert bolts.sound_n == pytest.approx(4 * 0.6 * tensile_kn * 1e3, rel=2e-3)
    assert made.capacity().now_n == pytest.approx(60e3)


def test_an_odd_bolt_counts_as_the_next_thinner_one_and_a_class_as_the_next_weaker() -> None:
    sizes = {"bolt_count": "4", "bolt_diameter": "1/2 in"}
    inch = Piece("recovery_point", sizes, {"bolts_sound": "4"}).way("bolts")
    metric = Piece("recovery_point", sizes | {"bolt_diameter": "12 mm"}, {"bolts_sound": "4"}).way("bolts")
    assert inch.sound_n == metric.sound_n
    strong = Piece("recovery_point", sizes | {"bolt_class": "9.8"}, {"bolts_sound": "4"}).way("bolts")
    assert strong.sound_n == pytest.approx((inch.sound_n or 0.0) * 2)
    assert "class 8.8" in strong.because


def worn_shackle(body: str) -> Piece:
    sizes = {"bow_diameter": "20 mm", "pin_diameter": "22 mm"}
    return Piece("bow_shackle", sizes, {"bow_diameter": body, "pin_diameter": "22 mm"}).marked("100 kN", factor=5)


def test_a_tenth_of_the_diameter_is_a_fifth_of_the_section_and_over_a_quarter_in_bending() -> None:
    made = worn_shackle("18 mm")
    assert made.way("body_section").left_ratio == pytest.approx(0.81)
    assert made.way("body_bending").left_ratio == pytest.approx(0.729)
    assert made.way("body_section").now_n is None
    assert made.capacity().now_n == pytest.approx(500e3 * 0.729)
    assert "the section of the body 19 %" in made.lines()["Steel gone"]
    assert "−27.1 %" in made.lines()["Steel lost (the body in bending)"]


def test_what_a_calliper_cannot_tell_is_no_loss() -> None:
    assert worn_shackle("19.9 mm").capacity().now_n == pytest.approx(500e3)
    assert worn_shackle("19.89 mm").capacity().now_n == pytest.approx(500e3 * (19.89 / 20) ** 3)


def test_a_marking_loses_the_share_of_the_way_that_lost_most() -> None:
    made = receiver("3.2 mm", end_distance="25 mm", weld_throat="3 mm").marked("120 kN")
    found = made.capacity()
    shares = [one.left_ratio for one in found.counted if one.left_ratio is not None]
    assert found.now_n == pytest.approx(120e3 * min(shares))
    assert [step.cause for step in found.steps] == ["steel_loss.weld_straight"]
    assert found.as_new_n is None


def test_a_block_is_reckoned_in_newtons_only_where_it_is_steel() -> None:
    sizes = {"hole_diameter": "24 mm", "block_side": "50 mm", "end_distance": "20 mm"}
    made = Piece("receiver_insert", sizes, {"hole_diameter": "25.2 mm"}).marked("4.75 t", factor=4)
    assert made.capacity().governing is not None and made.way("block_net").now_n is None
    made.material = "steel"
    assert made.way("block_net").sound_n == pytest.approx(0.9 * 26e-3 * 50e-3 * 360e6)
    assert made.way("block_tears").left_ratio == pytest.approx((18.8 + 15.875 / 2) / (20 + 15.875 / 2))
    made.material = "aluminium with a steel bush"
    assert made.way("block_net").now_n is None


def test_what_nobody_measured_is_not_known_now() -> None:
    made = pin().marked("60 kN")
    made.readings = {}
    found = made.capacity()
    assert found.as_marked_n == pytest.approx(60e3)
    assert found.now_n is None
    assert "has not been measured" in made.lines()["Strength now"]


def test_a_remembered_rating_may_lower_and_never_raise() -> None:
    assert pin().marked("8 kN", "memory").capacity().now_n == pytest.approx(8e3)
    assert pin().marked("80 kN", "memory").capacity().now_n == pin().capacity().now_n
    worn = pin("15 mm").marked("8 kN", "memory").capacity()
    assert worn.now_n == pytest.approx(8e3 * (15 / 15.875) ** 3)


def test_a_tube_that_salt_reached_and_nobody_read_is_estimated_low() -> None:
    """0.3 mm a year since its first day in salt, to the first day of the next quarter."""
    made = receiver()
    del made.readings["wall@top"]
    made.salt, made.in_service_on = True, TODAY - timedelta(days=730)
    found = made.capacity()
    assert found.estimated and found.wall_on == date(2027, 1, 1)
    days = (date(2027, 1, 1) - made.in_service_on).days
    assert found.wall_m == pytest.approx(0.004 - 0.0003 * days / 365.25)
    assert "(estimated, no reading)" in made.lines()["Strength now"]
    made.provenance = Provenance.UNKNOWN
    assert made.capacity().now_n is None


def test_a_member_s_good_reading_makes_no_wall_thicker() -> None:
    made = receiver()
    del made.readings["wall@top"]
    made.salt, made.in_service_on = True, TODAY - timedelta(days=1500)
    estimated = made.capacity().wall_m
    member = replace(made.dossier().inspections[0])
    taken = Reading("wall", read("4 mm", Dimension.LENGTH, field="w"), "top", Method.CALLIPER, Surface.DRESSED)
    facts = replace(member.facts, competent=False, readings=(taken,), kind=InspectionKind.BEFORE_USE)
    both = replace(made.dossier(), inspections=(*made.dossier().inspections, replace(member, facts=facts)))
    assert judge(both, BOOK, "t").capacity.wall_m == pytest.approx(estimated)


def test_a_rough_face_is_allowed_for() -> None:
    made = receiver("4 mm").dossier()
    seen = made.inspections[0]
    rough = tuple(replace(one, surface=Surface.ROUGH) for one in seen.facts.readings)
    held = replace(made, inspections=(replace(seen, facts=replace(seen.facts, readings=rough)),))
    loss = 0.00008 * (date(2027, 1, 1) - TODAY).days / 365.25
    assert judge(held, BOOK, "t").capacity.wall_m == pytest.approx(0.004 - 0.0001 - 0.0022 - loss)


def test_a_strength_stands_until_the_quarter_turns() -> None:
    made = receiver("6 mm", "6 mm")
    made.salt = True
    first = judge(made.dossier(), BOOK, "t")
    assert first.holds_until == date(2027, 1, 1)
    made.on = date(2026, 12, 31)
    assert judge(made.dossier(), BOOK, "t").capacity == first.capacity
    made.on = date(2027, 1, 1)
    assert (judge(made.dossier(), BOOK, "t").capacity.now_n or 0.0) < (first.capacity.now_n or 0.0)


@pytest.mark.parametrize(
    ("on", "until"),
    [
        (date(2026, 1, 1), date(2026, 4, 1)),
        (date(2026, 9, 30), date(2026, 10, 1)),
        (date(2026, 12, 1), date(2027, 1, 1)),
    ],
)
def test_the_next_quarter_is_always_ahead(on: date, until: date) -> None:
    assert next_quarter(on) == until


MM = st.floats(0.05, 1.0)


def now_of(made: Piece) -> float:
    now_n = made.capacity().now_n
    assert now_n is not None
    return now_n


@given(st.floats(1.0, 5.9), MM, st.booleans(), st.booleans(), st.booleans())
def test_a_thinner_wall_is_never_stronger(wall: float, thinner: float, weld: bool, end: bool, rated: bool) -> None:
    sizes = ({"weld_throat": "3 mm", "chain_hole": "40 mm"} if weld else {}) | (
        {"end_distance": "20 mm"} if end else {}
    )
    pieces = [receiver(f"{read_mm:.3f} mm", "6 mm", **sizes) for read_mm in (wall, max(wall - thinner, 0.0))]
    for one in pieces:
        one.rating = one.marked("90 kN").rating if rated else one.rating
    thick, thin = (one.capacity() for one in pieces)
    assert (thin.now_n or 0.0) <= (thick.now_n or 0.0) * (1 + 1e-12)
    for less, more in zip(thin.strengths, thick.strengths, strict=True):
        assert (less.now_n or 0.0) <= (more.now_n or 0.0) * (1 + 1e-12)
        assert (less.set_n or 0.0) <= (more.set_n or 0.0) * (1 + 1e-12)


@given(st.floats(8.0, 17.0), MM, st.sampled_from(["", "8.8"]), st.sampled_from([None, "60 kN"]))
def test_a_thinner_pin_is_never_stronger(diameter: float, thinner: float, grade: str, marked: str | None) -> None:
    pieces = [pin(f"{one:.3f} mm", grade) for one in (diameter, diameter - thinner)]
    thick, thin = (now_of(one.marked(marked) if marked else one) for one in pieces)
    assert thin <= thick * (1 + 1e-12)


@given(st.floats(10.0, 25.0), MM)
def test_a_smaller_pin_as_new_is_never_stronger(diameter: float, smaller: float) -> None:
    made = [pin(f"{one:.3f} mm") for one in (diameter, diameter - smaller)]
    for one in made:
        one.sizes = {"pin_diameter": one.readings["pin_diameter"]}
    assert now_of(made[1]) <= now_of(made[0]) * (1 + 1e-12)


@given(st.integers(1, 90), st.integers(1, 90), st.floats(12.0, 15.875), st.sampled_from(["piece", "memory"]))
def test_a_lower_marking_is_never_stronger(one: int, other: int, diameter: float, stated_on: str) -> None:
    lower, higher = sorted((one, other))
    made = [pin(f"{diameter:.3f} mm").marked(f"{force} kN", stated_on) for force in (lower, higher)]
    assert now_of(made[0]) <= now_of(made[1]) * (1 + 1e-12)


@given(st.floats(0.5, 6.0), st.booleans())
def test_the_least_strength_governs_and_is_the_strength_now(wall: float, weld: bool) -> None:
    found = receiver(f"{wall:.3f} mm", "6 mm", **({"weld_throat": "3 mm"} if weld else {})).capacity()
    least = min(one.now_n for one in found.counted if one.now_n is not None)
    assert found.governing is not None and found.governing.now_n == least
    assert found.now_n == pytest.approx(least, abs=1e-9)
    assert found.as_new_n == min(one.sound_n for one in found.counted if one.sound_n is not None)
    assert all((one.now_n or 0.0) <= (one.sound_n or 0.0) for one in found.strengths)


@given(
    st.sampled_from(
        [
            "hitch_receiver",
            "ball_mount",
            "tow_bar",
            "hitch_pin",
            "tow_ball",
            "receiver_insert",
            "recovery_point",
            "bow_shackle",
        ]
    ),
    st.data(),
)
def test_sizes_that_do_not_belong_together_are_told_and_never_a_crash(kind: str, data: st.DataObject) -> None:
    sizes = {}
    for size in BOOK.kind(kind).sizes:
        if size.dimension is Dimension.LENGTH and data.draw(st.booleans()):
            sizes[size.key] = f"{data.draw(st.floats(0.2, 90)):.2f} mm"
    made = Piece(kind, sizes, {m.key: "12 mm" for m in BOOK.kind(kind).measures if m.dimension is Dimension.LENGTH})
    found = made.capacity()
    assert found.strengths or found.left_out
    assert all((one.sound_n or 1.0) > 0 for one in found.strengths)


def test_a_strength_kept_before_steel_was_reckoned_still_reads() -> None:
    body = '{"as_marked_n":80000.0,"now_n":72000.0,"steps":[{"cause":"ageing_loss","loss_ratio":0.1,"after_n":72000.0,'
    body += '"source":"club_ageing"}],"why_unknown":"","design_factor":null}'
    kept = msgspec.json.decode(body, type=Capacity)
    lines = {line.label: line.text for line in strength_lines(kept, System.METRIC)}
    assert lines == {
        "Strength as marked": "80 kN",
        "Strength lost to age and sun": "−10 %, leaves 72 kN",
        "Strength now": "72 kN",
    }


def test_textiles_have_no_steel_lines(rules: Rulebook) -> None:
    strap = sound(rules.kind("kinetic_strap"))
    found = judge(strap, rules, "t").capacity
    assert found == Capacity(found.as_marked_n, found.as_marked_n, design_factor=found.design_factor)
    facts = explain(strap, judge(strap, rules, "t"), rules, System.METRIC).sums
    assert not [one for one in facts if "teel" in one.label or "way" in one.label]


def wall_points(typed: str, *points: str) -> dict[str, str]:
    return {f"wall@{point}": typed for point in points}


def test_one_point_read_leaves_the_others_estimated() -> None:
    """0.3 mm a year in salt at the points nobody read, whatever stands at the one that was."""
    made = receiver()
    made.salt, made.in_service_on = True, TODAY - timedelta(days=730)
    unread = receiver()
    del unread.readings["wall@top"]
    unread.salt, unread.in_service_on = True, made.in_service_on
    found = made.capacity()
    assert found.estimated
    assert found.wall_m == pytest.approx(unread.capacity().wall_m)
    assert found.now_n == pytest.approx(unread.capacity().now_n)


def test_a_point_read_today_does_not_refresh_one_read_long_ago() -> None:
    made = receiver("4.0 mm", "4 mm")
    made.readings |= wall_points("4.0 mm", "bottom", "left", "right", "at pin hole")
    made.salt, made.in_service_on = True, TODAY - timedelta(days=2000)
    today = made.dossier().inspections[0]
    first = replace(today, id="0", facts=replace(today.facts, on=TODAY - timedelta(days=1900)))
    top = tuple(one for one in today.facts.readings if one.measure != "wall" or one.point == "top")
    both = (first, replace(today, facts=replace(today.facts, readings=top)))
    found = judge(replace(made.dossier(), inspections=both), BOOK, "t").capacity
    days = (date(2027, 1, 1) - first.facts.on).days
    assert not found.estimated
    assert found.wall_m == pytest.approx(0.004 - 0.0001 - 0.00015 * days / 365.25)


@pytest.mark.parametrize("salt", [True, False])
def test_the_strength_is_reckoned_with_no_more_wall_than_the_wall_rules_tell(salt: bool) -> None:
    for points in ((), ("top",), ("top", "bottom"), ("top", "bottom", "left", "right", "at pin hole")):
        made = receiver()
        del made.readings["wall@top"]
        made.readings |= wall_points("3.9 mm", *points)
        made.salt, made.in_service_on = salt, TODAY - timedelta(days=900)
        verdict = judge(made.dossier(), BOOK, "t")
        told = next(one for one in verdict.findings if one.rule == "wall-estimate-towing")
        assert told.value is not None and told.value.number is not None
        assert (verdict.capacity.wall_m or 0.0) < told.value.number


def test_a_textile_of_unknown_age_has_no_known_strength() -> None:
    """What the years took is unknown, so the marking tells nothing of what is left."""
    strap = sound(BOOK.kind("kinetic_strap"))
    aged = judge(strap, BOOK, "t").capacity
    assert aged.now_n is not None and aged.now_n <= (aged.as_marked_n or 0.0)
    nobody_knows = with_facts(strap, provenance=Provenance.SECOND_HAND, made_on=None, in_service_on=None)
    verdict = judge(nobody_knows, BOOK, "t")
    assert verdict.outcome is Outcome.HOLD
    assert verdict.capacity.as_marked_n == aged.as_marked_n
    assert verdict.capacity.now_n is None
    assert verdict.capacity.why_unknown == "Nobody knows when it was made or first used."
    told = {fact.label: fact.text for fact in explain(nobody_knows, verdict, BOOK, System.METRIC).sums}
    assert told["Strength now"] == "not known: Nobody knows when it was made or first used."


def test_a_textile_nobody_looked_at_has_no_known_strength() -> None:
    strap = replace(sound(BOOK.kind("kinetic_strap")), inspections=())
    found = judge(strap, BOOK, "t").capacity
    assert found.now_n is None
    assert found.why_unknown == "No competent person has looked at it yet."
