"""The page of a trip: whether it is ready, what stays and why, who can bring out whom; from here all else is begun."""

from msgspec.structs import replace
from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk import trip_parts as parts
from inspector.desk.background import Background, Progress
from inspector.desk.choice import Choice
from inspector.desk.columns import Columns
from inspector.desk.deeds.trips import plan
from inspector.desk.flow import flowing
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.pair_part import PairPart
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import Fold, button, clear, column, lay_in, row, said, scroll
from inspector.desk.record_parts import cautions_part, history_part
from inspector.desk.rig_asked import RigAsked, asked_of_pair
from inspector.desk.trip_kit import kit_part
from inspector.desk.trip_opened import OpenedTrip, opened_trip, with_kit
from inspector.duties.office import Office
from inspector.duties.work_rigs import TripPairs, conditions_of, pack_trip, pair_trip
from inspector.gear.packing import Packed
from inspector.gear.rig_result import PairLine
from inspector.gear.trip import Trip
from inspector.language import show_day, tr
from inspector.refused import Refused

_MOST_BESIDE = 5  # vehicles whose pairs leave room for a margin


class TripPage(Place):
    """check, sheet: of a trip, the latter with the button below which it is asked which sheet. rig: one to be proposed.

    deeds: the button below which all else is offered.
    """

    check = Signal(str)
    deeds = Signal(object)
    sheet = Signal(object, object)
    rig = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.trip: OpenedTrip | None = None
        self.pairs: TripPairs | None = None
        self.choice: Choice[str] | None = None
        self.pair_part = PairPart(look, office.system)
        self._progress: Progress | None = None
        self._wanted = ""
        self.setProperty("touch", True)
        self._head, self._stack = QHBoxLayout(), QStackedWidget()
        self._overview, self._kit = scroll(QWidget(), tr("The trip")), scroll(QWidget(), tr("A kit by need"))
        for one in (self._overview, self._kit):
            self._stack.addWidget(one)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, 0, 2 * GRID, 0)
        layout.setSpacing(GRID)
        layout.addLayout(self._head)
        layout.addWidget(self._stack, 1)

    @property
    def is_kit_shown(self) -> bool:
        """Whether a proposed kit is shown."""
        return self._stack.currentWidget() is self._kit

    def begin(self, ref: str = "") -> None:
        """Show a trip; without a reference the one shown last, else the next one."""
        self._wanted = ref or (self.trip.trip.ref if self.trip else "")
        says = tr("Judging the kit for the trip…")
        self._background.run(opened_trip, self._office, self._wanted, done=self._show, failed=self._refuse, says=says)

    def back(self) -> bool:
        """From a proposed kit to the trip; False where there is no step to take."""
        if not self.is_kit_shown:
            return False
        self._to_overview()
        return True

    def stop(self) -> None:
        """End what is under way."""
        if self._progress:
            self._progress.stop()

    def come_back(self, *, changed: bool) -> None:
        """What was worked out stands, unless the register says something else now."""
        if changed:
            self.begin()
        else:
            self.focus_start()

    def focus_start(self) -> None:
        """The keys go to the choice of the trip."""
        if self.choice:
            self.choice.box.setFocus()

    def plan(self) -> None:
        """Ask what a trip needs to be planned."""
        self.go.emit(Go(DEED, (plan(), None, "")))

    def propose_kit(self) -> None:
        """Ask what the trip needs."""
        if self.trip:
            trip, says = self.trip.trip, tr("Packing by need…")
            self._background.run(
                pack_trip, self._office, trip.ref, done=lambda found: self._show_kit(trip, found),
                failed=self._notice.refuse, says=says,
            )  # fmt: skip

    def _refuse(self, refusal: Refused) -> None:
        self.trip = None
        self._notice.refuse(refusal)

    def _show(self, found: OpenedTrip | None) -> None:
        self.stop()
        self.trip, self.pairs = found, None
        clear(self._head)
        if found is None:
            self._show_nothing()
            return
        if self._wanted and found.trip.ref != self._wanted:
            return  # another trip was chosen meanwhile
        self._tell_head(found)
        self._new_pair_part()
        self._overview.setWidget(self._page(found))
        self._to_overview()
        self.work_pairs()

    def _show_nothing(self) -> None:
        """What to do where no trip is in the register."""
        words = tr("Plan one with its vehicles and its days; its kit is proposed then by what they need.")
        begin = button(tr("Plan a trip"), self.plan, rank="first")
        more = button(tr("More…"), lambda: self.deeds.emit(more), name=tr("More deeds of a trip"))
        line = row((begin, more), 2 * GRID)
        line.setContentsMargins(0, 2 * GRID, 0, 0)
        texts = [said(tr("No trip is planned yet."), Type.DISPLAY), said(words), line]
        page = column(texts)
        page.setObjectName("page")
        self._overview.setWidget(page)
        self._stack.setCurrentWidget(self._overview)
        begin.setFocus()

    def _tell_head(self, found: OpenedTrip) -> None:
        """The trip to choose, and what is begun from here."""
        self.choice = choice = Choice(tr("Trip"), [(self._trip_words(one), one.ref) for one in found.trips], scans=True)
        choice.choose(found.trip.ref)
        choice.box.currentIndexChanged.connect(lambda _: self._turn())
        choice.box.moves.connect(lambda _: self._to_pairs())
        self._head.addWidget(flowing([choice.box, *self._buttons(found)], wide=[choice.box]))

    def _buttons(self, found: OpenedTrip) -> list[QPushButton]:
        ref = found.trip.ref
        rig = button(tr("Rig"), lambda: self.rig.emit(RigAsked(trip=ref)), name=tr("Propose or check a rig"))
        more = button(tr("More…"), lambda: self.deeds.emit(more), name=tr("More deeds of the trip"))
        sheet = button(tr("Print sheet"), lambda: self.sheet.emit(found.trip, sheet), name=tr("Print the trip sheet"))
        if found.is_over:
            return [rig, more]
        return [
            button(tr("Propose a kit"), self.propose_kit),
            rig,
            button(tr("Check the kit"), lambda: self.check.emit(ref), name=tr("Begin the check before the trip")),
            sheet,
            more,
        ]

    def _trip_words(self, trip: Trip) -> str:
        words = tr("{day}: {name}", day=show_day(trip.first_on), name=trip.name)
        return tr("{trip} (over)", trip=words) if trip.last_on < self._office.today else words

    def _turn(self) -> None:
        if self.choice:
            self.begin(self.choice.value)

    def _page(self, found: OpenedTrip) -> QWidget:
        ready, look = found.ready, self._look
        opens = self.opened.emit
        margin = [
            *parts.empty_kit_part(ready),
            *parts.lacks_part(found.lacks),
            *parts.away_part(ready),
            *parts.staying_part(ready, look, opens),
            *parts.due_part(ready, look, opens),
        ]
        pairs = column([self.pair_part])  # no higher than its words
        aside = column(margin, 3 * GRID)
        beside = len(ready.vehicles) <= _MOST_BESIDE  # a larger table needs the whole width
        middle = Columns(pairs, aside, look) if margin and beside else column([pairs, aside], 2 * GRID)
        cars = parts.vehicles_part(ready.vehicles, look, opens)
        fitted = Columns(column(cars[::2], 3 * GRID), column(cars[1::2], 3 * GRID), look, (1, 1))
        history = Fold(
            tr("How it was planned ({count})", count=len(found.history)), lambda: history_part(found.history)
        )
        below = [*parts.going_part(ready, look, opens), history, cautions_part(_cautions(found))]
        page = column([parts.head_part(found), parts.glance_part(found), middle, fitted, *below], 2 * GRID)
        page.setObjectName("page")
        if inside := page.layout():
            inside.setContentsMargins(0, GRID, 2 * GRID, 3 * GRID)
        return page

    def _new_pair_part(self) -> None:
        self.pair_part = made = PairPart(self._look, self._office.system)
        made.opened.connect(self._open_pair)
        made.again.connect(self.work_pairs)
        made.stop.connect(self.stop)
        made.typed.connect(self.typed)
        made.told.connect(lambda: QTimer.singleShot(0, self, self._show_chosen))  # once its words have their room

    def work_pairs(self) -> None:
        """Work out which vehicles can bring out which; told step by step, stopped when the page is left."""
        if self.trip is None:
            return
        trip = self.trip.trip
        if len(trip.vehicles) < 2:
            self.pair_part.lack_vehicles(trip)
            return
        self.pair_part.wait()
        self._progress = progress = self._background.progress()
        progress.moved.connect(self.pair_part.tell_progress)
        self._background.run(
            pair_trip, replace(self._office, told=progress.told), trip.ref, says=tr("Working out the pairs…"),
            done=lambda found: self._paired(progress, found), failed=lambda why: self._not_paired(progress, why),
        )  # fmt: skip

    def _paired(self, progress: Progress, found: TripPairs) -> None:
        if progress is self._progress:
            self.pairs = found
            self.pair_part.show_pairs(found)
        progress.deleteLater()

    def _not_paired(self, progress: Progress, refusal: Refused) -> None:
        if progress is self._progress:
            self.pair_part.refuse(refusal)
        progress.deleteLater()

    def _to_pairs(self) -> None:
        if self.pair_part.views:
            self.pair_part.views[0].setFocus()
            self._show_chosen()

    def _show_chosen(self) -> None:
        """The chosen pair's sentence is seen; of a table too high for both, the pair itself."""
        self._overview.ensureWidgetVisible(self.pair_part.chosen, 0, GRID)
        view, inside = self.pair_part.focused, self._overview.widget()
        if view and inside:
            cell = view.visualRect(view.currentIndex())
            at = view.viewport().mapTo(inside, cell.center())
            self._overview.ensureVisible(at.x(), at.y(), 0, cell.height())

    def _open_pair(self, line: PairLine) -> None:
        if self.trip:
            trip = self.trip.trip
            self.rig.emit(asked_of_pair(trip.ref, line, conditions_of(trip), self._office.system))

    def _to_overview(self) -> None:
        self._stack.setCurrentWidget(self._overview)
        self.focus_start()

    def _show_kit(self, trip: Trip, found: Packed) -> None:
        if self.trip is None or self.trip.trip.ref != trip.ref:
            return
        page = kit_part(trip, found, self._look, self.opened.emit, lambda: self._take(trip, found), self._to_overview)
        lay_in(self._kit, page)
        self._stack.setCurrentWidget(self._kit)
        self._kit.setFocus()

    def _take(self, trip: Trip, found: Packed) -> None:
        self._wanted = trip.ref
        self._background.run(
            with_kit, self._office, trip.ref, found, done=self._taken, failed=self._notice.refuse, says=tr("Saving…")
        )

    def _taken(self, found: OpenedTrip | None) -> None:
        self._show(found)
        if found:
            text = tr("The kit before it stays in the trip's history.")
            self._notice.tell(tr("The kit is {count} pieces now.", count=len(found.trip.kit)), text)


def _cautions(found: OpenedTrip) -> tuple[str, ...]:
    """What stands on every verdict."""
    judged = (*found.ready.going, *found.ready.staying)
    return judged[0].explanation.cautions if judged else ()
