"""Shackles against print.

RR-C-271D minimum ultimate loads, grade A, as quoted by a city utility material standard (6966.15): 1/2 in 20,000 lbf,
5/8 in 32,500 lbf, 3/4 in 47,500 lbf = 5 x 2 / 3.25 / 4.75 short tons. ASME B30.26-2010 26-1.2: factor at least 5.
Wear limit: 10 % of the original size, "a 10 % reduction" fails (US lists under ASME B30.26). Side load: 45 deg 70 %,
90 deg 50 % of the working load limit (five trade sheets), a step function.
"""

import math
from datetime import date, timedelta

import pytest

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, NewInspection, Reading
from inspector.gear.item import Item, NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis, Grade
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Verdict
from inspector.mechanics.rating import side_load_factor, ultimate_n
from inspector.mechanics.sections import round_area_loss_ratio, round_modulus_loss_ratio
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, read
from tests.each import each

DAY = date(2026, 11, 25)
NEWTONS_PER_LBF = 4.44822


def shackle(rules: Rulebook, rating: str, factor: float, bow: str, worn_bow: str, pin: str = "22 mm") -> Verdict:
    """A sound, inspected bow shackle whose body measures `worn_bow` today."""
    kind = rules.kind("bow_shackle")
    sizes = (("bow_diameter", bow), ("pin_diameter", "22 mm"))
    facts = NewItem(
        "S",
        kind.key,
        Rating(Basis.WLL, read(rating, Dimension.FORCE, field="r"), factor, "piece"),
        sizes=tuple(SizeAsNew(key, read(text, Dimension.LENGTH, field=key)) for key, text in sizes),
        provenance=Provenance.NEW_CERTIFIED,
        in_service_on=DAY - timedelta(days=700),
    )
    read_now = (("bow_diameter", worn_bow), ("pin_diameter", pin))
    seen = NewInspection(
        DAY,
        InspectionKind.PERIODIC,
        "p",
        competent=True,
        answers=tuple(Answer(check.key, Grade.GOOD) for check in kind.checks),
        readings=tuple(Reading(key, read(text, Dimension.LENGTH, field=key)) for key, text in read_now),
    )
    item = Item("i", DAY - timedelta(days=700), facts)
    return judge(Dossier(kind, item, DAY, (Inspection("1", "i", seen),)), rules, "test")


@pytest.mark.printed("RR-C-271D, city utility material standard", "rating.ultimate_n")
@each(("short_tons", "ultimate_lbf"), [("2 short ton", 20_000), ("3.25 short ton", 32_500), ("4.75 short ton", 47_500)])
def test_ultimate_load_of_grade_a_shackles(rules: Rulebook, short_tons: str, ultimate_lbf: float) -> None:
    verdict = shackle(rules, short_tons, 5.0, "19 mm", "19 mm")
    assert verdict.capacity.as_marked_n == pytest.approx(ultimate_lbf * NEWTONS_PER_LBF, rel=1e-5)


def test_a_short_ton_shackle_and_a_metric_one_of_the_same_figure_are_told_apart(rules: Rulebook) -> None:
    """211 kN against 279 kN ultimate: 4.75 short tons at factor 5, 4.75 t at factor 6 (grade 6 sheets)."""
    short = shackle(rules, "4.75 short ton", 5.0, "19 mm", "19 mm").capacity.as_marked_n
    metric = shackle(rules, "4.75 t", 6.0, "19 mm", "19 mm").capacity.as_marked_n
    assert short == pytest.approx(211.3e3, abs=0.05e3)
    assert metric == pytest.approx(279e3, abs=0.5e3)


@pytest.mark.printed("common practice, no source", "rating.ultimate_n")
def test_the_4_75_t_shackle_stands_more_than_23_t() -> None:
    """Common practice, no source."""
    ultimate = ultimate_n(read("4.75 t", Dimension.FORCE, field="r").si, 5)
    assert ultimate > read("23 t", Dimension.FORCE, field="r").si


@pytest.mark.printed("ASME B30.26, 10 % of the original size")
@each(("worn", "outcome"), [("17.2 mm", Outcome.HOLD), ("17.1 mm", Outcome.RETIRE), ("17.0 mm", Outcome.RETIRE)])
def test_ten_per_cent_of_a_19_mm_body_is_the_end_even_where_floats_fall_short_of_it(
    rules: Rulebook, worn: str, outcome: Outcome
) -> None:
    """17.1 of 19 mm is exactly 10 % lost; 1 - 17.1/19 comes out just under 0.1. From 8 % on (UK guide) it is held."""
    assert 1 - 17.1 / 19.0 < 0.1
    assert shackle(rules, "4.75 t", 5.0, "19 mm", worn).outcome is outcome


def test_eight_per_cent_still_passes_and_a_pin_worn_more_than_six_does_not(rules: Rulebook) -> None:
    """UK guide to BS EN 13889: more than 8 %; ISO 16855:2013: pins more than 6 %."""
    assert shackle(rules, "4.75 t", 5.0, "19 mm", "17.48 mm").outcome is Outcome.FIT
    assert shackle(rules, "4.75 t", 5.0, "19 mm", "19 mm", pin="20.68 mm").outcome is Outcome.FIT
    assert shackle(rules, "4.75 t", 5.0, "19 mm", "19 mm", pin="20.6 mm").outcome is Outcome.RETIRE


def test_ten_per_cent_of_diameter_is_19_of_area_and_27_of_bending() -> None:
    """Calculated: 1 - 0.9^2 and 1 - 0.9^3."""
    assert round(round_area_loss_ratio(0.1), 2) == 0.19
    assert round(round_modulus_loss_ratio(0.1), 2) == 0.27


@each(("degrees", "left"), [(0, 1.0), (5, 1.0), (10, 0.7), (45, 0.7), (46, 0.5), (90, 0.5)])
def test_side_load_is_a_step_and_not_a_slope(degrees: float, left: float) -> None:
    assert side_load_factor(math.radians(degrees)) == left
