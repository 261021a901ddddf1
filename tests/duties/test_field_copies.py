"""Field copies: taken along, worked on in both places, brought back; both histories stay and nothing gets milder."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.adopt_rulebook import adopt_rulebook
from inspector.duties.book_in import book_in
from inspector.duties.bring_back import bring_back, what_would_come
from inspector.duties.change_item import change_note
from inspector.duties.destroy_item import destroy_item
from inspector.duties.field_copies import copy_words, field_copies, take_field_copy
from inspector.duties.give_opinion import doubt
from inspector.duties.keep_contact import write_contact
from inspector.duties.lend import lend
from inspector.duties.look_up import list_gear, open_item, people
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.tell_register import tell_register
from inspector.duties.verify_book import verify_book
from inspector.duties.what_needs_me import what_needs_me
from inspector.gear.merging import Clash, Merged
from inspector.gear.outcome import Outcome
from inspector.gear.person import Person
from inspector.gear.trip import Ground, Trip
from inspector.gear.use import NewUse
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.field_setting import COPY_OF
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle, strap
from tests.duties.test_adopting import LOOSE
from tests.register.test_backup import no_text


@pytest.fixture
def home(office: Office) -> Office:
    """A register with two inspected shackles."""
    for tag in ("SH-1", "SH-2"):
        kind = book_in(office, shackle(tag)).dossier.kind
        record_inspection(office, tag, all_good(office, kind, SHACKLE_READINGS))
    return office


@pytest.fixture
def away(home: Office, tmp_path: Path) -> Iterator[Office]:
    """A field copy of it, worked on by the same officer."""
    taken = take_field_copy(home, tmp_path / "away", home.officer.name, "the dunes")
    opened = replace(home, book=open_book(taken.file), out_tray=tmp_path / "away" / "documents")
    yield opened
    opened.book.close()


def file_of(office: Office) -> Path:
    assert office.book.file
    return office.book.file


def stands(office: Office) -> list[tuple[str, Outcome | None, str]]:
    return [(row.tag, row.outcome, row.headline) for row in list_gear(office).rows]


def kinds_of(merged: Merged) -> list[tuple[Clash, str]]:
    return [(one.clash, one.about) for one in merged.clashes]


def test_a_field_copy_goes_by_a_name_of_its_own_and_both_histories_are_whole(home: Office, away: Office) -> None:
    assert away.book.origin != home.book.origin
    assert verify_book(home).faults == verify_book(away).faults == ()
    assert copy_words(home) == "" and away.book.origin in copy_words(away)
    (copy,) = field_copies(home)
    assert (copy.origin, copy.what_for, copy.brought_back) == (away.book.origin, "the dunes", None)


def test_what_was_done_in_the_field_comes_home_with_its_verdict_and_once(home: Office, away: Office) -> None:
    doubt(away, "SH-1", "the pin binds")
    record_use(home, "SH-2", NewUse(home.today, 1))
    before = len(told_ledger(home))
    merged = bring_back(home, file_of(away))
    assert (merged.deed_count, merged.tags, merged.clashes) == (2, ("SH-1",), ())
    assert open_item(home, "SH-1").verdict.outcome is Outcome.HOLD
    assert verify_book(home, verify_book(away).head[:12]).faults == ()
    assert len(told_ledger(home)) == before + 3
    assert field_copies(home)[0].brought_back == home.today
    again = bring_back(home, file_of(away).parent)
    assert (again.deed_count, again.tags) == (0, ()) and len(told_ledger(home)) == before + 3
    doubt(away, "SH-2", "and this one too")
    assert bring_back(home, file_of(away)).tags == ("SH-2",)
    assert verify_book(home).faults == ()


def test_looking_first_changes_nothing(home: Office, away: Office) -> None:
    doubt(away, "SH-1", "the pin binds")
    head, old = verify_book(home).head, stands(home)
    seen = what_would_come(home, file_of(away))
    assert seen.tags == ("SH-1",) and verify_book(home).head == head and stands(home) == old
    assert bring_back(home, file_of(away)) == seen


def test_the_copy_stays_as_it_is_and_may_take_home_news_itself(home: Office, away: Office) -> None:
    doubt(away, "SH-1", "the pin binds")
    doubt(home, "SH-2", "worn")
    away.book.close()
    old = file_of(away).read_bytes()
    bring_back(home, file_of(away))
    assert file_of(away).read_bytes() == old
    opened = replace(away, book=open_book(file_of(away)))
    bring_back(opened, file_of(home))
    assert stands(opened) == stands(home) and verify_book(opened).faults == ()
    assert bring_back(home, file_of(opened)).clashes == ()
    opened.book.close()


def test_one_tag_for_two_pieces_holds_both_and_names_the_later_one_anew(home: Office, away: Office) -> None:
    book_in(home, shackle("SH-9"))
    book_in(away, strap("sh-9"))
    merged = bring_back(home, file_of(away))
    other = f"sh-9-{away.book.origin}"
    assert kinds_of(merged) == [(Clash.SAME_TAG, "SH-9")], "one doubled tag is one thing"
    assert merged.clashes[0].done.startswith(
        f"The bow shackle that was booked in here keeps the tag SH-9. The kinetic strap that was booked in as sh-9 in "
        f"the copy {away.book.origin} is now called {other}."
    )
    held = [open_item(home, tag) for tag in ("SH-9", other)]
    assert [one.dossier.item.tag for one in held] == ["SH-9", other]
    assert all("Two copies" in one.dossier.opinions[-1].facts.why for one in held)
    assert {one.verdict.outcome for one in held} == {Outcome.HOLD}
    assert bring_back(home, file_of(away)).deed_count == 0


def test_one_name_for_two_people_is_told_apart(home: Office, away: Office) -> None:
    add_person(home, Person("", "Nell Hobbery", "Member"))
    add_person(away, Person("", "nell hobbery", "Member"))
    merged = bring_back(home, file_of(away))
    named = f"nell hobbery ({away.book.origin})"
    assert kinds_of(merged) == [(Clash.SAME_NAME, named)]
    assert {one.name for one in people(home)} >= {"Nell Hobbery", named}


def test_what_is_written_of_a_piece_in_both_holds_it(home: Office, away: Office) -> None:
    change_note(home, "SH-1", "yellow band")
    change_note(away, "SH-1", "red band")
    merged = bring_back(home, file_of(away))
    assert kinds_of(merged) == [(Clash.WHAT_IT_IS, "SH-1")]
    assert merged.clashes[0].ours and merged.clashes[0].theirs
    assert open_item(home, "SH-1").verdict.outcome is Outcome.HOLD


def test_the_same_written_in_both_is_told_and_counts_twice(home: Office, away: Office) -> None:
    for office in (home, away):
        record_use(office, "SH-1", NewUse(home.today, 1))
    assert kinds_of(bring_back(home, file_of(away))) == [(Clash.WRITTEN_TWICE, "SH-1")]
    assert len(open_item(home, "SH-1").dossier.uses) == 2


def test_a_piece_retired_here_and_lent_there_stays_retired(home: Office, away: Office) -> None:
    kind = open_item(home, "SH-1").dossier.kind
    record_inspection(home, "SH-1", all_good(home, kind, SHACKLE_READINGS, cracks="bad"))
    lend(away, ["SH-1"], away.officer.name, away.today)
    merged = bring_back(home, file_of(away))
    assert (Clash.RETIRED_AND_USED, "SH-1") in kinds_of(merged)
    assert open_item(home, "SH-1").verdict.outcome is Outcome.RETIRE


def test_a_piece_made_unusable_here_and_used_there_is_told(home: Office, away: Office) -> None:
    kind = open_item(home, "SH-1").dossier.kind
    record_inspection(home, "SH-1", all_good(home, kind, SHACKLE_READINGS, cracks="bad"))
    destroy_item(home, "SH-1", "cut through")
    record_use(away, "SH-1", NewUse(away.today, 1))
    merged = bring_back(home, file_of(away))
    assert (Clash.LEFT_FOR_GOOD, "SH-1") in kinds_of(merged)
    assert open_item(home, "SH-1").verdict.outcome is Outcome.RETIRE


def test_what_gets_a_reference_in_the_field_carries_the_copys_name(home: Office, away: Office) -> None:
    for office in (home, away):
        plan_trip(office, Trip("", "T-1", "Day", "", Ground.MUD, home.today, home.today, "", (), ()))
    assert bring_back(home, file_of(away)).clashes == ()
    told = " ".join(one.sentence for one in told_ledger(home, last=8))
    assert f"T-1-{away.book.origin}" in told


def test_what_the_club_settles_is_not_settled_in_a_field_copy(away: Office) -> None:
    with pytest.raises(Refused, match="field copy"):
        adopt_rulebook(away, LOOSE, "ours.toml")
    with pytest.raises(Refused, match="field copy"):
        write_contact(away, away.officer.id, phone="1")
    with pytest.raises(Refused, match="field copy itself"):
        take_field_copy(away, away.out_tray / "second", away.officer.name)


def test_a_copy_made_by_hand_goes_by_the_same_name_and_is_refused(home: Office, tmp_path: Path) -> None:
    twin = tmp_path / "twin.db"
    with closing(sqlite3.connect(file_of(home))) as source, closing(sqlite3.connect(twin)) as target:
        source.backup(target)
    opened = replace(home, book=open_book(twin))
    doubt(opened, "SH-1", "worn")
    opened.book.close()
    head = verify_book(home).head
    with pytest.raises(Refused, match="copied the file by hand"):
        bring_back(home, twin)
    assert verify_book(home).head == head


def test_another_register_and_a_changed_copy_are_refused(home: Office, away: Office, tmp_path: Path) -> None:
    doubt(away, "SH-1", "worn")
    away.book.close()
    changed = tmp_path / "changed.db"
    changed.write_bytes(file_of(away).read_bytes())
    with closing(sqlite3.connect(changed)) as copy, copy:
        copy.execute("DROP TRIGGER opinion_no_update")
        copy.execute("UPDATE opinion SET body = replace(body, 'worn', 'fine')")
    with pytest.raises(Refused, match="not whole"):
        bring_back(home, changed)
    changed.write_bytes(file_of(away).read_bytes())
    no_text(changed)
    with pytest.raises(Refused, match="not whole"):
        bring_back(home, changed)
    stranger = open_book(tmp_path / "stranger.db")
    other = replace(home, book=stranger)
    with stranger.page() as page:
        page.enter("x", by="x", at=home.now, facts={"club": "another"})
    stranger.close()
    with pytest.raises(Refused, match="begin with different lines"):
        bring_back(home, file_of(other))
    with pytest.raises(Refused, match="There is no file"):
        bring_back(home, tmp_path / "gone")


def test_contacts_stay_at_home_unless_asked_for(home: Office, tmp_path: Path) -> None:
    write_contact(home, home.officer.id, phone="0491 570 156")
    bare = take_field_copy(home, tmp_path / "bare", home.officer.name).file
    full = take_field_copy(home, tmp_path / "full", home.officer.name, with_contacts=True).file
    assert b"0491 570 156" not in bare.read_bytes()
    assert b"0491 570 156" in full.read_bytes()


def test_a_register_that_stands_there_is_not_written_over(home: Office, away: Office, tmp_path: Path) -> None:
    with pytest.raises(Refused, match="holds a register already"):
        take_field_copy(home, tmp_path / "away", home.officer.name)
    assert len(field_copies(home)) == 1
    with away.book.reading() as page:
        assert page.setting(COPY_OF) == home.book.origin


def test_a_field_copy_says_so_wherever_the_register_is_named(home: Office, away: Office) -> None:
    named = f"Test Club, field copy {away.book.origin}"
    assert tell_register(away).club == what_needs_me(away).club == named
    assert tell_register(home).club == what_needs_me(home).club == "Test Club"
