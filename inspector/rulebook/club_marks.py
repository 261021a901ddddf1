"""Where a club's loosened limit has an effect: found by judging again with the loosening taken back.

A list of which setting stands behind which rule would go out of date with the next rule; two verdicts side by side
cannot. A rule whose own limit was loosened is marked in any case.
"""

from collections.abc import Callable, Iterable, Sequence

from msgspec.structs import replace

from inspector.gear.rulebooks import Change, Part
from inspector.gear.verdict import Finding, Unloosened, Verdict
from inspector.language import tr
from inspector.rulebook.load import ClubPart, Rulebook
from inspector.rulebook.words import listed

JudgeBy = Callable[[Rulebook], Verdict]


def marked(verdict: Verdict, kind: str, book: Rulebook, judge_by: JudgeBy) -> Verdict:
    """The verdict with every finding marked that rests on a loosened limit, and what it would be without any."""
    club = book.club
    if club is None or club.strict is None:
        return verdict
    strict = judge_by(club.strict)
    others = {one.rule: one for one in strict.findings}
    touched = {one.rule for one in verdict.findings if _differs(one, others.get(one.rule))}
    causes = _causes(club, verdict, kind, judge_by) if touched else {}
    findings = tuple(_with_mark(one, club, causes.get(one.rule, ()), one.rule in touched) for one in verdict.findings)
    return replace(verdict, findings=findings, unloosened=_unloosened(verdict, strict))


def _differs(one: Finding, other: Finding | None) -> bool:
    """Whether two books see the same rule otherwise."""
    if other is None:
        return True
    seen = (one.status, one.outcome, one.value, one.limit, one.turns_on)
    return seen != (other.status, other.outcome, other.value, other.limit, other.turns_on)


def _causes(club: ClubPart, verdict: Verdict, kind: str, judge_by: JudgeBy) -> dict[str, tuple[Change, ...]]:
    """For each rule, the loosened changes without which it would be seen otherwise."""
    found: dict[str, tuple[Change, ...]] = {}
    rules = {one.rule for one in verdict.findings}
    for change, book in club.one_strict:
        if change.part is not Part.SETTING and change.about not in rules | {kind}:
            continue  # another kind's interval, a rule that does not speak of this one
        others = {one.rule: one for one in judge_by(book).findings}
        for one in verdict.findings:
            if _differs(one, others.get(one.rule)):
                found[one.rule] = (*found.get(one.rule, ()), change)
    return found


def _with_mark(finding: Finding, club: ClubPart, causes: Iterable[Change], touched: bool) -> Finding:
    own = [one for one in club.loosened if one.part is Part.LIMIT and one.about == finding.rule]
    named = list(dict.fromkeys([*own, *causes]))
    if touched and not named:
        named = list(club.loosened)  # only together they have an effect: none is left unnamed
    return replace(finding, loosened="; ".join(loosened_words(one) for one in named)) if named else finding


def _unloosened(verdict: Verdict, strict: Verdict) -> Unloosened | None:
    plain = Unloosened(strict.outcome, strict.by_purpose, strict.capacity.now_n, strict.next_due)
    own = Unloosened(verdict.outcome, verdict.by_purpose, verdict.capacity.now_n, verdict.next_due)
    return None if plain == own else plain


def loosened_words(change: Change) -> str:
    """A loosened figure in a few words, for a mark beside a limit."""
    return _words(change, [change.about])


def _words(change: Change, about: Sequence[str]) -> str:
    figures = {"club": change.club, "packaged": change.packaged}
    if change.part is Part.LIMIT:
        return tr("club limit {club}, loosened from {packaged}", **figures)
    name = listed([one.replace("_", " ") for one in about])
    if change.part is Part.SETTING:
        return tr("club's {name} {club}, loosened from {packaged}", name=name, **figures)
    times = {
        "every_days": tr("time between inspections"),
        "every_days_severe": tr("time between inspections in salt or mud"),
        "every_days_special": tr("time between inspections after an event, heat or chemicals"),
        "reading_every_days": tr("time between wall readings"),
    }
    return tr("club's {time} of {name} {club}, loosened from {packaged}", time=times[change.key], name=name, **figures)


def in_force_lines(book: Rulebook) -> tuple[str, ...]:
    """What every document says while a club's limits stand: what is loosened, and what could not be used."""
    if book.club is None:
        return ()
    lines = []
    if book.club.loosened:
        said = "; ".join(_grouped(book.club.loosened))
        lines.append(tr("Club limits loosened from the packaged rulebook: {said}.", said=said))
    if book.club.unfit:
        lines.append(
            tr(
                "{count} of the club's own limits do not fit this version of the program, and the packaged ones stand.",
                count=len(book.club.unfit),
            )
        )
    return tuple(lines)


def _grouped(changes: Sequence[Change]) -> list[str]:
    """Each loosened figure; kinds that share one interval are named together."""
    alike: dict[tuple[str, ...], list[Change]] = {}
    for one in changes:
        place = (one.part, one.key, one.club, one.packaged) if one.part is Part.INTERVAL else one.place
        alike.setdefault(place, []).append(one)
    return [_named(group[0], [one.about for one in group]) for group in alike.values()]


def _named(change: Change, about: Sequence[str]) -> str:
    words = _words(change, about)
    return f"{change.about}: {words}" if change.part is Part.LIMIT else words
