"""Ratings and sizes that no piece of gear has are refused where they are typed, and from a list."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in, check_booking
from inspector.duties.office import Office
from inspector.gear.import_list import Fate
from inspector.gear.item import NewItem, Rating, SizeAsNew
from inspector.gear.kind import Basis
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import mount, shackle, size, strap
from tests.duties.lists import HEADS, listed, row, run, shackle_line
from tests.each import each


def rated(typed: str, factor: float | None = 5.0) -> NewItem:
    figure = read(typed, Dimension.FORCE, field="rating")
    return replace(shackle(), rating=Rating(Basis.WLL, figure, factor, "piece"))


def sized(key: str, typed: str) -> NewItem:
    facts = strap() if key == "length" else mount()
    return replace(facts, sizes=(*(one for one in facts.sizes if one.key != key), size(key, typed)))


@each(
    ("facts", "field"),
    [
        (rated("2001 kN"), "rating"),
        (rated("4750 t"), "rating"),
        (rated("49 kg"), "rating"),
        (rated("4.75 kg"), "rating"),
        (rated("4.75 t", 15.1), "design factor"),
        (rated("4.75 t", 0.9), "design factor"),
        (sized("length", "201 m"), "Length"),
        (sized("wall", "51 mm"), "Wall as new"),
        (sized("outside", "1.01 m"), "Outer side"),
        (replace(shackle(), sizes=(size("bow_diameter", "19 m"), size("pin_diameter", "22 mm"))), "Body diameter"),
        (replace(mount(), rating=replace(mount().rating, figure=read("51 t", Dimension.MASS, field="r"))), "rating"),
        (replace(mount(), rating=replace(mount().rating, figure=read("3.5 kg", Dimension.MASS, field="r"))), "rating"),
    ],
)
def test_what_no_piece_has_is_refused_with_its_field(office: Office, facts: NewItem, field: str) -> None:
    with pytest.raises(Refused) as refusal:
        book_in(office, facts)
    assert refusal.value.field == field
    assert "unit right" in refusal.value.what_to_do or field == "design factor"


@each(
    "facts",
    [
        rated("2000 kN", 1.0),
        rated("51.1 kg"),
        rated("4.75 t", 15.0),
        sized("length", "200 m"),
        sized("wall", "50 mm"),
        sized("outside", "1 m"),
        replace(mount(), rating=replace(mount().rating, figure=read("50 t", Dimension.MASS, field="r"))),
    ],
)
def test_what_lies_at_the_bound_is_taken(office: Office, facts: NewItem) -> None:
    check_booking(office, facts)


def test_the_bound_is_told_in_the_units_that_were_typed(office: Office) -> None:
    with pytest.raises(Refused, match="449\u202f618"):
        book_in(office, rated("500,000 lb"))


def test_a_count_beyond_any_is_refused(office: Office) -> None:
    rope = replace(
        strap(),
        kind="wire_winch_rope",
        sizes=(size("diameter", "10 mm"), SizeAsNew("outer_wires", read("501", Dimension.COUNT, field="n"))),
    )
    with pytest.raises(Refused, match="501"):
        book_in(office, rope)


def test_a_row_of_a_list_is_refused_the_same_way(desk: Office, tmp_path: Path) -> None:
    file = listed(tmp_path, shackle_line("A-1", wll="4750"), shackle_line("A-2", wll="4.75"), heads=HEADS)
    fates = [row(run(desk, file), number).fate for number in (2, 3)]
    assert fates[0] is Fate.REFUSED and fates[1] is not Fate.REFUSED
