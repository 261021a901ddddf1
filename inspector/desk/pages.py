"""One page at a time, and the way from one to the other."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from inspector.desk.background import Background
from inspector.desk.gear_table import GearTable
from inspector.desk.inspecting import Inspecting
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place, Unsaved
from inspector.desk.places import CHECK, DEED, GEAR, OWN, PIECE, RIG, TRIP, PlaceEntry
from inspector.desk.stack import Stack
from inspector.desk.way_back import WayBack
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused

if TYPE_CHECKING:
    from inspector.desk.form.deed import Deed, Done
    from inspector.desk.inspect.inspect_form import InspectForm
    from inspector.desk.opened import Opened
    from inspector.desk.record import Record
    from inspector.desk.trip_page import TripPage


class Pages(Stack):
    """turned: another page is shown. found: the piece that was searched for is shown. typed: belongs to the search.

    made: the page of a place, of a record or of forms was made; its key and the page.
    """

    turned = Signal()
    found = Signal()
    typed = Signal(str)
    made = Signal(str, object)

    def __init__(
        self, office: Office, background: Background, notice: Notice, look: Look, entries: tuple[PlaceEntry, ...]
    ) -> None:
        super().__init__((*entries, *OWN), GearTable(office, background, look), self._make)
        self._office, self._background, self._notice, self._look = office, background, notice, look
        self._way_back = WayBack(self.table)
        given = (office, background, notice, look)
        self.inspecting = Inspecting(self, *given, kept=self._inspected, leave=self.back)
        self.table.typed.connect(self.typed)
        self.table.opened.connect(self.open_tag)
        self.table.refused.connect(self._notice.refuse)

    @property
    def piece(self) -> "Opened | None":
        """The piece whose record is shown."""
        return self.record.opened if self._shows(PIECE) else None

    @property
    def form(self) -> "InspectForm | None":
        """The inspection that is being written."""
        return self.inspecting.form

    def go(self, to: Go) -> None:
        """Go to a place, a piece or the form of a deed."""
        own: dict[str, Callable[[Any], object]] = {
            GEAR: lambda _: self.show_list(),
            PIECE: self.open_tag,
            DEED: lambda what: self.show_deed(*what),
        }
        if to.place in own:
            own[to.place](to.what)
        else:
            self.leave_form(lambda: self._go_to_place(to))

    def open_tag(self, tag: str) -> None:
        """Show the piece with this tag."""
        self.leave_form(lambda: self._open(tag, self._notice.refuse))

    def search(self, tag: str) -> None:
        """Open the piece whose tag this is; else go to what was found. Before a trip, go to its questions."""
        if self._shows(CHECK) and self.trailhead.is_under_way:
            self.trailhead.jump(tag)
            return
        self.leave_form(lambda: self._open(tag, lambda _refusal: self._list()))

    def search_typed(self, text: str) -> None:
        """Find as one types; a form is not left for that."""
        self.table.search(text)
        if self.piece:
            self._turn_to(self.table)

    def show_list(self) -> None:
        """Go to the gear list, the bar on the piece last seen."""
        self.leave_form(self._list)

    def back(self) -> bool:
        """One step back; False where there is none to take."""
        page = self.currentWidget()
        if page is None or page is self.table:
            return False
        if not (isinstance(page, Place) and page.back()):
            self.leave_page()
        return True

    def leave_page(self) -> None:
        """Leave the page that is shown for the one it was opened from."""
        if page := self.currentWidget():
            self.leave_form(partial(self._go_back, page))

    def inspect(self) -> None:
        """Begin an inspection of the piece shown."""
        if self.piece:
            self._turn_to(form := self.inspecting.begin(self.piece))
            form.focus_start()

    def show_deed(self, deed: "Deed[Any]", about: object, key: str = "") -> None:
        """Ask what a deed needs, and do it."""
        self.leave_form(lambda: self._deed(deed, about, key))

    @property
    def is_written(self) -> bool:
        """Whether something would be lost by closing the window."""
        return self._unsaved() is not None

    def save(self) -> None:
        """Do what the form that is shown is for."""
        page = self.currentWidget()
        if self.form and page is self.form:
            self.form.try_save()
        elif isinstance(page, Place) and page.can_save:
            page.save()

    @property
    def can_save(self) -> bool:
        """Whether a form is shown."""
        page = self.currentWidget()
        return page is not None and (page is self.form or isinstance(page, Place))

    def read_again(self) -> None:
        """Read anew what is shown."""
        page = self.currentWidget()
        if isinstance(page, Place) and not page.can_save and page.unsaved is None:
            page.begin()
        elif self.piece:
            self._open(self.piece.tag, self._notice.refuse)
        self.table.refresh()

    def leave_form(self, then: Callable[[], object]) -> None:
        """Go on; where something is written and not kept, ask first."""
        if found := self._unsaved():
            keep, other = (found.keep_word, found.keep), (found.drop_word, lambda: found.drop(then))
            self._notice.ask(found.head, found.text, keep, other)
        else:
            then()

    def _unsaved(self) -> Unsaved | None:
        page = self.currentWidget()
        own = page.unsaved if isinstance(page, Place) else None
        begun = self.trailhead.unsaved if CHECK in self.places else None
        return begun or self.inspecting.unsaved or own

    def _make(self, entry: PlaceEntry) -> QWidget:
        """The page of a place, tied to the others."""
        if entry.make is None:
            raise KeyError(entry.key)
        page = entry.make(self._office, self._background, self._notice, self._look)
        tie: dict[str, Callable[[Any], object]] = {
            PIECE: self._tie_record,
            DEED: lambda form: form.finished.connect(self._deed_done),
            TRIP: self._tie_trip,
            CHECK: lambda trailhead: trailhead.found.connect(self.found),
        }
        if isinstance(page, Place):
            self._tie(page)
        tie.get(entry.key, lambda _: None)(page)
        self.addWidget(page)
        self.made.emit(entry.key, page)
        return page

    def _tie(self, page: Place) -> None:
        page.opened.connect(self.open_tag)
        page.go.connect(self.go)
        page.leave.connect(self.leave_page)
        page.typed.connect(self.typed)

    def _tie_record(self, record: "Record") -> None:
        record.typed.connect(self.typed)
        record.back.connect(self.show_list)
        record.inspect.connect(self.inspect)

    def _tie_trip(self, trip: "TripPage") -> None:
        trip.check.connect(lambda ref: self.go(Go(CHECK, ref)))
        trip.rig.connect(lambda asked: self.go(Go(RIG, asked)))

    def _go_to_place(self, to: Go) -> None:
        page = cast("Place", self.places.page(to.place))
        self._remember(page)
        self._leave_for(page)
        page.begin(*([] if to.what is None else [to.what]))
        page.focus_start()

    def _deed(self, deed: "Deed[Any]", about: object, key: str) -> None:
        self._remember(self.deed_page)
        self._turn_to(self.deed_page)
        self.deed_page.show_deed(deed, about, key)

    def _deed_done(self, done: "Done") -> None:
        """Back to where the deed was begun, shown anew, with what came of it."""
        from inspector.desk.told_papers import tell_papers

        tell = partial(tell_papers, self._notice, done.head, done.text, done.papers)
        self.table.refresh()
        if done.opens or (done.tag and self._is(PIECE, self._way_back.of(self.deed_page))):
            given = (self._office, done.tag)
            self._background.run(_opened, *given, done=partial(self._show_told, tell), failed=self._notice.refuse)
            return
        if not self.deed_page.stays:
            self._go_back(self.deed_page, changed=True)
        tell()

    def _show_told(self, tell: Callable[[], object], piece: "Opened") -> None:
        self._show_again(piece)
        tell()

    def _inspected(self, piece: "Opened") -> None:
        self._show_again(piece)
        self.table.refresh()

    def _show_again(self, piece: "Opened") -> None:
        self.record.show_piece(piece)
        self._record()

    def _remember(self, page: QWidget) -> None:
        """Keep where a page was opened from; forms do not count."""
        between = self.deed_page if DEED in self.places else None
        self._way_back.remember(page, self.currentWidget(), (self.form, between))

    def _go_back(self, page: QWidget, *, changed: bool = False) -> None:
        """From a page to the one from which it was opened. changed: a deed was done meanwhile."""
        if page is self.form:
            self._record()
            return
        came = self._way_back.of(page)
        if self._is(RIG, page) and TRIP in self.places and self.trip.trip:
            came = self.trip
        if self._is(PIECE, came) and self.record.opened:
            self._record()
        elif isinstance(came, Place):
            self._turn_to(came)
            came.come_back(changed=changed)
        else:
            self._list()

    def _open(self, tag: str, failed: Callable[[Refused], object]) -> None:
        self._background.run(_opened, self._office, tag, done=self._show, failed=failed)

    def _show(self, piece: "Opened") -> None:
        if not self._shows(CHECK):
            self._remember(self.record)
        self.record.show_piece(piece)
        self._record()
        self.found.emit()

    def _record(self) -> None:
        self._turn_to(self.record)
        self.inspecting.drop()
        self.record.focus_start()

    def _list(self) -> None:
        self._leave_for(self.table)
        self.table.refresh()
        self.table.enter(self.record.tag if PIECE in self.places else "")

    def _leave_for(self, page: QWidget) -> None:
        """Turn to a page and let go of what was under way; what was checked before a trip is told."""
        checking = self.trailhead if CHECK in self.places else None
        left = checking.told_on_leaving() if checking else ""
        for one in self.places:
            one.stop()
        self._turn_to(page)
        self.inspecting.drop()
        if checking:
            checking.drop()
        if left:
            self._notice.tell(tr("The checks made are kept."), left)

    def _turn_to(self, page: QWidget) -> None:
        self._notice.hide()
        if not self._is(DEED, page):
            self.set_aside()
        self._notice.setProperty("touch", bool(page.property("touch")))
        self.setCurrentWidget(page)
        self.turned.emit()


def _opened(office: Office, tag: str) -> "Opened":
    from inspector.desk.opened import opened

    return opened(office, tag)
