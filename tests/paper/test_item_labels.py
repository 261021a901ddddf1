"""Labels: each whole inside its own label, none over another, its code the tag, on every size of sheet."""

import re

import pytest
from msgspec.structs import replace

from inspector.gear.label_sizes import CUT_TAG, LABEL_SIZES, LabelSize, measure_words, size_words
from inspector.gear.tags import ItemLabel, LabelSheet
from inspector.paper.item_labels import item_labels, too_long_for
from inspector.paper.page_style import MM, PageSize
from inspector.paper.printed import Printed
from tests.each import each
from tests.paper.codes import code_texts, codes_by_page
from tests.paper.conftest import imprint
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    opened,
    page_texts,
    sign_boxes,
    sign_heights,
    squeezed,
)

SHEETS = [one for one in LABEL_SIZES if not one.is_cut_apart]
CLUB = "Sandbar Touring Club"
KNIFE_PT = 1.0  # so much blank is left at least at the edge of a label


def labels(count: int) -> tuple[ItemLabel, ...]:
    """So many labels of shackles."""
    return tuple(ItemLabel(f"SH-{number:03}", "Bow shackle", "WLL 4.75 t, factor 6") for number in range(count))


def sheet(size: LabelSize, *given: ItemLabel, start: int = 1) -> LabelSheet:
    """Labels on sheets of a size."""
    return LabelSheet(imprint("Item labels", "M-ABCD-0001"), size, start, given)


def assert_each_in_its_label(printed: Printed, size: LabelSize) -> None:
    """Every sign on the pages of labels lies inside one label of the grid, clear of its edges."""
    paper = PageSize(size.paper)
    wide = (size.columns * size.width_mm + (size.columns - 1) * size.gap_mm) * MM
    left, top = (paper.width_pt - wide) / 2, (paper.height_pt - size.rows * size.height_mm * MM) / 2
    document = opened(printed.pdf)
    for number in range(len(document) - 1):
        assert document[number].get_size() == pytest.approx((paper.width_pt, paper.height_pt), abs=0.1)
        for box in sign_boxes(document[number]):
            across = (box[0] - left) % ((size.width_mm + size.gap_mm) * MM)
            down = (paper.height_pt - box[3] - top) % (size.height_mm * MM)
            assert across >= KNIFE_PT and across + box[2] - box[0] <= size.width_mm * MM - KNIFE_PT, box
            assert down >= KNIFE_PT and down + box[3] - box[1] <= size.height_mm * MM - KNIFE_PT, box
    document.close()


@pytest.mark.parametrize("size", SHEETS, ids=[one.key for one in SHEETS])
def test_a_full_sheet_of_every_size_lies_in_its_labels(size: LabelSize) -> None:
    printed = item_labels(sheet(size, *labels(size.count)), PageSize.A4)
    assert printed.page_count == 2 and printed.missing_glyphs == ()
    assert_no_text_on_text(printed)
    assert_each_in_its_label(printed, size)
    assert code_texts(printed) == [one.tag for one in labels(size.count)]
    text = page_texts(printed)[0]
    assert text.count("Bow shackle") == size.count
    assert squeezed(text).count(squeezed("See the register.")) == size.count
    assert squeezed(text).count(squeezed("WLL 4.75 t, factor 6")) == size.count
    assert squeezed(text).count(squeezed(CLUB)) == size.count


@each("size", SHEETS, ids=[one.key for one in SHEETS])
def test_the_grid_lies_on_its_paper_and_its_modules_are_large_enough(size: LabelSize) -> None:
    paper = PageSize(size.paper)
    assert size.columns * size.width_mm + (size.columns - 1) * size.gap_mm <= paper.width_pt / MM + 0.01
    assert size.rows * size.height_mm <= paper.height_pt / MM
    printed = item_labels(sheet(size, *labels(1)), PageSize.A4)
    (code,) = codes_by_page(printed)[0]
    side = (code.position.top_right.x - code.position.top_left.x) / 150 * 25.4
    assert side / 21 >= 0.5 - 0.02  # a corner is read to a third of a millimetre at this size
    assert measure_words(size) in size_words(size) and str(size.count) in size_words(size)


