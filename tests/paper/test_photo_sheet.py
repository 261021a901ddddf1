"""Photos of ticked sheets: what is read, what is asked, what is refused and why. The many are in bench_photos."""

import io
from itertools import product
from random import Random

import pytest
import segno
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PIL import Image, ImageDraw

from inspector.gear.photo_read import Answer, BoxRead, BoxState, Seen, row_answer
from inspector.gear.sheet_layout import Placed, SheetPage
from inspector.paper.photo_sheet.codes import FoundCode
from inspector.paper.photo_sheet.opening import LONGEST_SIDE_PX, MOST_PAGES, open_photo
from inspector.paper.photo_sheet.reading import codes_in, read_page
from inspector.refused import Refused
from tests.each import each
from tests.paper.photo_sheets.camera import photo_of
from tests.paper.photo_sheets.cases import case
from tests.paper.photo_sheets.clean_sheet import DOTS_PER_MM, CleanSheet, drawn_sheet
from tests.paper.photo_sheets.measuring import Counts, count, upper_bound
from tests.paper.photo_sheets.pens import Hand, Pen
from tests.paper.photo_sheets.printed_sheets import printed_sheets
from tests.paper.photo_sheets.shots import PLAIN, Shot
from tests.paper.photo_sheets.ticking import cross, filled, ring, tick

BALLPOINT = Pen("black ballpoint", (30, 30, 32), 0.5, 0.95)
FIXED = (2, 4, 6, 10, 14, 20)  # the first whose photo must be accepted


@pytest.fixture(scope="module")
def clean() -> list[CleanSheet]:
    return [drawn_sheet(1, 1), drawn_sheet(2, 2)]


@pytest.fixture(scope="module")
def printed() -> list[CleanSheet]:
    return printed_sheets()


@pytest.fixture(scope="module")
def plain(clean: list[CleanSheet]) -> list[Image.Image]:
    """The plain photo of each, taken once. Who paints on one takes a copy."""
    return [photo(sheet) for sheet in clean]


def photo(sheet: CleanSheet, shot: Shot = PLAIN) -> Image.Image:
    return open_photo(photo_of(sheet.pictures[0], shot, Random(5)))[0]


def states(sheet: CleanSheet, image: Image.Image) -> list[BoxState]:
    return [box.state for box in read_page(image, codes_in(image)[0], sheet.layout.pages[0], sheet.layout).boxes]


def why(sheet: CleanSheet, image: Image.Image, page: SheetPage | None = None, code: FoundCode | None = None) -> str:
    """code: where it was found already."""
    with pytest.raises(Refused) as refused:
        read_page(image, code or codes_in(image)[0], page or sheet.layout.pages[0], sheet.layout)
    assert refused.value.what_to_do
    return refused.value.why


def test_photos_that_look_all_right_are_read_and_nothing_is_read_wrong(printed: list[CleanSheet]) -> None:
    counts = Counts()
    for seed in FIXED:
        count(counts, case(seed, printed))
    assert counts.usable_accepted == counts.usable == len(FIXED)
    assert counts.wrong == counts.passed == counts.wrong_sheets == counts.wrong_boxes == 0
    assert counts.asked_boxes < 0.05 * counts.boxes


def test_a_clean_sheet_has_every_box_empty_and_each_box_and_room_comes_as_a_picture(
    clean: list[CleanSheet], plain: list[Image.Image]
) -> None:
    image = plain[1]
    page = clean[1].layout.pages[0]
    read = read_page(image, codes_in(image)[0], page, clean[1].layout)
    assert {box.state for box in read.boxes} == {BoxState.EMPTY}
    assert read.code == page.code and read.marks_count == 6
    assert [box.name for box in read.boxes] == [box.name for box in page.boxes]
    assert min(box.confidence for box in read.boxes) > 0.5
    for picture in [*(box.picture for box in read.boxes), *(room.picture for room in read.rooms)]:
        opened = Image.open(io.BytesIO(picture))
        assert opened.format == "PNG" and min(opened.size) > 60
    assert len(read.rooms) == 1


def test_every_printed_page_without_a_mark_is_read_as_untouched(printed: list[CleanSheet]) -> None:
    """On both papers: nothing that is printed comes so near to a box that it looks like ink."""
    for sheet in printed[1:]:
        for page, picture in zip(sheet.layout.pages, sheet.pictures, strict=True):
            (image,) = open_photo(photo_of(picture, PLAIN, Random(5)))
            (code,) = codes_in(image)
            read = read_page(image, code, page, sheet.layout)
            assert {box.state for box in read.boxes} <= {BoxState.EMPTY}
            assert {row_answer(*pair).answer for pair in zip(read.boxes[::2], read.boxes[1::2], strict=True)} <= {
                Answer.NONE
            }


