"""What the verdict would be, beside the form that is being filled in. Nothing is kept of it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import clear, fill, hairline, said, scroll
from inspector.desk.record_parts import reason_part, verdict_part
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr
from inspector.refused import Refused

_MOST_REASONS = 6


class PreviewPane(QWidget):
    """The verdict as it would be with what is typed so far."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.judged: Judged | None = None
        self._inside = QWidget()
        self._parts = QVBoxLayout(self._inside)
        self._parts.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        self._area: QScrollArea = scroll(self._inside, tr("The verdict as it would be"))
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the keys belong to the form
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._area)

    @property
    def text(self) -> str:
        """What it says first."""
        return self._inside.accessibleName()

    def wait(self, text: str) -> None:
        """Say that there is no verdict yet, and why."""
        self.judged = None
        self._show(text, [said(tr("The verdict as it would be"), faint=True), said(text)])

    def refuse(self, refusal: Refused) -> None:
        """Say what stands in the way of a verdict."""
        self.wait(f"{refusal.why} {refusal.what_to_do}")

    def show_verdict(self, judged: Judged, left_out: str) -> None:
        """Show the verdict; left_out: what it does not reckon with, in words. Without that nothing says it is fit."""
        self.judged = judged
        if left_out and judged.verdict.outcome in {Outcome.FIT, Outcome.DERATE}:
            waits = tr("Whether it may be used is told once that is clear.")
            head = said(tr("The verdict as it would be"), faint=True)
            self._show(left_out, [head, said(left_out, Type.HEAD), said(waits)])
            return
        due = judged.verdict.next_due if judged.verdict.outcome is not Outcome.RETIRE else None
        parts: list[QWidget] = [said(tr("The verdict as it would be"), faint=True)]
        parts += [said(left_out, bold=True)] if left_out else []
        parts.append(verdict_part(judged, self._look, mark_px=48, headline=not judged.explanation.reasons))
        parts += [said(tr("Next due: {day}", day=show_day(due)))] if due else []
        for reason in judged.explanation.reasons[:_MOST_REASONS]:
            parts += [hairline(), reason_part(reason, self._look)]
        if more := judged.explanation.reasons[_MOST_REASONS:]:
            parts.append(said(tr("and {count} more", count=len(more)), Type.SMALL, faint=True))
        self._show(judged.explanation.headline, parts)

    def _show(self, name: str, parts: list[QWidget]) -> None:
        place = self._area.verticalScrollBar().value()
        clear(self._parts)
        fill(self._parts, parts, GRID)
        self._parts.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        self._inside.setAccessibleName(name)
        self._area.verticalScrollBar().setValue(place)
