"""Say what one thinks of a piece: a doubt holds it, a competent person's opinion answers what it names."""

from collections.abc import Sequence

from inspector.duties.judging import judge_and_keep, judged
from inspector.duties.office import Office
from inspector.duties.who import check_judge, check_name_counts, check_not_closed, person_of
from inspector.gear.judged import Judged
from inspector.gear.kind import Grade
from inspector.gear.opinion import Answered, NewOpinion, Stance
from inspector.gear.person import Person
from inspector.gear.verdict import Finding, Value
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.case import Case
from inspector.rulebook.opinions import facts_digest, may_be_answered


def doubt(office: Office, tag: str, why: str, by: str = "") -> Judged:
    """Hold the piece until a competent person has inspected it. Anybody may doubt; nobody needs to prove it."""
    _check_why(why)
    with office.book.page() as page:
        speaker = person_of(page, by or office.officer.id, tr("said by"))
        return _keep(office, page, tag, NewOpinion(office.today, speaker.id, Stance.DOUBTS, why.strip()))


def answer_findings(office: Office, tag: str, rules: Sequence[str], why: str, by: str = "") -> Judged:
    """Answer holds for slight faults that were seen; the opinion stands until anything new is known of the piece.

    rules: ids of the findings. Refused for whoever is not competent, owns the piece, or saw the finding himself.
    """
    _check_why(why)
    with office.book.page() as page:
        speaker = person_of(page, by or office.officer.id, tr("said by"))
        item = page.item(tag)
        dossier = page.dossier(item, office.kind(item.facts.kind), office.today)
        check_judge(speaker, item, dossier.kind, office.today, tr("said by"))
        check_name_counts(office, page, speaker, tr("said by"))
        open_findings = {
            one.rule: one for one in judged(office, dossier).verdict.findings if may_be_answered(one, office.rules)
        }
        case = Case(dossier, office.rules)
        answered = tuple(_answered(rule, open_findings, case, speaker) for rule in rules)
        if not answered:
            raise _nothing_named(open_findings)
        stands_on = facts_digest(dossier)
        facts = NewOpinion(office.today, speaker.id, Stance.ANSWERS, why.strip(), answered, stands_on)
        return _keep(office, page, tag, facts)


def _keep(office: Office, page: Page, tag: str, facts: NewOpinion) -> Judged:
    item = page.item(tag)
    check_not_closed(page, item)
    page.add_opinion(item, facts)
    outcome = judge_and_keep(office, page, item)
    deed = "doubt" if facts.stance is Stance.DOUBTS else "answer"
    page.enter(deed, by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": facts})
    return outcome


def _check_why(why: str) -> None:
    if not why.strip():
        raise Refused(tr("reason"), tr("It is empty."), tr("Write in a sentence what you saw and why you think so."))


def _answered(rule: str, open_findings: dict[str, Finding], case: Case, speaker: Person) -> Answered:
    finding = open_findings.get(rule)
    if finding is None:
        raise _cannot_be_answered(rule, open_findings)
    seen = [one.facts for one, grade in case.graded(finding.observation) if grade is not Grade.GOOD]
    if speaker.id in {person for one in seen for person in (one.by, one.second)}:
        why = tr("{name} made an inspection that “{rule}” rests on.", name=speaker.name, rule=rule)
        raise Refused(tr("said by"), why, tr("A second opinion is another person's; or inspect the piece again."))
    return Answered(rule, finding.value or Value())


def _cannot_be_answered(rule: str, open_findings: dict[str, Finding]) -> Refused:
    why = tr("“{rule}” holds nothing here that an opinion may answer.", rule=rule)
    return Refused(tr("finding"), why, _what_may_be(open_findings))


def _nothing_named(open_findings: dict[str, Finding]) -> Refused:
    return Refused(tr("finding"), tr("No finding is named."), _what_may_be(open_findings))


def _what_may_be(open_findings: dict[str, Finding]) -> str:
    if open_findings:
        return tr("An opinion may answer: {rules}.", rules=", ".join(sorted(open_findings)))
    return tr(
        "An opinion answers only a slight fault that was seen. A bad one, and what is measured, missing or overdue, "
        "takes an inspection; what is not marked takes a marking; and a retirement is final."
    )
