"""Rigs worked by hand: every part on one basis, what is taken off, what decides. Sums shown.

The gentle snatch of test_worked_loads bears P = 38,928.5 N. An 8,000 kg strap stands 78,453.2 N, wet 0.85 of it,
66,685.2 N; a 4.75 t WLL shackle at 5:1 stands 23.75 t = 232,907.9 N; a point of 20 t 196,133 N.
"""

import pytest
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.fitting import End
from inspector.gear.outcome import Purpose
from inspector.gear.rig import Conditions, Footing, Method, NamedJoint, Rig, RigPiece
from inspector.gear.rig_result import RigOutcome, RigResult
from inspector.gear.use import Event
from tests.rulebook.rigs.made import (
    BOGGED,
    DAMPER,
    POINTS,
    PULLING,
    SHACKLES,
    TONNE_FORCE,
    TREE,
    G,
    around,
    check,
    facts,
    findings,
    line,
    link,
    piece,
    point,
    shackle,
    share,
    single_line,
    snatch,
    speed,
    strap,
    vehicle,
    weakened,
    winch,
)
from tests.rulebook.rigs.test_worked_loads import BEACH, GENTLE, WAGONS
from tests.rulebook.sound import with_facts, with_grade, with_use

P_N = 38928.5


def beach(*instead: RigPiece, conditions: Conditions = GENTLE, run: tuple[str, ...] = ()) -> RigResult:
    """The gentle snatch with other pieces."""
    more = {"run": run} if run else {}
    return check(snatch(conditions, instead=instead, vehicles=WAGONS, **more))  # type: ignore[arg-type]


# --- one basis ---


def test_a_shackles_working_load_is_never_set_against_a_straps_breaking_strength() -> None:
    """3.25 t WLL at 5:1 fails at 16.25 t = 159,358 N, twice the 8 t strap. Read as 3.25 t it would be weakest."""
    result = beach(shackle("S-B", "3.25 t"))
    assert link(result, "S-B").capacity_n == pytest.approx(16.25 * TONNE_FORCE)
    assert result.weakest == "K"
    assert (link(result, "S-B").capacity_n or 0) > 2 * (link(result, "K").capacity_n or 0)


def test_the_weakest_part_sets_the_safety_factor() -> None:
    """Strap, wet: 66,685.2 / 38,928.5 = 1.7130. It must keep 1.25: margin 1.3704. Shackles 232,907.9 / (1.5 P) = 3.989,
    points 196,133 / (1.5 P) = 3.359."""
    result = check(BEACH)
    assert result.weakest == "K"
    assert result.safety_factor == pytest.approx(1.7130, abs=5e-5)
    assert result.least_margin == pytest.approx(1.3704, abs=5e-5)
    shares = {tag: 1 / (link(result, tag).use_ratio or 0) for tag in ("S-B", "P-P")}
    assert shares == pytest.approx({"S-B": 3.989, "P-P": 3.359}, abs=5e-4)
    assert result.outcome is RigOutcome.CAUTION, "nobody said what it stands in"
    assert {one.key for one in result.findings if one.outcome is not RigOutcome.SOUND} == {"moves"}


@pytest.mark.parametrize(("kg", "outcome"), [("5,955 kg", "sound"), ("5,954 kg", "unsound")])
def test_a_point_must_keep_one_and_a_half_times_a_kinetic_pull(kg: str, outcome: str) -> None:
    """1.5 x 38,928.49 = 58,392.74 N = 5,954.4 kg."""
    assert link(beach(point("P-B", BOGGED, rated=kg)), "P-B").outcome.value == outcome


def test_the_speed_at_which_the_first_part_has_used_up_what_it_may_bear() -> None:
    """The wet strap may bear 66,685.22 / 1.25 = 53,348.2 N. v = sqrt(2 (E - T x) / m): p = 1 x = 0.7344 m, 3.148 m/s;
    p = 1.5 2.776 m/s; p = 2 x = 1.08 sqrt(0.68) = 0.890591 m, E = 15,837.1 J, T x = 8,733.7 J: 2.38385 m/s."""
    sensitivity = check(BEACH).sensitivity
    assert sensitivity.greatest_speed_m_per_s == pytest.approx(2.38385, abs=1e-5)
    assert sensitivity.limits_at == "K"


def test_at_that_speed_the_strap_is_used_up_and_a_little_faster_is_unsound() -> None:
    for kmh, outcome in (("8.5818 km/h", "sound"), ("8.5820 km/h", "unsound")):
        assert link(beach(conditions=_at(kmh)), "K").outcome.value == outcome


