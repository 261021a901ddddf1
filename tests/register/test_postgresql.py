"""The same scripts, guards and deeds on PostgreSQL."""

import json
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace
from sqlalchemy import create_engine, text
from sqlalchemy.exc import DBAPIError

from inspector.duties import gear_list
from inspector.duties.archive_register import archive
from inspector.duties.bring_back import bring_back, what_would_come
from inspector.duties.build_sample import build_sample
from inspector.duties.export_list import export_lines, export_list
from inspector.duties.field_copies import take_field_copy
from inspector.duties.gear_list import answers, first_rows, rows_of
from inspector.duties.give_opinion import doubt
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of
from inspector.duties.tell_piece import piece_today
from inspector.duties.verify_book import verify_book
from inspector.gear.lists import Wanted
from inspector.gear.person import Person
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.guards import missing_triggers
from inspector.register.tables import APPEND_ONLY
from inspector.rulebook.load import Rulebook
from tests.conftest import EVENING
from tests.server import Database


@pytest.fixture(scope="module")
def club(database: Database, rules: Rulebook, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Office]:
    """The sample register on the server."""
    tray = tmp_path_factory.mktemp("tray")
    office = Office(open_book(database.url), rules, tray, Person("nobody", "nobody", ""), lambda: EVENING, "test")
    yield replace(office, officer=build_sample(office))
    office.book.close()


def test_the_sample_comes_out_as_on_sqlite(club: Office, sample: Office, monkeypatch: pytest.MonkeyPatch) -> None:
    there, here = list_gear(club), list_gear(sample)
    assert [(row.tag, row.outcome, row.headline) for row in there.rows] == [
        (row.tag, row.outcome, row.headline) for row in here.rows
    ]
    assert list_gear(club, "BOW shackle 4.75").counts == list_gear(sample, "BOW shackle 4.75").counts
    assert verify_book(club).faults == ()
    for row in there.rows[::40]:
        assert piece_today(club, open_item(club, row.tag)) == piece_today(sample, open_item(sample, row.tag))
        papers = [papers_of(office, open_item(office, row.tag)) for office in (club, sample)]
        assert [one.what for one in papers[0]] == [one.what for one in papers[1]]
    monkeypatch.setattr(gear_list, "_SOON_COUNTED", 0)
    assert first_rows(club, 20) == rows_of(club, answers(club, Wanted()).tags[:20])


def test_lists_and_lines_leave_it_and_the_archive_is_refused_politely(
    club: Office, sample: Office, tmp_path: Path
) -> None:
    assert export_list(club, answers(club, Wanted()).tags, tmp_path / "gear.xlsx").rows > 1000
    export_lines(club, tmp_path / "there.jsonl")
    export_lines(sample, tmp_path / "here.jsonl")
    there, here = ((tmp_path / name).read_bytes().splitlines() for name in ("there.jsonl", "here.jsonl"))
    assert Counter(map(_sort_of, there)) == Counter(map(_sort_of, here))
    with pytest.raises(Refused, match="no file to be copied"):
        archive(club, tmp_path / "a.zip")
    assert not (tmp_path / "a.zip").exists()


def _sort_of(line: bytes) -> tuple[str, tuple[str, ...]]:
    """Table and columns of a line."""
    said = json.loads(line)
    return said["table"], tuple(said["row"])


def test_history_cannot_be_changed(club: Office, database: Database) -> None:
    """One test for all tables: each worker that takes a part of them would build the sample on the server first."""
    engine, tried = create_engine(database.url), []
    for table in (table.name for table in APPEND_ONLY):
        for deed in (f"UPDATE {table} SET id = id", f"DELETE FROM {table}", f"TRUNCATE {table} CASCADE"):
            with engine.connect() as connection:
                if deed.startswith("TRUNCATE") or connection.execute(text(f"SELECT 1 FROM {table}")).first():
                    with pytest.raises(DBAPIError, match="append-only"):
                        connection.execute(text(deed))
                    tried.append(deed)
    engine.dispose()
    assert len(tried) > 2 * len(APPEND_ONLY)


def test_every_trigger_stands(club: Office, database: Database) -> None:
    engine = create_engine(database.url)
    with engine.connect() as connection:
        assert missing_triggers(connection) == []
    engine.dispose()


def test_a_field_copy_of_it_is_a_file_and_comes_back_to_it(club: Office, tmp_path: Path) -> None:
    taken = take_field_copy(club, tmp_path / "away", club.officer.id, "the dunes")
    away = replace(club, book=open_book(taken.file), out_tray=tmp_path / "away" / "documents")
    assert away.book.file == taken.file and verify_book(away).faults == ()
    assert [(row.tag, row.outcome) for row in list_gear(away).rows] == [
        (row.tag, row.outcome) for row in list_gear(club).rows
    ]
    doubt(away, "SH-04", "the pin binds")
    doubt(club, "KS-03", "the stitching looks tired")
    away.book.close()
    assert what_would_come(club, taken.file).tags == ("SH-04",)
    assert bring_back(club, taken.file).tags == ("SH-04",)
    assert bring_back(club, taken.file).deed_count == 0
    assert verify_book(club).faults == ()
