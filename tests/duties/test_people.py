"""A changed name stays readable, competence is never widened alone nor backwards, contact details go for good."""

import sqlite3
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import event

from inspector.duties.add_people import add_person
from inspector.duties.book_in import book_in
from inspector.duties.change_person import (
    Widening,
    change_person,
    end_competence,
    give_competence,
    renew_competence,
)
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import answer_findings
from inspector.duties.keep_contact import contact_of, remove_contact, write_contact
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_history import history_of
from inspector.duties.tell_people import list_people, open_person
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import Inspection, NewInspection
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Contact, Person
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.test_opinions import GROUND, RULE, add, held_strap

WHY = Widening("passed the club's course")


def member(office: Office, name: str = "Di Member") -> Person:
    return add_person(office, Person("", name, "member"))


def in_days(office: Office, days: int) -> Office:
    return office.at(office.now + timedelta(days=days))


def flag(office: Office, facts: NewInspection) -> bool:
    """Whether the inspection counted as that of a competent person."""
    return record_inspection(office, "SH-1", facts).dossier.inspections[-1].facts.competent


def inspections(office: Office) -> tuple[Inspection, ...]:
    return open_item(office, "SH-1").dossier.inspections


def ledger_bodies(office: Office, folder: Path) -> str:
    with sqlite3.connect(folder / "register.db") as connection:
        found = "\n".join(row[0] for row in connection.execute("SELECT body FROM ledger"))
    connection.close()
    return found


# --- name and role ---


def test_a_changed_name_stands_in_old_entries_and_in_new_ones(office: Office) -> None:
    kind, bo = book_in(office, shackle()).dossier.kind, add(office, "Bo Second")
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, by=bo.id))
    changed = change_person(office, "Bo Second", name="Bo Wedded", role="deputy", why="married")
    assert (changed.id, changed.name, changed.role) == (bo.id, "Bo Wedded", "deputy")
    assert changed.former_names == ("Bo Second",)
    assert any(row.by == "Bo Wedded" for row in history_of(office, "SH-1"))
    record = open_person(office, "Bo Wedded")
    assert "married" in record.changes[0].text and record.changes[0].by == "Ada Officer"
    assert verify_book(office).faults == ()


def test_gear_owned_under_a_former_name_is_still_his_own(office: Office) -> None:
    add(office, "Bo Second")
    kind = book_in(office, shackle(owner="bo  second")).dossier.kind
    change_person(office, "Bo Second", name="Bo Wedded", why="married")
    seen = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, by="Bo Wedded"))
    assert seen.verdict.outcome is Outcome.HOLD
    assert record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.FIT


@pytest.mark.parametrize("taken", ["Ada Officer", "ada  OFFICER", "Bo Second"])
def test_two_people_of_one_name_are_refused_former_names_too(office: Office, taken: str) -> None:
    add(office, "Bo Second")
    member(office)
    change_person(office, "Bo Second", name="Bo Wedded", why="married")
    with pytest.raises(Refused, match="in the register already"):
        change_person(office, "Di Member", name=taken, why="wants it")
    with pytest.raises(Refused, match="in the register already"):
        member(office, taken)


def test_one_s_own_former_name_may_be_taken_back(office: Office) -> None:
    add(office, "Bo Second")
    change_person(office, "Bo Second", name="Bo Wedded", why="married")
    back = change_person(office, "Bo Wedded", name="Bo Second", why="parted")
    assert (back.name, back.former_names) == ("Bo Second", ("Bo Wedded",))


@pytest.mark.parametrize(
    ("who", "name", "why", "said"),
    [
        ("Di Member", "", "no reason", "Nothing would change"),
        ("Di Member", "Di Member", "no reason", "Nothing would change"),
        ("Di Member", "Di Wedded", " ", "It is empty"),
        ("Di Member", "Di\nWedded", "married", "do not print"),
        ("Nobody", "Somebody", "married", "Nobody called"),
    ],
)
def test_a_change_of_nothing_without_reason_or_of_nobody_is_refused(
    office: Office, who: str, name: str, why: str, said: str
) -> None:
    member(office)
    with pytest.raises(Refused, match=said):
        change_person(office, who, name=name, why=why)
    assert [one.person.name for one in list_people(office).rows] == ["Ada Officer", "Di Member"]


