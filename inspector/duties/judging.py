"""The step that most deeds end with: judge the piece on its facts of today and keep the verdict with its words."""

from dataclasses import replace

from inspector.duties.office import Office
from inspector.gear.dossier import Dossier
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.register.page import Page
from inspector.rulebook.judge import judge
from inspector.rulebook.release import releases
from inspector.rulebook.wording import explain


def judged(office: Office, dossier: Dossier) -> Judged:
    """The dossier judged and explained; nothing is kept."""
    verdict = judge(dossier, office.rules, office.program)
    verdict = replace(verdict, releases=releases(verdict, dossier, office.rules))
    return Judged(dossier, verdict, explain(dossier, verdict, office.rules, office.system))


def judge_and_keep(office: Office, page: Page, item: Item) -> Judged:
    """Judge the piece as it stands on the page and keep the verdict."""
    adopt(office, page)
    kind = office.kind(item.facts.kind)
    outcome = judged(office, page.dossier(item, kind, office.today))
    keep(office, page, outcome)
    return outcome


def keep(office: Office, page: Page, outcome: Judged) -> None:
    """Keep a verdict with its words; the lists show the one kept last."""
    adopt(office, page)
    item, facts = outcome.dossier.item, outcome.dossier.item.facts
    kind = outcome.dossier.kind
    searched = (*page.tags_of(item), kind.name, facts.maker_mark, facts.serial, facts.owner, facts.place, facts.note)
    page.add_verdict(outcome.verdict, outcome.explanation, " ".join((*searched, facts.fitted_to)))


def adopt(office: Office, page: Page) -> None:
    """Keep the full text of the rulebook in force, once: a verdict of today must be readable by it in years."""
    if not page.has_rulebook(office.rules.hash):
        page.add_rulebook(office.rules.hash, office.rules.text, office.today)
