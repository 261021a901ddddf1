"""Add to an incident: what witnesses state, who holds a piece of evidence, a piece found later; and close it."""

from inspector.duties.incident_checks import incident_called, need
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.report_incident import quarantine_of, why_not_kept
from inspector.duties.scene import stood_then
from inspector.duties.who import id_of
from inspector.gear.incident import EntryKind, Gravity, Incident, IncidentEntry, NewIncidentEntry
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


def add_statement(office: Office, ref: str, witness: str, text: str, by: str = "") -> IncidentEntry:
    """Keep what a witness says. witness: the name as stated; by: who wrote it down."""
    name = need(tr("witness"), witness, tr("Write the name as the witness gave it."))
    check_line(tr("witness"), name)
    said = need(tr("statement"), text, tr("Write what the witness says, in the witness's own words."))
    return _add(office, ref, "add statement", EntryKind.STATEMENT, (name, said, "", by))


def add_custody(office: Office, ref: str, tag: str, holder: str, text: str = "", by: str = "") -> IncidentEntry:
    """Keep who holds a piece of evidence from now on. holder: the name as stated; text: where, which seal, why."""
    name = need(tr("holder"), holder, tr("Write who has it now."))
    check_line(tr("holder"), name)
    check_text(tr("text"), text)
    with office.book.together(), office.book.reading() as page:
        incident, item = incident_called(page, ref), page.item(tag)
        if incident.ref not in page.open_quarantines(item):
            why = tr("{tag} is not kept for {ref}.", tag=item.tag, ref=incident.ref)
            raise Refused(tr("tag"), why, tr("Look at the incident's list of pieces."))
        return _add(office, ref, "hand evidence over", EntryKind.CUSTODY, (item.tag, text.strip(), name, by))


def close_incident(office: Office, ref: str, text: str, by: str = "") -> IncidentEntry:
    """Close a report, once nothing is kept for it any more. text: what came of it."""
    said = need(tr("outcome"), text, tr("Write what came of it."))
    with office.book.together(), office.book.reading() as page:
        incident = incident_called(page, ref)
        if kept := kept_pieces(page, incident) + kept_vehicles(page, incident):
            why = tr("{tags}: still kept as evidence.", tags=", ".join(kept))
            raise Refused(tr("incident"), why, tr("Two competent persons release each of them first."))
        return _add(office, ref, "close incident", EntryKind.CLOSED, ("", said, "", by))


def hold_more(office: Office, ref: str, tag: str, why: str, by: str = "") -> Judged:
    """Keep a further piece as found, that turns out to belong to an accident."""
    reason = need(tr("reason"), why, tr("Write how it belongs to the incident."))
    with office.book.page() as page:
        incident, item = incident_called(page, ref), page.item(tag)
        _check_open(page, incident)
        _check_may_be_held(page, incident, item)
        who = id_of(office, page, by, tr("by"))
        stood = stood_then(page, [item], incident.facts)[0]
        facts = NewIncidentEntry(office.today, EntryKind.HELD, item.tag, reason, who, stood=stood)
        page.add_incident_entry(incident, facts)
        page.add_quarantine(item, quarantine_of(incident, item, who))
        outcome = judge_and_keep(office, page, item)
        page.enter("hold evidence", by=office.officer.id, at=office.now, facts={"incident": incident.ref, "as": facts})
    return outcome


def _check_may_be_held(page: Page, incident: Incident, item: Item) -> None:
    if incident.facts.gravity is not Gravity.ACCIDENT:
        why = tr("{ref} is a near miss, for which nothing is kept.", ref=incident.ref)
        raise Refused(tr("incident"), why, tr("Report it as an accident, if it was one."))
    if page.quarantined_for(item, incident.ref):
        why = tr("{tag} is or was kept for {ref} already.", tag=item.tag, ref=incident.ref)
        raise Refused(tr("tag"), why, tr("Report an incident anew, if it is needed as evidence again."))
    if why := why_not_kept(page, item):
        raise Refused(tr("tag"), f"{item.tag}: {why}", tr("Write what is known of it as a statement."))


def pieces_of_incident(page: Page, incident: Incident) -> tuple[str, ...]:
    """Every piece of it by tag, those that were found later at the end."""
    later = [one.facts.about for one in page.incident_entries(incident) if one.facts.kind is EntryKind.HELD]
    return (*incident.facts.pieces, *later)


def kept_pieces(page: Page, incident: Incident) -> tuple[str, ...]:
    """The pieces that are kept for it, by tag."""
    every = pieces_of_incident(page, incident)
    return tuple(tag for tag in every if incident.ref in page.open_quarantines(page.item(tag)))


def kept_vehicles(page: Page, incident: Incident) -> tuple[str, ...]:
    """The vehicles that are kept for it, by tag."""
    kept = page.kept_vehicles()
    return tuple(tag for tag in incident.facts.vehicles if incident.ref in kept.get(tag, ()))


def is_closed(page: Page, incident: Incident) -> bool:
    """Whether it was closed."""
    return any(one.facts.kind is EntryKind.CLOSED for one in page.incident_entries(incident))


def _check_open(page: Page, incident: Incident) -> None:
    if is_closed(page, incident):
        why = tr("{ref} is closed.", ref=incident.ref)
        raise Refused(tr("incident"), why, tr("What is new is reported as an incident of its own, naming this one."))


def _add(office: Office, ref: str, deed: str, kind: EntryKind, said: tuple[str, str, str, str]) -> IncidentEntry:
    about, text, holder, by = said
    with office.book.page() as page:
        incident = incident_called(page, ref)
        _check_open(page, incident)
        who = id_of(office, page, by, tr("by"))
        facts = NewIncidentEntry(office.today, kind, about, text, who, holder=holder)
        kept = page.add_incident_entry(incident, facts)
        page.enter(deed, by=office.officer.id, at=office.now, facts={"incident": incident.ref, "as": facts})
    return kept
