"""The page that asks what a deed needs, does it, and says at its field what is refused."""

from collections.abc import Iterable
from functools import partial
from typing import Any

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.form.asked import Part
from inspector.desk.form.boxes import Box
from inspector.desk.form.build import box_for
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Place
from inspector.desk.plain import Fold, button, column, hairline, said, scroll
from inspector.duties.form_facts import FormFacts, form_facts
from inspector.duties.keep_draft import forget, keep, kept
from inspector.duties.office import Office
from inspector.duties.overtaken import Overtaken
from inspector.language import tr
from inspector.refused import Refused

_WIDEST_PX = 760
_PAUSE_MS = 1000


class FormPage(Place):
    """finished: a deed was done, and what came of it."""

    finished = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.deed: Deed[Any] | None = None
        self.boxes: list[Box] = []
        self._about: object = None
        self._draft_key = ""
        self._as_begun: dict[str, str] = {}
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        self._inside: QWidget | None = None
        self._area: QScrollArea | None = None
        self.do_button = button("", self.try_do, rank="first")
        self.leave_button = button(tr("Leave"), self.leave.emit, name=tr("Leave without doing it"))
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self._keep_draft)

    def show_deed(self, deed: Deed[Any], about: object, key: str = "") -> None:
        """Ask what a deed needs. key: tells the drafts of one deed about several things apart."""
        self._let_go()
        self.deed, self._about, self._draft_key = deed, about, f"{deed.key} {key}".strip()
        self._background.run(
            _known, self._office, self._draft_key, done=partial(self._show, deed, about), failed=self._notice.refuse
        )

    @property
    def stays(self) -> bool:
        """Whether the form stays open for the next one."""
        return self.deed is not None and self.deed.stays

    @property
    def can_save(self) -> bool:
        """Whether a form stands here."""
        return self.deed is not None

    def save(self) -> None:
        """Do the deed."""
        self.try_do()

    @property
    def is_written(self) -> bool:
        """Whether something stands here that did not stand here beforehand."""
        return any(box.draft != self._as_begun[box.asked.key] for box in self.boxes)

    def box(self, key: str) -> Box:
        """The field with this key."""
        return next(one for one in self.boxes if one.asked.key == key)

    def focus_start(self) -> None:
        """Begin at the first field; where nothing is asked, at the way out: a key held too long must do nothing."""
        if self.boxes:
            self.boxes[0].take_keys()
        else:
            self.leave_button.setFocus()

    def focus_again(self) -> None:
        """Go back to the first field that is wrong, else to the first one."""
        wrong = next((one for one in self.boxes if one.fault_text), None)
        if wrong or self.boxes:
            self._go_to(wrong or self.boxes[0])

    def stop(self) -> None:
        """The form is left: what was typed is set aside and stands here again the next time."""
        if self.deed and self.is_written:
            self._set_aside(self.deed)
        self._let_go()

    def _set_aside(self, deed: Deed[Any]) -> None:
        try:
            keep(self._office, self._draft_key, self._drafted())
        except Refused as refusal:
            self._notice.refuse(refusal)
        else:
            head = tr("What you typed for “{title}” is set aside.", title=deed.title)
            self._notice.tell(head, tr("It stands there again when you open that form."))

    def try_do(self) -> None:
        """Do the deed, unless a field cannot be read or lacks what is needed."""
        if self.deed is None or not self.do_button.isEnabled():
            return
        given: dict[str, object] = {}
        for box in self.boxes:
            try:
                given[box.asked.key] = _checked(box)
                box.tell(None)
            except Refused as refusal:
                box.tell(refusal)
        if len(given) < len(self.boxes):
            QTimer.singleShot(0, self, self.focus_again)
            return
        self.do_button.setEnabled(False)
        self._background.run_long(
            self.deed.do, self._office, self._about, Values(given), done=self._done, failed=self._refused,
            says=tr("Saving…"),
        )  # fmt: skip

    def _done(self, done: Done) -> None:
        self._pause.stop()
        forget(self._office, self._draft_key)
        deed, about = self.deed, self._about
        if deed and deed.stays:
            self.show_deed(deed, about)
        else:
            self._let_go()
        self.finished.emit(done)

    def _refused(self, refusal: Refused) -> None:
        """Say it at the field that it names, else in the strip; all that was typed stays."""
        self.do_button.setEnabled(True)
        if self.deed and isinstance(refusal, Overtaken):
            self._about = self.deed.goes_on(self._about, refusal.seen)
            for part in refusal.parts[1:]:
                self._tell(part)
        if box := self._tell(refusal):
            QTimer.singleShot(0, self, partial(self._go_to, box))

    def _tell(self, refusal: Refused) -> Box | None:
        """Say it at the field that it names; without one in the strip."""
        box = next((one for one in self.boxes if refusal.field.casefold() in one.asked.called), None)
        if box:
            self._open_folds(box)
            box.tell(refusal)
        else:
            self._notice.refuse(refusal)
        return box

    def _go_to(self, box: Box) -> None:
        self._open_folds(box)
        box.take_keys()
        if self._area:
            self._area.ensureWidgetVisible(box, 0, 6 * GRID)

    def _open_folds(self, box: Box) -> None:
        for fold in self.findChildren(Fold):
            if fold.holds(box):
                fold.head.setChecked(True)

    def _show(self, deed: Deed[Any], about: object, known: tuple[FormFacts, dict[str, str]]) -> None:
        if deed is not self.deed or about is not self._about:
            return  # another one was asked for meanwhile
        facts, draft = known
        parts = [one if isinstance(one, Part) else Part("", (one,)) for one in deed.fields(facts, about)]
        self.boxes = [box_for(asked, self._office, self._look) for part in parts for asked in part.fields]
        self._as_begun = {box.asked.key: box.draft for box in self.boxes}
        self._lay_out(deed, parts, bool(draft))
        for box in self.boxes:
            if box.asked.key in draft:
                box.give(draft[box.asked.key])
            box.changed.connect(self._pause.start)
            box.moves.connect(partial(self._move, box))
        self.focus_start()

    def _lay_out(self, deed: Deed[Any], parts: list[Part], drafted: bool) -> None:
        head: list[QWidget] = [said(deed.title, Type.DISPLAY), said(deed.says)]
        if drafted:
            again = button(tr("Begin anew"), self._begin_anew)
            head.append(_row([said(tr("You began this before; what you typed stands here again.")), again]))
        fields = [*self._parts(parts, more=False), *self._folded()]
        form = column([*head, hairline(), *fields], GRID + GRID // 2)
        form.setMaximumWidth(self._look.px(_WIDEST_PX))
        self._area = scroll(_beside_air(form), deed.title)
        self.do_button.setText(deed.button)
        self.do_button.setAccessibleName(deed.button)
        self.do_button.setEnabled(True)
        needed = said(tr("* is needed"), Type.SMALL, faint=True)
        foot = _row(
            [self.do_button, self.leave_button, *([needed] if any(box.asked.needed for box in self.boxes) else [])]
        )
        self._inside = QWidget()
        inside = QVBoxLayout(self._inside)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.addWidget(self._area, 1)
        inside.addWidget(hairline())
        inside.addWidget(foot)
        self._layout.addWidget(self._inside)

    def _parts(self, parts: Iterable[Part], *, more: bool) -> list[QWidget]:
        made: list[QWidget] = []
        for part in parts:
            keys = {one.key for one in part.fields if one.more is more}
            boxes: list[QWidget] = [box for box in self.boxes if box.asked.key in keys]
            if boxes and part.title:
                made.append(said(part.title, Type.HEAD))
            made += boxes
        return made

    def _folded(self) -> list[QWidget]:
        """What is seldom filled in."""
        boxes: list[QWidget] = [box for box in self.boxes if box.asked.more]
        return [Fold(tr("More"), lambda: column(boxes, GRID + GRID // 2), at_once=True)] if boxes else []

    def _move(self, box: Box, step: int) -> None:
        """Go to the next field that is seen; after the last one to the button."""
        # asked of the form, not of the page: Qt shows a new form in its next turn, and a key may come before
        seen = [one for one in self.boxes if self._inside and one.isVisibleTo(self._inside)]
        place = seen.index(box) + step
        if place >= len(seen):
            self.do_button.setFocus()
        elif place >= 0:
            self._go_to(seen[place])

    def _keep_draft(self) -> None:
        if self.is_written:
            self._background.run(
                keep, self._office, self._draft_key, self._drafted(), done=lambda _: None, failed=lambda _: None
            )

    def _drafted(self) -> dict[str, object]:
        return {box.asked.key: box.draft for box in self.boxes if box.asked.drafted}

    def _begin_anew(self) -> None:
        for box in self.boxes:
            box.give(self._as_begun[box.asked.key])
        self._pause.stop()
        forget(self._office, self._draft_key)
        self.focus_start()

    def _let_go(self) -> None:
        self._pause.stop()
        if self._inside:
            self.do_button.setParent(None)
            self.leave_button.setParent(None)
            self._layout.removeWidget(self._inside)
            self._inside.hide()
            self._inside.deleteLater()
        self._inside, self._area, self.deed, self.boxes = None, None, None, []


def _known(office: Office, draft_key: str) -> tuple[FormFacts, dict[str, str]]:
    draft = kept(office, draft_key)
    return form_facts(office), {key: str(value) for key, value in draft.values.items()} if draft else {}


def _checked(box: Box) -> object:
    """The value of a field; refused where what is needed is missing."""
    value = box.value()
    if box.asked.needed and (value is None or (isinstance(value, str) and not value.strip())):
        raise Refused(box.asked.label, tr("It is needed."), box.asked.hint or tr("Fill it in."))
    return value


def _beside_air(form: QWidget) -> QWidget:
    """A form no wider than it reads well; a row reckons with that width, a column would not."""
    page = QWidget()
    layout = QHBoxLayout(page)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.addWidget(form, 1)
    layout.addStretch(0)
    return page


def _row(parts: list[QWidget]) -> QWidget:
    line = QWidget()
    layout = QHBoxLayout(line)
    layout.setContentsMargins(0, GRID // 2, 0, GRID // 2)
    layout.setSpacing(2 * GRID)
    for part in parts:
        layout.addWidget(part)
    layout.addStretch(1)
    return line
