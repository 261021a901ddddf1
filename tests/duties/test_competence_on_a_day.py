"""Whatever is given, renewed and ended, and in whatever order: no day that has passed becomes competent by it.

Only a named paper lets a competence reach back, and only an end that is dated back takes days away.
"""

import contextlib
import tempfile
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.add_people import add_person
from inspector.duties.change_person import Widening, end_competence, give_competence, renew_competence
from inspector.duties.found_club import found_club
from inspector.duties.look_up import people
from inspector.duties.office import Office
from inspector.gear.person import Competence, Person
from inspector.refused import Refused
from inspector.rulebook.load import Rulebook
from tests.conftest import office_in

WHY = Widening("a course")
SCOPES = st.sampled_from(["all", "shackle", "strap"])
DAYS = st.integers(-40, 60)
DEED = st.tuples(st.sampled_from(["give", "renew", "end"]), SCOPES, DAYS, st.none() | DAYS, st.booleans())
DEEDS = st.lists(st.tuples(st.integers(0, 15), DEED), min_size=1, max_size=8)
SPAN = range(-45, 200)


@pytest.fixture(scope="module")
def club(rules: Rulebook) -> Iterator[Office]:
    """A club on which many people are tried, one for each example."""
    with tempfile.TemporaryDirectory() as folder:
        made = office_in(Path(folder), rules)
        yield replace(made, officer=found_club(made, "Test Club", "Ada Officer"))
        made.book.close()


def covered(office: Office, who: str, begun: date) -> dict[str, set[date]]:
    """The days on which the person is competent, by family."""
    person = next(one for one in people(office) if one.id == who)
    days = [begun + timedelta(days=one) for one in SPAN]
    return {
        family: {day for day in days if person.is_competent(family, day)} for family in ("shackle", "strap", "tube")
    }


def do(office: Office, who: str, deed: tuple[str, str, int, int | None, bool]) -> bool:
    """Whether the deed was kept."""
    what, scope, first, last, has_paper = deed
    day = office.today + timedelta(days=first)
    until = None if last is None else office.today + timedelta(days=last)
    ground = replace(WHY, paper="certificate 12") if has_paper else WHY
    with contextlib.suppress(Refused):
        if what == "give":
            give_competence(office, who, Competence(scope, day, until), ground)
        elif what == "renew":
            renew_competence(office, who, scope, day, ground)
        else:
            end_competence(office, who, scope, "lapsed", day)
        return True
    return False


@settings(max_examples=30, deadline=None)
@given(deeds=DEEDS)
def test_no_deed_makes_a_passed_day_competent_without_a_paper(club: Office, deeds: list[tuple[int, object]]) -> None:
    office, begun = club, club.today
    who = add_person(club, Person("", f"Member {len(people(club))}", "member")).id
    for wait, deed in deeds:
        assert isinstance(deed, tuple)
        office = office.at(office.now + timedelta(days=wait))
        before, kept = covered(office, who, begun), do(office, who, deed)
        what, _, first, _, has_paper = deed
        for family, after in covered(office, who, begun).items():
            days = before[family]
            gained = {day for day in after - days if day < office.today}
            lost = {day for day in days - after if day <= office.today}
            assert kept or after == days
            assert not gained or (what == "give" and has_paper)
            assert not lost or (what == "end" and first < 0)
            assert what != "end" or after <= days
            assert what != "renew" or after >= days
