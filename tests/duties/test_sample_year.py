"""The officer's year of the sample register: counts, a theft, work, changes, guests, people and two bad days."""

from datetime import timedelta

import pytest

from inspector.duties.look_up import open_item, trip, where_is
from inspector.duties.office import Office
from inspector.duties.person_in_full import in_full
from inspector.duties.print_voucher import print_voucher
from inspector.duties.recall import kin_of_broken
from inspector.duties.release_evidence import release_evidence
from inspector.duties.take_stock import CountState, count_states
from inspector.duties.tell_count import closed_parts, closed_told, count_told
from inspector.duties.tell_history import history_of
from inspector.duties.tell_incident import IncidentTold, incident_told, incidents
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.value_gear import sum_words, value_list
from inspector.duties.verify_book import verify_book
from inspector.duties.what_falls_due import what_falls_due
from inspector.duties.what_needs_me import what_needs_me
from inspector.duties.whereabouts import put_in_store
from inspector.gear.falls_due import Due
from inspector.gear.item import Provenance
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence
from inspector.gear.stock_take import Counted
from inspector.language import show_day
from inspector.refused import Refused
from tests.duties.test_vouchers import said


def day(office: Office, offset: int) -> str:
    return show_day(office.today + timedelta(days=offset))


def life(office: Office, tag: str, *left_out: str) -> list[str]:
    """What happened to a piece by its headings, the oldest first, without verdicts."""
    return [row.what for row in reversed(history_of(office, tag)) if row.what not in {"Verdict", *left_out}]


def verdicts_since(office: Office, tag: str, offset: int) -> list[str]:
    """How each verdict since a day begins, the oldest first."""
    since = office.today + timedelta(days=offset)
    rows = (row for row in reversed(history_of(office, tag)) if row.what == "Verdict" and row.on >= since)
    return [row.text.split(":")[0] for row in rows]


def bad_day(office: Office, number: int) -> IncidentTold:
    return incident_told(office, f"I-{office.book.origin}-{number:04d}")


# --- counts ---


def test_one_count_is_closed_and_one_is_open_with_some_lines_answered(sample: Office) -> None:
    closed, begun = (sample.today - timedelta(days=60)), (sample.today - timedelta(days=1))
    assert count_states(sample) == (
        CountState("C-01", "Shed", closed - timedelta(days=1), 48, 43, 3, closed),
        CountState("C-02", "V-06", begun, 9, 6, 0, None),
    )


def test_the_closed_count_missed_three_and_says_what_else_it_wrote(sample: Office) -> None:
    parts = {one.title.split(",")[0]: one.pieces for one in closed_parts(closed_told(sample, "C-01"))}
    assert [tag for tag, _ in parts.pop("Missing from now on")] == ["DS-05", "SS-07", "DM-05"]
    assert parts.pop("Lies at another place than before") == (("SB-04", "Shed, bottom shelf"),)
    assert [tag for tag, _ in parts.pop("NOT SEEN")] == ["SH-02", "SS-03"]
    assert parts.pop("Labels that no piece has") == (("LK-4", ""),) and parts == {}


@pytest.mark.parametrize(("tag", "hook"), [("DS-05", "Shed, hook 5"), ("SS-07", "Shed, red crate")])
def test_two_of_the_three_are_missing_still(sample: Office, tag: str, hook: str) -> None:
    assert where_is(sample, tag) == f"missing since {day(sample, -60)}, last seen: {hook}"


def test_one_of_the_three_was_found_at_another_place_and_held_until_it_was_seen(sample: Office) -> None:
    assert where_is(sample, "DM-05") == f"in store at V-08, drawer since {day(sample, -33)}"
    assert verdicts_since(sample, "DM-05", -33) == ["Hold", "Fit"]
    assert life(sample, "DM-05")[-4:] == ["Whereabouts", "Returned", "Found again", "Inspection"]


def test_the_open_count_has_three_lines_to_go(sample: Office) -> None:
    told = count_told(sample, "C-02")
    assert {one.tag for one in told.expected(Counted.PRESENT)} == {"SH-08", "KS-07", "DM-06", "WI-02", "FL-02", "WH-02"}
    assert {one.tag for one in told.expected(Counted.UNKNOWN)} == {"RP-06", "HR-02", "BM-02"}


# --- comings and goings ---


