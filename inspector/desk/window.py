"""The window: the search line on top, one page at a time below it, and what speaks to the officer in between."""

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QCloseEvent, QHelpEvent, QResizeEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QMainWindow, QMenu, QVBoxLayout, QWidget

from inspector.desk import menus, piece_menu
from inspector.desk.background import Background
from inspector.desk.in_step import InStep
from inspector.desk.key_map import KeyMap
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.pages import Pages
from inspector.desk.places import places
from inspector.desk.printing import Printing
from inspector.desk.rail import Rail
from inspector.desk.search_line import SearchLine
from inspector.desk.status import Status
from inspector.desk.wiring import Wiring
from inspector.desk.word_help import WordList, help_at
from inspector.duties.in_step import as_it_is
from inspector.duties.machine_settings import MachineSettings
from inspector.duties.office import Office
from inspector.duties.rulebook_in_force import unfit_lines
from inspector.duties.verify_book import verified_words, verify_book
from inspector.gear.lists import Verified
from inspector.gear.outcome import Outcome
from inspector.language import tr

_USUAL_SIZE = (1280, 720)
_LEAST_SIZE = (960, 600)


class DeskWindow(QMainWindow):
    """The desk on a register; it works without an event loop of its own, as in tests.

    seated: somebody else sits at the desk now, or the club's settings are others; carries the office.
    another: another register is to be opened. closing: it is about to close.
    """

    seated = Signal(object)
    another = Signal()
    closing = Signal()

    def __init__(self, office: Office, look: Look | None = None) -> None:
        super().__init__()
        self._office, self.look = office, look or Look()
        self.background = Background(self)
        self.notice, self.search = Notice(), SearchLine()
        self.entries = places()
        self.pages = Pages(office, self.background, self.notice, self.look, self.entries)
        self.rail = Rail(self.entries, self.look)
        self.printing = Printing(office, self.background, self.notice, self)
        self.wiring = Wiring(office, self.background, self.notice, self.pages, self.printing)
        self.status = Status(office)
        self.in_step = InStep(office, self.background, self)
        self._may_close = False
        self._lay_out()
        self.actions_at_times = menus.build(self, self._deeds(), self.look, self.entries)
        self._connect()
        self.look.apply()
        self._turned()
        self.pages.table.refresh()
        self._tell_unfit()
        self.search.setFocus()

    def back(self) -> None:
        """One step back: a message, a form, a piece, a search."""
        if not self.notice.isHidden():
            self.notice.dismiss()
        elif not self.pages.back():
            self._search_done()
            self.pages.table.show_all()
            self.search.setFocus()

    def event(self, event: QEvent) -> bool:
        """Whoever waits over a text is told what its trade words mean."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent) and help_at(self, event):
            return True
        return super().event(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before something written is lost; let running deeds end."""
        if self.pages.is_written and not self._may_close:
            event.ignore()
            self.pages.leave_form(self._close_now)
            return
        self.closing.emit()
        self.in_step.end()
        self.pages.deed_page.stop()
        for one in self.findChildren(QDialog):
            one.close()
        self.background.close()
        super().closeEvent(event)

    @property
    def officer_id(self) -> str:
        """Who is at this desk."""
        return self._office.officer.id

    @property
    def machine(self) -> MachineSettings:
        """What this machine remembers."""
        return self._office.machine

    def close_for_good(self) -> None:
        """Close without a question; what was typed into a form is set aside."""
        self._close_now()

    def _close_now(self) -> None:
        self._may_close = True
        self.close()

    def _lay_out(self) -> None:
        self.setWindowTitle(tr("Recovery gear register"))
        self.setMinimumSize(*_LEAST_SIZE)
        self.resize(*_USUAL_SIZE)
        page = QWidget()
        page.setObjectName("page")
        head = QHBoxLayout()
        head.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        head.addWidget(self.search)
        strip = QHBoxLayout()
        strip.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        strip.addWidget(self.notice)
        middle = QHBoxLayout()
        middle.setSpacing(0)
        middle.addWidget(self.rail)
        middle.addWidget(self.pages, 1)
        layout = QVBoxLayout(page)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addLayout(head)
        layout.addLayout(strip)
        layout.addLayout(middle, 1)
        self.setCentralWidget(page)
        self.setStatusBar(self.status)

    def _connect(self) -> None:
        pages = self.pages
        self.search.textEdited.connect(pages.search_typed)
        self.search.entered.connect(pages.search)
        self.search.down.connect(self._to_rows)
        pages.typed.connect(self.search.begin)
        pages.found.connect(self._search_done)
        pages.turned.connect(self._turned)
        pages.table.cleared.connect(self.search.clear)
        self.wiring.seated.connect(self.seated)
        self.rail.go.connect(pages.go)
        self.in_step.changed.connect(self._written_elsewhere)
        self.look.changed.connect(self._make_room)
        pages.table.shown.connect(self.status.tell_facts)
        pages.record.sheet.connect(lambda: self.printing.trip_sheet(pages.record.sheet_button))
        pages.record.notice.connect(self._print_notice)
        pages.trip.sheet.connect(self.printing.sheet_of)
        pages.rig.sheet.connect(self.printing.rig_sheet)
        self.background.busy_changed.connect(self.status.tell_busy)
        self.background.long_begun.connect(self.status.tell_long)
        self.background.long_ended.connect(self.status.end_long)

    def _deeds(self) -> menus.Deeds:
        return menus.Deeds(
            find=self.search.take_keys,
            go=self.pages.go,
            read_again=self.pages.read_again,
            verify=self._verify,
            another=self.another.emit,
            back=self.back,
            inspect=self.pages.inspect,
            save=self.pages.save,
            sheet=lambda: self.printing.trip_sheet(self.search),
            notice=self._print_notice,
            export=self.wiring.export,
            piece_menu=self.fill_piece_menu,
            keys=lambda: KeyMap(self.menuBar(), self).open(),
            words=lambda: WordList(self.pages, self).open(),
        )

    def fill_piece_menu(self, menu: QMenu) -> None:
        """What can be done with the piece that is shown."""
        if self.pages.piece:
            piece_menu.fill(menu, self.pages.piece, self.pages.go)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The side yields to a narrow window."""
        super().resizeEvent(event)
        self._make_room()

    def _make_room(self) -> None:
        self.rail.yield_to(self.width())

    def _turned(self) -> None:
        """What can be done depends on the page."""
        times = self.actions_at_times
        times.inspect.setEnabled(self.pages.piece is not None)
        times.piece.setEnabled(self.pages.piece is not None)
        times.save.setEnabled(self.pages.can_save)
        self.rail.mark(self.pages.place_shown)
        piece = self.pages.piece
        times.notice.setEnabled(piece is not None and piece.judged.verdict.outcome is Outcome.RETIRE)

    def _to_rows(self) -> None:
        if self.pages.currentWidget() is self.pages.table:
            self.pages.table.enter()

    def _search_done(self) -> None:
        self.search.clear()
        self.pages.table.search("")

    def _print_notice(self) -> None:
        if self.pages.piece:
            self.printing.retirement_notice(self.pages.piece.tag)

    def _tell_unfit(self) -> None:
        """Say which of the club's own limits this version of the program cannot use."""
        if lines := unfit_lines(self._office):
            head = tr("Some of the club's own limits do not fit this version; the packaged ones stand.")
            self.notice.tell(head, "\n".join(lines))

    def _written_elsewhere(self) -> None:
        """Read anew what another window wrote; where something is being written here, only say so."""
        if self.pages.is_written:
            self.status.tell_elsewhere()
        else:
            self.background.run(as_it_is, self._office, done=self._follow, failed=self.notice.refuse)

    def _follow(self, now: Office) -> None:
        """Where another rulebook or other wants of the club hold now, they hold here too."""
        if _laws(now) != _laws(self._office):
            self.seated.emit(now)
        else:
            self.pages.read_again()

    def _verify(self) -> None:
        says = tr("Checking the register…")
        self.background.run(verify_book, self._office, done=self._verified, failed=self.notice.refuse, says=says)

    def _verified(self, found: Verified) -> None:
        if found.faults:
            head = tr("Something in the register was changed outside this program.")
            self.notice.tell(head, "\n".join(f"{fault.where}: {fault.why}" for fault in found.faults))
            return
        if found.gaps:
            head, lines = verified_words(found)
            self.notice.tell(head, "\n".join(lines))
            return
        head = found.head[:12]
        text = tr("{count} lines of the ledger hold together; its head is {head}.", count=found.line_count, head=head)
        self.notice.tell(tr("Nothing in the register was changed."), text)


def _laws(office: Office) -> tuple[object, ...]:
    """By what pieces are judged, and how figures and papers look."""
    return office.rules.hash, office.system, office.page, office.decimal
