"""Merging as a law: the same deeds and verdicts in any order, nothing new when repeated, nothing milder."""

import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec import Struct
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.bring_back import bring_back
from inspector.duties.change_item import change_note, retag
from inspector.duties.destroy_item import destroy_item
from inspector.duties.field_copies import take_field_copy
from inspector.duties.found_club import found_club
from inspector.duties.give_opinion import doubt
from inspector.duties.judging import judged
from inspector.duties.lend import lend
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_use
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_found, report_missing
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewUse
from inspector.refused import Refused
from inspector.register.book import open_book
from inspector.register.chains import MERGE
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle

TAGS = ("SH-1", "SH-2", "SH-3")  # the third is booked in by the deeds alone
_Deed = Callable[[Office, str], object]


def inspected(cracks: str = "good") -> _Deed:
    def deed(office: Office, tag: str) -> object:
        seen = all_good(office, office.kind("bow_shackle"), SHACKLE_READINGS, cracks=cracks)
        return record_inspection(office, tag, seen)

    return deed


DEEDS: dict[str, _Deed] = {
    "book in": lambda office, _: book_in(office, shackle("SH-3")),
    "inspect": inspected(),
    "find a crack": inspected("bad"),
    "use": lambda office, tag: record_use(office, tag, NewUse(office.today, 2)),
    "overload": lambda office, tag: record_use(office, tag, NewUse(office.today, 1, Event.OVERLOAD)),
    "doubt": lambda office, tag: doubt(office, tag, "worn"),
    "note": lambda office, tag: change_note(office, tag, f"seen by {office.book.origin}"),
    "retag": lambda office, tag: retag(office, tag, f"{tag}b", "a new label"),
    "lend": lambda office, tag: lend(office, [tag], office.officer.name, office.today),
    "missing": lambda office, tag: report_missing(office, tag, "shed", "not there"),
    "found": lambda office, tag: report_found(office, tag, "shed"),
    "destroy": lambda office, tag: destroy_item(office, tag, "cut in two"),
}
DONE = st.lists(st.tuples(st.sampled_from(sorted(DEEDS)), st.sampled_from(TAGS)), max_size=5)
_Done = list[tuple[str, str]]


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory, rules: Rulebook) -> "Begun":
    """A register with two inspected shackles, and two field copies of it, in three folders."""
    folder = tmp_path_factory.mktemp("begun")
    (folder / "home").mkdir()
    made = office_in(folder / "home", rules)
    home = replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
    for tag in TAGS[:2]:
        book_in(home, shackle(tag))
        DEEDS["inspect"](home, tag)
    for name in ("first", "second"):
        take_field_copy(home, folder / name, home.officer.name)
    home.book.close()
    return Begun(folder, rules, home.officer.id)


class Begun(Struct):
    """Where the registers lie, and who works on them."""

    folder: Path
    rules: Rulebook
    officer: str

    def __repr__(self) -> str:  # else a falling case would print the whole rulebook
        return f"Begun({self.folder})"


@contextmanager
def copies(begun: Begun, *names: str) -> Iterator[list[Office]]:
    """The registers of these folders, to work on in this block; a name twice makes a twin."""
    with TemporaryDirectory() as work:
        offices = []
        for number, name in enumerate(names):
            folder = Path(work) / str(number)
            shutil.copytree(begun.folder / name, folder)
            made = office_in(folder, begun.rules)
            offices.append(replace(made, officer=replace(made.officer, id=begun.officer)))
        try:
            yield offices
        finally:
            for one in offices:
                one.book.close()


def do(office: Office, deeds: _Done) -> None:
    """What can be done of it; the register refuses the rest."""
    for deed, tag in deeds:
        with suppress(Refused):
            DEEDS[deed](office, tag)


def file_of(office: Office) -> Path:
    assert office.book.file
    return office.book.file


def deeds_of(office: Office) -> set[str]:
    """The hashes of all lines but those of merges."""
    with office.book.reading() as page:
        return {line.hash for line in page.ledger_lines() if line.deed != MERGE}


def verdicts(office: Office) -> dict[str, tuple[str, Outcome, tuple[str, ...]]]:
    """Of each piece, by its id: tag and outcome as they stand, and the findings on all that is known of it now.

    Where one copy had nothing to bring, the other's verdict stands there as it was given, before it was a fact itself.
    """
    found = {}
    with office.book.reading() as page:
        for item in page.every_item():
            now = judged(office, page.dossier(item, office.kind(item.facts.kind), office.today)).verdict
            rules = tuple(sorted(f"{one.rule} {one.outcome}" for one in now.findings))
            stands = page.latest_verdict(item.id)[0].outcome
            assert stands is now.outcome
            found[item.id] = (item.tag, stands, rules)
    return found


def copied(office: Office, folder: Path) -> Path:
    """Its file as it is now."""
    office.book.wipe_traces()
    return Path(shutil.copy(file_of(office), folder))


FEW = settings(
    max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)


@FEW
@given(ours=DONE, theirs=DONE)
def test_merging_is_the_same_from_either_side_and_repeatable(
    begun: Begun, tmp_path: Path, ours: _Done, theirs: _Done
) -> None:
    with copies(begun, "home", "first") as (home, away):
        do(home, ours)
        do(away, theirs)
        before = [verdicts(home), verdicts(away)]
        there = copied(away, tmp_path)
        bring_back(away, file_of(home))
        bring_back(home, there)
        assert deeds_of(home) == deeds_of(away)
        assert verdicts(home) == verdicts(away)
        assert verify_book(home).faults == verify_book(away).faults == ()
        stands = verdicts(home)
        for side in before:
            assert not {key for key, one in side.items() if one[1] is Outcome.RETIRE and stands[key][1] != one[1]}
        assert bring_back(home, there).deed_count == 0
        assert bring_back(home, file_of(away)).clashes == ()
        assert verdicts(home) == stands and verify_book(home).faults == ()


@FEW
@given(ours=DONE, first=DONE, second=DONE)
def test_two_copies_come_home_in_any_order(begun: Begun, ours: _Done, first: _Done, second: _Done) -> None:
    with copies(begun, "home", "first", "second") as (home, one, other), TemporaryDirectory() as folder:
        do(home, ours)
        do(one, first)
        do(other, second)
        twin = replace(home, book=open_book(copied(home, Path(folder))))
        for copy in (one, other):
            bring_back(home, file_of(copy))
        for copy in (other, one):
            bring_back(twin, file_of(copy))
        told = deeds_of(home), verdicts(home), verify_book(home).faults
        other_way = deeds_of(twin), verdicts(twin), verify_book(twin).faults
        twin.book.close()
        assert told == other_way and told[2] == ()
