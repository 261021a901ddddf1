"""What would change a verdict, in words: the next day on which time does, the readings that would, the club's limits.

It is worked out from a stored verdict as it is looked at, and is no part of its words: what was said stays as said.
"""

import math
from collections import defaultdict
from collections.abc import Iterator

from inspector.drawings.marks import outcome_word
from inspector.gear.dossier import Dossier
from inspector.gear.kind import Measure
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact, Finding, Verdict
from inspector.language import show_day, tr, within
from inspector.rulebook.load import Rulebook
from inspector.rulebook.release import reading_bound
from inspector.rulebook.words import must_word, quantity_word
from inspector.units import Dimension, System, show_bound, system_of

_READ = {"loss", "growth", "measured"}
_TURNING = {one.value: one for one in (Outcome.DERATE, Outcome.HOLD, Outcome.RETIRE)}


def turn_facts(dossier: Dossier, verdict: Verdict, book: Rulebook, system: System = System.METRIC) -> tuple[Fact, ...]:
    """Each thing under its name. Of a retired piece, that nothing changes it."""
    if verdict.outcome is Outcome.RETIRE:
        told = tr("nothing: a retirement is final; only a wrong entry can be struck, by two competent persons")
        return (Fact(tr("What changes it"), told),)
    outcomes = {rule.id: _TURNING.get(rule.otherwise) for rule in book.rules_for(dossier.kind)}
    return (
        _with_time(dossier, verdict, outcomes),
        *_by_wall(dossier, verdict, book, outcomes, system),
        *_by_readings(dossier, verdict, outcomes, system),
        *_loosened(verdict),
    )


def _with_time(dossier: Dossier, verdict: Verdict, outcomes: dict[str, Outcome | None]) -> Fact:
    """The first day on which time alone changes it, and what turns then."""
    label, day = tr("With time"), verdict.holds_until
    if day is None:
        return Fact(label, tr("time alone changes nothing"))
    turning = [one for one in verdict.findings if one.turns_on == day]
    said = [_turning(one, dossier, outcomes.get(one.rule)) for one in turning if not _is_seen(one)]
    if any(_is_seen(one) for one in turning):
        said.append(tr("what was seen and measured is too old then and passes nothing until it is looked at anew"))
    what = "; ".join(dict.fromkeys(said)) or tr("time takes a further part of its strength")
    return Fact(label, tr("on {day}: {what}", day=show_day(day), what=what))


def _is_seen(finding: Finding) -> bool:
    """Whether it rests on a look or a measurement, which only grows stale."""
    return finding.quantity.partition(".")[0] in {"check", *_READ} or finding.observation == "abrasion"


def _turning(finding: Finding, dossier: Dossier, outcome: Outcome | None) -> str:
    name = quantity_word(finding.quantity, dossier.kind)
    what = within(name)
    if finding.outcome is not Outcome.FIT or outcome is None:
        return what
    return tr("{what}: {outcome}", what=what, outcome=outcome_word(outcome))


def _by_wall(
    dossier: Dossier, verdict: Verdict, book: Rulebook, outcomes: dict[str, Outcome | None], system: System
) -> Iterator[Fact]:
    """The wall reading at which it turns: what must be left, with the gauge's allowance on top."""
    new = dossier.item.size("wall")
    typed_in = system_of(new.as_typed, system) if new else system
    for one in verdict.findings:
        outcome = outcomes.get(one.rule)
        if one.quantity == "wall_relied" and one.limit and one.limit.number is not None and outcome:
            least_m = one.limit.number + book.setting("gauge_accuracy")
            said = must_word("at_least", show_bound(least_m, Dimension.LENGTH, typed_in, least=True))
            told = tr("every place {bound} on bare metal, else: {outcome}", bound=said, outcome=outcome_word(outcome))
            yield Fact(tr("A wall reading"), told)


def _by_readings(
    dossier: Dossier, verdict: Verdict, outcomes: dict[str, Outcome | None], system: System
) -> Iterator[Fact]:
    """Of each measure the bounds of the rules that it passes, the mildest outcome first."""
    found: dict[str, list[tuple[Outcome, str]]] = defaultdict(list)
    for one in verdict.findings:
        prefix, _, key = one.quantity.partition(".")
        measure, outcome = dossier.kind.measure(key), outcomes.get(one.rule)
        if prefix in _READ and measure and outcome and one.outcome is Outcome.FIT:
            said = _bound(one, prefix, measure, dossier, system)
            found[key] += [(outcome, said)] if said else []
    for key, bounds in found.items():
        known = dossier.kind.measure(key)
        worst = {said: outcome for outcome, said in sorted(bounds, key=lambda pair: pair[0].severity)}
        told = [
            tr("{bound}, else: {outcome}", bound=said, outcome=outcome_word(outcome)) for said, outcome in worst.items()
        ]
        if told and known:
            yield Fact(known.name, "; ".join(told))


def _bound(finding: Finding, prefix: str, measure: Measure, dossier: Dossier, system: System) -> str:
    """The reading that just passes, rounded to the severe side."""
    new, limit = dossier.item.size(measure.compare_with), finding.limit.number if finding.limit else None
    if limit is None or (prefix != "measured" and (new is None or new.si <= 0)):
        return ""
    must, bound = reading_bound(prefix, finding.must, limit, new.si if new else 0.0)
    least = must in {"at_least", "above"}
    if measure.dimension is Dimension.COUNT and bound != int(bound):  # of what is counted there are no parts
        must, bound = ("at_least", math.ceil(bound)) if least else ("at_most", math.floor(bound))
    typed_in = system_of(new.as_typed, system) if new else system
    return must_word(must, show_bound(bound, measure.dimension, typed_in, least=least))


def _loosened(verdict: Verdict) -> Iterator[Fact]:
    """Limits the club has loosened, and what it would be without them."""
    told = list(dict.fromkeys(one.loosened for one in verdict.findings if one.loosened))
    if verdict.unloosened and verdict.unloosened.outcome is not verdict.outcome:
        told.append(tr("without them: {outcome}", outcome=outcome_word(verdict.unloosened.outcome)))
    if told:
        yield Fact(tr("The club's own limits"), "; ".join(told))
