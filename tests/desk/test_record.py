"""The record of a piece, and the papers printed from it."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QLabel, QPushButton
from pytestqt.qtbot import QtBot

from inspector.desk import told_papers
from inspector.desk.pen import Mark, Picture
from inspector.desk.plain import Fold
from inspector.desk.window import DeskWindow
from inspector.duties.office import Office


@pytest.fixture
def shown(qtbot: QtBot) -> Callable[[DeskWindow, str], DeskWindow]:
    """Opens a piece and waits until it is shown."""

    def opened(desk: DeskWindow, tag: str) -> DeskWindow:
        desk.pages.open_tag(tag)
        qtbot.waitUntil(lambda: desk.pages.piece is not None and desk.pages.piece.tag == tag)
        qtbot.waitUntil(lambda: desk.pages.record.whole)
        return desk

    return opened


def pictures(desk: DeskWindow) -> list[str]:
    """The titles of the drawings on the record."""
    found = desk.pages.record.findChildren(Picture)
    return [one.drawing.title for one in found if not isinstance(one, Mark) and one.isVisibleTo(desk)]


def texts(desk: DeskWindow) -> list[str]:
    """What is written on the record."""
    return [label.text() for label in desk.pages.record.findChildren(QLabel) if label.isVisibleTo(desk)]


def test_a_thinned_tube_comes_with_its_drawings(
    desk: DeskWindow, shown: Callable[[DeskWindow, str], DeskWindow]
) -> None:
    """The wall as it is and as it was, described for whoever cannot see them."""
    shown(desk, "HR-007")
    strength = ["What has become of its strength", "What gives way first"]
    assert pictures(desk) == ["What is left of the wall", "The wall over the years", *strength, "Its life"]
    described = [one.accessibleDescription() for one in desk.pages.record.findChildren(Picture)]
    assert any("2.2 mm" in one for one in described)


def test_a_shackle_has_no_wall_to_draw(desk: DeskWindow, shown: Callable[[DeskWindow, str], DeskWindow]) -> None:
    """No empty frame stands where there is nothing to see."""
    shown(desk, "SH-001")
    assert pictures(desk) == ["Its life"]


def test_the_record_says_what_the_piece_is_and_what_happened(
    desk: DeskWindow, shown: Callable[[DeskWindow, str], DeskWindow]
) -> None:
    """Facts, figures, history and cautions, as the register keeps them."""
    shown(desk, "SH-001")
    piece = desk.pages.piece
    assert piece is not None
    written = texts(desk)
    words = piece.judged.explanation
    for fact in (*words.piece, *words.sums):
        assert fact.label in written and fact.text in written
    for caution in words.cautions:
        assert caution in written
    assert all(any(row.text in one for one in written) for row in piece.history)


def test_the_rules_it_passed_are_folded_and_unfold(
    qtbot: QtBot, desk: DeskWindow, shown: Callable[[DeskWindow, str], DeskWindow]
) -> None:
    """They are there for whoever asks, and out of the way otherwise."""
    shown(desk, "SH-001")
    assert desk.pages.piece
    passed = desk.pages.piece.judged.explanation.passes[0].sentence
    assert passed not in texts(desk)
    fold = next(one for one in desk.pages.record.findChildren(Fold) if "passed" in one.head.accessibleName())
    fold.head.click()
    assert passed in texts(desk)
    fold.head.click()
    assert passed not in texts(desk)


def test_only_a_retired_piece_has_the_button_of_its_notice(
    desk: DeskWindow, shown: Callable[[DeskWindow, str], DeskWindow]
) -> None:
    """A button that does nothing is not shown."""
    shown(desk, "SH-001")
    assert not desk.pages.record.notice_button.isVisible()
    shown(desk, "HR-007")
    assert desk.pages.record.notice_button.isVisible() and desk.pages.record.notice_button.isEnabled()


def test_a_printed_notice_is_told_with_its_place_and_can_be_opened(
    qtbot: QtBot,
    desk: DeskWindow,
    office: Office,
    shown: Callable[[DeskWindow, str], DeskWindow],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The paper lies in the out tray; one button shows it."""
    opened: list[Path] = []
    monkeypatch.setattr(told_papers, "open_file", opened.append)
    shown(desk, "HR-007")
    desk.pages.record.notice_button.click()
    assert desk.status.busy.text() == "Printing…"
    qtbot.waitUntil(lambda: "is printed" in desk.notice.text, timeout=15_000)
    place = next(office.out_tray.glob("R-*.pdf"))
    assert str(place) in desk.notice.text
    next(one for one in desk.notice.findChildren(QPushButton) if one.text() == "Open").click()
    assert opened == [place]
    qtbot.waitUntil(lambda: desk.status.busy.text() == "")


