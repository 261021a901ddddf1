"""The handout by command: topics listed, dials set, begun from a piece, faults in words."""

from pathlib import Path

import pytest

from inspector.duties.office import Office
from tests.cli.test_commands import Desk


@pytest.fixture
def desk(sample: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Desk:
    """The sample register at a terminal."""
    monkeypatch.setenv("COLUMNS", "110")
    return Desk(tmp_path, capsys)


def test_without_a_topic_they_are_listed_with_their_dials(desk: Desk) -> None:
    said = desk.type("handout")
    assert "A tow ball as a lever (ball)" in said and "height: Height of the pull over the plate, else 60 mm" in said


def test_dials_are_set_and_the_paper_lies_in_the_tray(desk: Desk, tmp_path: Path) -> None:
    said = " ".join(desk.type("handout", "pin", "--set", "pin=20 mm", "--set", "class=8.8").split())
    assert "in double shear and" in said and "Never recover from a tow ball" in said
    papers = list(tmp_path.rglob("T-*.pdf"))
    assert len(papers) == 1 and papers[0].name in said.replace(" ", "")


def test_it_begins_from_a_piece_and_what_is_typed_goes_before(desk: Desk) -> None:
    said = " ".join(desk.type("handout", "--from", "HR-01", "--set", "years=4 years").split())
    assert "After 4 years the wall is" in said
    assert "printed the handout" in desk.type("ledger", "--last", "1") and "HR-01" in desk.type("ledger", "--last", "1")


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (["pins"], "The bench has no topic"),
        (["pin", "--set", "pin=20"], "The unit is missing"),
        (["pin", "--set", "pin=90 mm"], "The sum is shown from 6 mm to 40 mm"),
        (["pin", "--set", "years=2 years"], "This topic has no dial"),
        (["pin", "--from", "HR-01"], "has no figures for"),
        (["--from", "DM-01"], "No topic here is about a damper"),
        (["--from", "XX-99"], "XX-99"),
    ],
)
def test_faults_are_said_in_words_and_print_nothing(desk: Desk, tmp_path: Path, words: list[str], why: str) -> None:
    assert why in " ".join(desk.type("handout", *words, code=2).split())
    assert not list(tmp_path.rglob("T-*.pdf"))
