"""The same scripts, guards and deeds on PostgreSQL; skipped where no server is installed."""

import json
import os
import shutil
import subprocess
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest
from sqlalchemy import create_engine, text
from sqlalchemy.exc import DBAPIError

from inspector.duties.archive_register import archive
from inspector.duties.build_sample import build_sample
from inspector.duties.export_list import export_lines, export_list
from inspector.duties.gear_list import answers
from inspector.duties.look_up import list_gear
from inspector.duties.office import Office
from inspector.duties.verify_book import verify_book
from inspector.gear.lists import Wanted
from inspector.gear.person import Person
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.columns import METADATA
from inspector.register.guards import missing_triggers
from inspector.register.tables import APPEND_ONLY
from inspector.rulebook.load import Rulebook
from tests.conftest import EVENING

BINARIES = sorted(Path("/usr/lib/postgresql").glob("*/bin")) if Path("/usr/lib/postgresql").is_dir() else []


def as_server(*command: str) -> None:
    """The server refuses to run as root; then its own user runs it."""
    user = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
    subprocess.run([*user, *command], check=True, capture_output=True)


@pytest.fixture(scope="module")
def url() -> Iterator[str]:
    """A throw-away server that listens on a socket in its own folder and nowhere else."""
    if not BINARIES:
        pytest.skip("no PostgreSQL server is installed")
    pytest.importorskip("psycopg")
    folder = Path(tempfile.mkdtemp(prefix="register-pg-"))
    if os.geteuid() == 0:
        shutil.chown(folder, "postgres")
    data, control = str(folder / "data"), str(BINARIES[-1] / "pg_ctl")
    as_server(str(BINARIES[-1] / "initdb"), "-D", data, "-A", "trust", "-U", "postgres")
    as_server(control, "-D", data, "-w", "-o", f"-k {folder} -h ''", "-l", str(folder / "log"), "start")
    yield f"postgresql+psycopg://postgres@/postgres?host={folder}"
    with suppress(subprocess.CalledProcessError):
        as_server(control, "-D", data, "-m", "immediate", "stop")
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture(scope="module")
def club(url: str, rules: Rulebook, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Office]:
    """The sample register on the server."""
    tray = tmp_path_factory.mktemp("tray")
    office = Office(open_book(url), rules, tray, Person("nobody", "nobody", ""), lambda: EVENING, "test")
    yield replace(office, officer=build_sample(office))
    office.book.close()


def test_the_sample_comes_out_as_on_sqlite(club: Office, sample: Office) -> None:
    there, here = list_gear(club), list_gear(sample)
    assert [(row.tag, row.outcome, row.headline) for row in there.rows] == [
        (row.tag, row.outcome, row.headline) for row in here.rows
    ]
    assert list_gear(club, "BOW shackle 4.75").counts == list_gear(sample, "BOW shackle 4.75").counts
    assert verify_book(club).faults == ()


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


@pytest.mark.parametrize("table", [table.name for table in APPEND_ONLY])
def test_history_cannot_be_changed(club: Office, url: str, table: str) -> None:
    engine = create_engine(url)
    for deed in (f"UPDATE {table} SET id = id", f"DELETE FROM {table}", f"TRUNCATE {table} CASCADE"):
        with engine.connect() as connection:
            if deed.startswith("TRUNCATE") or connection.execute(text(f"SELECT 1 FROM {table}")).first():
                with pytest.raises(DBAPIError, match="append-only"):
                    connection.execute(text(deed))
    engine.dispose()


def test_every_trigger_stands_and_the_tables_are_those_the_program_knows(club: Office, url: str) -> None:
    from alembic.autogenerate import compare_metadata
    from alembic.runtime.migration import MigrationContext

    engine = create_engine(url)
    with engine.connect() as connection:
        assert missing_triggers(connection) == []
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, METADATA) == []
    engine.dispose()
