"""The coming years on a line: which piece time alone would retire, when, and how sure that is."""

from collections.abc import Sequence
from datetime import date

from msgspec import Struct

from inspector.drawings.axes import Scale, day_ticks
from inspector.drawings.extent import Box, text_width_mm
from inspector.drawings.labels import Labels
from inspector.drawings.marks import outcome_word
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Point, RoundedRect, Shape, Text
from inspector.drawings.wording import LABEL_MM
from inspector.gear.needs import Ending, EndsBy
from inspector.language import show_day, tr

_WIDTH_MM = 170.0
_PLOT_LEFT_MM, _PLOT_RIGHT_MM = 44.0, 144.0
_DAY_MM = 147.0  # the days stand below one another, clear of all bands
_TOP_MM, _ROW_MM, _FOOT_MM = 1.0, 6.0, 6.0
_GAP_MM = 2.0
_DASH = (0.8, 0.8)


class RetireLine(Struct, frozen=True):
    """The picture, and the row of each piece in it in the order given, in mm: for a pointer that is pressed there."""

    drawing: Drawing
    rows: tuple[Box, ...]

    def row_at(self, y_mm: float) -> int | None:
        """The number of the row at a height; None beside them."""
        return next((number for number, row in enumerate(self.rows) if row.top <= y_mm < row.bottom), None)


def retire_line(ends: Sequence[Ending], on: date, last: date, chosen: int | None = None) -> RetireLine:
    """The pieces one below the other from a day to the last one, 170 mm wide. chosen: the row that is marked."""
    foot = _TOP_MM + _ROW_MM * len(ends)
    across = Scale(on.toordinal(), last.toordinal(), _PLOT_LEFT_MM, _PLOT_RIGHT_MM)
    rows = tuple(Box(0.0, _TOP_MM + _ROW_MM * at, _WIDTH_MM, _TOP_MM + _ROW_MM * (at + 1)) for at in range(len(ends)))
    shapes = [shape for row, one in enumerate(ends) for shape in _ground(rows[row], one, row == chosen)]
    shapes += _axis(across, on, last, foot)
    shapes += [shape for row, one in zip(rows, ends, strict=True) for shape in _Row(row, one, across).shapes()]
    title = tr("Which pieces time alone would retire, to {day}", day=show_day(last))
    described = " ".join(ending_words(one) for one in ends)
    return RetireLine(Drawing(_WIDTH_MM, foot + _FOOT_MM, tuple(shapes), title, described), rows)


def ending_words(one: Ending) -> str:
    """What the line says of a piece."""
    named = tr("{tag}, {kind}, {outcome}", tag=one.tag, kind=one.kind_name, outcome=outcome_word(one.outcome))
    day = show_day(one.on)
    if one.by is EndsBy.AGE:
        return tr("{piece}: its age retires it from {day}.", piece=named, day=day)
    if one.estimated:
        said = tr("{piece}: by an estimate, with no reading behind it, its wall is down to its limit on {day}.")
    else:
        said = tr("{piece}: its wall, thinning as before, is down to its limit on {day}.")
    told = said.format(piece=named, day=day)
    return " ".join(filter(None, (told, sure_words(one))))


def sure_words(one: Ending) -> str:
    """How sure the day of a wall is."""
    if one.earliest and one.latest:
        days = {"first": show_day(one.earliest), "last": show_day(one.latest)}
        return tr("Its readings allow any day from {first} to {last}.", **days)
    if one.earliest:
        return tr("Its readings allow {first} already, and tell no latest day.", first=show_day(one.earliest))
    return ""


def _ground(row: Box, one: Ending, is_chosen: bool) -> list[Shape]:
    """The row itself, which tells the piece wherever one points, and the hairline below it."""
    said, fill = ending_words(one), Ink.BAND if is_chosen else Ink.PAPER
    line = Line((0.1, row.bottom), (_WIDTH_MM - 0.1, row.bottom), ink=Ink.HAIR, width_mm=0.1)
    return [RoundedRect((0.0, row.top), row.width, row.height, ink=None, fill=fill, tells=said), line]


