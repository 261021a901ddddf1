"""A calendar file as other programs read it: iCalendar, RFC 5545."""

from datetime import timedelta

from icalendar import Alarm, Calendar, Event

from inspector.gear.calendar_file import CalendarEntry, CalendarFile

MADE_BY = "-//Recovery gear register//What falls due//EN"


def calendar_bytes(file: CalendarFile) -> bytes:
    """The file, its lines folded and ended as the RFC wants them."""
    made = Calendar()
    made.add("prodid", MADE_BY)
    made.add("version", "2.0")
    made.add("name", file.name)
    for one in file.entries:
        made.add_component(_event(file, one))
    return bytes(made.to_ical())


def _event(file: CalendarFile, one: CalendarEntry) -> Event:
    """A whole day that leaves its reader free."""
    made = Event()
    made.add("uid", one.uid)
    made.add("dtstamp", file.stamped)
    made.add("dtstart", one.on)
    made.add("dtend", one.on + timedelta(days=1))
    made.add("summary", one.title)
    made.add("description", one.says)
    if one.place:
        made.add("location", one.place)
    made.add("transp", "TRANSPARENT")
    if one.remind_days:
        made.add_component(_alarm(one))
    return made


def _alarm(one: CalendarEntry) -> Alarm:
    made = Alarm()
    made.add("action", "DISPLAY")
    made.add("description", one.title)
    made.add("trigger", -timedelta(days=one.remind_days))
    return made
