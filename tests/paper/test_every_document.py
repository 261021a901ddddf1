"""What holds for every document: what it says and where, whole on its paper, in any script, with few items and many."""

import ast
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from msgspec.structs import replace
from pypdf import PdfReader

from inspector import paper
from inspector.paper.page_style import PageSize
from inspector.paper.printed import Printed
from tests.each import each
from tests.paper.documents import DOCUMENTS, SOMEBODY, place_of, told
from tests.paper.reading import (
    NAMES,
    assert_fonts_embedded,
    assert_no_text_on_text,
    assert_within_margins,
    assert_within_page,
    pages_of,
)

_TOLERANCE_PT = 1.5
_MANY = 50
_HEAD_AND_FOOT = 8  # lines that stand on every page
_LONG = {
    "many words": "Society of the Friends of Long Beaches and of All Who Pull One Another Out of Them " * 2,
    "W": "W" * 90,
}
EVERY = each("name", DOCUMENTS)
ONE_SHEET = {"voucher"}  # what it has no room for is counted
BOTH = pytest.mark.parametrize("page", PageSize)


def assert_sound(name: str, printed: Printed) -> None:
    """Nothing outside the paper, nothing on another, every font in the file, and it tells what it is."""
    (assert_within_page if DOCUMENTS[name].to_the_edge else assert_within_margins)(printed)
    assert_no_text_on_text(printed)
    assert_fonts_embedded(printed)


def signs_of(printed: Printed) -> str:
    """All signs without spaces, line by line."""
    return "".join("".join(line.text.split()) for page in pages_of(printed) for line in page.lines)


def test_every_document_that_is_laid_out_is_in_the_table() -> None:
    laid_out = set()
    for file in Path(paper.__file__).parent.rglob("*.py"):
        for one in ast.parse(file.read_text(encoding="utf-8")).body:
            if isinstance(one, ast.FunctionDef) and one.returns and not one.name.startswith("_"):
                laid_out |= {one.name} if ast.unparse(one.returns) == "Printed" else set()
    assert laid_out == {entry.lay_out.__name__.removeprefix("_") for entry in DOCUMENTS.values()}


@EVERY
@BOTH
def test_it_says_what_is_expected_where_it_is_expected(name: str, page: PageSize) -> None:
    printed = DOCUMENTS[name].printed(page)
    assert_sound(name, printed)
    now, expected = told(printed), place_of(name, page).read_text(encoding="utf-8").splitlines()
    assert [_words(line) for line in now] == [_words(line) for line in expected]
    moved = [(one, other) for one, other in zip(now, expected, strict=True) if _apart(one, other) > _TOLERANCE_PT]
    assert moved == []


def _words(line: str) -> str:
    return line if line.startswith("page") else line[22:]


def _apart(one: str, other: str) -> float:
    """The furthest that a line was moved, in points."""
    places = zip(one[:20].split(), other[:20].split(), strict=True)
    return 0.0 if one.startswith("page") else max(abs(float(now) - float(then)) for now, then in places)


@EVERY
def test_it_tells_what_it_is(name: str) -> None:
    made = DOCUMENTS[name].make(1, SOMEBODY)
    imprint = replace(made.imprint, club=NAMES["Arabic"])
    printed = DOCUMENTS[name].lay_out(replace(made, imprint=imprint), PageSize.A4)
    told_by = PdfReader(BytesIO(printed.pdf)).metadata
    assert told_by is not None
    assert (told_by.title, told_by.author) == (f"{imprint.title} {imprint.number}", imprint.club)
    assert told_by["/Keywords"] == imprint.number and told_by.subject


def _counted() -> Iterator[tuple[str, int, PageSize]]:
    """Few items on both papers, many on the one or the other."""
    for at, (name, entry) in enumerate(DOCUMENTS.items()):
        for count in entry.counts:
            for page in PageSize if count < _MANY else (tuple(PageSize)[at % 2],):
                yield name, count, page


@pytest.mark.parametrize(("name", "count", "page"), list(_counted()))
def test_it_stands_with_no_item_with_one_and_with_many(name: str, count: int, page: PageSize) -> None:
    printed = DOCUMENTS[name].printed(page, count)
    assert_sound(name, printed)
    assert printed.missing_glyphs == () and printed.page_count == len(pages_of(printed))
    assert count < _MANY or name in ONE_SHEET or printed.page_count > 2
    least = 2 if DOCUMENTS[name].to_the_edge else _HEAD_AND_FOOT  # a page of labels has neither head nor foot
    assert all(len(read.lines) > least for read in pages_of(printed)), "no page is empty"


@EVERY
@each("script", NAMES)
def test_it_names_people_in_any_script(name: str, script: str) -> None:
    printed = DOCUMENTS[name].printed(PageSize.A4, 1, NAMES[script])
    assert_sound(name, printed)
    assert printed.missing_glyphs == ()
    signs = signs_of(printed)
    assert [word for word in NAMES[script].split() if word not in signs] == []


@EVERY
@BOTH
@each("kind", _LONG)
def test_it_holds_a_long_name(name: str, page: PageSize, kind: str) -> None:
    printed = DOCUMENTS[name].printed(page, 1, _LONG[kind].strip())
    assert_sound(name, printed)
    assert signs_of(printed).count("W") >= 90 if kind == "W" else "Beaches" in signs_of(printed)


@EVERY
def test_a_sign_that_no_font_has_is_a_square_and_is_reported(name: str) -> None:
    printed = DOCUMENTS[name].printed(PageSize.A4, 1, "हन 🦊")
    assert set(printed.missing_glyphs) == {"ह", "न", "🦊"} and "□□" in signs_of(printed)
