"""The rigs that are kept, in the form of a rig: opened again, written out as a file; or one read from a file."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.look import Type
from inspector.desk.plain import button, fill, said
from inspector.gear.rig import KeptRig
from inspector.language import show_day, tr


class KeptRigs(QWidget):
    """opened: this one is to be shown. write: it is to be written into a file. file: the path of one to be read."""

    opened = Signal(object)
    write = Signal(object)
    file = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.choice = Choice[KeptRig](tr("Kept rig"), [], scans=True)
        self.told = said("", Type.SMALL, faint=True)
        self._none = said(tr("No rig is kept yet. A rig that is shown can be kept under a reference."), faint=True)
        self._when_kept = (
            self.choice.box,
            self.told,
            button(tr("Open the kept rig"), self._open),
            button(tr("Write it into a file"), lambda: self.write.emit(self.choice.value),
                   name=tr("Write the kept rig into a file")),
        )  # fmt: skip
        self.read_button = button(tr("Open a rig from a file"), self._read)
        fill(QVBoxLayout(self), (self._none, *self._when_kept, self.read_button))
        self.choice.box.currentIndexChanged.connect(lambda _: self._tell())
        self.choice.box.moves.connect(lambda _: self._open())

    def offer(self, kept: tuple[KeptRig, ...]) -> None:
        """Offer these kept rigs."""
        self.choice.offer([(f"{one.ref}: {one.rig.name}", one) for one in kept])
        for part in self._when_kept:
            part.setVisible(bool(kept))
        self._none.setVisible(not kept)
        self._tell()

    def _tell(self) -> None:
        """What the list of kept rigs says of the chosen one."""
        if self.choice.box.count():
            self.told.setText(_words(self.choice.value))

    def _open(self) -> None:
        self.opened.emit(self.choice.value)

    def _read(self) -> None:
        if path := QFileDialog.getOpenFileName(self, tr("Open a rig from a file"), "", "*.toml")[0]:
            self.file.emit(path)


def _words(one: KeptRig) -> str:
    rig = one.rig
    pulls = tr("{pulling} pulls {bogged}", pulling=rig.pulling or tr("its own winch"), bogged=rig.bogged)
    kept = tr("kept {day}", day=show_day(one.on))
    return " · ".join(filter(None, (kept, tr("trip {ref}", ref=rig.trip) if rig.trip else "", pulls)))
