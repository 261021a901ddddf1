"""Tell of incidents: the list of all, and one with its pieces, vehicles and what was added."""

from msgspec import Struct

from inspector.drawings.marks import outcome_word
from inspector.duties.evidence_paper import (
    EVIDENCE,
    evidence_facts,
    evidence_pieces,
    evidence_told,
    evidence_vehicles,
    gravity_words,
    may_not_words,
)
from inspector.duties.incident_checks import incident_called
from inspector.duties.keep_incident import is_closed, kept_pieces, kept_vehicles
from inspector.duties.office import Office
from inspector.gear.evidence_list import EvidencePiece
from inspector.gear.incident import Distance, Gravity
from inspector.gear.outcome import Outcome
from inspector.gear.rig_result import RigResult
from inspector.gear.trip import Vehicle
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.register.rows import from_body
from inspector.rulebook.wording import cautions


class IncidentRow(Struct, frozen=True):
    """A line of the list, in words. kept: what is still evidence, by tag."""

    ref: str
    day: str
    gravity: str
    state: str
    kept: str
    place: str
    is_closed: bool


class PieceTold(Struct, frozen=True):
    """A piece of an incident, in words. outcome: of that day; now: where it is and who holds it.

    is_broken: it broke there, and no two have answered that.
    """

    tag: str
    kind_name: str
    verdict: str
    held_by: str
    state: str
    outcome: Outcome
    now: str = ""
    is_kept: bool = False
    is_broken: bool = False


class IncidentTold(Struct, frozen=True):
    """An incident in words. vehicles: tag, name, state; added: day, what, text.

    may_not: what may not be done with what is kept. kept_vehicles: their tags. result: the rig's sum as it stood, None
    where why_no_result says why; rig_vehicles: the vehicles of it. list_number: of the last evidence list printed.
    """

    ref: str
    gravity: str
    what: str
    facts: tuple[Fact, ...]
    pieces: tuple[PieceTold, ...]
    vehicles: tuple[tuple[str, str, str], ...]
    added: tuple[tuple[str, str, str], ...]
    is_near_miss: bool
    is_closed: bool
    may_not: tuple[str, ...]
    kept_vehicles: tuple[str, ...]
    distances: tuple[Distance, ...]
    result: RigResult | None
    why_no_result: str
    rig_vehicles: tuple[Vehicle, ...]
    list_number: str
    cautions: tuple[str, ...]

    @property
    def kept(self) -> tuple[PieceTold, ...]:
        """The pieces that are kept as found."""
        return tuple(one for one in self.pieces if one.is_kept)

    @property
    def held(self) -> tuple[PieceTold, ...]:
        """Those that are kept, and those let go whose break nobody has answered."""
        return tuple(one for one in self.pieces if one.is_kept or one.is_broken)


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
                is_closed(page, one),
            )
            for one in page.incidents()
        ]
    return tuple(reversed(rows))


def incident_told(office: Office, ref: str) -> IncidentTold:
    """One incident with all that is known of it."""
    with office.book.reading() as page:
        incident = incident_called(page, ref)
        names = {one.id: one.name for one in page.people()}
        told = incident.facts
        printed = page.latest_document(EVIDENCE, incident.id)
        return IncidentTold(
            ref=incident.ref,
            gravity=gravity_words(told.gravity),
            what=told.what,
            facts=evidence_facts(page, incident, names),
            pieces=tuple(_piece(one) for one in evidence_pieces(office, page, incident, names)),
            vehicles=tuple(evidence_vehicles(page, incident, names)),
            added=tuple(evidence_told(page, incident, names)),
            is_near_miss=told.gravity is Gravity.NEAR_MISS,
            is_closed=is_closed(page, incident),
            may_not=may_not_words(told.gravity),
            kept_vehicles=kept_vehicles(page, incident),
            distances=told.distances,
            result=from_body(told.rig_result, RigResult) if told.rig_result else None,
            why_no_result=told.rig_why_not,
            rig_vehicles=tuple(one for one in page.vehicles() if one.tag in told.vehicles),
            list_number=printed[0] if printed else "",
            cautions=cautions(office.rules),
        )


def _piece(one: EvidencePiece) -> PieceTold:
    word = outcome_word(one.outcome)
    state = (one.state, one.outcome, one.now, one.is_kept, one.is_broken)
    return PieceTold(one.tag, one.kind_name, word, one.held_by, *state)
