"""What would release a finding, all else as it is: the limit of its own quantity, or the observation that is missing.

A limit is told as the reading a gauge or calliper would have to show. Nothing releases a retirement.
"""

from collections.abc import Iterable

from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Finding, Needed, Release, Verdict, WallForecast
from inspector.rulebook.case import Case
from inspector.rulebook.judge import compares, limit_value
from inspector.rulebook.load import Rulebook
from inspector.rulebook.observed import readings
from inspector.rulebook.unlikely import most_m
from inspector.units import DAYS_PER_YEAR, Dimension

_LEAST = {"at_least", "above"}
_TURNED = {"at_most": "at_least", "below": "above", "at_least": "at_most", "above": "below"}
_BY_INSPECTION = {
    "inspection_age",
    "history",
    "open_events",
    "harmful_exposures",
    "frozen_exposures",
    "open_doubts",
    "open_strikes",
    "open_fittings",
    "open_finds",
    "open_repairs",
    "open_labels",
    "open_releases",
    "open_remedies",
}


def releases(verdict: Verdict, dossier: Dossier, book: Rulebook) -> tuple[Release, ...]:
    """One release for each finding that is not fit, in the order of the findings; nothing releases a retired piece."""
    governing = [one for one in verdict.findings if one.outcome is not Outcome.FIT]
    return tuple(_release(one, verdict, dossier, book) for one in governing)


def _release(finding: Finding, verdict: Verdict, dossier: Dossier, book: Rulebook) -> Release:
    if verdict.outcome is Outcome.RETIRE:
        return Release(finding.rule, Needed.NOTHING)
    if finding.quantity.startswith("wall_"):
        return _wall(finding, verdict, dossier, book)
    prefix, _, key = finding.quantity.partition(".")
    if finding.quantity in {"open_evidence", "open_breaks"}:
        return Release(finding.rule, Needed.TWO_NAMES)
    if finding.quantity == "open_recalls":
        return Release(finding.rule, Needed.RECALL)
    if finding.quantity in _BY_INSPECTION:
        return Release(finding.rule, Needed.INSPECTION)
    if prefix == "check" or finding.observation == "abrasion":
        return Release(finding.rule, Needed.GRADE, finding.observation or key)
    if prefix in {"loss", "growth", "measured", "excess", "shortfall"}:
        return _measured(finding, dossier, book, prefix, key)
    return Release(finding.rule, Needed.MARKING if finding.outcome is Outcome.HOLD else Needed.NOTHING)


def _wall(finding: Finding, verdict: Verdict, dossier: Dossier, book: Rulebook) -> Release:
    """A reading on bare, dressed metal at every named point that leaves the wall that must be left, with the gauge's
    allowance on top. Nothing brings back the life of a wall that was read thin: steel does not grow. Where the thinnest
    reading would still do, were it of today, fresh readings may release it; what they must be hangs on their rate."""
    measure = dossier.kind.measure("wall")
    if verdict.wall is None or measure is None:
        return Release(finding.rule, Needed.MARKING)
    if finding.quantity == "wall_life":
        needed = Needed.READING if _may_last(finding, verdict.wall) else Needed.NOTHING
        return Release(finding.rule, needed, "wall", measure.points)
    least_m = verdict.wall.required_m + book.setting("gauge_accuracy")
    if least_m > most_m(book, dossier.kind, "wall", verdict.wall.nominal_m):
        return Release(finding.rule, Needed.MARKING)  # no reading that can be true of so thin a tube is so thick
    return Release(finding.rule, Needed.READING, "wall", measure.points, "at_least", least_m, Dimension.LENGTH)


def _may_last(finding: Finding, wall: WallForecast) -> bool:
    """Whether the thinnest reading ever, taken as of today, would last as long as the rule asks."""
    days = finding.limit.number if finding.limit else None
    if days is None or not wall.history:
        return False
    lost_m = wall.rate_m_per_year * days / DAYS_PER_YEAR
    return min(one.relied_m for one in wall.history) >= wall.required_m + lost_m


def _measured(finding: Finding, dossier: Dossier, book: Rulebook, prefix: str, key: str) -> Release:
    """The reading at which the rule's own limit is just kept."""
    measure = dossier.kind.measure(key)
    new = dossier.item.size(measure.compare_with) if measure else None
    if measure is None or (prefix != "measured" and (new is None or new.si <= 0)):
        return Release(finding.rule, Needed.MARKING)
    rule = next(one for one in book.rules_for(dossier.kind) if one.id == finding.rule)
    limit = finding.limit.number if finding.limit else None
    if limit is None and rule.limit:  # of something never measured a finding holds the limit as a text
        limit = limit_value(rule, measure.dimension if prefix == "measured" else Dimension.RATIO).number
    must, bound = rule.must, limit
    if limit is not None and new is not None and prefix != "measured":
        must, bound = reading_bound(prefix, rule.must, limit, new.si)
    lasting = prefix in {"loss", "growth"}
    if lasting and bound is not None and _stands(Case(dossier, book), key, must, bound):
        return Release(finding.rule, Needed.STRIKE)
    return Release(finding.rule, Needed.READING, key, measure.points, must, bound, measure.dimension)


def reading_bound(prefix: str, must: str, limit: float, new_si: float) -> tuple[str, float]:
    """The demand on a reading and its bound in SI, for a limit on a loss or growth against new_si, or on itself."""
    if prefix in {"loss", "shortfall"}:
        return _TURNED[must], new_si * (1 - limit)
    return must, new_si * (1 + limit) if prefix in {"growth", "excess"} else limit


def _stands(case: Case, measure: str, must: str, bound: float) -> bool:
    """Whether a competent person ever read it past the bound: what is worn or stretched does not come back."""
    return any(not compares(must, one.reading.figure.si, bound) for one in readings(case, measure) if one.passed)


def strictest(told: Iterable[Release]) -> tuple[Release, ...]:
    """The same releases, each reading asked for with the strictest limit that any of them sets to it: a looser one
    would be told as a pass and be none."""
    every = tuple(told)
    return tuple(_strictest_of(one, [other for other in every if _asks_alike(one, other)]) for one in every)


def _asks_alike(one: Release, other: Release) -> bool:
    asked = (one.needed, one.observation, one.dimension, one.must in _LEAST)
    return asked == (other.needed, other.observation, other.dimension, other.must in _LEAST)


def _strictest_of(one: Release, alike: list[Release]) -> Release:
    bounds = [(other.limit, other.must) for other in alike if other.limit is not None]
    if one.needed is not Needed.READING or one.limit is None:
        return one
    severe = 1 if one.must in _LEAST else -1
    limit, must = max(bounds, key=lambda bound: (severe * bound[0], bound[1] in {"above", "below"}))
    return replace(one, limit=limit, must=must)
