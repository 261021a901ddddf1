"""The field for files: a line to write paths into, a button to choose them, and they may be dropped on it."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QWidget

from inspector.desk.form.asked import Files
from inspector.desk.form.boxes import Box, LinesEdit
from inspector.desk.look import Look
from inspector.desk.plain import button
from inspector.language import tr
from inspector.refused import Refused

_LINES = 2


class FileBox(Box):
    """Paths, one to a line."""

    def __init__(self, asked: Files, look: Look) -> None:
        self._files = asked
        self.paths = LinesEdit(1 if asked.one or asked.folder else _LINES, look)
        self.paths.setAcceptDrops(False)  # the whole field takes what is dropped
        self.choose_button = button(tr("Choose…"), self.choose, name=tr("Choose: {label}", label=asked.label))
        line = QWidget()
        layout = QHBoxLayout(line)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.paths, 1)
        layout.addWidget(self.choose_button, 0, Qt.AlignmentFlag.AlignTop)
        super().__init__(asked, look, line)
        line.setFocusProxy(self.paths)
        self.paths.setAccessibleName(asked.label)
        self.setAcceptDrops(True)
        self.paths.setPlainText("\n".join(asked.stands))
        self.paths.textChanged.connect(self.changed)

    def value(self) -> object:
        """The paths, one to a line; refused where one of them is not there."""
        for one in self._named():
            if not (self._files.new or (one.is_dir() if self._files.folder else one.is_file())):
                why = tr("{file} is not there.", file=one)
                raise Refused(self.asked.label, why, tr("Choose it again, or take it out of the list."))
        return self.draft

    @property
    def draft(self) -> str:
        """The paths as they stand."""
        return self.paths.toPlainText()

    def give(self, draft: str) -> None:
        """Write paths."""
        self.paths.setPlainText(draft)

    def choose(self) -> None:
        """Ask for files or the folder."""
        if self._files.folder:
            found = [QFileDialog.getExistingDirectory(self, self.asked.label)]
        elif self._files.one:
            found = [QFileDialog.getOpenFileName(self, self.asked.label)[0]]
        else:
            found = QFileDialog.getOpenFileNames(self, self.asked.label)[0]
        self.add([one for one in found if one])

    def add(self, paths: list[str]) -> None:
        """Add files to the list; where there is room for one, it takes the place of the other."""
        if paths:
            stands = [] if self._files.one or self._files.folder else self.draft.splitlines()
            self.give("\n".join(dict.fromkeys([*stands, *paths])))

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Files may be dropped here."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take what was dropped."""
        self.add([url.toLocalFile() for url in event.mimeData().urls() if url.isLocalFile()])
        event.acceptProposedAction()

    def _named(self) -> list[Path]:
        return [Path(one.strip()) for one in self.draft.splitlines() if one.strip()]
