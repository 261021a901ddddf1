"""What the child of a kill test does until it is killed, and what must hold of the folder afterwards.

A work is two functions. `do(folder, told)` does deeds and calls told(text) when one is done; `holds(folder, told)`
raises AssertionError where anything told is missing or anything is half there. Another work is a line in WORKS.
"""

import shutil
import sqlite3
from collections.abc import Callable, Sequence
from contextlib import closing
from datetime import timedelta
from functools import cache
from itertools import count
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.archive_register import archive, verify_archive
from inspector.duties.back_up import back_up, restore
from inspector.duties.bring_back import bring_back
from inspector.duties.call_in import call_in
from inspector.duties.field_copies import take_field_copy
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.rescue_register import rescue_register
from inspector.duties.sit_down import seat
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.outcome import Outcome
from inspector.gear.person import Competence, Person
from inspector.gear.recall_notice import Issuer, Meant, NewRecall, Step
from inspector.register.proof import prove
from inspector.register.upgrade import HEAD
from inspector.rulebook.load import Rulebook, packaged
from tests.conftest import office_in
from tests.duties.gear import SHACKLE_READINGS, all_good
from tests.faults.old_register import REVISION, old_register
from tests.faults.small import PIECES

Told = Callable[[str], None]
FILE = "register.db"
SECOND = "Bo Second"


class Work(Struct, frozen=True):
    """prepare: makes the folder ready from a small register's file. file: whose write-ahead file tells of the kill.

    longest_s: within which time it is killed.
    """

    prepare: Callable[[Path, Path], None]
    do: Callable[[Path, Told], None]
    holds: Callable[[Path, Sequence[str]], None]
    file: str = FILE
    longest_s: float = 0.4


@cache
def rules() -> Rulebook:
    """The packaged rulebook, read once for all children."""
    return packaged()


def office_of(folder: Path) -> Office:
    """The register of a folder with its officer at the desk."""
    return seat(office_in(folder, rules()))


def copied(folder: Path, small: Path) -> None:
    """The register itself."""
    shutil.copyfile(small, folder / FILE)


def whole(file: Path) -> None:
    """The file's pages hold together, and everything in it is proved."""
    office = office_of(file.parent)
    try:
        with office.book.reading() as page:
            found = prove(page._connection)
        assert found.faults == (), found.faults[:3]
    finally:
        office.book.close()
    with closing(sqlite3.connect(file)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]


def inspect(folder: Path, told: Told) -> None:
    """Inspections, one after the other, each with a note of its own."""
    office = office_of(folder)
    kind = office.kind("bow_shackle")
    for number in count():
        tag = PIECES[number % len(PIECES)]
        facts = replace(all_good(office, kind, SHACKLE_READINGS), note=f"deed {number}")
        record_inspection(office, tag, facts)
        told(f"deed {number}")


def every_inspection_told_is_there(folder: Path, told: Sequence[str]) -> None:
    """Each with its row, its verdict and its line; at most one more than was told, since telling may be cut off."""
    whole(folder / FILE)
    with closing(sqlite3.connect(folder / FILE)) as connection:
        (rows,) = connection.execute("SELECT count(*) FROM inspection").fetchone()
        (lines,) = connection.execute("SELECT count(*) FROM ledger WHERE deed = 'inspect'").fetchone()
    new = _notes(folder)
    assert new[: len(told)] == list(told) and len(new) - len(told) in {0, 1}, (new, told)
    assert lines == rows, "a row without its line, or a line without its row"


def older(folder: Path, small: Path) -> None:
    """A register of an earlier revision."""
    old_register(folder / FILE, small)


def bring_up(folder: Path, told: Told) -> None:
    """Open it, which brings its tables up to date."""
    office_of(folder).book.close()
    told("up")


