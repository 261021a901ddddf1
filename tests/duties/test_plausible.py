"""A reading out of the ordinary is asked about before it is kept; who keeps it says that he read it again."""

from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta

import pytest
from msgspec.structs import replace
from sqlalchemy import RowMapping

from inspector.duties.add_people import add_person
from inspector.duties.attach import attachments
from inspector.duties.book_in import book_in
from inspector.duties.log_inspection import Written, log_inspection
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.plausible import DAY, Caution, cautions_of, widest_hole
from inspector.duties.preview_verdict import preview_verdict
from inspector.duties.record_inspection import record_inspection
from inspector.duties.repair_item import repair_item
from inspector.duties.take_photos import take_photo
from inspector.gear.inspection import NewInspection
from inspector.gear.item import Item, NewItem, Provenance, Rating
from inspector.gear.kind import Basis
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.repair import NewRepair, Work
from inspector.refused import Refused
from inspector.register.current import item_of
from inspector.units import Dimension, read
from tests.duties.gear import HOLE, SHACKLE_READINGS, STRAP_READINGS, all_good, mount, shackle, size, strap
from tests.paper.test_photo import PDF, picture

_WALL = {f"wall@{point}": "5 mm" for point in ("top", "bottom", "left", "right", "at pin hole")}


def on(office: Office, day: date) -> Office:
    """The office on another day."""
    return office.at(datetime(day.year, day.month, day.day, 19, 0, tzinfo=UTC))


def inspect(office: Office, tag: str, readings: dict[str, str], day: date) -> None:
    """Log an inspection of that day."""
    kind = open_item(office, tag).dossier.kind
    record_inspection(on(office, day), tag, all_good(on(office, day), kind, readings))


def seen(office: Office, tag: str, readings: Mapping[str, str]) -> NewInspection:
    """An inspection of today with these readings."""
    return all_good(office, open_item(office, tag).dossier.kind, dict(readings))


def found(office: Office, tag: str, readings: Mapping[str, str]) -> tuple[Caution, ...]:
    """The cautions of an inspection of today."""
    dossier = open_item(office, tag).dossier
    return cautions_of(office, dossier, seen(office, tag, readings))


@pytest.fixture
def tube(office: Office) -> Office:
    """A ball mount of 5 mm, read twice: 0.2 mm lost at the top within two years."""
    book_in(on(office, date(2022, 1, 1)), mount())
    inspect(office, "BM-1", _WALL | HOLE, date(2022, 6, 1))
    inspect(office, "BM-1", _WALL | HOLE | {"wall@top": "4.8 mm"}, date(2024, 6, 1))
    return office


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("5.3 mm", "nothing makes it thicker"),
        ("48 mm", "point forgotten, and 4.8 mm read"),
        ("0.48 mm", "wrong place, and was 4.8 mm read"),
        ("4.8 in", "Were millimetres meant, and 4.8 mm read"),
        ("0.19 mm", "Were inches meant, and 4.83 mm read"),
        ("3.0 mm", "change of 1.8 mm since then is much faster than before"),
    ],
)
def test_a_wall_that_cannot_well_be_is_asked_about(tube: Office, typed: str, why: str) -> None:
    (one,) = found(tube, "BM-1", {"wall@top": typed})
    assert (one.measure, one.point, one.typed) == ("wall", "top", typed)
    assert one.name == "Wall thickness, top" and why in one.why


@pytest.mark.parametrize("typed", ["4.8 mm", "5.0 mm", "4.6 mm", "4.4 mm"])
def test_a_wall_within_what_gauge_and_years_allow_is_not(tube: Office, typed: str) -> None:
    """The gauge may be out by 0.2 mm each time, 0.28 mm between two; at twice 0.1 mm a year 0.5 mm are gone."""
    assert found(tube, "BM-1", {"wall@top": typed}) == ()


def test_what_cannot_be_is_refused_by_its_place_and_nobody_is_offered_to_confirm_it(tube: Office) -> None:
    assert found(tube, "BM-1", {"wall@left": "-1 mm"}) == ()
    for typed in ("-1 mm", "55 mm"):
        with pytest.raises(Refused, match=r"Wall thickness, left: “.* cannot be"):
            record_inspection(tube, "BM-1", seen(tube, "BM-1", {"wall@left": typed}))


