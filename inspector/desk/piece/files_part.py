"""The photos and papers of a piece: pictures small, other files by name; each can be opened, and more be added."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QIcon, QImage, QPixmap
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from inspector.desk.flow import flowing
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, fill, said
from inspector.desk.record_parts import section
from inspector.gear.attachment import Attachment
from inspector.language import show_day, tr

_TILE_PX = 16 * GRID
Words = Mapping[str, str]  # what is said of a file below its name, by its id


class FilesPart(QWidget):
    """opened: a file to be looked at. attach: one is to be added. can_drop: whether the page takes what is dropped."""

    opened = Signal(object)
    attach = Signal()

    def __init__(
        self, files: Sequence[Attachment], thumbs: Mapping[str, QImage], words: Words, look: Look, *,
        can_drop: bool = True,
    ) -> None:  # fmt: skip
        super().__init__()
        self._look, self._words = look, words
        self.add_button = button(tr("Add a file"), self.attach.emit)
        shown = [one for one in files if one.facts.sha256 in thumbs]
        named = [one for one in files if one.facts.sha256 not in thumbs]
        parts: list[QWidget] = []
        if shown:
            parts.append(flowing([self._tile(one, thumbs[one.facts.sha256]) for one in shown]))
        parts += [self._row(one) for one in named]
        hint = _hint(bool(files), can_drop=can_drop)
        parts += [said(hint, faint=True), flowing([self.add_button])]
        fill(QVBoxLayout(self), [section(tr("Photos and papers"), *parts)])

    def _tile(self, one: Attachment, image: QImage) -> QWidget:
        name = tr("Open the photo {name} of {day}", name=one.facts.name, day=show_day(one.facts.on))
        made = button("", lambda: self.opened.emit(one), rank="thumb", name=name)
        side = self._look.px(_TILE_PX)
        made.setIcon(QIcon(QPixmap.fromImage(image)))
        made.setIconSize(QSize(side - GRID, side - GRID))
        made.setFixedSize(side, side)
        tile = column([made, said(one.facts.name, Type.SMALL), said(self._words[one.id], Type.SMALL, faint=True)], 2)
        tile.setFixedWidth(side)
        return tile

    def _row(self, one: Attachment) -> QWidget:
        name: QPushButton = button(one.facts.name.replace("&", "&&"), lambda: self.opened.emit(one), rank="tag")
        name.setAccessibleName(tr("Open the file {name}", name=one.facts.name))
        return column([flowing([name]), said(self._words[one.id], Type.SMALL, faint=True)], 0)


def _hint(any_files: bool, *, can_drop: bool) -> str:
    """What to do for a further file, or for the first one."""
    if can_drop:
        if any_files:
            return tr("Drop a photo or a PDF onto this page, paste a picture, or add a file.")
        return tr("No photo and no paper yet. Drop one onto this page, paste a picture, or add a file.")
    return tr("Press one to look at it.") if any_files else tr("No photo and no paper yet. Add a file.")
