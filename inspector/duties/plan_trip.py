"""Write a trip with its vehicles and kit into the register."""

from dataclasses import replace

from inspector.duties.office import Office
from inspector.gear.trip import Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.rows import new_id


def plan_trip(office: Office, trip: Trip) -> Trip:
    """Keep the trip. Its kit and vehicles must be in the register; its reference must be new."""
    if trip.last_on < trip.first_on:
        raise Refused(tr("last day"), tr("The trip would end before it begins."), tr("Correct one of the two days."))
    kept = replace(trip, id=new_id())
    with office.book.page() as page:
        if any(one.ref == trip.ref for one in page.trips()):
            why = tr("Another trip has the reference “{ref}”.", ref=trip.ref)
            raise Refused(tr("reference"), why, tr("Choose a free reference."))
        known = {vehicle.tag for vehicle in page.vehicles()}
        for tag in trip.vehicles:
            if tag not in known:
                why = tr("No vehicle has the tag “{tag}”.", tag=tag)
                raise Refused(tr("vehicles"), why, tr("Write the vehicle into the register first."))
        for tag in trip.kit:
            page.item(tag)
        page.add_trip(kept)
        page.enter("plan trip", by=office.officer.id, at=office.now, facts=kept)
    return kept
