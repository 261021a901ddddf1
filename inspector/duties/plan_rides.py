"""Plan on which of its vehicles each piece of a trip's kit rides, and say it in words."""

from collections.abc import Mapping

from msgspec.structs import replace

from inspector.duties.look_up import trip as trip_by
from inspector.duties.office import Office
from inspector.duties.overtaken import Overtaken
from inspector.duties.plan_trip import keep_change
from inspector.gear.item import Item
from inspector.gear.trip import Ride, Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page

NOWHERE = ""  # rides on no vehicle by plan


def plan_rides(office: Office, ref: str, rides: Mapping[str, str], why: str = "", seen: Trip | None = None) -> Trip:
    """Keep where pieces of a trip's kit ride; those not named stay as they were planned.

    rides: by tag the vehicle's tag, NOWHERE for no vehicle. A part that sits on a vehicle of the trip goes with it.
    seen: the trip as whoever plans has seen it; refused where the same piece was planned elsewhere since.
    """
    key = trip_by(office, ref).id
    with office.book.page() as page:
        stands = next(one for one in page.trips() if one.id == key)
        told = {_piece(page, stands, tag): _vehicle(stands, vehicle) for tag, vehicle in rides.items()}
        if seen:
            _check_unchanged(seen, stands, told)
        planned = {one.tag: one.vehicle for one in stands.rides} | told
        listed = tuple(Ride(tag, vehicle) for tag, vehicle in planned.items() if vehicle)
        facts = keep_change(office, page, stands, replace(stands, rides=listed), why)
        said = [Ride(tag, vehicle) for tag, vehicle in told.items() if vehicle != stands.rides_on(tag)]
        entry = {"ref": stands.ref, "rides": said, "as": facts}
        page.enter("plan rides", by=office.officer.id, at=office.now, facts=entry)
    return facts.trip


def _check_unchanged(seen: Trip, stands: Trip, told: Mapping[str, str]) -> None:
    """Refuse to let a piece ride elsewhere that somebody else has put on another vehicle since."""
    parts, planned = [], {one.tag: one.vehicle for one in seen.rides}
    for tag, vehicle in told.items():
        there = stands.rides_on(tag)
        if there in {seen.rides_on(tag), vehicle}:
            continue
        said = {"tag": tag, "there": there or tr("no vehicle"), "own": vehicle or tr("no vehicle")}
        why = tr("Meanwhile somebody planned {tag} for {there}; you planned it for {own}.", **said)
        parts.append(Refused(f"on_{vehicle}", why, tr("Do it again to let yours stand.")))
        planned[tag] = there
    if parts:
        rides = tuple(Ride(tag, vehicle) for tag, vehicle in planned.items() if vehicle)
        raise Overtaken(replace(seen, rides=rides), tuple(parts))


def ride_words(planned: Trip, tag: str, sits: str, lies: str) -> str:
    """Where a piece of the kit rides; where nobody planned it, where it lies now.

    sits: the vehicle of the trip that it is fitted to; lies: where it is, in words; each empty for none or unknown.
    """
    if sits:
        return tr("Sits on {vehicle}", vehicle=sits)
    if vehicle := planned.rides_on(tag):
        return tr("Rides on {vehicle}", vehicle=vehicle)
    if lies:
        return tr("Not planned where it rides; now {where}", where=lies)
    return tr("Not planned where it rides")


def _piece(page: Page, planned: Trip, tag: str) -> str:
    """The tag as it stands in the kit; refused where it does not, or where the piece sits on one of the vehicles."""
    item = page.item(tag)
    if item.tag not in planned.kit:
        why = tr("{tag} is not in the kit of the trip {ref}.", tag=item.tag, ref=planned.ref)
        raise Refused(tr("kit"), why, tr("Take it into the kit first, or look at the label again."))
    _check_loose(page, planned, item)
    return item.tag


def _check_loose(page: Page, planned: Trip, item: Item) -> None:
    fitted = page.fitted(item)
    if fitted and fitted.vehicle in planned.vehicles:
        why = tr("{tag} sits on {vehicle} and goes where that goes.", tag=item.tag, vehicle=fitted.vehicle)
        raise Refused(tr("kit"), why, tr("Take it off the vehicle first, if it is to ride on another one."))


def _vehicle(planned: Trip, tag: str) -> str:
    if not tag.strip():
        return NOWHERE
    if found := next((one for one in planned.vehicles if one.casefold() == tag.strip().casefold()), ""):
        return found
    why = tr("{tag} does not go on the trip {ref}.", tag=tag, ref=planned.ref)
    listed = ", ".join(planned.vehicles) or tr("none yet")
    raise Refused(tr("vehicle"), why, tr("Use one of: {tags}.", tags=listed))
