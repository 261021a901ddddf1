"""Where a piece is, apart from what it is fit for: put away, missing, stolen, sold, given back, found again."""

from datetime import date

from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line, check_text
from inspector.duties.who import check_at_hand, check_not_closed, check_not_evidence, is_clubs, person_of
from inspector.gear.custody import Hands, NewCustody, Untold
from inspector.gear.fitting import NewFitting
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.whereabouts import NewWhereabouts, Where
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page

_DEEDS = {
    Where.IN_STORE: "put in store",
    Where.MISSING: "report missing",
    Where.STOLEN: "report stolen",
    Where.SOLD: "sell",
    Where.GIVEN_BACK: "hand to owner",
}
_COME_BACK = {Where.MISSING, Where.STOLEN, Where.GIVEN_BACK}


def put_in_store(office: Office, tag: str, place: str, on: date | None = None, why: str = "") -> Judged:
    """Put a piece away at a place."""
    _need_line(place, tr("place"), tr("Write where it lies, for example shelf 2."))
    with office.book.page() as page:
        item = page.item(tag)
        _check_free(page, item)
        return _keep(office, page, item, _entry(office, page, item, Where.IN_STORE, on, place=place, why=why))


def report_missing(office: Office, tag: str, seen_at: str, why: str, on: date | None = None) -> Judged:
    """Report that a piece cannot be found. A loan ends as not returned; a fitted part comes off its vehicle."""
    _need_line(seen_at, tr("seen at"), tr("Write where it was last seen, or that nobody knows."))
    _need(why, tr("why"), tr("Write how it was noticed."))
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        check_at_hand(page, item)
        facts = _entry(office, page, item, Where.MISSING, on, place=seen_at, why=why)
        return _lose(office, page, item, facts)


def report_stolen(office: Office, tag: str, seen_at: str, paper: str, on: date | None = None, why: str = "") -> Judged:
    """Report that a piece was stolen. paper: the report's number. One that is missing may turn out stolen."""
    _need_line(seen_at, tr("seen at"), tr("Write where it was last seen, or that nobody knows."))
    _need_line(paper, tr("report number"), tr("Report it first, and write the number of the report."))
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        if page.whereabouts_of(item).where is not Where.MISSING:
            check_at_hand(page, item)
        facts = _entry(office, page, item, Where.STOLEN, on, place=seen_at, why=why)
        return _lose(office, page, item, replace(facts, paper=paper.strip()))


def sell(office: Office, tag: str, to: str, *, on: date | None = None, why: str = "", as_it_is: bool = False) -> Judged:
    """Record a sale; nothing is logged of the piece after it. as_it_is: the buyer knows that it is on hold."""
    _need_line(to, tr("to"), tr("Write who bought it."))
    with office.book.page() as page:
        item = page.item(tag)
        _check_free(page, item)
        if not is_clubs(page, item):
            said = tr("{tag} belongs to {owner}.", tag=item.tag, owner=item.facts.owner)
            raise Refused(tr("owner"), said, tr("Give it back to its owner; the club sells only its own gear."))
        _check_may_be_sold(office, page, item, as_it_is)
        return _keep(office, page, item, _entry(office, page, item, Where.SOLD, on, to=to, why=why))


def hand_to_owner(office: Office, tag: str, *, on: date | None = None, why: str = "", as_it_is: bool = False) -> Judged:
    """Give a piece back to its owner, who is not the club. as_it_is: the owner knows that it is retired or on hold."""
    with office.book.page() as page:
        item = page.item(tag)
        _check_free(page, item)
        if is_clubs(page, item):
            said = tr("{tag} is the club's own.", tag=item.tag)
            raise Refused(tr("owner"), said, tr("Lend it, sell it or put it in store; or mend its owner first."))
        _check_owner_knows(office, page, item, as_it_is)
        facts = _entry(office, page, item, Where.GIVEN_BACK, on, to=item.facts.owner, why=why)
        return _keep(office, page, item, facts)


def report_found(office: Office, tag: str, place: str, on: date | None = None, why: str = "") -> Judged:
    """A piece that was missing, stolen or given back is here again; it is held until it is inspected."""
    _need_line(place, tr("place"), tr("Write where it lies now."))
    with office.book.page() as page:
        item = page.item(tag)
        check_not_closed(page, item)
        was = page.whereabouts_of(item)
        if was.where not in _COME_BACK:
            said = tr("{tag} was neither missing nor stolen nor given back.", tag=item.tag)
            raise Refused(tr("tag"), said, tr("Look at the label again, or write where it lies with `place`."))
        facts = replace(_entry(office, page, item, Where.IN_STORE, on, place=place, why=why), found=True)
        page.add_custody(item, untold_return(page, item, facts, was.since))
        return _keep(office, page, item, facts)


