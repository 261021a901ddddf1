"""A sheet comes back as a file: read, looked at by a person, kept as a member's check, never taken for more."""

import pytest
from msgspec.structs import replace
from PIL import Image

from inspector.duties.attach import attachments
from inspector.duties.check_piece import check_piece
from inspector.duties.give_opinion import doubt
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.plan_trip import change_trip
from inspector.duties.print_sheets import print_trip_sheet
from inspector.duties.read_returned import ReadBack, SheetBack, read_returned
from inspector.duties.take_returned import seen_of, take_returned
from inspector.duties.verify_book import verify_book
from inspector.gear.kind import Grade
from inspector.gear.kit_check import Seen
from inspector.gear.outcome import Outcome
from inspector.gear.photo_read import Answer
from inspector.gear.sheet_back import Incoming, RowBack
from inspector.gear.sheet_code import SheetCode
from inspector.gear.sheet_fields import SHEET_NAME, reading_name, remarks_name, signed_name, tick_name
from inspector.refused import Refused
from tests.duties.returned import jpeg, kept, names, photographed
from tests.duties.test_checking_the_kit import MEMBER, good_shackle, piece
from tests.duties.test_checking_the_kit import kit as kit
from tests.paper.filling import by_library, drawn_on, flattened

GOOD = {"SH-1": {"*": "good"}, "KS-1": {"*": "good"}}


@pytest.fixture
def sheet(kit: Office) -> Paper:
    return print_trip_sheet(kit, "T-1")


def filled(office: Office, paper: Paper, answers: dict[str, dict[str, str]], **written: str) -> Incoming:
    """The form filled in. written: by the field's name, with an underscore for a hyphen."""
    texts = {name.replace("_", "-"): text for name, text in written.items()}
    return Incoming(
        "form.pdf", by_library(paper.path.read_bytes(), names(kept(office, paper.path.stem), answers), texts)
    )


def one(found: ReadBack) -> SheetBack:
    assert not found.unread, found.unread
    (sheet,) = found.sheets
    return sheet


def why(found: ReadBack) -> str:
    assert not found.sheets
    return " ".join(unread.refusal.why for unread in found.unread)


def row(back: SheetBack, tag: str, key: str) -> RowBack:
    return next(row for piece in back.pieces if piece.tag == tag for row in piece.rows if row.tick.key == key)


def taken(office: Office, back: SheetBack) -> dict[str, Outcome]:
    """Keep all that was read, and what came of each piece."""
    kinds = {piece.tag: piece.judged.dossier.kind for piece in back.sheet.pieces}
    seen = {piece.tag: seen_of(office, kinds[piece.tag], piece) for piece in back.pieces}
    judged = take_returned(
        office, back.number, MEMBER, {tag: it for tag, it in seen.items() if not it.is_empty}, None, back.files
    )
    return {judgement.dossier.item.tag: judgement.verdict.outcome for judgement in judged}


def number_of(office: Office, paper: Paper, tag: str) -> int:
    return [going.tag for going in kept(office, paper.path.stem).going].index(tag) + 1


def check_of(office: Office, paper: Paper, tag: str, key: str) -> int:
    going = kept(office, paper.path.stem).going[number_of(office, paper, tag) - 1]
    return [tick.key for tick in going.ticks].index(key) + 1


def test_a_form_filled_in_on_a_phone_is_kept_as_a_check_by_the_member(kit: Office, sheet: Paper) -> None:
    back = one(read_returned(kit, [filled(kit, sheet, GOOD, by_1_name=MEMBER)]))
    assert back.number == sheet.path.stem and not back.doubtful and not back.missing
    assert [(what, room.text) for what, room in back.signed] == [("name", MEMBER)]
    assert not piece(kit, "SH-1").made  # nothing is kept by reading
    assert taken(kit, back) == {"SH-1": Outcome.FIT, "KS-1": Outcome.FIT}
    seen = open_item(kit, "SH-1").dossier.inspections[-1].facts
    assert seen.sheet == sheet.path.stem and not seen.competent and {a.grade for a in seen.answers} == {Grade.GOOD}
    assert piece(kit, "KS-1").is_checked and verify_book(kit).faults == ()


