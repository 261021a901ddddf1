"""The pre-trip sheet: complete, in order, tickable, on both papers."""

from collections.abc import Callable
from io import BytesIO
from typing import Any

import pytest
from msgspec.structs import replace
from pypdf import PdfReader, PdfWriter

from inspector.drawings.marks import outcome_word
from inspector.gear.outcome import Outcome
from inspector.gear.papers import SheetScope, StayingPiece, TickLine, TripSheet
from inspector.gear.rig_result import RigOutcome
from inspector.gear.sheet_fields import tick_name
from inspector.paper.inspection_sheet import inspection_sheet
from inspector.paper.page_style import MM, PageSize
from tests.paper.conftest import RIG
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    fields_by_page,
    page_texts,
    squeezed,
)

Many = Callable[[int], TripSheet]
_REQUIRED = 2  # the flag of a field that must be filled in


@pytest.mark.parametrize("page", PageSize)
def test_nine_pieces_take_three_or_four_pages(trip_sheet: TripSheet, page: PageSize) -> None:
    printed = inspection_sheet(trip_sheet, page)
    assert 3 <= printed.page_count <= 4
    assert printed.page_count == len(PdfReader(BytesIO(printed.pdf)).pages)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


@pytest.mark.parametrize("page", PageSize)
def test_the_paper_has_the_size_asked_for(trip_sheet: TripSheet, page: PageSize) -> None:
    box = PdfReader(BytesIO(inspection_sheet(trip_sheet, page).pdf)).pages[0].mediabox
    sizes = {PageSize.A4: (210 * MM, 297 * MM), PageSize.LETTER: (612.0, 792.0)}
    assert (float(box.width), float(box.height)) == pytest.approx(sizes[page], abs=0.1)


def test_every_page_tells_whose_it_is_what_it_rests_on_and_to_mind(trip_sheet: TripSheet) -> None:
    printed = inspection_sheet(trip_sheet, PageSize.A4)
    for number, text in enumerate(page_texts(printed), 1):
        assert "Sandbar Touring Club" in text
        assert "Pre-trip inspection sheet" in text
        assert "A-2026-0113" in text
        assert "13 Jun 2026" in text
        assert f"Page {number} of {printed.page_count}" in text
        assert "Rests on: Rulebook of the club, 1 March 2026 · inspections up to 12 June 2026" in text
        assert "ledger head 9f2c41d07ab3" in text
        assert "Stay clear of a loaded line." in text


def test_the_first_page_has_the_trip_all_cautions_and_who_prepared_it(trip_sheet: TripSheet) -> None:
    first = page_texts(inspection_sheet(trip_sheet, PageSize.A4))[0]
    for text in (trip_sheet.trip, trip_sheet.place, trip_sheet.dates, trip_sheet.leader, *trip_sheet.imprint.cautions):
        assert text in first
    assert "Prepared by Equipment officer" in first


def test_what_stays_comes_before_what_goes(trip_sheet: TripSheet) -> None:
    text = all_text(inspection_sheet(trip_sheet, PageSize.A4))
    words = ("Read this first", "Must stay behind", "T-014", "B-003", "Vehicles", "Goes on the trip", "K-031", "K-036")
    order = [text.index(word) for word in words]
    assert order == sorted(order)
    for piece in trip_sheet.staying:
        assert f"{piece.tag} {outcome_word(piece.outcome)} {piece.kind_name} {piece.why}" in text


def test_a_vehicle_shows_mass_straps_and_warning(trip_sheet: TripSheet) -> None:
    text = all_text(inspection_sheet(trip_sheet, PageSize.A4))
    for vehicle in trip_sheet.vehicles:
        assert f"{vehicle.tag} · {vehicle.name} GVM {vehicle.gvm} Straps that suit it: {vehicle.band}" in text
    assert f"Mind: {trip_sheet.vehicles[1].warning}" in text
    assert text.count("Mind:") == 1


def test_a_going_piece_shows_all_it_carries(trip_sheet: TripSheet) -> None:
    text = all_text(inspection_sheet(trip_sheet, PageSize.A4))
    for piece in trip_sheet.going:
        assert f"Marked: {piece.marked} · Now: {piece.now} {piece.use_line}" in text
        assert squeezed(piece.ticks[0].text) in squeezed(text)
    assert "not below 17.1 mm" in text
    assert text.count("Remarks") == len(trip_sheet.going)