def old_or_new_never_between(folder: Path, told: Sequence[str]) -> None:
    """Before it is opened again the tables are of the one revision or the other; then all is there."""
    with closing(sqlite3.connect(folder / FILE)) as connection:
        (revision,) = connection.execute("SELECT version_num FROM alembic_version").fetchone()
        has_number = "number" in {row[1] for row in connection.execute("PRAGMA table_info(ledger)")}
    assert (revision, has_number) in {(REVISION, False), (HEAD, True)}
    assert revision == HEAD or not told
    whole(folder / FILE)
    copies = list((folder / "backups").glob("before-*.db"))
    assert copies, "the copy from before is there"
    for one in copies:
        _can_be_restored(one, folder / "again")


def _can_be_restored(copy: Path, to: Path) -> None:
    shutil.rmtree(to, ignore_errors=True)
    restore(copy, to)
    whole(to / FILE)


def back_up_again(folder: Path, told: Told) -> None:
    """Copies, each after another inspection, so that each has a name of its own."""
    office = office_of(folder)
    for _ in count():
        told(back_up(office).file.name)


def every_copy_is_whole(folder: Path, told: Sequence[str]) -> None:
    """Whatever has a copy's name can be put back, and each told one is there."""
    whole(folder / FILE)
    names = {one.name for one in (folder / "backups").glob("*.db")} if (folder / "backups").is_dir() else set()
    assert set(told) <= names
    for name in sorted(names)[-2:]:
        _can_be_restored(folder / "backups" / name, folder / "again")


def copy_there(folder: Path, small: Path) -> None:
    """A copy to put back."""
    shutil.copyfile(small, folder / "copy.db")


def restore_again(folder: Path, told: Told) -> None:
    """Put the copy into one new folder after the other."""
    for number in count():
        restore(folder / "copy.db", folder / f"new{number}")
        told(f"new{number}")


def every_restored_is_whole(folder: Path, told: Sequence[str]) -> None:
    """A folder has a whole register or none; where it has none the copy can still be put there."""
    for name in told:
        assert (folder / name / FILE).exists(), name
    for place in sorted(folder.glob("new*"))[-2:]:
        if not (place / FILE).exists():
            restore(folder / "copy.db", place)
        whole(place / FILE)


def damaged(folder: Path, small: Path) -> None:
    """A register with a wiped page."""
    data = bytearray(small.read_bytes())
    data[-4096:] = bytes(4096)
    (folder / "bad.db").write_bytes(bytes(data))


def rescue_again(folder: Path, told: Told) -> None:
    """Rescue into one new folder after the other."""
    for number in count():
        rescue_register(folder / "bad.db", folder / f"new{number}", lambda place: office_in(place, rules()))
        told(f"new{number}")


def every_rescued_is_whole(folder: Path, told: Sequence[str]) -> None:
    """A folder has a register in which everything touched is held, or none; then it can be rescued again."""
    for name in told:
        assert (folder / name / FILE).exists(), name
    for place in sorted(folder.glob("new*"))[-2:]:
        if not (place / FILE).exists():
            with_leftovers = rescue_register(folder / "bad.db", place, lambda one: office_in(one, rules()))
            assert with_leftovers.piece_count
        with closing(sqlite3.connect(place / FILE)) as connection:
            assert connection.execute("SELECT count(*) FROM ledger WHERE deed = 'rescue'").fetchone() == (1,)
        whole(place / FILE)


def taken_along(folder: Path, small: Path) -> None:
    """A register and a field copy of it."""
    copied(folder, small)
    office = office_of(folder)
    take_field_copy(office, folder / "away", office.officer.id)
    office.book.close()


def bring_back_again(folder: Path, told: Told) -> None:
    """Inspections in the field copy, each brought back at once."""
    home, away = office_of(folder), office_of(folder / "away")
    kind = away.kind("bow_shackle")
    for number in count():
        facts = replace(all_good(away, kind, SHACKLE_READINGS), note=f"deed {number}")
        record_inspection(away, PIECES[number % len(PIECES)], facts)
        bring_back(home, folder / "away")
        told(f"deed {number}")


