"""The officer prints the account of a rig."""

from datetime import date
from io import BytesIO

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from inspector.duties.office import Office
from inspector.duties.print_rig_sheet import print_rig_sheet
from inspector.gear.papers import RigSheet
from inspector.gear.rig_result import RigResult
from inspector.gear.trip import Ground, Trip
from inspector.refused import Refused
from inspector.register.rows import from_body
from tests.drawings import rigs


@pytest.fixture
def planned(office: Office) -> RigResult:
    """A rig for a trip of the register, its two vehicles known."""
    trip = Trip(
        "t1", "T-2026-3", "Winter beach run", "Long Spit", Ground.BEACH, date(2026, 6, 13), date(2026, 6, 14), ""
    )
    with office.book.page() as page:
        for vehicle in rigs.VEHICLES:
            page.add_vehicle(vehicle)
        page.add_vehicle(replace(rigs.VEHICLES[0], id="9", tag="V-09"))
        page.add_trip(trip)
        page.enter("plan trip", by=office.officer.id, at=office.now, facts={})
    made = rigs.plain()
    return replace(made, rig=replace(made.rig, trip="T-2026-3"))


def kept(office: Office, name: str) -> tuple[str, RigSheet]:
    """The sheet as the book keeps it."""
    with office.book.page() as page:
        found = page.latest_document("rig_sheet", name)
    assert found
    return found[0], from_body(found[1], RigSheet)


def test_it_is_numbered_kept_and_printed(office: Office, planned: RigResult) -> None:
    paper = print_rig_sheet(office, planned)
    number, sheet = kept(office, planned.rig.name)
    assert paper.path.name == f"{number}.pdf" and number.startswith("G-") and number.endswith("0001")
    assert paper.missing == ()
    assert sheet.result == planned
    assert [one.tag for one in sheet.vehicles] == ["V-01", "V-02"]
    assert sheet.trip == "Winter beach run"
    text = PdfReader(BytesIO(paper.path.read_bytes())).pages[0].extract_text()
    assert number in text and "Test Club" in text and "Rig sheet" in text and "Ada Officer" in text


def test_the_next_one_has_the_next_number(office: Office, planned: RigResult) -> None:
    print_rig_sheet(office, planned)
    assert print_rig_sheet(office, planned).path.stem.endswith("0002")


def test_the_deed_stands_in_the_ledger_and_the_chain_holds(office: Office, planned: RigResult) -> None:
    with office.book.page() as page:
        before = page.verify().line_count
    print_rig_sheet(office, planned)
    with office.book.page() as page:
        found = page.verify()
    assert found.line_count == before + 1 and not found.faults


def test_a_full_disk_loses_no_sheet(office: Office, planned: RigResult) -> None:
    office.out_tray.write_text("a file where the folder should be")
    with pytest.raises(Refused):
        print_rig_sheet(office, planned)
    assert kept(office, planned.rig.name)[1].result == planned


def test_a_rig_whose_vehicles_nobody_booked_prints_their_tags(office: Office) -> None:
    paper = print_rig_sheet(office, rigs.doubled())
    assert kept(office, rigs.doubled().rig.name)[1].vehicles == ()
    assert "V-02" in PdfReader(BytesIO(paper.path.read_bytes())).pages[0].extract_text()
