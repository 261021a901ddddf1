"""What is read in several looks and shown together is of one moment, and nothing is written in between them."""

from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import event

from inspector.duties.book_in import book_in
from inspector.duties.change_item import retag
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


def test_what_was_read_in_a_moment_is_not_asked_for_again_in_it_and_anew_in_the_next(office: Office) -> None:
    book_in(office, shackle("SH-1"))
    asked: list[str] = []
    event.listen(office.book._engine, "before_cursor_execute", lambda *given: asked.append(given[2]))

    def look() -> tuple[str, str]:
        with office.book.reading() as page:
            return page.item("SH-1").tag, page.latest_verdict(page.item("SH-1").id)[1].headline

    with office.book.one_moment():
        first = look()
        once = [one for one in asked if one.startswith("SELECT")]
        assert first == look() == look()
        assert [one for one in asked if one.startswith("SELECT")] == once and len(once) == 2
    retag(office, "SH-1", "SH-9", "the label was torn")
    with office.book.one_moment():
        assert look()[0] == "SH-9"
    with office.book.together(), office.book.one_moment():
        assert look()[0] == "SH-9"
        retag(office, "SH-9", "SH-7", "torn again")
        assert look()[0] == "SH-7", "where something is written, all is asked for anew"
