"""Walls: what a gauge allows one to rely on, how fast each place goes, and what nobody can know."""

from datetime import date, timedelta

import msgspec
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.use import Exposure, NewExposure, Weather
from inspector.gear.verdict import Finding, Verdict, WallForecast
from inspector.gear.wall_band import BandFrom
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.rulebook.wording import explain
from inspector.units import Dimension, read
from tests.rulebook.dossiers import dossiers
from tests.rulebook.test_laws import TUBES, changed, check_never_milder, verdict_of

TODAY = date(2026, 11, 25)


POINTS = ("top", "bottom", "left", "right", "at pin hole")


def reading(
    place: str, typed: str, surface: Surface = Surface.DRESSED, *, tried: bool | None = True, by: str = "gauge"
) -> Reading:
    figure = read(typed, Dimension.LENGTH, field="wall")
    method = Method.ULTRASONIC_BARE if by == "gauge" else Method.CALLIPER
    return Reading("wall", figure, place, method, surface, block_checked=tried)


def everywhere(typed: str, *but: Reading, tried: bool | None = True) -> tuple[Reading, ...]:
    """A reading at each named point; `but` takes the place of its own."""
    named = {one.point for one in but}
    return (*(reading(point, typed, tried=tried) for point in POINTS if point not in named), *but)


class Tube:
    """A receiver of 5 mm with its readings, launched in salt."""

    def __init__(self, rules: Rulebook, kind: str = "hitch_receiver", rating: str = "2500 kg") -> None:
        self.rules, self.kind = rules, rules.kind(kind)
        self.rating = Rating(Basis.TOWED_MASS, read(rating, Dimension.MASS, field="r"), None, "piece")
        self.provenance, self.made_on = Provenance.NEW, date(2020, 11, 25)
        self.wall, self.salt_on = "5 mm", date(2021, 1, 1)
        self.inspections: list[Inspection] = []

    def read(self, days_ago: int, *readings: Reading, competent: bool = True) -> "Tube":
        hole = self.kind.measure("pin_hole")
        figure = read("16.2 mm", Dimension.LENGTH, field="h")
        holes = tuple(Reading("pin_hole", figure, point) for point in (hole.points if hole else ()))
        answers = tuple(Answer(check.key, Grade.GOOD) for check in self.kind.checks)
        on = TODAY - timedelta(days=days_ago)
        kind = InspectionKind.PERIODIC
        seen = NewInspection(on, kind, "p", competent=competent, answers=answers, readings=(*readings, *holes))
        self.inspections.append(Inspection(str(days_ago), "i", seen))
        return self

    def judged(self, *, salt: bool = True) -> Verdict:
        return judge(self.dossier(salt=salt), self.rules, "t")

    def dossier(self, *, salt: bool = True) -> Dossier:
        sizes = (("outside", "60 mm"), ("wall", self.wall), ("pin_hole", "16.2 mm"))
        new = tuple(SizeAsNew(key, read(text, Dimension.LENGTH, field=key)) for key, text in sizes)
        unknown = self.provenance is Provenance.UNKNOWN
        made = None if unknown else self.made_on
        facts = NewItem("T", self.kind.key, self.rating, sizes=new, provenance=self.provenance, made_on=made)
        sea = (Exposure("e", "i", NewExposure(self.salt_on, Weather.SALT)),) if salt else ()
        item = Item("i", date(2020, 11, 25), facts)
        return Dossier(self.kind, item, TODAY, tuple(self.inspections), exposures=sea)


def wall_of(verdict: Verdict) -> WallForecast:
    assert verdict.wall is not None
    return verdict.wall


def outcome_for(verdict: Verdict, purpose: Purpose) -> Outcome:
    return next(one.outcome for one in verdict.by_purpose if one.purpose is purpose)


def test_the_short_term_rate_is_that_of_one_place_and_not_between_two(rules: Rulebook) -> None:
    tube = Tube(rules).read(730, reading("top", "4.9 mm"), reading("bottom", "4.5 mm"))
    tube.read(0, reading("top", "4.8 mm"))
    assert wall_of(tube.judged()).short_term_m_per_year == pytest.approx(0.0001 / (730 / 365.25))


