"""What the gear list is narrowed to beside its outcome: kind, owner, due day, exposure, whereabouts; and it says so."""

from msgspec.structs import replace
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from inspector.desk.choice import Choice, StillBox, Value
from inspector.desk.look import GRID
from inspector.duties.gear_list import Choices
from inspector.gear.lists import Due, Exposed, Held, Owned, Wanted
from inspector.language import tr

_Whose = tuple[Owned | None, str]
_LEAST_PX = 96


class GearFilters(QWidget):
    """Five boxes in a row. chosen: something else is wanted."""

    chosen = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.kind: Choice[str] = Choice(tr("Kind of gear"), _kinds(()), scans=True)
        self.owner: Choice[_Whose] = Choice(tr("Owner"), _owners(()), scans=True)
        self.due: Choice[Due | None] = Choice(tr("When it falls due"), _dues(), scans=True)
        self.exposed: Choice[Exposed | None] = Choice(tr("Weather it saw"), _exposures(), scans=True)
        self.held: Choice[Held | None] = Choice(tr("Where the pieces are"), _places(), scans=True)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        for box in self._boxes():
            box.setMinimumWidth(_LEAST_PX)
            box.currentIndexChanged.connect(lambda _index: self.chosen.emit())
            layout.addWidget(box, 1)

    def offer(self, choices: Choices) -> None:
        """Offer the kinds and owners there are; what is chosen stays chosen where it is still there."""
        _offer(self.kind, _kinds(choices.kinds))
        _offer(self.owner, _owners(choices.owners))

    def narrowed(self, wanted: Wanted) -> Wanted:
        """The question with what is chosen here."""
        owned, owner = self.owner.value
        return replace(
            wanted, kind=self.kind.value, owned=owned, owner=owner, due=self.due.value, exposed=self.exposed.value,
            held=self.held.value,
        )  # fmt: skip

    def reset(self) -> None:
        """Let all pass again; nobody is told of it."""
        for box in self._boxes():
            box.blockSignals(True)
            box.setCurrentIndex(0)
            box.blockSignals(False)

    def _boxes(self) -> tuple[StillBox, ...]:
        return (self.kind.box, self.owner.box, self.due.box, self.exposed.box, self.held.box)


def _offer(choice: Choice[Value], words: list[tuple[str, Value]]) -> None:
    kept = choice.value
    choice.offer(words)
    if choice.has(kept):
        choice.box.blockSignals(True)
        choice.choose(kept)
        choice.box.blockSignals(False)


def _kinds(known: tuple[tuple[str, str], ...]) -> list[tuple[str, str]]:
    return [(tr("Any kind"), ""), *((name, key) for key, name in known)]


def _owners(names: tuple[str, ...]) -> list[tuple[str, _Whose]]:
    words: list[tuple[str, _Whose]] = [
        (tr("Any owner"), (None, "")),
        (tr("The club's"), (Owned.CLUB, "")),
        (tr("Not the club's"), (Owned.OTHERS, "")),
    ]
    return words + [(tr("Owner: {name}", name=name), (None, name)) for name in names]


def _dues() -> list[tuple[str, Due | None]]:
    return [
        (tr("Due on any day"), None),
        (tr("Overdue"), Due.OVERDUE),
        (tr("Due within 30 days"), Due.IN_30_DAYS),
        (tr("Due within 90 days"), Due.IN_90_DAYS),
        (tr("No day due"), Due.NO_DAY),
    ]


def _exposures() -> list[tuple[str, Exposed | None]]:
    return [
        (tr("Exposed or not"), None),
        (tr("Wetted by salt"), Exposed.SALT),
        (tr("Any exposure logged"), Exposed.ANY),
        (tr("No exposure told"), Exposed.NONE),
    ]


def _places() -> list[tuple[str, Held | None]]:
    return [
        (tr("All but gone"), None),
        (tr("In store"), Held.IN_STORE),
        (tr("On loan"), Held.ON_LOAN),
        (tr("On a vehicle"), Held.ON_VEHICLE),
        (tr("Missing or stolen"), Held.LOST),
        (tr("Gone: sold, given back, destroyed"), Held.GONE),
    ]
