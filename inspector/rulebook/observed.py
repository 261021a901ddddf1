"""Quantities that come straight from what people wrote down: grades, counts, dates, sizes against new."""

from collections import defaultdict
from collections.abc import Callable, Iterable
from datetime import date
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.inspection import Inspection, InspectionKind, Reading
from inspector.gear.kind import Basis, Grade
from inspector.gear.verdict import Known, Value
from inspector.language import once_a_language, tr
from inspector.rulebook.case import Case
from inspector.rulebook.quantity import NOT_APPLICABLE, Quantity, number, unknown, word
from inspector.rulebook.renewed import is_of_a_part_before
from inspector.rulebook.words import service_word
from inspector.units import Dimension

_STATED_ON = {"piece", "certificate", "memory"}
_NAMED_AT_MOST = 3  # parts of a piece named one by one
_SEEN = {one: Value(word=one.value) for one in Grade}
_WORSE = {Grade.GOOD: 0, Grade.SLIGHT: 1, Grade.BAD: 2}


def grade(case: Case, check: str) -> Quantity:
    """The worst grade since a competent person last answered the check; he alone may make it better.

    Good grades go stale with the inspection interval; a fault does not heal by waiting.
    """
    counted = case.graded(check)
    if not counted:
        return unknown(tr("No competent person has looked at it yet."), check)
    first = counted[0][0]
    inspection, found = counted[0] if len(counted) == 1 else max(reversed(counted), key=_badness)
    stale_on = first.facts.on + case.good_for if first.is_thorough else case.on
    return Quantity(
        _SEEN[found],
        stale=case.on >= stale_on,
        came_from=who_words(inspection),
        measured_on=inspection.facts.on,
        changes_on=stale_on if stale_on > case.on else None,
        observation=check,
        known=Known.SEEN,
        seen_in=inspection,
    )


def _badness(given: tuple[Inspection, Grade]) -> int:
    return _WORSE[given[1]]


def who_words(inspection: Inspection) -> str:
    """Which kind of inspection it was."""
    return _kind_words()[inspection.facts.kind]


@once_a_language
def _kind_words() -> dict[InspectionKind, str]:
    return {
        InspectionKind.PERIODIC: tr("periodic inspection"),
        InspectionKind.AFTER_EVENT: tr("inspection after an event"),
        InspectionKind.BEFORE_USE: tr("check before use"),
    }


def history(case: Case) -> Quantity:
    """Whether the piece's life is known, or a competent person has inspected it since it came."""
    if case.dossier.item.facts.provenance.is_new:
        return word("known", tr("booked in as new"), Known.STATED)
    if last := case.looked_over.at:
        return replace(word("inspected", tr("inspected by a competent person"), Known.SEEN, last.on), seen_in=last)
    return word("unanswered", tr("nobody knows its past"), Known.STATED)


def rating_stated(case: Case) -> Quantity:
    """Where the rating is read: on the piece, on a certificate, from memory, or nowhere."""
    rating = case.dossier.item.rating
    if set(case.dossier.kind.rated_by) == {Basis.UNRATED}:
        return NOT_APPLICABLE
    told = rating.figure is not None and rating.basis is not Basis.UNRATED and rating.stated_on in _STATED_ON
    return word(rating.stated_on if told else "none", tr("booking"), Known.STATED)


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
    began = case.dossier.item.born_on
    if began is None:
        return unknown(tr("Nobody knows when it was made or first used."))
    days = (case.on - began).days
    return number(days, Dimension.DAYS, tr("booking"), Known.STATED, measured_on=began, per_day=1.0)


def inspection_age(case: Case) -> Quantity:
    """Days since a competent person has last seen all of it; the part seen longest ago tells."""
    last = case.looked_over.at
    if last is None:
        return unknown(_never_seen(case))
    days = (case.on - last.on).days
    return number(days, Dimension.DAYS, who_words(last), Known.COUNTED, measured_on=last.on, per_day=1.0, seen_in=last)


def _never_seen(case: Case) -> str:
    if not case.thorough:
        return tr("It has not been inspected by a competent person yet.")
    missing = case.looked_over.missing
    named = ", ".join(missing[:_NAMED_AT_MOST]) + (", …" if len(missing) > _NAMED_AT_MOST else "")
    return tr("No competent person has seen all of it yet: {missing}.", missing=named)


