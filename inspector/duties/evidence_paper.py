"""Print an incident's evidence list: numbered and kept, so that a reprint says what it said."""

from collections.abc import Iterator, Mapping

from inspector.duties.incident_checks import incident_called
from inspector.duties.keep_incident import is_closed
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper, imprint, next_number, put_out
from inspector.duties.tell_whereabouts import brief_words
from inspector.gear.evidence import Release
from inspector.gear.evidence_list import EvidenceList, EvidencePiece
from inspector.gear.incident import EntryKind, Gravity, Incident, IncidentEntry, StoodThen
from inspector.gear.item import Item
from inspector.gear.rig_result import RigResult
from inspector.gear.verdict import Fact
from inspector.gear.whereabouts import Whereabouts
from inspector.language import show_day, tr
from inspector.paper.evidence_list import evidence_list
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.register.rows import from_body
from inspector.rulebook.words import marked_words

EVIDENCE = "evidence_list"  # what the register calls this kind of document
_Names = Mapping[str, str]


def print_evidence(office: Office, ref: str, *, again: bool = False) -> Paper:
    """Number, keep and print the list as it stands now; again: print the last one as it was said."""
    made = _kept(office, ref) if again else enter_evidence(office, ref)
    return put_out(office, made.imprint.number, evidence_list(made, PageSize(office.page), office.system))


def _kept(office: Office, ref: str) -> EvidenceList:
    with office.book.reading() as page:
        incident = incident_called(page, ref)
        kept = page.latest_document(EVIDENCE, incident.id)
    if kept is None:
        why = tr("No evidence list of {ref} was printed yet.", ref=incident.ref)
        raise Refused(tr("incident"), why, tr("Print it for the first time."))
    return from_body(kept[1], EvidenceList)


def enter_evidence(office: Office, ref: str) -> EvidenceList:
    """Number and keep the list; no file is written."""
    with office.book.page() as page:
        incident = incident_called(page, ref)
        number = next_number(page, "E", EVIDENCE)
        made = _list(office, page, incident, number)
        page.add_document(number, EVIDENCE, office.today, incident.id, made)
        facts = {"number": number, "incident": incident.ref}
        page.enter("print evidence list", by=office.officer.id, at=office.now, facts=facts)
    return made


def _list(office: Office, page: Page, incident: Incident, number: str) -> EvidenceList:
    told, names = incident.facts, {one.id: one.name for one in page.people()}
    return EvidenceList(
        imprint=imprint(office, page, tr("Evidence list"), number),
        ref=incident.ref,
        gravity=gravity_words(told.gravity),
        what=told.what,
        facts=evidence_facts(page, incident, names),
        pieces=tuple(evidence_pieces(office, page, incident, names)),
        vehicles=tuple(evidence_vehicles(page, incident, names)),
        distances=told.distances,
        result=from_body(told.rig_result, RigResult) if told.rig_result else None,
        why_no_result=told.rig_why_not,
        rig_vehicles=tuple(one for one in page.vehicles() if one.tag in told.vehicles),
        told=tuple(evidence_told(page, incident, names)),
        files=tuple((one.facts.name, one.facts.sha256) for one in page.attachments(incident.id)),
        may_not=may_not_words(told.gravity),
        head=page.head(),
    )


def gravity_words(gravity: Gravity) -> str:
    """How bad it was."""
    words = {Gravity.ACCIDENT: tr("Accident"), Gravity.NEAR_MISS: tr("Near miss")}
    return words[gravity]


def may_not_words(gravity: Gravity) -> tuple[str, ...]:
    """What may not be done with evidence."""
    if gravity is Gravity.NEAR_MISS:
        return (tr("Nothing is kept as found for a near miss. What bore the pull is on hold until it is inspected."),)
    return (
        tr("Do not clean, dry, oil, repair, take apart, mark, sell, give away, lend, fit, take off or make unusable."),
        tr("Put each piece into a bag or box of its own, seal it, write its tag on the outside, and lock it away."),
        tr("Touch as little as possible. Who takes a piece over signs for it, each time."),
        tr("Two competent persons release each piece. It then stays on hold until it has been inspected."),
    )


def evidence_facts(page: Page, incident: Incident, names: _Names) -> tuple[Fact, ...]:
    """When, where, who: the head of an incident."""
    told = incident.facts
    trip = next((one.name for one in page.trips() if told.trip and one.ref == told.trip), "")
    given = (
        (tr("Day"), show_day(told.on)),
        (tr("Place"), told.place),
        (tr("Reported by"), names.get(told.by, told.by)),
        (tr("Trip"), f"{told.trip} {trip}".strip()),
        (tr("Witnesses, names as stated"), ", ".join(told.witnesses)),
        (tr("Broke or let go"), ", ".join(told.broken)),
        (tr("State of the report"), tr("closed") if is_closed(page, incident) else tr("open")),
    )
    return tuple(Fact(label, text) for label, text in given)


