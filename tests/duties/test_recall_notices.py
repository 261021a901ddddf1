"""A maker's notice: all that it means is held at once, and only what is read or done and inspected lets a piece go."""

from collections.abc import Callable, Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.bring_back import bring_back
from inspector.duties.call_in import call_in, hold_more
from inspector.duties.destroy_item import destroy_item
from inspector.duties.field_copies import take_field_copy
from inspector.duties.fit_parts import fit_part
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_recall import print_recall
from inspector.duties.read_marks import read_marks
from inspector.duties.recall_answers import close_recall, note_answer
from inspector.duties.recall_search import search_recall
from inspector.duties.record_inspection import record_inspection
from inspector.duties.settle_recall import ReadOnIt, not_of_it, remedied
from inspector.duties.tell_history import history_of
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.tell_recall import recall_told, recalls
from inspector.duties.trip_readiness import readiness
from inspector.duties.verify_book import verify_book
from inspector.duties.what_falls_due import what_falls_due
from inspector.duties.what_needs_me import what_needs_me
from inspector.duties.whereabouts import report_missing, sell
from inspector.gear.falls_due import Due
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.inspection import InspectionKind
from inspector.gear.needs import Work
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Answer, Meant, Sure
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, all_good, point
from tests.duties.notices import DI, MEANT, booked, built, entered, marked, notice, outcome, seated_at
from tests.duties.rigs import fit, later, planned
from tests.duties.test_opinions import add


