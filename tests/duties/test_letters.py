"""Letters and slips: what somebody has, what must not be used, what to bring; how to reach him is never kept."""

import sqlite3
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from inspector.duties.book_in import book_in
from inspector.duties.fit_parts import fit_part
from inspector.duties.give_opinion import doubt
from inspector.duties.keep_contact import remove_contact, write_contact
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_letters import enter_letters, print_again, print_letters
from inspector.duties.print_slips import enter_slips, print_slips, print_slips_again
from inspector.duties.record_inspection import record_inspection
from inspector.duties.release_evidence import release_evidence
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_missing
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.letters import DueSlip, HolderLetter, LetterLine, LetterPiece
from inspector.gear.outcome import Outcome
from inspector.language import show_day
from inspector.paper.printed import Printed
from inspector.refused import Refused
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, all_good, kilograms, point, shackle
from tests.duties.incidents import SECOND, beach, reported
from tests.duties.rigs import fit, later, member
from tests.duties.test_opinions import add
from tests.paper.reading import all_text, squeezed

DI = "Di Member"
STREET = "7 Tidewrack Lane, Pellick"


@pytest.fixture
def club(office: Office) -> Office:
    """Di has a lent shackle, one of her own, and a part on her vehicle."""
    member(office)
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    fit(office, shackle("SH-2", owner=DI), SHACKLE_READINGS)
    fit(office, shackle("SH-3"), SHACKLE_READINGS)
    add_vehicle(office, "V-1", "Truck", DI, kilograms("3000 kg"), None)
    fit(office, point("RP-1"), POINT_READINGS)
    fit_part(office, "RP-1", Fitted("V-1", End.REAR, Side.LEFT))
    record_inspection(office, "RP-1", all_good(office, open_item(office, "RP-1").dossier.kind, POINT_READINGS))
    lend(office, ["SH-1"], DI, office.today + timedelta(days=60))
    return office


def letter(office: Office, **more: object) -> HolderLetter:
    """The letter to Di."""
    (made,) = enter_letters(office, DI, **more)  # type: ignore[arg-type]
    return made


def piece(made: HolderLetter, tag: str) -> LetterPiece:
    """What the letter says of a piece."""
    return next(one for one in made.pieces if one.tag == tag)


def text(path: Path) -> str:
    """What stands on a printed paper."""
    return all_text(Printed(path.read_bytes(), 0, ()))


def test_it_names_what_she_has_what_is_hers_and_what_sits_on_her_vehicle_and_nothing_else(club: Office) -> None:
    made = letter(club)
    assert {one.tag for one in made.pieces} == {"SH-1", "SH-2", "RP-1"}
    assert piece(made, "SH-1").why.startswith("With you on loan since 25 Nov 2026")
    assert piece(made, "SH-2").why.startswith("Your own")
    assert "on vehicle V-1" in piece(made, "RP-1").why
    assert made.imprint.number.startswith("L-") and made.imprint.cautions


def test_what_runs_on_is_asked_for_only_once_it_is_due(club: Office) -> None:
    made = letter(club, until=club.today + timedelta(days=61))
    far = letter(club, until=club.today + timedelta(days=4000))
    turns = open_item(club, "SH-1").verdict.holds_until
    assert turns and LetterLine(show_day(turns), "from that day on ask before you use it") in piece(far, "SH-1").due
    assert "SH-1" not in made.bring and piece(made, "SH-1").do == ""
    assert any("to be back from its loan" in one.what for one in piece(made, "SH-1").due)
    late = letter(later(club, 70))
    assert "SH-1" in late.bring and piece(late, "SH-1").do.startswith("Bring it back")
    assert any("OVERDUE by 10 days" in one.what for one in piece(late, "SH-1").due)


