"""Fields of one line: text, a figure, a whole number, a day, a passphrase."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCompleter, QLineEdit

from inspector.desk.fault_field import FaultField
from inspector.desk.form.asked import Asked, Count, Day, Line, Number, Secret
from inspector.desk.form.boxes import Box
from inspector.desk.look import Look
from inspector.duties.office import Office
from inspector.duties.typed_day import read_day
from inspector.language import show_day, tr
from inspector.refused import Refused
from inspector.units import read


class LineBox(Box):
    """A line: text, a figure, a count, a day or a passphrase, as it is asked for."""

    def __init__(self, asked: Asked, office: Office, look: Look, example: str = "", stands: str = "") -> None:
        self.line = FaultField(asked.label, example)
        super().__init__(asked, look, self.line, self.line.fault)
        self._office, self._stood = office, stands
        self.line.setText(stands)
        self.line.textChanged.connect(self.changed)
        self.line.moves.connect(self.moves)
        self.line.editingFinished.connect(self.look_over)

    @property
    def draft(self) -> str:
        """The text as typed."""
        return self.line.text()

    @property
    def is_as_offered(self) -> bool:
        """Whether it still says what it said beforehand."""
        return self.line.text() == self._stood

    def give(self, draft: str) -> None:
        """Write a text."""
        self.line.setText(draft)

    @property
    def fault_text(self) -> str:
        """What is wrong with the line."""
        return self.line.fault.text() if self.line.is_faulty else ""

    def tell(self, refusal: Refused | None) -> None:
        """Say what is wrong, or nothing."""
        self.line.tell(refusal)

    def look_over(self) -> None:
        """Say at once what cannot be read; an empty field waits until the deed is asked for."""
        try:
            self.value()
        except Refused as refusal:
            self.tell(refusal)
        else:
            self.tell(None)

    def value(self) -> object:
        """The text."""
        return self.line.text()


class TextLine(LineBox):
    """A line of text with what may be meant."""

    def __init__(self, asked: Line, office: Office, look: Look) -> None:
        super().__init__(asked, office, look, asked.example, asked.stands)
        if asked.offers:
            completer = QCompleter(list(asked.offers), self.line)
            completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
            completer.setFilterMode(Qt.MatchFlag.MatchContains)
            self.line.setCompleter(completer)


class NumberLine(LineBox):
    """A figure with its unit."""

    def __init__(self, asked: Number, office: Office, look: Look) -> None:
        super().__init__(asked, office, look, asked.example, asked.stands)
        self._dimension = asked.dimension

    def value(self) -> object:
        """The figure; None where nothing stands here."""
        text = self.line.text().strip()
        if not text:
            return None
        return read(text, self._dimension, field=self.asked.label, decimal=self._office.decimal)


class CountLine(LineBox):
    """A whole number."""

    def __init__(self, asked: Count, office: Office, look: Look) -> None:
        super().__init__(asked, office, look, stands=asked.stands)
        self._least = asked.least

    def value(self) -> object:
        """The number; None where nothing stands here."""
        text = self.line.text().strip()
        if not text:
            return None
        if not text.isdecimal() or int(text) < self._least:
            why = tr("“{text}” is not a whole number of {least} or more.", text=text, least=self._least)
            raise Refused(self.asked.label, why, tr("Write it in figures alone."))
        return int(text)


class DayLine(LineBox):
    """A day, typed as days are written here."""

    def __init__(self, asked: Day, office: Office, look: Look) -> None:
        stands = show_day(asked.stands) if asked.stands else ""
        super().__init__(asked, office, look, tr("for example 25 Nov 2026"), stands)

    def value(self) -> object:
        """The day; None where nothing stands here."""
        text = self.line.text().strip()
        return read_day(text, self.asked.label, self._office.today) if text else None


class SecretLine(LineBox):
    """A passphrase; a draft never holds it."""

    def __init__(self, asked: Secret, office: Office, look: Look) -> None:
        super().__init__(asked, office, look)
        self.line.setEchoMode(QLineEdit.EchoMode.Password)

    @property
    def draft(self) -> str:
        """Nothing."""
        return ""
