"""Tables: cells beside one another in columns of given shares of the width."""

from collections.abc import Sequence

from inspector.paper.blocks import Block, row, rule, stack, words
from inspector.paper.page_style import GRID, SMALL

_GAP_PT = 2 * GRID
Shares = tuple[float, ...]


def widths(shares: Shares, width_pt: float) -> list[float]:
    """How wide each column is, its gap taken off."""
    return [share * width_pt - _GAP_PT for share in shares]


def columns(shares: Shares, cells: Sequence[Block], width_pt: float) -> Block:
    """The cells of one line."""
    starts = [sum(shares[:number]) * width_pt for number in range(len(cells))]
    return row(*zip(starts, cells, strict=True))


def names(shares: Shares, said: Sequence[str], width_pt: float) -> Block:
    """The names of the columns, kept with what follows."""
    cells = [words(name, wide, SMALL) for name, wide in zip(said, widths(shares, width_pt), strict=True)]
    return columns(shares, cells, width_pt).kept()


def line(shares: Shares, cells: Sequence[Block], width_pt: float, *below: Block) -> Block:
    """A line of a table under its hairline, with what stands below it over the whole width."""
    return stack([rule(width_pt), columns(shares, cells, width_pt).below(GRID / 2), *below]).below(GRID)