def test_the_fastest_place_gives_the_short_term_rate(rules: Rulebook) -> None:
    tube = Tube(rules).read(730, reading("top", "4.9 mm"), reading("bottom", "4.9 mm"))
    tube.read(0, reading("top", "4.8 mm"), reading("bottom", "4.5 mm"))
    assert wall_of(tube.judged()).short_term_m_per_year == pytest.approx(0.0004 / (730 / 365.25))


def test_two_readings_in_one_week_give_no_rate(rules: Rulebook) -> None:
    tube = Tube(rules).read(7, reading("top", "4.9 mm")).read(0, reading("top", "4.7 mm"))
    assert wall_of(tube.judged()).short_term_m_per_year is None


def test_the_rate_is_never_less_than_the_exposure_makes_likely(rules: Rulebook) -> None:
    wall = wall_of(Tube(rules).read(0, reading("top", "5 mm")).judged())
    assert wall.rate_m_per_year == wall.floor_m_per_year == pytest.approx(0.0003)
    read_twice = Tube(rules).read(400, reading("top", "5 mm")).read(0, reading("top", "5 mm"))
    wall = wall_of(read_twice.judged())
    assert wall.rate_m_per_year == wall.floor_m_per_year == pytest.approx(0.00015)


def floor_of(tube: Tube) -> float:
    return wall_of(tube.judged()).floor_m_per_year


def test_a_member_s_thick_reading_lifts_no_hold(rules: Rulebook) -> None:
    """Read once by a competent person and later by a member: still no rate that may be relied on."""
    alone = Tube(rules).read(180, *everywhere("5.0 mm"))
    alone.made_on = TODAY - timedelta(days=300)
    both = Tube(rules).read(180, *everywhere("5.0 mm")).read(60, *everywhere("5.0 mm"), competent=False)
    both.made_on = alone.made_on
    assert pulls(alone.judged()) == pulls(both.judged()) == {Outcome.HOLD}
    assert floor_of(both) == floor_of(alone) == pytest.approx(0.0003)
    assert wall_of(both.judged()).next_reading_due == wall_of(alone.judged()).next_reading_due


def test_a_member_s_thin_reading_may_raise_the_rate(rules: Rulebook) -> None:
    tube = Tube(rules).read(400, *everywhere("5.0 mm")).read(0, reading("top", "4.5 mm"), competent=False)
    assert wall_of(tube.judged()).short_term_m_per_year == pytest.approx(0.0005 / (400 / 365.25))


def test_an_older_piece_has_no_lower_floor(rules: Rulebook) -> None:
    tube = Tube(rules).read(170, *everywhere("4.8 mm"))
    for made_on in (TODAY - timedelta(days=300), date(2018, 9, 8), date(2001, 1, 1)):
        tube.made_on = made_on
        assert floor_of(tube) == pytest.approx(0.0003)
        assert pulls(tube.judged()) == {Outcome.HOLD}


def test_readings_before_the_salt_tell_no_rate_in_salt(rules: Rulebook) -> None:
    tube = Tube(rules).read(880, *everywhere("5.0 mm")).read(110, *everywhere("5.0 mm"))
    assert floor_of(tube) == pytest.approx(0.00015)
    tube.salt_on = TODAY - timedelta(days=500)
    assert floor_of(tube) == pytest.approx(0.0003)
    tube.salt_on = TODAY - timedelta(days=100)
    assert floor_of(tube) == pytest.approx(0.0003)


def test_salt_written_down_later_for_an_earlier_day_lowers_no_floor(rules: Rulebook) -> None:
    tube = Tube(rules).read(880, *everywhere("5.0 mm")).read(110, *everywhere("5.0 mm"))
    tube.salt_on = TODAY - timedelta(days=100)
    dossier = tube.dossier()
    earlier = Exposure("f", "i", NewExposure(TODAY - timedelta(days=1000), Weather.SALT))
    both = judge(replace(dossier, exposures=(earlier, *dossier.exposures)), rules, "t")
    assert wall_of(both).floor_m_per_year == pytest.approx(0.0003)


def test_where_the_past_is_unknown_readings_count_from_the_booking(rules: Rulebook) -> None:
    tube = Tube(rules).read(2190 + 300, *everywhere("5.0 mm")).read(2190, *everywhere("5.0 mm"))
    tube.provenance = Provenance.UNKNOWN
    assert wall_of(tube.judged(salt=False)).floor_m_per_year == pytest.approx(0.0003)
    tube.read(1000, *everywhere("5.0 mm"))
    assert wall_of(tube.judged(salt=False)).floor_m_per_year == pytest.approx(0.00015)


