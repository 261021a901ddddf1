"""Every document by command: what is printed, what there is nothing for, and a folder that is left alone."""

from pathlib import Path

import pytest

from inspector.duties.office import Office
from tests.cli.test_commands import Desk


@pytest.fixture
def desk(office: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A register just begun, at a terminal."""
    monkeypatch.setenv("COLUMNS", "110")
    return Desk(tmp_path, capsys)


def test_they_are_printed_with_their_pages_and_the_rest_is_told(desk: Desk, tmp_path: Path) -> None:
    said = desk.type("documents", str(tmp_path / "shown"))
    assert "Rig sheet: none. No rig is kept." in said
    pictures = list((tmp_path / "shown").glob("*.png"))
    assert f"{len(pictures)} pages as pictures beside them." in said and len(pictures) >= 6
    assert "handout-2.pdf" in said and (tmp_path / "shown" / "handout-2.page-1.png").read_bytes().startswith(b"\x89PNG")


def test_a_folder_with_anything_in_it_is_refused(desk: Desk, tmp_path: Path) -> None:
    assert "is not empty" in desk.type("documents", str(tmp_path), code=2)
