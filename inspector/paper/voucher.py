"""The voucher of a piece that was sold, given back or made unusable: what it was, how it stood, who signs for it."""

from bisect import bisect
from collections import Counter
from collections.abc import Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.lists import HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact
from inspector.gear.voucher import Voucher
from inspector.gear.whereabouts import Where
from inspector.language import show_day, tr, within
from inspector.paper.blocks import Block, blank, boxed, row, stack, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import facts, heading, listed, mark, may_be_used, small_cautions, word_type
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_MARK_MM = 12.0
_LIFE = (0.16, 0.2, 0.64)


def voucher(paper: Voucher, page: PageSize) -> Printed:
    """The voucher as a PDF. Of a long life only the newest: who signs has all that he signs on the same sheet."""
    whole = _document(paper, page, len(paper.life))
    return (whole if whole.fits_one_page(page) else _document(paper, page, _room(paper, page))).printed(page)


def _room(paper: Voucher, page: PageSize) -> int:
    """How many rows of its life there is room for beside all else."""
    return bisect(
        range(1, len(paper.life)), False, key=lambda count: not _document(paper, page, count).fits_one_page(page)
    )


def _document(paper: Voucher, page: PageSize, row_count: int) -> Document:
    width = page.column_pt
    inner = width - 6 * GRID
    blocks = (
        _hero(paper, width),
        facts(_told(paper), width, 3).below(2 * GRID),
        boxed(stack([listed(one, inner) for one in paper.mind]), width).below(2 * GRID),
        heading(tr("The piece"), width),
        facts(paper.piece, width, 4),
        *_life(paper.life[:row_count], paper.life[row_count:], width),
        small_cautions(paper.imprint.cautions, width).below(2 * GRID).kept(),
        _signatures(paper, width),
    )
    return Document(paper.imprint, f"{paper.tag} {paper.kind_name}", blocks)


def _hero(paper: Voucher, width_pt: float) -> Block:
    has_mark = not may_be_used(paper.outcome)  # on what leaves, a mark of fitness would read as a promise
    start = _MARK_MM * MM + 3 * GRID if has_mark else 0.0
    text_pt = width_pt - start
    last = tr("Last verdict in the club: {headline}", headline=paper.headline)
    verdict = words(last, text_pt, word_type(paper.outcome, BODY.in_bold()))
    # what left is told no more until when it may pull, nor what is unusable to be made so
    plain = paper.plain if has_mark and paper.where is not Where.DESTROYED else ""
    said = stack([words(_title(paper), text_pt, HEAD), verdict, words(plain, text_pt, BODY)])
    return row((0, mark(paper.outcome, _MARK_MM)), (start, said)) if has_mark else said


def _title(paper: Voucher) -> str:
    said = {
        Where.SOLD: tr("{tag} · {kind} was sold"),
        Where.GIVEN_BACK: tr("{tag} · {kind} went back to its owner"),
        Where.DESTROYED: tr("{tag} · {kind} was made unusable"),
    }
    return said[paper.where].format(tag=paper.tag, kind=paper.kind_name)


def _told(paper: Voucher) -> list[Fact]:
    to = {Where.SOLD: tr("Bought by"), Where.GIVEN_BACK: tr("Owner"), Where.DESTROYED: tr("Seen by")}[paper.where]
    how = tr("How") if paper.where is Where.DESTROYED else tr("Said of it")
    return [
        Fact(tr("Day"), show_day(paper.on)),
        Fact(to, paper.to or "–"),
        Fact(tr("Written down by"), paper.by),
        Fact(how, paper.how or "–"),
    ]


def _life(shown: Sequence[HistoryRow], before: Sequence[HistoryRow], width_pt: float) -> list[Block]:
    title = heading(tr("What the register knows of its life, the newest first"), width_pt)
    named = names(_LIFE, (tr("Day"), tr("What"), ""), width_pt).below(GRID)
    table = [named, *(_happened(one, width_pt) for one in shown)] if shown else []
    return [title, *table, *_before(before, width_pt)]


def _before(rows: Sequence[HistoryRow], width_pt: float) -> list[Block]:
    """What there is no room for, counted, so that nobody takes the list for all of its life."""
    if not rows:
        return []
    counted = ", ".join(f"{count} × {within(what)}" for what, count in Counter(one.what for one in rows).items())
    first = min(one.on for one in rows)
    said = tr("Before that, from {day} on, the register has: {counted}.", day=show_day(first), counted=counted)
    return [words(said, width_pt, SMALL.in_ink(Ink.INK)).below(GRID)]


def _happened(one: HistoryRow, width_pt: float) -> Block:
    day_pt, what_pt, text_pt = widths(_LIFE, width_pt)
    cells = [words(show_day(one.on), day_pt, SMALL), words(one.what, what_pt, SMALL), words(one.text, text_pt, SMALL)]
    return line(_LIFE, cells, width_pt)


def _signatures(paper: Voucher, width_pt: float) -> Block:
    """Two lines to sign; who takes a piece that must not be used signs that he knows it."""
    half_pt = (width_pt - 6 * GRID) / 2
    knows = {
        Outcome.RETIRE: tr("I have read all of this. It is RETIRED"),
        Outcome.HOLD: tr("I have read all of this. It is ON HOLD"),
    }.get(paper.outcome, tr("I have read all of this"))
    roles = {
        Where.SOLD: (tr("For the club"), tr("Buyer: {knows}", knows=knows)),
        Where.GIVEN_BACK: (tr("For the club"), tr("Owner: {knows}", knows=knows)),
        Where.DESTROYED: (tr("Made unusable by"), tr("Seen by")),
    }
    ours, theirs = (_signs(title, half_pt) for title in roles[paper.where])
    return row((0, ours), (half_pt + 6 * GRID, theirs)).below(3 * GRID)


def _signs(title: str, width_pt: float) -> Block:
    lines = [blank(one, width_pt, SMALL.in_ink(Ink.INK), 11 * MM) for one in (tr("Signature"), tr("Place and date"))]
    return stack([words(title, width_pt, BODY.in_bold()), *lines])