# --- competence ---


def test_competence_given_today_reaches_no_inspection_entered_before(office: Office) -> None:
    kind, di = book_in(office, shackle()).dossier.kind, member(office)
    assert flag(office, all_good(office, kind, SHACKLE_READINGS, by=di.id)) is False
    give_competence(office, di.id, Competence("shackle", office.today), WHY)
    assert [one.facts.competent for one in inspections(office)] == [False]
    assert flag(office, all_good(office, kind, SHACKLE_READINGS, by=di.id)) is True


def test_competence_given_today_passes_no_older_day_entered_late(office: Office) -> None:
    kind, di = book_in(office, shackle()).dossier.kind, member(office)
    later = in_days(office, 10)
    give_competence(later, di.id, Competence("shackle", later.today), WHY)
    assert flag(later, all_good(office, kind, SHACKLE_READINGS, office.today, di.id)) is False


def test_competence_from_before_today_needs_a_paper_and_leaves_stored_flags(office: Office) -> None:
    kind, di = book_in(office, shackle()).dossier.kind, member(office)
    flag(office, all_good(office, kind, SHACKLE_READINGS, by=di.id))
    later = in_days(office, 10)
    past = Competence("shackle", office.today)
    with pytest.raises(Refused, match="nothing is named that shows it"):
        give_competence(later, di.id, past, WHY)
    give_competence(later, di.id, past, replace(WHY, paper="certificate 12"))
    assert [one.facts.competent for one in inspections(later)] == [False]
    assert "certificate 12" in open_person(later, di.id).changes[0].text


def test_a_new_person_s_competence_from_before_today_needs_a_paper_too(office: Office) -> None:
    held = (Competence("all", office.today - timedelta(days=1)),)
    with pytest.raises(Refused, match="nothing is named that shows it"):
        add_person(office, Person("", "Di Member", "member", held))
    assert add_person(office, Person("", "Di Member", "member", held), "certificate 12").competences == held


def test_competence_ended_today_leaves_what_was_valid_before(office: Office) -> None:
    kind, bo = book_in(office, shackle()).dossier.kind, add(office, "Bo Second")
    flag(office, all_good(office, kind, SHACKLE_READINGS, by=bo.id))
    later = in_days(office, 5)
    ended = end_competence(later, bo.id, "all", "moved away")
    assert ended.is_competent("shackle", later.today)
    assert not ended.is_competent("shackle", later.today + timedelta(days=1))
    assert [one.facts.competent for one in inspections(later)] == [True]
    assert flag(in_days(office, 6), all_good(in_days(office, 6), kind, SHACKLE_READINGS, by=bo.id)) is False


def test_a_gap_stays_a_gap_when_competence_is_renewed(office: Office) -> None:
    bo = add(office, "Bo Second")
    end_competence(office, bo.id, "all", "paper lapsed")
    later = in_days(office, 30)
    renewed = renew_competence(later, bo.id, "all", later.today + timedelta(days=365), WHY)
    days = [0, 1, 29, 30, 395, 396]
    held = [renewed.is_competent("shackle", office.today + timedelta(days=one)) for one in days]
    assert held == [True, False, False, True, True, False]


def test_a_running_one_is_renewed_to_a_later_day(office: Office) -> None:
    di, end = member(office), office.today + timedelta(days=20)
    give_competence(office, di.id, Competence("strap", office.today, end), WHY)
    renewed = renew_competence(office, di.id, "strap", end + timedelta(days=10), WHY)
    assert renewed.competences == (Competence("strap", office.today, end + timedelta(days=10)),)


