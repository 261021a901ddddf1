"""What a verdict says would release a hold does release it, and a hair less does not."""

from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Answer, Inspection, InspectionKind, Method, NewInspection, Reading, Surface
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Finding, Needed, Release, Status
from inspector.rulebook.judge import judge
from inspector.rulebook.release import releases
from inspector.rulebook.release_words import release_words
from inspector.units import Figure, System, show_bound
from tests.rulebook.dossiers import BOOK, TODAY, dossiers
from tests.rulebook.test_laws import verdict_of


def inspected(dossier: Dossier, **seen: tuple[object, ...]) -> Dossier:
    """The dossier with one more competent inspection, made today."""
    facts = replace(NewInspection(TODAY, InspectionKind.AFTER_EVENT, "p", competent=True), **seen)
    return replace(dossier, inspections=(*dossier.inspections, Inspection("zz-last", dossier.item.id, facts)))


def finding_after(dossier: Dossier, rule: str) -> Finding | None:
    """What the rule says now; None where it has nothing more to say."""
    return next((one for one in judge(dossier, BOOK, "test").findings if one.rule == rule), None)


def outcome_after(dossier: Dossier, rule: str) -> Outcome:
    finding = finding_after(dossier, rule)
    return finding.outcome if finding else Outcome.FIT


def drawn(dossier: Dossier, data: st.DataObject, needed: Needed) -> tuple[Release, Finding]:
    """A release of the wanted sort, and its finding, or none for this dossier."""
    verdict = verdict_of(dossier)
    found = [one for one in releases(verdict, dossier, BOOK) if one.needed is needed]
    assume(found)
    release = data.draw(st.sampled_from(found))
    return release, next(one for one in verdict.findings if one.rule == release.rule)


@given(dossiers(), st.data())
def test_every_finding_that_governs_has_one_and_a_retirement_has_nothing(dossier: Dossier, data: st.DataObject) -> None:
    verdict = verdict_of(dossier)
    governing = [one for one in verdict.findings if one.outcome is not Outcome.FIT]
    told = releases(verdict, dossier, BOOK)
    assert [one.rule for one in told] == [one.rule for one in governing]
    for release, finding in zip(told, governing, strict=True):
        if verdict.outcome is Outcome.RETIRE:
            assert release.needed is Needed.NOTHING
        elif finding.outcome is Outcome.HOLD and finding.quantity != "wall_life":
            assert release.needed is not Needed.NOTHING


def readings_of(release: Release, dossier: Dossier, value: float) -> tuple[Reading, ...]:
    assert release.dimension is not None
    figure = Figure(value, "typed", release.dimension)
    points = release.points or ("",)
    bare = (Method.ULTRASONIC_BARE, Surface.DRESSED, "gauge", True)
    return tuple(Reading(release.observation, figure, point, *bare) for point in points)


@given(dossiers(), st.data())
def test_the_reading_that_is_said_to_release_does(dossier: Dossier, data: st.DataObject) -> None:
    release, finding = drawn(dossier, data, Needed.READING)
    assume(release.limit is not None)  # of a wall's life no figure is told
    assert release.limit is not None
    inwards = 1 if release.must in {"at_least", "above"} else -1
    just = release.limit * (1 + inwards * 1e-6) if release.must in {"above", "below"} else release.limit
    released = inspected(dossier, readings=readings_of(release, dossier, just))
    assert outcome_after(released, finding.rule) is Outcome.FIT
    short = inspected(dossier, readings=readings_of(release, dossier, release.limit * (1 - inwards * 1e-3)))
    if release.observation == "wall":  # whatever is missing, a wall read below the bound is one that must not be used
        assert outcome_after(short, "wall-too-thin") is Outcome.RETIRE
    else:
        assert getattr(finding_after(short, finding.rule), "status", None) is not Status.PASSES


@given(dossiers(), st.data())
def test_the_grade_that_is_said_to_release_does(dossier: Dossier, data: st.DataObject) -> None:
    release, finding = drawn(dossier, data, Needed.GRADE)
    released = inspected(dossier, answers=(Answer(release.observation, Grade.GOOD),))
    assert outcome_after(released, finding.rule) is Outcome.FIT


@given(dossiers(), st.data())
def test_the_inspection_that_is_said_to_release_does(dossier: Dossier, data: st.DataObject) -> None:
    _, finding = drawn(dossier, data, Needed.INSPECTION)
    answers = tuple(Answer(check.key, Grade.GOOD) for check in dossier.kind.checks)
    taken = tuple(
        Reading(measure.key, Figure(0.02, "20 mm", measure.dimension), point)
        for measure in dossier.kind.measures
        for point in measure.points or ("",)
    )
    assert outcome_after(inspected(dossier, answers=answers, readings=taken), finding.rule) is Outcome.FIT


@given(dossiers())
def test_a_hold_is_always_told_what_would_settle_it(dossier: Dossier) -> None:
    verdict = verdict_of(dossier)
    findings = {one.rule: one for one in verdict.findings}
    for release in releases(verdict, dossier, BOOK):
        finding = findings[release.rule]
        words = release_words(release, finding, dossier, BOOK, System.METRIC)
        assert not words or finding.outcome is Outcome.HOLD
        final = verdict.outcome is Outcome.RETIRE or release.needed is Needed.NOTHING
        assert words or finding.outcome is not Outcome.HOLD or final
        if finding.status is Status.FAILS and release.needed is Needed.READING and release.limit is not None:
            assert release.dimension is not None
            least = release.must in {"at_least", "above"}
            systems = [show_bound(release.limit, release.dimension, system, least=least) for system in System]
            assert any(bound in words for bound in systems)
