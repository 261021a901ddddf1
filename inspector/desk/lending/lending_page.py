"""The place of lending: who has what since when, and from here all that goes out and comes back."""

from typing import Any

from PySide6.QtCore import QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.choice import Choice
from inspector.desk.deeds import debriefs, gear_papers, hands, letters
from inspector.desk.form.deed import Deed
from inspector.desk.keys import search_text
from inspector.desk.lending.loan_model import LoanModel
from inspector.desk.lending.loan_view import LoanView
from inspector.desk.lending.out import Grouped, LentOut, groups, lent_out
from inspector.desk.lending.scan_page import ScanPage
from inspector.desk.lending.trip_row import TripRow
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import button, column, menu_button, said
from inspector.duties.office import Office
from inspector.language import tr, tr_n

_CHOICE_PX = 136


class LendingPage(Place):
    """What is out, the list of what is scanned to go out, and the row of the trip's own deeds."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.out: LentOut | None = None
        self._goes_out = False
        self.model = LoanModel(office.today, self)
        self.view = LoanView(self.model, look)
        self.scan = ScanPage(office, background, look)
        self.trip_row = TripRow()
        self.grouped = Choice(tr("Under which headings"), [
            (tr("By person"), Grouped.PERSON), (tr("By trip"), Grouped.TRIP)], scans=True)  # fmt: skip
        self.out_button = button(tr("Hand out"), self.hand_out, rank="first")
        self.back_button = button(tr("Take back"), self.take_back)
        self.print_button = menu_button(tr("Print"), [
            (tr("Lending slip"), self.print_slip),
            (tr("Letters"), lambda: self._ask(letters.letters(), None, "")),
        ], name=tr("Print a slip to sign, or letters about what is out and overdue"))  # fmt: skip
        self._told, self._empty = said("", faint=True), self._nothing()
        self._stack = QStackedWidget()
        self._lists = self._list_page()
        self._stack.addWidget(self._lists)
        self._stack.addWidget(self.scan)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        layout.addWidget(self._stack)
        self._connect()
        self._resized()

    @property
    def is_scanning(self) -> bool:
        """Whether pieces are being scanned to go out."""
        return self._stack.currentWidget() is self.scan

    def begin(self, what: Any = None) -> None:
        """Read anew what is out; what: a trip's reference, to begin with its headings."""
        if what:
            self.grouped.choose(Grouped.TRIP)
            self.trip_row.want(str(what))
        self._read()

    def come_back(self, *, changed: bool) -> None:
        """What was scanned stands until it went out."""
        if self.is_scanning and changed and self._goes_out:
            self._to_list()
        elif self.is_scanning:
            self.scan.again()
        self._goes_out = False
        self._read()
        QTimer.singleShot(0, self, self.focus_start)

    def back(self) -> bool:
        """From the scanning to the list."""
        if not self.is_scanning:
            return False
        self._to_list()
        self.focus_start()
        return True

    def focus_start(self) -> None:
        """The keys go to what is out; to the line while pieces are scanned."""
        if self.is_scanning:
            self.scan.line.setFocus()
        elif self.model.rows:
            self.view.setFocus()
        else:
            self.out_button.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """While pieces are scanned, a letter belongs to the line wherever the keys went before."""
        text = search_text(event)
        if self.is_scanning and text:
            self.scan.line.setFocus()
            self.scan.line.insert(text)
        else:
            super().keyPressEvent(event)

    def hand_out(self) -> None:
        """Begin a list of what goes out."""
        self.scan.begin()
        self._stack.setCurrentWidget(self.scan)
        self.scan.line.setFocus()

    def take_back(self) -> None:
        """Take back what is ticked; without a tick, what the form is told."""
        tags = self.model.chosen
        self._ask(hands.take_back(tags), tags, " ".join(tags))

    def print_slip(self) -> None:
        """The slip of whoever has what is ticked; without a tick the form asks whose."""
        tags = self.model.chosen
        holders = {one.holder for one in self.out.loans if one.tag in tags} if self.out else set()
        holder = holders.pop() if len(holders) == 1 else ""
        self._ask(gear_papers.lending_slip(tags, holder), tags, " ".join(tags))

    def _resized(self) -> None:
        """Room for the words to choose among."""
        self.grouped.box.setMinimumWidth(self._look.px(_CHOICE_PX))

    def _connect(self) -> None:
        self._look.changed.connect(self._resized)
        self.view.opened.connect(self.opened)
        self.view.typed.connect(self.typed)
        self.model.picked.connect(self._tell)
        self.grouped.box.currentIndexChanged.connect(lambda _: self._regroup())
        self.grouped.box.moves.connect(lambda _: self.view.setFocus())
        self.scan.done.connect(self._scanned)
        self.scan.left.connect(self.back)
        self.scan.opened.connect(self.opened)
        self.trip_row.kit_out.connect(lambda ref: self._ask(hands.hand_out_kit(ref), ref, ref))
        self.trip_row.kit_back.connect(lambda ref: self._ask(hands.take_kit_back(ref), ref, ref))
        self.trip_row.tell.connect(self._tell_trip)
        self.trip_row.from_file.connect(lambda: self._ask(debriefs.from_file(), None, ""))

    def _list_page(self) -> QWidget:
        head = QHBoxLayout()
        head.setSpacing(GRID)
        head.addWidget(said(tr("Lending"), Type.DISPLAY), 1)
        for one in (self.grouped.box, self.out_button, self.back_button, self.print_button):
            head.addWidget(one)
        page = QWidget()
        inside = QVBoxLayout(page)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.setSpacing(GRID)
        inside.addLayout(head)
        inside.addWidget(self._told)
        inside.addWidget(self.view, 1)
        inside.addWidget(self._empty, 1)
        inside.addWidget(self.trip_row)
        return page

    def _nothing(self) -> QWidget:
        return column([
            said(tr("Nothing is out."), Type.HEAD),
            said(tr("Press “Hand out” and scan what goes, or hand out the whole kit of a trip below.")),
        ])  # fmt: skip

    def _read(self) -> None:
        self._background.run(lent_out, self._office, done=self._show, failed=self._notice.refuse)

    def _show(self, out: LentOut) -> None:
        is_first, self.out = self.out is None, out
        self.trip_row.show_trips(out.trips, {one.trip for one in out.loans}, out.today)
        self._regroup()
        self.view.setVisible(bool(out.loans))
        self._empty.setVisible(not out.loans)
        if is_first and self.out_button.hasFocus():
            self.focus_start()

    def _regroup(self) -> None:
        if self.out:
            self.view.group_by(self.grouped.value)
            self.model.show_groups(groups(self.out, self.grouped.value), self.out.today)

    def _tell(self) -> None:
        """How much is out, and what the ticked pieces are for."""
        if self.out is None:
            return
        late = sum(bool(one.overdue_days(self.out.today)) for one in self.out.loans)
        words = [tr_n("{count} piece is out.", "{count} pieces are out.", len(self.out.loans))]
        words += [tr_n("{count} is overdue.", "{count} are overdue.", late)] if late else []
        chosen = len(self.model.chosen)
        if chosen:
            words.append(tr_n("{count} is ticked to be taken back.", "{count} are ticked to be taken back.", chosen))
        elif self.out.loans:
            words.append(tr("Tick with the space bar what came back, then press “Take back”."))
        self._told.setText(" ".join(words))
        self._told.setVisible(bool(self.out.loans))

    def _scanned(self, tags: tuple[str, ...]) -> None:
        self._goes_out = True
        self._ask(hands.hand_out(tags), tags, " ".join(tags))

    def _tell_trip(self, ref: str) -> None:
        if self.out and (trip := next((one for one in self.out.trips if one.ref == ref), None)):
            asked = debriefs.asked_of(trip, self.out.rigs)
            self._ask(debriefs.tell(asked), asked, ref)

    def _to_list(self) -> None:
        self._stack.setCurrentWidget(self._lists)

    def _ask(self, deed: Deed[Any], about: object, key: str) -> None:
        self.go.emit(Go(DEED, (deed, about, key)))
