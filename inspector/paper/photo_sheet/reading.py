"""A page in a photo, read: found by its marks, straightened, checked against itself, and each of its boxes looked at.

The page is refused rather than read where its frames do not show where they were printed: boxes all look alike, and one
row too high would be an answer to another question.
"""

import math
from collections.abc import Sequence
from statistics import median

from PIL import Image, ImageChops, ImageFilter

from inspector.gear.photo_read import BoxRead, BoxState, PageRead, RoomRead
from inspector.gear.sheet_layout import Placed, SheetLayout, SheetPage, Spot
from inspector.paper.photo_sheet import refusals
from inspector.paper.photo_sheet.box_reading import Judged, has_ink, judged, least_dark, usual_of
from inspector.paper.photo_sheet.codes import FoundCode, find_codes
from inspector.paper.photo_sheet.frames import Frame, frames_of, strays_of
from inspector.paper.photo_sheet.ink import Ink, at_share, ink_of
from inspector.paper.photo_sheet.marks import MARKS_NEEDED, Lay, lay_of, unseen_marks
from inspector.paper.photo_sheet.straight import StraightPage, paper_light, straightened
from inspector.refused import Refused

_LEAST_CODE_PX_PER_MM = 2.6
_LEAST_LIGHT = 38  # of 255, that the paper has in the median
_LEAST_SHOWN = 0.21  # of the frames in the median
_MOST_WEAK_SHARE, _MOST_STRAY_SHARE = 0.12, 0.1
_MOST_WEAK_ENDS = 1  # of the boxes of first and last rows; one row off, two of each column of rows do not show
_MOST_UNSURE_SHARE, _FEW_UNSURE = 0.2, 5
_EDGES_BETWEEN, _EDGE_SHARE, _LIGHT_SHARE = (1, 3), 0.995, 0.98  # blurs in dots; shares of the photo
_LEAST_EDGES, _SHARP_EDGES = 0.13, 0.4  # below it no code is read; from it on a straight page is not blurred
_NEAR_MM = 20.0  # frames further off are not seen beside a box
_BOX_AROUND_MM, _ROOM_AROUND_MM = 4.0, 2.0


def codes_in(photo: Image.Image) -> tuple[FoundCode, ...]:
    """The codes in a grey photo, from the left. Refused with the likeliest reason where there is none."""
    found = find_codes(photo)
    if not found:
        raise _why_no_code(photo)
    return found


def read_page(photo: Image.Image, code: FoundCode, page: SheetPage, layout: SheetLayout) -> PageRead:
    """The page of the layout whose code was found in a grey photo. Refused where it cannot be read with surety."""
    if code.text != page.code:
        raise refusals.other_sheet()
    if code.side_px < _LEAST_CODE_PX_PER_MM * page.code_spot.width_mm:
        raise refusals.too_small()
    lay = lay_of(photo, code, page)
    if lay is None:
        raise _why_no_lay(photo, code, page, layout)
    straight = straightened(photo, lay.projection, layout.width_mm, layout.height_mm)
    return _read(straight, lay, page)


def _read(straight: StraightPage, lay: Lay, page: SheetPage) -> PageRead:
    frames = frames_of(straight.even, [box.spot for box in page.boxes])
    _check(straight, frames, [box.spot for box in page.boxes])
    boxes = _boxes(straight, frames, page.boxes)
    unsure = sum(box.state is BoxState.UNSURE for box in boxes)
    if unsure > max(_MOST_UNSURE_SHARE * len(boxes), _FEW_UNSURE):
        raise refusals.too_much_unsure()
    rooms = tuple(RoomRead(room.name, straight.cut_out(room.spot, _ROOM_AROUND_MM)) for room in page.rooms)
    return PageRead(page.code, len(lay.seen), boxes, rooms)


def _boxes(straight: StraightPage, frames: Sequence[Frame], placed: Sequence[Placed]) -> tuple[BoxRead, ...]:
    shown = [frame.shown for frame in frames]
    least = least_dark(median(shown)) if shown else 0.0
    beside = [_beside(number, placed) for number in range(len(placed))]
    inks = [
        ink_of(straight.even, frame, [frames[at] for at in near], least)
        for frame, near in zip(frames, beside, strict=True)
    ]
    usual = usual_of(shown, inks)
    unseen = _weak(frames) | strays_of(frames, [box.spot for box in placed])
    boxes = []
    for number, box in enumerate(placed):
        above, below = _above_and_below(number, placed, beside[number], inks)
        judgement = judged(inks[number], usual, seen=number not in unseen, above=above, below=below)
        boxes.append(_box(straight, box, frames[number], judgement))
    return tuple(boxes)