def test_the_stolen_strap_came_back_was_held_and_was_then_seen_in_full(sample: Office) -> None:
    rows = [row.text for row in history_of(sample, "KS-09") if row.what in {"Whereabouts", "Found again"}]
    assert [text.split(",")[0] for text in reversed(rows)] == ["stolen", "in store at Shed", "in store at Shed"]
    assert "paper: DC 2207/31" in rows[-1]
    since = verdicts_since(sample, "KS-09", -178)
    assert since[:2] == ["Hold", "Hold"] and set(since[2:]) == {"Fit"}
    finding = next(one for one in open_item(sample, "KS-09").verdict.findings if one.rule == "find-inspected")
    assert finding.outcome is Outcome.FIT
    assert where_is(sample, "KS-09").startswith("in store at Shed, hook 8")


def test_a_piece_was_sold_and_its_voucher_can_be_printed_again(sample: Office) -> None:
    assert where_is(sample, "SR-03").startswith("sold to Odile Garrowick of the Hollow Reach Touring Club")
    paper = print_voucher(sample, "SR-03").path
    assert paper.stem == f"V-{sample.book.origin}-0002" and "was sold" in said(paper)
    with pytest.raises(Refused, match="sold"):
        put_in_store(sample, "SR-03", "Shed")


def test_a_borrowed_piece_went_back_before_its_day(sample: Office) -> None:
    facts = open_item(sample, "SN-04").dossier.item.facts
    assert (facts.provenance, facts.owner) == (Provenance.BORROWED, "Hollow Reach Touring Club")
    gone = sample.today - timedelta(days=171)
    assert facts.borrowed_until == gone + timedelta(days=1)
    assert where_is(sample, "SN-04") == f"given back to its owner Hollow Reach Touring Club since {show_day(gone)}"
    assert print_voucher(sample, "SN-04").path.stem == f"V-{sample.book.origin}-0001"


def test_a_visitor_s_piece_came_along_on_one_trip_and_is_held_since(sample: Office) -> None:
    assert trip(sample, "T-03").kit[-1] == "VG-1"
    found = open_item(sample, "VG-1")
    assert found.dossier.item.facts.owner == "Jory Aldermoor of Hollow Reach"
    assert found.verdict.outcome is Outcome.HOLD
    assert {one.rule for one in found.verdict.findings if one.outcome is Outcome.HOLD} >= {"visit-over"}
    assert verdicts_since(sample, "VG-1", -122)[0] == "Fit", "it was fit while it was along"


# --- work and changes ---


def test_a_lost_pin_was_replaced_by_the_maker_s_own_and_the_shackle_seen_after_it(sample: Office) -> None:
    assert life(sample, "DS-04")[-4:] == ["Doubt", "Repair", "Inspection", "Inspection"]
    assert verdicts_since(sample, "DS-04", -82) == ["Hold", "Hold", "Fit", "Fit"]
    found = open_item(sample, "DS-04").dossier
    (work,) = found.repairs
    assert work.facts.own and work.facts.replaces == ("pin_diameter",) and "ODQ" in work.facts.part
    assert found.item.rating.figure and found.item.rating.figure.as_typed == "3.2 t", "the bow's marking stands"


def test_a_tag_of_one_figure_was_changed_and_still_finds_its_piece(sample: Office) -> None:
    assert open_item(sample, "DM-6").dossier.item.tag == "DM-06"


def test_three_pieces_have_a_value_and_of_the_others_nobody_knows_one(sample: Office) -> None:
    total = value_list(sample).total
    assert sum_words(total) == "1854.50 DUN"
    assert len(total.unknown_tags) == total.piece_count - 3


def test_a_vehicle_s_part_has_another_owner_and_stays_where_it_is(sample: Office) -> None:
    assert open_item(sample, "RP-05").dossier.item.facts.owner == "Sam Brackenoe"
    assert where_is(sample, "RP-05").startswith("on vehicle V-10")
    assert "RP-05" in {row.tag for row in in_full(sample, "Sam Brackenoe").owned}


# --- people ---


def test_one_person_s_competence_ends_soon_and_the_calendar_tells_it(sample: Office) -> None:
    last = sample.today + timedelta(days=26)
    (held,) = in_full(sample, "Ana Kestrow").held
    assert held.competence == Competence("strap", sample.today - timedelta(days=330), last) and held.soon
    ending = [one for one in what_falls_due(sample) if one.what is Due.COMPETENCE]
    assert [(one.people, one.on) for one in ending] == [(("Ana Kestrow",), last)]


