"""What falls due, letters and slips, as the officer types it."""

from pathlib import Path

import pytest
from icalendar import Calendar

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]


def _stocked(desk: Desk) -> None:
    for tag in ("SH-1", "SH-2"):
        desk.type("book", tag, *SHACKLE, *SIZES, "--place", "Shed")
    desk.type("inspect", "SH-1", *GOOD)
    desk.type("person", "Di Member")
    desk.type("lend", "SH-1", "--to", "Di Member", "--due", "2099-01-01")


def test_the_calendar_tells_what_waits_and_what_comes(desk: Desk, tmp_path: Path) -> None:
    assert "Nothing falls due." in desk.type("calendar")
    _stocked(desk)
    said = desk.type("calendar")
    assert "SH-2" in said and "nobody competent has inspected all of it" in " ".join(said.split())
    assert "SH-1" not in said
    said = desk.type("calendar", "--until", "2099-12-31", "--for", "Di Member", "--ics", str(tmp_path / "due.ics"))
    assert "1 Jan 2099" in said and "to be back from its loan" in said and "SH-2" not in said
    events = Calendar.from_ical((tmp_path / "due.ics").read_bytes()).walk("VEVENT")
    assert f"{len(events)} entries in" in said and {str(one["SUMMARY"])[:4] for one in events} == {"SH-1"}
    assert "SH-2" in desk.type("calendar", "--at", "shed") and "SH-1" not in desk.type("calendar", "--at", "shed")


@pytest.mark.parametrize("view", ["piece", "person", "place"])
def test_it_is_sorted_as_it_is_asked_for(desk: Desk, view: str) -> None:
    _stocked(desk)
    said = desk.type("calendar", "--until", "2099-12-31", "--by", view)
    titles = {"piece": "SH-2 · Bow shackle", "person": "Di Member\n", "place": "in store at Shed\n"}
    assert titles[view] in said and "SH-1" in said and "SH-2" in said


def test_what_cannot_be_is_refused(desk: Desk) -> None:
    _stocked(desk)
    refused: tuple[tuple[list[str], str], ...] = (
        (["calendar", "--until", "2001-01-01"], "is past"),
        (["calendar", "--for", "Nobody"], "Nobody called"),
        (["calendar", "--at", "the moon"], "No piece lies at"),
        (["letters"], "Nobody said to whom"),
        (["letters", "--all", "--for", "Di Member"], "Nobody said to whom"),
        (["letters", "--for", "Di Member", "--by", "2001-01-01"], "is past"),
        (["letters", "--for", "Di Member", "--again"], "No such letter"),
        (["slips", "--again"], "No slips were printed"),
    )
    wrong = [fault for words, why in refused if (fault := desk.wrongly_refused(*words, why=why))]
    assert not wrong, "\n".join(wrong)


def test_letters_and_slips_are_printed_and_printed_again(desk: Desk) -> None:
    _stocked(desk)
    desk.type("doubt", "SH-1", "--why", "it fell from the roof")
    first = Path(desk.type("letters", "--all", "--bring-to", "the shed", "--by", "2099-01-01").strip())
    printed = first.read_bytes()
    assert printed.startswith(b"%PDF") and Path(desk.type("letters", "--for", "Di Member", "--again").strip()) == first
    assert first.read_bytes() == printed
    slips = Path(desk.type("slips", "--bring-to", "the shed").strip())
    assert slips.read_bytes().startswith(b"%PDF") and Path(desk.type("slips", "--again").strip()) == slips
    told = " ".join(desk.type("ledger").split())
    assert f"printed the letters {first.stem} to Di Member." in told
    assert f"printed the slips {slips.stem} for SH-1 and SH-2." in told
