"""How the work grows with the register: the slope of a straight line through the logarithms of size and time."""

import math
import sqlite3
from collections.abc import Iterator, Sequence
from pathlib import Path

from tests.benchmarks.measuring.run import Run
from tests.benchmarks.measuring.table import Bar, Of, Row
from tests.benchmarks.measuring.turns import once

_BAR = Bar(1.1, Of.FIGURE)
_QUESTIONS = {"judge all": "judge_all", "the list": "list_all", "due list": "due_list", "verify": "verify"}
_LOOKS = 1


def growth(run: Run) -> Iterator[Row]:
    """Each question on registers of every size, each asked in a new process; only the question itself is timed."""
    places = [run.stores.lived(count, _LOOKS) for count in run.sizes.growth]
    counts = [_piece_count(place) for place in places]
    sizes = ", ".join(f"{count:,}" for count in run.sizes.growth)
    for name, work in _QUESTIONS.items():
        seen = [once(work, place) for place in places]
        seconds = [one.more["each_s"] for one in seen]
        told = ", ".join(f"{each:,.3f}" for each in seconds)
        yield Row(
            what=f"growth: {name}, {sizes} items",
            unit="exponent",
            figure=exponent(counts, seconds),
            bar=_BAR,
            note=f"processor seconds {told}; most memory "
            + ", ".join(f"{one.more['peak_bytes'] / 1e6:,.0f} MB" for one in seen),
        )


def _piece_count(place: Path) -> int:
    """How many there truly are: a register is made of whole copies."""
    with sqlite3.connect(place / "register.db") as connection:
        (count,) = connection.execute("SELECT count(*) FROM item").fetchone()
    connection.close()
    return int(count)


def exponent(sizes: Sequence[int], seconds: Sequence[float]) -> float:
    """The slope of the least-squares line through the logarithms: 1 where twice as many take twice as long."""
    xs, ys = [math.log(one) for one in sizes], [math.log(one) for one in seconds]
    x_mean, y_mean = sum(xs) / len(xs), sum(ys) / len(ys)
    across = sum((x - x_mean) ** 2 for x in xs)
    return sum((x - x_mean) * (y - y_mean) for x, y in zip(xs, ys, strict=True)) / across
