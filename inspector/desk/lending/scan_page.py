"""Handing out by scanning: one tag after another goes into a list, and what must stay says at once why."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Mark
from inspector.desk.plain import button, clear, column, hairline, said, scroll
from inspector.desk.tag_lines import Open, tag_button
from inspector.drawings.marks import outcome_word
from inspector.duties.lend import MayLeave, may_leave
from inspector.duties.office import Office
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused

_MARK_PX = 20


class ScanPage(QWidget):
    """The newest scan stands on top.

    done: the tags that may go out. left: nothing goes out. opened: a tag whose record is asked for.
    """

    done = Signal(tuple)
    left = Signal()
    opened = Signal(str)

    def __init__(self, office: Office, background: Background, look: Look) -> None:
        super().__init__()
        self._office, self._background, self._look = office, background, look
        self.pieces: tuple[MayLeave, ...] = ()
        self.line = FaultField(tr("Tag of a piece to hand out"), tr("Scan or type a tag, then Return"))
        self.line.moves.connect(lambda _: self.add())
        self.go_button = button(tr("Go on: to whom?"), self._go_on, rank="first")
        self._told = said("", faint=True)
        self._list = QVBoxLayout()
        self._list.setSpacing(GRID)
        self._lay_out()

    @property
    def tags(self) -> tuple[str, ...]:
        """What may go out, in the order in which it was scanned."""
        return tuple(one.tag for one in reversed(self.pieces) if not one.why)

    def begin(self) -> None:
        """An empty list."""
        self.pieces = ()
        self.line.clear()
        self.line.tell(None)
        self._show()

    def again(self) -> None:
        """Ask anew of what is listed: it may have changed meanwhile."""
        tags = [one.tag for one in reversed(self.pieces)]
        self.begin()
        for tag in tags:
            self._ask(tag)

    def add(self) -> None:
        """Put the piece whose tag is written there into the list; with nothing written, go on."""
        tag = self.line.text().strip()
        if not tag:
            if self.tags:
                self._go_on()
            return
        self.line.clear()
        self.line.tell(None)
        self._ask(tag)

    def _ask(self, tag: str) -> None:
        self._background.run(
            may_leave, self._office, tag, done=self._add, failed=lambda refusal: self._refuse(tag, refusal)
        )

    def _add(self, one: MayLeave) -> None:
        if any(known.tag == one.tag for known in self.pieces):
            self._told.setText(tr("{tag} stands in the list already.", tag=one.tag))
            return
        self.pieces = (one, *self.pieces)
        self._show()

    def _refuse(self, tag: str, refusal: Refused) -> None:
        """What cannot be found stays in the line, unless something else was typed meanwhile."""
        if not self.line.text():
            self.line.setText(tag)
            self.line.selectAll()
        self.line.tell(refusal)

    def _drop(self, tag: str) -> None:
        self.pieces = tuple(one for one in self.pieces if one.tag != tag)
        self._show()
        self.line.setFocus()

    def _go_on(self) -> None:
        if tags := self.tags:
            self.done.emit(tags)

    def _lay_out(self) -> None:
        foot = QHBoxLayout()
        foot.setSpacing(2 * GRID)
        foot.addWidget(self.go_button)
        foot.addWidget(button(tr("Leave"), self.left.emit, name=tr("Leave without handing anything out")))
        foot.addWidget(self._told, 1)
        inside = QWidget()
        around = QVBoxLayout(inside)
        around.setContentsMargins(0, 0, 2 * GRID, 0)
        around.addLayout(self._list)
        around.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(said(tr("Hand pieces out"), Type.DISPLAY))
        layout.addWidget(said(tr("Scan one after another. Each is judged at once; what must stay says why and does not "
                                 "go along.")))  # fmt: skip
        layout.addWidget(self.line)
        layout.addWidget(self.line.fault)
        layout.addWidget(scroll(inside, tr("Pieces to hand out")), 1)
        layout.addWidget(hairline())
        layout.addLayout(foot)

    def _show(self) -> None:
        clear(self._list)
        for one in self.pieces:
            self._list.addWidget(hairline())
            self._list.addWidget(self._row(one, self.opened.emit))
        if not self.pieces:
            self._list.addWidget(said(tr("Nothing is scanned yet."), faint=True))
        count, stays = len(self.tags), len(self.pieces) - len(self.tags)
        words = [tr_n("{count} piece goes.", "{count} pieces go.", count)] if self.pieces else []
        words += [tr_n("{count} stays here.", "{count} stay here.", stays)] if stays else []
        self._told.setText(" ".join(words))
        self.go_button.setEnabled(bool(count))

    def _row(self, one: MayLeave, opens: Open) -> QWidget:
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2 * GRID)
        layout.addWidget(Mark(one.outcome, self._look, _MARK_PX))
        layout.addWidget(tag_button(one.tag, opens))
        layout.addWidget(column(_words(one), 0), 1)
        name = tr("Take {tag} out of the list", tag=one.tag)
        layout.addWidget(button(tr("Take it out"), lambda: self._drop(one.tag), name=name))
        return line


def _words(one: MayLeave) -> list[QWidget]:
    word = outcome_word(one.outcome)
    if one.why:
        head = tr("{kind} · {outcome} · stays here", kind=one.kind_name, outcome=word)
        return [said(head, bold=True), said(one.why, Type.SMALL)]
    due = tr("next due {day}", day=show_day(one.due)) if one.due else ""
    head = tr("{kind} · {outcome}", kind=one.kind_name, outcome=word)
    return [said(head, bold=True), said(" · ".join(filter(None, (one.use, due))), Type.SMALL, faint=True)]
