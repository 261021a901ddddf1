"""What the first page says beside its figures: whole sentences about the register's copy, a trip, a report, a line."""

from datetime import date

from inspector.duties.tell_due import day_words, told
from inspector.duties.tell_whereabouts import evidence_words
from inspector.gear.falls_due import DueLine
from inspector.gear.needs import Backed, HeldPiece, IncidentLine, RetiredPiece, TripGlance, Work
from inspector.language import show_day, tr, tr_n


def backup_words(backed: Backed) -> tuple[str, str]:
    """What is known of the last copy, and what that means."""
    if not backed.is_file:
        head = tr("This register lies in a database of its own.")
        return head, tr("Its own tool makes the copies, and they are not known here.")
    if backed.at is None:
        head = tr("No copy of this register was ever made.")
        return head, tr("If this machine is lost, all that is written here is lost with it.")
    head = tr("The last copy is of {day}.", day=show_day(backed.at.date()))
    if not backed.deeds_since:
        return head, tr("Nothing was written since. Carry it to another disk, if it is not there yet.")
    return head, tr_n("{count} deed was written since: it is in no copy.",
                      "{count} deeds were written since: they are in no copy.", backed.deeds_since)  # fmt: skip


def trip_state(trip: TripGlance) -> str:
    """Whether anything speaks against it; that it is safe is never said."""
    return tr("Nothing in the register speaks against it.") if trip.is_ready else tr("It is not ready yet.")


def trip_when(trip: TripGlance, on: date) -> str:
    """Where and when it goes, and in how many days."""
    days = (trip.first_on - on).days
    ahead = tr_n("in {count} day", "in {count} days", days) if days > 0 else tr("under way")
    return " · ".join(filter(None, (trip.place, trip.days, tr("today") if days == 0 else ahead)))


def held_words(one: HeldPiece) -> tuple[str, str, str]:
    """What holds it, what would settle that, and where it is."""
    why = one.why
    if one.evidence:
        why = f"{why} {evidence_words(one.evidence)}"
    if one.serves:
        why = tr("{why} For some uses only; its record tells which.", why=why)
    way = tr("To settle it: {release}.", release=one.release.rstrip(".")) if one.release else ""
    if one.more:
        more = tr_n("One more thing holds it.", "{count} more things hold it.", one.more)
        way = f"{way} {more}".strip()
    return why, way, concerns(one.people, one.place)


def concerns(people: tuple[str, ...], place: str) -> str:
    """Whom it concerns, and where it is."""
    return "; ".join(filter(None, (", ".join(people), place)))


def due_words(one: DueLine, today: date) -> str:
    """What falls due, when, and how late it is."""
    said = told(one, today)
    said = said[:1].upper() + said[1:]
    return tr("{day}: {what}", day=day_words(one), what=said) if one.on else said


def retired_words(one: RetiredPiece) -> str:
    """Since when, and what is still to be done."""
    since = tr("Since {day}.", day=show_day(one.since)) if one.since else ""
    notice = "" if one.has_notice else tr("Its notice is not printed.")
    rest = evidence_words(one.evidence) if one.evidence else tr("It is not made unusable yet.")
    return " ".join(filter(None, (since, notice, rest)))


def incident_words(one: IncidentLine) -> tuple[str, str, str, str]:
    """When and where, what happened, that it is open, and what is kept as found for it."""
    where = ", ".join(filter(None, (show_day(one.on), one.place)))
    kept = ", ".join((*one.pieces, *one.vehicles))
    waits = tr("Kept as found until two competent persons release it: {tags}.", tags=kept) if kept else ""
    return where, one.what, tr("The report is still open."), waits


def work_title(work: Work, count: int, overdue: int) -> str:
    """The sort of work, how much of it, and how much of that is overdue."""
    names = {
        Work.INSPECT: tr("To inspect"),
        Work.READ: tr("Walls to read"),
        Work.BACK: tr("To come back, or go back"),
        Work.JUDGE: tr("Verdicts that end"),
        Work.PEOPLE: tr("Who may judge"),
        Work.TRIPS: tr("Later trips"),
        Work.ANSWERS: tr("Answers to recalls"),
    }
    if overdue:
        return tr("{work}: {count}, of which overdue {overdue}", work=names[work], count=count, overdue=overdue)
    return tr("{work}: {count}", work=names[work], count=count)
