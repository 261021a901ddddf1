"""Tables for other programs: what a spreadsheet would take for a formula is text, and every text comes back."""

import csv
from datetime import UTC, date, datetime
from io import BytesIO, StringIO

from hypothesis import example, given
from hypothesis import strategies as st
from python_calamine import CalamineWorkbook

from inspector.gear.exported import Cell, ExportedTable
from inspector.register.exchange.guard import guarded, unguarded
from inspector.register.exchange.write_csv import csv_bytes
from inspector.register.exchange.write_xlsx import xlsx_bytes
from tests.each import each

AT = datetime(2026, 11, 25, 19, 0, tzinfo=UTC)
SIGNS = "=+-@\t\r\n＝＋－＠"
SAID = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
HARMFUL = st.builds("{}{}{}".format, st.sampled_from(["", "'", "''"]), st.sampled_from(SIGNS), SAID)


def table(*rows: tuple[Cell, ...]) -> ExportedTable:
    """A table of two columns."""
    return ExportedTable("Gear", ("tag", "note"), rows)


def read_csv(data: bytes, delimiter: str = ",") -> list[list[str]]:
    """The rows as another program reads them."""
    return list(csv.reader(StringIO(data.decode("utf-8-sig"), newline=""), delimiter=delimiter))


def read_xlsx(data: bytes, name: str = "Gear") -> list[list[object]]:
    """The rows as another program reads them."""
    return [list(row) for row in CalamineWorkbook.from_filelike(BytesIO(data)).get_sheet_by_name(name).to_python()]


@given(HARMFUL | SAID)
@example('=HYPERLINK("http://x")')
@example("'=1+1")
@example("＝1+1")
@example("-20 to +40 °C")
def test_no_cell_of_a_csv_file_begins_as_a_formula_does_and_every_text_comes_back(said: str) -> None:
    ((*_, heads), (*_, cell)) = read_csv(csv_bytes(table(("SH-1", said))))
    assert heads == "note" and cell[:1] not in set(SIGNS)
    assert unguarded(cell) == said


@each("said", ["M20 - new", "it's", "'quoted'", "12 mm", "", "|x", "@"[:0]])
def test_what_no_spreadsheet_reckons_with_stays_as_it_is(said: str) -> None:
    assert guarded(said) == said == unguarded(said)


def test_numbers_and_days_are_no_texts_and_are_not_guarded() -> None:
    data = csv_bytes(table((-12.5, date(2026, 11, 25)), (3, None)))
    assert data.startswith(b"\xef\xbb\xbf") and data.endswith(b'"3",""\r\n')
    assert read_csv(data)[1:] == [["-12.5", "2026-11-25"], ["3", ""]]
    assert read_csv(csv_bytes(table((-12.5, "a;b")), ","), ";")[1] == ["-12,5", "a;b"]


def test_a_workbook_has_texts_numbers_and_days_and_a_heading_that_stands_still() -> None:
    data = xlsx_bytes([table(("=1+1", date(2026, 11, 25)), ("http://x.example", -12.5), ("0012", None))], AT)
    rows = read_xlsx(data)
    assert rows == [["tag", "note"], ["=1+1", date(2026, 11, 25)], ["http://x.example", -12.5], ["0012", ""]]
    assert b"<f>" not in data and data == xlsx_bytes(
        [table(("=1+1", date(2026, 11, 25)), ("http://x.example", -12.5), ("0012", None))], AT
    )


@given(st.lists(HARMFUL | SAID, min_size=1, max_size=4))
def test_any_text_in_a_workbook_is_text(said: list[str]) -> None:
    rows = read_xlsx(xlsx_bytes([table(*((f"t{at}", one) for at, one in enumerate(said)))], AT))
    for row, one in zip(rows[1:], said, strict=True):
        cell = row[1] if len(row) > 1 else ""
        assert isinstance(cell, str)
        assert _plain(cell) == _plain(one)


def _plain(text: str) -> str:
    """Without what XML cannot hold or writes in one way only: ends of lines, and signs that steer."""
    return "".join(sign for sign in text if sign >= " " and sign not in "\ufffe\uffff").replace("_", "")


def test_a_text_too_long_for_a_cell_is_cut_and_says_so() -> None:
    (_, (_, cell)) = read_xlsx(xlsx_bytes([table(("t", "x" * 40_000))], AT))
    assert isinstance(cell, str) and len(cell) == 32_767 and cell.endswith("(cut here; a CSV file has all of it)")


def test_a_day_before_spreadsheets_can_reckon_is_written_out() -> None:
    assert read_xlsx(xlsx_bytes([table(("t", date(1899, 5, 1)))], AT))[1] == ["t", "1899-05-01"]
