"""A sheet filled in on a screen: read by the names of its fields, held against what was printed, else a picture."""

import random
from collections.abc import Callable
from functools import cache
from io import BytesIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from msgspec.structs import replace
from pypdf import PdfWriter
from pypdf.generic import ArrayObject, FloatObject, NameObject, TextStringObject

from inspector.gear.papers import TickLine, TripSheet
from inspector.gear.photo_read import BoxState
from inspector.gear.sheet_code import read_code
from inspector.gear.sheet_fields import reading_name, remarks_name, tick_name, unit_name
from inspector.paper.filled_form import FilledForm, read_form
from inspector.paper.inspection_sheet import fingerprint, inspection_sheet
from inspector.paper.page_style import PageSize
from inspector.refused import Refused
from inspector.rulebook.load import packaged
from tests.paper.conftest import imprint, shackle
from tests.paper.filling import by_library, by_viewer, drawn_on, flattened

Fill = Callable[[bytes, set[str], dict[str, str]], bytes]
_UNITS = ("mm", "cm", "m", "in", "ft")


@cache
def every_kind() -> TripSheet:
    """A sheet that asks every check and measure of every kind."""
    pieces = []
    for kind in packaged().kinds.values():
        ticks = [TickLine(one.asks, key=one.key) for one in kind.checks]
        ticks += [TickLine(one.name, "at most 3 mm", one.key, _UNITS) for one in kind.measures]
        pieces.append(replace(shackle(f"{kind.key}-1"), kind_name=kind.name, ticks=tuple(ticks)))
    return TripSheet(
        imprint("Pre-trip inspection sheet", "S-K7QM-0001"), "Day out", "Spit", "today", "N", (), tuple(pieces), ()
    )


@cache
def printed(page: PageSize = PageSize.A4) -> bytes:
    return inspection_sheet(every_kind(), page).pdf


@cache
def small() -> bytes:
    return inspection_sheet(replace(every_kind(), going=every_kind().going[:2]), PageSize.A4).pdf


def read(pdf: bytes) -> FilledForm:
    form = read_form(pdf)
    assert form
    return form


def answers(pdf: bytes) -> tuple[set[str], dict[str, str]]:
    """What is ticked, and what is written but for units that nobody touched."""
    form = read(pdf)
    ticked = {one.name for one in form.boxes if one.state is BoxState.MARKED}
    assert not any(one.state is BoxState.UNSURE for one in form.boxes)
    return ticked, {one.name: one.text for one in form.rooms if not one.name.endswith("unit") or one.text != "mm"}


def some_answers(seed: int) -> tuple[set[str], dict[str, str]]:
    """An answer to every line but a few, figures with units, remarks."""
    rng = random.Random(seed)
    ticked: set[str] = set()
    written: dict[str, str] = {}
    for number, piece in enumerate(every_kind().going, 1):
        for check, tick in enumerate(piece.ticks, 1):
            if rng.random() < 0.9:
                ticked.add(tick_name(number, check, rng.choice(("good", "good", "fault"))))
            if tick.limit and rng.random() < 0.8:
                written[reading_name(number, check)] = f"{rng.uniform(1, 90):.1f}"
        if rng.random() < 0.5:
            written[remarks_name(number)] = rng.choice(("frayed at one end", "pin stiff, oiled", "Zoë asks why"))
    return ticked, written


@pytest.mark.parametrize("fill", [by_library, by_viewer])
def test_what_was_filled_in_at_every_check_of_every_kind_comes_back(fill: Fill) -> None:
    ticked, written = some_answers(len(fill.__name__))
    assert len(ticked) > 200 and len(written) > 30
    filled = fill(printed(), ticked, written)
    assert answers(filled) == (ticked, written)
    assert read(filled).asks_the_same(read(printed()))


def test_a_unit_can_be_chosen_and_names_in_any_script_are_kept() -> None:
    line = next(at for at, tick in enumerate(every_kind().going[0].ticks, 1) if tick.units)
    written = {unit_name(1, line): "in", remarks_name(1): "Ελένη, Ольга, 李, نور"}
    assert answers(by_library(printed(), set(), written))[1] == written


def test_nothing_filled_in_is_nothing_answered() -> None:
    ticked, written = answers(printed())
    assert not ticked and not written


