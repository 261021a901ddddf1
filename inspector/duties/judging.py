"""The step that most deeds end with: judge the piece on its facts of today and keep the verdict with its words."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from inspector.duties.office import Office
from inspector.gear.dossier import Dossier
from inspector.gear.inspection import InspectionKind
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.lists import Exposed, Listing
from inspector.gear.use import Weather
from inspector.gear.verdict import Verdict
from inspector.register.page import Page
from inspector.rulebook.judge import judge
from inspector.rulebook.release import releases
from inspector.rulebook.wording import explain

_AT_ONCE = 50  # dossiers read together: more at once stop the window while they are looked over and let go


def dossiers_of(office: Office, page: Page, items: Sequence[Item]) -> Iterator[Dossier]:
    """The dossiers of many pieces as of today, in their order, and after each it is told how many are done.

    They are read some at a time, so that few of them are held at once however many there are.
    """
    for at in range(0, len(items), _AT_ONCE):
        some = [(one, office.kind(one.facts.kind)) for one in items[at : at + _AT_ONCE]]
        for number, dossier in enumerate(page.dossiers(some, office.today), at + 1):
            yield dossier
            office.told(number, len(items))


def verdict_by(office: Office, dossier: Dossier) -> Verdict:
    """The dossier judged, without what would release a finding and without words, for what only compares verdicts."""
    return judge(dossier, office.rules, office.program)


def judged(office: Office, dossier: Dossier) -> Judged:
    """The dossier judged and explained; nothing is kept."""
    verdict = verdict_by(office, dossier)
    verdict = replace(verdict, releases=releases(verdict, dossier, office.rules))
    return Judged(dossier, verdict, explain(dossier, verdict, office.rules, office.system))


def judge_and_keep(office: Office, page: Page, item: Item) -> Judged:
    """Judge the piece as it stands on the page and keep the verdict."""
    kind = office.kind(item.facts.kind)
    outcome = judged(office, page.dossier(item, kind, office.today))
    keep(office, page, outcome)
    return outcome


def judge_and_keep_all(office: Office, page: Page, items: Sequence[Item]) -> Iterator[Judged]:
    """Judge many different pieces and keep their verdicts, some at a time, as they are asked for: ask for all of them.

    After each it is told how many are done.
    """
    waiting: list[tuple[Judged, Dossier]] = []
    for dossier in dossiers_of(office, page, items):
        waiting.append((judged(office, dossier), dossier))
        yield waiting[-1][0]
        if len(waiting) == _AT_ONCE:
            keep_all(office, page, waiting)
            waiting = []
    if waiting:
        keep_all(office, page, waiting)


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
