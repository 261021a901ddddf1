"""The page of the check before a trip: one piece at a time, by keyboard or by touch, the result at once."""

from collections.abc import Callable
from functools import partial

from msgspec.structs import replace
from PySide6.QtCore import Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds.trips import plan
from inspector.desk.keys import search_text
from inspector.desk.kit_head import kit_head
from inspector.desk.kit_opened import Choices, checked, choices
from inspector.desk.kit_piece import PieceForm
from inspector.desk.kit_result import all_looked_at, result_part, summary_part
from inspector.desk.kit_start import KitStart
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place, Unsaved
from inspector.desk.places import DEED
from inspector.desk.plain import button, clear, column, scroll
from inspector.duties.check_again import check_ahead
from inspector.duties.check_kit import kit_check
from inspector.duties.office import Office
from inspector.gear.kit_check import KitCheck, KitPiece
from inspector.gear.person import Person
from inspector.gear.trip import Trip
from inspector.language import tr, tr_n
from inspector.refused import Refused

_LOW_PX = 400


class Trailhead(Place):
    """leave: back to the list. typed: a letter that belongs to the search. found: the piece searched for is shown."""

    found = Signal()

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.kit: KitCheck | None = None
        self.member: Person | None = None
        self.forms: dict[str, PieceForm] = {}  # begun and not kept yet, by tag
        self.piece: KitPiece | None = None  # the piece shown; None on the first page and among all pieces
        self._told_low = False
        self.setProperty("touch", True)
        self.start = KitStart()
        self._head, self._stack = QVBoxLayout(), QStackedWidget()
        self._plain = QWidget()
        self._parts = QVBoxLayout(self._plain)
        self._stack.addWidget(self.start)
        self._stack.addWidget(self._plain)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        layout.addLayout(self._head)
        layout.addWidget(self._stack, 1)
        self._connect()

    @property
    def form(self) -> PieceForm | None:
        """The form shown."""
        shown = self._stack.currentWidget()
        return shown if isinstance(shown, PieceForm) else None

    @property
    def begun(self) -> tuple[str, ...]:
        """Tags of the pieces whose check is begun and not kept."""
        return tuple(tag for tag, form in self.forms.items() if form.is_written)

    @property
    def unsaved(self) -> Unsaved | None:
        """A check that is begun and not kept is not thrown away in silence."""
        if not (begun := self.begun):
            return None

        def drop(then: Callable[[], object]) -> None:
            self.forget_begun()
            then()

        head = tr_n("The check of one piece is not kept: {tags}.", "The check of {count} pieces is not kept: {tags}.",
                    len(begun), tags=", ".join(begun))  # fmt: skip
        lost = tr("What you answered there would be lost; the other pieces are kept.")
        return Unsaved(head, lost, tr("Keep checking"), lambda: self.jump(begun[0]), drop, tr("Throw it away"))

    @property
    def is_under_way(self) -> bool:
        """Whether a trip is being checked."""
        return self.kit is not None

    def begin(self, ref: str = "") -> None:
        """Ask for the trip and the person. ref: the trip to offer first."""
        self.drop()
        show = self._show_start
        self._background.run(choices, self._office, done=lambda found: show(found, ref), failed=self._notice.refuse)

    def forget_begun(self) -> None:
        """Throw away what was begun and not kept."""
        for form in self.forms.values():
            self._stack.removeWidget(form)
            form.deleteLater()
        self.forms = {}

    def drop(self) -> None:
        """Let go of the trip and of all that was begun."""
        self.forget_begun()
        self.kit = self.member = self.piece = None
        clear(self._head)

    def back(self) -> bool:
        """One step back, to all pieces; False where there is none to take."""
        if self.piece is None:
            return False
        self.show_all()
        return True

    def jump(self, tag: str) -> None:
        """Go to the piece with this tag."""
        piece = self.kit.piece(tag) if self.kit else None
        if self.kit and piece is None:
            why = tr("{tag} is not in the kit of this trip and sits on none of its vehicles.", tag=tag)
            self._notice.refuse(Refused(tr("tag"), why, tr("Look at the label again, or leave it in the shed.")))
        elif piece:
            self._notice.hide()
            self.found.emit()
            self.turn_to(piece)

    def turn_to(self, piece: KitPiece) -> None:
        """Show a piece: its questions, or what came of them where it was checked or stays."""
        if piece.tag in self.forms or (piece.goes and not piece.is_checked):
            self.ask(piece)
        else:
            self._show_result(piece)

    def ask(self, piece: KitPiece) -> None:
        """Ask what is to be looked at; what was answered already stands there."""
        form = self.forms.get(piece.tag) or self._new_form(piece)
        self.piece = piece
        self._stack.setCurrentWidget(form)
        self._tell_head()
        form.focus_start()

    def show_all(self) -> None:
        """Show the whole kit: what is open, what stays and why, what goes."""
        if self.kit is None:
            return
        self.piece = None
        begun = {tag: self.forms[tag].told for tag in self.begun}
        inside = summary_part(self.kit, begun, self._look, self._turn_to_tag)
        foot = [button(tr("Leave"), self.leave.emit)]
        if self.kit.unchecked:
            foot.insert(0, button(tr("Next piece"), self._next, rank="first"))
        self._show(tr("All pieces"), inside, foot)

    def told_on_leaving(self) -> str:
        """What is kept and what is open; empty where no trip was being checked."""
        if self.kit is None:
            return ""
        left = [one.tag for one in self.kit.unchecked]
        if not left:
            return all_looked_at(self.kit)
        tags = ", ".join(left)
        return tr_n("Not checked: one piece ({tags}).", "Not checked: {count} pieces ({tags}).", len(left), tags=tags)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A letter or figure begins a search, once a trip is chosen."""
        text = search_text(event)
        if text and self.is_under_way:
            self.typed.emit(text)
        else:
            super().keyPressEvent(event)

    def _connect(self) -> None:
        self.start.begin.connect(self._begin)
        self.start.again.connect(self.begin)
        self.start.leave.connect(self.leave)
        self.start.plan.connect(lambda: self.go.emit(Go(DEED, (plan(), None, ""))))
        self._look.changed.connect(self._tell_head)

    def _show_start(self, found: Choices, ref: str) -> None:
        self.start.show_choices(found, ref)
        self._stack.setCurrentWidget(self.start)
        self.start.focus_start()

    def _begin(self, trip: Trip, member: Person) -> None:
        self.member = member
        says = tr("Looking up the kit…")
        self._background.run(kit_check, self._office, trip.ref, done=self._begun, failed=self._notice.refuse, says=says)

    def _begun(self, kit: KitCheck) -> None:
        if self.member:  # else the page was left meanwhile
            self.kit = kit
            self._next()

    def _next(self) -> None:
        """The next piece to check in the walk round, after the one shown; all pieces where none is left."""
        if self.kit is None:
            return
        left, order = self.kit.unchecked, [one.tag for one in self.kit.pieces]
        at = order.index(self.piece.tag) if self.piece else -1
        later = [one for one in left if order.index(one.tag) > at]
        if left:
            self.ask((later or left)[0])
        else:
            self.show_all()

    def _new_form(self, piece: KitPiece) -> PieceForm:
        figures = any(one.tag[:1].isdigit() for one in self.kit.pieces) if self.kit else False
        ahead = partial(check_ahead, self._office, piece.judged.dossier)
        form = PieceForm(piece, self._look, self._office.decimal, ahead, by_figures=not figures)
        form.turned.connect(self._tell_head)
        form.typed.connect(self.typed)
        form.keep.connect(lambda: self._keep(form))
        self.forms[piece.tag] = form
        self._stack.addWidget(form)
        return form

    def _keep(self, form: PieceForm) -> None:
        if self.kit is None or self.member is None or (seen := form.seen()) is None:
            return
        form.setEnabled(False)
        given = (self._office, self.kit.trip.ref, form.piece.tag, self.member.id, seen, form.confirmed)
        self._background.run(
            checked, *given, done=lambda kit: self._kept(form, kit), failed=lambda why: self._not_kept(form, why),
            says=tr("Saving…"),
        )  # fmt: skip

    def _kept(self, form: PieceForm, kit: KitCheck) -> None:
        if self.forms.pop(form.piece.tag, None) is None:
            return  # the page was left meanwhile; the check is kept
        self.kit = kit
        self._notice.hide()
        piece = kit.piece(form.piece.tag)
        if piece:
            self._show_result(piece)
        self._stack.removeWidget(form)
        form.deleteLater()

    def _not_kept(self, form: PieceForm, refusal: Refused) -> None:
        if form not in self.forms.values():
            return
        form.setEnabled(True)
        form.focus_start()
        self._notice.refuse(refusal)

    def _show_result(self, piece: KitPiece) -> None:
        self.piece = piece
        left = bool(self.kit and self.kit.unchecked)
        go_on = button(tr("Next piece") if left else tr("All pieces"), self._next, rank="first")
        foot = [go_on, *([button(tr("All pieces"), self.show_all)] if left else [])]
        if piece.goes:
            again = tr("Answer what is open") if piece.open else tr("Check it again")
            foot.append(button(again, lambda: self.ask(piece)))
        self._show("", column([result_part(piece, self._look)]), foot)

    def _show(self, title: str, inside: QWidget, foot: list[QPushButton]) -> None:
        """A page of its own with buttons at the foot; the keys go to the first of them."""
        clear(self._parts)
        self._parts.setContentsMargins(0, 0, 0, 0)
        self._parts.setSpacing(GRID)
        self._parts.addWidget(scroll(inside, title or tr("Result")), 1)
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2 * GRID)
        for one in foot:
            layout.addWidget(one)
        layout.addStretch(1)
        self._parts.addWidget(line)
        self._stack.setCurrentWidget(self._plain)
        self._tell_head()
        foot[0].setFocus()

    def _turn_to_tag(self, tag: str) -> None:
        if self.kit and (piece := self.kit.piece(tag)):
            self.turn_to(piece)

    def _tell_head(self) -> None:
        clear(self._head)
        self._told_low = self._is_low
        if self.kit and self.member:
            form, piece = self.form, self.piece
            buttons = [button(tr("All pieces"), self.show_all)] if form else []
            step = form.progress if form else ""
            if piece and form and (ahead := form.ahead):  # no mark of what stands beside what would become of it
                piece = replace(piece, judged=ahead.judged)
            self._head.addWidget(kit_head(self.kit, piece, self.member, step, self._look, buttons, is_low=self._is_low))

    @property
    def _is_low(self) -> bool:
        """Whether there is little height for text as large as this."""
        return self.height() < self._look.px(_LOW_PX)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The head says less where there is little room."""
        super().resizeEvent(event)
        if self._is_low is not self._told_low:
            self._tell_head()
