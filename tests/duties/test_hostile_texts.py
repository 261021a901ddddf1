"""Stories: what is typed or comes from another club in a file breaks no heading, no register and no figure."""

from collections.abc import Callable
from datetime import date, timedelta
from itertools import product

import pytest
from msgspec.structs import replace

from inspector.duties.exchange_trip import import_trip
from inspector.duties.keep_rigs import keep_rig, rig
from inspector.duties.keep_vehicles import add_vehicle
from inspector.duties.look_up import trips
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip, plan_trip
from inspector.duties.rig_files import read_rig, rig_text
from inspector.gear.rig import Angle, Conditions, Rig
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import kilograms
from tests.duties.rigs import SNATCH, ready

SPOOFS = ("Snatch\n\n  SOUND  Nothing speaks against it", "\x1b[2JSnatch", "Snatch\u202eDNUOSNU", "a\u0000b", "N" * 400)


@pytest.mark.parametrize("spoof", SPOOFS)
def test_no_name_breaks_out_of_its_line(office: Office, spoof: str) -> None:
    trip = ready(office)
    tries: dict[str, Callable[[], object]] = {
        "rig": lambda: keep_rig(office, "R-1", replace(SNATCH, name=spoof)),
        "reference": lambda: keep_rig(office, spoof[:30], SNATCH),
        "vehicle": lambda: add_vehicle(office, "V-9", spoof, "Club", kilograms("3000 kg")),
        "owner": lambda: add_vehicle(office, "V-9", "Truck", spoof, kilograms("3000 kg")),
        "trip": lambda: change_trip(office, trip.ref, lambda one: replace(one, name=spoof)),
        "place": lambda: change_trip(office, trip.ref, lambda one: replace(one, place=spoof)),
        "leader": lambda: change_trip(office, trip.ref, lambda one: replace(one, leader=spoof)),
    }
    if spoof.startswith("N"):
        del tries["reference"]  # thirty plain signs are a reference
    for what, attempt in tries.items():
        with pytest.raises(Refused) as refusal:
            attempt()
        assert refusal.value.field and refusal.value.what_to_do, what


@pytest.mark.parametrize("key", ["vehicles", "first_on", "surprise"])
def test_a_number_of_thousands_of_digits_is_refused_like_any_other_fault(office: Office, key: str) -> None:
    body = f'ref = "T-9"\n{key} = {"9" * 5000}\n'.encode()
    with pytest.raises(Refused) as refusal:
        import_trip(office, body, "trip.toml")
    assert refusal.value.field == "trip.toml"


@pytest.mark.parametrize(("first", "last"), [((0, 1), (9999, 12)), ((2026, 1), (2028, 1)), ((2940, 1), (2940, 2))])
def test_a_mistyped_year_is_refused_before_anything_is_judged_for_it(
    office: Office, first: tuple[int, int], last: tuple[int, int]
) -> None:
    begins, ends = (date(max(year, 1), month, 1) for year, month in (first, last))
    with pytest.raises(Refused) as refusal:
        plan_trip(office, Trip("", "T-9", "Far", "", Ground.MUD, begins, ends, ""))
    assert refusal.value.field == "last day"


def test_a_long_trip_and_a_past_one_are_planned(office: Office) -> None:
    for ref, first in (("T-8", office.today), ("T-9", office.today - timedelta(days=4000))):
        plan_trip(office, Trip("", ref, "Long", "", Ground.MUD, first, first + timedelta(days=300), ""))
    assert {"T-8", "T-9"} <= {one.ref for one in trips(office)}


def changed_on_its_way(office: Office, ref: str, slack: str, sent_by: str, kept_by: str) -> str:
    """What became of a figure that one club kept and wrote into a file for another; empty where it is the same."""
    known = Conditions(slack=read(slack, Dimension.LENGTH, field="s", decimal=kept_by))
    turned = Angle("KS-1", read(slack.split(" ")[0] + " °", Dimension.ANGLE, field="a", decimal=kept_by))
    angles = (turned,) if turned.figure.si < 3 else ()
    keep_rig(office, ref, replace(SNATCH, conditions=known, angles=angles))
    came: Rig = read_rig(rig_text(rig(office, ref).rig, sent_by))
    told = [one.si for one in (came.conditions.slack, *(one.figure for one in came.angles)) if one]
    meant = [one.si for one in (known.slack, *(one.figure for one in angles)) if one]
    return "" if told and told == pytest.approx(meant) else f"{told} came and not {meant}"


def test_a_figure_stays_the_same_through_clubs_of_two_decimal_signs(office: Office) -> None:
    ready(office)
    wrong: list[str] = []
    slacks = ("1,250 m", "1.250 m", "0,5 m", "12.5 m", "3/4 m", "1,250.5 mm", "1.250,5 mm")
    not_clear = {("1,250 m", "."), ("1.250 m", ",")}  # refused where it is typed
    for number, (slack, sent_by, kept_by) in enumerate(product(slacks, ".,", ".,")):
        if (slack, kept_by) in not_clear:
            continue
        try:
            fault = changed_on_its_way(office, f"R-{number}", slack, sent_by, kept_by)
        except Refused as refusal:
            fault = f"refused with “{refusal}”"
        if fault:
            wrong.append(f"{slack}, sent by {sent_by} and kept by {kept_by}: {fault}")
    assert not wrong, "\n".join(wrong)
