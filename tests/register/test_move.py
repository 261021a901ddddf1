"""A register is carried to a server and back, the same in every row; what is left takes no deed any more."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace
from sqlalchemy import Connection, Table, insert, select, text

from inspector.duties.attach import attach
from inspector.duties.book_in import book_in
from inspector.duties.club_settings import change_club_settings, club_settings
from inspector.duties.keep_contact import write_contact
from inspector.duties.keep_passphrases import set_passphrase, set_wish
from inspector.duties.look_up import people
from inspector.duties.machine_settings import LAST_PLACE, MachineSettings
from inspector.duties.move_register import move_register
from inspector.duties.office import Office
from inspector.duties.record_use import record_use
from inspector.duties.register_place import moved_away_to
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.attachment import PaperKind
from inspector.gear.person import Passphrases
from inspector.gear.use import NewUse
from inspector.refused import Refused
from inspector.register import move as carrying
from inspector.register import turns
from inspector.register.book import Book, open_book
from inspector.register.columns import METADATA
from inspector.register.engines import open_engine
from tests.duties.gear import strap
from tests.server import Database, Server


@pytest.fixture
def empty(server: Server) -> Iterator[Database]:
    """A database of its own for each test: a register is moved into an empty one."""
    with server.database() as made:
        yield made


def filled(office: Office, tag: str, folder: Path) -> Office:
    """The register with a file, contact details, a passphrase, a wish of the club, and text of every sort."""
    paper = b"%PDF-1.4\n" + bytes(range(256)) + b"\n%%EOF\n"
    attach(office, tag, "paper.pdf", paper, PaperKind.CERTIFICATE, note="kept")
    set_wish(office, Passphrases.WANTED)
    set_passphrase(office, office.officer.id, "long enough to be kept")
    write_contact(office, office.officer.id, phone="0123", address="Zoë 李, 🏖")
    change_club_settings(office, replace(club_settings(office), club="Pellick Spit 🏖 Touring Club"))
    record_use(office, tag, NewUse(office.today, 1, note="🧰 𝔖 Zoë 李"))
    return replace(office, machine=MachineSettings(folder / "window.json"))


@pytest.fixture
def full(office: Office, tmp_path: Path) -> Office:
    """A small register with something of every sort."""
    book_in(office, strap("SH-01"))
    return filled(office, "SH-01", tmp_path)


def every_row(book: Book) -> dict[str, list[tuple[object, ...]]]:
    """All that is kept, in one order, as the driver gives it."""
    with book.own_connection(write=False) as connection:
        return {
            table.name: sorted((tuple(row) for row in connection.execute(select(table))), key=repr)
            for table in METADATA.sorted_tables
        }


def without_lines(rows: dict[str, list[tuple[object, ...]]], *deeds: str) -> dict[str, list[tuple[object, ...]]]:
    return rows | {"ledger": [row for row in rows["ledger"] if not set(deeds) & set(map(str, row))]}


def test_a_register_goes_to_a_server_and_back_and_is_the_same(sample: Office, empty: Database, tmp_path: Path) -> None:
    full = filled(sample, "SH-01", tmp_path)
    before = every_row(full.book)
    assert all(before[name] for name in ("contact", "passphrase", "attachment_data", "club_setting", "verdict"))
    moved = move_register(full, empty.url)
    assert empty.password not in moved.to + repr(full.machine.get(LAST_PLACE))
    assert full.machine.get(LAST_PLACE).startswith("postgresql://")
    there = replace(full, book=open_book(empty.url))
    assert without_lines(every_row(there.book), "arrive", "move away") == before
    assert without_lines(every_row(full.book), "move away") == before
    left = verify_book(full)
    assert left.head == moved.head and left.faults == verify_book(there, moved.head).faults == ()
    record_use(there, "SH-01", NewUse(full.today, 2))

    again = move_register(there, tmp_path / "home")
    home = replace(full, book=open_book(tmp_path / "home" / "register.db"))
    assert without_lines(every_row(home.book), "arrive") == without_lines(every_row(there.book), "arrive")
    assert verify_book(home, again.head).faults == ()
    assert "moved the register to" in "".join(map(str, told_ledger(home, last=3)))
    record_use(home, "SH-01", NewUse(full.today, 3))
    there.book.close()
    home.book.close()


def test_what_was_left_can_be_looked_at_and_takes_no_deed(full: Office, empty: Database) -> None:
    move_register(full, empty.url)
    assert moved_away_to(full).startswith("postgresql://")
    head = verify_book(full).head
    with pytest.raises(Refused, match="moved to postgresql"):
        record_use(full, "SH-01", NewUse(full.today, 1))
    assert verify_book(full).head == head and verify_book(full).faults == ()
    with pytest.raises(Refused, match="moved to postgresql"):
        move_register(full, full.out_tray / "elsewhere")
    assert not (full.out_tray / "elsewhere" / "register.db").exists()


def test_what_holds_a_register_already_stays_as_it_is(full: Office, empty: Database, tmp_path: Path) -> None:
    open_book(empty.url).close()  # it has its own name by now
    head = verify_book(full).head
    for place in (empty.url, full.out_tray.parent):
        with pytest.raises(Refused, match="holds a register already"):
            move_register(full, place)
    assert verify_book(full).head == head and moved_away_to(full) == ""


def test_a_move_that_broke_off_between_the_two_is_completed_by_the_same_move(
    full: Office, empty: Database, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep = turns.keep

    def broken(connection: Connection, head: str) -> None:
        if connection.dialect.name == "postgresql":
            raise turns.Unknown(head)
        keep(connection, head)

    monkeypatch.setattr(turns, "keep", broken)
    with pytest.raises(turns.Unknown):
        move_register(full, empty.url)
    monkeypatch.undo()
    with pytest.raises(Refused, match="moved to"):
        record_use(full, "SH-01", NewUse(full.today, 1))
    head = verify_book(full).head
    moved = move_register(full, empty.url)
    assert moved.again and moved.head == head == verify_book(full).head
    there = open_book(empty.url)
    with there.reading() as page:
        assert page.verify(head).faults == ()
    there.close()


def test_stopped_work_leaves_both_sides_as_they_were(full: Office, empty: Database, tmp_path: Path) -> None:
    head = verify_book(full).head

    def stop(done: int, total: int) -> None:
        assert done <= total
        if done > total / 2:
            raise Refused("work", "It was stopped.", "Begin it again.")

    for place in (empty.url, tmp_path / "half"):
        with pytest.raises(Refused, match="stopped"):
            move_register(replace(full, told=stop), place)
    assert verify_book(full).head == head and not (tmp_path / "half" / "register.db").exists()
    assert move_register(full, empty.url).row_count > 10


def test_what_a_server_cannot_hold_is_told_before_anything_is_moved(full: Office, empty: Database) -> None:
    for value in ("a\x00b", ""):
        with full.book.own_connection(write=True) as connection:
            table = METADATA.tables["club_setting"]
            connection.execute(table.delete().where(table.c.key.like("odd%")))
            key = "odd" if value else "odd" * 40
            connection.execute(insert(table), {"key": key, "value": value})
            connection.commit()
        with pytest.raises(Refused, match="A server cannot hold"):
            move_register(full, empty.url)
    assert moved_away_to(full) == ""


def test_a_register_with_faults_is_not_moved(full: Office, empty: Database) -> None:
    with full.book.own_connection(write=True) as connection:
        connection.execute(text("DROP TRIGGER piece_use_no_update"))
        connection.execute(text("UPDATE piece_use SET body = body || ' '"))
        connection.commit()
    with pytest.raises(Refused, match="finds one fault"):
        move_register(full, empty.url)


def test_what_came_over_otherwise_is_found(full: Office, empty: Database, monkeypatch: pytest.MonkeyPatch) -> None:
    read = carrying._read
    calls: list[Table] = []

    def bent(connection: Connection, table: Table) -> Iterator[list[dict[str, Any]]]:
        calls.append(table)
        for rows in read(connection, table):
            changes = table.name == "club_setting" and len(calls) > len(METADATA.sorted_tables)
            yield [row | {"value": "other"} for row in rows] if changes else rows

    monkeypatch.setattr(carrying, "_read", bent)
    with pytest.raises(Refused, match="not the same"):
        move_register(full, empty.url)
    assert moved_away_to(full) == ""


def test_an_engine_on_an_empty_database_writes_nothing_into_it(empty: Database) -> None:
    engine = open_engine(empty.url)
    with engine.connect() as connection:
        assert not any(connection.execute(select(table)).first() for table in METADATA.sorted_tables)
    engine.dispose()


def test_everybody_is_there_still(full: Office, empty: Database) -> None:
    names = [one.name for one in people(full)]
    move_register(full, empty.url)
    there = replace(full, book=open_book(empty.url))
    assert [one.name for one in people(there)] == names and there.today == date(2026, 11, 25)
    there.book.close()
