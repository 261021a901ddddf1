"""Quantities that come straight from what people wrote down: grades, counts, dates, sizes against new."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from msgspec.structs import replace

from inspector.gear.inspection import Inspection, InspectionKind, Reading
from inspector.gear.item import Provenance
from inspector.gear.kind import Basis, Grade
from inspector.gear.opinion import Stance
from inspector.gear.use import Weather
from inspector.gear.verdict import Known, Value
from inspector.language import tr
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown, word
from inspector.rulebook.words import service_word
from inspector.units import Dimension

_WORSE = {Grade.GOOD: 0, Grade.SLIGHT: 1, Grade.BAD: 2}


def grade(case: Case, check: str) -> Quantity:
    """The worst grade since a competent person last answered the check; he alone may make it better.

    Good grades go stale with the inspection interval; a fault does not heal by waiting.
    """
    counted = case.answers.get(check)
    if not counted:
        return unknown(tr("No competent person has looked at it yet."), check)
    first = counted[0][0]
    inspection, found = counted[0] if len(counted) == 1 else max(reversed(counted), key=_badness)
    stale_on = first.on + timedelta(days=case.interval_days + 1) if case.is_thorough(first) else case.on
    return Quantity(
        Value(word=found.value),
        stale=case.on >= stale_on,
        came_from=_who(inspection),
        measured_on=inspection.on,
        changes_on=stale_on if stale_on > case.on else None,
        observation=check,
        known=Known.SEEN,
        seen_in=inspection,
    )


def _badness(given: tuple[Inspection, Grade]) -> int:
    return _WORSE[given[1]]


def _who(inspection: Inspection) -> str:
    if inspection.facts.kind is InspectionKind.PERIODIC:
        return tr("periodic inspection")
    if inspection.facts.kind is InspectionKind.AFTER_EVENT:
        return tr("inspection after an event")
    return tr("check before use")


def history(case: Case) -> Quantity:
    """Whether the piece's life is known, or a competent person has inspected it since it came."""
    if case.dossier.item.facts.provenance in {Provenance.NEW, Provenance.NEW_CERTIFIED}:
        return word("known", tr("booked in as new"), Known.STATED)
    if case.thorough:
        first = case.thorough[0]
        return replace(word("inspected", tr("inspected by a competent person"), Known.SEEN, first.on), seen_in=first)
    return word("unanswered", tr("nobody knows its past"), Known.STATED)


def rating_stated(case: Case) -> Quantity:
    """Where the rating is read: on the piece, on a certificate, from memory, or nowhere."""
    rating = case.dossier.item.rating
    if set(case.dossier.kind.rated_by) == {Basis.UNRATED}:
        return NOT_APPLICABLE
    return word(rating.stated_on if rating.figure else "none", tr("booking"), Known.STATED)


def design_factor(case: Case) -> Quantity:
    """The factor between a working load limit and failure."""
    rating = case.dossier.item.rating
    if rating.basis is not Basis.WLL or rating.figure is None:
        return NOT_APPLICABLE
    if rating.design_factor is None:
        return unknown(tr("The design factor behind the marked limit was not written down."))
    return number(rating.design_factor, Dimension.FACTOR, tr("booking"), Known.STATED)


def age(case: Case) -> Quantity:
    """Days since the piece was made or went into service."""
    began = case.dossier.item.life_began_on
    if began is None:
        return unknown(tr("Nobody knows when it was made or first used."))
    days = (case.on - began).days
    return number(days, Dimension.DAYS, tr("booking"), Known.STATED, measured_on=began, per_day=1.0)


def inspection_age(case: Case) -> Quantity:
    """Days since the last thorough inspection."""
    last = case.last_thorough
    if last is None:
        return unknown(tr("It has not been inspected by a competent person yet."))
    days = (case.on - last.on).days
    return number(days, Dimension.DAYS, _who(last), Known.COUNTED, measured_on=last.on, per_day=1.0, seen_in=last)


def inspection_interval(case: Case) -> Quantity:
    """Days allowed between thorough inspections in this service."""
    came_from = tr("asked for by the last inspector") if case.sooner else service_word(case.service)
    return number(case.interval_days, Dimension.DAYS, came_from, Known.STATED)


def pull_count(case: Case) -> Quantity:
    """Pulls logged since new."""
    count = sum(one.facts.pull_count for one in case.dossier.uses)
    return number(count, Dimension.COUNT, tr("uses logged"), Known.COUNTED)


def open_events(case: Case) -> Quantity:
    """Overloads, drops and run-overs that no thorough inspection has answered."""
    return _open(case, [one.on for one in case.events], tr("uses logged"))


