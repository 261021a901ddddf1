"""Where a list is chosen or dropped, and the lists that were brought in before."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Type
from inspector.desk.plain import button, clear, fill, hairline, row, said
from inspector.gear.import_list import Imported
from inspector.language import show_day, tr, tr_n

_ENDINGS = "*.csv *.txt *.tsv *.xlsx *.xlsm *.ods *.xls"


class StartPart(QWidget):
    """came: the path of a list. withdraw: an import to be taken back. left: one whose rows are to be written anew."""

    came = Signal(object)
    withdraw = Signal(object)
    left = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.choose_button = button(tr("Choose the file…"), self.choose, rank="first")
        says = tr(
            "The list that the club kept before: CSV, XLSX, ODS or XLS. It may also be dropped on this page. First you "
            "see what each column is taken for and what becomes of each row; nothing is kept before you say so."
        )
        safe = tr(
            "Nothing that a list says passes a piece: each one is held until somebody competent has inspected it."
        )
        self._before = QWidget()
        QVBoxLayout(self._before)
        fill(
            QVBoxLayout(self),
            [said(tr("Bring in an old list"), Type.DISPLAY), said(says), said(safe), row([self.choose_button]),
             self._before],
            2 * GRID,
        )  # fmt: skip

    def choose(self) -> None:
        """Ask for a file."""
        kinds = tr("Lists ({endings})", endings=_ENDINGS)
        name, _ = QFileDialog.getOpenFileName(self, tr("The list of the gear"), "", kinds)
        if name:
            self.came.emit(Path(name))

    def show_imports(self, every: Sequence[Imported]) -> None:
        """The lists that were brought in, the newest first."""
        layout = self._before.layout()
        if not isinstance(layout, QVBoxLayout):
            return
        clear(layout)
        if every:
            parts = [hairline(), said(tr("Brought in before"), Type.HEAD), *map(self._one, every)]
            fill(layout, parts, GRID)

    def _one(self, made: Imported) -> QWidget:
        taken = tr_n("{count} piece taken", "{count} pieces taken", len(made.pieces))
        left = tr_n("{count} row not taken", "{count} rows not taken", len(made.left))
        words = tr("{number} · {day} · {file}: {taken}, {left}", number=made.number, day=show_day(made.on),
                   file=made.file, taken=taken, left=left)  # fmt: skip
        deeds = [
            button(tr("Withdraw…"), partial(self.withdraw.emit, made), name=tr("Withdraw {number}", number=made.number))
        ]
        if made.left:
            name = tr("Write the rows that {number} did not take", number=made.number)
            deeds.append(button(tr("Write what was not taken"), partial(self.left.emit, made), name=name))
        part = QWidget()
        fill(QVBoxLayout(part), [said(words), row(deeds)], GRID // 2)
        return part
