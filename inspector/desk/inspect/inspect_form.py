"""The form of an inspection: graded by number keys, measured field by field, the verdict beside it while one types."""

from collections.abc import Callable

from msgspec.structs import replace
from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QGuiApplication,
    QHideEvent,
    QKeyEvent,
    QKeySequence,
    QResizeEvent,
    QShowEvent,
)
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk.alive import while_alive
from inspector.desk.background import Background
from inspector.desk.drafting import DraftKeeper, Values
from inspector.desk.inspect.draft_offer import DraftOffer
from inspector.desk.inspect.form_body import FormBody
from inspector.desk.inspect.form_draft import files_of, noted_in, restore, told_of, values_of
from inspector.desk.inspect.form_words import left_out, not_ready, nothing_yet, still_open
from inspector.desk.inspect.preview_pane import PreviewPane
from inspector.desk.look import GRID, Look, Type
from inspector.desk.opened import Opened, draft_key
from inspector.desk.plain import button, hairline, said, short
from inspector.duties.keep_draft import Draft
from inspector.duties.keep_passphrases import seconds_asked
from inspector.duties.log_inspection import Written
from inspector.duties.office import Office
from inspector.duties.plausible import Caution, cautions, widest_hole
from inspector.duties.preview_verdict import first_values, leave_preview, note_first, preview_verdict
from inspector.gear.inspection import FirstValue, NewInspection
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import Figure

_PAUSE_MS = 400
_NARROW_PX = 800
_ROOMY_PX = 1100
_STRIP_PX = 136
_LOWEST_PART = 4  # of the height, for the preview below the form


