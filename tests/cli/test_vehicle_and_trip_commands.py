"""Vehicles, fittings and trips, as the officer types them."""

from pathlib import Path
from shutil import copytree

import pytest

from inspector.app import main
from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]

POINT = [
    "--kind",
    "recovery_point",
    "--rating",
    "8000 kg",
    "--stated-on",
    "piece",
    "--basis",
    "mbs",
    "--past",
    "new",
    "--fixed-by",
    "welds",
]
WAGON = ["--name", "medium wagon, grey", "--owner", "Ada Officer", "--gvm", "2,700 kg"]
TRIP = ["--name", "Beach day", "--ground", "beach", "--first", "2126-11-28", "--vehicle", "V-1", "--kit", "SH-1"]


@pytest.fixture(scope="module")
def garage_once(begun: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a register with a vehicle, a shackle, and a recovery point on the vehicle; each test has a copy."""
    folder = tmp_path_factory.mktemp("garage") / "club"
    copytree(begun, folder)
    for words in (
        ("vehicle", "add", "V-1", *WAGON, "--mass", "2190 kg", "--front-spacing", "0.85 m"),
        ("book", "SH-1", *SHACKLE, *SIZES),
        ("book", "RP-1", *POINT, "--fitted-to", "v-1", "--end", "front", "--side", "left"),
    ):
        assert main(["--register", str(folder), *words]) == 0
    return folder


@pytest.fixture
def garage(
    garage_once: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> Desk:
    """Types commands on a copy of it."""
    monkeypatch.setenv("COLUMNS", "100")
    copytree(garage_once, tmp_path / "club")
    return Desk(tmp_path / "club", capsys)


def words(text: str) -> str:
    """The text on one line, however it was wrapped."""
    return " ".join(text.split())


def test_a_vehicle_is_entered_weighed_again_and_shown_with_its_parts_and_history(garage: Desk) -> None:
    said = garage.type("vehicle", "change", "V-1", "--mass", "2,760 kg", "--why", "weighed for the long trip")
    assert "overloaded: it weighs 2,760 kg" in words(said)
    assert "mass: “2,760 kg”, before “2190 kg”." in words(said)
    shown = words(garage.type("vehicle", "show", "v-1"))
    assert "Mass 2,760 kg" in shown and "0.85 m" in shown and "overloaded" in shown
    assert "front left RP-1 Recovery point" in shown and "Hold" in shown
    assert "mass 2,760 kg, before 2190 kg. weighed for the long trip (Ada Officer)" in shown
    assert "medium wagon, grey (overloaded)" in garage.type("vehicle", "list")
    unweighed = words(garage.type("vehicle", "change", "V-1", "--mass", "unknown", "--why", "new canopy"))
    assert "Mass not known" in unweighed and "overloaded" not in unweighed
    assert "Nothing was changed." in garage.type("verify")


def test_a_part_is_taken_off_and_fitted_elsewhere(garage: Desk) -> None:
    garage.type("vehicle", "add", "V-2", *WAGON)
    assert "RP-1  Hold" in garage.type(
        "fit", "RP-1", "V-2", "--end", "rear", "--by", "Ada Officer", "--note", "new bar"
    )
    assert "Fitted to V-2, rear" in words(garage.type("show", "RP-1"))
    assert "Use `inspector fit`" in garage.type("vehicle", "show", "V-1")
    assert "Part taken off RP-1, front left. new bar" in words(garage.type("vehicle", "show", "V-1"))
    garage.type("unfit", "RP-1", "--note", "sold")
    assert "on no vehicle since. sold" in words(garage.type("show", "RP-1"))
    assert "fitted to no vehicle" in garage.type("unfit", "RP-1", code=2)


def test_a_trip_is_planned_changed_and_shown(garage: Desk) -> None:
    assert "Beach day" in garage.type("trip", "plan", "T-1", *TRIP, "--person", "Ada Officer", "--last", "2126-11-29")
    garage.type("inspect", "SH-1", *GOOD)
    said = garage.type(
        "trip", "change", "T-1", "--add-kit", "rp-1", "--first", "2126-11-27", "--why", "a point as well"
    )
    assert "SH-1, RP-1" in said
    shown = words(garage.type("trip", "show"))
    assert "27 Nov 2126 to 29 Nov 2126" in shown and "Ready for 29 Nov 2126?" in shown
    assert "0 pieces of the kit go, 2 stay at home." in shown
    assert "SH-1: Fit today, Hold then." in shown and "next inspection" in shown
    assert "kit with RP-1. a point as well (Ada Officer)" in shown
    assert "competent person decides" in shown
    assert "T-1  27 Nov 2126" in garage.type("trip", "list")


def test_a_retired_piece_in_the_kit_is_told(garage: Desk) -> None:
    garage.type("inspect", "SH-1", "--all-good", "--grade", "cracks=bad")
    assert "SH-1 is retired" in garage.type("trip", "plan", "T-1", *TRIP)


def test_a_trip_leaves_as_a_file_and_comes_in_as_another(garage: Desk, tmp_path: Path) -> None:
    garage.type("trip", "plan", "T-1", *TRIP)
    file = tmp_path / "t-1.toml"
    garage.type("trip", "export", "T-1", str(file))
    assert "first_on = 2126-11-28" in file.read_text(encoding="utf-8")
    assert "there already" in garage.type("trip", "export", "T-1", str(file), code=2)
    assert "t-1.toml, line 2, ref" in garage.type("trip", "import", str(file), code=2)
    assert "T-2 · Beach day" in garage.type("trip", "import", str(file), "--as", "T-2")
    assert "cannot be read" in garage.type("trip", "import", str(tmp_path / "none.toml"), code=2)
    assert "cannot be written" in garage.type("trip", "export", "T-1", str(tmp_path / "none" / "x.toml"), code=2)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        (["vehicle", "add", "V-1", *WAGON], "Another vehicle has the tag"),
        (["vehicle", "add", "V-2", "--name", "x", "--gvm", "heavy"], "does not begin with a number"),
        (["vehicle", "change", "V-9", "--why", "x", "--owner", "y"], "No vehicle has the tag"),
        (["vehicle", "change", "V-1", "--why", "x"], "Nothing would change"),
        (["vehicle", "change", "V-1", "--why", "x", "--gvm", "unknown"], "does not begin with a number"),
        (["vehicle", "show", "V-9"], "No vehicle has the tag"),
        (["book", "RP-2", *POINT, "--fitted-to", "V-9"], "No vehicle has the tag"),
        (["book", "RP-2", *POINT, "--end", "rear"], "but no vehicle"),
        (["fit", "RP-1", "V-9"], "No vehicle has the tag"),
        (["fit", "ZZ", "V-1"], "No piece has the tag"),
        (["trip", "plan", "next", *TRIP], "always means the next trip"),
        (["trip", "plan", "T-1", *TRIP, "--kit", "SH-1"], "stands in it twice"),
        (["trip", "plan", "T-1", *TRIP, "--person", "Nobody Here"], "Nobody called"),
        (["trip", "show", "T-9"], "No trip has the reference"),
        (["trip", "change", "T-9", "--note", "x"], "No trip has the reference"),
    ],
)
def test_bad_input_is_refused_in_words_and_with_a_way_on(garage: Desk, typed: list[str], why: str) -> None:
    said = garage.type(*typed, code=2)
    assert why in words(said) and "Traceback" not in said
    assert len(said.strip().splitlines()) >= 2, "the refusal says what to do"


def test_what_does_not_stand_in_a_trip_cannot_be_dropped_from_it(garage: Desk) -> None:
    garage.type("trip", "plan", "T-1", *TRIP, "--person", "Ada Officer")
    for option, one in (("--drop-kit", "RP-1"), ("--drop-person", "Bo"), ("--drop-vehicle", "V-2")):
        assert "does not stand in it" in garage.type("trip", "change", "T-1", option, one, code=2)
    garage.type("trip", "change", "T-1", "--drop-person", "Ada Officer", "--drop-kit", "sh-1", "--drop-vehicle", "v-1")
    assert "kit without SH-1" in words(garage.type("trip", "show", "T-1"))


def test_what_rides_where_is_planned_and_each_vehicle_gets_its_sheet(garage: Desk) -> None:
    garage.type("trip", "plan", "T-9", *TRIP)
    assert "Rides SH-1 on V-1" in words(garage.type("trip", "rides", "t-9", "sh-1", "--on", "v-1"))
    assert "Rides SH-1 on V-1" in words(garage.type("trip", "show", "T-9"))
    assert "either --on VEHICLE or --nowhere" in garage.type("trip", "rides", "T-9", "SH-1", code=2)
    assert "sits on V-1" in garage.type("trip", "change", "T-9", "--add-kit", "RP-1") + garage.type(
        "trip", "rides", "T-9", "RP-1", "--on", "V-1", code=2
    )
    of_one = Path(garage.type("sheet", "T-9", "--vehicle", "v-1").strip())
    assert of_one.exists() and "for V-1." in words(garage.type("ledger", "--last", "1"))
    papers = garage.type("sheet", "T-9", "--each").split()
    assert len(papers) == 1 and Path(papers[0]).exists()  # RP-1 sits on the vehicle, SH-1 rides on it: nothing is left
    assert "Say only one of" in garage.type("sheet", "T-9", "--each", "--rest", code=2)
    assert "Rides" not in garage.type("trip", "rides", "T-9", "SH-1", "--nowhere", "--why", "too heavy")
