"""What comes in: pictures lose size and what a camera wrote into them, papers nothing, the rest is refused."""

import io
import struct
import zlib
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import ExifTags, Image, PngImagePlugin

from inspector.paper.photo import LONGEST_SIDE_PX, MOST_BYTES, take_in
from inspector.refused import Refused
from tests.each import each

PDF = b"%PDF-1.7\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\nstartxref\n9\n%%EOF\n"


def picture(form: str, width: int = 40, height: int = 30, mode: str = "RGB", **more: object) -> bytes:
    out = io.BytesIO()
    made = Image.linear_gradient("L").resize((width, height)).convert(mode)
    made.save(out, form, **more)
    return out.getvalue()


def with_camera(form: str = "JPEG") -> bytes:
    exif = Image.Exif()
    exif[ExifTags.Base.Make] = "SECRETCAMERA"
    exif[ExifTags.Base.Orientation] = 6
    exif.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.DateTimeOriginal] = "2026:11:20 14:03:05"
    exif.get_ifd(ExifTags.IFD.GPSInfo)[ExifTags.GPS.GPSLatitudeRef] = "S"
    exif.get_ifd(ExifTags.IFD.GPSInfo)[ExifTags.GPS.GPSLatitude] = (33.0, 52.0, 7.0)
    return picture(form, exif=exif)


@pytest.mark.parametrize("form", ["JPEG", "PNG"])
def test_what_a_camera_writes_is_taken_out_but_for_its_time(form: str) -> None:
    came = with_camera(form)
    assert b"SECRETCAMERA" in came
    kept = take_in(came)
    assert kept.taken_at == "2026:11:20 14:03:05"
    assert b"SECRETCAMERA" not in kept.data and b"Exif" not in kept.data
    opened = Image.open(io.BytesIO(kept.data))
    assert dict(opened.getexif()) == {} and opened.size == (30, 40)  # upright: the camera was turned


def test_texts_inside_a_picture_are_taken_out() -> None:
    info = PngImagePlugin.PngInfo()
    info.add_text("Comment", "SECRETPLACE")
    assert b"SECRETPLACE" not in take_in(picture("PNG", pnginfo=info)).data
    assert b"SECRETPLACE" not in take_in(picture("JPEG", comment=b"SECRETPLACE")).data


@settings(max_examples=30, deadline=None)
@given(
    st.sampled_from([("JPEG", "RGB"), ("JPEG", "L"), ("JPEG", "CMYK"), ("PNG", "RGB"), ("PNG", "RGBA"), ("PNG", "P"),
                     ("PNG", "1"), ("PNG", "LA")]),
    st.integers(1, 60), st.integers(1, 60),
)  # fmt: skip
def test_a_small_picture_keeps_its_size_and_a_second_round_its_form(
    form: tuple[str, str], wide: int, high: int
) -> None:
    kept = take_in(picture(form[0], wide, high, form[1]))
    opened = Image.open(io.BytesIO(kept.data))
    assert opened.size == (wide, high) and opened.format == form[0]
    again = take_in(kept.data)
    assert (again.media_type, Image.open(io.BytesIO(again.data)).size) == (kept.media_type, (wide, high))


@settings(max_examples=20, deadline=None)
@given(st.integers(1, 24), st.integers(1, 24))
def test_a_picture_without_loss_shows_the_same_dots(wide: int, high: int) -> None:
    came = picture("PNG", wide, high)
    before, after = Image.open(io.BytesIO(came)), Image.open(io.BytesIO(take_in(came).data))
    assert before.tobytes() == after.tobytes()


@pytest.mark.parametrize(("wide", "high"), [(4000, 1000), (900, 3000)])
def test_a_large_picture_is_made_smaller_in_the_same_shape(wide: int, high: int) -> None:
    kept = Image.open(io.BytesIO(take_in(picture("JPEG", wide, high)).data))
    assert max(kept.size) == LONGEST_SIDE_PX
    assert kept.width / kept.height == pytest.approx(wide / high, rel=0.01)


@pytest.mark.parametrize("data", [PDF, "Ünder 4 t\tonly\r\n".encode(), b"plain"])
def test_papers_and_texts_are_kept_byte_for_byte(data: bytes) -> None:
    kept = take_in(data)
    assert kept.data == data and kept.media_type == ("application/pdf" if data == PDF else "text/plain")


@settings(max_examples=60, deadline=None)
@given(st.binary(max_size=400))
def test_any_bytes_are_kept_or_refused_in_words(data: bytes) -> None:
    for one in (data, b"%PDF-" + data, b"\xff\xd8\xff" + data, b"\x89PNG\r\n\x1a\n" + data):
        try:
            assert take_in(one).data
        except Refused as refused:
            assert refused.field == "file" and refused.why and refused.what_to_do


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(["JPEG", "PNG"]), st.integers(0, 599), st.binary(min_size=1, max_size=4))
def test_a_picture_with_wrong_bytes_in_its_head_is_kept_bare_or_refused(form: str, at: int, wrong: bytes) -> None:
    came = bytearray(with_camera(form))
    came[at : at + len(wrong)] = wrong
    try:
        assert b"SECRETCAMERA" not in take_in(bytes(came)).data
    except Refused as refused:
        assert refused.what_to_do


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(["JPEG", "PNG"]), st.integers(3, 300))
def test_a_picture_that_is_cut_off_is_refused_or_whole(form: str, cut: int) -> None:
    came = picture(form)
    try:
        assert Image.open(io.BytesIO(take_in(came[:-cut]).data)).size == (40, 30)
    except Refused as refused:
        assert any(said in refused.why for said in ("broken", "no PDF", "empty"))


def bomb(side: int) -> bytes:
    """A PNG of a few kilobytes that says it is side by side dots."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    head = struct.pack(">IIBBBBB", side, side, 1, 0, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 999)) + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize("side", [8_100, 12_000, 30_000])
def test_a_picture_of_too_many_dots_is_refused_before_it_is_drawn(side: int) -> None:
    with pytest.raises(Refused, match="million dots"):
        take_in(bomb(side))


@each(
    ("made", "said"),
    [
        (lambda: b"", "empty"),
        (lambda: b"x" * (MOST_BYTES + 1), "MB"),
        (lambda: b"junk " + PDF, "broken"),
        (lambda: PDF[:-8], "broken"),
        (lambda: b"\0\0\0\x18ftypheic" + b"\0" * 40, "HEIC"),
        (lambda: b"PK\x03\x04" + b"\0" * 40, "office program"),
        (lambda: b"GIF89a" + b"\0" * 40, "no PDF, JPEG, PNG"),
        (lambda: b"text with \x00 in it", "no PDF, JPEG, PNG"),
        (lambda: picture("JPEG")[:200], "broken"),
    ],
)
def test_what_cannot_be_kept_is_refused_with_what_to_do(made: Callable[[], bytes], said: str) -> None:
    with pytest.raises(Refused) as refused:
        take_in(made())
    assert said in refused.value.why and refused.value.what_to_do
