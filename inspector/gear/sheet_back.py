"""What came back on a sheet, before anybody has confirmed it: files, rows, rooms, piece by piece."""

from msgspec import Struct

from inspector.gear.papers import TickLine
from inspector.gear.photo_read import Answer, RoomRead
from inspector.refused import Refused


class Incoming(Struct, frozen=True):
    """A file as it came: a photo, a scan, or a form that was filled in on a screen."""

    name: str
    data: bytes


class RowBack(Struct, frozen=True):
    """One line of a sheet. tick: what it asked. pictures: of the box for good and of that for fault, empty from a form.

    reading: what was written into the room of a measured line; unit: what was chosen beside it on a screen.
    """

    tick: TickLine
    answer: Answer
    confidence: float
    pictures: tuple[bytes, bytes] = (b"", b"")
    reading: RoomRead | None = None
    unit: str = ""

    @property
    def is_doubtful(self) -> bool:
        """Whether a person has to say what stands there."""
        return self.answer is Answer.UNSURE


class PieceBack(Struct, frozen=True):
    """One piece of a sheet, as far as its pages came back."""

    tag: str
    rows: tuple[RowBack, ...]
    remarks: RoomRead | None = None

    @property
    def is_blank(self) -> bool:
        """Whether nothing was ticked or typed; what is only a picture may hold anything."""
        ticked = any(one.answer is not Answer.NONE for one in self.rows)
        rooms = (self.remarks, *(one.reading for one in self.rows))
        return not ticked and not any(room and room.text for room in rooms)


class Unread(Struct, frozen=True):
    """A file, or a page of it, that was not taken, and why."""

    name: str
    refusal: Refused
