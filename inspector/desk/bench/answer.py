"""What the bench answers: a sentence, the picture, the sum line by line, figures with sources, what is left out."""

from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.pen import Picture
from inspector.desk.plain import clear, column, hairline, said
from inspector.drawings.bench_picture import bench_picture
from inspector.gear.bench import BenchFigure, BenchLine, Worked
from inspector.language import tr
from inspector.units import System

_WIDEST_PX = 640


class BenchAnswer(QWidget):
    """The answer to a topic as its dials stand. While a dial turns, words change in their places."""

    def __init__(self, look: Look, system: System) -> None:
        super().__init__()
        self._look, self._system = look, system
        self.worked: Worked | None = None
        self.picture: Picture | None = None
        self.question, self.means = said("", Type.HEAD), said("", bold=True)
        self.stale = said("", Type.BODY, bold=True)
        self.lines: list[_SumLine] = []
        self.figures: list[QLabel] = []
        self._inside = QVBoxLayout(self)
        self._inside.setContentsMargins(0, 0, GRID, 2 * GRID)
        self._inside.setSpacing(2 * GRID)

    def show_worked(self, worked: Worked) -> None:
        """Show a topic as it was worked."""
        before, self.worked = self.worked, worked
        self.stale.hide()
        if before is None or _shape(before) != _shape(worked):
            self._build(worked)
        else:
            self._change(worked)

    def tell_stale(self) -> None:
        """Say that the answer is that of the figures before."""
        self.stale.setText(
            tr("A figure on the left cannot be taken. Until it is mended, this is the answer to the figures before.")
        )
        self.stale.show()

    def _build(self, worked: Worked) -> None:
        for kept in (self.question, self.means, self.stale):
            self._inside.removeWidget(kept)
            kept.setParent(self)
        clear(self._inside)
        self.picture = Picture(bench_picture(worked, self._system), self._look, _WIDEST_PX)
        self.lines = [_SumLine() for _ in worked.lines]
        self.figures = [said("") for _ in worked.figures]
        self.question.setText(worked.question)
        parts: list[QWidget] = [
            self.question, self.stale, self.means, self.picture,
            *_headed(tr("Mind"), [_listed(worked.cautions)]),
            *_headed(tr("The sum"), self.lines),
            *_headed(tr("Figures, and where they come from"), [*self.figures, _marks()]),
            *_headed(tr("The sums come from"), [_listed(worked.sources)]),
            *_headed(tr("What the sum leaves out"), [_listed(worked.left_out)]),
        ]  # fmt: skip
        for part in parts:
            self._inside.addWidget(part)
        self._inside.addStretch(1)
        self._fill(worked)

    def _change(self, worked: Worked) -> None:
        if self.picture:
            self.picture.show_drawing(bench_picture(worked, self._system))
        self._fill(worked)

    def _fill(self, worked: Worked) -> None:
        self.means.setText(worked.means)
        for line, shown in zip(self.lines, worked.lines, strict=True):
            line.show_line(shown)
        for label, figure in zip(self.figures, worked.figures, strict=True):
            label.setText(_figure_words(figure))


def _shape(worked: Worked) -> tuple[object, ...]:
    """What must be the same so that words can change in their places."""
    return worked.topic, len(worked.lines), len(worked.figures), worked.cautions


def _listed(texts: tuple[str, ...]) -> QWidget:
    return column([said(f"– {one}") for one in texts], GRID // 2)


def _marks() -> QLabel:
    """How to read the marks of certainty."""
    text = tr(
        "A source without a mark was read itself. Second-hand: read in a paper that restates it. From memory: not seen."
    )
    return said(text, Type.SMALL, faint=True)


def _headed(head: str, parts: list[QWidget] | list["_SumLine"] | list[QLabel]) -> list[QWidget]:
    return [hairline(), said(head, Type.HEAD), *parts]


def _figure_words(figure: BenchFigure) -> str:
    if not figure.source:
        return tr("{label}: {text} – {came}.", label=figure.label, text=figure.text, came=figure.came)
    return tr(
        "{label}: {text} – {came}. {source}.",
        label=figure.label,
        text=figure.text,
        came=figure.came,
        source=figure.source,
    )


class _SumLine(QWidget):
    """A sum: what it is for with its result, the formula, the figures filled in."""

    def __init__(self) -> None:
        super().__init__()
        self.result, self.formula, self.filled = said("", bold=True), said(""), said("", faint=True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        for one in (self.result, self.formula, self.filled):
            layout.addWidget(one)

    def show_line(self, line: BenchLine) -> None:
        """Let a sum stand here."""
        self.result.setText(tr("{what}: {result}", what=line.says, result=line.result))
        self.formula.setText(line.formula)
        self.filled.setText(tr("with {figures}", figures=line.filled) if line.filled else "")
        self.filled.setVisible(bool(line.filled))
        self.setToolTip(tr("Valid: {valid}", valid=line.valid))
