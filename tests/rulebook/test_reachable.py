"""Every rule can answer with its `else` for each kind it speaks of, and no other rule always says the same."""

from collections.abc import Iterator, Set

import pytest

from inspector.gear.dossier import Dossier
from inspector.gear.kind import Kind
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Finding, Status, Verdict
from inspector.rulebook.case import purposes_of
from inspector.rulebook.judge import judge, limit_value
from inspector.rulebook.load import Rulebook
from inspector.rulebook.texts import Rule
from inspector.units import Dimension
from tests.each import each
from tests.rulebook.dossiers import BOOK, KINDS
from tests.rulebook.faults import faulty
from tests.rulebook.sound import sound

SAYS = {"retire": Outcome.RETIRE, "hold": Outcome.HOLD, "derate": Outcome.DERATE, "note": Outcome.FIT}
SEVERITY = {"note": 0, "derate": 1, "hold": 2, "retire": 3}
# Where these fail, other rules cannot answer for want of the same fact. They tell the reader which fact it is.
ONLY_WITH_FACTS_MISSING = {
    "inspection-current",  # every check goes stale with the inspection
    "past-known",  # nobody has looked at any check yet
    "rating-kinetic",  # strength left cannot be reckoned without a rating
    "rating-other",
}


def law_without(rule_ids: Set[str]) -> Rulebook:
    return BOOK.with_law(rules=tuple(rule for rule in BOOK.rules if rule.id not in rule_ids))


def verdict_of(dossier: Dossier, without: Set[str] = frozenset()) -> Verdict:
    return judge(dossier, law_without(without) if without else BOOK, "test")


def speaks_of(rule: Rule) -> list[Kind]:
    return [
        kind
        for kind in KINDS
        if rule in BOOK.rules_for(kind) and (not rule.purposes or set(rule.purposes) & set(purposes_of(sound(kind))))
    ]


def told(verdict: Verdict) -> tuple[object, ...]:
    """What a reader may act on: outcomes, strength, notes."""
    notes = {one.rule for one in verdict.findings if one.status is Status.NOTE and one.value is not None}
    return verdict.by_purpose, verdict.capacity.now_n, notes


def finding_of(verdict: Verdict, rule: Rule) -> Finding:
    return next(one for one in verdict.findings if one.rule == rule.id)


def unknown_rules(verdict: Verdict) -> frozenset[str]:
    return frozenset(one.rule for one in verdict.findings if one.status is Status.UNKNOWN)


@each("kind", KINDS, ids=[kind.key for kind in KINDS])
def test_a_sound_piece_is_fit_and_nothing_about_it_is_unknown_or_worth_a_note(kind: Kind) -> None:
    verdict = verdict_of(sound(kind))
    assert verdict.outcome is Outcome.FIT
    assert {one.rule for one in verdict.findings if one.status is not Status.PASSES} == set()


@each("rule", BOOK.rules, ids=[rule.id for rule in BOOK.rules])
def test_a_rule_answers_for_each_kind_it_speaks_of_and_no_other_always_says_the_same(rule: Rule) -> None:
    kinds, others, faults = speaks_of(rule), law_without({rule.id}), []
    assert kinds
    for kind in kinds:
        dossier = faulty(kind, rule)
        whole = verdict_of(dossier)
        faults += [f"{kind.key}: {said}" for said in _answered_otherwise(rule, finding_of(whole, rule))]
        if not _speaks_alone(rule, dossier, whole, others):
            faults.append(f"{kind.key}: another rule says the same")
    assert not faults, ", ".join(faults)


def _answered_otherwise(rule: Rule, found: Finding) -> Iterator[str]:
    """What the rule should have said of the fault and did not."""
    failing = Status.NOTE if rule.otherwise == "note" else Status.FAILS
    wanted = Status.UNKNOWN if rule.must == "present" else failing
    if found.status is not wanted:
        yield f"{found.status} instead of {wanted}"
    if found.outcome is not SAYS[rule.otherwise]:
        yield f"{found.outcome} instead of {SAYS[rule.otherwise]}"


def _speaks_alone(rule: Rule, dossier: Dossier, whole: Verdict, others: Rulebook) -> bool:
    """Whether a reader is told something else without the rule."""
    if told(judge(dossier, others, "test")) != told(whole):
        return True
    if rule.id not in ONLY_WITH_FACTS_MISSING:
        return False
    aside = unknown_rules(whole) - {rule.id}
    return told(verdict_of(dossier, aside | {rule.id})) != told(verdict_of(dossier, aside))


@pytest.mark.parametrize("rule_id", sorted(ONLY_WITH_FACTS_MISSING))
def test_the_exceptions_are_exceptions(rule_id: str) -> None:
    rule = next(one for one in BOOK.rules if one.id == rule_id)
    shadowed = []
    for kind in speaks_of(rule):
        dossier = faulty(kind, rule)
        if told(verdict_of(dossier, frozenset({rule.id}))) == told(verdict_of(dossier)):
            shadowed.append(kind.key)
    assert shadowed


def _speak_of_other_uses(one: Rule, other: Rule) -> bool:
    return bool(one.purposes and other.purposes) and not set(one.purposes) & set(other.purposes)


def pairs() -> list[tuple[Kind, Rule, Rule]]:
    """Two rules of one kind on one quantity, the milder first."""
    found = []
    for kind in KINDS:
        rules = BOOK.rules_for(kind)
        for place, one in enumerate(rules):
            for other in rules[place + 1 :]:
                if one.quantity == other.quantity and not _speak_of_other_uses(one, other):
                    milder, severer = sorted((one, other), key=lambda rule: SEVERITY[rule.otherwise])
                    found.append((kind, milder, severer))
    return found


def limit_of(rule: Rule) -> float | None:
    """The fixed limit in SI; None where it is a word or a named quantity."""
    for dimension in (Dimension.LENGTH, Dimension.DAYS, Dimension.RATIO, Dimension.COUNT) if rule.limit else ():
        try:
            return limit_value(rule, dimension).number
        except Exception:
            continue
    return None


def test_no_two_rules_share_an_id() -> None:
    ids = [rule.id for rule in BOOK.rules]
    assert len(ids) == len(set(ids))


def test_no_two_rules_of_a_kind_say_two_things_of_one_word_or_one_limit() -> None:
    silent = []
    for kind, milder, severer in pairs():
        if set(milder.words) & set(severer.words):
            silent.append((kind.key, milder.id, severer.id))
        if milder.limit_is and milder.limit_is == severer.limit_is and milder.must == severer.must:
            silent.append((kind.key, milder.id, severer.id))
    assert silent == []


def test_a_milder_rule_speaks_before_the_more_severe_one() -> None:
    silent = []
    for kind, milder, severer in pairs():
        first, second = limit_of(milder), limit_of(severer)
        if first is None or second is None:
            continue
        grows = {milder.must in {"at_most", "below"}, severer.must in {"at_most", "below"}}
        assert len(grows) == 1, f"{milder.id} and {severer.id} bound one quantity from both sides"
        speaks_first = first < second if True in grows else first > second
        if not speaks_first:
            silent.append((kind.key, milder.id, severer.id))
    assert silent == []
