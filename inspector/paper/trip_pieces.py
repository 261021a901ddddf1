"""The pieces of a trip's sheet: those that stay, and those that go with their checks."""

from collections.abc import Iterator, Sequence

from inspector.drawings.marks import outcome_meaning, outcome_word
from inspector.drawings.shapes import Ink
from inspector.gear.outcome import Outcome
from inspector.gear.papers import GoingPiece, SheetScope, StayingPiece, TripSheet
from inspector.language import tr
from inspector.paper.blocks import Block, row, rule, stack, words
from inspector.paper.common import heading, mark
from inspector.paper.page_style import BODY, GRID, SMALL
from inspector.paper.trip_columns import Placed, pieces_in_columns
from inspector.paper.trip_heads import MARK_MM, MARK_PT, TAG_PT, named, with_place


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
    text_pt = width_pt - MARK_PT - TAG_PT
    what = with_place(piece.kind_name, piece.where)
    why = stack([words(what, text_pt, BODY.in_bold()), words(piece.why, text_pt, BODY)])
    name = named(piece.tag, piece.outcome, TAG_PT)
    inner = row((0, mark(piece.outcome, MARK_MM)), (MARK_PT, name), (MARK_PT + TAG_PT, why))
    return stack([inner, rule(width_pt).below(GRID)]).below(GRID)


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
    bag = _bag_words(sheet.scope) if has_parts or sheet.scope != SheetScope() else ""
    placed = [
        Placed(number, one, names.get(one.part_of, one.part_of) or bag) for number, one in enumerate(sheet.going, 1)
    ]
    return pieces_in_columns(placed, width_pt)


def _bag_words(scope: SheetScope) -> str:
    if scope.is_rest:
        return tr("Rides on no vehicle by plan")
    return tr("Rides on {vehicle}", vehicle=scope.vehicle) if scope.vehicle else tr("The bag")
