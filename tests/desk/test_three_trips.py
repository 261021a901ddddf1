"""Three trips of the sample club through the window: ready or not, kit, who brings out whom, sheet and check."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from inspector.desk.window import DeskWindow
from inspector.duties.look_up import open_item, trip
from inspector.duties.office import Office
from inspector.duties.plan_trip import plan_trip
from inspector.duties.work_rigs import pair_trip
from inspector.gear.inspection import InspectionKind
from inspector.gear.trip import Ground, Trip
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_trailhead import answer_all, form_of, keep, measure
from tests.desk.test_trip_page import pressed, settle, to_trip, which_sheet

MEMBER = "Nell Hobbery"


@pytest.fixture
def planned(sample: Office) -> Office:
    """The sample's two trips ahead, and a day on gravel."""
    day = sample.today + timedelta(days=9)
    cars = ("V-02", "V-05", "V-08")
    plan_trip(sample, Trip("", "T-77", "Gravel day", "Candle Ridge", Ground.GRAVEL, day, day, MEMBER, cars))
    return sample


@pytest.mark.parametrize("ref", ["T-05", "T-06", "T-77"])
def test_a_trip_from_its_page_to_a_checked_piece(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], planned: Office, ref: str
) -> None:
    desk = open_desk(planned)
    page = to_trip(qtbot, desk)
    assert page.choice
    page.choice.box.setCurrentIndex(next(at for at in range(3) if _name(planned, ref) in page.choice.box.itemText(at)))
    settle(qtbot, desk)
    page.propose_kit()
    settle(qtbot, desk)
    pressed(page, "Make this the kit")
    settle(qtbot, desk)
    kit = trip(planned, ref).kit
    assert f"The kit is {len(kit)} pieces now." in desk.notice.text
    line = next(one for one in pair_trip(planned, ref).lines if one.outcome in {"sound", "caution"})
    page.pair_part.views[0].choose(line)
    qtbot.waitUntil(lambda: line.says in shown_texts(page))
    pressed(page, "Print sheet")
    which_sheet(desk, "The whole trip on one sheet")
    settle(qtbot, desk)
    assert f"Trip sheet of {_name(planned, ref)} is printed." in desk.notice.text
    pressed(page, "Check the kit")
    settle(qtbot, desk)
    _check_first(qtbot, desk, planned, ref)


def _name(office: Office, ref: str) -> str:
    return trip(office, ref).name


def _check_first(qtbot: QtBot, desk: DeskWindow, office: Office, ref: str) -> None:
    """The first piece of the walk round, every question good, nothing measured that was not read."""
    head = desk.pages.trailhead
    assert head.start.by
    head.start.by.box.setCurrentText(MEMBER)
    QTest.keyClick(head.start.by.box, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: head.is_under_way)
    assert head.piece
    tag = head.piece.tag
    answer_all(head)
    measure(head, *("" for _ in form_of(head).measures))
    keep(qtbot, head)
    facts = open_item(office, tag).dossier.inspections[-1].facts
    assert (facts.kind, facts.trip) == (InspectionKind.BEFORE_USE, ref)
    assert "May be used" in shown_texts(head) or "Must not be used" in shown_texts(head)  # a part comes first
    assert focused() is not None
