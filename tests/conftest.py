"""Fixtures every room's tests share. Qt paints off screen; no test reads this machine's clock for a verdict."""

import gc
import os
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["LANGUAGE"] = "en"  # whatever this machine speaks

from inspector.duties.build_sample import build_sample
from inspector.duties.found_club import found_club
from inspector.duties.look_up import club_officer, people
from inspector.duties.office import Office
from inspector.gear.person import Person
from inspector.rulebook.load import Rulebook, packaged
from tests.fresh import fresh_book
from tests.outside_values import (  # noqa: F401 - hooks of the whole run
    pytest_collection_modifyitems,
    pytest_configure,
    pytest_terminal_summary,
)

EVENING = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)


def pytest_collection_finish() -> None:
    """Leave what stands before the first test out of the search for rubbish: fourteen thousand tests are none."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="session")
def rules() -> Rulebook:
    """The packaged rulebook, read once."""
    return packaged()


def office_in(folder: Path, rules: Rulebook, moment: datetime = EVENING) -> Office:
    """An office on a register in the folder, its clock stopped, nobody at the desk."""
    book = fresh_book(folder / "register.db")
    return Office(book, rules, folder / "documents", Person("nobody", "nobody", ""), lambda: moment, "test")


@pytest.fixture
def office(tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A club just begun, its officer at the desk."""
    made = office_in(tmp_path, rules)
    yield replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    made.book.close()


@pytest.fixture(scope="session")
def _built(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    """The sample register, built once for the whole run."""
    folder = tmp_path_factory.mktemp("sample")
    made = office_in(folder, rules)
    build_sample(made)
    made.book.close()
    return folder / "register.db"


@pytest.fixture
def sample(_built: Path, tmp_path: Path, rules: Rulebook) -> Iterator[Office]:
    """A copy of the sample register with its officer at the desk."""
    (tmp_path / "register.db").write_bytes(_built.read_bytes())
    made = office_in(tmp_path, rules)
    officer = club_officer(made)
    yield replace(made, officer=next(person for person in people(made) if person.id == officer))
    made.book.close()
