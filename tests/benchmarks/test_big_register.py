"""A register that is made by copying pieces is proved whole as any other, on a file and on a server."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.call_in import call_in
from inspector.duties.found_club import found_club
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.record_inspection import record_inspection
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import Answer, InspectionKind, NewInspection
from inspector.gear.kind import Grade
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Meant
from inspector.rulebook.load import Rulebook
from tests.benchmarks import bench_big, big_register
from tests.duties.gear import strap
from tests.duties.notices import marked, notice


@pytest.mark.parametrize("make", ["file", "server"])
def test_copies_of_pieces_are_whole(make: str, tmp_path: Path, rules: Rulebook, request: pytest.FixtureRequest) -> None:
    place = request.getfixturevalue("database").superuser_url if make == "server" else str(tmp_path)
    office = bench_big.office_at(place, rules)
    office = replace(office, officer=found_club(office, "Test Club", "Ada Officer"))
    earlier = office.at(office.now - timedelta(days=30))
    book_in(earlier, strap("KS-1"))
    book_in(earlier, strap("KS-2"))
    kind = office.kind(open_item(office, "KS-1").dossier.item.facts.kind)
    answers = tuple(Answer(one.key, Grade.GOOD) for one in kind.checks)
    look = NewInspection(office.today, InspectionKind.PERIODIC, office.officer.id, False, answers)
    record_inspection(office, "KS-1", look)
    assert big_register.live_again(office) == 1
    pattern = big_register.pattern_of(office)
    big_register.check(pattern)
    for count, pieces in ((2, 8), (3, 10)):  # begun, and gone on with
        with office.book.own_connection(write=True) as connection:
            big_register.write_into(connection, pattern, count, lambda _: None)
        assert len(list_gear(office).rows) == pieces and verify_book(office).faults == ()
    copied, lived = open_item(office, "KS-1-x-2"), open_item(office, "KS-1-x")
    assert copied.verdict.outcome is lived.verdict.outcome is not Outcome.RETIRE
    assert len(copied.dossier.inspections) == 1 and copied.explanation.headline == lived.explanation.headline
    office.book.close()


def test_a_piece_whose_booking_wrote_more_than_copies_have_is_left_out(tmp_path: Path, rules: Rulebook) -> None:
    office = bench_big.office_at(str(tmp_path), rules)
    office = replace(office, officer=found_club(office, "Test Club", "Ada Officer"))
    book_in(office, strap("KS-1"))
    book_in(office, marked("SH-1", "A-1"))
    call_in(office, notice(office, Meant(mark="ZUF")))
    big_register.live_again(office)
    pattern = big_register.pattern_of(office)
    assert [one.same["tag"] for one in pattern.standing] == ["SH-1-x"]
    with office.book.own_connection(write=True) as connection:
        big_register.write_into(connection, pattern, 2, lambda _: None)
    assert verify_book(office).faults == ()
    office.book.close()
