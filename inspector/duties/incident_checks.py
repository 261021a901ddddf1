"""What cannot be reported, said of an incident or typed about it."""

from collections.abc import Sequence
from datetime import timedelta

from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.gear.incident import Distance, Gravity, Incident, NewIncident
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.units import Dimension, read

_OLDEST_DAYS = 730  # beyond it neither pieces nor people tell what happened
_LONGEST_M = 10_000.0
_MOST_DISTANCES = 40
_PARTS = 3  # of a typed distance


def check_report(office: Office, told: NewIncident) -> None:
    """Refuse what cannot be, by its field."""
    _check_day(office, told)
    need(tr("place"), told.place, tr("Write where it happened, so that somebody can go there."))
    check_line(tr("place"), told.place)
    need(tr("what happened"), told.what, tr("Write what happened in your own words."))
    for name in told.witnesses:
        need(tr("witness"), name, tr("Write the name as the witness gave it."))
        check_line(tr("witness"), name)
    if len(told.distances) > _MOST_DISTANCES:
        raise Refused(
            tr("distance"), tr("More than {most} distances.", most=_MOST_DISTANCES), tr("Write the main ones.")
        )
    for one in told.distances:
        _check_distance(one)
    if told.gravity is Gravity.NEAR_MISS and told.broken:
        why = tr("Something broke: that is more than a near miss.")
        raise Refused(tr("broke"), why, tr("Report it as an accident."))


def need(field: str, text: str, what_to_do: str) -> str:
    """The text without air around it; refused where there is none."""
    if not text.strip():
        raise Refused(field, tr("It is empty."), what_to_do)
    check_text(field, text)
    return text.strip()


def typed_distance(parts: Sequence[str], decimal: str) -> Distance:
    """A distance of the sketch as it was typed: from, to, how far. decimal: the club's decimal sign."""
    one, other, figure = parts
    return Distance(one.strip(), other.strip(), read(figure, Dimension.LENGTH, field=tr("distance"), decimal=decimal))


def typed_distances(text: str, decimal: str) -> tuple[Distance, ...]:
    """Distances of a text, one to a line: from; to; how far."""
    found = []
    for line in filter(None, (line.strip() for line in text.splitlines())):
        parts = line.split(";")
        if len(parts) != _PARTS:
            why = tr("“{line}” does not have three parts.", line=line)
            raise Refused(tr("distance"), why, tr("Write from; to; how far, with a semicolon between them."))
        found.append(typed_distance(parts, decimal))
    return tuple(found)


def _check_day(office: Office, told: NewIncident) -> None:
    if told.on > office.today:
        raise Refused(tr("day"), tr("The day lies in the future."), tr("Write the day it happened."))
    oldest = office.today - timedelta(days=_OLDEST_DAYS)
    if told.on < oldest:
        why = tr("The day lies before {day}.", day=show_day(oldest))
        what = tr("Look at the year. What is older is told in the notes of its pieces, and a doubt holds each of them.")
        raise Refused(tr("day"), why, what)


def _check_distance(one: Distance) -> None:
    for end in (one.one, one.other):
        need(tr("distance"), end, tr("Write between what and what it was measured."))
        check_line(tr("distance"), end)
    if one.figure.dimension is not Dimension.LENGTH or not 0 < one.figure.si <= _LONGEST_M:
        why = tr("“{typed}” cannot be a distance there.", typed=one.figure.as_typed)
        raise Refused(tr("distance"), why, tr("Write it as it was measured, with its unit."))


def incident_called(page: Page, ref: str) -> Incident:
    """The incident with this reference, in any case."""
    known = page.incidents()
    for one in known:
        if one.ref.casefold() == ref.strip().casefold():
            return one
    why = tr("No incident has the reference “{ref}”.", ref=ref.strip())
    raise Refused(
        tr("incident"), why, tr("Use one of: {refs}.", refs=", ".join(x.ref for x in known) or tr("none yet"))
    )
