"""Proving a register keeps no more in memory of a long history than of a short one."""

import sqlite3
import tracemalloc
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import Connection, text

from inspector.duties.book_in import book_in
from inspector.duties.found_club import found_club
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused
from inspector.register import ledger
from inspector.register.aside import aside
from inspector.rulebook.load import Rulebook
from tests.benchmarks import big_register
from tests.conftest import office_in
from tests.duties.gear import shackle

_FEW, _MANY = 500, 2000  # both more than are looked at together
_ROOM = 300_000  # bytes; with an entry a row the difference was 2,400,000


@pytest.fixture
def office(tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A club with one piece, booked in once more to be copied."""
    made = office_in(tmp_path, rules)
    made = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    book_in(made, shackle("SH-1"))
    big_register.live_again(made)
    yield made
    made.book.close()


def most_kept(connection: Connection, whole: bool) -> int:
    """The most bytes that proving takes; whole: whether nothing is found."""
    tracemalloc.start()
    try:
        assert (ledger.verify(connection).faults == ()) is whole
        return tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()


def test_a_full_disk_beside_the_register_is_no_fault_of_the_register(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    @contextmanager
    def narrow() -> Iterator[sqlite3.Connection]:
        with aside() as noted:
            noted.execute("PRAGMA max_page_count = 5")  # SQLite tells it as it tells a full disk
            yield noted

    monkeypatch.setattr(ledger, "aside", narrow)
    with pytest.raises(Refused, match=r"no place to note.*full") as refused:
        verify_book(office)
    assert refused.value.what_to_do == "Make room on this computer's disk."


def test_memory_does_not_grow_with_the_history(office: Office) -> None:
    """Neither of a whole register, nor of one that a fault is found in before what stands is looked at."""
    pattern, found = big_register.pattern_of(office), []
    for count in (_FEW, _MANY):
        with office.book.own_connection(write=True) as connection:
            big_register.write_into(connection, pattern, count, lambda _: None)
        with office.book.own_connection(write=False) as connection:
            found.append(most_kept(connection, whole=True))
    assert found[1] < found[0] + _ROOM, found
    with office.book.own_connection(write=True) as connection:
        connection.execute(text("UPDATE club_setting SET value = 'x' WHERE key = 'club'"))
        assert most_kept(connection, whole=False) < found[0] + _ROOM
        connection.rollback()
