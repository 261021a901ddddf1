"""The sample register: what it must hold, its cautionary cases, and the papers that come out of it."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pypdf
import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.build_sample import build_sample
from inspector.duties.look_up import kinds, list_gear, open_item, people, trip, trips, vehicles
from inspector.duties.office import Office
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure
from inspector.duties.retire_item import print_notice
from inspector.duties.trip_readiness import readiness
from inspector.duties.verify_book import verify_book
from inspector.gear.outcome import Outcome, Purpose
from inspector.gear.use import NewExposure, Weather
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle

CASES = {
    "BM-01": Outcome.RETIRE,  # thinned from inside behind a clean outside
    "HR-01": Outcome.HOLD,  # the receiver on the same road
    "SH-01": Outcome.FIT,  # 4.75 t with a good certificate
    "SH-02": Outcome.RETIRE,  # unmarked
    "SH-03": Outcome.FIT,  # short tons
    "KS-01": Outcome.FIT,  # far too strong for a light car, as such sound
    "KS-02": Outcome.HOLD,  # an overload
    "KS-03": Outcome.DERATE,  # sun, age and rubbing
    "KS-04": Outcome.RETIRE,  # a cut edge
    "HP-01": Outcome.RETIRE,  # a worn pin
    "TW-01": Outcome.HOLD,  # a second-hand tow bar of unknown history
    "XX-01": Outcome.HOLD,  # hardly any data
    "BM-02": Outcome.HOLD,  # read two years ago
    "HR-02": Outcome.HOLD,
}


def text_of(path: Path) -> str:
    return " ".join(page.extract_text() for page in pypdf.PdfReader(path).pages).replace("\n", " ")


def test_it_holds_a_club_s_gear_of_every_kind_and_three_years_of_work(sample: Office) -> None:
    found = list_gear(sample)
    assert found.count >= 60
    assert {row.kind for row in found.rows} == {kind.key for kind in kinds(sample)}
    assert len(kinds(sample)) == 22
    assert len(vehicles(sample)) == 10 and all(vehicle.mass for vehicle in vehicles(sample))
    assert len(trips(sample)) == 6
    assert len(people(sample)) >= 10
    inspections = sum(len(open_item(sample, row.tag).dossier.inspections) for row in found.rows)
    assert inspections >= 300
    points = list_gear(sample, kind="recovery_point").rows
    fitted = {open_item(sample, row.tag).dossier.item.facts.fitted_to for row in points}
    assert fitted == {vehicle.tag for vehicle in vehicles(sample)}


@pytest.mark.parametrize(("tag", "outcome"), CASES.items())
def test_the_cautionary_cases_come_out_as_they_must(sample: Office, tag: str, outcome: Outcome) -> None:
    assert open_item(sample, tag).verdict.outcome is outcome


def test_the_thinned_ball_mount_was_five_and_is_two_point_two(sample: Office) -> None:
    wall = open_item(sample, "BM-01").verdict.wall
    assert wall is not None
    assert wall.nominal_m == pytest.approx(0.005)
    assert min(point.read_m for point in wall.history) == pytest.approx(0.0022)
    assert open_item(sample, "BM-01").dossier.inspections[-1].facts.answers


@pytest.mark.parametrize("tag", ["TB-01", "BM-03"])
def test_nobody_may_pull_from_the_ball_or_the_mount_somebody_would_like_to(sample: Office, tag: str) -> None:
    found = open_item(sample, tag)
    assert [one.purpose for one in found.verdict.by_purpose] == [Purpose.TOWING]
    assert found.explanation.use_line == "Road towing only"


def test_the_register_verifies_and_no_verdict_is_older_than_time_allows(sample: Office) -> None:
    assert verify_book(sample).faults == ()
    for row in list_gear(sample).rows:
        holds_until = open_item(sample, row.tag).verdict.holds_until
        assert holds_until is None or holds_until > sample.today


def test_it_comes_out_the_same_whenever_it_is_built(tmp_path: Path, rules: Rulebook, sample: Office) -> None:
    (tmp_path / "other").mkdir()
    other = office_in(tmp_path / "other", rules, datetime(2028, 2, 29, 19, tzinfo=UTC))
    build_sample(other)
    outcomes = {row.tag: row.outcome for row in list_gear(other).rows}
    other.book.close()
    assert outcomes == {row.tag: row.outcome for row in list_gear(sample).rows}


def test_a_broken_sample_leaves_an_empty_register(
    tmp_path: Path, rules: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    from inspector.duties import build_sample as module

    def fail(*_: object) -> None:
        raise ValueError("half way")

    monkeypatch.setattr(module, "_add_vehicle", fail)
    office = office_in(tmp_path, rules)
    with pytest.raises(ValueError, match="half way"):
        build_sample(office)
    assert list_gear(office).count == 0 and people(office) == ()
    office.book.close()


def test_the_sheet_says_what_goes_what_stays_and_why(sample: Office) -> None:
    ready = readiness(sample, "next")
    assert ready.trip.ground.value == "beach"
    assert ready.going and ready.staying
    text = text_of(print_trip_sheet(sample, "next").path)
    for one in (*ready.going, *ready.staying):
        assert one.dossier.item.tag in text
    for wanted in ("Pre-trip inspection sheet", "Must stay behind", "Signature", "competent person decides", "GVM"):
        assert wanted in text
    assert "Too strong for it" in text and "KS-01 (7.10 × GVM)" in text
    assert ready.staying[0].explanation.reasons[0].sentence.split(":")[0] in text


def test_a_piece_is_judged_for_the_last_day_of_the_trip(sample: Office) -> None:
    planned = trip(sample, "next")
    ready = readiness(sample, "next")
    assert {one.verdict.on for one in (*ready.going, *ready.staying)} == {planned.last_on}


def test_documents_are_numbered_without_repeats_and_carry_the_copy_s_name(sample: Office) -> None:
    first, second = (print_trip_sheet(sample, "next").path for _ in range(2))
    assert (first.stem, second.stem) == (f"S-{sample.book.origin}-0003", f"S-{sample.book.origin}-0004")
    head = verify_book(sample).head
    assert head[:12] not in text_of(first)
    assert print_trip_sheet(sample, "next").path.stem.endswith("0005")


def test_a_notice_reprinted_in_three_years_says_what_it_said_on_the_day(sample: Office) -> None:
    place = print_notice(sample, "BM-01").path
    text, printed = text_of(place), place.read_bytes()
    for wanted in (
        "RETIRED",
        "BM-01",
        "2.2 mm",
        "at least 4 mm",
        "80 % of the wall",
        "Proof of destruction",
        "ball mount",
    ):
        assert wanted in text
    later = sample.at(sample.now + timedelta(days=1100))
    record_exposure(later, "BM-01", NewExposure(later.today, Weather.SALT))
    place.unlink()
    assert print_notice(later, "BM-01").path == place
    assert place.read_bytes() == printed


def test_a_full_out_tray_loses_no_deed(sample: Office) -> None:
    sample.out_tray.write_text("a file where the folder should be")
    with pytest.raises(Refused, match="deed itself is kept"):
        print_notice(sample, "BM-01")
    sample.out_tray.unlink()
    assert print_notice(sample, "BM-01").path.stem.endswith("0001")


def test_a_sound_piece_has_no_notice(sample: Office) -> None:
    with pytest.raises(Refused, match="not retired"):
        print_notice(sample, "SH-01")


def test_a_sign_the_type_does_not_have_is_reported(office: Office) -> None:
    kind = book_in(office, replace(shackle(), owner="ह Club")).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    assert print_notice(office, "SH-1").missing == ("ह",)
