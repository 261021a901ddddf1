"""A recall that was withdrawn never said anything of a piece: its verdict is word for word what it would be without."""

from datetime import timedelta

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.kind import Grade, Kind
from inspector.gear.opinion import Answered, NewOpinion, Opinion, Stance
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import NewPieceCall, PieceCall, Step, Sure, that_count
from inspector.gear.verdict import Status
from inspector.rulebook.judge import judge
from inspector.rulebook.opinions import facts_digest, may_be_answered
from inspector.rulebook.release import releases
from inspector.rulebook.wording import explain
from inspector.units import System
from tests.each import each
from tests.rulebook.dossiers import BOOK, KINDS, TODAY, dossiers
from tests.rulebook.sound import sound, with_grade
from tests.rulebook.test_laws import check_never_milder, verdict_of

REF = "N-9"


def step(dossier: Dossier, key: str, what: Step, days: int = 0, ref: str = REF) -> PieceCall:
    """A step of the piece under a recall, so many days ago."""
    on = max(dossier.item.booked_on, TODAY - timedelta(days=days))
    return PieceCall(key, dossier.item.id, NewPieceCall(on, ref, what, Sure.CERTAIN, "why", "p"))


def with_steps(dossier: Dossier, *steps: PieceCall) -> Dossier:
    """The dossier with these as well."""
    return replace(dossier, calls=(*dossier.calls, *steps))


def told(dossier: Dossier) -> object:
    """All that is said of it."""
    verdict = judge(dossier, BOOK, "test")
    verdict = replace(verdict, releases=releases(verdict, dossier, BOOK))
    return verdict, explain(dossier, verdict, BOOK, System.METRIC)


@given(dossiers(), st.integers(0, 900))
def test_called_and_withdrawn_is_as_if_never_called(dossier: Dossier, days: int) -> None:
    once = step(dossier, "x1", Step.CALLED, days), step(dossier, "x2", Step.WITHDRAWN, days // 2)
    assert told(with_steps(dossier, *once)) == told(dossier)
    assert told(with_steps(dossier, *reversed(once))) == told(dossier)


@given(dossiers(), st.sampled_from((Step.NOT_OF_IT, Step.REMEDIED)))
def test_what_was_read_or_done_under_it_stays(dossier: Dossier, done: Step) -> None:
    under = with_steps(dossier, step(dossier, "x1", Step.CALLED), step(dossier, "x2", done))
    after = with_steps(under, step(dossier, "x3", Step.WITHDRAWN))
    check_never_milder(verdict_of(after), verdict_of(dossier))
    if done is Step.REMEDIED:
        assert verdict_of(after).outcome.severity >= Outcome.HOLD.severity


@given(dossiers())
def test_another_recall_and_a_later_call_hold_all_the_same(dossier: Dossier) -> None:
    gone = step(dossier, "x1", Step.CALLED, 9), step(dossier, "x2", Step.WITHDRAWN, 5)
    for other in (step(dossier, "w", Step.CALLED, 9, "N-8"), step(dossier, "x3", Step.CALLED, 5)):
        assert verdict_of(with_steps(dossier, *gone, other)).outcome.severity >= Outcome.HOLD.severity


def doubtful(kind: Kind) -> tuple[Dossier, tuple[Answered, ...]]:
    """A sound piece but for slight faults, and what an opinion may answer of it."""
    found = sound(kind)
    for check in kind.checks:
        slight = with_grade(found, check.key, Grade.SLIGHT.value)
        new = [one for one in verdict_of(slight).findings if one.outcome is not Outcome.FIT]
        found = slight if all(may_be_answered(one, BOOK) for one in new) else found
    held = [one for one in verdict_of(found).findings if may_be_answered(one, BOOK)]
    return found, tuple(Answered(one.rule, one.value) for one in held if one.value)


def with_opinion(dossier: Dossier, said: tuple[Answered, ...], rests_on: str) -> Dossier:
    """With the opinion of a second competent person."""
    given_then = NewOpinion(TODAY, "q", Stance.ANSWERS, "seen", said, rests_on)
    return replace(dossier, opinions=(Opinion("o", dossier.item.id, given_then),))


DOUBTFUL = [one for one in KINDS if doubtful(one)[1]]


@each("kind", DOUBTFUL, ids=lambda one: one.key)
def test_an_opinion_is_in_force_where_it_would_be_had_the_recall_never_been_entered(kind: Kind) -> None:
    bare, said = doubtful(kind)
    spoken = with_opinion(bare, said, facts_digest(bare))
    assert verdict_of(spoken).outcome is Outcome.FIT and verdict_of(bare).outcome is Outcome.HOLD
    back = step(bare, "zz", Step.WITHDRAWN)
    assert told(with_steps(spoken, step(bare, "p", Step.CALLED), back)) == told(spoken)
    held = with_steps(bare, step(bare, "b", Step.CALLED))
    while_held = with_opinion(held, said, facts_digest(held))
    assert told(with_steps(while_held, back)) == told(spoken)
    for more in (step(bare, "q", Step.NOT_OF_IT), step(bare, "q", Step.CALLED, ref="N-8")):
        lapsed = verdict_of(with_steps(while_held, more, back))
        assert Status.ANSWERED not in {one.status for one in lapsed.findings}


def test_only_the_calls_before_a_withdrawal_are_taken_back() -> None:
    keys = (("a", Step.CALLED, 9), ("b", Step.REMEDIED, 8), ("c", Step.CALLED, 7), ("d", Step.WITHDRAWN, 6),
            ("e", Step.CALLED, 5))  # fmt: skip
    made = [PieceCall(key, "i", NewPieceCall(TODAY - timedelta(days=days), REF, what, Sure.CERTAIN, "", "p"))
            for key, what, days in keys]  # fmt: skip
    assert [one.id for one in that_count(reversed(made))] == ["b", "e"]
    other = replace(made[0], facts=replace(made[0].facts, recall="N-8"))
    assert [one.id for one in that_count([other, made[3]])] == ["a"]
