"""The tests wait for no disk and no dear hash, the program does: the one must not hide what becomes of the other."""

from pathlib import Path

import pytest

from inspector.register.passphrases import hashed
from tests import hurry
from tests.fresh import fresh_book


def test_a_register_of_the_tests_waits_for_no_disk(tmp_path: Path) -> None:
    book = fresh_book(tmp_path / "register.db")
    with book.own_connection(write=False) as connection:
        assert connection.exec_driver_sql("PRAGMA synchronous").scalar() == 0
    book.close()


def test_a_hash_of_the_tests_is_one_that_the_program_can_read() -> None:
    kept = hashed("low water")
    assert "$m=8,t=1,p=1$" in kept and hurry.PACKAGED_HASHER().verify(kept, "low water")


def test_where_the_program_waits_no_more_no_test_begins(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(hurry, "PACKAGED", ("foreign_keys=ON", "synchronous=NORMAL"))
    with pytest.raises(ValueError, match="synchronous=FULL"):
        hurry.hurry()
