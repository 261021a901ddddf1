"""Sheets that came back, read by command: told first, asked where not clear, kept only under a name."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from inspector.app import open_office
from inspector.gear.sheet_fields import reading_name, remarks_name
from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk
from tests.duties.returned import kept, names
from tests.paper.filling import by_library

__all__ = ["desk"]


def _sheet(desk: Desk) -> Path:
    """SH-1 is fit and in the kit of T-1; its printed sheet."""
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    desk.type("person", "Di Member")
    day = str(datetime.now(UTC).date() + timedelta(days=3))
    trip = ["--name", "Day out", "--place", "the spit", "--ground", "beach", "--first", day, "--kit", "SH-1"]
    desk.type("trip", "plan", "T-1", *trip)
    return Path(desk.type("sheet", "T-1").strip())


def _filled(desk: Desk, sheet: Path, answers: dict[str, str], note: str = "") -> Path:
    """The form with these answers by check, a figure for the body, and a remark."""
    office = open_office(desk.folder)
    said = kept(office, sheet.stem)
    office.book.close()
    line = [tick.key for tick in said.going[0].ticks].index("bow_diameter") + 1
    texts = {reading_name(1, line): "18.9", remarks_name(1): note}
    form = desk.folder / "form.pdf"
    form.write_bytes(by_library(sheet.read_bytes(), names(said, {"SH-1": answers}), texts))
    return form


def _told(desk: Desk, *words: str, code: int = 0) -> str:
    return " ".join(desk.type("read-sheets", *words, code=code).split())


def test_what_was_read_is_told_and_nothing_is_kept_without_a_name(desk: Desk) -> None:
    sheet = _sheet(desk)
    form = _filled(desk, sheet, {"*": "good", "nicks": "fault"}, "oiled")
    told = _told(desk, str(form))
    assert f"Sheet {sheet.stem}: Day out" in told
    assert "fault: SH-1/nicks:" in told and "written: SH-1/bow_diameter: 18.9 mm" in told and "Remarks: oiled" in told
    assert "0 of 1" in desk.type("check", "T-1")
    assert "SH-1" in _told(desk, str(form), "--by", "Di Member")
    assert f"on sheet {sheet.stem}" in " ".join(desk.type("show", "SH-1").split())
    assert "was read in before" in _told(desk, str(form), code=2)


def test_what_is_not_clear_is_said_before_it_is_kept(desk: Desk) -> None:
    form = _filled(desk, _sheet(desk), {"*": "good", "bend": "both"})
    assert "not clear: SH-1/bend:" in _told(desk, str(form))
    assert "not clear what was ticked" in _told(desk, str(form), "--by", "Di Member", code=2)
    assert "is no answer" in _told(desk, str(form), "--say", "SH-1/bend=fine", code=2)
    kept_now = _told(desk, str(form), "--by", "Di Member", "--say", "sh-1/bend=fault")
    assert "not clear" not in kept_now.replace("0 not clear", "") and "SH-1: Retire" in kept_now


def test_what_was_read_for_sure_is_not_said_otherwise(desk: Desk) -> None:
    form = _filled(desk, _sheet(desk), {"*": "good", "nicks": "fault"})
    assert "fault: SH-1/nicks:" in _told(desk, str(form), "--say", "SH-1/nicks=good")


def test_files_that_are_no_sheets_are_named_with_the_reason(desk: Desk) -> None:
    form = _filled(desk, _sheet(desk), {"*": "good"})
    notes = desk.folder / "notes.txt"
    notes.write_text("all fine")
    told = _told(desk, str(form), str(notes), str(desk.folder / "gone.jpg"))
    assert "notes.txt:" in told and "gone.jpg:" in told and "Sheet S-" in told
    assert "No sheet could be read" in _told(desk, str(notes), code=2)
