"""What several stories of the duties begin with."""

from collections.abc import Iterator

import pytest

from inspector.duties.found_club import found_club
from inspector.duties.office import Office
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Iterator[Office]:
    """A club for dry runs alone, which keep nothing; one for all of them."""
    made = office_in(tmp_path_factory.mktemp("desk"), rules)
    found_club(made, "Test Club", "Ada Officer")
    yield made
    made.book.close()
