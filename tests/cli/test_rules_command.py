"""The commands about the rulebook, as the officer types them."""

from pathlib import Path

import pytest

from inspector.app import main
from tests.cli.test_commands import SHACKLE

SAMPLE = Path(__file__).resolve().parents[2] / "sample_register" / "club_rules.toml"
HEAD = 'club = "Test Club"\ntitle = "Ours"\nfrom = 2020-01-01\nwhy = "agreed"\n'
LOOSE = HEAD + 'profile = ["shackle-wear-ten-percent"]\n'
SIZES = ["--size", "bow_diameter=19 mm", "--size", "pin_diameter=22 mm"]
WORN = ["--all-good", "--reading", "bow_diameter=17.3 mm", "--reading", "pin_diameter=22 mm"]


class Typist:
    """Types commands on a register in a folder."""

    def __init__(self, folder: Path, capture: pytest.CaptureFixture[str]) -> None:
        self.folder, self._capture = folder, capture

    def type(self, *words: str, code: int = 0) -> str:
        self._capture.readouterr()
        assert main(["--register", str(self.folder), *words]) == code
        said = self._capture.readouterr()
        return " ".join((said.out + said.err).split())

    def file(self, text: str) -> str:
        place = self.folder.parent / "ours.toml"
        place.write_text(text, encoding="utf-8")
        return str(place)


@pytest.fixture
def bare(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Typist:
    """No register at all."""
    monkeypatch.setenv("COLUMNS", "100")
    return Typist(tmp_path / "club", capsys)


@pytest.fixture
def club(bare: Typist) -> Typist:
    """A register with one shackle that is worn by 8.9 %."""
    bare.type("begin", "--club", "Test Club", "--officer", "Ada Officer")
    bare.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "Hold" in bare.type("inspect", "SH-1", *WORN)
    return bare


def test_rules_are_listed_and_shown_without_a_register(bare: Typist) -> None:
    said = bare.type("rules", "list", "shackle", "--kind", "bow_shackle", "--words")
    assert "shackle-body-worn" in said and "8 %" in said and "so a competent person decides" in said
    shown = bare.type("rules", "show", "shackle-body-worn")
    for wanted in ("at most 8 %", "hold", "UK guide to BS EN 13889", "restates it", "Dee shackle", "8.1 %", "unknown"):
        assert wanted in shown
    assert "shackle-body-worn" in bare.type("rules", "show", "shackle-body-wurn", code=2)
    assert "hook-opening-ten-percent" in bare.type("rules", "list", "--profiles")
    assert not bare.folder.exists()


def test_a_good_file_is_told_change_by_change(bare: Typist) -> None:
    said = bare.type("rules", "check", str(SAMPLE))
    assert "! line 27: limit age-retires-fibre limit 12 years, packaged 10 years: looser" in said
    assert "10 changes, 1 of them looser" in said


def test_a_faulty_file_ends_with_its_faults_and_code_1(bare: Typist) -> None:
    place = bare.file(HEAD + '[[limit]]\nrule = "shackle-body-worn"\nlimit = "9 mm"\n[[x]]\n')
    said = bare.type("rules", "check", place, code=1)
    assert "ours.toml, line 7: limit of “shackle-body-worn”: “9 mm” is a length; a share such as 8 % is wanted." in said
    assert "ours.toml, line 8: “x” is not known here." in said and "2 faults" in said
    assert "ours.toml, line 1, column" in bare.type("rules", "check", bare.file("club = = 1\n"), code=1)
    assert "cannot be read" in bare.type("rules", "check", "no-such-file.toml", code=2)


def test_compare_adopt_show_and_drop(club: Typist) -> None:
    place = club.file(LOOSE)
    said = club.type("rules", "compare", place)
    assert "from packaged rulebook" in said and "SH-1 Bow shackle: Hold → Fit" in said
    assert "shackle-body-worn" in said and "Hold → Fit: 1" in said and "1 of 1 pieces differ" in said
    assert "Hold" in club.type("list"), "nothing was kept"
    assert "which is past" in club.type("rules", "adopt", place, code=2)

    assert "holds from" in club.type("rules", "adopt", place, "--from", "today")
    assert "Fit (loosened, else hold)" in club.type("list")
    shown = club.type("show", "SH-1")
    assert "club limit 10 %, loosened from 8 %" in shown
    assert "Club limits loosened from the packaged rulebook" in shown
    assert "without the club's loosened limits: Hold" in shown
    assert "! shackle-body-worn" in club.type("rules", "list", "shackle-body-worn")
    rule = club.type("rules", "show", "shackle-body-worn")
    assert "loosened: 10 % (packaged 8 %)" in rule and "packaged rulebook: hold" in rule
    assert "0 of 1 pieces differ" in club.type("rules", "compare", "current", place)
    assert "Fit → Hold: 1" in club.type("rules", "compare", "current", "packaged")
    assert "packaged rulebook holds from" in club.type("rules", "drop")
    assert "loosened" not in club.type("list")
    assert "Nothing was changed." in club.type("verify")


def test_a_book_that_retires_names_the_pieces_first(club: Typist) -> None:
    place = club.file(HEAD.replace("2020-01-01", "2100-01-01") + 'profile = ["shackle-wear-eight-percent-retires"]\n')
    assert "Only the second retires, and a retirement is final: SH-1" in club.type("rules", "compare", place)
    assert "It would retire one piece at once: SH-1" in club.type("rules", "adopt", place, code=2)
    assert "holds from 1 Jan 2100" in club.type("rules", "adopt", place, "--retires", "1")
    assert "Hold" in club.type("list")
