"""The page of the register itself: its copies and its handing on, the ledger as sentences, what the gear is worth."""

from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds import exchange
from inspector.desk.deeds import field_copies as field
from inspector.desk.deeds import register as deeds
from inspector.desk.deeds.copies import clock, plan
from inspector.desk.form.deed import Deed
from inspector.desk.handover.ledger_view import LedgerView
from inspector.desk.handover.register_view import Acts, register_view
from inspector.desk.handover.worth_view import worth_view
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import button, scroll
from inspector.desk.told_papers import open_file, tell_papers
from inspector.duties.hand_over import print_protocol
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.tell_register import RegisterTold, tell_register
from inspector.duties.value_gear import ValueList, value_list
from inspector.language import tr

COPIES, LEDGER, WORTH = range(3)


class RegisterPage(Place):
    """Three parts, each behind its button; begun with a name, it shows what the ledger tells of it."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.told: RegisterTold | None = None
        self.copies = scroll(QWidget(), tr("Copies and handing on"))
        self.ledger = LedgerView(office, background, notice, look)
        self.worth = scroll(QWidget(), tr("What the gear is worth"))
        self.stack = QStackedWidget()
        for part in (self.copies, self.ledger, self.worth):
            self.stack.addWidget(part)
        words = (tr("Copies and handing on"), tr("The ledger"), tr("What the gear is worth"))
        self._group = QButtonGroup(self)
        self.parts = [self._part(at, one) for at, one in enumerate(words)]
        self.parts[COPIES].setChecked(True)
        head = QHBoxLayout()
        for made in self.parts:
            head.addWidget(made)
        head.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, GRID)
        layout.setSpacing(GRID)
        layout.addLayout(head)
        layout.addWidget(self.stack, 1)
        self.ledger.typed.connect(self.typed)

    def begin(self, what: str = "") -> None:
        """Show it anew; what: a piece, person or trip of which the ledger is to tell."""
        if what:
            self._turn(LEDGER)
            self.ledger.show_of(what)
        else:
            self.show_part(self.stack.currentIndex())

    def show_part(self, part: int) -> None:
        """Show a part, read anew."""
        self._turn(part)
        if part == COPIES:
            self._background.run(tell_register, self._office, done=self._show, failed=self._notice.refuse)
        elif part == LEDGER:
            self.ledger.read()
        else:
            self._background.run(value_list, self._office, done=self._show_worth, failed=self._notice.refuse)

    def back(self) -> bool:
        """To the first part; False where it is shown."""
        if self.stack.currentIndex() == COPIES:
            return False
        self.show_part(COPIES)
        self.focus_start()
        return True

    def focus_start(self) -> None:
        """The keys go to the button of the part that is shown."""
        self.parts[self.stack.currentIndex()].setFocus()

    def _part(self, at: int, words: str) -> QPushButton:
        made = button(words, partial(self.show_part, at), rank="filter")
        made.setCheckable(True)
        self._group.addButton(made)
        return made

    def _turn(self, part: int) -> None:
        self.parts[part].setChecked(True)
        self.stack.setCurrentIndex(part)

    def _show(self, told: RegisterTold) -> None:
        self.told = told
        acts = Acts(
            open_folder=lambda: open_file(Path(told.place).parent),
            copy=lambda: self._deed(deeds.copy()),
            clock=lambda: self._deed(clock()),
            plan=lambda: self._deed(plan(), told.copies.plan),
            take_copy=lambda: self._deed(field.take_along()),
            bring_back=lambda: self._deed(field.come_home()),
            verify=lambda: self._deed(deeds.verify()),
            hand_on=lambda: self._deed(deeds.hand_on()),
            move=lambda: self._deed(deeds.move()),
            print_again=self._print_again,
            archive=lambda: self._deed(exchange.write_archive()),
            look_through=lambda: self._deed(exchange.look_through()),
            lines=lambda: self._deed(exchange.lines()),
            make_key=lambda: self._deed(exchange.new_key()),
            enter_key=lambda: self._deed(exchange.known_key()),
            write_key=lambda: self._deed(exchange.key_paper()),
        )
        self.copies.setWidget(_page(register_view(told, acts)))

    def _show_worth(self, found: ValueList) -> None:
        self.worth.setWidget(_page(worth_view(found, self._office.decimal, self._notice)))

    def _print_again(self) -> None:
        self._background.run(
            print_protocol, self._office, done=self._printed, failed=self._notice.refuse, says=tr("Printing…")
        )

    def _printed(self, paper: Paper) -> None:
        tell_papers(self._notice, tr("The protocol is printed again."), "", (paper,))

    def _deed(self, deed: Deed[Any], about: object = None) -> None:
        self.go.emit(Go(DEED, (deed, about, "")))


def _page(inside: QWidget) -> QWidget:
    inside.setObjectName("page")
    if layout := inside.layout():
        layout.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
    return inside
