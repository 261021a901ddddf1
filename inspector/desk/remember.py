"""What the window remembers from one evening to the next on this machine."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, Qt
from PySide6.QtWidgets import QMainWindow

from inspector.desk.look import Look, Scheme, TextSize
from inspector.duties.machine_settings import MachineSettings

if TYPE_CHECKING:
    from inspector.desk.gear_table import GearTable

_LOOK, _TEXT, _COLUMNS, _WINDOW, _BETWEEN = "look", "text", "columns", "window", " "


def recall(look: Look, machine: MachineSettings) -> None:
    """Take the look and the size of the text as they were left; from then on each change is remembered."""
    known = {one.value: one for one in Scheme}
    look.scheme = known.get(machine.get(_LOOK), look.scheme)
    look.text = {one.value: one for one in TextSize}.get(machine.get(_TEXT), look.text)
    look.changed.connect(lambda: _keep(look, machine))


def recall_columns(table: "GearTable", machine: MachineSettings) -> None:
    """Take the columns of the list as they were chosen."""
    if kept := machine.get(_COLUMNS):
        table.choose_columns(tuple(kept.split(_BETWEEN)))
    table.columns_chosen.connect(lambda keys: machine.put(_COLUMNS, _BETWEEN.join(keys)))


def recall_window(window: QMainWindow, machine: MachineSettings) -> None:
    """The window where and as large as it was left; as large as the screen on a machine that remembers none."""
    kept = QByteArray.fromBase64(machine.get(_WINDOW).encode("ascii", "ignore"))
    if kept.isEmpty() or not window.restoreGeometry(kept):
        window.setWindowState(Qt.WindowState.WindowMaximized)


def keep_window(window: QMainWindow, machine: MachineSettings) -> None:
    """Remember where it stands and how large it is."""
    machine.put(_WINDOW, bytes(window.saveGeometry().toBase64().data()).decode("ascii"))


def _keep(look: Look, machine: MachineSettings) -> None:
    machine.put(_LOOK, look.scheme.value)
    machine.put(_TEXT, look.text.value)
