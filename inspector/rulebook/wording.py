"""The only place that makes sentences of a verdict."""

from msgspec import Struct
from msgspec.structs import replace

from inspector.drawings.marks import outcome_word
from inspector.gear.dossier import Dossier
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Explanation, Finding, Reason, Release, Status, Value, Verdict
from inspector.language import each_once_a_language, show_day, tr, within
from inspector.rulebook.case import purposes_of
from inspector.rulebook.club_marks import in_force_lines
from inspector.rulebook.club_words import marked_limit, with_loosening
from inspector.rulebook.judge import RETIRED_BEFORE
from inspector.rulebook.load import Rulebook
from inspector.rulebook.piece_words import piece_facts
from inspector.rulebook.release import strictest
from inspector.rulebook.release_words import release_words
from inspector.rulebook.sums_shown import sums_of
from inspector.rulebook.terms import terms_in
from inspector.rulebook.words import (
    for_purposes,
    listed,
    must_word,
    purpose_word,
    quantity_word,
    value_word,
)
from inspector.units import Dimension, System, show, system_of

_TOLD_AT_MOST = 3
_FINER_PLACES = 2
_NONE = Value(number=1, dimension=Dimension.COUNT, as_typed="1")


class _Told(Struct, frozen=True):
    """What is put into words, with what every sentence may look up.

    names: everybody's, by id. releases: what would release each finding, by its rule.
    """

    dossier: Dossier
    verdict: Verdict
    book: Rulebook
    system: System
    names: dict[str, str]
    releases: dict[str, Release]


def explain(dossier: Dossier, verdict: Verdict, book: Rulebook, system: System = System.METRIC) -> Explanation:
    """The verdict in words: the same verdict, language and units give the same words."""
    releases = {one.rule: one for one in reversed(strictest(verdict.releases))}
    told = _Told(dossier, verdict, book, system, dict(dossier.names), releases)
    reasons = [_reason(one, told) for one in _governing(verdict)]
    passes = [_reason(one, told) for one in verdict.findings if one.outcome is Outcome.FIT]
    if verdict.outcome is Outcome.RETIRE:
        reasons = [replace(one, release="") for one in reasons]  # nothing releases a retired piece
    words = Explanation(
        headline=_headline(verdict, reasons),
        plain=_plain(dossier, verdict, reasons, system),
        use_line=use_line(dossier, verdict, system),
        reasons=tuple(reasons),
        passes=tuple(passes),
        sums=sums_of(verdict, system),
        cautions=cautions(book),
        piece=piece_facts(dossier),
    )
    loosened = with_loosening(words, verdict, system)
    return replace(loosened, terms=terms_in(loosened))


def cautions(book: Rulebook) -> tuple[str, ...]:
    """What stands on every document and verdict; limits that a club has loosened stand there too."""
    return (
        *in_force_lines(book),
        tr("This is a decision aid. A competent person decides; no verdict here certifies a part."),
        tr("The maker's instructions, local law, and the word of an engineer or certified inspector go before it."),
        tr("Stay clear of a loaded line. What is not known to be sound is not used."),
    )


def _governing(verdict: Verdict) -> list[Finding]:
    """Whatever is not fit, worst first; the order of the rules within one outcome."""
    found = [one for one in verdict.findings if one.outcome is not Outcome.FIT]
    return sorted(found, key=lambda one: -one.outcome.severity)


def _headline(verdict: Verdict, reasons: list[Reason]) -> str:
    word = outcome_word(verdict.outcome)
    first = next((one for one in reasons if one.outcome is verdict.outcome), None)
    if first is None:
        count = sum(one.status is Status.PASSES for one in verdict.findings)
        return tr("{outcome}: {count} rules passed, none failed.", outcome=word, count=count)
    return f"{word}: {first.sentence}"


def _plain(dossier: Dossier, verdict: Verdict, reasons: list[Reason], system: System) -> str:
    if verdict.outcome is Outcome.RETIRE:
        return tr("This piece must not be used again, for anything. Take it out of the store and make it unusable.")
    if verdict.outcome is Outcome.HOLD:
        return f"{_held(verdict)} {_to_settle(verdict, reasons)}".strip()
    due = verdict.turns_first or verdict.next_due
    until = tr(" until {day}", day=show_day(due)) if due else ""
    if due and due <= verdict.on:
        until = tr(", though a check or a wall reading fell due on {day}", day=show_day(due))
    told = tr("It may be used for {use}{until}, after a look before each use.", use=_uses(dossier), until=until)
    return " ".join([told, *_asides(verdict, system)])


