"""Copies of the register: whole, never over another, and put back as they were."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.back_up import back_up, enter_restored, restore
from inspector.duties.book_in import book_in
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused
from inspector.register import backup as copies
from inspector.register.backup import Backup, sha256_of
from inspector.register.book import Book
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import shackle
from tests.register.test_upgrade import with_own_names


@pytest.fixture
def made(office: Office) -> Backup:
    """A copy of a register with one piece."""
    book_in(office, shackle())
    return back_up(office)


def test_a_copy_is_named_with_its_day_and_head_and_is_entered(office: Office, made: Backup) -> None:
    assert made.file.name == f"register-2026-11-25-{made.head[:12]}.db"
    assert made.size_bytes == made.file.stat().st_size and made.sha256 == sha256_of(made.file)
    found = verify_book(office, made.head)
    assert found.faults == () and found.line_count == made.line_count + 1
    assert sorted(made.file.parent.iterdir()) == [made.file], "nothing lies beside it"


def test_a_copy_put_back_is_the_register_as_it_was(
    office: Office, made: Backup, tmp_path: Path, rules: Rulebook
) -> None:
    book_in(office, shackle("SH-2"))
    again = restore(made.file, tmp_path / "new", made.head)
    assert again.head == made.head
    back = office_in(tmp_path / "new", rules)
    assert [row.tag for row in list_gear(back).rows] == ["SH-1"]
    assert verify_book(back, made.head).head == made.head
    enter_restored(replace(back, officer=office.officer), again)
    assert verify_book(back, made.head).faults == ()
    assert back.book.origin != office.book.origin, "two copies never issue the same number"
    back.book.close()


def test_a_register_that_is_there_is_not_written_over(office: Office, made: Backup) -> None:
    folder = office.out_tray.parent
    before = sha256_of(folder / "register.db")
    with pytest.raises(Refused, match="holds a register already") as refusal:
        restore(made.file, folder)
    assert "empty folder" in refusal.value.what_to_do
    assert sha256_of(folder / "register.db") == before


@pytest.mark.parametrize("left", ["register.db-wal", "register.db-shm", "register.db-journal"])
def test_what_a_lost_register_left_behind_is_not_mixed_into_the_restored_one(
    made: Backup, tmp_path: Path, left: str
) -> None:
    (tmp_path / "new").mkdir()
    (tmp_path / "new" / left).write_bytes(b"left")
    with pytest.raises(Refused, match="or a part of one"):
        restore(made.file, tmp_path / "new")


def test_a_copy_of_the_same_name_stays_as_it_is(office: Office, tmp_path: Path) -> None:
    one = copies.back_up(office.book, tmp_path / "b", office.today)
    one.file.write_bytes(b"mine")
    with pytest.raises(Refused, match="is there already"):
        copies.back_up(office.book, tmp_path / "b", office.today)
    assert one.file.read_bytes() == b"mine" and list((tmp_path / "b").iterdir()) == [one.file]


def _cut(file: Path) -> None:
    file.write_bytes(file.read_bytes()[: file.stat().st_size // 2])


def _scribble(file: Path) -> None:
    data = bytearray(file.read_bytes())
    for at in range(4096 * 3, len(data), 4096):
        data[at : at + 64] = b"\xff" * 64
    file.write_bytes(bytes(data))


def _change_a_row(file: Path) -> None:
    with closing(sqlite3.connect(file)) as copy, copy:
        copy.execute("DROP TRIGGER item_no_update")
        copy.execute("UPDATE item SET body = replace(body, '4.75', '9.75')")


def _cut_the_ledger(file: Path) -> None:
    with closing(sqlite3.connect(file)) as copy, copy:
        copy.execute("DROP TRIGGER ledger_no_delete")
        copy.execute("DELETE FROM ledger WHERE id = (SELECT max(id) FROM ledger)")


def no_text(file: Path) -> None:
    """Let a text be none that can be read."""
    data = file.read_bytes()
    assert b"### checks.toml" in data
    file.write_bytes(data.replace(b"### checks.toml", b"### \xc6\xc1ecks.toml"))


SPOILT = {
    "a text that is none": no_text,
    "empty": lambda file: file.write_bytes(b""),
    "cut off": _cut,
    "no database": lambda file: file.write_bytes(b"not a register" * 1000),
    "scribbled over": _scribble,
    "a changed row": _change_a_row,
    "a shorter ledger": _cut_the_ledger,
}


@pytest.mark.parametrize("how", SPOILT)
def test_a_spoilt_copy_is_noticed_and_put_nowhere(made: Backup, tmp_path: Path, how: str) -> None:
    SPOILT[how](made.file)
    with pytest.raises(Refused, match="not a whole copy of a register"):
        restore(made.file, tmp_path / "new")
    assert not (tmp_path / "new" / "register.db").exists()


def test_a_changed_row_is_noticed_though_the_file_got_another_name(made: Backup, tmp_path: Path) -> None:
    _change_a_row(made.file)
    renamed = made.file.rename(tmp_path / "mine.db")
    with pytest.raises(Refused, match=r"row .* was changed"):
        restore(renamed, tmp_path / "new")


def test_a_copy_that_does_not_hold_the_head_of_a_document_is_noticed(
    office: Office, made: Backup, tmp_path: Path
) -> None:
    book_in(office, shackle("SH-2"))
    later_head = verify_book(office).head
    with pytest.raises(Refused, match="no line has the head"):
        restore(made.file, tmp_path / "new", later_head[:12])


def test_a_file_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="There is no file"):
        restore(tmp_path / "gone.db", tmp_path / "new")


def test_a_copy_of_a_newer_program_is_left_alone(made: Backup, tmp_path: Path) -> None:
    with closing(sqlite3.connect(made.file)) as copy, copy:
        copy.execute("UPDATE alembic_version SET version_num = '9999'")
    with pytest.raises(Refused, match="newer version"):
        restore(made.file, tmp_path / "new")


def test_a_copy_of_an_older_program_is_brought_up_and_keeps_its_ledger(
    office: Office, made: Backup, tmp_path: Path, rules: Rulebook
) -> None:
    with_own_names(made.file)
    with closing(sqlite3.connect(made.file)) as copy, copy:
        copy.execute("UPDATE alembic_version SET version_num = '0007'")
    old = made.file.read_bytes()
    restore(made.file, tmp_path / "new", made.head[:12])
    assert made.file.read_bytes() == old and [one.name for one in (tmp_path / "new").iterdir()] == ["register.db"]
    opened = office_in(tmp_path / "new", rules)
    assert [row.tag for row in list_gear(opened).rows] == ["SH-1"] and verify_book(opened).faults == ()
    assert opened.book.origin != office.book.origin
    opened.book.close()


def test_a_copy_that_is_cut_short_while_it_is_made_takes_no_name(
    office: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain = copies.copy_into

    def cut_short(source: Path, part: Path, told: object) -> str:
        head = plain(source, part)
        _cut(part)
        return head

    monkeypatch.setattr(copies, "copy_into", cut_short)
    with pytest.raises(Refused, match="not a whole copy"):
        copies.back_up(office.book, tmp_path / "b", office.today)
    assert list((tmp_path / "b").iterdir()) == []


def test_what_a_killed_run_left_behind_is_in_nobodys_way(office: Office, tmp_path: Path) -> None:
    (tmp_path / "b").mkdir()
    (tmp_path / "b" / f".backup-{office.today.isoformat()}.part").write_bytes(b"half")
    made = copies.back_up(office.book, tmp_path / "b", office.today)
    assert list((tmp_path / "b").iterdir()) == [made.file]


def test_a_copy_holds_what_was_committed_while_another_deed_is_being_written(office: Office, tmp_path: Path) -> None:
    with office.book.page() as page:
        page.set("club", "Other Club")
        made = copies.back_up(office.book, tmp_path / "b", office.today)
        page.enter("club settings", by=office.officer.id, at=office.now, facts={"club": "Other Club"})
    with closing(sqlite3.connect(made.file)) as copy:
        assert copy.execute("SELECT value FROM club_setting WHERE key = 'club'").fetchone() == ("Test Club",)


def test_a_folder_that_cannot_be_written_is_refused(office: Office, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    with pytest.raises(Refused, match=r"cannot be written|already"):
        copies.back_up(office.book, tmp_path / "file" / "b", office.today)


def test_a_database_of_another_make_is_refused_with_its_own_tool(office: Office, tmp_path: Path) -> None:
    class Elsewhere(Book):
        def __init__(self) -> None: ...

        @property
        def file(self) -> None:
            return None

        @property
        def make(self) -> str:
            return "postgresql"

    with pytest.raises(Refused, match="postgresql database") as refusal:
        copies.back_up(Elsewhere(), tmp_path, office.today)
    assert "pg_dump" in refusal.value.what_to_do


def test_a_copy_whose_lists_would_show_another_verdict_is_refused(made: Backup, tmp_path: Path) -> None:
    with closing(sqlite3.connect(made.file)) as copy, copy:
        copy.execute("UPDATE standing SET outcome = 'fit'")
    with pytest.raises(Refused, match="not a whole copy"):
        restore(made.file, tmp_path / "new")


def test_a_copy_that_is_stopped_leaves_nothing(office: Office, tmp_path: Path) -> None:
    steps: list[tuple[int, int]] = []

    def stop(done: int, total: int) -> None:
        steps.append((done, total))
        raise Refused("work", "stopped", "Begin it again.")

    with pytest.raises(Refused, match="stopped"):
        back_up(replace(office, told=stop), tmp_path / "copies")
    assert len(steps) == 1 and 0 < steps[0][0] <= steps[0][1]
    assert list((tmp_path / "copies").iterdir()) == []
