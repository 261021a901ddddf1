"""Help with the words of the trade: under the pointer as one waits there, and for a whole page by a key."""

from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLabel,
    QToolTip,
    QVBoxLayout,
    QWidget,
)

from inspector.desk.look import GRID, Type
from inspector.desk.plain import column, facts, said, scroll
from inspector.duties.trade_words import trade_words
from inspector.gear.verdict import Fact
from inspector.language import tr

_MOST = 4  # meanings that a tooltip still shows at a glance


def help_at(window: QWidget, event: QHelpEvent) -> bool:
    """Tell what the trade words under the pointer mean, where a text of the window has no help of its own.

    A question that no widget answered comes to its window at last. Whether there was anything to tell.
    """
    widget = window.childAt(window.mapFromGlobal(event.globalPos()))
    told = told_of(text_of(widget)) if widget and not widget.toolTip() else ""
    if told and widget:
        QToolTip.showText(event.globalPos(), told, widget)
    return bool(told)


def text_of(widget: QWidget) -> str:
    """What is read on a widget; empty where it is no text."""
    if isinstance(widget, QLabel | QAbstractButton):
        return widget.text()
    return widget.currentText() if isinstance(widget, QComboBox) else ""


def told_of(text: str) -> str:
    """The meanings of the trade words in a text, a line each; empty where it has none."""
    found = trade_words(text)[:_MOST]
    return "\n".join(tr("{word}: {meaning}", word=one.label, meaning=one.text) for one in found)


def words_on(page: QWidget) -> tuple[Fact, ...]:
    """The trade words of all that is seen on a page."""
    seen = (one for one in page.findChildren(QWidget) if one.isVisibleTo(page))
    return trade_words("\n".join(text_of(one) for one in seen))


class WordList(QDialog):
    """The trade words of the page that is shown, with their meanings."""

    def __init__(self, page: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Words of the trade"))
        self.setObjectName("page")
        found = words_on(page)
        none = said(tr("Nothing on this page needs explaining. Wait with the pointer over a word elsewhere."))
        inside = facts((one.label, one.text) for one in found) if found else none
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        title = said(tr("Words of the trade"), Type.DISPLAY)
        layout.addWidget(scroll(column([title, inside], 2 * GRID), tr("Words of the trade")), 1)
        layout.addWidget(buttons)
        self.resize(80 * GRID, 60 * GRID)