def _asides(verdict: Verdict, system: System) -> list[str]:
    """What must be known beside that it may be used."""
    said = []
    if verdict.turns_first:
        said.append(tr("From that day on time alone may change this: ask again before it is used then."))
    if verdict.outcome is Outcome.DERATE and verdict.capacity.now_n is not None:
        now = show(verdict.capacity.now_n, Dimension.FORCE, system)
        was = show(verdict.capacity.as_marked_n or 0.0, Dimension.FORCE, system)
        said.append(tr("Reckon its strength as {now}, not the {was} of its marking.", now=now, was=was))
    if any(one.quantity == "changed_figures" and one.status is Status.NOTE for one in verdict.findings):
        said.append(
            tr("Values that would have held or retired it were changed before they were saved: see its history.")
        )
    return said


def _to_settle(verdict: Verdict, reasons: list[Reason]) -> str:
    """All that is needed to release a hold, and for which uses nothing does."""
    held = [one for one in _governing(verdict) if one.outcome is Outcome.HOLD]
    told = {one.rule: one.release for one in reasons}
    dead = [one for one in held if not told.get(one.rule)] if verdict.releases else []
    stopped = [one.purpose for one in verdict.by_purpose if one.outcome is Outcome.HOLD]
    ended = [one for one in stopped if any(not finding.purposes or one in finding.purposes for finding in dead)]
    hoped = [one for one in stopped if one not in ended]
    if dead and not hoped:
        return tr("Nothing releases it: plan its replacement.")
    spoken = [one for one in held if not one.purposes or set(one.purposes) & set(hoped)]
    spoken = [one for one in spoken if told.get(one.rule)]
    needed = _needed(verdict, [told[one.rule] for one in spoken], spoken)
    if not ended:
        return needed
    for_good, for_now = (listed([purpose_word(one) for one in uses]) for uses in (ended, hoped))
    said = tr("Nothing releases it for {uses}: plan its replacement.", uses=for_good)
    return said + " " + tr("For {uses} {it_takes}", uses=for_now, it_takes=within(needed))


def settled_by(verdict: Verdict, words: Explanation) -> str:
    """What the words of a hold say that it takes, without what they forbid; all of them where they cannot be told
    apart, as with words that were kept in another language."""
    return words.plain.removeprefix(_held(verdict)).strip() or words.plain


def _needed(verdict: Verdict, releases: list[str], spoken: list[Finding]) -> str:
    """What it takes, each thing once; a whole look answers every check that was not seen."""
    if any(one.quantity == "inspection_age" for one in spoken):
        unseen = _unseen(verdict)
        releases = [said for one, said in zip(spoken, releases, strict=True) if one.rule not in unseen]
    needed = list(dict.fromkeys(releases))
    if len(needed) > _TOLD_AT_MOST:
        needed = [*needed[:_TOLD_AT_MOST], tr("and more, as told below")]
    if not needed:
        return ""
    if len(needed) == 1:
        return tr("It takes {what}.", what=needed[0])
    return tr("It takes all of this: {what}.", what="; ".join(needed))


def _unseen(verdict: Verdict) -> set[str]:
    return {one.rule for one in verdict.findings if one.status is Status.UNKNOWN and one.observation}


def _held(verdict: Verdict) -> str:
    """What a hold forbids: everything, or only some purposes."""
    held = [purpose_word(one.purpose) for one in verdict.by_purpose if one.outcome.severity >= Outcome.HOLD.severity]
    if len(held) == len(verdict.by_purpose):
        return tr("Do not use it until this is settled.")
    said = tr("Do not use it for {held} until this is settled.", held=listed(held))
    still = [purpose_word(one.purpose) for one in verdict.by_purpose if one.outcome.severity < Outcome.HOLD.severity]
    return said + " " + tr("It may still be used for {uses}.", uses=listed(still))


def _uses(dossier: Dossier) -> str:
    return listed([purpose_word(purpose) for purpose in purposes_of(dossier)])


def use_line(dossier: Dossier, verdict: Verdict, system: System = System.METRIC) -> str:
    """What the piece may be used for, for sheets and lists: the purposes that are open, and the strength to reckon."""
    open_for = [purpose_word(one.purpose) for one in verdict.by_purpose if one.outcome in {Outcome.FIT, Outcome.DERATE}]
    if not open_for:
        return tr("not for use")
    held = [purpose_word(one.purpose) for one in verdict.by_purpose if one.outcome is Outcome.HOLD]
    line = tr("{uses} only", uses=listed(open_for)) if held or dossier.kind.barred else listed(open_for)
    if held:
        line += tr("; on hold for {held}", held=listed(held))
    if verdict.outcome is Outcome.DERATE and verdict.capacity.now_n is not None:
        line += tr("; reckon {now}", now=show(verdict.capacity.now_n, Dimension.FORCE, system))
    return line[:1].upper() + line[1:]


