"""Labels, tags and lending slips, as the officer types it."""

from pathlib import Path

from inspector.gear.label_sizes import LABEL_SIZES
from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]


def _stocked(desk: Desk) -> None:
    for tag in ("SH-1", "SH-2"):
        desk.type("book", tag, *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    desk.type("person", "Di Member")


def test_what_cannot_be_is_refused(desk: Desk) -> None:
    _stocked(desk)
    refused: tuple[tuple[list[str], str], ...] = (
        (["labels"], "No piece is named"),
        (["labels", "SH-1", "--size", "9x9"], "There is no label size"),
        (["labels", "SH-1", "--start", "7"], "has the places 1 to 6"),
        (["labels", "--again", "M-1"], "is the number of no such document"),
        (["tags"], "No piece is named"),
        (["tags", "SH-1"], "SH-1: It is fit"),
        (["lending-slip"], "Nobody said whose slip it is"),
        (["lending-slip", "--to", "Di Member"], "has nothing of this on loan"),
        (["lending-slip", "--to", "Di Member", "--trip", "T-9"], "T-9"),
    )
    wrong = [fault for words, why in refused if (fault := desk.wrongly_refused(*words, why=why))]
    assert not wrong, "\n".join(wrong)


def test_each_is_printed_and_printed_again_by_its_number(desk: Desk) -> None:
    _stocked(desk)
    desk.type("lend", "SH-1", "--to", "Di Member", "--due", "2099-01-01")
    for words in (
        ["labels", "SH-1", "SH-2", "--size", "64x38", "--start", "5"],
        ["tags", "sh-2"],
        ["lending-slip", "SH-1", "--to", "Di Member"],
    ):
        paper = Path(desk.type(*words).strip())
        printed = paper.read_bytes()
        assert printed.startswith(b"%PDF")
        paper.unlink()
        assert Path(desk.type(words[0], "--again", paper.stem).strip()) == paper and paper.read_bytes() == printed


def test_the_sizes_are_told(desk: Desk) -> None:
    said = " ".join(desk.type("labels", "--sizes").split())
    assert all(one.key in said for one in LABEL_SIZES)
    assert "63.5 mm × 38.1 mm, 3 × 7 = 21 on A4" in said and "4 × 2 in, 2 × 5 = 10 on US Letter" in said
