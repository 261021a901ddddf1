"""What is stored comes back the same, to the last bit."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from inspector.gear.changes import NewTripChange, NewVehicleChange
from inspector.gear.custody import NewCustody
from inspector.gear.debrief import NewDebrief
from inspector.gear.fitting import NewFitting
from inspector.gear.inspection import NewInspection
from inspector.gear.item import NewItem
from inspector.gear.person import Person
from inspector.gear.rig import Rig
from inspector.gear.trip import Trip, Vehicle
from inspector.gear.use import NewExposure, NewUse, Weather
from inspector.gear.verdict import Verdict
from inspector.register.rows import from_body, new_id, to_body

st.register_type_strategy(float, st.floats(allow_nan=False, allow_infinity=False))
st.register_type_strategy(date, st.dates(min_value=date(2000, 1, 1), max_value=date(2100, 1, 1)))
KEPT = (
    *(NewItem, NewInspection, NewUse, NewExposure, NewFitting, NewCustody, Person, Verdict),
    *(Vehicle, NewVehicleChange, Trip, NewTripChange, Rig, NewDebrief),
)
SHAPES = st.one_of(*(st.from_type(shape) for shape in KEPT))


@given(SHAPES)
def test_every_body_comes_back_the_same(value: object) -> None:
    assert from_body(to_body(value), type(value)) == value


def test_bodies_of_a_time_without_places_people_and_spacings_still_read() -> None:
    gvm = '{"si":2700.0,"as_typed":"2,700 kg","dimension":"mass"}'
    old = '{"id":"v","tag":"V-1","name":"wagon","owner":"","gvm":' + gvm + "}"
    assert from_body(old, Vehicle).front_spacing is None
    days = '"first_on":"2026-01-01","last_on":"2026-01-02"'
    trip = from_body('{"id":"t","ref":"T","name":"n","place":"","ground":"mud",' + days + ',"leader":""}', Trip)
    assert (trip.people, trip.note) == ((), "")
    rating = '{"basis":"unrated","figure":null,"design_factor":null,"stated_on":"none"}'
    item = from_body('{"tag":"A","kind":"damper","rating":' + rating + ',"fitted_to":"V-1"}', NewItem)
    assert item.fitted is not None and (item.fitted.vehicle, item.fitted.end, item.fitted.side) == ("V-1", "", "")


def test_ids_are_unique_and_in_order_of_time() -> None:
    made = [new_id() for _ in range(2000)]
    assert len(set(made)) == len(made)
    assert [one[:13] for one in made] == sorted(one[:13] for one in made)
    assert {one[14] for one in made} == {"7"}


def test_an_exposure_kept_before_drying_was_asked_reads_as_nobody_knows() -> None:
    old = '{"by":"p","days_count":2,"hottest":null,"note":"","on":"2026-11-01","rinsed":true,"weather":"salt"}'
    assert from_body(old, NewExposure) == NewExposure(date(2026, 11, 1), Weather.SALT, 2, rinsed=True, by="p")
