"""The form of a rig: trip, method, who pulls, who is stuck, what is known of the pull; or its runs typed by hand."""

from msgspec.structs import replace
from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.fault_field import FaultField
from inspector.desk.flow import flowing
from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import button, column, hairline, said, scroll
from inspector.desk.rig_asked import RigAsked, RigGround
from inspector.desk.rig_conditions import ConditionsBox, labelled
from inspector.desk.rig_kept import KeptRigs
from inspector.desk.rig_runs import RunsBox
from inspector.duties.office import Office
from inspector.duties.work_rigs import conditions_of
from inspector.gear.rig import KeptRig, Method, Rig
from inspector.gear.trip import Trip
from inspector.language import show_day, tr
from inspector.refused import Refused

_ON_BOARD = ""  # the winch of the stuck vehicle itself


class RigForm(QWidget):
    """propose, check: what was asked for. kept: a kept rig to open. changed: something else stands here."""

    propose = Signal(object)
    check = Signal(object)
    kept = Signal(object)
    changed = Signal()

    def __init__(self, office: Office, ground: RigGround, look: Look) -> None:
        super().__init__()
        self._ground = ground
        self._shown: Rig | None = None
        self.trip = Choice[Trip | None](tr("Trip"), _trips(ground, office), scans=True)
        self.method = Choice(tr("Method"), _methods(), scans=True)
        self.conditions, self.runs = ConditionsBox(office.decimal), RunsBox(look)
        self.pulling = Choice[str](tr("Who pulls"), [], scans=True)
        self.bogged = Choice[str](tr("Who is stuck"), [], scans=True)
        self.kept_rigs = KeptRigs()
        self.kept_rig = self.kept_rigs.choice
        self.propose_button = button(tr("Propose the rig"), self.try_propose, rank="first")
        self.check_button = button(tr("Check what is typed"), self.try_check)
        self._area = self._laid_out()
        self._connect()
        self.trip_chosen()
        self.offer_kept(ground.kept)

    def show_asked(self, asked: RigAsked) -> None:
        """Let what is asked for stand here."""
        trip = next((one for one in self._ground.trips if one.ref == asked.trip), self.trip.value)
        self.trip.choose(trip)
        self.trip_chosen()
        self.method.choose(asked.method)
        self._choose_cars(asked.pulling, asked.bogged)
        if asked.conditions:
            self.conditions.show_conditions(asked.conditions)

    def show_rig(self, rig: Rig) -> None:
        """Let a rig stand here, with its conditions and runs."""
        self.show_asked(RigAsked(rig.trip, rig.method, rig.pulling, rig.bogged, rig.conditions))
        if not rig.trip and self.trip.value is not None:
            self.trip.choose(None)
            self.trip_chosen()
            self._choose_cars(rig.pulling, rig.bogged)
            self.conditions.show_conditions(rig.conditions)
        self._shown = rig
        self.runs.show_rig(rig)

    def asked(self) -> RigAsked | None:
        """What stands here; None where a figure cannot be read."""
        conditions = self.conditions.conditions()
        if conditions is None:
            return None
        trip = self.trip.value
        return RigAsked(trip.ref if trip else "", self.method.value, self.pulling.value, self.bogged.value, conditions)

    def rig(self) -> Rig | None:
        """The rig typed by hand; its angles and named joints are those of the rig shown, as far as they still fit."""
        asked = self.asked()
        if asked is None or asked.conditions is None:
            return None
        runs, before = self.runs.typed, self._shown
        tags = {tag for run in runs for tag in run}
        name = tr("Typed by hand: {pulling} pulls {bogged}", pulling=asked.pulling or asked.bogged, bogged=asked.bogged)
        made = Rig(name, asked.method, asked.bogged, asked.pulling, runs, asked.conditions, trip=asked.trip)
        if before:
            made = replace(
                made,
                name=before.name if before.runs == runs else name,
                angles=tuple(one for one in before.angles if one.at in tags),
                joints=tuple(one for one in before.joints if {one.one, one.other} <= tags and before.runs == runs),
                note=before.note,
            )
        return replace(made, dampers=self.runs.dampers)

    def try_propose(self) -> None:
        """Ask for the best rig, unless a figure cannot be read; without a trip for what is typed by hand."""
        self.runs.refuse(None)
        if self.trip.value is None:
            self.try_check()
        elif asked := self.asked():
            self.propose.emit(asked)
        else:
            self._to_fault()

    def try_check(self) -> None:
        """Ask for what is typed by hand to be checked."""
        self.runs.refuse(None)
        if not self.runs.typed:
            why = tr("No run is typed yet.")
            self.refuse(Refused(tr("runs"), why, tr("Write the tags in the order in which they are joined.")))
        elif rig := self.rig():
            self.check.emit(rig)
        else:
            self._to_fault()

    def refuse(self, refusal: Refused) -> bool:
        """Say a refusal at the field it names; whether there is one."""
        field = self.conditions.refuse(refusal)
        if field is None and refusal.field in _of_runs():
            field = self.runs.refuse(refusal)
        if field:
            self._reach(field)
        return field is not None

    def take_over(self, old: "RigForm") -> None:
        """Let stand here what is typed in a form that goes, as far as it is still offered."""
        trip = old.trip.value
        again = next((one for one in self._ground.trips if trip and one.ref == trip.ref), None)
        if again or trip is None:
            self.trip.choose(again)
        self.trip_chosen()
        self.method.choose(old.method.value)
        self._choose_cars(old.pulling.value, old.bogged.value)
        self.conditions.take_over(old.conditions)
        self.runs.take_over(old.runs)
        self._shown = old._shown

    def offer_kept(self, kept: tuple[KeptRig, ...]) -> None:
        """Offer these kept rigs."""
        self.kept_rigs.offer(kept)

    def focus_start(self) -> None:
        """The keys go to who pulls."""
        self.pulling.box.setFocus()

    def trip_chosen(self) -> None:
        """Offer its vehicles, and take its ground for granted."""
        trip = self.trip.value
        names = {one.tag: one.name for one in self._ground.vehicles}
        tags = trip.vehicles if trip else tuple(names)
        cars = [(f"{tag}  {names.get(tag, '')}", tag) for tag in tags]
        self.pulling.offer([*cars, (tr("its own winch"), _ON_BOARD)])
        self.bogged.offer(cars or [(tr("no vehicle"), "")])
        if len(cars) > 1:
            self.bogged.choose(tags[1])
        if trip:
            self.conditions.take_ground(conditions_of(trip))
        self.propose_button.setEnabled(trip is not None and len(cars) > 1)

    def _choose_cars(self, pulling: str, bogged: str) -> None:
        for choice, tag in ((self.pulling, pulling), (self.bogged, bogged)):
            if choice.has(tag):
                choice.choose(tag)

    def _to_fault(self) -> None:
        if field := self.conditions.first_fault():
            self._reach(field)

    def _reach(self, field: QWidget) -> None:
        """The keys go there; it is seen with what is said below it, once that has its room."""
        field.setFocus()
        QTimer.singleShot(0, self, lambda: self._show_below(field))

    def _show_below(self, field: QWidget) -> None:
        inside = self._area.widget()
        if inside and (layout := inside.layout()):
            layout.activate()
        self._area.ensureWidgetVisible(field, 0, GRID)
        fault = field.fault if isinstance(field, FaultField) else self.runs.fault
        if not fault.isHidden():
            self._area.ensureWidgetVisible(fault, 0, GRID)

    def _connect(self) -> None:
        self.trip.box.activated.connect(lambda _: self.trip_chosen())
        for choice in (self.trip, self.method, self.pulling, self.bogged):
            choice.box.moves.connect(lambda _: self.try_propose())
            choice.box.activated.connect(lambda _: self.changed.emit())
        self.conditions.entered.connect(self.try_propose)
        self.conditions.changed.connect(self.changed)
        self.runs.entered.connect(self.try_check)
        self.runs.changed.connect(self.changed)
        self.kept_rigs.opened.connect(self.kept)

    def _laid_out(self) -> QScrollArea:
        """The fields scroll, the buttons stay."""
        asks = ((tr("Trip"), self.trip.box), (tr("Method"), self.method.box), (tr("Who pulls"), self.pulling.box),
                (tr("Who is stuck"), self.bogged.box))  # fmt: skip
        parts: list[QWidget] = [
            *(labelled(label, box) for label, box in asks),
            hairline(),
            said(tr("The pull"), Type.HEAD),
            self.conditions,
        ]
        parts += [hairline(), said(tr("By hand"), Type.HEAD), self.runs]
        parts += [hairline(), said(tr("Kept rigs"), Type.HEAD), self.kept_rigs]
        inside = column(parts)
        if layout := inside.layout():
            layout.setContentsMargins(0, 0, GRID, 2 * GRID)
        area = scroll(inside, tr("What is asked"))
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, GRID)
        outer.setSpacing(GRID)
        outer.addWidget(area, 1)
        outer.addWidget(hairline())
        buttons = (self.propose_button, self.check_button)
        outer.addWidget(flowing(buttons, wide=buttons))
        return area


def _of_runs() -> set[str]:
    """The names of fields whose fault lies in what is typed by hand."""
    return {tr("runs"), tr("dampers"), tr("tag"), tr("rig"), tr("parts"), "joint", "joint.how"}


def _trips(ground: RigGround, office: Office) -> list[tuple[str, Trip | None]]:
    """The trips, the next one first; last, none at all."""
    found: list[tuple[str, Trip | None]] = []
    for one in ground.trips:
        words = tr("{day}: {name}", day=show_day(one.first_on), name=one.name)
        found.append((tr("{trip} (over)", trip=words) if one.last_on < office.today else words, one))
    return [*found, (tr("no trip: type the rig by hand"), None)]


def _methods() -> list[tuple[str, Method]]:
    return [
        (tr("by a strap that stretches"), Method.KINETIC),
        (tr("by a winch"), Method.WINCH),
        (tr("by a steady pull"), Method.TOW_OUT),
    ]
