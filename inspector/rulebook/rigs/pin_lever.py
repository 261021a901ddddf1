"""What is left of a hitch pin's strength in the receiver of a rig: a thicker wall, or a wider block, bends it more."""

from inspector.gear.rig import RigPiece
from inspector.mechanics import shear
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.fits import size_of


def lever_left_ratio(pin: RigPiece, tube: RigPiece | None, insert: RigPiece | None, book: Rulebook) -> float:
    """Share of the strength it has by its own page, which reckons with the club's wall and block; never more than 1.

    Sizes as new: a wall that rust has thinned makes no pin stronger. What nobody wrote down is as the club has it. A
    marking does not tell in which wall it was tried, so the share comes off it too.
    """
    ways = {one.mode: one.now_n for one in pin.judged.verdict.capacity.strengths}
    bends_n, cut_n = ways.get("pin_bends"), ways.get("pin_shear")
    if not bends_n or not cut_n:
        return 1.0
    usual_m, here_m = _levers_m(tube, insert, book)
    moment_n_m, plane_n = bends_n * usual_m, cut_n / 2
    sound_n = shear.pin_combined_pull_n(usual_m, moment_n_m, plane_n)
    return min(shear.pin_combined_pull_n(here_m, moment_n_m, plane_n) / sound_n, 1.0)


def _levers_m(tube: RigPiece | None, insert: RigPiece | None, book: Rulebook) -> tuple[float, float]:
    """The lever that a pin's own strength is reckoned with, and that of the pieces at hand."""
    side, play, wall = (book.setting(f"hitch_{key}") for key in ("insert_side", "insert_play", "receiver_wall"))
    wall_m = size_of(tube, "wall") if tube else None
    side_m = size_of(insert, "block_side") if insert else None
    return shear.pin_lever_m(side, play, wall), shear.pin_lever_m(side_m or side, play, wall_m or wall)
