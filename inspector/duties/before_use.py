"""What is asked of a piece before it is used: the same on the printed sheet, at the command line and in the window."""

from inspector.duties.office import Office
from inspector.gear.judged import Judged
from inspector.gear.kind import Check, Kind
from inspector.gear.kit_check import AskedMeasure
from inspector.gear.outcome import Outcome
from inspector.gear.standing import StandingVerdict
from inspector.gear.verdict import Verdict
from inspector.rulebook.limits import measure_limit
from inspector.units import Dimension


def asked_checks(kind: Kind) -> tuple[Check, ...]:
    """What can be looked at with the piece in hand."""
    return tuple(check for check in kind.checks if check.before_use and not check.hidden)


def asked_measures(office: Office, one: Judged) -> tuple[AskedMeasure, ...]:
    """What a calliper or a tape tells, with its limit. A wall takes a gauge and a thorough inspection."""
    found = []
    for measure in one.dossier.kind.measures:
        limit = "" if measure.key == "wall" else measure_limit(one.dossier, measure, office.rules, office.system)
        if limit and measure.dimension is not Dimension.COUNT:
            found.append(AskedMeasure(measure, limit))
    return tuple(found)


def goes(one: Judged) -> bool:
    """Whether any purpose is open to the piece."""
    return may_go(one.verdict)


def may_go(verdict: Verdict | StandingVerdict) -> bool:
    """Whether a verdict leaves any purpose open."""
    return any(each.outcome in {Outcome.FIT, Outcome.DERATE} for each in verdict.by_purpose)


def why_not(one: Judged) -> str:
    """What keeps a piece back, in one line."""
    first = one.explanation.reasons[0] if one.explanation.reasons else None
    return first.sentence if first else one.explanation.headline