class InspectForm(QWidget):
    """save: an inspection to keep, as (tag, Written). cancel: leave the form. refused: something stands in the way.

    background: the window's; the form asks it for its draft, its photos and what stands in the register beside it.
    """

    save = Signal(str, object)
    cancel = Signal()
    refused = Signal(object)

    def __init__(self, office: Office, opened: Opened, look: Look, background: Background) -> None:
        super().__init__()
        self.setObjectName("page")
        self.setAcceptDrops(True)
        self._office, self._opened, self._look = office, opened, look
        self._background = background
        self._dossier = opened.judged.dossier
        self.body = FormBody(office, opened, look, self._background)
        self.head, self.rows, self.boxes = self.body.head, self.body.rows, self.body.boxes
        self.photos, self._area = self.body.photos, self.body.area
        self.preview, self.offer = PreviewPane(look), DraftOffer()
        self.noted: tuple[FirstValue, ...] = ()  # what held or retired the piece in a preview
        self._widest_hole: Figure | None = None
        self.save_button = button(tr("Save inspection"), self.try_save, rank="first")
        self._left = said("", Type.SMALL, faint=True)
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self.look_ahead)
        self._waits = False
        self.keeper = DraftKeeper(office, draft_key(opened.tag), self._background, self._values, self)
        self._draft: Draft | None = None
        self._lay_out()
        self._connect()
        self.look_ahead()
        self._look_beside()

    @property
    def tag(self) -> str:
        """The tag of the piece."""
        return self._opened.tag

    @property
    def is_written(self) -> bool:
        """Whether something would be lost by leaving; what a preview noted is, even where nothing stands any more."""
        return self.body.is_written or (bool(self.noted) and not self.offer.is_open)

    def focus_start(self) -> None:
        """Begin at the first check, or at the offer to go on with a draft."""
        if self.offer.is_open:
            self.offer.go_on.setFocus()
        else:
            self.body.focus_start()

    def focus_again(self) -> None:
        """Go back to the first check that is open, else to the first stop."""
        self.body.focus_again()

    def hideEvent(self, event: QHideEvent) -> None:
        """A form that was left previews nothing any more: what it reads may be closed by then. Its draft is kept."""
        self._waits = self._pause.isActive()
        self._pause.stop()
        self.keeper.flush()
        super().hideEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        """Back again, it previews what was typed last."""
        super().showEvent(event)
        if self._waits:
            self._pause.start()

    def facts(self) -> tuple[NewInspection, int]:
        """What is clear of what was typed, and how many readings are not; these are shown at their fields."""
        return self.body.facts()

    def look_ahead(self) -> None:
        """Show what the verdict would be, and what is out of the ordinary."""
        self._pause.stop()
        facts, faults = self.facts()
        QTimer.singleShot(0, self, self.body.keep_in_sight)  # once faults and choices have taken their room
        self.body.refuse(None)
        self._caution(facts)
        self._left.setText(still_open(self.body))
        if not facts.answers and not facts.readings:
            self.preview.wait(nothing_yet(faults))
            return
        by, more = self.head.inspector, self.head.more
        second = more.second.value if more.proof.text() else ""  # a wrong passphrase is refused when it is saved
        seated = replace(self._office, officer=by, vouched=self._office.vouches_for(by), vouched_second=second)
        try:
            judged = preview_verdict(seated, self._dossier, facts)
        except Refused as refusal:
            self.body.refuse(refusal)
            self.preview.refuse(refusal)
        else:
            self.noted = note_first(self.noted, judged, facts)
            self.preview.show_verdict(judged, left_out(self.body, faults))

    def try_save(self) -> None:
        """Hand the inspection on to be kept, unless a field cannot be read or waits for a second look."""
        facts, faults = self.facts()
        self._caution(facts)
        if self.offer.is_open or not self.save_button.isEnabled():
            return
        if refusal := not_ready(self.body, faults):
            self.refused.emit(refusal)
            QTimer.singleShot(0, self, self.body.go_to_fault)  # once the message above has taken its room
            return
        self.save_button.setEnabled(False)
        whole = replace(facts, first_values=first_values(self.noted, facts))
        written = Written(whole, self.body.confirmed, self.photos.photos, self.head.more.proof.text())
        self.keeper.hold(lambda: self.save.emit(self.tag, written))

    def not_saved(self, refusal: Refused) -> None:
        """Show why nothing was kept; all that was typed stays."""
        self.save_button.setEnabled(True)
        self.keeper.resume()
        self.body.refuse(refusal)

    def throw_away(self, then: Callable[[], object]) -> None:
        """Forget what was typed and its draft, then go on. What held or retired the piece in a preview is written
        into the ledger before."""
        if not self.noted:
            self.keeper.forget(then)
            return
        given = (self._office, self.tag, self.noted)
        self._background.run(
            leave_preview, *given, done=lambda _: self.keeper.forget(then), failed=self.refused.emit
        )  # fmt: skip

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped anywhere on the form."""
        if self.photos.takes(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take what was dropped."""
        event.acceptProposedAction()
        self.photos.take(event.mimeData())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A picture is pasted wherever no text is."""
        mime = QGuiApplication.clipboard().mimeData()
        if event.matches(QKeySequence.StandardKey.Paste) and self.photos.takes(mime):
            self.photos.take(mime)
        else:
            super().keyPressEvent(event)

    def _caution(self, facts: NewInspection) -> None:
        found: tuple[Caution, ...] = ()
        if facts.readings or self.is_written:
            found = cautions(self._office, self._dossier, facts, self._widest_hole)
        self.body.caution(found)

    def _look_beside(self) -> None:
        """Ask for the draft, for what other pieces say of this one, and whether a second name is to be proved."""
        self.keeper.look()
        given = (self._office, self._dossier)
        self._background.run(widest_hole, *given, done=while_alive(self, self._know_hole), failed=lambda _: None)
        ask = while_alive(self, self.head.more.ask_proof)
        self._background.run(seconds_asked, self._office, done=ask, failed=lambda _: None)

    def _know_hole(self, hole: Figure | None) -> None:
        self._widest_hole = hole
        if hole and self.is_written:
            self._pause.start()

    def _values(self) -> Values | None:
        """What the draft holds; None while nothing is written."""
        if not self.is_written:
            return None
        photos = self.photos.photos
        return {
            **values_of(self.head, self.rows, self.boxes, self.noted),
            "files": [one.path for one in photos if one.path],
            "photos": sum(not one.path for one in photos),
        }

    def _offer_draft(self, draft: Draft) -> None:
        """Offer to go on. What its preview had noted holds from now on, whatever the answer."""
        self._draft = draft
        noted = noted_in(draft.values)
        known = {(one.observation, one.point) for one in noted}
        self.noted = (*noted, *(one for one in self.noted if (one.observation, one.point) not in known))
        self._open_body(False)
        self.offer.offer(draft, self._opened.people, self._office.officer, told_of(draft.values))

    def _go_on(self) -> None:
        if self._draft:
            self.offer.hide()
            self._open_body(True)
            restore(self._draft.values, self.head, self.rows, self.boxes)
            self.photos.take_files(files_of(self._draft.values))
            self.focus_again()

    def _begin_anew(self) -> None:
        self.throw_away(self._begun_anew)

    def _begun_anew(self) -> None:
        self.noted = ()
        self.offer.hide()
        self._open_body(True)
        self.keeper.resume()
        self.focus_start()

    def _open_body(self, is_open: bool) -> None:
        self.body.setEnabled(is_open)
        self.save_button.setEnabled(is_open)

    def _lay_out(self) -> None:
        foot = QHBoxLayout()
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.save_button)
        foot.addWidget(button(tr("Leave"), self.cancel.emit, name=tr("Leave without saving")))
        foot.addWidget(short(self._opened.tag, bold=True))  # the head with the tag is scrolled away
        foot.addWidget(self._left, 1)
        left = QVBoxLayout()
        left.addWidget(self.offer)
        left.addWidget(self.body, 1)
        left.addWidget(hairline())
        left.addLayout(foot)
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(2 * GRID, GRID, 0, GRID)
        self._box.addLayout(left)
        self._box.addWidget(self.preview)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Beside the form where there is room for both, else below it."""
        super().resizeEvent(event)
        wide = self.width() >= self._look.px(_NARROW_PX)
        self._box.setDirection(QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom)
        self.preview.setMinimumHeight(0 if wide else min(self._look.px(_STRIP_PX), self.height() // _LOWEST_PART))
        even = wide and self.width() >= self._look.px(_ROOMY_PX)
        self._box.setStretch(0, 3 if even else 2)
        self._box.setStretch(1, 2 if even else 1)

    def _connect(self) -> None:
        self.body.changed.connect(self._pause.start)
        self.body.changed.connect(self.keeper.touch)
        self.keeper.found.connect(self._offer_draft)
        self.keeper.refused.connect(self.refused)
        self.offer.go_on.clicked.connect(self._go_on)
        self.offer.begin_anew.clicked.connect(self._begin_anew)
