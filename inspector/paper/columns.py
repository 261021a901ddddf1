"""Tables: cells beside one another in columns of given shares of the width."""

from collections.abc import Sequence

from msgspec.structs import replace

from inspector.gear.papers import ProtocolTable
from inspector.paper.blocks import Block, row, rule, stack, words
from inspector.paper.common import heading
from inspector.paper.page_style import BODY, GRID, SMALL

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


def under(named: Block, lines: Sequence[Block]) -> list[Block]:
    """The lines of a table below the names of its columns, which stand above them on each further page as well."""
    return [named, *(replace(one, again=named) for one in lines)]


def line(shares: Shares, cells: Sequence[Block], width_pt: float, *below: Block) -> Block:
    """A line of a table under its hairline, with what stands below it over the whole width."""
    return stack([rule(width_pt), columns(shares, cells, width_pt).below(GRID / 2), *below]).below(GRID)


def table(of: ProtocolTable, width_pt: float) -> list[Block]:
    """A heading, what is said of the list, its lines; or that there are none, so that nobody wonders."""
    title = [heading(of.title, width_pt)]
    if of.said:
        title.append(words(of.said, width_pt, BODY).kept())
    if not of.lines:
        return [*title, words(of.none, width_pt, BODY)]
    named = names(of.shares, of.columns, width_pt).below(GRID)
    return [*title, *under(named, [_texts(of.shares, cells, width_pt) for cells in of.lines])]


def _texts(shares: Shares, cells: Sequence[str], width_pt: float) -> Block:
    """A line of texts, the first in bold."""
    first, *others = zip(cells, widths(shares, width_pt), strict=True)
    said = [words(first[0], first[1], BODY.in_bold()), *(words(text or "–", wide, BODY) for text, wide in others)]
    return line(shares, said, width_pt)


def together(blocks: Sequence[Block]) -> list[Block]:
    """The blocks kept on one page, as long as one page holds them."""
    return [*(one.kept() for one in blocks[:-1]), *blocks[-1:]]
