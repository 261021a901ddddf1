"""Every door by which a file from outside comes in: what a good one looks like, and what it is given to."""

import csv
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from zlib import crc32

import xlsxwriter
from msgspec import Struct
from PIL import Image

from inspector.duties.adopt_rulebook import adopt_rulebook, check_rulebook
from inspector.duties.archive_register import archive, open_archive
from inspector.duties.attach import attach
from inspector.duties.back_up import restore
from inspector.duties.book_in import book_in
from inspector.duties.bring_back import what_would_come
from inspector.duties.debrief import debrief
from inspector.duties.debrief_files import read_debrief
from inspector.duties.exchange_trip import export_trip, import_trip
from inspector.duties.import_list import dry_run, matching_of, read_list, take
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.office import Office
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.read_returned import read_returned
from inspector.duties.rig_files import read_rig, rig_text
from inspector.duties.take_photos import take_photo
from inspector.gear.attachment import PaperKind
from inspector.gear.sheet_back import Incoming
from tests.duties.gear import shackle
from tests.duties.returned import kept, names
from tests.duties.rigs import SNATCH, ready
from tests.duties.test_adopting import LOOSE, THIN_WALLS
from tests.paper.filling import by_library

HERE = Path(__file__).resolve().parents[2]
_DEBRIEF = """trip = "T-1"
on = 2026-11-25

[[used]]
rig = "R-1"
pulls = 2
on = 2026-11-25
jerked = false
near_miss = ""
"""


class Door(Struct, frozen=True):
    """seeds: good files, from the furnished office; enter: gives one to the deed, with a folder of its own to work in.

    words: what a grammar of this sort makes much of, put in by the fuzzer. most: cases in the short run.
    """

    seeds: Callable[[Office], list[bytes]]
    enter: Callable[[Office, bytes, Path], object]
    words: tuple[bytes, ...] = ()
    most: int = 25


_TOML = (
    b"[[",
    b"]]",
    b"=",
    b'"""',
    b"inf",
    b"nan",
    b"1e400",
    b"9" * 5000,
    b"{}" * 50,
    b"[" * 400,
    b"0001-01-01",
    b"\xff\xfe",
    b'"../../x"',
    b"'\\u0000'",
    b"-0.0",
    b"1979-05-27T07:32:00Z",
    b"true",
    "١٢".encode(),
    b"[a.b.c]\n",
    b"\n[[used]]\n",
)
_PDF = (
    b"endobj",
    b"/Kids [1 0 R]",
    b"/Parent 1 0 R",
    b"/Length 999999999",
    b"/Filter /FlateDecode",
    b"/Encrypt 5 0 R",
    b"xref",
    b"/V /Yes",
    b"/Count 99999999",
    b"startxref\n0",
    b"<<" * 60,
    b"[" * 300,
    b"/Rect [0 0 1e30 1e30]",
    b"stream\n",
    b"trailer",
)
_IMAGE = (
    b"\xff\xd8\xff",
    b"\x89PNG\r\n\x1a\n",
    b"IHDR\xff\xff\xff\xff\xff\xff\xff\xff",
    b"GIF89a",
    b"II*\x00",
    b"IEND",
    b"<svg>",
)
_LIST = (
    b'"',
    b";",
    b",",
    b"\t",
    b"\x00",
    b"\xff\xfe",
    b"\r",
    b"=cmd|x",
    b"9" * 400,
    b"1e400",
    b"WLL (t)",
    b"ton",
    b"3/4/5",
    b"\n\n\n",
    b"<row r='99999999'>",
    b"<c r='ZZZ1'>",
    b"PK\x03\x04",
)
_ZIP = (b"PK\x01\x02", b"PK\x03\x04", b"PK\x05\x06", b"PK\x06\x07", b"../../", b"\xff" * 8, b"\x00" * 46)
_SQLITE = (b"SQLite format 3\x00", b"\xff" * 64, b"\x00" * 64, b"CREATE TABLE", b"\x0d\x00\x00")


def furnished(office: Office) -> Office:
    """A register with a trip that has vehicles, a kit, a kept rig and a printed sheet."""
    ready(office)
    keep_rig(office, "R-1", SNATCH)
    book_in(office, shackle("SH-7"))
    return office


def _rig(office: Office, data: bytes, _: Path) -> object:
    return keep_rig(office, f"R-{crc32(data)}", read_rig(data.decode("utf-8", "replace")))


