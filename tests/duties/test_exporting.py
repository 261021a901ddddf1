"""Lists for other programs: the gear as it is listed, what happened to it, and nothing written over."""

import csv
from collections.abc import Iterator
from datetime import date
from io import StringIO
from pathlib import Path

import pytest
from msgspec.structs import replace
from python_calamine import CalamineWorkbook

from inspector.duties.book_in import book_in
from inspector.duties.change_item import change_note, change_value
from inspector.duties.export_list import What, export_lines, export_list
from inspector.duties.gear_list import answers
from inspector.duties.look_up import list_gear, open_item
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.record_use import record_exposure, record_use
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tell_history import history_of
from inspector.duties.value_gear import read_worth
from inspector.duties.verify_book import verify_book
from inspector.gear.lists import Wanted
from inspector.gear.outcome import Outcome
from inspector.gear.use import Event, NewExposure, NewUse, Weather
from inspector.refused import Refused
from inspector.register.exchange.guard import unguarded
from tests.duties.gear import all_good, mount, shackle, strap
from tests.duties.test_opinions import add

GOOD = {"bow_diameter": "18.9 mm", "pin_diameter": "22 mm"}
HARMFUL = '=HYPERLINK("http://x.example"), see label'


@pytest.fixture
def club(office: Office) -> Office:
    """Three pieces: one inspected twice, once wrongly, used and rained on; a strap; a mount with a harmful note."""
    for facts in (shackle(), strap(), mount()):
        book_in(office, facts)
    change_note(office, "BM-1", HARMFUL)
    change_value(office, "SH-1", read_worth("120.50 EUR"))
    kind = office.kind("bow_shackle")
    record_inspection(office, "SH-1", all_good(office, kind, GOOD))
    record_inspection(office, "SH-1", all_good(office, kind, {"bow_diameter": "18.8 mm", "pin_diameter": "22 mm"}))
    record_use(office, "SH-1", NewUse(office.today, 3, Event.DROPPED, office.officer.id, "on a stone"))
    record_exposure(office, "SH-1", NewExposure(office.today, Weather.SALT, 2, True, office.officer.id))
    return office


def rows(file: Path, delimiter: str = ",") -> list[dict[str, str]]:
    """The rows of a CSV file by the names of its columns."""
    text = StringIO(file.read_bytes().decode("utf-8-sig"), newline="")
    return list(csv.DictReader(text, delimiter=delimiter))


def tags(office: Office, wanted: Wanted | None = None) -> tuple[str, ...]:
    """The pieces that answer."""
    return answers(office, wanted or Wanted()).tags


def test_the_gear_is_one_row_a_piece_with_all_that_is_known_of_it(club: Office, tmp_path: Path) -> None:
    made = export_list(club, tags(club), tmp_path / "gear.csv")
    found = {one["tag"]: one for one in rows(made.file)}
    assert made.rows == len(found) == 3
    one = found["SH-1"]
    assert (one["kind"], one["kind key"], one["rating"], one["basis"]) == (
        "Bow shackle",
        "bow_shackle",
        "4.75 t",
        "wll",
    )
    assert (one["rating in SI"], one["SI unit"], one["design factor"]) == ("46581.5875", "N", "5.0")
    assert (one["bow diameter"], one["pin diameter"], one["owner"]) == ("19 mm", "7/8 in", "Club")
    assert one["sizes in SI"] == "bow_diameter=0.019 m; pin_diameter=0.022225 m"
    assert (one["worth"], one["currency"], one["booked on"]) == ("120.5", "EUR", "2026-11-25")
    said = open_item(club, "SH-1").explanation
    assert one["verdict in a line"] == said.headline and one["may be used for"] == said.use_line
    assert all(reason.sentence in one["reasons"] for reason in said.reasons)
    assert found["BM-1"]["bow diameter"] == "" and found["BM-1"]["wall"] == "5 mm"
    assert found["BM-1"]["rating"] == "2000 kg" and found["BM-1"]["SI unit"] == "kg"
    assert found["BM-1"]["note"] == "'" + HARMFUL and unguarded(found["BM-1"]["note"]) == HARMFUL


def test_only_what_is_asked_for_is_written_in_its_order(club: Office, tmp_path: Path) -> None:
    wanted = Wanted(outcome=Outcome.HOLD)
    made = export_list(club, tags(club, wanted), tmp_path / "held.csv")
    assert [one["tag"] for one in rows(made.file)] == [
        row.tag for row in list_gear(club, outcome=Outcome.HOLD, order="due").rows
    ]
    assert {one["verdict"] for one in rows(made.file)} == {"Hold"}
    shown = export_list(club, ("KS-1",), tmp_path / "uses.csv", What.USES)
    assert shown.rows == 0 and rows(shown.file) == []


