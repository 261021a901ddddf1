"""Stories: the club counts what it has."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.close_count import close_count
from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import fit_part
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_count import print_count, type_list
from inspector.duties.record_inspection import record_inspection
from inspector.duties.take_stock import begin_count, count_states, left, mark
from inspector.duties.verify_book import verify_book
from inspector.gear.evidence import NewQuarantine
from inspector.gear.fitting import Fitted
from inspector.gear.item_change import Altered, NewItemChange
from inspector.gear.outcome import Outcome
from inspector.gear.stock_take import Counted
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, kilograms, point, shackle, strap
from tests.duties.rigs import fit, later, member

TAGS = ("SH-1", "SH-2", "SH-3", "SH-4")


def where(office: Office, tag: str) -> Where:
    """Where the register has a piece."""
    with office.book.reading() as page:
        return page.whereabouts_of(page.item(tag)).where


def place(office: Office, tag: str) -> str:
    """The place of a piece in store."""
    with office.book.reading() as page:
        return page.whereabouts_of(page.item(tag)).at


def put(office: Office, tag: str, facts: NewWhereabouts) -> None:
    """Write down where a piece is."""
    with office.book.page() as page:
        page.add_whereabouts(page.item(tag), facts)
        page.enter("where", by=office.officer.id, at=office.now, facts=facts)


def evidence(office: Office, tag: str) -> None:
    """Keep a piece as evidence."""
    with office.book.page() as page:
        page.add_quarantine(page.item(tag), NewQuarantine(office.today, "I-1", office.officer.id))
        page.enter("quarantine", by=office.officer.id, at=office.now, facts={"tag": tag})


@pytest.fixture
def store(office: Office) -> Office:
    """Four shackles on two shelves."""
    for number, tag in enumerate(TAGS):
        book_in(office, replace(shackle(tag), place="Shed, hook 1" if number < 2 else "Shed, hook 2"))
    return office


def test_a_count_of_everything_from_the_first_scan_to_the_close(store: Office) -> None:
    facts = begin_count(store, "2026-11").facts
    assert facts.expected == TAGS and facts.elsewhere == ()
    scanned = mark(store, "2026-11", ["sh-1", "SH-2", "SH-1"])
    assert scanned.kept == ("SH-1", "SH-2") and not scanned.not_counted and not scanned.labels
    mark(store, "2026-11", ["SH-3"], Counted.ABSENT)
    assert [item.tag for item, _ in left(store, "2026-11")] == ["SH-4"]
    told = close_count(store, "2026-11")
    assert (told.present, told.gone, told.not_seen) == (("SH-1", "SH-2"), ("SH-3",), ("SH-4",))
    assert [where(store, tag) for tag in TAGS] == [Where.IN_STORE, Where.IN_STORE, Where.MISSING, Where.IN_STORE]
    assert [one.dossier.item.tag for one in told.judged] == ["SH-3"]
    assert verify_book(store).faults == ()


def test_a_piece_that_went_missing_keeps_the_place_where_it_ought_to_have_been(store: Office) -> None:
    begin_count(store, "C")
    mark(store, "C", ["SH-3"], Counted.ABSENT)
    close_count(store, "C")
    assert place(store, "SH-3") == "Shed, hook 2"


def test_each_deed_of_a_count_is_one_line_in_the_ledger(store: Office) -> None:
    before = verify_book(store).line_count
    begin_count(store, "C")
    mark(store, "C", TAGS)
    close_count(store, "C")
    assert verify_book(store).line_count == before + 3


def test_a_slip_is_undone_by_marking_again(store: Office) -> None:
    begin_count(store, "C")
    mark(store, "C", TAGS, Counted.ABSENT)
    mark(store, "C", ["SH-1"])
    mark(store, "C", ["SH-2"], Counted.UNKNOWN)
    told = close_count(store, "C")
    assert (told.present, told.not_seen, told.gone) == (("SH-1",), ("SH-2",), ("SH-3", "SH-4"))


def test_a_piece_that_gets_another_label_meanwhile_stays_the_same_piece(store: Office) -> None:
    begin_count(store, "C")
    mark(store, "C", ["SH-1"])
    with store.book.page() as page:
        item = page.item("SH-1")
        changed = NewItemChange(
            store.today, Altered.TAG, replace(item.facts, tag="SH-91"), store.officer.id, "worn off"
        )
        page.add_item_change(item, changed)
        page.enter("label", by=store.officer.id, at=store.now, facts=changed)
    mark(store, "C", ["SH-91", "SH-2", "SH-3", "SH-4"])
    told = close_count(store, "C")
    assert told.present == ("SH-91", "SH-2", "SH-3", "SH-4") and told.not_seen == () and told.labels == ()


def test_labels_that_no_piece_has_are_kept_and_a_misread_one_is_taken_back(store: Office) -> None:
    begin_count(store, "C")
    assert mark(store, "C", ["SH-1", "ZZ-1", "ZZ-2"]).labels == ("ZZ-1", "ZZ-2")
    mark(store, "C", ["ZZ-2"], Counted.UNKNOWN)
    assert close_count(store, "C").labels == ("ZZ-1",)


def test_a_label_is_not_absent_where_no_piece_has_it(store: Office) -> None:
    begin_count(store, "C")
    with pytest.raises(Refused, match="No piece has the tag") as refusal:
        mark(store, "C", ["ZZ-1"], Counted.ABSENT)
    assert refusal.value.field == "ZZ-1" and "label" in refusal.value.what_to_do


def test_a_count_of_one_place_looks_for_what_lies_there_alone(store: Office) -> None:
    assert begin_count(store, "C", "Shed, hook 1").facts.expected == ("SH-1", "SH-2")
    with pytest.raises(Refused, match="not among what this count looks for"):
        mark(store, "C", ["SH-3"], Counted.ABSENT)
    mark(store, "C", ["SH-1", "SH-3"])
    told = close_count(store, "C")
    assert told.moved == (("SH-3", "Shed, hook 1"),) and told.not_seen == ("SH-2",)
    assert place(store, "SH-3") == "Shed, hook 1"
    assert begin_count(store, "D", "shed").facts.expected == TAGS


def test_a_place_is_no_other_place_that_begins_alike(store: Office) -> None:
    book_in(store, replace(shackle("SH-5"), place="Shed, hook 10"))
    assert begin_count(store, "C", "Shed, hook 1").facts.expected == ("SH-1", "SH-2")


def test_a_place_where_nothing_lies_is_refused_with_those_that_are_known(store: Office) -> None:
    with pytest.raises(Refused, match="no piece in store lies") as refusal:
        begin_count(store, "C", "Barn")
    assert "Shed, hook 1; Shed, hook 2" in refusal.value.what_to_do


@pytest.mark.parametrize(("first", "second"), [("", "Shed"), ("Shed", ""), ("Shed", "Shed, hook 1"), ("", "")])
def test_no_piece_stands_in_two_open_counts(store: Office, first: str, second: str) -> None:
    begin_count(store, "C", first)
    with pytest.raises(Refused, match="is open and has some of the same pieces"):
        begin_count(store, "D", second)
    close_count(store, "C")
    begin_count(store, "D", second)


def test_two_places_are_counted_side_by_side(store: Office) -> None:
    begin_count(store, "C", "Shed, hook 1")
    begin_count(store, "D", "Shed, hook 2")
    assert [(one.ref, one.expected, one.closed) for one in count_states(store)] == [("C", 2, None), ("D", 2, None)]


def test_a_reference_is_given_once(store: Office) -> None:
    begin_count(store, "C")
    close_count(store, "C")
    with pytest.raises(Refused, match="called C already"):
        begin_count(store, "c")
    with pytest.raises(Refused, match="no reference"):
        begin_count(store, " ")
    with pytest.raises(Refused, match="more than one line"):
        begin_count(store, "C\nD")


def test_a_closed_count_takes_nothing(store: Office) -> None:
    begin_count(store, "C")
    close_count(store, "C")
    for deed in (lambda: mark(store, "C", ["SH-1"]), lambda: close_count(store, "C"), lambda: left(store, "C")):
        with pytest.raises(Refused, match="closed and takes nothing more"):
            deed()


def test_an_unknown_count_is_refused_with_those_that_are_known(store: Office) -> None:
    begin_count(store, "C")
    with pytest.raises(Refused, match="No count has the reference") as refusal:
        mark(store, "D", ["SH-1"])
    assert "C" in refusal.value.what_to_do
    with pytest.raises(Refused, match="No tag was scanned"):
        mark(store, "C", [" "])


def test_a_lent_piece_is_not_counted_before_its_return_is_booked(store: Office) -> None:
    fit(store, strap(), {"length": "9.00 m"})
    member(store)
    lend(store, ["KS-1"], "Di Member", later(store, 3).today)
    facts = begin_count(store, "C").facts
    assert "KS-1" not in facts.expected and facts.elsewhere == (("KS-1", "on loan to Di Member"),)
    scanned = mark(store, "C", ["KS-1", "SH-1"])
    assert scanned.kept == ("SH-1",)
    assert scanned.not_counted[0].tag == "KS-1" and "Book its return first" in scanned.not_counted[0].what_to_do
    for counted in (Counted.PRESENT, Counted.ABSENT):
        with pytest.raises(Refused, match="on loan to Di Member"):
            mark(store, "C", ["KS-1"], counted)
    assert "KS-1" not in close_count(store, "C").not_seen
    assert where(store, "KS-1") is Where.ON_LOAN


def test_a_piece_lent_after_it_was_marked_absent_is_not_missing(store: Office) -> None:
    fit(store, strap(), {"length": "9.00 m"})
    member(store)
    begin_count(store, "C")
    mark(store, "C", ["KS-1"], Counted.ABSENT)
    lend(store, ["KS-1"], "Di Member", later(store, 3).today)
    told = close_count(store, "C")
    assert told.gone == () and told.absent == ("KS-1",) and where(store, "KS-1") is Where.ON_LOAN


def test_a_fitted_part_is_counted_on_its_vehicle_and_nowhere_else(store: Office) -> None:
    add_vehicle(store, "V-1", "Truck", "Club", kilograms("3000 kg"), None)
    book_in(store, point())
    fit_part(store, "RP-1", Fitted("V-1"))
    begin_count(store, "C")
    with pytest.raises(Refused, match="sits on vehicle V-1") as refusal:
        mark(store, "C", ["RP-1"])
    assert "taken off" in refusal.value.what_to_do
    mark(store, "C", ["RP-1"], place="v-1")
    told = close_count(store, "C")
    assert told.present == ("RP-1",) and told.moved == () and where(store, "RP-1") is Where.ON_VEHICLE
    assert begin_count(store, "D", "V-1").facts.expected == ("RP-1",)
    mark(store, "D", ["RP-1"], Counted.ABSENT)
    assert close_count(store, "D").gone == ("RP-1",) and where(store, "RP-1") is Where.MISSING


@pytest.mark.parametrize("gone", [Where.MISSING, Where.STOLEN, Where.GIVEN_BACK])
def test_a_piece_that_turns_up_again_is_held_until_inspected(store: Office, gone: Where) -> None:
    kind = open_item(store, "SH-1").dossier.kind
    seen = record_inspection(store, "SH-1", all_good(store, kind, SHACKLE_READINGS))
    assert seen.verdict.outcome is Outcome.FIT
    put(store, "SH-1", NewWhereabouts(store.today, gone, "beach"))
    then = later(store, 2)
    assert "SH-1" not in begin_count(then, "C").facts.expected
    told = mark(then, "C", ["SH-1"], place="Shed, hook 1").told
    assert [one.tag for one in told] == ["SH-1"] and "held until inspected" in told[0].what_to_do
    assert close_count(then, "C").found == ("SH-1",)
    assert where(then, "SH-1") is Where.IN_STORE and place(then, "SH-1") == "Shed, hook 1"
    assert open_item(then, "SH-1").verdict.outcome is Outcome.HOLD


def test_a_piece_lost_after_it_was_counted_is_not_found_by_that_mark(store: Office) -> None:
    begin_count(store, "C")
    mark(store, "C", ["SH-1"])
    put(store, "SH-1", NewWhereabouts(store.today, Where.STOLEN, "shed"))
    told = close_count(store, "C")
    assert told.found == told.present == () and told.absent == ("SH-1",) and where(store, "SH-1") is Where.STOLEN


def test_a_retired_piece_that_lies_there_is_told_at_once(store: Office) -> None:
    kind = open_item(store, "SH-1").dossier.kind
    record_inspection(store, "SH-1", all_good(store, kind, SHACKLE_READINGS, cracks="bad"))
    begin_count(store, "C")
    told = mark(store, "C", ["SH-1"]).told
    assert "may never be used again" in told[0].why and "unusable" in told[0].what_to_do


@pytest.mark.parametrize("end", ["sold", "destroyed"])
def test_a_piece_that_is_no_more_and_turns_up_is_told_at_once_and_stays_closed(store: Office, end: str) -> None:
    if end == "sold":
        put(store, "SH-1", NewWhereabouts(store.today, Where.SOLD, to="somebody"))
    else:
        kind = open_item(store, "SH-1").dossier.kind
        record_inspection(store, "SH-1", all_good(store, kind, SHACKLE_READINGS, cracks="bad"))
        destroy_item(store, "SH-1", "bow cut through")
    begin_count(store, "C")
    before = where(store, "SH-1")
    assert "Keep it apart" in mark(store, "C", ["SH-1"]).told[0].what_to_do
    told = close_count(store, "C")
    assert told.turned_up == ("SH-1",) and told.present == () and where(store, "SH-1") is before
    begin_count(store, "D")
    with pytest.raises(Refused, match="by the register"):
        mark(store, "D", ["SH-1"], Counted.ABSENT)


def test_evidence_that_lies_elsewhere_is_told_and_not_written_as_moved(store: Office) -> None:
    evidence(store, "SH-1")
    begin_count(store, "C")
    told = mark(store, "C", ["SH-1"], place="Barn").told
    assert "evidence of I-1" in told[0].why
    assert close_count(store, "C").moved == () and place(store, "SH-1") == "Shed, hook 1"


def test_evidence_that_is_gone_is_missing(store: Office) -> None:
    evidence(store, "SH-1")
    begin_count(store, "C")
    mark(store, "C", ["SH-1"], Counted.ABSENT)
    assert close_count(store, "C").gone == ("SH-1",) and where(store, "SH-1") is Where.MISSING


def test_a_ticked_list_is_typed_in_by_its_lines(store: Office) -> None:
    begin_count(store, "C")
    paper = print_count(store, "C")
    number = paper.path.stem
    assert number.startswith("K-") and paper.path.read_bytes().startswith(b"%PDF")
    type_list(store, number.lower(), "1-2", "4", ["ZZ-9"])
    told = close_count(store, "C")
    assert (told.present, told.gone, told.not_seen, told.labels) == (("SH-1", "SH-2"), ("SH-4",), ("SH-3",), ("ZZ-9",))


def test_a_list_printed_again_says_the_same(store: Office) -> None:
    begin_count(store, "C")
    paper = print_count(store, "C")
    first = paper.path.read_bytes()
    mark(store, "C", TAGS, Counted.ABSENT)
    close_count(store, "C")
    assert print_count(store, "C").path == paper.path and paper.path.read_bytes() == first


def test_a_list_is_not_printed_first_of_a_closed_count(store: Office) -> None:
    begin_count(store, "C")
    close_count(store, "C")
    with pytest.raises(Refused, match="closed"):
        print_count(store, "C")


@pytest.mark.parametrize(
    ("present", "absent", "why"),
    [
        ("1-9", "", "lines 1 to 4"),
        ("0", "", "lines 1 to 4"),
        ("3-1", "", "lines 1 to 4"),
        ("one", "", "no line"),
        ("1-", "", "no line"),
        ("1", "1", "as present and as absent"),
        ("", "", "No line was typed"),
        ("-2", "", "no line"),
    ],
)
def test_lines_that_are_not_on_the_list_are_refused(store: Office, present: str, absent: str, why: str) -> None:
    begin_count(store, "C")
    number = print_count(store, "C").path.stem
    before = verify_book(store).line_count
    with pytest.raises(Refused, match=why) as refusal:
        type_list(store, number, present, absent)
    assert refusal.value.field and refusal.value.what_to_do
    assert verify_book(store).line_count == before


def test_an_unknown_list_is_refused_with_those_that_are_known(store: Office) -> None:
    begin_count(store, "C")
    number = print_count(store, "C").path.stem
    with pytest.raises(Refused, match="No count list has the number") as refusal:
        type_list(store, "K-0000-0001", "1")
    assert number in refusal.value.what_to_do


MARKS = st.lists(st.tuples(st.sampled_from(TAGS), st.sampled_from(Counted)), max_size=8)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(MARKS)
def test_closing_never_tells_of_an_unmarked_piece_that_it_was_there(
    store: Office, marks: list[tuple[str, Counted]]
) -> None:
    ref = f"C-{len(count_states(store))}"
    expected = begin_count(store, ref).facts.expected
    last: dict[str, Counted] = {}
    for tag, counted in marks:
        if counted is not Counted.ABSENT or tag in expected:
            mark(store, ref, [tag], counted)
            last[tag] = counted
    told = close_count(store, ref)
    there = {*told.present, *told.found}
    assert there == {tag for tag, counted in last.items() if counted is Counted.PRESENT}
    assert set(told.not_seen) == {tag for tag in expected if last.get(tag, Counted.UNKNOWN) is Counted.UNKNOWN}
    assert {*told.gone, *told.absent} == {tag for tag, counted in last.items() if counted is Counted.ABSENT}
    for tag in expected:
        assert (where(store, tag) is Where.MISSING) == (last.get(tag) is Counted.ABSENT)


def test_a_fitted_part_that_a_count_misses_comes_off_its_vehicle(store: Office) -> None:
    add_vehicle(store, "V-1", "Truck", "Club", kilograms("3000 kg"))
    book_in(store, point())
    fit_part(store, "RP-1", Fitted("V-1"))
    begin_count(store, "C", "V-1")
    mark(store, "C", ["RP-1"], Counted.ABSENT)
    assert close_count(store, "C").gone == ("RP-1",)
    begin_count(store, "D")
    mark(store, "D", ["RP-1"], place="Shed, hook 9")
    assert close_count(store, "D").found == ("RP-1",)
    assert (where(store, "RP-1"), place(store, "RP-1")) == (Where.IN_STORE, "Shed, hook 9")


@pytest.mark.parametrize("gone", [Where.MISSING, Where.STOLEN, Where.GIVEN_BACK])
def test_nobody_knows_what_a_piece_went_through_that_a_count_found(store: Office, gone: Where) -> None:
    put(store, "SH-1", NewWhereabouts(store.today, gone, "bay", by=store.officer.id, to="Di"))
    after = later(store, 9)
    begin_count(after, "C")
    mark(after, "C", ["SH-1"], place="Shed, hook 1")
    close_count(after, "C")
    untold = open_item(after, "SH-1").dossier.untold
    assert [(one.facts.since, one.facts.on) for one in untold] == [(store.today, after.today)]
