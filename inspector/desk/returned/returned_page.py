"""The page of a sheet that came back on paper: its number is typed, then what was ticked, and all of it is kept."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Place, Unsaved
from inspector.desk.plain import button, column, row, said, scroll
from inspector.desk.returned.sheet_form import SheetForm
from inspector.drawings.marks import outcome_word
from inspector.duties.check_piece import check_sheet
from inspector.duties.office import Office
from inspector.duties.returned_sheet import ReturnedSheet, returned_sheet
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
        self.number = FaultField(tr("Number of the sheet"), tr("it stands at the head of the sheet"))
        self.open_button = button(tr("Open the sheet"), self.open_sheet, rank="first")
        self._stack = QStackedWidget()
        self._start = self._start_page()
        self._stack.addWidget(self._start)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(self._stack)
        self.number.moves.connect(lambda step: self.open_sheet() if step > 0 else None)

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
        else:
            self.number.setFocus()

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

    def _show(self, sheet: ReturnedSheet) -> None:
        self._close()
        self.form = SheetForm(self._office, sheet, self._look)
        self.form.keep.connect(self._keep)
        self._stack.addWidget(self.form)
        self._stack.setCurrentWidget(self.form)
        self.focus_start()

    def _keep(self, by: Person, pieces: object, day: object) -> None:
        if self.form:
            self._background.run(
                check_sheet, self._office, self.form.sheet.number, by.id, pieces, day,
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
        if self.form:
            self._stack.removeWidget(self.form)
            self.form.hide()
            self.form.deleteLater()
        self.form = None
        self._stack.setCurrentWidget(self._start)

    def _start_page(self) -> QWidget:
        says = tr(
            "The number at the head of the sheet tells for which trip it was. Its pieces come in the order of the "
            "paper; all of it is kept, or nothing. What a member ticked can keep a piece back and never releases one."
        )
        page = column([
            said(tr("Type a returned sheet in"), Type.DISPLAY),
            said(says),
            said(tr("Number of the sheet"), Type.SMALL, faint=True),
            self.number,
            self.number.fault,
            row([self.open_button, button(tr("Leave"), self.leave.emit)]),
        ], GRID + GRID // 2)  # fmt: skip
        self._look.changed.connect(lambda: page.setMaximumWidth(self._look.px(_WIDEST_PX)))
        page.setMaximumWidth(self._look.px(_WIDEST_PX))
        return scroll(page, tr("Type a returned sheet in"))
