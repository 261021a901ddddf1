"""The words of a verdict name the day that its dates name, and its figures do not contradict one another."""

from datetime import timedelta

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.item import Provenance
from inspector.gear.kind import Kind
from inspector.gear.outcome import Outcome
from inspector.language import show_day
from inspector.rulebook.judge import judge
from inspector.rulebook.release import releases
from inspector.rulebook.sums_shown import sums_of
from inspector.rulebook.wording import explain
from inspector.units import Dimension, System, show_bound
from tests.rulebook import sound as make
from tests.rulebook.dossiers import BOOK, TODAY
from tests.rulebook.test_walls import Tube, everywhere, reading

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


def sums(tube: Tube) -> dict[str, str]:
    """The figures behind a tube's verdict, by their names."""
    return {one.label: one.text for one in explain(tube.dossier(), tube.judged(), BOOK).sums}


def test_a_wall_that_is_used_up_is_given_no_day_to_come() -> None:
    """Below, at and above: what is left is less than, just, and more than must be left and the gauge allows."""
    must = Tube(BOOK).read(0, *everywhere("5.0 mm")).judged().wall
    assert must
    for spare_mm, is_left in ((-0.3, False), (-0.01, False), (0.4, True)):
        last = f"{must.required_m * 1e3 + spare_mm + BOOK.setting('gauge_accuracy') * 1e3:.3f} mm"
        tube = Tube(BOOK).read(600, *everywhere("5.0 mm")).read(0, *everywhere("5.0 mm", reading("bottom", last)))
        verdict = tube.judged()
        assert verdict.wall and verdict.wall.band
        held = replace(verdict, outcome=Outcome.HOLD)  # as of a bar that may not be retired by it
        lines = {one.label: one.text for one in sums_of(held, System.METRIC)}
        assert (lines["Remaining life"] == "none") is not is_left
        assert ("Retire date" in lines) is is_left


def test_it_is_said_which_points_nobody_has_read_once_one_was_read() -> None:
    never, half = Tube(BOOK), Tube(BOOK).read(0, reading("bottom", "4.9 mm"))
    for one in (never, half):
        one.provenance = Provenance.UNKNOWN
    assert "no competent person has read its wall." in sums(never)["Strength now"]
    assert "has read its wall at: top, left, right, at pin hole." in sums(half)["Strength now"]


def test_the_wall_of_a_strength_says_that_it_is_reckoned_ahead() -> None:
    told = sums(Tube(BOOK).read(0, *everywhere("4.9 mm")))["Reckoned with"]
    assert "reckoned ahead to 1 Jan 2027" in told and "stands until then" in told


def test_of_two_limits_on_one_reading_only_the_one_that_lets_it_pass_is_told() -> None:
    """A shackle whose body nobody measured waits for two rules on its wear; the stricter one says what passes."""
    kind = BOOK.kind("bow_shackle")
    sound = make.sound(kind)
    last = sound.inspections[-1]
    unread = tuple(one for one in last.facts.readings if one.measure != "bow_diameter")
    dossier = replace(sound, inspections=(replace(last, facts=replace(last.facts, readings=unread)),))
    verdict = judge(dossier, BOOK, "test")
    verdict = replace(verdict, releases=releases(verdict, dossier, BOOK))
    asked = [one for one in verdict.releases if one.observation == "bow_diameter"]
    assert len({one.limit for one in asked}) > 1
    told = {one.release for one in explain(dossier, verdict, BOOK).reasons if "body" in one.release}
    strictest = max(one.limit for one in asked if one.limit)
    assert len(told) == 1 and show_bound(strictest, Dimension.LENGTH, System.METRIC, least=True) in told.pop()


def test_a_loss_that_is_known_and_not_taken_is_told_with_its_reason() -> None:
    """Up to the limit of the rule, 5 %, the loss of 2 % a year is told and the strength stays; above it is taken."""
    name = "Strength lost to age and sun"
    for years, told in ((0, ""), (1, "not taken off"), (2, "not taken off"), (3, "leaves"), (4, "leaves")):
        strap = aged(STRAP, years, -1)
        verdict = judge(strap, BOOK, "test")
        lines = {one.label: one.text for one in explain(strap, verdict, BOOK).sums}
        whole = verdict.capacity.now_n == verdict.capacity.as_marked_n
        assert whole is (told != "leaves") and told in lines.get(name, "") and (name in lines) is bool(told), years
        if told == "not taken off":
            assert lines[name].startswith(f"{2 * years} %") and "above 5 %" in lines[name]
