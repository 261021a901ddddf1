"""A passphrase proves who is at the desk, nobody takes over a name, and what is only stated is printed as stated."""

from collections.abc import Callable
from pathlib import Path

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_owner, label_anew
from inspector.duties.change_person import Widening, end_competence, give_competence
from inspector.duties.close_count import close_count
from inspector.duties.give_opinion import answer_findings
from inspector.duties.hand_over import hand_over
from inspector.duties.keep_passphrases import (
    is_asked,
    passes_nothing,
    remove_passphrase,
    set_passphrase,
    set_wish,
    vouch,
    vouch_second,
)
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.preview_verdict import preview_verdict
from inspector.duties.record_inspection import record_inspection
from inspector.duties.release_evidence import release_evidence, release_vehicle
from inspector.duties.retire_item import print_notice
from inspector.duties.strike_entry import strike_entry
from inspector.duties.take_stock import begin_count, mark
from inspector.duties.tell_history import history_of
from inspector.duties.tell_people import list_people
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import InspectionKind
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Passphrases, Person
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.incidents import beach, reported
from tests.duties.test_opinions import GROUND, RULE, add, held_strap

ADAS, BOS = "low water at the spit", "eleven wet dogs barking"


def seated(office: Office, person: Person) -> Office:
    return replace(office, officer=person, vouched=False)


@pytest.fixture
def wanted(office: Office) -> Office:
    """The club wants passphrases and Ada, who gave hers, is at the desk."""
    set_wish(office, Passphrases.WANTED)
    set_passphrase(office, "Ada Officer", ADAS)
    return vouch(office, ADAS)


@pytest.fixture
def required(wanted: Office) -> Office:
    """Ada and Bo have one, and the club requires them."""
    bo = add(wanted, "Bo Second")
    set_passphrase(wanted, bo.id, BOS)
    set_wish(wanted, Passphrases.REQUIRED)
    return wanted


def printed(path: Path) -> str:
    text = " ".join(page.extract_text() for page in PdfReader(path).pages)
    return " ".join(text.split())


# --- asking and giving ---


def test_it_is_asked_only_of_who_has_one_and_where_the_club_wants_it(office: Office) -> None:
    assert not is_asked(office)
    set_wish(office, Passphrases.WANTED)
    assert not is_asked(office)
    set_passphrase(office, "Ada Officer", ADAS)
    assert is_asked(office)
    set_wish(vouch(office, ADAS), Passphrases.OFF)
    assert not is_asked(office) and not vouch(office, ADAS).vouched


def test_the_right_one_vouches_none_leaves_the_name_as_stated_and_a_wrong_one_is_refused(wanted: Office) -> None:
    stated = replace(wanted, vouched=False)
    assert vouch(stated, ADAS).vouched and not vouch(stated, "").vouched
    with pytest.raises(Refused, match="not that of Ada Officer"):
        vouch(stated, ADAS.upper())


def test_nothing_of_a_passphrase_is_in_the_register(wanted: Office, tmp_path: Path) -> None:
    kept = b"".join(file.read_bytes() for file in tmp_path.glob("register.db*"))
    assert ADAS.encode() not in kept and b"$argon2id$" in kept
    assert verify_book(wanted).faults == ()
    assert [one.has_passphrase for one in list_people(wanted).rows] == [True]


# --- nobody takes over a name ---


def test_only_who_gave_the_old_one_changes_his_own(wanted: Office) -> None:
    stated = replace(wanted, vouched=False)
    with pytest.raises(Refused, match="was not shown by a passphrase"):
        set_passphrase(stated, "Ada Officer", BOS)
    set_passphrase(wanted, "Ada Officer", BOS)
    assert vouch(stated, BOS).vouched
    with pytest.raises(Refused, match="not that of"):
        vouch(stated, ADAS)


def test_the_first_of_all_is_taken_as_stated_and_every_other_is_given_by_one_who_has_one(wanted: Office) -> None:
    bo = add(wanted, "Bo Second")
    with pytest.raises(Refused, match="was not shown by a passphrase"):
        set_passphrase(seated(wanted, bo), bo.id, BOS)
    with pytest.raises(Refused, match="has not given a passphrase"):
        set_passphrase(replace(wanted, vouched=False), bo.id, BOS)
    set_passphrase(wanted, bo.id, BOS)
    assert vouch(seated(wanted, bo), BOS).vouched


