"""The words that all rooms share."""

from datetime import date
from itertools import permutations

import pytest

from inspector.gear.inspection import Method, method_for
from inspector.gear.item import Item, NewItem, Provenance, Rating
from inspector.gear.kind import Basis, Measure
from inspector.gear.outcome import Outcome, worst
from inspector.gear.person import Competence, Person
from inspector.units import Dimension
from tests.each import each


def test_the_worst_outcome_wins_in_any_order() -> None:
    assert all(worst(order) is Outcome.RETIRE for order in permutations(Outcome))
    assert worst([Outcome.FIT, Outcome.DERATE, Outcome.HOLD]) is Outcome.HOLD
    assert worst([]) is Outcome.FIT


@pytest.mark.parametrize(
    ("family", "on", "competent"),
    [
        ("strap", date(2026, 1, 1), True),
        ("strap", date(2026, 6, 30), True),
        ("strap", date(2026, 7, 1), False),
        ("strap", date(2025, 12, 31), False),
        ("tube", date(2026, 2, 1), False),
    ],
)
def test_competence_has_a_scope_and_two_ends(family: str, on: date, competent: bool) -> None:
    person = Person("1", "Dee", "Deputy", (Competence("strap", date(2026, 1, 1), date(2026, 6, 30)),))
    assert person.is_competent(family, on) is competent


def test_competence_for_all_kinds_has_no_end_unless_one_is_stated() -> None:
    person = Person("1", "Ada", "Officer", (Competence("all", date(2026, 1, 1)),))
    assert person.is_competent("tube", date(2050, 1, 1))


@each(
    ("made", "used", "past", "began"),
    [
        (date(2020, 1, 1), date(2021, 1, 1), Provenance.SECOND_HAND, date(2020, 1, 1)),
        (None, date(2021, 1, 1), Provenance.UNKNOWN, None),  # bought then; nobody knows its years before
        (None, date(2021, 1, 1), Provenance.NEW, date(2021, 1, 1)),
        (None, None, Provenance.NEW, date(2022, 1, 1)),
        (None, None, Provenance.SECOND_HAND, None),
        (None, None, Provenance.UNKNOWN, None),
    ],
)
def test_a_life_begins_where_somebody_knows_it_did(
    made: date | None, used: date | None, past: Provenance, began: date | None
) -> None:
    rating = Rating(Basis.UNRATED, None, None, "piece")
    facts = NewItem("T", "damper", rating, provenance=past, made_on=made, in_service_on=used)
    assert Item("1", date(2022, 1, 1), facts).life_began_on == began


def test_one_stated_method_speaks_of_walls_only() -> None:
    def measure(key: str, dimension: Dimension) -> Measure:
        return Measure(key, key, dimension, "how")

    gauge = Method.ULTRASONIC_BARE
    assert method_for(measure("wall", Dimension.LENGTH), gauge) is gauge
    assert method_for(measure("pin_hole", Dimension.LENGTH), gauge) is Method.CALLIPER
    assert method_for(measure("bolts_sound", Dimension.COUNT), gauge) is Method.COUNTED