def test_the_end_says_what_to_do_with_a_fault_and_has_a_line_for_each_vehicle(trip_sheet: TripSheet) -> None:
    text = all_text(inspection_sheet(trip_sheet, PageSize.A4))
    end = text[text.index("If you find a fault") :]
    assert "Do not use the piece" in end and "Put it aside" in end and "equipment officer" in end
    assert end.count("Signature") == end.count("Date and time") == end.count("Name") == 2


def test_each_check_has_two_boxes_of_five_millimetres_and_more(trip_sheet: TripSheet) -> None:
    fields = {
        name: rect for page in fields_by_page(inspection_sheet(trip_sheet, PageSize.A4)) for name, rect in page.items()
    }
    wanted = {
        tick_name(number, check, answer)
        for number, piece in enumerate(trip_sheet.going, 1)
        for check in range(1, len(piece.ticks) + 1)
        for answer in ("good", "fault")
    }
    boxes = {name: rect for name, rect in fields.items() if name.endswith(("good", "fault"))}
    assert set(boxes) == wanted
    for left, bottom, right, top in boxes.values():
        assert right - left >= 5 * MM and top - bottom >= 5 * MM


def test_boxes_can_be_ticked_and_read_back_and_none_is_required(trip_sheet: TripSheet) -> None:
    writer = PdfWriter(clone_from=BytesIO(inspection_sheet(trip_sheet, PageSize.A4).pdf))
    writer.update_page_form_field_values(writer.pages[0], {"001-01-good": "/Yes", "001-02-fault": "/Yes"})
    ticked = BytesIO()
    writer.write(ticked)
    fields = PdfReader(ticked).get_fields() or {}
    assert {name for name, field in fields.items() if field.value == "/Yes"} == {"001-01-good", "001-02-fault"}
    assert all(not int(field.get("/Ff", 0)) & _REQUIRED for field in fields.values())


@pytest.mark.parametrize("page", PageSize)
def test_of_sixty_pieces_none_is_split_across_pages(many_pieces: Many, page: PageSize) -> None:
    printed = inspection_sheet(many_pieces(60), page)
    assert 10 <= printed.page_count <= 22
    seen: set[str] = set()
    for fields, text in zip(fields_by_page(printed), page_texts(printed), strict=True):
        tags = {name.split("-")[0] for name in fields if name[0].isdigit()}
        assert not tags & seen
        assert text.count("Remarks") == len(tags)
        seen |= tags
    assert len(seen) == 60
    assert_within_margins(printed)


def test_a_piece_with_more_checks_than_a_page_holds_loses_none(trip_sheet: TripSheet) -> None:
    ticks = tuple(TickLine(f"Check number {number} " + "and look twice at it " * 9) for number in range(40))
    piece = replace(trip_sheet.going[0], ticks=ticks)
    printed = inspection_sheet(replace(trip_sheet, going=(piece,)), PageSize.LETTER)
    names = [name for page in fields_by_page(printed) for name in page]
    assert sum(name.endswith(("good", "fault")) for name in names) == 80
    assert_within_margins(printed)


def test_long_checks_get_the_whole_width(trip_sheet: TripSheet) -> None:
    short = replace(trip_sheet.going[0], ticks=(TickLine("Clean?"), TickLine("Dry?")))
    long = replace(short, ticks=(TickLine("Clean?"), TickLine("Look for cuts along both edges, " * 8)))
    lefts = []
    for piece in (short, long):
        fields = fields_by_page(inspection_sheet(replace(trip_sheet, going=(piece,)), PageSize.A4))[0]
        lefts.append({round(rect[0]) for name, rect in fields.items() if name.endswith("good")})
    assert (len(lefts[0]), len(lefts[1])) == (2, 1)


def test_nothing_going_nothing_staying_and_no_vehicle_are_said(trip_sheet: TripSheet) -> None:
    printed = inspection_sheet(replace(trip_sheet, going=(), staying=(), vehicles=()), PageSize.A4)
    text = all_text(printed)
    assert printed.page_count == 1
    assert "No piece of this kit has to stay behind." in text
    assert "No piece of this kit goes on the trip." in text
    assert "No vehicle is listed for this trip." in text
    assert text.count("Signature") == 1
    assert "good fault" not in text


