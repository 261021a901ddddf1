"""Opinions that answer findings: what they may answer, and how long they stand."""

import hashlib
from collections.abc import Iterator

from inspector.gear.dossier import Dossier
from inspector.gear.kind import Grade
from inspector.gear.opinion import Answered, Opinion, Stance
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import that_count
from inspector.gear.verdict import Finding, Status, Value
from inspector.rulebook.case import Case
from inspector.rulebook.load import Rulebook
from inspector.rulebook.texts import Rule


def facts_digest(dossier: Dossier, before: str = "") -> str:
    """A name for all that is known of the piece; it changes with whatever is seen, logged, doubted, struck or moved.

    A recall that was withdrawn never said anything of it. before: the id of an opinion, for which a call that stood as
    it was given counts all the same, so that the name is the one it was given on.
    """
    known = {one.id for one in that_count(one for one in dossier.calls if one.id < before)}
    calls = known | {one.id for one in that_count(dossier.calls)}
    return hashlib.sha256("\n".join(sorted([*_entries(dossier), *calls])).encode()).hexdigest()


def _entries(dossier: Dossier) -> Iterator[str]:
    yield from (one.id for one in dossier.inspections)
    yield from (one.id for one in dossier.uses)
    yield from (one.id for one in dossier.exposures)
    yield from (one.id for one in dossier.strikes)
    yield from (one.id for one in dossier.fittings)
    yield from (one.id for one in dossier.finds)
    yield from (one.id for one in dossier.repairs)
    yield from (one.id for one in dossier.changes)
    yield from (one.id for one in dossier.quarantines)
    yield from (one.id for one in dossier.evidence_releases)
    yield from (one.id for one in dossier.opinions if one.facts.stance is Stance.DOUBTS)


def may_be_answered(finding: Finding, book: Rulebook) -> bool:
    """Whether an opinion may answer it: a hold for a slight fault that was seen, which is a matter of judgement. A bad
    fault takes an inspection that finds it mended; what is measured, missing, stale or not marked takes a measurement,
    an inspection or a marking; and a retirement is final."""
    failed = finding.status is Status.FAILS and finding.outcome is Outcome.HOLD
    if not failed or finding.value is None or not _is_judgement(finding.quantity, finding.value):
        return False
    return any(rule.id == finding.rule and rule.answerable for rule in book.rules)


def answer_of(case: Case, rule: Rule, value: Value | None) -> Opinion | None:
    """The opinion in force that answers this rule's finding of this very value, or None."""
    if value is None or rule.otherwise != "hold" or not rule.answerable or not _is_judgement(rule.quantity, value):
        return None
    standing = case.once("opinions in force", _in_force)
    return next((one for one, said in standing.get(rule.id, ()) if said.value.word == value.word), None)


def _is_judgement(quantity: str, value: Value) -> bool:
    return quantity.startswith("check.") and value.word == Grade.SLIGHT.value


def _in_force(case: Case) -> dict[str, list[tuple[Opinion, Answered]]]:
    """Opinions given on exactly the facts of today, by rule."""
    found: dict[str, list[tuple[Opinion, Answered]]] = {}
    answers = [one for one in case.dossier.opinions if one.facts.stance is Stance.ANSWERS]
    for opinion in answers:
        if opinion.facts.rests_on == facts_digest(case.dossier, opinion.id):
            for said in opinion.facts.answers:
                found.setdefault(said.rule, []).append((opinion, said))
    return found