def stood_of(page: Page, incident: Incident) -> tuple[StoodThen, ...]:
    """How every piece of it stood, those found later at the end."""
    later = (one.facts.stood for one in page.incident_entries(incident))
    return (*incident.facts.stood, *(one for one in later if one is not None))


def evidence_pieces(office: Office, page: Page, incident: Incident, names: _Names) -> Iterator[EvidencePiece]:
    """Every piece of it as it stood, and what has become of it."""
    gone = dict(incident.facts.gone)
    hands = {one.facts.about: one for one in page.incident_entries(incident) if one.facts.kind is EntryKind.CUSTODY}
    for stood in stood_of(page, incident):
        item = page.item(stood.tag)
        state, is_kept = _state(page, incident, item, gone.get(stood.tag, ""), names)
        if stood.tag in incident.facts.broken:
            state = tr("broke or let go; {state}", state=state)
        kind = office.rules.kinds.get(item.facts.kind)
        yield EvidencePiece(
            tag=stood.tag,
            kind_name=kind.name if kind else item.facts.kind,
            marked=marked_words(item),
            maker_mark=item.facts.maker_mark,
            serial=item.facts.serial,
            outcome=stood.outcome,
            headline=stood.headline,
            held_by=names.get(stood.held_by, stood.held_by),
            now=_now(page.whereabouts_of(item), hands.get(stood.tag), names),
            state=state,
            is_kept=is_kept,
            is_broken=incident.ref in page.open_breaks(item),
        )


def _state(page: Page, incident: Incident, item: Item, gone: str, names: _Names) -> tuple[str, bool]:
    """Whether a piece is kept, and if not why, in words."""
    if gone:
        return gone, False
    if incident.ref in page.open_quarantines(item):
        return tr("kept as found"), True
    freed = [one for one in page.releases_of(item) if one.facts.incident == incident.ref]
    if not freed:
        return tr("not kept: a near miss; on hold until inspected"), False
    return "; ".join(released_words(one, names) for one in freed), False


def released_words(freed: Release, names: _Names) -> str:
    """Who let it go, when and why."""
    both = tr(" and ").join(names.get(key, key) for key in (freed.facts.by, freed.facts.second))
    if freed.facts.whole:
        return tr(
            "its break answered on {day} by {both}: {why}", day=show_day(freed.facts.on), both=both, why=freed.facts.why
        )
    return tr("released on {day} by {both}: {why}", day=show_day(freed.facts.on), both=both, why=freed.facts.why)


def _now(where: Whereabouts, last: IncidentEntry | None, names: _Names) -> str:
    """Where the register has it, and who holds it since it was handed over."""
    place = brief_words(where, names)
    if last is None:
        return place
    held = tr("{name} since {day}", name=last.facts.holder, day=show_day(last.facts.on))
    return tr("{held} ({place})", held=held, place=place)


def evidence_vehicles(page: Page, incident: Incident, names: _Names) -> Iterator[tuple[str, str, str]]:
    """Tag and name of each vehicle, and whether it is kept."""
    entries = page.incident_entries(incident)
    freed = {one.facts.about: one.facts for one in entries if one.facts.kind is EntryKind.VEHICLE_RELEASED}
    near_miss = incident.facts.gravity is Gravity.NEAR_MISS
    for tag in incident.facts.vehicles:
        one = freed.get(tag)
        state = tr("not kept: a near miss") if near_miss else tr("kept as found")
        if one:
            both = tr(" and ").join(names.get(key, key) for key in (one.by, one.second))
            state = tr("released on {day} by {both}: {why}", day=show_day(one.on), both=both, why=one.text)
        yield tag, page.vehicle(tag).name, state


def evidence_told(page: Page, incident: Incident, names: _Names) -> Iterator[tuple[str, str, str]]:
    """What was added, the oldest first."""
    for one in page.incident_entries(incident):
        yield show_day(one.facts.on), *entry_words(one, names)


def entry_words(one: IncidentEntry, names: _Names) -> tuple[str, str]:
    """What an addition is, and what it says with who wrote it down."""
    said = one.facts
    to = f"{tr('to {name}', name=said.holder)}. {said.text}"
    words = {
        EntryKind.STATEMENT: (tr("Statement of {name}", name=said.about), said.text),
        EntryKind.HELD: (tr("{tag} kept as well", tag=said.about), said.text),
        EntryKind.CUSTODY: (tr("{tag} handed over", tag=said.about), to),
        EntryKind.VEHICLE_RELEASED: (tr("{tag} released", tag=said.about), said.text),
        EntryKind.CLOSED: (tr("Closed"), said.text),
    }
    what, text = words[said.kind]
    both = ", ".join(names.get(key, key) for key in (said.by, said.second) if key)
    return what, tr("{text} (written down by {names})", text=text.strip(), names=both)
