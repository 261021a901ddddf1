"""Small pictures of the images put to a piece. For the worker: it decodes without a widget."""

from collections.abc import Iterable
from contextlib import suppress

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImage, QImageReader

from inspector.duties.attach import file_bytes
from inspector.duties.office import Office
from inspector.gear.attachment import Attachment
from inspector.refused import Refused

_MOST = 24  # what a page shows as pictures; the others stand there by name
_SIDE_PX = 320  # sharp on a dense screen and with large text


def thumbs_of(office: Office, files: Iterable[Attachment]) -> dict[str, QImage]:
    """By the file's sha256, an image that fits a square; one that is broken has none and stands there by name."""
    images = [one for one in files if one.facts.media_type.startswith("image/")]
    found: dict[str, QImage] = {}
    for one in images[-_MOST:]:
        with suppress(Refused):  # whoever opens it is told why it cannot be
            made = thumb(file_bytes(office, one))
            found |= {} if made.isNull() else {one.facts.sha256: made}
    return found


def thumb(data: bytes) -> QImage:
    """The image made small while it is read; a null one where it cannot be."""
    kept = QByteArray(data)
    buffer = QBuffer(kept)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    full = reader.size()
    if full.isValid() and max(full.width(), full.height()) > _SIDE_PX:
        reader.setScaledSize(full.scaled(QSize(_SIDE_PX, _SIDE_PX), Qt.AspectRatioMode.KeepAspectRatio))
    return reader.read()
