"""Files that come in: pictures made smaller and freed of what a camera writes into them, papers kept byte for byte.

Bytes in, bytes out. What a file is, its content says and never its name.
"""

import io
import warnings
from collections.abc import Callable
from typing import TypeVar

from msgspec import Struct
from PIL import ExifTags, Image, ImageOps

from inspector.language import tr
from inspector.refused import Refused

MOST_BYTES = 25_000_000
LONGEST_SIDE_PX = 2000
_MOST_PIXELS = 64_000_000
_JPEG_QUALITY = 88
_MARK_SIDE_PX, _MARK_COLOURS = 200, 32
_LONGEST_TIME = 40
_PDF_HEAD, _PDF_END = b"%PDF-", b"%%EOF"
_HEAD_WITHIN, _END_WITHIN = 1024, 2048

_Made = TypeVar("_Made")


class Intake(Struct, frozen=True):
    """A file as it is kept. taken_at: as the camera wrote it."""

    data: bytes
    media_type: str
    taken_at: str = ""


def take_in(data: bytes) -> Intake:
    """The file as it is kept. Refuses what is empty, too large, broken, or neither PDF, JPEG, PNG nor plain text."""
    check_size(data)
    if is_pdf(data):
        return _pdf(data)
    if is_picture(data):
        return _guarded(data, _redrawn)
    _check_known(data)
    return _text(data)