def test_a_rough_reading_is_no_part_of_a_measured_rate(rules: Rulebook) -> None:
    rough = [reading(point, "5.0 mm", Surface.ROUGH) for point in POINTS]
    assert floor_of(Tube(rules).read(400, *rough).read(0, *everywhere("5.0 mm"))) == pytest.approx(0.0003)
    assert floor_of(Tube(rules).read(400, *everywhere("5.0 mm")).read(0, *rough)) == pytest.approx(0.0003)


def test_a_rough_reading_lowers_no_rate(rules: Rulebook) -> None:
    tube = Tube(rules).read(800, *everywhere("5.0 mm")).read(400, *everywhere("4.2 mm"))
    before = wall_of(tube.judged()).rate_m_per_year
    after = wall_of(tube.read(0, *(reading(point, "5.0 mm", Surface.ROUGH) for point in POINTS)).judged())
    assert after.rate_m_per_year == before == pytest.approx(0.0008 / (400 / 365.25))


def test_a_dry_year_does_not_hide_how_fast_salt_goes(rules: Rulebook) -> None:
    """Dry for years, in salt for 210 days, of which 200 took 0.3 mm."""
    tube = Tube(rules).read(2000, *everywhere("5.0 mm")).read(200, *everywhere("5.0 mm"))
    tube.read(0, *everywhere("4.7 mm")).salt_on = TODAY - timedelta(days=210)
    assert wall_of(tube.judged()).rate_m_per_year == pytest.approx(0.0003 / (200 / 365.25))
    tube.salt_on = TODAY - timedelta(days=190)
    assert wall_of(tube.judged()).rate_m_per_year == pytest.approx(0.0003 / (200 / 365.25))


def test_a_rough_reading_holds_until_the_face_is_dressed_and_read_again(rules: Rulebook) -> None:
    tube = Tube(rules).read(1, *everywhere("4.9 mm", reading("bottom", "4.9 mm", Surface.ROUGH)))
    held = tube.judged()
    assert held.outcome is Outcome.HOLD
    assert "wall-face-rough" in {one.rule for one in held.findings if one.outcome is Outcome.HOLD}
    assert tube.read(0, reading("bottom", "4.9 mm")).judged().outcome is Outcome.FIT


def test_what_nobody_has_measured_and_nobody_knows_the_age_of_is_not_fit_to_tow(rules: Rulebook) -> None:
    tube = Tube(rules, "ball_mount").read(0)
    tube.provenance = Provenance.UNKNOWN
    verdict = tube.judged(salt=False)
    assert outcome_for(verdict, Purpose.TOWING) is Outcome.HOLD


def test_a_receiver_that_recovers_must_bear_the_club_s_pull_whatever_its_trailer(rules: Rulebook) -> None:
    """50 kN over two walls at 1.5 x 15.875 mm x 235 MPa: 4.47 mm; 80 % of 5 mm is less."""
    light = Tube(rules, rating="1000 kg").read(0, reading("top", "5 mm"))
    wall = wall_of(light.judged())
    assert wall.required_m == pytest.approx(50e3 / (2 * 1.5 * 0.015875 * 235e6))
    assert "reference pull" in wall.required_because
    mount = Tube(rules, "ball_mount", rating="1000 kg").read(0, reading("top", "5 mm"))
    assert wall_of(mount.judged()).required_m == pytest.approx(0.004)


def test_a_heavy_trailer_asks_for_more_wall_than_the_club_s_share(rules: Rulebook) -> None:
    mount = Tube(rules, "ball_mount", rating="3500 kg").read(0, reading("top", "5 mm"))
    pull = 1.5 * 9.80665 * 3500
    assert wall_of(mount.judged()).required_m == pytest.approx(pull / (2 * 1.5 * 0.015875 * 235e6))


