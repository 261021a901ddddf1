"""A small register with a life in it: what faults are tried on."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from inspector.rulebook.load import Rulebook
from tests.faults.small import small_register


@pytest.fixture(scope="session")
def _small(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> Path:
    folder = tmp_path_factory.mktemp("small")
    small_register(folder, rules)
    return folder / "register.db"


@pytest.fixture
def small(_small: Path, tmp_path: Path) -> Iterator[Path]:
    """The file of a register of a few pieces, alone in a folder."""
    file = tmp_path / "small" / "register.db"
    file.parent.mkdir()
    shutil.copyfile(_small, file)
    yield file
