"""The life of a piece on one axis of time: a row for each sort of entry, close entries bundled with their number."""

from collections.abc import Iterator, Sequence
from datetime import date

from msgspec import Struct

from inspector.drawings.axes import Scale, day_ticks
from inspector.drawings.extent import Box, extent, text_width_mm
from inspector.drawings.labels import Labels
from inspector.drawings.life_marks import HALF_MM, bundle, bundle_width_mm, mark, row_words, stretch
from inspector.drawings.shapes import Anchor, Drawing, Ink, Line, Shape, Text
from inspector.drawings.wording import LABEL_MM, LEADING_MM, wrapped
from inspector.gear.life import Life, LifeEntry, LifeSort
from inspector.language import show_day, tr, tr_n

LEAST_WIDTH_MM = 88.0
_HEAD_MM = 2 * LEADING_MM + 1.0  # the words of today and of what is due, each in a line of its own
_LEAST_ROW_MM = 7.6
_FOOT_MM = 5.6
_EDGE_MM = 1.0
_GAP_MM = 0.5  # between two marks of a row
_MOST_WORDS_RATIO = 0.3  # of the width, for the names of the rows
_LEAST_DAYS = 60
_TOLD_OF_A_BUNDLE = 12
_LAST_DAY = date.max.toordinal()


def timeline(life: Life, width_mm: float = 180.0) -> Drawing:
    """The picture, as wide as asked and at least LEAST_WIDTH_MM, as high as it has rows."""
    chart = _Chart(life, max(width_mm, LEAST_WIDTH_MM))
    shapes = (*chart.ground(), *chart.lines(), *(shape for row in chart.rows for shape in chart.row(row)))
    return Drawing(chart.width_mm, chart.bottom_mm + _FOOT_MM, shapes, tr("Its life"), _describes(life))


class Bundle(Struct, frozen=True):
    """Entries of a row that stand at one place, in order of day."""

    x_mm: float
    entries: tuple[LifeEntry, ...]


def bundles(entries: Sequence[LifeEntry], across: Scale) -> tuple[Bundle, ...]:
    """Each entry in exactly one bundle, so placed that no two marks of the row touch.

    The row is cut into cells as wide as its widest mark; a lone entry stands at its day, or as near as its cell allows.
    """
    pitch_mm = bundle_width_mm(len(entries)) + _GAP_MM
    count = max(int((across.end_mm - across.start_mm) / pitch_mm), 1)
    pitch_mm = (across.end_mm - across.start_mm) / count
    cells: dict[int, list[LifeEntry]] = {}
    for entry in sorted(entries, key=lambda one: one.on):
        place = int((across.at(entry.on.toordinal()) - across.start_mm) / pitch_mm)
        cells.setdefault(min(max(place, 0), count - 1), []).append(entry)
    return tuple(_placed(across, pitch_mm, cell, found) for cell, found in cells.items())


def _placed(across: Scale, pitch_mm: float, cell: int, entries: list[LifeEntry]) -> Bundle:
    left_mm = across.start_mm + cell * pitch_mm
    if len(entries) > 1:
        return Bundle(left_mm + pitch_mm / 2, tuple(entries))
    keep_mm = HALF_MM + _GAP_MM / 2
    x_mm = across.at(entries[0].on.toordinal())
    return Bundle(min(max(x_mm, left_mm + keep_mm), left_mm + pitch_mm - keep_mm), tuple(entries))


