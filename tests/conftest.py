"""Fixtures every room's tests share. Qt paints off screen; no test reads this machine's clock for a verdict."""

import gc
import os
import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from shutil import copyfile

import pytest
from msgspec.structs import replace

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["LANGUAGE"] = "en"  # whatever this machine speaks

from inspector.duties.build_sample import build_sample
from inspector.duties.found_club import found_club
from inspector.duties.look_up import club_officer, people
from inspector.duties.office import Office
from inspector.gear.person import Person
from inspector.rulebook.load import Rulebook, packaged
from tests import hurry, statements
from tests import server as run_server
from tests.fresh import copied, fresh_book
from tests.once import once
from tests.outside_values import (  # noqa: F401 - hooks of the whole run
    pytest_collection_modifyitems,
    pytest_configure,
    pytest_terminal_summary,
)

EVENING = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)


def pytest_sessionstart(session: pytest.Session) -> None:
    """Make the place of this run for all workers, before any of them begins."""
    if not hasattr(session.config, "workerinput"):
        run_server.begin_run()
    statements.share()
    hurry.hurry()


def pytest_unconfigure(config: pytest.Config) -> None:
    """Stop the run's database server and remove the place of the run, whatever became of the tests."""
    if not hasattr(config, "workerinput"):
        run_server.end_run()


def pytest_collection_finish() -> None:
    """Leave what stands before the first test out of the search for rubbish: thousands of tests are none."""
    gc.collect()
    gc.freeze()


@pytest.hookimpl(trylast=True)
def pytest_runtest_teardown(item: pytest.Item, nextitem: pytest.Item | None) -> None:
    """Windows of a module that is done are taken apart: each style sheet would be laid on them too, on thousands."""
    if "PySide6.QtWidgets" in sys.modules and (nextitem is None or nextitem.path != item.path):
        from PySide6.QtCore import QEvent
        from PySide6.QtWidgets import QApplication

        for one in QApplication.topLevelWidgets():
            one.deleteLater()
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.fixture(scope="session")
def server() -> run_server.Server:
    """The run's PostgreSQL server, started when the first test asks for it; without one the test fails and says why."""
    try:
        return run_server.server_of_the_run()
    except run_server.NoServerError as reason:
        pytest.fail(str(reason), pytrace=False)


@pytest.fixture(scope="module")
def database(server: run_server.Server) -> Iterator[run_server.Database]:
    """An empty database for the tests of one module."""
    with server.database() as made:
        yield made


@pytest.fixture(scope="session")
def rules() -> Rulebook:
    """The packaged rulebook, read once."""
    return packaged()


def office_in(folder: Path, rules: Rulebook, moment: datetime = EVENING) -> Office:
    """An office on a register in the folder, its clock stopped, nobody at the desk."""
    book = fresh_book(folder / "register.db")
    return Office(book, rules, folder / "documents", Person("nobody", "nobody", ""), lambda: moment, "test")


@pytest.fixture(scope="session")
def club_once(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Office:
    """A club just begun, founded once for all tests and closed; each works on a copy."""
    made = office_in(tmp_path_factory.mktemp("club"), rules)
    officer = found_club(made, "Test Club", "Ada Officer")
    made.book.close()
    return replace(made, officer=officer)


@pytest.fixture
def office(club_once: Office, tmp_path: Path) -> Iterator[Office]:
    """A club just begun, its officer at the desk."""
    made = copied(club_once, tmp_path)
    yield made
    made.book.close()


@pytest.fixture(scope="session")
def sample_once(rules: Rulebook) -> Path:
    """The file of the sample register, built once for the whole run by the worker that needs it first; never opened."""

    def build(folder: Path) -> str:
        made = office_in(folder, rules)
        build_sample(made)
        made.book.close()
        return str(folder / "register.db")

    return Path(once("sample", build))


def seated_copy(sample_once: Path, folder: Path, rules: Rulebook) -> Office:
    """A copy of the sample register in the folder, its officer at the desk."""
    copyfile(sample_once, folder / "register.db")
    made = office_in(folder, rules)
    officer = club_officer(made)
    return replace(made, officer=next(person for person in people(made) if person.id == officer))


@pytest.fixture
def sample(sample_once: Path, tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A copy of the sample register with its officer at the desk."""
    made = seated_copy(sample_once, tmp_path, rules)
    yield made
    made.book.close()
