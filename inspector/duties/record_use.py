"""Log what a piece went through: pulls, and days in salt, mud or sun."""

from collections.abc import Callable
from datetime import date
from typing import TypeVar

from msgspec.structs import replace

from inspector.duties.bounds import check_after_birth, check_heat_bounds, check_within_life
from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.who import check_not_closed, id_of
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.use import NewExposure, NewUse, Weather
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page

_MOST_PULLS = 1000
MOST_DAYS = 3660

Facts = TypeVar("Facts", NewUse, NewExposure)


def record_use(office: Office, tag: str, facts: NewUse) -> Judged:
    """Keep a day's pulls and judge the piece by them."""
    check_use(office, facts)
    return _keep(office, tag, "use", facts, Page.add_use)


def record_exposure(office: Office, tag: str, facts: NewExposure) -> Judged:
    """Keep an exposure and judge the piece by it."""
    check_exposure(office, facts)
    return _keep(office, tag, "expose", facts, Page.add_exposure)


def check_use(office: Office, facts: NewUse) -> None:
    """Refuse pulls that cannot be."""
    _check_day(office, facts.on)
    if not 0 <= facts.pull_count <= _MOST_PULLS:
        why = tr("A day has 0 to {most} pulls.", most=_MOST_PULLS)
        raise Refused(tr("pulls"), why, tr("Write how many pulls it took."))


def check_exposure(office: Office, facts: NewExposure) -> None:
    """Refuse an exposure that cannot be."""
    _check_day(office, facts.on)
    if not 1 <= facts.days_count <= MOST_DAYS:
        why = tr("An exposure lasts 1 to {most} days.", most=MOST_DAYS)
        raise Refused(tr("days"), why, tr("Write for how many days it was exposed."))
    if facts.hottest is not None and facts.weather is not Weather.HEAT:
        why = tr("A temperature belongs to a day of heat.")
        raise Refused(tr("hottest"), why, tr("Log the heat as an exposure of its own."))
    if facts.hottest is not None:
        check_heat_bounds(facts.hottest)


def _keep(office: Office, tag: str, deed: str, facts: Facts, add: Callable[[Page, Item, Facts], object]) -> Judged:
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        check_after_birth(tr("day"), item, facts.on)
        if isinstance(facts, NewExposure):
            check_within_life(item, facts.days_count, office.today)
        kept = replace(facts, by=id_of(office, page, facts.by, tr("reported by")))
        add(page, item, kept)
        outcome = judge_and_keep(office, page, item)
        page.enter(deed, by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": kept})
    return outcome


def _check_day(office: Office, day: date) -> None:
    if day > office.today:
        raise Refused(tr("day"), tr("The day lies in the future."), tr("Write the day as it was."))
