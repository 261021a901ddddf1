"""The commands against loss, as they are typed; and a clock that was set back."""

import resource
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from inspector.app import main
from inspector.duties.look_up import list_gear
from inspector.register.backup import restore
from inspector.register.clock import is_set_back, last_tick
from inspector.register.rows import never_before, new_id
from inspector.register.upgrade import HEAD
from inspector.rulebook.load import Rulebook
from tests.conftest import EVENING, office_in
from tests.faults.flips import _pages
from tests.faults.old_register import old_register
from tests.faults.test_disk import SPOILT

Typed = Callable[..., str]
SetClock = Callable[[datetime], None]


@pytest.fixture(autouse=True)
def wide(monkeypatch: pytest.MonkeyPatch) -> None:
    """No sentence is broken into lines."""
    monkeypatch.setenv("COLUMNS", "400")


@pytest.fixture
def set_clock(monkeypatch: pytest.MonkeyPatch) -> SetClock:
    """Sets the machine's clock, as the program reads it."""

    def to(moment: datetime) -> None:
        class Clock(datetime):
            @classmethod
            def now(cls, tz: object = None) -> datetime:  # type: ignore[override]
                return moment

        monkeypatch.setattr("inspector.app.datetime", Clock)

    to(EVENING + timedelta(days=1))
    return to


@pytest.fixture
def typed(small: Path, capsys: pytest.CaptureFixture[str], set_clock: SetClock) -> Iterator[Typed]:
    """Types a command on the small register, or on that of another folder."""

    def type_it(*words: str, code: int = 0, folder: Path = small.parent) -> str:
        capsys.readouterr()
        assert main(["--register", str(folder), *words]) == code, capsys.readouterr()
        said = capsys.readouterr()
        assert "Traceback" not in said.err
        return said.out + said.err

    yield type_it


def test_a_disk_that_takes_no_more_is_told_and_the_register_stays_as_it_was(typed: Typed, small: Path) -> None:
    """The files of the process may not grow past what they are: what the operating system answers then is real."""
    before, usual = small.read_bytes(), resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096 * 8, usual[1]))
    try:
        told = typed("doubt", "SH-1", "--why", "It was dropped.", code=2)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, usual)
    assert told.startswith("register: ") and len(told.strip().splitlines()) == 2
    assert small.read_bytes() == before
    assert "Nothing was changed" in typed("verify")


@pytest.mark.parametrize("says", ["is cut off", "is empty", "is no register", "of another program"])
def test_the_commands_say_what_is_wrong_and_what_to_do(typed: Typed, small: Path, says: str) -> None:
    SPOILT[says](small)
    told = typed("list", code=2)
    assert says in told and len(told.strip().splitlines()) == 2, told


def test_before_an_upgrade_a_copy_is_made_and_the_ledger_tells_it(typed: Typed, small: Path, rules: Rulebook) -> None:
    old = small.parent / "old" / "register.db"
    old.parent.mkdir()
    old_register(old, small)
    told = typed("ledger", "--last", "9", folder=old.parent)
    assert "A copy from before lies in" in told and "brought up to date for a newer program" in told
    assert "A copy from before" not in typed("list", folder=old.parent), "it is said once"
    (copy,) = (old.parent / "backups").iterdir()
    assert copy.name.startswith(f"before-{HEAD}-")
    with closing(sqlite3.connect(copy)) as connection:
        assert connection.execute("SELECT version_num FROM alembic_version").fetchone() == ("0006",)
    restore(copy, small.parent / "again" / "register.db")
    again, now = office_in(small.parent / "again", rules), office_in(old.parent, rules)
    assert [row.outcome for row in list_gear(again).rows] == [row.outcome for row in list_gear(now).rows]
    again.book.close()
    now.book.close()


