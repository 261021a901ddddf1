"""What the report on all the gear rests on, read in one go, and what is counted of it."""

from collections import Counter
from collections.abc import Iterator, Mapping
from datetime import date

from msgspec import Struct

from inspector.duties.due_days import has_left, is_lost
from inspector.duties.handover_lists import kind_name
from inspector.duties.office import Office
from inspector.duties.what_falls_due import Held, held
from inspector.gear.dossier import Dossier
from inspector.gear.item import Item
from inspector.gear.outcome import Outcome
from inspector.gear.register_report import AgeCount, KindCount
from inspector.gear.whereabouts import Whereabouts
from inspector.language import tr, tr_n
from inspector.register.lists import Asked
from inspector.register.page import Page

_ALL = 1_000_000
_AGE_STEPS = (2, 5, 10)  # years; a display, no limit rests on it


class Found(Struct, frozen=True):
    """pieces: those that the club has or ought to have; items, where: of every piece ever, whereabouts by id.

    retired: every piece that was retired from the day on, gone or not, the latest first.
    """

    office: Office
    page: Page
    since: date
    pieces: tuple[Held, ...]
    items: tuple[Item, ...]
    where: Mapping[str, Whereabouts]
    names: Mapping[str, str]
    retired: tuple[Dossier, ...]


def found_for(office: Office, page: Page, since: date) -> Found:
    """Read all that the report needs."""
    items = page.every_item()
    where, names = page.whereabouts(items), {one.id: one.name for one in page.people()}
    return Found(
        office, page, since, tuple(held(office, page)), items, where, names, _retired(office, page, items, since)
    )


def _retired(office: Office, page: Page, items: tuple[Item, ...], since: date) -> tuple[Dossier, ...]:
    tags = {line.tag for line in page.gear(Asked(outcome=Outcome.RETIRE.value, limit=_ALL))}
    kinds = office.rules.kinds
    known = [(one, kinds[one.facts.kind]) for one in items if one.tag in tags and one.facts.kind in kinds]
    dossiers = (one for one in page.dossiers(known, office.today) if one.retired_on and one.retired_on >= since)
    return tuple(sorted(dossiers, key=lambda one: (one.retired_on or since, one.item.tag), reverse=True))


def kind_counts(found: Found) -> tuple[KindCount, ...]:
    """By kind, by name; what is missing or stolen is no gear that anybody can use, and is counted elsewhere."""
    here = Counter((one.kind_name, one.verdict.outcome) for one in found.pieces if not is_lost(one.where))
    return tuple(_count(name, here) for name in sorted({name for name, _ in here}))


def _count(name: str, here: Mapping[tuple[str, Outcome], int]) -> KindCount:
    return KindCount(name, *(here.get((name, one), 0) for one in _ORDER))


_ORDER = (Outcome.FIT, Outcome.DERATE, Outcome.HOLD, Outcome.RETIRE)


def all_counts(kinds: tuple[KindCount, ...]) -> KindCount:
    """All kinds together."""
    return KindCount("", *(sum(one.of(outcome) for one in kinds) for outcome in _ORDER))


def ages(found: Found) -> tuple[AgeCount, ...]:
    """By the day a piece was made, else by the day it came into service; what nobody knows the age of by itself."""
    here = (one for one in found.pieces if one.verdict.outcome is not Outcome.RETIRE and not is_lost(one.where))
    years = [_age_years(one.item, found.office.today) for one in here]
    spans = list(zip((0, *_AGE_STEPS), (*_AGE_STEPS, 1000), strict=True))
    counts = [sum(low <= one < high for one in years if one is not None) for low, high in spans]
    words = list(_age_words())
    return (*map(AgeCount, words, counts), AgeCount(tr("age not known"), years.count(None)))


def _age_words() -> Iterator[str]:
    first, *others = _AGE_STEPS
    yield tr("less than {years} years", years=first)
    for low, high in zip(_AGE_STEPS, others, strict=False):
        yield tr("{low} to {high} years", low=low, high=high)
    yield tr("{years} years or more", years=_AGE_STEPS[-1])


def _age_years(item: Item, today: date) -> int | None:
    """Full years; None where neither day is written down."""
    began = item.facts.made_on or item.facts.in_service_on
    if began is None or began > today:
        return None
    return today.year - began.year - ((today.month, today.day) < (began.month, began.day))


def gone_since(found: Found) -> Iterator[Item]:
    """What was lost, sold, given back or made unusable from the day on, as it stands now."""
    for one in found.items:
        where = found.where[one.id]
        if (has_left(where) or is_lost(where)) and where.since and where.since >= found.since:
            yield one


def named(found: Found, item: Item) -> str:
    """What a piece is."""
    return kind_name(found.office, item)


def count_words(count: int) -> str:
    """So many pieces."""
    return tr_n("{count} piece", "{count} pieces", count)
