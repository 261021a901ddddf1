"""What a fit piece bears now where its marking does not tell: on slip, sheet, label and in the check before use."""

from datetime import timedelta

import pytest

from inspector.duties.check_kit import kit_check
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.print_labels import enter_labels
from inspector.duties.print_lending_slip import enter_lending_slip
from inspector.duties.print_sheets import enter_trip_sheet
from inspector.gear.item import NewItem, Provenance, Rating
from inspector.gear.kind import Basis
from inspector.gear.trip import Ground, Trip
from tests.duties.gear import SHACKLE_READINGS, shackle, size
from tests.duties.rigs import fit, member

DI = "Di Member"
WORN = {**SHACKLE_READINGS, "bow_diameter": "18 mm"}
FULL, LESS, BARE = "SH-1", "SH-2", "HP-1"


def pin(tag: str) -> NewItem:
    """A hitch pin that nobody marked."""
    rating, sizes = Rating(Basis.UNRATED, None, None, "none"), (size("pin_diameter", "16 mm"),)
    return NewItem(tag, "hitch_pin", rating, sizes=sizes, owner="Club", provenance=Provenance.NEW)


@pytest.fixture
def club(office: Office) -> Office:
    """Fit and in one kit: a shackle as new, one of which 18 of 19 mm are left, a hitch pin that nobody marked."""
    fit(office, shackle(FULL), SHACKLE_READINGS)
    fit(office, shackle(LESS), WORN)
    fit(office, pin(BARE), {"pin_diameter": "16 mm"})
    member(office)
    day = office.today
    plan_trip(office, Trip("", "T-1", "Beach", "Long Sand", Ground.BEACH, day, day, DI, (), (FULL, LESS, BARE)))
    return office


def worn_words(club: Office) -> str:
    """(18 / 19)3 of 4.75 t in bending: 39.6 kN."""
    capacity = open_item(club, LESS).verdict.capacity
    assert capacity.now_n == pytest.approx(5 * 4750 * 9.80665 * (18 / 19) ** 3, rel=1e-6)
    return "WLL 39.6 kN"


def bare_words(club: Office) -> str:
    """What is reckoned for the pin."""
    now_n = open_item(club, BARE).verdict.capacity.now_n
    assert now_n
    return f"{now_n / 1000:.1f} kN"


def test_a_lending_slip_tells_it_of_a_fit_piece_too(club: Office) -> None:
    lend(club, [FULL, LESS, BARE], DI, club.today + timedelta(days=2))
    limits = {one.tag: one.limit for one in enter_lending_slip(club, DI).pieces}
    assert limits[FULL] == ""
    assert limits[LESS] == f"Bears only {worn_words(club)} now, reckoned."
    assert limits[BARE] == f"Reckon its strength as {bare_words(club)}."


def test_a_trip_s_sheet_and_its_check_in_the_window_tell_it_and_that_it_is_reckoned(club: Office) -> None:
    now = {one.tag: one.now for one in enter_trip_sheet(club, "T-1").going}
    assert now[FULL] == "WLL 46.6 kN"
    assert now[LESS] == f"{worn_words(club)}, reckoned"
    assert now[BARE] == f"strength {bare_words(club)}, reckoned"
    marked = {one.tag: one.marked for one in kit_check(club, "T-1").to_check}
    assert marked[FULL] == "WLL 4.75 t, factor 5"
    assert marked[LESS] == f"WLL 4.75 t, factor 5; now {worn_words(club)}, reckoned"
    assert marked[BARE] == f"no rating; now strength {bare_words(club)}, reckoned"


def test_a_label_that_stays_for_years_says_that_it_bears_less_and_no_figure(club: Office) -> None:
    marked = {one.tag: one.marked for one in enter_labels(club, [FULL, LESS, BARE]).labels}
    assert marked[LESS] == "WLL 4.75 t, factor 5; bears less now"
    assert marked[FULL] == "WLL 4.75 t, factor 5" and marked[BARE] == "no rating"