def test_with_no_trip_ahead_the_refusal_says_what_to_do(
    qtbot: QtBot, desk: DeskWindow, shown: Callable[[DeskWindow, str], DeskWindow]
) -> None:
    """Nothing is printed, and the officer knows why."""
    shown(desk, "SH-001")
    desk.pages.record.sheet_button.click()
    qtbot.waitUntil(desk.notice.isVisible)
    assert "No trip lies ahead." in desk.notice.text
    assert "into the register first" in desk.notice.text


def test_of_the_only_trip_ahead_it_is_asked_which_sheet(
    qtbot: QtBot,
    open_desk: Callable[[Office], DeskWindow],
    one_trip: Office,
) -> None:
    """Which trip is no question; it has one vehicle, and a piece that rides on none."""
    desk = open_desk(one_trip)
    desk.printing.trip_sheet(desk.search)
    menu = desk.printing.sheets
    qtbot.waitUntil(menu.isVisible)
    assert [one.text() for one in menu.actions() if one.text()] == [
        "The whole trip on one sheet", "One sheet for each vehicle", "Vehicle V1", "What rides on no vehicle by plan",
    ]  # fmt: skip
    assert menu.activeAction() is menu.actions()[0]
    menu.actions()[0].trigger()
    menu.close()
    qtbot.waitUntil(lambda: "Trip sheet of Beach day 1 is printed." in desk.notice.text, timeout=15_000)
    assert list(one_trip.out_tray.glob("S-*.pdf"))


def test_of_several_trips_the_officer_chooses(
    qtbot: QtBot, open_desk: Callable[[Office], DeskWindow], two_trips: Office
) -> None:
    """The nearest comes first and has the keys."""
    desk = open_desk(two_trips)
    desk.printing.trip_sheet(desk.search)
    menu = desk.printing.menu
    qtbot.waitUntil(menu.isVisible)
    assert [one.text() for one in menu.actions()] == ["Beach day 1, 1 Dec 2026", "Beach day 2, 2 Dec 2026"]
    assert menu.activeAction() is menu.actions()[0]
    menu.actions()[1].trigger()
    menu.close()
    desk.printing.sheets.actions()[0].trigger()
    desk.printing.sheets.close()
    qtbot.waitUntil(lambda: "Beach day 2 is printed" in desk.notice.text, timeout=15_000)


def test_a_tag_that_is_not_there_is_refused_gently(qtbot: QtBot, desk: DeskWindow) -> None:
    """Field, why, what to do: in the window, not in a trace."""
    desk.pages.open_tag("XX-999")
    qtbot.waitUntil(desk.notice.isVisible)
    assert "No piece has the tag “XX-999”." in desk.notice.text
    assert "Look at the label again" in desk.notice.text


def test_the_register_can_be_checked_from_the_menu(qtbot: QtBot, desk: DeskWindow) -> None:
    """The proof is told in a sentence."""
    next(one for one in desk.findChildren(QAction) if "Check" in one.text()).trigger()
    qtbot.waitUntil(lambda: "Nothing in the register was changed." in desk.notice.text)
