"""What happened to a piece since a competent person has last seen all of it: events, doubts, moves, repairs, finds."""

from collections.abc import Iterable
from datetime import date

from inspector.gear.inspection import Inspection, InspectionKind
from inspector.gear.item_change import Altered
from inspector.gear.opinion import Stance
from inspector.gear.recall_notice import Step, that_count
from inspector.gear.use import Event, Weather
from inspector.gear.verdict import Known
from inspector.language import tr
from inspector.rulebook.case import Case
from inspector.rulebook.observed import who_words
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number
from inspector.units import Dimension


def open_events(case: Case) -> Quantity:
    """Overloads, drops and run-overs after which no competent person has seen all of it."""
    events = [(one.facts.on, one.id) for one in case.dossier.uses if one.facts.event is not Event.NONE]
    return _open(case, events, tr("uses logged"))


def harmful_exposures(case: Case) -> Quantity:
    """Heat and chemicals after which no competent person has seen all of it."""
    return _open(case, _exposed(case, {Weather.HEAT, Weather.CHEMICAL}), tr("exposures logged"))


def _exposed(case: Case, weathers: set[Weather]) -> list[tuple[date, str]]:
    return [(one.facts.on, one.id) for one in case.dossier.exposures if one.facts.weather in weathers]


def open_doubts(case: Case) -> Quantity:
    """Doubts that somebody voiced and after which no competent person has seen all of it."""
    doubts = [(one.facts.on, one.id) for one in case.dossier.opinions if one.facts.stance is Stance.DOUBTS]
    return _open(case, doubts, tr("doubts voiced"))


def open_strikes(case: Case) -> Quantity:
    """Entries struck since a competent person has last seen all of it."""
    return _open(case, [(one.facts.on, one.id) for one in case.dossier.strikes], tr("entries struck"))


def open_fittings(case: Case) -> Quantity:
    """Times it was put on a vehicle after which no competent person has seen all of it where it sits now.

    On one day the order of entry decides. A part that was taken off again waits for its next place.
    """
    moves = case.dossier.fittings
    if moves and moves[-1].facts.to is None:
        moves = ()
    return _entered_since(case, [(one.facts.on, one.id) for one in moves], tr("fittings logged"))


def open_finds(case: Case) -> Quantity:
    """Times it was found again or came back from outside the club and nobody competent has seen all of it since."""
    finds = [(one.facts.on, one.id) for one in case.dossier.finds]
    return _entered_since(case, finds, tr("whereabouts logged")) if finds else NOT_APPLICABLE


def open_repairs(case: Case) -> Quantity:
    """Repairs and parts put in, after which no competent person has seen all of it."""
    if not case.dossier.repairs:
        return NOT_APPLICABLE
    last = case.looked_over.at  # work that is told late was not known to whoever looked before
    left = [one for one in case.dossier.repairs if last is None or not (last.on >= one.facts.on and last.id > one.id)]
    newest = max((one.facts.on for one in left), default=None)
    return number(len(left), Dimension.COUNT, tr("repairs logged"), Known.COUNTED, measured_on=newest)


def open_labels(case: Case) -> Quantity:
    """Markings written down anew after which no competent person has seen all of it."""
    anew = [(one.facts.on, one.id) for one in case.dossier.changes if one.facts.what is Altered.LABEL_NEW]
    return _entered_since(case, anew, tr("markings written down anew")) if anew else NOT_APPLICABLE


def open_evidence(case: Case) -> Quantity:
    """Incidents whose evidence it is: no inspection answers that, two competent persons release it."""
    if not case.dossier.quarantines:
        return NOT_APPLICABLE
    gone = {one.facts.incident for one in case.dossier.evidence_releases}
    kept = {one.facts.incident: one.facts.on for one in case.dossier.quarantines if one.facts.incident not in gone}
    newest = max(kept.values(), default=None)
    return number(len(kept), Dimension.COUNT, tr("incidents reported"), Known.COUNTED, measured_on=newest)


