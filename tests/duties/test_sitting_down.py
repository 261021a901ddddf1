"""Who sits at the desk, the name as stated or proved; and what is told of one person and of the register."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.back_up import back_up
from inspector.duties.book_in import book_in
from inspector.duties.change_person import change_person
from inspector.duties.keep_contact import WRITING, remove_contact, write_contact
from inspector.duties.keep_draft import keep, kept
from inspector.duties.keep_passphrases import set_passphrase, set_wish, vouch
from inspector.duties.office import Office
from inspector.duties.person_in_full import brief_held, in_full, scopes
from inspector.duties.sit_down import name_words, seat, sit_down
from inspector.duties.tell_register import tell_register
from inspector.duties.verify_book import verified_words, verify_book
from inspector.gear.person import Competence, Passphrases, Person
from inspector.refused import Refused
from tests.duties.gear import shackle

OWN = "a lantern under seven tides"


@pytest.fixture
def second(office: Office) -> Person:
    """Somebody who may judge straps for twenty days."""
    until = office.today + timedelta(days=20)
    return add_person(office, Person("", "Ben Second", "trainer", (Competence("strap", office.today, until),)))


def proved(office: Office) -> Office:
    """The office whose officer proved the name."""
    set_wish(office, Passphrases.WANTED)
    set_passphrase(office, office.officer.id, OWN)
    return vouch(office, OWN)


def test_somebody_sits_down_by_name_or_by_id(office: Office, second: Person) -> None:
    assert sit_down(office, "Ben Second").officer.id == second.id
    assert sit_down(office, second.id).officer.name == "Ben Second"
    assert seat(sit_down(office, "Ben Second")).officer.id == office.officer.id


def test_who_sits_down_after_somebody_proved_is_not_proved_by_that(office: Office, second: Person) -> None:
    vouched = proved(office)
    assert vouched.vouched

    other = sit_down(vouched, "Ben Second", OWN)

    assert not other.vouched
    assert "as stated" in name_words(other)


def test_a_wrong_passphrase_is_refused_and_none_leaves_the_name_as_stated(office: Office) -> None:
    vouched = proved(office)
    with pytest.raises(Refused, match="It is not that of"):
        sit_down(vouched, office.officer.id, "a lantern under six tides")

    assert not sit_down(vouched, office.officer.id).vouched
    assert sit_down(vouched, office.officer.id, OWN).vouched


def test_a_stranger_does_not_sit_down(office: Office, second: Person) -> None:
    with pytest.raises(Refused, match="Nobody is called “Nemo”") as told:
        sit_down(office, "Nemo")

    assert "Ben Second" in told.value.what_to_do


def test_a_piece_owned_under_a_former_name_is_told_and_one_of_a_namesake_is_not(office: Office, second: Person) -> None:
    book_in(office, replace(shackle("SH-8"), owner="ben  second"))
    book_in(office, replace(shackle("SH-9"), owner="Ben Second the elder"))
    change_person(office, "Ben Second", name="Ben Third", why="wed")

    assert [one.tag for one in in_full(office, "Ben Third").owned] == ["SH-8"]


def test_what_ends_soon_is_marked_and_what_has_no_end_is_not(office: Office, second: Person) -> None:
    assert [one.soon for one in in_full(office, second.id).held] == [True]
    assert [one.soon for one in in_full(office, office.officer.id).held] == [False]
    assert brief_held(second, office.today).startswith("strap until ")
    assert brief_held(second, office.today + timedelta(days=21)) == ""


def test_every_family_can_be_chosen_and_all_gear_stands_first(office: Office) -> None:
    offered = [scope for _, scope in scopes(office)]

    assert offered[0] == "all"
    assert set(offered[1:]) == {kind.family for kind in office.rules.kinds.values()}


def test_removed_contact_details_take_what_was_typed_with_them(office: Office, second: Person) -> None:
    write_contact(office, second.id, phone="0400 111 222")
    keep(office, f"{WRITING} {second.id}", {"phone": "0499 999 999"})

    remove_contact(office, second.id)

    assert kept(office, f"{WRITING} {second.id}") is None


def test_the_last_copy_is_told_with_what_was_written_since(office: Office, second: Person) -> None:
    assert tell_register(office).last_copy is None
    head = tell_register(office).head
    made = back_up(office)
    write_contact(office, second.id, phone="0400 111 222")

    copy = tell_register(office).last_copy

    assert copy
    assert (copy.file, copy.head, copy.later_count) == (made.file.name, head, 1)


def test_a_check_says_what_it_found_and_whether_the_head_stands_in_it(office: Office) -> None:
    head = tell_register(office).head[:10]

    said, lines = verified_words(verify_book(office, head), head)
    assert said == "Nothing was changed."
    assert f"The head {head} stands in it." in lines

    said, lines = verified_words(verify_book(office, "0123456789"), "0123456789")
    assert said == "1 fault found."
    assert "0123456789" in lines[-1]
    assert not any("stands in it" in line for line in lines)
