"""Write a trip with its vehicles, people and kit into the register, and change what was planned."""

from collections.abc import Callable, Iterable, Mapping
from datetime import date

from msgspec.structs import replace

from inspector.duties.look_up import trip as trip_by
from inspector.duties.office import Office
from inspector.duties.plain_lines import check_line
from inspector.duties.who import person_of
from inspector.gear.changes import NewTripChange
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Ride, Trip
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.register.lists import Asked
from inspector.register.page import Page
from inspector.register.rows import new_id

NEXT = "next"  # what a command calls the next trip by
_LONGEST_REF = 24
_LONGEST_DAYS = 366
_FARTHEST_YEARS = 200  # far beyond any plan, and far from where the calendar ends


def plan_trip(office: Office, trip: Trip) -> Trip:
    """Keep the trip under a new id; its reference must be free, its kit, vehicles and people in the register.

    People may be named by name or id; ids are kept. A retired piece may stand in the kit; `retired_in_kit` tells.
    """
    with office.book.page() as page:
        trip = replace(trip, ref=page.own_ref(trip.ref))
        _check_words(trip, office.today)
        if any(one.ref.casefold() == trip.ref.casefold() for one in page.trips()):
            why = tr("Another trip has the reference “{ref}”.", ref=trip.ref)
            raise Refused(tr("reference"), why, tr("Choose a free reference."))
        kept = replace(_resolved(page, trip), id=new_id())
        page.add_trip(kept)
        page.enter("plan trip", by=office.officer.id, at=office.now, facts=kept)
    return kept


def change_trip(office: Office, ref: str, edit: Callable[[Trip], Trip], why: str = "") -> Trip:
    """Keep a new plan of a trip; the plans before it stay in its history. edit: makes the new plan from what stands."""
    key = trip_by(office, ref).id
    with office.book.page() as page:
        stands = next(one for one in page.trips() if one.id == key)  # as it stands now that nobody else can write
        changed = edit(stands)
        if (changed.id, changed.ref) != (stands.id, stands.ref):
            why_not = tr("A trip keeps its reference for good.")
            raise Refused(tr("reference"), why_not, tr("Plan another trip instead."))
        facts = keep_change(office, page, stands, changed, why)
        page.enter("change trip", by=office.officer.id, at=office.now, facts={"ref": stands.ref, "as": facts})
    return facts.trip


def keep_change(office: Office, page: Page, stands: Trip, changed: Trip, why: str) -> NewTripChange:
    """Check a new plan and add it to the trip's history; whoever asks for it enters the deed."""
    _check_words(changed, office.today)
    kept = _resolved(page, changed)
    if kept == stands:
        raise Refused(tr("trip"), tr("Nothing would change."), tr("Write what is different now."))
    facts = NewTripChange(office.today, kept, office.officer.id, why.strip())
    page.add_trip_change(facts)
    return facts


def trip_fields() -> dict[str, str]:
    """What may change of a plan beside its lists, and how a refusal calls it."""
    return {
        "name": tr("name"), "place": tr("place"), "ground": tr("What it drives on"), "first_on": tr("first day"),
        "last_on": tr("last day"), "leader": tr("leader"), "note": tr("note"),
    }  # fmt: skip


def retired_in_kit(office: Office, trip: Trip) -> tuple[str, ...]:
    """The tags of the kit whose pieces are retired and must stay at home."""
    asked = Asked(outcome=Outcome.RETIRE.value, tags=trip.kit, limit=len(trip.kit))
    with office.book.reading() as page:
        return tuple(line.tag for line in page.gear(asked))


def _check_words(trip: Trip, today: date) -> None:
    plain = trip.ref and trip.ref == trip.ref.strip() and len(trip.ref) <= _LONGEST_REF and trip.ref.isprintable()
    if not plain or trip.ref.casefold() == NEXT:
        why = tr("A reference has 1 to {most} signs and no space at its ends.", most=_LONGEST_REF)
        raise Refused(tr("reference"), why, tr("Write for example T-07; “next” always means the next trip."))
    if not trip.name.strip():
        raise Refused(tr("name"), tr("The name is empty."), tr("Write what the trip is called."))
    for field, text in ((tr("name"), trip.name), (tr("place"), trip.place), (tr("leader"), trip.leader)):
        check_line(field, text)
    _check_days(trip, today)


def _check_days(trip: Trip, today: date) -> None:
    """Days that were mistyped would be judged for: nobody plans so far ahead, and no trip takes a year."""
    if trip.last_on < trip.first_on:
        raise Refused(tr("last day"), tr("The trip would end before it begins."), tr("Correct one of the two days."))
    if (trip.last_on - trip.first_on).days > _LONGEST_DAYS:
        why = tr("The trip would take more than a year.")
        raise Refused(tr("last day"), why, tr("Correct one of the two days, or plan its parts as trips of their own."))
    if trip.last_on.year > today.year + _FARTHEST_YEARS:
        why = tr("{day} is more than {years} years ahead.", day=show_day(trip.last_on), years=_FARTHEST_YEARS)
        raise Refused(tr("last day"), why, tr("Correct the year."))


def _resolved(page: Page, trip: Trip) -> Trip:
    """The trip with tags as they stand in the register and people by id; refused where one is not there or twice."""
    found = page.items(trip.kit)
    for tag in trip.kit:
        if tag not in found:
            why = tr("No piece has the tag “{tag}”.", tag=tag)
            raise Refused(tr("kit"), why, tr("Look at the label again, or search the list for the piece."))
    kit = tuple(found[tag].tag for tag in trip.kit)
    vehicles = tuple(_vehicle(page, tag) for tag in trip.vehicles)
    people = tuple(person_of(page, one, tr("people")).id for one in trip.people)
    _check_once(tr("kit"), kit, trip.kit)
    _check_once(tr("vehicles"), vehicles, trip.vehicles)
    _check_once(tr("people"), people, trip.people)
    renamed = dict(zip((*trip.kit, *trip.vehicles), (*kit, *vehicles), strict=True))
    return replace(trip, kit=kit, vehicles=vehicles, people=people, rides=_rides(trip, kit, renamed))


def _rides(trip: Trip, kit: tuple[str, ...], renamed: Mapping[str, str]) -> tuple[Ride, ...]:
    """Where pieces ride, in the order of the kit. What left the kit, or rode on a vehicle that left, has no entry.

    renamed: the tags of the kit and the vehicles as they were typed, each as it stands in the register.
    """
    planned = {renamed.get(one.tag, ""): renamed.get(one.vehicle, "") for one in trip.rides}
    return tuple(Ride(tag, planned[tag]) for tag in kit if planned.get(tag))


def _vehicle(page: Page, tag: str) -> str:
    known = {one.tag.casefold(): one.tag for one in page.vehicles()}
    if found := known.get(tag.strip().casefold()):
        return found
    why = tr("No vehicle has the tag “{tag}”.", tag=tag)
    raise Refused(tr("vehicles"), why, tr("Write the vehicle into the register first."))


def _check_once(field: str, found: Iterable[str], typed: Iterable[str]) -> None:
    seen: set[str] = set()
    for one, text in zip(found, typed, strict=True):
        if one in seen:
            raise Refused(field, tr("“{one}” stands in it twice.", one=text), tr("Leave one of the two out."))
        seen.add(one)