def _debrief(office: Office, data: bytes, _: Path) -> object:
    return debrief(office, read_debrief(office, data.decode("utf-8", "replace")))


def _pictures(_: Office) -> list[bytes]:
    made = []
    for kind in ("JPEG", "PNG"):
        out = BytesIO()
        Image.effect_noise((180, 120), 60).convert("RGB").save(out, kind, exif=_exif())
        made.append(out.getvalue())
    return made


def _exif() -> bytes:
    exif = Image.Exif()
    exif[0x010E], exif[0x0112] = "somewhere", 6
    return exif.tobytes()


def _sheets(office: Office) -> list[bytes]:
    """A printed sheet as it is, and filled in on a screen."""
    paper = print_trip_sheet(office, "T-1")
    printed = paper.path.read_bytes()
    said = kept(office, paper.path.stem)
    return [printed, by_library(printed, names(said, {one.tag: {"*": "good"} for one in said.going}), {})]


def _registers(office: Office) -> list[bytes]:
    office.book.wipe_traces()
    assert office.book.file
    return [office.book.file.read_bytes()]


def _archives(office: Office) -> list[bytes]:
    file = office.out_tray.parent / "seed.zip"
    archive(office, file)
    data = file.read_bytes()
    file.unlink()
    return [data]


def _opened(office: Office, data: bytes, folder: Path) -> object:
    return open_archive(_put_down(data, folder), folder / "new")


def _put_down(data: bytes, folder: Path) -> Path:
    file = folder / "given.db"
    file.write_bytes(data)
    return file


def _sheet(office: Office, data: bytes, _: Path) -> object:
    return read_returned(office, [Incoming("given.pdf", data)])


def _attached(office: Office, data: bytes, _: Path) -> object:
    return attach(office, "SH-7", "../../given", data, PaperKind.OTHER)


def _brought(office: Office, data: bytes, folder: Path) -> object:
    return what_would_come(office, _put_down(data, folder))


def _lists(_: Office) -> list[bytes]:
    """The sample's old list, and the same as a workbook."""
    text = (HERE / "sample_register" / "old_list.csv").read_bytes()
    out = BytesIO()
    with xlsxwriter.Workbook(out, {"in_memory": True}) as workbook:
        sheet = workbook.add_worksheet("Gear")
        for number, row in enumerate(csv.reader(text.decode().splitlines())):
            sheet.write_row(number, 0, row)
    return [text, out.getvalue()]


def _list(office: Office, data: bytes, folder: Path) -> object:
    """Read and run dry, and taken where the dry run passes any row."""
    file = folder / ("given.xlsx" if data[:2] == b"PK" else "given.csv")
    file.write_bytes(data)
    try:
        read = read_list(file)
    finally:
        file.unlink()
    run = dry_run(office, read, matching_of(office, read))
    return take(office, run) if run.passed else run


DOORS: dict[str, Door] = {
    "list": Door(_lists, _list, _LIST, 12),
    "rulebook": Door(lambda _: [LOOSE, THIN_WALLS], lambda office, data, _: check_rulebook(data, "given.toml"), _TOML),
    "adoption": Door(
        lambda _: [LOOSE, THIN_WALLS], lambda office, data, _: adopt_rulebook(office, data, "given.toml"), _TOML, 10
    ),
    "rig": Door(lambda _: [rig_text(SNATCH).encode()], _rig, _TOML),
    "trip": Door(
        lambda office: [export_trip(office, "T-1").encode()],
        lambda office, data, _: import_trip(office, data, "given.toml", f"T-{crc32(data)}"),
        _TOML,
    ),
    "debrief": Door(lambda _: [_DEBRIEF.encode()], _debrief, _TOML),
    "photo": Door(_pictures, lambda office, data, _: take_photo(office, "SH-7", "given.jpg", data), _IMAGE),
    "paper": Door(
        _pictures, lambda office, data, _: attach(office, "SH-7", "../../given", data, PaperKind.OTHER), _IMAGE
    ),
    "sheet": Door(_sheets, _sheet, _PDF, 6),
    "picture of a sheet": Door(_pictures, _sheet, _IMAGE, 10),
    "copy to restore": Door(
        _registers, lambda _, data, folder: restore(_put_down(data, folder), folder / "new"), _SQLITE, 8
    ),
    "archive to open": Door(_archives, _opened, _ZIP, 12),
    "copy to bring back": Door(
        _registers, lambda office, data, folder: what_would_come(office, _put_down(data, folder)), _SQLITE, 8
    ),
}