@pytest.mark.parametrize("wall", ["4.4 mm", "2.5 mm"])
def test_a_wall_too_thin_for_its_pin_as_new_is_held_and_not_retired(rules: Rulebook, wall: str) -> None:
    """The pull asks for 4.47 mm of steel that is only assumed, and no reading says that anything is gone."""
    tube = Tube(rules, rating="1000 kg")
    tube.wall = wall
    verdict = tube.read(0, *everywhere(wall)).judged(salt=False)
    thin = found(verdict, "wall-made-too-thin")
    assert verdict.outcome is thin.outcome is Outcome.HOLD
    assert thin.limit is not None and thin.limit.number == pytest.approx(50e3 / (2 * 1.5 * 0.015875 * 235e6))
    share_m = read(wall, Dimension.LENGTH, field="w").si * 0.8
    assert wall_of(verdict).required_m == pytest.approx(share_m)
    worn = tube.read(0, *everywhere(f"{(share_m - 0.0001) * 1e3:.4f} mm")).judged(salt=False)
    assert worn.outcome is Outcome.RETIRE
    towing = replace(tube.dossier(salt=False).item.facts, kept_for=(Purpose.TOWING,))
    light = replace(tube.dossier(salt=False), item=replace(tube.dossier().item, facts=towing))
    assert found(judge(light, rules, "t"), "wall-made-too-thin").outcome is Outcome.FIT


def test_a_marking_tells_of_a_better_steel_than_is_assumed_and_is_held_but_not_retired(rules: Rulebook) -> None:
    tube = Tube(rules)
    tube.wall, tube.rating = "7.5 mm", Rating(Basis.MBS, read("15 t", Dimension.FORCE, field="r"), None, "piece")
    verdict = tube.read(0, *everywhere("7.5 mm")).judged(salt=False)
    assert verdict.outcome is Outcome.HOLD
    assert [one.rule for one in verdict.findings if one.outcome is not Outcome.FIT] == ["wall-made-too-thin"]


def test_no_estimate_passes_a_pull_once_a_dry_tube_is_no_longer_new(rules: Rulebook) -> None:
    tube = Tube(rules).read(0)
    for age_days, outcome in ((0, Outcome.FIT), (365, Outcome.FIT), (366, Outcome.HOLD), (7000, Outcome.HOLD)):
        tube.made_on = TODAY - timedelta(days=age_days)
        verdict = tube.judged(salt=False)
        assert found(verdict, "wall-never-read").outcome is outcome
        assert pulls(verdict) == {outcome}
        assert wall_of(verdict).next_reading_due == tube.made_on + timedelta(days=365)
    assert "never measured" in found(verdict, "wall-never-read").came_from
    some = tube.read(0, *(one for one in everywhere("5 mm") if one.point != "left")).judged(salt=False)
    assert pulls(some) == {Outcome.HOLD} and "never read: left" in found(some, "wall-never-read").came_from
    read_once = tube.read(0, *everywhere("5 mm")).judged(salt=False)
    assert "wall-never-read" not in {one.rule for one in read_once.findings}
    assert wall_of(read_once).next_reading_due is None


def test_an_overdue_reading_comes_before_what_is_reckoned_from_it(rules: Rulebook) -> None:
    verdict = Tube(rules).read(800, reading("bottom", "4.8 mm")).read(0).judged()
    held = [one.rule for one in verdict.findings if one.outcome is Outcome.HOLD]
    assert held[0] == "wall-reading-due"


def test_a_tube_whose_wall_as_new_nobody_wrote_down_is_held(rules: Rulebook) -> None:
    kind = rules.kind("tow_bar")
    facts = NewItem("T", kind.key, Rating(Basis.UNRATED, None, None, "piece"), provenance=Provenance.NEW)
    verdict = judge(Dossier(kind, Item("i", TODAY, facts), TODAY), rules, "t")
    assert verdict.wall is None
    assert "wall-estimate-towing" in {one.rule for one in verdict.findings if one.outcome is Outcome.HOLD}


def found(verdict: Verdict, rule: str) -> Finding:
    return next(one for one in verdict.findings if one.rule == rule)


def pulls(verdict: Verdict) -> set[Outcome]:
    return {one.outcome for one in verdict.by_purpose if one.purpose is not Purpose.TOWING}


def test_points_never_read_are_named_and_hold_for_pulls_alone(rules: Rulebook) -> None:
    tube = Tube(rules).read(0, reading("top", "5.0 mm"), reading("left", "5.0 mm"), reading("right", "5.0 mm"))
    tube.made_on = date(2025, 11, 25)
    verdict = tube.judged()
    assert pulls(verdict) == {Outcome.HOLD}
    assert "Never read: bottom, at pin hole." in found(verdict, "wall-reading-due").why_unknown
    assert wall_of(verdict).unread_points == ("bottom", "at pin hole")


