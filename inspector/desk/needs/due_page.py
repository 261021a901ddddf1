"""The page "Falls due": the calendar by day, piece, person or place, and the papers that are made of it."""

from collections.abc import Callable, Sequence
from datetime import date
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.choice import Choice
from inspector.desk.columns import Columns
from inspector.desk.look import GRID, Look, Type
from inspector.desk.needs.day_choice import DayChoice
from inspector.desk.needs.due_lines import due_steps
from inspector.desk.needs.due_papers import DuePapers
from inspector.desk.needs.growing import Growing
from inspector.desk.notice import Notice
from inspector.desk.place import Place
from inspector.desk.plain import column, said, scroll
from inspector.desk.told_papers import open_file
from inspector.duties.due_sheet import due_sheet
from inspector.duties.due_views import View
from inspector.duties.export_calendar import export_calendar
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_letters import print_again, print_letters
from inspector.duties.print_slips import print_slips, print_slips_again
from inspector.gear.falls_due import DueSheet
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused

_AHEAD_DAYS = 90


class DuePage(Place):
    """It leads to the places trip, incident and count (with a reference) and person (with a name)."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.sheet: DueSheet | None = None
        self._grown: Growing | None = None
        self._asked = 0
        self._head = said("", Type.HEAD)
        ahead = ((tr("30 days"), 30), (tr("90 days"), 90), (tr("a year"), 365), (tr("5 years"), 1826))
        self.until = DayChoice(tr("Until"), office.today, ahead)
        self.until.choice.choose(_AHEAD_DAYS)
        self.view = Choice(tr("Sorted by"), _views(), scans=True)
        self.person = Choice(tr("Person"), [(tr("everybody"), "")], scans=True)
        self.place = Choice(tr("Place"), [(tr("everywhere"), "")], scans=True)
        self.papers = DuePapers(office.today, office.out_tray)
        self._lines = scroll(QWidget(), tr("What falls due"))
        self._lay_out()
        self._connect()

    def begin(self, what: Any = None) -> None:
        """Read anew. what: the name of a person to narrow it to; nothing for what was chosen last."""
        if what:
            _offer(self.person, str(what))
        self._read()

    def focus_start(self) -> None:
        """The keys go to how it is sorted."""
        self.view.box.setFocus()

    def _lay_out(self) -> None:
        line = QHBoxLayout()
        line.setSpacing(2 * GRID)
        boxes = ((tr("Until"), self.until), (tr("Sorted by"), self.view.box), (tr("Person"), self.person.box),
                 (tr("Place"), self.place.box))  # fmt: skip
        for words, box in boxes:
            line.addWidget(column([said(words, Type.SMALL, faint=True), box], 0), 1)
        papers: QScrollArea = scroll(self.papers, tr("Papers and files"))
        self.papers.setContentsMargins(0, 0, 2 * GRID, 3 * GRID)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.setSpacing(2 * GRID)
        layout.addWidget(column([said(tr("Falls due"), Type.DISPLAY), self._head], 0))
        layout.addLayout(line)
        layout.addWidget(Columns(self._lines, papers, self._look, (5, 3)), 1)

    def _connect(self) -> None:
        self.until.changed.connect(self._read)
        for box in (self.view.box, self.person.box, self.place.box):
            box.currentIndexChanged.connect(lambda _: self._read())
        papers = self.papers
        papers.export.connect(self._export)
        papers.letters.connect(self._print_letters)
        papers.slips.connect(self._print_slips)
        papers.letters_again.connect(lambda: self._print(print_again, self.person.value))
        papers.slips_again.connect(lambda: self._print(lambda office: (print_slips_again(office),)))

    def _read(self) -> None:
        self._asked += 1
        number = self._asked
        given = (self.until.value, self.view.value, self.person.value, self.place.value)
        self.papers.narrow(self.person.value, self.place.value)
        self._background.run(
            due_sheet, self._office, *given, done=lambda found: self._show(number, found), failed=self._notice.refuse
        )

    def _show(self, number: int, sheet: DueSheet) -> None:
        """An answer to an older question is dropped."""
        if number != self._asked or (sheet == self.sheet and self.is_whole):
            return
        self.sheet = sheet
        _offer_all(self.person, tr("everybody"), sheet.people)
        _offer_all(self.place, tr("everywhere"), sheet.places)
        self._head.setText(_head_words(sheet, self._office.today))
        self._grown = made = Growing()
        self._lines.setWidget(made)
        self._lines.verticalScrollBar().setValue(0)
        steps = due_steps(sheet, self._office.today, self._look, self.opened.emit, self.go.emit)
        made.grow([(made.column, step) for step in steps])

    @property
    def is_whole(self) -> bool:
        """Whether every line of what was read stands on the page."""
        return self._grown is not None and self._grown.is_grown

    def _export(self) -> None:
        if self.sheet is None:
            return
        self.papers.tell_nothing()
        path = self.papers.path
        self._background.run(
            export_calendar, self._office, self.sheet.lines, path, says=tr("Saving…"), failed=self._refuse,
            done=lambda count: self._notice.tell(
                tr_n("{count} line stands in the calendar file.", "{count} lines stand in the calendar file.", count),
                str(path), [(tr("Open"), lambda: open_file(path))],
            ),
        )  # fmt: skip

    def _print_letters(self) -> None:
        name, until, to, by = self.person.value, *self._asked_for()
        self._print(lambda office: print_letters(office, name, until=until, bring_to=to, bring_by=by))

    def _print_slips(self) -> None:
        until, to, by = self._asked_for()
        given = {"name": self.person.value, "place": self.place.value, "bring_to": to}
        self._print(lambda office: (print_slips(office, until=until, bring_by=by, **given),))

    def _asked_for(self) -> tuple[date | None, str, date | None]:
        """What both papers are given, read before the worker begins."""
        return self.until.value, self.papers.bring_to.text(), self.papers.bring_by.value

    def _print(self, deed: Callable[..., Sequence[Paper]], *given: object) -> None:
        self.papers.tell_nothing()
        self._background.run(deed, self._office, *given, done=self._printed, failed=self._refuse, says=tr("Printing…"))

    def _printed(self, papers: Sequence[Paper]) -> None:
        head = tr_n("{count} paper is printed.", "{count} papers are printed.", len(papers))
        shown = papers[0].path if len(papers) == 1 else papers[0].path.parent
        missing = sorted({sign for one in papers for sign in one.missing})
        told = tr("Not in the type, printed as empty squares: {signs}", signs=" ".join(missing)) if missing else ""
        text = "\n".join(filter(None, (str(shown), told)))
        self._notice.tell(head, text, [(tr("Open"), lambda: open_file(shown))])
        self._read()  # time may have ended a verdict meanwhile

    def _refuse(self, refusal: Refused) -> None:
        """At its field, else in the strip."""
        if not self.papers.tell(refusal):
            self._notice.refuse(refusal)


def _views() -> list[tuple[str, View]]:
    return [
        (tr("day"), View.DAY),
        (tr("piece"), View.PIECE),
        (tr("person"), View.PERSON),
        (tr("place"), View.PLACE),
    ]


def _offer(choice: Choice[str], wanted: str) -> None:
    """Choose a value, offered first where it was not yet; nobody is told of it."""
    if not choice.has(wanted):
        choice.offer([(choice.box.itemText(0), ""), (wanted, wanted)])
    choice.box.blockSignals(True)
    choice.choose(wanted)
    choice.box.blockSignals(False)


def _offer_all(choice: Choice[str], every: str, values: Sequence[str]) -> None:
    """Offer what there is; what was chosen stays chosen."""
    chosen = choice.value
    choice.offer([(every, ""), *((one, one) for one in values)])
    if chosen:
        _offer(choice, chosen)


def _head_words(sheet: DueSheet, today: date) -> str:
    overdue = sum(1 for one in sheet.lines if one.overdue_days(today))
    count = tr_n("{count} line until {day}", "{count} lines until {day}", len(sheet.lines), day=show_day(sheet.last))
    return tr("{lines}, {count} of them overdue", lines=count, count=overdue) if overdue else count
