"""Three trips of the sample register, typed from the plan to what was told afterwards: beach, gravel, mud."""

import re
from pathlib import Path

import pytest

from inspector.duties.office import Office
from tests.cli.story import Story

DEBRIEF = """
trip = "{trip}"
on = {on}
by = "{by}"

[[used]]
rig = "{rig}"
pulls = {pulls}
on = {day}
jerked = false
near_miss = "{near_miss}"
"""
PLAN = (
    "--name", "Step practice", "--place", "Candle Ridge", "--ground", "gravel", "--leader", "Des Thackerow",
    "--person", "Des Thackerow", "--person", "Rua Pallowin", "--person", "Ana Kestrow",
    "--vehicle", "V-04", "--vehicle", "V-08", "--vehicle", "V-02",
)  # fmt: skip


@pytest.fixture
def story(sample: Office, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Story:
    """The sample register on the evening it was built."""
    return Story(sample, tmp_path, capsys, monkeypatch)


def pack(story: Story, trip: str) -> list[str]:
    """Take the kit that is proposed by need; its tags."""
    said = story.type("trip", "pack", trip, "--set")
    kit = story.kit(trip)
    assert f"The kit of {trip} is {len(kit)} pieces now." in said
    assert "SN-01: It is out on loan." in said or "DS-02, SN-01: It is out on loan." in said
    assert "kit by need" in story.type("trip", "show", trip)
    return kit


def leave_behind(story: Story, trip: str, rig: str, by: str) -> str:
    """A member finds the shackle of a kept rig bad, so that the rig does not hold any more; the shackle's tag."""
    bad = next(tag for tag in story.rig(rig) if tag.startswith(("SH-", "DS-")))
    said = story.type("check", trip, bad, "--by", by, "--all-good", "--grade", "pin_seats=bad", "--note", "it rattles")
    assert f"{bad} " in said and "Stays in the shed" in said
    checked = story.type("rig", "check", rig)
    assert "UNSOUND" in checked and f"Not as it is. {bad}, " in checked and "shackle: It is retired" in checked
    return bad


def sheet_back(story: Story, trip: str, number: str, kit: list[str], by: str) -> None:
    """The paper comes back with every other piece ticked as good, and is typed in at once."""
    said = story.type("check", trip, *kit, "--by", by, "--sheet", number, "--all-good")
    assert "does not go like this" not in said
    listed = story.type("check", trip)
    everything = len(kit) + 1
    assert re.search(rf"\b{everything} of \d+ checked \(\d+ pieces, \d+ parts on the vehicles\)", listed)


def tell(story: Story, **told: object) -> str:
    """Tell a trip by a file."""
    return story.type("debrief", str(story.told(DEBRIEF.format(**told))))


def went_through(story: Story, tag: str, *what: str) -> None:
    """The record of a piece tells these things, the oldest first."""
    history = story.type("show", tag).partition("History")[2]
    places = [history.find(one) for one in what]
    assert -1 not in places, (tag, what, history)
    assert places == sorted(places, reverse=True), "the record tells the newest first"


def unchanged(story: Story) -> None:
    assert "Nothing was changed" in story.type("verify")


def test_nine_posts_and_back(story: Story) -> None:
    """The beach: a snatch that was sound, a shackle left at the trailhead, a near miss on the last day."""
    kit = pack(story.at(1), "T-05")
    pairs = story.type("trip", "pairs", "T-05")
    assert "V-04 V-09 strap Sound" in pairs and "V-04 V-01 strap Unsound" in pairs
    proposed = story.type("rig", "propose", "T-05", "--pulling", "V-04", "--bogged", "V-09", "--as", "R-05")
    assert "SOUND" in proposed and "WEAKEST" in proposed and "R-05 is kept" in proposed

    number = story.at(2).sheet("T-05")
    assert story.type("lend", "--trip", "T-05", "--to", "Hanne Lodewell").count("Hanne Lodewell") == len(kit)
    assert "already" in story.type("lend", kit[0], "--to", "Gus Ottermole", "--due", "2099-01-01", code=2)

    bad = leave_behind(story.at(3), "T-05", "R-05", "Nell Hobbery")
    story.type("rig", "propose", "T-05", "--pulling", "V-04", "--bogged", "V-09", "--as", "R-05-2")
    used = story.rig("R-05-2")
    assert bad not in used and "SOUND" in story.type("rig", "check", "R-05-2")
    good = [tag for tag in kit if tag != bad]
    sheet_back(story, "T-05", number, good, "Priya Wendlan")

    said = tell(
        story.at(4), trip="T-05", on=story.day(4), by="Hanne Lodewell", rig="R-05-2", pulls=2, day=story.day(4),
        near_miss="V-09 came out faster than planned and stopped a metre short of V-04.",
    )  # fmt: skip
    assert all(f"{tag} Hold: " in said for tag in used), "both ends, and all between"
    back = story.type("return", "--trip", "T-05", "--by", "Hanne Lodewell", "--salt", "2", "--rinsed", "--dried")
    assert "SN-02" not in kit, "Rua does not go, and her block stays with her"
    unused = [tag for tag in good if tag not in used]
    assert all(f"{tag} Fit" in back or f"{tag} Derate" in back for tag in unused)
    assert all(f"{tag} Hold: " in back for tag in kit if tag in used)
    assert f"{bad} Retire: " in back
    assert "T-05" not in story.type("loans")

    strap = next(tag for tag in used if tag.startswith(("KR-", "KS-")))
    went_through(story, strap, "Lent", "Check before use", "Use", "Returned")
    assert "2 pulls, overload. Trip T-05" in story.type("show", strap)
    went_through(story, bad, "Lent", "it rattles", "Returned")
    assert "salt, 2 days, rinsed, dried" in story.type("show", unused[0])
    unchanged(story)


def test_a_held_strap_is_released_by_a_competent_person_and_by_nobody_else(story: Story) -> None:
    pack(story.at(1), "T-05")
    story.type("rig", "propose", "T-05", "--pulling", "V-04", "--bogged", "V-09", "--as", "R-05")
    used = story.rig("R-05")
    assert "KR-01" in used
    story.at(4)
    tell(story, trip="T-05", on=story.day(4), by="", rig="R-05", pulls=1, day=story.day(3), near_miss="It slipped.")
    member = story.type("check", "T-05", "KR-01", "--by", "Nell Hobbery", "--all-good")
    assert "KR-01 Kinetic rope (Hold)" in member
    good = ("--all-good", "--reading", "length=9.16 m", "--reading", "diameter=21.7 mm")
    assert "KR-01 Fit" in story.type("inspect", "KR-01", *good)
    unchanged(story)


def test_a_day_on_the_step(story: Story) -> None:
    """Gravel: planned anew, a winch with its line, and a debrief that comes the day after."""
    assert "T-07 · Step practice" in story.at(8).type("trip", "plan", "T-07", *PLAN, "--first", str(story.day(11)))
    kit = pack(story, "T-07")
    assert "V-04 V-08 winch Caution" in story.type("trip", "pairs", "T-07")
    ask = ("rig", "propose", "T-07", "--method", "winch", "--pulling", "V-04", "--bogged", "V-08")
    proposed = story.type(*ask, "--as", "R-07", "--print")
    assert "CAUTION" in proposed and "it slides before that" in proposed and "/documents/G-" in proposed

    number = story.at(10).sheet("T-07")
    story.type("lend", "--trip", "T-07", "--to", "Des Thackerow")
    bad = leave_behind(story.at(11), "T-07", "R-07", "Ana Kestrow")
    story.type(*ask, "--as", "R-07-2")
    used = story.rig("R-07-2")
    assert bad not in used and {"WI-01", "FL-01"} <= set(used)
    good = [tag for tag in kit if tag != bad]
    other = story.type("check", "T-07", *good, "--by", "Ana Kestrow", "--sheet", "S-0-0001", "--all-good", code=2)
    assert "no sheet of the trip T-07" in other and number in other
    sheet_back(story, "T-07", number, good, "Ana Kestrow")

    back = story.type("return", "--trip", "T-07", "--by", "Des Thackerow", "--pulls", "0", "--no-weather")
    assert all(f"{tag} Fit" in back or f"{tag} Derate" in back for tag in good)
    said = tell(
        story.at(12), trip="T-07", on=story.day(12), by="Des Thackerow", rig="R-07-2", pulls=1, day=story.day(11),
        near_miss="The line ran to one side of the drum and jumped a layer with a bang.",
    )  # fmt: skip
    assert all(f"{tag} Hold: " in said for tag in used)
    went_through(story, "WI-01", "jumped a layer", "Hold")
    assert "1 pull, overload. Trip T-07" in story.type("show", "FL-01")
    assert "on loan" not in story.type("show", good[0])
    unchanged(story)


def test_smeath_in_the_wet(story: Story) -> None:
    """Mud: a kit that comes back dirty with no word of its pulls, one strap forgotten, and a debrief too late."""
    kit = pack(story.at(36), "T-06")
    pairs = story.type("trip", "pairs", "T-06")
    assert "V-09 V-08 strap Sound" in pairs and "V-04 V-06 winch none The kit lacks a fit recovery point" in pairs
    ask = ("rig", "propose", "T-06", "--pulling", "V-09", "--bogged", "V-08")
    assert "R-06 is kept" in story.type(*ask, "--as", "R-06")
    number = story.at(37).sheet("T-06")
    story.type("lend", "--trip", "T-06", "--to", "Rua Pallowin")
    bad = leave_behind(story.at(38), "T-06", "R-06", "Joss Ferrabel")
    story.type(*ask, "--as", "R-06-2")
    used = story.rig("R-06-2")
    good = [tag for tag in kit if tag != bad]
    sheet_back(story, "T-06", number, good, "Joss Ferrabel")

    mud = ("--mud", "3", "--not-rinsed", "--but", "TS-04")
    back = story.at(40).type("return", "--trip", "T-06", "--by", "Rua Pallowin", *mud)
    assert "TS-04" not in back
    assert all(f"{tag} Hold: " in back for tag in good if tag != "TS-04"), "nobody told their pulls"
    left = story.at(41).type("loans")
    assert "TS-04 Tree strap Rua Pallowin" in left and "T-06 1 day overdue" in left
    said = tell(
        story, trip="T-06", on=story.day(41), by="Rua Pallowin", rig="R-06-2", pulls=3, day=story.day(39),
        near_miss="A child stood beside the line and nobody had seen it come.",
    )  # fmt: skip
    assert all(f"{tag} Hold: " in said for tag in used)
    unused = next(tag for tag in good if tag not in used and tag != "TS-04")
    assert f"{unused} Hold: " in story.type("show", unused), "a debrief that comes late takes no doubt away"
    went_through(story, unused, "Lent", "Check before use", "nobody told its pulls", "Nobody told what pulls it bore")
    assert "mud, 3 days, not rinsed" in story.type("show", unused)
    assert "TS-04 Fit" in story.type("return", "TS-04", "--by", "Rua Pallowin", "--nothing-happened")
    unchanged(story)
