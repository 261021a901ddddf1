"""Counting, copying, restoring and handing over, as the officer types it."""

from pathlib import Path

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]


def _stocked(desk: Desk) -> None:
    for tag in ("SH-1", "SH-2", "SH-3"):
        desk.type("book", tag, *SHACKLE, *SIZES, "--place", "Shed")
        desk.type("inspect", tag, *GOOD)


def test_a_count_by_scanning_and_what_it_found(desk: Desk, tmp_path: Path) -> None:
    _stocked(desk)
    assert "3 pieces are to be looked for" in desk.type("stock", "begin", "C-1")
    scanned = tmp_path / "scanned.txt"
    scanned.write_text("SH-1\nZZ-9\n", encoding="utf-8")
    said = desk.type("stock", "scan", "C-1", "--from", str(scanned))
    assert "Marked: SH-1" in said and "kept with the count: ZZ-9" in said
    assert "SH-3" in desk.type("stock", "left", "C-1")
    desk.type("stock", "scan", "C-1", "SH-2", "--as", "absent")
    said = desk.type("stock", "close", "C-1")
    assert "Missing from now on: SH-2" in said and "it stays where the register has it: SH-3" in said
    assert "1 of 3 seen, 1 absent" in desk.type("stock", "list")
    assert "closed and takes nothing more" in desk.type("stock", "scan", "C-1", "SH-3", code=2)


def test_a_list_is_printed_ticked_and_typed_in(desk: Desk) -> None:
    _stocked(desk)
    desk.type("stock", "begin", "C-1", "--place", "shed")
    file = Path(desk.type("stock", "print", "C-1").strip())
    assert file.read_bytes().startswith(b"%PDF")
    said = desk.type("stock", "type", file.stem, "--present", "1-2", "--absent", "3", "--label", "ZZ-9")
    assert "Marked: SH-1, SH-2" in said and "Marked: SH-3" in said
    assert "Every expected piece is marked" in desk.type("stock", "left", "C-1")


def test_a_lent_piece_is_told_beside_those_that_are_counted(desk: Desk) -> None:
    _stocked(desk)
    desk.type("person", "Di Member")
    desk.type("lend", "SH-3", "--to", "Di Member", "--due", "2099-01-01")
    assert "on loan to Di Member" in desk.type("stock", "begin", "C-1")
    said = desk.type("stock", "scan", "C-1", "SH-1", "SH-3", code=2)
    assert "Marked: SH-1" in said and "SH-3 is NOT counted" in said and "Book its return first" in said


def test_a_copy_is_made_and_put_back_by_one_command(desk: Desk, tmp_path: Path) -> None:
    _stocked(desk)
    file = Path(desk.type("backup", "--to", str(tmp_path / "stick")).splitlines()[0])
    assert file.parent == tmp_path / "stick"
    assert "holds a register already" in desk.type("restore", str(file), code=2)
    there = Desk(tmp_path / "other", desk._capture)
    assert "as it was in the copy" in there.type("restore", str(file))
    assert "3 of 3 pieces" in there.type("list")
    assert "Nothing was changed." in there.type("verify")
    file.write_bytes(file.read_bytes()[:5000])
    third = Desk(tmp_path / "third", desk._capture)
    assert "not a whole copy" in third.type("restore", str(file), code=2)


def test_the_register_is_handed_over_and_the_next_officer_sits_at_the_desk(desk: Desk) -> None:
    _stocked(desk)
    desk.type("person", "Ben Next", "--competent", "all")
    assert "No count of everything" in desk.type("handover", "--to", "Ben Next", code=2)
    desk.type("stock", "begin", "C-1")
    desk.type("stock", "scan", "C-1", "SH-1", "SH-2", "SH-3")
    assert "C-1 is still open" in desk.type("handover", "--to", "Ben Next", code=2)
    desk.type("stock", "close", "C-1")
    said = desk.type("handover", "--to", "Ben Next")
    assert "Ben Next is the equipment officer from now on" in said and "Signing key: none" in said
    paper = Path(said.strip().splitlines()[-1])
    assert paper.read_bytes().startswith(b"%PDF")
    assert Path(desk.type("handover", "--again").strip()) == paper
    assert "Write --to NAME" in desk.type("handover", code=2)
    assert "Ben Next is the equipment officer already" in desk.type("handover", "--to", "Ben Next", code=2)


def test_one_piece_is_told_as_one(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES, "--place", "Shed")
    assert "1 piece is to be looked for." in desk.type("stock", "begin", "C-1")
    desk.type("stock", "scan", "C-1", "SH-1")
    assert "1 piece was seen." in desk.type("stock", "close", "C-1")