def _at(kmh: str) -> Conditions:
    return Conditions(speed=speed(kmh), drive=share("40 %"))


# --- what is taken off a strength, and never off a load ---


def test_wet_nylon_loses_strength_and_the_pull_stays() -> None:
    """0.85 x 78,453.2 = 66,685.2 N; nobody said: as wet."""
    dry, wet, unsaid = (
        beach(conditions=Conditions(speed=speed("5 km/h"), drive=share("40 %"), wet=said))
        for said in (False, True, None)
    )
    assert link(dry, "K").capacity_n == pytest.approx(78453.2)
    assert link(wet, "K").capacity_n == pytest.approx(66685.22)
    assert link(unsaid, "K").capacity_n == link(wet, "K").capacity_n
    assert dry.load.pull_n == wet.load.pull_n == unsaid.load.pull_n


def _rubbed(dossier: Dossier) -> Dossier:
    return with_grade(dossier, "abrasion", "slight")


def test_a_derated_strap_is_weaker_and_no_softer() -> None:
    """Slight rubbing takes a tenth: 70,607.9 N dry, 60,016.7 N wet; its stiffness, so the pull, is the marking's."""
    rubbed = piece("K", "kinetic_strap", "8,000 kg", long="9 m", change=_rubbed)
    result = beach(rubbed)
    assert link(result, "K").capacity_n == pytest.approx(0.9 * 0.85 * 78453.2)
    assert result.load.pull_n == pytest.approx(P_N, abs=0.1)
    assert result.safety_factor == pytest.approx(0.9 * 1.7130, abs=5e-5)


def test_a_choked_tree_strap_bears_it_all_and_keeps_four_fifths() -> None:
    """5 t stall on 12 t: choked 9.6 t, below 2 x 5 t; round the trunk each of two legs bears 5 t at 120 degrees and
    keeps twice that of its 12 t."""
    for how, outcome in (("choked_tree", "unsound"), ("round_tree", "sound")):
        rig = Rig(
            "tree",
            Method.WINCH,
            BOGGED,
            "",
            (("W", "L", "S-R", "T", TREE),),
            joints=(NamedJoint("T", TREE, how),),
            dampers=("D",),
        )
        pieces = (winch(on=BOGGED), line(), around(rated="12 t"), shackle("S-R"), DAMPER)
        result = check(facts(rig, pieces))
        assert link(result, "T").force_n / TONNE_FORCE == pytest.approx(5)
        assert link(result, "T").outcome.value == outcome


# --- parts that may not serve ---


def _held(dossier: Dossier) -> Dossier:
    return with_grade(dossier, "stitching", "bad")


def test_a_piece_that_may_not_be_used_makes_the_rig_unsound() -> None:
    bad = piece("K", "kinetic_strap", "8,000 kg", long="9 m", change=_held)
    assert bad.judged.verdict.outcome.value in {"hold", "retire"}
    assert beach(bad).outcome is RigOutcome.UNSOUND
    assert link(beach(bad), "K").outcome is RigOutcome.UNSOUND


def _kept_for_static(dossier: Dossier) -> Dossier:
    return with_facts(dossier, kept_for=(Purpose.STATIC,))


@pytest.mark.parametrize(
    "wrong",
    [
        piece("K", "static_strap", "8,000 kg", long="9 m"),  # barred from a snatch
        piece("S-B", "bow_shackle", "20 t", change=_kept_for_static),  # kept for other work
    ],
    ids=["barred", "kept for other work"],
)
def test_a_piece_for_another_purpose_makes_the_rig_unsound(wrong: RigPiece) -> None:
    assert link(beach(wrong), wrong.tag).outcome is RigOutcome.UNSOUND


def test_a_kinetic_strap_has_no_place_in_a_winch_line() -> None:
    runs = (("W", "L", "S-M", "K", "S-B", "P-B"),)
    rig = Rig("longer", Method.WINCH, BOGGED, PULLING, runs, dampers=("D",))
    result = check(facts(rig, (winch(), line(), strap(), shackle("S-M"), *SHACKLES, *POINTS, DAMPER)))
    assert link(result, "K").outcome is RigOutcome.UNSOUND


def test_an_unknown_strength_is_never_sound_and_never_skipped() -> None:
    """A shackle with a working load and no factor: nobody knows at what it fails."""
    nameless = weakened(shackle("S-B"), None)
    result = beach(nameless)
    assert link(result, "S-B").outcome is RigOutcome.UNSOUND
    assert result.weakest == "S-B" and result.safety_factor is None and result.least_margin is None
    assert result.sensitivity.greatest_speed_m_per_s is None


