"""A recall that was entered wrongly is withdrawn: what it alone held stands as before, what is known more is held."""

from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.bring_back import bring_back, what_would_come
from inspector.duties.call_in import call_in, hold_more
from inspector.duties.change_item import retag
from inspector.duties.destroy_item import destroy_item
from inspector.duties.field_copies import take_field_copy
from inspector.duties.give_opinion import answer_findings, doubt
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_recall import print_recall
from inspector.duties.recall_answers import close_recall, note_answer
from inspector.duties.recall_checks import recall_called
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure
from inspector.duties.settle_recall import ReadOnIt, not_of_it, remedied
from inspector.duties.tell_history import history_of
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.tell_recall import recall_told, recalls
from inspector.duties.verify_book import verify_book
from inspector.duties.what_falls_due import what_falls_due
from inspector.duties.what_needs_me import what_needs_me
from inspector.duties.whereabouts import report_missing, sell
from inspector.duties.withdraw_recall import WithdrawnRecall, withdraw_recall
from inspector.gear.inspection import InspectionKind
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Answer, Meant, Step
from inspector.gear.use import NewExposure, Weather
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, strap
from tests.duties.notices import DI, MEANT, booked, built, entered, marked, notice, outcome, seated_at
from tests.duties.rigs import later
from tests.duties.test_opinions import GROUND, RULE

BO = "Bo Second"
WRONG = "The notice is of another maker's; seen on its second page."


