"""Fit a part to a vehicle, and take it off."""

from datetime import date

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.who import (
    check_at_hand,
    check_not_closed,
    check_not_evidence,
    check_vehicle_not_evidence,
    id_of,
)
from inspector.gear.fitting import Fitted, NewFitting
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr, within
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.words import fitted_words


def fit_part(office: Office, tag: str, to: Fitted, *, on: date | None = None, by: str = "", note: str = "") -> Judged:
    """Keep that a part sits on a vehicle from a day on, wherever it sat before. by: who fitted it."""
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        check_at_hand(page, item)
        check_not_evidence(page, item)
        check_may_sit(office, item)
        if page.latest_verdict(item.id)[0].outcome is Outcome.RETIRE:
            why = tr("{tag} is retired, and what is retired goes on no vehicle.", tag=item.tag)
            raise Refused(tr("piece"), why, tr("Fit another piece, and make this one unusable."))
        place = Fitted(page.vehicle(to.vehicle).tag, to.end, to.side)
        check_vehicle_not_evidence(page, place.vehicle)
        sits = page.fitted(item)
        if sits:
            check_vehicle_not_evidence(page, sits.vehicle)
        if sits == place:
            why = tr("{tag} sits there already.", tag=item.tag)
            raise Refused(tr("place"), why, tr("Write where it sits now: {place}.", place=fitted_words(place)))
        return _keep(office, page, item, NewFitting(_day(office, page, item, on), place, by, note.strip()))


def check_may_sit(office: Office, item: Item) -> None:
    """Refuse what is no part of a vehicle: a strap or a shackle rides along, is lent and handed back."""
    if office.rules.roles[item.facts.kind].may_sit:
        return
    name = within(office.kind(item.facts.kind).name)
    why = tr("{tag} is a {kind}, which is no part of a vehicle.", tag=item.tag, kind=name)
    raise Refused(tr("piece"), why, tr("Write into a trip's plan on which vehicle it rides, or where it is stored."))


def take_off_part(office: Office, tag: str, *, on: date | None = None, by: str = "", note: str = "") -> Judged:
    """Keep that a part sits on no vehicle any more. A retired or destroyed one is taken off as well."""
    with office.book.page() as page:
        item = page.item(tag)
        check_not_evidence(page, item)
        sits = page.fitted(item)
        if sits is None:
            why = tr("{tag} is fitted to no vehicle.", tag=item.tag)
            raise Refused(tr("piece"), why, tr("Look at its history; there is nothing to take off."))
        check_vehicle_not_evidence(page, sits.vehicle)
        return _keep(office, page, item, NewFitting(_day(office, page, item, on), None, by, note.strip()))


def _keep(office: Office, page: Page, item: Item, facts: NewFitting) -> Judged:
    """Write it down; the piece is judged anew so that its words name the place where it is."""
    kept = NewFitting(facts.on, facts.to, id_of(office, page, facts.by, tr("fitted by")), facts.note)
    page.add_fitting(item, kept)
    outcome = judge_and_keep(office, page, item)
    deed = "fit part" if kept.to else "take off part"
    page.enter(deed, by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": kept})
    return outcome


def _day(office: Office, page: Page, item: Item, on: date | None) -> date:
    """The day, which may lie neither in the future nor before what was written down last: that one stands."""
    day = on or office.today
    if day > office.today:
        raise Refused(tr("day"), tr("The day lies in the future."), tr("Write it down when the day has come."))
    earlier = page.fittings_of(item)
    last = earlier[-1].on if earlier else item.booked_on
    if day < last:
        why = tr("What stands was written down for {day}.", day=show_day(last))
        raise Refused(tr("day"), why, tr("Write that day or a later one, and tell the true day in the note."))
    return day
