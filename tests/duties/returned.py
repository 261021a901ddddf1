"""Sheets as members send them back: the form filled in, or the paper ticked with a pen and photographed."""

from collections.abc import Mapping
from importlib import import_module
from io import BytesIO
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw

from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.gear.papers import TripSheet
from inspector.gear.sheet_back import Incoming
from inspector.gear.sheet_fields import tick_name
from inspector.gear.sheet_layout import Spot
from inspector.register.rows import from_body

_PDFIUM: Any = import_module("pypdfium2")
_PX_PER_MM = 6.0
_INK = (24, 32, 110)
Answers = Mapping[str, Mapping[str, str]]  # "good", "fault" or "both", by check, by tag


def kept(office: Office, number: str) -> TripSheet:
    """The sheet as the register keeps it."""
    with office.book.reading() as page:
        return from_body(page.document_body(number), TripSheet)


def names(sheet: TripSheet, answers: Answers) -> set[str]:
    """The boxes that these answers tick; "*" stands for every check that is not named."""
    found = set()
    for number, piece in enumerate(sheet.going, 1):
        own = answers.get(piece.tag, {})
        for check, tick in enumerate(piece.ticks, 1):
            answer = own.get(tick.key, "" if tick.limit else own.get("*", ""))
            found |= {tick_name(number, check, one) for one in ("good", "fault") if answer in {one, "both"}}
    return found


def photographed(office: Office, paper: Paper, answers: Answers, turn: float = 2.0) -> list[Incoming]:
    """A photo of each page that asks something."""
    sheet = kept(office, paper.path.stem)
    ticked = names(sheet, answers)
    assert sheet.layout
    photos = []
    for number, page in enumerate(sheet.layout.pages, 1):
        if page.boxes:
            spots = [one.spot for one in page.boxes if one.name in ticked]
            photos.append(Incoming(f"photo {number}.jpg", _photo(paper.path, number - 1, spots, turn)))
    return photos


def _photo(pdf: Path, page: int, ticked: list[Spot], turn: float) -> bytes:
    document = _PDFIUM.PdfDocument(pdf.read_bytes())
    document.init_forms()
    picture = document[page].render(scale=_PX_PER_MM * 25.4 / 72).to_pil().convert("RGB")
    document.close()
    draw = ImageDraw.Draw(picture)
    for spot in ticked:
        _tick(draw, spot)
    return jpeg(picture.rotate(turn, expand=True, fillcolor=(96, 88, 80), resample=Image.Resampling.BICUBIC))


def _tick(draw: ImageDraw.ImageDraw, spot: Spot) -> None:
    left, top, side = (value * _PX_PER_MM for value in (spot.left_mm, spot.top_mm, spot.width_mm))
    way = [(0.12, 0.5), (0.42, 0.85), (1.05, 0.0)]
    draw.line([(left + x * side, top + y * side) for x, y in way], fill=_INK, width=round(0.6 * _PX_PER_MM))


def jpeg(picture: Image.Image) -> bytes:
    """A picture as a phone keeps it."""
    out = BytesIO()
    picture.save(out, "JPEG", quality=75)
    return out.getvalue()
