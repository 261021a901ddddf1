"""The offer to go on with what was begun before, above the form; until it is answered nothing else is typed."""

from collections.abc import Sequence

from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout

from inspector.desk.look import GRID
from inspector.desk.plain import button, fill, said
from inspector.duties.keep_draft import Draft
from inspector.gear.person import Person
from inspector.language import show_day, tr


class DraftOffer(QFrame):
    """Hidden until there is something to offer."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("notice")
        self.head, self.text = said("", bold=True), said("")
        self.go_on = button(tr("Go on"), lambda: None, rank="first", name=tr("Go on with what was begun"))
        self.begin_anew = button(tr("Begin anew"), lambda: None, name=tr("Throw it away and begin anew"))
        buttons = QHBoxLayout()
        buttons.setSpacing(GRID)
        buttons.addWidget(self.go_on)
        buttons.addWidget(self.begin_anew)
        buttons.addStretch(1)
        words = QVBoxLayout()
        fill(words, [self.head, self.text], GRID // 2)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, GRID, GRID)
        layout.setSpacing(GRID)
        layout.addLayout(words)
        layout.addLayout(buttons)
        self.hide()

    @property
    def is_open(self) -> bool:
        """Whether it waits for an answer."""
        return not self.isHidden()

    def offer(self, draft: Draft, people: Sequence[Person], officer: Person, holds: str) -> None:
        """Say who began when, and what stands in it. holds: in words."""
        name = next((one.name for one in people if one.id == draft.by), tr("Somebody"))
        when = tr("{day}, {hour}:{minute}", day=show_day(draft.begun.date()), hour=f"{draft.begun.hour:02}",
                  minute=f"{draft.begun.minute:02}")  # fmt: skip
        head = tr("You began this on {when}.", when=when)
        if draft.by != officer.id:
            head = tr("{name} began this on {when}.", name=name, when=when)
        self.head.setText(head)
        self.text.setText(holds)
        self.setAccessibleName(f"{head} {holds}")
        self.show()
        self.go_on.setFocus()
