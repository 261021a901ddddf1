"""One page at a time, and the way from one to the other."""

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from inspector.desk.background import Background
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.form_page import FormPage
from inspector.desk.gear_table import GearTable
from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.inspecting import Inspecting
from inspector.desk.look import Look
from inspector.desk.made_places import MadePlaces
from inspector.desk.notice import Notice
from inspector.desk.opened import Opened, opened
from inspector.desk.place import Go, Place, Unsaved
from inspector.desk.places import CHECK, DEED, GEAR, PIECE, RIG, TRIP, PlaceEntry
from inspector.desk.printing import tell_papers
from inspector.desk.record import Record
from inspector.desk.rig_page import RigPage
from inspector.desk.trailhead import Trailhead
from inspector.desk.trip_page import TripPage
from inspector.desk.way_back import WayBack
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused


class Pages(QStackedWidget):
    """turned: another page is shown. found: the piece that was searched for is shown. typed: belongs to the search.

    made: a place got its page.
    """

    turned = Signal()
    found = Signal()
    typed = Signal(str)
    made = Signal(object)

    def __init__(
        self, office: Office, background: Background, notice: Notice, look: Look, entries: tuple[PlaceEntry, ...]
    ) -> None:
        super().__init__()
        self._office, self._background, self._notice, self._look = office, background, notice, look
        self.places = MadePlaces(entries, self._made)
        given = (office, background, notice, look)
        self.table = GearTable(office, background, look)
        self.record = Record(look, office.system)
        self.trailhead, self.trip, self.rig = Trailhead(*given), TripPage(*given), RigPage(*given)
        self.deed_page = FormPage(*given)
        self._own: dict[str, Place] = {TRIP: self.trip, RIG: self.rig, CHECK: self.trailhead}
        self._way_back = WayBack(self.table)
        self.inspecting = Inspecting(self, *given, kept=self._inspected, leave=self.back)
        for page in (self.table, self.record, self.trailhead, self.trip, self.rig, self.deed_page):
            self.addWidget(page)
        self._connect()

    @property
    def piece(self) -> Opened | None:
        """The piece whose record is shown."""
        return self.record.opened if self.currentWidget() is self.record else None

    @property
    def form(self) -> InspectForm | None:
        """The inspection that is being written."""
        return self.inspecting.form

    @property
    def place_shown(self) -> str:
        """The key of the place that is shown; empty for a record or a form."""
        pages: list[tuple[str, QWidget]] = [(GEAR, self.table), *self._own.items(), *self.places.items()]
        return next((key for key, page in pages if self.currentWidget() is page), "")

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
        if self.currentWidget() is self.trailhead and self.trailhead.is_under_way:
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

    def show_deed(self, deed: Deed[Any], about: object, key: str = "") -> None:
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
        return self.trailhead.unsaved or self.inspecting.unsaved or own

    def _connect(self) -> None:
        for page in (self.trailhead, self.trip, self.rig, self.deed_page):
            self._tie(page)
        self.table.typed.connect(self.typed)
        self.record.typed.connect(self.typed)
        self.table.opened.connect(self.open_tag)
        self.table.refused.connect(self._notice.refuse)
        self.record.back.connect(self.show_list)
        self.record.inspect.connect(self.inspect)
        self.trip.check.connect(lambda ref: self.go(Go(CHECK, ref)))
        self.trip.rig.connect(lambda asked: self.go(Go(RIG, asked)))
        self.deed_page.finished.connect(self._deed_done)
        self.trailhead.found.connect(self.found)

    def _tie(self, page: Place) -> None:
        page.opened.connect(self.open_tag)
        page.go.connect(self.go)
        page.leave.connect(self.leave_page)
        page.typed.connect(self.typed)

    def _made(self, entry: PlaceEntry) -> Place:
        """The page of a place, tied to the others."""
        if entry.make is None:
            raise KeyError(entry.key)
        page = entry.make(self._office, self._background, self._notice, self._look)
        self._tie(page)
        self.addWidget(page)
        self.made.emit(page)
        return page

    def _go_to_place(self, to: Go) -> None:
        page = self._own.get(to.place) or self.places.page(to.place)
        self._remember(page)
        self._leave_for(page)
        page.begin(*([] if to.what is None else [to.what]))
        page.focus_start()

    def _deed(self, deed: Deed[Any], about: object, key: str) -> None:
        self._remember(self.deed_page)
        self._turn_to(self.deed_page)
        self.deed_page.show_deed(deed, about, key)

    def _deed_done(self, done: Done) -> None:
        """Back to where the deed was begun, shown anew, with what came of it."""
        tell = partial(tell_papers, self._notice, done.head, done.text, done.papers)
        self.table.refresh()
        if done.opens or (done.tag and self._way_back.of(self.deed_page) is self.record):
            given = (self._office, done.tag)
            self._background.run(opened, *given, done=partial(self._show_told, tell), failed=self._notice.refuse)
            return
        if not self.deed_page.stays:
            self._go_back(self.deed_page, changed=True)
        tell()

    def _show_told(self, tell: Callable[[], object], piece: Opened) -> None:
        self._show_again(piece)
        tell()

    def _inspected(self, piece: Opened) -> None:
        self._show_again(piece)
        self.table.refresh()

    def _show_again(self, piece: Opened) -> None:
        self.record.show_piece(piece)
        self._record()

    def _remember(self, page: QWidget) -> None:
        """Keep where a page was opened from; forms do not count."""
        self._way_back.remember(page, self.currentWidget(), (self.form, self.deed_page))

    def _go_back(self, page: QWidget, *, changed: bool = False) -> None:
        """From a page to the one from which it was opened. changed: a deed was done meanwhile."""
        if page is self.form:
            self._record()
            return
        came = self._way_back.of(page)
        if page is self.rig and self.trip.trip:
            came = self.trip
        if came is self.record and self.record.opened:
            self._record()
        elif isinstance(came, Place):
            self._turn_to(came)
            came.come_back(changed=changed)
        else:
            self._list()

    def _open(self, tag: str, failed: Callable[[Refused], object]) -> None:
        self._background.run(opened, self._office, tag, done=self._show, failed=failed)

    def _show(self, piece: Opened) -> None:
        if self.currentWidget() is not self.trailhead:
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
        self.table.enter(self.record.opened.tag if self.record.opened else "")

    def _leave_for(self, page: QWidget) -> None:
        """Turn to a page and let go of what was under way; what was checked before a trip is told."""
        left = self.trailhead.told_on_leaving()
        self.trip.stop()
        for one in self.places:
            one.stop()
        self._turn_to(page)
        self.inspecting.drop()
        self.trailhead.drop()
        if left:
            self._notice.tell(tr("The checks made are kept."), left)

    def _turn_to(self, page: QWidget) -> None:
        self._notice.hide()
        if page is not self.deed_page:
            self.deed_page.stop()
        self._notice.setProperty("touch", bool(page.property("touch")))
        self.setCurrentWidget(page)
        self.turned.emit()