@pytest.fixture(scope="module")
def _built(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """Two of the notice, one whose serial nobody can read, one of another row; a second competent person, a member."""
    return built(tmp_path_factory.mktemp("withdrawn"), rules, BO)


@pytest.fixture
def club(_built: Path, tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A copy of it with its officer at the desk."""
    with seated_at(_built, tmp_path, rules) as office:
        yield office


def withdrawn(office: Office, ref: str, **more: str) -> WithdrawnRecall:
    """The officer and a second competent person withdraw it."""
    return withdraw_recall(office, ref, WRONG, **{"second": BO, **more})


def inspected(office: Office, tag: str, **bad: str) -> Outcome:
    """An inspection of all of it by the officer, made for an event, so that it answers what was entered today."""
    kind = open_item(office, tag).dossier.kind
    found = all_good(office, kind, SHACKLE_READINGS, None, "", **bad)
    seen = replace(found, kind=InspectionKind.AFTER_EVENT)
    return record_inspection(office, tag, seen).verdict.outcome


def booked_as(office: Office, tag: str) -> str:
    """A further piece of another row."""
    booked(office, tag, "KS230099")
    return tag


def steps(office: Office, tag: str) -> list[Step]:
    """What recalls came to for it, in order."""
    return [one.facts.step for one in open_item(office, tag).dossier.calls]


def test_what_a_withdrawn_recall_held_stands_as_it_did_without_it(club: Office) -> None:
    before = {tag: open_item(club, tag).verdict for tag in ("SH-1", "SH-2", "SH-4")}
    ref = entered(club).recall.ref
    assert {outcome(club, tag) for tag in before} == {Outcome.HOLD}
    done = withdrawn(club, ref)
    assert sorted(one.dossier.item.tag for one in done.pieces) == sorted(before) and done.doubted == ()
    assert {tag: open_item(club, tag).verdict for tag in before} == before
    assert verify_book(club).faults == ()


def test_it_is_told_for_ever_that_it_was_withdrawn_by_whom_when_and_why(club: Office) -> None:
    ref = entered(club).recall.ref
    withdrawn(club, ref)
    (row,) = recalls(club)
    assert (row.state, row.is_closed, row.is_withdrawn, row.left) == ("withdrawn", True, True, "none")
    told = recall_told(club, ref)
    assert told.withdrawn == f"Withdrawn on 25 Nov 2026 by Ada Officer and {BO}: {WRONG}"
    assert [one.state for one in told.pieces] == ["not held by it any more"] * 3
    assert told.pieces[0].why.startswith("its mark is “KELPLINE”") and told.left == ()
    assert told.added[-1][1] == "Withdrawn" and WRONG in told.added[-1][2] and BO in told.added[-1][2]
    (line, *_) = told_ledger(club)
    assert line.in_full and line.sentence == (
        f"Ada Officer and {BO} withdrew the recall {ref}, which held SH-1, SH-2 and SH-4: “{WRONG}”."
    )
    said = [one for one in history_of(club, "SH-1") if one.what in {"Called in", "Recall withdrawn"}]
    assert [one.text for one in said] == [f"{ref} was entered wrongly: {WRONG}", said[1].text]
    assert said[0].by == "Ada Officer" and said[1].text.startswith(f"by {ref}, certain")


def test_nothing_falls_due_by_it_and_nothing_is_held_by_it_any_more(club: Office) -> None:
    ref = entered(club).recall.ref
    assert what_needs_me(club).recalls
    withdrawn(club, ref)
    assert [one for one in what_falls_due(club) if one.about == ref] == [] and what_needs_me(club).recalls == ()
    assert book_in(club, marked("SH-8", "KS240180")).dossier.calls == ()


@pytest.mark.parametrize("other", ["hold", "retire"])
def test_a_reason_of_its_own_stays(club: Office, other: str) -> None:
    ref = entered(club).recall.ref
    if other == "hold":
        doubt(club, "SH-1", "It clicked as it was closed.")
    else:
        inspected(club, "SH-1", cracks="bad")
    withdrawn(club, ref)
    found = open_item(club, "SH-1").verdict
    assert found.outcome.value == other and "recall" not in {one.rule for one in found.findings}


def test_a_strap_derated_by_its_age_is_derated_still(club: Office) -> None:
    piece = replace(strap(), maker_mark="Kelpline", serial="KS240120", in_service_on=date(2026, 6, 1))
    kind = book_in(club, piece).dossier.kind
    record_exposure(club, piece.tag, NewExposure(club.today, Weather.SUN, 150, by=club.officer.id))
    record_inspection(club, piece.tag, all_good(club, kind, STRAP_READINGS))
    before = open_item(club, piece.tag).verdict
    ref = entered(club, Meant("Kelpline", first="KS240100", last="KS240199")).recall.ref
    withdrawn(club, ref)
    assert open_item(club, piece.tag).verdict == before and before.outcome is Outcome.DERATE


def test_the_same_notice_entered_twice_goes_on_holding_by_the_one_that_stands(club: Office) -> None:
    first, second = entered(club).recall.ref, entered(club).recall.ref
    withdrawn(club, second)
    assert outcome(club, "SH-1") is Outcome.HOLD and open_item(club, "SH-1").verdict.outcome is Outcome.HOLD
    book_in(club, marked("SH-8", "KS240180"))
    assert [one.facts.recall for one in open_item(club, "SH-8").dossier.calls] == [first]
    assert [one.is_withdrawn for one in recalls(club)] == [True, False]


def test_a_closed_one_may_be_withdrawn_too(club: Office) -> None:
    ref = entered(club, replace(MEANT, batches=(), first="KS240150", last="KS240150")).recall.ref
    not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))
    remedied(club, ref, "SH-1", "A new pin is in.")
    inspected(club, "SH-1")
    close_recall(club, ref, "All is told.")
    book_in(club, marked("SH-8", "KS240150"))
    assert steps(club, "SH-8") == [Step.CALLED]
    withdrawn(club, ref)
    assert steps(club, "SH-8") == [Step.CALLED, Step.WITHDRAWN]
    assert recall_told(club, ref).withdrawn and recalls(club)[0].state == "withdrawn"


def test_what_was_cleared_or_remedied_under_it_keeps_its_entries_and_waits_as_before(club: Office) -> None:
    ref = entered(club).recall.ref
    not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))
    remedied(club, ref, "SH-1", "A new pin is in.")
    history = {tag: history_of(club, tag) for tag in ("SH-1", "SH-2")}
    before = {tag: open_item(club, tag).verdict for tag in history}
    withdrawn(club, ref)
    for tag, rows in history.items():
        assert history_of(club, tag) == rows and open_item(club, tag).verdict == before[tag]
    assert outcome(club, "SH-1") is Outcome.HOLD, "a new pin is in, and nobody has seen it yet"
    assert inspected(club, "SH-1") is Outcome.FIT
    assert open_item(club, "SH-2").dossier.item.facts.serial == "KS230044"


def test_what_was_held_by_hand_waits_for_an_inspection(club: Office) -> None:
    ref = entered(club).recall.ref
    hold_more(club, ref, "SH-3", "bought in the same box")
    done = withdrawn(club, ref)
    assert done.doubted == (("SH-3", f"{ref} was withdrawn, but it was held by hand: bought in the same box"),)
    assert outcome(club, "SH-3") is Outcome.HOLD and outcome(club, "SH-1") is Outcome.FIT
    (line, *_) = told_ledger(club)
    assert line.sentence.endswith("”. SH-3 must be inspected before use.")
    assert inspected(club, "SH-3") is Outcome.FIT


@pytest.mark.parametrize(
    ("answer", "is_held"),
    [
        (Answer.MADE_UNUSABLE, True),
        (Answer.PASSED_ON, True),
        (Answer.HAS_IT_NO_MORE, True),
        (Answer.HAS_IT, False),
        (Answer.SENT, False),
        (Answer.READ, False),
    ],
)
def test_what_somebody_answered_not_to_have_any_more_is_never_fit_by_a_withdrawal(
    club: Office, answer: Answer, is_held: bool
) -> None:
    ref = entered(club).recall.ref
    note_answer(club, ref, ["SH-4"], DI, answer, "Cal Buyer")
    retag(club, "SH-4", "SH-40", "a new label")
    done = withdrawn(club, ref)
    assert [tag for tag, _ in done.doubted] == (["SH-40"] if is_held else [])
    assert outcome(club, "SH-40") is (Outcome.HOLD if is_held else Outcome.FIT)
    assert not is_held or (DI in done.doubted[0][1] and "Cal Buyer" in done.doubted[0][1])


def test_an_answer_after_which_somebody_doubted_the_piece_and_it_was_inspected_is_answered_for(club: Office) -> None:
    ref = entered(club).recall.ref
    note_answer(club, ref, ["SH-4"], DI, Answer.HAS_IT_NO_MORE)
    doubt(club, "SH-4", "It lay in the wrong box.")
    inspected(club, "SH-4")
    assert withdrawn(club, ref).doubted == () and outcome(club, "SH-4") is Outcome.FIT


def test_a_piece_of_one_of_the_two_stays_on_hold_since_nobody_is_the_judge_of_his_own_gear(club: Office) -> None:
    booked(club, "SH-5", "KS240160", owner=BO)
    ref = entered(club).recall.ref
    done = withdrawn(club, ref)
    assert done.doubted == (("SH-5", f"{ref} was withdrawn, but {BO} owns it and withdrew the recall"),)
    assert outcome(club, "SH-5") is Outcome.HOLD and outcome(club, "SH-1") is Outcome.FIT


def test_nothing_is_doubted_of_what_left_for_good_or_is_retired(club: Office) -> None:
    ref = entered(club).recall.ref
    hold_more(club, ref, "SH-3", "bought in the same box")
    inspected(club, "SH-3", cracks="bad")
    inspected(club, "SH-2", cracks="bad")
    destroy_item(club, "SH-2", "cut in two")
    hold_more(club, ref, booked_as(club, "SH-5"), "bought in the same box")
    sell(club, "SH-5", "Cal Buyer", as_it_is=True)
    report_missing(club, "SH-1", "the dunes", "gone")
    note_answer(club, ref, ["SH-1", "SH-5"], DI, Answer.HAS_IT_NO_MORE)
    done = withdrawn(club, ref)
    assert [tag for tag, _ in done.doubted] == ["SH-1"], "what is missing may be found again"
    assert outcome(club, "SH-3") is outcome(club, "SH-2") is Outcome.RETIRE
    assert {one.tag: one.state for one in recall_told(club, ref).pieces}["SH-3"] == "retired"


def test_an_opinion_on_a_slight_fault_is_in_force_again_since_nothing_new_was_known(club: Office) -> None:
    piece = replace(strap(), maker_mark="Kelpline", serial="KS240120")
    kind = book_in(club, piece).dossier.kind
    record_inspection(club, piece.tag, all_good(club, kind, STRAP_READINGS, label_legible="slight"))
    answer_findings(club, piece.tag, [RULE], GROUND, BO)
    before = open_item(club, piece.tag).verdict
    meant = Meant("Kelpline", first="KS240100", last="KS240199")
    ref = entered(club, meant).recall.ref
    assert RULE in {one.rule for one in open_item(club, piece.tag).verdict.findings if one.outcome is Outcome.HOLD}
    withdrawn(club, ref)
    assert open_item(club, piece.tag).verdict == before and before.outcome is Outcome.FIT


def test_an_opinion_that_was_given_while_it_was_held_is_in_force_until_anything_new_is_known(club: Office) -> None:
    piece = replace(strap(), maker_mark="Kelpline", serial="KS240120")
    kind = book_in(club, piece).dossier.kind
    record_inspection(club, piece.tag, all_good(club, kind, STRAP_READINGS, label_legible="slight"))
    ref = entered(club, Meant("Kelpline", first="KS240100", last="KS240199")).recall.ref
    answer_findings(club, piece.tag, [RULE], GROUND, BO)
    assert outcome(club, piece.tag) is Outcome.HOLD
    withdrawn(club, ref)
    assert outcome(club, piece.tag) is Outcome.FIT
    call_in(club, notice(club, Meant(tags=(piece.tag,))))
    assert RULE in {one.rule for one in open_item(club, piece.tag).verdict.findings if one.outcome is Outcome.HOLD}


@pytest.mark.parametrize(
    ("given", "field", "says"),
    [
        ({"why": " "}, "why", "It is empty"),
        ({"second": ""}, "second name", "It is empty"),
        ({"second": "Ada Officer"}, "second name", "cannot be both names"),
        ({"second": DI}, "second name", "not entered as competent for a bow shackle"),
        ({"by": DI}, "said by", "not entered as competent for a bow shackle"),
        ({"second": "Nobody Known"}, "second name", "Nobody called"),
        ({"ref": "N-none"}, "recall", "No recall has the reference"),
    ],
)
def test_without_a_reason_or_two_competent_persons_nothing_is_let_go(
    club: Office, given: dict[str, str], field: str, says: str
) -> None:
    ref = entered(club).recall.ref
    asked = {"ref": ref, "why": WRONG, "second": BO, **given}
    with pytest.raises(Refused, match=says) as refused:
        withdraw_recall(club, asked["ref"], asked["why"], second=asked["second"], by=asked.get("by", ""))
    assert refused.value.field == field
    assert outcome(club, "SH-1") is Outcome.HOLD and not recalls(club)[0].is_withdrawn


def test_one_that_means_nothing_here_takes_two_who_may_judge_some_kind(club: Office) -> None:
    ref = entered(club, Meant("Nobody's mark")).recall.ref
    with pytest.raises(Refused, match="not entered as competent for any kind"):
        withdrawn(club, ref, second=DI)
    assert withdrawn(club, ref).pieces == ()


def check_ended(call: Callable[[], object]) -> None:
    """Nothing is added to a withdrawn recall."""
    with pytest.raises(Refused, match=r"was withdrawn on 25 Nov 2026\. If the notice counts after all"):
        call()


def test_nothing_is_added_to_it_and_it_is_not_withdrawn_twice(club: Office) -> None:
    ref = entered(club).recall.ref
    withdrawn(club, ref)
    check_ended(lambda: withdrawn(club, ref))
    check_ended(lambda: note_answer(club, ref, ["SH-4"], DI, Answer.HAS_IT))
    check_ended(lambda: hold_more(club, ref, "SH-3", "late"))
    check_ended(lambda: close_recall(club, ref, "done"))
    with pytest.raises(Refused, match="is not held for"):
        not_of_it(club, ref, "SH-1", ReadOnIt("KS230044"))
    with pytest.raises(Refused, match="is not held for"):
        remedied(club, ref, "SH-1", "A new pin.")
    assert entered(club).recall.ref != ref and outcome(club, "SH-1") is Outcome.HOLD, "entered anew it counts"


def away_from(club: Office, folder: Path) -> tuple[Office, Path]:
    """A field copy at work, and its file."""
    taken = take_field_copy(club, folder / "away", club.officer.name, "the dunes")
    return replace(club, book=open_book(taken.file), out_tray=folder / "out"), taken.file


def test_withdrawn_at_home_it_lets_go_what_a_field_copy_booked_in_under_it(club: Office, tmp_path: Path) -> None:
    ref = entered(club).recall.ref
    away, file = away_from(club, tmp_path)
    booked_held = book_in(away, marked("SH-8", "KS240180"))
    assert booked_held.verdict.outcome is Outcome.HOLD
    hold_more(away, ref, "SH-3", "bought in the same box")
    note_answer(away, ref, ["SH-4"], DI, Answer.MADE_UNUSABLE, "cut in two")
    remedied(away, ref, "SH-1", "A new pin is in.")
    away.book.close()
    withdrawn(club, ref)
    assert outcome(club, "SH-4") is Outcome.FIT
    looked = what_would_come(club, file)
    done = bring_back(club, file)
    assert looked.tags == done.tags and {"SH-8", "SH-3", "SH-4", "SH-1"} <= set(done.tags)
    with club.book.reading() as page:
        assert not [one for one in page.standing_calls(ref).values() if one.facts.step is Step.CALLED]
        assert recall_called(page, ref) in page.withdrawn_recalls()
    assert "recall" not in {one.rule for one in open_item(club, "SH-8").verdict.findings}
    assert {outcome(club, tag) for tag in ("SH-1", "SH-3", "SH-4")} == {Outcome.HOLD}
    assert inspected(club, "SH-4") is Outcome.FIT and inspected(club, "SH-3") is Outcome.FIT
    assert verify_book(club).faults == () and bring_back(club, file).deed_count == 0


def test_withdrawn_on_a_field_copy_it_is_withdrawn_at_home_once_it_comes_back(club: Office, tmp_path: Path) -> None:
    ref = entered(club).recall.ref
    away, file = away_from(club, tmp_path)
    withdrawn(away, ref)
    away.book.close()
    note_answer(club, ref, ["SH-4"], DI, Answer.PASSED_ON, "Cal Buyer")
    book_in(club, marked("SH-8", "KS240180"))
    not_of_it(club, ref, "SH-2", ReadOnIt("KS230044"))
    bring_back(club, file)
    assert recalls(club)[0].is_withdrawn
    assert outcome(club, "SH-1") is Outcome.FIT and outcome(club, "SH-4") is Outcome.HOLD
    assert "recall" not in {one.rule for one in open_item(club, "SH-8").verdict.findings}
    assert open_item(club, "SH-2").dossier.item.facts.serial == "KS230044"
    assert verify_book(club).faults == ()


def test_withdrawn_on_both_sides_it_is_withdrawn_once_and_closed_on_one_it_is_withdrawn(
    club: Office, tmp_path: Path
) -> None:
    ref = entered(club).recall.ref
    away, file = away_from(club, tmp_path)
    withdrawn(away, ref)
    away.book.close()
    withdrawn(club, ref)
    bring_back(club, file)
    assert outcome(club, "SH-1") is Outcome.FIT and [one.state for one in recalls(club)] == ["withdrawn"]
    assert recall_told(club, ref).left == () and verify_book(club).faults == ()


def test_who_was_written_to_is_told_to_whoever_withdraws_it(club: Office) -> None:
    ref = entered(club).recall.ref
    print_recall(club, ref)
    print_recall(club, ref, remind=True)
    assert withdrawn(club, ref).written == (DI,)


def test_the_clock_of_a_copy_that_was_ahead_does_not_keep_a_hold(club: Office, tmp_path: Path) -> None:
    ref = entered(club).recall.ref
    away, file = away_from(club, tmp_path)
    book_in(later(away, 9), marked("SH-8", "KS240180"))
    away.book.close()
    withdrawn(club, ref)
    bring_back(club, file)
    assert "recall" not in {one.rule for one in open_item(later(club, 10), "SH-8").verdict.findings}
    with club.book.reading() as page:
        assert page.standing_calls(ref)[page.item("SH-8").id].facts.step is Step.WITHDRAWN