def test_the_point_read_longest_ago_tells_how_old_the_readings_are(rules: Rulebook) -> None:
    tube = Tube(rules).read(500, *everywhere("5.0 mm"))
    tube.read(0, *(one for one in everywhere("5.0 mm") if one.point != "left"))
    due = found(tube.judged(), "wall-reading-due")
    assert due.value is not None and due.value.number == 500
    assert "left" in due.came_from
    assert due.outcome is Outcome.HOLD


@pytest.mark.parametrize("tried", [False, None])
def test_a_gauge_not_known_to_be_tried_on_its_block_passes_no_pull(rules: Rulebook, tried: bool | None) -> None:
    verdict = Tube(rules).read(0, *everywhere("4.9 mm", tried=tried)).judged()
    assert pulls(verdict) == {Outcome.HOLD}
    assert outcome_for(verdict, Purpose.TOWING) is Outcome.FIT
    held = found(verdict, "wall-gauge-untried")
    assert "top, bottom, left, right, at pin hole" in held.came_from
    assert Tube(rules).read(0, *everywhere("4.9 mm")).judged().outcome is Outcome.FIT


def test_a_gauge_not_tried_may_still_retire(rules: Rulebook) -> None:
    thin = everywhere("4.9 mm", reading("bottom", "3.0 mm", tried=False))
    assert Tube(rules).read(0, *thin).judged().outcome is Outcome.RETIRE


def test_a_calliper_needs_no_block(rules: Rulebook) -> None:
    tube = Tube(rules).read(0, *everywhere("4.9 mm", reading("left", "4.9 mm", tried=None, by="calliper")))
    assert tube.judged().outcome is Outcome.FIT


def test_a_reading_on_a_rough_face_says_that_it_is_an_upper_bound(rules: Rulebook) -> None:
    verdict = Tube(rules).read(0, *everywhere("4.9 mm", reading("bottom", "4.8 mm", Surface.ROUGH))).judged()
    assert "an upper bound" in found(verdict, "wall-face-rough").came_from
    assert "4.8 mm at “bottom”" in found(verdict, "wall-face-rough").came_from
    assert wall_of(verdict).history[-1].upper_bound


def test_a_reading_below_what_the_probe_can_tell_says_so(rules: Rulebook) -> None:
    verdict = Tube(rules).read(0, *everywhere("4.9 mm", reading("bottom", "1.4 mm"))).judged()
    assert "less than the common probe can tell" in found(verdict, "wall-too-thin").came_from


def test_a_member_s_reading_makes_neither_rate_nor_estimate_milder(rules: Rulebook) -> None:
    unread = Tube(rules, "ball_mount").read(0)
    read = Tube(rules, "ball_mount").read(0).read(0, *everywhere("5.0 mm"), competent=False)
    assert outcome_for(unread.judged(), Purpose.TOWING) is Outcome.HOLD
    assert outcome_for(read.judged(), Purpose.TOWING) is Outcome.HOLD
    assert wall_of(read.judged()).rate_m_per_year == wall_of(unread.judged()).rate_m_per_year == pytest.approx(0.0003)


def test_until_a_rate_is_known_the_worst_in_print_sets_the_next_reading(rules: Rulebook) -> None:
    """4.8 mm to rely on, 4.47 mm to keep (50 kN on the pin): 0.33 mm at 1.3 mm a year last a quarter of a year."""
    tube = Tube(rules).read(0, *everywhere("5.0 mm"))
    tube.made_on = TODAY
    spare = 0.0048 - 50e3 / (2 * 1.5 * 0.015875 * 235e6)
    due = wall_of(tube.judged()).next_reading_due
    assert due == TODAY + timedelta(days=int(spare / 0.0013 * 365.25))


def test_a_point_never_read_is_reckoned_from_exposure_for_towing(rules: Rulebook) -> None:
    """Salt since 2021-01-01, 5.9 years at 0.3 mm a year: more than the 1 mm there is to lose."""
    but_bottom = [one for one in everywhere("4.9 mm") if one.point != "bottom"]
    verdict = Tube(rules, "ball_mount").read(0, *but_bottom).judged()
    held = found(verdict, "wall-estimate-towing")
    assert held.outcome is Outcome.HOLD
    assert "never read: bottom" in held.came_from


