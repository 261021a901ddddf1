"""The report on all the gear: the answer on the first page, then pictures, then the lists behind it."""

from collections.abc import Sequence

from inspector.drawings.age_bars import age_bars
from inspector.drawings.kind_marks import kind_marks
from inspector.drawings.marks import outcome_meaning, outcome_word
from inspector.drawings.retire_line import retire_line
from inspector.drawings.shapes import Drawing, Ink
from inspector.gear.outcome import Outcome
from inspector.gear.register_report import RegisterReport
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, picture, row, stack, words
from inspector.paper.columns import table
from inspector.paper.common import cautions, heading, listed, mark, word_type
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, SMALL, PageSize, Type
from inspector.paper.printed import Printed

_ORDER = (Outcome.FIT, Outcome.DERATE, Outcome.HOLD, Outcome.RETIRE)
_MARK_MM = 16.0
_NUMBER = Type(34.0, bold=True)
_MOST_ENDINGS = 24  # of a picture that stands on one page; the list has all of them


def register_report(report: RegisterReport, page: PageSize) -> Printed:
    """The report as a PDF."""
    width = page.column_pt
    blocks = (
        _answer(report, width),
        _counts(report, width).below(3 * GRID),
        *_sentences(tr("To decide"), report.decide, tr("Nothing is open."), width),
        *_buy(report, width),
        cautions(report.imprint.cautions, width).below(3 * GRID),
        *_pictures(report, width),
        *(block for one in report.tables for block in table(one, width)),
    )
    subject = tr("What stands on {day}", day=show_day(report.imprint.on))
    return Document(report.imprint, subject, blocks).printed(page)


def _answer(report: RegisterReport, width_pt: float) -> Block:
    """The first sentence as large as a title, the others below it."""
    first, *others = report.answer
    return stack([words(first, width_pt, DISPLAY), *(words(one, width_pt, HEAD).below(GRID) for one in others)])


def _counts(report: RegisterReport, width_pt: float) -> Block:
    """How many of each outcome, each beside its mark and word."""
    cell_pt = width_pt / len(_ORDER)
    cells = [(at * cell_pt, _count(outcome, report, cell_pt - 2 * GRID)) for at, outcome in enumerate(_ORDER)]
    return row(*cells)


def _count(outcome: Outcome, report: RegisterReport, width_pt: float) -> Block:
    start = _MARK_MM * MM + 2 * GRID
    number = words(str(report.all.of(outcome)), width_pt - start, word_type(outcome, _NUMBER))
    head = row((0, mark(outcome, _MARK_MM)), (start, number))
    word = words(outcome_word(outcome), width_pt, word_type(outcome, HEAD))
    return stack([head, word.below(GRID), words(outcome_meaning(outcome), width_pt, SMALL.in_ink(Ink.INK))])


def _sentences(title: str, said: Sequence[str], none: str, width_pt: float) -> list[Block]:
    lines = [listed(one, width_pt) for one in said] or [words(none, width_pt, BODY)]
    return [heading(title, width_pt), *lines]


def _buy(report: RegisterReport, width_pt: float) -> list[Block]:
    none = tr("Nothing of the club's own was retired since {day}, and within a year time alone retires nothing.")
    blocks = _sentences(tr("To replace"), report.buy, none.format(day=show_day(report.since)), width_pt)
    if not report.buy:
        return blocks
    told = tr("What was bought since nobody tells the register: hold it against the list of what was booked in.")
    return [*blocks, words(told, width_pt, SMALL).below(GRID)]


def _pictures(report: RegisterReport, width_pt: float) -> list[Block]:
    """The gear by kind, its age, and the years to come; none of them without gear."""
    shown = [kind_marks(report.kinds, width_pt / MM)] if report.kinds else []
    if any(one.count for one in report.ages):
        shown.append(age_bars(report.ages, width_pt / MM / 2))
    some = report.endings[:_MOST_ENDINGS]
    if some:
        shown.append(retire_line(some, report.imprint.on, report.horizon).drawing)
    return [block for one in shown for block in _titled(one, width_pt)]


def _titled(drawing: Drawing, width_pt: float) -> list[Block]:
    scale = min(1.0, width_pt / (drawing.width_mm * MM))
    return [heading(drawing.title, width_pt), picture(drawing, scale)]