def _axis(across: Scale, on: date, last: date, foot: float) -> list[Shape]:
    room = Labels(Box(0.0, foot, _WIDTH_MM, foot + _FOOT_MM))
    shapes: list[Shape] = [Line((_PLOT_LEFT_MM, foot), (_PLOT_RIGHT_MM, foot), ink=Ink.FAINT)]
    for tick in day_ticks(on.toordinal(), last.toordinal()):
        x = across.at(tick.value)
        shapes.append(Line((x, _TOP_MM), (x, foot + 1.0), ink=Ink.HAIR, width_mm=0.1))
        at = (x, foot + 4.4)
        shapes.extend(room.take(Text(at, tick.words, LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT)))
    return shapes


class _Row:
    """One piece: its name on the left, its band, its mark, its day on the right."""

    def __init__(self, row: Box, one: Ending, across: Scale) -> None:
        self._one, self._across, self._said = one, across, ending_words(one)
        self._middle = (row.top + row.bottom) / 2
        self._base = self._middle + 0.35 * LABEL_MM

    def shapes(self) -> list[Shape]:
        """All of it."""
        return [*self._name(), *self._band(), *self._mark(), self._day()]

    def _name(self) -> list[Shape]:
        """The tag, and the kind where both have room."""
        room = _PLOT_LEFT_MM - _GAP_MM
        tag = _shortened(self._one.tag, room)
        shapes: list[Shape] = [Text((0.5, self._base), tag, LABEL_MM, bold=True, tells=self._said)]
        left = 0.5 + text_width_mm(tag, LABEL_MM, bold=True) + _GAP_MM
        if left + text_width_mm(self._one.kind_name, LABEL_MM) <= room:
            shapes.append(Text((left, self._base), self._one.kind_name, LABEL_MM, ink=Ink.FAINT, tells=self._said))
        return shapes

    def _band(self) -> list[Shape]:
        """From the earliest to the latest day; dashed where no latest one is told."""
        if self._one.earliest is None:
            return []
        start, end = self._at(self._one.earliest), self._at(self._one.latest) if self._one.latest else _PLOT_RIGHT_MM
        dash = () if self._one.latest else _DASH
        return [Line(self._point(start), self._point(end), ink=Ink.STEEL, width_mm=0.9, dash_mm=dash, tells=self._said)]

    def _mark(self) -> list[Shape]:
        """A full dot for a wall that was read, a hollow one for an estimate, a square for an age; none off the line."""
        if self._one.on.toordinal() > self._across.high:
            return []
        x = self._at(self._one.on)
        if self._one.by is EndsBy.AGE:
            corner = (x - 1.0, self._middle - 1.0)
            return [RoundedRect(corner, 2.0, 2.0, ink=Ink.PAPER, fill=Ink.INK, tells=self._said)]
        fill, ink = (Ink.PAPER, Ink.INK) if self._one.estimated else (Ink.INK, Ink.PAPER)
        return [Circle(self._point(x), 1.1, ink=ink, width_mm=0.35, fill=fill, tells=self._said)]

    def _day(self) -> Text:
        return Text((_DAY_MM, self._base), show_day(self._one.on), LABEL_MM, tells=self._said)

    def _at(self, day: date) -> float:
        """Where a day stands; one off the line at its end."""
        return self._across.at(min(max(day.toordinal(), self._across.low), self._across.high))

    def _point(self, x: float) -> Point:
        return x, self._middle


def _shortened(text: str, width_mm: float) -> str:
    if text_width_mm(text, LABEL_MM, bold=True) <= width_mm:
        return text
    while text and text_width_mm(text + "…", LABEL_MM, bold=True) > width_mm:
        text = text[:-1]
    return text + "…"