def _reason(finding: Finding, told: _Told) -> Reason:
    what = "" if finding.rule == RETIRED_BEFORE else quantity_word(finding.quantity, told.dossier.kind)
    value, bare = _value_and_limit(finding, told.dossier, _typed_in(finding, told.system))
    limit = marked_limit(bare, finding)
    return Reason(
        outcome=finding.outcome,
        status=finding.status,
        sentence=_sentence(finding, told, what, value, limit),
        value=_with_origin(value, finding, told),
        limit=f"{limit} ({finding.limit_came_from})" if finding.limit_came_from else limit,
        source=told.book.source_text(finding.source),
        rule=finding.rule,
        purposes=for_purposes(finding.purposes),
        release=_release(finding, told),
        what=what,
        why="" if finding.rule == RETIRED_BEFORE else finding.says,
    )


def _value_and_limit(finding: Finding, dossier: Dossier, system: System) -> tuple[str, str]:
    """Both in words, with more digits where a value that fails would print like its limit."""
    value = value_word(finding.value, dossier.kind, finding.observation, system)
    if finding.must in {"none_of", "present"}:
        return value, must_word(finding.must, "", finding.quantity)
    if finding.must == "below" and finding.limit == _NONE:
        return value, tr("none")
    bare_limit = value_word(finding.limit, dossier.kind, "", system)
    if finding.status is Status.FAILS and value == bare_limit:
        value = value_word(finding.value, dossier.kind, finding.observation, system, _FINER_PLACES)
        bare_limit = value_word(finding.limit, dossier.kind, "", system, _FINER_PLACES)
    return value, must_word(finding.must, bare_limit)


def _with_origin(value: str, finding: Finding, told: _Told) -> str:
    """The value with what it came from: the sum or the occasion, who, and when."""
    if finding.value is None:
        return value
    origin = [finding.came_from] if finding.came_from else []
    if finding.by and (name := told.names.get(finding.by, "")):
        origin.append(_by(name))
    if finding.measured_on:
        origin.append(show_day(finding.measured_on))
    return f"{value} ({', '.join(origin)})" if origin else value


@each_once_a_language
def _by(name: str) -> str:
    return tr("by {name}", name=name)


def _typed_in(finding: Finding, system: System) -> System:
    """The units that the officer typed this value in, so that its limit is told in the same ones."""
    return system_of(finding.value.as_typed, system) if finding.value and finding.value.as_typed else system


def _sentence(finding: Finding, told: _Told, name: str, value: str, limit: str) -> str:
    if finding.rule == RETIRED_BEFORE:
        day = show_day(finding.measured_on) if finding.measured_on else ""
        return tr("Retired on {day}, and a retirement is final. {why}", day=day, why=finding.says)
    if finding.value is None:
        return tr("{what}: not known. {why}", what=name, why=finding.why_unknown)
    if finding.status is Status.UNKNOWN and finding.why_unknown:
        return tr("{what}: {value}. {why}", what=name, value=value, why=finding.why_unknown)
    if finding.status is Status.UNKNOWN and finding.value is not None:
        return tr("{what}: seen too long ago ({value}).", what=name, value=_with_origin(value, finding, told))
    if finding.status is Status.ANSWERED:
        return tr("{what}: {value}; {answer}", what=name, value=value, answer=_answer(finding, told))
    if finding.value.word or finding.must == "present":
        return tr("{what}: {value}.", what=name, value=value)
    return tr("{what}: {value}, must be {limit}.", what=name, value=value, limit=limit)


def _answer(finding: Finding, told: _Told) -> str:
    """Who answers a finding, and why."""
    said = next((one.facts for one in told.dossier.opinions if one.id == finding.answered), None)
    if said is None:
        return tr("answered by an opinion.")
    who = told.names.get(said.by, "") or tr("a competent person")
    return tr("answered by {who} on {day}: {why}", who=who, day=show_day(said.on), why=said.why)


def _release(finding: Finding, told: _Told) -> str:
    """What would release a finding. Nothing releases a retirement, nor what nobody asked the release of."""
    found = told.releases.get(finding.rule)
    return release_words(found, finding, told.dossier, told.book, told.system) if found else ""
