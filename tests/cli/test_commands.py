"""The commands, as the officer types them."""

import os
import subprocess
import sys
from pathlib import Path
from shutil import copytree

import pytest

from inspector.app import main

HERE = Path(__file__).resolve().parents[2]
SHACKLE = [
    "--kind",
    "bow_shackle",
    "--rating",
    "4.75 t",
    "--stated-on",
    "piece",
    "--basis",
    "wll",
    "--factor",
    "5",
    "--past",
    "new_certified",
]
SIZES = ["--size", "bow_diameter=19 mm", "--size", "pin_diameter=7/8 in"]
GOOD = ["--all-good", "--reading", "bow_diameter=19 mm", "--reading", "pin_diameter=22.2 mm"]


class Desk:
    """Types commands on one register and reads what they print."""

    def __init__(self, folder: Path, capture: pytest.CaptureFixture[str]) -> None:
        self.folder = folder
        self._capture = capture

    def type(self, *words: str, code: int = 0) -> str:
        """The output of a command that must end with this code."""
        ended, said = self.ended(*words)
        assert ended == code, said
        return said

    def ended(self, *words: str) -> tuple[int, str]:
        """The code with which a command ends, and its output."""
        self._capture.readouterr()
        code = main(["--register", str(self.folder), *words])
        said = self._capture.readouterr()
        return code, said.out + said.err

    def wrongly_refused(self, *words: str, why: str) -> str:
        """What is wrong where this command is not refused with these words; empty where it is."""
        code, said = self.ended(*words)
        return "" if code == 2 and why in " ".join(said.split()) else f"{' '.join(words)}: {code}, {said}, not “{why}”"


