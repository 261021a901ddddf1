"""Lending, returning, rigs and debriefs, as the officer types them."""

from pathlib import Path
from shutil import copyfile

import pytest

from tests.cli.story import Clock
from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk
from tests.conftest import EVENING

__all__ = ["desk"]

RIG = """
name = "Beach snatch"
method = "kinetic"
pulling = "V-01"
bogged = "V-02"
runs = [["SH-04", "KS-03", "SH-07"]]
trip = "T-03"

[conditions]
bogged_in = "soft_dry_sand"
speed = "6 km/h"
"""
DEBRIEF = """
trip = "T-03"
on = {day}

[[used]]
rig = "R-01"
pulls = 2
on = {day}
jerked = {jerked}
near_miss = ""
"""


def lent(desk: Desk) -> None:
    """A fit shackle, out to a member."""
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    desk.type("person", "Di Member")
    said = desk.type("lend", "SH-1", "--to", "Di Member", "--due", "2099-01-01")
    assert "Bow shackle" in said and "Di Member" in said and "1 Jan 2099" in said
    assert "falls due on" in said, "its inspection comes before the piece is back"


def test_who_has_what_is_told_until_it_is_back(desk: Desk) -> None:
    assert "Nothing is out" in desk.type("loans")
    lent(desk)
    assert "Di Member" in desk.type("loans")
    shown = " ".join(desk.type("show", "SH-1").split())
    assert "Where it is on loan to Di Member since" in shown and "Lent" in shown
    assert "already" in desk.type("lend", "SH-1", "--to", "Ada Officer", "--due", "2099-01-01", code=2)
    assert "SH-1  Fit" in desk.type("return", "SH-1", "--by", "Di Member", "--nothing-happened")
    assert "Nothing is out" in desk.type("loans") and "Where it is  in store" in desk.type("show", "SH-1")
    assert "Nothing was changed" in desk.type("verify")


@pytest.mark.parametrize(
    ("told", "outcome", "history"),
    [
        ((), "Hold", "nobody told its pulls; nobody told of salt, mud or sun"),
        (("--pulls", "0"), "Hold", "nobody told of salt, mud or sun"),
        (("--no-weather",), "Hold", "nobody told its pulls"),
        (("--pulls", "0", "--no-weather"), "Fit", "from Di Member"),
        (("--pulls", "2", "--no-weather"), "Fit", "2 pulls"),
        (("--pulls", "2", "--salt", "1", "--rinsed", "--not-dried"), "Fit", "salt, 1 day, rinsed, not dried"),
        (("--event", "dropped", "--no-weather"), "Hold", "0 pulls, dropped"),
        (("--pulls", "0", "--heat", "1", "--hottest", "95 °C"), "Hold", "heat, 1 day, up to 95 °C"),
        (("--nothing-happened",), "Fit", "from Di Member"),
    ],
)
def test_what_is_told_is_logged_and_what_is_not_holds(
    desk: Desk, told: tuple[str, ...], outcome: str, history: str
) -> None:
    lent(desk)
    assert f"SH-1  {outcome}" in desk.type("return", "SH-1", "--by", "Di Member", *told)
    assert history in " ".join(desk.type("show", "SH-1").split())


def test_answers_that_go_against_each_other_are_refused_and_it_stays_out(desk: Desk) -> None:
    lent(desk)
    wrong: list[str] = []
    for told in (
        ("--nothing-happened", "--pulls", "2"),
        ("--nothing-happened", "--salt", "1"),
        ("--no-weather", "--mud", "1"),
        ("--pulls", "0", "--rinsed"),
        ("--pulls", "0", "--salt", "1", "--hottest", "95 °C"),
        ("--salt", "3"),
        ("--pulls", "-1"),
        ("--salt", "0"),
        ("--salt", "999999999999"),
        ("--trip", "T-1"),
    ):
        if fault := desk.wrongly_refused("return", "SH-1", "--by", "Di Member", *told, why=""):
            wrong.append(fault)
        if "SH-1" not in desk.type("loans"):
            wrong.append(f"{told}: it is not out any more")
    assert not wrong, "\n".join(wrong)


def test_several_pieces_come_back_together_or_not_at_all(desk: Desk) -> None:
    lent(desk)
    desk.type("book", "SH-2", *SHACKLE, *SIZES)
    assert "not on loan" in desk.type("return", "SH-1", "SH-2", "--by", "Di Member", "--nothing-happened", code=2)
    assert "SH-1" in desk.type("loans")
    assert "Write the tags" in desk.type("return", "--by", "Di Member", code=2)


@pytest.fixture
def club(
    sample_once: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Desk:
    """A copy of the sample register, on the evening it was built."""
    monkeypatch.setenv("COLUMNS", "100")
    monkeypatch.setattr("inspector.app.datetime", Clock(EVENING))
    (tmp_path / "club").mkdir()
    copyfile(sample_once, tmp_path / "club" / "register.db")
    return Desk(tmp_path / "club", capsys)


def test_an_empty_register_says_how_a_rig_is_kept(desk: Desk) -> None:
    assert "No rig is kept yet; `inspector rig keep`" in desk.type("rig", "list")


def test_a_rig_of_no_possible_name_is_looked_for_and_not_found(desk: Desk) -> None:
    for name in ("x" * 5000, "a\u0000b", ""):
        assert "No rig has the reference" in desk.type("rig", "check", name, code=2)


def test_a_rig_is_kept_from_a_file_listed_and_written_out_again(club: Desk, tmp_path: Path) -> None:
    assert "R-01" not in club.type("rig", "list")
    file, copy = tmp_path / "rig.toml", tmp_path / "copy.toml"
    file.write_text(RIG, encoding="utf-8")
    assert "R-01 is kept: Beach snatch" in club.type("rig", "keep", str(file), "--as", "R-01")
    assert "R-01" in club.type("rig", "list")
    club.type("rig", "export", "r-01", str(copy))
    assert 'speed = "6 km/h"' in copy.read_text(encoding="utf-8")
    assert "cannot be written" in club.type("rig", "export", "R-01", str(copy), code=2)
    assert "R-02 is kept" in club.type("rig", "keep", str(copy), "--as", "R-02")
    file.write_text(RIG.replace("soft_dry_sand", "sand"), encoding="utf-8")
    said = club.type("rig", "keep", str(file), "--as", "R-03", code=2)
    assert said.startswith("conditions.bogged_in:") and "soft_dry_sand" in said
    file.write_bytes(b"\xff\xfe")
    assert "UTF-8" in club.type("rig", "keep", str(file), "--as", "R-03", code=2)


def test_a_trip_is_told_afterwards_from_a_file(club: Desk, tmp_path: Path) -> None:
    file, rig = tmp_path / "told.toml", tmp_path / "rig.toml"
    rig.write_text(RIG, encoding="utf-8")
    club.type("rig", "keep", str(rig), "--as", "R-01")
    day = EVENING.date()
    file.write_text(DEBRIEF.format(day=day, jerked="false"), encoding="utf-8")
    assert "Trip T-03 was told on" in club.type("debrief", str(file))
    assert "2 pulls. Trip T-03, Beach snatch." in " ".join(club.type("show", "KS-03").split())
    file.write_text(DEBRIEF.format(day=day, jerked="true"), encoding="utf-8")
    assert "KS-03  Hold" in club.type("debrief", str(file))
    assert "overload" in club.type("show", "SH-04")
    assert "began only on" in club.type("debrief", str(told_early(file)), code=2)


def told_early(file: Path) -> Path:
    file.write_text(DEBRIEF.format(day="2001-01-01", jerked="false"), encoding="utf-8")
    return file
