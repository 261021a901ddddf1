"""Where a piece is, as the officer types it."""

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]


def test_a_piece_goes_missing_and_is_found(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    desk.type("place", "SH-1", "--at", "shelf 2")
    assert "in store at shelf 2" in desk.type("where", "SH-1")
    desk.type("missing", "SH-1", "--seen-at", "shelf 2", "--why", "an empty hook")
    assert "missing since" in desk.type("show", "SH-1")
    assert "missing, last seen: shelf 2" in desk.type("list")
    assert "SH-1  Hold" in desk.type("found", "SH-1", "--at", "shelf 3")


def test_what_leaves_prints_its_voucher_and_prints_it_again(desk: Desk) -> None:
    for tag in ("SH-1", "SH-2"):
        desk.type("book", tag, *SHACKLE, *SIZES)
        desk.type("inspect", tag, *GOOD)
    assert "V-" in desk.type("sold", "SH-1", "--to", "A buyer")
    kept = sorted((desk.folder / "documents").glob("V-*.pdf"))
    again = desk.type("voucher", "SH-1")
    assert kept[0].name in again and len(kept) == 1
    assert sorted((desk.folder / "documents").glob("V-*.pdf")) == kept
    assert "neither sold nor given back" in desk.type("voucher", "SH-2", code=2)