def inspection_interval(case: Case) -> Quantity:
    """Days allowed between thorough inspections in this service."""
    came_from = tr("asked for by the last inspector") if case.sooner else service_word(case.service)
    return number(case.interval_days, Dimension.DAYS, came_from, Known.STATED)


def pull_count(case: Case) -> Quantity:
    """Pulls logged since new."""
    count = sum(one.facts.pull_count for one in case.dossier.uses)
    return number(count, Dimension.COUNT, tr("uses logged"), Known.COUNTED)


class Taken(Struct, frozen=True, gc=False):
    """A reading and the inspection it was taken at, on its day. passed: whether that inspection can pass the piece."""

    inspection: Inspection
    reading: Reading
    on: date
    passed: bool


TakenT = TypeVar("TakenT", bound=Taken)


def readings(case: Case, measure: str) -> list[Taken]:
    """All readings of a measure, in order of day; those of a part that was swapped and read anew are left out."""
    return case.once(_by_measure, _by_measure).get(measure, [])


def _by_measure(case: Case) -> dict[str, list[Taken]]:
    found: dict[str, list[Taken]] = defaultdict(list)
    swapped = {measure for one in case.dossier.repairs for measure in one.facts.replaces}
    for one in case.dossier.inspections:
        if not one.facts.readings:
            continue
        on, passed = one.facts.on, one.is_thorough
        for reading in one.facts.readings:
            if reading.measure not in swapped or not is_of_a_part_before(case, one, reading.measure):
                found[reading.measure].append(Taken(one, reading, on, passed))
    return dict(found)


def counted(taken: Iterable[TakenT]) -> dict[str, list[TakenT]]:
    """Of readings in order of day, per point the competent person's latest and whatever anybody read there since.

    Two readings of one point in one inspection both count.
    """
    by_point: dict[str, list[TakenT]] = {}
    for one in taken:
        point = one.reading.point
        held = by_point.get(point)
        if held is None or (one.passed and held[-1].inspection is not one.inspection):
            by_point[point] = [one]
        else:
            held.append(one)
    return by_point


def latest(case: Case, measure: str, worst: Callable[[Iterable[float]], float]) -> Quantity:
    """The worst of what was read last, for what may be better at another place: broken wires, a ball's stamp."""
    return measured(case, measure, worst, ever=False)


def measured(case: Case, measure: str, worst: Callable[[Iterable[float]], float], *, ever: bool = True) -> Quantity:
    """The worst reading; a point never read, or read too long ago, lets nothing pass.

    worst: min where less is worse, max where more is. ever: of all that competent persons ever read, since steel does
    not grow back and a stretched or opened piece does not shrink; a wrong reading is struck.
    """
    return case.once((measure, worst, ever), lambda case: _measured(case, measure, worst, ever=ever))


def _measured(case: Case, measure: str, worst: Callable[[Iterable[float]], float], *, ever: bool) -> Quantity:
    every = readings(case, measure)
    by_point = counted(every)
    taken = [one for point in by_point.values() for one in point]
    if ever:
        taken += [one for one in every if one.passed]
    if not taken:
        return unknown(tr("It has not been measured."), measure)
    read = [one.reading.figure.si for one in taken]
    found = taken[read.index(worst(read))]
    unread, oldest = _coverage(case, measure, by_point)
    stale_on = oldest + case.good_for if oldest else case.on
    figure = found.reading.figure
    return Quantity(
        Value(number=figure.si, dimension=figure.dimension, as_typed=figure.as_typed),
        why_unknown=tr("Never read at: {points}.", points=", ".join(unread)) if unread else "",
        stale=case.on >= stale_on,
        came_from=who_words(found.inspection),
        measured_on=found.on,
        changes_on=stale_on if stale_on > case.on else None,
        observation=measure,
        known=Known.MEASURED,
        seen_in=found.inspection,
    )


def _coverage(case: Case, measure: str, by_point: dict[str, list[Taken]]) -> tuple[list[str], date | None]:
    """The points that no competent person has read, and the day of the one read longest ago; None with any unread."""
    wanted = case.dossier.kind.measure(measure)
    passed = {point: max([one.on for one in taken if one.passed], default=None) for point, taken in by_point.items()}
    points = (wanted.points if wanted else ()) or tuple(passed)
    unread = [point for point in points if passed.get(point) is None]
    days = [day for point in points if (day := passed.get(point)) is not None]
    return [point for point in unread if point], None if unread else min(days, default=None)


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
