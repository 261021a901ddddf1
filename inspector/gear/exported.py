"""What leaves the register for other programs: tables of cells, and what an archive is."""

from dataclasses import dataclass
from datetime import date

Cell = str | int | float | date | None


@dataclass(frozen=True, slots=True)
class ExportedTable:
    """A table for a spreadsheet. name: of its sheet, without signs that a sheet may not have; None: an empty cell."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
