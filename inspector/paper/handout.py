"""The handout: one topic of the trainer's bench on a single sheet, picture, sum, sources and cautions."""

from collections.abc import Sequence

from inspector.drawings.bench_picture import bench_picture
from inspector.gear.bench import BenchFigure, BenchLine, Worked
from inspector.gear.papers import Handout
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, picture, row, stack, words
from inspector.paper.common import cautions, heading
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed
from inspector.units import System

_PICTURE_MM = 118.0
_SCALES = (1.0, 0.9, 0.8, 0.7)


def handout(sheet: Handout, page: PageSize, system: System = System.METRIC) -> Printed:
    """The handout as a PDF on one sheet; the picture gives way where the words need room. system: of the picture."""
    made = [_document(sheet, page, system, scale) for scale in _SCALES]
    return next((one for one in made if one.fits_one_page(page)), made[-1]).printed(page)


def _document(sheet: Handout, page: PageSize, system: System, scale: float) -> Document:
    width, worked = page.column_pt, sheet.worked
    blocks = (
        stack([words(worked.question, width, HEAD), words(worked.means, width, BODY.in_bold()).below(GRID)]),
        cautions(worked.cautions, width).below(2 * GRID),
        _picture_and_figures(sheet, width, system, scale).below(3 * GRID),
        heading(tr("The sum"), width),
        _in_two(worked.lines, width),
        heading(tr("What the sum leaves out"), width),
        words("; ".join(worked.left_out) + ".", width, BODY),
        heading(tr("Where it comes from"), width),
        _sources(worked, width),
    )
    return Document(sheet.imprint, f"{worked.title}, {show_day(sheet.imprint.on)}", blocks)


def _picture_and_figures(sheet: Handout, width_pt: float, system: System, scale: float) -> Block:
    """The picture, and beside it the figures that stand for this topic with how each came."""
    drawn_pt = _PICTURE_MM * MM * scale
    start = drawn_pt + 4 * GRID
    room = width_pt - start
    figures = [_figure(one, room).below(GRID) for one in sheet.worked.figures]
    lent = [words(" ".join(sheet.from_piece), room, SMALL).below(GRID)] if sheet.from_piece else []
    shown = picture(bench_picture(sheet.worked, system), scale)
    return row((0, shown), (start, stack([*figures, *lent])))


def _figure(figure: BenchFigure, width_pt: float) -> Block:
    said = tr("{label}: {text}", label=figure.label, text=figure.text)
    return stack([words(said, width_pt, BODY.in_bold()), words(figure.came, width_pt, SMALL)])


def _in_two(lines: Sequence[BenchLine], width_pt: float) -> Block:
    """The sums in two columns, read down the left one first."""
    half = (width_pt - 4 * GRID) / 2
    middle = -(-len(lines) // 2)
    left, right = (stack([_line(one, half).below(GRID) for one in some]) for some in (lines[:middle], lines[middle:]))
    return row((0, left), (half + 4 * GRID, right))


def _line(line: BenchLine, width_pt: float) -> Block:
    result = tr("{what}: {result}", what=line.says, result=line.result)
    filled = [words(tr("with {figures}", figures=line.filled), width_pt, SMALL)] if line.filled else []
    return stack([words(result, width_pt, BODY.in_bold()), words(line.formula, width_pt, SMALL), *filled])


def _sources(worked: Worked, width_pt: float) -> Block:
    """The sources of the figures by what they stand for, then those of the sums, each once."""
    by_source: dict[str, list[str]] = {}
    for figure in worked.figures:
        if figure.source:
            by_source.setdefault(figure.source, []).append(figure.label)
    said = [tr("{labels}: {source}.", labels=", ".join(labels), source=source) for source, labels in by_source.items()]
    said.append(tr("The sums: {sources}.", sources="; ".join(worked.sources)))
    return stack([words(one, width_pt, SMALL) for one in said])