def test_figures_units_and_remarks_of_a_form_are_kept_as_they_were_typed(kit: Office, sheet: Paper) -> None:
    number, check = number_of(kit, sheet, "SH-1"), check_of(kit, sheet, "SH-1", "bow_diameter")
    texts = {reading_name(number, check): "18.6", remarks_name(number): "pin oiled"}
    form = by_library(sheet.path.read_bytes(), names(kept(kit, sheet.path.stem), GOOD), texts)
    taken(kit, one(read_returned(kit, [Incoming("form.pdf", form)])))
    seen = open_item(kit, "SH-1").dossier.inspections[-1].facts
    assert [(reading.measure, reading.figure.as_typed) for reading in seen.readings] == [("bow_diameter", "18.6 mm")]
    assert seen.note == "pin oiled"


def test_photos_of_the_ticked_paper_are_read_and_kept_with_the_trip(kit: Office, sheet: Paper) -> None:
    answers = {"SH-1": {"*": "good"}, "KS-1": {"*": "good", "stitching": "fault"}}
    photos = photographed(kit, sheet, answers)
    back = one(read_returned(kit, photos[::-1]))
    assert row(back, "KS-1", "stitching").answer is Answer.FAULT and not back.doubtful and not back.missing
    assert all(picture.startswith(b"\x89PNG") for picture in row(back, "KS-1", "stitching").pictures)
    assert taken(kit, back) == {"SH-1": Outcome.FIT, "KS-1": Outcome.RETIRE}
    assert sorted(file.facts.name for file in attachments(kit, "T-1")) == sorted(photo.name for photo in photos)


def test_both_boxes_ticked_is_asked_and_never_taken(kit: Office, sheet: Paper) -> None:
    answers = {"SH-1": {"*": "good", "bend": "both"}, "KS-1": {"*": "good"}}
    for files in (photographed(kit, sheet, answers), [filled(kit, sheet, answers)]):
        back = one(read_returned(kit, files))
        assert [(piece.tag, doubtful.tick.key) for piece, doubtful in back.doubtful] == [("SH-1", "bend")]
        with pytest.raises(Refused, match="not clear"):
            taken(kit, back)
    assert not piece(kit, "KS-1").made


def test_a_row_that_nobody_ticked_is_not_seen(kit: Office, sheet: Paper) -> None:
    back = one(read_returned(kit, photographed(kit, sheet, {"SH-1": {"bend": "good"}})))
    assert taken(kit, back) == {"SH-1": open_item(kit, "SH-1").verdict.outcome}  # KS-1 was not looked at at all
    assert len(piece(kit, "SH-1").open) > 3 and not piece(kit, "KS-1").made


def test_a_fault_at_a_measured_line_without_a_figure_holds_the_piece(kit: Office, sheet: Paper) -> None:
    answers = {"SH-1": {"*": "good", "bow_diameter": "fault"}, "KS-1": {"*": "good"}}
    assert taken(kit, one(read_returned(kit, [filled(kit, sheet, answers)])))["SH-1"] is Outcome.HOLD
    words = open_item(kit, "SH-1").dossier.opinions[-1].facts.why
    assert "Ticked as a fault on the sheet" in words


def test_all_good_from_a_member_releases_nothing(kit: Office, sheet: Paper) -> None:
    doubt(kit, "SH-1", "it was dropped from the roof", MEMBER)
    assert taken(kit, one(read_returned(kit, [filled(kit, sheet, GOOD)])))["SH-1"] is Outcome.HOLD


def test_the_same_sheet_is_not_read_in_twice(kit: Office, sheet: Paper) -> None:
    form = filled(kit, sheet, GOOD)
    taken(kit, one(read_returned(kit, [form])))
    assert "read in before" in why(read_returned(kit, [form]))
    assert "read in before" in why(read_returned(kit, photographed(kit, sheet, GOOD)))


def test_what_is_left_of_a_sheet_may_come_later(kit: Office, sheet: Paper) -> None:
    check_piece(kit, "T-1", "SH-1", MEMBER, good_shackle(kit), sheet.path.stem)
    back = one(read_returned(kit, [filled(kit, sheet, GOOD)]))
    assert back.already == ("SH-1",) and [piece.tag for piece in back.pieces] == ["KS-1"]


def test_a_page_that_did_not_come_is_told(kit: Office) -> None:
    change_trip(kit, "T-1", lambda trip: replace(trip, kit=("SH-1", "KS-1", "SH-2")))
    paper = print_trip_sheet(kit, "T-1")
    photos = photographed(kit, paper, GOOD)
    assert len(photos) > 1
    back = one(read_returned(kit, photos[:1]))
    layout = kept(kit, paper.path.stem).layout
    asked = [number for number, page in enumerate(layout.pages if layout else (), 1) if page.boxes]
    assert back.missing == tuple(asked[1:])


