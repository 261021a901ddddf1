"""What pages ask of one another, tied together: the list's deeds, a record's, the papers of the first page."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtWidgets import QMenu, QWidget

from inspector.desk import piece_menu, trip_menu
from inspector.desk.background import Background
from inspector.desk.deeds import chosen, exchange, gear_papers, hands, papers
from inspector.desk.deeds.work import add_file
from inspector.desk.gear_list import chosen_bar
from inspector.desk.notice import Notice
from inspector.desk.piece.file_deeds import FileDeeds
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED, RUN, WHY
from inspector.desk.printing import Printing, tell_papers
from inspector.duties.keep_draft import set_file_aside
from inspector.duties.look_up import kinds
from inspector.duties.office import Office
from inspector.duties.out_tray import Paper
from inspector.duties.print_kept import print_kept
from inspector.duties.retire_item import print_notices
from inspector.language import tr, tr_n

if TYPE_CHECKING:
    from inspector.desk.pages import Pages

_OF_CHOSEN = {
    chosen_bar.LEND: hands.hand_out,
    chosen_bar.TAKE_BACK: hands.take_back,
    chosen_bar.PACK: chosen.pack,
    chosen_bar.HOLD: chosen.hold,
    chosen_bar.LABELS: gear_papers.labels,
    chosen_bar.TAGS: gear_papers.hold_tags,
    chosen_bar.RECORDS: papers.records,
    chosen_bar.RECALL: papers.recall,
}


class Wiring(QObject):
    """seated: somebody else is at the desk, or the club's settings are others; carries the office."""

    seated = Signal(object)

    def __init__(
        self, office: Office, background: Background, notice: Notice, pages: "Pages", printing: Printing
    ) -> None:
        super().__init__(pages)
        self._office, self._background, self._notice = office, background, notice
        self._pages, self._printing = pages, printing
        self._menu = QMenu(pages)
        FileDeeds(office, background, notice, pages.record)
        pages.table.asked.connect(self._of_chosen)
        pages.record.deeds.connect(self._piece_menu)
        pages.record.why.connect(lambda tag: pages.go(Go(WHY, tag)))
        pages.record.attach.connect(lambda: self._add_files(()))
        pages.record.dropped.connect(self._dropped)
        pages.record.again.connect(self._again)
        pages.trip.deeds.connect(self._trip_menu)
        pages.made.connect(self._tie)

    def _tie(self, page: Place) -> None:
        """Signals that only some places have."""
        for name, does in (
            ("notice", self._printing.retirement_notice),
            ("notices", partial(self._notices, page)),
            ("seated", self.seated.emit),
            ("changed", self.seated.emit),
        ):
            if signal := getattr(page, name, None):
                signal.connect(does)

    def _of_chosen(self, key: str, tags: tuple[str, ...]) -> None:
        if key == chosen_bar.INSPECT:
            self._pages.go(Go(RUN, tags))
        elif key == chosen_bar.EXPORT:
            self.export(tags)
        else:
            self._pages.go(Go(DEED, (_OF_CHOSEN[key](tags), tags, " ".join(tags))))

    def export(self, chosen_tags: tuple[str, ...] = ()) -> None:
        """Write the list out as it is shown, or those of it that were chosen."""
        pieces = exchange.ToExport(self._pages.table.model.tags, chosen_tags)
        self._pages.go(Go(DEED, (exchange.export(pieces), pieces, "")))

    def _piece_menu(self, below: QWidget) -> None:
        if piece := self._pages.piece:
            piece_menu.fill(self._menu, piece, self._pages.go)
            self._open_below(below)

    def _trip_menu(self, below: QWidget) -> None:
        found = self._pages.trip.trip
        trip, is_over = (found.trip, found.is_over) if found else (None, False)
        trip_menu.fill(self._menu, trip, kinds(self._office), self._pages.go, is_over=is_over)
        self._open_below(below)

    def _open_below(self, below: QWidget) -> None:
        self._menu.setActiveAction(self._menu.actions()[0])
        self._menu.popup(below.mapToGlobal(QPoint(0, below.height())))

    def _add_files(self, paths: tuple[str, ...]) -> None:
        if piece := self._pages.piece:
            self._pages.go(Go(DEED, (add_file(piece, paths), piece, piece.tag)))

    def _dropped(self, files: tuple[tuple[str, bytes], ...]) -> None:
        """What was dropped or pasted is set aside as files, so that the form has paths and nothing is lost."""
        self._background.run(
            _set_aside, self._office, files, done=self._add_files, failed=self._notice.refuse, says=tr("Reading…")
        )

    def _again(self, number: str) -> None:
        if piece := self._pages.piece:
            self._background.run(
                print_kept, self._office, piece.tag, number, failed=self._notice.refuse, says=tr("Printing…"),
                done=partial(self._printed_again, number),
            )  # fmt: skip

    def _printed_again(self, number: str, paper: Paper) -> None:
        tell_papers(self._notice, tr("{number} is printed again.", number=number), "", (paper,))

    def _notices(self, page: Place, tags: tuple[str, ...]) -> None:
        """Print every notice asked for; told step by step, and it can be stopped."""
        self._background.run_long(
            print_notices, self._office, tags, done=partial(self._noticed, page), failed=self._notice.refuse,
            says=tr("Printing…"),
        )  # fmt: skip

    def _noticed(self, page: Place, papers: tuple[Paper, ...]) -> None:
        head = tr_n("One notice is printed.", "{count} notices are printed.", len(papers))
        page.begin()
        tell_papers(self._notice, head, "", papers)


def _set_aside(office: Office, files: tuple[tuple[str, bytes], ...]) -> tuple[str, ...]:
    return tuple(str(set_file_aside(office, name, data)) for name, data in files)
