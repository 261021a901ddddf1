"""The page of the gear list: find as you type, narrow and sort it, open a piece, or do something with several."""

from functools import partial

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.gear_list.chosen_bar import ChosenBar
from inspector.desk.gear_list.filters import GearFilters
from inspector.desk.gear_list.listed import PAGE, Begun, Listed, begun, copied, listed
from inspector.desk.gear_list.sorting import Sorting
from inspector.desk.gear_list.telling import first_words, narrowing, nothing_words, shown_words
from inspector.desk.gear_model import GearModel
from inspector.desk.gear_view import GearView
from inspector.desk.keys import search_text
from inspector.desk.look import GRID, Look, Type
from inspector.desk.outcome_filter import OutcomeFilter
from inspector.desk.plain import button, said
from inspector.duties.gear_list import rows_of
from inspector.duties.office import Office
from inspector.gear.lists import GearRow, Wanted
from inspector.language import tr
from inspector.refused import Refused

_PAUSE_MS = 150
_LOW_PX = 400
_MOST_KEPT = 500  # chosen rows that stay chosen when the list is read again


class GearTable(QWidget):
    """opened: a tag to show. typed: a letter for the search. refused: the list could not be read. shown: new rows.

    asked: a deed's key and the tags of the chosen pieces. columns_chosen: the keys of the columns, to be kept.
    cleared: everything is wanted, so that the search line is to be emptied.
    """

    opened = Signal(str)
    typed = Signal(str)
    refused = Signal(object)
    shown = Signal(object)
    asked = Signal(str, object)
    columns_chosen = Signal(object)
    cleared = Signal()

    def __init__(self, office: Office, background: Background, look: Look) -> None:
        super().__init__()
        self._office, self._background, self._look = office, background, look
        self.setObjectName("page")
        self.model = GearModel(office.today, self)
        self.view = GearView(self.model, look)
        self.filter, self.filters, self.sorting = OutcomeFilter(look), GearFilters(), Sorting()
        self.order = self.sorting.order
        self.bar = ChosenBar()
        self._search, self._keep_tag = "", ""
        self._is_reading, self._again, self._with_choices, self._is_new = False, False, True, True
        self._empty, self._next, self._foot = said("", Type.HEAD), said(""), said("", faint=True)
        self._told = said("")
        self.clear_button = button(tr("Show all"), self._clear, name=tr("Show every piece again"))
        _keep_room(self.clear_button)
        self._lay_out()
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self._read)
        self._connect()

    @property
    def wanted(self) -> Wanted:
        """What is asked for now."""
        order, falling = self.sorting.order.value, self.sorting.falling
        return self.filters.narrowed(Wanted(self._search, self.filter.outcome, order=order, falling=falling))

    @property
    def columns(self) -> tuple[str, ...]:
        """The keys of the columns chosen."""
        return self.sorting.columns

    def choose_columns(self, keys: tuple[str, ...]) -> None:
        """Show these columns, as they were chosen once; a key that is none is passed over."""
        self.sorting.choose_columns(keys)
        self.view.show_columns(keys)

    def search(self, text: str) -> None:
        """Look for these words, once the typing pauses."""
        self._search = text.strip()
        self._pause.start()

    def refresh(self) -> None:
        """Read the list again, and what it may be narrowed to."""
        self._with_choices = True
        self._read()

    def show_all(self) -> None:
        """Show every piece again."""
        self.filters.reset()
        self.filter.reset()

    def enter(self, tag: str = "") -> None:
        """Go to the rows; tag: the piece to put the bar on."""
        self.view.choose(self.model.row_of(tag or self._current_tag()))
        self.view.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A letter that no control here takes goes to the search."""
        if text := search_text(event):
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def _lay_out(self) -> None:
        self._rows = QStackedLayout()
        self._rows.addWidget(self.view)
        self._rows.addWidget(self._empty_page())
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        layout.addLayout(_row(self.filter, self.sorting))
        layout.addWidget(self.filters)
        layout.addLayout(_row(self._told, self.clear_button))
        layout.addLayout(self._rows, 1)
        layout.addWidget(self._foot)
        layout.addWidget(self.bar)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Where the window is low, the room goes to the lines of the list."""
        super().resizeEvent(event)
        self._foot.setVisible(self.height() > self._look.px(_LOW_PX))

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
        self.view.head_clicked.connect(self.sorting.by_column)
        self.view.copies.connect(self._copy)
        self.view.selectionModel().currentRowChanged.connect(lambda *_: self._tell_current())
        self.view.selectionModel().selectionChanged.connect(lambda *_: self._tell_chosen())
        self.model.needed.connect(self._fetch)
        self.model.dataChanged.connect(lambda *_: self._tell_current())
        self.filter.chosen.connect(lambda _outcome: self._read())
        self.filters.chosen.connect(self._read)
        self.sorting.changed.connect(self._read)
        self.sorting.columns_chosen.connect(self._columns_chosen)
        self.bar.asked.connect(lambda deed: self.asked.emit(deed, self.view.chosen))

    def _read(self) -> None:
        """Ask the worker; while it is at it, only the last question waits."""
        self._pause.stop()
        if self._is_reading:
            self._again = True
            return
        self._is_reading = True
        given = (self._office, self.wanted, self.view.sight, self._with_choices)
        self._background.run(begun if self._is_new else listed, *given, done=self._came, failed=self._not_read)
        self._is_new = False

    def _came(self, found: Listed | Begun) -> None:
        if isinstance(found, Begun):
            self._again = True
            self._show_first(found)
        self._read_on()
        if isinstance(found, Listed):
            self._show(found)

    def _show_first(self, found: Begun) -> None:
        if found.wanted != self.wanted:
            return
        sight = self.view.sight
        self.model.tell_order(found.wanted.order, found.wanted.falling)
        self.model.show_list(tuple(one.tag for one in found.rows), {0: found.rows}, self._office.today)
        self._told.setText(first_words(len(found.rows)))
        self.clear_button.setVisible(False)
        self.view.stand(sight)
        self._tell_current()
        self._tell_chosen()

    def _not_read(self, refusal: Refused) -> None:
        self._read_on()
        self.refused.emit(refusal)

    def _read_on(self) -> None:
        self._is_reading = False
        if self._again:
            self._again = False
            self._read()

    def _show(self, found: Listed) -> None:
        if found.wanted != self.wanted:
            return  # another search was begun meanwhile
        if found.choices:
            self.filters.offer(found.choices)
            self._with_choices = False
        self._keep_tag, sight = self._current_tag(), self.view.sight
        chosen = self.view.chosen if 1 < self.view.chosen_count <= _MOST_KEPT else ()
        self.model.tell_order(found.wanted.order, found.wanted.falling)
        self.model.show_list(found.tags, found.pages, self._office.today)
        self._tell(found)
        self.view.stand(sight)
        self.view.choose_also(self.model.rows_of(chosen))
        self._tell_current()
        self._tell_chosen()
        self.shown.emit(found)

    def _tell(self, found: Listed) -> None:
        """How many of how many, by what; and what to do where there is none."""
        kind_name = self.filters.kind.box.currentText()
        self.filter.count(found.counts)
        self._told.setText(shown_words(found, kind_name))
        self.clear_button.setVisible(bool(narrowing(found.wanted, kind_name)))
        why, what_to_do = nothing_words(found, kind_name)
        self._empty.setText(why)
        self._next.setText(what_to_do)
        self._rows.setCurrentIndex(0 if found.tags else 1)
        self.bar.setVisible(bool(found.tags))

    def _fetch(self, pages: tuple[int, ...]) -> None:
        """Fetch rows that are looked at; what was listed anew meanwhile wants them no more."""
        tags = self.model.tags
        for number in pages:
            some = tags[number * PAGE : (number + 1) * PAGE]
            done = partial(self._fetched, tags, number)
            self._background.run(rows_of, self._office, some, done=done, failed=self._not_fetched)

    def _fetched(self, tags: tuple[str, ...], number: int, rows: tuple[GearRow, ...]) -> None:
        if tags is self.model.tags:
            self.model.take(number, rows)

    def _not_fetched(self, refusal: Refused) -> None:
        self.model.forget_asked()
        self.refused.emit(refusal)

    def _copy(self) -> None:
        given = (self._office, self.view.chosen, self.columns)
        copy = QGuiApplication.clipboard().setText
        self._background.run(copied, *given, done=copy, failed=self.refused.emit, says=tr("Copying…"))

    def _columns_chosen(self, keys: tuple[str, ...]) -> None:
        self.view.show_columns(keys)
        self.columns_chosen.emit(keys)

    def _clear(self) -> None:
        self._search = ""
        self.cleared.emit()
        self.show_all()
        self.view.setFocus()

    def _current_tag(self) -> str:
        row = self.view.currentIndex().row()
        return self.model.tags[row] if 0 <= row < len(self.model.tags) else self._keep_tag

    def _tell_current(self) -> None:
        """The reason behind the chosen row's verdict, below the list."""
        row = self.view.currentIndex().row()
        told = self.model.row_at(row) if 0 <= row < len(self.model.tags) else None
        self._foot.setText(f"{told.tag}   {told.headline}" if told else "")

    def _tell_chosen(self) -> None:
        self.bar.tell(self.view.chosen_count)


def _keep_room(part: QWidget) -> None:
    """Let nothing move when this is hidden."""
    policy = part.sizePolicy()
    policy.setRetainSizeWhenHidden(True)
    part.setSizePolicy(policy)


def _row(wide: QWidget, last: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    row.addWidget(wide, 1)
    row.addWidget(last)
    return row