def test_a_lost_one_is_set_anew_by_another_competent_person_only(wanted: Office) -> None:
    bo, di = add(wanted, "Bo Second"), add(wanted, "Di Member", competent=False)
    set_passphrase(wanted, bo.id, BOS)
    set_passphrase(wanted, di.id, "nine green bottles")
    member = vouch(seated(wanted, di), "nine green bottles")
    deeds: list[Callable[[], object]] = [lambda: set_passphrase(member, bo.id, ADAS)]
    deeds.append(lambda: remove_passphrase(member, bo.id))
    for deed in deeds:
        with pytest.raises(Refused, match="neither the equipment officer nor competent"):
            deed()
    set_passphrase(vouch(seated(wanted, bo), BOS), "Ada Officer", "a new one for Ada's sake")
    assert vouch(replace(wanted, vouched=False), "a new one for Ada's sake").vouched


def test_a_competence_that_ended_helps_nobody(wanted: Office) -> None:
    bo = add(wanted, "Bo Second")
    set_passphrase(wanted, bo.id, BOS)
    end_competence(wanted, bo.id, "all", "lapsed")
    tomorrow = vouch(seated(wanted, bo), BOS).at(wanted.now.replace(day=wanted.now.day + 1))
    with pytest.raises(Refused, match="neither the equipment officer"):
        set_passphrase(tomorrow, "Ada Officer", "a taken over desk")


@pytest.mark.parametrize("bad", ["", "short", "Ada Officer is me", "two lines\nof signs", "   short    ", "x" * 500])
def test_a_passphrase_that_is_short_or_names_its_owner_is_refused(wanted: Office, bad: str) -> None:
    with pytest.raises(Refused):
        set_passphrase(wanted, "Ada Officer", bad)
    assert vouch(replace(wanted, vouched=False), ADAS).vouched


def test_where_the_club_asks_for_none_none_is_set(office: Office) -> None:
    with pytest.raises(Refused, match="asks for no passphrases"):
        set_passphrase(office, "Ada Officer", ADAS)


def test_one_may_be_taken_out_by_its_owner_but_not_the_last_two_where_they_are_required(required: Office) -> None:
    with pytest.raises(Refused, match="at least 2 people"):
        remove_passphrase(required, "Ada Officer")
    set_wish(required, Passphrases.WANTED)
    with pytest.raises(Refused, match="has not given a passphrase"):
        remove_passphrase(replace(required, vouched=False), "Ada Officer")
    remove_passphrase(required, "Ada Officer")
    with pytest.raises(Refused, match="has none"):
        remove_passphrase(required, "Ada Officer")


# --- what the club wants ---


def test_the_wish_is_loosened_only_by_who_gave_his_own(required: Office) -> None:
    stated = replace(required, vouched=False)
    for milder in (Passphrases.OFF, Passphrases.WANTED):
        with pytest.raises(Refused, match="has not given a passphrase"):
            set_wish(stated, milder)
    set_wish(required, Passphrases.OFF)


def test_they_are_required_only_once_two_have_one(office: Office) -> None:
    with pytest.raises(Refused, match="Nobody can have given one yet"):
        set_wish(office, Passphrases.REQUIRED)
    set_wish(office, Passphrases.WANTED)
    with pytest.raises(Refused, match="“wanted” already"):
        set_wish(office, Passphrases.WANTED)
    set_passphrase(office, "Ada Officer", ADAS)
    with pytest.raises(Refused, match="at least 2 people"):
        set_wish(vouch(office, ADAS), Passphrases.REQUIRED)


# --- what a name counts for ---


