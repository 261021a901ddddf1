"""The place of the incidents: the list of reports, and the record of one with all that can be done about it."""

from collections.abc import Callable
from functools import partial
from typing import Any

from inspector.desk.background import Background
from inspector.desk.columns import Columns
from inspector.desk.deeds import evidence, report
from inspector.desk.deeds.judgement import doubt_it
from inspector.desk.deeds.papers import recall
from inspector.desk.deeds.work import file_deed
from inspector.desk.form.deed import Deed
from inspector.desk.incident import incident_record as parts
from inspector.desk.incident.incident_list import reports_part
from inspector.desk.incident.opened_incident import OpenedIncident, Reports, opened_incident, reports
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.opened import Opened, opened
from inspector.desk.place import Go
from inspector.desk.places import RECALLS
from inspector.desk.plain import button, column
from inspector.desk.record_parts import beside, cautions_part
from inspector.desk.told_page import ToldPage
from inspector.desk.told_papers import tell_papers
from inspector.duties.evidence_paper import print_evidence
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.tell_incident import IncidentTold
from inspector.language import tr

_MakeDeed = Callable[[IncidentTold], Deed[Any]]
_AFTER: tuple[_MakeDeed, ...] = (evidence.state, evidence.hand_over, evidence.hold, evidence.release, evidence.close)
_OUT: tuple[_MakeDeed, ...] = (evidence.bundle, evidence.files_out)


class IncidentPage(ToldPage):
    """Begun with the reference of an incident it shows that one, else the list of reports."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look, (tr("Incidents"), tr("Record of the incident")))
        self.reports: Reports | None = None
        self.incident: OpenedIncident | None = None
        self._awaits_new = False

    def begin(self, what: Any = None) -> None:
        """Show an incident by its reference, else the list."""
        if what:
            self.open_incident(str(what))
        else:
            self._latest.read(reports, self._office, done=self._show_list)

    def come_back(self, *, changed: bool) -> None:
        """From a piece or a form: what is shown is read anew, and what was reported is opened."""
        if self.is_record_shown and self.incident:
            self.open_incident(self.incident.told.ref)
        else:
            self._awaits_new = changed
            self.begin()

    def back(self) -> bool:
        """From a record to the list."""
        if not self.is_record_shown:
            return False
        self.begin()
        return True

    def focus_start(self) -> None:
        """The keys scroll what is shown."""
        if page := self._stack.currentWidget():
            page.setFocus()

    def open_incident(self, ref: str) -> None:
        """Show one incident."""
        self._latest.read(opened_incident, self._office, ref, done=self._show)

    def report(self, make: Callable[[report.ToReport], Deed[report.ToReport]]) -> None:
        """Ask what happened."""
        offered = report.ToReport(self.reports.rigs if self.reports else ())
        self._ask(make(offered), offered)

    def doubt(self, tag: str) -> None:
        """Doubt a piece that may be of one batch with what broke."""
        self._latest.read(opened, self._office, tag, done=self._doubt)

    def call_in(self) -> None:
        """Call in all that may be of one batch with what broke, by letters."""
        if self.incident:
            tags = tuple(dict.fromkeys(one.tag for one in self.incident.kin))
            self._ask(recall(tags), tags, " ".join(tags))

    def print_list(self, *, again: bool) -> None:
        """Print the evidence list. again: the last one as it was said."""
        if self.incident:
            given = (self._office, self.incident.told.ref)
            self._background.run(
                partial(print_evidence, again=again), *given, done=self._printed, failed=self._notice.refuse,
                says=tr("Printing…"),
            )  # fmt: skip

    def _doubt(self, piece: Opened) -> None:
        self._ask(doubt_it(piece), piece, piece.tag)

    def _printed(self, paper: Paper) -> None:
        head = tr("The evidence list {number} is printed.", number=paper.path.stem)
        tell_papers(self._notice, head, tr("Who takes a piece over signs on it."), (paper,))
        if self.incident:
            self.open_incident(self.incident.told.ref)

    def _show_list(self, found: Reports) -> None:
        known = {one.ref for one in self.reports.rows} if self.reports else set()
        new = [one.ref for one in found.rows if one.ref not in known]
        self.reports, awaits_new, self._awaits_new = found, self._awaits_new, False
        accident, near_miss = partial(self.report, report.accident), partial(self.report, report.near_miss)
        check = partial(self._ask, evidence.check(), None)
        recalls = partial(self.go.emit, Go(RECALLS))
        self._set(self._list, reports_part(found.rows, self.open_incident, accident, near_miss, check, recalls))
        if awaits_new and new:
            self.open_incident(new[0])

    def _show(self, found: OpenedIncident) -> None:
        is_same = self.incident is not None and self.incident.told.ref == found.told.ref and self.is_record_shown
        at = self._record.verticalScrollBar().value() if is_same else 0
        self.incident = found
        told = found.told
        back = button("‹ " + tr("Incidents"), self.begin, name=tr("Back to the list of incidents"))
        left = column([parts.what_part(told), *parts.may_not_part(told)], 2 * GRID)
        top = Columns(left, parts.deeds_part(self._deeds(found), self._look), self._look, (3, 1))
        below = parts.all_parts(
            found,
            self._files(found),
            self._look,
            self._office.system,
            self.opened.emit,
            self.doubt,
            self.call_in,
        )
        head = [beside(back, parts.head(told)), top]
        self._set(self._record, column([*head, *below, cautions_part(told.cautions)], 2 * GRID))
        self._record.verticalScrollBar().setValue(at)
        self.focus_start()

    def _deeds(self, found: OpenedIncident) -> list[tuple[str, Callable[[], object], str]]:
        """Every deed about it: its name, what it does, and why it cannot be done now."""
        told = found.told
        made = [self._deed(one, told) for one in _AFTER]
        made.insert(3, (file_deed(told.ref).name, partial(self._add_file, told), ""))
        made.append((tr("Print the evidence list"), partial(self.print_list, again=False), ""))
        if told.list_number:
            again = tr("Print {number} again", number=told.list_number)
            made.append((again, partial(self.print_list, again=True), ""))
        return [*made, *(self._deed(one, told) for one in _OUT[: 2 if found.files else 1])]
