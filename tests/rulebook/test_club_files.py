"""A club's file: every fault at its file, line and key, in plain words, and never another exception."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.rulebook.club_book import ClubBook, with_club
from inspector.rulebook.club_texts import MOST_SIGNS, decoded
from inspector.rulebook.load import packaged
from tests.each import each

BOOK = packaged()
SAMPLE = (Path(__file__).resolve().parents[2] / "sample_register" / "club_rules.toml").read_text(encoding="utf-8")
HEAD = 'club = "C"\ntitle = "T"\nfrom = 2026-12-01\nwhy = "W"\n'


def read(body: str, head: str = HEAD) -> ClubBook:
    return with_club(BOOK, head + body)


def faults(body: str, head: str = HEAD) -> list[tuple[int, str]]:
    return [(one.line, one.says) for one in read(body, head).faults]


def test_the_sample_file_is_sound_and_loosens_one_limit() -> None:
    found = with_club(BOOK, SAMPLE)
    assert found.faults == ()
    assert found.book.club is not None
    assert [one.about for one in found.book.club.loosened] == ["age-retires-fibre"]
    assert found.book.hash != BOOK.hash
    assert SAMPLE in found.book.text and BOOK.text in found.book.text


WRONG = [
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = "9 mm"', 7, ["“9 mm” is a length; a share such as 8 %"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = "0.07"', 7, ["a plain number", "a share such as 8 %"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = 8', 7, ["“limit” of a limit", "“8” was found", "in quotes"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = "thin"', 7, ["“thin” is no figure"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = "-1 %"', 7, ["not above zero"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = "120 %"', 7, ["more than the whole"]),
    ('[[limit]]\nrule = "shackle-body-wurn"\nlimit = "7 %"', 6, ["No rule is called", "shackle-body-worn"]),
    ('[[limit]]\nrule = "retired-before"\nlimit = "7 %"', 6, ["the register's own law"]),
    ('[[limit]]\nrule = "inspection-current"\nlimit = "7 days"', 7, ["no figure of its own", "the interval"]),
    ('[[limit]]\nrule = "cut-strap"\nlimit = "7 %"', 7, ["has no figure"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimits = "7 %"', 5, ["has no “limit”"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimits = "7 %"', 7, ["“limits” is not known", "Nearest: limit"]),
    ('[[limit]]\nrule = "age-retires-fibre"\nlimit = "12 years"', 7, ["“why” is missing", "10 years"]),
    ('[[limit]]\nrule = "age-retires-fibre"\nlimit = "13 years"\nwhy = "w"', 7, ["too loose", "a quarter"]),
    ('[[limit]]\nrule = "pin-worn"\nlimit = "7 %"\nwhy = "w"', 7, ["too loose", "stands in print", "no profile"]),
    ('[[limit]]\nrule = "shackle-body-worn"\nlimit = "11 %"\nwhy = "w"', 7, ["another printed source goes: 10 %"]),
    ('[[limit]]\nrule = "event-answered"\nlimit = "2"\nwhy = "w"', 7, ["never loosened"]),
    ('[[setting]]\nkey = "abrasion"\nvalue = "12 %"', 6, ["No setting is called", "abrasion_allowance"]),
    ('[[setting]]\nkey = "gauge_accuracy"\nvalue = "0.1 mm"\nwhy = "w"', 7, ["0.2 mm stands in print"]),
    ('[[setting]]\nkey = "reference_pull"\nvalue = "5 mm"', 7, ["a length; a force such as 50 kN"]),
    ('[[interval]]\nfor = "shackles"\nevery_days = 200', 6, ["No kind or family", "shackle"]),
    ('[[interval]]\nfor = "shackle"\nevery_days = true', 7, ["“true” was found", "whole number of days"]),
    ('[[interval]]\nfor = "shackle"\nevery_days = 0', 7, ["from 1 to 36500"]),
    ('[[interval]]\nfor = "shackle"\nevery_days = 400\nwhy = "w"', 7, ["bow_shackle", "365 days stands in print"]),
    ('[[interval]]\nfor = "shackle"\nreading_every_days = 100', 7, ["no wall is read"]),
    ('[[interval]]\nfor = "shackle"\nwhy = "w"', 5, ["sets nothing", "every_days"]),
    ('[[interval]]\nfor = "tube"\nevery_days = 100', 7, ["a harder life never makes it longer"]),
    ('[[outcome]]\nrule = "pin-worn"\nelse = "hold"', 7, ["no tightening of retire", "allowed is retire"]),
    ('[[outcome]]\nrule = "pin-worn"\nelse = "scrap"', 7, ["“scrap” is not known", "retire"]),
    ('[[outcome]]\nrule = "pin-worn"\nmissing = "note"', 7, ["What is not known never becomes fit"]),
    ('[[outcome]]\nrule = "inspection-current"\nelse = "retire"', 7, ["hold is the most"]),
    ('[[outcome]]\nrule = "wall-soon-too-thin"\nelse = "retire"', 7, ["some uses only"]),
    ('[[outcome]]\nrule = "rubbed-slightly"\nelse = "hold"', 7, ["off the strength must stay"]),
    ('[[outcome]]\nrule = "pin-worn"', 5, ["sets nothing; write else, missing"]),
    ('profile = ["hook-opening"]', 5, ["No profile is called", "hook-opening-ten-percent"]),
    ("profile = [3]", 5, ["names in quotes"]),
    ("profile = 3", 5, ["a list of names"]),
    ("[[limits]]\nrule = 1", 5, ["“limits” is not known here", "limit"]),
    ("limit = 3", 5, ["headed by [[limit]]"]),
    ('limit = [{rule = "pin-worn", limit = "5 %"}]', 5, ["headed by [[limit]]"]),
    ("[limit]\nrule = 3", 5, ["headed by [[limit]]"]),
    ('[[limit]]\nrule = "pin-worn"\nlimit = "5 %"\nwhy = "a\\u0000b"', 8, ["cannot be printed"]),
    ('[[limit]]\nrule = "pin-worn"\nlimit = ""', 7, ["It is empty"]),
]  # fmt: skip


@each(("body", "line", "words"), WRONG, ids=[body.replace("\n", " ") for body, _, _ in WRONG])
def test_a_fault_names_its_line_and_what_is_allowed(body: str, line: int, words: list[str]) -> None:
    found = faults(body)
    assert any(at == line and all(word in says for word in words) for at, says in found), found


@pytest.mark.parametrize(
    ("head", "line", "word"),
    [
        ("", 1, "“club” is missing"),
        (HEAD.replace("2026-12-01", '"2026-12-01"'), 3, "without quotes"),
        (HEAD.replace("2026-12-01", "2026-12-01T10:00:00"), 3, "a day such as"),
        (HEAD.replace('"W"', '"' + "w" * 501 + '"'), 4, "longer than 500"),
    ],
)
def test_a_fault_of_the_head_names_its_line(head: str, line: int, word: str) -> None:
    assert any(at == line and word in says for at, says in faults("", head)), faults("", head)


def test_all_faults_are_told_at_once_in_order_of_lines() -> None:
    limits = '[[limit]]\nrule = "a"\nlimit = "7 %"\n[[limit]]\nrule = "pin-worn"\nlimit = "7 m"\n'
    body = limits + '[[setting]]\nkey = "b"\nvalue = "1"'
    assert [line for line, _ in faults(body)] == [6, 10, 12]


def test_what_is_set_twice_is_named_with_both_lines_and_the_packaged_figure_stands() -> None:
    twice = '[[limit]]\nrule = "pin-worn"\nlimit = "5 %"\n[[limit]]\nrule = "pin-worn"\nlimit = "4 %"'
    found = read(twice)
    assert [(one.line, "on line 7" in one.says) for one in found.faults] == [(10, True)]
    assert found.book.rules == BOOK.rules
    with_profile = 'profile = ["hook-opening-ten-percent"]\n[[limit]]\nrule = "hook-opened"\nlimit = "4 %"'
    assert [(line, "on line 5" in says) for line, says in faults(with_profile)] == [(8, True)]


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [("club = \nx = 1", 1, 8), ("club = 1\nclub = 2\n", 2, 9), ("a = [1,", 1, 0), ("x = 1_", 1, 6)],
)
def test_a_fault_of_syntax_keeps_its_line_and_column(text: str, line: int, column: int) -> None:
    (fault,) = with_club(BOOK, text).faults
    assert (fault.line, fault.column) == (line, column) and "not written as TOML" in fault.says


def test_windows_line_ends_and_marks_change_nothing() -> None:
    plain, windows = with_club(BOOK, SAMPLE), with_club(BOOK, "\ufeff" + SAMPLE.replace("\n", "\r\n"))
    assert windows.faults == ()
    assert windows.changes == plain.changes


def test_bytes_that_are_no_text_are_told_with_their_line() -> None:
    assert [(one.line, "UTF-8" in one.says) for one in decoded(b"a = 1\nb = '\xff'", "f")[1]] == [(2, True)]
    assert decoded(b"a" * (MOST_SIGNS + 1), "f")[1][0].line == 0
    assert decoded("\ufeffa = 1".encode(), "f") == ("a = 1", ())


@each(
    "text",
    ["a = " + "[" * 3000 + "]" * 3000, "a = 0x" + "f" * 6000, "a = " + "9" * 6000, HEAD + "why = 0x" + "f" * 6000,
     "from = 0x" + "f" * 6000, "from = " + "[" * 200 + "]" * 200],
)  # fmt: skip
def test_monsters_are_faults_and_nothing_worse(text: str) -> None:
    assert with_club(BOOK, text).faults


PIECES = [
    '"',
    "'",
    "[[",
    "]]",
    "[",
    "]",
    "{",
    "}",
    "=",
    "#",
    "\n",
    "\r",
    "\\",
    "%",
    '"""',
    "'''",
    "\x00",
    "\ufeff",
    ",",
]
PIECES += ["limit", "rule", "every_days", "inf", "nan", "1e999", "true", "2026-12-01", "derate", "note", "-", "0x", "é"]


@settings(max_examples=100)
@given(st.data())
def test_a_mangled_file_gives_a_book_or_faults_and_never_another_exception(data: st.DataObject) -> None:
    text = SAMPLE
    for _ in range(data.draw(st.integers(1, 6))):
        at = data.draw(st.integers(0, len(text)))
        cut = data.draw(st.integers(0, 40))
        put = data.draw(st.sampled_from(PIECES) | st.text(max_size=8) | st.just(text[at : at + cut] * 2))
        text = text[:at] + put + text[at + cut :]
    found = with_club(BOOK, text)
    last = text.count("\n") + text.count("\r") + 1
    assert all(0 <= one.line <= last and one.says and "Traceback" not in one.says for one in found.faults)
    assert found.book.rules and found.book.hash


@settings(max_examples=200)
@given(st.binary(max_size=300))
def test_bytes_of_any_kind_give_a_text_or_a_fault(body: bytes) -> None:
    text, unread = decoded(body, "f")
    assert unread or with_club(BOOK, text) is not None