def test_place_and_day_stand_in_it_and_a_day_that_is_past_is_refused(club: Office) -> None:
    doubt(club, "SH-2", "it fell from the roof")
    made = letter(club, bring_to="the shed", bring_by=club.today + timedelta(days=9))
    assert (made.bring_to, made.bring_by) == ("the shed", "4 Dec 2026") and "SH-2" in made.bring
    with pytest.raises(Refused, match="is past"):
        letter(club, bring_by=club.today - timedelta(days=1))
    with pytest.raises(Refused, match="more than one line"):
        letter(club, bring_to="the\nshed")


def test_what_is_held_or_retired_must_not_be_used_in_the_words_of_its_verdict(club: Office) -> None:
    doubt(club, "SH-1", "it fell from the roof")
    kind = open_item(club, "SH-2").dossier.kind
    record_inspection(club, "SH-2", all_good(club, kind, SHACKLE_READINGS, cracks="bad"))
    made = letter(club)
    for tag in ("SH-1", "SH-2"):
        words = open_item(club, tag).explanation
        assert not piece(made, tag).may_use and words.plain in piece(made, tag).says
        assert tag in made.bring
    assert "Do not use it until you are told" in piece(made, "SH-1").do
    assert "Never use it again" in piece(made, "SH-2").do and "Make it unusable, or bring it" in piece(made, "SH-2").do
    assert [one.may_use for one in made.pieces] == sorted(one.may_use for one in made.pieces)


def test_what_time_alone_has_put_on_hold_is_not_said_to_be_usable_though_nobody_judged_it_anew(club: Office) -> None:
    assert piece(letter(club), "SH-1").may_use
    assert open_item(later(club, 4000), "SH-1").verdict.outcome is not Outcome.HOLD
    assert not piece(letter(later(club, 4000)), "SH-1").may_use


def test_evidence_is_never_asked_for(office: Office) -> None:
    beach(office)
    lend(office, ["SH-1", "SH-2"], DI, office.today)
    ref = reported(office).incident.ref
    made = letter(later(office, 400))
    assert made.bring == ()
    for tag in ("SH-1", "SH-2"):
        assert f"as evidence of {ref}" in piece(made, tag).do and "Do not use, clean" in piece(made, tag).do
        assert not piece(made, tag).may_use
    slips = {one.tag: one for one in enter_slips(later(office, 400)).slips}
    assert all("as evidence of" in slips[tag].do and "To:" not in slips[tag].do for tag in ("SH-1", "SH-2", "RP-1"))


def test_a_part_that_was_released_stays_on_the_vehicle_that_was_not(office: Office) -> None:
    beach(office)
    ref = reported(office).incident.ref
    release_evidence(office, ref, "RP-1", second=SECOND, why="The insurer has what it needs.")
    released = slip(office, "RP-1")
    assert not released.may_use
    assert f"V-2 is kept as found, as evidence of {ref}" in released.do and "Bring" not in released.do


def test_a_missing_piece_is_not_brought_and_may_not_be_used_if_found(club: Office) -> None:
    report_missing(club, "SH-2", "the ford", "not in the box")
    one = piece(letter(club), "SH-2")
    assert not one.may_use and "missing" in one.says and one.do.startswith("If you find it, do not use it")
    assert "SH-2" not in {slip.tag for slip in enter_slips(later(club, 4000)).slips}


def test_an_owner_whose_piece_is_lent_to_another_is_not_asked_to_bring_it(club: Office) -> None:
    add(club, "Bo Borrower")
    lend(club, ["SH-2"], "Bo Borrower", club.today)
    then = later(club, 10)
    mine = letter(then)
    (his,) = enter_letters(then, "Bo Borrower")
    assert "SH-2" not in mine.bring and "somebody else" in piece(mine, "SH-2").do
    assert his.bring == ("SH-2",)


def test_an_address_is_printed_where_it_is_written_down_and_never_kept(club: Office) -> None:
    write_contact(club, DI, address=STREET, phone="0123 456", mail="di@example.org")
    (paper,) = print_letters(club, DI)
    assert squeezed(STREET) in squeezed(text(paper.path))
    assert "0123" not in text(paper.path) and "example.org" not in text(paper.path)
    assert_nowhere_kept(club, STREET, "0123 456", "di@example.org")
    remove_contact(club, DI)
    (again,) = print_again(club, DI)
    assert again.path == paper.path
    assert "Tidewrack" not in text(again.path) and DI in text(again.path)