def test_a_strap_nobody_rated_is_taken_as_the_stiffest_of_the_band_and_stays_unsound() -> None:
    """3 x 3,000 kg = 9,000 kg of strength for the stiffness: more pull than the 8,000 kg strap, P."""
    result = beach(piece("K", "kinetic_strap", "8,000 kg", long="9 m", stated="memory"))
    nine = beach(strap(rated="9,000 kg"))
    assert result.load.pull_n == pytest.approx(nine.load.pull_n) and result.load.pull_n > P_N
    assert result.outcome is RigOutcome.UNSOUND


def test_an_overloaded_shackle_awaits_its_inspection() -> None:
    def overloaded(dossier: Dossier) -> Dossier:
        return with_use(dossier, 1, Event.OVERLOAD)

    assert link(beach(piece("S-B", "bow_shackle", "20 t", change=overloaded)), "S-B").outcome is RigOutcome.UNSOUND


# --- strap against vehicles ---


def test_the_band_goes_by_plates_and_not_by_the_mass_on_the_day() -> None:
    """Plates 3,000 kg: 6 to 9 t; the 2,500 kg of the day would ask for 5 to 7.5 t, and 8 t would be too strong."""
    assert findings(check(BEACH), "band")


def test_a_worn_strap_may_fall_out_of_the_band_by_what_is_left_of_it() -> None:
    """6,500 kg on 3,000 kg is 2.17 times; a tenth off leaves 5,850 kg, 1.95 times: too weak."""
    result = beach(piece("K", "kinetic_strap", "6,500 kg", long="9 m", change=_rubbed))
    assert findings(result, "band.weak")[0].outcome is RigOutcome.UNSOUND


# --- vehicles ---


def test_a_vehicle_heavier_than_its_plate_is_told_whichever_it_is() -> None:
    """At 2,500 kg of 2,500 it is not; one that nobody weighed is not known to be."""
    for pair, told in (
        ((vehicle(BOGGED, "2,500 kg", "2,501 kg"), vehicle(PULLING)), BOGGED),
        ((vehicle(BOGGED), vehicle(PULLING, "2,500 kg", "2,501 kg")), PULLING),
        ((vehicle(BOGGED, "2,500 kg", "2,500 kg"), vehicle(PULLING)), ""),
    ):
        found = findings(check(snatch(GENTLE, vehicles=pair)), "overloaded")
        assert [one.about for one in found] == ([(told,)] if told else [])
        assert all(one.outcome is RigOutcome.CAUTION and "weighs 2,501 kg" in one.says for one in found)


# --- a rig on the tow bar ---

HITCH = ("RC", "PN", "IN", "S-B", "K", "S-P", "P-P")


def hitch(bar: str = "", towed: bool = True) -> tuple[RigPiece, ...]:
    """Receiver, pin and insert at the rear of the stuck vehicle; bar: its breaking strength."""
    parts = (
        piece("RC", "hitch_receiver", "7 t", on=BOGGED, end=End.REAR),
        piece("PN", "hitch_pin", "", size=(("pin_diameter", "30 mm"),)),
        piece("IN", "receiver_insert", "20 t"),
    )
    return (*parts, piece("TB", "tow_bar", bar, on=BOGGED, end=End.REAR)) if bar else parts


def test_receiver_pin_insert_and_the_bar_behind_them_all_bear_the_pull() -> None:
    """Nobody named the bar; the receiver sits on it, so it bears the pull too."""
    result = beach(*hitch("20 t"), run=HITCH)
    for tag in ("TB", "RC", "PN", "IN", "S-B"):
        assert link(result, tag).force_n == pytest.approx(P_N, abs=0.1)
    assert {(one.one, one.other) for one in result.joints} >= {("TB", "RC"), ("RC", "PN"), ("PN", "IN")}


def test_a_pin_of_unknown_steel_gives_way_before_the_strap() -> None:
    """22 mm, class 4.6: bending 1.5 x 1,045.4 mm3 x 240 MPa = 376.3 N m; on a block of 43 mm in walls of 8 mm a lever
    of (43 + 4 + 16) / 8 = 7.875 mm, shear 0.6 x 380.1 mm2 x 400 MPa = 91.2 kN a plane; (F x 0.007875 / 376.3)^2 +
    (F / 182,460)^2 = 1 gives 46,225 N."""
    thin = piece("PN", "hitch_pin", "", size=(("pin_diameter", "22 mm"),))
    result = beach(*hitch("20 t"), thin, run=HITCH)
    assert link(result, "PN").capacity_n == pytest.approx(46225, rel=3e-4)
    assert result.weakest == "PN" and link(result, "PN").outcome is RigOutcome.UNSOUND, "it must keep 1.5 x P"


