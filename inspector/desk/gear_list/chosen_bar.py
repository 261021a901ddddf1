"""What can be done with the chosen pieces: how many there are, and a button for each deed."""

from collections.abc import Callable

from msgspec import Struct
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from inspector.desk.flow import Flow
from inspector.desk.look import GRID
from inspector.desk.plain import button, menu_button, short
from inspector.language import tr, tr_n

LEND, TAKE_BACK, PACK, INSPECT, HOLD = "lend", "take back", "pack", "inspect", "hold"
LABELS, TAGS, RECORDS, RECALL, EXPORT = "labels", "tags", "records", "recall", "export"


class Deed(Struct, frozen=True):
    """Something to do with several pieces. text: on its button; tells: in full, for a tooltip and a screen reader."""

    key: str
    text: str
    tells: str


def deeds() -> tuple[Deed, ...]:
    """Every deed for chosen pieces, in the order of their buttons."""
    return (
        Deed(LEND, tr("Lend"), tr("Lend the chosen pieces")),
        Deed(TAKE_BACK, tr("Take back"), tr("Take the chosen pieces back")),
        Deed(PACK, tr("Add to a trip"), tr("Add the chosen pieces to a trip's kit")),
        Deed(INSPECT, tr("Inspect"), tr("Inspect the chosen pieces one after another")),
        Deed(HOLD, tr("Put on hold"), tr("Hold the chosen pieces, for example a batch that is called back")),
        Deed(RECALL, tr("Call in"), tr("Call the chosen pieces in, by a letter to whoever has one")),
    )


def papers() -> tuple[tuple[str, str], ...]:
    """What is printed or written out for chosen pieces: the word in the menu, and the key of the deed."""
    table = (tr("A file for a spreadsheet"), EXPORT)
    return (tr("Labels"), LABELS), (tr("Tags"), TAGS), (tr("Records"), RECORDS), table


class ChosenBar(QWidget):
    """asked: the key of the deed to do with the chosen pieces."""

    asked = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.told = short("")
        self.buttons: dict[str, QPushButton] = {}
        self.told.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        layout = Flow(self, GRID // 2)
        layout.addWidget(self.told)
        for deed in deeds():
            layout.addWidget(self._button(deed))
        self.print_button = menu_button(
            tr("Print"), [(words, self._asks(key)) for words, key in papers()], rank="filter",
            name=tr("Print labels, tags or records for the chosen pieces"),
        )  # fmt: skip
        layout.addWidget(self.print_button)
        self.tell(0)

    def tell(self, count: int) -> None:
        """Say how many are chosen."""
        self.told.setText(tr_n("{count} chosen", "{count} chosen", count) if count else tr("none chosen"))
        for made in (*self.buttons.values(), self.print_button):
            made.setEnabled(bool(count))

    def _asks(self, key: str) -> Callable[[], None]:
        return lambda: self.asked.emit(key)

    def _button(self, deed: Deed) -> QPushButton:
        made = button(deed.text, self._asks(deed.key), rank="filter", name=deed.tells)
        made.setToolTip(deed.tells)
        self.buttons[deed.key] = made
        return made
