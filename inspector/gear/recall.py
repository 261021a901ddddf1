"""What a letter says by which pieces are called in, as data. How to reach a person is never part of it."""

from msgspec import Struct

from inspector.gear.papers import Imprint


class CalledPiece(Struct, frozen=True):
    """A piece that is called in. marks: maker's mark and serial, by which it is told from others; why: why it stands
    in this letter; do: what is asked of its reader.
    """

    tag: str
    kind_name: str
    marked: str
    marks: str
    why: str
    do: str


class RecallLetter(Struct, frozen=True):
    """A letter to one person. person: the id by which an address is looked up as it is printed; empty for a buyer, whom
    the register knows by name alone.

    call: the number of the call by which all its letters belong together; reason: as the officer typed it; send_to,
    send_by: empty where nobody said. recall: its reference; notice: whose it is and where it can be read; remedy: what
    it asks of whoever has a piece. Letters of before recalls were kept say none of it.
    """

    imprint: Imprint
    person: str
    name: str
    call: str
    reason: str
    send_to: str
    send_by: str
    pieces: tuple[CalledPiece, ...]
    recall: str = ""
    notice: str = ""
    remedy: str = ""
    is_reminder: bool = False