def falling(rules: Rulebook, *walls: str) -> Tube:
    """Read everywhere each year, the bottom as given, the last time today."""
    tube = Tube(rules)
    for number, wall in enumerate(walls):
        tube.read(365 * (len(walls) - 1 - number), *everywhere("5.0 mm", reading("bottom", wall)))
    return tube


def test_three_days_of_readings_give_a_band_at_the_thinnest_point(rules: Rulebook) -> None:
    """Three years at 0.1 mm, no scatter but that of rounding to tenths."""
    wall = wall_of(falling(rules, "5.0 mm", "4.9 mm", "4.8 mm", "4.7 mm").judged())
    band = wall.band
    assert band is not None and band.now is not None
    assert (band.made_from, band.point, band.reading_count) == (BandFrom.LINE, "bottom", 4)
    assert band.now.line_m == pytest.approx(0.0047)
    lever = 1 + 1 / 4 + 1.5**2 / 5
    assert band.now.high_m - band.now.line_m == pytest.approx(4.3027 * 1e-4 / 12**0.5 * lever**0.5, rel=1e-3)
    assert band.earliest_on is not None
    assert band.reach_on == TODAY + timedelta(days=547)


def test_the_retire_date_of_the_band_lies_between_its_bounds(rules: Rulebook) -> None:
    """Retired once a reading is at 4.47 + 0.2 mm: the line of 0.1 mm a year from 4.7 mm is there within half a year."""
    band = wall_of(falling(rules, "5.0 mm", "4.9 mm", "4.8 mm", "4.7 mm").judged()).band
    assert band is not None and band.earliest_on and band.likely_on
    assert band.earliest_on <= band.likely_on
    meets = (0.0047 - 0.0002 - 50e3 / (2 * 1.5 * 0.015875 * 235e6)) / 0.0001 * 365
    assert (band.likely_on - TODAY).days == pytest.approx(meets, abs=1)


def sums(tube: Tube) -> dict[str, str]:
    verdict = tube.judged()
    facts = explain(tube.dossier(), verdict, tube.rules).sums
    return {one.label: one.text for one in facts}


def test_the_words_tell_the_band_how_it_was_made_and_that_it_informs(rules: Rulebook) -> None:
    told = sums(falling(rules, "5.0 mm", "4.9 mm", "4.8 mm", "4.8 mm"))
    assert told["Retire date"].startswith("about ") and "not before" in told["Retire date"]
    assert "the line at" in told["Band today"]
    assert "straight line through 4 readings at “bottom”; of 100 new readings there, 95 lie" in told["How sure"]
    assert "It informs" in told["How sure"] and "pit between the points is not seen" in told["How sure"]


def test_the_words_say_when_the_readings_bear_no_line_so_far(rules: Rulebook) -> None:
    tube = Tube(rules).read(400, *everywhere("5.0 mm")).read(350, *everywhere("5.0 mm"))
    told = sums(tube.read(300, *everywhere("5.0 mm")))
    assert (
        told["Band today"] == "none: the readings bear a line no further than 20 Mar 2026"
    )  # 29 Jan and half of 100 days
    assert told["Retire date"].endswith("no latest day before 20 Mar 2026, where the line must end")


def test_the_words_name_points_never_read(rules: Rulebook) -> None:
    assert sums(Tube(rules).read(0, reading("top", "5.0 mm")))["Never read"] == "bottom, left, right, at pin hole"


def test_a_rough_or_untried_reading_is_no_part_of_a_line(rules: Rulebook) -> None:
    tube = Tube(rules).read(800, *everywhere("5.0 mm")).read(400, *everywhere("4.9 mm", tried=None))
    band = wall_of(tube.read(0, *everywhere("4.9 mm")).judged()).band
    assert band is not None and band.made_from is BandFrom.RATES


def test_beyond_the_reach_of_the_line_there_is_no_band(rules: Rulebook) -> None:
    tube = Tube(rules).read(400, *everywhere("5.0 mm")).read(350, *everywhere("5.0 mm"))
    band = wall_of(tube.read(300, *everywhere("5.0 mm")).judged()).band
    assert band is not None and band.made_from is BandFrom.LINE
    assert band.reach_on is not None and band.reach_on < TODAY
    assert (band.now, band.at_due) == (None, None)


