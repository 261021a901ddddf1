"""Rows of what has a bench of its own: finding, papers, lists brought in, photos, several officers at once."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from statistics import median

from tests.benchmarks import bench_gear_list, bench_import, bench_paper, bench_photos, bench_writers
from tests.benchmarks.measuring.run import Run
from tests.benchmarks.measuring.table import Bar, Of, Row
from tests.paper.photo_sheets.printed_sheets import all_sheets

_FOUND_BAR, _TURN_BAR = Bar(2), Bar(16, Of.FIGURE)
_SHEET_BAR, _STRAIGHT_BAR, _FLAT_BAR = Bar(2), Bar(1.1), Bar(64, Of.FIGURE)
_LIST_BAR, _TOLD_BAR = Bar(8), Bar(5, Of.FIGURE, is_least=True)
_TYPED = "typing a word, a letter at a time"


def finding(run: Run) -> Iterator[Row]:
    """Each question that SQLite alone can be asked too, then the window's own thread as somebody types."""
    place, repeats = run.stores.listed(run.sizes.most), run.sizes.runs
    name = f"find as one types, {run.sizes.most:,} items"
    for one in bench_gear_list.measure(place, run.rules, repeats):
        if one.bare_ms:
            yield Row(
                what=f"{name}: {one.name}",
                unit="ms",
                figure=one.median_ms,
                baseline=one.bare_ms,
                beside="the bare driver's LIKE for the same words in the same order, nothing left out or counted",
                bar=_FOUND_BAR,
                runs=repeats,
                note=f"{one.count:,} pieces answer",
            )
    rounds = [bench_gear_list.measure_window(place, run.rules) for _ in range(run.sizes.long_runs)]
    typed = [one for steps in rounds for one in steps if one.name == _TYPED]
    yield Row(
        what=f"{name}: the window's own thread, longest turn",
        unit="ms",
        figure=median(one.own_ms for one in typed),
        bar=_TURN_BAR,
        runs=len(typed),
        note=f"the longest of all {max(one.own_ms for one in typed):.1f} ms, with waiting for other work "
        f"{max(one.worst_ms for one in typed):.1f} ms; half of the turns took {typed[0].median_ms:.1f} ms or less",
    )


def sheet(run: Run) -> Iterator[Row]:
    """A sheet of so many pieces."""
    found = bench_paper.compare(run.sizes.sheet, run.sizes.runs)
    yield Row(
        what=f"pre-trip sheet of {run.sizes.sheet} items",
        unit="ms",
        figure=found.sheet_ms,
        baseline=found.bare_ms,
        beside="a bare reportlab canvas told to draw the same texts, fonts, lines, code and fields",
        bar=_SHEET_BAR,
        runs=run.sizes.runs,
        note=f"{found.pages} pages; beside a bare canvas whose boxes share their looks as the sheet's do: "
        f"{found.sheet_ms / found.sharing_ms:.2f} x",
    )


def notices(run: Run) -> Iterator[Row]:
    """So many in a row take as many times as long as one, and hold no more memory than a few."""
    count = run.sizes.notices
    one_s, all_s = bench_paper.in_a_row(count)
    yield Row(
        what=f"{count} retirement notices: time",
        unit="s",
        figure=all_s,
        baseline=count * one_s,
        beside=f"{count} times one, the mean of the first few",
        bar=_STRAIGHT_BAR,
        note="processor time",
    )
    few, many = bench_paper.keep((count // 5, count))
    yield Row(
        what=f"{count} retirement notices: more memory held than after {few.notices}",
        unit="KiB",
        figure=(many.held_bytes - few.held_bytes) / 1024,
        bar=_FLAT_BAR,
        note=f"after {few.notices}: {few.held_bytes / 1024:.1f} KiB more than after the first, after {many.notices}: "
        f"{many.held_bytes / 1024:.1f} KiB",
    )


def bringing_in(run: Run) -> Iterator[Row]:
    """A list read, run dry and taken, from both sorts of file; how often it tells how far it is."""
    with tempfile.TemporaryDirectory(dir=run.aside) as aside:
        (Path(aside) / "register.db").write_bytes((run.stores.sample() / "register.db").read_bytes())
        found = bench_import.measure(Path(aside), run.rules, run.sizes.rows)
    for one in found:
        if one.name.endswith(("run dry", "taken", bench_import.PUT_DOWN)):
            yield Row(
                what=f"import of {run.sizes.rows:,} rows, {one.name}",
                unit="s",
                figure=one.seconds,
                baseline=one.bare_s,
                beside="reading the file alone, by csv or calamine",
                bar=None if one.name.endswith(bench_import.PUT_DOWN) else _LIST_BAR,
                runs=bench_import.DRY_RUNS if one.name.endswith("run dry") else 1,
                note=f"processor time, {one.seconds / run.sizes.rows * 1000:.2f} ms a row",
            )
    told = min(one.told_per_s for one in found if one.told_per_s)
    name = f"import of {run.sizes.rows:,} rows: told a second, at least"
    yield Row(name, "", told, bar=_TOLD_BAR, note="one over the longest pause between two steps, in processor time")


def photos(run: Run) -> Iterator[Row]:
    """A page of a photographed sheet, from the file's bytes to its boxes."""
    found = bench_photos.compare(all_sheets(), run.sizes.photos)
    yield Row(
        what="photo read back, a page",
        unit="ms",
        figure=found.read_ms,
        baseline=found.decoded_ms,
        beside="Pillow decoding the same file",
        runs=run.sizes.photos,
        note="processor time; photos that differ, each read once",
    )


def writers(run: Run) -> Iterator[Row]:
    """Several officers at once on a server that syncs to disk, and what became of their deeds."""
    count, deeds = run.sizes.writers, run.sizes.deeds
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        folder.chmod(0o711)  # the server's own user must get through
        with bench_writers.on_server(folder, run.rules) as (place, bare):
            found = bench_writers.write(place, count, deeds)
            bare_s = bench_writers.write_bare(bare, count, deeds)
    yield Row(
        what=f"PostgreSQL: {count} writers x {deeds} deeds",
        unit="s",
        figure=found.seconds,
        baseline=bare_s,
        beside="as many processes inserting as many bytes into bare tables",
        note=f"kept {found.done}, refused {found.refused}, disturbed {found.disturbed}, lost {found.lost}, "
        f"doubled {found.doubled}, tags taken twice {found.taken}, faults {found.faults}",
    )
