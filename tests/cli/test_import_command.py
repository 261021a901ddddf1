"""The old list, as the officer brings it in by commands."""

from pathlib import Path

import pytest

from tests.cli.test_commands import SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]

LIST = (
    "Tag;Kind;Load;Body (mm);Pin (mm)\nA-1;Bow shackle;4,75;19;22\nA-2;Shackle;4,75;19;22\nSH-1;Bow shackle;2;13;16\n"
)
ANSWERS = ("--unit", "C=t", "--basis", "Load=wll")


@pytest.fixture
def old_list(tmp_path: Path) -> Path:
    """A list of three rows."""
    path = tmp_path / "list.csv"
    path.write_text(LIST, "utf-8")
    return path


def test_a_list_is_run_dry_asked_about_taken_listed_and_withdrawn(desk: Desk, old_list: Path) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    told = " ".join(desk.type("import", str(old_list)).split())
    assert "0 rows would be taken · 3 cannot be taken" in told and "Nothing was kept." in told
    assert "C: In which unit are the figures of “Load”? not told" in told and "--basis C=…" in told
    told = " ".join(desk.type("import", str(old_list), *ANSWERS).split())
    assert "1 row would be taken · 1 cannot be taken · 1 is there already" in told
    assert "“Shackle” is no kind of gear" in told and "in SH-1" in told and "WLL 2 t" in told
    assert "A-1" not in desk.type("list")
    taken = desk.type("import", str(old_list), *ANSWERS, "--take")
    number = next(word for word in taken.split() if word.startswith("I-")).rstrip(":")
    assert "1 piece was taken." in taken
    beside = old_list.parent / f"list-{number}.csv"
    assert "A-2" in beside.read_text("utf-8-sig") and beside.name in " ".join(taken.split())
    assert "A-1  Hold" in desk.type("show", "A-1") or "Hold" in desk.type("show", "A-1")
    assert number in desk.type("import", "--list")
    assert "1 piece would be withdrawn." in desk.type("import", "--withdraw", number)
    assert "1 piece was withdrawn." in desk.type("import", "--withdraw", number, "--why", "wrong list")
    assert "A-1" not in desk.type("list")
    assert "withdrew 1 piece" in desk.type("ledger", "--last", "1")
    assert "whole" in desk.type("verify") or "nothing" in desk.type("verify").lower()


def test_what_cannot_be_read_or_understood_is_refused(desk: Desk, old_list: Path, tmp_path: Path) -> None:
    (tmp_path / "broken.xlsx").write_bytes(b"PK\x03\x04broken")
    assert "broken" in desk.type("import", str(tmp_path / "broken.xlsx"), code=2)
    assert "No file was named" in desk.type("import", code=2)
    assert "No list was brought in yet" in desk.type("import", "--list")
    assert "No column is called" in desk.type("import", str(old_list), "--unit", "Weight=t", code=2)
    assert "no answer" in desk.type("import", str(old_list), "--unit", "C=ton", code=2)
    assert "nothing that a column can mean" in desk.type("import", str(old_list), "--column", "C=colour", code=2)
    assert "no sheet" in desk.type("import", str(old_list), "--sheet", "Two", code=2)
    assert "no row 99" in desk.type("import", str(old_list), "--head", "99", code=2)
    assert "No import has the number" in desk.type("import", "--withdraw", "I-X", code=2)
    assert "No row of the list can be taken" in desk.type("import", str(old_list), "--take", code=2)
    assert "A-1" not in desk.type("list")


def test_columns_are_corrected_and_left_out_and_what_was_left_is_written_again(
    desk: Desk, old_list: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(old_list.parent)
    taken = desk.type("import", "list.csv", *ANSWERS, "--column", "D=left_out", "--all", "--take", code=2)
    assert "Body diameter" in taken
    taken = desk.type("import", "list.csv", *ANSWERS, "--ratings-from", "piece", "--shared-serials", "--all", "--take")
    number = next(word for word in taken.split() if word.startswith("I-")).rstrip(":")
    (old_list.parent / f"list-{number}.csv").unlink()
    assert f"list-{number}.csv" in "".join(desk.type("import", "--left", number).split())
    assert "from memory" not in desk.type("show", "A-1")
