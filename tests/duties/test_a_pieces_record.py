"""What the record of a piece tells beside its verdict: its life, its papers, what would change it, where it is."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.attach import attach, file_bytes, put_on_tray, read_file
from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_back import give_back
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of, print_kept
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.print_voucher import print_voucher
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.report_incident import report_incident
from inspector.duties.retire_item import print_notice
from inspector.duties.tell_history import history_of
from inspector.duties.tell_life import life_of
from inspector.duties.tell_piece import piece_today
from inspector.duties.tell_readings import how_read
from inspector.duties.tell_turns import turns_of
from inspector.duties.whereabouts import put_in_store
from inspector.gear.attachment import PaperKind
from inspector.gear.custody import NOTHING_HAPPENED
from inspector.gear.incident import Gravity, NewIncident
from inspector.gear.life import LifeSort
from inspector.gear.outcome import Outcome
from inspector.gear.use import NewExposure, NewUse, Weather
from inspector.gear.verdict import Verdict
from inspector.refused import Refused
from tests.duties.gear import HOLE, SHACKLE_READINGS, all_good, mount, shackle
from tests.duties.rigs import fit, member, ready
from tests.paper.test_photo import PDF

WALLS = {f"wall@{point}": "4.9 mm" for point in ("top", "bottom", "left", "right", "at pin hole")}


def after(office: Office, days: int) -> Office:
    """The office so many days later."""
    moment = office.now + timedelta(days=days)
    return office.at(moment)


def told(office: Office, tag: str) -> dict[str, str]:
    """What would change the verdict, by its name."""
    return {one.label: one.text for one in turns_of(office, open_item(office, tag))}


def test_a_life_holds_all_of_the_history_and_of_verdicts_those_that_turned(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    who = member(office)
    later = after(office, 10)
    record_use(later, "SH-1", NewUse(later.today, 2))
    record_exposure(later, "SH-1", NewExposure(later.today, Weather.SALT))
    lend(later, ["SH-1"], who.name, due=later.today + timedelta(days=30))
    back = after(office, 20)
    give_back(back, "SH-1", who.name, NOTHING_HAPPENED)
    life = life_of(after(office, 30), "SH-1")
    happened = [one for one in history_of(office, "SH-1") if one.what != "Verdict"]
    entries = [one for one in life.entries if one.sort is not LifeSort.VERDICT]
    assert len(entries) == len(happened) + 1  # and that it was booked in
    assert all(any(row.text in one.says for one in entries) for row in happened)
    turned = [one.outcome for one in life.entries if one.sort is LifeSort.VERDICT]
    assert turned == [Outcome.HOLD, Outcome.FIT]
    (lent,) = [one for one in entries if one.says.startswith("Lent")]
    assert (lent.on, lent.until) == (later.today, back.today)
    assert [one.back for one in entries if one.sort is LifeSort.LENDING] == [False, True]
    assert [one.on for one in life.entries] == sorted(one.on for one in life.entries)
    assert life.booked == office.today and life.due == open_item(office, "SH-1").verdict.next_due


def test_a_loan_that_is_not_over_lasts_to_today(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    lend(office, ["SH-1"], member(office).name, due=office.today + timedelta(days=9))
    now = after(office, 40)
    (lent,) = [one for one in life_of(now, "SH-1").entries if one.sort is LifeSort.LENDING]
    assert lent.until == now.today


def judged_with(office: Office, tag: str, bow: str) -> Verdict:
    """The verdict of a shackle of its own with this reading of its bow."""
    kind = book_in(office, shackle(tag)).dossier.kind
    readings = SHACKLE_READINGS | {"bow_diameter": bow}
    return record_inspection(office, tag, all_good(office, kind, readings)).verdict


def test_the_reading_at_which_a_verdict_turns_is_taken_at_its_word(office: Office) -> None:
    """What just passes passes; a hundredth of a millimetre less holds or retires."""
    fit(office, shackle(), SHACKLE_READINGS)
    bounds = told(office, "SH-1")["Body at the thinnest place"]
    assert bounds == "at least 17.48 mm, else: Hold; more than 17.1 mm, else: Retire"
    assert judged_with(office, "SH-2", "17.48 mm").outcome is Outcome.FIT
    assert judged_with(office, "SH-3", "17.47 mm").outcome is Outcome.HOLD
    assert judged_with(office, "SH-4", "17.11 mm").outcome is Outcome.HOLD
    assert judged_with(office, "SH-5", "17.10 mm").outcome is Outcome.RETIRE


def test_the_day_on_which_time_changes_it_is_the_one_the_verdict_holds_until(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    verdict = open_item(office, "SH-1").verdict
    assert verdict.holds_until
    said = told(office, "SH-1")["With time"]
    assert "time since the last inspection: Hold" in said
    day = verdict.holds_until
    assert said.startswith(f"on {day.day} ") and str(day.year) in said


def test_of_a_wall_the_least_reading_is_told_with_the_gauges_allowance(office: Office) -> None:
    kind = book_in(office, mount()).dossier.kind
    seen = record_inspection(office, "BM-1", all_good(office, kind, WALLS | HOLE))
    assert seen.verdict.outcome is not Outcome.RETIRE and seen.verdict.wall
    said = told(office, "BM-1")["A wall reading"]
    least_m = seen.verdict.wall.required_m + office.rules.setting("gauge_accuracy")
    assert said.startswith(f"every place at least {least_m * 1e3:g} mm on bare metal") and said.endswith("Retire")


def test_nothing_changes_a_retirement(office: Office) -> None:
    assert judged_with(office, "SH-1", "15 mm").outcome is Outcome.RETIRE
    assert list(told(office, "SH-1")) == ["What changes it"]
    assert "a retirement is final" in told(office, "SH-1")["What changes it"]


def test_a_verdict_of_another_rulebook_is_not_explained_by_this_one(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    judged = open_item(office, "SH-1")
    other = replace(judged, verdict=replace(judged.verdict, rulebook="another"))
    assert turns_of(office, judged) and turns_of(office, other) == ()


def test_each_wall_reading_is_told_with_its_way_its_gauge_and_its_name(office: Office) -> None:
    kind = book_in(office, mount()).dossier.kind
    seen = record_inspection(office, "BM-1", all_good(office, kind, WALLS | HOLE))
    how = how_read(seen.dossier, seen.verdict.wall)
    assert seen.verdict.wall and set(how) == {*seen.verdict.wall.history, *seen.verdict.wall.points}
    assert set(how.values()) == {"thickness gauge on bare metal, face dressed, tried on its block, by Ada Officer"}
    assert how_read(replace(seen.dossier, inspections=()), seen.verdict.wall) == {}


def test_a_notice_is_printed_again_as_it_was_and_a_trip_sheet_never(office: Office) -> None:
    ready(office)
    trip = print_trip_sheet(office, "T-1")
    kind = office.kind("bow_shackle")
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS | {"bow_diameter": "15 mm"}))
    notice = print_notice(office, "SH-1")
    papers = {one.number: one for one in papers_of(office, open_item(office, "SH-1"))}
    assert {one.what for one in papers.values()} == {"Retirement notice", "Trip sheet"}
    assert papers[notice.path.stem].again and not papers[trip.path.stem].again
    before = notice.path.read_bytes()
    assert print_kept(office, "SH-1", notice.path.stem).path == notice.path
    assert len(notice.path.read_bytes()) == len(before)
    with pytest.raises(Refused, match="cannot be printed again"):
        print_kept(office, "SH-1", trip.path.stem)
    assert papers_of(office, open_item(office, "KS-1")) and not any(
        one.again for one in papers_of(office, open_item(office, "KS-1"))
    )


def test_a_piece_has_no_papers_of_another_whose_tag_begins_like_its_own(office: Office) -> None:
    ready(office)
    print_trip_sheet(office, "T-1")
    book_in(office, shackle("SH-10"))
    book_in(office, shackle("SH"))
    assert papers_of(office, open_item(office, "SH-10")) == papers_of(office, open_item(office, "SH")) == ()


def test_a_voucher_is_printed_again_by_its_number(office: Office) -> None:
    assert judged_with(office, "SH-1", "15 mm").outcome is Outcome.RETIRE
    witness = member(office)
    destroy_item(office, "SH-1", "cut through the bow", witness=witness.name)
    paper = print_voucher(office, "SH-1")
    (row,) = [one for one in papers_of(office, open_item(office, "SH-1")) if one.what == "Voucher"]
    assert row.again and print_kept(office, "SH-1", row.number).path == paper.path


def facts_of(office: Office, tag: str) -> dict[str, str]:
    """What is known of a piece today, by its name."""
    return {one.label: one.text for one in piece_today(office, open_item(office, tag))}


def test_the_piece_tells_owner_value_place_and_to_whom_it_is_lent(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    assert facts_of(office, "SH-1")["Value"] == "not written down"
    lend(office, ["SH-1"], member(office).name, due=office.today + timedelta(days=3))
    facts = facts_of(office, "SH-1")
    assert "on loan to Di Member" in facts["Where it is"] and "to be back by" in facts["Where it is"]
    assert facts["Owner"] == "Club" and "Evidence" not in facts


def test_the_place_of_the_booking_is_not_told_beside_the_one_where_it_lies_now(office: Office) -> None:
    book_in(office, replace(shackle(), place="shelf 2"))
    assert facts_of(office, "SH-1")["Place"] == "shelf 2"
    put_in_store(office, "SH-1", "bin 4")
    facts = facts_of(office, "SH-1")
    assert "bin 4" in facts["Where it is"] and "Place" not in facts


def test_what_is_evidence_says_of_which_report(office: Office) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    told_ = NewIncident(office.today, Gravity.ACCIDENT, "Long Sand", "It broke.", pieces=("SH-1",), broken=("SH-1",))
    made = report_incident(office, told_)
    assert made.incident.ref in facts_of(office, "SH-1")["Evidence"]


def test_a_file_is_laid_on_the_out_tray_to_be_looked_at(office: Office) -> None:
    book_in(office, shackle())
    kept = attach(office, "SH-1", "Cert.pdf", PDF, PaperKind.CERTIFICATE)
    place = put_on_tray(office, kept)
    assert place.parent == office.out_tray and place.suffix == ".pdf" and place.read_bytes() == PDF
    place.write_bytes(b"scribbled over")
    assert put_on_tray(office, kept) == place and place.read_bytes() == PDF == file_bytes(office, kept)


def test_what_is_no_file_or_too_large_is_refused_before_it_is_read(tmp_path: Path) -> None:
    small, large = tmp_path / "a.pdf", tmp_path / "b.pdf"
    small.write_bytes(PDF)
    with large.open("wb") as file:
        file.truncate(26_000_000)
    assert read_file(small) == PDF
    for place in (large, tmp_path, tmp_path / "none.pdf"):
        with pytest.raises(Refused, match="is no file, or has more than 25 MB"):
            read_file(place)
