"""One run of the rig as a ladder: place, part, place, part, place, from the stuck vehicle on."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.look import Look
from inspector.desk.plain import clear
from inspector.desk.rig_build.rungs import PartRung, PlaceRung, Rung
from inspector.drawings.rig_words import part_name
from inspector.gear.rig_result import JointUse, RigResult


class Ladder(QWidget):
    """step, typed: as of a rung. reached: the rung with this number along the ladder has the keys.

    take: this part. shift: this part, so many on. dropped: at this place, a tag, and where in the run it came from.
    """

    reached = Signal(int)
    step = Signal(int)
    typed = Signal(str)
    take = Signal(int)
    shift = Signal(int, int)
    dropped = Signal(int, str, int)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.rungs: list[Rung] = []
        self._inside = QVBoxLayout(self)
        self._inside.setContentsMargins(0, 0, 0, 0)
        self._inside.setSpacing(0)

    @property
    def places(self) -> list[PlaceRung]:
        """The places, from the stuck vehicle on."""
        return [one for one in self.rungs if isinstance(one, PlaceRung)]

    @property
    def parts(self) -> list[PartRung]:
        """The parts."""
        return [one for one in self.rungs if isinstance(one, PartRung)]

    def show_run(self, run: Sequence[str], tells: Mapping[str, tuple[str, str]], result: RigResult | None) -> None:
        """Show a run. tells: by tag in small letters, what stands on a part and below it; result: of these very runs,
        None while it is being worked out."""
        for one in self.rungs:
            one.blockSignals(True)  # the keys that an old rung loses come to no other of them
        clear(self._inside)
        self.rungs = []
        for at in range(len(run) + 1):
            before, behind = run[at - 1] if at else "", run[at] if at < len(run) else ""
            self._add_place(at, before, behind, _joint(result, before, behind))
            if behind:
                self._add_part(at, behind, *tells.get(behind.casefold(), (part_name(behind), "")))
        self._inside.addStretch(1)

    def light(self, lit: bool) -> None:
        """While a part is drawn, show where it can go in."""
        for one in self.places:
            one.light(lit)

    def _add_place(self, at: int, before: str, behind: str, joint: JointUse | None) -> None:
        made = PlaceRung(at, part_name(before), part_name(behind), joint, self._look)
        made.dropped.connect(lambda tag, came: self.dropped.emit(at, tag, came))
        made.seek.connect(lambda: self.typed.emit(""))
        self._add(made)

    def _add_part(self, at: int, tag: str, head: str, tells: str) -> None:
        made = PartRung(at, tag, head, tells)
        made.take.connect(lambda: self.take.emit(at))
        made.shift.connect(lambda by: self.shift.emit(at, by))
        made.drawn.connect(self.light)
        self._add(made)

    def _add(self, made: Rung) -> None:
        number = len(self.rungs)
        made.step.connect(self.step)
        made.typed.connect(self.typed)
        made.reached.connect(lambda: self.reached.emit(number))
        self.rungs.append(made)
        self._inside.addWidget(made)
        made.show()  # at once: the keys cannot go to what is shown only later


def _joint(result: RigResult | None, one: str, other: str) -> JointUse | None:
    """What the account says of two neighbours."""
    pair = {one.casefold(), other.casefold()}
    joints = result.joints if result else ()
    return next((each for each in joints if {each.one.casefold(), each.other.casefold()} == pair), None)
