"""What the tag of a held, derated or retired piece says: why, since when and by whom, and what ends it."""

from inspector.duties.office import Office
from inspector.duties.tell_whereabouts import evidence_words, gone_words
from inspector.duties.use_limits import bears_only, not_for, only_for
from inspector.gear.judged import Judged
from inspector.gear.opinion import Stance
from inspector.gear.outcome import Outcome
from inspector.gear.tags import HoldTag
from inspector.gear.verdict import Finding, Known, Status
from inspector.language import show_day, tr
from inspector.register.page import Page
from inspector.rulebook.wording import settled_by
from inspector.rulebook.words import marked_words

_FOUND = {Known.SEEN, Known.MEASURED, Known.ESTIMATED}


def why_no_tag(page: Page, one: Judged) -> str:
    """Why no tag is printed for this piece; empty where one is: it is here, and not free for use."""
    names = {person.id: person.name for person in page.people()}
    if gone := gone_words(page.whereabouts_of(one.dossier.item), names):
        return gone
    if one.verdict.outcome is Outcome.FIT:
        return tr("It is fit: {use}.", use=one.explanation.use_line.rstrip("."))
    return ""


def hold_tag(office: Office, page: Page, one: Judged) -> HoldTag:
    """The tag of a piece, in the words of its stored verdict."""
    kept = page.open_quarantines(one.dossier.item)
    return HoldTag(
        tag=one.dossier.item.tag,
        kind_name=one.dossier.kind.name,
        marked=marked_words(one.dossier.item),
        outcome=one.verdict.outcome,
        not_for=not_for(one),
        limit=bears_only(office, one),
        may_for=only_for(one),
        why=_why(one),
        since=_since(page, one),
        release=_evidence(kept) if kept else _release(one),
        is_evidence=bool(kept),
    )


def _why(one: Judged) -> str:
    """The sentence that decides, in a line."""
    first = one.explanation.reasons[0] if one.explanation.reasons else None
    return first.sentence if first else one.explanation.headline


def _since(page: Page, one: Judged) -> str:
    """The first day from which the outcome has stood without a break, and who found what decides."""
    outcomes = page.outcomes_of(one.dossier.item)
    first = one.verdict.on
    for line in page.history(one.dossier.item.id):
        if line.what == "verdict":
            if outcomes[line.key] is not one.verdict.outcome:
                break
            first = line.on
    found = _found_by(one)
    if not found:
        return tr("{day}, worked out by the register.", day=show_day(first))
    return tr("{day}, by {name}.", day=show_day(first), name=found)


def _found_by(one: Judged) -> str:
    """The name of whoever saw, measured or doubted what decides; empty where days and entries alone do."""
    names = dict(one.dossier.names)
    rule = one.explanation.reasons[0].rule if one.explanation.reasons else ""
    deciding = next((finding for finding in one.verdict.findings if finding.rule == rule), None)
    if deciding is None:
        return ""
    if deciding.quantity == "open_doubts":
        doubts = [said.facts.by for said in one.dossier.opinions if said.facts.stance is Stance.DOUBTS]
        return names.get(doubts[-1], "") if doubts else ""
    return _named(one, deciding, names)


def _named(one: Judged, finding: Finding, names: dict[str, str]) -> str:
    """Beside a name that nobody knows but from what was typed stands that it is so."""
    if finding.status is not Status.FAILS or finding.known not in _FOUND or finding.by not in names:
        return ""
    vouched = {seen.id for seen in one.dossier.inspections if seen.facts.vouched}
    name = names[finding.by]
    return name if finding.rests_on in vouched else tr("{name} (name as stated)", name=name)


def _evidence(kept: tuple[str, ...]) -> str:
    leave = tr("Do not use, clean, repair, mark or move it.")
    beside = tr("Lay this tag beside it; tie nothing to it.")
    return f"{evidence_words(kept)} {leave} {beside}"


def _release(one: Judged) -> str:
    if one.verdict.outcome is Outcome.RETIRE:
        return tr("Nothing. Its retirement notice says how it is made unusable.")
    if one.verdict.outcome is Outcome.DERATE:
        return tr("A competent person's inspection that finds it better, or another piece in its place.")
    return settled_by(one.verdict, one.explanation)
