"""Where a strap is damaged and how far a pin is worn: what was written, and never more."""

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.retire_item import print_notice
from inspector.duties.tell_damage import pin_wear, strap_damage
from inspector.gear.damage import DamagePlace, DamageSort, StrapDamage, StrapMark
from inspector.gear.item import NewItem, Provenance, Rating
from inspector.gear.kind import Basis
from inspector.gear.papers import RetirementNotice
from inspector.paper.printed import Printed
from inspector.register.rows import from_body
from inspector.units import System
from tests.duties.gear import STRAP_READINGS, all_good, shackle, size, strap
from tests.paper.reading import all_text


def seen(office: Office, note: str = "", answer_note: str = "", **bad: str) -> StrapDamage | None:
    """The strap after one more inspection."""
    kind = open_item(office, "KS-1").dossier.kind
    made = all_good(office, kind, STRAP_READINGS, None, "", **bad)
    answers = tuple(replace(one, note=answer_note if one.check in bad else "") for one in made.answers)
    record_inspection(office, "KS-1", replace(made, note=note, answers=answers))
    return strap_damage(open_item(office, "KS-1").dossier)


def one_mark(found: StrapDamage | None) -> StrapMark:
    """Its one mark."""
    assert found
    (mark,) = found.marks
    return mark


@pytest.fixture
def booked(office: Office) -> Office:
    """A strap of nine metres."""
    book_in(office, strap())
    return office


@pytest.mark.parametrize(
    ("note", "place", "from_end_m"),
    [
        ("A cut in the edge, four metres from the marked eye.", DamagePlace.MEASURED, 4.0),
        ("Schnitt, 1,5 m vom Auge.", DamagePlace.MEASURED, 1.5),
        ("A 30 mm cut, 80 cm from the label.", DamagePlace.MEASURED, 0.8),
        ("a cut 6 ft from one end", DamagePlace.MEASURED, 1.8288),
        ("Cut in the middle.", DamagePlace.MIDDLE, None),
        ("A cut of 30 mm.", DamagePlace.UNKNOWN, None),
        ("Cut 1 m from one eye and 2 m from the other.", DamagePlace.UNKNOWN, None),
        ("A cut 12 m from the eye.", DamagePlace.UNKNOWN, None),  # longer than the strap
        ("", DamagePlace.UNKNOWN, None),
    ],
)
def test_a_place_is_taken_from_a_note_that_names_one(
    booked: Office, note: str, place: DamagePlace, from_end_m: float | None
) -> None:
    mark = one_mark(seen(booked, note, edge_cuts="bad"))
    assert (mark.sort, mark.place, mark.note) == (DamageSort.CUT, place, note)
    assert mark.from_end_m == (pytest.approx(from_end_m) if from_end_m else None)


def test_a_note_on_two_faults_places_neither_but_one_on_the_very_fault_does(booked: Office) -> None:
    found = seen(booked, "Torn one metre from the eye.", edge_cuts="bad", melted_hard="bad")
    assert found and {one.place for one in found.marks} == {DamagePlace.UNKNOWN}
    found = seen(booked, "", "two metres from the eye", edge_cuts="bad", melted_hard="bad")
    assert found and {one.from_end_m for one in found.marks} == {2.0}


def test_eyes_and_stitching_have_their_place_by_nature(booked: Office) -> None:
    found = seen(booked, strap_eyes="bad", stitching="bad")
    assert found and {one.place for one in found.marks} == {DamagePlace.EYES, DamagePlace.SEAMS}


def test_a_fault_that_was_found_good_since_is_no_damage_any_more(booked: Office) -> None:
    assert seen(booked, fading="slight")
    assert seen(booked) is None


def test_the_length_is_the_last_one_measured(booked: Office) -> None:
    found = seen(booked, edge_cuts="bad")
    assert found and found.length == "9.00 m" and found.length_m == 9.0


def test_what_is_no_strap_has_no_strap_s_damage_and_no_pin(booked: Office) -> None:
    book_in(booked, shackle("SH-1"))
    dossier = open_item(booked, "SH-1").dossier
    assert strap_damage(dossier) is None and pin_wear(dossier) is None


def test_a_pin_is_told_at_its_thinnest(office: Office) -> None:
    rating = Rating(Basis.UNRATED, None, None, "piece")
    facts = NewItem("HP-1", "hitch_pin", rating, sizes=(size("pin_diameter", "15.9 mm"),), owner="Club")
    book_in(office, replace(facts, provenance=Provenance.NEW))
    worn = pin_wear(open_item(office, "HP-1").dossier)
    assert worn and worn.new_typed == "15.9 mm" and worn.thinnest_m is None and worn.read_on is None
    kind = open_item(office, "HP-1").dossier.kind
    for typed in ("15.2 mm", "15.4 mm"):
        record_inspection(office, "HP-1", all_good(office, kind, {"pin_diameter": typed}))
    worn = pin_wear(open_item(office, "HP-1").dossier)
    assert worn and worn.as_typed == "15.2 mm" and worn.read_on == office.today


def test_the_notice_of_a_strap_shows_its_damage_and_a_reprint_the_same(booked: Office) -> None:
    seen(booked, "A cut in the edge, four metres from the marked eye.", edge_cuts="bad")
    first = print_notice(booked, "KS-1").path.read_bytes()
    assert "What was found on the strap" in text_of(first) and "4 m from one end" in text_of(first)
    assert print_notice(booked, "KS-1").path.read_bytes() == first


def text_of(pdf: bytes) -> str:
    """What stands on it."""

    return all_text(Printed(pdf, 0, ()))


def test_a_notice_that_was_kept_before_there_were_sketches_still_prints(booked: Office) -> None:
    seen(booked, edge_cuts="bad")
    print_notice(booked, "KS-1")
    with booked.book.reading() as page:
        kept = page.latest_document("retirement_notice", open_item(booked, "KS-1").dossier.item.id)
    assert kept
    old = kept[1].replace('"damage":', '"was":').replace('"pin":', '"too":')
    assert from_body(old, RetirementNotice).damage is None


def test_its_pictures_speak_the_club_s_units_and_do_so_again_when_the_club_has_others(booked: Office) -> None:
    imperial = replace(booked, system=System.IMPERIAL)
    seen(booked, "A cut in the edge, four metres from the marked eye.", edge_cuts="bad")
    first = print_notice(imperial, "KS-1").path.read_bytes()
    assert "13.1 ft from one end" in text_of(first)
    assert print_notice(booked, "KS-1").path.read_bytes() == first
