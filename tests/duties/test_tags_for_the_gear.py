"""Tags for what is not free for use, labels and lending slips: numbered, kept, told, printed again as they were."""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.give_opinion import doubt
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_kept import papers_of, print_kept
from inspector.duties.print_labels import enter_labels, print_labels, print_labels_again
from inspector.duties.print_lending_slip import enter_lending_slip, print_lending_slip, print_lending_slip_again
from inspector.duties.print_tags import enter_tags, print_tags, print_tags_again
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_missing
from inspector.gear.label_sizes import LABEL_SIZES
from inspector.gear.outcome import Outcome
from inspector.gear.tags import HoldTag
from inspector.language import show_day
from inspector.paper.printed import Printed
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap
from tests.duties.incidents import beach, reported
from tests.duties.rigs import fit, fit_kit, later, member, ready
from tests.paper.codes import code_texts
from tests.paper.reading import all_text, squeezed

DI = "Di Member"
OFFICER = "Ada Officer"
Print = Callable[[Office], Paper]


@pytest.fixture
def club(office: Office) -> Office:
    """A fit strap and two fit shackles; Di may borrow."""
    fit_kit(office)
    member(office)
    return office


def retire(office: Office, tag: str) -> None:
    """A crack was seen in it."""
    kind = open_item(office, tag).dossier.kind
    found = record_inspection(office, tag, all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    assert found.verdict.outcome is Outcome.RETIRE


def derate(office: Office, tag: str) -> None:
    """Its webbing is rubbed a little."""
    kind = open_item(office, tag).dossier.kind
    found = record_inspection(office, tag, all_good(office, kind, STRAP_READINGS, abrasion="slight"))
    assert found.verdict.outcome is Outcome.DERATE, found.explanation.headline


def tag_of(office: Office, tag: str) -> HoldTag:
    """What the tag of a piece says."""
    (one,) = enter_tags(office, [tag]).tags
    return one


def text(paper: Paper) -> str:
    """What stands on a printed paper."""
    return all_text(Printed(paper.path.read_bytes(), 0, ()))


def test_the_tag_of_a_held_piece_says_why_since_when_by_whom_and_what_ends_it(club: Office) -> None:
    doubt(club, "SH-1", "it fell from the roof")
    words = open_item(club, "SH-1").explanation
    one = tag_of(later(club, 3), "SH-1")
    assert one.outcome is Outcome.HOLD and one.not_for == "Do not use it for anything." and not one.may_for
    assert one.why == words.reasons[0].sentence and not one.limit
    assert one.since == f"{show_day(club.today)}, by {OFFICER}."
    assert one.release and one.release in words.plain and "Do not use" not in one.release
    assert one.marked == "WLL 4.75 t, factor 5" and one.kind_name == "Bow shackle"


def test_a_derated_piece_says_what_it_bears_now_and_for_what(club: Office) -> None:
    derate(club, "KS-1")
    one, capacity = tag_of(club, "KS-1"), open_item(club, "KS-1").verdict.capacity
    assert capacity.now_n and capacity.as_marked_n and capacity.now_n < capacity.as_marked_n
    assert one.limit == f"Bears only MBS {capacity.now_n / 1000:.1f} kN now, reckoned."
    assert one.may_for == "Only for kinetic pull." and one.not_for == "Not for static pull and road towing."
    assert one.since == f"{show_day(club.today)}, by {OFFICER} (name as stated)."


def test_a_retired_piece_is_never_used_again_and_nothing_ends_it(club: Office) -> None:
    retire(club, "SH-1")
    one = tag_of(club, "SH-1")
    assert one.not_for == "Never use it again." and one.release.startswith("Nothing.") and not one.may_for


def test_the_day_since_is_the_first_without_a_break(club: Office) -> None:
    then, after = later(club, 2), later(club, 5)
    doubt(club, "SH-1", "first")
    kind = open_item(club, "SH-1").dossier.kind
    record_inspection(then, "SH-1", all_good(then, kind, SHACKLE_READINGS))
    doubt(after, "SH-1", "second")
    doubt(later(club, 6), "SH-1", "third")
    assert tag_of(later(club, 9), "SH-1").since.startswith(show_day(after.today))


def test_what_time_alone_has_ended_is_tagged_as_it_stands_today(club: Office) -> None:
    with pytest.raises(Refused, match="It is fit"):
        enter_tags(club, ["SH-1"])
    one = tag_of(later(club, 4000), "SH-1")
    assert one.outcome is Outcome.HOLD and one.since.endswith("worked out by the register.")


def test_nothing_is_tied_to_evidence_and_nothing_tells_to_destroy_it(office: Office) -> None:
    beach(office)
    ref = reported(office).incident.ref
    retire_words = ("unusable", "destroy")
    for one in enter_tags(office, ["SH-1", "SH-2"]).tags:
        assert one.is_evidence and f"as evidence of {ref}" in one.release and "tie nothing to it" in one.release
        assert not any(word in one.release for word in retire_words)


def test_fit_missing_unknown_and_no_pieces_are_refused_with_the_reason_and_nothing_is_numbered(club: Office) -> None:
    doubt(club, "SH-1", "it fell")
    report_missing(club, "SH-2", "the ford", "not in the box")
    before = verify_book(club).line_count
    for tags, why in (
        ([], "No piece is named"),
        (["SH-1", "KS-1"], "KS-1: It is fit: "),
        (["SH-2"], "SH-2: Not at hand: missing"),
        (["ZZ-9"], "No piece has the tag"),
    ):
        with pytest.raises(Refused, match=why):
            enter_tags(club, tags)
    assert verify_book(club).line_count == before
    assert enter_tags(club, ["SH-1"]).imprint.number.endswith("0001")


def test_a_label_is_for_what_is_here_and_not_retired(club: Office) -> None:
    retire(club, "SH-1")
    report_missing(club, "SH-2", "the ford", "not in the box")
    for tags, why in (
        ([], "No piece is named"),
        (["SH-1", "KS-1"], "SH-1: It is retired"),
        (["SH-2"], "SH-2: Not at hand"),
        (["ZZ-9"], "No piece has the tag"),
    ):
        with pytest.raises(Refused, match=why):
            enter_labels(club, tags)
    doubt(club, "KS-1", "it fell")  # what is held keeps its label: it says nothing of use
    (label,) = enter_labels(club, ["ks-1", "KS-1"]).labels
    assert (label.tag, label.kind_name, label.marked) == ("KS-1", "Kinetic strap", "MBS 8000 kg")


def test_size_and_place_are_refused_where_there_is_no_such(club: Office) -> None:
    with pytest.raises(Refused, match="no label size") as refused:
        enter_labels(club, ["KS-1"], "9x9")
    assert all(one.key in refused.value.what_to_do for one in LABEL_SIZES)
    for start in (0, -1, 15):
        with pytest.raises(Refused, match="has the places 1 to 14"):
            enter_labels(club, ["KS-1"], "99x38", start)
    long = "A" * 24
    fit(club, shackle(long), SHACKLE_READINGS)
    club_name = "The joint recovery and touring association of the northern spit"
    with club.book.page() as page:
        page.set("club", club_name)
        page.enter("change club", by=club.officer.id, at=club.now, facts={})
    with pytest.raises(Refused, match=f"no room for: {long}"):
        enter_labels(club, [long], "2.6x1in")
    assert enter_labels(club, [long], "99x68").labels


def test_the_slip_tells_what_one_person_has_and_how_it_stands(club: Office) -> None:
    derate(club, "KS-1")
    due = club.today + timedelta(days=9)
    lend(club, ["KS-1", "SH-1"], DI, due, note="with its bag")
    doubt(club, "SH-1", "it fell")
    slip = enter_lending_slip(club, DI)
    held, derated = slip.pieces
    assert (slip.name, slip.bring_back, slip.handed_by, slip.trip) == (DI, show_day(due), OFFICER, "")
    assert (held.tag, held.may_use, held.not_for) == ("SH-1", False, "Do not use it for anything.")
    assert derated.may_use and derated.limit.startswith("Bears only MBS ") and "Noted: with its bag" in derated.mind
    assert derated.may_for == "Only for kinetic pull."
    assert [one.tag for one in enter_lending_slip(club, DI, ["KS-1"]).pieces] == ["KS-1"]


def test_a_trip_gives_its_name_and_only_its_own_pieces(office: Office) -> None:
    ready(office)
    fit(office, shackle("SH-9"), SHACKLE_READINGS)
    lend(office, ["SH-1", "KS-1"], DI, trip="T-1")
    lend(office, ["SH-9"], DI, office.today + timedelta(days=40))
    slip = enter_lending_slip(office, DI, trip="T-1")
    assert slip.trip == "Beach days" and {one.tag for one in slip.pieces} == {"SH-1", "KS-1"}
    both = enter_lending_slip(office, DI)
    assert both.trip == "" and len(both.pieces) == 3
    assert both.bring_back == show_day(office.today + timedelta(days=2))


def test_what_falls_due_while_it_is_out_stands_on_the_slip(club: Office) -> None:
    lend(club, ["SH-1"], DI, club.today + timedelta(days=4000))
    (one,) = enter_lending_slip(club, DI).pieces
    assert "falls due on" in one.mind


def test_a_slip_of_what_is_not_out_is_refused(club: Office) -> None:
    lend(club, ["SH-1"], DI, club.today)
    for name, tags, why in (
        ("Nobody", [], "Nobody called"),
        (OFFICER, [], "has nothing of this on loan"),
        (DI, ["SH-1", "SH-2"], "does not have SH-2 on loan"),
        (DI, ["ZZ-9"], "No piece has the tag"),
    ):
        with pytest.raises(Refused, match=why):
            enter_lending_slip(club, name, tags)


PAPERS: dict[str, tuple[Print, Callable[[Office, str], Paper], str]] = {
    "D": (lambda office: print_tags(office, ["SH-1"]), print_tags_again, f"{OFFICER} printed the tags {{}} for SH-1."),
    "M": (
        lambda office: print_labels(office, ["SH-1", "KS-1"], "64x38", 3),
        print_labels_again,
        f"{OFFICER} printed the labels {{}} for SH-1 and KS-1.",
    ),
    "B": (
        lambda office: print_lending_slip(office, DI),
        print_lending_slip_again,
        f"{OFFICER} printed the lending slip {{}} for {DI}: SH-1.",
    ),
}


@pytest.mark.parametrize("letter", PAPERS)
def test_each_is_numbered_told_and_printed_again_as_it_was(club: Office, letter: str) -> None:
    first, again, told = PAPERS[letter]
    lend(club, ["SH-1"], DI, club.today)
    doubt(club, "SH-1", "it fell")
    paper = first(club)
    number = paper.path.stem
    assert number.startswith(f"{letter}-") and number.endswith("-0001") and verify_book(club).faults == ()
    assert told_ledger(club, last=1)[0].sentence == told.format(number)
    printed = paper.path.read_bytes()
    retire(club, "SH-1")
    count = verify_book(club).line_count
    paper.path.unlink()
    assert again(later(club, 30), f" {number} ").path.read_bytes() == printed
    assert verify_book(club).line_count == count
    (row,) = [one for one in papers_of(club, open_item(club, "SH-1")) if one.number == number]
    assert row.again and print_kept(club, "SH-1", number).path.read_bytes() == printed
    with pytest.raises(Refused, match="is the number of no such document"):
        again(club, "X-1")
    other = next(one for key, (_, one, _) in PAPERS.items() if key != letter)
    with pytest.raises(Refused, match="is the number of no such document"):
        other(club, number)


def test_labels_of_a_piece_with_a_like_tag_are_not_another_ones(club: Office) -> None:
    odd = ("A_1", "50%", "A/B")
    for tag in (*odd, "AX1", "50 per cent", "A//B"):
        book_in(club, shackle(tag))
    for tag in ("A_1", "AX1", "50%", "50 per cent", "A/B", "A//B"):
        number = print_labels(club, [tag]).path.stem
        named = {one: [row.number for row in papers_of(club, open_item(club, one))] for one in odd}
        assert {one: number in numbers for one, numbers in named.items()} == {one: one == tag for one in odd}


def test_a_printed_code_opens_the_piece_it_hangs_on(club: Office) -> None:
    fit(club, strap("Gürtel-7"), STRAP_READINGS)
    for tag in ("SH-1", "Gürtel-7"):
        doubt(club, tag, "it fell")
    for paper in (print_tags(club, ["SH-1", "Gürtel-7"]), print_labels(club, ["SH-1", "Gürtel-7"], "4x2in")):
        codes = code_texts(Printed(paper.path.read_bytes(), 0, ()))
        assert {open_item(club, one).dossier.item.tag for one in codes} == {"SH-1", "Gürtel-7"} and len(codes) == 2


def test_the_papers_take_the_clubs_page_and_its_cautions(club: Office) -> None:
    doubt(club, "SH-1", "it fell")
    lend(club, ["KS-1"], DI, club.today)
    for page in ("a4", "letter"):
        there = replace(club, page=page)
        for paper in (print_tags(there, ["SH-1"]), print_labels(there, ["SH-1"]), print_lending_slip(there, DI)):
            said = squeezed(text(paper))
            assert (
                squeezed("no verdict here certifies a part") in said and squeezed("Stay clear of a loaded line") in said
            )


def test_a_full_disk_loses_no_number(club: Office, tmp_path: Path) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("no folder")
    with pytest.raises(Refused, match="cannot be written"):
        print_labels(replace(club, out_tray=blocked), ["SH-1"])
    number = told_ledger(club, last=1)[0].sentence.split("the labels ")[1].split(" for ")[0]
    assert print_labels_again(club, number).path.stem == number