def test_two_photos_of_one_page_that_differ_are_asked(kit: Office, sheet: Paper) -> None:
    first = photographed(kit, sheet, GOOD)
    second = photographed(kit, sheet, {"SH-1": {"*": "good", "bend": "fault"}, "KS-1": {"*": "good"}}, turn=-3.0)
    both = [*first, *(replace(photo, name="again.jpg") for photo in second)]
    assert [doubtful.tick.key for _, doubtful in one(read_returned(kit, both)).doubtful] == ["bend"]
    assert not one(read_returned(kit, [*first, *photographed(kit, sheet, GOOD, turn=1.0)])).doubtful


def test_a_flattened_copy_takes_the_road_of_photos(kit: Office, sheet: Paper) -> None:
    form = filled(kit, sheet, {"SH-1": {"*": "good", "bend": "fault"}, "KS-1": {"*": "good"}})
    back = one(read_returned(kit, [Incoming("flat.pdf", flattened(form.data))]))
    assert row(back, "SH-1", "bend").answer is Answer.FAULT and row(back, "SH-1", "bend").pictures[0]
    assert row(back, "KS-1", "stitching").answer is Answer.GOOD


def test_a_form_that_somebody_drew_on_is_read_as_it_looks(kit: Office, sheet: Paper) -> None:
    form = filled(kit, sheet, {"SH-1": {"*": "good", "bend": "fault"}, "KS-1": {"*": "good"}})
    back = one(read_returned(kit, [Incoming("drawn.pdf", drawn_on(form.data, 0, 300, 60))]))
    assert row(back, "SH-1", "bend").answer is Answer.FAULT and row(back, "SH-1", "bend").pictures[0]


def test_a_sheet_of_another_register_or_of_none_is_refused(kit: Office, sheet: Paper) -> None:
    pdf = sheet.path.read_bytes()
    code = SheetCode(sheet.path.stem, 0, "AAAAA")
    for text, said in (
        (SheetCode("S-ZZZZ-0001", 0, "AAAAA").text, "another register"),
        (SheetCode(sheet.path.stem[:-1] + "9", 0, "AAAAA").text, "No trip has a sheet"),
        (code.text, "does not ask what the sheet"),
        ("S-ZZZZ-0001", "no code of a sheet"),
    ):
        assert said in why(read_returned(kit, [Incoming("form.pdf", by_library(pdf, set(), {SHEET_NAME: text}))]))


def test_what_is_no_sheet_is_named_and_keeps_no_other_back(kit: Office, sheet: Paper) -> None:
    files = [
        Incoming("wall.jpg", jpeg(Image.new("RGB", (900, 600), "white"))),
        Incoming("notes.txt", b"all fine"),
        Incoming("empty.pdf", b""),
        Incoming("broken.pdf", b"%PDF-1.7 and nothing else"),
        filled(kit, sheet, GOOD),
    ]
    found = read_returned(kit, files)
    assert [unread.name for unread in found.unread] == ["wall.jpg", "notes.txt", "empty.pdf", "broken.pdf"]
    assert all(unread.refusal.what_to_do for unread in found.unread) and len(found.sheets) == 1


def test_reading_tells_how_far_it_is_and_can_be_stopped(kit: Office, sheet: Paper) -> None:
    told: list[tuple[int, int]] = []
    read_returned(replace(kit, told=lambda done, of: told.append((done, of))), photographed(kit, sheet, GOOD))
    assert told and told[-1][0] == told[-1][1] == len(told)

    def stop(_done: int, _of: int) -> None:
        raise Refused("work", "stopped", "again")

    with pytest.raises(Refused, match="stopped"):
        read_returned(replace(kit, told=stop), [filled(kit, sheet, GOOD)])


def test_all_of_a_sheet_is_kept_or_nothing(kit: Office, sheet: Paper) -> None:
    back = one(read_returned(kit, photographed(kit, sheet, GOOD)))
    broken = [*back.files[:1], Incoming("too.exe", b"\x00\x01\x02")]
    with pytest.raises(Refused):
        take_returned(kit, back.number, MEMBER, {"SH-1": good_shackle(kit)}, None, broken)
    assert not piece(kit, "SH-1").made and attachments(kit, "T-1") == ()


def test_the_name_of_a_box_says_piece_and_line(kit: Office, sheet: Paper) -> None:
    assert tick_name(2, 5, "fault") == "002-05-fault" and signed_name(1, "name") == "by-1-name"
    assert Seen(doubts=("x",)).is_empty is False