def assert_nowhere_kept(office: Office, *details: str) -> None:
    """No row of any table but that of contacts holds them."""
    with closing(sqlite3.connect(office.out_tray.parent / "register.db")) as book:
        tables = [name for (name,) in book.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        assert {"contact", "document", "ledger"} <= set(tables)
        for table in set(tables) - {"contact"}:
            for row in book.execute(f'SELECT * FROM "{table}"'):
                assert not any(one in str(cell) for one in details for cell in row), table


def test_letters_to_everybody_go_to_those_of_whom_anything_is_asked_in_one_deed(club: Office) -> None:
    add(club, "Bo Idle")
    before = verify_book(club)
    with pytest.raises(Refused, match="Nothing is asked of anybody"):
        enter_letters(club, until=club.today)
    doubt(club, "SH-2", "it fell from the roof")
    made = enter_letters(club, until=club.today)
    assert [one.name for one in made] == [DI]
    after = verify_book(club)
    assert after.faults == () and after.line_count == before.line_count + 2
    (told,) = told_ledger(club, last=1)
    assert told.sentence == f"Ada Officer printed the letters {made[0].imprint.number} to {DI}."
    with pytest.raises(Refused, match="has no piece"):
        enter_letters(club, "Bo Idle")
    with pytest.raises(Refused, match="Nobody called"):
        enter_letters(club, "Nobody")


def test_letters_and_slips_share_one_row_of_numbers_and_are_printed_again_as_they_were(club: Office) -> None:
    (first,) = print_letters(club, DI)
    slips = print_slips(club, until=club.today + timedelta(days=400))
    (second,) = print_letters(club, DI)
    assert [one.path.stem[-4:] for one in (first, slips, second)] == ["0001", "0002", "0003"]
    held = (slips.path.read_bytes(), second.path.read_bytes())
    record_inspection(
        club, "SH-1", all_good(club, open_item(club, "SH-1").dossier.kind, SHACKLE_READINGS, cracks="bad")
    )
    assert print_slips_again(club).path.read_bytes() == held[0]
    assert print_again(club, DI)[0].path.read_bytes() == held[1]


def test_nothing_is_printed_again_that_was_never_printed(club: Office) -> None:
    with pytest.raises(Refused, match="No such letter"):
        print_again(club, DI)
    with pytest.raises(Refused, match="No slips"):
        print_slips_again(club)


def slip(office: Office, tag: str, **more: object) -> DueSlip:
    """The slip of a piece."""
    return next(one for one in enter_slips(office, **more).slips if one.tag == tag)  # type: ignore[arg-type]


def test_a_slip_says_what_is_due_by_when_and_to_whom(club: Office) -> None:
    with pytest.raises(Refused, match="Nothing of these pieces is due"):
        enter_slips(club, until=club.today, name=DI)
    book_in(club, shackle("SH-9"))
    made = slip(club, "SH-9", bring_to="the shed", bring_by=club.today + timedelta(days=9))
    assert not made.may_use and "nobody competent" in made.due[0].what and made.due[0].day == "now"
    assert made.do == "To: the shed. By: 4 Dec 2026."
    part = slip(later(club, 4000), "RP-1")
    assert part.do.startswith("Bring the vehicle V-1") and DI in part.concerns
    only = enter_slips(later(club, 4000), name=DI)
    assert {one.tag for one in only.slips} == {"SH-1", "SH-2", "RP-1"}
    with pytest.raises(Refused, match="No piece lies at"):
        enter_slips(club, place="the moon")


def test_every_holder_of_the_sample_gets_a_letter_that_prints_whole(sample: Office) -> None:
    papers = print_letters(sample, bring_to="the shed", bring_by=sample.today + timedelta(days=9))
    assert len(papers) > 5 and all(one.missing == () for one in papers)
    assert verify_book(sample).faults == ()