def test_wanted_a_stated_name_still_passes_and_the_history_says_so(wanted: Office) -> None:
    kind, bo = book_in(wanted, shackle()).dossier.kind, add(wanted, "Bo Second")
    seen = record_inspection(wanted, "SH-1", all_good(wanted, kind, SHACKLE_READINGS, by=bo.id))
    assert seen.verdict.outcome is Outcome.FIT
    record_inspection(wanted, "SH-1", all_good(wanted, kind, SHACKLE_READINGS))
    rows = [row.by for row in history_of(wanted, "SH-1") if row.what == "Inspection"]
    assert rows == ["Ada Officer", "Bo Second (name as stated)"]


def test_required_a_stated_name_passes_nothing_but_its_faults_count(required: Office) -> None:
    kind = book_in(required, shackle()).dossier.kind
    for desk, by in ((required, "Bo Second"), (replace(required, vouched=False), "Ada Officer")):
        facts = all_good(desk, kind, SHACKLE_READINGS, by=by)
        assert record_inspection(desk, "SH-1", facts).verdict.outcome is Outcome.HOLD
        assert by in passes_nothing(desk, "SH-1", facts)[0]
    facts = all_good(required, kind, SHACKLE_READINGS)
    assert record_inspection(required, "SH-1", facts).verdict.outcome is Outcome.FIT
    assert passes_nothing(required, "SH-1", facts) == ()
    broken = all_good(required, kind, SHACKLE_READINGS, by="Bo Second", cracks="bad")
    assert record_inspection(required, "SH-1", broken).verdict.outcome is Outcome.RETIRE


def test_it_is_said_why_an_inspection_of_ones_own_or_by_a_member_passes_nothing(office: Office) -> None:
    """Of one's own a second competent person is asked for; of a person who may not judge it, somebody who may."""
    kind = book_in(office, replace(shackle(), owner=office.officer.name)).dossier.kind
    bo, di = add(office, "Bo Second"), add(office, "Di Member", competent=False)
    for by, second, said in (
        (office.officer.id, "", ("owns the piece", "second")),
        (office.officer.id, di.id, ("Di Member is not entered as competent")),
        (di.id, "", ("Di Member is not entered as competent",)),
        (di.id, bo.id, ("Di Member is not entered as competent",)),
        (bo.id, "", ()),
        (office.officer.id, bo.id, ()),
    ):
        facts = replace(all_good(office, kind, SHACKLE_READINGS, by=by), second=second)
        judged, told = record_inspection(office, "SH-1", facts), " ".join(passes_nothing(office, "SH-1", facts))
        assert all(one in told for one in said) and bool(told) is bool(said), told
        assert judged.dossier.inspections[-1].is_thorough is not bool(said)
    check = replace(all_good(office, kind, SHACKLE_READINGS, by=di.id), kind=InspectionKind.BEFORE_USE)
    assert passes_nothing(office, "SH-1", check) == ()


def test_required_the_preview_says_the_same_as_the_deed(required: Office) -> None:
    book_in(required, shackle())
    dossier = open_item(required, "SH-1").dossier
    facts = all_good(required, dossier.kind, SHACKLE_READINGS)
    stated = replace(required, vouched=False)
    assert preview_verdict(stated, dossier, facts).verdict.outcome is Outcome.HOLD
    assert preview_verdict(required, dossier, facts).verdict.outcome is Outcome.FIT


def test_required_a_stated_second_name_does_not_release_one_s_own_gear(required: Office) -> None:
    kind = book_in(required, shackle(owner="Ada Officer")).dossier.kind
    both = replace(all_good(required, kind, SHACKLE_READINGS), second="Bo Second")
    assert record_inspection(required, "SH-1", both).verdict.outcome is Outcome.HOLD
    set_wish(required, Passphrases.WANTED)
    assert record_inspection(required, "SH-1", both).verdict.outcome is Outcome.FIT