class _Chart:
    """One picture in the making."""

    def __init__(self, life: Life, width_mm: float) -> None:
        self.life, self.width_mm = life, width_mm
        self.rows = [sort for sort in LifeSort if any(one.sort is sort for one in life.entries)]
        words = [text_width_mm(row_words(sort), LABEL_MM) for sort in self.rows]
        self.words_mm = min(max(words, default=0.0), width_mm * _MOST_WORDS_RATIO)
        lines = max((len(self.name(sort)) for sort in self.rows), default=1)
        self.row_mm = max(_LEAST_ROW_MM, lines * LEADING_MM + _EDGE_MM)
        self.bottom_mm = _HEAD_MM + len(self.rows) * self.row_mm
        first, last = _day_range(life)
        self.across = Scale(first, last, 2 * _EDGE_MM + self.words_mm, width_mm - _EDGE_MM)

    def name(self, sort: LifeSort) -> tuple[str, ...]:
        """The name of a row in lines."""
        return wrapped(row_words(sort), self.words_mm + 0.01)

    def ground(self) -> list[Shape]:
        """The names of the rows, hairlines between them, and the days below."""
        shapes: list[Shape] = []
        for number, sort in enumerate(self.rows):
            top = _HEAD_MM + number * self.row_mm
            shapes.append(Line((_EDGE_MM, top), (self.width_mm - _EDGE_MM, top), ink=Ink.HAIR, width_mm=0.1))
            shapes += _row_name(self.name(sort), top + self.row_mm / 2)
        base = self.bottom_mm
        line = Line((self.across.start_mm, base), (self.across.end_mm, base), ink=Ink.FAINT, width_mm=0.2)
        return [*shapes, line, *self._ticks()]

    def _ticks(self) -> Iterator[Shape]:
        room = Labels(Box(0.0, self.bottom_mm, self.width_mm, self.bottom_mm + _FOOT_MM))
        for tick in day_ticks(self.across.low, self.across.high):
            x = self.across.at(tick.value)
            yield Line((x, self.bottom_mm), (x, self.bottom_mm + 1.0), ink=Ink.FAINT)
            at = (x, self.bottom_mm + 4.4)
            yield from room.take(Text(at, tick.words, LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT))

    def lines(self) -> list[Shape]:
        """Today, and the day on which something falls due, each with its words in a row of the head."""
        life = self.life
        today = self._words(life.today, tr("today, {day}", day=show_day(life.today)), 1, Ink.FAINT)
        shapes: list[Shape] = [today, self._line(life.today, today.text, Ink.FAINT, _HEAD_MM - _EDGE_MM)]
        if life.due:
            said = tr("next due {day}") if life.due > life.today else tr("was due {day}")
            due = self._words(life.due, said.format(day=show_day(life.due)), 0, Ink.LIMIT)
            x, taken = self.across.at(life.due.toordinal()), extent(today)
            is_crossed = taken.left - _EDGE_MM <= x <= taken.right + _EDGE_MM
            top = _HEAD_MM - _EDGE_MM if is_crossed else LEADING_MM + 0.4
            shapes += [due, self._line(life.due, due.text, Ink.LIMIT, top, (1.0, 0.8))]
        return shapes

    def _words(self, day: date, words: str, row: int, ink: Ink) -> Text:
        """Above the line of a day, as near as the frame allows."""
        half = text_width_mm(words, LABEL_MM) / 2
        x = min(max(self.across.at(day.toordinal()), _EDGE_MM + half), self.width_mm - _EDGE_MM - half)
        return Text((x, (row + 0.8) * LEADING_MM), words, LABEL_MM, anchor=Anchor.MIDDLE, ink=ink)

    def _line(self, day: date, words: str, ink: Ink, top: float, dash: tuple[float, ...] = ()) -> Line:
        x = self.across.at(day.toordinal())
        return Line((x, top), (x, self.bottom_mm), ink=ink, width_mm=0.3, dash_mm=dash, tells=words)

    def row(self, sort: LifeSort) -> list[Shape]:
        """The marks of a row in order of day, what lasted as lines behind them."""
        entries = [one for one in self.life.entries if one.sort is sort]
        y = _HEAD_MM + (self.rows.index(sort) + 0.5) * self.row_mm
        lasted = [self._lasted(one, one.until, y) for one in entries if one.until]  # each mark tells its own stretch
        marks = [shape for one in bundles(entries, self.across) for shape in _bundle(one, y)]
        return [*lasted, *marks]

    def _lasted(self, entry: LifeEntry, until: date, y_mm: float) -> Shape:
        start, end = (self.across.at(day.toordinal()) for day in (entry.on, until))
        return stretch(start, end, y_mm)


def _bundle(one: Bundle, y_mm: float) -> list[Shape]:
    if len(one.entries) == 1:
        return mark(one.entries[0], (one.x_mm, y_mm), _tells(one.entries[0]))
    return bundle(len(one.entries), (one.x_mm, y_mm), _tells_all(one.entries))


def _tells(entry: LifeEntry) -> str:
    if entry.until and entry.until > entry.on:
        return tr("{day} to {last}: {what}", day=show_day(entry.on), last=show_day(entry.until), what=entry.says)
    return tr("{day}: {what}", day=show_day(entry.on), what=entry.says)


def _tells_all(entries: Sequence[LifeEntry]) -> str:
    """The number, and each in a line of its own; of a great many the first ones, and how many more there are."""
    told, more = entries[:_TOLD_OF_A_BUNDLE], len(entries) - _TOLD_OF_A_BUNDLE
    lines = [tr("{count} entries", count=len(entries)), *(_tells(one) for one in told)]
    if more > 0:
        lines.append(tr_n("and one more, in the history", "and {count} more, in the history", more))
    return "\n".join(lines)


def _row_name(lines: tuple[str, ...], middle_mm: float) -> list[Shape]:
    first = middle_mm + 0.35 * LABEL_MM - (len(lines) - 1) * LEADING_MM / 2
    return [
        Text((_EDGE_MM, first + number * LEADING_MM), line, LABEL_MM, ink=Ink.FAINT)
        for number, line in enumerate(lines)
    ]


def _day_range(life: Life) -> tuple[float, float]:
    """From the first entry to today or what is due, a little wider, and never narrower than two months."""
    days = [life.booked, life.today, *(one.on for one in life.entries), *([life.due] if life.due else [])]
    first, last = min(days).toordinal(), max(days).toordinal()
    margin = max((last - first) * 0.02, (_LEAST_DAYS - (last - first)) / 2, 1.0)
    return max(first - margin, 1.0), min(last + margin, float(_LAST_DAY))


def _describes(life: Life) -> str:
    counts = [(sort, sum(one.sort is sort for one in life.entries)) for sort in LifeSort]
    listed = "; ".join(f"{row_words(sort)}: {count}" for sort, count in counts if count)
    due = tr("Next due {day}.", day=show_day(life.due)) if life.due else tr("Nothing falls due.")
    return tr("From {first} to {today}. {rows}. {due}", first=show_day(life.booked), today=show_day(life.today),
              rows=listed, due=due)  # fmt: skip
