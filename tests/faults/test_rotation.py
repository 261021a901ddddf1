"""Copies by the plan: made when they are due, whole, and never fewer than are wanted."""

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.back_up import back_up
from inspector.duties.copy_by_plan import CopyPlan, change_copy_plan, copy_if_due, copy_plan
from inspector.duties.look_after import look_after
from inspector.duties.office import Office
from inspector.duties.sit_down import seat
from inspector.duties.tell_copies import copies_told, plan_words
from inspector.duties.verify_book import verify_book
from inspector.refused import Refused
from inspector.register.backup import restore
from inspector.register.rotation import PlannedCopy, planned_copies, to_go
from inspector.rulebook.load import Rulebook
from tests.conftest import EVENING, office_in
from tests.faults.small import inspect

FIRST = date(2020, 1, 1)
ages = st.lists(st.integers(0, 1500), min_size=1, max_size=60, unique=True)


@pytest.fixture
def opened(small: Path, rules: Rulebook) -> Iterator[Office]:
    """The small register, open."""
    made = office_in(small.parent, rules)
    yield seat(made)
    made.book.close()


def later(office: Office, days: int) -> Office:
    """The office so many days later, with another deed done on that day."""
    on = office.at(EVENING + timedelta(days=days))
    inspect(on, "SH-1")
    return on


def copies_of(days: list[int]) -> list[PlannedCopy]:
    return [PlannedCopy(Path(f"{day}.db"), FIRST + timedelta(days=day)) for day in sorted(days, reverse=True)]


@given(ages, st.integers(0, 9), st.integers(0, 24))
def test_the_newest_stays_and_so_do_the_last_and_one_of_each_month(days: list[int], last: int, months: int) -> None:
    copies = copies_of(days)
    gone = to_go(copies, last, months)
    kept = [one for one in copies if one not in gone]
    assert kept[0] == copies[0] and kept[:last] == copies[:last]
    wanted = sorted({(one.on.year, one.on.month) for one in copies}, reverse=True)[:months]
    assert set(wanted) <= {(one.on.year, one.on.month) for one in kept}
    assert len(kept) <= max(last, 1) + months


@given(ages)
def test_a_second_turn_lets_nothing_more_go(days: list[int]) -> None:
    copies = copies_of(days)
    left = [one for one in copies if one not in to_go(copies, 7, 12)]
    assert to_go(left, 7, 12) == ()


def test_a_copy_is_made_when_it_is_due_and_when_anything_was_written(opened: Office) -> None:
    first = copy_if_due(opened)
    assert first.made and first.made.file.name.startswith("planned-2026-11-25-")
    assert copy_if_due(later(opened, 6)).made is None
    assert copy_if_due(opened.at(EVENING + timedelta(days=7))).made is not None
    assert copy_if_due(opened.at(EVENING + timedelta(days=30))).made is None, "nothing was written since"
    assert verify_book(opened).faults == ()
    assert [one.on.isoformat() for one in copies_told(opened).files] == ["2026-12-02", "2026-11-25"]


def test_none_is_made_by_itself_where_nobody_wants_it(opened: Office) -> None:
    change_copy_plan(opened, CopyPlan(0, 1, 0))
    assert copy_if_due(opened).made is None
    assert "by hand" in plan_words(copy_plan(opened))
    with pytest.raises(Refused, match="Nothing would change"):
        change_copy_plan(opened, CopyPlan(0, 1, 0))


def test_only_copies_of_the_plan_that_are_as_they_were_made_are_let_go(opened: Office) -> None:
    change_copy_plan(opened, CopyPlan(1, 2, 0))
    by_hand = back_up(opened).file
    made = [copy_if_due(later(opened, day)).made for day in range(1, 7)]
    folder = by_hand.parent
    mine = folder / "planned-2020-01-01-000000000000.db"
    mine.write_bytes(b"not made by the plan, though it is called so")
    names = {one.name for one in folder.iterdir()}
    last = [one.file.name for one in made if one]
    assert names == {by_hand.name, mine.name, *last[-2:]}
    spoilt = folder / last[-2]
    spoilt.write_bytes(spoilt.read_bytes()[:-1] + b"x")
    done = copy_if_due(later(opened, 8))
    assert done.made and spoilt.exists() and mine.exists(), "what is not as it was made is looked at by people"
    restore(done.made.file, folder / "again" / "register.db", done.made.head)


def test_a_copy_that_cannot_be_made_lets_none_go(opened: Office, monkeypatch: pytest.MonkeyPatch) -> None:
    change_copy_plan(opened, CopyPlan(1, 1, 0))
    first = copy_if_due(later(opened, 1)).made

    def fails(*_: object) -> int:
        raise Refused("backup", "spoilt", "try again")

    monkeypatch.setattr("inspector.register.backup._checked", fails)
    with pytest.raises(Refused, match="spoilt"):
        copy_if_due(later(opened, 3))
    assert first and first.file.exists() and len(planned_copies(first.file.parent)) == 1


def test_the_window_looks_after_the_register_once_a_day(opened: Office) -> None:
    assert look_after(opened).planned.made
    looked = look_after(opened)
    assert looked.found and not looked.found.faults
    assert look_after(opened).found is None, "once a day is enough"


def test_a_damaged_register_is_told_as_the_window_opens(opened: Office) -> None:
    look_after(opened)
    with opened.book.reading() as page:
        page._connection.exec_driver_sql("UPDATE standing SET headline = 'all well'")
        page._connection.commit()
    with pytest.raises(Refused, match="damaged, or changed by another program"):
        look_after(replace(opened))


@pytest.mark.parametrize("wanted", [CopyPlan(-1, 1, 1), CopyPlan(1, 0, 1), CopyPlan(1, 1, 9999)])
def test_a_plan_that_is_none_is_refused(opened: Office, wanted: CopyPlan) -> None:
    with pytest.raises(Refused, match="is not between"):
        change_copy_plan(opened, wanted)
