"""One system of roles for all that is painted: paper, ink, one deep accent, hairlines; four sizes of type; a grid of 8.

Light and dark are the same roles with other colours. Nothing else in the desk names a colour or a size of type.
"""

from collections.abc import Callable
from enum import StrEnum
from math import ceil
from pathlib import Path

from msgspec import Struct
from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QPalette, QScreen
from PySide6.QtWidgets import QApplication, QWidget
from shiboken6 import isValid

from inspector.desk.style_sheet import style_sheet
from inspector.drawings.inks import Ink

GRID = 8


class Scheme(StrEnum):
    """Which colours to take."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


class TextSize(StrEnum):
    """How large all of it is."""

    USUAL = "usual"
    LARGE = "large"
    DOUBLE = "double"

    @property
    def scale(self) -> float:
        """By how much everything is larger than usual."""
        return {TextSize.USUAL: 1.0, TextSize.LARGE: 1.5, TextSize.DOUBLE: 2.0}[self]

    @property
    def next(self) -> "TextSize":
        """The next larger one; after the largest the usual one."""
        every = list(TextSize)
        return every[(every.index(self) + 1) % len(every)]


class Type(StrEnum):
    """The four sizes of type."""

    SMALL = "small"
    BODY = "body"
    HEAD = "head"
    DISPLAY = "display"


_TYPE_PX = {Type.SMALL: 13, Type.BODY: 15, Type.HEAD: 19, Type.DISPLAY: 30}


class Colours(Struct, frozen=True):
    """The colour of each role. field: where something may be typed."""

    inks: dict[Ink, str]
    field: str


LIGHT = Colours(
    {
        Ink.PAPER: "#FAF6EE",
        Ink.INK: "#1D1A15",
        Ink.FAINT: "#5A5348",
        Ink.HAIR: "#CFC6B6",
        Ink.BAND: "#EFE7D8",
        Ink.STEEL: "#8C9094",
        Ink.THIN: "#E6D2B5",
        Ink.LIMIT: "#86180F",
        Ink.MARK: "#86180F",
        Ink.FORCE: "#1D1A15",
    },
    field="#FFFDF9",
)
DARK = Colours(
    {
        Ink.PAPER: "#1C1916",
        Ink.INK: "#EFE8DB",
        Ink.FAINT: "#B9AF9F",
        Ink.HAIR: "#4D463C",
        Ink.BAND: "#2D2822",
        Ink.STEEL: "#858A8F",
        Ink.THIN: "#5D4B33",
        Ink.LIMIT: "#F09483",
        Ink.MARK: "#F09483",
        Ink.FORCE: "#EFE8DB",
    },
    field="#25211C",
)


class Look(QObject):
    """The look in force. changed: everything that paints by itself must paint anew."""

    changed = Signal()

    def __init__(self, font_files: tuple[Path, ...] = ()) -> None:
        super().__init__()
        self._family = _registered(font_files)
        self.scheme = Scheme.SYSTEM
        self.text = TextSize.USUAL
        self._windows: list[QWidget] = []
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._system_changed)
        if isinstance(app := QApplication.instance(), QApplication):
            app.screenAdded.connect(self._screen_added)

    @property
    def is_dark(self) -> bool:
        """Whether the dark colours are in force."""
        if self.scheme is Scheme.SYSTEM:
            return QGuiApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
        return self.scheme is Scheme.DARK

    @property
    def colours(self) -> Colours:
        """The colours in force."""
        return DARK if self.is_dark else LIGHT

    def choose(self, scheme: Scheme) -> None:
        """Take the system's colours, the light or the dark ones."""
        self.scheme = scheme
        self._apply()

    def set_text(self, text: TextSize) -> None:
        """Take a size of text, and of all that goes with it."""
        self.text = text
        self._apply()

    @property
    def is_large(self) -> bool:
        """Whether the text is larger than usual."""
        return self.text is not TextSize.USUAL

    def colour(self, ink: Ink) -> QColor:
        """The colour of an ink."""
        return QColor(self.colours.inks[ink])

    def px(self, length: float) -> int:
        """A length of the usual text size in pixels of the size in force."""
        return round(length * self.text.scale)

    def type_px(self, size: Type) -> int:
        """The height of a size of type in pixels."""
        return self.px(_TYPE_PX[size])

    def font(self, size: Type = Type.BODY, *, bold: bool = False) -> QFont:
        """The font of a size of type."""
        font = QFont(self._family) if self._family else QFont()
        font.setPixelSize(self.type_px(size))
        font.setBold(bold)
        return font

    def font_of_height(self, height_px: int, *, bold: bool = False) -> QFont:
        """The font of the same face at a height in pixels, for drawings."""
        font = self.font(bold=bold)
        font.setPixelSize(max(height_px, 1))
        return font

    def fit(self, part: QWidget, set_px: Callable[[QWidget, int], object], usual_px: float) -> None:
        """Set a length of a part, while it lives, to what the size of text asks for. usual_px: at the usual size."""

        def fitted() -> None:
            set_px(part, self.px(usual_px))

        def left() -> None:
            if isValid(self):  # as the program ends the look may go first
                self.changed.disconnect(fitted)

        fitted()
        self.changed.connect(fitted)
        part.destroyed.connect(left)

    @staticmethod
    def densities() -> range:
        """The pixels a point that a picture is painted with: up to those of the densest screen there is."""
        return range(1, ceil(max((one.devicePixelRatio() for one in QGuiApplication.screens()), default=1)) + 1)

    def dress(self, window: QWidget) -> None:
        """Lay the look over a window, now and as it changes, and over all that is put into it.

        The sheet belongs to the window, not to the program: a page that is made lies in no window yet, so it is dressed
        once, as it is put in, and not again at every step of being put together.
        """
        self._windows.append(window)
        window.destroyed.connect(lambda: self._windows.remove(window))
        self._apply()

    def _apply(self) -> None:
        """Lay the look over every window that wears it."""
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(self._palette())
            app.setFont(self.font())
            sheet = self._style_sheet()
            for one in self._windows:
                if one.styleSheet() != sheet:  # laying it over every widget there is takes long
                    one.setStyleSheet(sheet)
        self.changed.emit()

    def _style_sheet(self) -> str:
        colours = {ink.value: colour for ink, colour in self.colours.inks.items()} | {"field": self.colours.field}
        family = self._family or QApplication.font().family()
        return style_sheet(family, colours, {size.value: self.type_px(size) for size in Type}, self.px)

    def _system_changed(self) -> None:
        if self.scheme is Scheme.SYSTEM:
            self._apply()

    def _screen_added(self, _screen: QScreen) -> None:
        self.changed.emit()  # it may be a denser one

    def _palette(self) -> QPalette:
        paper, ink, band = (self.colour(one) for one in (Ink.PAPER, Ink.INK, Ink.BAND))
        palette, role = QPalette(), QPalette.ColorRole
        for group in (role.Window, role.Button, role.AlternateBase):
            palette.setColor(group, paper)
        palette.setColor(role.Base, QColor(self.colours.field))
        for group in (role.WindowText, role.Text, role.ButtonText, role.HighlightedText, role.ToolTipText, role.Link):
            palette.setColor(group, ink)
        for group in (role.Highlight, role.ToolTipBase):
            palette.setColor(group, band)
        palette.setColor(role.PlaceholderText, self.colour(Ink.FAINT))
        palette.setColor(role.Mid, self.colour(Ink.HAIR))
        return palette


def _registered(font_files: tuple[Path, ...]) -> str:
    """The family of the packaged type, or nothing where none was given."""
    families: list[str] = []
    for file in font_files:
        families += QFontDatabase.applicationFontFamilies(QFontDatabase.addApplicationFont(str(file)))
    condensed = [family for family in families if "Condensed" in family]
    return (condensed or families or [""])[0]
