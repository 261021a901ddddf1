"""What the pages of incidents and of recalls have in common: a list, a record with deeds beside it and files below."""

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path
from typing import Any, Protocol

from PySide6.QtGui import QImage
from PySide6.QtWidgets import QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.deeds.work import file_deed
from inspector.desk.form.deed import Deed
from inspector.desk.latest import Latest
from inspector.desk.look import GRID, Look
from inspector.desk.notice import Notice
from inspector.desk.piece.files_part import FilesPart
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED
from inspector.desk.plain import lay_in, scroll
from inspector.desk.told_papers import open_file
from inspector.duties.attach import put_on_tray
from inspector.duties.office import Office
from inspector.gear.attachment import Attachment
from inspector.language import tr


class Told(Protocol):
    """What is told of an incident or a recall."""

    @property
    def ref(self) -> str:
        """What it is called by."""


class Kept(Protocol):
    """A record with its files: small pictures by sha256, words by id."""

    @property
    def told(self) -> Told:
        """What is told of it."""

    @property
    def files(self) -> tuple[Attachment, ...]:
        """The files that belong to it."""

    @property
    def thumbs(self) -> Mapping[str, QImage]:
        """Their small pictures."""

    @property
    def file_words(self) -> Mapping[str, str]:
        """What is said of each."""


class ToldPage(Place):
    """A place with a list and a record, each in its own scroll area; `areas` names those between them."""

    def __init__(
        self, office: Office, background: Background, notice: Notice, look: Look, areas: tuple[str, ...]
    ) -> None:
        super().__init__(office, background, notice, look)
        self._latest = Latest(background, notice)
        self._areas = [scroll(QWidget(), name) for name in areas]
        self._list, self._record = self._areas[0], self._areas[-1]
        self._stack = QStackedWidget()
        for one in self._areas:
            self._stack.addWidget(one)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(self._stack, 1)

    @property
    def is_record_shown(self) -> bool:
        """Whether one of them is shown."""
        return self._stack.currentWidget() is self._record

    def _ask(self, deed: Deed[Any], about: object, key: str = "") -> None:
        self.go.emit(Go(DEED, (deed, about, key)))

    def _deed(self, make: Callable[[Any], Deed[Any]], told: Told) -> tuple[str, Callable[[], object], str]:
        """A deed about it: its name, what it does, and why it cannot be done now."""
        deed = make(told)
        return deed.name, partial(self._ask, deed, told, told.ref), deed.fits(told)

    def _set(self, area: QScrollArea, page: QWidget) -> None:
        lay_in(area, page)
        self._stack.setCurrentWidget(area)

    def _files(self, found: Kept) -> FilesPart:
        """The photos and papers; each opens, and more can be put to it."""
        made = FilesPart(found.files, found.thumbs, found.file_words, self._look, can_drop=False)
        made.opened.connect(self._open_file)
        made.attach.connect(partial(self._add_file, found.told))
        return made

    def _add_file(self, told: Told) -> None:
        self._ask(file_deed(told.ref), told, told.ref)

    def _open_file(self, kept: Attachment) -> None:
        self._background.run(
            put_on_tray, self._office, kept, done=self._opened_file, failed=self._notice.refuse, says=tr("Opening…")
        )

    def _opened_file(self, place: Path) -> None:
        open_file(place)
        self._notice.tell(tr("A copy lies in the out tray."), str(place))
