"""Take pieces back, with what they went through while they were out, and judge them by it.

Silence is no "nothing happened": a piece of which nobody told its uses, or its weather, comes back with a doubt in the
officer's name, which holds it until a competent person has looked at all of it. What no look can tell, salt inside a
tube, is reckoned with from the day it was lent.
"""

from collections.abc import Collection, Mapping
from datetime import date, timedelta

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.judging import judge_and_keep
from inspector.duties.look_up import trip as trip_called
from inspector.duties.office import Office
from inspector.duties.record_use import check_exposure, check_use
from inspector.duties.who import check_not_closed, person_of
from inspector.gear.custody import NOBODY_TOLD, Custody, Hands, NewCustody, Untold, WentThrough
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.opinion import NewOpinion, Stance
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.hands import Out
from inspector.register.page import Page


class _Return(Struct, frozen=True):
    """A return: the day, the id of whoever brought it, a note."""

    on: date
    by: str
    note: str


def give_back(
    office: Office, tag: str, by: str, told: WentThrough = NOBODY_TOLD, on: date | None = None, note: str = ""
) -> Judged:
    """Take one piece back. by: who brought it; told: what it went through, in that person's words; on: the day."""
    with office.book.page() as page:
        brought = _Return(_day(office, on), person_of(page, by, tr("brought by")).id, note.strip())
        item = page.item(tag)
        outcome, facts = _take_back(office, page, _out(page, item), brought, told)
        page.enter("take back", by=office.officer.id, at=office.now, facts={"pieces": [facts]})
    return outcome


def give_back_kit(
    office: Office,
    trip: str,
    by: str,
    told: WentThrough = NOBODY_TOLD,
    *,
    each: Mapping[str, WentThrough] | None = None,
    stay_out: Collection[str] = (),
    on: date | None = None,
    note: str = "",
) -> tuple[Judged, ...]:
    """Take back all that is out for a trip, in one transaction. told: of every piece, but for those that each names.

    stay_out: tags of pieces that were not brought.
    """
    ref = trip_called(office, trip).ref
    with office.book.page() as page:
        brought = _Return(_day(office, on), person_of(page, by, tr("brought by")).id, note.strip())
        out = {one.item.tag: one for one in page.out() if one.lent.facts.trip == ref}
        own = {_tag_out(page, out, tag, ref): said for tag, said in (each or {}).items()}
        left = {_tag_out(page, out, tag, ref) for tag in stay_out}
        taken = [
            _take_back(office, page, one, brought, own.get(tag, told)) for tag, one in out.items() if tag not in left
        ]
        if not taken:
            why = tr("Nothing is taken back of the trip {ref}.", ref=ref)
            raise Refused(tr("trip"), why, tr("Look at `loans` for what is out."))
        facts = {"trip": ref, "pieces": [one for _, one in taken]}
        page.enter("take back kit", by=office.officer.id, at=office.now, facts=facts)
    return tuple(outcome for outcome, _ in taken)


def _day(office: Office, on: date | None) -> date:
    if on is not None and on > office.today:
        raise Refused(tr("day"), tr("The day lies in the future."), tr("Write the day on which it came back."))
    return on or office.today


def _out(page: Page, item: Item) -> Out:
    check_not_closed(page, item)
    entry = page.out_entry(item)
    if entry is None:
        why = tr("{tag} is not on loan.", tag=item.tag)
        raise Refused(tr("tag"), why, tr("Look at the label again; `loans` tells what is out."))
    return Out(item, entry)


def _tag_out(page: Page, out: Mapping[str, Out], tag: str, ref: str) -> str:
    found = page.item(tag).tag
    if found not in out:
        why = tr("{tag} is not out for the trip {ref}.", tag=found, ref=ref)
        raise Refused(tr("tag"), why, tr("Take it back by its own tag, or leave it out."))
    return found


def _take_back(
    office: Office, page: Page, out: Out, brought: _Return, told: WentThrough
) -> tuple[Judged, dict[str, object]]:
    """Keep the return of one piece and what was told, judge it; the verdict and what goes into the ledger line."""
    item, lent = out.item, out.lent.facts
    if brought.on < lent.on:
        why = tr("{tag} was lent only on {day}.", tag=item.tag, day=show_day(lent.on))
        raise Refused(tr("day"), why, tr("Write the day on which it came back."))
    kept = _checked(office, lent, brought, told)
    untold = _untold(page, out.lent, told, brought.on)
    facts = replace(
        lent, on=brought.on, what=Hands.RETURNED, by=brought.by, note=brought.note, untold=untold, since=lent.on
    )
    page.add_custody(item, facts)
    for use in kept.uses or ():
        page.add_use(item, use)
    for exposure in kept.exposures or ():
        page.add_exposure(item, exposure)
    if untold:
        page.add_opinion(item, _doubt(office, page, out.lent, brought.on, untold))
    outcome = judge_and_keep(office, page, item)
    return outcome, {"tag": item.tag, "as": facts, "told": kept}


def _checked(office: Office, lent: NewCustody, brought: _Return, told: WentThrough) -> WentThrough:
    """What was told, in the name of whoever brought the piece; refused where it cannot have been while it was out."""
    uses = None if told.uses is None else tuple(replace(one, by=brought.by) for one in told.uses)
    exposures = None if told.exposures is None else tuple(replace(one, by=brought.by) for one in told.exposures)
    for use in uses or ():
        check_use(office, use)
        _check_while_out(lent, brought, use.on, use.on)
    for one in exposures or ():
        check_exposure(office, one)
        _check_while_out(lent, brought, one.on, one.on + timedelta(days=one.days_count - 1))
    return WentThrough(uses, exposures)


def _check_while_out(lent: NewCustody, brought: _Return, first: date, last: date) -> None:
    if not (lent.on <= first and last <= brought.on):
        out = tr("It was out from {first} to {last}.", first=show_day(lent.on), last=show_day(brought.on))
        raise Refused(tr("day"), out, tr("Write days within that time; log what happened at another time by itself."))


def _untold(page: Page, lent: Custody, told: WentThrough, back_on: date) -> tuple[Untold, ...]:
    """What nobody told. A debrief of its trip has told the pulls of every piece, those of none among them."""
    silent = [Untold.USES] if told.uses is None and not _is_debriefed(page, lent, back_on) else []
    return (*silent, Untold.EXPOSURES) if told.exposures is None else tuple(silent)


def _is_debriefed(page: Page, lent: Custody, back_on: date) -> bool:
    """Whether the trip was told after the piece left, and when it was over or the piece back: nobody tells beforehand
    what is still to come."""
    last_on = next((one.last_on for one in page.trips() if one.ref == lent.facts.trip), None)
    if last_on is None:
        return False
    over = min(last_on, back_on)
    return any(one.facts.on >= over and one.id > lent.id for one in page.debriefs(lent.facts.trip))


def _doubt(office: Office, page: Page, lent: Custody, on: date, untold: tuple[Untold, ...]) -> NewOpinion:
    names = {one.id: one.name for one in page.people()}
    holder, since = names.get(lent.facts.holder, lent.facts.holder), show_day(lent.facts.on)
    words = {
        Untold.USES: tr("Nobody told what pulls it bore on loan to {name} since {day}.", name=holder, day=since),
        Untold.EXPOSURES: tr("Nobody told of salt, mud or sun on loan to {name} since {day}.", name=holder, day=since),
    }
    why = " ".join(words[one] for one in untold)
    return NewOpinion(on, office.officer.id, Stance.DOUBTS, why)