def untold_return(page: Page, item: Item, facts: NewWhereabouts, gone_since: date | None) -> NewCustody:
    """Nobody knows its pulls or weather from the day it left: from the loan's day where it vanished on a loan."""
    lost = page.loan_not_returned(item)
    holder = lost.holder if lost else facts.by
    since = lost.since if lost else gone_since
    untold = (Untold.USES, Untold.EXPOSURES)
    return NewCustody(facts.on, Hands.RETURNED, holder, by=facts.by, untold=untold, since=since)


def _lose(office: Office, page: Page, item: Item, facts: NewWhereabouts) -> Judged:
    leave_behind(page, item, facts)
    return _keep(office, page, item, facts)


def leave_behind(page: Page, item: Item, facts: NewWhereabouts) -> None:
    """What is gone is on loan to nobody and sits on no vehicle any more."""
    if entry := page.out_entry(item):
        lent = entry.facts
        page.add_custody(
            item, NewCustody(facts.on, Hands.NOT_RETURNED, lent.holder, trip=lent.trip, by=facts.by, since=lent.on)
        )
    if page.fitted(item):
        page.add_fitting(item, NewFitting(facts.on, None, facts.by, facts.why))


def _keep(office: Office, page: Page, item: Item, facts: NewWhereabouts) -> Judged:
    page.add_whereabouts(item, facts)
    outcome = judge_and_keep(office, page, item)
    deed = "report found" if facts.found else _DEEDS[facts.where]
    page.enter(deed, by=office.officer.id, at=office.now, facts={"tag": item.tag, "as": facts})
    return outcome


def _entry(
    office: Office, page: Page, item: Item, where: Where, on: date | None, *, place: str = "", to: str = "", why: str
) -> NewWhereabouts:
    check_text(tr("why"), why)
    day = _day(office, page, item, on)
    return NewWhereabouts(day, where, place.strip(), to.strip(), office.officer.id, why.strip())


def _day(office: Office, page: Page, item: Item, on: date | None) -> date:
    """Not in the future, nor before what was written down last; verdicts and papers are no deeds of the day."""
    day = on or office.today
    if day > office.today:
        raise Refused(tr("day"), tr("The day lies in the future."), tr("Write it down when the day has come."))
    told = (line.on for line in page.history(item.id) if line.what not in {"verdict", "document"})
    last = max(told, default=item.booked_on)
    if day < last:
        why = tr("What stands was written down for {day}.", day=show_day(last))
        raise Refused(tr("day"), why, tr("Write that day or a later one, and tell the true day with the reason."))
    return day


def _need(text: str, field: str, what: str) -> None:
    if not text.strip():
        raise Refused(field, tr("It is empty."), what)


def _need_line(text: str, field: str, what: str) -> None:
    """What stands in lists and on papers."""
    _need(text, field, what)
    check_line(field, text.strip())


def _check_free(page: Page, item: Item) -> None:
    """Refuse what is closed, evidence, gone, out or on a vehicle."""
    check_not_closed(page, item)
    check_not_evidence(page, item)
    check_at_hand(page, item)
    if entry := page.out_entry(item):
        named = person_of(page, entry.facts.holder, tr("holder")).name
        why = tr("{tag} is on loan to {name}.", tag=item.tag, name=named)
        raise Refused(tr("tag"), why, tr("Take it back first, or report it missing."))
    if page.fitted(item):
        why = tr("{tag} is fitted to a vehicle.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Take it off first, so that nobody reckons with it there."))


def _check_owner_knows(office: Office, page: Page, item: Item, as_it_is: bool) -> None:
    """What is the owner's goes back to him; but not without a word where it is retired or on hold."""
    found = judge_and_keep(office, page, item)
    if found.verdict.outcome.severity >= Outcome.HOLD.severity and not as_it_is:
        why = tr("{tag} must not be used: {headline}", tag=item.tag, headline=found.explanation.headline)
        raise Refused(tr("as it is"), why, tr("Tell the owner, and say that he takes it back as it is."))


def _check_may_be_sold(office: Office, page: Page, item: Item, as_it_is: bool) -> None:
    """By the facts of today, not by the verdict that was kept some time ago."""
    found = judge_and_keep(office, page, item)
    if found.verdict.outcome is Outcome.RETIRE:
        why = tr("{tag} is retired, and what is retired is never sold.", tag=item.tag)
        raise Refused(tr("piece"), why, tr("Make it unusable and record that with `destroyed`."))
    if found.verdict.outcome is Outcome.HOLD and not as_it_is:
        why = tr("{tag} is on hold: {headline}", tag=item.tag, headline=found.explanation.headline)
        raise Refused(tr("as it is"), why, tr("Have it inspected, or say that the buyer takes it as it is."))
