"""What the due list leaves unread can have nothing to say: the laws by which it picks pieces, for lives of any kind."""

from datetime import date, timedelta

from hypothesis import event, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.due_days import verdict_days
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection
from inspector.gear.outcome import Outcome
from inspector.gear.use import Weather
from inspector.gear.verdict import Status, Verdict
from inspector.rulebook.case import Case
from inspector.rulebook.judge import judge
from tests.rulebook.dossiers import BOOK, KINDS, TODAY, dossiers
from tests.rulebook.sound import older, sound, with_exposure

_TUBES = [one for one in KINDS if one.family == "tube"]  # the kinds with a wall
_HELD = {Outcome.HOLD, Outcome.RETIRE}


@st.composite
def _fair_lives(draw: st.DrawFn) -> Dossier:
    """A sound piece some time after it was last looked at: aged, wetted, a little worn, some of it never seen.

    Lives drawn at random are nearly always held or retired, of which these laws say little.
    """
    piece = sound(draw(st.sampled_from(KINDS) | st.sampled_from(_TUBES)))
    last = piece.inspections[-1]
    left_out = draw(st.none() | st.integers(0, 40))
    readings = [replace(one, figure=replace(one.figure, si=one.figure.si * draw(st.sampled_from((1.0, 0.99, 0.9)))))
                for at, one in enumerate(last.facts.readings) if at != left_out]  # fmt: skip
    seen_on = TODAY - timedelta(days=draw(st.integers(0, 400)))
    facts = replace(last.facts, on=seen_on, readings=tuple(readings))
    piece = replace(piece, inspections=(Inspection(last.id, last.item_id, facts),))
    if draw(st.booleans()):
        piece = older(piece, draw(st.floats(0, 12)))
    if draw(st.booleans()):
        on = TODAY - timedelta(days=draw(st.integers(0, 300)))
        piece = with_exposure(piece, draw(st.sampled_from(list(Weather))), on, draw(st.integers(1, 5)))
    return piece


def _judged(dossier: Dossier) -> Verdict:
    verdict = judge(dossier, BOOK, "test")
    event(verdict.outcome.value + (", with a wall" if verdict.wall else ""))
    return verdict


@given(_fair_lives() | dossiers())
def test_a_verdict_tells_whether_anybody_competent_has_seen_all_of_the_piece(dossier: Dossier) -> None:
    asked = [one for one in _judged(dossier).findings if one.quantity == "inspection_age"]
    never_seen = Case(dossier, BOOK).looked_over.at is None
    assert asked and all((one.status is Status.UNKNOWN) is never_seen for one in asked)


@given(_fair_lives() | dossiers())
def test_no_day_of_a_piece_in_use_comes_before_those_that_the_list_picks_by(dossier: Dossier) -> None:
    verdict = _judged(dossier)
    if verdict.outcome not in _HELD:
        assert verdict.wall is None or dossier.kind.measure("wall")
        picked_by = min(day or date.max for day in (verdict.next_due, verdict.holds_until))
        assert all(day >= picked_by for day in verdict_days(verdict).values())
