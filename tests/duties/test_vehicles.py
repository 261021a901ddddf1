"""Stories: vehicles come into the register and change in their lives."""

from collections.abc import Callable
from datetime import timedelta
from functools import partial

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle, overload_words
from inspector.duties.look_up import vehicles
from inspector.duties.office import Office
from inspector.duties.vehicle_record import vehicle_record
from inspector.duties.verify_book import verify_book
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.trip import Vehicle
from inspector.refused import Refused
from tests.duties.gear import kilograms, metres, point, shackle
from tests.duties.refusals import wrongly_refused


def wagon(office: Office, tag: str = "V-1", mass: str = "2190 kg") -> Vehicle:
    """A wagon of 2,700 kg GVM."""
    return add_vehicle(office, tag, "medium wagon", "Ada Officer", kilograms("2,700 kg"), kilograms(mass))


def weighs(mass: str) -> Callable[[Vehicle], Vehicle]:
    """The edit that gives a vehicle another mass."""
    return lambda one: replace(one, mass=kilograms(mass))


def test_a_vehicle_weighed_anew_stands_with_its_new_mass_and_keeps_its_old_one_in_the_history(office: Office) -> None:
    wagon(office)
    change_vehicle(office, "v-1", weighs("2,310 kg"), "weighed with the canopy")
    assert [one.mass.as_typed for one in vehicles(office) if one.mass] == ["2,310 kg"]
    newest, oldest = vehicle_record(office, "V-1").history
    assert (newest.on, newest.by) == (office.today, "Ada Officer")
    assert newest.text == "mass 2,310 kg, before 2190 kg. weighed with the canopy"
    assert oldest.what == "Entered" and "GVM 2,700 kg" in oldest.text and oldest.by == "Ada Officer"
    assert verify_book(office).faults == ()


def test_a_later_change_builds_on_the_one_before_it(office: Office) -> None:
    wagon(office)
    change_vehicle(office, "V-1", lambda one: replace(one, gvm=kilograms("2,900 kg")), "springs and plate")
    change_vehicle(office, "V-1", lambda one: replace(one, owner="Bo"), "sold")
    (stands,) = vehicles(office)
    assert (stands.gvm.as_typed, stands.owner) == ("2,900 kg", "Bo")
    assert [row.what for row in vehicle_record(office, "V-1").history] == ["Changed", "Changed", "Entered"]


def test_of_changes_on_different_days_the_later_one_stands(office: Office) -> None:
    wagon(office)
    for days, mass in ((20, "2,300 kg"), (10, "2,400 kg")):
        change_vehicle(office, "V-1", weighs(mass), "weighed", on=office.today - timedelta(days=days))
    assert vehicles(office)[0].mass == kilograms("2,400 kg")
    days_told = [row.on for row in vehicle_record(office, "V-1").history if row.what == "Changed"]
    assert days_told == [office.today - timedelta(days=days) for days in (10, 20)]


def test_an_overloaded_vehicle_is_kept_and_said_to_be_overloaded(office: Office) -> None:
    kept = wagon(office, mass="2,700 kg")
    assert overload_words(kept) == "", "as heavy as its GVM is not over it"
    heavier = change_vehicle(office, "V-1", weighs("2,760 kg"), "weighed loaded")
    assert "overloaded: it weighs 2,760 kg, its GVM is 2,700 kg" in overload_words(heavier)
    assert vehicle_record(office, "V-1").warning == overload_words(heavier)
    assert overload_words(replace(heavier, mass=None)) == ""


_UNSOUND: tuple[tuple[Callable[[Vehicle], Vehicle], str, str], ...] = (
    (weighs("2.19 kg"), "mass", "between 300 kg and 60 t"),
    (weighs("61 t"), "mass", "between 300 kg and 60 t"),
    (weighs("5,401 kg"), "mass", "more than twice the GVM"),
    (lambda one: replace(one, gvm=kilograms("27 kg")), "GVM", "between 300 kg"),
    (lambda one: replace(one, gvm=metres("2700 m")), "GVM", "cannot be a vehicle's mass"),
    (lambda one: replace(one, front_spacing=metres("8.5 m")), "front spacing", "cannot lie between"),
    (lambda one: replace(one, rear_spacing=metres("85 mm")), "rear spacing", "cannot lie between"),
    (lambda one: replace(one, name=""), "name", "empty"),
    (lambda one: replace(one, tag="V-2"), "tag", "keeps its tag"),
    (lambda one: one, "vehicle", "Nothing would change"),
)


def test_facts_that_cannot_be_are_refused_and_nothing_changes(office: Office) -> None:
    before = wagon(office)
    wrong: list[str] = []
    for edit, field, why in _UNSOUND:
        if fault := wrongly_refused(partial(change_vehicle, office, "V-1", edit, "slip of the hand"), field, why):
            wrong.append(f"“{why}”: {fault}")
    assert not wrong, "\n".join(wrong)
    assert vehicles(office) == (before,)


