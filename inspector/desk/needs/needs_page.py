"""The window's first page, "What needs me": what an officer sees in the evening, worst first, each line a way."""

from typing import Any

from PySide6.QtCore import Signal, SignalInstance
from PySide6.QtWidgets import QAbstractButton, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.columns import Columns
from inspector.desk.look import GRID, Look, Type
from inspector.desk.needs import parts
from inspector.desk.needs.ends_part import ends_part
from inspector.desk.needs.growing import Growing, Step, empty_column
from inspector.desk.notice import Notice
from inspector.desk.place import Place
from inspector.desk.plain import button, column, said, scroll
from inspector.desk.record_parts import cautions_part
from inspector.duties.office import Office
from inspector.duties.what_needs_me import what_needs_me
from inspector.gear.needs import Needs
from inspector.language import show_day, tr
from inspector.refused import Refused


class NeedsPage(Place):
    """notice: a tag whose notice to print; notices: several tags.

    It leads to the places trip, incident, count (with a reference), person (with a name), rulebook, backup, due, people
    and book_in.
    """

    notice = Signal(str)
    notices = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self._ways = parts.Ways(
            look, lambda tag: self._leave_by(self.opened, tag), lambda place: self._leave_by(self.go, place),
            lambda tag: self._leave_by(self.notice, tag), lambda tags: self._leave_by(self.notices, tags),
        )  # fmt: skip
        self.needs: Needs | None = None
        self._grown: Growing | None = None
        self._asked = 0
        self._last_pressed = ""
        self._area = scroll(_one_line(tr("Looking at what needs you…")), tr("What needs me"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        layout.addWidget(self._area)

    def begin(self, what: Any = None) -> None:
        """Read anew and show it; what was shown stays until then."""
        self._asked += 1
        number = self._asked
        self._background.run(
            what_needs_me, self._office, done=lambda found: self._show(number, found),
            failed=lambda why: self._refuse(number, why), says=tr("Looking at what needs you…"),
        )  # fmt: skip

    def focus_start(self) -> None:
        """The keys go to the line pressed last, else to the first one."""
        buttons = [one for one in self._area.findChildren(QAbstractButton) if one.isVisible()]
        again = (one for one in buttons if one.accessibleName() == self._last_pressed)
        if wanted := next(again, next(iter(buttons), None)):
            wanted.setFocus()

    def _refuse(self, number: int, refusal: Refused) -> None:
        """What was shown before stays; it says its day."""
        if number != self._asked:
            return
        if self.needs is None:
            again = button(tr("Look again"), self.begin, rank="first")
            page = column([said(refusal.why, Type.HEAD), said(refusal.what_to_do), again])
            page.setObjectName("page")
            self._area.setWidget(page)
        self._notice.refuse(refusal)

    def _show(self, number: int, needs: Needs) -> None:
        """An answer to an older question is dropped; where nothing changed, the page stays as it is."""
        if number != self._asked:
            return
        if needs == self.needs and self.is_whole:
            self._settle(self._has_keys(), self._area.verticalScrollBar().value())
            return
        self.needs = needs
        had_keys, at = self._has_keys(), self._area.verticalScrollBar().value()
        self._grown = made = Growing()
        made.grown.connect(lambda: self._settle(had_keys, at))
        self._area.setWidget(made)
        made.grow(self._steps(made, needs))

    @property
    def is_whole(self) -> bool:
        """Whether every part of what was read stands on the page."""
        return self._grown is not None and self._grown.is_grown

    def _has_keys(self) -> bool:
        """Whether the keys are here, or nowhere else as the page is opened."""
        focused: QWidget | None = self.window().focusWidget()
        return not focused or self.isAncestorOf(focused)

    def _settle(self, had_keys: bool, at: int) -> None:
        """Where one was before it was read anew."""
        if had_keys and self.isVisible():
            self.focus_start()
        self._area.verticalScrollBar().setValue(at)

    def _leave_by(self, way: SignalInstance, to: object) -> None:
        """Remember the line that is pressed, to which the keys come back."""
        focused: QWidget | None = self.window().focusWidget()
        if focused:
            self._last_pressed = focused.accessibleName()
        way.emit(to)

    def _steps(self, made: Growing, needs: Needs) -> list[Step]:
        """The parts in the order in which they are made: what is seen first comes first."""
        ways, top = self._ways, made.column
        if not needs.piece_count:
            return [(top, lambda: [self._head(needs), *parts.first_steps(ways), parts.backup_part(needs, ways)])]
        waits, aside = empty_column(3 * GRID), empty_column(3 * GRID)
        both = Columns(_holder(waits), _holder(aside), ways.look)
        return [
            (top, lambda: [self._head(needs), *parts.rulebook_part(needs, ways)]),
            (top, lambda: parts.quiet_part(needs) or [parts.glance_part(needs)]),
            (top, lambda: [*parts.trip_part(needs, ways), both]),
            (waits, lambda: parts.held_part(needs, ways)),
            (
                aside,
                lambda: [
                    *parts.incidents_part(needs, ways),
                    *parts.recalls_part(needs, ways),
                    *parts.late_part(needs, ways),
                ],
            ),
            (aside, lambda: parts.recalls_part(needs, ways)),
            (aside, lambda: [parts.backup_part(needs, ways)]),
            (aside, lambda: parts.retired_part(needs, ways)),
            *((waits, make) for make in parts.work_steps(needs, ways)),
            (aside, lambda: parts.counts_part(needs, ways)),
            (top, lambda: [ends_part(needs, ways)]),
            (top, lambda: [cautions_part(needs.cautions)]),
        ]

    def _head(self, needs: Needs) -> QWidget:
        """Whose register on which day."""
        line = " · ".join(filter(None, (needs.club, show_day(needs.on))))
        return column([said(tr("What needs me"), Type.DISPLAY), said(line, faint=True)], 0)


def _one_line(text: str) -> QWidget:
    return column([said(text, faint=True)])


def _holder(layout: QVBoxLayout) -> QWidget:
    made = QWidget()
    made.setLayout(layout)
    return made
