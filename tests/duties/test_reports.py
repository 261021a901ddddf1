"""The report on all the gear: it counts what there is, says what is unknown, and is printed again as it was said."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.book_in import book_in
from inspector.duties.close_count import close_count
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_report import enter_report, print_report, print_report_again
from inspector.duties.record_inspection import record_inspection
from inspector.duties.take_stock import begin_count, mark
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.duties.whereabouts import report_missing
from inspector.gear.outcome import Outcome
from inspector.gear.papers import ProtocolTable
from inspector.gear.register_report import RegisterReport
from inspector.gear.stock_take import Counted
from inspector.paper.printed import Printed
from inspector.refused import Refused
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good, shackle, strap
from tests.duties.incidents import beach, reported
from tests.duties.rigs import fit, later
from tests.paper.reading import all_text, squeezed


def text(path: Path) -> str:
    """What stands on a printed paper."""
    return all_text(Printed(path.read_bytes(), 0, ()))


def table(made: RegisterReport, title: str) -> ProtocolTable:
    """The list whose title begins so."""
    return next(one for one in made.tables if one.title.startswith(title))


def test_a_register_without_gear_has_its_report(office: Office) -> None:
    made = enter_report(office)
    assert made.all.total == 0 and made.kinds == () and made.buy == ()
    printed = text(print_report(office).path)
    assert "Of 0 pieces 0 may be used, 0 may not." in printed
    assert "nobody knows by a count whether all of it is there" in printed


def test_it_counts_each_piece_once_by_kind_and_outcome(office: Office) -> None:
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    fit(office, shackle("SH-2", owner="Di Member"), SHACKLE_READINGS)
    book_in(office, replace(strap("KS-1"), in_service_on=None))
    made = enter_report(office)
    counts = {one.kind_name: {each: one.of(each) for each in Outcome if one.of(each)} for one in made.kinds}
    assert counts == {"Bow shackle": {Outcome.FIT: 2}, "Kinetic strap": {Outcome.HOLD: 1}}
    assert made.answer[0] == "Of 3 pieces 2 may be used, 1 may not."
    assert made.answer[1] == "2 of them are the club's own."
    assert sum(one.count for one in made.ages) == 3 and made.ages[-1].count == 3
    assert "KS-1" in made.decide[0]


def test_what_was_retired_since_a_day_is_told_with_what_would_replace_it(office: Office) -> None:
    fit(office, strap("KS-1"), STRAP_READINGS)
    kind = open_item(office, "KS-1").dossier.kind
    record_inspection(office, "KS-1", all_good(office, kind, STRAP_READINGS, edge_cuts="bad"))
    made = enter_report(office, office.today)
    (line,) = table(made, "Retired since").lines
    assert line[0] == "KS-1" and "Cuts and holes" in line[3]
    assert "KS-1, retired. Replace it by a kinetic strap marked at least MBS 8000 kg" in made.buy[0]
    assert any(one.startswith("Retired and not yet made unusable: KS-1") for one in made.decide)
    after = later(office, 1)
    assert table(enter_report(after, after.today), "Retired since").lines == ()


def test_what_is_missing_is_no_gear_to_be_used(office: Office) -> None:
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    report_missing(office, "SH-1", "on the beach", "not in the bag")
    made = enter_report(office)
    assert made.all.total == 0 and "One piece is missing or stolen." in made.answer
    (line,) = table(made, "Lost, sold").lines
    assert line[0] == "SH-1" and "missing" in line[3]


def test_what_nobody_knows_the_value_of_is_said_and_never_counted_as_nothing(office: Office) -> None:
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    made = enter_report(office)
    worth = table(made, "What it is worth")
    assert "Of 1 piece nobody wrote down a value" in worth.said
    assert worth.lines[-1] == ("All together", "1", "not known", "1 piece")
    assert any("No value is written down of 1 of 1 piece" in one for one in made.decide)


def test_an_accident_stands_in_a_line(office: Office) -> None:
    beach(office)
    ref = reported(office).incident.ref
    made = enter_report(office, office.today)
    (line,) = table(made, "Accidents").lines
    assert line[0] == ref and line[2] == "open" and "a shackle opened" in line[3]
    assert any(ref in one for one in made.decide)


def test_an_open_accident_of_before_is_told_still(office: Office) -> None:
    beach(office)
    ref = reported(office).incident.ref
    after = later(office, 30)
    assert table(enter_report(after, after.today), "Accidents").lines[0][0] == ref


def test_what_the_last_count_did_not_see_is_to_be_decided(office: Office) -> None:
    for tag in ("SH-1", "SH-2"):
        fit(office, shackle(tag), SHACKLE_READINGS)
    begin_count(office, "C1", "")
    mark(office, "C1", ["SH-1"], Counted.PRESENT)
    close_count(office, "C1")
    made = enter_report(office)
    assert any("Not seen in the count C1: 1 piece." in one for one in made.decide)
    count = table(made, "The count")
    assert "1 of 2 expected pieces were seen" in count.said and [line[0] for line in count.lines] == ["SH-2"]


def test_it_is_printed_again_as_it_was_said(office: Office) -> None:
    first = print_report(office)
    before = first.path.read_bytes()
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    assert print_report_again(office).path.read_bytes() == before
    other = print_report(office)
    assert other.path != first.path
    assert print_report_again(office, first.path.stem).path.read_bytes() == before
    assert print_report_again(office).path == other.path


def test_a_day_to_come_and_a_report_that_never_was_are_refused(office: Office) -> None:
    with pytest.raises(Refused, match="still to come"):
        enter_report(office, office.today + timedelta(days=1))
    with pytest.raises(Refused, match="No report was printed yet"):
        print_report_again(office)


def test_the_ledger_tells_of_it_and_holds(office: Office) -> None:
    number = print_report(office).path.stem
    (told, *_rest) = told_ledger(office)
    assert told.sentence == f"Ada Officer printed the report {number} on the gear."
    assert verify_book(office).faults == ()


def test_the_report_of_the_sample_register_has_every_list(sample: Office) -> None:
    made = enter_report(sample)
    printed = squeezed(text(print_report_again(sample).path))
    for one in made.tables:
        assert squeezed(one.title) in printed
        for line in one.lines:
            assert all(squeezed(cell) in printed for cell in line)
    assert made.all.total == sum(one.total for one in made.kinds)
