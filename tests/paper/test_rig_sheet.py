"""The rig sheet: everything that was said of the rig stands on it, on both papers, in both units."""

from collections.abc import Callable
from functools import cache
from io import BytesIO

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from inspector.drawings.rig_words import part_name, rig_word
from inspector.gear.papers import RigSheet
from inspector.gear.rig_result import RigFinding, RigOutcome, RigResult, Sensitivity
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.paper.rig_sheet import rig_sheet
from inspector.register.rows import from_body, to_body
from inspector.units import Dimension, System, show
from tests.drawings import rigs
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts, squeezed

Make = Callable[[], RigResult]
EVERY_RIG = pytest.mark.parametrize("make", rigs.RIGS.values(), ids=rigs.RIGS.keys())


def sheet(result: RigResult) -> RigSheet:
    """The sheet of a rig for an invented trip."""
    return RigSheet(imprint("Rig sheet", "G-2026-0007"), result, rigs.VEHICLES, "Winter beach run")


@cache
def printed_of(make: Make, page: PageSize, system: System = System.METRIC) -> Printed:
    """The sheet of one of the rigs; several tests read it."""
    return rig_sheet(sheet(make()), page, system)


@cache
def pages_of(make: Make, page: PageSize) -> tuple[str, ...]:
    """The text of its pages."""
    return tuple(page_texts(printed_of(make, page)))


def text_of(result: RigResult, system: System = System.METRIC) -> str:
    """All its words without any space."""
    return squeezed(all_text(rig_sheet(sheet(result), PageSize.A4, system)))


@EVERY_RIG
@pytest.mark.parametrize("page", PageSize)
def test_it_takes_three_to_five_pages_and_nothing_lies_on_another(make: Make, page: PageSize) -> None:
    system = System.METRIC if page is PageSize.A4 else System.IMPERIAL
    printed = printed_of(make, page, system)
    assert 3 <= printed.page_count <= 5
    assert printed.page_count == len(PdfReader(BytesIO(printed.pdf)).pages)
    assert printed.missing_glyphs == ()
    assert_within_margins(printed)
    assert_no_text_on_text(printed)


@EVERY_RIG
def test_every_word_of_the_result_is_printed(make: Make) -> None:
    result = make()
    text = squeezed(" ".join(pages_of(make, PageSize.A4)))
    missing = [words for words in words_of(result) if squeezed(words).casefold() not in text.casefold()]
    assert missing == []


def words_of(result: RigResult) -> list[str]:
    """All the words that came with a result."""
    load = result.load
    said = [result.headline, result.rig.name, result.stand_off_rule, *result.cautions, *load.steps]
    said += [word for one in load.assumptions for word in (one.what, one.value, one.why, one.source)]
    said += [name for name, _ in load.scales]
    said += [word for one in result.links for word in (part_name(one.tag), one.why, one.side, *one.taken_off)]
    said += [one.kind_name for one in result.links]
    said += [word for one in result.joints for word in (one.name, one.says, one.source, *one.sums)]
    said += [word for one in result.findings for word in (one.says, one.source, *one.about)]
    said += [word for one in result.flying for word in (one.link, *one.parts)]
    said += [one.says for one in result.changes]
    said += [word for _, word, _, _ in result.sensitivity.depths]
    return [word for word in said if word]


@EVERY_RIG
def test_the_first_page_says_the_outcome_the_rig_and_the_vehicles(make: Make) -> None:
    result = make()
    first = pages_of(make, PageSize.A4)[0]
    for words in (
        rig_word(result.outcome),
        result.headline,
        result.rig.name,
        "Winter beach run",
        "V-02 · Small two-door",
    ):
        assert squeezed(words) in squeezed(first)
    assert "Read this first" in first and all(squeezed(one) in squeezed(first) for one in result.cautions)


def test_a_caution_stands_once_in_its_frame() -> None:
    assert text_of(rigs.plain()).count(squeezed(rigs.CAUTIONS[1])) == 1


def test_every_page_carries_club_number_and_page() -> None:
    pages = page_texts(rig_sheet(sheet(rigs.plain()), PageSize.A4))
    for number, page in enumerate(pages, 1):
        for words in (
            "Sandbar Touring Club",
            "G-2026-0007",
            f"Page {number} of {len(pages)}",
            "A decision aid",
            "Rests on",
        ):
            assert words in page


