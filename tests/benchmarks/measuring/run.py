"""One run of all that is measured: its sizes, its registers, and what several rows share."""

from collections.abc import Callable, Iterable
from pathlib import Path

from msgspec import Struct, field

from inspector.rulebook.load import Rulebook
from tests.benchmarks.measuring.stores import Stores
from tests.benchmarks.measuring.table import Row


class Sizes(Struct, frozen=True):
    """How large and how often. few ... most: pieces of a register; looks: inspections of each where all are judged.

    growth: pieces of each register whose questions are to grow straight; rows: of a list that is brought in; sheet:
    pieces of a trip; notices, photos: how many; writers, deeds: at once on a server; logged: inspections; runs: of what
    is short, long_runs: of what takes minutes.
    """

    few: int
    usual: int
    many: int
    most: int
    looks: int
    growth: tuple[int, ...]
    rows: int
    sheet: int
    notices: int
    photos: int
    writers: int
    deeds: int
    logged: int
    runs: int
    long_runs: int


FULL = Sizes(100, 1_000, 10_000, 100_000, 20, (1_000, 10_000, 100_000), 10_000, 60, 500, 20, 8, 500, 25, 9, 3)
QUICK = Sizes(100, 300, 600, 2_000, 5, (200, 600, 2_000), 300, 60, 50, 3, 3, 20, 9, 3, 1)


class Run(Struct, frozen=True):
    """aside: an empty folder for what is written meanwhile. shared: what a part has measured for another one too."""

    sizes: Sizes
    stores: Stores
    aside: Path
    shared: dict[str, object] = field(default_factory=dict)

    @property
    def rules(self) -> Rulebook:
        """The packaged rulebook, read once."""
        return self.stores.rules


class Part(Struct, frozen=True):
    """What is measured together. name: as the table calls it."""

    name: str
    measure: Callable[[Run], Iterable[Row]]
