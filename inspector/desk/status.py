"""The foot of the window: what the register holds, and what is going on."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QProgressBar, QSizePolicy, QStatusBar

from inspector.desk.background import Progress
from inspector.desk.look import GRID
from inspector.desk.plain import button
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr, tr_n

if TYPE_CHECKING:
    from inspector.desk.gear_list.listed import Listed
    from inspector.duties.office import Office

_BETWEEN = "   ·   "


class Status(QStatusBar):
    """Facts on the left, work under way on the right."""

    def __init__(self) -> None:
        super().__init__()
        self.facts, self.busy = QLabel(), QLabel()
        self.facts.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)  # else it widens the window
        self._bar = QProgressBar(minimum=0, maximum=0, textVisible=False)
        self._bar.setFixedWidth(96)
        self._bar.setAccessibleName(tr("Work under way"))
        self.addWidget(self.facts, 1)
        self.addPermanentWidget(self.busy)
        self.addPermanentWidget(self._bar)
        self.stop_button = button(tr("Stop"), self._stop, rank="filter", name=tr("Stop the work under way"))
        self.addPermanentWidget(self.stop_button)
        self._progress: Progress | None = None
        self._parts: list[str] = []
        self.setSizeGripEnabled(False)
        self.tell_busy("")
        self.end_long()

    def tell_facts(self, office: "Office", listed: "Listed") -> None:
        """Say what the register holds. Counts of outcomes only where the whole register was counted."""
        register = listed.register
        parts = [register.club] if register.club else []
        parts.append(tr_n("one piece", "{count} pieces", register.piece_count))
        if listed.is_whole and (held := listed.counts.get(Outcome.HOLD)):
            parts.append(tr("{count} on hold", count=held))
        parts.append(tr("at the desk: {name}", name=office.officer.name))
        parts += [register.login] if register.login else []
        parts.append(tr("rulebook {name}", name=office.rules.hash[:12]))
        parts.append(show_day(office.today))
        self._say(parts)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """As many facts as there is room for; all of them on hover."""
        super().resizeEvent(event)
        self._say(self._parts)

    def changeEvent(self, event: QEvent) -> None:
        """Larger text leaves room for fewer."""
        super().changeEvent(event)
        if event.type() in {QEvent.Type.StyleChange, QEvent.Type.FontChange}:
            QTimer.singleShot(0, self, lambda: self._say(self._parts))

    def _say(self, parts: list[str]) -> None:
        self._parts = parts
        self.facts.ensurePolished()
        room, told = self.width() - 5 * GRID, list(parts)
        while len(told) > 1 and self.facts.fontMetrics().horizontalAdvance(_BETWEEN.join(told)) > room:
            told.pop()
        self.facts.setText(_BETWEEN.join(told))
        self.facts.setToolTip(_BETWEEN.join(parts) if told != parts else "")

    def tell_long(self, progress: Progress) -> None:
        """Show how far work has come, with a way to stop it once it tells of a step."""
        self._progress = progress
        progress.moved.connect(self._moved)

    def end_long(self) -> None:
        """The work has ended."""
        self._progress = None
        self.stop_button.setVisible(False)
        self._bar.setRange(0, 0)

    def _moved(self, done: int, total: int) -> None:
        self.stop_button.setVisible(self._progress is not None)
        self._bar.setRange(0, total)
        self._bar.setValue(done)

    def _stop(self) -> None:
        if self._progress:
            self._progress.stop()
            self.busy.setText(tr("Stopping…"))

    def tell_elsewhere(self) -> None:
        """Say that another window wrote, while something is being written here; what is shown stays as it is."""
        self._say([tr("Another window wrote into this register. Keep or leave what you write; then press F5.")])

    def tell_busy(self, says: str) -> None:
        """Say what is going on; empty for nothing."""
        self.busy.setText(says)
        self.busy.setVisible(bool(says))
        self._bar.setVisible(bool(says))