def test_a_damaged_register_is_rescued_by_command(typed: Typed, small: Path) -> None:
    data = bytearray(small.read_bytes())
    at = (_pages(small)["inspection"][-1] - 1) * 4096
    data[at : at + 4096] = bytes(4096)
    bad = small.with_name("bad.db")
    bad.write_bytes(bytes(data))
    to = small.parent / "saved"
    told = typed("rescue", str(bad), "--to", str(to))
    assert "Held until inspected" in told and "is listed in" in told
    assert "known from a rescue" in typed("verify", folder=to)
    assert "saved the register from the damaged file bad.db" in typed("ledger", folder=to)
    assert typed("rescue", str(bad), "--to", str(to), code=2).startswith("folder: ")
    assert "There is no file" in typed("rescue", str(to / "none.db"), "--to", str(to / "x"), code=2)


def test_the_plan_of_copies_is_told_changed_and_followed(typed: Typed, small: Path) -> None:
    assert "every 7 days" in typed("copies")
    told = typed("copies", "--every", "3", "--keep", "2", "--months", "0", "--now")
    assert "every 3 days" in told and "planned-2026-11-26" in told
    assert "No copy is due." in typed("copies", "--now")
    assert "is not between" in typed("copies", "--keep", "0", code=2)
    assert "wished for a copy of the register every 3 days" in typed("ledger")


def test_on_a_clock_that_was_set_back_everything_can_be_read_and_nothing_entered(
    typed: Typed, small: Path, set_clock: SetClock
) -> None:
    set_clock(EVENING - timedelta(days=400))
    before = small.read_bytes()
    told = typed("list")
    assert "but the last entry was made" in told and "days that have come may not show" in told and "SH-1" in told
    refused = typed("doubt", "SH-1", "--why", "It was dropped.", code=2)
    assert "clock: " in refused and "Set the machine's date and time right" in refused
    assert small.read_bytes() == before and "Nothing was changed" in typed("verify")


def test_a_clock_that_ran_ahead_once_does_not_lock_the_register_for_ever(typed: Typed, set_clock: SetClock) -> None:
    set_clock(EVENING + timedelta(days=9000))
    typed("doubt", "SH-1", "--why", "It was dropped.")
    set_clock(EVENING + timedelta(days=2))
    typed("doubt", "SH-3", "--why", "It was dropped.", code=2)
    assert "It is empty" in typed("clock-is-right", "--why", " ", code=2)
    told = typed("clock-is-right", "--why", "The battery of the other laptop was dead.")
    assert "It is entered" in told and "Held until inspected" in told and "SH-1" in told
    assert "Hold" in typed("show", "SH-1"), "the doubt itself counts only from its own day"
    typed("doubt", "SH-3", "--why", "It was dropped.")
    assert "the clock is right though the entry before" in " ".join(typed("ledger").split())
    assert "does not stand before" in typed("clock-is-right", "--why", "again", code=2)
    assert "Nothing was changed" in typed("verify")


@pytest.mark.parametrize(
    ("minutes", "back"), [(0, False), (5, False), (-50, False), (-70, True), (-20 * 60, True), (24 * 60, False)]
)
def test_two_machines_may_differ_by_less_than_an_hour_on_one_day(minutes: int, back: bool) -> None:
    assert is_set_back(EVENING, EVENING + timedelta(minutes=minutes)) is back


def test_ids_go_on_after_the_last_one_whatever_the_clock_says(small: Path, rules: Rulebook) -> None:
    office = office_in(small.parent, rules)
    with office.book.reading() as page:
        tick = last_tick(page._connection)
    office.book.close()
    ahead = tick + (1 << 40)
    before = new_id()
    never_before(ahead)
    assert new_id() > before and int(new_id().replace("-", "")[:12], 16) << 12 >= ahead - (1 << 12)


def test_a_copy_is_still_there_when_a_register_was_cut_off(typed: Typed, small: Path) -> None:
    typed("backup")
    (copy,) = (small.parent / "backups").iterdir()
    SPOILT["is cut off"](small)
    told = typed("list", code=2)
    assert "restore FILE" in told
    shutil.rmtree(small.parent / "new", ignore_errors=True)
    typed("restore", str(copy), folder=small.parent / "new")
    assert "SH-1" in typed("list", folder=small.parent / "new")
