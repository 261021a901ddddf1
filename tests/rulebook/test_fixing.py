"""A recovery point that is welded on has no bolts to count; one whose bolts nobody wrote down is no welded one."""

from inspector.gear.dossier import Dossier
from inspector.gear.item import Fixing
from inspector.gear.outcome import Outcome
from inspector.rulebook.judge import judge
from tests.rulebook.dossiers import BOOK
from tests.rulebook.sound import sound, with_facts, with_grade, without_reading

POINT = BOOK.kinds["recovery_point"]


def outcome_of(dossier: Dossier) -> Outcome:
    return judge(dossier, BOOK, "test").outcome


def without_bolts(fixed_by: Fixing) -> Dossier:
    """A sound point of which no bolt was written down or counted."""
    point = without_reading(sound(POINT), "bolts_sound")
    sizes = tuple(one for one in point.item.facts.sizes if not one.key.startswith("bolt"))
    return with_facts(point, sizes=sizes, fixed_by=fixed_by)


def test_a_welded_point_is_judged_by_its_welds() -> None:
    welded = without_bolts(Fixing.WELDS)
    assert outcome_of(welded) is Outcome.FIT
    assert outcome_of(with_grade(welded, "weld_toes", "slight")) is Outcome.HOLD
    assert outcome_of(with_grade(welded, "weld_toes", "bad")) is Outcome.RETIRE
    assert outcome_of(with_grade(welded, "weld_toes", "not_seen")) is Outcome.HOLD
    verdict = judge(welded, BOOK, "test")
    assert "bolts-sound" not in {one.rule for one in verdict.findings}
    assert {"weld-cracked", "weld-rust-line"} <= {one.rule for one in verdict.findings}
    assert any("welded on" in one for one in verdict.capacity.left_out)


def test_a_point_of_which_nobody_wrote_down_how_it_is_fixed_waits_for_its_bolts() -> None:
    for fixed_by in (Fixing.UNKNOWN, Fixing.BOLTS):
        assert outcome_of(without_bolts(fixed_by)) is Outcome.HOLD
        assert outcome_of(without_reading(with_facts(sound(POINT), fixed_by=fixed_by), "bolts_sound")) is Outcome.HOLD


def test_bolts_that_somebody_counted_on_a_welded_point_are_not_passed_over() -> None:
    counted = with_facts(sound(POINT), sizes=without_bolts(Fixing.WELDS).item.facts.sizes, fixed_by=Fixing.WELDS)
    assert outcome_of(counted) is Outcome.HOLD