@pytest.mark.parametrize("turn", [37, 90])
def test_a_page_is_found_however_it_is_turned(clean: list[CleanSheet], turn: int) -> None:
    image = photo(clean[0], replace(PLAIN, turn=turn, size=(2000, 2000)))
    assert set(states(clean[0], image)) == {BoxState.EMPTY}


def ticked(sheet: CleanSheet) -> Hand:
    return Hand(sheet.pictures[0].copy(), DOTS_PER_MM, BALLPOINT, Random(3))


def answers(sheet: CleanSheet, hand: Hand, rows: int) -> list[Answer]:
    image = open_photo(photo_of(hand.page, PLAIN, Random(5)))[0]
    read = read_page(image, codes_in(image)[0], sheet.layout.pages[0], sheet.layout)
    return [row_answer(read.boxes[2 * row], read.boxes[2 * row + 1]).answer for row in range(rows)]


def test_a_correction_counts_only_where_it_was_made_as_the_sheet_asks(clean: list[CleanSheet]) -> None:
    sheet, rng = clean[0], Random(3)
    hand, rows = ticked(sheet), sheet.rows[0]
    wanted = {
        1: (Answer.GOOD, (tick, ring), (cross, filled)),
        4: (Answer.FAULT, (cross, filled), (tick, ring)),
        7: (Answer.UNSURE, (tick, ring), (cross,)),  # ringed good, and yet a fault that nobody took back
        10: (Answer.UNSURE, (tick,), (cross, filled)),  # taken back, no ring
        13: (Answer.UNSURE, (tick, ring), (tick, ring)),
        16: (Answer.UNSURE, (), (filled,)),
        19: (Answer.UNSURE, (), (ring,)),
        21: (Answer.UNSURE, (tick,), (tick,)),
    }
    for row, (_, good, fault) in wanted.items():
        for spot, deeds in zip(rows[row], (good, fault), strict=True):
            for deed in deeds:
                deed(hand, spot.middle, rng)
    read = answers(sheet, hand, 22)
    assert {row: read[row] for row in wanted} == {row: answer for row, (answer, _, _) in wanted.items()}


def test_a_mark_that_missed_its_box_a_dot_and_a_smear_are_asked(clean: list[CleanSheet]) -> None:
    sheet = clean[0]
    hand, rows = ticked(sheet), sheet.rows[0]
    for row in range(2, 6):
        tick(hand, rows[row][0].middle, Random(row))
    (x, y), (dot_x, dot_y), (dirt_x, dirt_y) = (rows[row][1].middle for row in (8, 11, 14))
    cross(hand, (x + 4.6, y), Random(1))
    hand.dot((dot_x, dot_y), 1.0)
    hand.smudge((dirt_x, dirt_y), 5.0, 120)
    read = answers(sheet, hand, 15)
    assert read[2:6] == [Answer.GOOD] * 4
    assert [read[row] for row in (8, 11, 14)] == [Answer.UNSURE] * 3


def test_a_scan_is_read_page_by_page(clean: list[CleanSheet]) -> None:
    out = io.BytesIO()
    first, second = (sheet.pictures[0] for sheet in clean)
    first.save(out, "PDF", save_all=True, append_images=[second], resolution=DOTS_PER_MM * 25.4)
    pages = open_photo(out.getvalue())
    assert [codes_in(page)[0].text for page in pages] == [sheet.layout.pages[0].code for sheet in clean]
    assert set(states(clean[1], pages[1])) == {BoxState.EMPTY}


def test_a_scan_of_a_whole_binder_is_refused() -> None:
    out = io.BytesIO()
    page = Image.new("1", (30, 40), 1)
    page.save(out, "PDF", save_all=True, append_images=[page] * MOST_PAGES)
    with pytest.raises(Refused, match="41 pages"):
        open_photo(out.getvalue())


def test_two_sheets_side_by_side_are_both_read(clean: list[CleanSheet], plain: list[Image.Image]) -> None:
    left, right = plain
    both = Image.new("L", (left.width + right.width, left.height), 90)
    both.paste(left, (0, 0))
    both.paste(right, (left.width, 0))
    codes = codes_in(both)
    assert [code.text for code in codes] == [sheet.layout.pages[0].code for sheet in clean]
    for code, sheet in zip(codes, clean, strict=True):
        read = read_page(both, code, sheet.layout.pages[0], sheet.layout)
        assert {box.state for box in read.boxes} == {BoxState.EMPTY}


def test_a_photo_without_a_sheet_is_refused() -> None:
    with pytest.raises(Refused, match="code"):
        codes_in(Image.linear_gradient("L").resize((900, 1200)))


