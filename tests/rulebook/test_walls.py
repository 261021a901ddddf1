"""Walls: what a gauge allows one to rely on, how fast each place goes, and what nobody can know."""

from datetime import date, timedelta

import pytest

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.use import Exposure, NewExposure, Weather
from inspector.gear.verdict import Verdict, WallForecast
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, read

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
        self.wall = "5 mm"
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
        sizes = (("outside", "60 mm"), ("wall", self.wall), ("pin_hole", "16.2 mm"))
        new = tuple(SizeAsNew(key, read(text, Dimension.LENGTH, field=key)) for key, text in sizes)
        unknown = self.provenance is Provenance.UNKNOWN
        made = None if unknown else self.made_on
        facts = NewItem("T", self.kind.key, self.rating, sizes=new, provenance=self.provenance, made_on=made)
        sea = (Exposure("e", "i", NewExposure(date(2021, 1, 1), Weather.SALT)),) if salt else ()
        item = Item("i", date(2020, 11, 25), facts)
        return judge(Dossier(self.kind, item, TODAY, tuple(self.inspections), exposures=sea), self.rules, "t")


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
    assert wall.rate_m_per_year == wall.floor_m_per_year == pytest.approx(0.00015)


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
