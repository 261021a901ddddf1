"""The record of a piece on paper: whole, numbered, kept, and printed again as it was said."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from inspector.duties.give_opinion import doubt
from inspector.duties.lend import lend
from inspector.duties.look_up import open_item, people
from inspector.duties.office import Office
from inspector.duties.print_kept import papers_of, print_kept
from inspector.duties.print_record import RECORD, enter_record, print_record, print_record_again
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_ledger import told_ledger
from inspector.duties.verify_book import verify_book
from inspector.gear.inspection import NewInspection
from inspector.gear.item_record import ItemRecord
from inspector.gear.life import LifeSort
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.paper.printed import Printed
from inspector.refused import Refused
from inspector.register.rows import from_body
from tests.duties.gear import SHACKLE_READINGS, all_good, shackle
from tests.duties.incidents import SECOND, beach, reported
from tests.duties.rigs import fit, later, member
from tests.duties.test_opinions import add
from tests.paper.reading import all_text


@pytest.fixture
def lived(office: Office) -> Office:
    """A shackle that was used, lent, seen and doubted."""
    member(office)
    add(office, SECOND)
    fit(office, shackle("SH-1"), SHACKLE_READINGS)
    by = office.officer.id
    record_use(office, "SH-1", NewUse(office.today, 3, Event.NONE, by, "over the bar"))
    record_exposure(office, "SH-1", NewExposure(office.today, Weather.SALT, 2, True, by, ""))
    lend(office, ["SH-1"], "Di Member", office.today + timedelta(days=60))
    doubt(office, "SH-1", "It rang oddly.", SECOND)
    return office


def looked(office: Office, tag: str = "SH-1", **bad: str) -> NewInspection:
    """One more inspection."""
    return all_good(office, open_item(office, tag).dossier.kind, SHACKLE_READINGS, None, "", **bad)


def text(path: Path) -> str:
    """What stands on a printed paper."""
    return all_text(Printed(path.read_bytes(), 0, ()))


def test_it_holds_all_that_happened(lived: Office) -> None:
    made = enter_record(lived, "SH-1")
    assert made.outcome is Outcome.HOLD and made.reasons and made.imprint.number.startswith("P-")
    assert {LifeSort.USE, LifeSort.EXPOSURE, LifeSort.LENDING, LifeSort.WORD} <= {one.sort for one in made.life.entries}
    (seen,) = made.seen
    assert seen.good and not seen.faults and seen.by == lived.officer.name
    assert "Body at the thinnest place: 19 mm (thickness gauge on bare metal" in seen.readings[0]
    printed = text(print_record(lived, "SH-1").path)
    for said in ("Hold", "SH-1", "It rang oddly.", "over the bar", "3 pulls", "Di Member", "Ledger head when"):
        assert said in printed
    for said in made.imprint.cautions:
        assert said in printed


def test_a_fault_is_told_with_what_it_means_and_a_struck_entry_says_so(lived: Office) -> None:
    record_inspection(lived, "SH-1", looked(lived, nicks="slight"))
    later_office = later(lived, 1)
    record_inspection(later_office, "SH-1", looked(later_office, cracks="bad"))
    wrong = next(one for one in open_item(later_office, "SH-1").dossier.inspections if one.on == later_office.today)
    strike_entry(later_office, "SH-1", wrong.id[-6:], SECOND, "wrong tag")
    made = enter_record(later_office, "SH-1")
    struck, slight, _ = made.seen
    assert struck.state == "STRUCK, does not count" and "Cracks: bad." in struck.faults[0]
    assert slight.state == "" and "A shallow mark without a sharp edge." in slight.faults[0]


def test_a_look_that_can_pass_nothing_says_so(lived: Office) -> None:
    di = next(one.id for one in people(lived) if one.name == "Di Member")
    record_inspection(lived, "SH-1", replace(looked(lived), by=di))
    assert "can pass nothing" in enter_record(lived, "SH-1").seen[0].state


def test_it_is_printed_again_as_it_was_said_whatever_came_since(lived: Office) -> None:
    first = print_record(lived, "SH-1")
    before = first.path.read_bytes()
    record_inspection(lived, "SH-1", looked(lived))
    other = print_record(lived, "SH-1")
    assert other.path != first.path
    assert print_record_again(lived, first.path.stem).path.read_bytes() == before
    assert print_kept(lived, "SH-1", first.path.stem).path.read_bytes() == before
    again = {one.number: one.again for one in papers_of(lived, open_item(lived, "SH-1"))}
    assert again[first.path.stem] and again[other.path.stem]


def test_evidence_stands_on_it(office: Office) -> None:
    beach(office)
    reported(office)
    printed = text(print_record(office, "SH-2").path)
    assert "kept as found, as evidence of" in printed and "HOLD" in printed.upper()


def test_the_ledger_tells_of_it_and_holds(lived: Office) -> None:
    number = print_record(lived, "SH-1").path.stem
    (told, *_) = told_ledger(lived)
    assert told.sentence == f"Ada Officer printed the record {number} of SH-1."
    assert verify_book(lived).faults == ()


def test_an_unknown_number_is_refused(lived: Office) -> None:
    with pytest.raises(Refused, match="No record has the number"):
        print_record_again(lived, "D-XXXX-0001")


def test_a_kept_record_of_a_whole_life_stays_small(sample: Office) -> None:
    """Some tens of thousands of bytes for the longest lives of the sample register."""
    for tag in ("HR-02", "SH-01"):
        made = print_record(sample, tag)
        with sample.book.reading() as page:
            body = page.document_of(RECORD, made.path.stem)
        assert body and len(body) < 60_000
        assert from_body(body, ItemRecord).tag == tag
