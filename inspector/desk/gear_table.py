"""The page of the gear list: find as you type, choose an outcome and an order, open a piece."""

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.choice import Choice
from inspector.desk.gear_model import GearModel
from inspector.desk.gear_view import GearView
from inspector.desk.look import GRID, Look, Type
from inspector.desk.opened import Listed, Wanted, listed
from inspector.desk.outcome_filter import OutcomeFilter
from inspector.desk.plain import said
from inspector.duties.office import Office
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n

_PAUSE_MS = 150


class GearTable(QWidget):
    """opened: a tag to show. typed: a letter for the search. refused: the list could not be read. shown: new rows."""

    opened = Signal(str)
    typed = Signal(str)
    refused = Signal(object)
    shown = Signal(object)

    def __init__(self, office: Office, background: Background, look: Look) -> None:
        super().__init__()
        self._office, self._background = office, background
        self.setObjectName("page")
        self.model = GearModel(office.today, self)
        self.view = GearView(self.model, look)
        self.filter = OutcomeFilter(look)
        self.order = _orders()
        self._search, self._keep_tag = "", ""
        self._empty, self._next, self._foot = said("", Type.HEAD), said(""), said("", faint=True)
        self._lay_out()
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self.refresh)
        self._connect()

    @property
    def wanted(self) -> Wanted:
        """What is asked for now."""
        return Wanted(self._search, self.filter.outcome, self.order.value)

    def search(self, text: str) -> None:
        """Look for these words, once the typing pauses."""
        self._search = text.strip()
        self._pause.start()

    def refresh(self) -> None:
        """Read the list again."""
        self._pause.stop()
        self._background.run(listed, self._office, self.wanted, done=self._show, failed=self.refused.emit)

    def show_all(self) -> None:
        """Show every piece again."""
        self.filter.reset()

    def enter(self, tag: str = "") -> None:
        """Go to the rows; tag: the piece to put the bar on."""
        self.view.choose(self.model.row_of(tag or self._current_tag()))
        self.view.setFocus()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.filter, 1)
        head.addWidget(self.order.box)
        self._rows = QStackedLayout()
        self._rows.addWidget(self.view)
        self._rows.addWidget(self._empty_page())
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        layout.addLayout(head)
        layout.addLayout(self._rows, 1)
        layout.addWidget(self._foot)

    def _empty_page(self) -> QWidget:
        page = QWidget()
        inside = QVBoxLayout(page)
        inside.setContentsMargins(GRID, 6 * GRID, 6 * GRID, 0)
        inside.addWidget(self._empty)
        inside.addWidget(self._next)
        inside.addStretch(1)
        return page

    def _connect(self) -> None:
        self.view.opened.connect(self.opened)
        self.view.typed.connect(self.typed)
        self.view.selectionModel().currentRowChanged.connect(lambda *_: self._tell_current())
        self.filter.chosen.connect(lambda _outcome: self.refresh())
        self.order.box.currentIndexChanged.connect(lambda _index: self.refresh())

    def _show(self, found: Listed) -> None:
        if found.wanted != self.wanted:
            return  # another search was begun meanwhile
        self._keep_tag = self._current_tag()
        self.model.show_rows(found.rows, self._office.today)
        self.filter.count(found.counts)
        why, what_to_do = _nothing(found)
        self._empty.setText(why)
        self._next.setText(what_to_do)
        self._rows.setCurrentIndex(0 if found.rows else 1)
        self.view.choose(self.model.row_of(self._keep_tag))
        self._tell_current()
        self.shown.emit(found)

    def _current_tag(self) -> str:
        row = self.view.currentIndex().row()
        return self.model.rows[row].tag if 0 <= row < len(self.model.rows) else self._keep_tag

    def _tell_current(self) -> None:
        """The reason behind the chosen row's verdict, below the list."""
        row = self.view.currentIndex().row()
        told = 0 <= row < len(self.model.rows)
        self._foot.setText(f"{self.model.rows[row].tag}   {self.model.rows[row].headline}" if told else "")


def _orders() -> Choice[str]:
    words = [(tr("Next due first"), "due"), (tr("By tag"), "tag"), (tr("Worst first"), "worst")]
    return Choice(tr("Order of the list"), words)


def _nothing(found: Listed) -> tuple[str, str]:
    """Why there is no row to show, and what to do."""
    if not found.register.piece_count:
        return tr("The register holds no gear yet."), tr(
            "Book the first piece in with the command “inspector book”. Then press F5, and it stands here."
        )
    if found.wanted.outcome and found.counts[None]:
        word = {
            Outcome.FIT: tr("No piece here is fit."),
            Outcome.DERATE: tr("No piece here is derated."),
            Outcome.HOLD: tr("No piece here is on hold."),
            Outcome.RETIRE: tr("No piece here is retired."),
        }[found.wanted.outcome]
        return word, tr("Choose “All” to see the others.")
    everything = tr_n("the one piece", "all {count} pieces", found.register.piece_count)
    why = tr("No piece answers to “{search}”.", search=found.wanted.search)
    return why, tr("Look at the label again, or press Esc to see {everything}.", everything=everything)
