"""The one command that measures all: every line is there, and each thing is measured, here at the smallest sizes."""

import math
from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace

from inspector import app
from inspector.duties.book_in import book_in
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import Answer, InspectionKind, NewInspection
from inspector.gear.kind import Grade
from inspector.rulebook.load import Rulebook
from tests import server
from tests.benchmarks import bench_gear_list, bench_import, bench_paper, bench_photos, bench_writers, measure
from tests.benchmarks.measuring import benched, growth, judging, starting, turns
from tests.benchmarks.measuring.child import marks, works
from tests.benchmarks.measuring.parts import PARTS
from tests.benchmarks.measuring.run import Part, Run, Sizes
from tests.benchmarks.measuring.stores import Stores
from tests.benchmarks.measuring.table import QUICK, Bar, Of, Row, saved
from tests.benchmarks.registers import office_on
from tests.duties.gear import strap
from tests.paper.photo_sheets.clean_sheet import drawn_sheet
from tests.server import NoServerError

TINY = Sizes(6, 6, 6, 8, 2, (6, 12), 5, 2, 10, 1, 2, 2, 1, 1, 1)


@pytest.fixture
def run(tmp_path: Path, office: Office, rules: Rulebook) -> Run:
    """A run whose sample is a club with two straps, each inspected once."""
    earlier = office.at(office.now - timedelta(days=30))
    for tag in ("KS-1", "KS-2"):
        book_in(earlier, strap(tag))
        kind = office.kind(open_item(office, tag).dossier.item.facts.kind)
        answers = tuple(Answer(one.key, Grade.GOOD) for one in kind.checks)
        look = NewInspection(earlier.today, InspectionKind.PERIODIC, office.officer.id, False, answers)
        record_inspection(office, tag, look)
    office.book.close()
    stores, aside = Stores(tmp_path / "registers", rules), tmp_path / "aside"
    place = stores.folder / "sample"
    place.mkdir(parents=True)
    (place / "register.db").write_bytes((tmp_path / "register.db").read_bytes())
    aside.mkdir()
    return Run(TINY, stores, aside)


class Ended(Exception):  # noqa: N818
    """A work of a child process has ended, within this one."""


