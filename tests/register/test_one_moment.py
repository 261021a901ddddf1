"""What is read in several looks and shown together is of one moment, and nothing is written in between them."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.office import Office
from inspector.register.book import open_book
from tests.duties.gear import shackle


def _count(office: Office) -> int:
    with office.book.reading() as page:
        return page.piece_count()


def test_looks_of_one_moment_do_not_see_what_is_written_meanwhile(office: Office, tmp_path: Path) -> None:
    other = replace(office, book=open_book(tmp_path / "register.db"))
    book_in(office, shackle("SH-1"))
    with office.book.one_moment():
        assert _count(office) == 1
        book_in(other, shackle("SH-2"))
        with office.book.one_moment():
            assert _count(office) == 1 < _count(other) == 2
    assert _count(office) == 2
    other.book.close()


def test_nothing_can_be_written_while_something_is_read(office: Office) -> None:
    with office.book.one_moment():
        with pytest.raises(RuntimeError, match="only read"):
            book_in(office, shackle("SH-1"))
        with pytest.raises(RuntimeError, match="only read"), office.book.together():
            pass
    assert _count(office) == 0
    book_in(office, shackle("SH-1"))
    with office.book.together(), office.book.one_moment():
        assert _count(office) == 1
        book_in(office, shackle("SH-2"))
