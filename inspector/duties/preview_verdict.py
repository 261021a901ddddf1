"""What the verdict would be with an inspection that is still being written. Nothing is kept."""

from dataclasses import replace

from inspector.duties.judging import judged
from inspector.duties.office import Office
from inspector.duties.record_inspection import check_inspection, may_pass
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import Inspection, NewInspection
from inspector.gear.verdict import Judged


def preview_verdict(office: Office, dossier: Dossier, facts: NewInspection) -> Judged:
    """Judge the dossier as if the inspection stood in it. The inspector is the officer at the desk."""
    competent = may_pass(office.officer, dossier.item, dossier.kind, facts)
    check_inspection(office, dossier.item, dossier.kind, replace(facts, competent=competent))
    added = Inspection("preview", dossier.item.id, replace(facts, competent=competent))
    inspections = tuple(sorted((*dossier.inspections, added), key=lambda one: one.on))
    return judged(office, replace(dossier, on=office.today, inspections=inspections))
