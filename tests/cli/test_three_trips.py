"""Three trips of the sample club by commands alone, from the plan to the sheet, the returned check and the debrief."""

import re
from pathlib import Path

import pytest

from inspector.duties.office import Office
from tests.cli.test_check_command import _Stopped
from tests.cli.test_commands import Desk

TODAY = "2026-11-25"
NELL = ("--by", "Nell Hobbery", "--on", TODAY)
BY_ALL = ("--all-good", "--grade")
DEBRIEF = """
trip = "{trip}"
on = {day}
by = "Nell Hobbery"

[[used]]
rig = "{rig}"
pulls = 2
on = {day}
jerked = {jerked}
near_miss = "{near_miss}"
"""
TRIPS = [
    ("T-71", "beach", ("V-02", "V-04", "V-09"), "V-02", "V-04", "CAUTION", ("--salt", "1", "--rinsed"), "salt"),
    ("T-72", "mud", ("V-03", "V-04", "V-08"), "V-08", "V-04", "SOUND", ("--mud", "1", "--rinsed"), "mud"),
    ("T-73", "gravel", ("V-02", "V-05", "V-08"), "V-02", "V-05", "CAUTION", ("--no-weather",), ""),
]

IDS = [trip[1] for trip in TRIPS]


@pytest.fixture
def club(sample: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Desk:
    """The sample register on its own evening."""
    monkeypatch.setenv("COLUMNS", "110")
    monkeypatch.setattr("inspector.app.datetime", _Stopped(sample))
    return Desk(tmp_path, capsys)


@pytest.mark.parametrize(("ref", "ground", "cars", "pulling", "bogged", "outcome", "weather", "met"), TRIPS, ids=IDS)
def test_a_trip_from_plan_to_debrief(
    club: Desk,
    tmp_path: Path,
    ref: str,
    ground: str,
    cars: tuple[str, ...],
    pulling: str,
    bogged: str,
    outcome: str,
    weather: tuple[str, ...],
    met: str,
) -> None:
    planned = [word for car in cars for word in ("--vehicle", car)]
    club.type("trip", "plan", ref, "--name", "Day out", "--ground", ground, "--first", TODAY, *planned)
    kit = _packed(club, ref)
    assert "Sound" in club.type("trip", "pairs", ref)
    rig = f"R-{ref}"
    said = club.type("rig", "propose", ref, "--pulling", pulling, "--bogged", bogged, "--speed", "5 km/h", "--as", rig)
    used = _used(said)
    assert f"\n  {outcome}  " in said and f"{rig} is kept" in said
    sheet = Path(club.type("sheet", ref).strip().splitlines()[-1]).stem
    club.type("lend", "--trip", ref, "--to", "Nell Hobbery")
    assert kit[0] in club.type("loans")
    bad = next(tag for tag in kit if tag not in used and tag.startswith("SH"))
    _checked(club, ref, kit, bad, sheet)
    told = tmp_path / "told.toml"
    told.write_text(DEBRIEF.format(trip=ref, day=TODAY, rig=rig, jerked="true", near_miss="It jerked once."))
    club.type("return", "--trip", ref, "--by", "Nell Hobbery", "--pulls", "0", *weather)
    assert not any(re.search(rf"^{tag}\b", club.type("loans"), re.M) for tag in kit)
    club.type("debrief", str(told))
    _went_through(club, used, bad, kit, met)
    assert "nothing was changed" in club.type("verify").lower()


def _packed(club: Desk, ref: str) -> list[str]:
    """The kit by need, made the trip's own."""
    said = club.type("trip", "pack", ref, "--set")
    kit = re.findall(r"^([A-Z]{2}-\d\d) ", said.split("Stays:")[0], re.M)
    assert f"The kit of {ref} is {len(kit)} pieces now." in said
    assert "KS" in " ".join(kit) and "DM" in " ".join(kit)
    return kit


def _used(said: str) -> list[str]:
    """The parts of the proposed rig, by its first line of tags."""
    line = next(line for line in said.splitlines() if " – " in line and re.match(r"\s+[A-Z]{2}-\d\d", line))
    return line.strip().split(" – ")


def _checked(club: Desk, ref: str, kit: list[str], bad: str, sheet: str) -> None:
    """One piece on screen and found bad, the rest typed in from the sheet that came back."""
    said = club.type("check", ref, bad, *NELL, *BY_ALL, "cracks=bad", "--note", "a crack at the ear")
    assert "Stays in the shed" in said
    good = [tag for tag in kit if tag != bad]
    club.type("check", ref, *good, *NELL, "--sheet", sheet, "--all-good")
    listed = club.type("check", ref)
    assert f"{len(kit)} of {len(kit)} pieces are checked." in listed and "Stays in the shed" in listed


def _went_through(club: Desk, used: list[str], bad: str, kit: list[str], met: str) -> None:
    """Every part of the rig bore the pulls with an overload, both ends; what was bad is not fit; weather is kept."""
    for tag in used:
        shown = " ".join(club.type("show", tag).split())
        assert "Hold" in shown, tag
        assert "2 pulls" in shown, shown
        assert "It jerked once" in shown, shown
    assert "Retire" in club.type("show", bad)
    if met:
        assert met in club.type("show", kit[0]).lower()
