"""Let evidence go: a piece or a vehicle, by two different competent persons, for a reason in words.

A piece that was let go stays on hold until somebody competent has inspected it; one that broke, until two have answered
that by name as well, then or later.
"""

from inspector.duties.incident_checks import incident_called, need
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.who import (
    check_competent_for_any,
    check_could_before,
    check_judge,
    owns_vehicle,
    proved,
    two_names,
)
from inspector.gear.evidence import NewRelease
from inspector.gear.incident import EntryKind, Incident, IncidentEntry, NewIncidentEntry
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.person import Person
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


def release_evidence(
    office: Office, ref: str, tag: str, *, second: str, why: str, by: str = "", whole: bool = False
) -> Judged:
    """Two competent persons let a piece go from an incident. by: the officer where nobody is named.

    whole: they answer as well that it broke there; the reason says how it is whole again, or that another was meant.
    """
    reason = need(tr("reason"), why, tr("Write why it need not be kept any longer, and who agreed."))
    with office.book.page() as page:
        incident, item = incident_called(page, ref), page.item(tag)
        _check_kept(page, incident, item, whole=whole)
        kind = office.kind(item.facts.kind)
        first, other = two_names(office, page, (by, tr("released by")), second)
        for person, field in ((first, tr("released by")), (other, tr("second name"))):
            check_judge(person, item, kind, office.today, field)
            check_could_before(page, person, [kind], office.today, field)
        facts = NewRelease(office.today, incident.ref, first.id, other.id, reason, whole)
        page.add_release(item, facts)
        outcome = judge_and_keep(office, page, item)
        line = {"tag": item.tag, "as": facts, **proved(office, first.id, other.id)}
        page.enter("release evidence", by=office.officer.id, at=office.now, facts=line)
    return outcome


def _check_kept(page: Page, incident: Incident, item: Item, *, whole: bool) -> None:
    """What was let go before may still be answered for."""
    if whole and incident.ref not in page.open_breaks(item):
        said = tr("{tag} did not break in {ref}, or that is answered.", tag=item.tag, ref=incident.ref)
        raise Refused(tr("whole"), said, tr("Let it go without an answer to a break."))
    if not whole and incident.ref not in page.open_quarantines(item):
        said = tr("{tag} is not kept for {ref}.", tag=item.tag, ref=incident.ref)
        raise Refused(tr("tag"), said, tr("Look at the incident's list of pieces."))


def release_vehicle(office: Office, ref: str, tag: str, *, second: str, why: str, by: str = "") -> IncidentEntry:
    """Two competent persons let a vehicle go from an incident."""
    reason = need(tr("reason"), why, tr("Write why it need not be kept any longer, and who agreed."))
    with office.book.page() as page:
        incident, vehicle = incident_called(page, ref), page.vehicle(tag)
        if incident.ref not in page.kept_vehicles().get(vehicle.tag, ()):
            said = tr("{tag} is not kept for {ref}.", tag=vehicle.tag, ref=incident.ref)
            raise Refused(tr("vehicle"), said, tr("Look at the incident's list of vehicles."))
        first, other = two_names(office, page, (by, tr("released by")), second)
        for person, field in ((first, tr("released by")), (other, tr("second name"))):
            _check_for_vehicle(office, person, vehicle, field)
            check_could_before(page, person, office.rules.kinds.values(), office.today, field)
        said_so = (vehicle.tag, reason, first.id, other.id)
        facts = NewIncidentEntry(office.today, EntryKind.VEHICLE_RELEASED, *said_so)
        kept = page.add_incident_entry(incident, facts)
        line = {"incident": incident.ref, "as": facts, **proved(office, first.id, other.id)}
        page.enter("release vehicle", by=office.officer.id, at=office.now, facts=line)
    return kept


def _check_for_vehicle(office: Office, person: Person, vehicle: Vehicle, field: str) -> None:
    """A vehicle is of no family of gear: whoever may judge any family today may let it go, but not its owner."""
    check_competent_for_any(person, office.rules.kinds.values(), office.today, field)
    if owns_vehicle(person, vehicle):
        why = tr("{name} owns the vehicle, and nobody lets his own go.", name=person.name)
        raise Refused(field, why, tr("Ask another competent person."))
