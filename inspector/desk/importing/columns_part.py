"""What each column is taken for, to be corrected, and the questions that its cells leave open."""

from collections.abc import Sequence
from functools import partial

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from inspector.desk.choice import Choice
from inspector.desk.look import GRID, Type
from inspector.desk.plain import bare_grid, fill, hairline, said, short
from inspector.duties.import_list import sheet_called
from inspector.duties.importing.corrections import with_answer, with_meaning
from inspector.duties.importing.figures import text_of
from inspector.duties.office import Office
from inspector.duties.tell_import import stated_choices, what_is_told
from inspector.gear.import_list import Column, Fates, Field, Matching, Question, Sheet
from inspector.language import tr

_SAMPLES = 3
_LONGEST_SAMPLE = 28
_MOST_HEAD_ROWS = 12
_TOP = Qt.AlignmentFlag.AlignTop


class ColumnsPart(QWidget):
    """changed: another matching. turned: the name of another sheet, and the row of its headings or None."""

    changed = Signal(object)
    turned = Signal(str, object)

    def __init__(self, office: Office, run: Fates, meanings: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self._office, self.run = office, run
        self._sheet = sheet_called(run.file, run.matching.sheet)
        self._meanings = [(words, key) for key, words in meanings]
        self.fields: dict[int, Choice[str]] = {}
        self.answers: list[tuple[Question, Choice[str]]] = []
        fill(QVBoxLayout(self), self._parts(), 2 * GRID)

    def _parts(self) -> list[QWidget]:
        parts: list[QWidget] = [said(" · ".join((self.run.file.name, *self.run.told)), Type.SMALL, faint=True)]
        parts.append(self._where())
        if self.run.questions:
            parts += [said(tr("What can be read in two ways"), Type.HEAD), self._questions()]
        parts += [said(tr("What the columns mean"), Type.HEAD), self._columns(), hairline(), self._whole()]
        return parts

    def _where(self) -> QWidget:
        """Which sheet, and which row has the headings."""
        part, grid = bare_grid(1)
        matching = self.run.matching
        if len(self.run.file.sheets) > 1:
            names = [(one.name, one.name) for one in self.run.file.sheets]
            self.sheet = Choice(tr("Sheet"), names)
            self.sheet.choose(self._sheet.name)
            self.sheet.box.currentIndexChanged.connect(lambda _: self.turned.emit(self.sheet.value, None))
            grid.addWidget(short(tr("Sheet")), 0, 0)
            grid.addWidget(self.sheet.box, 0, 1)
        heads = [(tr("no row has headings"), 0)]
        heads += [(_row_words(self._sheet, number), number) for number in _head_rows(self._sheet, matching.head)]
        self.head = Choice(tr("Headings"), heads)
        self.head.choose(matching.head)
        self.head.box.currentIndexChanged.connect(lambda _: self.turned.emit(self._sheet.name, self.head.value))
        grid.addWidget(short(tr("Headings")), 1, 0)
        grid.addWidget(self.head.box, 1, 1)
        return part

    def _questions(self) -> QWidget:
        part, grid = bare_grid(1)
        for number, one in enumerate(self.run.questions):
            open_words = tr("not told: rows that hang on it are not taken")
            box = Choice(one.asks, [(open_words, ""), *((words, key) for key, words in one.choices)])
            box.choose(one.answer if box.has(one.answer) else "")
            box.box.currentIndexChanged.connect(partial(self._answer, one, box))
            letter = self.run.matching.columns[one.at].letter
            grid.addWidget(
                said(tr("{letter}: {question}", letter=letter, question=one.asks), bold=not one.answer),
                2 * number,
                0,
                1,
                2,
            )
            grid.addWidget(box.box, 2 * number + 1, 0, 1, 2)
            self.answers.append((one, box))
        return part

    def _columns(self) -> QWidget:
        part, grid = bare_grid(0, 1)
        for number, one in enumerate(self.run.matching.columns):
            box = Choice(tr("What column {letter} means", letter=one.letter), self._meanings)
            box.choose(one.field if box.has(one.field) else Field.NOTE.value)
            box.box.currentIndexChanged.connect(partial(self._mean, one, box))
            self.fields[one.at] = box
            words = said(tr("{letter}  {heading}", letter=one.letter, heading=one.heading or "–"), bold=True)
            grid.addWidget(words, 2 * number, 0, _TOP)
            grid.addWidget(box.box, 2 * number, 1, _TOP)
            below = " · ".join(part for part in (what_is_told(one), self._samples(one)) if part)
            grid.addWidget(said(below, Type.SMALL, faint=True), 2 * number + 1, 0, 1, 2)
        return part

    def _samples(self, one: Column) -> str:
        """The first cells of a column."""
        cells = (row[one.at] for row in self._sheet.rows[self.run.matching.head :] if one.at < len(row))
        texts = [
            text_of(cell)[:_LONGEST_SAMPLE]
            for _, cell in zip(range(_SAMPLES), (c for c in cells if c != ""), strict=False)
        ]
        return tr("for example {cells}", cells="; ".join(texts)) if texts else tr("nothing stands in it")

    def _whole(self) -> QWidget:
        """What is said of the whole list."""
        part, grid = bare_grid(1)
        self.stated = Choice(tr("Where the ratings of the list were read off"), stated_choices())
        self.stated.choose(self.run.matching.stated_on)
        self.stated.box.currentIndexChanged.connect(lambda _: self._say(stated_on=self.stated.value))
        self.serials = Choice(tr("Rows with the same serial"), [
            (tr("may be the same piece: they are not taken"), False), (tr("are different pieces"), True)])  # fmt: skip
        self.serials.choose(self.run.matching.shared_serials)
        self.serials.box.currentIndexChanged.connect(lambda _: self._say(shared_serials=self.serials.value))
        labels = (tr("Where the ratings of the list were read off"), tr("Rows with the same serial"))
        for number, (words, box) in enumerate(zip(labels, (self.stated.box, self.serials.box), strict=True)):
            grid.addWidget(said(words), 2 * number, 0, 1, 2)
            grid.addWidget(box, 2 * number + 1, 0, 1, 2)
        return part

    def _say(self, **said_of_it: object) -> None:
        self.changed.emit(replace(self.run.matching, **said_of_it))

    def _mean(self, one: Column, box: Choice[str], _: int) -> None:
        self._tell(with_meaning(self._office, self._sheet, self.run.matching, one.at, box.value))

    def _answer(self, one: Question, box: Choice[str], _: int) -> None:
        self._tell(with_answer(self.run.matching, one.at, one.about, box.value))

    def _tell(self, matching: Matching) -> None:
        self.changed.emit(matching)


def _head_rows(sheet: Sheet, head: int) -> list[int]:
    """The rows that may be the headings: the first ones with more than one cell, and the one that is taken for them."""
    wide = [number for number, row in enumerate(sheet.rows, 1) if sum(1 for cell in row if cell != "") > 1]
    return sorted({*wide[:_MOST_HEAD_ROWS], *([head] if head else [])})


def _row_words(sheet: Sheet, number: int) -> str:
    texts = [text_of(cell) for cell in sheet.rows[number - 1] if cell != ""]
    return tr("row {number}: {cells}", number=number, cells=", ".join(texts[:_SAMPLES]))
