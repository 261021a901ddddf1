"""A repair holds a piece until it is inspected, makes nothing milder, and some work is never done to gear."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.change_item import label_anew
from inspector.duties.destroy_item import destroy_item
from inspector.duties.give_opinion import doubt
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.repair_item import repair_item
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verify_book
from inspector.gear.evidence import NewQuarantine
from inspector.gear.item import NewItem, Provenance, Rating, SizeAsNew
from inspector.gear.judged import Judged
from inspector.gear.kind import Basis, Kind
from inspector.gear.outcome import Outcome
from inspector.gear.repair import NewRepair, Work
from inspector.refused import Refused
from inspector.units import Dimension, read
from tests.duties.gear import POINT_READINGS, SHACKLE_READINGS, all_good, point, shackle, size, strap

WORN_PIN = {"bow_diameter": "19 mm", "pin_diameter": "21 mm"}  # 5.5 % off a pin of 7/8 in


def marked(tag: str = "SH-1") -> NewItem:
    """A shackle that bears its maker's mark."""
    return replace(shackle(tag), maker_mark="QVO")


def pin(office: Office, **more: object) -> NewRepair:
    """The maker's own pin, put in today."""
    facts = NewRepair(
        office.today, Work.PIN_AND_BOW, "Ada Officer", "", "pin 22 mm, QVO 6", maker="QVO", own=True,
        sizes=(size("pin_diameter", "22 mm"),),
    )  # fmt: skip
    return replace(facts, **more)


def wll(typed: str, factor: float | None = 5.0) -> Rating:
    return Rating(Basis.WLL, read(typed, Dimension.FORCE, field="r"), factor, "piece")


def rules_of(found: object) -> set[str]:
    return {one.rule for one in found.verdict.findings if one.outcome is not Outcome.FIT}  # type: ignore[attr-defined]


def test_a_shackle_pin_is_lost_and_replaced_and_the_shackle_is_used_again(office: Office) -> None:
    kind = book_in(office, marked()).dossier.kind
    assert record_inspection(office, "SH-1", all_good(office, kind, WORN_PIN)).verdict.outcome is Outcome.FIT
    assert doubt(office, "SH-1", "its pin was lost on the beach").verdict.outcome is Outcome.HOLD
    held = repair_item(office, "SH-1", pin(office))
    assert held.verdict.outcome is Outcome.HOLD and "repair-inspected" in rules_of(held)
    later = office.at(office.now + timedelta(days=1))
    seen = record_inspection(later, "SH-1", all_good(later, kind, SHACKLE_READINGS))
    assert seen.verdict.outcome is Outcome.FIT
    worn = next(one for one in seen.verdict.findings if one.quantity == "loss.pin_diameter")
    assert worn.value and worn.value.number is not None and worn.value.number < 0.01
    assert seen.dossier.item.rating == marked().rating
    row = next(one for one in history_of(office, "SH-1") if one.what == "Repair")
    assert row.text == "another pin put in; pin 22 mm, QVO 6; 22 mm (done by Ada Officer)" and row.by == "Ada Officer"
    assert verify_book(office).faults == ()


def test_readings_of_the_pin_before_stand_until_the_new_pin_was_read(office: Office) -> None:
    kind = book_in(office, marked()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, WORN_PIN))
    repair_item(office, "SH-1", pin(office))
    later = office.at(office.now + timedelta(days=1))
    seen = record_inspection(later, "SH-1", all_good(later, kind, {"bow_diameter": "19 mm"}))
    assert "repair-inspected" in rules_of(seen)
    worn = next(one for one in seen.verdict.findings if one.quantity == "loss.pin_diameter")
    assert worn.value and worn.value.number and worn.value.number > 0.05


def test_the_new_pins_own_readings_count_in_full(office: Office) -> None:
    kind = book_in(office, marked()).dossier.kind
    repair_item(office, "SH-1", pin(office))
    seen = record_inspection(office, "SH-1", all_good(office, kind, {"bow_diameter": "19 mm", "pin_diameter": "20 mm"}))
    assert seen.verdict.outcome is Outcome.RETIRE


def test_a_swap_that_is_told_after_the_inspection_heals_nothing_by_it(office: Office) -> None:
    kind = book_in(office, marked()).dossier.kind
    record_inspection(office, "SH-1", all_good(office, kind, WORN_PIN))
    later = office.at(office.now + timedelta(days=5))
    record_inspection(later, "SH-1", all_good(later, kind, SHACKLE_READINGS))
    told = repair_item(later, "SH-1", pin(office))
    worn = next(one for one in told.verdict.findings if one.quantity == "loss.pin_diameter")
    assert worn.value and worn.value.number and worn.value.number > 0.05


