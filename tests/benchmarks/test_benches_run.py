"""The benchmarks run and print figures; what they measure is not judged here."""

from pathlib import Path

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.paper.page_style import PageSize
from inspector.rulebook.load import Rulebook
from tests.benchmarks import (
    bench_gear_list,
    bench_heartbeat,
    bench_import,
    bench_judging,
    bench_needs,
    bench_paper,
    bench_photos,
    bench_readiness,
    bench_rigs,
    bench_start,
)
from tests.benchmarks.bench_sums import CASES, measure
from tests.paper.documents import DOCUMENTS, told
from tests.paper.photo_sheets.clean_sheet import drawn_sheet
from tests.paper.reading import fields_by_page


def test_the_bench_of_sums_measures_every_case_against_its_baseline() -> None:
    rows = measure(calls=20)
    assert [name for name, _, _ in rows] == list(CASES)
    assert rows[0][2] == 1 and all(taken > 0 for _, taken, _ in rows)


def test_the_bench_of_judging_measures_every_step_on_every_piece(tmp_path: Path, sample: Office) -> None:
    count, rows = bench_judging.measure(tmp_path, repeats=1)
    assert count > 100
    assert [one.name for one in rows] == ["judge", "what would release it", "words"]
    assert all(0 < one.median_ms <= one.slowest_ms and one.loops > 0 for one in rows)


def test_the_bench_of_readiness_measures_a_large_kit(tmp_path: Path, rules: Rulebook, sample: Office) -> None:
    assert bench_readiness.prepare(tmp_path, rules, 100) == 100
    rows = bench_readiness.measure(tmp_path, repeats=1)
    assert len(rows) == 4 and all(one.seconds > 0 and one.loops > 0 for one in rows)


def test_the_bench_of_rigs_measures_every_shape_and_many_checks() -> None:
    rows, many_s = bench_rigs.measure(repeats=1, many=10)
    assert [one.name for one in rows] == list(bench_rigs.shapes())
    assert all(0 < one.median_ms <= one.slowest_ms and one.loops > 0 for one in rows)
    assert many_s > 0


def test_the_bench_of_the_gear_list_asks_every_question_and_works_the_window(
    tmp_path: Path, rules: Rulebook, sample: Office
) -> None:
    bench_gear_list.prepare(tmp_path, 150)
    asked = bench_gear_list.measure(tmp_path, rules, repeats=1)
    by_name = {one.name: one for one in asked}
    assert by_name["all, by tag"].count > 100 > by_name["on loan"].count > 0 == by_name["nothing found"].count
    assert by_name["one letter"].bare_ms and all(one.median_ms > 0 for one in asked)
    window = bench_gear_list.measure_window(tmp_path, rules, quiet_s=0.01)
    assert len(window) == 7 and all(one.worst_ms > 0 for one in window)


def test_the_bench_of_what_waits_measures_the_first_page_and_the_calendar(
    tmp_path: Path, rules: Rulebook, sample: Office
) -> None:
    assert bench_readiness.prepare(tmp_path, rules, 40) == 40
    rows = bench_needs.measure(tmp_path, rules, repeats=1)
    assert [one.name for one in rows] == ["what needs me", "what falls due"]
    assert all(one.seconds > 0 and one.loops > 0 for one in rows)


def test_the_bench_of_the_heartbeat_does_each_work_and_hears_its_steps(
    tmp_path: Path, rules: Rulebook, sample: Office
) -> None:
    idle, *works = bench_heartbeat.measure(tmp_path, rules, row_count=30)
    assert idle.steps == 0 and len(works) == 6
    assert all(one.steps > 0 and one.longest_ms >= 0 and one.seconds > 0 for one in works)


def test_the_bench_of_imports_reads_both_files_and_takes_and_withdraws_the_list(
    tmp_path: Path, rules: Rulebook, sample: Office
) -> None:
    found = bench_import.measure(tmp_path, rules, 60)
    names = ["read", "read and run dry", "taken", bench_import.PUT_DOWN, "withdrawn"]
    assert [one.name.partition(": ")[2] for one in found] == names * 2
    assert all(one.seconds > 0 and (one.told_per_s > 0) == one.name.endswith("taken") for one in found)


def test_the_bench_of_paper_draws_the_same_on_a_bare_canvas() -> None:
    printed = DOCUMENTS["trip_sheet"].printed(PageSize.A4, 2)
    bare = replace(printed, pdf=bench_paper.redrawn(bench_paper.noted(2)))
    assert told(bare) == told(printed) and fields_by_page(bare) == fields_by_page(printed)
    one = bench_paper.compare(2, repeats=1)
    assert one.pages == printed.page_count and min(one.sheet_ms, one.bare_ms, one.sharing_ms) > 0
    assert [kept.notices for kept in bench_paper.keep((1, 2))] == [1, 2]


def test_the_bench_of_photos_reads_each_and_prints_what_came_of_it() -> None:
    heard: list[int] = []
    counts = bench_photos.measure([drawn_sheet(1, 1)], 2, 12, heard.append)
    assert counts.photos == 2 and heard == [1, 2] and len(counts.seconds) == 2
    assert counts.rows == 23 * counts.accepted and counts.accepted + sum(counts.reasons.values()) == 2
    lines = bench_photos.lines_of(counts)
    assert lines[0].startswith("photos 2") and any("faults read as passed" in line for line in lines)


def test_the_bench_of_starts_measures_every_command_against_its_baseline(sample: Office) -> None:
    sample.book.close()
    rows = bench_start.measure(sample.out_tray.parent, repeats=1)
    assert [one.name for one in rows] == ["baseline", "--help", "list", "show", "where", "people", "calendar"]
    assert rows[0].ratio == 1 and all(one.median_s > 0 for one in rows)
