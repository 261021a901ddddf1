"""The strip that speaks to the officer: a refusal, a paper printed, a question. It never covers what was typed."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from inspector.desk.look import GRID
from inspector.desk.plain import button, clear, said
from inspector.language import tr
from inspector.refused import Refused

Choice = tuple[str, Callable[[], object]]


class Notice(QFrame):
    """One message with what can be done about it; hidden while there is nothing to say."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("notice")
        self._asks: Callable[[], object] | None = None
        self._head, self._text = said("", bold=True), said("")
        self._choices = QHBoxLayout()
        self._choices.setSpacing(GRID)
        words = QVBoxLayout()
        words.setSpacing(GRID // 2)
        words.addWidget(self._head)
        words.addWidget(self._text)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, GRID, GRID)
        layout.addLayout(words, 1)
        layout.addLayout(self._choices)
        self.hide()

    @property
    def is_asking(self) -> bool:
        """Whether it waits for an answer."""
        return self._asks is not None and not self.isHidden()

    @property
    def text(self) -> str:
        """All that it says, for tests and screen readers."""
        return f"{self._head.text()} {self._text.text()}".strip()

    def refuse(self, refusal: Refused) -> None:
        """Say what was refused, why, and what to do."""
        field = refusal.field.replace("_", " ")
        head = tr("{field}: {why}", field=field[:1].upper() + field[1:], why=refusal.why)
        self._show(head, refusal.what_to_do, [self._closing()])

    def tell(self, head: str, text: str = "", choices: Sequence[Choice] = ()) -> None:
        """Say something that came about, with what can be done next."""
        self._show(head, text, [*(button(label, does) for label, does in choices), self._closing()])

    def ask(self, head: str, text: str, keep: Choice, other: Choice) -> None:
        """Ask before something is lost. keep: the answer that loses nothing; it has the focus, and Escape gives it."""
        kept = button(keep[0], lambda: self._answer(keep[1]), rank="first")
        self._show(head, text, [kept, button(other[0], lambda: self._answer(other[1]))])
        self._asks = keep[1]
        kept.setFocus()

    def dismiss(self) -> None:
        """Say no more; a question is answered by what loses nothing."""
        asks = self._asks
        self._asks = None
        self.hide()
        if asks:
            asks()

    def _answer(self, does: Callable[[], object]) -> None:
        self._asks = None
        self.hide()
        does()

    def _closing(self) -> QPushButton:
        return button(tr("Close"), self.dismiss, name=tr("Close this message"))

    def _show(self, head: str, text: str, choices: Sequence[QPushButton]) -> None:
        from PySide6.QtGui import QAccessible, QAccessibleEvent  # much to make, and seldom needed as a window opens

        self._asks = None
        self._head.setText(head)
        self._text.setText(text)
        self._text.setVisible(bool(text))
        clear(self._choices)
        for choice in choices:
            self._choices.addWidget(choice, 0, Qt.AlignmentFlag.AlignTop)
        self.setAccessibleName(self.text)
        self.show()
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.Alert))
