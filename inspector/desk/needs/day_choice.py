"""A day that is chosen by how far it is, or written down."""

from collections.abc import Sequence
from datetime import date, timedelta

from PySide6.QtCore import QDate, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from inspector.desk.choice import Choice, day_box
from inspector.desk.look import GRID
from inspector.language import show_day, tr


class DayChoice(QWidget):
    """No day, one so many days ahead, or another. changed: another day was chosen or written."""

    changed = Signal()

    def __init__(self, name: str, today: date, ahead: Sequence[tuple[str, int]], none: str = "") -> None:
        super().__init__()
        days = [(tr("{words}, {day}", words=word, day=show_day(_after(today, count))), count) for word, count in ahead]
        offered: list[tuple[str, int | None]] = [(none, None)] if none else []
        self._own = -1
        self._today = today
        self.choice: Choice[int | None] = Choice(name, [*offered, *days, (tr("another day"), self._own)], scans=True)
        self.day = day_box(tr("{name}, the day", name=name), _after(today, max(count for _, count in ahead)))
        self.day.setMinimumDate(QDate(today.year, today.month, today.day))
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(self.choice.box, 1)
        layout.addWidget(self.day)
        self.day.hide()
        self.choice.box.currentIndexChanged.connect(self._turn)
        self.day.dateChanged.connect(lambda _: self.changed.emit())

    @property
    def value(self) -> date | None:
        """The day; None where none is named."""
        count = self.choice.value
        if count is None:
            return None
        if count == self._own:
            own = self.day.date()
            return date(own.year(), own.month(), own.day())
        return _after(self._today, count)

    def _turn(self) -> None:
        self.day.setVisible(self.choice.value == self._own)
        self.changed.emit()


def _after(today: date, days: int) -> date:
    return today + timedelta(days=days)
