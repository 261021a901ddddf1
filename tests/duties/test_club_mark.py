"""The club's mark: from a picture to the head of every document, and away again."""

from io import BytesIO
from pathlib import Path

import pytest
from msgspec.structs import replace
from PIL import Image
from pypdf import PdfReader

from inspector.duties.book_in import book_in
from inspector.duties.club_settings import change_club_settings, club_settings, read_mark
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from tests.duties.gear import shackle


def picture(folder: Path, name: str = "mark.png", size: tuple[int, int] = (900, 600)) -> Path:
    made = Image.effect_mandelbrot(size, (-2, -1.5, 1, 1.5), 40).convert("RGBA")
    made.putalpha(200)
    made.convert("RGB" if name.endswith("jpg") else "RGBA").save(folder / name)
    return folder / name


def _pictures_on(file: Path) -> list[int]:
    return [len(page.images) for page in PdfReader(file).pages]


def _sheet(office: Office) -> Path:
    return print_trip_sheet(office, "T-1").path


@pytest.fixture
def ready(office: Office) -> Office:
    book_in(office, shackle())
    plan_trip(office, Trip("", "T-1", "Day out", "", Ground.MUD, office.today, office.today, "", (), ("SH-1",)))
    return office


@pytest.mark.parametrize("name", ["mark.png", "mark.jpg"])
def test_it_stands_at_the_head_of_documents_until_it_is_taken_away(ready: Office, tmp_path: Path, name: str) -> None:
    before = _pictures_on(_sheet(ready))
    wanted = replace(club_settings(ready), mark=read_mark(picture(tmp_path, name)))
    change_club_settings(ready, wanted)

    assert club_settings(ready) == wanted
    after = _pictures_on(_sheet(ready))
    assert after[0] == before[0] + 1 and after[1:] == before[1:], "on the first page alone"
    assert "a mark stands on its documents" in told_ledger(ready, last=3)[1].sentence

    change_club_settings(ready, replace(wanted, mark=b""))
    assert _pictures_on(_sheet(ready)) == before
    assert "bear no mark" in told_ledger(ready, last=3)[1].sentence
    assert verify_book(ready).faults == ()


def test_it_is_small_and_keeps_its_shape(tmp_path: Path) -> None:
    mark = read_mark(picture(tmp_path))
    with Image.open(BytesIO(mark)) as kept:
        assert kept.format == "PNG" and kept.size == (200, 133)
    assert len(mark) < 20_000


@pytest.mark.parametrize(("data", "why"), [(b"no picture at all", "no picture"), (b"%PDF-1.4\n%%EOF", "no picture"),
                                           (b"", "empty"), (b"\x89PNG\r\n\x1a\nbroken", "broken")])  # fmt: skip
def test_what_is_no_picture_is_refused_and_nothing_changes(
    ready: Office, tmp_path: Path, data: bytes, why: str
) -> None:
    (tmp_path / "mark").write_bytes(data)
    with pytest.raises(Refused, match=why):
        read_mark(tmp_path / "mark")
    assert club_settings(ready).mark == b""