def test_short_of_three_days_the_rates_and_the_gauge_bound_the_retire_date(rules: Rulebook) -> None:
    """4.7 mm to rely on today, 4.47 to keep; new in 2020, so 0.1 mm went in 6 years; gauge 0.2 mm each time."""
    tube = Tube(rules).read(0, *everywhere("4.9 mm"))
    band = wall_of(tube.judged()).band
    assert band is not None and band.made_from is BandFrom.RATES
    need, span = 50e3 / (2 * 1.5 * 0.015875 * 235e6), (TODAY - date(2020, 11, 25)).days / 365.25
    error = 2**0.5 * 0.0002 / span
    fastest = max(0.0001 / span + error, 0.0003)
    assert band.earliest_on == TODAY + timedelta(days=int((0.0045 - need) / fastest * 365.25))
    assert band.likely_on == TODAY + timedelta(days=int((0.0047 - need) / 0.0003 * 365.25))
    assert band.latest_on is None, "the gauge alone could explain what was lost"


def test_without_a_reading_the_published_rates_bound_the_retire_date(rules: Rulebook) -> None:
    """1 mm to lose since 2021-01-01: at 1.3 mm a year and at 0.05 mm a year."""
    band = wall_of(Tube(rules, "ball_mount").read(0).judged()).band
    assert band is not None and band.made_from is BandFrom.PUBLISHED
    assert band.earliest_on == date(2021, 1, 1) + timedelta(days=int(1 / 1.3 * 365.25))
    assert band.latest_on == date(2021, 1, 1) + timedelta(days=int(1 / 0.05 * 365.25 + 1e-6))


def test_a_forecast_kept_before_bands_were_made_still_reads(rules: Rulebook) -> None:
    kept = msgspec.to_builtins(wall_of(Tube(rules).read(0, *everywhere("4.9 mm")).judged()))
    for later in ("band", "unread_points"):
        del kept[later]
    for point in kept["history"]:
        del point["upper_bound"], point["below_probe"]
    assert msgspec.convert(kept, WallForecast).band is None


@given(dossiers(TUBES), st.integers(0, 30))
def test_a_gauge_that_was_not_tried_is_never_milder(dossier: Dossier, place: int) -> None:
    assume(dossier.inspections and dossier.inspections[-1].facts.readings)
    last = dossier.inspections[-1]
    listed = list(last.facts.readings)
    chosen = place % len(listed)
    tried = replace(listed[chosen], block_checked=True)
    listed[chosen] = replace(tried, block_checked=None)
    worse = replace(last, facts=replace(last.facts, readings=tuple(listed)))
    listed[chosen] = tried
    better = replace(last, facts=replace(last.facts, readings=tuple(listed)))
    check_never_milder(verdict_of(changed(dossier, -1, worse)), verdict_of(changed(dossier, -1, better)))


@given(dossiers(TUBES), st.integers(0, 30))
def test_a_point_left_out_passes_no_pull(dossier: Dossier, place: int) -> None:
    """Whatever else was read, silence at one named point of a tube that saw salt passes no pull."""
    points = dossier.kind.measure("wall")
    assert points is not None
    point = points.points[place % len(points.points)]
    without = replace(
        dossier,
        inspections=tuple(
            replace(one, facts=replace(one.facts, readings=tuple(r for r in one.facts.readings if r.point != point)))
            for one in dossier.inspections
        ),
    )
    if any(one.facts.weather is Weather.SALT for one in dossier.exposures):
        assert {Outcome.FIT, Outcome.DERATE}.isdisjoint(pulls(verdict_of(without)))


def test_each_point_shows_what_was_read_there_last(rules: Rulebook) -> None:
    """The picture of the section shows each face as it was read last, not only the thinnest of the day."""
    points = ("top", "bottom", "left", "right", "at pin hole")
    tube = Tube(rules).read(400, *(reading(one, "4.9 mm") for one in points))
    tube.read(10, reading("top", "4.7 mm"), reading("bottom", "4.6 mm"))
    shown = {one.point: (one.as_typed, one.on) for one in wall_of(tube.judged()).points}
    assert set(shown) == set(points)
    assert shown["top"] == ("4.7 mm", TODAY - timedelta(days=10))
    assert shown["bottom"][0] == "4.6 mm" and shown["left"] == ("4.9 mm", TODAY - timedelta(days=400))
