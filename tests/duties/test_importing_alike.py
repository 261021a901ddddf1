"""Stories: what many rows of a list have in common is read once, and each row says what it says by itself."""

from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.import_list import dry_run, matching_of, take
from inspector.duties.importing import said
from inspector.duties.importing.fates import fates as row_fates
from inspector.duties.importing.reader import reader
from inspector.duties.office import Office
from inspector.gear.import_list import Fate, Row
from tests.duties.lists import HEADS, listed, run, shackle_line

_HEADS = f"{HEADS};Length (m);MBS (kN);Factor;Made on;Past;From whom;Serial;Remarks;Colour;Fixed by"
_PIECES = (
    "Bow shackle;4.75;19;22;;;;2019-03-14;new;a dealer",
    "bow shackle;4.75;19;22;;;;2019;new;a dealer",
    "Bow shackle;4.75;19;22;;279;5;2019-03-14;used;",
    "Bow shackle;4.75;19;22;1.2;;;soon;new;a dealer",
    "Bow shackle;4.75;19;;;;;2019-03-14;new;a dealer",
    "Bow shackle;much;19;22;;;;2019-03-14;new;a dealer",
    "Bow shackle;-;19;22;;;;2099-01-01;found;a dealer",
    "Bow shackle;-1;19;22;;;;-;unknown;",
    "Snatch strap;;;;9;86;;June 2021;gift;",
    "Snatch strap;;;;9;86;;June 2021;gift;a member",
    "Sledge;4.75;19;22;;;;2019-03-14;new;a dealer",
)
_ENDS = ("S {};;;", "S {};-;red;", "S {};by the door;;glue", "S {}\u200b;;red;")


def test_a_row_among_many_alike_is_read_as_by_itself(desk: Office, tmp_path: Path) -> None:
    every = [f"{piece};{end}" for end in _ENDS for piece in _PIECES]
    lines = [f"{'' if at % 7 == 6 else f'A-{at}'};{one.format(at)}" for at, one in enumerate([*every, *every])]
    file = listed(tmp_path, *lines, heads=_HEADS)
    matching, sheet = matching_of(desk, file), file.sheets[0]
    together = dry_run(desk, file, matching).rows
    assert {one.fate for one in together} == {Fate.TAKEN, Fate.REFUSED, Fate.BLANK}
    assert len({one.why for one in together}) > 8
    for at in range(1, len(sheet.rows)):
        empty: tuple[Row, ...] = ((),) * (at - 1)
        alone = replace(file, sheets=(replace(sheet, rows=(sheet.rows[0], *empty, sheet.rows[at])),))
        assert dry_run(desk, alone, matching).rows[at] == together[at]


@pytest.mark.parametrize("at_once", [1, 7])
def test_a_list_is_read_the_same_however_many_rows_at_once(
    desk: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at_once: int
) -> None:
    """An odd cell of a later row asks for nothing of the rows that were read before, and takes nothing from them."""
    every = [f"A-{at};{piece};{_ENDS[at % 4].format(at)}" for at, piece in enumerate(_PIECES * 3)]
    file = listed(tmp_path, "", "A-0", *every, f"{every[0]};more", "", every[-1], heads=_HEADS)
    matching = matching_of(desk, file)
    wanted = dry_run(desk, file, matching)
    monkeypatch.setattr(said, "_AT_ONCE", at_once)
    assert dry_run(desk, file, matching) == wanted


def test_a_fault_that_rows_share_holds_fast_to_none_of_them(desk: Office, tmp_path: Path) -> None:
    """A look is in no ring that could be found: a fault that was raised itself would hold the row that it is in."""
    file = listed(tmp_path, *(f"{shackle_line(f'A-{at}')};soon" for at in range(3)), heads=f"{HEADS};Made on")
    reads = reader(desk, matching_of(desk, file), file.name)
    with desk.book.reading() as page:
        rows = row_fates(reads, page, file.sheets[0], None)
    assert ["“soon” is no day" in one.why for one in rows] == [False, True, True, True]
    faults = [look.fault for looks in reads.looks for look in looks.values() if look.fault]
    assert [one.__traceback__ for one in faults] == [None]


def test_of_columns_that_mean_one_thing_each_row_has_the_first_that_tells_it(desk: Office, tmp_path: Path) -> None:
    heads = f"{HEADS};Made;Built;Maker;Brand"
    ends = ("2019-03-14;2020;QVO;BZW", "-;2020;;BZW", "2019-03-14;soon;n/a;BZW", ";soon;;BZW\u200b", ";;;")
    lines = [f"{shackle_line(f'A-{at}')};{end}" for at, end in enumerate(ends)]
    found = run(desk, listed(tmp_path, *lines, heads=heads), F="made_on", G="made_on", H="maker_mark", I="maker_mark")
    facts = [(one.facts.made_on, one.facts.maker_mark) if one.facts else one.why for one in found.rows[1:]]
    assert facts[:3] == [(date(2019, 3, 14), "QVO"), (date(2020, 1, 1), "BZW"), (date(2019, 3, 14), "BZW")]
    assert str(facts[3]).startswith("Built: ") and facts[4] == (None, "")
    assert [len(one.told) for one in found.rows[1:]] == [0, 1, 0, 0, 0]
    notes = [one.facts.note if one.facts else "" for one in found.rows[1:4]]
    assert ["Built: 2020" in one for one in notes] == [False, True, False] and "Maker: n/a" in notes[2]


def test_cells_that_are_equal_and_of_two_makes_are_read_each_as_it_is(desk: Office, tmp_path: Path) -> None:
    file = listed(tmp_path, "A-1;Bow shackle;4.75;19;22;;;;2019-03-14;new;;1;;;", heads=_HEADS)
    sheet = file.sheets[0]
    row = sheet.rows[1]
    rows = [row, ("A-2", *row[1:3], 19.0, 22.0, *row[5:8], date(2019, 3, 14), *row[9:11], 2.0, *row[12:])]
    both = replace(file, sheets=(replace(sheet, rows=(sheet.rows[0], *rows)),))
    first, second = (one.facts for one in dry_run(desk, both, matching_of(desk, both)).passed)
    assert first and second and (first.serial, second.serial) == ("1", "2")
    assert (first.rating, first.sizes, first.made_on) == (second.rating, second.sizes, second.made_on)


def test_a_list_of_doubles_is_told_of_to_its_end(desk: Office, tmp_path: Path) -> None:
    """Holding each row against what it is like takes longer than reading it; nobody waits for that in silence."""
    count = 250
    file = listed(tmp_path, *(shackle_line(f"A-{number}") for number in range(count)))
    take(desk, run(desk, file))
    steps: list[tuple[int, int]] = []
    found = run(replace(desk, told=lambda done, total: steps.append((done, total))), file)
    assert found.count(Fate.DUPLICATE) == count
    assert [total for _, total in steps] == [2 * count] * len(steps)
    assert [done for done, _ in steps] == [*range(1, count + 1), 300, 400, 2 * count]
