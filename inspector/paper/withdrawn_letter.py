"""The letter by which a recall is withdrawn: which letters count no more and why, and how each piece stands now."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.recall import FreedPiece, WithdrawnLetter
from inspector.language import tr, tr_n
from inspector.paper.blocks import Block, row, rule, space, stack, words
from inspector.paper.common import heading, mark, small_cautions, word_type
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_MARK_MM = 8.0
_TAG_PT = 30 * MM
_OUTCOME_PT = 34 * MM
_ADDRESS_PT = 20 * MM  # room for a window of an envelope, also where nobody wrote an address down


def withdrawn_letter(letter: WithdrawnLetter, address: str, page: PageSize) -> Printed:
    """The letter as a PDF. address: as it is written down today; empty where it is not."""
    width = page.column_pt
    reason = [text for text in letter.reason.splitlines() if text.strip()]
    blocks = (
        _to(letter, address, width),
        _head(letter, width).below(GRID),
        heading(tr("Why it was withdrawn"), width),
        *(words(text, width, BODY.in_bold()).below(GRID / 2) for text in reason),
        *_pieces(letter.pieces, width),
        words(_letter_words(), width, BODY).below(3 * GRID),
        small_cautions(letter.imprint.cautions, width).below(2 * GRID),
    )
    return Document(letter.imprint, letter.name, blocks).printed(page)


def _to(letter: WithdrawnLetter, address: str, width_pt: float) -> Block:
    lines = stack([words(letter.name, width_pt, HEAD), *([words(address, width_pt, BODY)] if address else [])])
    return stack([lines, space(max(_ADDRESS_PT - lines.height_pt, 0.0))])


def _head(letter: WithdrawnLetter, width_pt: float) -> Block:
    """What is withdrawn, and which letters count no more."""
    title = tr("The recall {ref} is withdrawn", ref=letter.recall)
    sent = tr_n("The club entered it wrongly. This letter to you counts no more: {letters}.",
                "The club entered it wrongly. These letters to you count no more: {letters}.",
                len(letter.letters), letters="; ".join(letter.letters))  # fmt: skip
    not_all = tr("What stands below as held or retired is so for another reason: go on leaving it out of use.")
    lines = [words(title, width_pt, DISPLAY), words(sent, width_pt, BODY).below(GRID / 2)]
    if letter.notice:
        lines.append(words(tr("It was entered as {notice}.", notice=letter.notice), width_pt, SMALL.in_ink(Ink.INK)))
    return stack([*lines, words(not_all, width_pt, BODY.in_bold()).below(GRID / 2)])


def _pieces(pieces: Sequence[FreedPiece], width_pt: float) -> list[Block]:
    return [heading(tr("How each piece stands now"), width_pt), *(_piece(one, width_pt) for one in pieces)]


def _piece(one: FreedPiece, width_pt: float) -> Block:
    text_pt = width_pt - _TAG_PT - _OUTCOME_PT
    name = tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name
    marks = tr("Its marks: {marks}", marks=one.marks or tr("none written down"))
    said = [words(name, text_pt, BODY.in_bold()), words(f"{marks}.", text_pt, SMALL.in_ink(Ink.INK))]
    said.append(words(one.do, text_pt, BODY.in_bold()))
    cells = [(0.0, words(one.tag, _TAG_PT - GRID, HEAD)), (_TAG_PT + _OUTCOME_PT, stack(said))]
    if one.outcome:
        word = words(outcome_word(one.outcome), _OUTCOME_PT - _MARK_MM * MM - 2 * GRID, word_type(one.outcome, BODY))
        stands = row((0, mark(one.outcome, _MARK_MM)), (_MARK_MM * MM + GRID, word))
        cells.append((_TAG_PT, stands))
    return stack([row(*cells), rule(width_pt).below(GRID)]).below(GRID)


def _letter_words() -> str:
    """What the letter is not, and what to do with a piece that is on its way."""
    return tr(
        "This letter takes back what the club wrote, and nothing else. Whoever has a notice from the maker or from a "
        "regulator follows that one and tells the equipment officer. What was sent back is handed out by the club."
    )
