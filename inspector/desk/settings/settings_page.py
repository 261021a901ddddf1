"""The page of what can be set. What concerns this window holds at once; what the club wants has a form of its own."""

from msgspec import Struct
from msgspec.structs import replace
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.background import Background
from inspector.desk.choice import Choice
from inspector.desk.deeds import club
from inspector.desk.look import GRID, Look, Scheme, TextSize, Type
from inspector.desk.notice import Notice
from inspector.desk.place import Go, Place
from inspector.desk.places import DEED, PEOPLE, REGISTER
from inspector.desk.plain import button, column, facts, row, said, scroll
from inspector.desk.record_parts import section
from inspector.duties.club_settings import ClubSettings, as_the_club_wants, club_settings
from inspector.duties.office import Office
from inspector.duties.sit_down import name_words
from inspector.language import tr

_CHOICE_PX = 280


class _Settings(Struct, frozen=True):
    """What the club wants, and the office as it is with that."""

    wanted: ClubSettings
    office: Office


class SettingsPage(Place):
    """changed: the club wants something else now; carries the office as it is then."""

    changed = Signal(object)

    def __init__(self, office: Office, background: Background, notice: Notice, look: Look) -> None:
        super().__init__(office, background, notice, look)
        self.wanted: ClubSettings | None = None
        self.scheme = Choice(tr("Colours"), _schemes(), scans=True)
        self.text = Choice(tr("Size of the text"), _sizes(), scans=True)
        self.language = Choice(tr("Language"), _languages(), scans=True)
        self.language.choose(office.machine.language)
        self.language.box.currentIndexChanged.connect(lambda _: self._speak())
        self.change_button = button(tr("Change what the club wants"), self._change, rank="first")
        self._club = QVBoxLayout()
        self._area = scroll(self._page(), tr("Settings"))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        layout.addWidget(self._area)
        self.scheme.box.currentIndexChanged.connect(lambda _: look.choose(self.scheme.value))
        self.text.box.currentIndexChanged.connect(lambda _: look.set_text(self.text.value))
        look.changed.connect(self._show_look)
        look.changed.connect(self._make_room)
        self._make_room()
        self._show_look()

    def begin(self, what: object = None) -> None:
        """Read what the club wants."""
        self._background.run(_read, self._office, done=self._show, failed=self._notice.refuse)

    def focus_start(self) -> None:
        """The keys go to the first choice."""
        self.scheme.box.setFocus()

    def _page(self) -> QWidget:
        desk = section(
            tr("This window"),
            _labelled(tr("Colours"), self.scheme.box),
            _labelled(tr("Size of the text"), self.text.box),
            _labelled(tr("Language"), self.language.box),
            said(tr("This machine remembers it, and the columns of the gear list."), Type.SMALL, faint=True),
        )
        wants = QWidget()
        wants.setLayout(self._club)
        self._club.setContentsMargins(0, 0, 0, 0)
        people = button(tr("People"), lambda: self.go.emit(Go(PEOPLE)), name=tr("Go to the people"))
        register = button(tr("Register"), lambda: self.go.emit(Go(REGISTER)), name=tr("Go to the register itself"))
        others = section(
            tr("Elsewhere"),
            said(tr("Who is at the desk, and whether names are proved by passphrases: under People.")),
            said(tr("Where the register lies, its copies, and handing it on: under Register.")),
            row([people, register]),
        )
        seated = said(
            tr("At the desk: {name}. {proof}", name=self._office.officer.name, proof=name_words(self._office))
        )
        parts = [said(tr("Settings"), Type.DISPLAY), desk, section(tr("The club"), wants, row([self.change_button]))]
        return column([*parts, others, seated], 3 * GRID)

    def _show(self, found: _Settings) -> None:
        self.wanted = wanted = found.wanted
        while item := self._club.takeAt(0):
            if widget := item.widget():
                widget.deleteLater()
        self._club.addWidget(
            facts([
                (tr("Name"), wanted.club),
                (tr("Units"), club.word_of(club.unit_choices(), wanted.system)),
                (tr("Paper"), club.word_of(club.paper_choices(), wanted.page)),
                (tr("Decimal sign"), club.word_of(club.decimal_choices(), wanted.decimal)),
                (tr("Mark"), tr("stands on every document") if wanted.mark else tr("none")),
            ])
        )  # fmt: skip
        mine = (self._office.system, self._office.page, self._office.decimal)
        if mine != (wanted.system, wanted.page, wanted.decimal):
            self.changed.emit(replace(found.office))

    def _speak(self) -> None:
        self._office.machine.speak(self.language.value)
        self._notice.tell(tr("It holds from the next start."), tr("Close the program and open it again."))

    def _make_room(self) -> None:
        """Room for the longest words of each choice."""
        for choice in (self.scheme, self.text, self.language):
            choice.box.setMinimumWidth(self._look.px(_CHOICE_PX))

    def _show_look(self) -> None:
        """The menu may have changed it."""
        for choice, value in ((self.scheme, self._look.scheme), (self.text, self._look.text)):
            choice.box.blockSignals(True)
            choice.choose(value)  # type: ignore[arg-type]
            choice.box.blockSignals(False)

    def _change(self) -> None:
        if self.wanted:
            self.go.emit(Go(DEED, (club.settings(), self.wanted, "")))


def _read(office: Office) -> _Settings:
    return _Settings(club_settings(office), as_the_club_wants(office))


def _labelled(label: str, box: QWidget) -> QWidget:
    return row([said(label, faint=True), box])


def _schemes() -> list[tuple[str, Scheme]]:
    return [
        (tr("like the computer"), Scheme.SYSTEM),
        (tr("light"), Scheme.LIGHT),
        (tr("dark"), Scheme.DARK),
    ]


def _languages() -> list[tuple[str, str]]:
    """Each under its own name; what nobody reads helps nobody find his own."""
    return [(tr("like the computer"), ""), ("English", "en"), ("Deutsch", "de")]


def _sizes() -> list[tuple[str, TextSize]]:
    return [
        (tr("usual"), TextSize.USUAL),
        (tr("large, half as large again"), TextSize.LARGE),
        (tr("twice as large"), TextSize.DOUBLE),
    ]
