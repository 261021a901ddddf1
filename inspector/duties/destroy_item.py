"""Record that a retired piece was made unusable."""

from datetime import date

from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.who import check_at_hand, check_not_evidence, person_of
from inspector.gear.outcome import Outcome
from inspector.gear.strike import NewDestruction
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page


def destroy_item(office: Office, tag: str, how: str, on: date | None = None, witness: str = "") -> NewDestruction:
    """Keep how and when a retired piece was made unusable; from then on its retirement cannot be struck."""
    if not how.strip():
        raise Refused(tr("how"), tr("It is empty."), tr("Write how it was made unusable, for example cut in two."))
    day = on or office.today
    found = open_item(office, tag)
    if found.verdict.outcome is not Outcome.RETIRE:
        why = tr("{tag} is not retired.", tag=found.dossier.item.tag)
        raise Refused(tr("piece"), why, tr("Only a retired piece is destroyed; log what was found and judge it first."))
    retired_on = found.dossier.retired_on or found.verdict.on
    if not retired_on <= day <= office.today:
        why = tr("The day lies in the future or before the retirement.")
        raise Refused(tr("day"), why, tr("Write the day as it was."))
    with office.book.page() as page:
        item = found.dossier.item
        if page.is_destroyed(item):
            why = tr("{tag} is recorded as made unusable already.", tag=item.tag)
            raise Refused(tr("piece"), why, tr("Look at its history."))
        check_at_hand(page, item)
        check_not_evidence(page, item)
        seen_by = _witness(office, page, witness) if witness else ""
        facts = NewDestruction(day, office.officer.id, how.strip(), seen_by)
        page.add_destruction(item, facts)
        page.enter("destroy", by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": facts})
    return facts


def _witness(office: Office, page: Page, named: str) -> str:
    """The id of the witness, who must be somebody else than the person who made the piece unusable."""
    person = person_of(page, named, tr("witness"))
    if person.id == office.officer.id:
        why = tr("{name} cannot be both names.", name=person.name)
        raise Refused(tr("witness"), why, tr("Name somebody else who saw it, or leave it empty."))
    return person.id