def test_whoever_is_at_the_desk_does_not_widen_his_own_competence_alone(office: Office) -> None:
    ada = office.officer.id
    end_competence(office, ada, "all", "paper lapsed")
    later = in_days(office, 3)
    fresh = Competence("all", later.today)
    with pytest.raises(Refused, match="nobody widens his own competence alone"):
        give_competence(later, ada, fresh, WHY)
    with pytest.raises(Refused, match="nobody widens his own competence alone"):
        renew_competence(later, ada, "all", later.today, WHY)
    with pytest.raises(Refused, match="cannot be both names"):
        give_competence(later, ada, fresh, replace(WHY, second="Ada Officer"))
    with pytest.raises(Refused, match="Nobody called"):
        give_competence(later, ada, fresh, replace(WHY, second="Someone Else"))
    member(office)
    given = give_competence(later, ada, fresh, replace(WHY, second="Di Member"))
    assert given.is_competent("shackle", later.today)
    assert open_person(later, ada).changes[0].by == "Ada Officer, Di Member"


def test_nobody_is_second_name_for_the_competence_he_is_given(office: Office) -> None:
    di = member(office)
    for second in ("Di Member", "Ada Officer"):
        with pytest.raises(Refused, match="cannot be both names"):
            give_competence(office, di.id, Competence("strap", office.today), replace(WHY, second=second))


def test_every_day_that_cannot_be_is_refused(office: Office) -> None:
    bo, today = add(office, "Bo Second"), office.today
    day = timedelta(days=1)
    refused: dict[str, Callable[[], object]] = {
        "lies in the future": lambda: give_competence(office, bo.id, Competence("strap", today + day), WHY),
        "The day has passed": lambda: give_competence(office, bo.id, Competence("strap", today, today - day), WHY),
        "speaks of these days": lambda: give_competence(office, bo.id, Competence("all", today), WHY),
        "no family of kinds": lambda: give_competence(office, bo.id, Competence("straps", today), WHY),
        "was never competent": lambda: renew_competence(office, bo.id, "strap", today + day, WHY),
        "runs that long already": lambda: renew_competence(office, bo.id, "all", today + day, WHY),
        "holds nothing for": lambda: end_competence(office, bo.id, "strap", "lapsed"),
        "would end on": lambda: end_competence(office, bo.id, "all", "lapsed", date(2000, 1, 1)),
        "It is empty": lambda: end_competence(office, bo.id, "all", " "),
    }
    for why, deed in refused.items():
        with pytest.raises(Refused, match=why):
            deed()
    with pytest.raises(Refused, match="The day has passed"):
        renew_competence(office, bo.id, "all", today - day, WHY)
    assert open_person(office, bo.id).changes == ()


def test_an_end_never_makes_a_competence_longer(office: Office) -> None:
    di, end = member(office), office.today + timedelta(days=20)
    give_competence(office, di.id, Competence("strap", office.today, end), WHY)
    with pytest.raises(Refused, match="holds nothing"):
        end_competence(office, di.id, "strap", "lapsed", end + timedelta(days=1))


def test_the_ledger_holds_ids_scopes_and_days(office: Office, tmp_path: Path) -> None:
    di = member(office)
    give_competence(office, di.id, Competence("strap", office.today), WHY)
    end_competence(office, di.id, "strap", "left")
    change_person(office, di.id, name="Di Wedded", why="married")
    last = ledger_bodies(office, tmp_path).splitlines()[-3:]
    assert all(di.id in body for body in last)
    assert '"scope":"strap"' in last[0] and '"until":"2026-11-25"' in last[1] and '"changed":["name"]' in last[2]
    assert "Wedded" not in last[2]


def test_the_list_tells_what_runs_and_the_record_what_ended(office: Office) -> None:
    bo = add(office, "Bo Second")
    end_competence(office, bo.id, "all", "moved away")
    (_, row) = list_people(office).rows
    assert row.held.endswith("until 25 Nov 2026")
    later = in_days(office, 1)
    assert list_people(later).rows[1].held == ""
    assert open_person(later, bo.id).ended == ("all since 8 Jun 2024 until 25 Nov 2026",)


# --- contact details ---

PHONE, MAIL, STREET = "0555 010 4477", "di.member@club.example", "4 Samphire Row, Wethering"