def _box(straight: StraightPage, box: Placed, frame: Frame, shown: Judged) -> BoxRead:
    spot = box.spot
    at = Spot(spot.left_mm + frame.off_mm[0], spot.top_mm + frame.off_mm[1], spot.width_mm, spot.height_mm)
    picture = straight.cut_out(at, _BOX_AROUND_MM)
    return BoxRead(box.name, shown.state, round(shown.confidence, 3), shown.solid, shown.ringed, picture)


def _beside(number: int, placed: Sequence[Placed]) -> list[int]:
    here = placed[number].spot.middle
    return [at for at, box in enumerate(placed) if at != number and math.dist(here, box.spot.middle) < _NEAR_MM]


def _above_and_below(
    number: int, placed: Sequence[Placed], beside: Sequence[int], inks: Sequence[Ink]
) -> tuple[bool, bool]:
    """Whether a box that stands right above or right below has ink in it."""
    here = placed[number].spot
    column = [at for at in beside if abs(placed[at].spot.left_mm - here.left_mm) < here.width_mm / 2]
    marked = [placed[at].spot.top_mm - here.top_mm for at in column if has_ink(inks[at])]
    return any(-2 * here.height_mm < off < 0 for off in marked), any(0 < off < 2 * here.height_mm for off in marked)


def _check(straight: StraightPage, frames: Sequence[Frame], spots: Sequence[Spot]) -> None:
    """The page against itself: are the frames seen, the first and the last row's too, and where they should be?"""
    if not frames:
        return
    if median(paper_light(straight.seen).tobytes()) < _LEAST_LIGHT:
        raise refusals.too_dark()
    if median(frame.shown for frame in frames) < _LEAST_SHOWN:
        raise refusals.frames_hidden() if _edges(straight.seen) >= _SHARP_EDGES else refusals.too_blurred()
    weak = _weak(frames)
    if len(weak) > _MOST_WEAK_SHARE * len(frames) or len(weak & _ends(spots)) > _MOST_WEAK_ENDS:
        raise refusals.frames_hidden()
    if len(strays_of(frames, spots)) > _MOST_STRAY_SHARE * len(frames):
        raise refusals.not_flat()


def _weak(frames: Sequence[Frame]) -> set[int]:
    """The frames that are not seen."""
    least = usual_of([frame.shown for frame in frames], ()).least_frame
    return {number for number, frame in enumerate(frames) if frame.shown < least}


def _ends(spots: Sequence[Spot]) -> set[int]:
    """The boxes of the first and of the last row of each column of boxes."""
    columns: dict[int, list[int]] = {}
    for number, spot in enumerate(spots):
        columns.setdefault(round(spot.left_mm / spot.width_mm), []).append(number)
    ends = set()
    for column in columns.values():
        column.sort(key=lambda number: spots[number].top_mm)
        ends |= {column[0], column[-1]}
    return ends


def _why_no_code(photo: Image.Image) -> Refused:
    if at_share(_small(photo).histogram(), _LIGHT_SHARE) < 2 * _LEAST_LIGHT:
        return refusals.too_dark()
    return refusals.code_blurred() if _edges(photo) < _LEAST_EDGES else refusals.no_code()


def _small(photo: Image.Image) -> Image.Image:
    return photo.reduce(max(1, min(photo.size) // 300))


def _edges(photo: Image.Image) -> float:
    """How much light the sharpest edges of a picture change, of all that there is in it."""
    fine, coarse = (photo.filter(ImageFilter.GaussianBlur(radius)) for radius in _EDGES_BETWEEN)
    light = _small(photo).histogram()
    there_is = at_share(light, _LIGHT_SHARE) - at_share(light, 1 - _LIGHT_SHARE) + 1
    return at_share(ImageChops.difference(fine, coarse).histogram(), _EDGE_SHARE) / there_is


def _why_no_lay(photo: Image.Image, code: FoundCode, page: SheetPage, layout: SheetLayout) -> Refused:
    """Marks beyond the picture are a page cut off; others are covered; where all are there, the paper is bent."""
    beyond, covered = unseen_marks(photo, code, page)
    if len(page.marks) - len(beyond) < MARKS_NEEDED:
        return refusals.corner_missing(_names(beyond, layout))
    if len(page.marks) - len(beyond) - len(covered) < MARKS_NEEDED:
        return refusals.marks_hidden(_names([*beyond, *covered], layout))
    return refusals.not_flat()


def _names(marks: Sequence[Spot], layout: SheetLayout) -> str:
    middles = [mark.middle for mark in marks]
    return ", ".join(refusals.place_name(x / layout.width_mm, y / layout.height_mm) for x, y in middles)
