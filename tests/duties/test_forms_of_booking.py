"""Stories: pieces come in second-hand, as gifts, home-made, borrowed, and somebody's own on one trip."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.book_in_forms import still_wanted
from inspector.duties.fit_parts import fit_part
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plan_trip import change_trip
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tell_readiness import due_words
from inspector.duties.trip_readiness import readiness
from inspector.duties.work_rigs import pack_trip
from inspector.gear.falls_due import Due
from inspector.gear.fitting import End, Fitted
from inspector.gear.item import NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.refused import Refused
from inspector.register.rows import from_body
from inspector.units import Dimension, read
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle, size
from tests.duties.rigs import fit, member, planned

USED = (Provenance.SECOND_HAND, Provenance.UNKNOWN, Provenance.GIFT, Provenance.HOME_MADE, Provenance.BORROWED)


def tow_bar() -> NewItem:
    """A tow bar as it was bought from a wrecker."""
    rating = Rating(Basis.TOWED_MASS, read("3500 kg", Dimension.MASS, field="r"), None, "piece")
    count = SizeAsNew("bolt_count", read("6", Dimension.COUNT, field="n"))
    sizes = (size("outside", "60 mm"), size("wall", "6 mm"), count, size("bolt_diameter", "14 mm"))
    return NewItem(
        "TB-1",
        "tow_bar",
        rating,
        maker_mark="VYK",
        serial="V 9",
        sizes=sizes,
        owner="Club",
        provenance=Provenance.SECOND_HAND,
        from_whom="Kestle's yard",
        paper="receipt 88",
    )


WALLS = {f"wall@{point}": "5.9 mm" for point in ("top", "bottom", "front", "rear")}


def borrowed(office: Office, days: int = 10) -> NewItem:
    """Another club's shackle."""
    until = office.today + timedelta(days=days)
    lent = replace(shackle(owner=""), provenance=Provenance.BORROWED, from_whom="Marsh Rovers")
    return replace(lent, borrowed_until=until)


def story_rows(office: Office, tag: str) -> dict[str, str]:
    return {one.label: one.text for one in open_item(office, tag).explanation.piece}


def test_a_second_hand_tow_bar_from_purchase_to_the_first_club_trip(office: Office) -> None:
    member(office)
    planned(office, kit=())
    bought = book_in(office, tow_bar())
    assert bought.verdict.outcome is Outcome.HOLD
    assert {"past-known", "inspection-current"} <= {
        one.rule for one in bought.verdict.findings if one.outcome is Outcome.HOLD
    }
    told = story_rows(office, "TB-1")
    assert (told["Past"], told["From"], told["Paper"]) == ("second-hand", "Kestle's yard", "receipt 88")
    fit_part(office, "TB-1", Fitted("V-1", End.REAR))
    assert _on_vehicle(office).verdict.outcome is Outcome.HOLD
    seen = {"bolts_sound": "6"} | WALLS
    half = record_inspection(office, "TB-1", all_good(office, bought.dossier.kind, {"bolts_sound": "6"}))
    assert half.verdict.outcome is Outcome.HOLD, "nobody has read its wall, and nobody knows its years before"
    record_inspection(office, "TB-1", all_good(office, bought.dossier.kind, seen))
    assert _on_vehicle(office).verdict.outcome in {Outcome.FIT, Outcome.DERATE}


def _on_vehicle(office: Office):  # type: ignore[no-untyped-def]
    (part,) = readiness(office, "T-1").vehicles[0].parts
    return part.judged


@pytest.mark.parametrize("form", USED)
def test_whatever_lived_before_the_register_is_held_until_its_first_thorough_inspection(
    office: Office, form: Provenance
) -> None:
    facts = replace(shackle(owner=""), provenance=form, from_whom="Marsh Rovers", paper="T 5")
    if form is Provenance.BORROWED:
        facts = borrowed(office)
    came = book_in(office, facts)
    assert came.verdict.outcome is Outcome.HOLD
    assert "past-known" in {one.rule for one in came.verdict.findings if one.outcome is Outcome.HOLD}
    seen = record_inspection(office, "SH-1", all_good(office, came.dossier.kind, SHACKLE_READINGS))
    assert "past-known" not in {one.rule for one in seen.verdict.findings if one.outcome is Outcome.HOLD}
    assert seen.verdict.outcome is Outcome.FIT


def test_a_mark_on_a_home_made_piece_is_no_rating_whoever_inspects_it(office: Office) -> None:
    made = replace(shackle(), provenance=Provenance.HOME_MADE, from_whom="Wilf", owner="Club")
    made = replace(made, rating=replace(made.rating, stated_on="piece"))
    kind = book_in(office, made).dossier.kind
    seen = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS))
    assert seen.verdict.outcome is Outcome.HOLD
    assert seen.verdict.capacity.now_n is None
    assert "its maker's word alone" in story_rows(office, "SH-1")["Marked"]
    held = {one.rule for one in seen.verdict.findings if one.outcome is Outcome.HOLD}
    assert {"rating-shackle"} == held


