"""What a piece cannot have gone through is refused, and what lies at the bound is taken."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in, check_days
from inspector.duties.office import Office
from inspector.duties.record_use import record_exposure, record_use
from inspector.gear.item import Provenance
from inspector.gear.use import NewExposure, NewUse, Weather
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import strap
from tests.each import each


def heat(office: Office, typed: str) -> NewExposure:
    return NewExposure(office.today, Weather.HEAT, hottest=read(typed, Dimension.TEMPERATURE, field="hottest"))


def born(office: Office, days: int, provenance: Provenance = Provenance.NEW) -> date:
    """A strap of so many days in the register, and the day it was made."""
    made = office.today - timedelta(days=days)
    book_in(office, replace(strap(), made_on=made, in_service_on=None, provenance=provenance))
    return made


@each("typed", ["-400 °C", "-500 °C", "-80.1 °C", "1500.1 °C", "3000 °F", "20000 °C"])
def test_a_heat_that_no_piece_went_through_is_refused(office: Office, typed: str) -> None:
    with pytest.raises(Refused) as refusal:
        record_exposure(office, "KS-1", heat(office, typed))
    assert refusal.value.field == "hottest"


def test_a_heat_at_the_bounds_is_taken(office: Office) -> None:
    born(office, 30)
    for typed in ("-80 °C", "-40 °F", "1500 °C"):
        record_exposure(office, "KS-1", heat(office, typed))


@pytest.mark.parametrize("provenance", [Provenance.NEW, Provenance.SECOND_HAND])
def test_nothing_happens_to_a_piece_before_it_was_made(office: Office, provenance: Provenance) -> None:
    made = born(office, 100, provenance)
    for on in (made - timedelta(days=1), date(2015, 1, 1)):
        with pytest.raises(Refused, match="was not there before"):
            record_exposure(office, "KS-1", NewExposure(on, Weather.CHEMICAL))
        with pytest.raises(Refused, match="was not there before"):
            record_use(office, "KS-1", NewUse(on, 2))
    record_use(office, "KS-1", NewUse(made, 2))
    record_exposure(office, "KS-1", NewExposure(made, Weather.SALT))


def test_no_piece_lies_in_the_sun_for_longer_than_it_is_old(office: Office) -> None:
    born(office, 330)
    with pytest.raises(Refused) as refusal:
        record_exposure(office, "KS-1", NewExposure(office.today, Weather.SUN, 3660))
    assert refusal.value.field == "days"
    with pytest.raises(Refused):
        record_exposure(office, "KS-1", NewExposure(office.today, Weather.SUN, 332))
    record_exposure(office, "KS-1", NewExposure(office.today, Weather.SUN, 331))


def test_where_nobody_knows_its_age_a_long_exposure_is_believed(office: Office) -> None:
    book_in(office, replace(strap(), provenance=Provenance.UNKNOWN))
    record_exposure(office, "KS-1", NewExposure(office.today, Weather.SUN, 3660))


@each(
    ("made", "used", "field"),
    [
        (date(1850, 1, 1), None, "made on"),
        (date(1949, 12, 31), None, "made on"),
        (None, date(1890, 5, 1), "in service since"),
        (date(2020, 2, 2), date(2020, 2, 1), "in service since"),
    ],
)
def test_a_piece_is_not_from_another_age(office: Office, made: date | None, used: date | None, field: str) -> None:
    with pytest.raises(Refused) as refusal:
        check_days(replace(strap(), made_on=made, in_service_on=used), office.today)
    assert refusal.value.field == field
    check_days(replace(strap(), made_on=date(1950, 1, 1), in_service_on=date(1950, 1, 1)), office.today)