@pytest.mark.parametrize("text", ["30483", "A-2026-014901J5N7J4", "no sheet"])
def test_a_code_that_is_no_sheet_s_is_none(text: str) -> None:
    """Also one in which a sign was read wrong: the check character does not fit."""
    out = io.BytesIO()
    segno.make(text, micro=False).save(out, "png", scale=9, border=12)
    (image,) = open_photo(out.getvalue())
    with pytest.raises(Refused, match="code"):
        codes_in(image)


@pytest.mark.parametrize("size", [(1, 1), (2, 900), (1, 2800)])
def test_a_picture_with_no_room_for_a_sheet_is_refused_like_any_other(size: tuple[int, int]) -> None:
    with pytest.raises(Refused):
        codes_in(Image.new("L", size, 200))


def test_what_is_dark_blurred_or_far_away_is_refused_as_such(clean: list[CleanSheet]) -> None:
    sheet = clean[0]
    for shot, said in (
        (replace(PLAIN, light=0.08), "dark"),
        (replace(PLAIN, blur_px=7.0), "blurred"),
        (replace(PLAIN, blur_px=2.6), "blurred"),
        (replace(PLAIN, fill=0.34, size=(1500, 2000)), "small"),
    ):
        assert said in why(sheet, photo(sheet, shot)), shot


