"""The proposed rig is the best there is: compared with every rig of small kits, each checked."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.fitting import End
from inspector.gear.item import Rating
from inspector.gear.kind import Basis
from inspector.gear.rig import Conditions, Footing, Method, Rig, RigPiece
from inspector.gear.rig_result import Proposed, RigOutcome
from inspector.rulebook.rigs.advice import check_rig
from inspector.rulebook.rigs.check import checked
from inspector.rulebook.rigs.limits import Asked
from inspector.rulebook.rigs.pairs import pairs
from inspector.rulebook.rigs.propose import propose, rank
from inspector.units import Dimension, System, show
from tests.each import each
from tests.rulebook.rig_kits import BOOK, every_rig, facts_of, figure, piece, sized, strap, vehicle
from tests.rulebook.sound import sound, with_facts, with_grade

EMPTY = Rig("", Method.KINETIC, "B", "A", ())
STRENGTHS = ("60 kN", "78 kN", "98 kN", "130 kN", "200 kN")
SAND = Conditions(bogged_in=Footing.SOFT_DRY_SAND, pulling_on=Footing.SOFT_DRY_SAND)


def holed(tag: str, strength: str, on: str, hole: str) -> RigPiece:
    """A point with a hole of this width."""
    made = sized(sized(sound(BOOK.kind("recovery_point")), "hole_diameter", hole), "eye_hole", hole)
    return piece(tag, "recovery_point", strength, on, dossier=made)


def pinned(tag: str, strength: str, pin: str) -> RigPiece:
    """A bow shackle with a pin of this width."""
    return piece(tag, "bow_shackle", strength, dossier=sized(sound(BOOK.kind("bow_shackle")), "pin_diameter", pin))


@st.composite
def kits(draw: st.DrawFn) -> list[RigPiece]:
    """Few pieces of many kinds, so that every rig of them can be checked."""
    strong = st.sampled_from(STRENGTHS)
    hole, pin = st.sampled_from(("24 mm", "28 mm")), st.sampled_from(("22 mm", "26 mm"))
    found = [holed(f"PA{n}", draw(strong), "A", draw(hole)) for n in range(draw(st.integers(0, 2)))]
    found += [holed(f"PB{n}", draw(strong), "B", draw(hole)) for n in range(draw(st.integers(0, 2)))]
    found += [
        strap(f"KS{n}", draw(st.sampled_from(("62 kN", "80 kN", "110 kN")))) for n in range(draw(st.integers(1, 2)))
    ]
    found += [pinned(f"SH{n}", draw(strong), draw(pin)) for n in range(draw(st.integers(1, 3)))]
    found += [piece(f"SS{n}", "soft_shackle", draw(strong)) for n in range(draw(st.integers(0, 2)))]
    if draw(st.booleans()):
        found.append(piece("BR", "bridle_strap", draw(strong)))
    if draw(st.booleans()):
        on = draw(st.sampled_from("AB"))
        found.append(piece("HR", "hitch_receiver", "70 kN", on, End.REAR))
        found += [piece("TB", "tow_bar", draw(strong), on, End.REAR)] if draw(st.integers(0, 4)) else []
        found += [piece(f"HP{n}", "hitch_pin", draw(strong)) for n in range(draw(st.integers(0, 2)))]
        found += [piece("RI", "receiver_insert", draw(strong))]
    return found


@settings(max_examples=25, deadline=None)
@given(kits(), st.sampled_from(("1,240 kg", "2,400 kg")), st.sampled_from((None, "4 km/h", "9 km/h")))
def test_no_other_rig_of_the_kit_is_better(kit: list[RigPiece], mass: str, speed: str | None) -> None:
    said = replace(SAND, speed=figure(speed, Dimension.SPEED) if speed else None)
    gvm = "1,550 kg" if mass == "1,240 kg" else "2,900 kg"
    facts = facts_of(kit, [vehicle("A", mass, gvm), vehicle("B")], EMPTY)
    best = propose(Asked(Method.KINETIC, "A", "B", said), facts, BOOK, "test", System.METRIC).result
    others = [
        rank(checked(replace(facts, rig=rig), BOOK, "test", System.METRIC).result)
        for rig in every_rig(facts, Method.KINETIC, said)
    ]
    fit = [one for one in others if not one[0] and not one[1]]
    if best is None:
        assert not fit
        return
    assert rank(best)[:2] == min(others)[:2] == (False, False)
    assert rank(best)[2] == pytest.approx(min(others)[2])
    like = [one[3] for one in others if one[:2] == (False, False) and one[2] == pytest.approx(rank(best)[2])]
    assert rank(best)[3] == min(like)


def sound_kit() -> list[RigPiece]:
    """A point on each vehicle, a strap, two shackles and a soft one, a damper."""
    return [
        *(piece("PA", "recovery_point", "98 kN", "A"), piece("PB", "recovery_point", "98 kN", "B")),
        *(strap("KS", "78 kN"), piece("SH1", "bow_shackle", "230 kN"), piece("SH2", "bow_shackle", "200 kN")),
        *(piece("SS", "soft_shackle", "127 kN"), piece("DM", "damper", "")),
    ]


def proposed(kit: list[RigPiece], method: Method = Method.KINETIC, conditions: Conditions = SAND) -> Proposed:
    facts = facts_of(kit, [vehicle("A"), vehicle("B")], EMPTY)
    return propose(Asked(method, "A", "B", conditions), facts, BOOK, "test", System.METRIC)


def test_steel_goes_where_an_edge_would_cut_fibre() -> None:
    found = proposed(sound_kit()).result
    assert found is not None
    assert set(found.rig.runs[0]) == {"PB", "SH1", "KS", "SH2", "PA"}
    assert found.rig.dampers == ("DM",)


def test_every_piece_left_out_says_why() -> None:
    worn = with_grade(sound(BOOK.kind("kinetic_strap")), "edge_cuts", "bad")
    kit = [*sound_kit(), piece("KS-cut", "kinetic_strap", "78 kN", dossier=worn), strap("KS-thin", "30 kN")]
    kit += [piece("SB", "snatch_block", "200 kN"), piece("PX", "recovery_point", "98 kN", "X")]
    found = proposed(kit)
    assert found.result is not None
    left = {one.tag: one.why for one in found.left_out}
    used = {one.tag for one in found.result.links} | set(found.result.rig.dampers)
    assert set(left) | used == {one.tag for one in kit}
    assert not set(left) & used
    assert all(left.values())
    assert "retired" in left["KS-cut"]
    assert "too weak" in left["KS-thin"]
    assert "neither" in left["PX"]


@pytest.mark.parametrize(
    ("without", "names"),
    [("KS", "strap"), ("PB", "on B"), ("PA", "on A"), (("SH1", "SH2", "SS"), "shackles")],
)
def test_what_the_kit_lacks_is_named(without: str | tuple[str, ...], names: str) -> None:
    gone = {without} if isinstance(without, str) else set(without)
    found = proposed([one for one in sound_kit() if one.tag not in gone])
    assert found.result is None
    assert any(names in one for one in found.missing)


def test_an_insert_in_a_receiver_serves_where_there_is_no_point() -> None:
    kit = [one for one in sound_kit() if one.tag != "PA"]
    kit += [piece("HR", "hitch_receiver", "70 kN", "A", End.REAR), piece("HP", "hitch_pin", "130 kN")]
    kit += [piece("TB", "tow_bar", "130 kN", "A", End.REAR)]
    found = proposed([*kit, piece("RI", "receiver_insert", "130 kN")]).result
    assert found is not None
    assert found.rig.runs[0][-4:] == ("RI", "HP", "HR", "TB")
    joint = next(one for one in found.joints if one.how == "pin_in_receiver")
    assert joint.planes == 2
    assert joint.figure("per_plane_n") == pytest.approx(found.load.pull_n / 2)


def winch_kit(rated: str = "30 kN") -> list[RigPiece]:
    line = strap("FL", "150 kN", "28 m", "fibre_winch_line")
    return [
        *(piece("WI", "winch", rated, "A"), line, piece("PB", "recovery_point", "400 kN", "B")),
        *(piece("SH1", "bow_shackle", "400 kN"), piece("SH2", "bow_shackle", "300 kN")),
        *(piece("BL", "snatch_block", "400 kN"), piece("PA", "recovery_point", "200 kN", "A")),
    ]


def test_a_winch_pulls_straight_where_that_moves_the_vehicle() -> None:
    found = proposed(winch_kit(), Method.WINCH, SAND).result
    assert found is not None
    assert len(found.rig.runs) == 1
    assert found.load.moves


def test_the_line_is_doubled_where_one_part_moves_nothing() -> None:
    deep = replace(SAND, bogged_in=Footing.WHEEL_DEEP_MUD, layers=1)
    found = proposed(winch_kit("20 kN"), Method.WINCH, deep).result
    assert found is not None
    assert [run[0] for run in found.rig.runs] == ["WI", "FL"]
    assert found.load.moves
    assert found.link("BL").force_n == pytest.approx(2 * found.load.pull_n)  # type: ignore[union-attr]


def test_a_doubled_line_that_breaks_something_is_not_offered_before_one_that_only_does_not_move_it() -> None:
    """Doubled, the point on the bogged vehicle bears twice the stall pull and gives way."""
    deep = replace(SAND, bogged_in=Footing.WHEEL_DEEP_MUD, layers=1)
    weak = [one for one in winch_kit("20 kN") if one.tag != "PB"] + [piece("PB", "recovery_point", "60 kN", "B")]
    found = proposed(weak, Method.WINCH, deep).result
    assert found is not None
    assert len(found.rig.runs) == 1 and found.outcome is RigOutcome.CAUTION and not found.load.moves


def test_a_slower_run_is_advised_and_tried() -> None:
    fast = replace(SAND, speed=figure("14 km/h", Dimension.SPEED))
    found = proposed(sound_kit(), conditions=fast).result
    assert found is not None
    assert found.outcome is RigOutcome.UNSOUND
    slower = next(one for one in found.changes if one.key == "slower")
    assert slower.rig is not None
    facts = facts_of(sound_kit(), [vehicle("A"), vehicle("B")], slower.rig)
    again = checked(facts, BOOK, "test", System.METRIC).result
    assert again.outcome is slower.outcome is not RigOutcome.UNSOUND
    assert again.least_margin is not None
    assert again.least_margin >= 1


def test_a_soft_shackle_is_lighter_and_lowers_nothing_else() -> None:
    middle = (("PB", "SH1", "BR", "SH2", "KS", "SH3", "PA"),)
    kit = [*sound_kit(), piece("BR", "bridle_strap", "120 kN"), piece("SH3", "bow_shackle", "220 kN")]
    rig = Rig("", Method.KINETIC, "B", "A", middle, SAND, dampers=("DM",))
    facts = facts_of(kit, [vehicle("A"), vehicle("B")], rig)
    before = check_rig(facts, BOOK, "test", System.METRIC)
    soft = next(one for one in before.changes if one.key == "soft")
    assert soft.rig is not None
    after = checked(replace(facts, rig=soft.rig), BOOK, "test", System.METRIC).result
    assert soft.outcome is before.outcome
    assert after.outcome.severity >= before.outcome.severity
    assert after.stand_off_m == before.stand_off_m
    assert after.load.energy_j == before.load.energy_j
    flew = next(one for one in before.flying if one.link == "SH2")
    flies = next(one for one in after.flying if one.link == "SS")
    assert flies.mass_kg < flew.mass_kg


def test_each_pair_of_a_trip_gets_its_line() -> None:
    kit = [*sound_kit(), piece("PC", "recovery_point", "20 kN", "C")]
    rig = replace(EMPTY, conditions=SAND, dampers=("DM",))
    facts = facts_of(kit, [vehicle("A"), vehicle("B"), vehicle("C")], rig)
    told: list[tuple[int, int]] = []
    found = pairs(facts, ("A", "B", "C"), BOOK, "test", System.METRIC, lambda done, of: told.append((done, of)))
    assert {(one.pulling, one.bogged) for one in found} == {
        ("A", "B"),
        ("B", "A"),
        ("A", "C"),
        ("C", "A"),
        ("B", "C"),
        ("C", "B"),
    }
    assert told[-1] == (6, 6)
    good = next(one for one in found if (one.pulling, one.bogged) == ("A", "B"))
    assert good.outcome is RigOutcome.SOUND
    weak = next(one for one in found if (one.pulling, one.bogged) == ("A", "C"))
    assert weak.outcome is RigOutcome.UNSOUND


def test_a_pair_that_is_sound_only_slowly_says_up_to_which_speed() -> None:
    kit = [one if one.tag != "PB" else piece("PB", "recovery_point", "66 kN", "B") for one in sound_kit()]
    facts = facts_of(kit, [vehicle("A"), vehicle("B")], replace(EMPTY, conditions=SAND, dampers=("DM",)))
    line = next(one for one in pairs(facts, ("A", "B"), BOOK, "test", System.METRIC) if one.bogged == "B")
    assert line.up_to_m_per_s is not None
    assert line.outcome is RigOutcome.SOUND
    at = replace(SAND, speed=figure(f"{line.up_to_m_per_s * 3.6 + 0.2:.2f} km/h", Dimension.SPEED))
    faster = Rig("", Method.KINETIC, "B", "A", line.runs, at, dampers=("DM",))
    assert checked(replace(facts, rig=faster), BOOK, "test", System.METRIC).result.outcome is RigOutcome.UNSOUND


# --- what cannot serve is left out, with its reason, and stops no search ---


BAR = piece("TB", "tow_bar", "130 kN", "A", End.REAR)


def through_receiver(*more: RigPiece) -> list[RigPiece]:
    """A point just weaker than the receiver beside it, with pin and insert for that; both are sound with a bar."""
    return [
        *(piece("PA", "recovery_point", "62 kN", "A", End.REAR), piece("PB", "recovery_point", "98 kN", "B")),
        *(piece("HR", "hitch_receiver", "7 t", "A", End.REAR), piece("HP", "hitch_pin", "9 t")),
        *(piece("RI", "receiver_insert", "200 kN"), piece("SH1", "bow_shackle", "230 kN")),
        *(piece("SH2", "bow_shackle", "200 kN"), strap("KS", "78 kN"), piece("DM", "damper", ""), *more),
    ]


def why_left(found: Proposed, tag: str) -> str:
    return next(one.why for one in found.left_out if one.tag == tag)


@pytest.mark.parametrize("ends", [(End.REAR,), (End.UNKNOWN,), (End.REAR, End.REAR)])
def test_a_receiver_whose_bar_cannot_serve_gives_way_to_a_point_that_can(ends: tuple[End, ...]) -> None:
    unrated = with_facts(sound(BOOK.kind("tow_bar")), rating=Rating(Basis.UNRATED, None, None, "none"))
    bars = [piece(f"TB{at}", "tow_bar", "", "A", end, unrated) for at, end in enumerate(ends)]
    slow = replace(SAND, speed=figure("4 km/h", Dimension.SPEED))
    with_bar = proposed(through_receiver(BAR), conditions=slow).result
    assert with_bar is not None and "HR" in with_bar.rig.tags
    found = proposed(through_receiver(*bars), conditions=slow)
    assert found.result is not None and found.result.outcome is RigOutcome.SOUND
    assert "PA" in found.result.rig.tags
    assert "TB0" in why_left(found, "HR")


def test_a_receiver_whose_bar_nobody_knows_gives_way_to_a_point_and_says_so() -> None:
    found = proposed(through_receiver(), conditions=replace(SAND, speed=figure("4 km/h", Dimension.SPEED)))
    assert found.result is not None and "PA" in found.result.rig.tags
    assert why_left(found, "HR") == "Nobody wrote down which tow bar carries it."


def test_what_sits_on_a_third_vehicle_is_left_there() -> None:
    """Pin, insert and shackle are not loose where the register has them on another vehicle."""
    elsewhere = [
        piece(tag, kind, strength, "C")
        for tag, kind, strength in (("SH9", "bow_shackle", "400 kN"), ("HP9", "hitch_pin", "9 t"))
    ]
    found = proposed([*sound_kit(), *elsewhere])
    assert found.result is not None and not {"SH9", "HP9"} & set(found.result.rig.tags)
    assert why_left(found, "SH9") == why_left(found, "HP9") == "It sits on neither of the two vehicles."


@pytest.mark.parametrize("kind", ["fibre_winch_line", "wire_winch_rope"])
def test_a_line_whose_length_nobody_wrote_down_stops_no_search(kind: str) -> None:
    bare = sound(BOOK.kind(kind))
    bare = with_facts(bare, sizes=tuple(one for one in bare.item.facts.sizes if one.key != "length"))
    winch = piece("WN", "winch", "20 kN", "A")
    unmeasured = piece("FX", kind, "400 kN", dossier=bare)
    kit = [*sound_kit(), winch, unmeasured]
    assert proposed(kit, Method.WINCH).result is None
    assert why_left(proposed(kit, Method.WINCH), "FX") == "Its length was not written down."
    better = proposed([*kit, strap("FL", "100 kN", "25 m", "fibre_winch_line")], Method.WINCH).result
    assert better is not None and "FL" in better.rig.tags


def test_a_shackle_that_does_not_go_through_the_point_gives_way_to_one_that_does() -> None:
    """The strongest shackle has too thick a pin for either point; the rig is sound with the weaker two."""
    kit = [one for one in sound_kit() if one.kind != "soft_shackle"]
    found = proposed([*kit, pinned("SH9", "400 kN", "28 mm")]).result
    assert found is not None and "SH9" not in found.rig.tags and found.outcome is RigOutcome.SOUND
    assert why_left(proposed([*kit, pinned("SH9", "400 kN", "28 mm")]), "SH9").startswith("Its pin does not go through")


def test_a_pin_or_a_hole_that_nobody_measured_lets_no_rig_pass_without_a_word() -> None:
    """What was not written down somebody must try before the pull: never sound, and the rig says which two."""
    whole = sound(BOOK.kind("recovery_point"))
    bare = with_facts(whole, sizes=tuple(one for one in whole.item.facts.sizes if "hole" not in one.key))
    kit = [one for one in sound_kit() if one.tag != "PB"]
    found = proposed([*kit, piece("PB", "recovery_point", "98 kN", "B", dossier=bare)]).result
    assert found is not None and found.outcome is RigOutcome.CAUTION
    said = [one for one in found.findings if one.key == "fit.unknown"]
    assert [one.about[1] for one in said] == ["PB"] and "was not written down" in said[0].says


def test_a_kit_whose_shackles_all_are_too_thick_for_a_vehicle_says_so() -> None:
    kit = [one for one in sound_kit() if one.kind not in {"soft_shackle", "bow_shackle"}]
    found = proposed([*kit, pinned("SH8", "300 kN", "28 mm"), pinned("SH9", "400 kN", "28 mm")])
    assert found.result is None
    assert "a fit shackle whose pin goes through a point or an insert on B" in found.missing


def test_a_weaker_point_serves_where_no_pin_goes_through_the_stronger_one() -> None:
    kit = [one for one in sound_kit() if one.kind not in {"soft_shackle", "recovery_point"}]
    points = [
        holed("PA", "98 kN", "A", "24 mm"),
        holed("PB", "98 kN", "B", "20 mm"),
        holed("PB2", "90 kN", "B", "24 mm"),
    ]
    found = proposed([*kit, *points]).result
    assert found is not None and "PB2" in found.rig.tags and found.outcome is RigOutcome.SOUND


def test_an_insert_goes_only_with_a_tube_that_it_fills() -> None:
    """43 mm fill the 44 mm opening; 38 mm lie loose in it, 50 mm do not go in."""
    block = sound(BOOK.kind("receiver_insert"))
    for typed, serves in (("43 mm", True), ("38 mm", False), ("50 mm", False)):
        other = piece("RI", "receiver_insert", "200 kN", dossier=sized(block, "block_side", typed))
        slow = replace(SAND, speed=figure("4 km/h", Dimension.SPEED))
        found = proposed([other if one.tag == "RI" else one for one in through_receiver(BAR)], conditions=slow).result
        assert found is not None and ("RI" in found.rig.tags) is serves, typed


@each("system", System)
@each("strength", [f"{kn} kN" for kn in range(84, 98)])
def test_a_speed_that_is_told_is_never_above_the_one_that_was_checked(system: System, strength: str) -> None:
    """4.96 mph, printed as "5.0 mph", would send a driver off faster than the rig was checked for."""
    kit = [replace(one) for one in sound_kit() if one.tag != "PB"] + [piece("PB", "recovery_point", strength, "B")]
    facts = facts_of(kit, [vehicle("A"), vehicle("B")], EMPTY)
    asked = replace(SAND, speed=figure("20 km/h", Dimension.SPEED))
    found = propose(Asked(Method.KINETIC, "A", "B", asked), facts, BOOK, "test", system).result
    assert found is not None and found.sensitivity.greatest_speed_m_per_s is not None
    said = next(one.says for one in found.changes if one.key == "slower")
    told = figure(said.removeprefix("Go no faster than ").removesuffix(" as the strap comes taut."), Dimension.SPEED)
    assert found.sensitivity.greatest_speed_m_per_s * 0.95 < told.si <= found.sensitivity.greatest_speed_m_per_s
    line = pairs(replace(facts, rig=replace(EMPTY, conditions=asked)), ("A", "B"), BOOK, "test", system)[0]
    assert line.up_to_m_per_s is not None
    shown = figure(show(line.up_to_m_per_s, Dimension.SPEED, system), Dimension.SPEED)
    assert shown.si <= found.sensitivity.greatest_speed_m_per_s