def test_inspections_readings_uses_and_exposures_have_their_tables(club: Office, tmp_path: Path) -> None:
    found = {what: rows(export_list(club, tags(club), tmp_path / f"{what}.csv", what).file) for what in What}
    assert [one["day"] for one in found[What.INSPECTIONS]] == ["2026-11-25", "2026-11-25"]
    assert found[What.INSPECTIONS][0]["by"] == "Ada Officer" and found[What.INSPECTIONS][0]["competent for it"] == "yes"
    first = found[What.READINGS][0]
    assert (first["measure"], first["reading"], first["reading in SI"]) == ("bow_diameter", "18.9 mm", "0.0189")
    assert len(found[What.READINGS]) == 4
    use, sea = found[What.USES][0], found[What.EXPOSURES][0]
    assert (use["pulls"], use["event"], use["note"]) == ("3", "dropped", "on a stone")
    assert (sea["weather"], sea["days"], sea["rinsed"], sea["dried"]) == ("salt", "2", "yes", "")


def test_a_struck_entry_stays_in_the_table_and_says_so(club: Office, tmp_path: Path) -> None:
    add(club, "Bo Second")
    wrong = next(one for one in history_of(club, "SH-1") if one.ref and "18.8" in one.text)
    strike_entry(club, "SH-1", wrong.ref, "Bo Second", "the calliper was bent", "")
    found = rows(export_list(club, tags(club), tmp_path / "read.csv", What.READINGS).file)
    assert {one["reading"]: one["struck, does not count"] for one in found if one["measure"] == "bow_diameter"} == {
        "18.9 mm": "no",
        "18.8 mm": "yes",
    }


def test_a_workbook_holds_every_table_and_says_whose_it_is_and_what_to_mind(club: Office, tmp_path: Path) -> None:
    made = export_list(club, tags(club), tmp_path / "all.XLSX")
    book = CalamineWorkbook.from_path(made.file)
    assert book.sheet_names == ["Gear", "Inspections", "Readings", "Uses", "Exposures", "Documents", "About"]
    heads, *gear = book.get_sheet_by_name("Gear").to_python()
    of = {row[0]: dict(zip(heads, row, strict=True)) for row in gear}
    assert of["SH-1"]["rating in SI"] == 46581.5875 and of["SH-1"]["booked on"] == date(2026, 11, 25)
    assert of["BM-1"]["note"] == HARMFUL
    about = [str(row) for row in book.get_sheet_by_name("About").to_python()]
    assert any("Test Club" in one for one in about) and any("decision aid" in one for one in about)
    assert any(verify_book(club).head in one for one in about)


def test_where_a_comma_is_the_decimal_sign_a_semicolon_stands_between_cells(club: Office, tmp_path: Path) -> None:
    found = rows(export_list(replace(club, decimal=","), tags(club), tmp_path / "g.csv").file, ";")
    assert {one["tag"]: one["rating in SI"] for one in found}["SH-1"] == "46581,5875"


def test_nothing_is_entered_and_nothing_is_written_over(club: Office, tmp_path: Path) -> None:
    before = verify_book(club)
    mine = tmp_path / "mine.csv"
    mine.write_text("mine", "utf-8")
    (tmp_path / "all.schema.json").write_text("mine", "utf-8")
    for place in (mine, tmp_path / "mine.txt", tmp_path / "nowhere" / "a.xlsx"):
        with pytest.raises(Refused):
            export_list(club, tags(club), place)
    with pytest.raises(Refused, match="stays as it is"):
        export_lines(club, tmp_path / "all.jsonl")
    assert mine.read_text("utf-8") == "mine" and not (tmp_path / "all.jsonl").exists()
    assert verify_book(club) == before


def test_every_row_is_written_as_a_line_with_its_schema_beside(club: Office, tmp_path: Path) -> None:
    made = export_lines(club, tmp_path / "all.jsonl")
    assert made.rows == len(made.file.read_bytes().splitlines())
    assert made.beside and b"json-schema.org" in made.beside.read_bytes()
    with club.book.reading() as page:
        assert b"".join(page.json_lines()) == made.file.read_bytes()


def test_a_disk_that_fills_up_leaves_no_half_file(
    club: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: object) -> Iterator[bytes]:
        yield b"{}\n"
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("inspector.register.exchange_page.json_lines", full)
    with pytest.raises(Refused, match="No space left"):
        export_lines(club, tmp_path / "all.jsonl")
    assert not list(tmp_path.glob("all.*"))
