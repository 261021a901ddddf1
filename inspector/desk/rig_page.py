"""The page of a rig: what is asked on the left, its account on the right; in a narrow window one at a time."""

from pathlib import Path

from msgspec.structs import replace
from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout

from inspector.desk.background import Background
from inspector.desk.deeds.rigs import write_out
from inspector.desk.deeds.trips import plan
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import button, short
from inspector.desk.rig_account import RigAccount
from inspector.desk.rig_asked import RigAsked, RigGround, rig_ground
from inspector.desk.rig_build.building import Building
from inspector.desk.rig_form import RigForm
from inspector.duties.keep_rigs import keep_rig
from inspector.duties.named_files import read_bytes
from inspector.duties.office import Office
from inspector.duties.rig_files import read_rig
from inspector.duties.typed_tables import decoded
from inspector.duties.work_rigs import propose_rig, work_rig
from inspector.gear.rig import KeptRig, Rig
from inspector.gear.rig_result import Change, Proposed, RigResult
from inspector.language import tr
from inspector.refused import Refused

_NARROW_PX = 1100
_NARROW_BENCH_PX = 1500  # the bench needs more room beside the form
_FORM_PX = 376


class RigPage(Place):
    """leave: back to where it was opened from. sheet: a rig sheet is wanted. typed: a letter for the search."""

    sheet = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.form: RigForm | None = None
        self._ground = RigGround((), (), ())
        self._before: list[RigResult] = []
        self._asks = 0  # how many rigs were asked for: an older answer is dropped
        self.account = RigAccount(look, office.system)
        self.setProperty("touch", True)
        self._form_button = button(tr("What is asked"), self._to_form)
        self.building = Building(office, background, notice, look, self)
        self.builder = self.building.builder
        self._right = QStackedWidget()
        self.build_button = button(tr("Build it by hand"), self.turn_bench)
        self._lay_out()
        self._connect()

    def begin(self, asked: RigAsked | None = None) -> None:
        """Read what there is to choose among; then propose what is asked for, if anything is."""
        self._background.run(
            rig_ground, self._office, done=lambda ground: self._begun(ground, asked), failed=self._notice.refuse
        )

    def back(self) -> bool:
        """From the bench to the account, in a narrow window from there to the form; False where there is no step."""
        if self.builder.isVisible():
            self.turn_bench()
            return True
        if not self._is_narrow or not self.account.isVisible():
            return False
        self._to_form()
        return True

    def come_back(self, *, changed: bool) -> None:
        """What was worked out stands, unless the register says something else now."""
        if changed:
            self.begin()
        else:
            self.focus_start()

    def focus_start(self) -> None:
        """The keys go to what is asked, or to the account where only that is seen."""
        if self.builder.isVisible():
            self.builder.focus_start()
        elif self.form and self.form.isVisible():
            self.form.focus_start()
        else:
            self.account.focus_start()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Side by side where there is room for both."""
        super().resizeEvent(event)
        self._turn()

    def _begun(self, ground: RigGround, asked: RigAsked | None) -> None:
        """A form that is there already keeps what is typed, unless something is asked for."""
        before, self._ground = self._ground, ground
        self.building.vehicles = ground.vehicles
        if self.form is None or before != ground:
            self._new_form(ground)
        if self.account.result is None:
            self.account.wait(trips=bool(ground.trips))
        if asked and self.form:
            self.form.show_asked(asked)
            if asked.pulling:
                self.form.try_propose()
        self._turn()
        self.focus_start()

    def _new_form(self, ground: RigGround) -> None:
        old, self.form = self.form, RigForm(self._office, ground, self._look)
        if old:
            self.form.take_over(old)
            self._box.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._box.insertWidget(0, self.form)
        self.form.propose.connect(self._propose)
        self.form.check.connect(self._check)
        self.form.kept.connect(self._open_kept)
        self.form.kept_rigs.write.connect(lambda kept: self.go.emit(Go(DEED, (write_out(kept), kept, kept.ref))))
        self.form.kept_rigs.file.connect(self._open_file)
        self.form.changed.connect(self.account.tell_changed)
        self.building.join(self.form)

    def turn_bench(self) -> None:
        """From the account to the bench, where the rig is built by hand; and back, with the account of what stands."""
        to_bench = not self.builder.isVisible()
        self._right.setCurrentWidget(self.builder if to_bench else self.account)
        self._shows_form = False
        if to_bench:
            self.building.begin()
        elif self.builder.result and self.builder.result != self.account.result:
            self._show(self.builder.result, None)
        self._turn()
        self.focus_start()

    def _propose(self, asked: RigAsked) -> None:
        given = (self._office, asked.trip, asked.method, asked.pulling, asked.bogged, asked.conditions)
        number = self._next()
        self._background.run(
            propose_rig, *given, done=lambda found: self._proposed(number, found), failed=self._refuse,
            says=tr("Working the rig out…"),
        )  # fmt: skip

    def _check(self, rig: Rig) -> None:
        number = self._next()
        self._background.run(
            work_rig, self._office, rig, done=lambda result: self._checked(number, result), failed=self._refuse,
            says=tr("Checking the rig…"),
        )  # fmt: skip

    def _open_kept(self, kept: KeptRig) -> None:
        if self.form:
            self.form.show_rig(kept.rig)
        self._check(kept.rig)

    def _open_file(self, path: str) -> None:
        """Check the rig of a file; the form follows once that is done, and what cannot be read is said above."""
        number = self._next()
        self._background.run(
            _rig_of, self._office, path, done=lambda result: self._checked(number, result),
            failed=self._notice.refuse, says=tr("Checking the rig…"),
        )  # fmt: skip

    def _take(self, change: Change) -> None:
        """Check the rig that a change makes."""
        if change.rig and self.account.result:
            self._check(replace(change.rig, trip=self.account.result.rig.trip))

    def _next(self) -> int:
        self._notice.hide()
        self._asks += 1
        return self._asks

    def _proposed(self, number: int, found: Proposed) -> None:
        if number != self._asks:
            return
        if found.result:
            self._show(found.result, found)
        else:
            self._remember()
            self.account.show_none(found)
            self._to_account()

    def _checked(self, number: int, result: RigResult) -> None:
        if number == self._asks:
            self._show(result, None)

    def _show(self, result: RigResult, found: Proposed | None) -> None:
        self._remember()
        self._show_account(result, found)

    def _remember(self) -> None:
        if self.account.result:
            self._before.append(self.account.result)

    def _show_account(self, result: RigResult, found: Proposed | None = None) -> None:
        if self.form:
            self.form.show_rig(result.rig)
        self.account.show_result(result, self._ground.vehicles, found, bool(self._before))
        self._to_account()

    def _show_before(self) -> None:
        if self._before:
            self._show_account(self._before.pop())

    def _refuse(self, refusal: Refused) -> None:
        """At the field it names, where there is one; what was shown stays."""
        if self.form and self.form.refuse(refusal):
            self._shows_form = True
            self._turn()
        else:
            self._notice.refuse(refusal)

    def _keep(self, ref: str) -> None:
        if result := self.account.result:
            self._background.run(
                keep_rig, self._office, ref, result.rig, done=self._kept, failed=self.account.refuse_ref,
                says=tr("Saving…"),
            )  # fmt: skip

    def _kept(self, kept: KeptRig) -> None:
        self._notice.tell(tr("{ref} is kept: {name}.", ref=kept.ref, name=kept.rig.name))
        self.account.refuse_ref(None)
        self.building.settle()
        self._background.run(rig_ground, self._office, done=self._regrounded, failed=self._notice.refuse)

    def _regrounded(self, ground: RigGround) -> None:
        self._ground = ground
        if self.form:
            self.form.offer_kept(ground.kept)

    def _print(self) -> None:
        if self.account.result:
            self.sheet.emit(self.account.result)

    @property
    def _is_narrow(self) -> bool:
        builds = self._right.currentWidget() is self.builder
        return self.width() < self._look.px(_NARROW_BENCH_PX if builds else _NARROW_PX)

    def _to_form(self) -> None:
        self._shows_form = True
        self._turn()
        self.focus_start()

    def _to_account(self) -> None:
        self._shows_form = False
        self._turn()
        if self._is_narrow:
            self.account.focus_start()

    def _turn(self) -> None:
        narrow = self._is_narrow
        self._right.setVisible(not narrow or not self._shows_form)
        self._form_button.setVisible(narrow and not self._shows_form)
        builds = self._right.currentWidget() is self.builder and not self._right.isHidden()
        self.build_button.setText(tr("The whole account") if builds else tr("Build it by hand"))
        self.build_button.setAccessibleName(self.build_button.text())
        if self.form:
            self.form.setVisible(not narrow or self._shows_form)
            self.form.setMinimumWidth(0 if narrow else self._look.px(_FORM_PX))
            self.form.setMaximumWidth(self.width() if narrow else self._look.px(_FORM_PX))

    def _lay_out(self) -> None:
        self._shows_form = True
        head = QHBoxLayout()
        head.setSpacing(2 * GRID)
        head.addWidget(button("‹ " + tr("Back"), self.leave.emit, name=tr("Back to the page before")))
        head.addWidget(short(tr("Rig"), Type.DISPLAY), 1)
        head.addWidget(self._form_button)
        head.addWidget(self.build_button)
        self._box = QHBoxLayout()
        self._box.setSpacing(3 * GRID)
        self._right.addWidget(self.account)
        self._right.addWidget(self.builder)
        self._box.addWidget(self._right, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        layout.setSpacing(GRID)
        layout.addLayout(head)
        layout.addLayout(self._box, 1)

    def _connect(self) -> None:
        self.account.take.connect(self._take)
        self.account.sheet.connect(self._print)
        self.account.keep.connect(self._keep)
        self.account.before.connect(self._show_before)
        self.account.plan.connect(lambda: self.go.emit(Go(DEED, (plan(), None, ""))))
        self._look.changed.connect(self._turn)


def _rig_of(office: Office, path: str) -> RigResult:
    """The rig of a file, checked against the register."""
    file = Path(path)
    return work_rig(office, read_rig(decoded(read_bytes(file), file.name), office.decimal))
