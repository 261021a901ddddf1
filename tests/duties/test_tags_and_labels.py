"""A piece keeps its identity under another tag; a marking that is lost or read anew never makes it milder by itself."""

from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties import elsewhere
from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_note, change_owner, change_value, label_anew, label_lost, retag
from inspector.duties.check_kit import kit_check
from inspector.duties.check_piece import check_piece
from inspector.duties.exchange_trip import export_trip
from inspector.duties.found_club import found_club
from inspector.duties.keep_rigs import keep_rig, rig
from inspector.duties.lend import lend
from inspector.duties.look_up import list_gear, open_item, trip, trips
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.repair_item import repair_item
from inspector.duties.tell_history import history_of
from inspector.duties.trip_readiness import readiness
from inspector.duties.value_gear import read_worth
from inspector.duties.verify_book import verify_book
from inspector.duties.work_rigs import work_kept_rig
from inspector.gear.inspection import Answer
from inspector.gear.item import Rating
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis, Grade
from inspector.gear.kit_check import Seen
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, read
from tests.conftest import office_in
from tests.duties import rigs
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap
from tests.duties.test_opinions import add
from tests.duties.test_repairs import marked, pin, rules_of, wll

WHY = "the label was torn"


def fit_shackle(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    assert record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.FIT


def planned(office: Office, *kit: str) -> Trip:
    first = office.today + timedelta(days=3)
    last = first + timedelta(days=1)
    return plan_trip(office, Trip("", "T-1", "Dunes", "Spit", Ground.BEACH, first, last, "Ada Officer", kit=kit))


def test_a_piece_under_another_tag_is_the_same_piece(office: Office) -> None:
    fit_shackle(office)
    before = open_item(office, "SH-1").dossier.item.id
    said = retag(office, "SH-1", "QX-9", WHY)
    assert said.verdict.outcome is Outcome.FIT and said.dossier.item.tag == "QX-9"
    assert {open_item(office, tag).dossier.item.id for tag in ("SH-1", "sh-1", "QX-9", "qx-9")} == {before}
    for search in ("SH-1", "QX-9"):
        assert [row.tag for row in list_gear(office, search).rows] == ["QX-9"]
    rows = [row.text for row in history_of(office, "SH-1")]
    assert f"its tag is QX-9 since: {WHY}" in rows and sum("all good" in text or "19 mm" in text for text in rows) == 1
    assert verify_book(office).faults == ()


@pytest.mark.parametrize("taken", ["SH-1", "sh-1", "QX-9", "KS-1"])
def test_a_tag_that_was_ever_given_is_never_free_again(office: Office, taken: str) -> None:
    fit_shackle(office)
    book_in(office, strap())
    retag(office, "SH-1", "QX-9", WHY)
    with pytest.raises(Refused, match="tag"):
        book_in(office, shackle(taken))
    with pytest.raises(Refused, match="tag"):
        retag(office, "QX-9", taken, WHY)


@pytest.mark.parametrize("tag", ["", " X", "X" * 25, "X\n1"])
def test_what_cannot_be_written_on_a_label_is_no_tag(office: Office, tag: str) -> None:
    fit_shackle(office)
    with pytest.raises(Refused, match="tag"):
        retag(office, "SH-1", tag, WHY)


def test_a_trips_kit_that_names_the_tag_before_finds_the_piece(office: Office) -> None:
    fit_shackle(office)
    before = planned(office, "SH-1")
    text = export_trip(office, "T-1")
    retag(office, "SH-1", "QX-9", WHY)
    assert trip(office, "T-1").kit == ("QX-9",)
    assert [one.tag for one in kit_check(office, "T-1").pieces] == ["QX-9"]
    assert readiness(office, "T-1").trip.kit == ("QX-9",)
    seen = Seen((Answer("cracks", Grade.GOOD),))
    assert check_piece(office, "T-1", "SH-1", "Ada Officer", seen).dossier.item.tag == "QX-9"
    changed = change_trip(office, "T-1", lambda one: replace(one, name="Dunes again"))
    assert changed.kit == ("QX-9",) and changed.id == before.id
    add(office, "Nell Hobbery")
    lend(office, ["QX-9"], "Nell Hobbery", due=office.today + timedelta(days=30))
    with office.book.reading() as page:
        assert [one.tag for one in elsewhere.away(office, page, trips(office)[0], trips(office)[0].kit)] == ["QX-9"]
    assert "SH-1" in text


def test_a_lost_label_leaves_a_rating_from_memory_that_holds_for_every_use(office: Office) -> None:
    for piece, readings in ((shackle(), SHACKLE_READINGS), (strap(), STRAP_READINGS)):
        kind = book_in(office, piece).dossier.kind
        record_inspection(office, piece.tag, all_good(office, kind, readings))
        held = label_lost(office, piece.tag, "rust took the figures")
        assert {one.outcome for one in held.verdict.by_purpose} == {Outcome.HOLD}
        assert held.verdict.capacity.now_n is None and held.dossier.item.rating.stated_on == "memory"
        after = record_inspection(office, piece.tag, all_good(office, kind, readings))
        assert after.verdict.outcome is Outcome.HOLD  # no inspection makes a rating of what is remembered
        with pytest.raises(Refused, match="rating"):
            label_lost(office, piece.tag, "once more")


def test_a_label_read_anew_is_held_until_inspected(office: Office) -> None:
    fit_shackle(office)
    label_lost(office, "SH-1", "rust took the figures")
    held = label_anew(office, "SH-1", wll("4.75 t"), "cleaned with a brush, all of it can be read")
    assert held.verdict.outcome is Outcome.HOLD and rules_of(held) == {"label-inspected"}
    kind = open_item(office, "SH-1").dossier.kind
    assert record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.FIT


@pytest.mark.parametrize(
    ("rating", "needs_two"),
    [
        (wll("4.75 t"), False),
        (wll("3.25 t"), False),
        (wll("4.75 t", None), False),
        (wll("6.5 t"), True),
        (wll("4.75 t", 6.0), True),
        (Rating(Basis.MBS, read("23.75 t", Dimension.FORCE, field="r"), None, "piece"), False),
        (Rating(Basis.MBS, read("23.8 t", Dimension.FORCE, field="r"), None, "piece"), True),
    ],
)
def test_more_than_was_ever_written_down_takes_two_competent_persons(
    office: Office, rating: Rating, needs_two: bool
) -> None:
    fit_shackle(office)
    add(office, "Bo Second")
    label_lost(office, "SH-1", "rust took the figures")
    if needs_two:
        with pytest.raises(Refused, match="second name"):
            label_anew(office, "SH-1", rating, WHY)
        with pytest.raises(Refused, match="second name"):
            label_anew(office, "SH-1", rating, WHY, second="Ada Officer")
    second = "Bo Second" if needs_two else ""
    assert label_anew(office, "SH-1", rating, WHY, second=second).verdict.outcome is Outcome.HOLD


def test_who_reads_a_label_is_competent_and_not_the_owner(office: Office) -> None:
    book_in(office, shackle(owner="Bo Second"))
    add(office, "Bo Second")
    add(office, "Cy Member", competent=False)
    for name in ("Bo Second", "Cy Member"):
        with pytest.raises(Refused, match="read by"):
            label_anew(office, "SH-1", wll("3.25 t"), WHY, by=name)
        with pytest.raises(Refused, match="second name"):
            label_anew(office, "SH-1", wll("9.5 t"), WHY, second=name)
    with pytest.raises(Refused, match="rating"):
        label_anew(office, "SH-1", replace(wll("3.25 t"), stated_on="memory"), WHY)


def test_gear_sold_to_a_member_is_judged_as_a_members_own(office: Office) -> None:
    fit_shackle(office)
    add(office, "Bo Second")
    change_owner(office, "SH-1", "ada  officer", "sold at the meeting", second="Bo Second")
    assert open_item(office, "SH-1").dossier.item.facts.owner == "Ada Officer"
    later = office.at(office.now + timedelta(days=400))
    kind = open_item(office, "SH-1").dossier.kind
    alone = record_inspection(later, "SH-1", all_good(later, kind, SHACKLE_READINGS))
    assert alone.verdict.outcome is Outcome.HOLD
    with pytest.raises(Refused, match="second name"):
        change_owner(later, "SH-1", "Club", "bought back")
    assert change_owner(later, "SH-1", "Club", "bought back", second="Bo Second").verdict.outcome is Outcome.HOLD


@pytest.mark.parametrize("owner", ["", "  ", "Club", "two\nlines"])
def test_an_owner_that_is_none_or_the_same_is_refused(office: Office, owner: str) -> None:
    fit_shackle(office)
    with pytest.raises(Refused, match="owner"):
        change_owner(office, "SH-1", owner, WHY)


def test_a_retired_piece_gets_no_other_tag_label_or_owner(office: Office) -> None:
    kind = book_in(office, shackle()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    deeds: list[Callable[[], object]] = [
        lambda: retag(office, "SH-1", "QX-9", WHY),
        lambda: label_anew(office, "SH-1", wll("4.75 t"), WHY),
        lambda: change_owner(office, "SH-1", "Bo", WHY),
    ]
    for deed in deeds:
        with pytest.raises(Refused, match="retired"):
            deed()
    assert change_value(office, "SH-1", read_worth("1 EUR")).verdict.outcome is Outcome.RETIRE


def test_a_change_needs_a_reason_and_something_that_changes(office: Office) -> None:
    fit_shackle(office)
    with pytest.raises(Refused, match="reason"):
        retag(office, "SH-1", "QX-9", " ")
    change_note(office, "SH-1", "in the red box")
    with pytest.raises(Refused, match="Nothing would change"):
        change_note(office, "SH-1", "in the red box ")


_CHANGES = st.lists(
    st.sampled_from(["tag", "lost", "same", "less", "more", "owner", "value", "note", "pin", "odd pin"]), max_size=6
)


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(_CHANGES, st.sampled_from(["fit", "held", "never seen"]))
def test_no_sequence_of_changes_and_repairs_makes_a_verdict_milder(
    tmp_path_factory: pytest.TempPathFactory, rules: Rulebook, changes: list[str], state: str
) -> None:
    office = begun(tmp_path_factory.mktemp("changes"), rules)
    kind = book_in(office, replace(marked(), made_on=date(2024, 1, 1))).dossier.kind
    if state != "never seen":
        grade = "slight" if state == "held" else "good"
        record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, pitting=grade))
    worst = open_item(office, "SH-1").verdict
    for number, change in enumerate(changes):
        try:
            now = done(office, change, number).verdict
        except Refused:
            continue
        assert now.outcome.severity >= worst.outcome.severity
        for one, other in zip(now.by_purpose, worst.by_purpose, strict=True):
            assert one.outcome.severity >= other.outcome.severity
        worst = now
    office.book.close()