def test_twice_its_gvm_is_the_most_that_is_believed(office: Office) -> None:
    assert wagon(office, mass="5,400 kg").mass is not None


def test_a_change_without_a_reason_or_of_an_unknown_vehicle_is_refused(office: Office) -> None:
    wagon(office)
    with pytest.raises(Refused, match="reason"):
        change_vehicle(office, "V-1", weighs("2,300 kg"), " ")
    with pytest.raises(Refused, match=r"No vehicle has the tag “V-9”. Use one of: V-1"):
        change_vehicle(office, "V-9", weighs("2,300 kg"), "weighed")
    with pytest.raises(Refused, match="Nobody called"):
        change_vehicle(office, "V-1", weighs("2,300 kg"), "weighed", by="Nobody Here")


def test_the_days_of_a_vehicle_do_not_run_backwards(office: Office) -> None:
    wagon(office)
    yesterday = office.today - timedelta(days=1)
    change_vehicle(office, "V-1", weighs("2,300 kg"), "weighed", on=yesterday)
    with pytest.raises(Refused, match="stands already"):
        change_vehicle(office, "V-1", weighs("2,200 kg"), "found a slip", on=yesterday - timedelta(days=1))
    with pytest.raises(Refused, match="future"):
        change_vehicle(office, "V-1", weighs("2,200 kg"), "will be", on=office.today + timedelta(days=1))
    assert change_vehicle(office, "V-1", weighs("2,200 kg"), "tanks empty", on=yesterday).mass == kilograms("2,200 kg")
    assert vehicles(office)[0].mass == kilograms("2,200 kg")


@pytest.mark.parametrize("tag", ["", " V-1", "V@1", "ground", "Ground", "x" * 25])
def test_a_tag_that_a_rig_could_not_name_is_refused(office: Office, tag: str) -> None:
    with pytest.raises(Refused, match="tag"):
        wagon(office, tag)
    assert vehicles(office) == ()


def test_no_two_things_have_one_tag(office: Office) -> None:
    wagon(office)
    book_in(office, shackle("SH-1"))
    for tag, why in (("v-1", "Another vehicle"), ("sh-1", "piece of gear")):
        with pytest.raises(Refused, match=why):
            wagon(office, tag)
    with pytest.raises(Refused, match="A vehicle has the tag"):
        book_in(office, shackle("v-1"))


def test_a_vehicle_tells_its_parts_by_place_and_when_they_came_and_went(office: Office) -> None:
    wagon(office)
    early = office.at(office.now - timedelta(days=40))
    book_in(early, replace(point("RP-1"), fitted_to="V-1", fitted_end=End.REAR, fitted_side=Side.LEFT))
    for tag, end, side in (("RP-2", End.FRONT, Side.RIGHT), ("RP-3", End.FRONT, Side.LEFT), ("RP-4", "", "")):
        book_in(early, point(tag))
        fit_part(office.at(office.now - timedelta(days=30)), tag, Fitted("v-1", End(end), Side(side)))
    take_off_part(office, "RP-1", note="sold with the old bar")
    record = vehicle_record(office, "V-1")
    places = [(one.row.tag, one.place) for one in record.parts]
    assert places == [("RP-3", "front left"), ("RP-2", "front right"), ("RP-4", "")]
    assert all("Hold" in one.row.headline for one in record.parts), "nobody has inspected them"
    told = [(row.what, row.text) for row in record.history if row.what.startswith("Part")]
    assert told[0] == ("Part taken off", "RP-1, rear left. sold with the old bar")
    assert told[-1] == ("Part booked", "RP-1, rear left")
    assert ("Part fitted", "RP-3, front left") in told and len(told) == 5


def test_the_sample_s_car_that_was_weighed_again_stands_with_its_later_mass(sample: Office) -> None:
    record = vehicle_record(sample, "V-08")
    assert record.vehicle.mass is not None and record.vehicle.mass.as_typed == "2,640 kg"
    assert "before 2,510 kg" in record.history[0].text and record.history[0].by == "Rua Pallowin"


def test_a_vehicles_parts_tell_what_may_be_joined_to_them_and_what_a_winch_pulls(sample: Office) -> None:
    told = {part.row.tag: " ".join(part.tells) for part in vehicle_record(sample, "V-04").parts}
    assert "Held by 4 bolts, 16 mm." in told["RP-03"]
    assert "Takes a shackle; with care a soft shackle" in told["RP-03"]
    assert "Takes a hitch pin with its insert; never a shackle" in told["HR-01"]
    assert "42.3 kN, 35.9 kN, 30.5 kN, 26 kN" in told["WI-01"], "15 % less on each layer, from 9,500 lb"
    assert "Stalls at" in told["WI-01"]
