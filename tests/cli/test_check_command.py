"""The check before a trip, as typed."""

from pathlib import Path

import pytest

from inspector.duties.office import Office
from inspector.duties.print_sheets import print_trip_sheet
from tests.cli.story import Clock
from tests.cli.test_commands import Desk

NELL = ("--by", "Nell Hobbery", "--on", "2026-11-25")


@pytest.fixture
def club(sample: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Desk:
    """The sample register, its trip T-05 ahead with a printed sheet and four of its pieces checked."""
    monkeypatch.setenv("COLUMNS", "100")
    monkeypatch.setattr("inspector.app.datetime", Clock(sample.now))
    return Desk(tmp_path, capsys)


def test_it_lists_what_is_to_be_checked_and_what_stays(club: Desk) -> None:
    said = club.type("check", "T-05")
    assert "4 of 26 checked (14 pieces, 12 parts on the vehicles)." in said and "checked by Nell Hobbery" in said
    assert "edge_cuts: Run every metre through your hands" in said and "bow_diameter: Body at" in said
    assert said.index("HR-01") < said.index("KS-06") < said.index("Not to be checked") < said.index("SH-10")


def test_one_piece_is_shown_with_what_its_grades_mean(club: Desk) -> None:
    said = club.type("check", "next", "ks-06")
    assert "slight: Furry" in said and "bad: Any cut, hole, tear or pulled yarn." in said
    assert "not in the kit" in club.type("check", "next", "SH-11", code=2)


def test_a_good_piece_goes_and_a_bad_one_stays(club: Desk) -> None:
    good = club.type("check", "next", "KS-06", *NELL, "--all-good", "--reading", "length=9.05 m")
    assert "Goes: Kinetic pull only" in " ".join(good.split()) and "5 of 26 checked" in good and "Nell Hobbery" in good
    assert "competent person decides" in good
    bad = club.type("check", "next", "SS-01", *NELL, "--all-good", "--grade", "soft_shackle_eye=bad", code=2)
    assert "no such check" in bad
    bad = club.type("check", "next", "KS-01", *NELL, "--all-good", "--grade", "edge_cuts=bad", "--note", "at one eye")
    assert "Stays in the shed" in bad
    listed = club.type("check", "T-05")
    assert "6 of 26 checked" in listed and "checked by Nell Hobbery" in listed
    assert "for the trip T-05. at one eye (Nell Hobbery)" in " ".join(club.type("show", "KS-01").split())


def test_what_is_not_answered_is_told_as_not_looked_at(club: Desk) -> None:
    said = club.type("check", "next", "SH-01", *NELL, "--grade", "cracks=good")
    assert "7 questions have no answer" in said and "not looked at: Is it free of rust pits?" in said
    assert "4 of 26 checked (14 pieces, 12 parts on the vehicles)." in said


def test_a_sheet_that_came_back_is_typed_in_at_once(club: Desk, sample: Office) -> None:
    number = print_trip_sheet(sample, "T-05").path.stem
    words = ("check", "T-05", "KR-02", "HP-02", *NELL, "--sheet", number, "--all-good", "--grade")
    assert "does not say of which piece" in club.type(*words, "bend=bad", code=2)
    assert "HP-02: knots: " in club.type(*words, "HP-02/knots=bad", code=2)
    assert "4 of 26" in club.type("check", "T-05")
    said = " ".join(club.type(*words, "HP-02/bend=bad").split())
    assert "6 of 26" in said and "KR-02" in said and "Stays in the shed" in said


def test_what_is_missing_or_unclear_is_asked_for(club: Desk) -> None:
    assert "who looked" in club.type("check", "T-05", "SH-01", "--all-good", code=2)
    assert "which piece" in club.type("check", "T-05", *NELL, code=2)
    assert "Nobody called" in club.type("check", "T-05", "SH-01", "--by", "Some One", "--all-good", code=2)
    unit = club.type("check", "T-05", "SH-01", *NELL, "--reading", "bow_diameter=18.6", code=2)
    assert "The unit is missing" in unit
    wall = club.type("check", "T-05", "HR-01", *NELL, "--reading", "wall@top=4 mm", code=2)
    assert "not read at a check before use" in wall
    assert "no sheet of the trip" in club.type("check", "T-05", "SH-01", *NELL, "--all-good", "--sheet", "S-1", code=2)


def test_a_reading_that_retires_a_piece_is_kept_only_once_it_was_read_again(club: Desk) -> None:
    thin = ("check", "next", "SH-01", *NELL, "--all-good", "--reading", "bow_diameter=15 mm")
    said = " ".join(club.type(*thin, code=2).split())
    assert "SH-01: Body" in said and "retires the piece for good" in said and "--read-again" in said
    assert "Retire" not in club.type("show", "SH-01").partition("History")[0]
    assert "Retire" in club.type(*thin, "--read-again")
    assert "Read again and confirmed: Body" in " ".join(club.type("show", "SH-01").split())


def test_a_reading_larger_than_new_is_read_again_at_a_check(club: Desk) -> None:
    thick = ("check", "next", "SH-01", "KS-06", *NELL, "--all-good", "--reading", "SH-01/bow_diameter=26 mm")
    said = " ".join(club.type(*thick, code=2).split())
    assert "SH-01: Body" in said and "nothing makes it thicker" in said and "for good" not in said
    club.type(*thick, "--read-again")
    assert "Read again and confirmed: Body" in " ".join(club.type("show", "SH-01").split())
