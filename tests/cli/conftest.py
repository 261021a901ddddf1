"""A register just begun, for what is typed on one."""

from pathlib import Path

import pytest

from inspector.app import main


@pytest.fixture(scope="session")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a register begun by its command, once for all tests; each works on a copy."""
    folder = tmp_path_factory.mktemp("begun")
    assert main(["--register", str(folder), "begin", "--club", "Test Club", "--officer", "Ada Officer"]) == 0
    return folder
