"""Files of tables are read as they are; what is broken, hostile or too large is refused in plain words."""

import csv
import io
import random
import zipfile
from collections.abc import Callable
from datetime import date, datetime

import pytest
from xlsxwriter import Workbook
from xlsxwriter.worksheet import Worksheet

from inspector.gear.exported import ExportedTable
from inspector.refused import Refused
from inspector.register.exchange import table_limits
from inspector.register.exchange.read_tables import read_tables
from inspector.register.exchange.write_csv import csv_bytes
from tests.each import each

_TABLE = [["Nr", "Gerät", "WLL (t)"], ["A-1", "Bogenschäkel", "4,75"], ["A-2", "Umlenkrolle; groß", "1,5"]]


def written(delimiter: str, encoding: str, quoting: int = csv.QUOTE_MINIMAL, end: str = "\r\n") -> bytes:
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=delimiter, quoting=quoting, lineterminator=end).writerows(_TABLE)  # type: ignore[arg-type]
    return text.getvalue().encode(encoding)


def workbook(fill: Callable[[Worksheet, Workbook], object], *names: str) -> bytes:
    stream = io.BytesIO()
    book = Workbook(stream, {"in_memory": True})
    for name in names or ("Gear",):
        fill(book.add_worksheet(name), book)
    book.close()
    return stream.getvalue()


@each("quoting", [csv.QUOTE_MINIMAL, csv.QUOTE_ALL])
@each("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252", "utf-16-le"])
@each("delimiter", [";", "\t", "|", ","])
def test_a_csv_file_is_read_whatever_its_alphabet_and_separator(delimiter: str, encoding: str, quoting: int) -> None:
    found = read_tables(written(delimiter, encoding, quoting), "list.csv")
    assert [list(row) for row in found.sheets[0].rows] == _TABLE
    assert found.delimiter == delimiter
    assert found.encoding == {"utf-8-sig": "utf-8"}.get(encoding, encoding)


def test_the_encoding_and_the_separator_can_be_told() -> None:
    found = read_tables("a:b\n\u20ac:2\n".encode("cp1252"), "list.csv", "cp1252", ":")
    assert found.sheets[0].rows == (("a", "b"), ("€", "2"))
    with pytest.raises(Refused):
        read_tables(b"\xff\xfea", "list.csv", "ascii")
    with pytest.raises(Refused):
        read_tables(b"a,b", "list.csv", "no-such-alphabet")


def test_blank_lines_and_a_line_that_names_the_separator_keep_their_row_numbers() -> None:
    found = read_tables(b"sep=|\n\na|b\n1|2\n", "list.csv")
    assert found.sheets[0].rows == ((), (), ("a", "b"), ("1", "2"))


@each("text", ["=1+1", "+61 4", "-20 to +40 °C", "@home", "＝x", "'quoted'", "'=kept", "plain", "|x"])
def test_what_an_export_made_harmless_reads_as_it_was(text: str) -> None:
    found = read_tables(csv_bytes(ExportedTable("", ("Tag", "Note"), (("A-1", text),))), "list.csv")
    assert found.sheets[0].rows[1] == ("A-1", text)


def test_a_workbook_keeps_rows_numbers_days_and_cells_merged_down_a_column() -> None:
    def fill(sheet: Worksheet, book: Workbook) -> None:
        sheet.merge_range(0, 0, 0, 3, "A title over four columns")
        sheet.write_row(3, 1, ["Tag", "Kind", "WLL (t)", "Made"])
        sheet.merge_range(4, 2, 5, 2, "Bow shackle")
        for row in (4, 5):
            sheet.write(row, 1, f"A-{row}")
            sheet.write_number(row, 3, 4.75)
        day = book.add_format({"num_format": "dd.mm.yyyy"})
        sheet.write_datetime(4, 4, datetime(2024, 5, 3), day)  # noqa: DTZ001 - a day
        sheet.write_formula(5, 4, "=1+1", None, 2)
        sheet.write_boolean(6, 1, True)

    rows = read_tables(workbook(fill), "list.xlsx").sheets[0].rows
    assert rows[0][0] == "A title over four columns" and rows[0][1] == ""
    assert rows[3][1:] == ("Tag", "Kind", "WLL (t)", "Made")
    assert rows[4][1:] == ("A-4", "Bow shackle", 4.75, date(2024, 5, 3))
    assert rows[5][1:] == ("A-5", "Bow shackle", 4.75, 2.0)
    assert rows[6][1] == "TRUE"


def test_every_sheet_with_cells_is_read_and_an_empty_one_is_none() -> None:
    found = read_tables(workbook(lambda sheet, _: sheet.write(0, 0, sheet.name), "One", "Two"), "list.xlsx")
    assert [one.name for one in found.sheets] == ["One", "Two"]
    with pytest.raises(Refused, match="Nothing stands in it"):
        read_tables(workbook(lambda sheet, _: None), "list.xlsx")


