"""The page of a sheet that came back: read from files, or typed in by its number.

It is looked through, then all of it is kept, or nothing.
"""

from collections.abc import Callable
from typing import Any

from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.piece.handed import Handed, handed
from inspector.desk.place import Place, Unsaved
from inspector.desk.plain import button, column, hairline, row, said, scroll
from inspector.desk.returned.doubts import DoubtPage
from inspector.desk.returned.files_part import FilesPart, read_given
from inspector.desk.returned.read_list import read_list
from inspector.desk.returned.sheet_form import SheetForm
from inspector.drawings.marks import outcome_word
from inspector.duties.office import Office
from inspector.duties.read_returned import ReadBack, SheetBack
from inspector.duties.returned_sheet import ReturnedSheet, returned_sheet
from inspector.duties.take_returned import take_returned
from inspector.gear.judged import Judged
from inspector.gear.person import Person
from inspector.language import tr, tr_n
from inspector.refused import Refused

_WIDEST_PX = 560


class ReturnedPage(Place):
    """begin: with the number of a sheet, to open it at once."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.form: SheetForm | None = None
        self.doubts: DoubtPage | None = None
        self.files = FilesPart()
        self.number = FaultField(tr("Number of the sheet"), tr("it stands at the head of the sheet"))
        self.open_button = button(tr("Open the sheet"), self.open_sheet, rank="first")
        self._back: SheetBack | None = None
        self._stack = QStackedWidget()
        self._start = self._start_page()
        self._stack.addWidget(self._start)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(self._stack)
        self.number.moves.connect(lambda step: self.open_sheet() if step > 0 else None)
        self.files.came.connect(self.read)
        self.setAcceptDrops(True)

    def begin(self, what: Any = None) -> None:
        """What is typed in stays; what: the number of a sheet."""
        if what and not (self.form and self.form.is_written):
            self.number.setText(str(what))
            self.open_sheet()

    def come_back(self, *, changed: bool) -> None:
        """All that is typed stands."""
        self.focus_start()

    def focus_start(self) -> None:
        """The keys go to the number, or to who looked."""
        if self.form:
            self.form.focus_start()
        elif self.doubts:
            self.doubts.focus_start()
        elif self._stack.currentWidget() is self._start:
            self.files.choose_button.setFocus()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files and pictures may be dropped here, as long as no sheet stands open."""
        if not self.form and handed(event.mimeData()).is_something:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Read what was dropped."""
        event.acceptProposedAction()
        self.read(handed(event.mimeData()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A picture or files are pasted."""
        given = handed(QGuiApplication.clipboard().mimeData())
        if event.matches(QKeySequence.StandardKey.Paste) and given.is_something and not self.form:
            self.read(given)
        else:
            super().keyPressEvent(event)

    def read(self, given: Handed) -> None:
        """Read files in the worker; it can be stopped, and nothing is kept by it."""
        if given.is_something:
            self._background.run_long(
                read_given, self._office, given, done=self._found, failed=self._notice.refuse, says=tr("Reading…")
            )  # fmt: skip

    def _found(self, found: ReadBack) -> None:
        """One sheet and nothing to tell: it is opened at once."""
        self._close()
        if len(found.sheets) == 1 and not found.unread:
            self._look_through(found.sheets[0])
            return
        self._put(read_list(found, self._look, self._look_through, self._close))

    def _look_through(self, back: SheetBack) -> None:
        """What is not clear first, then the sheet as it was read."""
        self._close()
        if not back.doubtful:
            self._show(back.sheet, back)
            return
        self.doubts = DoubtPage(back, self._look)
        self.doubts.settled.connect(lambda settled: self._show(settled.sheet, settled))
        self._put(self.doubts)
        self.doubts.focus_start()

    def _put(self, part: QWidget) -> None:
        self._stack.addWidget(part)
        self._stack.setCurrentWidget(part)

    @property
    def unsaved(self) -> Unsaved | None:
        """The sheet that is half typed in."""
        form = self.form
        if form is None or not form.is_written:
            return None
        text = tr("What you typed of the sheet {number} is not kept yet.", number=form.sheet.number)
        return Unsaved(tr("The sheet is not kept"), text, tr("Keep the sheet"), form.try_keep, self._drop,
                       tr("Throw it away"))  # fmt: skip

    def open_sheet(self) -> None:
        """Find the sheet and show what it asks."""
        self.number.tell(None)
        self._background.run(
            returned_sheet, self._office, self.number.text(), done=self._show, failed=self.number.tell
        )  # fmt: skip

    def _show(self, sheet: ReturnedSheet, back: SheetBack | None = None) -> None:
        self._close()
        self._back = back
        self.form = SheetForm(self._office, sheet, self._look, back)
        self.form.keep.connect(self._keep)
        self._put(self.form)
        self.focus_start()

    def _keep(self, by: Person, pieces: object, day: object) -> None:
        if self.form:
            files = self._back.files if self._back else ()
            self._background.run_long(
                take_returned, self._office, self.form.sheet.number, by.id, pieces, day, files,
                done=self._kept, failed=self._refused, says=tr("Saving…"),
            )  # fmt: skip

    def _kept(self, judged: tuple[Judged, ...]) -> None:
        head = tr_n("The sheet is kept: one piece was checked.", "The sheet is kept: {count} pieces were checked.",
                    len(judged))  # fmt: skip
        lines = [tr("{tag}: {outcome}", tag=one.dossier.item.tag, outcome=outcome_word(one.verdict.outcome))
                 for one in judged]  # fmt: skip
        self._close()
        self.number.clear()
        self.focus_start()
        self._notice.tell(head, " · ".join(lines))

    def _refused(self, refusal: Refused) -> None:
        if self.form:
            self.form.refuse(refusal)

    def _drop(self, then: Callable[[], object]) -> None:
        self._close()
        then()

    def _close(self) -> None:
        """Back to the number."""
        shown = self._stack.currentWidget()
        if shown and shown is not self._start:
            self._stack.removeWidget(shown)
            shown.hide()
            shown.deleteLater()
        self.form, self.doubts, self._back = None, None, None
        self._stack.setCurrentWidget(self._start)

    def _start_page(self) -> QWidget:
        says = tr(
            "The number at the head of the sheet tells for which trip it was. Its pieces come in the order of the "
            "paper; all of it is kept, or nothing. What a member ticked can keep a piece back and never releases one."
        )
        page = column([
            said(tr("A sheet came back"), Type.DISPLAY),
            self.files,
            hairline(),
            said(tr("Type it in by hand"), Type.HEAD),
            said(says),
            said(tr("Number of the sheet"), Type.SMALL, faint=True),
            self.number,
            self.number.fault,
            row([self.open_button, button(tr("Leave"), self.leave.emit)]),
        ], GRID + GRID // 2)  # fmt: skip
        self._look.fit(page, QWidget.setMaximumWidth, _WIDEST_PX)
        return scroll(page, tr("A sheet came back"))
