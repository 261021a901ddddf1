"""What pages ask of one another, tied together: the list's deeds, a record's, the papers of the first page."""

from collections.abc import Callable
from functools import cached_property, partial
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtWidgets import QMenu, QWidget

from inspector.desk.background import Background
from inspector.desk.gear_list import chosen_bar
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED, PIECE, RIG, RUN, TRIP, WHY
from inspector.desk.told_papers import tell_papers
from inspector.duties.office import Office
from inspector.language import tr, tr_n

if TYPE_CHECKING:
    from inspector.desk.form.deed import Deed
    from inspector.desk.pages import Pages
    from inspector.desk.printing import Printing
    from inspector.desk.record import Record
    from inspector.desk.trip_page import TripPage
    from inspector.duties.out_tray import Paper
    from inspector.gear.rig_result import RigResult
    from inspector.gear.trip import Trip


class Wiring(QObject):
    """seated: somebody else is at the desk, or the club's settings are others; carries the office."""

    seated = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, pages: "Pages") -> None:
        super().__init__(pages)
        self._office, self._background, self._notice = office, background, notice
        self._pages = pages
        self._menu = QMenu(pages)
        pages.table.asked.connect(self._of_chosen)
        pages.made.connect(self._tie)

    @cached_property
    def printing(self) -> "Printing":
        """What prints, made as the first paper is asked for."""
        from inspector.desk.printing import Printing

        return Printing(self._office, self._background, self._notice, self._pages.window())

    def _tie(self, key: str, page: QWidget) -> None:
        """Signals that only some pages have."""
        own: dict[str, Callable[[Any], object]] = {
            PIECE: self._tie_record,
            TRIP: self._tie_trip,
            RIG: lambda rig: rig.sheet.connect(self._rig_sheet),
        }
        own.get(key, self._tie_place)(page)

    def _tie_record(self, record: "Record") -> None:
        from inspector.desk.piece.file_deeds import FileDeeds

        FileDeeds(self._office, self._background, self._notice, record)
        record.deeds.connect(self._piece_menu)
        record.why.connect(lambda tag: self._pages.go(Go(WHY, tag)))
        record.attach.connect(lambda: self._add_files(()))
        record.dropped.connect(self._dropped)
        record.again.connect(self._again)
        record.sheet.connect(lambda: self.printing.trip_sheet(record.sheet_button))
        record.notice.connect(lambda: self.printing.retirement_notice(record.tag))

    def _tie_trip(self, trip: "TripPage") -> None:
        trip.deeds.connect(self._trip_menu)
        trip.sheet.connect(self._trip_sheet)

    def _tie_place(self, page: Place) -> None:
        for name, does in (
            ("notice", self._notice_of),
            ("notices", partial(self._notices, page)),
            ("seated", self.seated.emit),
            ("changed", self.seated.emit),
        ):
            if signal := getattr(page, name, None):
                signal.connect(does)

    def _rig_sheet(self, result: "RigResult") -> None:
        self.printing.rig_sheet(result)

    def _trip_sheet(self, trip: "Trip", below: QWidget) -> None:
        self.printing.sheet_of(trip, below)

    def _notice_of(self, tag: str) -> None:
        self.printing.retirement_notice(tag)

    def _of_chosen(self, key: str, tags: tuple[str, ...]) -> None:
        if key == chosen_bar.INSPECT:
            self._pages.go(Go(RUN, tags))
        elif key == chosen_bar.EXPORT:
            self.export(tags)
        else:
            self._pages.go(Go(DEED, (_of_chosen(key, tags), tags, " ".join(tags))))

    def export(self, chosen_tags: tuple[str, ...] = ()) -> None:
        """Write the list out as it is shown, or those of it that were chosen."""
        from inspector.desk.deeds import exchange

        pieces = exchange.ToExport(self._pages.table.model.tags, chosen_tags)
        self._pages.go(Go(DEED, (exchange.export(pieces), pieces, "")))

    def report(self) -> None:
        """Ask what the report on the gear is to tell."""
        from inspector.desk.deeds.papers import report

        self._pages.go(Go(DEED, (report(), None, "")))

    def archive(self) -> None:
        """Ask where the archive is to lie."""
        from inspector.desk.deeds.exchange import write_archive

        self._pages.go(Go(DEED, (write_archive(), None, "")))

    def _piece_menu(self, below: QWidget) -> None:
        from inspector.desk import piece_menu

        if piece := self._pages.piece:
            piece_menu.fill(self._menu, piece, self._pages.go)
            self._open_below(below)

    def _trip_menu(self, below: QWidget) -> None:
        from inspector.desk import trip_menu
        from inspector.duties.look_up import kinds

        found = self._pages.trip.trip
        trip, is_over = (found.trip, found.is_over) if found else (None, False)
        trip_menu.fill(self._menu, trip, kinds(self._office), self._pages.go, is_over=is_over)
        self._open_below(below)

    def _open_below(self, below: QWidget) -> None:
        self._menu.setActiveAction(self._menu.actions()[0])
        self._menu.popup(below.mapToGlobal(QPoint(0, below.height())))

    def _add_files(self, paths: tuple[str, ...]) -> None:
        from inspector.desk.deeds.work import add_file

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
                _print_kept, self._office, piece.tag, number, failed=self._notice.refuse, says=tr("Printing…"),
                done=partial(self._printed_again, number),
            )  # fmt: skip

    def _printed_again(self, number: str, paper: "Paper") -> None:
        tell_papers(self._notice, tr("{number} is printed again.", number=number), "", (paper,))

    def _notices(self, page: Place, tags: tuple[str, ...]) -> None:
        """Print every notice asked for; told step by step, and it can be stopped."""
        self._background.run_long(
            _print_notices, self._office, tags, done=partial(self._noticed, page), failed=self._notice.refuse,
            says=tr("Printing…"),
        )  # fmt: skip

    def _noticed(self, page: Place, papers: "tuple[Paper, ...]") -> None:
        head = tr_n("One notice is printed.", "{count} notices are printed.", len(papers))
        page.begin()
        tell_papers(self._notice, head, "", papers)


def _set_aside(office: Office, files: tuple[tuple[str, bytes], ...]) -> tuple[str, ...]:
    from inspector.duties.keep_draft import set_file_aside

    return tuple(str(set_file_aside(office, name, data)) for name, data in files)


def _print_kept(office: Office, tag: str, number: str) -> "Paper":
    from inspector.duties.print_kept import print_kept

    return print_kept(office, tag, number)


def _print_notices(office: Office, tags: tuple[str, ...]) -> "tuple[Paper, ...]":
    from inspector.duties.retire_item import print_notices

    return print_notices(office, tags)


def _of_chosen(key: str, tags: tuple[str, ...]) -> "Deed[tuple[str, ...]]":
    """The deed for several pieces whose button was pressed."""
    from inspector.desk.deeds import chosen, gear_papers, hands, papers

    deeds = {
        chosen_bar.LEND: hands.hand_out,
        chosen_bar.TAKE_BACK: hands.take_back,
        chosen_bar.PACK: chosen.pack,
        chosen_bar.HOLD: chosen.hold,
        chosen_bar.LABELS: gear_papers.labels,
        chosen_bar.TAGS: gear_papers.hold_tags,
        chosen_bar.RECORDS: papers.records,
        chosen_bar.RECALL: papers.recall,
    }
    return deeds[key](tags)
