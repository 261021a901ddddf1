"""A day as it was typed: the ways in which people here write one."""

from datetime import date, datetime, timedelta

from inspector.language import show_month, tr
from inspector.refused import Refused

_FORMS = ("%Y-%m-%d", "%d %b %Y", "%d %B %Y")


def read_day(text: str, field: str, today: date | None = None) -> date:
    """A day typed as 2026-11-25 or 25 Nov 2026; where today is given, its word too. Refused where it is no day."""
    typed = " ".join(text.split())
    words = {tr("today").casefold(): 0, tr("yesterday").casefold(): 1}
    if today and (ago := words.get(typed.casefold())) is not None:
        return today - timedelta(days=ago)
    for form in _FORMS:
        for told in (typed, _in_english(typed)):
            try:
                return datetime.strptime(told, form).date()  # noqa: DTZ007 - a day has no time zone
            except ValueError:
                continue
    why = tr("“{text}” is no day.", text=text.strip())
    raise Refused(field, why, tr("Write it as 2026-11-25 or 25 Nov 2026."))


def _in_english(typed: str) -> str:
    """A month by the short name that days are shown with, in the name that the reading knows."""
    english = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]
    names = {show_month(number).casefold(): english[number - 1] for number in range(1, 13)}
    return " ".join(names.get(word.casefold(), word) for word in typed.split())