_NAMES = "urn:oasis:names:tc:opendocument:xmlns"
_BLANK = '<table:table-cell table:number-columns-repeated="{count}"/>'
_BLANK_ROWS = f'<table:table-row table:number-rows-repeated="{{count}}">{_BLANK.format(count=16384)}</table:table-row>'
_TEXT = '<table:table-cell office:value-type="string"><text:p>{text}</text:p></table:table-cell>'
_OPEN = "".join([
    '<?xml version="1.0" encoding="UTF-8"?><office:document-content office:version="1.2"',
    *(f' xmlns:{name}="{_NAMES}:{name}:1.0"' for name in ("office", "text", "table")),
    '><office:body><office:spreadsheet><table:table table:name="Geräte">',
    f"<table:table-row>{_TEXT.format(text='Nr')}{_TEXT.format(text='Baujahr')}{_BLANK.format(count=16382)}",
    f"</table:table-row>{_BLANK_ROWS.format(count=2)}<table:table-row>",
    '<table:table-cell office:value-type="float" office:value="4.75"><text:p>4,75</text:p></table:table-cell>',
    '<table:table-cell office:value-type="date" office:date-value="2024-05-03"><text:p>3</text:p></table:table-cell>',
    f"{_BLANK.format(count=16382)}</table:table-row>{_BLANK_ROWS.format(count=1_048_571)}",
    "</table:table></office:spreadsheet></office:body></office:document-content>",
])  # fmt: skip
_MIME = "application/vnd.oasis.opendocument.spreadsheet"
_MANIFEST = (
    f'<manifest:manifest xmlns:manifest="{_NAMES}:manifest:1.0" manifest:version="1.2">'
    f'<manifest:file-entry manifest:full-path="/" manifest:media-type="{_MIME}"/></manifest:manifest>'
)


def test_an_open_document_is_read_though_it_says_that_it_goes_on_for_a_million_rows() -> None:
    data = packed(
        {"mimetype": _MIME.encode(), "META-INF/manifest.xml": _MANIFEST.encode(), "content.xml": _OPEN.encode()}
    )
    (sheet,) = read_tables(data, "list.ods").sheets
    assert sheet.name == "Geräte"
    assert [row[:2] for row in sheet.rows] == [("Nr", "Baujahr"), ("", ""), ("", ""), (4.75, date(2024, 5, 3))]


def far_out(sheet: Worksheet, _: Workbook) -> None:
    sheet.write(0, 0, "a")
    sheet.write(1_048_575, 16_383, "b")


def deeply_merged(sheet: Worksheet, _: Workbook) -> None:
    sheet.write(3_000, 0, "end")
    for column in range(60):
        sheet.merge_range(0, column, 3_000, column, "all")


def packed(parts: dict[str, bytes]) -> bytes:
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as made:
        for name, data in parts.items():
            made.writestr(name, data)
    return stream.getvalue()


_ODS = b'<office:document-content xmlns:office="o" xmlns:table="t"><table:table table:name="x">%s</table:table>'
_CELL = (
    b'<table:table-row table:number-rows-repeated="%d"><table:table-cell office:value-type="float" office:value="1" '
)
_CELL += b'table:number-columns-repeated="%d"/></table:table-row>'
_HOSTILE: dict[str, Callable[[], bytes]] = {  # made by the test that reads them: some take long
    "empty": lambda: b"",
    "a NUL in a text": lambda: b"Tag,Kind\nA\0,b\n" * 50,
    "half a workbook": lambda: workbook(lambda sheet, _: sheet.write(0, 0, "Tag"))[:900],
    "a packed file that is no workbook": lambda: packed({"readme.txt": b"hello"}),
    "an old workbook's head alone": lambda: b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 2000,
    "a picture": lambda: b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 20,
    "a million columns": lambda: b"a," * 1_000_000,
    "a cell far out": lambda: workbook(far_out),
    "what unpacks to too much": lambda: packed(
        {"xl/worksheets/sheet1.xml": b"\0" * (table_limits.MOST_UNPACKED_BYTES + 1)}
    ),
    "an open document that repeats a cell": lambda: packed({"content.xml": _ODS % (_CELL % (1_000_000, 16_000))}),
    "an open document that repeats a row": lambda: packed({"content.xml": _ODS % (_CELL % (999_999_999_999, 1))}),
    "a cell with no end of figures": lambda: packed({"xl/worksheets/sheet1.xml": b'<c r="A99999999999"/>'}),
    "a quote that never ends": lambda: b'"' + b"x" * 200_000 + b"\n" + b"a,b\n",
}


@each("name", _HOSTILE)
def test_a_hostile_file_is_refused_in_words(name: str) -> None:
    with pytest.raises(Refused) as refused:
        read_tables(_HOSTILE[name](), "list.xlsx")
    assert refused.value.field == "list.xlsx" and refused.value.why and refused.value.what_to_do


def test_a_sheet_of_merged_cells_takes_no_more_room_than_it_may() -> None:
    found = read_tables(workbook(deeply_merged), "list.xlsx")
    assert len(found.sheets[0].rows) == 3_001


def test_random_bytes_and_damaged_files_are_read_or_refused_and_nothing_else() -> None:
    chance = random.Random(11)
    whole = [workbook(lambda sheet, _: sheet.write_row(0, 0, ["Tag", "Kind"])), written(";", "cp1252")]
    refusals = 0
    for number in range(300):
        data = bytearray(chance.choice(whole)) if number % 3 else bytearray(chance.randbytes(400))
        for _ in range(chance.randrange(1, 12)):
            data[chance.randrange(len(data))] = chance.randrange(256)
        try:
            read_tables(bytes(data[: chance.randrange(1, len(data))]), "list")
        except Refused:
            refusals += 1
    assert 50 < refusals < 300
