"""What hangs on a piece, as data: its label, and the tag that says it is on hold, derated or retired."""

from msgspec import Struct

from inspector.gear.label_sizes import LabelSize
from inspector.gear.outcome import Outcome
from inspector.gear.papers import Imprint


class HoldTag(Struct, frozen=True):
    """A tag for a piece that is not free for use. not_for: what it must not be used for, a sentence.

    limit: what it bears now, of a derated piece; may_for: what it may still be used for, empty for nothing. why: what
    decides, in a line; since: from when on, and who found it; release: what ends it. is_evidence: an incident keeps it
    as it was found, so nothing is tied to it.
    """

    tag: str
    kind_name: str
    marked: str
    outcome: Outcome
    not_for: str
    limit: str
    may_for: str
    why: str
    since: str
    release: str
    is_evidence: bool = False


class TagSheet(Struct, frozen=True):
    """Tags to be cut apart."""

    imprint: Imprint
    tags: tuple[HoldTag, ...]


class ItemLabel(Struct, frozen=True):
    """The label of a piece: what it is marked with, never what it may be used for."""

    tag: str
    kind_name: str
    marked: str


class LabelSheet(Struct, frozen=True):
    """Labels on sheets of a size. start: the place on the first sheet, from 1, at which the first one stands."""

    imprint: Imprint
    size: LabelSize
    start: int
    labels: tuple[ItemLabel, ...]

    @property
    def sheet_count(self) -> int:
        """How many sheets of labels it takes."""
        return -(-(self.start - 1 + len(self.labels)) // self.size.count)

    @property
    def next_place(self) -> int:
        """The first free place on the last sheet, from 1; 1 where none is left on it."""
        return (self.start - 1 + len(self.labels)) % self.size.count + 1
