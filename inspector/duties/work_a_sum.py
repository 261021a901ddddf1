"""Work a sum in front of a class: formula, figures, result and where it comes from. Touches neither book nor disk."""

from collections.abc import Mapping

from inspector.gear.sums import NamedSum, WorkedSum
from inspector.rulebook import sums
from inspector.rulebook.load import Rulebook, packaged
from inspector.units import System


def work_a_sum(
    name: str,
    typed: Mapping[str, str],
    rules: Rulebook | None = None,
    system: System = System.METRIC,
    decimal: str = ".",
) -> WorkedSum:
    """The sum with typed figures, e.g. {"pull_n": "30 kN"}. rules: for the texts of sources; the packaged ones else."""
    return sums.work(name, typed, rules or packaged(), system, decimal)


def list_sums(words: str = "") -> tuple[NamedSum, ...]:
    """The sums whose name, topic or title hold every word."""
    wanted = words.casefold().split()
    return tuple(
        one
        for one in sums.catalogue()
        if all(word in f"{one.name} {one.topic} {one.title}".casefold() for word in wanted)
    )
