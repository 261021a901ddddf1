"""What was read off a photo, shown as it stands on the paper."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QWidget

from inspector.desk.look import Look, Type
from inspector.desk.plain import column, row, said, short
from inspector.gear.photo_read import Answer, RoomRead
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
    """The two boxes of a row side by side, and how surely they were read; None where it was filled in on a screen."""
    good, fault = back.pictures
    if not good or not fault:
        return None
    of_good = tr("Photo of the box good at “{question}”", question=back.tick.text)
    of_fault = tr("Photo of the box fault at “{question}”", question=back.tick.text)
    read_as = tr("Read as {answer}, {percent} % sure.", answer=answer_word(back.answer), percent=_percent(back))
    told = short(tr("Left: good. Right: fault.") if back.is_doubtful else read_as, Type.SMALL, faint=True)
    return row([cut_out(good, of_good, look), cut_out(fault, of_fault, look), told])


def _percent(back: RowBack) -> int:
    """Never said to be surer than it is."""
    return int(back.confidence * 100)


def answer_word(answer: Answer) -> str:
    """What a row says, in a word or two."""
    words = {
        Answer.GOOD: tr("good"),
        Answer.FAULT: tr("fault"),
        Answer.NONE: tr("nothing ticked"),
        Answer.UNSURE: tr("not clear"),
    }
    return words[answer]


def written_part(room: RoomRead, label: str, look: Look) -> QWidget:
    """What was written by hand, to be typed in from."""
    name = tr("Photo of what was written at “{question}”", question=label)
    return column([said(label, Type.SMALL, faint=True), cut_out(room.picture, name, look)], 0)