def test_a_weak_bar_decides_though_nobody_named_it() -> None:
    result = beach(*hitch("5 t"), run=HITCH)
    assert result.weakest in {"TB", "PN"} and link(result, "TB").outcome is RigOutcome.UNSOUND


@pytest.mark.parametrize(("bar_end", "receiver_end"), [(End.UNKNOWN, End.REAR), (End.REAR, End.UNKNOWN)])
def test_a_bar_whose_end_nobody_wrote_down_may_be_the_one_behind_the_receiver(bar_end: End, receiver_end: End) -> None:
    """Silence takes no weak bar out of the rig; one that is known to sit at the other end is not in it."""
    receiver = piece("RC", "hitch_receiver", "7 t", on=BOGGED, end=receiver_end)
    weak = piece("TB", "tow_bar", "5 t", on=BOGGED, end=bar_end)
    assert beach(*hitch(), receiver, weak, run=HITCH).outcome is RigOutcome.UNSOUND
    front = piece("TB", "tow_bar", "5 t", on=BOGGED, end=End.FRONT)
    assert beach(*hitch(), front, run=HITCH).link("TB") is None


def test_a_towing_eye_is_good_for_half_the_laden_weight_and_a_snatch_asks_for_more() -> None:
    """1,500 x g = 14,710 N against 1.5 x 38,928.5 N."""
    result = beach(run=("towing_eye@V-B", "S-B", "K", "S-P", "P-P"))
    assert link(result, "towing_eye@V-B").capacity_n == pytest.approx(1500 * G)
    assert result.outcome is RigOutcome.UNSOUND and result.weakest == "towing_eye@V-B"


# --- the damper ---


def _torn(dossier: Dossier) -> Dossier:
    return with_grade(dossier, "damper_cover", "bad")


def without_damper() -> RigResult:
    """The gentle snatch with nothing over the line."""
    return check(replace(BEACH, rig=replace(BEACH.rig, dampers=())))


def test_a_rig_wants_a_fit_damper_over_the_line() -> None:
    assert findings(without_damper(), "damper")[0].outcome is RigOutcome.CAUTION
    assert findings(check(BEACH), "damper")[0].outcome is RigOutcome.SOUND
    torn = piece("D", "damper", "", change=_torn)
    assert findings(beach(torn), "damper")[0].outcome is RigOutcome.CAUTION
    assert findings(beach(piece("D", "bow_shackle")), "damper")[0].outcome is RigOutcome.CAUTION


def test_a_damper_takes_nothing_off_energy_or_distance() -> None:
    one, other = check(BEACH), without_damper()
    assert (one.load.energy_j, one.stand_off_m, one.flying) == (other.load.energy_j, other.stand_off_m, other.flying)


# --- winching margins ---


def test_every_part_of_a_winch_line_keeps_twice_the_stall_pull() -> None:
    """5 t: 10 t just do, 9.9 t do not; a 2 t WLL shackle at 5:1 stands 10 t and does."""
    assert link(check(single_line(instead=(line(rated="10 t"),))), "L").outcome is RigOutcome.SOUND
    assert link(check(single_line(instead=(line(rated="9.9 t"),))), "L").outcome is RigOutcome.UNSOUND
    assert link(check(single_line(instead=(shackle("S-B", "2 t"),))), "S-B").use_ratio == pytest.approx(1)


@pytest.mark.parametrize(("weighed", "outcome"), [("3,000 kg", "sound"), ("1,800 kg", "caution"), ("", "caution")])
def test_a_vehicle_too_light_to_anchor_a_winch_is_warned_of_and_so_is_one_nobody_weighed(
    weighed: str, outcome: str
) -> None:
    """A winch of 1 t stalls at 1.25 t: 3,000 kg hold 1.998 t, 1,800 kg hold 1.1988 t; unweighed it may be as light."""
    pair = (vehicle(BOGGED), vehicle(PULLING, "3,000 kg", weighed))
    firm = Conditions(pulling_on=Footing.HARD_ROAD)
    result = check(single_line(firm, instead=(winch(pull="1 t"), line(rated="20 t")), vehicles=pair))
    assert findings(result, "anchor")[0].outcome.value == outcome


def test_a_soft_shackle_keeps_what_a_steel_one_keeps() -> None:
    """Both stand 1.4 P and must keep 1.5 P: taking the soft one instead makes nothing milder."""
    for kind in ("bow_shackle", "soft_shackle"):
        assert link(beach(weakened(piece("S-B", kind, "20 t"), 1.4 * P_N)), "S-B").outcome is RigOutcome.UNSOUND