@pytest.mark.parametrize(
    ("rating", "left"), [(None, None), (wll("3.25 t"), "3.25 t"), (wll("8.5 t"), "4.75 t"), (wll("8.5 t", None), None)]
)
def test_a_strange_pin_leaves_the_lower_rating_or_none(office: Office, rating: Rating | None, left: str | None) -> None:
    book_in(office, marked())
    held = repair_item(office, "SH-1", pin(office, own=False, maker="RTK", rating=rating))
    stands = held.dossier.item.rating
    assert (stands.figure.as_typed if stands.figure else None) == left
    assert ("rating-shackle" in rules_of(held)) == (left is None)


def test_what_a_strange_pin_took_is_not_read_anew_from_the_bow_by_one_person(office: Office) -> None:
    book_in(office, marked())
    repair_item(office, "SH-1", pin(office, own=False, maker="RTK", rating=wll("3.25 t")))
    with pytest.raises(Refused, match="second name"):
        label_anew(office, "SH-1", wll("4.75 t"), "it stands on the bow")


@pytest.mark.parametrize(
    ("more", "field"),
    [
        ({"maker": "RTK"}, "maker of the pin"),
        ({"sizes": (size("pin_diameter", "19 mm"),)}, "pin diameter"),
        ({"sizes": ()}, "pin diameter"),
        ({"part": " "}, "part"),
        ({"done_by": ""}, "done by"),
        ({"by": "Nobody Here"}, "written down by"),
        ({"rating": replace(wll("4.75 t"), stated_on="memory")}, "rating"),
    ],
)
def test_a_pin_that_is_not_told_well_is_refused(office: Office, more: dict[str, object], field: str) -> None:
    book_in(office, marked())
    with pytest.raises(Refused) as refused:
        repair_item(office, "SH-1", pin(office, **more))
    assert refused.value.field == field and refused.value.what_to_do
    assert not [one for one in history_of(office, "SH-1") if one.what == "Repair"]


@pytest.mark.parametrize("days", [-1, 1])
def test_a_repair_before_the_booking_or_to_come_is_refused(office: Office, days: int) -> None:
    book_in(office, marked())
    with pytest.raises(Refused, match="day"):
        repair_item(office, "SH-1", pin(office, on=office.today + timedelta(days=days)))


@pytest.mark.parametrize("work", [Work.WELDED, Work.HEATED, Work.STRAIGHTENED, Work.DRILLED, Work.GROUND])
def test_work_that_harms_is_refused_on_every_kind(office: Office, work: Work) -> None:
    for piece in (marked(), strap(), point()):
        book_in(office, piece)
        with pytest.raises(Refused, match="work") as refused:
            repair_item(office, piece.tag, NewRepair(office.today, work, "a smith", ""))
        assert piece.tag in refused.value.what_to_do


@pytest.mark.parametrize(
    "note", ["welded the ear", "crack brazed over", "bent back in a vice", "ground the burr off", "rewelded eye"]
)
def test_such_work_under_another_name_is_refused_as_well(office: Office, note: str) -> None:
    book_in(office, marked())
    with pytest.raises(Refused, match="work"):
        repair_item(office, "SH-1", NewRepair(office.today, Work.OTHER, "a smith", "", note=note))


@pytest.mark.parametrize(
    ("piece", "work"),
    [
        (strap(), Work.HOOK_LATCH),
        (strap(), Work.PIN_AND_BOW),
        (strap(), Work.RESPLICED),
        (strap(), Work.GALVANISED),
        (shackle(), Work.GALVANISED),
        (shackle(), Work.BOLTS),
    ],
)
def test_work_that_a_kind_cannot_have_is_refused(office: Office, piece: NewItem, work: Work) -> None:
    book_in(office, piece)
    with pytest.raises(Refused, match="work"):
        repair_item(office, piece.tag, pin(office, work=work))


def test_retired_destroyed_and_kept_pieces_are_not_repaired(office: Office) -> None:
    kind = book_in(office, marked()).dossier.kind
    book_in(office, marked("SH-2"))
    with office.book.page() as page:
        page.add_quarantine(page.item("SH-2"), NewQuarantine(office.today, "I-1", office.officer.id))
        page.enter("report incident", by=office.officer.id, at=office.now, facts={"ref": "I-1"})
    with pytest.raises(Refused, match="evidence"):
        repair_item(office, "SH-2", pin(office))
    gone = record_inspection(office, "SH-1", all_good(office, kind, SHACKLE_READINGS, cracks="bad"))
    assert gone.verdict.outcome is Outcome.RETIRE
    with pytest.raises(Refused, match="retired"):
        repair_item(office, "SH-1", pin(office))
    destroy_item(office, "SH-1", "cut in two")
    with pytest.raises(Refused, match="unusable"):
        repair_item(office, "SH-1", pin(office))


def bolts(office: Office, count: str = "4", *sizes: SizeAsNew) -> NewRepair:
    told = SizeAsNew("bolt_count", read(count, Dimension.COUNT, field="n"))
    return NewRepair(office.today, Work.BOLTS, "a workshop", "", "M14 bolts", sizes=(told, *sizes))


