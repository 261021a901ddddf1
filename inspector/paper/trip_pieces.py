"""The pieces of a trip's sheet: those that stay, and those that go with their checks."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from inspector.drawings.marks import outcome_meaning, outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.papers import GoingPiece, SheetScope, StayingPiece, TripSheet
from inspector.gear.sheet_fields import remarks_name
from inspector.language import tr
from inspector.paper.blocks import Block, blank, row, rule, stack, words
from inspector.paper.common import heading, mark, word_type
from inspector.paper.page_style import BODY, GRID, HEAD, MM, SMALL
from inspector.paper.tick_lines import BETWEEN_PT, fit_a_column, half_pt, tick_lines

_MARK_MM = 8.0
_MARK_PT = _MARK_MM * MM + 2 * GRID
_TAG_PT = 34 * MM
_REMARKS_PT = 7 * MM
_RIDES_PT = 5.5 * MM


def staying(pieces: Sequence[StayingPiece], width_pt: float) -> list[Block]:
    """What may not go or not be used, before anything that may."""
    loose, parts = ([one for one in pieces if bool(one.part_of) is is_part] for is_part in (False, True))
    blocks = _not_going(tr("Must stay behind"), loose, width_pt)
    if not pieces:
        blocks.append(words(tr("No piece of this kit has to stay behind."), width_pt, BODY))
    blocks += _not_going(tr("On the vehicles and not to be used"), parts, width_pt) if parts else []
    return blocks if loose or not parts else blocks[1:]


def _not_going(title: str, pieces: Sequence[StayingPiece], width_pt: float) -> list[Block]:
    lines = [legend(pieces, width_pt).kept(), *(_staying_piece(piece, width_pt) for piece in pieces)] if pieces else []
    return [heading(title, width_pt), *lines]


def legend(pieces: Sequence[StayingPiece] | Sequence[GoingPiece], width_pt: float) -> Block:
    """The marks that occur below, each with its word and meaning."""
    found = sorted({piece.outcome for piece in pieces}, key=lambda outcome: -outcome.severity)
    goes = any(isinstance(piece, GoingPiece) for piece in pieces)
    said = (tr("{word} – {means}.", word=outcome_word(one), means=_meaning(one, goes=goes)) for one in found)
    return words(" ".join(said), width_pt, SMALL.in_ink(Ink.INK))


def _meaning(outcome: Outcome, *, goes: bool) -> str:
    """A held piece that goes all the same is held for some purposes only."""
    if goes and outcome is Outcome.HOLD:
        return tr("not for what it is held for, only as its line says")
    return outcome_meaning(outcome)


def _staying_piece(piece: StayingPiece, width_pt: float) -> Block:
    text_pt = width_pt - _MARK_PT - _TAG_PT
    name = stack([words(piece.tag, _TAG_PT, HEAD), _word(piece.outcome, _TAG_PT)])
    what = _with_place(piece.kind_name, piece.where)
    why = stack([words(what, text_pt, BODY.in_bold()), words(piece.why, text_pt, BODY)])
    inner = row((0, mark(piece.outcome, _MARK_MM)), (_MARK_PT, name), (_MARK_PT + _TAG_PT, why))
    return stack([inner, rule(width_pt).below(GRID)]).below(GRID)


def _word(outcome: Outcome, width_pt: float) -> Block:
    return words(outcome_word(outcome), width_pt, word_type(outcome, BODY))


def _with_place(kind: str, where: str) -> str:
    """What it is, and where it rides, sits or lies."""
    return tr("{kind} · {where}", kind=kind, where=where.removesuffix(".")) if where else kind


def going(sheet: TripSheet, width_pt: float) -> list[Block]:
    """What goes, in the order given: round each vehicle, then the bag."""
    title = heading(tr("Goes on the trip: check each piece before use"), width_pt)
    if not sheet.going:
        return [title, words(tr("No piece of this kit goes on the trip."), width_pt, BODY)]
    how = tr("Tick good or fault for each line. One fault, or a line you cannot check: the piece does not go.")
    mend = tr("Wrong box? Fill it in fully, tick the right one, and draw a ring round the right one.")
    legends = legend(sheet.going, width_pt)
    intro = stack([words(how, width_pt, BODY.in_bold()), words(mend, width_pt, BODY), legends])
    return [title, intro.kept(), *_by_place(sheet, width_pt)]


def _by_place(sheet: TripSheet, width_pt: float) -> Iterator[Block]:
    """The pieces under the name of the vehicle that they sit on, and of the bag."""
    names = {one.tag: f"{one.tag} · {one.name}" for one in sheet.vehicles}
    has_parts = any(one.part_of for one in sheet.going)
    for vehicle, group in groupby(enumerate(sheet.going, 1), key=lambda one: one[1].part_of):
        title = names.get(vehicle, vehicle) if vehicle else _bag_words(sheet.scope)
        named = words(title, width_pt, HEAD) if has_parts or sheet.scope != SheetScope() else None
        if named:
            yield named.below(2 * GRID).kept()
        for block in in_columns(list(group), width_pt):
            yield replace(block, again=named)


def _bag_words(scope: SheetScope) -> str:
    if scope.is_rest:
        return tr("Rides on no vehicle by plan")
    return tr("Rides on {vehicle}", vehicle=scope.vehicle) if scope.vehicle else tr("The bag")


def in_columns(pieces: Sequence[tuple[int, GoingPiece]], width_pt: float) -> list[Block]:
    """The pieces below one another; two neighbours stand side by side where that takes less of the page."""
    made: list[Block] = []
    at = 0
    while at < len(pieces):
        single = _going_piece(*pieces[at], width_pt)
        pair = _side_by_side(pieces[at : at + 2], width_pt)
        if pair and pair.height_pt < single.height_pt + _going_piece(*pieces[at + 1], width_pt).height_pt:
            made.append(pair)
            at += 2
        else:
            made.append(single)
            at += 1
    return made


def _side_by_side(two: Sequence[tuple[int, GoingPiece]], width_pt: float) -> Block | None:
    """Two pieces in a column each; none where a check of theirs is too long for it."""
    column_pt = half_pt(width_pt)
    if len(two) < 2 or not all(fit_a_column(piece.ticks, column_pt) for _, piece in two):
        return None
    left, right = (_narrow_piece(number, piece, column_pt) for number, piece in two)
    return row((0, left), (column_pt + BETWEEN_PT, right)).below(GRID)


def _narrow_piece(number: int, piece: GoingPiece, width_pt: float) -> Block:
    ticks = tick_lines(number, piece.ticks, width_pt, columns=1) if piece.ticks else []
    return _checked(number, piece, _narrow_head(piece, width_pt), ticks, width_pt)


def _going_piece(number: int, piece: GoingPiece, width_pt: float) -> Block:
    ticks = tick_lines(number, piece.ticks, width_pt) if piece.ticks else []
    return _checked(number, piece, _going_head(piece, width_pt), ticks, width_pt)


def _checked(number: int, piece: GoingPiece, head: Block, ticks: Sequence[Block], width_pt: float) -> Block:
    says = tr("Remarks on {tag}", tag=piece.tag)
    remarks = blank(tr("Remarks"), width_pt, SMALL, _REMARKS_PT, remarks_name(number), says)
    return stack([head, *ticks, remarks, rule(width_pt, Ink.INK, 0.8).below(GRID)]).below(GRID)


def _going_head(piece: GoingPiece, width_pt: float) -> Block:
    """Tag and mark on the left, what it is and what it may do on the right."""
    text_pt = width_pt - _MARK_PT - _TAG_PT
    name = stack([words(piece.tag, _TAG_PT, HEAD), _word(piece.outcome, _TAG_PT)])
    said = stack(_said(piece, text_pt))
    return row((0, mark(piece.outcome, _MARK_MM)), (_MARK_PT, name), (_MARK_PT + _TAG_PT, said))


def _narrow_head(piece: GoingPiece, width_pt: float) -> Block:
    """Mark, tag and word above, the rest below the tag."""
    text_pt = width_pt - _MARK_PT
    name = words(piece.tag, text_pt, HEAD)
    return row(
        (0, mark(piece.outcome, _MARK_MM)),
        (_MARK_PT, stack([name, _word(piece.outcome, text_pt), *_said(piece, text_pt)])),
    )


def _said(piece: GoingPiece, width_pt: float) -> list[Block]:
    """What it is and where, its rating as marked and now, what it may do."""
    figures = tr("Marked: {marked} · Now: {now}", marked=piece.marked or "–", now=piece.now or "–")
    lines = [
        words(_with_place(piece.kind_name, piece.where), width_pt, BODY.in_bold()),
        words(figures, width_pt, BODY),
        words(piece.use_line, width_pt, BODY.in_bold()),
    ]
    return lines if piece.where else [*lines, blank(tr("Rides on"), width_pt, SMALL, _RIDES_PT)]
