"""What was read off a photo, shown as it stands on the paper."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QWidget

from inspector.desk.look import Look, Type
from inspector.desk.plain import column, row, said, short
from inspector.gear.sheet_back import RowBack
from inspector.language import tr

_HIGH_PX = 56
_WIDEST_PX = 520


def cut_out(png: bytes, name: str, look: Look, high_px: int = _HIGH_PX) -> QLabel:
    """A piece of the photo. name: what a screen reader says of it."""
    picture = QPixmap()
    picture.loadFromData(png)
    shown = QLabel()
    shown.setAccessibleName(name)
    smooth, keep = Qt.TransformationMode.SmoothTransformation, Qt.AspectRatioMode.KeepAspectRatio
    shown.setPixmap(picture.scaled(look.px(_WIDEST_PX), look.px(high_px), keep, smooth))
    return shown


def box_pictures(back: RowBack, look: Look) -> QWidget | None:
    """The two boxes of a row under their words; None where it was filled in on a screen."""
    good, fault = back.pictures
    if not good or not fault:
        return None
    of_good = tr("Photo of the box good at “{question}”", question=back.tick.text)
    of_fault = tr("Photo of the box fault at “{question}”", question=back.tick.text)
    boxes = [
        column([short(tr("good"), Type.SMALL, faint=True), cut_out(good, of_good, look)], 0),
        column([short(tr("fault"), Type.SMALL, faint=True), cut_out(fault, of_fault, look)], 0),
    ]
    return row(boxes)


def written_part(png: bytes, question: str, look: Look) -> QWidget:
    """What was written by hand, to be typed in from."""
    name = tr("Photo of what was written at “{question}”", question=question)
    return column([said(tr("Written on the sheet:"), Type.SMALL, faint=True), cut_out(png, name, look)], 0)
