"""Where the files of sheets that came back are chosen, dropped or pasted, and what reads them in the worker."""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from inspector.desk.look import GRID
from inspector.desk.piece.handed import Handed, read_handed
from inspector.desk.plain import button, fill, row, said
from inspector.duties.office import Office
from inspector.duties.read_returned import ReadBack, read_files
from inspector.gear.sheet_back import Incoming
from inspector.language import tr

_ENDINGS = "*.pdf *.jpg *.jpeg *.png"


class FilesPart(QWidget):
    """came: files or a picture were chosen, to be read."""

    came = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.choose_button = button(tr("Read from files…"), self.choose)
        says = tr(
            "Photos or scans of the ticked paper, or the file that was filled in on a screen: several at once, in any "
            "order. They may also be dropped on this page, or pasted with Ctrl+V."
        )
        fill(QVBoxLayout(self), [said(says), row([self.choose_button])], GRID)

    def choose(self) -> None:
        """Ask for files."""
        kinds = tr("Sheets ({endings})", endings=_ENDINGS)
        names, _ = QFileDialog.getOpenFileNames(self, tr("Sheets that came back"), "", kinds)
        if names:
            self.came.emit(Handed(tuple(Path(name) for name in names)))


def read_given(office: Office, given: Handed) -> ReadBack:
    """Read what was handed in: files, or a picture that was pasted."""
    pasted = [] if given.places else [Incoming(name, data) for name, data in read_handed(given)]
    return read_files(office, given.places, pasted)