def harmful_exposures(case: Case) -> Quantity:
    """Heat and chemicals that no thorough inspection has answered."""
    harmful = {Weather.HEAT, Weather.CHEMICAL}
    days = [one.facts.on for one in case.dossier.exposures if one.facts.weather in harmful]
    return _open(case, days, tr("exposures logged"))


def open_doubts(case: Case) -> Quantity:
    """Doubts that somebody voiced and no thorough inspection has answered."""
    days = [one.facts.on for one in case.dossier.opinions if one.facts.stance is Stance.DOUBTS]
    return _open(case, days, tr("doubts voiced"))


def open_strikes(case: Case) -> Quantity:
    """Entries struck since the last thorough inspection."""
    return _open(case, [one.facts.on for one in case.dossier.strikes], tr("entries struck"))


def changed_figures(case: Case) -> Quantity:
    """Values of the last thorough inspection that were changed after a preview had held or retired the piece."""
    last = case.last_thorough
    if last is None:
        return NOT_APPLICABLE
    count = len(last.facts.first_values)
    return number(count, Dimension.COUNT, _who(last), Known.COUNTED, measured_on=last.on, seen_in=last)


def frozen_exposures(case: Case) -> Quantity:
    """Days frozen while wet that no thorough inspection has answered."""
    days = [one.facts.on for one in case.dossier.exposures if one.facts.weather is Weather.FROST]
    return _open(case, days, tr("exposures logged"))


def _open(case: Case, days: Iterable[date], came_from: str) -> Quantity:
    """Days after the last thorough inspection; that day itself counts unless the inspection was made for the event."""
    last = case.last_thorough
    left = [
        day
        for day in days
        if last is None or day > last.on or (day == last.on and last.facts.kind is not InspectionKind.AFTER_EVENT)
    ]
    return number(len(left), Dimension.COUNT, came_from, Known.COUNTED, measured_on=max(left, default=None))


@dataclass(frozen=True, slots=True)
class Taken:
    """A reading and the inspection it was taken at."""

    inspection: Inspection
    reading: Reading


def readings(case: Case, measure: str) -> list[Taken]:
    """All readings of a measure, in order of day."""
    return [
        Taken(one, reading)
        for one in case.dossier.inspections
        for reading in one.facts.readings
        if reading.measure == measure
    ]


def counted(case: Case, measure: str) -> list[Taken]:
    """Per point, the competent person's latest reading and whatever anybody read there since."""
    by_point: dict[str, list[Taken]] = {}
    for taken in readings(case, measure):
        if case.is_thorough(taken.inspection) or taken.reading.point not in by_point:
            by_point[taken.reading.point] = [taken]
        else:
            by_point[taken.reading.point].append(taken)
    return [taken for point in by_point.values() for taken in point]


def measured(case: Case, measure: str, worst: Callable[[Iterable[float]], float]) -> Quantity:
    """The worst counted reading. worst: min where less is worse, max where more is."""
    taken = counted(case, measure)
    passed = [one.inspection.on for one in taken if case.is_thorough(one.inspection)]
    if not taken:
        return unknown(tr("It has not been measured."), measure)
    extreme = worst(one.reading.figure.si for one in taken)
    found = next(one for one in taken if one.reading.figure.si == extreme)
    stale_on = max(passed) + timedelta(days=case.interval_days + 1) if passed else case.on
    figure = found.reading.figure
    return Quantity(
        Value(number=figure.si, dimension=figure.dimension, as_typed=figure.as_typed),
        stale=case.on >= stale_on,
        came_from=_who(found.inspection),
        measured_on=found.inspection.on,
        changes_on=stale_on if stale_on > case.on else None,
        observation=measure,
        known=Known.MEASURED,
        seen_in=found.inspection,
    )


def loss(case: Case, measure: str) -> Quantity:
    """How much of the new size is gone, as a ratio of it."""
    return _against_new(case, measure, measured(case, measure, min), lambda now, new: 1 - now / new)


def growth(case: Case, measure: str) -> Quantity:
    """How much longer or wider than new it is, as a ratio of the new size."""
    return _against_new(case, measure, measured(case, measure, max), lambda now, new: now / new - 1)


def _against_new(case: Case, measure: str, taken: Quantity, ratio: Callable[[float, float], float]) -> Quantity:
    wanted = case.dossier.kind.measure(measure)
    size = case.dossier.item.size(wanted.compare_with) if wanted else None
    if wanted is None:
        return NOT_APPLICABLE
    if size is None or size.si <= 0:
        return unknown(tr("The size as new was not written down."), measure)
    if taken.value is None or taken.value.number is None:
        return taken
    change = max(ratio(taken.value.number, size.si), 0.0)
    said = tr("{now} against {new} as new", now=taken.value.as_typed, new=size.as_typed)
    return replace(taken, value=Value(number=change, dimension=Dimension.RATIO), came_from=said)
