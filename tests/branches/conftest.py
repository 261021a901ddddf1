"""A federation of two clubs on the run's server, made once for each worker, and whoever sits at a desk of theirs."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from inspector.duties.book_in import book_in
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.duties.sit_down import seat
from inspector.gear.person import Person
from inspector.register.book import open_book
from inspector.rulebook.load import Rulebook
from tests.branches.federation import Federation, Sits, federate
from tests.conftest import EVENING
from tests.duties.gear import shackle
from tests.server import Server


@pytest.fixture(scope="session")
def federation(server: Server, sample_once: Path) -> Iterator[Federation]:
    """Two branches with the sample register in each."""
    with server.database() as database:
        yield federate(database, sample_once)


@pytest.fixture(scope="session")
def sits(federation: Federation, rules: Rulebook, tmp_path_factory: pytest.TempPathFactory) -> Sits:
    """Somebody at the desk, by the name of the login."""
    folder = tmp_path_factory.mktemp("desks")

    @contextmanager
    def at_desk(name: str) -> Iterator[Office]:
        book = open_book(federation.url(name))
        machine = MachineSettings(folder / "window.json")
        nobody = Person("nobody", "nobody", "")
        bare = Office(book, rules, folder / name, nobody, lambda: EVENING, "test", machine=machine)
        try:
            yield seat(bare)
        finally:
            book.close()

    return at_desk


@pytest.fixture
def officer(sits: Sits) -> Iterator[Office]:
    """The equipment officer of the first club."""
    with sits("kite_officer") as office:
        yield office


@pytest.fixture
def member(sits: Sits) -> Iterator[Office]:
    """A member of that club."""
    with sits("kite_member") as office:
        yield office


@pytest.fixture
def reader(sits: Sits) -> Iterator[Office]:
    """Somebody who may read it."""
    with sits("kite_reader") as office:
        yield office


@pytest.fixture(scope="session")
def wrens_own(sits: Sits) -> str:
    """The id of a piece WREN-1 that only the second club has."""
    with sits("wren_officer") as office:
        return book_in(office, shackle("WREN-1")).dossier.item.id
