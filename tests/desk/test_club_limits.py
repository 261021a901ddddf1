"""The window on a register whose club has loosened a limit."""

from collections.abc import Callable
from datetime import date

from msgspec.structs import replace
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from inspector.desk.gear_list.columns import VERDICT
from inspector.desk.window import DeskWindow
from inspector.duties.adopt_rulebook import adopt_rulebook
from inspector.duties.office import Office
from inspector.duties.record_inspection import record_inspection
from inspector.duties.rulebook_in_force import in_force
from tests.desk.conftest import length, looked_at

LOOSE = b"""club = "C"
title = "Ours"
from = 2026-01-01
why = "agreed"
profile = ["shackle-wear-ten-percent"]
"""


def loosened(office: Office) -> Office:
    """SH-001 worn between the packaged limit and the club's, and the club's book adopted."""
    facts = looked_at(office, "SH-001", "bow_shackle", date(2026, 11, 25))
    worn = tuple(
        replace(one, figure=length("17.3 mm")) if one.measure == "bow_diameter" else one for one in facts.readings
    )
    record_inspection(office, "SH-001", replace(facts, readings=worn))
    adopt_rulebook(office, LOOSE, "ours.toml", office.today)
    return in_force(office)


def test_the_record_and_the_list_say_what_is_loosened(
    open_desk: Callable[[Office], DeskWindow], office: Office, qtbot: QtBot
) -> None:
    desk = open_desk(loosened(office))
    model = desk.pages.table.model
    row = model.row_of("SH-001")
    assert model.data(model.index(row, VERDICT)) == "Fit, loosened"
    desk.pages.open_tag("SH-001")
    qtbot.waitUntil(lambda: desk.pages.piece is not None)
    said = " ".join(one.text() for one in desk.pages.record.findChildren(QLabel) if one.isVisibleTo(desk))
    assert "Without the club's loosened limits it would be: Hold" in said
    assert "Club limits loosened from the packaged rulebook: shackle-body-worn" in said
    assert desk.notice.isHidden()


def test_limits_that_no_longer_fit_are_told_when_the_window_opens(
    open_desk: Callable[[Office], DeskWindow], office: Office
) -> None:
    loosened(office)
    renamed = tuple(replace(one, id="other") if one.id == "shackle-body-worn" else one for one in office.rules.rules)
    desk = open_desk(in_force(replace(office, rules=office.rules.with_law(rules=renamed))))
    assert "do not fit this version" in desk.notice.text and "shackle-body-worn" in desk.notice.text
