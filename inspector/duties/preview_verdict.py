"""What the verdict would be with an inspection that is still being written.

Nothing is kept of a verdict that never was. But a value that held or retired the piece in a preview is remembered, so
that whoever changes it afterwards does so in sight: the first value goes into the history with the new one.
"""

from collections.abc import Iterator

from msgspec.structs import replace

from inspector.duties.judging import judged
from inspector.duties.office import Office
from inspector.duties.record_inspection import check_inspection, may_pass, stand_for
from inspector.duties.who import person_of
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import FirstValue, Inspection, NewInspection, Reading
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Finding, Status
from inspector.language import tr

_PREVIEW = "preview"


def preview_verdict(office: Office, dossier: Dossier, facts: NewInspection) -> Judged:
    """Judge the dossier as if the inspection stood in it. The inspector is the officer at the desk."""
    with office.book.reading() as page:
        second = person_of(page, facts.second, tr("second name")) if facts.second else None
        counts = stand_for(office, page, office.officer, dossier.item, second)
    competent = may_pass(office.officer, dossier.item, dossier.kind, facts.on, second) and counts
    return judged_with(office, replace(dossier, on=office.today), replace(facts, competent=competent))


def judged_with(office: Office, dossier: Dossier, facts: NewInspection) -> Judged:
    """Judge the dossier on its day as if the inspection stood in it. Refused: what cannot be."""
    check_inspection(office, dossier.item, dossier.kind, facts)
    added = Inspection(_PREVIEW, dossier.item.id, facts)
    inspections = tuple(sorted((*dossier.inspections, added), key=lambda one: one.on))
    return judged(office, replace(dossier, inspections=inspections))


def failing(shown: Judged, facts: NewInspection) -> Iterator[tuple[Finding, tuple[FirstValue, ...]]]:
    """What the preview holds or retires the piece by, each with the values that it was found by."""
    for one in shown.verdict.findings:
        if _fails_by_preview(one):
            yield one, tuple(_values(one, facts))


def note_first(noted: tuple[FirstValue, ...], shown: Judged, facts: NewInspection) -> tuple[FirstValue, ...]:
    """What was noted so far, and the values by which the preview just shown holds or retires; the first stay."""
    fresh = [value for _, values in failing(shown, facts) for value in values]
    places = {(one.observation, one.point) for one in noted}
    return (*noted, *{(one.observation, one.point): one for one in fresh if _place(one) not in places}.values())


def first_values(noted: tuple[FirstValue, ...], facts: NewInspection) -> tuple[FirstValue, ...]:
    """Those of the noted values that the inspection does not say any more. What was only typed on is not a change."""
    said = {(one.check, ""): one.grade.value for one in facts.answers}
    said |= {(one.measure, one.point): one.figure.as_typed for one in facts.readings}
    return tuple(one for one in noted if not said.get(_place(one), "").startswith(one.typed))


def leave_preview(office: Office, tag: str, noted: tuple[FirstValue, ...]) -> None:
    """Write into the ledger what held or retired the piece in the preview of an inspection that is not logged."""
    if not noted:
        return
    with office.book.page() as page:
        item = page.item(tag)
        facts = {"tag": item.tag, "first": noted}
        page.enter("leave inspection", by=office.officer.id, at=office.now, facts=facts)


def _place(one: FirstValue) -> tuple[str, str]:
    return one.observation, one.point


def _fails_by_preview(finding: Finding) -> bool:
    failed = finding.status is Status.FAILS and finding.outcome.severity >= Outcome.HOLD.severity
    return failed and finding.rests_on == _PREVIEW and bool(finding.observation)


def _values(finding: Finding, facts: NewInspection) -> Iterator[FirstValue]:
    """The grade, or the readings that come nearest to what the finding saw: the least of them or the greatest."""
    for answer in facts.answers:
        if answer.check == finding.observation:
            yield FirstValue(answer.check, "", answer.grade.value, finding.outcome)
    readings = [one for one in facts.readings if one.measure == finding.observation]
    worst = _worst(finding, readings)
    yield from (
        FirstValue(one.measure, one.point, one.figure.as_typed, finding.outcome)
        for one in readings
        if one.figure.si == worst
    )


def _worst(finding: Finding, readings: list[Reading]) -> float | None:
    """The greatest reading where more is worse, else the least."""
    figures = [one.figure.si for one in readings]
    prefix = finding.quantity.partition(".")[0]
    more_is_worse = prefix in {"growth", "excess"} or (prefix == "measured" and finding.must in {"at_most", "below"})
    return (max if more_is_worse else min)(figures, default=None)