def test_without_grounds_and_cautions_the_sheet_says_so(trip_sheet: TripSheet) -> None:
    bare = replace(trip_sheet.imprint, rests_on=(), cautions=())
    assert "Rests on: nothing recorded" in all_text(inspection_sheet(replace(trip_sheet, imprint=bare), PageSize.A4))


def test_long_texts_wrap_and_lose_nothing(trip_sheet: TripSheet) -> None:
    name = "The very long name of a trip along the outer bar and back " * 4
    why = "This piece stays because " + "of one reason and another " * 30
    unbroken = "Q" * 300
    going = replace(trip_sheet.going[0], kind_name=unbroken, use_line=why, tag="T-" + "9" * 40)
    staying = StayingPiece("T-" + "8" * 40, name, Outcome.HOLD, why)
    sheet = replace(trip_sheet, trip=name, place=unbroken, going=(going,), staying=(staying,))
    printed = inspection_sheet(sheet, PageSize.LETTER)
    text = squeezed(all_text(printed))
    for wanted in (why, going.tag, staying.tag, unbroken):
        assert squeezed(wanted) in text
    assert text.count(unbroken) == 2
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


def test_names_in_greek_cyrillic_and_vietnamese_print(trip_sheet: TripSheet) -> None:
    printed = inspection_sheet(
        replace(trip_sheet, trip="Ακτή", place="Песчаная коса", leader="Đội trưởng ở Bãi Dài"), PageSize.A4
    )
    text = all_text(printed)
    assert printed.missing_glyphs == ()
    assert "Ακτή" in text and "Песчаная коса" in text and "Đội trưởng ở Bãi Dài" in text


def test_a_sign_the_type_lacks_is_reported_and_its_place_kept(trip_sheet: TripSheet) -> None:
    printed = inspection_sheet(replace(trip_sheet, place="हन north", leader="ह"), PageSize.A4)
    assert printed.missing_glyphs == ("ह", "न")
    assert "□□ north" in all_text(printed)


def test_the_file_names_itself(trip_sheet: TripSheet) -> None:
    said = PdfReader(BytesIO(inspection_sheet(trip_sheet, PageSize.A4).pdf)).metadata
    assert said is not None
    assert said.title == "Pre-trip inspection sheet A-2026-0113"
    assert said.author == "Sandbar Touring Club"
    assert said.subject == "Winter beach run, Long Spit, north end"
    assert str(said["/Keywords"]) == "A-2026-0113"


def test_the_same_sheet_gives_the_same_bytes(trip_sheet: TripSheet) -> None:
    assert inspection_sheet(trip_sheet, PageSize.A4).pdf == inspection_sheet(trip_sheet, PageSize.A4).pdf


def test_the_type_is_embedded(trip_sheet: TripSheet) -> None:
    reader: Any = PdfReader(BytesIO(inspection_sheet(trip_sheet, PageSize.A4).pdf))
    fonts = [font.get_object() for font in reader.pages[1]["/Resources"]["/Font"].values()]
    used = [font for font in fonts if "DejaVu" in font["/BaseFont"]]
    assert len(used) == 2
    assert all("/FontFile2" in font["/FontDescriptor"] for font in used)


@pytest.mark.parametrize("page", PageSize)
def test_parts_stand_under_their_vehicle_and_the_rest_in_the_bag(trip_sheet: TripSheet, page: PageSize) -> None:
    first, second, *others = trip_sheet.going
    parts = (
        replace(first, tag="RP-1", part_of="V-01", where="On V-01, front left."),
        replace(second, tag="RP-2", part_of="V-02", where="On V-02, rear right."),
    )
    barred = StayingPiece("HR-9", "Hitch receiver", Outcome.HOLD, "Not measured.", "On V-02, rear middle.", "V-02")
    sheet = replace(trip_sheet, going=(*parts, *others), staying=(*trip_sheet.staying, barred))
    printed = inspection_sheet(sheet, page)
    text = all_text(printed)
    begins = text.index("Goes on the trip")
    order = [text.index(one, begins) for one in ("V-01 · Grey", "RP-1", "V-02 · Small", "RP-2", "The bag", "K-031")]
    assert order == sorted(order)
    assert "Bow shackle · On V-02, rear right" in text or "Kinetic strap · On V-02, rear right" in text
    stays = text.index("On the vehicles and not to be used")
    assert text.index("B-003") < stays < text.index("HR-9") < text.index("Hitch receiver · On V-02, rear middle")
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


