"""Judging: dossier and rulebook in, verdict out. Data only; wording.py makes the sentences.

Every rule that speaks of the kind answers, passes too. An unknown value never passes; a fault that has gone stale is
still a fault, and stale besides. Time can only make things worse, so each finding tells the day it turns.
"""

import math
from collections.abc import Iterable
from datetime import date, timedelta
from functools import cache

from msgspec import Struct
from msgspec.structs import replace

from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome, Purpose, worst
from inspector.gear.verdict import Finding, PurposeOutcome, Status, Value, Verdict
from inspector.rulebook import capacity
from inspector.rulebook.case import Case
from inspector.rulebook.catalogue import quantity
from inspector.rulebook.club_marks import marked
from inspector.rulebook.load import Rulebook
from inspector.rulebook.opinions import answer_of
from inspector.rulebook.quantity import Quantity
from inspector.rulebook.texts import Rule
from inspector.rulebook.walls import wall_of
from inspector.units import Dimension, read

RETIRED_BEFORE = "retired-before"  # the one rule that no data file holds: a retirement is final
SAME_RATIO = 1e-9  # two figures this close are the same figure
_LONGEST_LOOK_DAYS = 36500
_OUTCOMES = {"retire": Outcome.RETIRE, "hold": Outcome.HOLD, "derate": Outcome.DERATE, "note": Outcome.FIT}


def judge(dossier: Dossier, book: Rulebook, program: str) -> Verdict:
    """The verdict on the dossier's day by the rulebook. program: the version that goes into the verdict."""

    def by(other: Rulebook) -> Verdict:
        return _judge(replace(dossier, kind=other.kinds[dossier.kind.key]), other, program)

    return marked(_judge(dossier, book, program), dossier.kind.key, book, by)


def _judge(dossier: Dossier, book: Rulebook, program: str) -> Verdict:
    case = Case(dossier, book)
    findings = _findings(case)
    if dossier.retired_on:
        findings = (_retired(dossier), *findings)
    against = [one for one in findings if one.outcome is not Outcome.FIT]
    by_purpose = tuple(PurposeOutcome(purpose, _outcome(against, purpose)) for purpose in case.purposes)
    outcome = worst(one.outcome for one in by_purpose)
    wall = wall_of(case)
    return Verdict(
        item_id=dossier.item.id,
        on=dossier.on,
        outcome=outcome,
        by_purpose=by_purpose,
        findings=findings,
        capacity=capacity.capacity(case),
        wall=wall.forecast if wall else None,
        next_inspection_due=None if outcome is Outcome.RETIRE else _inspection_due(case),
        holds_until=None if outcome is Outcome.RETIRE else _turns(findings, capacity.changes_on(case)),
        rulebook=book.hash,
        program=program,
        service=case.service,
    )


def _inspection_due(case: Case) -> date:
    last = case.looked_over.at
    return last.on + timedelta(days=case.interval_days) if last else case.dossier.item.booked_on


def _outcome(findings: Iterable[Finding], purpose: Purpose) -> Outcome:
    return worst(one.outcome for one in findings if not one.purposes or purpose in one.purposes)


def _turns(findings: Iterable[Finding], stepped: date | None) -> date | None:
    """The first day on which time alone changes a finding, or takes the next step of the strength."""
    days = (stepped, *(one.turns_on for one in findings))
    return min((day for day in days if day), default=None)


def _retired(dossier: Dossier) -> Finding:
    """A retirement once said is final."""
    return Finding(
        rule=RETIRED_BEFORE,
        quantity="retired",
        status=Status.FAILS,
        outcome=Outcome.RETIRE,
        says=dossier.retired_why,
        source="house_law",
        purposes=(),
        must="none_of",
        value=Value(word="retired"),
        limit=None,
        measured_on=dossier.retired_on,
    )


def _findings(case: Case) -> tuple[Finding, ...]:
    """Derating rules first, since what they take is asked for by the rule on the strength left."""
    kind, purposes = case.dossier.kind, frozenset(case.purposes)
    found = {
        rule.id: _finding(rule, case)
        for rule in case.book.rules_in_turn(kind)
        if not rule.purposes or not purposes.isdisjoint(rule.purposes)
    }
    return tuple(one for rule in case.book.rules_for(kind) if (one := found.get(rule.id)) is not None)


def _finding(rule: Rule, case: Case) -> Finding | None:
    """What the rule says of this piece; None where the piece has no such thing."""
    found = quantity(case, rule.quantity, more_is_worse=rule.must in {"at_most", "below"})
    if not found.applies:
        return None
    limit = limit_of(rule, found, case)
    answer = answer_to(rule, found, limit)
    if rule.derate_by:
        _note_loss(rule, case, answer)
    opinion = answer_of(case, rule, found.value) if answer.outcome is Outcome.HOLD else None
    if opinion is not None:
        answer = _answered(rule, found)
    return Finding(  # the first by place: with more than fifteen names a call costs six times as much
        rule.id,
        rule.quantity,
        answer.status,
        answer.outcome,
        rule.says,
        rule.source,
        rule.purposes if answer.outcome is not Outcome.RETIRE else (),
        rule.must,
        found.value,
        limit,
        rule.limit_is,
        quantity(case, rule.limit_is).came_from if rule.limit_is else "",
        found.came_from,
        measured_on=found.measured_on,
        why_unknown=found.why_unknown,
        turns_on=_turns_on(rule, found, limit, case.on),
        observation=found.observation,
        known=found.known,
        by=found.seen_in.facts.by if found.seen_in else "",
        rests_on=found.seen_in.id if found.seen_in else "",
        answered=opinion.id if opinion else "",
    )


