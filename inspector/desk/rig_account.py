"""A rig's whole account in the window, or that the kit makes none, and what to do then."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from inspector.desk import rig_danger as danger
from inspector.desk import rig_parts as parts
from inspector.desk.fault_field import FaultField
from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Picture
from inspector.desk.plain import button, column, row, said, scroll
from inspector.desk.record_parts import cautions_part, section
from inspector.drawings.rig_chain import rig_chain
from inspector.gear.rig_result import Proposed, RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import System

_CHAIN_PX = 890  # wide: its words are then as large as the page's


class RigAccount(QWidget):
    """take: a change. sheet: to be printed. keep: under a reference. before: the rig shown before this one.

    plan: a trip is to be planned.
    """

    take = Signal(object)
    sheet = Signal()
    keep = Signal(str)
    before = Signal()
    plan = Signal()

    def __init__(self, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._system = look, system
        self.result: RigResult | None = None
        self.ref = FaultField(tr("Reference to keep it under"), tr("for example R-01"))
        self._stale = said(tr("What is asked was changed since; this is the answer to what stood there before."),
                           bold=True)  # fmt: skip
        self._area = scroll(QWidget(), tr("Account of the rig"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        layout.addWidget(self._stale)
        layout.addWidget(self._area, 1)
        self._stale.hide()
        self.wait()

    def wait(self, *, trips: bool = True) -> None:
        """Say what to do first. trips: whether there is one, out of whose kit a rig is proposed."""
        what = tr("Choose who pulls and who is stuck, then press Return: the best rig of the kit is shown here. "
                  "Or type a rig by hand and have it checked, a wrong one too.")  # fmt: skip
        if not trips:
            what = tr(
                "Plan a trip with its vehicles and its kit: the best rig is proposed out of a trip's kit. Without one, "
                "a rig of the register's pieces can be typed by hand."
            )
        plan = [] if trips else [row([button(tr("Plan a trip"), self.plan.emit, rank="first")])]
        self._show([said(tr("No rig is shown yet."), Type.HEAD), said(what), *plan])

    def tell_changed(self) -> None:
        """Say that the account answers to what was asked before."""
        self._stale.setVisible(self.result is not None)

    def show_result(self, result: RigResult, vehicles: tuple[Vehicle, ...], found: Proposed | None, back: bool) -> None:
        """Show a rig. found: with the pieces left out, where it was proposed; back: whether one was shown before."""
        look, system = self._look, self._system
        chain = rig_chain(result, vehicles, system)
        self._show([
            parts.head_part(result, look, system),
            self._buttons(back),
            section(chain.title, Picture(chain, look, _CHAIN_PX)),
            *parts.changes_part(result.changes, look, self.take.emit),
            *parts.decides_part(result.findings, look),
            parts.links_part(result, look, system),
            *parts.joints_part(result, look, system),
            danger.load_part(result.load, system),
            danger.danger_part(result, system),
            *danger.growth_part(result, look, system),
            *parts.passes_part(result.findings, look),
            *danger.assumptions_part(result.load),
            *danger.left_out_part(found.left_out if found else ()),
            cautions_part(result.cautions),
        ])  # fmt: skip
        self.result = result

    def show_none(self, found: Proposed) -> None:
        """Say that the kit makes no rig, what it lacks, and what to do."""
        head = tr("No rig: {pulling} cannot pull {bogged} with this kit.", pulling=found.pulling, bogged=found.bogged)
        lacks = [said(tr("It lacks {what}.", what=one)) for one in found.missing]
        what = tr("Choose another method or another vehicle, put what is lacking into the trip's kit, or have what is "
                  "on hold inspected.")  # fmt: skip
        self._show([said(head, Type.DISPLAY), *lacks, said(what), *danger.left_out_part(found.left_out)])

    def refuse_ref(self, refusal: Refused | None) -> None:
        """Say at its field what is wrong with a reference."""
        self.ref.tell(refusal)

    def focus_start(self) -> None:
        """The keys go to the account, which they scroll."""
        self._area.setFocus()

    def _buttons(self, back: bool) -> QWidget:
        """What can be done with the rig shown."""
        self.ref = FaultField(tr("Reference to keep it under"), tr("for example R-01"))
        self.ref.moves.connect(lambda step: self._keep() if step > 0 else None)
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(GRID)
        made: list[QWidget] = [button(tr("Print the rig sheet"), self.sheet.emit)]
        made += [button(tr("The rig before"), self.before.emit)] if back else []
        label: QLabel = said(tr("Keep it as"), faint=True)
        label.setWordWrap(False)
        for one in (*made, label):
            layout.addWidget(one)
        layout.addWidget(self.ref, 1)
        layout.addWidget(button(tr("Keep"), self._keep, name=tr("Keep the rig")))
        return column([line, self.ref.fault], GRID // 2)

    def _keep(self) -> None:
        self.keep.emit(self.ref.text())

    def _show(self, inside: list[QWidget]) -> None:
        self.result = None
        self._stale.hide()
        page = column(inside, 2 * GRID)
        page.setObjectName("page")
        if layout := page.layout():
            layout.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
        self._area.setWidget(page)
        self._area.verticalScrollBar().setValue(0)
