"""Tell a trip afterwards: the rigs really used, and what each piece of them went through."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.bounds import check_after_birth
from inspector.duties.judging import judge_and_keep, judged
from inspector.duties.look_up import trip as trip_called
from inspector.duties.office import Office
from inspector.duties.record_use import check_use
from inspector.duties.rig_parts import known_parts, pulled_with
from inspector.duties.who import person_of
from inspector.gear.debrief import Debriefed, NewDebrief, RigUsed
from inspector.gear.item import Item
from inspector.gear.judged import Judged
from inspector.gear.trip import Trip
from inspector.gear.use import Event, NewUse
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.overloads import is_overloaded

Shares = Callable[[RigUsed], Mapping[str, float]]


class _Pulled(Struct, frozen=True):
    """A piece and the pulls it bore in one rig."""

    item: Item
    use: NewUse


def whole_pull(_: RigUsed) -> Mapping[str, float]:
    """Every part bears the pull in the line."""
    return {}


def debrief(office: Office, told: NewDebrief, shares: Shares = whole_pull) -> Debriefed:
    """Keep a debrief and log its pulls on every piece of every rig, in one transaction; each piece is judged by them.

    told.by: a person's id or name; the officer where nobody is named. shares: tells of a rig, by tag, which share of
    the pull in the line a part bears; 1 where it names none.
    """
    trip = trip_called(office, told.trip)
    _check_days(office, trip, told)
    with office.book.page() as page:
        by = person_of(page, told.by, tr("told by")).id if told.by else office.officer.id
        used = tuple(replace(one, rig=known_parts(page, one.rig, office.rules)) for one in told.rigs)
        kept = page.add_debrief(replace(told, trip=trip.ref, by=by, rigs=used))
        pulled = [one for rig_used in used for one in _pulls(office, page, trip, rig_used, by, shares)]
        gone = {one.item.tag for one in pulled if page.whereabouts_of(one.item).where.is_closed}
        alive = [one for one in pulled if one.item.tag not in gone]
        for one in alive:
            page.add_use(one.item, one.use)
        pieces = {one.item.tag: one.item for one in alive}
        outcomes = tuple(judge_and_keep(office, page, item) for item in pieces.values())
        page.enter("debrief", by=office.officer.id, at=office.now, facts=_facts(kept.facts, alive, gone))
    return Debriefed(kept, outcomes, tuple(sorted(gone)))


def _facts(told: NewDebrief, alive: list[_Pulled], gone: set[str]) -> dict[str, object]:
    uses = [{"tag": one.item.tag, "as": one.use} for one in alive]
    return {"trip": told.trip, "as": told, "uses": uses, "destroyed": sorted(gone)}


def _check_days(office: Office, trip: Trip, told: NewDebrief) -> None:
    _check_day(tr("day"), told.on, office.today, trip)
    for one in told.rigs:
        _check_day(tr("day of {rig}", rig=one.rig.name), one.on, told.on, trip)


def _check_day(field: str, day: date, latest: date, trip: Trip) -> None:
    if day > latest:
        raise Refused(field, tr("The day lies after {day}.", day=show_day(latest)), tr("Write the day as it was."))
    if day < trip.first_on:
        why = tr("The trip {ref} began only on {day}.", ref=trip.ref, day=show_day(trip.first_on))
        raise Refused(field, why, tr("Write the day as it was, or name the right trip."))


def _pulls(office: Office, page: Page, trip: Trip, used: RigUsed, by: str, shares: Shares) -> Iterator[_Pulled]:
    """The use of each piece in a rig, both ends, parts on the vehicles, bars behind receivers and dampers included."""
    share_of = shares(used) if used.hardest else {}
    for item in pulled_with(page, used.rig, used.on):
        why = _overload(office, page, item, used, share_of.get(item.tag, 1.0))
        note = tr("Trip {ref}, {rig}.", ref=trip.ref, rig=used.rig.name)
        event = Event.OVERLOAD if why else Event.NONE
        use = NewUse(used.on, used.pull_count, event, by, f"{note} {why}".strip())
        check_use(office, use)
        check_after_birth(tr("day"), item, use.on)
        yield _Pulled(item, use)


def _as_known(office: Office, page: Page, item: Item) -> Judged:
    """The piece by all that is known of it today, before this debrief is logged."""
    return judged(office, page.dossier(item, office.kind(item.facts.kind), office.today))


def _overload(office: Office, page: Page, item: Item, used: RigUsed, share_ratio: float) -> str:
    """Why the pulls count as an overload of this piece, all that was told of them; empty where they do not."""
    told = [tr("It jerked, stalled or ran faster than planned.")] if used.jerked else []
    if used.near_miss.strip():
        told.append(tr("Near miss: {said}", said=used.near_miss.strip()))
    if used.hardest is not None:
        piece = _as_known(office, page, item)
        found = is_overloaded(piece, used.hardest.si * share_ratio, office.rules, office.system)
        told += [found.why] if found.is_over else []
    return " ".join(told)
