"""A printed hold tag may still hang on a piece that is free again: that is told until another tag is printed."""

import pytest
from msgspec.structs import replace

from inspector.desk.opened import inspected
from inspector.duties.call_in import call_in
from inspector.duties.change_item import retag
from inspector.duties.give_opinion import doubt
from inspector.duties.log_inspection import Written
from inspector.duties.look_up import open_item
from inspector.duties.office import Office
from inspector.duties.print_labels import enter_labels
from inspector.duties.print_record import enter_record
from inspector.duties.print_tags import enter_tags
from inspector.duties.record_inspection import record_inspection
from inspector.duties.tags_left_on import tag_left_on
from inspector.duties.tell_piece import piece_today
from inspector.duties.whereabouts import sell
from inspector.duties.withdraw_recall import withdraw_recall
from inspector.gear.inspection import InspectionKind, NewInspection
from inspector.gear.outcome import Outcome
from inspector.gear.recall_notice import Meant
from inspector.language import show_day
from tests.duties.gear import SHACKLE_READINGS, STRAP_READINGS, all_good
from tests.duties.notices import notice
from tests.duties.rigs import fit_kit, later
from tests.duties.test_opinions import add


@pytest.fixture
def club(office: Office) -> Office:
    """A fit strap and two fit shackles."""
    fit_kit(office)
    return office


def held(office: Office, tag: str = "SH-1") -> None:
    """Somebody doubts it, and its tag is printed."""
    doubt(office, tag, "it fell")
    enter_tags(office, [tag])


def looked_at(office: Office, tag: str, **seen: str) -> NewInspection:
    """An inspection of all of it, made for an event, so that it answers what was entered today."""
    kind = open_item(office, tag).dossier.kind
    readings = SHACKLE_READINGS if tag.startswith("SH") else STRAP_READINGS
    return replace(all_good(office, kind, readings, None, "", **seen), kind=InspectionKind.AFTER_EVENT)


def freed(office: Office, tag: str = "SH-1", **seen: str) -> Outcome:
    """All of it is inspected."""
    return record_inspection(office, tag, looked_at(office, tag, **seen)).verdict.outcome


def told(office: Office, tag: str = "SH-1") -> str:
    """What is told of a tag that may hang on it, in the record and on paper as by itself."""
    said = tag_left_on(office, open_item(office, tag))
    record = [one.text for one in piece_today(office, open_item(office, tag)) if one.label == "Hold tag"]
    assert [one.text for one in enter_record(office, tag).piece if one.label == "Hold tag"] == record
    assert record == ([said] if said else [])
    return said


def sentence(office: Office) -> str:
    return f"A hold tag printed on {show_day(office.today)} may still hang on it: take it off."


def test_it_is_told_once_the_piece_is_free_and_not_while_it_is_held(club: Office) -> None:
    held(club)
    assert told(club) == ""
    after = later(club, 3)
    assert freed(after) is Outcome.FIT and told(after) == sentence(club)
    retag(after, "SH-1", "SH-9", "the label was torn")
    assert told(after, "SH-9") == sentence(club) and told(after, "SH-2") == ""


def test_the_window_tells_it_with_the_inspection_that_freed_the_piece(club: Office) -> None:
    held(club)
    found = inspected(club, "SH-1", Written(looked_at(club, "SH-1")))
    assert found.judged.verdict.outcome is Outcome.FIT and found.tells[-1] == sentence(club)


def test_nothing_is_told_where_no_tag_of_it_was_printed(club: Office) -> None:
    doubt(club, "SH-1", "it fell")
    held(club, "SH-2")
    assert freed(club) is Outcome.FIT
    enter_labels(club, ["SH-1"])
    assert told(club) == ""


def test_of_several_the_last_is_told(club: Office) -> None:
    held(club)
    freed(later(club, 1))
    again = later(club, 2)
    held(again)
    assert freed(later(club, 3)) is Outcome.FIT and told(later(club, 3)) == sentence(again)


def test_another_tag_printed_later_ends_it(club: Office) -> None:
    """A strap that is derated after all carries a tag that says so."""
    held(club, "KS-1")
    assert freed(club, "KS-1", abrasion="slight") is Outcome.DERATE and told(club, "KS-1") == sentence(club)
    enter_tags(club, ["KS-1"])
    assert told(club, "KS-1") == ""


def test_of_a_sheet_of_several_the_tag_of_the_piece_counts(club: Office) -> None:
    """A derated strap beside a held shackle, in either order."""
    freed(club, "KS-1", abrasion="slight")
    for tags in (("KS-1", "SH-1"), ("SH-2", "KS-1")):
        (shackle,) = {*tags} - {"KS-1"}
        doubt(club, shackle, "it fell")
        enter_tags(club, tags)
        freed(club, shackle)
        assert told(club, shackle) == sentence(club) and told(club, "KS-1") == ""


def test_nothing_is_told_of_what_is_retired_or_has_left(club: Office) -> None:
    held(club)
    held(club, "SH-2")
    freed(club, "SH-2")
    sell(club, "SH-2", "Bea", why="outgrown")
    assert freed(club, cracks="bad") is Outcome.RETIRE
    assert told(club) == told(club, "SH-2") == ""


def test_whoever_withdraws_a_recall_is_told_of_each_piece_it_lets_go(club: Office) -> None:
    add(club, "Bo Second")
    ref = call_in(club, notice(club, Meant(tags=("SH-1", "SH-2", "KS-1")))).recall.ref
    enter_tags(club, ["SH-1", "KS-1"])
    doubt(club, "KS-1", "it was dragged")
    done = withdraw_recall(club, ref, "another maker's", second="Bo Second")
    assert {one.dossier.item.tag for one in done.pieces} == {"SH-1", "SH-2", "KS-1"}
    assert done.tags_left == {"SH-1": sentence(club)}
