"""The check before a trip: what is asked of each piece and part, what a member answered, and what came of it."""

from datetime import date

from msgspec import Struct

from inspector.gear.inspection import Answer, Reading
from inspector.gear.judged import Judged
from inspector.gear.kind import Check, Grade, Measure
from inspector.gear.outcome import Outcome
from inspector.gear.trip import Trip


class Seen(Struct, frozen=True):
    """What a member saw of one piece. A question without an answer was not looked at; it is never taken for good.

    doubts: what was called a fault and can be kept neither as a grade nor as a reading, in words; each holds the piece.
    """

    answers: tuple[Answer, ...] = ()
    readings: tuple[Reading, ...] = ()
    note: str = ""
    doubts: tuple[str, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Whether nothing was looked at."""
        unseen = all(one.grade is Grade.NOT_SEEN for one in self.answers)
        return unseen and not self.readings and not self.doubts


class AskedMeasure(Struct, frozen=True):
    """A measure asked before use. limit: what it must keep, in words, e.g. "more than 17.1 mm"."""

    measure: Measure
    limit: str


class CheckMade(Struct, frozen=True):
    """A check of one piece that counts for the trip. by: a name; sheet: the number of the paper it came back on."""

    by: str
    on: date
    sheet: str
    seen: Seen


class KitPiece(Struct, frozen=True):
    """A piece of the kit, or a part on one of the trip's vehicles, judged for the trip's last day.

    goes: any purpose is open to it; why: what keeps it back. where: it rides, sits or lies, in words. part_of: the tag
    of the vehicle that it sits on; empty for what is loose.
    """

    judged: Judged
    asked: tuple[Check, ...]
    measures: tuple[AskedMeasure, ...]
    marked: str
    goes: bool
    why: str
    made: tuple[CheckMade, ...] = ()
    where: str = ""
    part_of: str = ""

    @property
    def tag(self) -> str:
        """What is written on the piece."""
        return self.judged.dossier.item.tag

    @property
    def kind_name(self) -> str:
        """The name of its kind."""
        return self.judged.dossier.kind.name

    @property
    def outcome(self) -> Outcome:
        """Its outcome on the trip's last day."""
        return self.judged.verdict.outcome

    @property
    def open(self) -> tuple[Check, ...]:
        """The questions that nobody has answered for this trip."""
        answers = [answer for one in self.made for answer in one.seen.answers]
        answered = {one.check for one in answers if one.grade is not Grade.NOT_SEEN}
        return tuple(check for check in self.asked if check.key not in answered)

    @property
    def is_checked(self) -> bool:
        """Whether every question was answered."""
        return bool(self.made) and not self.open

    @property
    def checked_by(self) -> tuple[str, ...]:
        """Who looked, each once."""
        return tuple(dict.fromkeys(one.by for one in self.made))


class KitCheck(Struct, frozen=True):
    """All that is looked at before a trip: the parts by vehicle, front to rear, then the kit in its order.

    sheets: numbers of its printed sheets; since: checks count from this day on.
    """

    trip: Trip
    sheets: tuple[str, ...]
    since: date
    pieces: tuple[KitPiece, ...]

    @property
    def to_check(self) -> tuple[KitPiece, ...]:
        """What goes along, and what a check of this trip has kept back since."""
        return tuple(one for one in self.pieces if one.goes or one.made)

    @property
    def going(self) -> tuple[KitPiece, ...]:
        """What goes and was checked in full."""
        return tuple(one for one in self.pieces if one.goes and one.is_checked)

    @property
    def staying(self) -> tuple[KitPiece, ...]:
        """What stays in the shed, of the kit."""
        return tuple(one for one in self.pieces if not one.goes and not one.part_of)

    @property
    def barred(self) -> tuple[KitPiece, ...]:
        """What must not be used of what sits on the vehicles."""
        return tuple(one for one in self.pieces if not one.goes and one.part_of)

    @property
    def part_count(self) -> int:
        """How many of those to check sit on a vehicle."""
        return sum(bool(one.part_of) for one in self.to_check)

    @property
    def unchecked(self) -> tuple[KitPiece, ...]:
        """What would go, were it checked."""
        return tuple(one for one in self.pieces if one.goes and not one.is_checked)

    @property
    def done_count(self) -> int:
        """How many of those to check need no more looking: checked in full, or kept back by what was seen."""
        return len(self.to_check) - len(self.unchecked)

    def piece(self, tag: str) -> KitPiece | None:
        """The piece with this tag, in any case."""
        wanted = tag.strip().casefold()
        return next((one for one in self.pieces if one.tag.casefold() == wanted), None)
