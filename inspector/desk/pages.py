"""One page at a time: the list, a piece, the form of an inspection; and the way from one to the other."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from inspector.desk.background import Background
from inspector.desk.gear_table import GearTable
from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.desk.opened import Opened, inspected, opened
from inspector.desk.record import Record
from inspector.desk.rig_asked import RigAsked
from inspector.desk.rig_page import RigPage
from inspector.desk.trailhead import Trailhead
from inspector.desk.trip_page import TripPage
from inspector.duties.office import Office
from inspector.duties.preview_verdict import leave_preview
from inspector.gear.inspection import NewInspection
from inspector.gear.outcome import Outcome
from inspector.language import tr, tr_n
from inspector.refused import Refused


class Pages(QStackedWidget):
    """turned: another page is shown. found: the piece that was searched for is shown."""

    turned = Signal()
    found = Signal()

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__()
        self._office, self._background, self._notice, self._look = office, background, notice, look
        self.table = GearTable(office, background, look)
        self.record = Record(look, office.system)
        self.trailhead = Trailhead(office, background, notice, look)
        self.trip = TripPage(office, background, notice, look)
        self.rig = RigPage(office, background, notice, look)
        self._came_from: QWidget = self.table  # the page from which a piece was opened
        self.form: InspectForm | None = None
        for page in (self.table, self.record, self.trailhead, self.trip, self.rig):
            self.addWidget(page)
        self.table.opened.connect(self.open_tag)
        self.table.refused.connect(notice.refuse)
        self.record.back.connect(self.show_list)
        self.record.inspect.connect(self.inspect)
        self.trailhead.leave.connect(self.show_list)
        self.trip.leave.connect(self.show_list)
        self.trip.opened.connect(self.open_tag)
        self.trip.check.connect(self.check_kit)
        self.trip.rig.connect(self.show_rig)
        self.rig.leave.connect(self.back)

    @property
    def piece(self) -> Opened | None:
        """The piece whose record is shown."""
        return self.record.opened if self.currentWidget() is self.record else None

    @property
    def is_retired_shown(self) -> bool:
        """Whether the record of a retired piece is shown."""
        return self.piece is not None and self.piece.judged.verdict.outcome is Outcome.RETIRE

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
        if self.currentWidget() is self.trailhead:
            if not self.trailhead.back():
                self.show_list()
        elif self.currentWidget() is self.form:
            self.leave_form(self._record)
        elif self.currentWidget() is self.trip:
            if not self.trip.back():
                self._list()
        elif self.currentWidget() is self.rig:
            if not self.rig.back():
                self._leave_rig()
        elif self.piece:
            self._go_back()
        else:
            return False
        return True

    def inspect(self) -> None:
        """Begin an inspection of the piece shown."""
        if self.piece:
            self.form = form = InspectForm(self._office, self.piece, self._look, self._background)
            form.save.connect(self._save)
            form.cancel.connect(self.back)
            form.refused.connect(self._notice.refuse)
            self.addWidget(form)
            self._turn_to(form)
            form.focus_start()

    def check_kit(self, ref: str = "") -> None:
        """Begin the check before a trip. ref: the trip to offer first."""
        self.leave_form(lambda: self._check_kit(ref))

    def show_trip(self, ref: str = "") -> None:
        """Go to a trip; without a reference the one shown last, else the next one."""
        self.leave_form(lambda: self._trip(ref))

    def show_rig(self, asked: RigAsked | None = None) -> None:
        """Go to the rig; asked: one to propose at once."""
        self.leave_form(lambda: self._rig(asked))

    @property
    def is_written(self) -> bool:
        """Whether something would be lost by closing the window."""
        return bool(self.trailhead.begun) or (self.form is not None and self.form.is_written)

    def save(self) -> None:
        """Keep the inspection that is being written."""
        if self.form:
            self.form.try_save()

    def leave_form(self, then: Callable[[], object]) -> None:
        """Go on; where something is written in the form or in the check before a trip, ask first."""
        if begun := self.trailhead.begun:
            self._ask_for_begun(begun, then)
            return
        form = self.form
        if form is None or not form.is_written:
            then()
            return
        self._notice.ask(
            tr("The inspection of {tag} is not saved.", tag=form.tag),
            _what_is_lost(form),
            (tr("Keep writing"), form.focus_again),
            (tr("Throw it away"), lambda: self._throw_away(form, then)),
        )

    def _ask_for_begun(self, begun: tuple[str, ...], then: Callable[[], object]) -> None:
        """A check that is begun and not kept is not thrown away in silence."""
        self._notice.ask(
            tr_n("The check of one piece is not kept: {tags}.", "The check of {count} pieces is not kept: {tags}.",
               len(begun), tags=", ".join(begun)),
            tr("What you answered there would be lost; the other pieces are kept."),
            (tr("Keep checking"), lambda: self.trailhead.jump(begun[0])),
            (tr("Throw it away"), lambda: self._throw_begun_away(then)),
        )  # fmt: skip

    def _throw_begun_away(self, then: Callable[[], object]) -> None:
        self.trailhead.forget_begun()
        then()

    def _check_kit(self, ref: str) -> None:
        self._turn_to(self.trailhead)
        self._drop_form()
        self.trailhead.begin(ref)

    def _trip(self, ref: str) -> None:
        self._leave_for(self.trip)
        self.trip.begin(ref)

    def _rig(self, asked: RigAsked | None) -> None:
        self._leave_for(self.rig)
        self.rig.begin(asked)

    def _leave_rig(self) -> None:
        """To the trip, where one was looked at; else to the list."""
        if self.trip.trip:
            self._turn_to(self.trip)
            self.trip.focus_start()
        else:
            self._list()

    def _is_shown(self, page: QWidget) -> bool:
        return self.currentWidget() is page

    def _go_back(self) -> None:
        """From a piece to the page from which it was opened."""
        if self._came_from is self.table:
            self._list()
        else:
            self._turn_to(self._came_from)
            (self.rig if self._came_from is self.rig else self.trip).focus_start()

    def _throw_away(self, form: InspectForm, then: Callable[[], object]) -> None:
        """Go on; what held or retired the piece in a preview is written into the ledger before."""
        if not form.noted:
            then()
            return
        given = (self._office, form.tag, form.noted)
        self._background.run(leave_preview, *given, done=lambda _: then(), failed=self._notice.refuse)

    def _open(self, tag: str, failed: Callable[[Refused], object]) -> None:
        self._background.run(opened, self._office, tag, done=self._show, failed=failed)

    def _show(self, piece: Opened) -> None:
        self._came_from = next(
            (one for one in (self.trip, self.rig, self.table) if self._is_shown(one)), self._came_from
        )
        self.record.show_piece(piece)
        self._record()
        self.found.emit()

    def _record(self) -> None:
        self._turn_to(self.record)
        self._drop_form()
        self.record.focus_start()

    def _list(self) -> None:
        self._leave_for(self.table)
        self.table.refresh()
        self.table.enter(self.record.opened.tag if self.record.opened else "")

    def _leave_for(self, page: QWidget) -> None:
        """Turn to a page and let go of what was under way; what was checked before a trip is told."""
        left = self.trailhead.told_on_leaving()
        self.trip.stop()
        self._turn_to(page)
        self._drop_form()
        self.trailhead.drop()
        if left:
            self._notice.tell(tr("The checks made are kept."), left)

    def _turn_to(self, page: QWidget) -> None:
        self._notice.hide()
        self._notice.setProperty("touch", bool(page.property("touch")))
        self.setCurrentWidget(page)
        self.turned.emit()

    def _drop_form(self) -> None:
        if self.form:
            self.removeWidget(self.form)
            self.form.deleteLater()
            self.form = None

    def _save(self, tag: str, facts: NewInspection) -> None:
        says = tr("Saving…")
        self._background.run(inspected, self._office, tag, facts, done=self._saved, failed=self._not_saved, says=says)

    def _saved(self, piece: Opened) -> None:
        self._show(piece)
        self._notice.tell(tr("The inspection of {tag} is kept.", tag=piece.tag))
        self.table.refresh()

    def _not_saved(self, refusal: Refused) -> None:
        if self.form:
            self.form.not_saved(refusal)
        self._notice.refuse(refusal)


def _what_is_lost(form: InspectForm) -> str:
    lost = tr("What you typed would be lost.")
    if form.noted:
        lost += " " + tr("The ledger keeps that these values would have held or retired it.")
    return lost
