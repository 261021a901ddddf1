"""The retirement notice: one piece, why it may never be used again, and how to make sure of it."""

from collections.abc import Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.papers import RetirementNotice
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.paper.blocks import Block, row, stack, words
from inspector.paper.common import facts, heading, mark, small_cautions
from inspector.paper.document import Document
from inspector.paper.notice_reasons import why
from inspector.paper.notice_slip import slip
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.piece_pictures import Pictured, pictures
from inspector.paper.printed import Printed
from inspector.units import System

_MARK_MM = 20.0
_SCALES = (1.0, 0.9, 0.8)  # of the pictures


def retirement_notice(notice: RetirementNotice, page: PageSize, system: System = System.METRIC) -> Printed:
    """The notice as a PDF. system: the units of the figures in its pictures, which give way for one page."""
    made = [_document(notice, page, system, scale) for scale in _SCALES]
    return next((one for one in made if one.fits_one_page(page)), made[0]).printed(page)


def _document(notice: RetirementNotice, page: PageSize, system: System, scale: float) -> Document:
    width = page.column_pt
    blocks = (
        _hero(notice, width),
        *_to_owner(notice, width),
        facts(_piece_facts(notice), width, 4).below(2 * GRID),
        *why(notice.reasons, width),
        *(block.below(2 * GRID) for block in pictures(_pictured(notice), width, system, scale)),
        *_sums(notice, width),
        *_terms(notice, width),
        _next_steps(notice, width).below(2.5 * GRID).kept(),  # a second page says what the slip is for
        small_cautions(notice.imprint.cautions, width).below(2 * GRID).kept(),
        _at_foot(slip(notice, width)),
    )
    return Document(notice.imprint, f"{notice.tag} {notice.kind_name}", blocks)


def _pictured(notice: RetirementNotice) -> Pictured:
    one = notice
    return Pictured(one.kind, one.kind_name, one.family, one.retired_on, one.wall, one.capacity, one.damage, one.pin)


def _hero(notice: RetirementNotice, width_pt: float) -> Block:
    """The mark, the words nobody can miss, the piece, and what it means in one sentence."""
    start = _MARK_MM * MM + 4 * GRID
    text_pt = width_pt - start
    said = stack(
        [
            words(tr("RETIRED – do not use again"), text_pt, DISPLAY.in_ink(Ink.MARK)),
            words(f"{notice.tag} · {notice.kind_name}", text_pt, HEAD),
            words(notice.plain, text_pt, BODY),
        ]
    )
    return row((0, mark(Outcome.RETIRE, _MARK_MM)), (start, said))


def _to_owner(notice: RetirementNotice, width_pt: float) -> list[Block]:
    """To whom it is addressed where the piece is not the club's: the club's verdict binds its own trips alone."""
    if not notice.addressed_to:
        return []
    said = tr(
        "It is yours, and you decide what becomes of it. On trips of {club} it does not go. The club asks you never to "
        "use, lend or sell it again, and to make it unusable.",
        club=notice.imprint.club,
    )
    address = words(tr("To its owner, {name}", name=notice.addressed_to), width_pt, BODY.in_bold())
    return [address.below(2 * GRID).kept(), words(said, width_pt, BODY).below(GRID / 2)]


def _piece_facts(notice: RetirementNotice) -> list[Fact]:
    known = [Fact(tr("Owner"), notice.owner), Fact(tr("Retired on"), show_day(notice.retired_on))]
    return [*known, *notice.piece]


def _sums(notice: RetirementNotice, width_pt: float) -> list[Block]:
    if not notice.sums:
        return []
    title = words(tr("The figures behind it"), width_pt, BODY.in_bold())
    return [title.below(2 * GRID).kept(), facts(notice.sums, width_pt, 4, SMALL.in_ink(Ink.INK)).below(GRID / 2)]


def _terms(notice: RetirementNotice, width_pt: float) -> list[Block]:
    """What the trade's words above mean, in one small paragraph."""
    if not notice.terms:
        return []
    said = "; ".join(tr("{word}: {meaning}", word=one.label, meaning=one.text) for one in notice.terms)
    return [words(tr("Words of the trade. {said}.", said=said), width_pt, SMALL.in_ink(Ink.INK)).below(GRID)]


def _next_steps(notice: RetirementNotice, width_pt: float) -> Block:
    """Four short texts in two columns."""
    half_pt = (width_pt - 4 * GRID) / 2
    evidence = tr("While the piece is evidence of an incident it is kept whole, marked and locked away. Ask first.")
    left = (Fact(tr("Never again"), notice.never_again), Fact(tr("Replace it by"), notice.replace_by))
    destroy = tr("The club asks: make it unusable") if notice.addressed_to else tr("Make it unusable")
    right = (Fact(destroy, notice.destroy), Fact(tr("But not yet, if"), evidence))
    columns = row((0, _said(left, half_pt)), (half_pt + 4 * GRID, _said(right, half_pt)))
    return stack([heading(tr("What to do now"), width_pt).below(0), columns])


def _said(given: Sequence[Fact], width_pt: float) -> Block:
    """Short texts below one another, each under its own bold word."""
    return stack([part.below(GRID / 2) for fact in given for part in _texts(fact, width_pt)])


def _texts(fact: Fact, width_pt: float) -> tuple[Block, Block]:
    return words(fact.label, width_pt, BODY.in_bold()), words(fact.text or "–", width_pt, BODY)


def _at_foot(block: Block) -> Block:
    return Block(block.height_pt, block.draw, gap_pt=3 * GRID, at_foot=True)
