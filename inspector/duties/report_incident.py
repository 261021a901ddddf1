"""Report what went wrong: an accident keeps all that was there as found, a near miss counts as an overload."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.bounds import check_after_birth
from inspector.duties.incident_checks import check_report
from inspector.duties.judging import judge_and_keep
from inspector.duties.look_up import trip as trip_called
from inspector.duties.office import Office
from inspector.duties.record_use import check_use
from inspector.duties.scene import Scene, rig_as_it_stood, scene, stood_then
from inspector.duties.who import id_of
from inspector.gear.evidence import NewQuarantine
from inspector.gear.incident import Gravity, Incident, NewIncident
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.use import Event, NewUse
from inspector.gear.whereabouts import Where
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


class Reported(Struct, frozen=True):
    """A kept report, and the pieces as they are judged by it."""

    incident: Incident
    pieces: tuple[Judged, ...]


def report_incident(office: Office, told: NewIncident) -> Reported:
    """Keep a report, and of an accident every piece, fitted part and vehicle as found. One transaction.

    told: what people say. pieces: tags beside those of the rig; broken: those of them that broke; by: who reports, the
    officer where nobody is named. What the register knows of the day is worked out here, never taken from the caller.
    """
    check_report(office, told)
    trip = trip_called(office, told.trip).ref if told.trip else ""
    with office.book.page() as page:
        by = id_of(office, page, told.by, tr("reported by"))
        found = scene(office, page, told)
        _check_something(found)
        facts = _as_it_stood(office, page, replace(told, by=by, trip=trip), found)
        incident = page.add_incident(_next_ref(page), facts)
        gone = {tag for tag, _ in facts.gone}
        kept = [item for item in found.pieces if item.tag not in gone]
        for item in kept:
            _hold(office, page, incident, item)
        outcomes = tuple(judge_and_keep(office, page, item) for item in kept)
        page.enter("report incident", by=office.officer.id, at=office.now, facts=_entered(incident, kept))
    return Reported(incident, outcomes)


def _as_it_stood(office: Office, page: Page, told: NewIncident, found: Scene) -> NewIncident:
    """The report with all that the register knows of that day, read before anything is kept."""
    result, why_not = rig_as_it_stood(office, page, found, told)
    written = {item.id: item.tag for item in found.pieces}
    broken = tuple(dict.fromkeys(page.item(tag).tag for tag in told.broken))
    if strange := [tag for tag in broken if tag not in written.values()]:
        why = tr("{tags}: that is none of the pieces that were there.", tags=", ".join(strange))
        raise Refused(tr("broke"), why, tr("Name it among the pieces as well."))
    return replace(
        told,
        rig=found.rig,
        pieces=tuple(written.values()),
        vehicles=found.vehicles,
        rig_result=result,
        rig_why_not=why_not,
        stood=stood_then(page, found.pieces, told),
        gone=tuple((item.tag, why) for item in found.pieces if (why := why_not_kept(page, item))),
        broken=broken,
    )


def why_not_kept(page: Page, item: Item) -> str:
    """Why a piece cannot be kept as it was found; empty where it can."""
    if page.is_destroyed(item):
        return tr("It was made unusable before this was reported: it cannot be shown as it was found.")
    if page.whereabouts_of(item).where is Where.SOLD:
        return tr("It was sold before this was reported: the club cannot keep it as it was found. Tell who has it.")
    return ""


def _check_something(found: Scene) -> None:
    if not found.pieces and not found.vehicles:
        why = tr("Neither a piece nor a vehicle is named.")
        raise Refused(tr("pieces"), why, tr("Name the rig, the tags of its pieces, or the vehicles."))


def _hold(office: Office, page: Page, incident: Incident, item: Item) -> None:
    """Keep a piece as found; after a near miss log the overload that holds it until somebody competent has looked."""
    told = incident.facts
    if told.gravity is Gravity.ACCIDENT:
        page.add_quarantine(item, quarantine_of(incident, item, told.by))
        return
    note = tr("Incident {ref}. Near miss: {said}", ref=incident.ref, said=told.what)
    use = NewUse(told.on, 0, Event.OVERLOAD, told.by, note)
    check_use(office, use)
    check_after_birth(tr("day"), item, use.on)
    page.add_use(item, use)


def quarantine_of(incident: Incident, item: Item, by: str) -> NewQuarantine:
    """From the day it happened on, or from the day the piece came into the register where that was later."""
    broke = item.tag in incident.facts.broken
    return NewQuarantine(max(incident.facts.on, item.booked_on), incident.ref, by, broke)


def _entered(incident: Incident, kept: list[Item]) -> dict[str, object]:
    told = replace(incident.facts, rig_result="")  # the sum is in the row, whose digest the line names
    return {"ref": incident.ref, "as": told, "kept": [item.tag for item in kept]}


def _next_ref(page: Page) -> str:
    """It carries the name of this copy of the register, so two copies never give the same one."""
    return f"I-{page.origin}-{len(page.incidents()) + 1:04d}"
