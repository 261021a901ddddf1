"""The step that most deeds end with: judge the piece on its facts of today and keep the verdict with its words."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from inspector.duties.office import Office
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import InspectionKind
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.lists import Exposed, Listing
from inspector.gear.use import Weather
from inspector.register.page import Page
from inspector.rulebook.judge import judge
from inspector.rulebook.release import releases
from inspector.rulebook.wording import explain

_AT_ONCE = 20  # pieces whose lives are held at one time; more would stop the window as they are let go


def judged(office: Office, dossier: Dossier) -> Judged:
    """The dossier judged and explained; nothing is kept."""
    verdict = judge(dossier, office.rules, office.program)
    verdict = replace(verdict, releases=releases(verdict, dossier, office.rules))
    return Judged(dossier, verdict, explain(dossier, verdict, office.rules, office.system))


def judge_and_keep(office: Office, page: Page, item: Item) -> Judged:
    """Judge the piece as it stands on the page and keep the verdict."""
    kind = office.kind(item.facts.kind)
    outcome = judged(office, page.dossier(item, kind, office.today))
    keep(office, page, outcome)
    return outcome


def judge_and_keep_all(office: Office, page: Page, items: Sequence[Item]) -> Iterator[Judged]:
    """Judge these pieces as `judge_and_keep` does one, and keep the verdicts; how many are done is told.

    A share of them is read, judged and kept at a time, and let go as it is passed over.
    """
    for at in range(0, len(items), _AT_ONCE):
        known = [(one, office.kind(one.facts.kind)) for one in items[at : at + _AT_ONCE]]
        outcomes = [judged(office, one) for one in page.dossiers(known, office.today)]
        keep_all(office, page, [(one, one.dossier) for one in outcomes])
        for done, one in enumerate(outcomes, at + 1):
            yield one
            office.told(done, len(items))


def keep(office: Office, page: Page, outcome: Judged, known: Dossier | None = None) -> None:
    """Keep a verdict with its words; the lists show the one kept last.

    known: what is known by now, where the verdict is of an earlier day; lists find the piece by it.
    """
    keep_all(office, page, [(outcome, known or outcome.dossier)])


def keep_all(office: Office, page: Page, outcomes: Sequence[tuple[Judged, Dossier]]) -> None:
    """Keep the verdicts of different pieces with their words, each with what is known of the piece by now."""
    adopt(office, page)
    tags = page.tags_ever_of([one.dossier.item for one, _ in outcomes])
    said = [(one.verdict, one.explanation, _listing(tags[known.item.id], known)) for one, known in outcomes]
    page.add_verdicts(said)


def _listing(tags: tuple[str, ...], dossier: Dossier) -> Listing:
    """What the list finds and sorts the piece by."""
    item, facts = dossier.item, dossier.item.facts
    searched = (*tags, dossier.kind.name, facts.maker_mark, facts.serial, facts.owner, facts.place)
    weathers = {one.facts.weather for one in dossier.exposures}
    exposed = Exposed.SALT if Weather.SALT in weathers else Exposed.ANY if weathers else Exposed.NONE
    looks = (one.on for one in dossier.inspections if one.facts.kind is not InspectionKind.BEFORE_USE)
    return Listing(
        tag=facts.tag,
        kind=facts.kind,
        owner=facts.owner,
        maker_mark=facts.maker_mark,
        serial=facts.serial,
        place=facts.place,
        vehicle=facts.fitted_to,
        basis=item.rating.basis.value,
        rated=item.rating.figure.si if item.rating.figure else None,
        inspected_on=max(looks, default=None),
        exposed=exposed,
        search=" ".join((*searched, facts.note, facts.fitted_to)),
    )


def adopt(office: Office, page: Page) -> None:
    """Keep the full text of the rulebook in force, once: a verdict of today must be readable by it in years."""
    if not page.has_rulebook(office.rules.hash):
        page.add_rulebook(office.rules.hash, office.rules.text, office.today)
