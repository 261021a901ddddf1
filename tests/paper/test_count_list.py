"""The list of a count: every piece with its boxes, big enough, on both papers."""

import pytest
from msgspec.structs import replace

from inspector.gear.papers import CountLine, CountList, CountPlace, ElsewhereLine
from inspector.paper.count_list import count_list
from inspector.paper.page_style import MM, PageSize
from tests.paper.conftest import imprint
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    fields_by_page,
    page_texts,
)

APART = "Retired: keep it apart, never use it."


def lines(count: int, first: int = 1) -> tuple[CountLine, ...]:
    return tuple(
        CountLine(n, f"SH-{n:03}", "Bow shackle", "WLL 4.75 t, factor 6", APART if n % 5 == 0 else "")
        for n in range(first, first + count)
    )


@pytest.fixture
def listed() -> CountList:
    """Forty pieces at two places, two elsewhere."""
    places = (CountPlace("Shed, hook 1", lines(25)), CountPlace("Place not written down", lines(15, 26)))
    away = (ElsewhereLine("KS-01", "Kinetic strap", "on loan to Di Member"), ElsewhereLine("RP-1", "Point", "on V-01"))
    return CountList(
        imprint("Count list", "K-ABCD-0001"), "2026-11", "everything in store", "13 Jun 2026", places, away
    )


@pytest.mark.parametrize("page", PageSize)
def test_each_piece_has_two_boxes_of_seven_millimetres(listed: CountList, page: PageSize) -> None:
    printed = count_list(listed, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    fields = {name: box for found in fields_by_page(printed) for name, box in found.items()}
    assert set(fields) == {f"SH-{n:03}.{box}" for n in range(1, 41) for box in ("there", "not_there")}
    for left, bottom, right, top in fields.values():
        assert min(right - left, top - bottom) >= 6.5 * MM
    for n in range(1, 41):
        there, gone = fields[f"SH-{n:03}.there"], fields[f"SH-{n:03}.not_there"]
        assert gone[0] - there[2] >= 5 * MM, "a thumb's tick does not reach the other box"


def test_the_list_tells_place_tag_kind_and_marking(listed: CountList) -> None:
    text = all_text(count_list(listed, PageSize.A4))
    for place in listed.places:
        assert place.name in text
        for one in place.lines:
            assert f"{one.number} {one.tag} {one.kind_name} {one.marked} {one.kept_apart}".strip() in text
    for away in listed.elsewhere:
        assert f"{away.tag} {away.kind_name} {away.where}" in text


def test_it_says_how_to_count_and_has_room_for_other_labels_and_a_name(listed: CountList) -> None:
    printed = count_list(listed, PageSize.LETTER)
    text = all_text(printed)
    assert "A line without a tick counts as not looked for, never as there." in text
    assert text.count("Where it lies") == 6
    assert "Counted by" in text and "Signature" in text
    for caution in listed.imprint.cautions:
        assert caution in text
    for page in page_texts(printed):
        assert "K-ABCD-0001" in page and "ledger head 9f2c41d07ab3" in page


def test_an_unmarked_piece_and_an_empty_list_are_printed_too(listed: CountList) -> None:
    bare = replace(listed, places=(CountPlace("Shed", (CountLine(1, "SH-1", "Bow shackle", ""),)),), elsewhere=())
    text = all_text(count_list(bare, PageSize.A4))
    assert "SH-1 Bow shackle no mark" in text and "Out or on a vehicle" not in text
    assert count_list(replace(bare, places=()), PageSize.A4).page_count == 1


def test_a_very_long_name_stays_between_the_margins(listed: CountList) -> None:
    long = CountLine(1, "A-TAG-AS-LONG-AS-SOMEBODY-LIKED", "Bow shackle " * 12, "WLL 4.75 t " * 12, APART)
    printed = count_list(replace(listed, places=(CountPlace("Shelf " * 30, (long,)),)), PageSize.A4)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
