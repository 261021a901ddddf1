"""What is marked cannot be more than the best material of its sizes bears; what honest makers mark is well below."""

import pytest

from inspector.gear.item import Rating, SizeAsNew
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.rulebook.bearable import rating_over_sizes
from inspector.rulebook.case import Case
from inspector.rulebook.judge import judge
from inspector.units import Dimension, read
from tests.each import each
from tests.rulebook.dossiers import BOOK
from tests.rulebook.sound import sound, with_facts


def marked(kind: str, basis: str, typed: str, factor: float | None, **sizes: str) -> Case:
    """A sound piece of a kind with another rating and these sizes alone."""
    known = {one.key: one.dimension for one in BOOK.kinds[kind].sizes}
    given = tuple(SizeAsNew(key, read(text, known[key], field=key)) for key, text in sizes.items())
    rating = Rating(Basis(basis), read(typed, Dimension.FORCE, field="rating"), factor, "piece")
    return Case(with_facts(sound(BOOK.kinds[kind]), rating=rating, sizes=given), BOOK)


def over_of(case: Case) -> float | None:
    value = rating_over_sizes(case).value
    return value.number if value else None


@each(
    ("kind", "basis", "typed", "factor", "sizes", "over"),
    [  # by hand: A d^2 pi / 4; pin 2 x 0.6 x 1220 MPa, legs 2 x 1220 MPa; 1 t is 9.80665 kN
        ("bow_shackle", "wll", "4750 t", 5, {"bow_diameter": "19 mm", "pin_diameter": "22 mm"}, 418.5),
        ("bow_shackle", "wll", "47.5 t", 5, {"bow_diameter": "19 mm", "pin_diameter": "22 mm"}, 4.185),
        ("bow_shackle", "wll", "47.5 t", None, {"bow_diameter": "19 mm", "pin_diameter": "22 mm"}, 1.674),
        ("bow_shackle", "wll", "4.75 t", 19, {"bow_diameter": "19 mm", "pin_diameter": "22 mm"}, 1.590),
        ("dee_shackle", "wll", "9.5 t", 5, {"bow_diameter": "13 mm", "pin_diameter": "25 mm"}, 1.438),
        ("hitch_pin", "wll", "475 t", 5, {"pin_diameter": "22 mm"}, 41.85),
        ("wire_winch_rope", "mbs", "900 t", None, {"diameter": "10 mm"}, 52.03),
        ("soft_shackle", "mbs", "900 t", None, {"diameter": "10 mm"}, 7.204),
        ("fibre_winch_line", "mbs", "95 t", None, {"diameter": "10 mm"}, 3.042),
        ("kinetic_rope", "mbs", "94 t", None, {"diameter": "22 mm"}, 2.526),
        ("recovery_point", "mbs", "90 t", None, {"bolt_count": "2", "bolt_diameter": "12 mm"}, 3.198),
        ("kinetic_strap", "mbs", "110 t", None, {"width": "80 mm"}, 2.247),
    ],
)
def test_what_no_material_bears_is_held(
    kind: str, basis: str, typed: str, factor: float | None, sizes: dict[str, str], over: float
) -> None:
    case = marked(kind, basis, typed, factor, **sizes)
    assert over_of(case) == pytest.approx(over, rel=1e-3)
    found = judge(case.dossier, BOOK, "test").findings
    assert [one.outcome for one in found if one.quantity == "rating_over_sizes"] == [Outcome.HOLD]


@each(
    ("kind", "basis", "typed", "factor", "sizes"),
    [  # the strongest that are sold: alloy shackles of grade 8, class 10.9 pins, compacted rope, HMPE, plies of webbing
        ("bow_shackle", "wll", "7 t", 5, {"bow_diameter": "19 mm", "pin_diameter": "22 mm"}),
        ("bow_shackle", "wll", "4.75 t", 6, {"bow_diameter": "19 mm", "pin_diameter": "22 mm"}),
        ("bow_shackle", "wll", "0.5 t", 6, {"bow_diameter": "6 mm", "pin_diameter": "8 mm"}),
        ("bow_shackle", "wll", "12 t", 6, {"bow_diameter": "32 mm", "pin_diameter": "35 mm"}),
        ("dee_shackle", "wll", "80 t", 4, {"bow_diameter": "91 mm", "pin_diameter": "105 mm"}),
        ("hitch_pin", "mbs", "250 kN", None, {"pin_diameter": "16 mm"}),
        ("wire_winch_rope", "mbs", "105 kN", None, {"diameter": "10 mm"}),
        ("soft_shackle", "mbs", "25 t", None, {"diameter": "10 mm"}),
        ("fibre_winch_line", "mbs", "160 kN", None, {"diameter": "10 mm"}),
        ("kinetic_rope", "mbs", "14 t", None, {"diameter": "22 mm"}),
        ("recovery_point", "mbs", "12 t", None, {"bolt_count": "2", "bolt_diameter": "12 mm"}),
        ("kinetic_strap", "mbs", "20 t", None, {"width": "75 mm"}),
    ],
)
def test_no_honest_marking_comes_near(
    kind: str, basis: str, typed: str, factor: float | None, sizes: dict[str, str]
) -> None:
    over = over_of(marked(kind, basis, typed, factor, **sizes))
    assert over is not None and over < 0.9


def test_a_size_that_nobody_wrote_down_is_told_and_holds_nothing() -> None:
    case = marked("soft_shackle", "mbs", "13 t", None)
    assert rating_over_sizes(case).value is None and rating_over_sizes(case).why_unknown


def test_a_rating_that_is_none_and_a_part_that_is_welded_on_are_not_held_against_sizes() -> None:
    unrated = with_facts(sound(BOOK.kinds["hitch_pin"]), rating=Rating(Basis.UNRATED, None, None, "none"))
    assert not rating_over_sizes(Case(unrated, BOOK)).applies


def test_a_thicker_rope_bears_what_a_thin_one_cannot() -> None:
    thin = marked("wire_winch_rope", "mbs", "200 kN", None, diameter="10 mm")
    thick = marked("wire_winch_rope", "mbs", "200 kN", None, diameter="20 mm")
    assert (over_of(thin) or 0) > 1 > (over_of(thick) or 1)
    found = [one for one in judge(thin.dossier, BOOK, "test").findings if one.quantity == "rating_over_sizes"]
    assert [one.outcome for one in found] == [Outcome.HOLD]
