"""The bench of a rig: parts go in by keys and by drag, every step can be undone, and the typed runs are the chain."""

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QAccessible, QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from inspector.desk.look import Look
from inspector.desk.place import Go
from inspector.desk.places import RIG
from inspector.desk.rig_asked import RigAsked
from inspector.desk.rig_build.builder import Builder
from inspector.desk.rig_build.chain import Chain, Spot
from inspector.desk.rig_build.rungs import PlaceRung, part_data
from inspector.desk.rig_form import RigForm
from inspector.desk.rig_page import RigPage
from inspector.desk.rig_runs import RunsBox
from inspector.desk.window import DeskWindow
from inspector.duties.office import Office
from inspector.duties.rig_bench import rig_bench
from inspector.gear.outcome import Outcome
from inspector.gear.rig import Method
from inspector.gear.rig_result import RigOutcome
from tests.desk.outing import beach as beach
from tests.desk.outing import beach_desk as beach_desk
from tests.desk.test_evening import focused, shown_texts
from tests.desk.test_names import controls
from tests.desk.test_trip_page import pressed, settle

Opener = Callable[[Office], DeskWindow]
BEST = ("RP-1F", "SH-1", "KS-1", "SH-2", "RP-2F")
TAGS = st.sampled_from(("SH-1", "KS-1", "tree@ground", "sh-9"))
STEPS = st.tuples(st.sampled_from(("put", "take", "move", "undo", "redo")), st.integers(0, 3), st.integers(0, 5), TAGS)


@pytest.fixture
def page(qtbot: QtBot, desk: DeskWindow) -> RigPage:
    """The bench with the proposed rig on it: V-2 pulls V-1."""
    desk.pages.go(Go(RIG, RigAsked("T-1", Method.KINETIC, "V-2", "V-1")))
    settle(qtbot, desk)
    settle(qtbot, desk)
    pressed(desk.pages.rig, "Build it by hand")
    settle(qtbot, desk)
    return desk.pages.rig


@pytest.fixture
def bench(page: RigPage) -> Builder:
    """The bench."""
    return page.builder


def form_of(page: RigPage) -> RigForm:
    """The form."""
    assert page.form
    return page.form


def press(key: Qt.Key, ctrl: bool = False) -> None:
    """A key where the keys go."""
    held = Qt.KeyboardModifier.ControlModifier if ctrl else Qt.KeyboardModifier.NoModifier
    QTest.keyClick(focused(), key, held)


def drop(place: PlaceRung, tag: str, came_from: int = -1) -> None:
    """Draw a part onto a place and let it go there."""
    data, at = part_data(tag, came_from), place.rect().center()
    buttons, free, copy = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, Qt.DropAction.CopyAction
    entered = QDragEnterEvent(at, copy, data, buttons, free)
    QApplication.sendEvent(place, entered)
    assert entered.isAccepted() and place.is_lit and "It goes in here." in shown_texts(place)
    QApplication.sendEvent(place, QDropEvent(QPointF(at), copy, data, buttons, free, QEvent.Type.Drop))


def run_of(page: RigPage) -> tuple[str, ...]:
    """The first run of the chain, which is what is typed, too."""
    assert form_of(page).runs.typed == page.builder.chain.runs
    return page.builder.chain.run(0)


def test_the_rig_stands_on_the_bench_part_by_part_each_with_a_name(bench: Builder, page: RigPage) -> None:
    assert run_of(page) == BEST
    assert [one.accessibleName() for one in bench.ladder.places][1] == "between RP-1F and SH-1"
    assert bench.ladder.parts[1].accessibleName() == "Part 2: SH-1 · Bow shackle"
    spoken = list(controls(QAccessible.queryAccessibleInterface(page)))
    assert spoken and all(one.text(QAccessible.Text.Name) for one in spoken)
    assert focused() is bench.ladder.rungs[0]


def test_the_bench_tells_mark_kind_and_strength_of_each_part(beach: Office, bench: Builder) -> None:
    parts = {one.tag: one for one in rig_bench(beach, "T-1", ("V-2", "V-1"))}
    assert bench.bench.found == tuple(parts)
    assert parts["SH-3"].outcome is Outcome.HOLD and parts["KS-1"].outcome is Outcome.FIT
    assert parts["RP-1F"].where.startswith("on V-1") and parts["KS-1"].where == "in the kit"
    assert parts["KS-1"].bears.startswith("stands ") and "tie_down@V-1" in parts and "BM-1" not in parts


def test_a_part_is_taken_out_found_and_put_in_by_keys(
    qtbot: QtBot, desk: DeskWindow, page: RigPage, bench: Builder
) -> None:
    for _ in range(3):
        press(Qt.Key.Key_Right)
    press(Qt.Key.Key_Delete)
    assert run_of(page) == ("RP-1F", "KS-1", "SH-2", "RP-2F")
    settle(qtbot, desk)
    assert focused() is bench.ladder.places[1], "the answer takes no keys away"
    QTest.keyClicks(focused(), "s")
    QTest.keyClicks(focused(), "h-3")
    assert focused() is bench.bench.line and bench.bench.found == ("SH-3",)
    press(Qt.Key.Key_Return)
    assert run_of(page) == ("RP-1F", "SH-3", "KS-1", "SH-2", "RP-2F")
    settle(qtbot, desk)
    assert focused() is bench.ladder.places[2] and bench.result
    assert bench.result.rig.runs == bench.chain.runs and bench.result.outcome is RigOutcome.UNSOUND


