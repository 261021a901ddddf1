"""Strike an entry that was wrong: the wrong tag, a misread gauge. Two competent persons, one reason, nothing erased."""

from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.who import check_could_before, check_judge, check_not_closed, proved, two_names
from inspector.gear.dossier import Dossier
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.strike import NewStrike
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.dossiers import Retirement
from inspector.register.page import Page
from inspector.rulebook.judge import RETIRED_BEFORE, judge

_SHORTEST_REF = 6


def strike_entry(office: Office, tag: str, entry: str, second: str, why: str, by: str = "") -> Judged:
    """Take an inspection, use or exposure out of what the piece is judged by; it stays in the history, marked.

    entry: its id or the last signs of it as the history prints them. by: the officer where nobody is named. The piece
    is on hold until it is inspected anew. A retirement that rested on the entry alone falls; what was destroyed stays.
    """
    if not why.strip():
        raise Refused(tr("reason"), tr("It is empty."), tr("Write what was wrong with the entry and how you know."))
    with office.book.page() as page:
        item = page.item(tag)
        kind = office.kind(item.facts.kind)
        first, other = two_names(office, page, (by, tr("struck by")), second)
        for person, field in ((first, tr("struck by")), (other, tr("second name"))):
            check_judge(person, item, kind, office.today, field)
            check_could_before(page, person, [kind], office.today, field)
        if page.is_destroyed(item):
            why_not = tr("{tag} is recorded as made unusable.", tag=item.tag)
            raise Refused(tr("piece"), why_not, tr("What was destroyed cannot come back; write a note in the history."))
        check_not_closed(page, item)
        dossier = page.dossier(item, kind, office.today)
        key = _entry_of(dossier, entry)
        voids = _voids(office, page, dossier, key)
        facts = NewStrike(office.today, first.id, other.id, key, why.strip(), voids)
        page.add_strike(item, facts)
        outcome = judge_and_keep(office, page, item)
        said = {"tag": item.tag, "as": facts, **proved(office, first.id, other.id)}
        page.enter("strike", by=office.officer.id, at=office.now, facts=said)
    return outcome


def _entry_of(dossier: Dossier, sought: str) -> str:
    ref = sought.strip().lower().lstrip("#")
    keys = [one.id for one in dossier.inspections]
    keys += [one.id for one in dossier.uses] + [one.id for one in dossier.exposures]
    found = [key for key in keys if len(ref) >= _SHORTEST_REF and key.endswith(ref)]
    if len(found) == 1:
        return found[0]
    why = tr("“{ref}” is not an entry of {tag} that can be struck.", ref=sought, tag=dossier.item.tag)
    what = tr("Use the sign that the history prints beside an inspection, use or exposure that is not struck yet.")
    raise Refused(tr("entry"), why, what)


def _voids(office: Office, page: Page, dossier: Dossier, struck: str) -> tuple[str, ...]:
    """The stored retirements that would not have been said without the entry; the first that stands ends the search."""
    gone = {struck, *(one.facts.entry for one in dossier.strikes)}
    voided: list[str] = []
    for retirement in page.standing_retirements(dossier.item, dossier.strikes):
        if not _rests_on(office, retirement, gone) or _still_retires(office, page, dossier, retirement, gone):
            break
        voided.append(retirement.id)
    return tuple(voided)


def _rests_on(office: Office, retirement: Retirement, gone: set[str]) -> bool:
    """Under another rulebook than that of its day a retirement falls only if all it rested on is gone."""
    if retirement.verdict.rulebook == office.rules.hash:
        return True
    findings = [one for one in retirement.verdict.findings if one.outcome is Outcome.RETIRE]
    return all(one.rests_on in gone for one in findings if one.rule != RETIRED_BEFORE)


def _still_retires(office: Office, page: Page, dossier: Dossier, retirement: Retirement, gone: set[str]) -> bool:
    """Whether the facts of that day retire the piece without any entry that was struck since."""
    then = page.dossier(dossier.item, dossier.kind, retirement.verdict.on)
    without = replace(
        then,
        inspections=tuple(one for one in then.inspections if one.id not in gone),
        uses=tuple(one for one in then.uses if one.id not in gone),
        exposures=tuple(one for one in then.exposures if one.id not in gone),
        retired_on=None,
    )
    return judge(without, office.rules, office.program).outcome is Outcome.RETIRE