def check_size(data: bytes) -> None:
    """Refuses what is empty or too large."""
    if not data:
        raise _refused(tr("The file is empty."), tr("Look whether it was copied in full."))
    if len(data) > MOST_BYTES:
        why = tr("The file has {size} MB, more than {most} MB.", size=len(data) // 10**6, most=MOST_BYTES // 10**6)
        raise _refused(why, tr("Make it smaller, or scan it with fewer dots to the inch."))


def is_pdf(data: bytes) -> bool:
    """Whether the content says that it is a PDF."""
    return _PDF_HEAD in data[:_HEAD_WITHIN]


def is_picture(data: bytes) -> bool:
    """Whether the content says that it is a JPEG or PNG."""
    return data.startswith((b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n"))


def grey_picture(data: bytes, side_px: int) -> Image.Image:
    """A JPEG or PNG in grey and upright, no side longer than side_px. Refuses whatever else, with the way out."""
    if not is_picture(data):
        _check_known(data)
        raise _refused(tr("It is no PDF, JPEG or PNG."), tr("Save it as PDF, or a picture as JPEG."))
    return _guarded(data, lambda known: _grey(known, side_px))


def small_picture(data: bytes, side_px: int) -> bytes:
    """A small PNG of a picture that `take_in` has taken, no side longer than side_px."""
    with Image.open(io.BytesIO(data), formats=("JPEG", "PNG")) as opened:
        opened.draft("RGB", (side_px, side_px))
        small = opened.convert("RGBA" if opened.mode in {"RGBA", "P", "LA"} else "RGB")
    small.thumbnail((side_px, side_px))
    out = io.BytesIO()
    small.save(out, "PNG")
    return out.getvalue()


def mark_picture(data: bytes) -> bytes:
    """A club's mark for the head of documents: a small PNG on white with few colours. Refuses what is no picture."""
    taken = take_in(data)
    if not taken.media_type.startswith("image/"):
        raise _refused(tr("It is no picture."), tr("Choose a JPEG or a PNG."))
    with Image.open(io.BytesIO(taken.data), formats=("JPEG", "PNG")) as opened:
        drawn = opened.convert("RGBA")
    drawn.thumbnail((_MARK_SIDE_PX, _MARK_SIDE_PX))
    white = Image.new("RGB", drawn.size, "white")
    white.paste(drawn, mask=drawn.getchannel("A"))
    out = io.BytesIO()
    white.quantize(_MARK_COLOURS).save(out, "PNG", optimize=True)
    return out.getvalue()


def _pdf(data: bytes) -> Intake:
    if not data.startswith(_PDF_HEAD) or _PDF_END not in data[-_END_WITHIN:]:
        raise _refused(tr("The PDF is broken or cut off."), tr("Open it and save it anew, or copy it again."))
    return Intake(data, "application/pdf")


def _guarded(data: bytes, make: Callable[[bytes], _Made]) -> _Made:
    """What is made of a picture; refused where it cannot be drawn."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # what is odd but can be drawn is kept; too many dots are counted below
            return make(data)
    except Refused:
        raise
    except Image.DecompressionBombError as error:
        raise _too_many_pixels() from error
    except Exception as error:  # a decoder may stumble over foreign bytes in any way
        why = tr("The picture is broken or cut off.")
        raise _refused(why, tr("Open it, look whether it shows in full, and copy it again.")) from error


def _grey(data: bytes, side_px: int) -> Image.Image:
    with Image.open(io.BytesIO(data), formats=("JPEG", "PNG")) as opened:
        _check_pixels(opened)
        opened.draft("L", (side_px, side_px))
        upright = ImageOps.exif_transpose(opened)
    if upright.mode.startswith("I"):  # sixteen bits of grey
        upright = upright.convert("I").point(lambda value: value / 256)
    elif "A" in upright.mode or "transparency" in upright.info:
        drawn = upright.convert("RGBA")
        upright = Image.new("RGB", drawn.size, "white")
        upright.paste(drawn, mask=drawn.getchannel("A"))
    grey = upright.convert("L")
    grey.thumbnail((side_px, side_px), Image.Resampling.BOX)
    return grey


def _check_pixels(opened: Image.Image) -> None:
    if opened.width * opened.height > _MOST_PIXELS:
        raise _too_many_pixels()


def _redrawn(data: bytes) -> Intake:
    """The picture upright, no side longer than is kept, without what the camera wrote beside the time."""
    with Image.open(io.BytesIO(data), formats=("JPEG", "PNG")) as opened:
        _check_pixels(opened)
        is_png, taken_at = opened.format == "PNG", _taken_at(opened)
        opened.draft("RGB", (LONGEST_SIDE_PX, LONGEST_SIDE_PX))
        upright = ImageOps.exif_transpose(opened)
    upright.thumbnail((LONGEST_SIDE_PX, LONGEST_SIDE_PX))
    kept, out = _bare(upright, is_png=is_png), io.BytesIO()
    if is_png:
        kept.save(out, "PNG", optimize=True)
    else:
        kept.save(out, "JPEG", quality=_JPEG_QUALITY, exif=b"")
    return Intake(out.getvalue(), "image/png" if is_png else "image/jpeg", taken_at)


def _bare(picture: Image.Image, *, is_png: bool) -> Image.Image:
    """The dots alone: no place, no name, no comment that a camera or a program wrote into it."""
    modes = {"RGB", "RGBA", "L"} if is_png else {"RGB", "L"}
    plain = picture if picture.mode in modes else picture.convert("RGBA" if is_png else "RGB")
    return Image.frombytes(plain.mode, plain.size, plain.tobytes())


def _taken_at(picture: Image.Image) -> str:
    """The camera's time as it wrote it; empty where there is none that prints."""
    exif = picture.getexif()
    told = exif.get_ifd(ExifTags.IFD.Exif).get(ExifTags.Base.DateTimeOriginal) or exif.get(ExifTags.Base.DateTime)
    text = str(told).strip("\x00 ") if told else ""
    return text if text.isprintable() and len(text) <= _LONGEST_TIME else ""


def _text(data: bytes) -> Intake:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise _unknown() from error
    if any(not sign.isprintable() and sign not in "\r\n\t\f\ufeff" for sign in text):
        raise _unknown()
    return Intake(data, "text/plain")


def _check_known(data: bytes) -> None:
    """Name what a telephone or an office program makes by default, so that the refusal can tell the way out."""
    if data[4:8] == b"ftyp" and data[8:12] in {b"heic", b"heix", b"mif1", b"msf1", b"heim", b"hevc", b"avif"}:
        what = tr("Set the telephone to “most compatible”, or share the picture as JPEG.")
        raise _refused(tr("It is a HEIC or AVIF picture."), what)
    if data[:4] == b"PK\x03\x04" or data[:8] == b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1":
        raise _refused(tr("It is a file of an office program, or packed."), tr("Save or print it as PDF."))


def _unknown() -> Refused:
    return _refused(tr("It is no PDF, JPEG, PNG or plain text."), tr("Save it as PDF, or a picture as JPEG."))


def _too_many_pixels() -> Refused:
    why = tr("The picture has more than {most} million dots.", most=_MOST_PIXELS // 10**6)
    return _refused(why, tr("Make it smaller first."))


def _refused(why: str, what: str) -> Refused:
    return Refused(tr("file"), why, what)