def _note_loss(rule: Rule, case: Case, answer: "Answer") -> None:
    """What the rule takes off the strength; where that is unknown, so is the strength, whatever the rule answers."""
    taken = quantity(case, rule.derate_by)
    if taken.applies and taken.value is None:
        capacity.note_unknown_loss(case, taken.why_unknown)
    elif answer.derates and taken.value is not None and taken.value.number:
        capacity.note_loss(case, rule.derate_by, taken.value.number, rule.source)


class Answer(Struct, frozen=True):
    """How one rule comes out for one value."""

    status: Status
    outcome: Outcome
    derates: bool = False


_PASSES = Answer(Status.PASSES, Outcome.FIT)
_MISSING = {"hold": Answer(Status.UNKNOWN, Outcome.HOLD), "note": Answer(Status.NOTE, Outcome.FIT)}


def answer_to(rule: Rule, found: Quantity, limit: Value | None) -> Answer:
    """The rule's answer. A stale fault is failed and unknown at once; the worse outcome wins."""
    if found.value is None or (limit is None and rule.must not in {"present", "none_of"}):
        return _MISSING[rule.missing]
    if meets(rule, found.value, limit):
        return _MISSING[rule.missing] if found.stale else _PASSES
    outcome = _OUTCOMES[rule.otherwise]
    outcome = worst((outcome, _MISSING[rule.missing].outcome)) if found.stale else outcome
    return Answer(Status.NOTE if rule.otherwise == "note" else Status.FAILS, outcome, rule.otherwise == "derate")


def _answered(rule: Rule, found: Quantity) -> Answer:
    """A failed rule that an opinion answers; what is stale besides still holds where the rule asks for it."""
    if found.stale and rule.missing == "hold":
        return Answer(Status.UNKNOWN, Outcome.HOLD)
    return Answer(Status.ANSWERED, Outcome.FIT)


def limit_of(rule: Rule, found: Quantity, case: Case) -> Value | None:
    """The limit the value is held against: of the rule's own text, or a named quantity's value."""
    if rule.limit_is:
        return quantity(case, rule.limit_is).value
    if rule.words:
        return _words_listed(rule.words)
    if not rule.limit:
        return None
    if found.value is None or found.value.dimension is None:
        return Value(word=rule.limit)
    return limit_value(rule, found.value.dimension)


def limit_value(rule: Rule, dimension: Dimension) -> Value:
    """The rule's limit text read in the dimension of its value."""
    return _limit_read(rule.limit, dimension)


@cache
def _words_listed(words: tuple[str, ...]) -> Value:
    return Value(word=", ".join(words))


@cache
def _limit_read(text: str, dimension: Dimension) -> Value:
    """A limit's text is read once, not for each piece."""
    figure = read(text, dimension, field=text)
    return Value(number=figure.si, dimension=dimension, as_typed=figure.as_typed)


def meets(rule: Rule, value: Value, limit: Value | None) -> bool:
    """Whether the value is as the rule wants it. Figures within 1e-9 of the limit are the limit."""
    if rule.must == "present":
        return True
    if rule.must == "none_of":
        return value.word not in rule.words
    if value.number is None or limit is None or limit.number is None:
        return False
    return compares(rule.must, value.number, limit.number)


def compares(must: str, value: float, limit: float) -> bool:
    """Whether a figure is as it must be; one that is the limit within 1e-9 counts as the limit."""
    if must == "at_least":
        return value > limit or _is_same(value, limit)
    if must == "at_most":
        return value < limit or _is_same(value, limit)
    return (value > limit if must == "above" else value < limit) and not _is_same(value, limit)


def _is_same(value: float, limit: float) -> bool:
    return math.isclose(value, limit, rel_tol=SAME_RATIO, abs_tol=1e-15)


def _turns_on(rule: Rule, found: Quantity, limit: Value | None, on: date) -> date | None:
    """The first day on which time alone makes this rule answer otherwise, or takes another step of strength."""
    stepped = found.changes_on if found.changes_on and found.changes_on > on else None
    if not found.per_day:
        return stepped
    value = found.value.number if found.value else None
    wanted = limit.number if limit else None
    if value is None or wanted is None or not compares(rule.must, value, wanted):
        return stepped
    days = _days_until(rule.must, value, wanted, found.per_day)
    crossed = on + timedelta(days=days) if days < _LONGEST_LOOK_DAYS else None
    return min(stepped, crossed) if stepped and crossed else stepped or crossed


def _days_until(must: str, value: float, limit: float, per_day: float) -> int:
    """Whole days until a passing value that grows by per_day each day no longer passes."""
    if (per_day > 0) != (must in {"at_most", "below"}):
        return _LONGEST_LOOK_DAYS
    exact = (limit - value) / per_day
    if exact > _LONGEST_LOOK_DAYS:
        return _LONGEST_LOOK_DAYS
    first = max(math.floor(exact) - 1, 1)
    return next((day for day in range(first, first + 5) if not compares(must, value + day * per_day, limit)), first)
