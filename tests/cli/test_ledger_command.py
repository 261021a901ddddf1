"""The ledger as the officer reads it on a terminal."""

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]


def test_the_ledger_is_told_line_by_line_the_newest_first(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    lines = desk.type("ledger").splitlines()
    assert lines[0].split() == ["Line", "Hash", "When", "What", "was", "done"]
    assert "inspected SH-1" in " ".join(lines[1:3]) and "was begun" in " ".join(lines[-2:])
    assert desk.type("verify").split("head ")[1].startswith(lines[1].split()[1])


def test_a_part_of_the_ledger_is_told_for_a_piece_for_a_day_and_by_count(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "booked in SH-1" in desk.type("ledger", "--of", "sh-1", "--last", "1")
    assert "No line" in desk.type("ledger", "--from", "2099-01-01")
    assert "is called" in desk.type("ledger", "--of", "SH-9", code=2)
    assert "no day" in desk.type("ledger", "--from", "yesterdy", code=2)