@pytest.mark.parametrize("page", PageSize)
def test_the_hidden_word_tells_sheet_and_what_it_asks(page: PageSize) -> None:
    code = read_code(read(printed(page)).code)
    assert code and (code.number, code.mark) == ("S-K7QM-0001", fingerprint(every_kind()))


def test_a_copy_without_fields_is_no_form() -> None:
    assert read_form(flattened(by_library(small(), {tick_name(1, 1, "good")}, {}))) is None


def test_what_somebody_drew_over_it_is_told() -> None:
    assert read(drawn_on(small(), 0, 100, 400)).is_drawn and not read(small()).is_drawn


def changed(change: Callable[[PdfWriter], object], pdf: bytes | None = None) -> FilledForm:
    writer = PdfWriter(clone_from=BytesIO(pdf or small()))
    change(writer)
    out = BytesIO()
    writer.write(out)
    return read(out.getvalue())


def widgets(writer: PdfWriter) -> dict[str, dict]:  # type: ignore[type-arg]
    notes = (one.get_object() for page in writer.pages for one in page.get("/Annots", []))
    return {str(one["/T"]): one for one in notes}


def _swap(writer: PdfWriter) -> None:
    found = widgets(writer)
    good, fault = found[tick_name(1, 1, "good")], found[tick_name(1, 1, "fault")]
    good[NameObject("/Rect")], fault[NameObject("/Rect")] = fault["/Rect"], good["/Rect"]


def _rename(writer: PdfWriter) -> None:
    widgets(writer)[tick_name(1, 1, "fault")][NameObject("/T")] = TextStringObject("001-01-other")


def _say_otherwise(writer: PdfWriter) -> None:
    widgets(writer)[tick_name(1, 1, "fault")][NameObject("/TU")] = TextStringObject("All well?")


def _nudge(writer: PdfWriter) -> None:
    one = widgets(writer)[tick_name(1, 1, "good")]
    one[NameObject("/Rect")] = ArrayObject([FloatObject(float(edge) + 0.4) for edge in one["/Rect"]])


def _lose_page(writer: PdfWriter) -> None:
    writer.remove_page(0)


@pytest.mark.parametrize("change", [_swap, _rename, _say_otherwise, _lose_page])
def test_a_form_that_asks_otherwise_is_seen(change: Callable[[PdfWriter], None]) -> None:
    assert not changed(change).asks_the_same(read(small()))


def test_a_question_that_was_written_anew_is_seen() -> None:
    other = list(every_kind().going[:2])
    first, *rest = other[0].ticks
    other[0] = replace(other[0], ticks=(replace(first, text=first.text.replace("?", " at all?")), *rest))
    pdf = inspection_sheet(replace(every_kind(), going=tuple(other)), PageSize.A4).pdf
    assert not read(pdf).asks_the_same(read(small()))


def test_what_a_viewer_rounds_or_leaves_out_is_no_change() -> None:
    assert changed(_nudge).asks_the_same(read(small()))
    bare = changed(lambda writer: [one.pop("/TU", None) for one in widgets(writer).values()])
    assert bare.asks_the_same(read(small()))


@pytest.mark.parametrize(("value", "shown"), [("/Yes", "/Off"), ("/Off", "/Yes")])
def test_a_box_that_says_two_things_is_unsure(value: str, shown: str) -> None:
    def change(writer: PdfWriter) -> None:
        one = widgets(writer)[tick_name(1, 1, "good")]
        one[NameObject("/V")], one[NameObject("/AS")] = NameObject(value), NameObject(shown)

    state = {one.name: one.state for one in changed(change).boxes}
    assert state[tick_name(1, 1, "good")] is BoxState.UNSURE


@settings(max_examples=40, deadline=None)
@given(some.data())
def test_broken_bytes_are_refused_or_read_and_never_a_fault_of_ours(data: some.DataObject) -> None:
    pdf = bytearray(small())
    for _ in range(data.draw(some.integers(1, 60))):
        pdf[data.draw(some.integers(0, len(pdf) - 1))] = data.draw(some.integers(0, 255))
    del pdf[data.draw(some.integers(len(pdf) // 2, len(pdf))) :]
    try:
        form = read_form(bytes(pdf))
    except Refused as refusal:
        assert refusal.why and refusal.what_to_do
    else:
        assert form is None or form.code
