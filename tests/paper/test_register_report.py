"""The report on all the gear: the answer on the first page, then pictures and lists."""

from datetime import date

import pytest
from msgspec.structs import replace

from inspector.gear.needs import Ending, EndsBy
from inspector.gear.outcome import Outcome
from inspector.gear.papers import ProtocolTable
from inspector.gear.register_report import AgeCount, KindCount, RegisterReport
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.paper.register_report import register_report
from inspector.register.rows import from_body, to_body
from tests.paper.conftest import imprint
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts, squeezed

LONG = "The strap lay in the sun on a roof for a summer and nobody wanted to say whose roof it had been. " * 4


def table(count: int) -> ProtocolTable:
    """A list of so many lines."""
    lines = tuple((f"T-{n:03}", "Bow shackle", "1 Jun 2026", f"reason {n:03}") for n in range(count))
    columns = ("Tag", "Piece", "When", "Why, and where it is")
    return ProtocolTable("Retired since 1 Jan 2026", "", columns, (0.1, 0.2, 0.2, 0.5), lines, "No piece was retired.")


def report(count: int = 3, **changes: object) -> RegisterReport:
    """A report of so many pieces, kinds, endings."""
    kinds = tuple(KindCount(f"Kind {n:02}", n, 1, 2, 0) for n in range(min(count, 22)))
    ends = tuple(
        Ending(f"T-{n:03}", "Hitch receiver", Outcome.FIT, EndsBy.WALL, date(2028, 1, 1)) for n in range(count)
    )
    made = RegisterReport(
        imprint("Report on the recovery gear", "B-2026-0001"), date(2026, 1, 1), KindCount("", 46, 9, 14, 8),
        ("Of 77 pieces 55 may be used, 22 may not.", "No inspection and no reading is due."),
        tuple(f"To decide {n:03}." for n in range(count)), tuple(f"To buy {n:03}." for n in range(count)), kinds,
        (AgeCount("less than 2 years", count), AgeCount("age not known", 0)), ends, date(2031, 6, 1), (table(count),),
    )  # fmt: skip
    return replace(made, **changes)


def checked(made: RegisterReport, page: PageSize = PageSize.A4) -> Printed:
    """The report, with nothing outside the page or on another thing."""
    printed = register_report(made, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.missing_glyphs == ()
    return printed


@pytest.mark.parametrize("page", PageSize)
def test_the_first_page_gives_the_answer_the_counts_and_what_to_do(page: PageSize) -> None:
    first = page_texts(checked(report(), page))[0]
    for said in ("Of 77 pieces 55 may be used, 22 may not.", "46", "Fit", "9", "Derate", "14", "Hold", "8", "Retire",
                 "To decide 002.", "To buy 002.", *report().imprint.cautions):  # fmt: skip
        assert said in first, said


@pytest.mark.parametrize("page", PageSize)
@pytest.mark.parametrize("count", [0, 1, 300])
def test_any_number_of_pieces_prints_and_none_is_lost(page: PageSize, count: int) -> None:
    printed = checked(report(count), page)
    pages = page_texts(printed)
    text = squeezed(" ".join(pages))
    assert all(f"reason{n:03}" in text and f"Todecide{n:03}." in text for n in range(count))
    told = [one for one in pages if "reason 0" in one or "reason 1" in one]
    assert all("Tag Piece When Why, and where it is" in one for one in told)
    if not count:
        for said in ("Nothing is open.", "No piece was retired.", "within a year time alone retires nothing"):
            assert squeezed(said) in text


def test_long_words_lose_nothing() -> None:
    line = ("T-" + "0" * 30, "Fibre winch line " * 4, LONG, LONG)
    made = report(1, answer=(LONG, LONG), decide=(LONG,), buy=(LONG,), tables=(replace(table(0), lines=(line,)),))
    assert squeezed(all_text(checked(made, PageSize.LETTER))).count(squeezed(LONG)) == 6


def test_what_was_kept_prints_the_same() -> None:
    made = report()
    kept = from_body(to_body(made), RegisterReport)
    assert register_report(kept, PageSize.LETTER).pdf == register_report(made, PageSize.LETTER).pdf
