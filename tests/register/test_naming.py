"""Which papers name a piece is written down beside them, and follows from what they say."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from sqlalchemy import Connection, create_engine, event, select

from inspector.duties.book_in import book_in
from inspector.duties.bring_back import bring_back
from inspector.duties.change_item import retag
from inspector.duties.field_copies import take_field_copy
from inspector.duties.office import Office
from inspector.duties.papers_named import papers_named
from inspector.duties.print_record import print_record
from inspector.duties.sit_down import seat
from inspector.duties.verify_book import verify_book
from inspector.gear.lists import Fault
from inspector.register import tables, year_tables
from inspector.register.book import open_book
from inspector.register.columns import METADATA
from inspector.register.naming import name_tags
from inspector.register.rows import to_body
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import shackle


def written(office: Office) -> set[tuple[str, str]]:
    """What is written down: number and tag."""
    with office.book.own_connection(write=False) as connection:
        return {(str(number), str(tag)) for number, tag in connection.execute(select(tables.named_in))}


def said(office: Office) -> set[tuple[str, str]]:
    """What every document says: a tag that there is stands in it as a text of its own."""
    with office.book.own_connection(write=False) as connection:
        bodies = {str(number): str(body) for number, body in connection.execute(
            select(tables.document.c.id, tables.document.c.body))}  # fmt: skip
        tags = {str(tag) for of in (tables.item, year_tables.item_change)
                for tag in connection.execute(select(of.c.tag)).scalars()}  # fmt: skip
    return {(number, tag) for number, body in bodies.items() for tag in tags if to_body(tag) in body}


def numbers(office: Office, tag: str) -> list[str]:
    return [one.number for one in papers_named(office, tag)]


def file_of(office: Office) -> Path:
    assert office.book.file
    return office.book.file


def as_before(file: Path) -> None:
    """Take the table away, as the tenth revision had none."""
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("DROP TABLE named_in")
        connection.execute("UPDATE alembic_version SET version_num = '0010'")


@pytest.fixture
def printed(office: Office) -> Office:
    """Two pieces, and a record of each that was printed."""
    for tag in ("SH-1", "SH-2"):
        book_in(office, shackle(tag))
        print_record(office, tag)
    return office


def test_every_paper_of_the_sample_is_found_by_every_tag_in_it(sample: Office) -> None:
    assert written(sample) == said(sample) and len(written(sample)) > 40


def test_a_paper_is_found_by_the_tag_it_was_printed_with_and_by_no_other(printed: Office) -> None:
    (first,), (second,) = numbers(printed, "SH-1"), numbers(printed, "SH-2")
    assert first != second
    retag(printed, "SH-1", "SH-9", "the label was torn")
    assert numbers(printed, "SH-9") == [first] and numbers(printed, "SH-2") == [second]
    print_record(printed, "SH-9")
    assert len(numbers(printed, "SH-9")) == 2 and written(printed) == said(printed)
    assert verify_book(printed).faults == ()


def test_no_document_is_read_to_tell_which_name_a_piece(printed: Office) -> None:
    asked: list[str] = []
    engine = printed.book._engine
    event.listen(engine, "before_cursor_execute", lambda _c, _d, statement, *_: asked.append(statement))
    papers_named(printed, "SH-1")
    assert [one for one in asked if "document" in one] and not [one for one in asked if "document.body" in one]


def test_a_paper_that_comes_with_a_field_copy_is_found(printed: Office, tmp_path: Path) -> None:
    taken = take_field_copy(printed, tmp_path / "away", printed.officer.name, "the dunes")
    away = replace(printed, book=open_book(taken.file), out_tray=tmp_path / "away" / "documents")
    book_in(away, shackle("SH-3"))
    for office, tag in ((away, "SH-1"), (away, "SH-3"), (printed, "SH-1")):
        print_record(office, tag)
    away.book.close()
    bring_back(printed, taken.file)
    assert written(printed) == said(printed)
    assert len(numbers(printed, "SH-1")) == 3 and len(numbers(printed, "SH-3")) == 1
    assert verify_book(printed).faults == ()


def test_a_register_of_the_revision_before_tells_the_same(sample: Office, rules: Rulebook) -> None:
    before, file = written(sample), file_of(sample)
    sample.book.close()
    as_before(file)
    opened = seat(office_in(file.parent, rules))
    assert written(opened) == before and verify_book(opened).faults == ()
    opened.book.close()


def test_a_damaged_document_stops_no_upgrade_and_is_told(printed: Office, rules: Rulebook) -> None:
    (number,), file = numbers(printed, "SH-1"), file_of(printed)
    printed.book.close()
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("DROP TRIGGER document_no_update")
        connection.execute("UPDATE document SET body = substr(body, 1, 40) WHERE id = ?", (number,))
    as_before(file)
    opened = seat(office_in(file.parent, rules))
    assert [(one.where, number in one.why) for one in verify_book(opened).faults] == [("document", True)]
    assert {tag for _, tag in written(opened)} == {"SH-2"}
    opened.book.close()


@pytest.mark.parametrize(
    ("statement", "told"),
    [
        ("DELETE FROM named_in WHERE tag = 'SH-1'", "that {first} names SH-1 is not written down"),
        ("UPDATE named_in SET tag = 'SH-7' WHERE tag = 'SH-1'", "{first} does not name SH-7"),
        ("INSERT INTO named_in SELECT id, 'SH-1' FROM document WHERE id = '{second}'", "{second} does not name SH-1"),
    ],
)
def test_what_was_changed_by_another_program_is_told(printed: Office, statement: str, told: str) -> None:
    (first,), (second,) = numbers(printed, "SH-1"), numbers(printed, "SH-2")
    with closing(sqlite3.connect(file_of(printed))) as connection, connection:
        connection.execute(statement.format(second=second))
    faults = verify_book(printed).faults
    assert Fault("named_in", told.format(first=first, second=second), faults[-1].line) in faults
    assert all(one.line for one in faults)


def test_a_tag_that_comes_later_is_missed_in_no_paper_before(printed: Office) -> None:
    """A piece is booked in under a word that stands in every record: none of those names it."""
    book_in(printed, shackle("Bow shackle"))
    assert numbers(printed, "Bow shackle") == [] and verify_book(printed).faults == ()


_TAGS = st.sampled_from(["SH-1", "SH-2", "sh-1", "SH-10", "Ä", '"', "SH-1, SH-2", "x" * 80])
_SAID = st.recursive(
    _TAGS | st.none() | st.integers() | st.just("x" * 81), lambda some: st.lists(some) | st.dictionaries(_TAGS, some)
)


@pytest.fixture(scope="module")
def bare() -> Iterator[Connection]:
    """The tables alone, with a piece under none of these tags."""
    engine = create_engine("sqlite://")
    METADATA.create_all(engine)
    with engine.connect() as connection:
        yield connection
    engine.dispose()


@given(content=_SAID, had=st.sets(_TAGS), has=st.sets(_TAGS))
def test_a_document_names_the_tags_that_are_a_text_of_its_own(
    bare: Connection, content: object, had: set[str], has: set[str]
) -> None:
    """Of any piece, then or now. A part of a text, the name of a field or another case names nothing."""
    day = date(2026, 11, 25)
    for at, tag in enumerate(sorted(had)):
        bare.execute(tables.item.insert(), {"id": f"i{at}", "tag": tag, "kind": "", "booked_on": day, "body": ""})
    for at, tag in enumerate(sorted(has)):
        changed = {"id": f"c{at}", "item_id": "i0", "day": day, "tag": tag, "body": ""}
        bare.execute(year_tables.item_change.insert(), changed)
    name_tags(bare, "D-1", to_body(content))
    found = set(bare.execute(select(tables.named_in.c.tag)).scalars())
    bare.rollback()
    assert found == _values(content) & (had | has)


def _values(content: object) -> set[str]:
    if isinstance(content, str):
        return {content}
    parts = content.values() if isinstance(content, dict) else content if isinstance(content, list) else ()
    return {text for part in parts for text in _values(part)}