def test_steel_does_not_grow_back(tube: Office) -> None:
    inspect(tube, "BM-1", {"wall@top": "4.4 mm"}, date(2026, 6, 1))
    (one,) = found(tube, "BM-1", {"wall@top": "4.7 mm"})
    assert one.why == "It was 4.4 mm on 1 Jun 2026; steel does not grow back."


def test_a_hole_does_not_grow_narrower(tube: Office) -> None:
    (one,) = found(tube, "BM-1", {"pin_hole@left wall": "16.1 mm", "pin_hole@right wall": "15.9 mm"})
    assert (one.point, one.why) == ("right wall", "It was 16.2 mm as new, and nothing makes it narrower than that.")


def test_the_same_in_inches_is_asked_about_alike(tube: Office) -> None:
    for typed in ("5.3 mm", "0.2087 in", "3.0 mm", "0.1181 in"):
        assert len(found(tube, "BM-1", {"wall@top": typed})) == 1


def test_a_part_that_was_swapped_is_not_held_against_the_one_before(office: Office) -> None:
    book_in(on(office, date(2022, 1, 1)), shackle())
    inspect(office, "SH-1", SHACKLE_READINGS | {"pin_diameter": "21.2 mm"}, date(2025, 6, 1))
    assert [one.measure for one in found(office, "SH-1", {"pin_diameter": "22.2 mm"})] == ["pin_diameter"]
    rating = Rating(Basis.WLL, read("4.75 t", Dimension.FORCE, field="r"), 5.0, "piece")
    new_pin = NewRepair(
        office.today,
        Work.PIN_AND_BOW,
        "Ada",
        office.officer.id,
        "pin",
        rating,
        sizes=(size("pin_diameter", "22.2 mm"),),
    )
    repair_item(office, "SH-1", new_pin)
    assert found(office, "SH-1", {"pin_diameter": "22.2 mm"}) == ()


def test_webbing_may_draw_in_again_and_is_not_asked_about(office: Office) -> None:
    book_in(on(office, date(2025, 1, 1)), replace(strap(), in_service_on=date(2025, 1, 1)))
    inspect(office, "KS-1", STRAP_READINGS | {"length": "9.3 m"}, date(2025, 6, 1))
    assert found(office, "KS-1", {"length": "9.0 m"}) == ()
    (one,) = found(office, "KS-1", {"length": "9.1 mm"})
    assert one.measure == "length"


def test_a_strap_much_shorter_than_new_is_asked_about(office: Office) -> None:
    book_in(office, strap())
    (one,) = found(office, "KS-1", {"length": "8.5 m"})
    assert one.measure == "length" and "cut or knotted" in one.why
    assert found(office, "KS-1", {"length": "8.6 m"}) == ()


PIN = NewItem(
    "KP-1", "hitch_pin", Rating(Basis.UNRATED, None, None, ""), sizes=(size("pin_diameter", "18 mm"),), owner="Club",
    provenance=Provenance.NEW,
)  # fmt: skip


def test_a_pin_thicker_than_every_hole_is_asked_about(tube: Office) -> None:
    book_in(tube, PIN)
    (one,) = found(tube, "KP-1", {"pin_diameter": "18 mm"})
    assert "thicker than the widest pin hole in the register (16.2 mm)" in one.why
    assert found(tube, "KP-1", {"pin_diameter": "15.9 mm"}) == ()


