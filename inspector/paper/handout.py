"""The handout: one topic of the trainer's bench on a single sheet, picture, sum, sources and cautions."""

from collections.abc import Sequence

from inspector.drawings.bench_picture import bench_picture
from inspector.drawings.shapes import Ink
from inspector.gear.bench import BenchFigure, BenchLine, Worked
from inspector.gear.papers import Handout
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, boxed, picture, row, rule, stack, words
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed
from inspector.units import System

_PICTURE_MM = 118.0
_SCALES = (1.0, 0.9, 0.8)
_PLAIN = SMALL.in_ink(Ink.INK)
_STRONG = _PLAIN.in_bold()


def handout(sheet: Handout, page: PageSize, system: System = System.METRIC) -> Printed:
    """The handout as a PDF on one sheet; the picture gives way where the words need room. system: of the picture."""
    made = [_document(sheet, page, system, scale) for scale in _SCALES]
    return next((one for one in made if one.fits_one_page(page)), made[-1]).printed(page)


def _document(sheet: Handout, page: PageSize, system: System, scale: float) -> Document:
    width, worked = page.column_pt, sheet.worked
    blocks = (
        stack([words(worked.question, width, HEAD), words(worked.means, width, BODY).below(GRID)]),
        _cautions(worked.cautions, width).below(1.5 * GRID),
        _picture_and_figures(sheet, width, system, scale).below(2 * GRID),
        _headed(tr("The sum"), _in_two(worked.lines, width), width),
        _headed(tr("Where it comes from"), _sources(worked, width), width),
    )
    return Document(sheet.imprint, f"{worked.title}, {show_day(sheet.imprint.on)}", blocks)


def _cautions(lines: Sequence[str], width_pt: float) -> Block:
    """All the cautions in a frame, in the small type of a full sheet."""
    inner_pt = width_pt - 6 * GRID
    title = words(tr("Read this first"), inner_pt, BODY.in_bold())
    return boxed(stack([title, *(_listed(line, inner_pt) for line in lines)]), width_pt)


def _headed(head: str, inner: Block, width_pt: float) -> Block:
    return stack([rule(width_pt), words(head, width_pt, BODY.in_bold()).below(GRID / 2), inner]).below(GRID)


def _listed(text: str, width_pt: float) -> Block:
    return row((0, words("–", 3 * GRID, _PLAIN)), (3 * GRID, words(text, width_pt - 3 * GRID, _PLAIN)))


def _picture_and_figures(sheet: Handout, width_pt: float, system: System, scale: float) -> Block:
    """The picture; beside it the figures with how each came, and what the sum leaves out."""
    drawn_pt = _PICTURE_MM * MM * scale
    start = drawn_pt + 4 * GRID
    room = width_pt - start
    lent = [words(" ".join(sheet.from_piece), room, _PLAIN).below(GRID / 2)] if sheet.from_piece else []
    beside = [
        words(tr("The figures"), room, BODY.in_bold()),
        *(_figure(one, room) for one in sheet.worked.figures),
        *lent,
        words(tr("What the sum leaves out"), room, BODY.in_bold()).below(GRID),
        *(_listed(one, room) for one in sheet.worked.left_out),
    ]
    return row((0, picture(bench_picture(sheet.worked, system), scale)), (start, stack(beside)))


def _figure(figure: BenchFigure, width_pt: float) -> Block:
    said = tr("{label}: {text} – {came}", label=figure.label, text=figure.text, came=figure.came)
    return words(said, width_pt, _PLAIN)


def _in_two(lines: Sequence[BenchLine], width_pt: float) -> Block:
    """The sums in two columns, read down the left one first."""
    half = (width_pt - 4 * GRID) / 2
    middle = -(-len(lines) // 2)
    left, right = (
        stack([_line(one, half).below(GRID / 2) for one in some]) for some in (lines[:middle], lines[middle:])
    )
    return row((0, left), (half + 4 * GRID, right))


def _line(line: BenchLine, width_pt: float) -> Block:
    result = tr("{what}: {result}", what=line.says, result=line.result)
    filled = tr("{formula}, with {figures}", formula=line.formula, figures=line.filled) if line.filled else line.formula
    return stack([words(result, width_pt, _STRONG), words(filled, width_pt, SMALL)])


def _sources(worked: Worked, width_pt: float) -> Block:
    """The sources of the figures by what they stand for, then those of the sums, each once."""
    by_source: dict[str, list[str]] = {}
    for figure in worked.figures:
        if figure.source:
            by_source.setdefault(figure.source, []).append(figure.label)
    said = [tr("{labels}: {source}.", labels=", ".join(labels), source=source) for source, labels in by_source.items()]
    said.append(tr("The sums: {sources}.", sources="; ".join(worked.sources)))
    return stack([words(one, width_pt, SMALL) for one in said])
