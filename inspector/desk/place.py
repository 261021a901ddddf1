"""What every page of the window has in common: it is begun, may have steps of its own and something unsaved."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from PySide6.QtCore import Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from inspector.desk.keys import search_text
from inspector.desk.look import Look

if TYPE_CHECKING:
    from inspector.desk.background import Background
    from inspector.desk.notice import Notice
    from inspector.duties.office import Office


class Go(Struct, frozen=True):
    """Where to go: the key of a place, and what to show there; for a deed what it is about."""

    place: str
    what: object = None


class Unsaved(Struct, frozen=True):
    """What would be lost by leaving: head and text of the question, the word and the deed that keep it, the deed that
    throws it away and then goes on, and its word."""

    head: str
    text: str
    keep_word: str
    keep: Callable[[], object]
    drop: Callable[[Callable[[], object]], object]
    drop_word: str


class Place(QWidget):
    """A page. opened: a tag to show. go: another place. leave: back to where it was opened from.

    typed: a letter or figure pressed where nothing is typed; it begins a search.
    """

    opened = Signal(str)
    go = Signal(object)
    leave = Signal()
    typed = Signal(str)

    def __init__(self, office: "Office", background: "Background", notice: "Notice", look: Look) -> None:
        super().__init__()
        self._office, self._background, self._notice, self._look = office, background, notice, look
        self.setObjectName("page")

    def begin(self, what: Any = None) -> None:
        """Show it anew; what: what to show first."""

    def back(self) -> bool:
        """One step back within the page; False where there is none to take."""
        return False

    def come_back(self, *, changed: bool) -> None:
        """Shown again, from a piece or a form that was opened here; changed: the register says something else now."""
        self.begin()
        self.focus_start()

    def focus_start(self) -> None:
        """Where the keys go when the page is shown."""
        self.setFocus()

    @property
    def can_save(self) -> bool:
        """Whether there is something to be kept by Ctrl+S."""
        return False

    def save(self) -> None:
        """Keep what is written."""

    def stop(self) -> None:
        """End what is under way, since the page is left."""

    @property
    def unsaved(self) -> Unsaved | None:
        """What would be lost by leaving now."""
        return None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A letter or figure begins a search."""
        if text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)
