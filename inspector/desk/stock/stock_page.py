"""The place of the counts: the list of them, the one that goes on, and what a close writes."""

from typing import Any

from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds.counting import begin_counting
from inspector.desk.form.deed import Deed
from inspector.desk.keys import search_text
from inspector.desk.latest import Latest
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import button, lay_in, scroll
from inspector.desk.stock.closing import would_write_part, written_part
from inspector.desk.stock.counting import Counting
from inspector.desk.stock.counts_list import counts_part
from inspector.duties.close_count import Closed, close_count, what_closing_writes
from inspector.duties.office import Office
from inspector.duties.take_stock import CountState, count_states
from inspector.duties.tell_count import CountTold, closed_told, count_told, places_to_count
from inspector.language import tr

_Written = tuple[CountTold, Closed]


def _opened(office: Office, ref: str) -> tuple[CountTold, Closed | None]:
    """A count, and what its close wrote if it is closed."""
    told = count_told(office, ref)
    return told, closed_told(office, ref) if told.closed else None


def _would_write(office: Office, ref: str) -> _Written:
    return count_told(office, ref), what_closing_writes(office, ref)


def _close(office: Office, ref: str) -> _Written:
    closed = close_count(office, ref)
    return count_told(office, ref), closed


class StockPage(Place):
    """Begun with the reference of a count it shows that one, else the list of them."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.states: tuple[CountState, ...] | None = None
        self._awaits_new = False
        self._latest = Latest(background, notice)
        self.counting = Counting(office, background, notice, look)
        self._list, self._closing = scroll(QWidget(), tr("Counts")), scroll(QWidget(), tr("The close of a count"))
        self._is_preview = False
        self._stack = QStackedWidget()
        for one in (self._list, self.counting, self._closing):
            self._stack.addWidget(one)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(self._stack, 1)
        self.counting.opened.connect(self.opened)
        self.counting.asks.connect(self._ask)
        self.counting.close_asked.connect(self.preview_close)
        self.counting.leave.connect(self.begin)

    @property
    def is_counting(self) -> bool:
        """Whether a count that goes on is shown."""
        return self._stack.currentWidget() is self.counting

    def begin(self, what: Any = None) -> None:
        """Show a count by its reference, else the list."""
        if what:
            self.open_count(str(what))
        else:
            self._latest.read(count_states, self._office, done=self._show_list)

    def come_back(self, *, changed: bool) -> None:
        """From a record or a form: the count goes on; one that was begun is opened."""
        if self.is_counting:
            self.counting.read_again()
            self.focus_start()
        elif self._stack.currentWidget() is self._closing:
            self.focus_start()
        else:
            self._awaits_new = changed
            self.begin()

    def back(self) -> bool:
        """From the question whether to close to the count; from a count to the list."""
        if self._stack.currentWidget() is self._list:
            return False
        if self._is_preview and self.counting.told:
            self._to_counting()
        else:
            self.begin()
        return True

    def focus_start(self) -> None:
        """The scan line has the keys while a count goes on."""
        if self.is_counting:
            self.counting.focus_start()
        elif page := self._stack.currentWidget():
            page.setFocus()

    def open_count(self, ref: str) -> None:
        """Show a count: an open one goes on, of a closed one what it wrote."""
        self._latest.read(_opened, self._office, ref, done=self._show_count)

    def begin_count(self) -> None:
        """Ask what is to be counted."""
        self._latest.read(places_to_count, self._office, done=lambda places: self._ask(begin_counting(places), places))

    def preview_close(self, ref: str) -> None:
        """Show what closing would write, and ask."""
        self._latest.read(_would_write, self._office, ref, done=self._show_preview)

    def close_count(self, ref: str) -> None:
        """Close a count."""
        self._background.run(
            _close, self._office, ref, done=self._closed, failed=self._notice.refuse, says=tr("Saving…")
        )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """While a count goes on, a letter belongs to its scan line."""
        if self.is_counting and (text := search_text(event)):
            self.counting.scan.begin(text)
        else:
            super().keyPressEvent(event)

    def _ask(self, deed: Deed[Any], about: object) -> None:
        key = about.ref if isinstance(about, CountTold) else ""
        self.go.emit(Go(DEED, (deed, about, key)))

    def _show_list(self, states: tuple[CountState, ...]) -> None:
        known = {one.ref for one in self.states} if self.states is not None else set()
        new = [one.ref for one in states if one.ref not in known]
        self.states, awaits_new, self._awaits_new = states, self._awaits_new, False
        self._is_preview = False
        page = counts_part(states, lambda one: self.open_count(one.ref), self.begin_count)
        self._set(self._list, page)
        if awaits_new and new:
            self.open_count(new[-1])

    def _show_count(self, found: tuple[CountTold, Closed | None]) -> None:
        told, closed = found
        if closed:
            self._show_written((told, closed))
            return
        self.counting.show_count(told)
        self._to_counting()

    def _to_counting(self) -> None:
        self._is_preview = False
        self._stack.setCurrentWidget(self.counting)
        self.focus_start()

    def _show_preview(self, found: _Written) -> None:
        told = found[1]
        stay = button(tr("Go on counting"), self._to_counting, rank="first")
        close = button(tr("Close the count"), lambda: self.close_count(told.ref))
        self._set(self._closing, would_write_part(*found, self._look, self.opened.emit, stay, close))
        self._is_preview = True
        stay.setFocus()

    def _closed(self, found: _Written) -> None:
        self._show_written(found)
        self._notice.tell(tr("The count {ref} is closed.", ref=found[1].ref))

    def _show_written(self, found: _Written) -> None:
        self._is_preview = False
        self._set(self._closing, written_part(*found, self._look, self.opened.emit))
        self.focus_start()

    def _set(self, area: QScrollArea, page: QWidget) -> None:
        lay_in(area, page)
        self._stack.setCurrentWidget(area)