def test_a_pin_is_held_against_every_tube_but_only_until_it_goes_through_one(
    tube: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("inspector.register.lists._SOME", 2)
    widths = ("16.1 mm", "25.4 mm", "16.3 mm", "16.2 mm", "17.9 mm")
    for number, width in enumerate(widths, 2):
        others = tuple(one for one in mount().sizes if one.key != "pin_hole")
        book_in(tube, replace(mount(f"BM-{number}"), sizes=(*others, size("pin_hole", width))))
    book_in(tube, replace(PIN, sizes=(size("pin_diameter", "25.6 mm"),)))
    (one,) = found(tube, "KP-1", {"pin_diameter": "25.5 mm"})
    assert "the widest pin hole in the register (25.4 mm)" in one.why
    assert not any("hole" in one.why for one in found(tube, "KP-1", {"pin_diameter": "25.4 mm"}))
    dossier = open_item(tube, "KP-1").dossier
    read: list[str] = []

    def noted(row: RowMapping) -> Item:
        made = item_of(row)
        read.append(made.tag)
        return made

    monkeypatch.setattr("inspector.register.lists.item_of", noted)
    widest = widest_hole(tube, dossier)
    assert widest and widest.as_typed == "25.4 mm" and len(read) == 1 + len(widths)
    read.clear()
    assert widest_hole(tube, dossier, 0.0162) and read == ["BM-1"]
    assert widest_hole(tube, open_item(tube, "BM-1").dossier) is None


def test_a_day_before_the_last_inspection_is_asked_about(tube: Office) -> None:
    facts = replace(seen(tube, "BM-1", {}), on=date(2024, 5, 31))
    (one,) = cautions_of(tube, open_item(tube, "BM-1").dossier, facts)
    assert (one.measure, one.typed) == (DAY, "31 May 2024") and "1 Jun 2024" in one.why
    assert cautions_of(tube, open_item(tube, "BM-1").dossier, replace(facts, on=date(2024, 6, 1))) == ()


def test_what_is_odd_is_kept_only_once_somebody_has_read_again_and_the_history_says_so(tube: Office) -> None:
    facts = replace(seen(tube, "BM-1", HOLE | {"wall@top": "3.0 mm"}), note="rust in the drain hole")
    (one,) = found(tube, "BM-1", {"wall@top": "3.0 mm"})
    for confirmed in ((), (replace(one, typed="3.1 mm"),)):
        with pytest.raises(Refused, match="Read it again"):
            log_inspection(tube, "BM-1", Written(facts, confirmed))
    kept = log_inspection(tube, "BM-1", Written(facts, (one,)))
    assert kept.dossier.inspections[-1].facts.note == (
        "rust in the drain hole\nRead again and confirmed: Wall thickness, top 3.0 mm."
    )


def test_the_judging_is_the_same_with_and_without_the_question(tube: Office) -> None:
    facts = seen(tube, "BM-1", HOLE | {"wall@top": "3.0 mm"})
    with tube.book.together():
        plain = record_inspection(tube, "BM-1", facts)
    other = log_inspection(
        tube.at(tube.now + timedelta(0)), "BM-1", Written(facts, found(tube, "BM-1", {"wall@top": "3.0 mm"}))
    )
    assert plain.verdict.outcome is other.verdict.outcome


def test_photos_are_kept_with_the_inspection_or_nothing_is(tube: Office) -> None:
    facts = seen(tube, "BM-1", HOLE)
    one = take_photo(tube, "BM-1", "weld.jpg", picture("JPEG", 640, 400))
    assert one.small.startswith(b"\x89PNG")
    with pytest.raises(Refused, match="there already"):
        log_inspection(tube, "BM-1", Written(facts, photos=(one, one)))
    assert attachments(tube, "BM-1") == () and len(open_item(tube, "BM-1").dossier.inspections) == 2
    log_inspection(tube, "BM-1", Written(facts, photos=(one,)))
    (kept,) = attachments(tube, "BM-1")
    assert (kept.facts.name, kept.facts.note) == ("weld.jpg", "Inspection of 25 Nov 2026")
    with pytest.raises(Refused, match="kept with the piece already") as refused:
        take_photo(tube, "BM-1", "again.jpg", one.data)
    assert refused.value.field == "again.jpg"


def test_a_paper_is_no_photo(tube: Office) -> None:
    with pytest.raises(Refused, match=r"cert\.pdf: It is no picture"):
        take_photo(tube, "BM-1", "cert.pdf", PDF)
    with pytest.raises(Refused, match=r"cut\.jpg: The picture is broken"):
        take_photo(tube, "BM-1", "cut.jpg", picture("JPEG", 640, 400)[:300])


def test_the_preview_counts_the_second_name_as_the_register_does(office: Office) -> None:
    """One's own gear passes with another competent person beside, in the preview as in what is kept."""
    held = (Competence("shackle", date(2020, 1, 1)),)
    other = add_person(office, Person("", "Bo Second", "Member", held), "course certificate")
    book_in(office, shackle(owner="Ada Officer"))
    facts = seen(office, "SH-1", SHACKLE_READINGS)
    dossier = open_item(office, "SH-1").dossier
    alone = preview_verdict(office, dossier, facts).verdict.outcome
    both = preview_verdict(office, dossier, replace(facts, second=other.id)).verdict.outcome
    assert (alone, both) == (Outcome.HOLD, Outcome.FIT)
    assert log_inspection(office, "SH-1", Written(replace(facts, second=other.id))).verdict.outcome is both
