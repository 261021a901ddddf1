"""The letter to a holder: what must not be used, what to bring when and where, and what falls due of the rest."""

from collections.abc import Sequence

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.letters import HolderLetter, LetterLine, LetterPiece
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n
from inspector.paper.blocks import Block, boxed, row, rule, space, stack, words
from inspector.paper.common import heading, mark, small_cautions, word_type
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_MARK_MM = 7.0
_MARK_PT = _MARK_MM * MM + 2 * GRID
_TAG_PT = 28 * MM
_DAY_PT = 25 * MM
_ADDRESS_PT = 22 * MM  # room for a window of an envelope, also where nobody wrote an address down


def holder_letter(letter: HolderLetter, address: str, page: PageSize) -> Printed:
    """The letter as a PDF. address: as it is written down today; empty where it is not."""
    width = page.column_pt
    not_to_use = [one for one in letter.pieces if not one.may_use]
    to_use = [one for one in letter.pieces if one.may_use]
    blocks = (
        _to(letter, address, width),
        _intro(letter, width).below(2 * GRID),
        _bring(letter, width).below(3 * GRID),
        *_pieces(tr("Must not be used"), not_to_use, width),
        *_pieces(tr("May be used, but only for what its line says"), to_use, width),
        *_others(letter.others, width),
        small_cautions(letter.imprint.cautions, width).below(3 * GRID),
    )
    return Document(letter.imprint, letter.name, blocks).printed(page)


def _to(letter: HolderLetter, address: str, width_pt: float) -> Block:
    lines = stack([words(letter.name, width_pt, HEAD), *([words(address, width_pt, BODY)] if address else [])])
    return stack([lines, space(max(_ADDRESS_PT - lines.height_pt, 0.0))])


def _intro(letter: HolderLetter, width_pt: float) -> Block:
    count = tr_n(
        "By the club's register {count} piece of recovery gear is with you, is your own, or sits on your vehicle.",
        "By the club's register {count} pieces of recovery gear are with you, are your own, or sit on your vehicle.",
        len(letter.pieces),
    )
    said = tr("Hold this letter against what you have, and tell the equipment officer what does not agree.")
    until = tr("This letter names what waits now and what falls due up to {day}.", day=letter.until)
    return words(f"{count} {until} {said}", width_pt, BODY)


def _bring(letter: HolderLetter, width_pt: float) -> Block:
    """What to bring when and where, in a frame."""
    inner_pt = width_pt - 6 * GRID
    if not letter.bring:
        return boxed(words(tr("Nothing is to be brought now."), inner_pt, BODY.in_bold()), width_pt)
    title = words(tr("Please bring: {tags}", tags=", ".join(letter.bring)), inner_pt, BODY.in_bold())
    where = letter.bring_to or tr("ask the equipment officer where")
    when = letter.bring_by or tr("as soon as you can")
    to = words(tr("To: {place}. By: {day}.", place=where, day=when), inner_pt, BODY)
    return boxed(stack([title, to.below(GRID / 2)]), width_pt)


def _pieces(title: str, pieces: Sequence[LetterPiece], width_pt: float) -> list[Block]:
    if not pieces:
        return []
    return [heading(title, width_pt), *(_piece(one, width_pt) for one in pieces)]


def _piece(one: LetterPiece, width_pt: float) -> Block:
    start = _MARK_PT + _TAG_PT
    text_pt = width_pt - start
    said = [words(_name(one), text_pt, BODY.in_bold()), words(one.says, text_pt, BODY)]
    said += [words(f"{one.why}.", text_pt, SMALL.in_ink(Ink.INK))]
    said += [_due(line, text_pt) for line in one.due]
    if one.do:
        said.append(words(one.do, text_pt, BODY.in_bold().in_ink(Ink.INK if one.may_use else Ink.MARK)))
    outcome = one.outcome if one.may_use or one.outcome in {Outcome.HOLD, Outcome.RETIRE} else Outcome.HOLD
    name = stack([words(one.tag, _TAG_PT - GRID, HEAD), words(_word(one), _TAG_PT - GRID, word_type(outcome, BODY))])
    inner = row((0, mark(outcome, _MARK_MM)), (_MARK_PT, name), (start, stack(said)))
    return stack([inner, rule(width_pt).below(GRID)]).below(GRID)


def _word(one: LetterPiece) -> str:
    """A piece that is lost serves nobody, whatever its verdict."""
    lost = not one.may_use and one.outcome in {Outcome.FIT, Outcome.DERATE}
    return tr("Not at hand") if lost else outcome_word(one.outcome)


def _name(one: LetterPiece) -> str:
    return tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name


def _due(line: LetterLine, width_pt: float) -> Block:
    cells = ((0.0, words(line.day, _DAY_PT, BODY)), (_DAY_PT, words(line.what, width_pt - _DAY_PT, BODY)))
    return row(*cells)


def _others(lines: Sequence[LetterLine], width_pt: float) -> list[Block]:
    if not lines:
        return []
    return [heading(tr("Of yourself"), width_pt), *(_due(one, width_pt) for one in lines)]
