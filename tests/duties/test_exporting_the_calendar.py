"""What falls due as a calendar file: the same thing has the same name at every export, and nothing late is hidden."""

from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar

from inspector.duties.export_calendar import export_calendar
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.verify_book import verify_book
from inspector.duties.what_falls_due import what_falls_due
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.rigs import fit, later


def exported(office: Office, file: Path, days: int = 365) -> dict[str, Any]:
    """The events by their names."""
    lines = what_falls_due(office, office.today + timedelta(days=days))
    assert export_calendar(office, lines, file) == len(lines)
    events = {str(one["UID"]): one for one in Calendar.from_ical(file.read_bytes()).walk("VEVENT")}
    assert len(events) == len(lines)
    return events


def test_every_line_of_the_sample_is_an_event_that_tells_its_day_and_the_cautions(
    sample: Office, tmp_path: Path
) -> None:
    before = verify_book(sample).head
    events = exported(sample, tmp_path / "due.ics")
    for one in events.values():
        assert one["DTSTART"].dt >= sample.today and one["DTSTAMP"].dt == sample.now
        assert "A competent person decides" in one["DESCRIPTION"] and "Due: " in one["DESCRIPTION"]
    late = [one for one in events.values() if "OVERDUE" in one["SUMMARY"]]
    assert late and {one["DTSTART"].dt for one in late} == {sample.today}
    assert all(
        "VALARM" in {part.name for part in one.walk()} for one in events.values() if one["DTSTART"].dt > sample.today
    )
    assert verify_book(sample).head == before


def test_the_next_inspection_keeps_its_name_when_its_day_moves(office: Office, tmp_path: Path) -> None:
    fit(office, shackle(), SHACKLE_READINGS)
    first = exported(office, tmp_path / "due.ics")
    assert {key: one["SUMMARY"] for key, one in first.items()} == {
        key: one["SUMMARY"] for key, one in exported(office, tmp_path / "due.ics").items()
    }
    then = later(office, 60)
    record_inspection(then, "SH-1", all_good(then, open_item(then, "SH-1").dossier.kind, SHACKLE_READINGS))
    second = exported(then, tmp_path / "again.ics")
    moved = [key for key in first if key in second and "next inspection" in first[key]["SUMMARY"]]
    assert len(moved) == 1
    assert second[moved[0]]["DTSTART"].dt == first[moved[0]]["DTSTART"].dt + timedelta(days=60)


def test_no_other_file_is_written_over(office: Office, tmp_path: Path) -> None:
    file = tmp_path / "notes.txt"
    file.write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="is no calendar file"):
        export_calendar(office, (), file)
    assert file.read_text(encoding="utf-8") == "mine"
    with pytest.raises(Refused, match="cannot be written"):
        export_calendar(office, (), tmp_path / "nowhere" / "due.ics")