def test_a_begun_sheet_is_used_up_from_its_first_free_place() -> None:
    size = next(one for one in SHEETS if one.key == "99x38")
    made = sheet(size, *labels(13), start=3)
    assert (made.sheet_count, made.next_place) == (2, 2)
    printed = item_labels(made, PageSize.A4)
    first, second, about = codes_by_page(printed)
    assert len(first) == 12 and [one.text for one in second] == ["SH-012"] and not about
    highest = min(first, key=lambda one: one.position.top_left.y + one.position.top_left.x / 1000)
    row = (297 - 7 * 38.1) / 2 + 38.1  # the second row of the sheet
    assert highest.text == "SH-000"
    assert row < highest.position.top_left.y / 150 * 25.4 < row + 38.1
    text = page_texts(printed)[-1]
    assert "The first label stands at place 3" in text
    assert "used up to place 1; begin it next time at 2" in text and "99.1 mm × 38.1 mm" in text


def test_a_sheet_that_is_full_has_no_place_left() -> None:
    size = SHEETS[0]
    made = sheet(size, *labels(size.count))
    assert (made.sheet_count, made.next_place) == (1, 1)
    assert "used up" not in all_text(item_labels(made, PageSize.A4))


def test_cautions_stand_on_the_page_about_the_labels() -> None:
    printed = item_labels(sheet(SHEETS[0], *labels(3)), PageSize.LETTER)
    about = page_texts(printed)[-1]
    for said in (*imprint("", "").cautions, "M-ABCD-0001", "Print at full size", "SH-000, SH-001, SH-002"):
        assert said in about
    assert "M-ABCD-0001" not in page_texts(printed)[0]


def test_what_has_no_room_is_named_and_what_has_is_whole() -> None:
    long = ItemLabel("MAST-FOOT-SHACKLE-000017", "Bow shackle", "WLL 4.75 t, factor 6")
    wordy = ItemLabel("SH-1", "Receiver insert of the long vehicle's second crew " * 3, "WLL 4.75 t, factor 6")
    club = "Joint recovery and touring association of the northern spit and its neighbours"
    small, large = (next(one for one in SHEETS if one.key == key) for key in ("2.6x1in", "99x68"))
    assert too_long_for([wordy, *labels(2)], small, club) == ("SH-1",)
    assert too_long_for([long, wordy], large, club) == () and too_long_for([wordy], CUT_TAG, club) == ()
    printed = item_labels(
        replace(sheet(large, long, wordy), imprint=replace(imprint("x", "y"), club=club)), PageSize.A4
    )
    assert_no_text_on_text(printed)
    assert_each_in_its_label(printed, large)
    assert squeezed(club) in squeezed(page_texts(printed)[0]) and squeezed(wordy.kind_name) in squeezed(
        all_text(printed)
    )


@pytest.mark.parametrize("page", PageSize)
def test_large_tags_are_cut_apart_six_to_a_page(page: PageSize) -> None:
    tags = (*labels(6), ItemLabel("Ж" * 24, "Kinetic strap", "MBS 8,000 kg " * 6))
    printed = item_labels(sheet(CUT_TAG, *tags), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.page_count == 2
    assert code_texts(printed) == [one.tag for one in tags]
    assert all_text(printed).count("Mind:") == 1
    assert sign_heights(printed)["S"] > 45


def test_a_begun_page_of_large_tags_is_used_up() -> None:
    printed = item_labels(sheet(CUT_TAG, *labels(2), start=6), PageSize.A4)
    assert [[one.text for one in page] for page in codes_by_page(printed)] == [["SH-000"], ["SH-001"]]


@pytest.mark.parametrize(("key", "count", "each", "page_count"), [("2.6x1in", 300, 30, 11), ("tag", 60, 6, 10)])
def test_many_labels_are_printed_each_on_its_page(key: str, count: int, each: int, page_count: int) -> None:
    size = next(one for one in LABEL_SIZES if one.key == key)
    given = labels(count)
    printed = item_labels(sheet(size, *given), PageSize.A4)
    pages = page_texts(printed)
    assert len(pages) == printed.page_count == page_count
    for number in range(count // each):
        wanted = [one.tag for one in given[number * each : (number + 1) * each]]
        assert re.findall(r"SH-\d+", pages[number]) == wanted, number
        assert pages[number].count("WLL 4.75 t, factor 6") == each, number


def test_keys_of_sizes_are_their_own() -> None:
    assert len({one.key for one in LABEL_SIZES}) == len(LABEL_SIZES)
