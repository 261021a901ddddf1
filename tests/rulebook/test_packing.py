"""A kit by need: what the vehicles ask for, from what is fit, and what is lacking said."""

from inspector.gear.fitting import End
from inspector.gear.packing import Packed
from inspector.gear.rig import RigPiece
from inspector.gear.trip import Vehicle
from inspector.rulebook.rigs.packing import pack
from inspector.units import System
from tests.rulebook.rig_kits import BOOK, piece, sized, strap, vehicle
from tests.rulebook.sound import sound, with_grade

LIGHT, HEAVY = vehicle("L", "1,240 kg", "1,550 kg"), vehicle("H", "2,900 kg", "3,300 kg")


def store() -> list[RigPiece]:
    """Enough for a trip without a winch."""
    shackles = [piece(f"SH{n}", "bow_shackle", f"{200 + n} kN") for n in range(5)]
    return [
        *(strap("KS-light", "38 kN"), strap("KS-heavy", "80 kN"), strap("KS-spare", "82 kN"), *shackles),
        *(piece("DM1", "damper", ""), piece("DM2", "damper", ""), strap("SB", "70 kN", "10 m", "static_strap")),
        *(
            piece("HP", "hitch_pin", "90 kN"),
            piece("RI", "receiver_insert", "120 kN"),
            piece("BR", "bridle_strap", "90 kN"),
        ),
    ]


def parts() -> list[RigPiece]:
    """A point on the light vehicle, a receiver on the heavy one."""
    return [piece("PL", "recovery_point", "60 kN", "L"), piece("HR", "hitch_receiver", "60 kN", "H", End.REAR)]


def packed(at_hand: list[RigPiece], fitted: list[RigPiece], *vehicles: Vehicle) -> Packed:
    return pack(at_hand, fitted, vehicles or (LIGHT, HEAVY), BOOK, System.METRIC)


def tags(found: Packed) -> set[str]:
    return {one.tag for one in found.takes}


def test_each_vehicle_gets_a_strap_that_suits_it_and_there_is_a_spare() -> None:
    found = packed(store(), parts())
    assert {"KS-light", "KS-heavy", "KS-spare"} <= tags(found)
    needs = {one.tag: one.need for one in found.takes}
    assert "L" in needs["KS-light"]
    assert "H" in needs["KS-heavy"]


def test_four_shackles_two_dampers_a_pin_and_an_insert_go_along() -> None:
    found = packed(store(), parts())
    assert {"SH4", "SH3", "SH2", "SH1", "DM1", "DM2", "HP", "RI", "SB"} <= tags(found)
    assert "SH0" not in tags(found), "the weakest of five stays"
    assert found.lacks == ()


def test_a_bridle_goes_only_where_a_vehicle_has_two_points_at_one_end() -> None:
    assert "BR" not in tags(packed(store(), parts()))
    two = [*parts(), piece("PL2", "recovery_point", "60 kN", "L")]
    assert "BR" in tags(packed(store(), two))


def test_a_winch_asks_for_tree_strap_and_block() -> None:
    found = packed(store(), [*parts(), piece("WI", "winch", "40 kN", "H")])
    assert any("tree" in one for one in found.lacks)
    assert any("winch line" in one for one in found.lacks)


def test_nothing_unfit_is_packed_and_each_piece_left_says_why() -> None:
    cut = with_grade(sound(BOOK.kind("kinetic_strap")), "edge_cuts", "bad")
    ball = piece("TB", "tow_ball", "")
    at_hand = [*store(), piece("KS-cut", "kinetic_strap", "80 kN", dossier=cut), ball]
    found = packed(at_hand, parts())
    stays = dict(found.stays)
    assert not {"KS-cut", "TB"} & tags(found)
    assert "retired" in stays["KS-cut"]
    assert "trailer" in stays["TB"]
    assert tags(found) | set(stays) == {one.tag for one in at_hand}


def test_what_the_store_lacks_is_named_for_the_vehicle() -> None:
    found = packed([one for one in store() if one.tag != "KS-light"], [one for one in parts() if one.tag != "PL"])
    assert any("L" in one and "kinetic strap" in one for one in found.lacks)
    assert any("recovery point" in one and "L" in one for one in found.lacks)


def made(tag: str, kind: str, strength: str, key: str, text: str) -> RigPiece:
    """A sound piece with one of its sizes."""
    return piece(tag, kind, strength, dossier=sized(sound(BOOK.kind(kind)), key, text))


def test_what_goes_together_with_nothing_on_these_vehicles_stays_at_home_and_says_so() -> None:
    """The strongest shackle's pin is too thick, the strongest insert lies loose, the strongest pin fits no hole."""
    misfits = [
        made("SH9", "bow_shackle", "400 kN", "pin_diameter", "28 mm"),
        made("RI9", "receiver_insert", "400 kN", "block_side", "38 mm"),
        made("HP9", "hitch_pin", "400 kN", "pin_diameter", "25 mm"),
    ]
    found = packed([*store(), *misfits], parts())
    assert {"SH4", "RI", "HP"} <= tags(found)
    stays = dict(found.stays)
    assert "goes through no point" in stays["SH9"]
    assert "fills no receiver" in stays["RI9"]
    assert "no pin hole" in stays["HP9"]


def test_a_shackle_that_goes_through_the_insert_alone_goes_along() -> None:
    wide = made("RI", "receiver_insert", "120 kN", "hole_diameter", "30 mm")
    thick = made("SH9", "bow_shackle", "400 kN", "pin_diameter", "28 mm")
    others = [one for one in store() if one.tag != "RI"]
    assert "SH9" in tags(packed([*others, wide, thick], parts()))
