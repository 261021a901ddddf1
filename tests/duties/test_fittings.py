"""Stories: parts are fitted to vehicles, moved and taken off."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.destroy_item import destroy_item
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.lend import lend
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from tests.duties.gear import POINT_READINGS, all_good, point, shackle, strap
from tests.duties.rigs import member
from tests.duties.test_vehicles import wagon

LEFT = Fitted("V-1", End.FRONT, Side.LEFT)
REAR = Fitted("V-2", End.REAR)


@pytest.fixture
def garage(office: Office) -> Office:
    """Two vehicles and a recovery point on a shelf, booked a month ago."""
    wagon(office, "V-1")
    wagon(office, "V-2")
    book_in(office.at(office.now - timedelta(days=30)), point())
    return office


def test_a_strap_or_a_shackle_is_no_part_of_a_vehicle(garage: Office) -> None:
    for piece in (shackle("SH-1"), strap("KS-1")):
        book_in(garage, piece)
        with pytest.raises(Refused, match="no part of a vehicle"):
            fit_part(garage, piece.tag, REAR)
        assert fitted(garage, piece.tag) is None


def test_every_kind_says_whether_it_may_sit_on_a_vehicle(garage: Office) -> None:
    """What bears by its bolts must, what hangs in a receiver or on a drum may, what is carried may not."""
    roles = garage.rules.roles
    assert {kind for kind, role in roles.items() if role.may_sit} == {
        *("recovery_point", "tow_bar", "hitch_receiver", "winch", "ball_mount", "tow_ball", "hitch_pin"),
        *("receiver_insert", "fibre_winch_line", "wire_winch_rope", "winch_hook"),
    }


def test_what_sits_on_a_vehicle_is_not_lent_away(garage: Office) -> None:
    fit_part(garage, "RP-1", REAR)
    record_inspection(garage, "RP-1", all_good(garage, garage.kind("recovery_point"), POINT_READINGS))
    member(garage)
    with pytest.raises(Refused, match="sits on V-2"):
        lend(garage, ["RP-1"], "Di Member", garage.today)
    take_off_part(garage, "RP-1")
    record_inspection(garage, "RP-1", all_good(garage, garage.kind("recovery_point"), POINT_READINGS))
    assert lend(garage, ["RP-1"], "Di Member", garage.today)


def fitted(office: Office, tag: str = "RP-1") -> Fitted | None:
    with office.book.reading() as page:
        item = page.item(tag)
        assert page.fittings().get(item.id) == page.fitted(item), "all of them and one of them tell the same"
        return page.fitted(item)


def place_in_list(office: Office) -> str:
    return list_gear(office).rows[0].place


def test_what_was_fitted_last_stands_and_the_way_there_is_told(garage: Office) -> None:
    assert (fitted(garage), place_in_list(garage)) == (None, "Shed, shelf")
    judged = fit_part(garage, "rp-1", Fitted("v-1", End.FRONT, Side.LEFT), note="torqued twice")
    assert fitted(garage) == LEFT
    assert place_in_list(garage) == "V-1, front left"
    assert ("Fitted to", "V-1, front left") in [(one.label, one.text) for one in judged.explanation.piece]
    assert "Place" not in [one.label for one in judged.explanation.piece], "it is on no shelf any more"
    fit_part(garage, "RP-1", REAR)
    assert (fitted(garage), place_in_list(garage)) == (REAR, "V-2, rear")
    take_off_part(garage, "RP-1", note="bent the bar")
    assert (fitted(garage), place_in_list(garage)) == (None, "taken off its vehicle")
    rows = [(one.what, one.text, one.by) for one in history_of(garage, "RP-1") if one.what in {"Fitted", "Taken off"}]
    assert rows == [
        ("Taken off", "on no vehicle since. bent the bar", "Ada Officer"),
        ("Fitted", "V-2, rear", "Ada Officer"),
        ("Fitted", "V-1, front left. torqued twice", "Ada Officer"),
    ]
    assert verify_book(garage).faults == ()


def test_a_piece_is_found_by_the_vehicle_it_sits_on(garage: Office) -> None:
    assert list_gear(garage, "V-1").count == 0
    fit_part(garage, "RP-1", LEFT)
    assert list_gear(garage, "V-1").count == 1 and list_gear(garage, "shelf").count == 0
    fit_part(garage, "RP-1", REAR)
    assert list_gear(garage, "V-1").count == 0 and list_gear(garage, "V-2").count == 1


def test_where_nothing_was_fitted_since_the_booking_stands(garage: Office) -> None:
    book_in(garage, replace(point("RP-0"), place="", fitted_to="v-2", fitted_end=End.REAR, fitted_side=Side.RIGHT))
    assert fitted(garage, "RP-0") == Fitted("V-2", End.REAR, Side.RIGHT)
    assert place_in_list(garage) == "V-2, rear right"


def test_a_fitting_makes_no_verdict_milder(garage: Office) -> None:
    assert fit_part(garage, "RP-1", LEFT).verdict.outcome is Outcome.HOLD
    kind = open_item(garage, "RP-1").dossier.kind
    record_inspection(garage, "RP-1", all_good(garage, kind, POINT_READINGS, chassis_bolts="bad"))
    held = open_item(garage, "RP-1").verdict.outcome
    assert held.severity >= Outcome.HOLD.severity
    assert take_off_part(garage, "RP-1").verdict.outcome is held


def retired(office: Office) -> None:
    kind = open_item(office, "RP-1").dossier.kind
    judged = record_inspection(office, "RP-1", all_good(office, kind, POINT_READINGS, cracks="bad"))
    assert judged.verdict.outcome is Outcome.RETIRE


def test_a_retired_part_goes_on_no_vehicle_but_comes_off_one(garage: Office) -> None:
    fit_part(garage, "RP-1", LEFT)
    retired(garage)
    with pytest.raises(Refused, match="retired, and what is retired goes on no vehicle"):
        fit_part(garage, "RP-1", REAR)
    assert take_off_part(garage, "RP-1").verdict.outcome is Outcome.RETIRE
    destroy_item(garage, "RP-1", "cut in two")
    with pytest.raises(Refused, match="made unusable"):
        fit_part(garage, "RP-1", REAR)


def test_a_part_that_was_destroyed_where_it_sat_can_still_be_taken_off(garage: Office) -> None:
    fit_part(garage, "RP-1", LEFT)
    retired(garage)
    destroy_item(garage, "RP-1", "burnt off")
    take_off_part(garage, "RP-1")
    assert fitted(garage) is None


def test_what_cannot_be_is_refused_and_nothing_is_kept(garage: Office) -> None:
    day = timedelta(days=1)
    fit_part(garage, "RP-1", LEFT)
    deeds: tuple[tuple[Callable[[], object], str], ...] = (
        (lambda: fit_part(garage, "RP-1", Fitted("V-9")), "No vehicle has the tag “V-9”"),
        (lambda: fit_part(garage, "RP-9", LEFT), "No piece has the tag"),
        (lambda: fit_part(garage, "RP-1", LEFT), "sits there already"),
        (lambda: fit_part(garage, "RP-1", REAR, on=garage.today + day), "future"),
        (lambda: fit_part(garage, "RP-1", REAR, on=garage.today - day), "written down for"),
        (lambda: fit_part(garage, "RP-1", REAR, by="Nobody Here"), "Nobody called"),
        (lambda: take_off_part(garage, "RP-1", on=garage.today - day), "written down for"),
    )
    for deed, why in deeds:
        with pytest.raises(Refused, match=why):
            deed()
    assert fitted(garage) == LEFT
    take_off_part(garage, "RP-1")
    with pytest.raises(Refused, match="fitted to no vehicle"):
        take_off_part(garage, "RP-1")


def test_nothing_is_fitted_before_it_was_booked_in(garage: Office) -> None:
    with pytest.raises(Refused, match="written down for"):
        fit_part(garage, "RP-1", LEFT, on=garage.today - timedelta(days=31))
    fit_part(garage, "RP-1", LEFT, on=garage.today - timedelta(days=30))


def test_a_booking_names_a_vehicle_of_the_register(garage: Office) -> None:
    with pytest.raises(Refused, match="No vehicle has the tag “V-9”"):
        book_in(garage, replace(point("RP-2"), fitted_to="V-9"))
    with pytest.raises(Refused, match="but no vehicle"):
        book_in(garage, replace(point("RP-2"), fitted_end=End.FRONT))
    assert list_gear(garage).count == 1


def test_a_verdict_of_an_earlier_day_speaks_of_the_place_of_that_day(garage: Office) -> None:
    fit_part(garage.at(garage.now - timedelta(days=10)), "RP-1", LEFT)
    fit_part(garage, "RP-1", REAR)
    with garage.book.reading() as page:
        item = page.item("RP-1")
        kind = garage.kind(item.facts.kind)
        before, now = (page.dossier(item, kind, garage.today - timedelta(days=days)) for days in (1, 0))
    assert (before.item.facts.fitted, now.item.facts.fitted) == (LEFT, REAR)
    assert fitted(garage) == REAR


def test_the_sample_tells_of_a_point_that_moved_and_a_rope_that_was_thrown_away(sample: Office) -> None:
    assert fitted(sample, "RP-05") == Fitted("V-10", End.FRONT, Side.LEFT)
    assert fitted(sample, "WR-02") is None
    rows = [one for one in history_of(sample, "RP-05") if one.what == "Fitted"]
    assert len(rows) == 1 and "Lotte's car" in rows[0].text and rows[0].by == "Ana Kestrow"
    ends = {tag: fitted(sample, tag) for tag in ("RP-03", "RP-04", "HR-03", "TW-02", "WI-01")}
    assert ends["RP-03"] == Fitted("V-04", End.FRONT, Side.RIGHT)
    assert ends["RP-04"] == Fitted("V-04", End.FRONT, Side.LEFT)
    assert ends["HR-03"] == ends["TW-02"] == Fitted("V-03", End.REAR, Side.MIDDLE)
