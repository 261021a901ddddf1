"""An archive: opened it is the register as it was; whatever was done to it is found, and nothing is left half there."""

import hashlib
import json
import os
import shutil
import sqlite3
import tracemalloc
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path
from zipfile import ZipFile

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.archive_register import archive, enter_opened, open_archive, verify_archive
from inspector.duties.attach import attachments, file_bytes
from inspector.duties.found_club import found_club
from inspector.duties.look_up import list_gear, people
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.gear.attachment import NewAttachment, PaperKind
from inspector.refused import Refused
from inspector.register import backup
from inspector.register.archive import prove, shape
from inspector.register.archive import write as writing
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.paper.test_photo import PDF
from tests.register.archives import FAULTY, MAIL, REFUSED, SECRET, filled, listed, members, on_machine, put, signed_in


@pytest.fixture(scope="module")
def once(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """A small register with a bit of everything, and an archive of it; made once, each test has a copy."""
    folder = tmp_path_factory.mktemp("club")
    office = office_in(folder, rules)
    officer = found_club(office, "Test Club", "Ada Officer")
    archive(filled(replace(office, officer=officer), folder), folder / "a.zip")
    office.book.close()
    return folder


@pytest.fixture
def club(once: Path, tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """The register."""
    shutil.copyfile(once / "register.db", tmp_path / "register.db")
    office = office_in(tmp_path, rules)
    yield on_machine(replace(office, officer=people(office)[0]), tmp_path)
    office.book.close()


@pytest.fixture
def made(once: Path, tmp_path: Path) -> Path:
    """The archive of it."""
    return Path(shutil.copyfile(once / "a.zip", tmp_path / "a.zip"))


def lines(office: Office) -> bytes:
    """Its whole history."""
    with office.book.reading() as page:
        return b"".join(page.json_lines())


def test_an_archive_holds_database_files_rulebooks_lines_schema_and_manifest(club: Office, made: Path) -> None:
    parts = members(made)
    sha256 = attachments(club, "SH-1")[0].facts.sha256
    fixed = {"read_me.txt", "verify.py", "lines.jsonl", "lines.schema.json", "register.db", "manifest.json"}
    rest = sorted(set(parts) - fixed)
    assert rest == [f"attachments/{sha256}.pdf", f"rulebooks/{club.rules.hash}.txt"]
    assert parts[rest[0]] == PDF and parts[rest[1]].decode() == club.rules.text
    manifest = json.loads(parts["manifest.json"])
    assert manifest["head"] == verify_archive(made).manifest.head and manifest["line_count"] > 3
    assert {one["path"] for one in manifest["members"]} == set(parts) - {"manifest.json"}
    assert "decision aid" in parts["read_me.txt"].decode() and "It is not signed" in parts["read_me.txt"].decode()


def test_what_is_opened_is_the_register_as_it_was(club: Office, made: Path, tmp_path: Path, rules: Rulebook) -> None:
    head = verify_archive(made).manifest.head
    found = open_archive(made, tmp_path / "new", head)
    back = office_in(tmp_path / "new", rules)
    try:
        assert found.manifest.head == head == verify_book(back).head
        assert lines(back) == members(made)["lines.jsonl"]
        assert list_gear(back).rows == list_gear(club).rows
        assert file_bytes(back, attachments(back, "SH-1")[0]) == PDF
        assert back.book.origin != club.book.origin, "two copies never issue the same number"
        enter_opened(replace(back, officer=club.officer), made, found)
        assert verify_book(back, head).faults == ()
    finally:
        back.book.close()


def test_contact_details_are_left_out_of_every_part_unless_they_are_asked_for(club: Office, made: Path) -> None:
    assert not any(MAIL.encode() in data for data in members(made).values())
    assert "are not in it" in members(made)["read_me.txt"].decode()
    asked = archive(club, made.with_name("b.zip"), with_contacts=True)
    holders = {name for name, data in members(asked.file).items() if MAIL.encode() in data}
    assert holders == {"register.db"}, "lines for other programs never have them"
    assert asked.manifest.with_contacts and verify_archive(asked.file).faults == ()
    assert "give it to nobody" in members(asked.file)["read_me.txt"].decode()


def test_the_key_of_the_machine_is_in_no_part(club: Office, tmp_path: Path) -> None:
    signed_in(club, tmp_path / "a.zip")
    assert not any(b"PRIVATE" in data for data in members(tmp_path / "a.zip").values())


def test_the_same_register_at_the_same_moment_gives_the_same_bytes(club: Office, tmp_path: Path) -> None:
    making = writing.Making(club.now, "test", "Test Club", "read me")
    one, two = (writing.write_archive(club.book, tmp_path / name, making).file.read_bytes() for name in ("1", "2"))
    assert one == two


def test_a_file_that_is_there_is_not_written_over_and_nothing_lies_beside_it(club: Office, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    mine = tmp_path / "out" / "a.zip"
    mine.write_bytes(b"mine")
    before = verify_book(club).line_count
    with pytest.raises(Refused, match="is there already"):
        archive(club, mine)
    with pytest.raises(Refused, match="does not end in"):
        archive(club, mine.with_suffix(".tar"))
    with pytest.raises(Refused, match="cannot be written"):
        archive(club, tmp_path / "nowhere" / "a.zip")
    assert list(mine.parent.iterdir()) == [mine] and mine.read_bytes() == b"mine"
    assert verify_book(club).line_count == before


def test_a_full_disk_leaves_nothing_behind(club: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "out").mkdir()

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(Refused, match="No space left on device") as refusal:
        archive(club, tmp_path / "out" / "a.zip")
    assert "Make room" in refusal.value.what_to_do
    assert list((tmp_path / "out").iterdir()) == []


def test_an_archive_that_the_disk_spoilt_does_not_stay(
    club: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = writing.write_archive

    def spoilt(*given: object) -> writing.Written:
        made = whole(*given)  # type: ignore[arg-type]
        data = bytearray(made.file.read_bytes())
        data[len(data) // 2] ^= 1
        made.file.write_bytes(bytes(data))
        return made

    monkeypatch.setattr("inspector.duties.archive_register.write_archive", spoilt)
    before = verify_book(club).line_count
    with pytest.raises(Refused, match="not what was meant"):
        archive(club, tmp_path / "b.zip")
    assert not (tmp_path / "b.zip").exists() and verify_book(club).line_count == before


def test_work_that_is_stopped_leaves_nothing_behind(club: Office, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()

    class StoppedError(Exception):
        """Somebody pressed Stop."""

    def told(_done: int, _total: int) -> None:
        raise StoppedError

    with pytest.raises(StoppedError):
        archive(replace(club, told=told), tmp_path / "out" / "a.zip")
    assert list((tmp_path / "out").iterdir()) == []


@pytest.mark.parametrize("how", REFUSED)
def test_what_may_do_harm_or_is_no_archive_is_refused_and_nothing_is_written(
    made: Path, tmp_path: Path, how: str
) -> None:
    REFUSED[how](made)
    before = sorted(tmp_path.rglob("*"))
    with pytest.raises(Refused):
        verify_archive(made)
    with pytest.raises(Refused):
        open_archive(made, tmp_path / "deep" / "new")
    assert sorted(tmp_path.rglob("*")) == before


@pytest.mark.parametrize(("how", "where"), FAULTY.values(), ids=FAULTY)
def test_what_was_changed_is_told_and_not_opened(
    made: Path, tmp_path: Path, how: Callable[[Path], object], where: str
) -> None:
    how(made)
    faults = verify_archive(made).faults
    assert faults and faults[0].where.startswith(where)
    with pytest.raises(Refused, match="not as it was written"):
        open_archive(made, tmp_path / "new")
    assert not (tmp_path / "new").exists()


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(at=st.floats(0, 1, exclude_max=True), bit=st.integers(0, 7))
def test_a_flipped_bit_anywhere_is_found_or_changes_nothing(made: Path, at: float, bit: int) -> None:
    """Some bits of a zip file say nothing: days of members, words for other systems."""
    data = bytearray(made.read_bytes())
    data[int(at * len(data))] ^= 1 << bit
    spoilt = made.with_name("spoilt.zip")
    spoilt.write_bytes(bytes(data))
    try:
        found = verify_archive(spoilt)
    except Refused:
        return
    assert found.faults or members(spoilt) == members(made)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.binary(max_size=400), at=st.floats(0, 1))
def test_rubbish_in_the_place_of_a_stretch_is_never_a_traceback(made: Path, data: bytes, at: float) -> None:
    whole = made.read_bytes()
    start = int(at * len(whole))
    spoilt = made.with_name("spoilt.zip")
    spoilt.write_bytes(whole[:start] + data + whole[start + len(data) :])
    try:
        found = verify_archive(spoilt)
    except Refused:
        return
    assert found.faults or members(spoilt) == members(made)


def test_a_head_or_key_that_it_lacks_is_a_fault_and_what_is_none_is_refused(club: Office, tmp_path: Path) -> None:
    key = signed_in(club, tmp_path / "a.zip")
    head = verify_archive(tmp_path / "a.zip").manifest.head
    assert verify_archive(tmp_path / "a.zip", head[:12].upper(), f" {key[:32]} {key[32:]}").faults == ()
    assert "no line has the head" in verify_archive(tmp_path / "a.zip", "0123456789ab").faults[0].why
    assert "Another key signed it" in verify_archive(tmp_path / "a.zip", key="ab" * 32).faults[0].why
    for given_, match in (({"head": "beef"}, "at least 8 signs"), ({"key": "beef"}, "64 signs")):
        with pytest.raises(Refused, match=match):
            verify_archive(tmp_path / "a.zip", **given_)


def test_a_signature_taken_out_or_put_in_is_found(club: Office, tmp_path: Path) -> None:
    key = signed_in(club, tmp_path / "a.zip")
    parts = members(tmp_path / "a.zip")
    put(tmp_path / "b.zip", {name: data for name, data in parts.items() if name != "manifest.sig"})
    assert verify_archive(tmp_path / "b.zip").faults[0].where == "manifest.sig"
    bare = archive(club, tmp_path / "c.zip").file
    put(tmp_path / "d.zip", {**members(bare), "manifest.sig": parts["manifest.sig"]})
    assert verify_archive(tmp_path / "d.zip").faults[0].why == "It was put in afterwards."
    assert verify_archive(bare, key=key).faults[0].why == "It is not signed."


def test_an_archive_is_not_opened_over_a_register(club: Office, made: Path) -> None:
    folder = club.out_tray.parent
    before = (folder / "register.db").stat()
    with pytest.raises(Refused, match="holds a register already"):
        open_archive(made, folder)
    assert (folder / "register.db").stat().st_mtime_ns == before.st_mtime_ns


def test_what_a_database_would_do_by_itself_is_taken_out_before_it_is_opened(made: Path, tmp_path: Path) -> None:
    """A trigger of somebody else's: the register that is put in place has the program's own alone."""
    parts = members(made)
    (tmp_path / "evil.db").write_bytes(parts["register.db"])
    with closing(sqlite3.connect(tmp_path / "evil.db")) as evil, evil:
        evil.execute("DROP TRIGGER item_no_update")
        evil.execute("CREATE TRIGGER item_no_update AFTER INSERT ON ledger BEGIN DELETE FROM contact; END")
        evil.execute("CREATE VIEW seen AS SELECT 1")
    put(made, listed({**parts, "register.db": (tmp_path / "evil.db").read_bytes()}))
    open_archive(made, tmp_path / "new")
    with closing(sqlite3.connect(tmp_path / "new" / "register.db")) as back:
        stands = dict(back.execute("SELECT name, sql FROM sqlite_master WHERE type IN ('trigger', 'view')").fetchall())
    assert "seen" not in stands and "RAISE(ABORT" in stands["item_no_update"]


def test_a_disk_without_room_to_look_it_through_is_said(made: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    usage = shutil.disk_usage(made)
    monkeypatch.setattr(shutil, "disk_usage", lambda _: usage._replace(free=1 << 20))
    with pytest.raises(Refused, match="1 MB are free"):
        verify_archive(made)


def test_memory_does_not_grow_with_the_files_in_it(office: Office, tmp_path: Path) -> None:
    """Two files of twelve megabytes; the most that is held at once stays below half of one while it is written and
    unpacked. The ledger's own proof reads each file whole, one at a time, as it always did."""
    size = 12 << 20
    with office.book.page() as page:
        for number in range(2):
            data = bytes([number]) + os.urandom(1 << 16) * (size >> 16)
            facts = NewAttachment(
                office.today, PaperKind.PHOTO, f"{number}.jpg", "image/jpeg", len(data), *(_sha256(data),) * 2, "x"
            )
            page.add_attachment(office.officer.id, facts, data)
            del data
        page.enter("attach", by=office.officer.id, at=office.now, facts={})
    making = writing.Making(office.now, "test", "Test Club", "read me")
    copy = backup.back_up(office.book, tmp_path / "copy", office.today).file
    tracemalloc.start()
    try:
        with (tmp_path / "a.zip").open("wb") as stream, ZipFile(stream, "w") as box:
            writing._put_all(writing._Box(box, office.now), copy, making)
        with ZipFile(tmp_path / "a.zip") as box:
            for name in box.namelist():
                assert prove._sum_of(box, name, None)
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert most < size // 2


def _sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def test_the_bounds_are_those_that_are_stated() -> None:
    assert "64 MB" in str(shape.__doc__) and shape._MOST_DIRECTORY == 64 << 20
    assert "200,000 members" in str(shape.__doc__) and shape._MOST_MEMBERS == 200_000
    assert "250" in str(shape.__doc__) and shape._MOST_RATIO == 250


def test_nobody_signs_with_a_wrong_passphrase_and_nothing_is_written(club: Office, tmp_path: Path) -> None:
    signed_in(club, tmp_path / "a.zip")
    with pytest.raises(Refused, match="not that of the signing key"):
        archive(club, tmp_path / "b.zip", passphrase=SECRET + "x")
    assert not (tmp_path / "b.zip").exists()
