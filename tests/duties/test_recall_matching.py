"""How a piece answers to a notice: a clear serial decides, and whatever can be misread is asked, never left out."""

import string
from datetime import date

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from inspector.duties.recall_marks import is_readable, may_be_same
from inspector.duties.recall_match import Answers, match
from inspector.gear.recall_notice import Meant, Sure
from inspector.rulebook.load import packaged
from tests.duties.gear import shackle, strap
from tests.duties.notices import MEANT, marked

KINDS = packaged().kinds
CERTAIN, TO_ASK, NOT_MEANT = Sure.CERTAIN, Sure.TO_ASK, Sure.NOT_MEANT


def answers(serial: str, mark: str = "Kelpline", meant: Meant = MEANT, made_on: date | None = None) -> Answers:
    """How a bow shackle with these marks answers."""
    return match(meant, marked("SH-1", serial, mark, made_on=made_on), KINDS)


@pytest.mark.parametrize(
    ("serial", "sure"),
    [
        ("KS240100", CERTAIN), ("KS240199", CERTAIN), ("ks 24-0150", CERTAIN), ("QX7-9", CERTAIN), ("qx.7.1", CERTAIN),
        ("KS240099", NOT_MEANT), ("KS240200", NOT_MEANT), ("QX8-9", NOT_MEANT), ("XW240150", NOT_MEANT),
        ("", TO_ASK), ("  ", TO_ASK), ("?", TO_ASK), ("KS2401??", TO_ASK), ("illegible", TO_ASK), ("worn off", TO_ASK),
        ("K5240150", TO_ASK), ("KS24O15O", TO_ASK), ("240150", TO_ASK), ("KS240150A", TO_ASK), ("KS1500000", TO_ASK),
        ("OX7-9", TO_ASK), ("QX", TO_ASK), ("lot QX7", TO_ASK), ("KT240150", TO_ASK), ("KELP", TO_ASK),
    ],
)  # fmt: skip
def test_a_serial_within_is_certain_one_that_may_be_misread_is_asked(serial: str, sure: Sure) -> None:
    assert answers(serial).sure is sure, answers(serial)


@pytest.mark.parametrize(
    ("mark", "sure"),
    [
        ("KELPLINE", CERTAIN), ("kelp-line", CERTAIN), ("Kelp Line", CERTAIN),
        ("", TO_ASK), ("?", TO_ASK), ("K?LPLINE", TO_ASK), ("unknown", TO_ASK), ("Kelpine", TO_ASK),
        ("Kleplime", TO_ASK), ("Kelpline Rigging", TO_ASK), ("Kelp", TO_ASK), ("KE1PLINE", TO_ASK),
        ("ODQ", NOT_MEANT), ("Skerrow", NOT_MEANT),
    ],
)  # fmt: skip
def test_a_mark_is_compared_leniently_and_a_near_one_is_asked(mark: str, sure: Sure) -> None:
    assert answers("KS240150", mark).sure is sure, answers("KS240150", mark)


def test_initials_may_stand_for_a_mark() -> None:
    assert may_be_same("KR", "Kelpline Rigging") and may_be_same("Kelpline Rigging", "K.R.")
    assert not may_be_same("ODQ", "Kelpline Rigging")


def test_another_kind_is_not_meant_but_with_mark_and_serial_of_the_notice_it_is_asked() -> None:
    other = replace(strap(), maker_mark="Kelpline")
    assert match(MEANT, replace(other, serial="Z9-001"), KINDS).sure is NOT_MEANT
    assert match(MEANT, replace(other, serial="KS240150"), KINDS).sure is TO_ASK
    assert match(MEANT, replace(other, serial=""), KINDS).sure is NOT_MEANT


def test_a_batch_that_a_note_or_a_paper_names_is_asked() -> None:
    told = marked("SH-1", "990001", note="bought with the lot QX7 of the shop")
    assert match(MEANT, told, KINDS).sure is TO_ASK


@pytest.mark.parametrize(
    ("made_on", "sure"),
    [
        (date(2024, 3, 1), CERTAIN), (date(2024, 5, 31), CERTAIN), (None, TO_ASK), (date(2024, 1, 1), TO_ASK),
        (date(2023, 1, 1), NOT_MEANT), (date(2024, 2, 1), NOT_MEANT), (date(2024, 6, 1), NOT_MEANT),
    ],
)  # fmt: skip
def test_days_of_making_alone_decide_and_a_first_of_january_may_stand_for_its_year(
    made_on: date | None, sure: Sure
) -> None:
    meant = Meant("Kelpline", made_from=date(2024, 3, 1), made_until=date(2024, 5, 31))
    assert answers("", meant=meant, made_on=made_on).sure is sure


def test_a_first_of_a_month_may_stand_for_that_month() -> None:
    meant = Meant("Kelpline", made_from=date(2024, 3, 15))
    assert answers("", meant=meant, made_on=date(2024, 3, 1)).sure is TO_ASK
    assert answers("", meant=meant, made_on=date(2024, 3, 2)).sure is NOT_MEANT


