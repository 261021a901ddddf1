"""What came of a scan, in large words, and the answers before it."""

from PySide6.QtGui import QAccessible, QAccessibleEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.deeds.counting import scanned_words
from inspector.desk.look import GRID, Type
from inspector.desk.plain import said
from inspector.duties.take_stock import Scanned
from inspector.duties.tell_count import CountTold
from inspector.gear.stock_take import Counted
from inspector.language import tr, tr_n
from inspector.refused import Refused

_EARLIER = 2


def how_far(told: CountTold) -> str:
    """How far the count is."""
    seen, all_of_it = len(told.expected(Counted.PRESENT)), len(told.expected())
    return tr("{seen} of {total} seen, {absent} not there, {left} left", seen=seen, total=all_of_it,
              absent=len(told.expected(Counted.ABSENT)), left=len(told.expected(Counted.UNKNOWN)))  # fmt: skip


def scan_head(found: Scanned, counted: Counted, told: CountTold) -> str:
    """What was marked, and how far the count is with it."""
    seen, total = len(told.expected(Counted.PRESENT)), len(told.expected())
    if not found.kept:
        return (
            tr("{label}: no piece has this label", label=found.labels[0]) if found.labels else tr("Nothing is marked")
        )
    if len(found.kept) > 1:
        return _many(len(found.kept), counted, seen, total)
    tag = found.kept[0]
    piece = told.piece(tag)
    if counted is Counted.PRESENT and not (piece and piece.is_expected):
        return tr("{tag} seen, and not among the {total} looked for", tag=tag, total=total)
    words = {
        Counted.PRESENT: tr("{tag} seen, {seen} of {total}", tag=tag, seen=seen, total=total),
        Counted.ABSENT: tr("{tag} is not there, {seen} of {total} seen", tag=tag, seen=seen, total=total),
        Counted.UNKNOWN: tr("{tag}: the mark is taken back, {seen} of {total} seen", tag=tag, seen=seen, total=total),
    }
    return words[counted]


def _many(count: int, counted: Counted, seen: int, total: int) -> str:
    if counted is Counted.PRESENT:
        return tr_n("{count} piece seen, {seen} of {total}", "{count} pieces seen, {seen} of {total}", count,
                    seen=seen, total=total)  # fmt: skip
    if counted is Counted.ABSENT:
        return tr_n("{count} piece is not there, {seen} of {total} seen",
                    "{count} pieces are not there, {seen} of {total} seen", count, seen=seen, total=total)  # fmt: skip
    return tr_n("{count} mark is taken back, {seen} of {total} seen",
                "{count} marks are taken back, {seen} of {total} seen", count, seen=seen, total=total)  # fmt: skip


def _more(found: Scanned, counted: Counted) -> str:
    """What else is to be known; of a single label the head says already that no piece has it."""
    if len(found.labels) == 1 and not (found.kept or found.not_counted or found.told):
        if counted is Counted.UNKNOWN:
            return tr("It is kept with the count no longer.")
        return tr("It is kept with the count. Look at the label again; a slip is undone below.")
    return "\n".join(scanned_words(found))


class Answer(QWidget):
    """The last answer large, the ones before it small below: what was refused is not lost in a row of scans."""

    def __init__(self) -> None:
        super().__init__()
        self.head, self.more = said("", Type.DISPLAY), said("", bold=True)
        self.earlier = said("", Type.SMALL, faint=True)
        self.earlier.setAccessibleName(tr("Answers before"))
        self._told: list[str] = []
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID // 2)
        for one in (self.head, self.more, self.earlier):
            layout.addWidget(one)
        self.begin("")

    @property
    def text(self) -> str:
        """The last answer."""
        return ". ".join(filter(None, (self.head.text(), self.more.text())))

    def begin(self, head: str) -> None:
        """Begin anew: how far the count is."""
        self._told = []
        self._show(head, "")

    def tell(self, found: Scanned, counted: Counted, told: CountTold) -> None:
        """Say what came of a scan."""
        self._push()
        self._show(scan_head(found, counted, told), _more(found, counted))

    def refuse(self, tags: str, refusal: Refused) -> None:
        """Say that nothing of a scan could be marked, and why."""
        self._push()
        self._show(tr("{tags} is NOT counted", tags=tags), f"{refusal.why} {refusal.what_to_do}")

    def _push(self) -> None:
        if self.text:
            self._told = [self.text, *self._told][:_EARLIER]

    def _show(self, head: str, more: str) -> None:
        self.head.setText(head)
        self.more.setText(more)
        self.more.setVisible(bool(more))
        self.earlier.setText("\n".join(self._told))
        self.earlier.setVisible(bool(self._told))
        self.setAccessibleName(self.text)
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.Alert))
