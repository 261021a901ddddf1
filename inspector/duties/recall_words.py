"""What a recall says, in words."""

from collections.abc import Mapping

from inspector.duties.recall_match import range_words
from inspector.gear.dossier import Dossier
from inspector.gear.kind import Kind
from inspector.gear.recall_notice import Answer, Issuer, Meant, NewRecall, Step, Sure
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr, within
from inspector.register.page import Page


def issuer_word(issuer: Issuer) -> str:
    """Whose notice it is."""
    return {
        Issuer.MAKER: tr("the maker's notice"),
        Issuer.REGULATOR: tr("a regulator's notice"),
        Issuer.CLUB: tr("the club's own"),
    }[issuer]


def sure_word(sure: Sure) -> str:
    """How a piece answers to a notice."""
    return {Sure.CERTAIN: tr("certain"), Sure.TO_ASK: tr("to ask"), Sure.NOT_MEANT: tr("not meant")}[sure]


def step_word(step: Step) -> str:
    """What a recall came to for a piece."""
    return {
        Step.CALLED: tr("on hold"),
        Step.NOT_OF_IT: tr("read not to be meant"),
        Step.REMEDIED: tr("done as the notice asks"),
        Step.WITHDRAWN: tr("not held by it any more"),
    }[step]


def answer_word(answer: Answer) -> str:
    """What was answered."""
    return {
        Answer.HAS_IT: tr("has it, out of use"),
        Answer.SENT: tr("sent it back"),
        Answer.HAS_IT_NO_MORE: tr("has it no more"),
        Answer.PASSED_ON: tr("passed it on"),
        Answer.MADE_UNUSABLE: tr("made it unusable"),
        Answer.READ: tr("read on it"),
    }[answer]


def notice_words(told: NewRecall) -> str:
    """Whose notice it is, its day, and where it can be read."""
    parts = [issuer_word(told.issuer)]
    if told.issued:
        parts.append(show_day(told.issued))
    if told.source:
        parts.append(told.source)
    return ", ".join(parts)


def recall_words(page: Page, dossier: Dossier) -> str:
    """The recalls that a piece stands under, whose they are and what is wrong; empty where there is none."""
    last = {one.facts.recall: one.facts.step for one in dossier.calls}
    if Step.CALLED not in last.values():
        return ""
    under = [one for one in page.recalls() if last.get(one.ref) is Step.CALLED]
    return "; ".join(
        tr("{ref}, {notice}: {reason}", ref=one.ref, notice=notice_words(one.facts), reason=one.facts.reason)
        for one in under
    )


def meant_facts(meant: Meant, kinds: Mapping[str, Kind]) -> tuple[Fact, ...]:
    """Which pieces a notice means, a line for each thing it says."""
    names = (within(kinds[key].name) if key in kinds else key for key in meant.kinds)
    said = (
        (tr("Maker's mark"), meant.mark),
        (tr("Kinds"), ", ".join(names)),
        (tr("Batch"), ", ".join(meant.batches)),
        (tr("Serials"), range_words(meant) if meant.first or meant.last else ""),
        (tr("Made"), made_words(meant)),
        (tr("Named pieces"), ", ".join(meant.tags)),
    )
    return tuple(Fact(label, text) for label, text in said if text)


def made_words(meant: Meant) -> str:
    """The days of making; empty where the notice names none."""
    first, last = meant.made_from, meant.made_until
    if first and last:
        return tr("{first} to {last}", first=show_day(first), last=show_day(last))
    if first:
        return tr("{first} and later", first=show_day(first))
    return tr("up to {last}", last=show_day(last)) if last else ""
