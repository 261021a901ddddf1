"""A federation of two clubs on the run's server, made once for each worker."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.branches.federation import Federation, federate
from tests.server import Server


@pytest.fixture(scope="session")
def federation(server: Server, _built: Path) -> Iterator[Federation]:
    """Two branches with the sample register in each."""
    with server.database() as database:
        yield federate(database, _built)


@pytest.fixture(scope="session")
def _built():
    return Path("/tmp/w/x_built/register.db")
