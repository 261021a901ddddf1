"""Deeds of what rides where, and the sheets of a vehicle."""

from hypothesis import strategies as st
from hypothesis.stateful import rule

from inspector.duties.look_up import trip
from inspector.duties.plan_rides import NOWHERE, plan_rides
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.gear.papers import SheetScope
from tests.duties.machine.club import VEHICLES
from tests.duties.machine.desk import Desk
from tests.duties.machine.hands_and_trips import REFS
from tests.duties.machine.pieces import ANY

_ON = st.sampled_from((*VEHICLES, NOWHERE, "V-9"))
_SCOPES = st.sampled_from((*(SheetScope(tag) for tag in VEHICLES), SheetScope(is_rest=True)))


class Rides(Desk):
    """Where pieces ride, and the sheet of each vehicle."""

    @rule(ref=REFS, tag=ANY, vehicle=_ON)
    def plan_rides(self, ref: str, tag: str, vehicle: str) -> None:
        """A piece of the kit is given a place, or none."""
        if self.do("plan rides", lambda office: plan_rides(office, ref, {tag: vehicle})):
            planned = trip(self.office, ref)
            assert {one.tag for one in planned.rides} <= set(planned.kit)
            assert {one.vehicle for one in planned.rides} <= set(planned.vehicles)

    @rule(ref=REFS, scope=_SCOPES)
    def print_sheet_of_a_vehicle(self, ref: str, scope: SheetScope) -> None:
        """What stays is never asked about, and nothing stands on a sheet twice."""
        sheet = self.do("print sheet", lambda office: enter_trip_sheet(office, ref, scope))
        if sheet:
            tags = [one.tag for one in sheet.going] + [one.tag for one in sheet.staying]
            assert len(tags) == len(set(tags))
