"""The recall letter: what must not be used any more and why, how to send it back, and a slip to answer on."""

from collections.abc import Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.recall import CalledPiece, RecallLetter
from inspector.language import tr, tr_n
from inspector.paper.blocks import Block, boxed, row, rule, space, stack, words
from inspector.paper.common import heading, mark, small_cautions
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed
from inspector.paper.recall_slip import answer_slip

_MARK_MM = 18.0
_TAG_PT = 30 * MM
_ADDRESS_PT = 20 * MM  # room for a window of an envelope, also where nobody wrote an address down


def recall_letter(letter: RecallLetter, address: str, page: PageSize) -> Printed:
    """The letter as a PDF. address: as it is written down today; empty where it is not."""
    width = page.column_pt
    blocks = (
        _to(letter, address, width),
        _stop(letter, width).below(GRID),
        *_why(letter, width),
        *_pieces(letter.pieces, width),
        _send(letter, width).below(3 * GRID),
        words(_letter_words(letter), width, BODY).below(2 * GRID),
        small_cautions(letter.imprint.cautions, width).below(2 * GRID),
        *answer_slip(letter, width),
    )
    return Document(letter.imprint, letter.name, blocks).printed(page)


def _to(letter: RecallLetter, address: str, width_pt: float) -> Block:
    lines = stack([words(letter.name, width_pt, HEAD), *([words(address, width_pt, BODY)] if address else [])])
    return stack([lines, space(max(_ADDRESS_PT - lines.height_pt, 0.0))])


def _stop(letter: RecallLetter, width_pt: float) -> Block:
    """What nobody can miss: stop now, and which pieces."""
    start = _MARK_MM * MM + 4 * GRID
    text_pt = width_pt - start
    count = tr_n("Stop using this piece now", "Stop using these {count} pieces now", len(letter.pieces))
    tags = ", ".join(one.tag for one in letter.pieces)
    said = tr("Do not use, lend, sell or repair it, and tell everybody who might take it with them.")
    again = tr("This is a reminder: no answer of yours has come in yet.") if letter.is_reminder else ""
    lines = [words(count, text_pt, DISPLAY.in_ink(Ink.MARK)), words(tags, text_pt, HEAD), words(said, text_pt, BODY)]
    lines += [words(again, text_pt, BODY.in_bold())] if again else []
    return row((0, mark(Outcome.HOLD, _MARK_MM)), (start, stack(lines)))


def _why(letter: RecallLetter, width_pt: float) -> list[Block]:
    """The reason as it was typed, line by line."""
    lines = [text for text in letter.reason.splitlines() if text.strip()]
    made = [heading(tr("Why"), width_pt), *(words(text, width_pt, BODY.in_bold()).below(GRID / 2) for text in lines)]
    if letter.notice:
        whose = tr("Recall {ref}: {notice}.", ref=letter.recall, notice=letter.notice)
        made.append(words(whose, width_pt, SMALL.in_ink(Ink.INK)).below(GRID / 2))
    asked = [text for text in letter.remedy.splitlines() if text.strip()]
    if asked:
        made.append(heading(tr("What the notice asks for"), width_pt))
        made += [words(text, width_pt, BODY).below(GRID / 2) for text in asked]
    return made


def _pieces(pieces: Sequence[CalledPiece], width_pt: float) -> list[Block]:
    return [heading(tr("What is called in"), width_pt), *(_piece(one, width_pt) for one in pieces)]


def _piece(one: CalledPiece, width_pt: float) -> Block:
    text_pt = width_pt - _TAG_PT
    name = tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name
    marks = tr("Its marks: {marks}", marks=one.marks or tr("none written down"))
    said = [words(name, text_pt, BODY.in_bold()), words(f"{marks}. {one.why}.", text_pt, SMALL.in_ink(Ink.INK))]
    said.append(words(one.do, text_pt, BODY.in_bold().in_ink(Ink.MARK)))
    inner = row((0, words(one.tag, _TAG_PT - GRID, HEAD)), (_TAG_PT, stack(said)))
    return stack([inner, rule(width_pt).below(GRID)]).below(GRID)


def _send(letter: RecallLetter, width_pt: float) -> Block:
    """Where to and by when, in a frame."""
    inner_pt = width_pt - 6 * GRID
    where = letter.send_to or tr("ask the equipment officer where")
    when = letter.send_by or tr("as soon as you can")
    title = words(tr("How to send it back"), inner_pt, BODY.in_bold())
    to = words(tr("To: {place}. By: {day}.", place=where, day=when), inner_pt, HEAD)
    how = tr("Tie a note “do not use” with this letter's number to it. Send the slip back even if you have it no more.")
    return boxed(stack([title, to.below(GRID / 2), words(how, inner_pt, BODY).below(GRID / 2)]), width_pt)


def _letter_words(letter: RecallLetter) -> str:
    """What becomes of the piece, and what the letter is not."""
    return tr(
        "All letters of this call belong to {call}. Until a competent person has looked at a piece and the club has "
        "told you so, it stays out of use. This letter says what the club knows; it is no word of the maker.",
        call=letter.call,
    )
