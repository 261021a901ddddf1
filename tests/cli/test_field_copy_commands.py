"""A field copy by command: taken, worked on, looked at, brought back, and never over something that stands there."""

from pathlib import Path

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]


def test_a_copy_goes_to_the_dunes_and_comes_back_with_what_was_seen(desk: Desk, tmp_path: Path) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    assert "No field copy was ever taken." in desk.type("field-copy")
    away = tmp_path / "away"
    said = desk.type("field-copy", "--to", str(away), "--for", "the dunes")
    assert str(away / "register.db") in said and "bring-back" in said
    assert "holds a register already" in desk.type("field-copy", "--to", str(away), code=2)
    there = Desk(away, desk._capture)
    assert "Bring it back" in " ".join(there.type("field-copy").split())
    there.type("doubt", "SH-1", "--why", "the pin binds")
    desk.type("use", "SH-1", "--pulls", "2")
    looked = desk.type("bring-back", str(away), "--look")
    assert "Nothing is taken over yet" in looked and "1 piece is judged anew." in looked
    assert "Fit" in desk.type("list")
    assert "2 deeds of the copy" in desk.type("bring-back", str(away))
    assert "Hold" in desk.type("list") and "holds nothing that is not here" in desk.type("bring-back", str(away))
    assert "Nothing was changed." in desk.type("verify")
    listed = desk.type("field-copy")
    assert "the dunes" in listed and "not yet" not in listed
    assert "brought back the copy" in desk.type("ledger", "--last", "1")


def test_what_does_not_go_together_is_told_line_by_line(desk: Desk, tmp_path: Path) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("field-copy", "--to", str(tmp_path / "away"))
    there = Desk(tmp_path / "away", desk._capture)
    for one in (desk, there):
        one.type("missing", "SH-1", "--seen-at", "shed", "--why", f"not in {one.folder.name}")
    said = desk.type("bring-back", str(tmp_path / "away" / "register.db"))
    assert "SH-1: where it is." in said and "Here –" in said and "There –" in said and "What was written last" in said
    assert "There is no file" in desk.type("bring-back", str(tmp_path / "gone"), code=2)