def test_required_what_loosens_wants_a_name_that_was_given(required: Office) -> None:
    tag = held_strap(required)
    ref = next(row.ref for row in history_of(required, tag) if row.ref)
    stated = replace(required, vouched=False)
    deeds: list[Callable[[], object]] = [
        lambda: answer_findings(required, tag, [RULE], GROUND, "Bo Second"),
        lambda: strike_entry(stated, tag, ref, "Bo Second", "another strap"),
        lambda: add(stated, "Cy Third"),
        lambda: give_competence(stated, "Bo Second", Competence("strap", stated.today), Widening("course")),
    ]
    for deed in deeds:
        with pytest.raises(Refused, match="The club requires passphrases"):
            deed()
    bo = next(one.person for one in list_people(required).rows if one.person.name == "Bo Second")
    vouched = vouch(seated(required, bo), BOS)
    assert answer_findings(vouched, tag, [RULE], GROUND).verdict.outcome is Outcome.FIT
    both = vouch_second(required, "Bo Second", BOS)
    assert strike_entry(both, tag, ref, "Bo Second", "another strap").verdict.outcome is Outcome.HOLD


def test_required_evidence_is_let_go_only_by_a_name_that_was_given(wanted: Office) -> None:
    beach(wanted)
    set_passphrase(wanted, "Bo Second", BOS)
    set_wish(wanted, Passphrases.REQUIRED)
    required, ref = wanted, reported(wanted).incident.ref
    stated, why = replace(required, vouched=False), "the inquiry is over"
    deeds: list[Callable[[], object]] = [
        lambda: release_evidence(stated, ref, "SH-1", second="Bo Second", why=why),
        lambda: release_evidence(required, ref, "SH-1", by="Bo Second", second="Ada Officer", why=why),
        lambda: release_vehicle(stated, ref, "V-2", second="Bo Second", why=why),
    ]
    for deed in deeds:
        with pytest.raises(Refused, match="The club requires passphrases"):
            deed()
    release_evidence(vouch_second(required, "Bo Second", BOS), ref, "SH-1", second="Bo Second", why=why)


def test_required_a_marking_or_an_owner_is_written_anew_only_under_a_name_that_was_given(required: Office) -> None:
    book_in(required, shackle(owner="Ada Officer"))
    book_in(required, shackle("SH-2"))
    with pytest.raises(Refused, match="The club requires passphrases"):
        change_owner(required, "SH-1", "Club", "given to the club", by="Bo Second")
    with pytest.raises(Refused, match="The club requires passphrases"):
        label_anew(replace(required, vouched=False), "SH-2", shackle().rating, "read on the bow")


def test_required_nobody_makes_himself_officer_to_set_others_passphrases(required: Office) -> None:
    di = add_person(required, Person("", "Di Member", "member"))
    set_passphrase(required, di.id, "nine grey gulls at noon")
    begin_count(required, "C")
    mark(required, "C", ["no such label"])
    close_count(required, "C")
    seat = vouch(seated(required, di), "nine grey gulls at noon")
    with pytest.raises(Refused, match="neither the equipment officer nor competent"):
        hand_over(seat, "Di Member")
    with pytest.raises(Refused, match="has not given a passphrase"):
        hand_over(replace(required, vouched=False), "Bo Second")
    assert hand_over(required, "Bo Second").protocol.to_name == "Bo Second"


# --- documents ---


def test_a_notice_prints_name_as_stated_beside_each_name_that_was(wanted: Office) -> None:
    kind = book_in(wanted, shackle()).dossier.kind
    add(wanted, "Bo Second")
    record_inspection(wanted, "SH-1", all_good(wanted, kind, SHACKLE_READINGS, by="Bo Second", cracks="bad"))
    said = printed(print_notice(wanted, "SH-1").path)
    assert "Prepared by Ada Officer" in said and "Ada Officer (name as stated)" not in said
    assert "by Bo Second (name as stated)" in said


def test_with_a_passphrase_given_a_notice_prints_the_bare_name(wanted: Office) -> None:
    kind = book_in(wanted, shackle()).dossier.kind
    record_inspection(wanted, "SH-1", all_good(wanted, kind, SHACKLE_READINGS, cracks="bad"))
    assert "as stated" not in printed(print_notice(wanted, "SH-1").path)


def test_where_no_passphrases_are_asked_for_every_name_is_as_stated(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    said = printed(print_notice(office, "SH-1").path)
    assert "Prepared by Ada Officer (name as stated)" in said and "by Ada Officer (name as stated), 25 Nov" in said
