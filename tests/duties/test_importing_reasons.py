"""A row that is not taken says what would make it pass: the kinds that come near, the column that may hold the size."""

from pathlib import Path

from inspector.duties.importing.words import kind_meant, kinds_near
from inspector.duties.office import Office
from inspector.gear.import_list import Fate
from inspector.rulebook.load import packaged
from tests.duties.lists import listed, row, run
from tests.each import each

_NAMES = {one.name.casefold(): one.key for one in packaged().kinds.values()}


@each(
    ("said", "near"),
    [
        ("Schäkel", {"bow_shackle", "dee_shackle", "soft_shackle"}),
        ("Shackel", {"bow_shackle", "dee_shackle", "soft_shackle"}),
        ("recovery strap", {"kinetic_strap", "static_strap", "tree_strap", "bridle_strap"}),
        ("Hitch reciever", {"hitch_receiver"}),
        ("High-lift jack", set()),
    ],
)
def test_the_kinds_that_come_near_a_word_are_found(said: str, near: set[str]) -> None:
    assert near <= set(kinds_near(said, _NAMES)) and bool(kinds_near(said, _NAMES)) == bool(near)


@each(
    ("said", "meant"),
    [("Hitch receiver 50mm", "hitch_receiver"), ('Bow shackle 3/4"', "bow_shackle"), ("Shackle 19 mm", "")],
)
def test_a_size_beside_the_name_of_a_kind_does_not_hide_it(said: str, meant: str) -> None:
    assert kind_meant(said, _NAMES) == meant


def test_a_row_of_an_unknown_kind_names_those_that_come_near(desk: Office, tmp_path: Path) -> None:
    found = run(desk, listed(tmp_path, "A-1;Schäkel;4.75;19;22", "A-2;Spade;4.75;19;22"))
    near = row(found, 2)
    assert near.fate is Fate.REFUSED and "bow shackle" in near.what_to_do and "soft shackle" in near.what_to_do
    assert "shackle" not in row(found, 3).what_to_do and "inspector kinds" in row(found, 3).what_to_do


def test_a_row_without_a_size_names_the_column_that_may_hold_it(desk: Office, tmp_path: Path) -> None:
    lines = ("A-1;Bow shackle;4.75 t;19 mm;worn", "A-2;Bow shackle;4.75 t;;worn")
    found = run(desk, listed(tmp_path, *lines, heads="Tag;Kind;WLL;Size;Remark"))
    with_figure, without = row(found, 2), row(found, 3)
    assert "Body diameter, Pin diameter" in with_figure.why
    assert "--column D=size:bow_diameter" in with_figure.what_to_do and "“Size”" in with_figure.what_to_do
    assert "--column" not in without.what_to_do and "Measure the piece" in without.what_to_do
