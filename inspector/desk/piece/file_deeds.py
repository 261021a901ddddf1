"""Files between a record and the disk: opened from the register, read where they were dropped or pasted."""

from pathlib import Path

from PySide6.QtCore import QObject

from inspector.desk.background import Background
from inspector.desk.notice import Notice
from inspector.desk.piece.handed import Handed, read_handed
from inspector.desk.record import Record
from inspector.desk.told_papers import open_file
from inspector.duties.attach import put_on_tray
from inspector.duties.office import Office
from inspector.gear.attachment import Attachment
from inspector.language import tr


class FileDeeds(QObject):
    """Serves a record: from then on its files open, and it takes what is dropped or pasted onto it."""

    def __init__(self, office: Office, background: Background, notice: Notice, record: Record) -> None:
        super().__init__(record)
        self._office, self._background, self._notice, self._record = office, background, notice, record
        record.file.connect(self._open)
        record.handed.connect(self._read)
        record.setAcceptDrops(True)

    def _open(self, kept: Attachment) -> None:
        self._background.run(
            put_on_tray, self._office, kept, done=self._opened, failed=self._notice.refuse, says=tr("Opening…")
        )

    def _opened(self, place: Path) -> None:
        open_file(place)
        self._notice.tell(tr("A copy lies in the out tray."), str(place))

    def _read(self, given: Handed) -> None:
        """A piece that was turned away from meanwhile gets nothing that was meant for another."""
        tag = self._record.tag
        self._background.run(
            read_handed, given, done=lambda files: self._hand_on(tag, files), failed=self._notice.refuse,
            says=tr("Reading…"),
        )  # fmt: skip

    def _hand_on(self, tag: str, files: tuple[tuple[str, bytes], ...]) -> None:
        if self._record.tag == tag:
            self._record.dropped.emit(files)