def test_where_it_rides_stands_beside_the_kind_or_is_left_to_be_written_in(trip_sheet: TripSheet) -> None:
    planned = replace(trip_sheet.going[0], where="Rides on V-02")
    text = all_text(inspection_sheet(replace(trip_sheet, going=(planned,)), PageSize.A4))
    assert "Kinetic strap · Rides on V-02" in text and text.count("Rides on") == 1
    open_one = inspection_sheet(replace(trip_sheet, going=(trip_sheet.going[0],)), PageSize.A4)
    assert all_text(open_one).count("Rides on") == 1
    assert not any("ides" in name for page in fields_by_page(open_one) for name in page)  # by pen, asked of nobody


def test_a_sheet_of_one_vehicle_says_so_first_and_has_one_line_to_sign(trip_sheet: TripSheet) -> None:
    of_one = replace(trip_sheet, vehicles=trip_sheet.vehicles[:1], scope=SheetScope("V-01"))
    printed = inspection_sheet(of_one, PageSize.A4)
    first, *later = page_texts(printed)
    assert first.index("V-01 · Grey long-wheelbase wagon") < first.index("Read this first")
    assert all("V-01 · Grey long-wheelbase wagon: Winter beach" in text for text in later)
    assert all_text(printed).count("Signature") == 1 and "Rides on V-01" in all_text(printed)
    assert "No rig with V-01 is planned." in all_text(printed)
    rest = all_text(inspection_sheet(replace(trip_sheet, vehicles=(), scope=SheetScope(is_rest=True)), PageSize.A4))
    assert "What rides on no vehicle by plan" in rest and "No vehicle is listed" not in rest
    assert rest.count("Signature") == 1


def test_a_planned_rig_stands_with_its_figures(trip_sheet: TripSheet) -> None:
    text = all_text(inspection_sheet(replace(trip_sheet, rigs=(RIG,)), PageSize.A4))
    said = "R-1 Sound Beach snatch · V-02 pulls V-01 · stay 13.5 m away Method: kinetic pull. Speed: at most 6 km/h"
    assert said in text and "Weakest link: S-021 · Kinetic strap, 61 % is used." in text
    assert "Do not pull" not in text and "With any other rig nobody pulls until somebody has checked it." in text


def test_a_rig_that_must_not_be_pulled_says_so_before_all_else(trip_sheet: TripSheet) -> None:
    for outcome in (RigOutcome.NEVER, RigOutcome.UNSOUND):
        bad = replace(RIG, outcome=outcome, says="A tie-down point tears out.")
        text = all_text(inspection_sheet(replace(trip_sheet, rigs=(bad,)), PageSize.LETTER))
        assert text.index("Do not pull with this rig") < text.index("A tie-down point") < text.index("Weakest link")


def test_where_no_rig_is_planned_it_says_where_to_plan_one(trip_sheet: TripSheet) -> None:
    text = all_text(inspection_sheet(trip_sheet, PageSize.A4))
    assert "No rig is planned." in text and "`rig propose`" in text
    assert "With any other rig nobody pulls until somebody has checked it." in text


@pytest.mark.parametrize("page", PageSize)
def test_boxes_stand_apart_by_what_a_ring_takes(many_pieces: Many, page: PageSize) -> None:
    printed = inspection_sheet(many_pieces(30), page)
    assert printed.layout
    for one in printed.layout.pages:
        spots = [box.spot for box in one.boxes]
        for at, spot in enumerate(spots):
            for other in spots[at + 1 :]:
                across = max(spot.left_mm, other.left_mm) - min(spot.left_mm, other.left_mm) - spot.width_mm
                down = max(spot.top_mm, other.top_mm) - min(spot.top_mm, other.top_mm) - spot.height_mm
                assert max(across, down) > 2.39


@pytest.mark.parametrize("page", PageSize)
def test_a_piece_goes_on_in_the_other_column_and_is_named_there(trip_sheet: TripSheet, page: PageSize) -> None:
    long = replace(trip_sheet.going[0], ticks=trip_sheet.going[0].ticks * 3)
    printed = inspection_sheet(replace(trip_sheet, going=(long, trip_sheet.going[2])), page)
    gone_on = [text for text in page_texts(printed) if ", continued" in text]
    assert gone_on
    for text in gone_on:
        tag = text.split(", continued")[0].split()[-1]
        assert text.count(tag) >= 2  # its head stands on the same page
