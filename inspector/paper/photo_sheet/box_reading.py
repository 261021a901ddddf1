"""What the ink of a box means: three answers, not two. What lies between two limits is asked of a person.

The limits were set on photos made for it (tests/paper/photo_sheets), those with an even number alone.
"""

import math
from collections.abc import Sequence
from statistics import median

from msgspec import Struct

from inspector.gear.photo_read import BoxState, Seen
from inspector.paper.photo_sheet.ink import SECTORS, Ink

_LEAST_FRAME, _OF_USUAL_FRAME = 0.06, 0.3  # darker than paper, for a frame to be seen; of the others on the page
_EMPTY_SHARE, _EMPTY_DARK = 0.008, 0.02
_MARKED_SHARE, _MARKED_MIDDLE = 0.06, 0.05
_MARKED_PEAK, _OF_USUAL_PEAK = 0.2, 0.6
# how long ink must be that fills so much of its rectangle: a stroke is thin, a dot is not, whole or cut by the frame
_LEAST_EXTENT_MM = ((0.55, 2.0), (0.68, 2.6), (1.0, 3.2))
_STROKE_OF_PEAK = 0.3  # strokes are dark against what is beside them, dirt is not
_FREE_STRIP_MM2 = 0.25
_SOLID, _PERHAPS_SOLID = 0.3, 0.15  # darkness of the lightest twelfth of the inside
_RING, _NO_RING = SECTORS - 1, 10
_LEAST_INK, _MOST_INK, _OF_FRAME = 0.1, 0.2, 0.4


class Usual(Struct, frozen=True):
    """What is usual on the page, in the median. frame: how dark the frames are; peak: how dark marks are, or 0."""

    frame: float
    peak: float

    @property
    def least_frame(self) -> float:
        """A frame less dark than this is not seen."""
        return max(_LEAST_FRAME, _OF_USUAL_FRAME * self.frame)


class Judged(Struct, frozen=True):
    """What a box shows. confidence: 0 to 1; half stands at the limit of what is taken without asking."""

    state: BoxState
    confidence: float
    solid: Seen
    ringed: Seen


def least_dark(usual_frame: float) -> float:
    """How much darker than paper ink must be, where the printed frames of the page are so dark in the median.

    A frame is black and thin: the blur that makes it grey makes a stroke of a pen grey too.
    """
    return min(max(_OF_FRAME * usual_frame, _LEAST_INK), _MOST_INK)


def usual_of(frames_shown: Sequence[float], inks: Sequence[Ink]) -> Usual:
    """What is usual on a page with these frames and this ink in them."""
    peaks = [ink.peak for ink in inks if has_ink(ink)]
    return Usual(median(frames_shown) if frames_shown else 0.0, median(peaks) if peaks else 0.0)


def judged(ink: Ink, usual: Usual, *, seen: bool, above: bool, below: bool) -> Judged:
    """What a box shows. seen: its frame was found where it should be; above, below: the box next to it there is marked,
    so its strokes may come up to this frame."""
    solid = _seen(ink.hole, _PERHAPS_SOLID, _SOLID)
    ringed = _seen(ink.sectors, _NO_RING + 1, _RING)
    if not seen:
        return Judged(BoxState.UNSURE, 0.0, solid, ringed)
    empty, marked = _empty_surety(ink, above=above, below=below), _marked_surety(ink, usual, solid)
    if marked >= 1:
        return Judged(BoxState.MARKED, _confidence(marked), solid, ringed)
    if empty >= 1:
        return Judged(BoxState.EMPTY, _confidence(empty), solid, ringed)
    return Judged(BoxState.UNSURE, max(min(empty, marked, 1.0), 0.0) / 2, solid, ringed)


def has_ink(ink: Ink) -> bool:
    """Whether so much ink lies inside that strokes around the box may be its own."""
    return ink.share >= _MARKED_SHARE and ink.middle >= _MARKED_MIDDLE


def _seen(value: float, perhaps: float, plainly: float) -> Seen:
    if value >= plainly:
        return Seen.YES
    return Seen.PERHAPS if value >= perhaps else Seen.NO


def _marked_surety(ink: Ink, usual: Usual, solid: Seen) -> float:
    """How far the ink passes what a mark has at least; 1 is just so much."""
    least_extent = next(extent for filled, extent in _LEAST_EXTENT_MM if ink.filled <= filled)
    stroke = math.inf if solid is Seen.YES else ink.stroke / max(_STROKE_OF_PEAK * ink.peak, 0.01)
    return min(
        ink.share / _MARKED_SHARE,
        ink.extent_mm / least_extent,
        ink.middle / _MARKED_MIDDLE,
        ink.peak / max(_MARKED_PEAK, _OF_USUAL_PEAK * usual.peak),
        stroke,
    )


def _empty_surety(ink: Ink, *, above: bool, below: bool) -> float:
    """How far the ink stays below what an empty box has at most; 1 is just so much."""
    left, top, right, bottom = ink.strips_mm2
    strips = max(left, right, 0.0 if above else top, 0.0 if below else bottom)
    most = max(ink.share / _EMPTY_SHARE, ink.dark / _EMPTY_DARK, strips / _FREE_STRIP_MM2)
    return 1 / most if most > 0.2 else 5.0


def _confidence(surety: float) -> float:
    """Half at the limit, towards one far from it."""
    return 1 - 0.5 / surety