@pytest.fixture
def within(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Iterator[None]:
    """The works of child processes are done in this one: a new one takes a second to begin."""

    def end(name: str) -> None:
        marks.mark(name)
        raise Ended

    def once(name: str, folder: Path) -> turns.Seen:
        marks.marks.clear()
        marks.seen.clear()
        marks.seen["peak_bytes"] = 1
        with pytest.raises(Ended):
            works.WORKS[name](str(folder))
        found = {key: at for key, (at, _) in marks.marks.items()}
        return turns.Seen(found, found, dict(marks.seen))

    monkeypatch.setattr(marks, "end", end)
    monkeypatch.setattr(works, "MOST_TIMES", 1)
    monkeypatch.setattr(app, "datetime", vars(app)["datetime"])  # which is stopped, and let go again afterwards
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    for module in (turns, starting, judging, growth):
        monkeypatch.setattr(module, "once", once)
    yield


def test_every_line_of_the_table_has_a_part_that_measures_it() -> None:
    assert [one.name for one in PARTS] == [
        "program start to first paint",
        "program start to the list's first rows, usable",
        "`inspector list` from cold",
        "judge all, cold",
        "after one inspection is logged: judge, store, show",
        "open on a new day",
        "find as one types",
        "pre-trip sheet",
        "retirement notices",
        "import of rows: dry run and real",
        "photo read back, a page",
        "growth: judge all, list, due list, verify",
        "PostgreSQL: several writers at once",
    ]


# --- the command ---


def raising(fault: Exception) -> Callable[[Run], Iterator[Row]]:
    """A part that has measured a row and then cannot go on."""

    def work(_: Run) -> Iterator[Row]:
        yield Row("first", "s", 1.0)
        raise fault

    return work


def test_what_cannot_be_measured_says_why_and_what_breaks_is_told_by_the_exit_code(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    sound = Part("sound", lambda _: [Row("slow", "s", 9.0, 1.0, bar=Bar(2))])
    parts = (sound, Part("server", raising(NoServerError("none here"))), Part("broken", raising(KeyError("lost"))))
    monkeypatch.setattr(measure, "PARTS", parts)
    assert measure.main(["--only", "nothing of it"]) == 2
    file = tmp_path / "now.json"
    assert measure.main(["--quick", "--only", "s", "--save", str(file), "--keep", str(tmp_path / "kept")]) == 0
    assert "NOT MET" in (said := capsys.readouterr().out) and "not measured here: none here" in said and QUICK in said
    assert [row.what for row in saved(file).rows] == ["slow", "first", "server"] and (tmp_path / "kept").is_dir()
    assert measure.main(["--only", "BROKEN", "--against", str(file)]) == 1
    told = capsys.readouterr()
    assert "it broke: 'lost'" in told.out and "one of the two was measured at small sizes" in told.out
    assert "KeyError" in told.err


def test_without_a_server_the_line_of_the_writers_says_so(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(*_: object, **__: object) -> Any:
        raise NoServerError("No PostgreSQL server is installed.")

    monkeypatch.setattr(server, "start", none)
    rows, is_sound = measure.measured(PARTS[-1], run)
    assert is_sound and [one.why_not for one in rows] == ["No PostgreSQL server is installed."]


# --- what is measured, at the smallest sizes ---


def checked(rows: list[Row], *names: str) -> list[Row]:
    """The rows, which must be called so and say all that a row has to say."""
    assert [one.what for one in rows] == list(names)
    assert all(one.figure is not None and math.isfinite(one.figure) and not one.why_not for one in rows)
    assert all((one.ratio is not None and one.ratio > 0) == bool(one.beside) for one in rows)
    return rows


def test_the_window_tells_its_first_paint_and_its_first_rows(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("PYTHONDONTWRITEBYTECODE", raising=False)  # as in an installation
    place = run.stores.listed(6)
    turns.once("look_after", place)
    (ours,), (bare,) = turns.in_turns([("window", place), ("bare_window", place)], 1, warm=False)
    for one in (ours, bare):
        assert 0 < one.wall_s["painted"] < one.wall_s["usable"] and 0 < one.work_s["painted"] <= one.work_s["usable"]
    assert (ours.more["window"], bare.more["window"]) == ("DeskWindow", "Watched"), "each painted its own window"
    run.shared["windows"] = {count: ([ours], [bare]) for count in (6, 8)}
    paint = checked(list(starting.to_first_paint(run)), "start to first paint, 6 items")[0]
    assert paint.bar == Bar(1.5) and paint.unit == "s" and paint.work_ratio is not None
    name = "start to the list's first rows, usable"
    rows = checked(list(starting.to_first_rows(run)), f"{name}, 6 items", f"{name}, 8 items")
    assert {one.bar for one in rows} == {Bar(3.5)}


def test_a_work_that_breaks_says_what_went_wrong(run: Run) -> None:
    with pytest.raises(RuntimeError, match=r"no such work|KeyError"):
        turns.once("no such work", run.stores.folder)


def test_the_list_is_printed_by_both(run: Run, within: None, capfd: pytest.CaptureFixture[str]) -> None:
    (row,) = checked(list(starting.command(run)), "`inspector list` from cold, 6 items")
    assert row.bar == Bar(2.5)
    said = capfd.readouterr().out
    assert said.count("KS-1") >= 4 and "6 of 6 pieces" in said  # both printed, and a warm round before


def test_judging_is_measured_whole_for_a_day_and_for_one(run: Run, within: None) -> None:
    rows = [*judging.all_from_cold(run), *judging.new_day(run)]
    names = (
        "judge all, 6 items x 2 inspections, cold",
        "judge all: most memory held, 6 items x 2",
        *(f"open on a new day, 2 % of 6 items to be judged, {since}" for since in ("from cold", "once it is open")),
    )
    whole, _, *days = checked(rows, *names)
    assert whole.bar == Bar(20) and {one.bar for one in days} == {Bar(0.05)}
    assert all("1 and 6 judged" in one.beside for one in days)
    assert days[1].figure and days[0].figure and 0 < days[1].figure < days[0].figure
    name = "one inspection: judge, store, show"
    ones = checked(list(judging.one(run)), f"{name}, 6 items", f"{name}, 8 items")
    assert {one.bar for one in ones} == {Bar(3)} and {one.unit for one in ones} == {"ms"}


def test_where_no_system_tells_the_memory_held_the_line_says_so(run: Run) -> None:
    seen = turns.Seen({"done": 2.0}, {"done": 1.0}, {"peak_bytes": 0})
    run.shared["judged"] = ([seen], [seen], [seen])
    whole, held = judging.all_from_cold(run)
    assert whole.ratio == 1.0 and held.figure is None and "does not tell" in held.why_not


def test_growth_asks_each_question_of_registers_that_are_whole(run: Run, within: None) -> None:
    rows = list(growth.growth(run))
    assert [one.what for one in rows] == [
        f"growth: {name}, 6, 12 items" for name in ("judge all", "the list", "due list", "verify")
    ]
    assert {one.bar for one in rows} == {Bar(1.1, Of.FIGURE)} and all(one.figure is not None for one in rows)
    office = office_on(run.stores.lived(12, 1), run.rules)
    found = verify_book(office)
    office.book.close()
    assert found.faults == () and found.row_count >= 3 * 12  # piece, inspection and verdict of each


def test_what_has_a_bench_of_its_own_is_told_by_its_figures(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    asked = bench_gear_list.Measured("one letter", 3.0, 4.0, 2.0, 7)
    typed = bench_gear_list.Measured("typing a word, a letter at a time", 1.0, 30.0, count=7, own_ms=9.0)
    monkeypatch.setattr(bench_gear_list, "measure", lambda *_: [asked, replace(asked, name="by kind", bare_ms=None)])
    monkeypatch.setattr(bench_gear_list, "measure_window", lambda *_: [replace(typed, name="other"), typed])
    name = "find as one types, 8 items"
    found = checked(list(benched.finding(run)), f"{name}: one letter", f"{name}: the window's own thread, longest turn")
    assert (found[0].ratio, found[1].figure) == (1.5, 9.0)
    read = bench_import.Measured("list.csv: read", 0.1, 0.1)
    steps = (("read and run dry", 0.0), ("taken", 9.0), (bench_import.PUT_DOWN, 0.0))
    both = [(name, *told) for name in ("csv", "xlsx") for told in steps]
    taken = [replace(read, name=f"list.{name}: {what}", seconds=2.0, told_per_s=told) for name, what, told in both]
    monkeypatch.setattr(bench_import, "measure", lambda *_: [read, *taken, replace(read, name="list.csv: withdrawn")])
    brought = list(benched.bringing_in(run))
    assert [one.ratio for one in brought] == [20.0] * 6 + [None] and brought[-1].figure == 9.0
    assert [one.is_met for one in brought] == [False, False, None] * 2 + [True]
    monkeypatch.setattr(bench_paper, "compare", lambda *_: bench_paper.Ratio(3.0, 2.0, 1.5, 4))
    (sheet,) = checked(list(benched.sheet(run)), "pre-trip sheet of 2 items")
    assert sheet.ratio == 1.5 and "2.00 x" in sheet.note


def test_notices_and_photos_are_measured_beside_what_they_are_made_of(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    one_s, all_s = bench_paper.in_a_row(2)
    assert 0 < one_s <= all_s
    monkeypatch.setattr(bench_paper, "in_a_row", lambda _: (1.0, 10.5))
    kept = [bench_paper.Kept(2, 2048), bench_paper.Kept(10, 2048 + 65 * 1024)]
    monkeypatch.setattr(bench_paper, "keep", lambda _: kept)
    time, memory = benched.notices(run)
    assert (time.ratio, time.is_met, memory.figure, memory.is_met) == (1.05, True, 65.0, False)
    found = bench_photos.compare([drawn_sheet(1, 1)], 1)
    assert found.read_ms > found.decoded_ms > 0
    monkeypatch.setattr(bench_photos, "compare", lambda *_: found)
    monkeypatch.setattr(benched, "all_sheets", list)
    assert checked(list(benched.photos(run)), "photo read back, a page")[0].bar is None


def test_the_writers_line_says_what_became_of_their_deeds(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    written = bench_writers.Written(8.0, 9, 1, 0, 0, 0, 0, 0, 9)
    monkeypatch.setattr(bench_writers, "on_server", lambda *_: _Open(("place", "bare")))
    monkeypatch.setattr(bench_writers, "write", lambda *_: written)
    monkeypatch.setattr(bench_writers, "write_bare", lambda *_: 2.0)
    (row,) = checked(list(benched.writers(run)), "PostgreSQL: 2 writers x 2 deeds")
    assert row.ratio == 4.0 and "kept 9, refused 1, disturbed 0, lost 0" in row.note


class _Open:
    """A context that gives this."""

    def __init__(self, given: tuple[str, str]) -> None:
        self._given = given

    def __enter__(self) -> tuple[str, str]:
        return self._given

    def __exit__(self, *_: object) -> None:
        return None
