"""The inspection that is being written, from its first key until it is kept or thrown away."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QStackedWidget

from inspector.desk.background import Background
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.desk.place import Unsaved
from inspector.duties.office import Office
from inspector.language import tr
from inspector.refused import Refused

if TYPE_CHECKING:
    from inspector.desk.inspect.inspect_form import InspectForm
    from inspector.desk.opened import Opened
    from inspector.duties.log_inspection import Written


class Inspecting:
    """form: the one that is open. kept: called with the piece once its inspection is kept; leave: back to the piece."""

    def __init__(self, pages: QStackedWidget, office: Office, background: Background, notice: Notice, look: Look,
                 kept: "Callable[[Opened], object]", leave: Callable[[], object]) -> None:  # fmt: skip
        self._pages, self._office, self._background, self._notice, self._look = pages, office, background, notice, look
        self._kept, self._leave = kept, leave
        self.form: InspectForm | None = None

    @property
    def unsaved(self) -> Unsaved | None:
        """What would be lost."""
        form = self.form
        if form is None or not form.is_written:
            return None
        lost = tr("What you typed would be lost.")
        if form.noted:
            lost += " " + tr("The ledger keeps that these values would have held or retired it.")
        head = tr("The inspection of {tag} is not saved.", tag=form.tag)
        return Unsaved(head, lost, tr("Keep writing"), form.focus_again, self._throw_away, tr("Throw it away"))

    def begin(self, piece: "Opened") -> "InspectForm":
        """Open the form of a piece."""
        from inspector.desk.inspect.inspect_form import InspectForm

        self.form = form = InspectForm(self._office, piece, self._look, self._background)
        form.save.connect(self._save)
        form.cancel.connect(self._leave)
        form.refused.connect(self._notice.refuse)
        self._pages.addWidget(form)
        return form

    def drop(self) -> None:
        """Let go of the form."""
        if self.form:
            self._pages.removeWidget(self.form)
            self.form.deleteLater()
            self.form = None

    def _throw_away(self, then: Callable[[], object]) -> None:
        """Go on; the form forgets its draft, and tells the ledger of what a preview had shown."""
        if self.form:
            self.form.throw_away(then)
        else:
            then()

    def _save(self, tag: str, written: "Written") -> None:
        says = tr("Saving…")
        self._background.run(
            _inspected, self._office, tag, written, done=self._saved, failed=self._not_saved, says=says
        )

    def _saved(self, piece: "Opened") -> None:
        self._kept(piece)
        self._notice.tell(tr("The inspection of {tag} is kept.", tag=piece.tag), " ".join(piece.tells))

    def _not_saved(self, refusal: Refused) -> None:
        if self.form:
            self.form.not_saved(refusal)
        self._notice.refuse(refusal)


def _inspected(office: Office, tag: str, written: "Written") -> "Opened":
    """The piece after its inspection was kept."""
    from inspector.desk.opened import inspected

    return inspected(office, tag, written)