def test_an_unreadable_serial_is_asked_whatever_the_day_of_making_and_a_clear_one_within_stays_certain() -> None:
    meant = replace(MEANT, made_from=date(2024, 3, 1), made_until=date(2024, 5, 31))
    assert answers("", meant=meant, made_on=date(2019, 5, 5)).sure is TO_ASK
    within = answers("KS240150", meant=meant, made_on=date(2019, 5, 5))
    assert within.sure is CERTAIN and "5 May 2019" in within.why


def test_a_row_that_is_open_at_one_end_goes_on() -> None:
    later, earlier = Meant("Kelpline", first="KS240100"), Meant("Kelpline", last="KS240100")
    assert answers("KS240101", meant=later).sure is CERTAIN and answers("KS240099", meant=later).sure is NOT_MEANT
    assert answers("KS240101", meant=earlier).sure is NOT_MEANT and answers("KS240099", meant=earlier).sure is CERTAIN


def test_a_notice_that_only_names_pieces_means_no_other() -> None:
    assert match(Meant(tags=("SH-9",)), shackle(), KINDS).sure is NOT_MEANT


GARBLED = st.one_of(
    st.sampled_from(("", " ", "-", "?", "unknown", "ILLEGIBLE", "n/a", "worn", "none")),
    st.text(string.ascii_uppercase + string.digits + "?*_ -", max_size=12).map(lambda text: text + "?"),
    st.text("?*_.- /", max_size=8),
)
PREFIX = st.text(string.ascii_uppercase, max_size=4)
MARKS = st.text(string.ascii_letters, min_size=1, max_size=12).filter(is_readable)


@st.composite
def rows(draw: st.DrawFn) -> tuple[str, int, int, int]:
    """Letters, first and last number, and the figures of a row of serials."""
    digits = draw(st.integers(1, 7))
    first, last = sorted(draw(st.tuples(*(st.integers(0, 10**digits - 1),) * 2)))
    return draw(PREFIX), first, last, digits


def meant_by(row: tuple[str, int, int, int], mark: str) -> Meant:
    """A notice of this row."""
    before, first, last, digits = row
    return Meant(mark, first=f"{before}{first:0{digits}d}", last=f"{before}{last:0{digits}d}")


def spelled(data: st.DataObject, text: str) -> str:
    """The text in another case, with blanks and stops between its signs."""
    marks = st.sampled_from(("", "", "", " ", "-", "."))
    signs = (one.lower() if data.draw(st.booleans()) else one for one in text)
    return "".join(one + data.draw(marks) for one in signs)


@given(rows(), MARKS, GARBLED, st.data())
def test_a_blank_or_garbled_serial_never_yields_not_meant(
    row: tuple[str, int, int, int], mark: str, garbled: str, data: st.DataObject
) -> None:
    meant = meant_by(row, mark)
    made_on = data.draw(st.none() | st.dates(date(2000, 1, 1), date(2026, 1, 1)))
    assert answers(garbled, mark, meant, made_on).sure is TO_ASK
    assert answers(garbled, mark, Meant(mark, batches=("KB24",), made_from=date(2024, 1, 1)), made_on).sure is TO_ASK


@given(rows(), MARKS, st.data())
def test_a_piece_inside_the_row_is_always_certain_however_it_is_spelled(
    row: tuple[str, int, int, int], mark: str, data: st.DataObject
) -> None:
    before, first, last, digits = row
    number = data.draw(st.integers(first, last))
    serial = spelled(data, f"{before}{number:0{digits}d}")
    assume(is_readable(serial))
    assert answers(serial, spelled(data, mark), meant_by(row, mark)).sure is CERTAIN


@given(rows(), MARKS, GARBLED, st.data())
def test_a_piece_inside_the_row_whose_mark_is_gone_is_never_left_out(
    row: tuple[str, int, int, int], mark: str, garbled: str, data: st.DataObject
) -> None:
    before, first, last, digits = row
    number = data.draw(st.integers(first, last))
    assert answers(f"{before}{number:0{digits}d}", garbled, meant_by(row, mark)).sure is TO_ASK


@given(rows(), MARKS, st.data())
def test_one_letter_misread_or_left_out_is_never_left_out(
    row: tuple[str, int, int, int], mark: str, data: st.DataObject
) -> None:
    before, first, last, digits = row
    assume(before and is_readable(f"{before}{first:0{digits}d}"))
    at = data.draw(st.integers(0, len(before) - 1))
    wrong = before[:at] + data.draw(st.sampled_from(("", *string.ascii_uppercase))) + before[at + 1 :]
    number = data.draw(st.integers(first, last))
    assert answers(f"{wrong}{number:0{digits}d}", mark, meant_by(row, mark)).sure is not NOT_MEANT
