"""A calendar file is what RFC 5545 says, whatever its texts hold, and is read back as it was written."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar

from inspector.gear.calendar_file import CalendarEntry, CalendarFile
from inspector.paper.calendar_file import calendar_bytes

STAMPED = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)
SAYS = "SH-1 · Bow shackle; pin, bow\nDue: 5 Dec 2026\\now"
ENTRY = CalendarEntry("5b1f", date(2026, 12, 5), "SH-1: next inspection, 7/8 in; see “sheet”", SAYS, "Shed, hook 1", 7)
TEXT = st.text(st.characters(blacklist_categories=("Cs", "Cc", "Zl", "Zp")), max_size=200)


def written(*entries: CalendarEntry) -> bytes:
    """The file of these entries."""
    return calendar_bytes(CalendarFile("Sandbar Touring Club: what falls due", STAMPED, entries))


def test_it_is_read_back_as_it_was_written() -> None:
    found: Any = Calendar.from_ical(written(ENTRY))
    assert (str(found["VERSION"]), str(found["NAME"])) == ("2.0", "Sandbar Touring Club: what falls due")
    assert str(found["PRODID"]).startswith("-//")
    (event,) = found.walk("VEVENT")
    assert (str(event["UID"]), event["DTSTAMP"].dt) == ("5b1f", STAMPED)
    assert (event["DTSTART"].dt, event["DTEND"].dt) == (ENTRY.on, ENTRY.on + timedelta(days=1))
    assert (str(event["SUMMARY"]), str(event["DESCRIPTION"])) == (ENTRY.title, SAYS)
    assert (str(event["LOCATION"]), str(event["TRANSP"])) == ("Shed, hook 1", "TRANSPARENT")
    (alarm,) = found.walk("VALARM")
    assert alarm["TRIGGER"].dt == timedelta(days=-7) and str(alarm["ACTION"]) == "DISPLAY"


def test_the_bytes_are_as_the_rfc_wants_them() -> None:
    lines = written(ENTRY).split(b"\r\n")
    assert lines[0] == b"BEGIN:VCALENDAR" and lines[-2:] == [b"END:VCALENDAR", b""]
    assert b"DTSTART;VALUE=DATE:20261205" in lines and b"DTEND;VALUE=DATE:20261206" in lines
    assert b"DTSTAMP:20261125T190000Z" in lines and b"TRIGGER:-P7D" in lines
    assert b"LOCATION:Shed\\, hook 1" in lines
    unfolded = written(ENTRY).replace(b"\r\n ", b"").decode()
    assert "Bow shackle\\; pin\\, bow\\nDue: 5 Dec 2026\\\\now" in unfolded
    assert b"VALARM" not in written(CalendarEntry("1", date(2026, 12, 5), "a", "b"))


@given(title=TEXT, says=TEXT, place=TEXT)
def test_any_text_is_folded_at_75_octets_and_comes_back(title: str, says: str, place: str) -> None:
    made = written(CalendarEntry("1", date(2026, 12, 5), title, says, place))
    assert b"\n" not in made.replace(b"\r\n", b"") and b"\r" not in made.replace(b"\r\n", b"")
    assert all(len(line) <= 75 for line in made.split(b"\r\n"))
    read: Any = Calendar.from_ical(made)
    (event,) = read.walk("VEVENT")
    assert (str(event["SUMMARY"]), str(event["DESCRIPTION"]), str(event.get("LOCATION", ""))) == (title, says, place)
