"""A run of inspections through many pieces: after each save the next one opens by itself, its first check waiting."""

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.inspect.inspect_form import InspectForm
from inspector.desk.inspect.run_list import RunList
from inspector.desk.inspect.run_summary import RunSummary
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.opened import Opened, inspected, opened
from inspector.desk.place import Place, Unsaved
from inspector.desk.plain import button, said, short
from inspector.duties.due_to_inspect import due_to_inspect
from inspector.duties.log_inspection import Written
from inspector.duties.office import Office
from inspector.language import tr, tr_n
from inspector.refused import Refused


class InspectRun(Place):
    """begin: with the tags to go through; without any the run that was begun last stands as it is."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.run = RunList(())
        self.forms: dict[str, InspectForm] = {}  # the one that is open, and those skipped with something written
        self._wanted = ""  # the piece that is being fetched
        self._saving = ""  # the piece that is being kept
        self.place, self.told = short("", Type.HEAD), said("", Type.SMALL, faint=True)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Pieces inspected"))
        self.back_button = button(tr("Back"), lambda: self.step(-1), name=tr("Back to the piece before"))
        self.skip_button = button(tr("Skip"), lambda: self.step(1), name=tr("Skip this piece for now"))
        self.back_button.setToolTip(tr("Ctrl+PageUp"))
        self.skip_button.setToolTip(tr("Ctrl+PageDown"))
        self.empty = said("")
        self.summary, self.pages = RunSummary(look), QStackedWidget()
        self._lay_out()
        self._connect()

    @property
    def form(self) -> InspectForm | None:
        """The form that is open."""
        shown = self.pages.currentWidget()
        return shown if isinstance(shown, InspectForm) else None

    @property
    def written(self) -> tuple[str, ...]:
        """The tags of the forms in which something is written and not saved."""
        return tuple(tag for tag in self.run.tags if tag in self.forms and self.forms[tag].is_written)

    def begin(self, what: Sequence[str] | None = None) -> None:
        """Begin with the pieces of these tags, each once, in this order; None: go on where the run
        stands, else with all that is due."""
        if what is None:
            if not self.run.tags:
                says = tr("Looking at what is due…")
                self._background.run(
                    due_to_inspect, self._office, done=self.begin, failed=self._notice.refuse, says=says
                )
            return
        self._drop_forms()
        self.run = RunList(tuple(dict.fromkeys(what)))
        if self.run.tags:
            self._open(0)
        else:
            self._show_nothing()

    def focus_start(self) -> None:
        """The keys go to the first check, or to what ends the run."""
        if self.form:
            self.form.focus_start()
        elif self.pages.currentWidget() is self.summary:
            self.summary.focus_start()

    @property
    def can_save(self) -> bool:
        """Whether a form is open."""
        return self.form is not None

    def save(self) -> None:
        """Keep the inspection that is open."""
        if self.form:
            self.form.try_save()

    def back(self) -> bool:
        """One step back inside the page: from the summary to what was left out; False where there is none."""
        if self.pages.currentWidget() is self.summary and self.run.left:
            self._go_through_left()
            return True
        return False

    def step(self, by: int) -> None:
        """To the next piece (1) or the one before (-1) that is not inspected; past the last one to the summary."""
        if self._wanted or self._saving or not self.form:
            return
        place = self.run.next_place(by)
        if place is not None:
            self._open(place)
        elif by > 0:
            self._end()

    def come_back(self, *, changed: bool) -> None:
        """Shown again as it was left."""
        self.focus_start()

    @property
    def unsaved(self) -> Unsaved | None:
        """What would be lost by leaving: in the form that is open, or in one that was skipped."""
        if not (tags := self.written):
            return None
        head = tr_n("The inspection of {tags} is not saved.", "{count} inspections are not saved: {tags}.",
                    len(tags), tags=", ".join(tags))  # fmt: skip
        text = tr("What you typed would be lost; what was saved is kept.")
        keep, drop = partial(self._open, self.run.tags.index(tags[0])), partial(self._throw_away, tags)
        return Unsaved(head, text, tr("Keep writing"), keep, drop, tr("Throw it away"))

    def _throw_away(self, tags: Sequence[str], then: Callable[[], object]) -> None:
        """One form after the other, then go on."""
        if not tags:
            self._drop_forms()
            then()
            return
        self.forms[tags[0]].throw_away(lambda: self._throw_away(tags[1:], then))

    def _open(self, place: int) -> None:
        self.run.at = place
        tag = self.run.tag
        if tag in self.forms:
            self._show_form(self.forms[tag])
            return
        self._wanted = tag
        self._background.run(opened, self._office, tag, done=self._fetched, failed=self._not_fetched)

    def _fetched(self, piece: Opened) -> None:
        if piece.tag.casefold() != self._wanted.casefold():
            return
        tag, self._wanted = self._wanted, ""
        form = InspectForm(self._office, piece, self._look, self._background)
        form.save.connect(self._save)
        form.cancel.connect(self.leave)
        form.refused.connect(self._notice.refuse)
        self.forms[tag] = form
        self.pages.addWidget(form)
        self._show_form(form)

    def _not_fetched(self, refusal: Refused) -> None:
        self._wanted = ""
        self._end()  # it stays among those left out
        self._notice.refuse(refusal)

    def _show_form(self, form: InspectForm) -> None:
        before = self.form
        self.pages.setCurrentWidget(form)
        if before and before is not form and not before.is_written:
            self._drop(before)
        self._tell()
        form.focus_start()

    def _save(self, tag: str, written: Written) -> None:
        self._saving, says = self.run.tag, tr("Saving…")
        given = (self._office, tag, written)
        self._background.run(inspected, *given, done=self._saved, failed=self._not_saved, says=says)

    def _saved(self, piece: Opened) -> None:
        """On to the next one; what was skipped comes again at the end, when it is asked for."""
        tag, self._saving = self._saving, ""
        if tag not in self.forms:
            return  # the run was left or begun anew meanwhile
        self.run.outcomes[tag] = piece.judged
        headline = piece.judged.explanation.headline
        self._notice.hide()
        self.told.setText(" ".join([tr("{tag} is kept. {outcome}", tag=piece.tag, outcome=headline), *piece.tells]))
        place = self.run.next_place(1)
        self._drop(self.forms[tag])
        if place is None:
            self._end()
        else:
            self._open(place)

    def _not_saved(self, refusal: Refused) -> None:
        tag, self._saving = self._saving, ""
        if form := self.forms.get(tag):
            form.not_saved(refusal)
        self._notice.refuse(refusal)

    def _end(self) -> None:
        self.summary.show_run(self.run, self.written)
        before = self.form
        self.pages.setCurrentWidget(self.summary)
        if before and not before.is_written:
            self._drop(before)
        self._tell()
        self.summary.focus_start()

    def _go_through_left(self) -> None:
        self._open(self.run.tags.index(self.run.left[0]))

    def _drop(self, form: InspectForm) -> None:
        self.forms = {tag: one for tag, one in self.forms.items() if one is not form}
        self.pages.removeWidget(form)
        form.deleteLater()

    def _drop_forms(self) -> None:
        self._wanted = self._saving = ""
        for form in tuple(self.forms.values()):
            self._drop(form)
        self.told.setText("")

    def _show_nothing(self) -> None:
        self.empty.setText(tr("Nothing is due. Choose pieces in the gear list to inspect them one after the other."))
        self.pages.setCurrentWidget(self.empty)
        self._tell()

    def _tell(self) -> None:
        """Where the run stands."""
        is_form = self.form is not None
        count = len(self.run.tags)
        here = (
            tr("{number} of {count}  ·  {tag}", number=self.run.at + 1, count=count, tag=self.run.tag)
            if is_form
            else ""
        )
        self.place.setText(here)
        self.bar.setMaximum(max(count, 1))
        self.bar.setValue(len(self.run.outcomes))
        done = len(self.run.outcomes)
        self.bar.setAccessibleDescription(tr("{done} of {count} inspected", done=done, count=count))
        self.head.setVisible(is_form)
        self.back_button.setEnabled(is_form and self.run.next_place(-1) is not None)

    def _lay_out(self) -> None:
        self.head = QWidget()
        row = QHBoxLayout(self.head)
        row.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        row.setSpacing(2 * GRID)
        row.addWidget(self.place)
        row.addWidget(self.told, 1)
        row.addWidget(self.back_button)
        row.addWidget(self.skip_button)
        row.addWidget(button(tr("End the run"), self._end))
        for page in (self.empty, self.summary):
            self.pages.addWidget(page)
        self.empty.setMargin(2 * GRID)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignTop)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(self.head)
        layout.addWidget(self.bar)
        layout.addWidget(self.pages, 1)

    def _connect(self) -> None:
        for keys, by in (("Ctrl+PgDown", 1), ("Ctrl+PgUp", -1)):
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(lambda by=by: self.step(by))
        self.summary.opened.connect(self.opened)
        self.summary.again.connect(self._go_through_left)
        self.summary.done.connect(self.leave)
