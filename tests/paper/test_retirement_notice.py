"""The retirement notice: nobody can miss it, and it says why."""

from io import BytesIO

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from inspector.gear.capacity import Capacity
from inspector.gear.papers import RetirementNotice
from inspector.gear.verdict import Fact
from inspector.paper.page_style import PageSize
from inspector.paper.piece_pictures import is_ball
from inspector.paper.retirement_notice import retirement_notice
from inspector.units import System
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts, squeezed


@pytest.mark.parametrize("page", PageSize)
def test_a_tubes_notice_takes_at_most_two_pages(tube_notice: RetirementNotice, page: PageSize) -> None:
    printed = retirement_notice(tube_notice, page)
    assert printed.page_count <= 2
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


@pytest.mark.parametrize("page", PageSize)
def test_a_balls_notice_takes_one_page(ball_notice: RetirementNotice, page: PageSize) -> None:
    printed = retirement_notice(ball_notice, page)
    assert printed.page_count == 1
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


def test_the_first_page_says_retired_what_whose_and_why(tube_notice: RetirementNotice) -> None:
    first = page_texts(retirement_notice(tube_notice, PageSize.A4))[0]
    for text in ("RETIRED – do not use again", "T-014 · Hitch receiver", "Owner", "Retired on", tube_notice.plain):
        assert text in first
    for fact in tube_notice.piece:
        assert fact.label in first and squeezed(fact.text) in squeezed(first)


def test_each_reason_shows_value_limit_and_source(tube_notice: RetirementNotice) -> None:
    text = squeezed(page_texts(retirement_notice(tube_notice, PageSize.A4))[0])
    for reason in tube_notice.reasons:
        for part in (reason.sentence, reason.value, reason.limit, reason.source):
            assert squeezed(part) in text
    assert text.count("byitselfonly:Hold") == 1


def test_a_tube_shows_both_pictures_of_its_wall(tube_notice: RetirementNotice) -> None:
    text = all_text(retirement_notice(tube_notice, PageSize.A4))
    for words in ("What is left of the wall", "The wall over the years", "new 6.3 mm", "now 2.2 mm", "must keep 3 mm"):
        assert words in text
    assert "Why a ball is no recovery point" not in text
    assert "The wall is below its limit" in text


@pytest.mark.parametrize("page", PageSize)
def test_it_shows_what_became_of_the_strength_and_what_gives_way_first(
    tube_notice: RetirementNotice, ball_notice: RetirementNotice, thinned: Capacity, page: PageSize
) -> None:
    for notice in (tube_notice, ball_notice):
        printed = retirement_notice(replace(notice, capacity=thinned), page)
        text = squeezed(all_text(printed))
        for said in ("What has become of its strength", "−62.7 %", "What gives way first", "25 kN", "Not in the sum"):
            assert squeezed(said) in text
        assert_within_margins(printed)
        assert_no_text_on_text(printed)


def test_a_strength_without_losses_is_not_drawn(ball_notice: RetirementNotice) -> None:
    printed = retirement_notice(replace(ball_notice, capacity=Capacity(80e3, 80e3)), PageSize.A4)
    assert "strength" not in all_text(printed)


def test_the_pictures_follow_the_clubs_units(tube_notice: RetirementNotice) -> None:
    text = all_text(retirement_notice(tube_notice, PageSize.LETTER, System.IMPERIAL))
    assert "new 0.248 in" in text
    assert "2.4 mm" in text  # as the officer typed it


def test_a_ball_shows_why_it_breaks(ball_notice: RetirementNotice) -> None:
    text = all_text(retirement_notice(ball_notice, PageSize.A4))
    assert "Ball on its shank: single shear" in text and "Pin through a receiver: double shear" in text
    assert "What is left of the wall" not in text


