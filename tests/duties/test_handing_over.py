"""Stories: the register passes from one officer to the next."""

from datetime import date, timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.back_up import restore
from inspector.duties.book_in import book_in
from inspector.duties.close_count import close_count
from inspector.duties.fit_parts import fit_part
from inspector.duties.give_opinion import doubt
from inspector.duties.hand_over import HandedOver, hand_over, print_protocol
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import club_officer, list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.report_incident import report_incident
from inspector.duties.take_stock import begin_count, mark
from inspector.duties.verify_book import verify_book
from inspector.gear.fitting import Fitted
from inspector.gear.incident import EntryKind, Gravity, NewIncident, NewIncidentEntry
from inspector.gear.papers import ProtocolTable
from inspector.gear.person import Competence, Person
from inspector.gear.stock_take import Counted
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.refused import Refused
from inspector.register.backup import Backup, back_up, sha256_of
from inspector.register.book import Book
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import SHACKLE_READINGS, all_good, kilograms, point, shackle
from tests.duties.rigs import fit, fit_kit, later, member
from tests.duties.test_stock_take import put, where

NEW = "Ben Next"


@pytest.fixture
def club(office: Office) -> Office:
    """A club of four shackles and a strap, with somebody who takes over."""
    fit_kit(office)
    for tag in ("SH-3", "SH-4"):
        fit(office, shackle(tag), SHACKLE_READINGS)
    member(office)
    add_person(office, Person("", NEW, "member", (Competence("all", office.today),)))
    return office


def counted(office: Office, ref: str = "2026-11", absent: tuple[str, ...] = ()) -> None:
    """A count of everything, all present but for those named."""
    expected = begin_count(office, ref).facts.expected
    mark(office, ref, [tag for tag in expected if tag not in absent])
    if absent:
        mark(office, ref, absent, Counted.ABSENT)
    close_count(office, ref)


def table(done: HandedOver, title: str) -> ProtocolTable:
    """A list of the protocol."""
    return next(one for one in done.protocol.tables if one.title == title)


def tags(done: HandedOver, title: str) -> list[str]:
    """The first column of a list."""
    return [line[0] for line in table(done, title).lines]


def test_a_handover_in_which_three_pieces_are_absent(club: Office, tmp_path: Path, rules: Rulebook) -> None:
    absent = ("KS-1", "SH-2", "SH-4")
    counted(club, absent=absent)
    before = verify_book(club)
    done = hand_over(club, NEW)
    assert [where(club, tag) for tag in absent] == [Where.MISSING] * 3
    assert tags(done, "The count") == tags(done, "Missing or stolen") == list(absent)
    assert "2 of 5 expected pieces were seen" in table(done, "The count").said
    assert {line[2] for line in table(done, "The count").lines} == {"looked for, not there"}
    assert (done.protocol.from_name, done.protocol.to_name) == ("Ada Officer", NEW)
    assert open_person(club, club_officer(club)) == NEW
    after = verify_book(club, done.backup.head)
    assert after.faults == () and after.line_count == before.line_count + 1
    assert done.backup.head == before.head
    assert done.paper.path.stem == done.protocol.imprint.number and done.paper.path.stem.startswith("H-")
    restore(done.backup.file, tmp_path / "new", done.backup.head)
    back = office_in(tmp_path / "new", rules)
    assert {row.tag for row in list_gear(back).rows} == {"KS-1", "SH-1", "SH-2", "SH-3", "SH-4"}
    assert where(back, "KS-1") is Where.MISSING
    back.book.close()


def open_person(office: Office, key: str) -> str:
    """The name of a person."""
    with office.book.reading() as page:
        return next(one.name for one in page.people() if one.id == key)


def test_the_protocol_names_the_copy_as_it_lies_there(club: Office) -> None:
    counted(club)
    done = hand_over(club, NEW)
    said = {fact.label: fact.text for fact in done.protocol.handed_on}
    file = done.backup.file
    assert said["Copy of the register"] == file.name
    assert said["Size of the copy"] == f"{file.stat().st_size} bytes"
    assert said["Checksum of the copy (SHA-256)"] == sha256_of(file)
    assert said["Head of its ledger"].startswith(done.backup.head)
    assert any("Signing key: none" in one for one in done.protocol.mind)


def test_every_list_says_that_it_is_empty_where_it_is(club: Office) -> None:
    counted(club)
    done = hand_over(club, NEW)
    assert [one.title for one in done.protocol.tables if one.lines] == []
    assert all(one.none for one in done.protocol.tables)


def test_a_piece_nobody_looked_for_is_told_as_not_seen(club: Office) -> None:
    begin_count(club, "C")
    mark(club, "C", ["SH-1", "ZZ-9"])
    close_count(club, "C")
    lines = {line[0]: line[2] for line in table(hand_over(club, NEW), "The count").lines}
    assert lines["SH-2"] == "not seen: nobody looked for it"
    assert lines["ZZ-9"] == "seen; no piece has this label" and "SH-1" not in lines


def test_what_the_count_did_not_look_for_is_told_as_well(club: Office) -> None:
    add_vehicle(club, "V-1", "Truck", "Club", kilograms("3000 kg"))
    for tag in ("RP-1", "RP-2"):
        book_in(club, point(tag))
        fit_part(club, tag, Fitted("V-1"))
    expected = begin_count(club, "C").facts.expected
    mark(club, "C", expected)
    mark(club, "C", ["RP-2"], place="V-1")
    close_count(club, "C")
    book_in(club, shackle("SH-9"))
    lines = {line[0]: line[2:] for line in table(hand_over(club, NEW), "The count").lines}
    unsought = "not among what was looked for"
    assert lines == {"RP-1": (unsought, "on vehicle V-1"), "SH-9": (unsought, "in store")}