def traces(folder: Path, *texts: str) -> list[str]:
    """Which of the texts can be read in the files of the register."""
    kept = b"".join(file.read_bytes() for file in sorted(folder.glob("register.db*")))
    return [text for text in texts if text.encode() in kept]


def test_contact_details_are_kept_shown_and_taken_out_for_good(office: Office, tmp_path: Path) -> None:
    member(office)
    assert contact_of(office, "Di Member") is None
    write_contact(office, "Di Member", phone=PHONE, mail=MAIL)
    write_contact(office, "Di Member", address=STREET)
    assert contact_of(office, "Di Member") == Contact(PHONE, MAIL, STREET)
    assert traces(tmp_path, PHONE, MAIL, STREET) == [PHONE, MAIL, STREET]
    assert not {PHONE, MAIL, STREET} & set(ledger_bodies(office, tmp_path).split('"'))
    gone = remove_contact(office, "Di Member")
    assert gone.is_wiped and contact_of(office, "Di Member") is None
    assert traces(tmp_path, PHONE, MAIL, STREET) == []
    assert verify_book(office).faults == ()


def test_of_many_details_only_those_taken_out_or_written_anew_are_gone(office: Office, tmp_path: Path) -> None:
    """Enough of them that the rows fill many pages, which are split, joined and freed."""
    people = [member(office, f"Member {number:03}") for number in range(60)]
    texts = [f"{number:03} Long Wharf {'x' * (11 * number % 90)} Wethering" for number in range(60)]
    for person, text in zip(people, texts, strict=True):
        write_contact(office, person.id, address=text, phone=f"0555 {person.name[-3:]} 77")
    for person in people[::2]:
        remove_contact(office, person.id)
    write_contact(office, people[1].id, phone="0555 999 99")
    phones = [f"0555 {person.name[-3:]} 77" for person in people]
    assert traces(tmp_path, *phones) == phones[3::2]
    assert traces(tmp_path, *(text[:14] for text in texts)) == [text[:14] for text in texts[1::2]]


def test_while_another_reads_it_says_that_a_trace_may_be_left(office: Office, tmp_path: Path) -> None:
    member(office)
    write_contact(office, "Di Member", phone=PHONE)
    other = sqlite3.connect(tmp_path / "register.db", isolation_level=None)
    other.execute("BEGIN")
    other.execute("SELECT * FROM contact").fetchall()
    # how long the program waits for the other one is no part of this story
    event.listen(office.book._engine, "checkout", lambda driver, *_: driver.execute("PRAGMA busy_timeout = 50"))
    assert remove_contact(office, "Di Member").is_wiped is False
    other.close()
    office.book.close()
    assert traces(tmp_path, PHONE) == []


def test_contact_that_cannot_be_is_refused(office: Office) -> None:
    member(office)
    with pytest.raises(Refused, match="Nothing is written down"):
        remove_contact(office, "Di Member")
    with pytest.raises(Refused, match="Nothing would change"):
        write_contact(office, "Di Member")
    with pytest.raises(Refused, match="do not print"):
        write_contact(office, "Di Member", phone="0555\n010")
    with pytest.raises(Refused, match="Nobody called"):
        write_contact(office, "Nobody", phone=PHONE)
    write_contact(office, "Di Member", phone=PHONE)
    write_contact(office, "Di Member", phone="")
    assert contact_of(office, "Di Member") is None


# --- two names ---


def test_whoever_destroys_a_piece_is_not_its_witness(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    with pytest.raises(Refused, match="cannot be both names"):
        destroy_item(office, "SH-1", "cut in two", witness="Ada Officer")
    member(office)
    assert destroy_item(office, "SH-1", "cut in two", witness="Di Member").witness


def test_a_changed_name_does_not_make_a_second_person(office: Office) -> None:
    tag = held_strap(office)
    change_person(office, "Ada Officer", name="Ada Wedded", why="married")
    with pytest.raises(Refused, match="made an inspection"):
        answer_findings(office, tag, [RULE], GROUND, "Ada Wedded")
