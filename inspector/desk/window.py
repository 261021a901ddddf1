"""The window on a register: its frame at once, its pages as soon as the register is open."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QCloseEvent, QHelpEvent
from PySide6.QtWidgets import QDialog, QMenu, QWidget

from inspector.desk import menus
from inspector.desk.background import Background
from inspector.desk.frame import Frame
from inspector.desk.look import Look
from inspector.desk.place import Go
from inspector.gear.outcome import Outcome
from inspector.language import tr

if TYPE_CHECKING:
    from inspector.desk.gear_list.listed import Listed
    from inspector.desk.in_step import InStep
    from inspector.desk.pages import Pages
    from inspector.desk.printing import Printing
    from inspector.desk.proving import Proving
    from inspector.desk.wiring import Wiring
    from inspector.duties.office import Office


class DeskWindow(Frame):
    """The desk on a register; it works without an event loop of its own, as in tests.

    Without an office it stands there with its places while the register is being opened, and shows nothing of it;
    what is asked of it meanwhile is done once somebody sits down.

    seated: somebody else sits at the desk now, or the club's settings are others; carries the office.
    another: another register is to be opened. closing: it is about to close.
    """

    seated = Signal(object)
    another = Signal()
    closing = Signal()

    pages: "Pages"
    wiring: "Wiring"
    in_step: "InStep"
    _office: "Office"
    _proving: "Proving"

    def __init__(self, office: "Office | None", look: Look | None = None) -> None:
        super().__init__(look or Look())
        self.is_open = False  # whether there is a register on the desk
        self.background = Background(self)
        self._may_close, self._elsewhere = False, False
        self._asked: Callable[[], object] | None = None
        self.actions_at_times = menus.build(self, self._deeds(), self.look, self.entries)
        self._connect()
        self.look.dress(self)
        self._turned()
        self.search.setFocus()
        if office:
            self.sit_down(office)
            self._show_pages()

    def sit_down(self, office: "Office") -> None:
        """Work on a register. Its pages are seen as soon as one of them is turned to."""
        from inspector.desk.in_step import InStep
        from inspector.desk.pages import Pages
        from inspector.desk.proving import Proving
        from inspector.desk.wiring import Wiring

        self._office = office
        self.pages = Pages(office, self.background, self.notice, self.look, self.entries)
        self.wiring = Wiring(office, self.background, self.notice, self.pages)
        self.in_step = InStep(office, self.background, self)
        self._proving = Proving(office, self.background, self.notice, self)
        self.middle.addWidget(self.pages)
        self.is_open = True
        self._connect_pages(office)
        self.pages.table.refresh()
        self._tell_unfit(office)
        if self._asked:
            self._asked()

    @property
    def is_waiting(self) -> bool:
        """Whether no page was turned to yet."""
        return not self.is_open or self.middle.currentWidget() is not self.pages

    def open_tag(self, tag: str) -> None:
        """Show a piece, the list until it is there."""
        self._show_pages()
        self.pages.open_tag(tag)

    def go(self, to: Go) -> None:
        """Go to a place, as soon as there is a register; where that is not open yet, the side shows what will come."""
        if not self.is_open:
            self.rail.mark(to.place)
        self._once_open(lambda: self.pages.go(to))

    @property
    def printing(self) -> "Printing":
        """What prints."""
        return self.wiring.printing

    def back(self) -> None:
        """One step back: a message, a form, a piece, a search."""
        if not self.notice.isHidden():
            self.notice.dismiss()
        elif self.is_open and not self.pages.back():
            self._search_done()
            self.pages.table.show_all()
            self.search.setFocus()

    def event(self, event: QEvent) -> bool:
        """Whoever waits over a text is told what its trade words mean."""
        if event.type() is QEvent.Type.ToolTip and isinstance(event, QHelpEvent) and _help_at(self, event):
            return True
        return super().event(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before something written is lost; let running deeds end."""
        if self.is_open and self.pages.is_written and not self._may_close:
            event.ignore()
            self.pages.leave_form(self._close_now)
            return
        self.closing.emit()
        if self.is_open:
            self.in_step.end()
            self.pages.set_aside()
        for one in self.findChildren(QDialog):
            one.close()
        self.background.close()
        super().closeEvent(event)

    @property
    def officer_id(self) -> str:
        """Who is at this desk; empty before somebody sat down."""
        return self._office.officer.id if self.is_open else ""

    def close_for_good(self) -> None:
        """Close without a question; what was typed into a form is set aside."""
        self._close_now()

    def _close_now(self) -> None:
        self._may_close = True
        self.close()

    def _connect(self) -> None:
        self.search.entered.connect(lambda tag: self._once_open(lambda: self.pages.search(tag)))
        self.search.textEdited.connect(lambda text: self._once_open(lambda: self._search_typed(text)))
        self.search.down.connect(self._to_rows)
        self.rail.go.connect(self.go)
        self.background.busy_changed.connect(self.status.tell_busy)
        self.background.long_begun.connect(self.status.tell_long)
        self.background.long_ended.connect(self.status.end_long)

    def _connect_pages(self, office: "Office") -> None:
        pages = self.pages
        pages.typed.connect(self.search.begin)
        pages.found.connect(self._search_done)
        pages.turned.connect(self._show_pages)
        pages.table.cleared.connect(self.search.clear)
        pages.table.shown.connect(lambda listed: self._tell_facts(office, listed))
        self.wiring.seated.connect(self.seated)
        self.in_step.changed.connect(self._written_elsewhere)

    def _once_open(self, does: Callable[[], object]) -> None:
        """Do it; where the register is not open yet, then. Of several such wishes the last one counts."""
        if self.is_open:
            does()
        else:
            self._asked = does

    def _show_pages(self) -> None:
        self.middle.setCurrentWidget(self.pages)
        self._turned()

    def _search_typed(self, text: str) -> None:
        self._show_pages()
        self.pages.search_typed(text)

    def _deeds(self) -> menus.Deeds:
        def later(does: "Callable[[DeskWindow], object]") -> Callable[[], None]:
            return lambda: self._once_open(lambda: does(self))

        return menus.Deeds(
            find=self.search.take_keys,
            go=self.go,
            read_again=later(lambda its: its.pages.read_again()),
            verify=later(lambda its: its._proving.begin()),
            another=later(lambda its: its.another.emit()),
            back=self.back,
            inspect=later(lambda its: its.pages.inspect()),
            save=later(lambda its: its.pages.save()),
            sheet=later(lambda its: its.printing.trip_sheet(its.search)),
            notice=later(lambda its: its._print_notice()),
            export=later(lambda its: its.wiring.export()),
            report=later(lambda its: its.wiring.report()),
            archive=later(lambda its: its.wiring.archive()),
            piece_menu=self.fill_piece_menu,
            keys=self._show_keys,
            words=later(lambda its: its._show_words()),
        )

    def _show_keys(self) -> None:
        from inspector.desk.key_map import KeyMap

        KeyMap(self.menuBar(), self).open()

    def _show_words(self) -> None:
        from inspector.desk.word_help import WordList

        WordList(self.pages, self).open()

    def fill_piece_menu(self, menu: QMenu) -> None:
        """What can be done with the piece that is shown."""
        from inspector.desk import piece_menu

        if self.pages.piece:
            piece_menu.fill(menu, self.pages.piece, self.pages.go)

    def _turned(self) -> None:
        """What can be done depends on the page."""
        times, piece = self.actions_at_times, self.pages.piece if self.is_open else None
        times.inspect.setEnabled(piece is not None)
        times.piece.setEnabled(piece is not None)
        times.save.setEnabled(self.is_open and self.pages.can_save)
        self.rail.mark(self.pages.place_shown if self.is_open else "")
        times.notice.setEnabled(piece is not None and piece.judged.verdict.outcome is Outcome.RETIRE)

    def _to_rows(self) -> None:
        if self.is_open and self.pages.currentWidget() is self.pages.table:
            self.pages.table.enter()

    def _search_done(self) -> None:
        self.search.clear()
        self.pages.table.search("")

    def _print_notice(self) -> None:
        if self.pages.piece:
            self.printing.retirement_notice(self.pages.piece.tag)

    def _tell_unfit(self, office: "Office") -> None:
        """Say which of the club's own limits this version of the program cannot use."""
        if office.rules.club and office.rules.club.unfit:
            from inspector.duties.rulebook_in_force import unfit_lines

            head = tr("Some of the club's own limits do not fit this version; the packaged ones stand.")
            self.notice.tell(head, "\n".join(unfit_lines(office)))

    def _written_elsewhere(self) -> None:
        """Read anew what another window wrote; where something is being written here, only say so."""
        self._elsewhere = self.pages.is_written
        if self._elsewhere:
            self.status.tell_elsewhere()
        else:
            self.background.run(_as_it_is, self._office, done=self._follow, failed=self.notice.refuse)

    def _tell_facts(self, office: "Office", listed: "Listed") -> None:
        """That another window wrote stays at the foot as long as something is being written here."""
        self._elsewhere = self._elsewhere and self.pages.is_written
        if not self._elsewhere:
            self.status.tell_facts(office, listed)

    def _follow(self, now: "Office") -> None:
        """Where another rulebook or other wants of the club hold now, they hold here too."""
        if _laws(now) != _laws(self._office):
            self.seated.emit(now)
        else:
            self.pages.read_again()


def _laws(office: "Office") -> tuple[object, ...]:
    """By what pieces are judged, and how figures and papers look."""
    return office.rules.hash, office.system, office.page, office.decimal


def _as_it_is(office: "Office") -> "Office":
    from inspector.duties.in_step import as_it_is

    return as_it_is(office)


def _help_at(window: QWidget, event: QHelpEvent) -> bool:
    from inspector.desk.word_help import help_at

    return help_at(window, event)