def test_what_an_open_incident_keeps_is_told(club: Office) -> None:
    add_vehicle(club, "V-1", "Truck", "Club", kilograms("3000 kg"))
    told = NewIncident(
        club.today, Gravity.ACCIDENT, "Long Sand", "it broke", ("SH-1",), vehicles=("V-1",), by=club.officer.id
    )
    report_incident(club, told)
    counted(club)
    assert table(hand_over(club, NEW), "Incidents still open").lines[0][2].endswith("Kept as found: SH-1, V-1.")


def test_what_is_open_is_told(club: Office) -> None:
    kind = open_item(club, "SH-1").dossier.kind
    record_inspection(club, "SH-1", all_good(club, kind, SHACKLE_READINGS, cracks="bad"))
    put(club, "SH-2", on_hook_nine(club))
    doubt(club, "SH-3", "it fell from the roof")
    lend(club, ["SH-4"], "Di Member", club.today + timedelta(days=3))
    report(club, "I-1", closed=False)
    report(club, "I-2", closed=True)
    then = later(club, 400)
    counted(then)
    add_person(then, Person("", "Cy Ending", "trainer", (Competence("shackle", then.today, later(then, 20).today),)))
    add_person(then, Person("", "Di Long", "trainer", (Competence("shackle", then.today, later(then, 200).today),)))
    done = hand_over(then, NEW)
    assert tags(done, "Retired and not yet made unusable") == ["SH-1"]
    holds = {line[0]: line[3] for line in table(done, "On hold").lines}
    assert set(holds) >= {"SH-3"} and "an inspection of all of it" in holds["SH-3"]
    assert table(done, "On loan").lines[0][3].endswith("OVERDUE by 397 days")
    assert "SH-4" in tags(done, "Inspections and readings overdue")
    assert tags(done, "Competences that end") == ["Cy Ending"]
    assert tags(done, "Incidents still open") == ["I-1"]


def on_hook_nine(office: Office) -> NewWhereabouts:
    """SH-2 lies on another shelf."""
    return NewWhereabouts(office.today, Where.IN_STORE, "Shed, hook 9")


def report(office: Office, ref: str, *, closed: bool) -> None:
    """Keep a report."""
    facts = NewIncident(office.today, Gravity.ACCIDENT, "Long Sand", "a strap broke", ("KS-1",), by=office.officer.id)
    with office.book.page() as page:
        made = page.add_incident(ref, facts)
        if closed:
            entry = NewIncidentEntry(office.today, EntryKind.CLOSED, "", "all told", office.officer.id)
            page.add_incident_entry(made, entry)
        page.enter("report", by=office.officer.id, at=office.now, facts=facts)


def test_a_new_officer_who_may_judge_nothing_is_told_so(club: Office) -> None:
    counted(club)
    done = hand_over(club, "Di Member")
    assert any("Di Member is not entered as competent" in one for one in done.protocol.mind)
    counted(club, "C-2")
    seated = replace(club, officer=next(one for one in people_of(club) if one.id == club_officer(club)))
    again = hand_over(seated, NEW)
    assert not any("not entered as competent" in one for one in again.protocol.mind)
    assert again.protocol.from_name == "Di Member"


def people_of(office: Office) -> tuple[Person, ...]:
    """Everybody."""
    with office.book.reading() as page:
        return page.people()


def refused(office: Office, to: str, why: str) -> Refused:
    """The refusal, which leaves ledger, officer and folder as they were."""
    before, officer = verify_book(office), club_officer(office)
    with pytest.raises(Refused, match=why) as refusal:
        hand_over(office, to)
    assert refusal.value.field and refusal.value.what_to_do
    assert verify_book(office) == before and club_officer(office) == officer
    assert not (office.out_tray.parent / "backups").exists()
    return refusal.value


def test_nobody_hands_over_to_himself_or_to_a_stranger(club: Office) -> None:
    counted(club)
    refused(club, "Ada Officer", "is the equipment officer already")
    refused(club, "Somebody", "Nobody called")


def test_nobody_hands_over_while_a_count_is_open(club: Office) -> None:
    counted(club)
    begin_count(club, "C-2")
    refused(club, NEW, "C-2 is still open")


def test_nobody_hands_over_without_a_count_of_everything(club: Office) -> None:
    refused(club, NEW, "there was none yet")
    put(club, "SH-1", on_hook_nine(club))
    begin_count(club, "Part", "Shed")
    close_count(club, "Part")
    refused(club, NEW, "there was none yet")


def test_a_count_lasts_thirty_days_and_no_longer(club: Office) -> None:
    counted(club)
    refused(later(club, 31), NEW, "the last one on 25 Nov 2026")
    assert hand_over(later(club, 30), NEW).backup.file.exists()


def test_what_is_written_while_the_copy_is_made_stops_the_handover(
    club: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    counted(club)

    def meanwhile(book: Book, folder: Path, on: date) -> Backup:
        made = back_up(book, folder, on)
        add_person(club, Person("", "Late Comer", "member"))
        return made

    monkeypatch.setattr("inspector.duties.hand_over.back_up", meanwhile)
    with pytest.raises(Refused, match="while the copy was made"):
        hand_over(club, NEW)
    assert open_person(club, club_officer(club)) == "Ada Officer"


def test_the_protocol_is_printed_again_as_it_was(club: Office) -> None:
    with pytest.raises(Refused, match="never handed over"):
        print_protocol(club)
    counted(club)
    done = hand_over(club, NEW)
    first = done.paper.path.read_bytes()
    put(club, "SH-1", on_hook_nine(club))
    assert print_protocol(later(club, 90)).path == done.paper.path
    assert done.paper.path.read_bytes() == first
