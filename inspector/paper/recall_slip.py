"""The slip of a recall letter to cut off: for each piece whether it is there, gone or destroyed, signed and sent."""

from collections.abc import Sequence

from inspector.drawings.shapes import Ink
from inspector.gear.recall import CalledPiece, RecallLetter
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, rule, stack, words
from inspector.paper.form import tick_box
from inspector.paper.notice_slip import cut_line
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL
from inspector.paper.press import Press

_BOX_PT = 5.0 * MM
_LINE_PT = 8 * MM
_SHARES = (0.34, 0.2, 0.26, 0.2)  # of the width: piece, and what may be answered
_MOST_ON_ONE_SLIP = 8


def answer_slip(letter: RecallLetter, width_pt: float) -> list[Block]:
    """One block at the foot of a page; of many pieces a list with its head, which may run over pages."""
    head = [cut_line(width_pt), _title(letter, width_pt).below(GRID), _answers(width_pt).below(GRID)]
    lines = [_line(one, number, width_pt) for number, one in enumerate(letter.pieces)]
    foot = [_to_whom(width_pt).below(GRID), _signed(width_pt)]
    if len(lines) <= _MOST_ON_ONE_SLIP:
        whole = stack([*head, *lines, *foot])
        return [Block(whole.height_pt, whole.draw, gap_pt=3 * GRID, at_foot=True)]
    return [stack(head).below(3 * GRID).kept(), *lines[:-1], stack([lines[-1], *foot])]


def _title(letter: RecallLetter, width_pt: float) -> Block:
    right_pt = width_pt * 0.42
    left_pt = width_pt - right_pt - 2 * GRID
    left = stack([words(tr("My answer"), left_pt, HEAD), words(letter.name, left_pt, BODY.in_bold())])
    number = tr("Belongs to letter {number}", number=letter.imprint.number)
    back = tr("Return this slip to the equipment officer of {club}.", club=letter.imprint.club)
    right = stack([words(number, right_pt, BODY.in_bold()), words(back, right_pt, SMALL.in_ink(Ink.INK))])
    return row((0, left), (left_pt + 2 * GRID, right))


def _answers(width_pt: float) -> Block:
    """What the three boxes of each line mean."""
    said = (tr("Piece"), tr("I have it, out of use"), tr("I do not have it any more"), tr("It is destroyed"))
    return row(*zip(_starts(width_pt), _texts(said, width_pt), strict=True))


def _texts(said: Sequence[str], width_pt: float) -> list[Block]:
    return [
        words(text, share * width_pt - GRID, SMALL.in_ink(Ink.INK)) for text, share in zip(said, _SHARES, strict=True)
    ]


def _starts(width_pt: float) -> list[float]:
    return [sum(_SHARES[:number]) * width_pt for number in range(len(_SHARES))]


def _line(one: CalledPiece, number: int, width_pt: float) -> Block:
    start, *others = _starts(width_pt)
    piece = tr("{tag} · {kind}", tag=one.tag, kind=one.kind_name)
    name = words(piece, _SHARES[0] * width_pt - GRID, BODY.in_bold())
    told = (tr("I have it"), tr("not any more"), tr("destroyed"))
    boxes = [
        (x, _box(f"{number}.{key}", f"{one.tag}: {said}"))
        for x, key, said in zip(others, ("have", "gone", "destroyed"), told, strict=True)
    ]
    return stack([rule(width_pt), row((start, name), *boxes).below(GRID / 2)]).below(GRID / 2)


def _box(name: str, says: str) -> Block:
    def draw(press: Press, left: float, top: float) -> None:
        tick_box(press, left, top, _BOX_PT, name, says)

    return Block(_BOX_PT, draw)


def _to_whom(width_pt: float) -> Block:
    label = tr("To whom did it go, or how was it destroyed, and when?")
    return blank(label, width_pt, SMALL.in_ink(Ink.INK), _LINE_PT)


def _signed(width_pt: float) -> Block:
    half_pt = (width_pt - 4 * GRID) / 2
    left, right = (blank(one, half_pt, SMALL.in_ink(Ink.INK), _LINE_PT) for one in (tr("Date"), tr("Signature")))
    return row((0, left), (half_pt + 4 * GRID, right))
