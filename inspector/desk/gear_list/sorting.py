"""By what the list is sorted, from which end, and which columns it shows: three controls at the end of a row."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QHBoxLayout, QMenu, QPushButton, QWidget

from inspector.desk.choice import Choice
from inspector.desk.gear_list.columns import ALWAYS, COLUMNS, USUAL, column_names, known
from inspector.desk.look import GRID
from inspector.gear.lists import Order
from inspector.language import tr


class Sorting(QWidget):
    """changed: another order is wanted. columns_chosen: the keys of the columns, as somebody chose them."""

    changed = Signal()
    columns_chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.order: Choice[Order] = Choice(tr("Order of the list"), _orders(), scans=True)
        self.turn = QPushButton()
        self.turn.setCheckable(True)
        self.turn.toggled.connect(lambda _falling: self._turned())
        self.columns_button = QPushButton(tr("Columns"))
        self.columns_button.setAccessibleName(tr("Choose the columns"))
        self._actions: dict[str, QAction] = {}
        self.columns_button.setMenu(self._menu())
        self.order.box.currentIndexChanged.connect(lambda _index: self.changed.emit())
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        for part in (self.order.box, self.turn, self.columns_button):
            layout.addWidget(part)
        self._tell_turn()

    @property
    def falling(self) -> bool:
        """Whether the last comes first."""
        return self.turn.isChecked()

    @property
    def columns(self) -> tuple[str, ...]:
        """The keys of the columns chosen."""
        return known(key for key, action in self._actions.items() if action.isChecked())

    def choose_columns(self, keys: tuple[str, ...]) -> None:
        """Tick these columns; nobody is told of it."""
        for key, action in self._actions.items():
            action.blockSignals(True)
            action.setChecked(key in keys)
            action.blockSignals(False)

    def by_column(self, number: int) -> None:
        """Sort by a column; by the one that is sorted by already, the other way round."""
        order = COLUMNS[number].order
        if order is None:
            return
        if order is self.order.value:
            self.turn.toggle()
            return
        self.turn.blockSignals(True)
        self.turn.setChecked(False)
        self.turn.blockSignals(False)
        self._tell_turn()
        self.order.choose(order)

    def _turned(self) -> None:
        self._tell_turn()
        self.changed.emit()

    def _tell_turn(self) -> None:
        self.turn.setText("▼" if self.falling else "▲")
        said = tr("Sorted last to first") if self.falling else tr("Sorted first to last")
        self.turn.setAccessibleName(said)
        self.turn.setToolTip(said)

    def _menu(self) -> QMenu:
        menu = QMenu(self)
        for number, (one, name) in enumerate(zip(COLUMNS, column_names(), strict=True)):
            if number in ALWAYS:
                continue
            action = menu.addAction(name)
            action.setCheckable(True)
            action.setChecked(one.key in USUAL)
            action.toggled.connect(lambda _shown: self.columns_chosen.emit(self.columns))
            self._actions[one.key] = action
        menu.addSeparator()
        menu.addAction(tr("The usual columns")).triggered.connect(lambda _checked: self._usual())
        return menu

    def _usual(self) -> None:
        self.choose_columns(USUAL)
        self.columns_chosen.emit(self.columns)


def _orders() -> list[tuple[str, Order]]:
    return [
        (tr("Next due first"), Order.DUE),
        (tr("By tag"), Order.TAG),
        (tr("Worst first"), Order.WORST),
        (tr("By kind"), Order.KIND),
        (tr("By marking"), Order.MARKED),
        (tr("By owner"), Order.OWNER),
        (tr("By place"), Order.PLACE),
        (tr("By maker's mark"), Order.MAKER),
        (tr("By serial"), Order.SERIAL),
        (tr("Longest not inspected first"), Order.INSPECTED),
    ]
