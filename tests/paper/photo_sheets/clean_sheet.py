"""A clean sheet to be ticked: its layout and its pages as pictures."""

from io import BytesIO
from random import Random

import pypdfium2
import segno
from msgspec import Struct
from PIL import Image
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from inspector.gear.sheet_code import SheetCode
from inspector.gear.sheet_layout import MARK_MM, Placed, SheetLayout, SheetPage, Spot

DOTS_PER_MM = 8
_WIDTH, _HEIGHT = 210.0, 297.0
_BOX, _CODE = 5.5, 22.0
_WORDS = ("Bow shackle", "Kinetic rope", "Soft shackle", "Receiver wall", "Tow bar tube", "Pin and clip")


class CleanSheet(Struct, frozen=True):
    layout: SheetLayout
    pictures: tuple[Image.Image, ...]
    rows: tuple[tuple[tuple[Spot, Spot], ...], ...]  # of each page: the box for good, the box for fault


def drawn_sheet(seed: int, columns: int, pitch_mm: tuple[float, float] = (7.0, 12.0)) -> CleanSheet:
    """A sheet of one page drawn for it. pitch_mm: of its rows, between these by lot."""
    rng = Random(seed)
    page, rows = _page(rng, SheetCode(f"PS-{seed:05d}", 1, "DRAWN").text, columns, pitch_mm)
    pdf = BytesIO()
    canvas = Canvas(pdf, pagesize=(_WIDTH * mm, _HEIGHT * mm), invariant=1)
    _draw(canvas, page, rng)
    canvas.save()
    return CleanSheet(SheetLayout(_WIDTH, _HEIGHT, (page,)), pictures_of(pdf.getvalue()), (tuple(rows),))


def pictures_of(pdf: bytes) -> tuple[Image.Image, ...]:
    """Each page in colour, DOTS_PER_MM to the millimetre."""
    document = pypdfium2.PdfDocument(pdf)
    pages = tuple(page.render(scale=DOTS_PER_MM * 25.4 / 72).to_pil().convert("RGB") for page in document)
    document.close()
    return pages


def _page(
    rng: Random, code: str, columns: int, pitch_mm: tuple[float, float]
) -> tuple[SheetPage, list[tuple[Spot, Spot]]]:
    rows, boxes = [], []
    for column in range(columns):
        top = 52.0 + rng.uniform(0, 4)
        while top < _HEIGHT - 32:
            left = 22.0 + column * 86
            good, fault = Spot(left, top, _BOX, _BOX), Spot(left + 11.0, top, _BOX, _BOX)
            rows.append((good, fault))
            boxes += [Placed(f"R{len(rows)}.good", good), Placed(f"R{len(rows)}.fault", fault)]
            top += rng.uniform(*pitch_mm)
    far_x, far_y = _WIDTH - 6 - MARK_MM, _HEIGHT - 8 - MARK_MM
    corners = ((6.0, 8.0), (far_x, 8.0), (6.0, far_y), (far_x, far_y), (6.0, 132.0), (far_x, 158.0))
    marks = tuple(Spot(x, y, MARK_MM, MARK_MM) for x, y in corners)
    rooms = (Placed("remarks", Spot(22, _HEIGHT - 24, 120, 9)),)
    return SheetPage(code, Spot(_WIDTH - 20 - _CODE, 10, _CODE, _CODE), marks, tuple(boxes), rooms), rows


def _draw(canvas: Canvas, page: SheetPage, rng: Random) -> None:
    def rect(left: float, top: float, width: float, height: float, fill: int, stroke: int = 0) -> None:
        canvas.rect(left * mm, (_HEIGHT - top - height) * mm, width * mm, height * mm, fill=fill, stroke=stroke)

    matrix = segno.make(page.code, version=1, error="m", micro=False, boost_error=False).matrix
    module = _CODE / len(matrix)
    for row, line in enumerate(matrix):
        for column, dark in enumerate(line):
            if dark:
                spot = page.code_spot
                rect(spot.left_mm + column * module, spot.top_mm + row * module, module * 1.01, module * 1.01, 1)
    for mark in page.marks:
        for ring, grey in enumerate((0, 1, 0)):
            canvas.setFillGray(grey)
            inset = ring * MARK_MM / 7
            rect(mark.left_mm + inset, mark.top_mm + inset, MARK_MM - 2 * inset, MARK_MM - 2 * inset, 1)
    canvas.setFillGray(0)
    canvas.setFont("Helvetica-Bold", 15)
    canvas.drawString(22 * mm, (_HEIGHT - 22) * mm, f"Inspection sheet {page.code}")
    canvas.setFont("Helvetica", 9)
    canvas.setLineWidth(0.8)
    for number, box in enumerate(page.boxes):
        spot = box.spot
        rect(spot.left_mm, spot.top_mm, spot.width_mm, spot.height_mm, 0, 1)
        if number % 2:
            base = (_HEIGHT - spot.top_mm - 4) * mm
            canvas.drawString((spot.left_mm + 8) * mm, base, f"{rng.choice(_WORDS)}: no cut, no rust {number}")
    for room in page.rooms:
        low = (_HEIGHT - room.spot.top_mm - room.spot.height_mm) * mm
        canvas.line(room.spot.left_mm * mm, low, (room.spot.left_mm + room.spot.width_mm) * mm, low)
