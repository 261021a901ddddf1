"""The days that a verdict names, and what has ended or still waits: the one place that works out what falls due."""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from inspector.duties.keep_incident import is_closed
from inspector.gear.falls_due import Due
from inspector.gear.incident import Incident
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.standing import StandingVerdict
from inspector.gear.verdict import Verdict
from inspector.gear.whereabouts import Where, Whereabouts
from inspector.register.page import Page

LOOK_AHEAD_DAYS = 90  # long enough to find a course or a gauge; it holds no piece by itself, so it is no rule


def verdict_days(verdict: Verdict | StandingVerdict) -> dict[Due, date]:
    """What falls due of a piece, and when. Of a retired piece nothing does any more."""
    if verdict.outcome is Outcome.RETIRE:
        return {}
    days = {
        Due.INSPECTION: verdict.next_inspection_due,
        Due.READING: verdict.wall.next_reading_due if verdict.wall else None,
        Due.WALL: verdict.wall.reaches_required_on if verdict.wall else None,
        Due.VERDICT: verdict.holds_until,
    }
    return {what: day for what, day in days.items() if day}


def competences_ending(people: Sequence[Person], until: date) -> Iterator[tuple[Person, Competence, date]]:
    """Every competence that has ended or ends by the day and that no other one carries on, with its last day."""
    for one in people:
        for held in one.competences:
            if held.until and held.until <= until and not _renewed(one, held.scope, held.until):
                yield one, held, held.until


def _renewed(person: Person, scope: str, until: date) -> bool:
    """Whether another one of the same scope goes on after that day."""
    after = until + timedelta(days=1)
    same = (one for one in person.competences if one.scope in {scope, "all"})
    return any(one.since <= after and (one.until is None or one.until > until) for one in same)


def open_incidents(page: Page) -> tuple[Incident, ...]:
    """Every report that is not closed."""
    return tuple(one for one in page.incidents() if not is_closed(page, one))


def has_left(where: Whereabouts) -> bool:
    """Whether it was sold, made unusable or given back: nothing of it is the club's to look after any more."""
    return where.where in {Where.SOLD, Where.DESTROYED, Where.GIVEN_BACK}


def is_lost(where: Whereabouts) -> bool:
    """Whether it is missing or stolen."""
    return where.where in {Where.MISSING, Where.STOLEN}


def waits_to_be_destroyed(outcome: Outcome, where: Whereabouts) -> bool:
    """Whether it is retired, not yet made unusable, and the club has it or ought to have it."""
    return outcome is Outcome.RETIRE and not has_left(where)
