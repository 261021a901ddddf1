"""Which pieces time alone would retire, and when: a wall that thins, an age. What the stored verdicts hold, no more."""

from collections.abc import Iterable, Iterator
from datetime import date

from inspector.duties.due_days import is_lost
from inspector.duties.office import Office
from inspector.duties.what_falls_due import Held
from inspector.gear.needs import Ending, EndsBy
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Status

ENDS_WITHIN_YEARS = 5
_OF_AGE = {"age", "strength_left"}  # the quantities that only time brings down


def horizon_after(today: date) -> date:
    """The last day that is looked at from a day on."""
    return date(today.year + ENDS_WITHIN_YEARS, today.month, min(today.day, 28))


def endings(office: Office, pieces: Iterable[Held]) -> tuple[Ending, ...]:
    """Every piece that is not retired and that time would retire by then, the earliest end of its band counted too."""
    ends = Ends(office)
    for one in pieces:
        ends.note(one)
    return ends.found()


class Ends:
    """Those ends of pieces that are read one after the other and not kept."""

    def __init__(self, office: Office) -> None:
        self._last = horizon_after(office.today)
        self._retires = {rule.id for rule in office.rules.rules if rule.otherwise == "retire"}
        self._found: list[Ending] = []

    def note(self, one: Held) -> None:
        """Look at one more piece."""
        if not is_lost(one.where) and one.verdict.outcome is not Outcome.RETIRE:
            self._found += (end for end in _of_piece(one, self._retires) if end.first <= self._last)

    def found(self) -> tuple[Ending, ...]:
        """The ends, by day."""
        return tuple(sorted(self._found, key=lambda one: (one.on, one.tag)))


def _of_piece(one: Held, retires: set[str]) -> Iterator[Ending]:
    """The end by its wall, and the one by its age. retires: the rules that retire what fails them."""
    verdict, wall = one.verdict, one.verdict.wall
    named = (one.item.tag, one.kind_name, verdict.outcome)
    if wall and wall.reaches_required_on:
        band = wall.band
        bounds = (band.earliest_on, band.latest_on) if band else (None, None)
        yield Ending(*named, EndsBy.WALL, wall.reaches_required_on, *bounds, estimated=wall.estimated)
    aged = [
        finding.turns_on
        for finding in verdict.findings
        if finding.quantity in _OF_AGE and finding.rule in retires and finding.status is Status.PASSES
        and finding.turns_on
    ]  # fmt: skip
    if aged:
        yield Ending(*named, EndsBy.AGE, min(aged))
