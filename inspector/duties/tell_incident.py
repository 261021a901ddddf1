"""Tell of incidents: the list of all, and one with its pieces, vehicles and what was added."""

from dataclasses import dataclass

from inspector.drawings.marks import outcome_word
from inspector.duties.evidence_paper import (
    evidence_facts,
    evidence_pieces,
    evidence_told,
    evidence_vehicles,
    gravity_words,
)
from inspector.duties.incident_checks import incident_called
from inspector.duties.keep_incident import is_closed, kept_pieces, kept_vehicles
from inspector.duties.office import Office
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr


@dataclass(frozen=True, slots=True)
class IncidentRow:
    """A line of the list, in words. kept: what is still evidence, by tag."""

    ref: str
    day: str
    gravity: str
    state: str
    kept: str
    place: str


@dataclass(frozen=True, slots=True)
class PieceTold:
    """A piece of an incident, in words."""

    tag: str
    kind_name: str
    verdict: str
    held_by: str
    state: str


@dataclass(frozen=True, slots=True)
class IncidentTold:
    """An incident in words. vehicles: tag, name, state; added: day, what, text."""

    ref: str
    gravity: str
    what: str
    facts: tuple[Fact, ...]
    pieces: tuple[PieceTold, ...]
    vehicles: tuple[tuple[str, str, str], ...]
    added: tuple[tuple[str, str, str], ...]


def incidents(office: Office) -> tuple[IncidentRow, ...]:
    """Every incident, the youngest first."""
    with office.book.reading() as page:
        rows = [
            IncidentRow(
                one.ref,
                show_day(one.facts.on),
                gravity_words(one.facts.gravity),
                tr("closed") if is_closed(page, one) else tr("open"),
                ", ".join((*kept_pieces(page, one), *kept_vehicles(page, one))),
                one.facts.place,
            )
            for one in page.incidents()
        ]
    return tuple(reversed(rows))


def incident_told(office: Office, ref: str) -> IncidentTold:
    """One incident with all that is known of it."""
    with office.book.reading() as page:
        incident = incident_called(page, ref)
        names = {one.id: one.name for one in page.people()}
        pieces = tuple(
            PieceTold(one.tag, one.kind_name, outcome_word(one.outcome), one.held_by, one.state)
            for one in evidence_pieces(office, page, incident, names)
        )
        return IncidentTold(
            incident.ref,
            gravity_words(incident.facts.gravity),
            incident.facts.what,
            evidence_facts(page, incident, names),
            pieces,
            tuple(evidence_vehicles(page, incident, names)),
            tuple(evidence_told(page, incident, names)),
        )