def test_one_person_s_role_was_changed_and_nobody_s_contact_stands_in_the_sample(sample: Office) -> None:
    found = in_full(sample, "Finn Marrowin")
    assert found.person.role == "trip leader, learning with Hanne" and len(found.changes) == 1
    with sample.book.reading() as page:
        names = [one.name for one in page.people()]
    assert not any(in_full(sample, name).has_contact for name in names)


# --- the bad days ---


def test_a_near_miss_is_closed_and_a_worse_day_is_open(sample: Office) -> None:
    assert [(one.gravity, one.state, one.kept) for one in incidents(sample)] == [
        ("Accident", "open", "SH-13, SB-04"),
        ("Near miss", "closed", ""),
    ]


@pytest.mark.parametrize("tag", ["KS-09", "DS-04"])
def test_what_bore_the_pull_of_the_near_miss_was_held_until_it_was_seen(sample: Office, tag: str) -> None:
    since = history_of(sample, tag)[::-1]
    at = next(number for number, row in enumerate(since) if "overload" in row.text)
    assert f"I-{sample.book.origin}-0001. Near miss:" in since[at].text
    told = [row.text.split(":")[0] for row in since[at:] if row.what == "Verdict"]
    assert told[:2] == ["Hold", "Fit"]


def test_the_near_miss_tells_its_witness_its_distances_and_what_came_of_it(sample: Office) -> None:
    told = bad_day(sample, 1)
    assert [what for _, what, _ in told.added] == ["Statement of Lotte Quarrin", "Closed"]
    assert [one.figure.as_typed for one in told.distances] == ["11 m", "23 m"]
    assert told.kept == ()


def test_the_open_report_keeps_two_pieces_under_seal_and_let_one_go(sample: Office) -> None:
    told = bad_day(sample, 2)
    assert [one.tag for one in told.kept] == ["SH-13", "SB-04"]
    assert all("Maren Oddwell since" in one.now for one in told.kept)
    (freed,) = (one for one in told.pieces if not one.is_kept)
    assert freed.tag == "TS-05" and "Maren Oddwell and Ilse Farrowby" in freed.state
    seals = " ".join(text for _, what, text in told.added if "handed over" in what)
    assert all(f"PS 04{number}" in seals for number in (17, 18, 19, 20))
    assert sum(what.startswith("Statement of") for _, what, _ in told.added) == 2
    assert len(told.distances) == 4 and told.kept_vehicles == ()
    assert told.list_number == f"E-{sample.book.origin}-0001"


def test_what_is_kept_is_on_hold_and_what_was_let_go_is_fit_since_it_was_seen(sample: Office) -> None:
    assert {open_item(sample, tag).verdict.outcome for tag in ("SH-13", "SB-04")} == {Outcome.HOLD}
    assert verdicts_since(sample, "TS-05", -24) == ["Hold", "Hold", "Fit"]
    with pytest.raises(Refused, match="evidence"):
        put_in_store(sample, "SB-04", "Shed, hook 10")
    ref = bad_day(sample, 2).ref
    assert (
        release_evidence(sample, ref, "SB-04", second="Ilse Farrowby", why="measured").verdict.outcome is Outcome.HOLD
    )


def test_the_shackle_that_let_go_has_two_of_its_batch_in_the_register(sample: Office) -> None:
    assert {one.tag for one in kin_of_broken(sample, bad_day(sample, 2).ref)} == {"SH-09", "SH-10"}


# --- all of it ---


def test_every_line_of_the_year_is_told_in_full_and_the_book_verifies(sample: Office) -> None:
    told = told_ledger(sample)
    assert [one.sentence for one in told if "No more of it can be told" in one.sentence or not one.in_full] == []
    assert verify_book(sample).faults == ()
    deeds = {one.deed for one in told}
    assert deeds >= {
        "begin count", "count", "close count", "report stolen", "report found", "put in store", "sell", "hand to owner",
        "print voucher", "repair", "retag", "value", "change owner", "visit", "change person", "give competence",
        "report incident", "add statement", "hand evidence over", "release evidence", "close incident",
        "print evidence list",
    }  # fmt: skip


def test_the_first_page_tells_what_the_year_left_open(sample: Office) -> None:
    needs = what_needs_me(sample)
    held = {one.tag for one in needs.held}
    assert held >= {"VG-1", "SH-13", "SB-04"} and not held & {"DS-04", "KS-09", "TS-05", "DM-05"}
