"""The place of the recalls: the list, what a notice would mean, and the record of one with all that can be done."""

from collections.abc import Callable
from functools import partial
from typing import Any

from inspector.desk.background import Background
from inspector.desk.columns import Columns
from inspector.desk.deeds import recalls as deeds
from inspector.desk.deeds.withdraw_recall import tell_withdrawn, withdraw
from inspector.desk.deeds.work import file_deed
from inspector.desk.form.deed import Deed
from inspector.desk.incident.incident_record import deeds_part
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.plain import button, column
from inspector.desk.recall import recall_record as parts
from inspector.desk.recall.opened_recall import Notices, OpenedRecall, Sought, notices, opened_recall
from inspector.desk.recall.recall_list import found_part, not_meant_part, recalls_part
from inspector.desk.record_parts import beside, cautions_part
from inspector.desk.told_page import ToldPage
from inspector.desk.told_papers import tell_papers
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_withdrawal import print_letter_again
from inspector.duties.recall_search import Searched, search_recall
from inspector.duties.tell_recall import RecallTold
from inspector.language import tr

_MakeDeed = Callable[[RecallTold], Deed[Any]]
_AFTER: tuple[_MakeDeed, ...] = (
    deeds.letters, deeds.answer, deeds.remind, deeds.clear, deeds.remedy, deeds.one_more, deeds.close, withdraw,
)  # fmt: skip
_LAST_LETTERS = 6  # older ones are printed again from the record of a piece


class RecallPage(ToldPage):
    """Begun with the reference of a recall it shows that one, else the list."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(
            office, background, notice, look, (tr("Recalls"), tr("What the notice means"), tr("Record of the recall"))
        )
        self.notices: Notices | None = None
        self.recall: OpenedRecall | None = None
        self.sought: Sought | None = None
        self._found = self._areas[1]

    def begin(self, what: Any = None) -> None:
        """Show a recall by its reference, else the list."""
        self.sought = None
        if what:
            self.open_recall(str(what))
        else:
            self._latest.read(notices, self._office, done=self._show_list)

    def come_back(self, *, changed: bool) -> None:
        """From a piece or a form: what is shown is read anew; after a look by a notice what was found is shown."""
        if self.sought and self.sought.entered:
            self.begin(self.sought.entered)
        elif self.sought and self.sought.is_asked:
            self._latest.read(search_recall, self._office, self.sought.meant, done=self._show_found)
        elif self.is_record_shown and self.recall:
            self.open_recall(self.recall.told.ref)
        else:
            self.begin()

    def back(self) -> bool:
        """From a record, or from what was found, to the list."""
        if self._stack.currentWidget() is self._list:
            return False
        self.begin()
        return True

    def focus_start(self) -> None:
        """The keys scroll what is shown."""
        if page := self._stack.currentWidget():
            page.setFocus()

    def open_recall(self, ref: str) -> None:
        """Show one recall."""
        self._latest.read(opened_recall, self._office, ref, done=self._show)

    def look(self) -> None:
        """Ask whom a notice means."""
        if self.sought is None and self.notices:
            self.sought = Sought(self.notices.kinds)
        if self.sought:
            self._ask(deeds.look(self.sought), self.sought)

    def enter(self) -> None:
        """Ask what else the notice says, and hold what it means."""
        if self.sought:
            self._ask(deeds.enter(self.sought), self.sought)

    def print_again(self, number: str) -> None:
        """Print a letter again as it was said."""
        self._background.run(
            print_letter_again,
            self._office,
            number,
            done=self._printed,
            failed=self._notice.refuse,
            says=tr("Printing…"),
        )

    def _printed(self, paper: Paper) -> None:
        tell_papers(self._notice, tr("The letter {number} is printed.", number=paper.path.stem), "", (paper,))

    def _show_list(self, found: Notices) -> None:
        self.notices = found
        self._set(self._list, recalls_part(found.rows, self.open_recall, self.look))

    def _show_found(self, found: Searched) -> None:
        self._set(self._found, found_part(found, self.opened.emit, self.enter, self.look))
        self.focus_start()

    def _show(self, found: OpenedRecall) -> None:
        is_same = self.recall is not None and self.recall.told.ref == found.told.ref and self.is_record_shown
        at = self._record.verticalScrollBar().value() if is_same else 0
        self.recall = found
        told = found.told
        back = button("‹ " + tr("Recalls"), self.begin, name=tr("Back to the list of recalls"))
        top = Columns(parts.what_part(told), deeds_part(self._deeds(found), self._look), self._look, (3, 1))
        below = [
            parts.pieces_part(told, self._look, self.opened.emit),
            *parts.letters_part(told),
            *parts.added_part(told),
            self._files(found),
            *([] if told.withdrawn else not_meant_part(found.found, self.opened.emit)),
        ]
        shown = [beside(back, parts.head(told)), top, *below, cautions_part(told.cautions)]
        self._set(self._record, column(shown, 2 * GRID))
        self._record.verticalScrollBar().setValue(at)
        self.focus_start()

    def _deeds(self, found: OpenedRecall) -> list[tuple[str, Callable[[], object], str]]:
        """Every deed about it: its name, what it does, and why it cannot be done now."""
        told = found.told
        offered = (*_AFTER, tell_withdrawn) if told.withdrawn else _AFTER  # of one that stands there is nothing to tell
        made = [self._deed(one, told) for one in offered]
        made.append((file_deed(told.ref).name, partial(self._add_file, told), ""))
        again = [
            (tr("Print {number} again", number=number), partial(self.print_again, number), "")
            for number in told.numbers
        ]
        return [*made, *again[-_LAST_LETTERS:]]
