"""The damage of a strap and a worn pin: nothing leaves its frame, and no place is claimed that nobody wrote."""

from datetime import date

import pytest
from msgspec.structs import replace

from inspector.drawings.damage_signs import damage_sign
from inspector.drawings.extent import Box, extent
from inspector.drawings.pin_shear import pin_shear_picture
from inspector.drawings.shapes import Circle, Ink, Polygon
from inspector.drawings.strap_damage import strap_damage_picture
from inspector.gear.damage import DamagePlace, DamageSort, PinWear, StrapDamage, StrapMark
from inspector.units import System
from tests.drawings.walls import assert_inside, assert_texts_apart, said
from tests.each import each

DAY = date(2026, 8, 1)
LONG = "Sleeve of one eye worn through, the webbing under it clean, a new sleeve is wanted before the next trip. " * 4


def mark(sort: DamageSort, place: DamagePlace, note: str = "", from_end_m: float | None = None) -> StrapMark:
    """A fault."""
    return StrapMark(sort, "Cuts and holes", "bad", place, note, DAY, from_end_m)


EVERY = tuple(mark(sort, place, LONG) for place in DamagePlace for sort in DamageSort)[10:]


@each("width_mm", [88.0, 178.0, 183.9])
@each("count", [1, 3, 12])
def test_every_shape_lies_in_the_frame_and_no_word_on_another(width_mm: float, count: int) -> None:
    for length_m in (9.0, None):
        drawing = strap_damage_picture(StrapDamage(length_m, "9.00 m" if length_m else "", EVERY[:count]), width_mm)
        assert_inside(drawing)
        assert_texts_apart(drawing)


def notches(damage: StrapDamage) -> list[float]:
    """How far from the left each cut on the strap stands, as a share of its length."""
    drawing = strap_damage_picture(damage, 178.0)
    drawn = [one for one in drawing.shapes if isinstance(one, Polygon) and one.points[0][1] < 15]
    return sorted((one.points[1][0] - 11.2) / (178.0 - 22.4) for one in drawn)


def test_a_measured_cut_stands_at_its_share_of_the_length() -> None:
    one = mark(DamageSort.CUT, DamagePlace.MEASURED, "four metres from the eye", 4.0)
    assert notches(StrapDamage(9.17, "9.17 m", (one,))) == pytest.approx([4.0 / 9.17], abs=0.005)
    assert notches(StrapDamage(9.17, "9.17 m", (replace(one, from_end_m=0.0),))) == pytest.approx([0.0], abs=0.005)
    assert notches(StrapDamage(9.17, "9.17 m", (replace(one, from_end_m=9.17),))) == pytest.approx([1.0], abs=0.005)


def test_a_cut_whose_place_nobody_wrote_stands_on_no_strap_and_says_so() -> None:
    damage = StrapDamage(9.0, "9.00 m", (mark(DamageSort.CUT, DamagePlace.UNKNOWN, "a cut"),))
    assert notches(damage) == []
    words = said(strap_damage_picture(damage, 178.0))
    assert "where along the strap is not written down" in words and "“a cut”" in words


def test_a_fault_of_one_end_is_marked_at_both_where_nobody_wrote_which() -> None:
    damage = StrapDamage(9.0, "9.00 m", (mark(DamageSort.CUT, DamagePlace.SEAMS),))
    left, right = notches(damage)
    assert left + right == pytest.approx(1.0)
    assert "nobody wrote which" in said(strap_damage_picture(damage, 178.0))


def test_without_a_length_no_scale_is_claimed() -> None:
    damage = StrapDamage(None, "", (mark(DamageSort.HEAT, DamagePlace.MIDDLE),))
    assert "the sketch has no scale" in said(strap_damage_picture(damage, 178.0))


def test_a_distance_is_told_in_the_units_asked_for() -> None:
    damage = StrapDamage(9.0, "9 m", (mark(DamageSort.CUT, DamagePlace.MEASURED, "", 3.048),))
    assert "10 ft from one end" in said(strap_damage_picture(damage, 178.0, System.IMPERIAL))


def test_each_sort_has_a_sign_of_its_own_that_keeps_to_its_room() -> None:
    room = Box(-3.3, -3.3, 3.3, 3.3)
    signs = {sort: damage_sign(sort, (0.0, 0.0)) for sort in DamageSort}
    assert all(room.holds(extent(shape)) for shapes in signs.values() for shape in shapes)
    assert len({tuple(shapes) for shapes in signs.values()}) == len(DamageSort)


PIN = PinWear(0.0159, "15.9 mm", 0.0148, "14.8 mm", DAY)


def sections(pin: PinWear) -> list[Circle]:
    """The circles of the section."""
    return [one for one in pin_shear_picture(pin).shapes if isinstance(one, Circle)]


def test_the_section_is_drawn_to_one_scale() -> None:
    new, worn = sections(PIN)
    assert worn.radius_mm / new.radius_mm == pytest.approx(14.8 / 15.9)
    assert new.centre == worn.centre and worn.fill is Ink.STEEL


@pytest.mark.parametrize(
    "pin", [PIN, PinWear(0.0159, "15.9 mm", None, "", None), PinWear(None, "", 0.0148, "14.8 mm", DAY)]
)
def test_what_is_unknown_of_a_pin_is_not_drawn_as_known(pin: PinWear) -> None:
    for narrow in (False, True):
        drawing = pin_shear_picture(pin, narrow=narrow)
        assert_inside(drawing)
        assert_texts_apart(drawing)
    words = said(drawing)
    assert ("what is left of it is unknown" in words and "?" in words) is (pin.thinnest_m is None)
    assert ("as new is not written down" in words) is (pin.new_m is None)
    assert any(one.fill is Ink.STEEL for one in sections(pin)) is (pin.thinnest_m is not None)


def test_a_pin_of_which_nothing_is_known_shows_no_section() -> None:
    assert sections(PinWear(None, "", None, "", None)) == []
