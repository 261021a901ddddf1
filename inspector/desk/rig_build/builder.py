"""The bench of a rig: its picture, one run of it as a ladder of parts and places, and the parts to choose among."""

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Picture
from inspector.desk.plain import button, clear, column, said, scroll, short
from inspector.desk.rig_build.chain import Chain, Runs, Spot
from inspector.desk.rig_build.ladder import Ladder
from inspector.desk.rig_build.parts_bench import PartsBench
from inspector.desk.rig_table import outcome_cell
from inspector.drawings.rig_chain import rig_chain
from inspector.drawings.rig_words import bears_text, link_name, part_name, stands_text
from inspector.gear.rig_result import LinkUse, RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import System

_CHAIN_PX = 720
_BENCH_PX = 280


class Builder(QWidget):
    """changed: other runs stand in the chain, put there on the bench."""

    changed = Signal(object)

    def __init__(self, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._system = look, system
        self.chain, self.ladder, self.bench = Chain(), Ladder(look), PartsBench(look)
        self.result: RigResult | None = None  # of the runs that stand
        self._vehicles: tuple[Vehicle, ...] = ()
        self._at = 0  # along the ladder: 0 the first place, 1 the first part, 2 the next place
        self.run = Choice[int](tr("Run of the rig"), [], scans=True)
        self.undo_button = button(tr("Undo"), self.undo, name=tr("Undo the last step, Ctrl+Z"))
        self.redo_button = button(tr("Redo"), self.redo, name=tr("Do it again, Ctrl+Y"))
        self.told = said("")
        self._answer = QVBoxLayout()
        self._lay_out()
        self._connect()
        self._show()

    def take_runs(self, runs: Runs) -> None:
        """The runs were typed, or another rig is shown."""
        if self.chain.become(runs, typed=True):
            self._changed()

    def offer(self, parts: object) -> None:
        """The parts to build of."""
        if isinstance(parts, tuple):
            self.bench.offer(parts)
            self._show()

    def show_result(self, result: RigResult, vehicles: tuple[Vehicle, ...]) -> None:
        """The account of the runs that stand."""
        self.result, self._vehicles = result, vehicles
        self.chain.end_typing()
        self._show()

    def outdate(self) -> None:
        """What was worked out answers no longer to what is asked."""
        if self.result:
            self._changed()

    def tell(self, refusal: Refused | None) -> None:
        """Say why the chain cannot be worked out, or nothing."""
        self.told.setText(f"{refusal.why} {refusal.what_to_do}" if refusal else "")
        self.told.setVisible(refusal is not None)

    def focus_start(self) -> None:
        """The keys go to the chosen rung."""
        self.ladder.rungs[self._at].setFocus()

    def undo(self) -> None:
        """Take the last step back."""
        if self.chain.undo():
            self._hand_on()

    def redo(self) -> None:
        """Do again what was taken back last."""
        if self.chain.redo():
            self._hand_on()

    def put(self, tag: str) -> None:
        """Put a part into the chosen place, or behind the chosen part; the keys go on behind it."""
        place = (self._at + 1) // 2
        if self.chain.put(Spot(self.run.value, place), tag):
            self._at = 2 * place + 2
            self._hand_on(keys=True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Ctrl+Z takes back, Ctrl+Y does again."""
        if event.matches(QKeySequence.StandardKey.Undo):
            self.undo()
        elif event.matches(QKeySequence.StandardKey.Redo) or _is_ctrl_y(event):
            self.redo()
        else:
            super().keyPressEvent(event)

    @property
    def _has_keys(self) -> bool:
        return any(one.hasFocus() for one in self.ladder.rungs)

    def _take(self, at: int) -> None:
        if self.chain.take(Spot(self.run.value, at)):
            self._at = 2 * at
            self._hand_on(keys=True)

    def _shift(self, at: int, by: int) -> None:
        self._move(at, at + by)

    def _move(self, at: int, to: int) -> None:
        if self.chain.move(Spot(self.run.value, at), to):
            self._at = 2 * to + 1
            self._hand_on(keys=True)

    def _drop(self, place: int, tag: str, came_from: int) -> None:
        """A part that was drawn: from the chain it moves, from the bench it goes in."""
        if came_from >= 0:
            self._move(came_from, place if place <= came_from else place - 1)
        else:
            self._at = 2 * place
            self.put(tag)

    def _hand_on(self, *, keys: bool = False) -> None:
        had_keys = keys or self._has_keys
        self._changed()
        if had_keys:
            self.focus_start()
        self.changed.emit(self.chain.runs)

    def _changed(self) -> None:
        """What was worked out answers to other runs."""
        self.result = None
        self._show()

    def _show(self) -> None:
        had_keys = self._has_keys
        self._offer_runs()
        run = self.chain.run(self.run.value)
        self._at = min(self._at, 2 * len(run))
        self.ladder.show_run(run, self._tells(run), self.result)
        self.undo_button.setEnabled(self.chain.can_undo)
        self.redo_button.setEnabled(self.chain.can_redo)
        self._show_answer()
        if had_keys:
            self.focus_start()

    def _show_answer(self) -> None:
        clear(self._answer)
        if self.result is None:
            return
        picture = rig_chain(self.result, self._vehicles, self._system)
        line = QWidget()
        inside = QHBoxLayout(line)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(GRID)
        inside.addWidget(outcome_cell(self.result.outcome, self._look))
        inside.addWidget(said(self.result.headline), 1)
        self._answer.addWidget(line)
        self._answer.addWidget(Picture(picture, self._look, _CHAIN_PX))

    def _tells(self, run: tuple[str, ...]) -> dict[str, tuple[str, str]]:
        """What stands on each part: by the account where there is one, else by the bench."""
        found = {}
        for tag in run:
            link = self._link(tag)
            part = self.bench.part(tag)
            if link:
                bears = tr("bears {force}, stands {strength}", force=bears_text(link, self._system),
                           strength=stands_text(link, self._system))  # fmt: skip
                found[tag.casefold()] = (link_name(link), bears)
            elif part and part.outcome:
                found[tag.casefold()] = (tr("{tag} · {kind}", tag=part.tag, kind=part.name), part.bears)
            else:
                found[tag.casefold()] = (part_name(tag), "")
        return found

    def _link(self, tag: str) -> LinkUse | None:
        links = self.result.links if self.result else ()
        return next((one for one in links if one.tag.casefold() == tag.casefold()), None)

    def _offer_runs(self) -> None:
        chosen = self.run.value if self.run.box.count() else 0
        runs = self.chain.runs
        offered = [(_run_words(number, run), number) for number, run in enumerate(runs)]
        begin = tr("another run, for a bridle or a block") if runs else tr("the first run")
        self.run.offer([*offered, (begin, len(runs))])
        self.run.choose(min(chosen, len(runs)))

    def _chosen(self) -> None:
        self._at = 0
        self._show()

    def _step(self, by: int) -> None:
        self._at = max(0, min(self._at + by, len(self.ladder.rungs) - 1))
        self.focus_start()

    def _reached(self, number: int) -> None:
        self._at = number
        QTimer.singleShot(0, self, self._keep_in_sight)

    def _keep_in_sight(self) -> None:
        if self._at < len(self.ladder.rungs):
            self._area.ensureWidgetVisible(self.ladder.rungs[self._at], 0, 4 * GRID)

    def _connect(self) -> None:
        self.run.box.activated.connect(lambda _: self._chosen())
        self.run.box.moves.connect(lambda _: self.focus_start())
        self.ladder.reached.connect(self._reached)
        self.ladder.step.connect(self._step)
        self.ladder.typed.connect(self.bench.look_for)
        self.ladder.take.connect(self._take)
        self.ladder.shift.connect(self._shift)
        self.ladder.dropped.connect(self._drop)
        self.bench.put.connect(self.put)
        self.bench.back.connect(self.focus_start)
        self.bench.drawn.connect(self.ladder.light)
        self._look.changed.connect(self._resize)

    def _lay_out(self) -> None:
        how = tr(
            "Arrows go along the chain. Type to find a part, Return puts it in; Delete takes out, Ctrl and an arrow "
            "moves. Or draw the parts."
        )
        self.told.setProperty("weight", "bold")
        answer = QWidget()
        answer.setLayout(self._answer)
        self._answer.setContentsMargins(0, 0, 0, 0)
        inside = column([answer, self.told, self.ladder, said(how, Type.SMALL, faint=True)], GRID)
        if layout := inside.layout():
            layout.setContentsMargins(0, 0, GRID, 2 * GRID)
        self._area = scroll(inside, tr("The chain that is built"))
        left = QVBoxLayout()
        left.setSpacing(GRID)
        left.addLayout(self._head())
        left.addWidget(self._area, 1)
        outer = QHBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, GRID)
        outer.setSpacing(2 * GRID)
        outer.addLayout(left, 1)
        outer.addWidget(self.bench)
        self.told.hide()
        self._resize()

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setSpacing(GRID)
        head.addWidget(short(tr("Run"), faint=True))
        head.addWidget(self.run.box, 1)
        head.addWidget(self.undo_button)
        head.addWidget(self.redo_button)
        return head

    def _resize(self) -> None:
        self.bench.setFixedWidth(self._look.px(_BENCH_PX))


def _run_words(number: int, run: tuple[str, ...]) -> str:
    return tr("run {number}: {first} to {last}", number=number + 1, first=part_name(run[0]), last=part_name(run[-1]))


def _is_ctrl_y(event: QKeyEvent) -> bool:
    return event.key() == Qt.Key.Key_Y and event.modifiers() == Qt.KeyboardModifier.ControlModifier
