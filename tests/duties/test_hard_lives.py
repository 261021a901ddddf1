"""Stories: what a piece bore on a trip is booked on it, whoever leaves it out or tells it too early."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.debrief import debrief
from inspector.duties.debrief_files import read_debrief
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.give_back import give_back, give_back_kit
from inspector.duties.lend import lend, lend_kit
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.work_rigs import shares_of
from inspector.gear.custody import WentThrough
from inspector.gear.debrief import NewDebrief, RigUsed
from inspector.gear.fitting import End, Fitted
from inspector.gear.item import NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis
from inspector.gear.rig import Method, Rig
from inspector.gear.use import Event
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import mount, shackle, size
from tests.duties.rigs import later, planned, ready

BOOKED = date(2020, 1, 1)
DRY = WentThrough(exposures=())


def tube(tag: str, kind: str, end: End) -> NewItem:
    """A receiver or a tow bar at an end of V-2."""
    sizes = mount().sizes if kind == "hitch_receiver" else (size("outside", "60 mm"), size("wall", "5 mm"))
    if kind == "tow_bar":
        count = SizeAsNew("bolt_count", read("4", Dimension.COUNT, field="n"))
        sizes = (*sizes, count, size("bolt_diameter", "14 mm"))
    rating = Rating(Basis.TOWED_MASS, read("2000 kg", Dimension.MASS, field="r"), None, "piece")
    made = NewItem(tag, kind, rating, sizes=sizes, provenance=Provenance.NEW, in_service_on=BOOKED, owner="Club")
    return replace(made, fitted_to="V-2", fitted_end=end)


def through_receiver(office: Office) -> Rig:
    """A snatch through the rear receiver of V-2, its bar unnamed as people write it."""
    ready(office)
    for one in (tube("HR-1", "hitch_receiver", End.REAR), tube("TB-1", "tow_bar", End.REAR)):
        book_in(office, one)
    book_in(office, tube("TB-2", "tow_bar", End.FRONT))
    return Rig("Through the receiver", Method.KINETIC, "V-2", "V-1", (("towing_eye@V-1", "SH-1", "KS-1", "HR-1"),))


def told(office: Office, rig: Rig, **more: object) -> NewDebrief:
    """The rig was used today."""
    return NewDebrief("T-1", office.today, (RigUsed(rig, 2, office.today, **more),))  # type: ignore[arg-type]


def test_the_bar_behind_a_receiver_bore_the_pull_though_nobody_named_it(office: Office) -> None:
    kept = debrief(office, told(office, through_receiver(office), jerked=True))
    assert {one.dossier.item.tag for one in kept.pieces} == {"SH-1", "KS-1", "HR-1", "TB-1"}
    assert open_item(office, "TB-1").dossier.uses[0].facts.event is Event.OVERLOAD
    assert open_item(office, "TB-2").dossier.uses == ()


def test_it_is_the_bar_of_that_day_and_not_the_one_that_came_after(office: Office) -> None:
    rig = through_receiver(office)
    afterwards = later(office, 1)
    take_off_part(afterwards, "TB-1")
    fit_part(afterwards, "TB-2", Fitted("V-2", End.REAR))
    used = RigUsed(rig, 2, office.today, jerked=True)
    debrief(afterwards, NewDebrief("T-1", afterwards.today, (used,)))
    assert open_item(afterwards, "TB-1").dossier.uses and not open_item(afterwards, "TB-2").dossier.uses


def test_a_block_is_taken_to_bear_two_lines_where_its_share_cannot_be_reckoned(office: Office) -> None:
    """The rig is no longer as the register knows it: the winch has left the vehicle since."""
    ready(office)
    block = replace(shackle("SB-1"), kind="snatch_block", sizes=(size("sheave_diameter", "90 mm"),))
    book_in(office, replace(block, sizes=(*block.sizes, size("pin_diameter", "20 mm"))))
    rig = Rig("Doubled", Method.WINCH, "V-2", "V-1", (("KS-1", "SB-1", "SH-1", "towing_eye@V-2"), ("KS-1", "SH-2")))
    pull = read("3 t", Dimension.FORCE, field="h")  # 4.75 t is not passed by 3 t, and is by twice that
    debrief(office, told(office, rig, hardest=pull), shares_of(office))
    assert open_item(office, "SB-1").dossier.uses[0].facts.event is Event.OVERLOAD


def test_a_debrief_before_the_trip_is_over_tells_nothing_of_the_days_to_come(office: Office) -> None:
    """The trip has three days; what was told on the first does not speak for the last."""
    ready(office)
    lend_kit(office, "T-1", "Di Member")
    debrief(office, NewDebrief("T-1", office.today, ()))
    back = give_back_kit(later(office, 2), "T-1", "Di Member", DRY)
    assert {one.verdict.outcome.value for one in back} == {"hold"}


def test_a_debrief_at_the_end_tells_the_whole_trip(office: Office) -> None:
    ready(office)
    lend_kit(office, "T-1", "Di Member")
    end = later(office, 2)
    debrief(end, NewDebrief("T-1", end.today, ()))
    back = give_back_kit(later(office, 4), "T-1", "Di Member", DRY)
    assert {one.verdict.outcome.value for one in back} == {"fit"}


def test_a_debrief_from_before_a_piece_left_does_not_speak_for_it(office: Office) -> None:
    ready(office)
    end = later(office, 2)
    debrief(end, NewDebrief("T-1", end.today, ()))
    lend(end, ["SH-1"], "Di Member", end.today, "T-1")
    assert give_back(end, "SH-1", "Di Member", DRY).verdict.outcome.value == "hold"


def test_a_debrief_file_that_names_no_rig_does_not_say_that_nothing_was_pulled(office: Office) -> None:
    planned(office, kit=())
    head = f'trip = "T-1"\non = {office.today}\n'
    with pytest.raises(Refused) as refusal:
        read_debrief(office, head)
    assert refusal.value.field == "used"
    assert read_debrief(office, f"{head}used = []\n").rigs == ()


def test_the_days_of_a_debrief_leave_room_for_a_trip_told_late(office: Office) -> None:
    ready(office)
    lend_kit(office, "T-1", "Di Member")
    late = later(office, 9)
    debrief(late, NewDebrief("T-1", late.today, (RigUsed(through(), 1, office.today + timedelta(days=1)),)))
    back = give_back_kit(late, "T-1", "Di Member", DRY)
    assert all(len(one.dossier.uses) == 1 for one in back)


def through() -> Rig:
    """All of the kit in one line."""
    return Rig("Line", Method.KINETIC, "V-2", "V-1", (("towing_eye@V-1", "SH-1", "KS-1", "SH-2", "towing_eye@V-2"),))
