"""The record of a piece: verdict and reasons first, then everything, on any number of pages."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from inspector.gear.capacity import Capacity
from inspector.gear.damage import DamagePlace, DamageSort, PinWear, StrapDamage, StrapMark
from inspector.gear.item_record import ItemRecord, Passed, SeenOn
from inspector.gear.life import Life, LifeEntry, LifeSort
from inspector.gear.lists import PaperRow
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact
from inspector.paper.item_record import item_record
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from inspector.register.rows import from_body, to_body
from inspector.units import System
from tests.paper.conftest import WALL, imprint, reason
from tests.paper.reading import all_text, assert_no_text_on_text, assert_within_margins, page_texts, squeezed

FIRST, TODAY = date(2019, 4, 2), date(2026, 6, 13)
LONG = "It lay in the sand under the wheel and nobody could say since when, so it was washed and hung up to dry. " * 6
SORTS = (LifeSort.USE, LifeSort.EXPOSURE, LifeSort.LENDING, LifeSort.WORK, LifeSort.PLACE, LifeSort.WORD, LifeSort.FILE)


def seen(number: int) -> SeenOn:
    """An inspection."""
    return SeenOn(
        FIRST + timedelta(days=8 * number), "Inspection", f"Ada {number:03}", "", ("Welds", "Shape"),
        ("Rust inside: bad. Flakes, scale or a hole.",), (f"Wall: left {number} mm (calliper)",), ("Hung up to dry.",),
    )  # fmt: skip


def entries(count: int) -> tuple[LifeEntry, ...]:
    """So many entries over seven years, and a verdict that turned."""
    made = (
        LifeEntry(FIRST + timedelta(days=8 * n), SORTS[n % len(SORTS)], f"Entry {n:03}: it was done (Ada)")
        for n in range(count)
    )
    turned = LifeEntry(TODAY, LifeSort.VERDICT, "Verdict: the wall is too thin", outcome=Outcome.HOLD)
    return (*made, *([turned] if count else []))


def record(count: int = 3, **changes: object) -> ItemRecord:
    """A receiver with so many inspections and entries."""
    made = ItemRecord(
        imprint=imprint("Record of a piece", "D-2026-0007"),
        tag="T-014", kind="hitch_receiver", kind_name="Hitch receiver", family="tube", outcome=Outcome.HOLD,
        judged_on=TODAY, headline="Hold: the wall is too thin.", plain="Do not use it until this is settled.",
        use_line="nothing",
        reasons=(replace(reason("The wall is thin.", "2.2 mm", "3 mm", "club setting", Outcome.HOLD),
                         release="a reading of 3 mm or more"),),
        turns=(Fact("With time", "on 1 Jan 2027"),), piece=(Fact("Owner", "Club"), Fact("Marked", "3,500 kg")),
        sums=(Fact("Wall as new", "6.3 mm"),), passes=(Passed("Welds: good.", "good", "no fault", "common practice"),),
        terms=(Fact("gauge", "what measures"),), wall=WALL, capacity=Capacity(None, None, ()),
        life=Life(FIRST, TODAY, None, entries(count)), seen=tuple(seen(n) for n in reversed(range(count))),
        papers=tuple(PaperRow(f"S-{n:03}", TODAY, "Trip sheet", again=False) for n in range(count)),
        head="a1b2c3d4" * 8, system=System.METRIC,
    )  # fmt: skip
    return replace(made, **changes)


def checked(made: ItemRecord, page: PageSize = PageSize.A4) -> Printed:
    """The record, with nothing outside the page or on another thing."""
    printed = item_record(made, page)
    assert_within_margins(printed)
    assert_no_text_on_text(printed)
    assert printed.missing_glyphs == ()
    return printed


@pytest.mark.parametrize("page", PageSize)
def test_verdict_and_reasons_stand_on_the_first_page_before_all_else(page: PageSize) -> None:
    printed = checked(record(), page)
    first = page_texts(printed)[0]
    places = [
        first.index(one) for one in ("Hold", "T-014", "The wall is too thin.", "Why", "To settle it", "The piece")
    ]
    assert places == sorted(places)
    text = all_text(printed)
    for said in ("a reading of 3 mm or more", "What is left of the wall", "The wall over the years", "Its life",
                 "Welds: good.", "S-002", "Ada 002", "Rust inside: bad.", "a1b2c3d4" * 8,
                 *record().imprint.cautions):  # fmt: skip
        assert said in text, said
    assert all("A competent person decides." in one for one in page_texts(printed))


@pytest.mark.parametrize(
    ("count", "page"), [(0, PageSize.A4), (0, PageSize.LETTER), (1, PageSize.A4), (300, PageSize.LETTER)]
)
def test_a_life_of_any_length_loses_nothing(page: PageSize, count: int) -> None:
    printed = checked(record(count), page)
    text = squeezed(all_text(printed))
    assert all(f"Entry{n:03}:itwasdone" in text and f"Ada{n:03}" in text and f"S-{n:03}" in text for n in range(count))
    if not count:
        for said in ("It was never inspected since it was booked in.", "No document names it yet.",
                     "Nothing was ever written down under:"):  # fmt: skip
            assert squeezed(said) in text


def test_long_words_lose_nothing() -> None:
    many = record(2, kind_name="Hitch receiver " * 9, headline=f"Hold: {LONG}", plain=LONG, tag="T-" + "0" * 30,
                  piece=(Fact("Note", LONG), Fact("Owner", "Ω" * 70)), turns=(Fact("With time", LONG),),
                  seen=(replace(seen(1), aside=(LONG,), by=LONG, state=LONG),))  # fmt: skip
    text = squeezed(all_text(checked(many, PageSize.LETTER)))
    assert text.count(squeezed(LONG)) == 7 and "Ω" * 70 in text


def test_columns_are_named_anew_on_a_further_page() -> None:
    passes = tuple(Passed(f"Rule {n}: good.", "good", "no fault", "common practice") for n in range(120))
    pages = page_texts(checked(record(passes=passes)))
    told = [one for one in pages if "no fault" in one]
    assert len(told) > 2 and all("Passed or noted Found Limit Where the limit comes from" in one for one in told)


def test_a_strap_shows_its_damage_and_a_pin_its_section() -> None:
    mark = StrapMark(DamageSort.CUT, "Cuts and holes", "bad", DamagePlace.MEASURED, "a cut", TODAY, 4.0)
    strap = record(1, wall=None, kind="kinetic_strap", family="strap", damage=StrapDamage(9.0, "9 m", (mark,)))
    assert "4 m from one end" in all_text(checked(strap))
    pin = record(1, wall=None, kind="hitch_pin", family="pin", pin=PinWear(0.016, "16 mm", 0.015, "15 mm", TODAY))
    assert "Held on both sides: double shear" in all_text(checked(pin, PageSize.LETTER))


@pytest.mark.parametrize("outcome", Outcome)
def test_each_outcome_prints_and_what_may_be_used_says_for_what(outcome: Outcome) -> None:
    text = all_text(checked(record(1, outcome=outcome, reasons=(), headline="", use_line="static pull only")))
    assert ("Use: static pull only" in text) is (outcome in {Outcome.FIT, Outcome.DERATE})


def test_what_was_kept_prints_the_same() -> None:
    made = record()
    assert item_record(from_body(to_body(made), ItemRecord), PageSize.A4).pdf == item_record(made, PageSize.A4).pdf
