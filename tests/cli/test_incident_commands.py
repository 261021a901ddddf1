"""The bad day, as the officer types it."""

import re
from pathlib import Path

import pytest

from inspector.duties.office import Office
from tests.cli.story import Story
from tests.cli.test_commands import SIZES


@pytest.fixture
def story(sample: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Story:
    """The sample register with its clock in hand."""
    return Story(sample, tmp_path, capsys, monkeypatch)


def reported(story: Story, *more: str) -> str:
    """An accident with the first kept rig; its reference."""
    told = ("--what", "The shackle opened.", "--place", "Pellick Spit", "--rig", "RG-01", "--broke", "SH-09")
    said = story.type("incident", "report", *told, "--witness", "Ned", "--distance", "line", "Ned", "14 m", *more)
    found = re.search(r"I-\w+-\d+", said)
    assert found and "SH-09 Hold" in said and "competent person decides" in said
    return found.group()


def test_a_club_without_bad_days_is_told_so(
    office: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "No incident was reported." in Story(office, tmp_path, capsys, monkeypatch).type("incident", "list")


def test_an_accident_from_report_to_close(story: Story, tmp_path: Path) -> None:
    ref = reported(story)
    assert "open" in story.type("incident", "list") and ref in story.type("vehicle", "show", "V-02")
    assert "kept as found" in story.type("incident", "show", ref)
    assert "is kept" in story.type("incident", "add", ref, "--statement", "Ned", "--text", "I saw it.")
    assert "Sgt Stern" in story.type("incident", "add", ref, "--custody", "SH-09", "--holder", "Sgt Stern")
    assert "Kept as evidence" in story.type("show", "SH-09")
    story.type("incident", "close", ref, "--outcome", "done", code=2)
    assert Path(story.type("incident", "print", ref)).read_bytes().startswith(b"%PDF")
    assert "files in" in story.type("incident", "bundle", ref, "--to", str(tmp_path / "bundle"))
    assert "Nothing was changed." in story.type("incident", "check", str(tmp_path / "bundle"))
    (tmp_path / "bundle" / "rig.toml").write_text("", encoding="utf-8")
    assert "rig.toml" in story.type("incident", "check", str(tmp_path / "bundle"), code=1)


def test_what_broke_names_others_of_its_mark_and_batch(story: Story) -> None:
    book = ("--kind", "bow_shackle", "--maker-mark", "EJK", *SIZES)
    story.type("book", "SH-90", *book, "--serial", "0944")
    story.type("book", "SH-91", *book, "--serial", "7044")
    said = story.type("incident", "show", reported(story))
    assert "Look at these as well" in said and "no verdict" in said
    assert "SH-90 · Bow shackle · EJK 0944: like SH-09" in said
    assert "SH-91" not in said


def test_pieces_and_vehicles_are_let_go_together_or_not_at_all(story: Story) -> None:
    ref = reported(story)
    second = ("--second", "Ilse Farrowby", "--why", "no longer needed")
    story.type("incident", "release", ref, *second, code=2)
    story.type("incident", "release", ref, "SH-09", "--second", "Maren Oddwell", "--why", "x", code=2)
    story.type("incident", "release", ref, "SH-09", "SS-01", *second, code=2)
    assert "SH-09" in story.type("incident", "list"), "one that is not kept takes back the other's release"
    said = story.type("incident", "release", ref, "SH-09", "--vehicle", "V-02", *second)
    assert "SH-09 Hold" in said and "V-02 released" in said
    left = story.type("incident", "list")
    assert "SH-09" not in left and "V-02" not in left and "V-04" in left
    assert "Released from evidence" in story.type("show", "SH-09")


def test_what_is_typed_wrong_is_refused(story: Story) -> None:
    ref = reported(story)
    before = story.type("incident", "list")
    assert "Either a statement is added or a hand-over" in story.type("incident", "add", ref, code=2)
    assert "I-0" in story.type("incident", "show", "I-0", code=2)
    told = ("--what", "x", "--place", "y", "--piece", "SH-09")
    assert "“kg” is not a unit" in story.type("incident", "report", *told, "--distance", "a", "b", "14 kg", code=2)
    assert story.type("incident", "list") == before


def test_a_near_miss_is_reported_lighter(story: Story) -> None:
    told = ("--what", "It jerked.", "--place", "Pellick Spit", "--rig", "RG-01", "--near-miss")
    assert "SH-09 Hold" in story.type("incident", "report", *told)
    assert "near miss" in story.type("incident", "list").casefold()
