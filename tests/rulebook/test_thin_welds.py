"""A weld that no design rule covers is relied on for nothing, whatever sum its throat gives."""

import pytest

from inspector.gear.outcome import Outcome
from inspector.rulebook.judge import judge
from inspector.units import Dimension, read
from tests.rulebook.dossiers import BOOK
from tests.rulebook.sound import sound, with_facts, with_size


@pytest.mark.parametrize("kind", ["ball_mount", "hitch_receiver"])
@pytest.mark.parametrize(
    ("throat", "outcome"),
    [("0.1 mm", "hold"), ("1.5 mm", "hold"), ("2.99 mm", "hold"), ("3 mm", "fit"), ("6 mm", "fit")],
)
def test_a_weld_below_three_millimetres_holds_the_piece_for_every_purpose(kind: str, throat: str, outcome: str) -> None:
    si = read(throat, Dimension.LENGTH, field="throat").si
    verdict = judge(with_size(sound(BOOK.kinds[kind]), "weld_throat", si), BOOK, "test")
    assert verdict.outcome is Outcome(outcome)
    assert {one.outcome for one in verdict.by_purpose} == {Outcome(outcome)}


def test_a_throat_that_nobody_wrote_down_is_left_out_of_the_strength_and_said_to_be() -> None:
    dossier = sound(BOOK.kinds["ball_mount"])
    bare = with_facts(dossier, sizes=tuple(one for one in dossier.item.facts.sizes if one.key != "weld_throat"))
    verdict = judge(bare, BOOK, "test")
    assert verdict.outcome is Outcome.FIT and any("weld" in one for one in verdict.capacity.left_out)