def begun(folder: Path, rules: Rulebook) -> Office:
    made = office_in(folder, rules)
    office = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    add(office, "Bo Second")
    return office


def done(office: Office, change: str, number: int) -> Judged:
    """One of the changes, by people who may make it."""
    deeds: dict[str, Callable[[], Judged]] = {
        "tag": lambda: retag(office, "SH-1", f"T-{number}", WHY),
        "lost": lambda: label_lost(office, "SH-1", WHY),
        "same": lambda: label_anew(office, "SH-1", wll("4.75 t"), WHY),
        "less": lambda: label_anew(office, "SH-1", wll("3.25 t"), WHY),
        "more": lambda: label_anew(office, "SH-1", wll("8.5 t"), WHY, second="Bo Second"),
        "owner": lambda: change_owner(office, "SH-1", f"Club {number}", WHY),
        "value": lambda: change_value(office, "SH-1", read_worth(f"{number} EUR")),
        "pin": lambda: repair_item(office, "SH-1", pin(office)),
        "odd pin": lambda: repair_item(office, "SH-1", pin(office, own=False, rating=wll("3.25 t"))),
        "note": lambda: change_note(office, "SH-1", f"note {number}"),
    }
    return deeds[change]()


def test_a_rig_kept_before_the_new_tag_is_checked_with_the_same_piece(office: Office) -> None:
    rigs.ready(office)
    keep_rig(office, "R-1", rigs.named(rigs.SNATCH, conditions=rigs.SAND, dampers=()))
    before = work_kept_rig(office, "R-1")
    retag(office, "SH-1", "QX-9", WHY)
    kept = rig(office, "R-1").rig
    assert kept.runs == (("tie_down@V-1", "QX-9", "KS-1", "SH-2", "towing_eye@V-2"),)
    after = work_kept_rig(office, "R-1")
    assert (after.outcome, len(after.links)) == (before.outcome, len(before.links))
    typed = keep_rig(office, "R-2", rigs.SNATCH).rig  # names the tag that still hangs on somebody's list
    assert typed.runs == kept.runs
