"""The lending slip: back by when, each piece with what it may be used for, what to tell afterwards, and signatures."""

from collections.abc import Iterator, Sequence

from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.lending_slip import LendingSlip, LentPiece
from inspector.gear.verdict import Fact
from inspector.language import tr
from inspector.paper.blocks import Block, blank, boxed, row, rule, space, stack, words
from inspector.paper.common import facts, heading, listed, mark, small_cautions, word_type
from inspector.paper.document import Document
from inspector.paper.page_style import BODY, DISPLAY, GRID, HEAD, MM, SMALL, PageSize
from inspector.paper.printed import Printed

_MARK_MM = 7.0
_MARK_PT = _MARK_MM * MM + 2 * GRID
_TAG_PT = 32 * MM
_STATE_PT = 42 * MM
_LINE_PT = 8 * MM


def lending_slip(slip: LendingSlip, page: PageSize) -> Printed:
    """The slip as a PDF."""
    width = page.column_pt
    blocks = (
        _hero(slip, width),
        facts(_told(slip), width, 3).below(2 * GRID),
        heading(tr("What goes out"), width),
        _columns(width),
        *(_piece(one, slip, width) for one in slip.pieces),
        small_cautions(slip.imprint.cautions, width).below(2 * GRID).kept(),
        _agreed(slip, width).below(2 * GRID),
        *_back(width),
    )
    return Document(slip.imprint, tr("Lending slip of {name}", name=slip.name), blocks).printed(page)


def _hero(slip: LendingSlip, width_pt: float) -> Block:
    day = tr("Bring back by {day}", day=slip.bring_back) if slip.bring_back else tr("Bring back when asked")
    return stack([words(day, width_pt, DISPLAY), words(slip.name, width_pt, HEAD)])


def _told(slip: LendingSlip) -> Sequence[Fact]:
    told = [
        Fact(tr("Trip"), slip.trip),
        Fact(tr("Handed out"), slip.lent),
        Fact(tr("Handed out by"), slip.handed_by),
        Fact(tr("Pieces"), str(len(slip.pieces))),
    ]
    return [one for one in told if one.text]


def _columns(width_pt: float) -> Block:
    use, state = tr("What it is, and what it may be used for"), tr("State as both see it")
    start = _MARK_PT + _TAG_PT
    said = words(use, width_pt - start - _STATE_PT, SMALL)
    return row((start, said), (width_pt - _STATE_PT, words(state, _STATE_PT, SMALL))).kept()


def _piece(one: LentPiece, slip: LendingSlip, width_pt: float) -> Block:
    """A piece: its mark and tag, what it is and may be used for, room for its state as both see it."""
    start = _MARK_PT + _TAG_PT
    text_pt = width_pt - start - _STATE_PT - 2 * GRID
    type_ = word_type(one.outcome, BODY)
    name = stack([words(one.tag, _TAG_PT - GRID, HEAD), words(outcome_word(one.outcome), _TAG_PT - GRID, type_)])
    said = stack([_line(text, strong, text_pt, one) for text, strong in _said(one, slip) if text])
    state = stack([_empty(_STATE_PT), _empty(_STATE_PT)])
    cells = row((0, mark(one.outcome, _MARK_MM)), (_MARK_PT, name), (start, said), (width_pt - _STATE_PT, state))
    return stack([cells, rule(width_pt).below(GRID)]).below(GRID)


def _line(text: str, strong: bool, width_pt: float, one: LentPiece) -> Block:
    type_ = BODY.in_bold() if strong else BODY
    return words(text, width_pt, type_ if one.may_use or not strong else type_.in_ink(Ink.MARK))


def _said(one: LentPiece, slip: LendingSlip) -> Iterator[tuple[str, bool]]:
    """Each line, and whether it is strong."""
    yield tr("{kind}, {marked}", kind=one.kind_name, marked=one.marked) if one.marked else one.kind_name, False
    yield one.limit, True
    yield f"{one.may_for} {one.not_for}".strip(), True
    yield one.mind, False
    if one.due != slip.bring_back:
        yield tr("To be back by {day}.", day=one.due) if one.due else tr("No day was named."), True
    if not slip.lent or not slip.handed_by:
        yield tr("Handed out on {day} by {name}.", day=one.since, name=one.handed_by), False


def _empty(width_pt: float) -> Block:
    """A line to write on."""
    return stack([space(5 * MM), rule(width_pt, Ink.FAINT)])


def _agreed(slip: LendingSlip, width_pt: float) -> Block:
    """What is agreed, over both signatures."""
    inner = width_pt - 6 * GRID
    half = (inner - 6 * GRID) / 2
    lines = [
        tr("I have these pieces in the state written here, and use each only for what stands beside it."),
        tr("I look each over before I use it; what looks wrong I do not use, and say so."),
        tr("I bring them back by the day named and tell what they went through: pulls, jerks, salt, mud, sun."),
    ]
    signs = row(
        (0, _signs(tr("Who borrows"), slip.name, half)),
        (half + 6 * GRID, _signs(tr("For the club"), slip.handed_by, half)),
    )
    return boxed(stack([*(listed(one, inner) for one in lines), signs.below(2 * GRID)]), width_pt)


def _signs(title: str, name: str, width_pt: float) -> Block:
    said = tr("{role}: {name}", role=title, name=name) if name else title
    lines = [blank(one, width_pt, SMALL.in_ink(Ink.INK), _LINE_PT) for one in (tr("Signature"), tr("Place and date"))]
    return stack([words(said, width_pt, BODY.in_bold()), *lines])


def _back(width_pt: float) -> tuple[Block, ...]:
    """What is asked when they come back, to be typed into the register."""
    third = (width_pt - 6 * GRID) / 3
    half = (width_pt - 3 * GRID) / 2
    asked = (
        (third, (tr("Back on"), tr("Pulls of each"), tr("Jerks, overloads, near misses"))),
        (third, (tr("Days in salt"), tr("Days in mud or sand"), tr("Days in the sun"))),
        (half, (tr("Rinsed and dried"), tr("Not brought"))),
        (half, (tr("Brought by, signature"), tr("Taken back by, signature"))),
    )
    rows = [_blanks(labels, wide) for wide, labels in asked]
    return (heading(tr("When they come back"), width_pt), stack(rows))


def _blanks(labels: Sequence[str], width_pt: float) -> Block:
    cells = [
        (at * (width_pt + 3 * GRID), blank(one, width_pt, SMALL.in_ink(Ink.INK), _LINE_PT))
        for at, one in enumerate(labels)
    ]
    return row(*cells)
