"""What is dropped or pasted onto a page: files and pictures, read by the worker."""

from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMimeData
from PySide6.QtGui import QImage, QImageWriter

from inspector.duties.attach import read_file
from inspector.language import tr


class Handed(Struct, frozen=True):
    """Files by their places, or a picture that has none."""

    places: tuple[Path, ...] = ()
    image: QImage | None = None

    @property
    def is_something(self) -> bool:
        """Whether there is anything in it that could be kept."""
        return bool(self.places) or self.image is not None


def handed(data: QMimeData) -> Handed:
    """The files of what was dropped or pasted; else its picture. Nothing is read yet."""
    places = tuple(Path(one.toLocalFile()) for one in data.urls() if one.isLocalFile())
    if places:
        return Handed(places)
    image = data.imageData() if data.hasImage() else None
    return Handed(image=image) if isinstance(image, QImage) and not image.isNull() else Handed()


def read_handed(given: Handed) -> tuple[tuple[str, bytes], ...]:
    """Name and bytes of each. Refused: what cannot be read or is too large."""
    return tuple(_read(given))


def _read(given: Handed) -> Iterator[tuple[str, bytes]]:
    for place in given.places:
        yield place.name, read_file(place)
    if given.image is not None:
        buffer = QBuffer()
        buffer.open(QIODevice.OpenModeFlag.WriteOnly)
        QImageWriter(buffer, QByteArray(b"PNG")).write(given.image)
        yield tr("pasted picture") + ".png", bytes(buffer.data().data())
