"""Joins the bench to the form and the worker: one model of the runs, worked out anew after each change."""

from PySide6.QtCore import QObject, QTimer, Signal

from inspector.desk.background import Background
from inspector.desk.latest import Latest
from inspector.desk.look import Look
from inspector.desk.notice import Notice
from inspector.desk.rig_build.builder import Builder
from inspector.desk.rig_build.chain import Runs
from inspector.desk.rig_form import RigForm
from inspector.duties.office import Office
from inspector.duties.rig_bench import rig_bench
from inspector.duties.work_rigs import work_rig
from inspector.gear.rig import Rig
from inspector.gear.rig_result import RigResult
from inspector.gear.trip import Vehicle
from inspector.language import tr
from inspector.refused import Refused

_PAUSE_MS = 400


class Building(QObject):
    """worked: the account of the runs that stand."""

    worked = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look, parent: QObject) -> None:
        super().__init__(parent)
        self._office, self._background = office, background
        self.builder = Builder(look, office.system)
        self.vehicles: tuple[Vehicle, ...] = ()
        self._form: RigForm | None = None
        self._latest = Latest(background, notice)
        self._offered: tuple[str, str, str] | None = None
        self._going, self._again = False, False  # one rig at a time is worked out; what came meanwhile, after it
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self.work)
        self.builder.changed.connect(self._built)

    def join(self, form: RigForm) -> None:
        """Build what stands in this form, and let stand there what is built."""
        self._form = form
        form.runs.changed.connect(lambda: self._typed(form))
        form.changed.connect(self._asked_anew)
        self._typed(form)

    def begin(self) -> None:
        """The bench is shown: read its parts, work out what stands."""
        self._offered = None
        self.builder.chain.end_typing()
        self._offer()
        self.work()

    def settle(self) -> None:
        """The rig is kept: nothing is undone beyond it."""
        self.builder.chain.settle()

    def work(self) -> None:
        """Work out the runs that stand; while another is worked out, after it."""
        self._pause.stop()
        rig = self._rig()
        if rig is None:
            return
        if self._going:
            self._again = True
            return
        self._going = True
        self._background.run(
            work_rig, self._office, rig, done=lambda found: self._done(rig, found), failed=self._failed,
            says=tr("Checking the rig…"),
        )  # fmt: skip

    def _rig(self) -> Rig | None:
        """What can be worked out; what is lacking is said on the bench."""
        runs = self.builder.chain.runs
        if self._form is None or not runs:
            self.builder.tell(None)
            return None
        if any(len(run) < 2 for run in runs):
            why = tr("A run joins at least two parts.")
            self.builder.tell(Refused(tr("runs"), why, tr("Put the next part in.")))
            return None
        if rig := self._form.rig():
            return rig
        why = tr("A figure of the pull cannot be read.")
        self.builder.tell(Refused(tr("runs"), why, tr("Mend it in what is asked.")))
        return None

    def _done(self, rig: Rig, found: RigResult) -> None:
        self._going = False
        if self._is_next():
            return
        if self._form and rig == self._form.rig():
            self.builder.tell(None)
            self.builder.show_result(found, self.vehicles)
            self.worked.emit(found)

    def _failed(self, refusal: Refused) -> None:
        self._going = False
        if not self._is_next():
            self.builder.tell(refusal)

    def _is_next(self) -> bool:
        """Whether something else was asked for meanwhile, which is worked out now."""
        again, self._again = self._again, False
        if again:
            self.work()
        return again

    def _built(self, runs: Runs) -> None:
        if self._form:
            self._form.runs.show_runs(runs)
        self.work()

    def _typed(self, form: RigForm) -> None:
        if form is self._form:
            self.builder.take_runs(form.runs.typed)

    def _asked_anew(self) -> None:
        self.builder.outdate()
        if self.builder.isVisible():
            self._offer()
            self._pause.start()

    def _offer(self) -> None:
        """The parts of the trip and of the two vehicles, read anew where these are others."""
        if self._form is None:
            return
        trip = self._form.trip.value
        wanted = (trip.ref if trip else "", self._form.pulling.value, self._form.bogged.value)
        if wanted != self._offered:
            self._offered = wanted
            self._latest.read(rig_bench, self._office, wanted[0], wanted[1:], done=self.builder.offer)
