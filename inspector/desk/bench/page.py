"""The page "Why": topics and dials on the left, the answer with its picture on the right, changing as one turns."""

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.bench.answer import BenchAnswer
from inspector.desk.bench.dial_row import DialRow
from inspector.desk.bench.topic_list import TopicList
from inspector.desk.columns import Columns
from inspector.desk.look import GRID, Look, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Place
from inspector.desk.plain import button, clear, column, hairline, said, scroll
from inspector.desk.told_papers import tell_papers
from inspector.duties.bench import HandoutAsked, begin_bench, bench_topics, came_words, work_bench
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_handout import print_handout
from inspector.gear.bench import BenchStart, BenchTopic, Given, Preset
from inspector.language import tr
from inspector.refused import Refused

_NARROW_PX = 760


class BenchPage(Place):
    """Topics, dials, answer. It prints its handout itself; opened: the piece it was begun from is wanted."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.topics = bench_topics(office)
        self.list = TopicList(self.topics)
        self.answer = BenchAnswer(look, office.system)
        self.rows: list[DialRow] = []
        self.start: BenchStart | None = None
        self._set: dict[str, dict[str, Given]] = {}  # by topic: the figures that are not the usual ones
        self._begun_from = said("", Type.SMALL)
        self.open_button = button("", self._open)
        self._dials = QVBoxLayout()
        self._buttons = (
            button(tr("Print the handout"), self._print, rank="first"),
            button(tr("As at the start"), self._reset, name=tr("Figures as at the start")),
        )
        self._answer_area: QScrollArea = scroll(self.answer, tr("The answer"))
        self._lay_out()
        self.list.chosen.connect(self._turn_to)
        self.list.onward.connect(self._to_dials)
        self.list.typed.connect(self.typed)
        look.changed.connect(self.list.fit)
        self.list.setCurrentRow(0)

    @property
    def topic(self) -> BenchTopic:
        """The topic that is shown."""
        return self.topics[max(self.list.currentRow(), 0)]

    @property
    def print_button(self) -> QPushButton:
        """The button that prints."""
        return self._buttons[0]

    @property
    def reset_button(self) -> QPushButton:
        """The button that takes the figures of the start again."""
        return self._buttons[1]

    @property
    def given(self) -> tuple[Given, ...]:
        """The figures of the topic shown that are not the usual ones."""
        return tuple(self._set.get(self.topic.key, {}).values())

    def begin(self, what: str | None = None) -> None:
        """Show the bench as it stood; what: the tag of a piece or vehicle from whose numbers to begin."""
        self.list.fit()
        if what:
            self._background.run(
                begin_bench, self._office, what, done=self._started, failed=self._notice.refuse,
                says=tr("Reading the piece…"),
            )  # fmt: skip
        else:
            self.focus_start()

    def focus_start(self) -> None:
        """The keys go to the topics."""
        self.list.setFocus()

    def back(self) -> bool:
        """From a dial to the topics; False where the keys are at no dial."""
        if not any(one.slider.hasFocus() or one.field.hasFocus() for one in self.rows):
            return False
        self.focus_start()
        return True

    def _lay_out(self) -> None:
        self._dials.setContentsMargins(0, 0, 0, 0)
        self._dials.setSpacing(2 * GRID)
        held = QWidget()
        held.setLayout(self._dials)
        parts = [self.list, hairline(), self._begun_from, held, self.open_button]
        inside = column(parts, 2 * GRID)
        if margins := inside.layout():
            margins.setContentsMargins(0, 0, GRID, 2 * GRID)
        left = QWidget()
        outer = QVBoxLayout(left)
        outer.setContentsMargins(0, 0, 0, GRID)
        outer.setSpacing(GRID)
        outer.addWidget(said(tr("Why"), Type.HEAD))
        outer.addWidget(scroll(inside, tr("Topics and dials")), 1)
        outer.addWidget(hairline())
        outer.addLayout(_side_by_side(self._buttons))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(Columns(left, self._answer_area, self._look, (2, 3), _NARROW_PX))
        self._tell_start(None)

    def _started(self, start: BenchStart) -> None:
        """Take over what a piece lends; without anything usable the bench stays as it stood, and says so."""
        self.start = start
        for preset in start.presets:
            self._set[preset.topic] = {one.key: one for one in preset.given}
        if start.presets:
            wanted = [topic.key for topic in self.topics].index(start.presets[0].topic)
            if wanted == self.list.currentRow():
                self._turn_to(wanted)
            self.list.setCurrentRow(wanted)
        self._tell_start(self._preset())
        self.focus_start()

    def _preset(self) -> Preset | None:
        presets = self.start.presets if self.start else ()
        return next((one for one in presets if one.topic == self.topic.key), None)

    def _tell_start(self, preset: Preset | None) -> None:
        """Say from which piece the figures are, and what stays assumed."""
        start = self.start
        words = ""
        if start and preset:
            words = " ".join((tr("Begun from {tag}.", tag=start.tag), *preset.said))
        elif start and start.why_none:
            words = tr("{why} The usual figures stand.", why=start.why_none)
        self._begun_from.setText(words)
        self._begun_from.setVisible(bool(words))
        tag = start.tag if start and words else ""
        self.open_button.setText(tr("Open {tag}", tag=tag))
        self.open_button.setAccessibleName(tr("Open {tag}", tag=tag))
        self.open_button.setVisible(bool(tag))

    def _turn_to(self, row: int) -> None:
        """Show another topic with its dials."""
        if row < 0:
            return
        clear(self._dials)
        self.rows = [DialRow(dial, self._office, self._look) for dial in self.topic.dials]
        for one in self.rows:
            one.turned.connect(self._turned)
            one.faulty.connect(self.answer.tell_stale)
            self._dials.addWidget(one)
        self._show_dials()
        self._tell_start(self._preset())
        self._answer_area.verticalScrollBar().setValue(0)
        self._work()

    def _show_dials(self) -> None:
        standing = self._set.get(self.topic.key, {})
        for one in self.rows:
            one.show_given(standing.get(one.dial.key))

    def _turned(self, given: Given) -> None:
        self._set.setdefault(self.topic.key, {})[given.key] = given
        self._work()

    def _work(self) -> None:
        """Work the sums anew; a refusal is said at the dial it names, and the answer says that it is the one before."""
        standing = self._set.get(self.topic.key, {})
        for one in self.rows:
            one.tell_came(came_words(standing.get(one.dial.key)))
        try:
            worked = work_bench(self._office, self.topic.key, standing.values())
        except Refused as refusal:
            self._refuse(refusal)
            return
        for one in self.rows:
            one.tell(None)
        self.answer.show_worked(worked)
        if any(one.is_unread for one in self.rows):
            self.answer.tell_stale()

    def _refuse(self, refusal: Refused) -> None:
        named = [one for one in self.rows if one.dial.name == refusal.field]
        for one in named:
            one.tell(refusal)
        if not named:
            self._notice.refuse(refusal)
        self.answer.tell_stale()

    def _to_dials(self) -> None:
        if self.rows:
            self.rows[0].slider.setFocus()

    def _faulty(self) -> DialRow | None:
        return next((one for one in self.rows if one.field.is_faulty), None)

    def _print(self) -> None:
        """Ask for the handout; where a figure is marked, the keys go there instead."""
        for one in self.rows:
            one.look_over()
        if faulty := self._faulty():
            faulty.field.setFocus()
            return
        asked = HandoutAsked(self.topic.key, self.given, self._lender())
        self._background.run(
            print_handout, self._office, asked, done=self._printed, failed=self._notice.refuse, says=tr("Printing…")
        )

    def _printed(self, paper: Paper) -> None:
        tell_papers(self._notice, tr("The handout is printed."), "", (paper,))

    def _lender(self) -> str:
        """The piece whose figures stand here, if any still does."""
        return self.start.tag if self.start and self._preset() else ""

    def _reset(self) -> None:
        """The usual figures, or those of the piece it was begun from."""
        preset = self._preset()
        self._set[self.topic.key] = {one.key: one for one in preset.given} if preset else {}
        self._show_dials()
        self._work()

    def _open(self) -> None:
        if self.start:
            self.opened.emit(self.start.tag)


def _side_by_side(buttons: tuple[QPushButton, ...]) -> QHBoxLayout:
    line = QHBoxLayout()
    line.setSpacing(GRID)
    for one in buttons:
        line.addWidget(one, 1)
    return line