@pytest.fixture(scope="module")
def _built(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """One of the notice, one whose serial nobody can read, one of another row, one lent to Di."""
    return built(tmp_path_factory.mktemp("recalls"), rules)


@pytest.fixture
def club(_built: Path, tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A copy of it with its officer at the desk."""
    with seated_at(_built, tmp_path, rules) as office:
        yield office


def recalled(office: Office, tag: str) -> bool:
    """Whether the rule on recalls holds it."""
    return any(one.rule == "recall" and one.outcome is Outcome.HOLD for one in open_item(office, tag).verdict.findings)


def inspected(office: Office, tag: str) -> Outcome:
    """A thorough inspection by the officer, all good."""
    kind = open_item(office, tag).dossier.kind
    seen = replace(all_good(office, kind, SHACKLE_READINGS), kind=InspectionKind.PERIODIC)
    return record_inspection(office, tag, seen).verdict.outcome


def test_a_search_holds_nothing_and_an_entered_notice_all_it_means_and_all_that_nobody_can_read(club: Office) -> None:
    found = search_recall(club, MEANT)
    tags = [[one.item.tag for one in some] for some in (found.certain, found.to_ask, found.not_meant)]
    assert tags == [["SH-1", "SH-4"], ["SH-2"], ["SH-3"]]
    assert {outcome(club, tag) for tag in ("SH-1", "SH-2", "SH-3", "SH-4")} == {Outcome.FIT}

    done = entered(club)
    assert [one.dossier.item.tag for one in done.pieces] == ["SH-1", "SH-4", "SH-2"]
    assert [outcome(club, tag) for tag in ("SH-1", "SH-2", "SH-3", "SH-4")] == [
        Outcome.HOLD, Outcome.HOLD, Outcome.FIT, Outcome.HOLD
    ]  # fmt: skip
    assert verify_book(club).faults == ()
    (told, *_) = told_ledger(club)
    assert told.sentence == (
        f"Ada Officer entered the recall {done.recall.ref} (the maker's notice, 20 Nov 2026, Safety notice 7) and held "
        "2 pieces for certain, 1 piece to ask: “Pins of this batch were hardened wrongly.”."
    )


def test_a_piece_is_found_wherever_it_is_and_what_is_destroyed_is_counted_alone(club: Office) -> None:
    sell(club, "SH-1", "Cal Buyer")
    report_missing(club, "SH-2", "the beach", "gone")
    booked(club, "SH-5", "KS240110")
    kind = open_item(club, "SH-5").dossier.kind
    record_inspection(club, "SH-5", all_good(club, kind, SHACKLE_READINGS, cracks="bad"))
    assert outcome(club, "SH-5") is Outcome.RETIRE
    booked(club, "SH-6", "KS240111")
    record_inspection(club, "SH-6", all_good(club, kind, SHACKLE_READINGS, cracks="bad"))
    destroy_item(club, "SH-6", "cut in two")
    found = search_recall(club, MEANT)
    assert [one.item.tag for one in found.certain] == ["SH-1", "SH-4", "SH-5"]
    assert "sold to Cal Buyer" in found.certain[0].place and found.destroyed == 1
    entered(club)
    assert outcome(club, "SH-5") is Outcome.RETIRE and recalled(club, "SH-1")


def test_a_fitted_part_is_held_and_a_trip_notices_at_once(club: Office) -> None:
    part = replace(point("RP-1"), maker_mark="Kelpline", serial="")
    fit(club, part, POINT_READINGS)
    planned(club, ("SH-1", "SH-3"))
    fit_part(club, "RP-1", Fitted("V-1", End.REAR, Side.LEFT))
    meant = Meant("Kelpline", batches=("KS24",))
    assert {one.item.tag for one in search_recall(club, meant).to_ask} == {"SH-2", "RP-1"}
    entered(club, meant)
    assert recalled(club, "RP-1") and recalled(club, "SH-1")
    ready = readiness(club, "T-1")
    assert [one.dossier.item.tag for one in ready.staying] == ["SH-1"]
    assert [one.dossier.item.tag for one in ready.going] == ["SH-3"]


def test_no_inspection_and_no_wait_lets_it_go(club: Office) -> None:
    entered(club)
    assert inspected(club, "SH-1") is Outcome.HOLD
    assert recalled(later(club, 90), "SH-1")


def test_what_was_read_on_it_lets_it_go_at_once_and_stands_as_its_marks(club: Office) -> None:
    ref = entered(club).recall.ref
    freed = not_of_it(club, ref, "SH-2", ReadOnIt("KS 230-044"))
    assert freed.verdict.outcome is Outcome.FIT
    assert open_item(club, "SH-2").dossier.item.facts.serial == "KS 230-044"
    (told, *_) = told_ledger(club)
    assert told.sentence.startswith(f"Ada Officer read on SH-2 that the recall {ref} does not mean it")
    said = {one.what: one.text for one in history_of(club, "SH-2")}
    assert said["Not meant by a recall"] == f"{ref}: serial read as KS 230-044"
    assert said["Called in"] == f"by {ref}, to ask: its serial is not known"
    assert verify_book(club).faults == ()


@pytest.mark.parametrize(
    ("tag", "read", "says"),
    [
        ("SH-2", ReadOnIt("KS240122"), "the piece is meant"),
        ("SH-2", ReadOnIt("KS2401?"), "No serial was read"),
        ("SH-2", ReadOnIt(""), "No serial was read"),
        ("SH-2", ReadOnIt("240122"), "leaves it open"),
        ("SH-1", ReadOnIt("KS240150"), "the piece is meant"),
        ("SH-1", ReadOnIt("KS240150", mark="Kelplin"), "leaves it open"),
        ("SH-3", ReadOnIt("KS230007"), "is not held for"),
    ],
)
def test_what_leaves_it_open_or_is_meant_clears_nothing(club: Office, tag: str, read: ReadOnIt, says: str) -> None:
    ref = entered(club).recall.ref
    before = outcome(club, tag)
    with pytest.raises(Refused, match=says):
        not_of_it(club, ref, tag, read)
    assert outcome(club, tag) is before


def test_nobody_clears_his_own_gear_or_without_competence_or_what_is_not_at_hand(club: Office) -> None:
    book_in(club, marked("SH-7", "", owner=club.officer.name))
    ref = entered(club).recall.ref
    with pytest.raises(Refused, match="nobody is the judge of his own gear"):
        not_of_it(club, ref, "SH-7", ReadOnIt("KS230044"))
    with pytest.raises(Refused, match="not entered as competent"):
        not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"), by=DI)
    add(club, "Bo Second")
    assert not_of_it(club, ref, "SH-7", ReadOnIt("KS230044"), by="Bo Second").dossier.item.facts.serial == "KS230044"
    report_missing(club, "SH-2", "the beach", "gone")
    with pytest.raises(Refused, match="If it is here again"):
        not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))


def test_what_was_done_as_the_notice_asks_is_held_until_inspected_afterwards(club: Office) -> None:
    ref = entered(club).recall.ref
    inspected(club, "SH-1")
    held = remedied(club, ref, "SH-1", "The maker's new pin is in.")
    assert held.verdict.outcome is Outcome.HOLD
    assert inspected(club, "SH-1") is Outcome.FIT
    with pytest.raises(Refused, match="is not held for"):
        remedied(club, ref, "SH-1", "again")


def test_a_piece_booked_in_or_read_anew_later_that_may_be_meant_is_held_at_once_and_what_was_cleared_stays_so(
    club: Office,
) -> None:
    ref = entered(club).recall.ref
    new = book_in(club, marked("SH-8", "KS240180"))
    assert any(one.sentence.startswith("Recalls it stands under: 1") for one in new.explanation.reasons)
    booked(club, "SH-9", "KS230100")
    assert outcome(club, "SH-9") is Outcome.FIT
    read_marks(club, "SH-9", "", "KS240190", "cleaned and read again")
    assert recalled(club, "SH-9")
    not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))
    read_marks(club, "SH-2", "Kelpline", "", "as the maker writes it")
    assert not recalled(club, "SH-2")
    read_marks(club, "SH-2", "", "KS24?", "one sign is worn")
    assert recalled(club, "SH-2")


def test_what_is_read_for_one_recall_brings_the_piece_under_another_that_means_it(club: Office) -> None:
    ref = entered(club).recall.ref
    other = entered(club, replace(MEANT, batches=(), first="KS250200", last="KS250299")).recall.ref
    assert {one.facts.recall for one in open_item(club, "SH-1").dossier.calls} == {ref}
    held = not_of_it(club, ref, "SH-1", ReadOnIt("KS250201"))
    last = {one.facts.recall: one.facts.step.value for one in held.dossier.calls}
    assert last == {ref: "not_of_it", other: "called"} and held.verdict.outcome is Outcome.HOLD


def test_what_a_field_copy_booked_in_comes_under_a_recall_that_was_entered_at_home_and_the_other_way_round(
    club: Office, tmp_path: Path
) -> None:
    taken = take_field_copy(club, tmp_path / "away", club.officer.name, "the dunes")
    away = replace(club, book=open_book(taken.file), out_tray=tmp_path / "out")
    booked(away, "SH-8", "KS240180")
    entered(club)
    entered(away, replace(MEANT, first="KS230001", last="KS230010"))
    away.book.close()
    bring_back(club, taken.file)
    assert recalled(club, "SH-8") and recalled(club, "SH-3")
    assert len({one.ref for one in recalls(club)}) == 2 and verify_book(club).faults == ()


def test_one_more_is_held_by_hand_and_not_twice(club: Office) -> None:
    ref = entered(club).recall.ref
    assert hold_more(club, ref, "SH-3", "bought in the same box").verdict.outcome is Outcome.HOLD
    with pytest.raises(Refused, match="already"):
        hold_more(club, ref, "SH-3", "again")
    with pytest.raises(Refused, match="is meant"):
        not_of_it(club, ref, "SH-2", ReadOnIt("KS240100"))


def test_letters_go_once_reminders_to_those_who_do_not_answer_and_answers_let_nothing_go(club: Office) -> None:
    ref = entered(club).recall.ref
    done = print_recall(club, ref)
    (letter,) = done.letters
    assert (letter.name, [one.tag for one in letter.pieces]) == (DI, ["SH-4"])
    assert letter.remedy.startswith("Send the pin back") and letter.recall == ref
    assert len(done.unwritten) == 2
    with pytest.raises(Refused, match="Everybody whom these pieces concern was written to"):
        print_recall(club, ref)
    (again,) = print_recall(club, ref, remind=True).letters
    assert again.is_reminder and again.imprint.number != letter.imprint.number

    note_answer(club, ref, ["SH-4"], DI, Answer.HAS_IT, "in a bag by the door")
    assert recalled(club, "SH-4")
    with pytest.raises(Refused, match="has answered"):
        print_recall(club, ref, remind=True)
    (told,) = recall_told(club, ref).letters
    assert "has it, out of use – in a bag by the door" in told.answers and told.due is None


def test_of_a_piece_that_nobody_can_tell_the_letter_asks_what_stands_on_it(club: Office) -> None:
    lend(club, ["SH-2"], DI, club.today + timedelta(days=9))
    (letter,) = print_recall(club, entered(club).recall.ref).letters
    said = {one.tag: one.do for one in letter.pieces}
    assert "write on the slip what you read on it" in said["SH-2"]
    assert "write on the slip" not in said["SH-4"]


def test_whom_it_was_passed_on_to_gets_a_letter_too(club: Office) -> None:
    ref = entered(club).recall.ref
    print_recall(club, ref)
    with pytest.raises(Refused, match="to whom it was passed on"):
        note_answer(club, ref, ["SH-4"], DI, Answer.PASSED_ON)
    note_answer(club, ref, ["SH-4"], DI, Answer.PASSED_ON, "Cal Buyer")
    (letter,) = print_recall(club, ref).letters
    assert letter.name == "Cal Buyer" and "passed on to you" in letter.pieces[0].why


def test_what_is_open_waits_and_a_reminder_falls_due(club: Office) -> None:
    ref = entered(club).recall.ref
    print_recall(club, ref)
    lines = {one.what: one for one in what_falls_due(club) if one.about == ref}
    assert lines[Due.RECALL].says == "3 pieces are not settled"
    assert lines[Due.ANSWER].on == club.today + timedelta(days=14) and lines[Due.ANSWER].name == DI
    needs = what_needs_me(club)
    assert [one.about for one in needs.recalls] == [ref] and not needs.is_quiet
    on_later_day = later(club, 20)
    (group,) = [one for one in what_needs_me(on_later_day).work if one.work is Work.ANSWERS]
    assert group.lines[0].due.overdue_days(on_later_day.today) == 6


def test_it_is_closed_only_once_every_piece_is_settled(club: Office) -> None:
    sell(club, "SH-1", "Cal Buyer")
    ref = entered(club).recall.ref
    print_recall(club, ref)
    with pytest.raises(Refused) as refused:
        close_recall(club, ref, "All replaced.")
    assert all(tag in refused.value.why for tag in ("SH-1: nobody has answered", "SH-2: read on it", "SH-4: read"))
    note_answer(club, ref, ["SH-1"], "Cal Buyer", Answer.SENT)
    not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))
    remedied(club, ref, "SH-4", "A new pin is in.")
    with pytest.raises(Refused, match="SH-1"):
        close_recall(club, ref, "All replaced.")
    note_answer(club, ref, ["SH-1"], "Cal Buyer", Answer.MADE_UNUSABLE)
    close_recall(club, ref, "All replaced.")
    assert recalls(club)[0].is_closed and what_needs_me(club).recalls == ()
    for call in (
        lambda: note_answer(club, ref, ["SH-1"], "Cal Buyer", Answer.HAS_IT),
        lambda: print_recall(club, ref),
        lambda: hold_more(club, ref, "SH-3", "late"),
    ):
        check_closed(call)


def check_closed(call: Callable[[], object]) -> None:
    """Nothing is added to a closed recall."""
    with pytest.raises(Refused, match="is closed"):
        call()


def test_what_has_left_and_comes_back_after_the_close_is_held_still(club: Office) -> None:
    report_missing(club, "SH-1", "the beach", "gone")
    ref = entered(club, replace(MEANT, batches=(), first="KS240150", last="KS240150")).recall.ref
    not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))
    note_answer(club, ref, ["SH-1"], club.officer.name, Answer.HAS_IT_NO_MORE, "looked for it twice")
    close_recall(club, ref, "Not found.")
    assert recalled(club, "SH-1")
    book_in(club, marked("SH-8", "KS240150"))
    assert recalled(club, "SH-8"), "the maker's word on this batch stands after the close"
    assert [one.state for one in recall_told(club, ref).pieces if one.tag == "SH-1"] == ["on hold"]


@pytest.mark.parametrize(
    ("meant", "field"),
    [
        (Meant(), "maker's mark"),
        (Meant(batches=("KS",)), "maker's mark"),
        (Meant("??"), "maker's mark"),
        (Meant("Kelpline", batches=("?",)), "batch"),
        (Meant("Kelpline", first="KS2", last="KT9"), "last serial"),
        (Meant("Kelpline", first="KS9", last="KS2"), "last serial"),
        (Meant("Kelpline", first="KSX"), "first serial"),
        (Meant("Kelpline", made_from=date(2024, 2, 1), made_until=date(2024, 1, 1)), "made until"),
        (Meant("Kelpline", ("teapot",)), "kind"),
        (Meant(tags=("SH-99",)), "tag"),
    ],
)
def test_a_notice_that_means_nothing_or_everything_is_refused_at_its_field(
    club: Office, meant: Meant, field: str
) -> None:
    with pytest.raises(Refused) as refused:
        call_in(club, notice(club, meant))
    assert refused.value.field == field
    assert recalls(club) == ()


def test_a_reason_and_a_day_that_has_come_are_needed(club: Office) -> None:
    for wrong, says in (({"reason": " "}, "without knowing why"), ({"issued": date(2027, 1, 1)}, "in the future")):
        with pytest.raises(Refused, match=says):
            call_in(club, replace(notice(club), **wrong))


def test_the_list_and_the_account_tell_how_each_piece_matches(club: Office) -> None:
    ref = entered(club).recall.ref
    (row,) = recalls(club)
    assert (row.left, row.is_closed) == ("3 of 3", False)
    told = recall_told(club, ref)
    assert [(one.tag, one.sure) for one in told.pieces] == [
        ("SH-1", Sure.CERTAIN), ("SH-4", Sure.CERTAIN), ("SH-2", Sure.TO_ASK)
    ]  # fmt: skip
    assert told.pieces[2].why == "its serial is not known" and len(told.left) == 3
    facts = {one.label: one.text for one in told.facts}
    assert facts["Serials"] == "KS240100 to KS240199" and facts["Batch"] == "QX7"