def test_the_numbers_of_each_part_are_in_its_line() -> None:
    text = text_of(rigs.plain())
    for link in rigs.plain().links:
        factor = (link.capacity_n or 0) / link.force_n
        bears, stands = f"{link.force_n / 1e3:g}kN", f"{(link.capacity_n or 0) / 1e3:g}kN"
        name = squeezed(f"{link.tag} · {link.kind_name}")
        lines = [text[at : at + 120] for at in range(len(text)) if text.startswith(name, at)]
        assert any(
            bears in line and stands in line and "2times" in line and f"{factor:.2f}".rstrip("0") in line
            for line in lines
        )


def test_a_joint_with_a_section_shows_it_with_its_number() -> None:
    text = all_text(rig_sheet(sheet(rigs.over_ball()), PageSize.A4))
    assert "Joint 4: SS-14 to TB-03" in text
    assert "single shear" in text and "held here" in text
    assert "Joint 1:" not in text


def test_joints_that_look_alike_are_drawn_once_under_their_numbers() -> None:
    text = all_text(rig_sheet(sheet(rigs.with_receiver()), PageSize.A4))
    assert "Joints 5, 6" in text and text.count("double shear") == 1


def test_what_decides_names_a_forbidden_joint_even_if_no_finding_does() -> None:
    text = text_of(rigs.over_ball())
    assert text.count(squeezed(rigs.BALL.says)) == 2  # there and among the joints
    told = RigFinding("joint", RigOutcome.NEVER, rigs.BALL.says, rigs.BALL.source, ("SS-14", "TB-03"))
    result = replace(rigs.over_ball(), findings=(*rigs.over_ball().findings, told))
    assert text_of(result).count(squeezed(rigs.BALL.says)) == 2


def test_whether_it_moves_is_said_either_way_and_where_nobody_knows() -> None:
    load = rigs.plain().load
    assert "Itmoves:45kN" in text_of(rigs.plain())
    assert "Itdoesnotmove:" in text_of(replace(rigs.plain(), load=replace(load, needed_n=60e3)))
    assert "whetheritmovesisnotknown" in text_of(replace(rigs.plain(), load=replace(load, needed_n=None)))


def test_imperial_figures_are_pounds_and_miles() -> None:
    text = text_of(rigs.plain(), System.IMPERIAL)
    assert "10116lbf" in text and "22054lbf" in text and "mph" in text and "29.5ft" in text
    assert "98.1kN" not in text


def test_an_unknown_strength_is_said_with_its_reason() -> None:
    text = text_of(rigs.unknown())
    assert (
        "strengthnotknown" in text and squeezed("No marking tells its strength, and no certificate is filed.") in text
    )


def test_a_result_with_next_to_nothing_in_it_still_prints() -> None:
    load = replace(rigs.plain().load, scales=(), steps=(), assumptions=())
    nothing = replace(rigs.plain(), links=(), joints=(), findings=(), flying=(), changes=(), weakest="")
    bare = replace(nothing, load=load, sensitivity=Sensitivity(), safety_factor=None)
    text = text_of(bare)
    assert "notknown" in text and "Theload,stepbystep" in text


def test_the_longest_words_and_many_lines_run_on_without_loss() -> None:
    long = replace(rigs.joint("RP-01", "SS-12"), says="It goes on and on " * 60 + "to the end.")
    many = replace(rigs.plain(), joints=(long,) * 12, headline="A headline that nobody would write " * 20)
    printed = rig_sheet(sheet(many), PageSize.LETTER)
    assert_within_margins(printed)
    text = squeezed(all_text(printed))
    assert text.count("totheend.") == 12 and squeezed(many.headline) in text


@EVERY_RIG
def test_it_is_kept_and_read_back_word_for_word(make: Make) -> None:
    made = sheet(make())
    again = from_body(to_body(made), RigSheet)
    assert again == made
    assert rig_sheet(again, PageSize.A4).pdf == rig_sheet(made, PageSize.A4).pdf


@EVERY_RIG
@pytest.mark.parametrize("page", PageSize)
def test_what_flies_stands_on_one_page(make: Make, page: PageSize) -> None:
    result = make()
    if not result.flying:
        return
    pages = [squeezed(one) for one in pages_of(make, page)]
    (told,) = [one for one in pages if squeezed("taken as motion of what flies") in one]
    after = told[told.index(squeezed("taken as motion of what flies")) :]
    speeds = [squeezed(show(one.speed_m_per_s, Dimension.SPEED, System.METRIC)) for one in result.flying]
    assert all(after.count(speed) >= speeds.count(speed) for speed in speeds)