@pytest.mark.parametrize(
    ("family", "kind", "ball"),
    [
        ("ball", "Tow ball", True),
        ("towing", "Ball mount", True),
        ("ball_mount", "Shank", True),
        ("strap", "Ballast strap", False),
    ],
)
def test_a_ball_of_an_old_notice_is_known_by_its_words(family: str, kind: str, ball: bool) -> None:
    assert is_ball("", family, kind) is ball


@pytest.mark.parametrize(
    ("family", "kind", "ball"), [("ball", "tow_ball", True), ("tube", "ball_mount", True), ("tube", "receiver", False)]
)
def test_a_ball_is_known_in_every_language(family: str, kind: str, ball: bool) -> None:
    assert is_ball(kind, family, "Kugel oder ball") is ball


def test_a_piece_without_picture_still_prints(ball_notice: RetirementNotice) -> None:
    printed = retirement_notice(replace(ball_notice, family="strap", kind_name="Kinetic strap"), PageSize.A4)
    assert "shear" not in all_text(printed)
    assert printed.page_count == 1


def test_it_says_what_to_do_and_what_not(tube_notice: RetirementNotice) -> None:
    text = squeezed(all_text(retirement_notice(tube_notice, PageSize.A4)))
    for part in (
        tube_notice.never_again,
        tube_notice.destroy,
        tube_notice.replace_by,
        "evidence of an incident it is kept whole",
    ):
        assert squeezed(part) in text


def test_the_slip_stands_on_the_last_page_with_tag_number_and_lines(tube_notice: RetirementNotice) -> None:
    last = page_texts(retirement_notice(tube_notice, PageSize.A4))[-1]
    slip = last[last.index("Proof of destruction") :]
    for part in ("T-014", "A-2026-0114", "How", "Destroyed by", "Date", "Signature"):
        assert part in slip


@pytest.mark.parametrize("page", PageSize)
def test_every_page_has_its_head_foot_and_cautions(tube_notice: RetirementNotice, page: PageSize) -> None:
    printed = retirement_notice(tube_notice, page)
    for number, text in enumerate(page_texts(printed), 1):
        assert "Sandbar Touring Club" in text and "Retirement notice" in text and "A-2026-0114" in text
        assert f"Page {number} of {printed.page_count}" in text
        assert "Rests on: Rulebook of the club" in text
    assert all(squeezed(caution) in squeezed(all_text(printed)) for caution in tube_notice.imprint.cautions)


def test_many_facts_reasons_and_long_texts_lose_nothing(tube_notice: RetirementNotice) -> None:
    long = "A long text that goes on about what was found and where. " * 12
    reasons = tuple(replace(reason, sentence=long, source=long) for reason in tube_notice.reasons * 4)
    facts = tuple(Fact(f"Label {number}", "Q" * 90) for number in range(13))
    printed = retirement_notice(
        replace(tube_notice, reasons=reasons, piece=facts, destroy=long * 4, owner=long), PageSize.LETTER
    )
    text = squeezed(all_text(printed))
    assert text.count("Q" * 90) == 13
    assert text.count(squeezed(long)) >= 5
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


def test_no_certificate_is_claimed(tube_notice: RetirementNotice) -> None:
    text = all_text(retirement_notice(tube_notice, PageSize.A4)).lower()
    assert "it does not certify any part" in text
    assert "complies" not in text and "compliant" not in text and "certified to" not in text


def test_the_file_names_itself(ball_notice: RetirementNotice) -> None:
    said = PdfReader(BytesIO(retirement_notice(ball_notice, PageSize.A4).pdf)).metadata
    assert said is not None
    assert (said.title, said.subject) == ("Retirement notice A-2026-0114", "B-007 Tow ball")
    assert str(said["/Keywords"]) == "A-2026-0114"


def test_a_missing_sign_in_a_picture_is_reported_too(tube_notice: RetirementNotice) -> None:
    assert tube_notice.wall is not None
    odd = replace(tube_notice.wall, required_because="ह")
    assert retirement_notice(replace(tube_notice, wall=odd), PageSize.A4).missing_glyphs == ("ह",)
