"""The map of the keys, read off the menus so that it cannot say anything else."""

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QMenu, QMenuBar, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import column, facts, said, scroll
from inspector.language import tr


def keys_of(bar: QMenuBar) -> list[tuple[str, str]]:
    """Every entry of the menus that has a key, as (key, what it does)."""
    return [
        (action.shortcut().toString(QKeySequence.SequenceFormat.NativeText), action.text().replace("&", ""))
        for top in bar.actions()
        for action in _entries(top.menu())
        if not action.shortcut().isEmpty()
    ]


def _entries(menu: object) -> list:  # type: ignore[type-arg]
    return list(menu.actions()) if isinstance(menu, QMenu) else []


def _everywhere() -> list[tuple[str, str]]:
    return [
        (tr("any letter"), tr("finds a piece, on any page where nothing is being typed")),
        (tr("Return"), tr("opens what is marked, goes to the next field, does what the page is for")),
        (tr("Tab"), tr("goes to the next control")),
        (tr("1, 2, 3, 0"), tr("in an inspection: good, slight, bad, not seen")),
        (tr("arrows"), tr("in a list or a drawing: the next line or mark")),
    ]


class KeyMap(QDialog):
    """A sheet with every key."""

    def __init__(self, bar: QMenuBar, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Keys"))
        self.setObjectName("page")
        parts = [said(tr("Keys"), Type.DISPLAY), facts(keys_of(bar)), said(tr("Everywhere"), Type.HEAD)]
        area = scroll(column([*parts, facts(_everywhere())], 2 * GRID), tr("Keys"))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(area, 1)
        layout.addWidget(buttons)
        self.resize(80 * GRID, 80 * GRID)