@pytest.fixture
def desk(begun: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Desk:
    """A register just begun."""
    monkeypatch.setenv("COLUMNS", "100")
    copytree(begun, tmp_path / "club")
    return Desk(tmp_path / "club", capsys)


def test_a_piece_from_booking_to_fit(desk: Desk) -> None:
    assert "Hold" in desk.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "SH-1  Fit" in desk.type("inspect", "SH-1", *GOOD)
    listed = desk.type("list", "bow")
    assert "SH-1" in listed and "Fit" in listed and "1 of 1 pieces" in listed
    shown = desk.type("show", "sh-1")
    assert "232.9 kN" in shown and "7/8 in" in shown and "History" in shown and "competent person decides" in shown


def test_a_worn_shackle_is_retired_and_its_notice_printed_once_and_again(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "not retired" in desk.type("notice", "SH-1", code=2)
    said = desk.type(
        "inspect", "SH-1", "--all-good", "--reading", "bow_diameter=17.1 mm", "--reading", "pin_diameter=22 mm"
    )
    assert "Retire" in said and "17.1 mm against 19 mm as new" in said
    first = Path(desk.type("notice", "SH-1").strip())
    assert first.read_bytes().startswith(b"%PDF")
    printed = first.read_bytes()
    first.unlink()
    assert Path(desk.type("notice", "SH-1").strip()) == first
    assert first.read_bytes() == printed


def test_uses_and_exposures_are_logged(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    assert "Fit" in desk.type("use", "SH-1", "--pulls", "3")
    assert "salt or mud service" in desk.type("expose", "SH-1", "--weather", "salt", "--not-rinsed")
    assert "Hold" in desk.type("use", "SH-1", "--event", "overload")
    assert "overload" in desk.type("show", "SH-1")
    desk.type("expose", "SH-1", "--weather", "heat", "--hottest", "95 °C")
    desk.type("expose", "SH-1", "--weather", "frost")
    shown = desk.type("show", "SH-1")
    assert "heat, 1 day, up to 95 °C" in shown and "frozen while wet" in shown


def test_an_untouched_register_verifies_against_its_own_head(desk: Desk) -> None:
    said = desk.type("verify")
    assert "Nothing was changed." in said
    head = said.split("head ")[1].split()[0]
    assert "Nothing was changed." in desk.type("verify", "--against", head[:12])
    assert "has the head" in desk.type("verify", "--against", "0123456789ab", code=1)


def test_kinds_names_every_key_the_other_commands_take(desk: Desk) -> None:
    said = desk.type("kinds")
    assert "Ball mount (ball_mount)" in said and "wall/top/bottom" in said and "weld_toes" in said


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (["show", "ZZ"], "No piece has the tag"),
        (["book", "A", "--kind", "tractor"], "not a kind of gear"),
        (["book", "A", *SHACKLE], "Without it no wear can be told"),
        (["book", "A", *SHACKLE, "--size", "bow_diameter"], "has no “=”"),
        (["book", "A", *SHACKLE, "--size", "bow_diameter=19 kg"], "not a unit for this field"),
        (["book", "A", *SHACKLE, *SIZES, "--made-on", "yesterday"], "is no day"),
        (["inspect", "ZZ", "--all-good"], "No piece has the tag"),
        (["sheet", "T-1"], "No trip has the reference"),
        (["verify", "--against", "xyz"], "0-9 and a-f"),
        (["verify", "--against", ""], "The head is empty"),
        (["verify", "--against", "  "], "The head is empty"),
        (["verify", "--against", "0123456"], "0-9 and a-f"),
        (["--officer", "Nobody", "list"], "Nobody is called"),
    ],
)
def test_bad_input_is_refused_in_words_and_with_a_way_on(desk: Desk, words: list[str], why: str) -> None:
    said = desk.type(*words, code=2)
    assert why in said
    assert "Traceback" not in said
    assert len(said.strip().splitlines()) >= 2, "the refusal says what to do"


@pytest.mark.parametrize("words", [["list", "--outcome", "green"], ["nonsense"], ["use", "A", "--pulls", "many"]])
def test_what_is_no_command_is_explained(desk: Desk, words: list[str]) -> None:
    assert "Traceback" not in desk.type(*words, code=2)


def test_grades_and_readings_that_cannot_be_are_refused(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "is no grade" in desk.type("inspect", "SH-1", "--grade", "cracks=awful", code=2)
    assert "does not begin with a number" in desk.type("inspect", "SH-1", "--reading", "bow_diameter=thin", code=2)
    assert "no such measure" in desk.type("inspect", "SH-1", "--reading", "length=9 m", code=2)


def test_a_register_is_begun_once_and_missing_ones_are_named(desk: Desk, tmp_path: Path) -> None:
    assert "people already" in desk.type("begin", "--club", "Other", "--officer", "Other", code=2)
    elsewhere = Desk(tmp_path / "nowhere", desk._capture)
    assert "There is no register" in elsewhere.type("list", code=2)
    assert not (tmp_path / "nowhere").exists()
    (tmp_path / "a file").write_text("in the way")
    assert "cannot be made" in Desk(tmp_path / "a file" / "x", desk._capture).type(
        "begin", "--club", "C", "--officer", "O", code=2
    )


def test_without_a_screen_the_window_says_so(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr("sys.platform", "linux")
    assert "no screen" in desk.type("window", code=2)


def test_a_fault_nobody_foresaw_is_told_gently_and_noted(
    desk: Desk, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def fail(*_: object, **__: object) -> None:
        raise ZeroDivisionError("of all things")

    monkeypatch.setattr("inspector.cli.listing.look_up.list_gear", fail)
    monkeypatch.setattr("inspector.app.platformdirs.user_log_dir", lambda *_, **__: str(tmp_path / "logs"))
    said = desk.type("list", code=3)
    assert "of all things" in said and "Traceback" not in said
    assert "ZeroDivisionError" in (tmp_path / "logs" / "faults.log").read_text(encoding="utf-8")


def test_an_old_terminal_never_ends_a_command(desk: Desk) -> None:
    environment = {**os.environ, "PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"}
    command = [sys.executable, "-m", "inspector", "--register", str(desk.folder), "kinds"]
    done = subprocess.run(command, env=environment, cwd=HERE, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr
    assert b"Ball mount" in done.stdout


def test_a_welded_recovery_point_is_booked_without_bolts(desk: Desk) -> None:
    point = [
        "--kind",
        "recovery_point",
        "--rating",
        "4.75 t",
        "--stated-on",
        "piece",
        "--basis",
        "wll",
        "--factor",
        "5",
        "--past",
        "new",
    ]
    assert "if welds alone hold it" in " ".join(desk.type("book", "RP-1", *point, code=2).split())
    both = ["--fixed-by", "welds", "--size", "bolt_count=4"]
    assert "welds alone and have bolts" in desk.type("book", "RP-1", *point, *both, code=2)
    assert "not asked for it" in desk.type("book", "SH-1", *SHACKLE, *SIZES, "--fixed-by", "welds", code=2)
    assert "Hold" in desk.type("book", "RP-1", *point, "--fixed-by", "welds")
    said = desk.type("inspect", "RP-1", "--all-good")
    assert "RP-1  Fit" in said and "welded on" in desk.type("show", "RP-1")


MOUNT = [
    "--kind",
    "ball_mount",
    "--rating",
    "2000 kg",
    "--stated-on",
    "piece",
    "--basis",
    "towed_mass",
    "--past",
    "new",
]


def test_a_wall_reading_says_how_it_was_taken(desk: Desk) -> None:
    desk.type("book", "BM-1", *MOUNT, "--size", "outside=50 mm", "--size", "wall=5 mm", "--size", "pin_hole=16.2 mm")
    wall = ["--all-good", "--reading", "wall@top=5 mm"]
    said = " ".join(desk.type("inspect", "BM-1", *wall, code=2).split())
    assert "How the wall was read was not said" in said and "--method ultrasonic_bare" in said
    assert "BM-1" in desk.type("inspect", "BM-1", *wall, "--method", "ultrasonic_bare")
    assert "BM-1" in desk.type("inspect", "BM-1", "--all-good", "--reading", "pin_hole@left wall=16.3 mm")


def test_a_reading_out_of_the_ordinary_is_kept_only_once_it_was_read_again(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    odd = ("inspect", "SH-1", "--all-good", "--reading", "bow_diameter=24 mm", "--reading", "pin_diameter=22.2 mm")
    said = " ".join(desk.type(*odd, code=2).split())
    assert "Body" in said and "nothing makes it thicker" in said and "--read-again" in said
    assert "pin" not in said.lower() and "Read again" not in desk.type("show", "SH-1")
    desk.type(*odd, "--read-again")
    assert "Read again and confirmed: Body" in " ".join(desk.type("show", "SH-1").split())
    two = [word.replace("22.2", "24") for word in odd]
    said = " ".join(desk.type(*two, code=2).split())
    assert "Body" in said and "Pin" in said
    never = ("inspect", "SH-1", "--all-good", "--reading", "bow_diameter=90 mm", "--read-again")
    assert "cannot be" in desk.type(*never, code=2)
