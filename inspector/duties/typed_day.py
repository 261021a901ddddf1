"""A day as it was typed: the ways in which people here write one."""

from contextlib import suppress
from datetime import date, datetime, timedelta

from inspector.language import read_shown_day, tr
from inspector.refused import Refused

_FORMS = ("%Y-%m-%d", "%d %b %Y", "%d %B %Y")


def read_day(text: str, field: str, today: date | None = None) -> date:
    """A day typed as 2026-11-25 or 25 Nov 2026; where today is given, its word too. Refused where it is no day."""
    typed = " ".join(text.split())
    words = {tr("today").casefold(): 0, tr("yesterday").casefold(): 1}
    if today and (ago := words.get(typed.casefold())) is not None:
        return today - timedelta(days=ago)
    if shown := read_shown_day(typed):
        return shown
    for form in _FORMS:
        with suppress(ValueError):
            return datetime.strptime(typed, form).date()  # noqa: DTZ007 - a day has no time zone
    why = tr("“{text}” is no day.", text=text.strip())
    raise Refused(field, why, tr("Write it as 2026-11-25 or 25 Nov 2026."))
