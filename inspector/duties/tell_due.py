"""What falls due in words, the same on the screen, in letters, on slips and in a calendar file."""

from datetime import date

from inspector.duties.tell_readiness import days_words
from inspector.gear.falls_due import Due, DueLine
from inspector.gear.trip import Trip
from inspector.language import show_day, tr, tr_n


def piece_says(what: Due, more: str = "") -> str:
    """What falls due of a piece. more: what else must be known of it."""
    words = {
        Due.FIRST_INSPECTION: tr("nobody competent has inspected all of it: inspect it before any use"),
        Due.INSPECTION: tr("next inspection"),
        Due.READING: tr("next reading of the wall"),
        Due.WALL: tr("its wall, thinning as before, is down to what must be left"),
        Due.BACK: tr("borrowed, to go back"),
        Due.VERDICT: tr("what was said of it holds only until that day"),
        Due.HOLD: tr("waits to be settled"),
        Due.LOAN: tr("to be back from its loan"),
        Due.NOTICE: tr("retired, and its notice is not printed"),
        Due.DESTRUCTION: tr("retired, and not made unusable"),
        Due.MISSING: tr("not at hand"),
    }
    return tr("{what}: {more}", what=words[what], more=more) if more else words[what]


def trip_says(trip: Trip) -> str:
    """When a trip goes, and with how many pieces."""
    count = tr_n("{count} piece in its kit", "{count} pieces in its kit", len(trip.kit))
    return tr("the trip goes, {days}, {kit}", days=days_words(trip), kit=count)


def late_words(one: DueLine, today: date) -> str:
    """How late it is: overdue by how long, waiting since when, or nothing."""
    days = one.overdue_days(today)
    if days and one.what is Due.COMPETENCE:
        return tr_n("ENDED {count} day ago", "ENDED {count} days ago", days)
    if days:
        return tr_n("OVERDUE by {count} day", "OVERDUE by {count} days", days)
    if one.on is None and one.since:
        return tr("since {day}", day=show_day(one.since))
    return tr("today") if one.on == today else ""


def day_words(one: DueLine) -> str:
    """The day; what has none waits now."""
    return show_day(one.on) if one.on else tr("now")


def told(one: DueLine, today: date) -> str:
    """What it is and how late, in one text."""
    late = late_words(one, today)
    return tr("{what}, {late}", what=one.says, late=late) if late else one.says
