"""The voucher of a piece that was sold, given back or made unusable: what it was, how it stood, who signs for it."""

from inspector.drawings.shapes import Ink
from inspector.gear.lists import HistoryRow
from inspector.gear.verdict import Fact
from inspector.gear.voucher import Voucher
from inspector.gear.whereabouts import Where
from inspector.language import show_day, tr, tr_n
from inspector.paper.blocks import Block, blank, boxed, row, stack, words
from inspector.paper.columns import line, names, widths
from inspector.paper.common import facts, heading, listed, mark, may_be_used, small_cautions, word_type
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_MARK_MM = 12.0
_LIFE = (0.16, 0.2, 0.64)


def voucher(paper: Voucher, page: PageSize) -> Printed:
    """The voucher as a PDF."""
    width = page.column_pt
    blocks = (
        _hero(paper, width),
        facts(_told(paper), width, 3).below(2 * GRID),
        boxed(stack([listed(one, width - 4 * GRID) for one in paper.mind]), width).below(2 * GRID),
        heading(tr("The piece"), width),
        facts(paper.piece, width, 4),
        *_life(paper, width),
        _signatures(paper, width),
        small_cautions(paper.imprint.cautions, width).below(2 * GRID),
    )
    return Document(paper.imprint, f"{paper.tag} {paper.kind_name}", blocks).printed(page)


def _hero(paper: Voucher, width_pt: float) -> Block:
    start = _MARK_MM * MM + 3 * GRID
    text_pt = width_pt - start
    last = tr("Last verdict in the club: {headline}", headline=paper.headline)
    verdict = words(last, text_pt, word_type(paper.outcome, BODY.in_bold()))
    plain = (
        "" if may_be_used(paper.outcome) else paper.plain
    )  # a piece that left is told no more until when it may pull
    said = stack([words(_title(paper), text_pt, HEAD), verdict, words(plain, text_pt, BODY)])
    return row((0, mark(paper.outcome, _MARK_MM)), (start, said))


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


def _life(paper: Voucher, width_pt: float) -> list[Block]:
    named = names(_LIFE, (tr("Day"), tr("What"), ""), width_pt).below(GRID)
    rows = [_happened(one, width_pt) for one in paper.life]
    before = tr_n(
        "{count} earlier entry stands in the register.",
        "{count} earlier entries stand in the register.",
        paper.more_count,
    )
    more = [words(before, width_pt, SMALL).below(GRID)] if paper.more_count else []
    return [heading(tr("What the register knows of its life, the newest first"), width_pt), named, *rows, *more]


def _happened(one: HistoryRow, width_pt: float) -> Block:
    day_pt, what_pt, text_pt = widths(_LIFE, width_pt)
    cells = [words(show_day(one.on), day_pt, SMALL), words(one.what, what_pt, SMALL), words(one.text, text_pt, SMALL)]
    return line(_LIFE, cells, width_pt)


def _signatures(paper: Voucher, width_pt: float) -> Block:
    half_pt = (width_pt - 6 * GRID) / 2
    roles = {
        Where.SOLD: (tr("For the club"), tr("Buyer: I have read all of this")),
        Where.GIVEN_BACK: (tr("For the club"), tr("Owner: I have read all of this")),
        Where.DESTROYED: (tr("Made unusable by"), tr("Seen by")),
    }
    ours, theirs = (_signs(title, half_pt) for title in roles[paper.where])
    return row((0, ours), (half_pt + 6 * GRID, theirs)).below(3 * GRID)


def _signs(title: str, width_pt: float) -> Block:
    lines = [blank(one, width_pt, SMALL.in_ink(Ink.INK), 11 * MM) for one in (tr("Signature"), tr("Place and date"))]
    return stack([words(title, width_pt, BODY.in_bold()), *lines])