def test_ctrl_and_an_arrow_move_a_part_and_undo_brings_it_back(page: RigPage, bench: Builder) -> None:
    bench.ladder.parts[1].setFocus()
    press(Qt.Key.Key_Right, ctrl=True)
    moved = ("RP-1F", "KS-1", "SH-1", "SH-2", "RP-2F")
    assert run_of(page) == moved and focused() is bench.ladder.parts[2]
    press(Qt.Key.Key_Z, ctrl=True)
    assert run_of(page) == BEST
    press(Qt.Key.Key_Y, ctrl=True)
    assert run_of(page) == moved


def test_what_does_not_go_together_is_said_at_the_joint_where_a_part_was_dropped(
    qtbot: QtBot, desk: DeskWindow, page: RigPage, bench: Builder
) -> None:
    bench.ladder.parts[4].take.emit()
    drop(bench.ladder.places[4], "tie_down@V-2")
    settle(qtbot, desk)
    assert run_of(page) == (*BEST[:4], "tie_down@V-2") and bench.result
    joint = next(one for one in bench.result.joints if one.outcome is RigOutcome.NEVER)
    assert joint.says in shown_texts(bench.ladder.places[4]) and "Never" in shown_texts(bench.ladder.places[4])
    assert joint.says in bench.ladder.places[4].accessibleDescription()
    assert joint.says not in shown_texts(bench.ladder.places[1])


def test_a_part_is_drawn_along_the_chain_and_stays_beside_itself(page: RigPage, bench: Builder) -> None:
    drop(bench.ladder.places[3], "SH-1", came_from=1)
    assert run_of(page) == ("RP-1F", "KS-1", "SH-1", "SH-2", "RP-2F")
    drop(bench.ladder.places[1], "SH-1", came_from=2)
    assert run_of(page) == BEST
    drop(bench.ladder.places[2], "SH-1", came_from=1)
    assert run_of(page) == BEST


def test_what_is_typed_stands_in_the_chain_and_is_one_step(
    qtbot: QtBot, desk: DeskWindow, page: RigPage, bench: Builder
) -> None:
    edit = form_of(page).runs.runs
    edit.setPlainText("RP-1F SH-1")
    edit.setPlainText("RP-1F SH-1 X-9")
    assert run_of(page) == ("RP-1F", "SH-1", "X-9")
    bench.undo()
    assert run_of(page) == BEST


def test_a_second_run_is_begun_and_built(page: RigPage, bench: Builder) -> None:
    bench.run.choose(1)
    bench.run.box.activated.emit(1)
    bench.put("RP-1R")
    assert "joins at least two parts" in bench.told.text()
    bench.put("SH-3")
    assert bench.chain.runs == (BEST, ("RP-1R", "SH-3")) == form_of(page).runs.typed


def test_the_whole_account_is_of_what_was_built_and_keeping_ends_the_steps(
    qtbot: QtBot, desk: DeskWindow, page: RigPage, bench: Builder, beach: Office
) -> None:
    bench.ladder.parts[1].take.emit()
    settle(qtbot, desk)
    built = bench.result
    assert built and page.back() and page.account.result == built and bench.chain.can_undo
    page.account.keep.emit("R-01")
    settle(qtbot, desk)
    settle(qtbot, desk)
    assert not bench.chain.undo()


@settings(max_examples=60, deadline=None)
@given(steps=st.lists(STEPS, max_size=25))
def test_any_sequence_of_steps_leaves_the_typed_runs_equal_to_the_chain(
    qapp: QApplication, steps: list[tuple[str, int, int, str]]
) -> None:
    chain, box = Chain((BEST,)), RunsBox(Look())
    for deed, one, other, tag in steps:
        _do(chain, deed, one, other, tag)
        box.show_runs(chain.runs)
        assert box.typed == chain.runs and all(chain.runs)
        assert not chain.become(box.typed, typed=True)
    while chain.redo():
        pass
    end = chain.runs
    while chain.undo():
        pass
    assert chain.runs == (BEST,)
    while chain.redo():
        pass
    assert chain.runs == end


def _do(chain: Chain, deed: str, one: int, other: int, tag: str) -> None:
    deeds: dict[str, Callable[[], bool]] = {
        "put": lambda: chain.put(Spot(min(one, len(chain.runs)), other), tag),
        "take": lambda: chain.take(Spot(one, other)),
        "move": lambda: chain.move(Spot(0, one), other),
        "undo": chain.undo,
        "redo": chain.redo,
    }
    deeds[deed]()
