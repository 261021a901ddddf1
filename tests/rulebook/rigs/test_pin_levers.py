"""A hitch pin in the receiver of a rig, worked by hand: the thicker its walls and the wider the block, the longer the
lever on which it bends.

22 mm, class 4.6: bending 1.5 x 1,045.4 mm3 x 240 MPa = 376.3 N m, shear 0.6 x 380.1 mm2 x 400 MPa x 2 = 182,460 N. With
the club's 50 mm block, 1 mm of play and a wall a the lever l is (50 + 4 + 2a) / 8, and (F l / 376.3)2 + (F / 182,460)2
is 1.
"""

import pytest

from inspector.gear.dossier import Dossier
from inspector.gear.fitting import End
from inspector.gear.rig import Method, RigPiece
from inspector.rulebook.rigs.limits import Asked, limited
from inspector.rulebook.rigs.mounts import mounts
from tests.rulebook.dossiers import BOOK
from tests.rulebook.rigs.made import BOGGED, PULLING, check, link, piece, snatch, vehicle
from tests.rulebook.rigs.test_worked_loads import GENTLE, WAGONS
from tests.rulebook.sound import with_facts, with_reading

RUN = ("RC", "PN", "IN", "S-B", "K", "S-P", "P-P")
PIN = piece("PN", "hitch_pin", "", size=(("pin_diameter", "22 mm"),))
INSERT = piece("IN", "receiver_insert", "20 t", size=(("block_side", "50 mm"),))
CLUBS_N, THICK_N = 46920, 42433  # lever 7.75 mm; 8.625 mm: 43,629 N in bending alone


def receiver(
    wall: str, outside: str = "60 mm", rated: str = "1 t", *, read: float = 0.0, unsaid: bool = False
) -> RigPiece:
    """A receiver by its wall as new; read: in metres today; unsaid: nobody wrote the wall down."""

    def change(dossier: Dossier) -> Dossier:
        made = with_reading(dossier, "wall", read) if read else dossier
        sizes = tuple(one for one in made.item.facts.sizes if not unsaid or one.key != "wall")
        return with_facts(made, sizes=sizes)

    sizes = (("outside", outside), ("wall", wall))
    return piece("RC", "hitch_receiver", rated, size=sizes, on=BOGGED, end=End.REAR, change=change)


def stands_n(*parts: RigPiece) -> float | None:
    """What the pin stands in a rig with these parts, in newtons."""
    return link(check(snatch(GENTLE, instead=(INSERT, PIN, *parts), run=RUN, vehicles=WAGONS)), "PN").capacity_n


@pytest.mark.parametrize(("wall", "newtons"), [("3 mm", CLUBS_N), ("4 mm", CLUBS_N), ("7.5 mm", THICK_N)])
def test_the_wall_as_registered_lengthens_the_lever_and_never_shortens_it(wall: str, newtons: float) -> None:
    """No thin wall makes a pin stand more than its own page says."""
    assert stands_n(receiver(wall)) == pytest.approx(newtons, rel=3e-4)


def test_a_wall_that_rust_has_thinned_makes_no_pin_stronger() -> None:
    assert stands_n(receiver("7.5 mm", read=0.005)) == stands_n(receiver("7.5 mm"))


def test_a_wall_that_nobody_wrote_down_is_as_the_club_reckons_it() -> None:
    assert stands_n(receiver("7.5 mm", unsaid=True)) == pytest.approx(CLUBS_N, rel=3e-4)


def test_a_wider_block_bends_the_pin_more() -> None:
    """63 mm in a wall of 4 mm: (63 + 4 + 8) / 8 = 9.375 mm, 40,139 N in bending alone, 39,202 N with the shear; 43 mm
    in one of 7.5 mm is the lever that the club reckons with."""
    wide = piece("IN", "receiver_insert", "20 t", size=(("block_side", "63 mm"),))
    assert stands_n(receiver("4 mm"), wide) == pytest.approx(39202, rel=3e-4)
    narrow = piece("IN", "receiver_insert", "20 t", size=(("block_side", "43 mm"),))
    assert stands_n(receiver("7.5 mm"), narrow) == pytest.approx(CLUBS_N, rel=3e-4)


def test_the_share_comes_off_a_marking_too_and_is_told() -> None:
    """Nobody knows in which wall the maker tried it: 42,433 / 46,920 of 100 t."""
    marked = piece("PN", "hitch_pin", "100 t", size=(("pin_diameter", "22 mm"),))
    used = check(snatch(GENTLE, instead=(INSERT, marked, receiver("7.5 mm")), run=RUN, vehicles=WAGONS)).link("PN")
    assert used is not None and used.capacity_n == pytest.approx(980665 * THICK_N / CLUBS_N, rel=1e-3)
    assert any("longer lever" in one for one in used.taken_off)


def test_a_search_reckons_with_the_same_lever() -> None:
    """It must keep 1.5 times the pull; the receiver and its insert stand more."""
    asked = Asked(Method.KINETIC, PULLING, BOGGED, GENTLE)
    parts = (receiver("7.5 mm", "67 mm", "7 t"), PIN, INSERT)
    at_hand = [one for part in parts if not isinstance(one := limited(part, asked, BOOK), str)]
    (found,) = mounts(vehicle(BOGGED), tuple(at_hand), BOOK)
    assert found.limit_n == pytest.approx(THICK_N / 1.5, rel=3e-4)
