"""What several stories of the duties begin with."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from inspector.duties.found_club import found_club
from inspector.duties.office import Office
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.incidents import beach
from tests.duties.rigs import ready
from tests.fresh import copied


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Iterator[Office]:
    """A club for dry runs alone, which keep nothing; one for all of them."""
    made = office_in(tmp_path_factory.mktemp("desk"), rules)
    found_club(made, "Test Club", "Ada Officer")
    yield made
    made.book.close()


@pytest.fixture(scope="session")
def ready_once(club_once: Office, tmp_path_factory: pytest.TempPathFactory) -> Office:
    """A club with a fit kit, a member and a trip, made once and closed; each test works on a copy."""
    return _made(club_once, tmp_path_factory.mktemp("ready"), ready)


@pytest.fixture(scope="session")
def beach_once(club_once: Office, tmp_path_factory: pytest.TempPathFactory) -> Office:
    """A club with a beach rig and a second competent person, made once and closed; each test works on a copy."""
    return _made(club_once, tmp_path_factory.mktemp("beach"), beach)


def _made(club: Office, folder: Path, add: Callable[[Office], object]) -> Office:
    made = copied(club, folder)
    add(made)
    made.book.close()
    return made
