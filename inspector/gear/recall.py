"""What letters say by which pieces are called in, or are so no longer. How to reach a person is never part of them."""

from msgspec import Struct

from inspector.gear.outcome import Outcome
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


class FreedPiece(Struct, frozen=True):
    """A piece that a withdrawn recall had called in. outcome: how it stands now; None where it has left the club, which
    says nothing of it any more. do: what its reader may do.
    """

    tag: str
    kind_name: str
    marked: str
    marks: str
    outcome: Outcome | None
    do: str


class WithdrawnLetter(Struct, frozen=True):
    """A letter to somebody who was written to by a recall that was withdrawn. person, name: as in a recall letter.

    recall, notice: the reference and whose notice it was; letters: number and day of each letter that counts no more;
    reason: why it was withdrawn, as the officer typed it.
    """

    imprint: Imprint
    person: str
    name: str
    recall: str
    notice: str
    letters: tuple[str, ...]
    reason: str
    pieces: tuple[FreedPiece, ...]
