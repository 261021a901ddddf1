"""Spoilt files at every door: a short run; `python -m tests.faults.fuzz 300` is the long one."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from inspector.duties.office import Office
from tests.faults.doors import DOORS
from tests.faults.fuzz import office_for, run


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Office]:
    """A furnished office."""
    made = office_for(tmp_path_factory.mktemp("house"))
    yield made
    made.book.close()


@pytest.mark.parametrize("name", DOORS)
def test_a_spoilt_file_is_refused_or_taken_and_breaks_nothing(house: Office, name: str) -> None:
    tried = run(house, name, DOORS[name].most, seed=1)
    assert tried.faults == []
    assert tried.count == DOORS[name].most


@pytest.mark.parametrize("name", DOORS)
def test_a_good_file_is_taken(tmp_path: Path, name: str) -> None:
    house = office_for(tmp_path)
    try:
        for seed in DOORS[name].seeds(house)[:1]:
            assert DOORS[name].enter(house, seed, tmp_path) is not None
    finally:
        house.book.close()