def open_breaks(case: Case) -> Quantity:
    """Incidents in which it broke or let go: no inspection answers that, two competent persons do by name."""
    broke = {one.facts.incident: one.facts.on for one in case.dossier.quarantines if one.facts.broke}
    if not broke:
        return NOT_APPLICABLE
    answered = {one.facts.incident for one in case.dossier.evidence_releases if one.facts.whole}
    left = {ref: on for ref, on in broke.items() if ref not in answered}
    newest = max(left.values(), default=None)
    return number(len(left), Dimension.COUNT, ", ".join(left or broke), Known.COUNTED, measured_on=newest)


def open_releases(case: Case) -> Quantity:
    """Releases from evidence after which no competent person has seen all of it."""
    free = [(one.facts.on, one.id) for one in case.dossier.evidence_releases]
    return _entered_since(case, free, tr("releases logged")) if free else NOT_APPLICABLE


def open_recalls(case: Case) -> Quantity:
    """Recalls it stands under: no inspection answers that, but what is read on it, or what the notice asks for."""
    calls = that_count(case.dossier.calls)
    if not calls:
        return NOT_APPLICABLE
    last = {one.facts.recall: one.facts for one in calls}
    days = [one.on for one in last.values() if one.step is Step.CALLED]
    return number(len(days), Dimension.COUNT, tr("recalls entered"), Known.COUNTED, measured_on=max(days, default=None))


def open_remedies(case: Case) -> Quantity:
    """What was done for a recall, after which no competent person has seen all of it."""
    done = [(one.facts.on, one.id) for one in case.dossier.calls if one.facts.step is Step.REMEDIED]
    return _entered_since(case, done, tr("remedies logged")) if done else NOT_APPLICABLE


def changed_figures(case: Case) -> Quantity:
    """Values changed after a preview had held or retired the piece, since it was last looked over."""
    if not case.thorough:
        return NOT_APPLICABLE
    last, since = case.thorough[-1], case.looked_over.at
    since_on = date.min if since is None else since.on
    count = sum([len(one.facts.first_values) for one in case.thorough if one.facts.on >= since_on])
    return number(count, Dimension.COUNT, who_words(last), Known.COUNTED, measured_on=last.on, seen_in=last)


def frozen_exposures(case: Case) -> Quantity:
    """Days frozen while wet after which no competent person has seen all of it."""
    return _open(case, _exposed(case, {Weather.FROST}), tr("exposures logged"))


def _entered_since(case: Case, entries: Iterable[tuple[date, str]], came_from: str) -> Quantity:
    """Entries, by day and id, that came after the piece was last looked over; on one day the order of entry decides."""
    last = case.looked_over.at
    left = [day for day, key in entries if last is None or (day, key) > (last.on, last.id)]
    return number(len(left), Dimension.COUNT, came_from, Known.COUNTED, measured_on=max(left, default=None))


def _open(case: Case, entries: Iterable[tuple[date, str]], came_from: str) -> Quantity:
    """Entries, by day and id, after which all of the piece has not been seen.

    On the day itself an entry is answered only by inspections made for an event and entered after it; whoever looks
    once more that day undoes nothing.
    """
    left = [day for day, key in entries if not _is_answered(case, day, key)]
    return number(len(left), Dimension.COUNT, came_from, Known.COUNTED, measured_on=max(left, default=None))


def _is_answered(case: Case, day: date, key: str) -> bool:
    last = case.looked_over.at
    if last is None or day != last.on:
        return last is not None and day < last.on
    return case.all_seen_in(one for one in case.thorough if _answers(one, day, key))


def _answers(inspection: Inspection, day: date, key: str) -> bool:
    if day != inspection.on:
        return day < inspection.on
    return inspection.facts.kind is InspectionKind.AFTER_EVENT and key < inspection.id
