"""Who can bring out whom: how far the sums have come, then a table by strap and one by winch, and the chosen pair."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QProgressBar, QPushButton, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pair_model import PairModel, pair_title, pair_words
from inspector.desk.pair_view import PairView
from inspector.desk.pen import Mark
from inspector.desk.plain import button, clear, column, hairline, said
from inspector.desk.record_parts import beside
from inspector.drawings.rig_words import part_name
from inspector.duties.work_rigs import TripPairs
from inspector.gear.rig import Method
from inspector.gear.rig_result import PairLine
from inspector.gear.trip import Trip
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import System

_MARK_PX = 32


class PairPart(QWidget):
    """opened: the rig of a pair is asked for. again, stop: begin and end the work. typed: a letter for the search.

    told: the keys chose another pair, which is told below the tables.
    """

    opened = Signal(object)
    again = Signal()
    stop = Signal()
    typed = Signal(str)
    told = Signal()

    def __init__(self, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._system = look, system
        self.views: list[PairView] = []
        self._waits: tuple[QLabel, QProgressBar] | None = None
        self.chosen = QWidget()
        self._chosen = QVBoxLayout(self.chosen)
        self._inside = QVBoxLayout(self)
        self._inside.setContentsMargins(0, 0, 0, 0)
        self._inside.setSpacing(GRID)

    @property
    def focused(self) -> PairView | None:
        """The table that the keys go to."""
        return next((one for one in self.views if one.hasFocus()), None)

    def wait(self) -> None:
        """Say that the pairs are being worked out."""
        self._begin()
        told, bar = said(tr("Working out which vehicles can bring out which…")), QProgressBar()
        bar.setTextVisible(False)
        bar.setRange(0, 0)
        bar.setAccessibleName(tr("Pairs worked out"))
        self._waits = told, bar
        self._add(told, bar, button(tr("Stop"), self.stop.emit, name=tr("Stop working out the pairs")))

    def tell_progress(self, done: int, total: int) -> None:
        """Say how many of how many are done."""
        if self._waits:
            told, bar = self._waits
            bar.setRange(0, total)
            bar.setValue(done)
            told.setText(tr("{done} of {total} pairs worked out…", done=done, total=total))

    def refuse(self, refusal: Refused) -> None:
        """Say why there are none, with a way to begin again."""
        self._begin()
        self._add(said(refusal.why), button(tr("Work them out"), self.again.emit))

    def lack_vehicles(self, trip: Trip) -> None:
        """Say that there is nothing to pair."""
        self._begin()
        what = tr(
            "Write who drives along with the command “inspector trip change {ref} --add-vehicle …”.", ref=trip.ref
        )
        self._add(said(tr("The trip has fewer than two vehicles: nobody there can pull anybody.")), said(what))

    def show_pairs(self, found: TripPairs) -> None:
        """Show every pair, the bar on the first one."""
        self._begin()
        self._add(said(tr("Down: who pulls. Across: who is stuck. The best rig of the kit, for that day."), faint=True))
        by = {Method.KINETIC: tr("By strap"), Method.WINCH: tr("By winch")}
        for method, title in by.items():
            lines = [one for one in found.lines if one.method == method]
            if lines:
                self._table(lines, found.trip, title)
        if not any(one.method == Method.WINCH for one in found.lines):
            self._add(said(tr("By winch: no vehicle of the trip carries one."), faint=True))
        self.chosen = chosen = QWidget()
        self._chosen = QVBoxLayout(chosen)
        self._chosen.setContentsMargins(0, 0, 0, 0)
        self._add(chosen)
        self.views[0].choose(next(one for one in found.lines if one.method == Method.KINETIC))

    def _begin(self) -> None:
        self.views, self._waits = [], None
        clear(self._inside)
        self._add(hairline(), said(tr("Who can bring out whom"), Type.HEAD))

    def _add(self, *parts: QWidget) -> None:
        left = Qt.AlignmentFlag.AlignLeft
        for part in parts:
            self._inside.addWidget(part, 0, left if isinstance(part, QPushButton) else Qt.AlignmentFlag(0))

    def _table(self, lines: list[PairLine], trip: Trip, title: str) -> None:
        model = PairModel(lines, trip.vehicles, self._system, self)
        view = PairView(model, tr("{title}: who pulls whom", title=title), self._look, self._system)
        model.setParent(view)
        view.chosen.connect(lambda line: self._tell(line, view))
        view.nobody.connect(lambda tag: self._tell_nobody(tag, view))
        view.opened.connect(self.opened)
        view.typed.connect(self.typed)
        self.views.append(view)
        self._add(said(title, bold=True), view)

    def _tell(self, line: PairLine, view: PairView) -> None:
        """The chosen pair in words."""
        self._turn_to(view)
        texts: list[QWidget] = [said(f"{pair_title(line)}: {pair_words(line, self._system)}", bold=True)]
        texts.append(said(line.says))
        texts += [said(" – ".join(part_name(tag) for tag in run), faint=True) for run in line.runs]
        text = column(texts, GRID // 2)
        self._chosen.addWidget(beside(Mark(line.outcome, self._look, _MARK_PX), text) if line.outcome else text)
        opens = button(tr("Open this rig"), lambda: self.opened.emit(line))
        self._chosen.addWidget(opens, 0, Qt.AlignmentFlag.AlignLeft)
        if view.hasFocus():
            self.told.emit()

    def _tell_nobody(self, tag: str, view: PairView) -> None:
        self._turn_to(view)
        self._chosen.addWidget(said(tr("{tag} does not pull itself. Choose another place.", tag=tag), faint=True))

    def _turn_to(self, view: PairView) -> None:
        """Only one table holds the bar; what was told of another pair goes."""
        for other in self.views:
            if other is not view:
                other.clearSelection()
        clear(self._chosen)
