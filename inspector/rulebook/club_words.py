"""What a verdict says of limits that its club has loosened."""

from msgspec.structs import replace

from inspector.drawings.marks import outcome_word
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Explanation, Finding, Unloosened, Verdict
from inspector.language import show_day, tr
from inspector.rulebook.words import listed, purpose_word
from inspector.units import Dimension, System, show


def marked_limit(limit: str, finding: Finding) -> str:
    """The limit with its mark where the club has loosened it."""
    return f"{limit} ({finding.loosened})" if finding.loosened else limit


def with_loosening(words: Explanation, verdict: Verdict, system: System) -> Explanation:
    """The explanation with what the verdict would be without the loosening, wherever it is read by itself."""
    if verdict.unloosened is None:
        return words
    outcome = _outcome_words(verdict, verdict.unloosened)
    said = " ".join([words.plain, *_sentences(verdict, verdict.unloosened, outcome, system)])
    if not outcome:
        return replace(words, plain=said)
    aside = tr("without the club's loosened limits: {outcome}", outcome=outcome)
    return replace(words, plain=said, headline=f"{words.headline} ({aside})", use_line=f"{words.use_line} ({aside})")


def _sentences(verdict: Verdict, other: Unloosened, outcome: str, system: System) -> list[str]:
    said = []
    if outcome:
        said.append(tr("Without the club's loosened limits it would be: {outcome}.", outcome=outcome))
    if other.outcome is not Outcome.RETIRE and other.now_n is not None and other.now_n != verdict.capacity.now_n:
        strength = show(other.now_n, Dimension.FORCE, system)
        said.append(tr("Without them its strength would be reckoned as {strength}.", strength=strength))
    if other.next_due is not None and other.next_due != verdict.next_due:
        said.append(tr("Without them it would be due on {day}.", day=show_day(other.next_due)))
    if said and not outcome:
        said.insert(0, tr("The club has loosened limits that it rests on."))
    return said


def _outcome_words(verdict: Verdict, other: Unloosened) -> str:
    """The outcome without the loosening; with its purposes where the piece as a whole comes out the same."""
    if other.outcome is not verdict.outcome:
        return outcome_word(other.outcome)
    own = {one.purpose: one.outcome for one in verdict.by_purpose}
    others = [one for one in other.by_purpose if own.get(one.purpose) is not one.outcome]
    said = [
        tr("{outcome} for {purpose}", outcome=outcome_word(one.outcome), purpose=purpose_word(one.purpose))
        for one in others
    ]
    return listed(said)
