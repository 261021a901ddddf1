"""Whether pieces that are joined go together by their sizes: a pin through its hole, an insert into its tube.

What does not go together holds nothing; where a size was never written down somebody must try it before the pull.
"""

from collections.abc import Iterator

from inspector.gear.rig import RigPiece
from inspector.gear.rig_result import RigFinding, RigOutcome
from inspector.language import tr
from inspector.rulebook.judge import SAME_RATIO
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.layout import Joined, Layout, Part
from inspector.units import Dimension, System, show

_HOLES = {
    "recovery_point": ("hole_diameter", "eye_hole"),
    "receiver_insert": ("hole_diameter",),
    "hitch_receiver": ("pin_hole",),
}
_PINNED = {("shackle", "point"), ("shackle", "insert"), ("pin", "receiver")}


def fits(layout: Layout, system: System) -> Iterator[RigFinding]:
    """What does not go together and of what nobody can tell; that all does, where sizes were written down for it."""
    speaking = tuple(_misfits(layout, system))
    yield from speaking
    pinned = [pair for pair in layout.joined if _roles(layout, pair) & _PINNED]
    if pinned and not speaking:
        says = tr("Pins, holes and blocks go together by the sizes written down.")
        yield RigFinding("fits", RigOutcome.SOUND, says, layout.book.source_text("house_law"))


def _roles(layout: Layout, joined: Joined) -> set[tuple[str, str]]:
    one, other = layout.parts[joined.one].role, layout.parts[joined.other].role
    return {(one, other), (other, one)}


def _misfits(layout: Layout, system: System) -> Iterator[RigFinding]:
    for joined in layout.joined:
        pair = layout.parts[joined.one], layout.parts[joined.other]
        for one, other in (pair, pair[::-1]):
            if (one.role, other.role) in _PINNED:
                yield from _pin(layout, one, other, system)
            if (one.role, other.role) == ("insert", "pin"):
                yield from _insert(layout, one, other, system)


def pin_passes(pin: RigPiece, bored: RigPiece) -> bool:
    """Whether a shackle's or a hitch pin goes through the hole of a point, an insert or a receiver, as far as known."""
    pin_m, hole_m = size_of(pin, "pin_diameter"), hole_of(bored)
    return pin_m is None or hole_m is None or pin_m <= hole_m * (1 + SAME_RATIO)


def hole_of(bored: RigPiece) -> float | None:
    """The narrowest hole that was written down for a pin through the piece, in metres."""
    known = [hole_m for key in _HOLES.get(bored.kind, ()) if (hole_m := size_of(bored, key)) is not None]
    return min(known, default=None)


def insert_goes_in(insert: RigPiece, tube: RigPiece) -> bool:
    """Whether the block goes into the tube, as far as known."""
    side_m, inside_m = size_of(insert, "block_side"), _inside_m(tube)
    return side_m is None or inside_m is None or side_m <= inside_m * (1 + SAME_RATIO)


def insert_fills(insert: RigPiece, tube: RigPiece, book: Rulebook) -> bool:
    """Whether the block leaves no more play than the pin is reckoned with, as far as known."""
    side_m, inside_m = size_of(insert, "block_side"), _inside_m(tube)
    play_m = 2 * book.setting("hitch_insert_play")
    return side_m is None or inside_m is None or inside_m - side_m <= play_m * (1 + SAME_RATIO)


def goes_with(insert: RigPiece, tube: RigPiece, book: Rulebook) -> bool:
    """Whether the block goes into the tube and fills it, as far as known."""
    return insert_goes_in(insert, tube) and insert_fills(insert, tube, book)


def size_of(piece: RigPiece, key: str) -> float | None:
    """A size as new in metres; None where nobody wrote it down."""
    size = piece.judged.dossier.item.size(key)
    return size.si if size and size.si > 0 else None


def _inside_m(tube: RigPiece) -> float | None:
    """The width of a tube's opening as new, in metres."""
    outside_m, wall_m = size_of(tube, "outside"), size_of(tube, "wall")
    return outside_m - 2 * wall_m if outside_m is not None and wall_m is not None else None


def _pin(layout: Layout, pin: Part, bored: Part, system: System) -> Iterator[RigFinding]:
    if pin.piece is None or bored.piece is None:
        return
    if size_of(pin.piece, "pin_diameter") is None or hole_of(bored.piece) is None:
        says = tr("The pin of {one} or the hole of {other} was not written down: try that the pin goes right through.")
        yield _untold(layout, says.format(one=pin.tag, other=bored.tag), pin, bored)
    elif not pin_passes(pin.piece, bored.piece):
        says = tr("The {pin} pin of {one} does not go through the {hole} hole of {other}.")
        wide, hole = _shown(system, size_of(pin.piece, "pin_diameter"), hole_of(bored.piece))
        yield _finding(layout, says.format(pin=wide, one=pin.tag, hole=hole, other=bored.tag), pin, bored)


def _insert(layout: Layout, insert: Part, pin: Part, system: System) -> Iterator[RigFinding]:
    """An insert must go into the tube, and fill it: loose in it, it leaves the pin to bend."""
    tube = next((layout.parts[tag] for tag in layout.near(pin.tag) if layout.parts[tag].role == "receiver"), None)
    if tube is None or tube.piece is None or insert.piece is None:
        return
    if size_of(insert.piece, "block_side") is None or _inside_m(tube.piece) is None:
        says = tr(
            "The block of {one} or the opening of {other} was not written down: try that the block fills the tube."
        )
        yield _untold(layout, says.format(one=insert.tag, other=tube.tag), insert, tube)
        return
    if not insert_goes_in(insert.piece, tube.piece):
        says = tr("The {side} block of {one} does not go into the {inside} opening of {other}.")
    elif not insert_fills(insert.piece, tube.piece, layout.book):
        says = tr("The {side} block of {one} lies loose in the {inside} opening of {other}, and the pin bends.")
    else:
        return
    side, inside = _shown(system, size_of(insert.piece, "block_side"), _inside_m(tube.piece))
    yield _finding(layout, says.format(side=side, one=insert.tag, inside=inside, other=tube.tag), insert, tube)


def _shown(system: System, *lengths_m: float | None) -> tuple[str, ...]:
    return tuple(show(one_m, Dimension.LENGTH, system) for one_m in lengths_m if one_m is not None)


def _finding(layout: Layout, says: str, one: Part, other: Part) -> RigFinding:
    source = layout.book.source_text("house_law")
    return RigFinding("fit", RigOutcome.UNSOUND, says, source, (one.tag, other.tag))


def _untold(layout: Layout, says: str, one: Part, other: Part) -> RigFinding:
    source = layout.book.source_text("house_law")
    return RigFinding("fit.unknown", RigOutcome.CAUTION, says, source, (one.tag, other.tag))
