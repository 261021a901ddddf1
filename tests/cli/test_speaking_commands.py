"""Doubts, opinions, strikes and destruction, as the officer types them."""

import re
from datetime import UTC, datetime, timedelta

from tests.cli.test_commands import GOOD, SHACKLE, SIZES, Desk, desk

__all__ = ["desk"]

THIN = ["--all-good", "--reading", "bow_diameter=16 mm", "--reading", "pin_diameter=22.2 mm"]
TODAY = (datetime.now(UTC) - timedelta(days=1)).date().isoformat()
STRAP = [
    "--kind",
    "kinetic_strap",
    "--rating",
    "8000 kg",
    "--stated-on",
    "piece",
    "--basis",
    "mbs",
    "--past",
    "new_certified",
    "--in-service-on",
    TODAY,
]
STRAP += ["--size", "length=9 m", "--maker-mark", "ZUF", "--serial", "Z9-001"]


def entry(shown: str, what: str) -> str:
    """The sign that the history prints beside the latest entry of this sort."""
    found = re.search(rf"([0-9a-f]{{6}})  {what}", shown)
    assert found is not None
    return found.group(1)


def test_people_are_entered_with_what_they_may_judge(desk: Desk) -> None:
    assert "competent for: shackle since" in desk.type("person", "Bo Second", "--competent", "shackle")
    assert "Ada Officer" in desk.type("people") and "Bo Second" in desk.type("people")
    assert "no family of kinds" in desk.type("person", "Cy Third", "--competent", "shackles", code=2)
    assert "in the register already" in desk.type("person", "Bo Second", code=2)


def test_a_misread_gauge_is_struck_and_the_piece_comes_back_by_an_inspection(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "SH-1  Retire" in desk.type("inspect", "SH-1", *THIN)
    ref = entry(desk.type("show", "SH-1"), "Inspection")
    struck = ["strike", "SH-1", ref, "--why", "the calliper stood at 3 mm", "--second"]
    assert "Nobody called" in desk.type(*struck, "Bo Second", code=2)
    desk.type("person", "Cy New", "--competent", "all")
    assert "only since today" in desk.type(*struck, "Cy New", code=2)
    desk.type("person", "Bo Second", "--competent", "all", "--since", "2020-01-01", "--paper", "course, card 12")
    assert "both names" in desk.type(*struck, "Ada Officer", code=2)
    assert "SH-1  Hold" in desk.type(*struck, "Bo Second")
    assert "STRUCK, does not count" in desk.type("show", "SH-1")
    assert "SH-1  Fit" in desk.type("inspect", "SH-1", *GOOD, "--kind", "after_event")
    assert "Nothing was changed" in desk.type("verify")


def test_a_doubt_holds_and_an_inspection_settles_it(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    desk.type("inspect", "SH-1", *GOOD)
    assert "SH-1  Hold" in desk.type("doubt", "SH-1", "--why", "it fell from the roof")
    assert "SH-1  Fit" in desk.type("inspect", "SH-1", *GOOD, "--kind", "after_event", "--next-within", "40")
    assert "asked for by the last inspector" in desk.type("show", "SH-1")


def test_a_second_opinion_answers_a_slight_fault(desk: Desk) -> None:
    desk.type("book", "KS-1", *STRAP)
    half = ["--all-good", "--grade", "label_legible=slight", "--reading", "length=9 m"]
    said = desk.type("inspect", "KS-1", *half)
    assert "KS-1  Hold" in said and "label-worn" in said
    answer = ["answer", "KS-1", "label-worn", "--why", "stamped on the sleeve as well", "--by"]
    assert "made an inspection" in desk.type(*answer, "Ada Officer", code=2)
    desk.type("person", "Bo Second", "--competent", "strap")
    assert "KS-1  Fit" in desk.type(*answer, "Bo Second")
    assert "answered by Bo Second" in " ".join(desk.type("show", "KS-1").split())


def test_a_retired_piece_is_destroyed_once(desk: Desk) -> None:
    desk.type("book", "SH-1", *SHACKLE, *SIZES)
    assert "not retired" in desk.type("destroyed", "SH-1", "--how", "cut", code=2)
    desk.type("inspect", "SH-1", *THIN)
    assert "made unusable on" in desk.type("destroyed", "SH-1", "--how", "bow cut through")
    assert "already" in desk.type("destroyed", "SH-1", "--how", "again", code=2)
