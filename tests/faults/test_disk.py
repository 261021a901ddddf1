"""What a disk does wrong is told plainly, and what was there stays as it was.

Plain root may do all of it: rights are tried as nobody, a full disk by a limit on the size of files and pages.
"""

import os
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.back_up import back_up, restore
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.sit_down import seat
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.file_systems import remote_kind
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.faults.old_register import old_register
from tests.faults.small import inspect

NOBODY = 65534


@pytest.fixture
def opened(small: Path, rules: Rulebook) -> Iterator[Office]:
    """The small register, open."""
    made = office_in(small.parent, rules)
    yield seat(made)
    made.book.close()


@contextmanager
def as_nobody() -> Iterator[None]:
    """Without root's right to write anywhere."""
    if os.geteuid():
        yield
        return
    os.seteuid(NOBODY)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.fixture
def reachable(small: Path) -> Iterator[Path]:
    """The small register in a folder that anybody can reach."""
    folder = Path(tempfile.mkdtemp())
    shutil.copyfile(small, folder / "register.db")
    yield folder
    for one in (folder, *folder.rglob("*")):
        one.chmod(0o755)
    shutil.rmtree(folder)


def test_a_full_disk_keeps_nothing_of_the_deed_and_all_before_it(opened: Office) -> None:
    with opened.book.reading() as page:
        (pages,) = page._connection.exec_driver_sql("PRAGMA page_count").one()
    head = verify_book(opened).head

    def full(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute(f"PRAGMA max_page_count = {pages + 2}")

    from sqlalchemy import event

    opened.book._engine.dispose()
    event.listen(opened.book._engine, "connect", full)
    with pytest.raises(Refused, match="no room left") as refusal:
        inspect(opened, "SH-1")
    assert "nothing of it was kept" in refusal.value.what_to_do
    found = verify_book(opened)
    assert found.head == head and found.faults == ()


def test_a_file_that_may_only_be_read_is_refused_and_stays(reachable: Path) -> None:
    file = reachable / "register.db"
    file.chmod(0o444)
    reachable.chmod(0o555)
    before = file.read_bytes()
    with as_nobody(), pytest.raises(Refused, match="may not be written to") as refusal:
        open_book(file)
    assert "Nothing was changed" in refusal.value.what_to_do
    assert file.read_bytes() == before and [one.name for one in reachable.iterdir()] == ["register.db"]


def test_a_file_that_may_not_even_be_read_is_refused(reachable: Path) -> None:
    (reachable / "register.db").chmod(0o000)
    with as_nobody(), pytest.raises(Refused, match="cannot be read"):
        open_book(reachable / "register.db")


def test_a_copy_on_a_disk_that_may_only_be_read_can_be_put_back(opened: Office, reachable: Path) -> None:
    shutil.copyfile(back_up(opened).file, reachable / "register.db")
    (reachable / "register.db").chmod(0o444)
    reachable.chmod(0o555)
    with tempfile.TemporaryDirectory() as place:
        Path(place).chmod(0o777)
        with as_nobody():
            restore(reachable / "register.db", Path(place) / "new")
        assert (Path(place) / "new" / "register.db").exists()


def test_a_register_that_is_deleted_while_it_is_open_is_missed_at_the_next_deed(opened: Office, small: Path) -> None:
    list_gear(opened)
    small.unlink()
    with pytest.raises(Refused, match="not there any more"):
        inspect(opened, "SH-1")
    with pytest.raises(Refused, match="not there any more"):
        list_gear(opened)
    assert not small.exists(), "no new one is begun in its place"


def test_another_file_in_its_place_is_not_written_to(opened: Office, small: Path) -> None:
    list_gear(opened)
    other = small.with_name("other.db")
    shutil.copyfile(small, other)
    other.replace(small)
    before = small.read_bytes()
    with pytest.raises(Refused, match="Another file was put in the place"):
        inspect(opened, "SH-1")
    assert small.read_bytes() == before


def test_a_drive_that_stops_answering_is_told(opened: Office, monkeypatch: pytest.MonkeyPatch) -> None:
    from sqlalchemy.exc import OperationalError

    from inspector.register.opening import refusal_of

    gone = sqlite3.OperationalError("disk I/O error")
    gone.sqlite_errorcode = sqlite3.SQLITE_IOERR_READ
    refusal = refusal_of(OperationalError("SELECT 1", None, gone))
    assert refusal and "does not do what it should" in refusal.why
    assert "Look whether what you did last was kept" in refusal.what_to_do


def test_a_register_that_another_program_writes_to_is_told_on_opening_and_in_a_deed(
    opened: Office, small: Path, rules: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("inspector.register.guards._PRAGMAS", ("foreign_keys=ON", "busy_timeout=50"))
    opened.book._engine.dispose()
    with closing(sqlite3.connect(small, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        again = office_in(small.parent, rules)
        assert list_gear(again).count == 5, "it can be read meanwhile"
        with pytest.raises(Refused, match="Another window or program is writing"):
            inspect(seat(again), "SH-1")
        again.book.close()
        other.execute("ROLLBACK")
        inspect(opened, "SH-1")


def test_a_register_that_another_program_keeps_to_itself_is_told(small: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("inspector.register.guards._PRAGMAS", ("foreign_keys=ON", "busy_timeout=50"))
    with closing(sqlite3.connect(small, isolation_level=None)) as other:
        other.execute("PRAGMA locking_mode=EXCLUSIVE")
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(Refused, match="Another window or program"):
            open_book(small)


def test_two_windows_on_one_register_both_keep_what_they_do(opened: Office, rules: Rulebook) -> None:
    other = seat(office_in(opened.out_tray.parent, rules))
    for _ in range(3):
        inspect(opened, "SH-1")
        inspect(other, "SH-3")
    found = verify_book(opened)
    assert found.faults == () and found == verify_book(other)
    other.book.close()


def _cut(file: Path) -> None:
    file.write_bytes(file.read_bytes()[:-5000])


def _newer(file: Path) -> None:
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")


def _of_another_program(file: Path) -> None:
    file.unlink()
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("CREATE TABLE songs (name TEXT)")


def _folder(file: Path) -> None:
    file.unlink()
    file.mkdir()


def _left_behind(file: Path) -> None:
    file.unlink()
    file.with_name("register.db-wal").write_bytes(b"what was written last" * 10)


SPOILT = {
    "is cut off": _cut,
    "is empty": lambda file: file.write_bytes(b""),
    "is no register": lambda file: file.write_bytes(b"a letter to the members, and a long one " * 200),
    "newer version": _newer,
    "of another program": _of_another_program,
    "is a folder": _folder,
    "is left of it": _left_behind,
}


def _all_bytes(folder: Path) -> dict[str, bytes]:
    return {one.name: one.read_bytes() for one in folder.rglob("*") if one.is_file()}


@pytest.mark.parametrize("says", SPOILT)
def test_what_is_no_whole_register_is_refused_and_left_byte_by_byte(small: Path, says: str) -> None:
    SPOILT[says](small)
    before = _all_bytes(small.parent)
    with pytest.raises(Refused, match=says) as refusal:
        open_book(small)
    assert refusal.value.field == "register" and len(refusal.value.what_to_do) > 20
    left = _all_bytes(small.parent)
    assert {name: left.get(name) for name in before} == before


def test_without_room_for_the_copy_the_register_is_not_upgraded(small: Path) -> None:
    old = small.parent / "old" / "register.db"
    old.parent.mkdir()
    old_register(old, small)
    (old.parent / "backups").write_text("a file in the folder's place")
    with closing(sqlite3.connect(old)) as connection:
        connection.execute("PRAGMA journal_mode=WAL")
    before = old.read_bytes()
    with pytest.raises(Refused):
        open_book(old)
    assert old.read_bytes() == before


MOUNTS = """\
/dev/sda1 / ext4 rw 0 0
server:/club /mnt/club nfs4 rw 0 0
//server/club /mnt/my\\040share cifs rw 0 0
some@where: /mnt/away fuse.sshfs rw 0 0
/dev/sdb1 /mnt/stick fuseblk rw 0 0
"""


@pytest.mark.parametrize(
    ("file", "kind"),
    [
        ("/srv/register.db", ""),
        ("/mnt/club/register/register.db", "nfs4"),
        ("/mnt/clubhouse/register.db", ""),
        ("/mnt/my share/register.db", "cifs"),
        ("/mnt/away/register.db", "fuse.sshfs"),
        ("/mnt/stick/register.db", ""),
    ],
)
def test_a_network_drive_is_known_by_its_file_system(file: str, kind: str) -> None:
    assert remote_kind(Path(file), MOUNTS) == kind


def test_on_a_network_drive_the_register_keeps_a_rollback_journal_and_says_so(
    small: Path, rules: Rulebook, monkeypatch: pytest.MonkeyPatch
) -> None:
    from inspector.duties.tell_opening import opening_lines

    for asked_by in ("engines", "book"):
        monkeypatch.setattr(f"inspector.register.{asked_by}.remote_kind", lambda file: "nfs4")
    office = seat(office_in(small.parent, rules))
    with office.book.reading() as page:
        assert page._connection.exec_driver_sql("PRAGMA journal_mode").scalar() == "delete"
    inspect(office, "SH-1")
    assert ["network drive (nfs4)" in one for one in opening_lines(office)] == [True]
    assert back_up(replace(office)).file.exists() and verify_book(office).faults == ()
    office.book.close()
