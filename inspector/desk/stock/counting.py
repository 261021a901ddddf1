"""A count that goes on: the scan line has the keys, the answer stands large below it, and what is left by place."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds.counting import mark_file, type_ticked
from inspector.desk.form.deed import Deed
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.plain import button, clear, said, scroll, short
from inspector.desk.stock.answer import Answer, how_far
from inspector.desk.stock.count_model import CountModel
from inspector.desk.stock.count_view import CountView
from inspector.desk.stock.how_marked import HowMarked
from inspector.desk.stock.scan_line import ScanLine
from inspector.desk.stock.scans import Scan, ScanEnded, Scans
from inspector.desk.told_papers import tell_papers
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_count import print_count
from inspector.duties.tell_count import CountedPiece, CountTold, count_told
from inspector.gear.stock_take import Counted
from inspector.language import show_day, tr


class Counting(QWidget):
    """opened: a tag. asks: the form of a deed. close: what closing would write is to be shown. leave: to the list."""

    opened = Signal(str)
    asks = Signal(object, object)
    close_asked = Signal(str)
    leave = Signal()

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__()
        self._office, self._background, self._notice, self._look = office, background, notice, look
        self.told: CountTold | None = None
        self._scans = Scans(office, background, self._ended)
        self._undo: list[Scan] = []
        self._shown = 0
        self._scan_count = 0
        self.scan, self.how, self.answer = ScanLine(), HowMarked(), Answer()
        self.model = CountModel(self)
        self.view = CountView(self.model, look)
        self.undo_button = button(tr("&Undo last mark"), self.undo)
        self._title, self._nothing = short("", Type.HEAD), said("")
        self._filters, self.filters = QHBoxLayout(), list[QPushButton]()
        self._lay_out()
        self._connect()

    def show_count(self, told: CountTold) -> None:
        """Show a count as it stands; of another one than before nothing said stays."""
        anew, self.told = self.told is None or self.told.ref != told.ref, told
        scope = told.scope or tr("everything in store")
        self._title.setText(
            tr("Count {ref}: {scope}, begun {day}", ref=told.ref, scope=scope, day=show_day(told.begun))
        )
        if anew:
            self._undo, self._shown = [], 0
            self.how.begin()
        if anew or not self.answer.text:
            self.answer.begin(how_far(told))
        self._show_labels(told.labels)
        self._show_parts()

    def read_again(self) -> None:
        """Read the count anew: something was done in a form, or in another window."""
        if self.told:
            done = partial(self._read, self._scan_count)
            self._background.run(count_told, self._office, self.told.ref, done=done, failed=self._notice.refuse)

    def focus_start(self) -> None:
        """The keys belong to the scans."""
        self.scan.setFocus()

    def mark(self, tags: tuple[str, ...], counted: Counted, place: str = "", note: str = "") -> None:
        """Mark pieces once the scans before are marked."""
        if self.told:
            self._scans.add(Scan(self.told.ref, tags, counted, place, note))

    def undo(self) -> None:
        """Take the last mark back: its pieces count as not looked for."""
        if self._undo:
            last = self._undo.pop()
            self.mark(last.tags, Counted.UNKNOWN)
        self._show_undo()
        self.focus_start()

    def _lay_out(self) -> None:
        inside = QWidget()
        layout = QVBoxLayout(inside)
        layout.setContentsMargins(0, GRID // 2, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        for one in (self.scan, self.how, self.answer):
            layout.addWidget(one)
        self._labels = said("")
        self._filters.setSpacing(GRID)
        layout.addLayout(self._filters)
        layout.addWidget(self._nothing)
        layout.addWidget(self.view, 1)
        keys = tr("In the list: Space marks as seen, Delete as not there, Backspace takes the mark back, Return opens.")
        layout.addWidget(said(keys, Type.SMALL, faint=True))
        layout.addWidget(self._labels)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.setSpacing(GRID)
        page.addLayout(self._head())
        page.addWidget(scroll(inside, tr("The count")), 1)
        page.addLayout(self._foot())

    def _head(self) -> QHBoxLayout:
        layout = QHBoxLayout()
        layout.setSpacing(2 * GRID)
        layout.addWidget(button("‹ " + tr("Counts"), self.leave.emit, name=tr("Back to the list of counts")))
        layout.addWidget(self._title, 1)
        return layout

    def _foot(self) -> QHBoxLayout:
        layout = QHBoxLayout()
        layout.setContentsMargins(0, 0, 0, GRID)
        layout.setSpacing(GRID)
        made = (
            self.undo_button,
            button(tr("Tags of a file"), self._ask_file, name=tr("Mark the tags of a file")),
            button(tr("Print list to tick"), self.print_list),
            button(tr("Type list in"), self._ask_ticked, name=tr("Type a ticked list in")),
        )
        for one in made:
            layout.addWidget(one)
        layout.addStretch(1)
        layout.addWidget(button(tr("Close the count"), self._ask_close, rank="first"))
        return layout

    def _connect(self) -> None:
        self.scan.scanned.connect(self._scanned)
        self.scan.down.connect(self._to_list)
        self.how.chosen.connect(self.focus_start)
        self.view.marked.connect(self._mark_one)
        self.view.opened.connect(self.opened)
        self.view.typed.connect(self.scan.begin)

    def _scanned(self, text: str) -> None:
        self._mark_one(text, self.how.counted)

    def _mark_one(self, tag: str, counted: Counted) -> None:
        self.how.place.tell(None)
        self.mark((tag,), counted, self.how.place_of(counted), self.how.note.text().strip())

    def _ended(self, ended: ScanEnded) -> None:
        scan, self._scan_count = ended.scan, self._scan_count + 1
        if self.told is None or scan.ref != self.told.ref:
            return  # another count is shown by now; the mark is kept with its own
        if ended.refusal:
            self.answer.refuse(", ".join(scan.tags), ended.refusal)
            if ended.refusal.field == tr("place"):
                self.how.place.tell(ended.refusal)
            return
        if ended.found and ended.told:
            if scan.counted is not Counted.UNKNOWN:
                marked = (*ended.found.kept, *ended.found.labels)
                self._undo.append(Scan(scan.ref, marked, scan.counted))
            self.show_count(ended.told)
            self.answer.tell(ended.found, scan.counted, ended.told)

    def _read(self, scan_count: int, told: CountTold) -> None:
        """Show what was read, unless a scan has told more since."""
        if self.told and told.ref == self.told.ref and scan_count == self._scan_count:
            self.show_count(told)

    def _parts(self) -> list[tuple[str, tuple[CountedPiece, ...]]]:
        """The lists among which to choose, each with its pieces."""
        if self.told is None:
            return []
        told = self.told
        left, seen, absent = (told.expected(one) for one in (Counted.UNKNOWN, Counted.PRESENT, Counted.ABSENT))
        others = tuple(one for one in told.pieces if not one.is_expected)
        return [
            (tr("Left ({count})", count=len(left)), left),
            (tr("Seen ({count})", count=len(seen)), seen),
            (tr("Not there ({count})", count=len(absent)), absent),
            (tr("Elsewhere ({count})", count=len(others)), others),
        ]

    def _show_parts(self) -> None:
        parts = self._parts()
        if not self.filters:
            self._make_filters(len(parts))
        for one, (words, _) in zip(self.filters, parts, strict=True):
            one.setText(words)
            one.setAccessibleName(tr("Show: {list}", list=words))
        self._show_part(self._shown)
        self._show_undo()

    def _make_filters(self, count: int) -> None:
        clear(self._filters)
        group = QButtonGroup(self)
        for number in range(count):
            made = button("", partial(self._show_part, number), rank="filter")
            made.setCheckable(True)
            group.addButton(made)
            self._filters.addWidget(made)
            self.filters.append(made)
        self._filters.addStretch(1)

    def _show_part(self, number: int) -> None:
        parts = self._parts()
        if not parts:
            return
        self._shown = number
        self.filters[number].setChecked(True)
        self.model.show_pieces(parts[number][1])
        self.view.show_again()
        empty = (
            tr("Every expected piece is marked. Close the count."),
            tr("Nothing is marked as seen yet. Scan the tags, or press Space on a piece that is left."),
            tr("Nothing is marked as not there. Press Delete on a piece that is left, or choose “not there” above."),
            tr("Nothing is out by the register, and nothing turned up that this count does not look for."),
        )
        self._nothing.setText(empty[number])
        self._nothing.setVisible(not self.model.pieces)
        if not self.model.pieces and self.view.hasFocus():
            self.focus_start()
        self.view.setVisible(bool(self.model.pieces))

    def _show_labels(self, labels: tuple[str, ...]) -> None:
        """Labels that no piece has, as long as the count keeps them."""
        self._labels.setText(tr("Seen, and no piece has these labels: {labels}", labels=", ".join(labels)))
        self._labels.setVisible(bool(labels))

    def _show_undo(self) -> None:
        self.undo_button.setEnabled(bool(self._undo))
        tags = ", ".join(self._undo[-1].tags) if self._undo else ""
        name = tr("Undo the mark of {tags}", tags=tags) if tags else tr("Undo last mark")
        self.undo_button.setAccessibleName(name)
        self.undo_button.setToolTip(name)

    def _to_list(self) -> None:
        self.view.setFocus()
        self.view.show_again()

    def _ask(self, deed: Deed[CountTold]) -> None:
        self.asks.emit(deed, self.told)

    def _ask_file(self) -> None:
        if self.told:
            self._ask(mark_file(self.told))

    def _ask_ticked(self) -> None:
        if self.told:
            self._ask(type_ticked(self.told))

    def _ask_close(self) -> None:
        if self.told:
            self.close_asked.emit(self.told.ref)

    def print_list(self) -> None:
        """Print the list to tick by hand; printed again it says what it said."""
        if self.told:
            self._background.run(
                print_count, self._office, self.told.ref, done=self._printed, failed=self._notice.refuse,
                says=tr("Printing…"),
            )  # fmt: skip

    def _printed(self, paper: Paper) -> None:
        head = tr("The list {number} is printed.", number=paper.path.stem)
        tell_papers(self._notice, head, tr("Tick each line by hand, then type the numbers in."), (paper,))
        self.read_again()