def test_a_corner_cut_off_and_marks_under_fingers_are_named(clean: list[CleanSheet], plain: list[Image.Image]) -> None:
    sheet, whole = clean[0], plain[0].copy()
    cut = whole.crop((0, 0, whole.width, whole.height // 2 - 100))
    assert "part of the page is missing" in why(sheet, cut) and "bottom left" in why(sheet, cut)
    draw = ImageDraw.Draw(whole)
    for x, y in ((0, 1700), (1250, 1700), (0, 700)):
        draw.rectangle((x, y, x + 220, y + 400), fill=120)
    said = why(sheet, whole)
    assert "square marks" in said
    assert "bottom left" in said and "bottom right" in said and "left edge" in said and "top left" not in said


def test_glare_over_the_boxes_is_refused(clean: list[CleanSheet], plain: list[Image.Image]) -> None:
    whole = plain[1].copy()
    ImageDraw.Draw(whole).ellipse((150, 500, 1100, 1500), fill=250)
    assert "boxes" in why(clean[1], whole)


def test_another_page_than_the_one_asked_for_is_refused(clean: list[CleanSheet], plain: list[Image.Image]) -> None:
    assert "another page" in why(clean[0], plain[0], clean[1].layout.pages[0])


def moved(page: SheetPage, across_mm: float, down_mm: float) -> SheetPage:
    boxes = tuple(
        Placed(box.name, replace(box.spot, left_mm=box.spot.left_mm + across_mm, top_mm=box.spot.top_mm + down_mm))
        for box in page.boxes
    )
    return replace(page, boxes=boxes)


@pytest.mark.parametrize("pitch", [(7.0, 12.0), (9.0, 9.0)])
def test_boxes_looked_for_in_another_row_or_column_are_refused(pitch: tuple[float, float]) -> None:
    """Even where all rows are the same height, and every box looks like the next."""
    sheet = drawn_sheet(3, 1, pitch)
    image, page, rows = photo(sheet), sheet.layout.pages[0], sheet.rows[0]
    step = rows[1][0].top_mm - rows[0][0].top_mm
    assert set(states(sheet, image)) == {BoxState.EMPTY}
    code = codes_in(image)[0]
    for across, down in ((0, step), (0, -step), (0, 2 * step), (11.0, 0), (-11.0, 0), (0, step / 2), (4.0, 4.0)):
        assert "box" in why(sheet, image, moved(page, across, down), code), (across, down)


def test_marks_that_are_not_this_page_s_are_refused(clean: list[CleanSheet], plain: list[Image.Image]) -> None:
    page = clean[0].layout.pages[0]
    marks = tuple(replace(mark, top_mm=mark.top_mm * 0.8) for mark in page.marks)
    assert why(clean[0], plain[0], replace(page, marks=marks))


def box(state: BoxState, solid: Seen, ringed: Seen) -> BoxRead:
    return BoxRead("", state, 0.9 if state is BoxState.MARKED else 0.7, solid, ringed, b"")


ANY_BOX = [box(*one) for one in product(BoxState, Seen, Seen)]


def test_a_row_never_passes_a_fault() -> None:
    for good, fault in product(ANY_BOX, ANY_BOX):
        read = row_answer(good, fault)
        assert read.confidence == min(good.confidence, fault.confidence)
        if read.answer is Answer.NONE:
            assert good.state is fault.state is BoxState.EMPTY
        if read.answer is Answer.GOOD and fault.state is not BoxState.EMPTY:
            assert fault.solid is Seen.YES and good.ringed is Seen.YES and fault.ringed is Seen.NO
        if BoxState.UNSURE in {good.state, fault.state}:
            assert read.answer is Answer.UNSURE


def test_each_answer_can_be_given() -> None:
    empty = box(BoxState.EMPTY, Seen.NO, Seen.NO)
    marked = box(BoxState.MARKED, Seen.NO, Seen.NO)
    assert row_answer(marked, empty).answer is Answer.GOOD
    assert row_answer(empty, marked).answer is Answer.FAULT
    assert row_answer(empty, empty).answer is Answer.NONE
    assert row_answer(marked, marked).answer is Answer.UNSURE
    chosen, taken_back = box(BoxState.MARKED, Seen.NO, Seen.YES), box(BoxState.MARKED, Seen.YES, Seen.NO)
    assert row_answer(chosen, taken_back).answer is Answer.GOOD
    assert row_answer(taken_back, chosen).answer is Answer.FAULT


@each(
    ("data", "said"),
    [
        (b"", "empty"),
        (b"\x00\x00\x00\x18ftypheic" + bytes(40), "HEIC"),
        (b"PK\x03\x04" + bytes(40), "office"),
        (b"GIF89a" + bytes(40), "no PDF, JPEG or PNG"),
        (b"%PDF-1.7\n" + bytes(40), "cannot be read as a PDF"),
        (b"\xff\xd8\xff" + bytes(40), "broken"),
    ],
)
def test_other_files_are_refused_with_the_way_out(data: bytes, said: str) -> None:
    with pytest.raises(Refused, match=said) as refused:
        open_photo(data)
    assert refused.value.what_to_do


def test_a_picture_of_too_many_dots_is_refused() -> None:
    out = io.BytesIO()
    Image.new("1", (9000, 9000)).save(out, "PNG")
    with pytest.raises(Refused, match="million dots"):
        open_photo(out.getvalue())


@pytest.mark.parametrize(
    ("mode", "form"), [("L", "JPEG"), ("RGBA", "PNG"), ("I;16", "PNG"), ("1", "PNG"), ("P", "PNG")]
)
def test_a_picture_of_any_kind_becomes_grey_and_no_larger_than_needed(mode: str, form: str) -> None:
    out = io.BytesIO()
    made = Image.new("I;16", (3000, 300), 60000) if mode == "I;16" else Image.new("L", (3000, 300), 240).convert(mode)
    made.save(out, form)
    (opened,) = open_photo(out.getvalue())
    assert opened.mode == "L" and opened.size == (LONGEST_SIDE_PX, 280)
    assert opened.resize((1, 1)).tobytes()[0] > 200


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(["JPEG", "PNG", "PDF"]), st.integers(0, 400), st.binary(min_size=1, max_size=12))
def test_bytes_made_to_harm_are_opened_or_refused(form: str, at: int, instead: bytes) -> None:
    out = io.BytesIO()
    Image.linear_gradient("L").resize((60, 40)).save(out, form)
    data = out.getvalue()
    try:
        pictures = open_photo(data[:at] + instead + data[at + len(instead) :])
    except Refused as refused:
        assert refused.why and refused.what_to_do
    else:
        assert all(max(one.size) <= LONGEST_SIDE_PX for one in pictures)


def test_the_bound_on_what_may_be_wrong_is_that_of_the_tables() -> None:
    assert upper_bound(0, 10_000) == pytest.approx(2.995e-4, rel=1e-3)
    assert upper_bound(1, 100) == pytest.approx(0.0466, abs=1e-4)
    assert upper_bound(5, 5) == 1.0


@pytest.mark.parametrize("across_mm", [0.8, 1.4, 2.0])
def test_a_dot_is_asked_wherever_in_the_box_it_lies(clean: list[CleanSheet], across_mm: float) -> None:
    """Where the frame cuts it, what is left of it is longer than wide."""
    sheet = clean[0]
    hand, rows = ticked(sheet), sheet.rows[0]
    offsets = [(-2.0, 0.0), (-1.6, 0.3), (-1.2, -0.4), (0.0, 0.0), (1.2, 0.5), (1.6, 0.0), (2.0, -0.5), (0.2, 1.6)]
    for row, (across, down) in enumerate(offsets):
        x, y = rows[2 * row][0].middle
        hand.dot((x + across, y + down), across_mm)
    read = answers(sheet, hand, 2 * len(offsets))
    assert {read[2 * row] for row in range(len(offsets))} == {Answer.UNSURE}
    assert set(read[1::2]) == {Answer.NONE}