def test_a_home_made_hitch_pin_is_held_too_though_pins_are_seldom_marked(office: Office) -> None:
    rating = Rating(Basis.UNRATED, None, None, "none")
    pin = NewItem("HP-1", "hitch_pin", rating, sizes=(size("pin_diameter", "16 mm"),), from_whom="Wilf")
    came = book_in(office, replace(pin, provenance=Provenance.HOME_MADE))
    seen = record_inspection(office, "HP-1", all_good(office, came.dossier.kind, {"pin_diameter": "16 mm"}))
    assert seen.verdict.outcome is Outcome.HOLD


REFUSED = [
    (Provenance.GIFT, {}, "from whom", "empty"),
    (Provenance.HOME_MADE, {}, "from whom", "empty"),
    (Provenance.HOME_MADE, {"from_whom": "Wilf"}, "paper", "but not which"),
    (Provenance.BORROWED, {}, "from whom", "empty"),
    (Provenance.BORROWED, {"from_whom": "Marsh Rovers"}, "borrowed until", "not said when"),
    (
        Provenance.BORROWED,
        {"from_whom": "Marsh Rovers", "borrowed_until": date(2026, 11, 24)},
        "borrowed until",
        "ought to have gone back",
    ),
    (Provenance.BORROWED, {"from_whom": "Test Club", "borrowed_until": date(2027, 1, 1)}, "owner", "not the club's"),
    (Provenance.NEW, {"borrowed_until": date(2027, 1, 1)}, "borrowed until", "not borrowed"),
    (Provenance.NEW, {"paper": "two\nlines"}, "paper", "plain line"),
    (Provenance.NEW, {"visiting_for": "T-1"}, "visiting", "one trip alone"),
]


@pytest.mark.parametrize(("form", "facts", "field", "why"), REFUSED)
def test_a_form_without_its_own_fact_is_refused(
    office: Office, form: Provenance, facts: dict[str, object], field: str, why: str
) -> None:
    with pytest.raises(Refused) as refusal:
        book_in(office, replace(shackle(owner=""), provenance=form, **facts))
    assert refusal.value.field == field
    assert why in refusal.value.why and refusal.value.what_to_do
    with pytest.raises(Refused, match="No piece"):
        open_item(office, "SH-1")


def test_what_a_form_ought_to_tell_is_asked_for_and_not_required(office: Office) -> None:
    assert "certificate" in still_wanted(shackle())[0]
    assert still_wanted(replace(shackle(), paper="C 11")) == ()
    second = replace(shackle(), provenance=Provenance.SECOND_HAND)
    assert len(still_wanted(second)) == 2
    book_in(office, second)


def test_a_borrowed_piece_is_its_lenders_and_its_day_is_told_in_readiness(office: Office) -> None:
    member(office)
    fit(office, borrowed(office, days=2), SHACKLE_READINGS)
    assert open_item(office, "SH-1").dossier.item.facts.owner == "Marsh Rovers"
    planned(office, kit=("SH-1",), days=3)
    found = readiness(office, "T-1")
    (back,) = [one for one in found.due if one.what is Due.BACK]
    assert (back.tag, back.on) == ("SH-1", office.today + timedelta(days=2))
    assert "go back" in due_words(back)
    assert found.away == ()


def test_a_borrowed_piece_is_not_packed_for_a_trip_that_ends_after_it_goes_back(office: Office) -> None:
    member(office)
    fit(office, borrowed(office, days=1), SHACKLE_READINGS)
    planned(office, kit=(), days=3)
    packed = pack_trip(office, "T-1")
    assert "goes back to Marsh Rovers by 26 Nov 2026" in dict(packed.stays)["SH-1"]
    change_trip(office, "T-1", lambda trip: replace(trip, kit=("SH-1",)))
    assert [(one.tag, one.lent) for one in readiness(office, "T-1").away] == [("SH-1", True)]


def test_a_borrowed_piece_is_not_lent_beyond_its_day(office: Office) -> None:
    member(office)
    fit(office, borrowed(office, days=2), SHACKLE_READINGS)
    with pytest.raises(Refused, match="goes back to its owner"):
        lend(office, ["SH-1"], "Di Member", office.today + timedelta(days=3))
    assert len(lend(office, ["SH-1"], "Di Member", office.today + timedelta(days=2))) == 1


def test_a_piece_booked_before_there_were_forms_still_reads(office: Office) -> None:
    old = '{"tag":"X","kind":"damper","rating":{"basis":"unrated","figure":null,"design_factor":null,"stated_on":""}}'
    read_back = from_body(old, NewItem)
    assert (read_back.from_whom, read_back.borrowed_until, read_back.visiting_for) == ("", None, "")
    assert read_back.provenance is Provenance.UNKNOWN
