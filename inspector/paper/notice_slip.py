"""The slip at the foot of a retirement notice: cut off, filled in and kept when the piece has been destroyed."""

from inspector.gear.papers import RetirementNotice
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, stack, words
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL
from inspector.paper.press import Press

_LINE_PT = 8 * MM


def slip(notice: RetirementNotice, width_pt: float) -> Block:
    """Cut line, what was destroyed, by whom, how, when, signed."""
    who_pt, date_pt = width_pt * 0.36, width_pt * 0.22
    sign_pt = width_pt - who_pt - date_pt
    who, day = _blank(tr("Destroyed by"), who_pt - 2 * GRID), _blank(tr("Date"), date_pt - 2 * GRID)
    signed = row((0, who), (who_pt, day), (who_pt + date_pt, _blank(tr("Signature"), sign_pt)))
    return stack([cut_line(width_pt), _title(notice, width_pt).below(GRID), _blank(tr("How"), width_pt), signed])


def _title(notice: RetirementNotice, width_pt: float) -> Block:
    right_pt = width_pt * 0.4
    left_pt = width_pt - right_pt - 2 * GRID
    piece = tr("{tag} · {kind}", tag=notice.tag, kind=notice.kind_name)
    left = stack([words(tr("Proof of destruction"), left_pt, HEAD), words(piece, left_pt, BODY.in_bold())])
    number = tr("Belongs to notice {number}", number=notice.imprint.number)
    back = tr("Return this slip to the equipment officer.")
    right = stack([words(number, right_pt, BODY), words(back, right_pt, SMALL)])
    return row((0, left), (left_pt + 2 * GRID, right))


def _blank(label: str, width_pt: float) -> Block:
    return blank(label, width_pt, SMALL, _LINE_PT)


def cut_line(width_pt: float) -> Block:
    """A dashed line with scissors."""

    def draw(press: Press, left: float, top: float) -> None:
        press.text(left, top + 8, "✂", BODY)
        press.dashes(left + 4 * GRID, top + 5, left + width_pt, 4.0)

    return Block(2.5 * GRID, draw)
