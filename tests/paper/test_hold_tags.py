"""Tags for what is held, derated or retired: all that must be read is on each, and its code opens the piece."""

import re

import pytest
from msgspec.structs import replace

from inspector.gear.outcome import Outcome
from inspector.gear.tags import HoldTag, TagSheet
from inspector.paper import hold_tags as laid_out
from inspector.paper.hold_tags import hold_tags
from inspector.paper.page_style import PageSize
from tests.paper.codes import code_texts
from tests.paper.conftest import imprint
from tests.paper.reading import (
    all_text,
    assert_no_text_on_text,
    assert_within_margins,
    page_texts,
    pages_of,
    sign_heights,
    squeezed,
)

HELD = HoldTag(
    "SH-014", "Bow shackle", "WLL 4.75 t, factor 6", Outcome.HOLD, "Do not use it for anything.", "", "",
    "Pin: it does not screw in by hand.", "14 Aug 2026, by Ada Member (name as stated).",
    "It takes a competent person who inspects it and finds it good: pin.",
)  # fmt: skip
DERATED = replace(
    HELD, tag="KS-02", kind_name="Kinetic strap", outcome=Outcome.DERATE, limit="Bears only MBS 79.4 kN now.",
    not_for="Not for static pull and road towing.", may_for="Only for kinetic pull.", why="Strength lost: 10 %.",
)  # fmt: skip
RETIRED = replace(HELD, tag="BM-01", outcome=Outcome.RETIRE, not_for="Never use it again.", release="Nothing.")
LONG = "The sizes differ or the stamp cannot be read, and nobody who may judge it has seen all of it since. " * 5


def sheet(*tags: HoldTag) -> TagSheet:
    """A sheet of tags."""
    return TagSheet(imprint("Hold and derating tags", "D-ABCD-0001"), tags)


def numbered(count: int) -> list[HoldTag]:
    """So many tags of held pieces."""
    return [replace(HELD, tag=f"SH-{number:03}") for number in range(count)]


@pytest.mark.parametrize("page", PageSize)
def test_each_tag_says_all_and_its_code_is_the_tag(page: PageSize) -> None:
    printed = hold_tags(sheet(HELD, DERATED, RETIRED), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.page_count == 1 and printed.missing_glyphs == ()
    text = all_text(printed)
    for one in (HELD, DERATED, RETIRED):
        for said in (one.tag, one.kind_name, one.not_for, one.limit, one.may_for, one.why, one.since, one.release):
            assert squeezed(said) in squeezed(text), said
    assert "HOLD" in text and "DERATE" in text and "RETIRE" in text
    assert squeezed(text).count(squeezed("A decision aid. A competent person decides. D-ABCD-0001")) == 3
    assert text.count("Mind:") == 1
    assert code_texts(printed) == ["BM-01", "KS-02", "SH-014"]


def test_the_tag_is_the_largest_thing_on_it_and_what_it_is_not_for_stands_out() -> None:
    heights = sign_heights(hold_tags(sheet(HELD), PageSize.A4))
    assert max(heights, key=heights.__getitem__) in "SH-014"
    assert heights["S"] > 34 and heights["S"] > 1.5 * heights["D"]  # "D" of "Do not use it", the next largest


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize(("count", "pages"), [(1, 1), (4, 1), (5, 2), (8, 2), (9, 3)])
def test_four_tags_stand_on_a_page(page: PageSize, count: int, pages: int) -> None:
    printed = hold_tags(sheet(*numbered(count)), page)
    assert_within_margins(printed)
    assert printed.page_count == pages
    assert code_texts(printed) == [f"SH-{number:03}" for number in range(count)]


@pytest.mark.parametrize("page", PageSize)
def test_long_names_and_reasons_are_whole_and_over_nothing(page: PageSize) -> None:
    tag = "Ω" * 24
    long = replace(HELD, tag=tag, kind_name="Receiver insert with a very long name " * 3, why=LONG, release=LONG)
    printed = hold_tags(sheet(HELD, long, DERATED), page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert squeezed(all_text(printed)).count(squeezed(LONG)) == 2
    assert tag in code_texts(printed)


def test_nothing_is_tied_to_evidence() -> None:
    held = hold_tags(sheet(HELD), PageSize.A4)
    evidence = hold_tags(sheet(replace(HELD, is_evidence=True)), PageSize.A4)
    assert held.pdf != evidence.pdf
    assert page_texts(held) == page_texts(evidence)


def test_a_hundred_tags_are_printed_four_to_a_page() -> None:
    made = numbered(100)
    printed = hold_tags(sheet(*made), PageSize.A4)
    pages = page_texts(printed)
    assert len(pages) == printed.page_count == 25
    for number, page in enumerate(pages):
        named = list(dict.fromkeys(re.findall(r"SH-\d+", page)))
        assert named == [one.tag for one in made[4 * number : 4 * number + 4]], number


@pytest.mark.parametrize("word", ["Herabgesetzt", "Ausgesondert", "Gesperrt"])
def test_the_word_beside_the_mark_stands_on_one_line_in_a_longer_language(
    word: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(laid_out, "outcome_word", lambda outcome: word)
    for page in PageSize:
        printed = hold_tags(sheet(DERATED, HELD), page)
        assert [line.text for read in pages_of(printed) for line in read.lines].count(word.upper()) == 2
