"""What a photo of a sheet is found and straightened by: a QR code in the head, position marks in the side margins."""

from inspector.drawings.shapes import Ink
from inspector.gear.sheet_layout import CODE_MM, MARK_MM, Spot
from inspector.paper.page_style import HEAD_MARGIN, MM, SIDE_MARGIN, PageSize
from inspector.paper.press import Press
from inspector.paper.qr_code import draw_qr

CODE_ROOM_PT = 30 * MM  # from the right end of the column: the code and the air around it
CODE_HEAD_PT = (CODE_MM + 3.0) * MM
_CODE_FROM_RIGHT_MM = 3.0
_FROM_SIDE_MM, _FROM_TOP_MM, _FROM_FOOT_MM = 5.0, 8.0, 10.0
_MIDDLE_LEFT_RATIO, _MIDDLE_RIGHT_RATIO = 0.44, 0.56  # uneven, so that a page on its head looks like no other
_MARK_MODULES = 7
_VERSION = 1  # the smallest code has the largest modules, and a photo is read by their size


def draw_marks(press: Press, text: str) -> None:
    """The code with this text and the six marks, onto the page in hand."""
    code, marks = code_spot(press.page), mark_spots(press.page)
    press.placed_here.coded(text, code, marks)
    draw_qr(press, code.left_mm * MM, code.top_mm * MM, CODE_MM * MM, text, _VERSION)
    for spot in marks:
        _draw_mark(press, spot)


def code_spot(page: PageSize) -> Spot:
    """Where the code stands, without its quiet zone."""
    right = (page.width_pt - SIDE_MARGIN) / MM - _CODE_FROM_RIGHT_MM
    return Spot(round(right - CODE_MM, 3), round(HEAD_MARGIN / MM, 3), CODE_MM, CODE_MM)


def mark_spots(page: PageSize) -> tuple[Spot, ...]:
    """The four corners and the two sides, read like a page."""
    wide, high = page.width_pt / MM, page.height_pt / MM
    left, right = _FROM_SIDE_MM, wide - _FROM_SIDE_MM - MARK_MM
    top, foot = _FROM_TOP_MM, high - _FROM_FOOT_MM - MARK_MM
    places = (
        (left, top), (right, top), (left, high * _MIDDLE_LEFT_RATIO), (right, high * _MIDDLE_RIGHT_RATIO),
        (left, foot), (right, foot),
    )  # fmt: skip
    return tuple(Spot(round(across, 3), round(down, 3), MARK_MM, MARK_MM) for across, down in places)


def _draw_mark(press: Press, spot: Spot) -> None:
    """Dark, light and dark as 1:1:3:1:1, from any side."""
    module = spot.width_mm * MM / _MARK_MODULES
    for ring, ink in enumerate((Ink.INK, Ink.PAPER, Ink.INK)):
        inset = ring * module
        side = spot.width_mm * MM - 2 * inset
        press.filled(spot.left_mm * MM + inset, spot.top_mm * MM + inset, side, side, ink)
