"""The words of a verdict name the day that its dates name, and its figures do not contradict one another."""

from datetime import timedelta

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.kind import Kind
from inspector.gear.outcome import Outcome
from inspector.language import show_day
from inspector.rulebook.judge import judge
from inspector.rulebook.wording import explain
from tests.rulebook import sound as make
from tests.rulebook.dossiers import BOOK, TODAY

STRAP = BOOK.kind("kinetic_strap")
ASK = "From that day on time alone may change this"


def check_one_day(dossier: Dossier) -> bool:
    """What may be used is told the earliest day on which anything may change, and no later one; False: it may not."""
    verdict = judge(dossier, BOOK, "test")
    if verdict.outcome not in {Outcome.FIT, Outcome.DERATE}:
        return False
    days = [day for day in (verdict.next_due, verdict.holds_until) if day]
    plain = explain(dossier, verdict, BOOK).plain
    assert not days or show_day(min(days)) in plain
    assert (ASK in plain) is (verdict.holds_until is not None and verdict.holds_until == min(days))
    assert not any(show_day(day) in plain for day in days if day > min(days))
    return True


def aged(kind: Kind, years: int, days: int) -> Dossier:
    """A sound piece that was made and first used so many years and days ago."""
    sound = make.sound(kind)
    born = TODAY.replace(year=TODAY.year - years) + timedelta(days=days)
    return replace(sound, item=replace(sound.item, facts=replace(sound.item.facts, made_on=born, in_service_on=born)))


def test_the_words_name_the_earliest_day_and_no_later_one() -> None:
    ages = [(years, days) for years in (1, 3, 5) for days in (1, 89, 90, 91, 92, 180, 364)]
    every = [aged(kind, *age) for kind in BOOK.kinds.values() for age in ages]
    told = [one for one in every if check_one_day(one)]
    assert len(told) > len(every) / 2


def test_a_strap_that_steps_down_before_its_next_inspection_is_told_that_day() -> None:
    """Below: the step comes before the inspection is due; at: on that day; above: after it."""
    seen = make.sound_inspection(STRAP, TODAY - timedelta(days=100))
    due = judge(replace(make.sound(STRAP), inspections=(seen,)), BOOK, "test").next_due
    assert due and TODAY < due < TODAY + timedelta(days=364)  # a strap takes a step every year
    for days, is_asked in ((-1, True), (0, True), (1, False)):
        step = due + timedelta(days=days)
        strap = replace(aged(STRAP, 5, (step - TODAY).days), inspections=(seen,))
        verdict = judge(strap, BOOK, "test")
        assert verdict.holds_until == min(step, due + timedelta(days=1))
        assert (ASK in explain(strap, verdict, BOOK).plain) is is_asked
        assert check_one_day(strap)