def both_histories_are_whole(folder: Path, told: Sequence[str]) -> None:
    """What was told is at home; what is not there yet can still be brought."""
    for place in (folder, folder / "away"):
        whole(place / FILE)
    at_home, away = _notes(folder), _notes(folder / "away")
    assert at_home[: len(told)] == list(told) and at_home == away[: len(at_home)], (at_home, away, told)
    office = office_of(folder)
    bring_back(office, folder / "away")
    office.book.close()
    whole(folder / FILE)
    assert _notes(folder) == away


def _notes(folder: Path) -> list[str]:
    with closing(sqlite3.connect(folder / FILE)) as connection:
        notes = connection.execute("SELECT json_extract(body, '$.note') FROM inspection ORDER BY id").fetchall()
    return [note for (note,) in notes if str(note).startswith("deed ")]


def archive_again(folder: Path, told: Told) -> None:
    """Archives, one after the other."""
    office = office_of(folder)
    for number in count():
        archive(office, folder / f"all{number}.zip")
        told(f"all{number}.zip")


def every_archive_is_whole(folder: Path, told: Sequence[str]) -> None:
    """Whatever has an archive's name is proved, and each told one is there."""
    whole(folder / FILE)
    names = {one.name for one in folder.glob("all*.zip")}
    assert set(told) <= names
    for name in sorted(names)[-2:]:
        assert verify_archive(folder / name).faults == ()


def with_a_second(folder: Path, small: Path) -> None:
    """A register with a second competent person."""
    copied(folder, small)
    office = office_of(folder)
    add_person(
        office, Person("", SECOND, "inspector", (Competence("all", office.today - timedelta(days=1)),)), "card 12"
    )
    office.book.close()


def withdraw_again(folder: Path, told: Told) -> None:
    """A recall of every shackle is entered and withdrawn, one after the other."""
    office = office_of(folder)
    for _ in count():
        notice = NewRecall(office.today, Issuer.CLUB, Meant(kinds=("bow_shackle",)), "It may snap.")
        ref = call_in(office, notice).recall.ref
        withdraw_recall(office, ref, "It was another maker's.", second=SECOND)
        told(ref)


def held_or_let_go_never_between(folder: Path, told: Sequence[str]) -> None:
    """A recall holds every shackle, or none and says that it was withdrawn; those that were told are withdrawn."""
    whole(folder / FILE)
    office = office_of(folder)
    with office.book.reading() as page:
        every, gone = page.recalls(), {one.ref for one in page.withdrawn_recalls()}
        steps = {one.ref: {call.facts.step for call in page.standing_calls(one.ref).values()} for one in every}
        pieces = {one.ref: len(page.standing_calls(one.ref)) for one in every}
    standing = [one.ref for one in every if one.ref not in gone]
    assert set(told) <= gone and len(standing) <= 1, (told, gone, standing)
    assert all(found == {Step.WITHDRAWN if ref in gone else Step.CALLED} for ref, found in steps.items()), steps
    assert set(pieces.values()) <= {len(PIECES)}
    stands = {tag: open_item(office, tag).verdict.outcome for tag in PIECES}
    office.book.close()
    sound = Outcome.HOLD if standing else Outcome.FIT
    assert stands == {tag: Outcome.RETIRE if tag == "SH-2" else sound for tag in PIECES}, (stands, standing)


WORKS = {
    "inspect": Work(copied, inspect, every_inspection_told_is_there),
    "bring up": Work(older, bring_up, old_or_new_never_between, longest_s=1.5),
    "back up": Work(copied, back_up_again, every_copy_is_whole),
    "restore": Work(copy_there, restore_again, every_restored_is_whole, "", 0.8),
    "rescue": Work(damaged, rescue_again, every_rescued_is_whole, "", 3.0),
    "archive": Work(copied, archive_again, every_archive_is_whole, longest_s=2.0),
    "withdraw": Work(with_a_second, withdraw_again, held_or_let_go_never_between, longest_s=1.0),
    "merge": Work(taken_along, bring_back_again, both_histories_are_whole, longest_s=1.5),
}
