"""What was read from a photo of a ticked sheet: each box with how sure it is and the picture it was read from.

And the law by which two boxes give the answer of their row. Pictures are PNG.
"""

from enum import StrEnum

from msgspec import Struct


class BoxState(StrEnum):
    """What a box shows. UNSURE is asked of a person."""

    EMPTY = "empty"
    MARKED = "marked"
    UNSURE = "unsure"


class Seen(StrEnum):
    """Whether something that counts only where it is plain (a ring, a solid filling) is there."""

    NO = "no"
    PERHAPS = "perhaps"
    YES = "yes"


class Answer(StrEnum):
    """What a row says. NONE: neither box was touched. UNSURE: a person looks at the picture and says it."""

    GOOD = "good"
    FAULT = "fault"
    NONE = "none"
    UNSURE = "unsure"


class BoxRead(Struct, frozen=True):
    """A box under its field's name. confidence: 0 to 1; solid: filled in fully; ringed: a ring runs round its frame."""

    name: str
    state: BoxState
    confidence: float
    solid: Seen
    ringed: Seen
    picture: bytes


class RoomRead(Struct, frozen=True):
    """What was written in a room: a picture to type in from, or the text where it was typed on a screen."""

    name: str
    picture: bytes
    text: str = ""


class PageRead(Struct, frozen=True):
    """A page that was found in a photo. code: its code's text; marks_count: position marks it was straightened by."""

    code: str
    marks_count: int
    boxes: tuple[BoxRead, ...]
    rooms: tuple[RoomRead, ...]


class RowRead(Struct, frozen=True):
    """The answer of a row. confidence: 0 to 1, that of the less certain of its boxes."""

    answer: Answer
    confidence: float


def row_answer(good: BoxRead, fault: BoxRead) -> RowRead:
    """What the two boxes of a row say together.

    One box marked and the other empty is an answer; a box filled in fully was taken back and is none by itself. Both
    marked counts only where the way to correct was kept to the letter: exactly one is ringed and not itself filled, and
    for a ring round "good" the other is filled in fully. All else is unsure, since a fault must never pass by a guess.
    """
    confidence = min(good.confidence, fault.confidence)
    return RowRead(_answer(good, fault), confidence)


def _answer(good: BoxRead, fault: BoxRead) -> Answer:
    states = good.state, fault.state
    if BoxState.UNSURE in states:
        return Answer.UNSURE
    if states == (BoxState.EMPTY, BoxState.EMPTY):
        return Answer.NONE
    if states == (BoxState.MARKED, BoxState.MARKED):
        return _corrected(good, fault)
    marked, answer = (good, Answer.GOOD) if good.state is BoxState.MARKED else (fault, Answer.FAULT)
    return answer if marked.solid is Seen.NO else Answer.UNSURE


def _corrected(good: BoxRead, fault: BoxRead) -> Answer:
    """The answer of a row with both boxes marked."""
    if _chosen(good, fault) and fault.solid is Seen.YES:
        return Answer.GOOD
    return Answer.FAULT if _chosen(fault, good) else Answer.UNSURE


def _chosen(box: BoxRead, other: BoxRead) -> bool:
    return box.ringed is Seen.YES and other.ringed is Seen.NO and box.solid is Seen.NO
