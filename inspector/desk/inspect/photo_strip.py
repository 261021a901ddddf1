"""Photos that are to go with an inspection: dropped, pasted or chosen, shown small, taken out again before saving."""

from collections.abc import Callable, Iterable
from pathlib import Path

from PySide6.QtCore import QBuffer, QMimeData, Qt, Signal
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from inspector.desk.alive import while_alive
from inspector.desk.background import Background
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, clear, said
from inspector.duties.office import Office
from inspector.duties.take_photos import TakenPhoto, take_photo, take_photo_file
from inspector.language import tr, tr_n
from inspector.refused import Refused

MOST_PHOTOS = 12
_TILE_PX = 72
_ENDINGS = "*.jpg *.jpeg *.png"


class PhotoStrip(QWidget):
    """changed: a photo came or went."""

    changed = Signal()

    def __init__(self, office: Office, tag: str, background: Background, look: Look) -> None:
        super().__init__()
        self._office, self._tag, self._background, self._look = office, tag, background, look
        self.photos: tuple[TakenPhoto, ...] = ()
        self.waiting = 0  # files that are being looked over
        self._pasted = 0
        self.add_button = button(tr("Add photos…"), self.choose)
        self.hint = said(tr("Or drop pictures on this page, or paste one with Ctrl+V."), Type.SMALL, faint=True)
        self.refused = said("", Type.SMALL, bold=True)
        self.refused.hide()
        self._tiles = QVBoxLayout()
        self._tiles.setSpacing(GRID)
        row = QHBoxLayout()
        row.setSpacing(2 * GRID)
        row.addWidget(self.add_button)
        row.addWidget(self.hint, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addLayout(row)
        layout.addLayout(self._tiles)
        layout.addWidget(self.refused)
        look.changed.connect(self._show)

    @property
    def is_busy(self) -> bool:
        """Whether a picture is still being looked over."""
        return self.waiting > 0

    @staticmethod
    def takes(mime: QMimeData) -> bool:
        """Whether there is a file or a picture in what is dropped or pasted."""
        return mime.hasImage() or any(url.isLocalFile() for url in mime.urls())

    def choose(self) -> None:
        """Ask for files."""
        title, kinds = tr("Photos of the piece"), tr("Pictures ({endings})", endings=_ENDINGS)
        names, _ = QFileDialog.getOpenFileNames(self, title, "", kinds)
        self.take_files(Path(name) for name in names)

    def take(self, mime: QMimeData) -> None:
        """Take what was dropped or pasted: files first, else the picture itself."""
        self._tell_refused(None)
        if files := [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]:
            self.take_files(files)
        elif mime.hasImage():
            self._pasted += 1
            name = tr("pasted {number}", number=self._pasted) + ".png"
            self._run(_take_image, self._office, self._tag, name, QImage(mime.imageData()))

    def take_files(self, files: Iterable[Path]) -> None:
        """Look files over, and show those that are pictures."""
        self._tell_refused(None)
        for file in files:
            self._run(take_photo_file, self._office, self._tag, file)

    def _run(self, deed: Callable[..., TakenPhoto], *given: object) -> None:
        self.waiting += 1
        done, failed = while_alive(self, self._taken), while_alive(self, self._not_taken)
        self._background.run(deed, *given, done=done, failed=failed, says=tr("Looking at the photo…"))

    def _taken(self, photo: TakenPhoto) -> None:
        self.waiting -= 1
        if any(one.sha256 == photo.sha256 for one in self.photos):
            self._tell_refused(Refused(photo.name, tr("It is here already."), tr("Choose another one.")))
        elif len(self.photos) >= MOST_PHOTOS:
            why = tr("There are {most} photos already.", most=MOST_PHOTOS)
            self._tell_refused(Refused(photo.name, why, tr("Take one out first, or put it to the piece later.")))
        else:
            self.photos = (*self.photos, photo)
            self._show()
        self.changed.emit()

    def _not_taken(self, refusal: Refused) -> None:
        self.waiting -= 1
        self._tell_refused(refusal)
        self.changed.emit()

    def _tell_refused(self, refusal: Refused | None) -> None:
        """Say which file was not taken and why, below what was said of others in the same go; None: a new go."""
        told = [self.refused.text()] if refusal and self.refused.text() else []
        if refusal:
            told.append(tr("{file}: {why} {what}", file=refusal.field, why=refusal.why, what=refusal.what_to_do))
        self.refused.setText("\n".join(told))
        self.refused.setVisible(bool(told))

    def _remove(self, photo: TakenPhoto) -> None:
        self.photos = tuple(one for one in self.photos if one is not photo)
        self._show()
        self.add_button.setFocus()
        self.changed.emit()

    def _show(self) -> None:
        clear(self._tiles)
        for photo in self.photos:
            self._tiles.addWidget(self._tile(photo))
        count = len(self.photos)
        self.setAccessibleName(tr_n("One photo", "{count} photos", count))

    def _tile(self, photo: TakenPhoto) -> QWidget:
        made, picture = QWidget(), QLabel()
        side = self._look.px(_TILE_PX)
        small = QPixmap()
        small.loadFromData(photo.small)
        keeps, smooth = Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode.SmoothTransformation
        picture.setPixmap(small.scaled(side, side, keeps, smooth))
        picture.setFixedWidth(side)
        picture.setAccessibleName(tr("Photo {name}", name=photo.name))
        layout = QHBoxLayout(made)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2 * GRID)
        layout.addWidget(picture)
        layout.addWidget(said(photo.name), 1)
        name = tr("Take out {name}", name=photo.name)
        layout.addWidget(button(tr("Take out"), lambda: self._remove(photo), name=name))
        return made


def _take_image(office: Office, tag: str, name: str, image: QImage) -> TakenPhoto:
    """A pasted picture as a PNG; run in the worker."""
    buffer = QBuffer()
    buffer.open(QBuffer.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]
    return take_photo(office, tag, name, bytes(buffer.data().data()))