def bolt_class(typed: str) -> SizeAsNew:
    return SizeAsNew("bolt_class", read(typed, Dimension.FACTOR, field="n"))


def inspected_point(office: Office, kind: Kind, count: str) -> Judged:
    return record_inspection(office, "RP-1", all_good(office, kind, POINT_READINGS | {"bolts_sound": count}))


def test_a_missing_bolt_is_renewed_and_the_point_is_used_again(office: Office) -> None:
    kind = book_in(office, point()).dossier.kind
    missing = inspected_point(office, kind, "3")
    assert "bolts-sound" in rules_of(missing)
    assert "bolts renewed and written down as a repair" in missing.explanation.plain
    assert "bolts-sound" in rules_of(
        inspected_point(office, kind, "4")
    )  # a count alone does not tell where it came from
    repair_item(office, "RP-1", bolts(office))
    assert {"bolts-sound", "repair-inspected"} & rules_of(inspected_point(office, kind, "4")) == set()


def test_bolts_of_a_lower_class_count_as_such_and_unknown_ones_as_unknown(office: Office) -> None:
    piece = point()
    book_in(office, replace(piece, sizes=(*piece.sizes, bolt_class("8.8"))))
    for typed, left in (("10.9", "8.8"), ("4.6", "4.6")):
        held = repair_item(office, "RP-1", bolts(office, "4", bolt_class(typed)))
        found = held.dossier.item.size("bolt_class")
        assert found and found.as_typed == left
    assert repair_item(office, "RP-1", bolts(office)).dossier.item.size("bolt_class") is None


def test_bolts_that_do_not_fit_their_holes_are_refused(office: Office) -> None:
    book_in(office, point())
    with pytest.raises(Refused, match="number of bolts") as refused:
        repair_item(office, "RP-1", bolts(office, "3"))
    assert "--size bolt_count=4" in refused.value.what_to_do
    with pytest.raises(Refused, match="bolt diameter"):
        repair_item(office, "RP-1", bolts(office, "4", size("bolt_diameter", "12 mm")))


def line(office: Office) -> Kind:
    rating = Rating(Basis.MBS, read("9000 kg", Dimension.FORCE, field="r"), None, "piece")
    kind = office.kind("fibre_winch_line")
    needed = tuple(
        SizeAsNew(one.key, read({"length": "28 m"}.get(one.key, "10 mm"), one.dimension, field="s"))
        for one in kind.sizes
        if one.required or one.key == "length"
    )
    book_in(office, NewItem("WL-1", kind.key, rating, sizes=needed, owner="Club", provenance=Provenance.NEW))
    return kind


def splice(office: Office, length: str, rating: Rating | None) -> NewRepair:
    sizes = (size("length", length),) if length else ()
    return NewRepair(office.today, Work.RESPLICED, "a rigger", "", sizes=sizes, rating=rating)


def test_a_respliced_line_is_shorter_and_rated_with_its_paper_but_never_above_its_marking(office: Office) -> None:
    line(office)
    mbs = Rating(Basis.MBS, read("8100 kg", Dimension.FORCE, field="r"), None, "certificate")
    with pytest.raises(Refused, match="length"):
        repair_item(office, "WL-1", splice(office, "", mbs))
    with pytest.raises(Refused, match="not shorter"):
        repair_item(office, "WL-1", splice(office, "28 m", mbs))
    held = repair_item(office, "WL-1", splice(office, "24.5 m", mbs))
    length, rating = held.dossier.item.size("length"), held.dossier.item.rating
    assert length and length.as_typed == "24.5 m" and rating == mbs and held.verdict.outcome is Outcome.HOLD
    more = replace(mbs, figure=read("9500 kg", Dimension.FORCE, field="r"))
    assert repair_item(office, "WL-1", splice(office, "24 m", more)).dossier.item.rating == mbs
    bare = repair_item(office, "WL-1", splice(office, "23 m", None))
    assert bare.dossier.item.rating.figure is None and "rating-other" in rules_of(bare)
    assert open_item(office, "WL-1").dossier.item.size("length") == size("length", "23 m").figure


def test_a_repair_that_is_told_late_holds_until_an_inspection_made_knowing_of_it(office: Office) -> None:
    kind = book_in(office, marked()).dossier.kind
    later = office.at(office.now + timedelta(days=9))
    assert record_inspection(later, "SH-1", all_good(later, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.FIT
    done = replace(pin(office), on=office.today + timedelta(days=2))
    held = repair_item(later, "SH-1", done)
    assert held.verdict.outcome is Outcome.HOLD and "repair-inspected" in rules_of(held)
    assert record_inspection(later, "SH-1", all_good(later, kind, SHACKLE_READINGS)).verdict.outcome is Outcome.FIT
