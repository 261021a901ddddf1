"""The table of what was measured: its words, and two runs side by side."""

import math
from pathlib import Path

import pytest
from msgspec.structs import replace

from tests.benchmarks.measuring import growth
from tests.benchmarks.measuring.machine import Machine, this_machine
from tests.benchmarks.measuring.table import QUICK, Bar, Of, Row, Table, saved

MACHINE = Machine("a processor", 2, 8.0, "a system", "3.11", "3.40", "6.11", "", 0.0)


def table(*rows: Row, quick: bool = False) -> Table:
    """A table of such rows."""
    return Table(MACHINE, "2026-11-25T19:00+00:00", "abc", quick, rows)


@pytest.mark.parametrize(
    ("row", "said", "verdict"),
    [
        (Row("x", "s", 3.0, 2.0, bar=Bar(1.5)), "<= 1.5 x", "met"),
        (Row("x", "s", 3.01, 2.0, bar=Bar(1.5)), "<= 1.5 x", "NOT MET"),
        (Row("x", "ms", 16.1, bar=Bar(16, Of.FIGURE)), "<= 16 ms", "NOT MET"),
        (Row("x", "", 4.9, bar=Bar(5, Of.FIGURE, is_least=True)), ">= 5", "NOT MET"),
        (Row("x", "", 5.0, bar=Bar(5, Of.FIGURE, is_least=True)), ">= 5", "met"),
        (Row("x", "s", 3.0, 2.0), "stated", "stated"),
        (Row("x", bar=Bar(2), why_not="no server"), "<= 2 x", "not measured"),
        (Row("x", "s", 3.0, bar=Bar(2)), "<= 2 x", "not measured"),
    ],
)
def test_a_bar_is_printed_with_whether_it_is_met(row: Row, said: str, verdict: str) -> None:
    line = next(one for one in table(row).lines() if one.startswith("x "))
    assert line.endswith(verdict) and f"  {said} " in line
    assert ("NOT MET" in line) == (row.is_met is False)


def test_a_line_says_its_figures_what_it_stands_beside_and_why_it_is_not_there() -> None:
    whole = Row("judge all", "s", 42.5, 0.5, "bare tuples", Bar(20), 81.25, 3, "a note")
    lines = list(table(whole, Row("on a server", why_not="no server is installed")).lines())
    at = next(number for number, line in enumerate(lines) if line.startswith("judge all"))
    assert lines[at].split()[2:-2] == ["42.5", "s", "0.5", "s", "85.00", "x", "81.25", "x", "<=", "20", "x"]
    assert lines[at + 1] == "    beside: bare tuples; median of 3 runs" and lines[at + 2] == "    a note"
    assert lines[-1] == "    not measured here: no server is installed"


def test_small_sizes_are_said_before_and_after_the_figures() -> None:
    lines = list(table(Row("x", "s", 1.0), quick=True).lines())
    assert lines[-1] == QUICK == lines[lines.index(QUICK)] and lines.index(QUICK) < len(lines) - 1
    assert QUICK not in list(table(Row("x", "s", 1.0)).lines())


def test_a_saved_table_comes_back_and_is_held_against_another(tmp_path: Path) -> None:
    file, slow, gone = tmp_path / "one.json", Row("x", "s", 4.0, 2.0, bar=Bar(1.5)), Row("y", "s", 1.0)
    table(slow, gone).save(file)
    before = saved(file)
    assert before == table(slow, gone)
    quick = replace(slow, figure=2.0)
    lines = list(replace(before, rows=(quick, Row("new", "s", 1.0))).against(before))
    assert not any("NOT COMPARABLE" in line for line in lines)
    assert lines[2].split() == ["x", "4", "s", "2", "s", "0.50", "x", "2.00", "x", "1.00", "x", "NOT", "MET", "met"]
    assert "not there" in lines[3] and lines[4].startswith("y ") and "only measured before" in lines[4]


def test_figures_of_another_machine_or_of_small_sizes_are_said_not_to_compare(tmp_path: Path) -> None:
    now = table(Row("x", "s", 1.0))
    elsewhere = replace(now, machine=replace(now.machine, processor="another", cores=99))
    said = [line for line in now.against(elsewhere) if line.startswith("NOT COMPARABLE")]
    assert len(said) == 1 and "processor, cores" in said[0]
    assert any("small sizes" in line for line in now.against(replace(now, is_quick=True)))
    (tmp_path / "no.json").write_text('{"rows": 3}')
    with pytest.raises(ValueError, match=r"no\.json is no table"):
        saved(tmp_path / "no.json")


def test_the_exponent_is_the_power_by_which_time_grows() -> None:
    sizes = (1_000, 10_000, 100_000)
    for power in (0.0, 1.0, 1.5, 2.0):
        assert math.isclose(growth.exponent(sizes, [3e-4 * size**power for size in sizes]), power, abs_tol=1e-9)


def test_the_machine_is_named_with_its_versions(tmp_path: Path) -> None:
    machine = this_machine(tmp_path)
    assert machine.cores > 0 and all((machine.processor, machine.python, machine.sqlite, machine.qt, machine.system))
    said = " ".join(machine.lines())
    assert machine.processor in said and f"Qt {machine.qt}" in said and f"SQLite {machine.sqlite}" in said
    assert machine.synced_ms > 0 and f"{machine.synced_ms:.2g} ms to say that a page was put down" in said
    assert machine.differs(machine) == [] and machine.differs(replace(machine, load=9.0, qt="1")) == ["qt"]
    assert "trust the ratios" in " ".join(replace(machine, load=9.0).lines())
