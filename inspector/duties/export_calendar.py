"""Write what falls due as a calendar file, for the calendar of whoever wants to be reminded."""

from datetime import UTC
from pathlib import Path
from uuid import UUID, uuid5

from inspector.duties.office import Office
from inspector.duties.tell_due import day_words, late_words, told
from inspector.gear.calendar_file import CalendarEntry, CalendarFile
from inspector.gear.falls_due import DueLine
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.rulebook.wording import cautions

_SPACE = UUID("5f0d2f3e-0f2b-5d0e-9c53-6d0b8f1f7a11")  # names what falls due apart from other users of such numbers
_REMIND_DAYS = 7
_BEGINS = b"BEGIN:VCALENDAR"


def export_calendar(office: Office, lines: tuple[DueLine, ...], file: Path) -> int:
    """Write the lines into the file and return how many. An older calendar file is written over, nothing else is."""
    with office.book.reading() as page:
        club = page.setting("club")
    made = CalendarFile(
        name=tr("{club}: what falls due", club=club),
        stamped=office.now.astimezone(UTC),
        entries=tuple(_entry(office, one) for one in lines),
    )
    from inspector.paper.calendar_file import calendar_bytes  # here: most calendars are read on a screen

    try:
        if file.exists() and not file.read_bytes().startswith(_BEGINS):
            why = tr("{file} is there already and is no calendar file.", file=file)
            raise Refused(tr("file"), why, tr("Choose another name."))
        file.write_bytes(calendar_bytes(made))
    except OSError as error:
        why = tr("{file} cannot be written ({why}).", file=file, why=error.strerror)
        raise Refused(tr("file"), why, tr("Choose another place.")) from error
    return len(made.entries)


def _entry(office: Office, one: DueLine) -> CalendarEntry:
    """What is late, or waits without a day, stands on the day of the export: in the past nobody would see it."""
    today = office.today
    on = max(one.on or today, today)
    late = late_words(one, today) if one.overdue_days(today) else ""
    what = tr("{about}: {what}", about=one.about, what=one.says if late else told(one, today))
    said = [
        tr("{about} · {name}", about=one.about, name=one.name),
        tr("Due: {day}", day=day_words(one)),
        *((tr("For: {names}", names=", ".join(one.people)),) if one.people else ()),
        tr("By the register of {day}. It may have changed since: ask for a new file.", day=show_day(today)),
        *cautions(office.rules),
    ]
    return CalendarEntry(
        uid=str(uuid5(_SPACE, one.key)),
        on=on,
        title=tr("{late}: {what}", late=late, what=what) if late else what,
        says="\n".join(said),
        place=one.place,
        remind_days=_REMIND_DAYS if on > today else 0,
    )
