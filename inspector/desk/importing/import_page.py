"""The page that brings in an old list: its file, what its columns mean, what becomes of each row, and the taking."""

from pathlib import Path
from typing import Any

from msgspec import Struct
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QFileDialog, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds.imports import withdraw
from inspector.desk.importing.look_part import LookPart
from inspector.desk.importing.start_part import StartPart
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.piece.handed import handed
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED, GEAR
from inspector.desk.plain import scroll
from inspector.desk.told_papers import open_file
from inspector.duties.import_list import dry_run, imports, likeliest_sheet, matching_of, read_list, take
from inspector.duties.left_rows import write_left
from inspector.duties.office import Office
from inspector.gear.import_list import Fates, Imported, Matching, TableFile
from inspector.language import tr, tr_n

_WIDEST_PX = 640


class _Kept(Struct, frozen=True):
    """An import that was taken, and the file of what was not; None where all was."""

    made: Imported
    left: Path | None


class ImportPage(Place):
    """begin: with the path of a file, to read it at once."""

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.start = StartPart()
        self.look_part: LookPart | None = None
        self._path: Path | None = None
        self._photos: Path | None = None
        self._asked = 0
        self._stack = QStackedWidget()
        self._first = scroll(self.start, tr("Bring in an old list"))
        self._stack.addWidget(self._first)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(self._stack)
        self.start.came.connect(self.read)
        self.start.withdraw.connect(lambda made: self.go.emit(Go(DEED, (withdraw(), made, made.number))))
        self.start.left.connect(self._write_left)
        look.fit(self.start, QWidget.setMaximumWidth, _WIDEST_PX)
        self.setAcceptDrops(True)

    def begin(self, what: Any = None) -> None:
        """A list that is being looked through stays; what: the path of one."""
        if what:
            self.read(Path(what))
        elif self.look_part is None:
            self._background.run(imports, self._office, done=self.start.show_imports, failed=self._notice.refuse)

    def come_back(self, *, changed: bool) -> None:
        """What becomes of the rows is told anew where the register says something else now."""
        if self.look_part and changed:
            self._again(self.look_part.run.matching)
        self.begin()
        self.focus_start()

    def focus_start(self) -> None:
        """The keys go to what is to be chosen."""
        (self.look_part.take_button if self.look_part else self.start.choose_button).setFocus()

    def back(self) -> bool:
        """From a list to the choice of a file."""
        if self.look_part is None:
            return False
        self.close_list()
        return True

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """One file may be dropped here."""
        if len(handed(event.mimeData()).places) == 1:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Read what was dropped."""
        event.acceptProposedAction()
        self.read(handed(event.mimeData()).places[0])

    def read(self, path: Path) -> None:
        """Read a list in the worker and tell what becomes of its rows; nothing is kept by it."""
        self._path, self._photos = path, None
        self._run(_begun, path)

    def _again(self, matching: Matching) -> None:
        if self.look_part:
            self._run(dry_run, self.look_part.run.file, matching, self._photos)

    def _turn(self, sheet: str, head: object) -> None:
        if self.look_part:
            self._run(_turned, self.look_part.run.file, sheet, head, self._photos)

    def _run(self, deed: Any, *given: object) -> None:
        self._asked += 1
        asked = self._asked
        self._background.run_long(
            deed, self._office, *given, done=lambda run: self._show(run, asked), failed=self._notice.refuse,
            says=tr("Reading the list…"),
        )  # fmt: skip

    def _show(self, run: Fates, asked: int) -> None:
        if asked != self._asked:
            return  # something else was asked since
        shown = self.look_part.shown if self.look_part else None
        self._drop()
        part = self.look_part = LookPart(self._office, run, self._look, shown)
        part.changed.connect(self._again)
        part.turned.connect(self._turn)
        part.photos.connect(self._choose_photos)
        part.take.connect(self._take)
        part.other.connect(self.close_list)
        part.typed.connect(self.typed)
        self._stack.addWidget(part)
        self._stack.setCurrentWidget(part)
        part.focus_start()

    def _choose_photos(self) -> None:
        name = QFileDialog.getExistingDirectory(self, tr("The folder with the photos"))
        if name and self.look_part:
            self.use_photos(Path(name))

    def use_photos(self, folder: Path) -> None:
        """Take the photos of a folder with the rows that name them, or by the tag."""
        self._photos = folder
        if self.look_part:
            self._again(self.look_part.run.matching)

    def _take(self) -> None:
        if self.look_part and self._path:
            self._background.run_long(
                _taken, self._office, self.look_part.run, self._path.parent,
                done=self._kept, failed=self._notice.refuse, says=tr("Taking the list…"),
            )  # fmt: skip

    def _kept(self, kept: _Kept) -> None:
        made = kept.made
        head = tr_n("{count} piece was taken as import {number}.", "{count} pieces were taken as import {number}.",
                    len(made.pieces), number=made.number)  # fmt: skip
        left = kept.left
        text = tr("What was not taken stands, with the reason, in {file}", file=left) if left else tr("All was taken.")
        choices = [(tr("Show the gear"), lambda: self.go.emit(Go(GEAR)))]
        if left:
            choices.append((tr("Open that file"), lambda: open_file(left)))
        self.close_list()
        self._notice.tell(head, "\n".join((text, *made.told)), choices)

    def _write_left(self, made: Imported) -> None:
        self._background.run(
            write_left, self._office, made, done=self._written, failed=self._notice.refuse, says=tr("Saving…")
        )

    def _written(self, path: Path | None) -> None:
        if path:
            self._notice.tell(tr("The rows that were not taken are written."), str(path),
                              [(tr("Open that file"), lambda: open_file(path))])  # fmt: skip

    def close_list(self) -> None:
        """Back to the choice of a file."""
        self._asked += 1
        self._drop()
        self._stack.setCurrentWidget(self._first)
        self.begin()
        self.focus_start()

    def _drop(self) -> None:
        part: QWidget | None = self.look_part
        self.look_part = None
        if part:
            self._stack.removeWidget(part)
            part.hide()
            part.deleteLater()


def _begun(office: Office, path: Path) -> Fates:
    file = read_list(path)
    return dry_run(office, file, matching_of(office, file, likeliest_sheet(office, file)))


def _turned(office: Office, file: TableFile, sheet: str, head: int | None, photos: Path | None) -> Fates:
    return dry_run(office, file, matching_of(office, file, sheet, head), photos)


def _taken(office: Office, run: Fates, beside: Path) -> _Kept:
    made = take(office, run)
    return _Kept(made, write_left(office, made, beside))
