"""The wall of a tube over the years: what was read, what may be relied on, and when it comes down to its limit."""

from datetime import date
from types import MappingProxyType

from inspector.drawings import wall_span
from inspector.drawings.axes import Scale, day_ticks, length_ticks
from inspector.drawings.extent import Box, extent
from inspector.drawings.labels import Labels
from inspector.drawings.margin import MarginLabel, margin_words
from inspector.drawings.shapes import Anchor, Circle, Drawing, Ink, Line, Polyline, RoundedRect, Shape, Text
from inspector.drawings.wall_band import band_shapes
from inspector.drawings.wall_words import (
    How,
    chart_note,
    end_words,
    in_words,
    limit_words,
    now_words,
    point_words,
    rate_text,
)
from inspector.drawings.wording import LABEL_MM, LEADING_MM, length_text, note
from inspector.gear.verdict import WallForecast, WallPoint
from inspector.language import show_day, tr
from inspector.units import System

_WIDTH_MM = 88.0
_LEFT_MM, _RIGHT_MM = 11.5, 20.0
_MOST_NOTE_LINES = 8
_PLOT = Box(_LEFT_MM, 2.0, _WIDTH_MM - _RIGHT_MM, 41.0)
_NOTE_TOP_MM = _PLOT.bottom + 5.2
_DASH = (1.4, 0.9)


def wall_history(
    wall: WallForecast, on: date, system: System = System.METRIC, how: How = MappingProxyType({})
) -> Drawing:
    """Wall against date, 88 mm wide, with any number of readings; `on` is the day the wall was judged.

    how: how each reading was taken and by whom, in words, told on hover.
    """
    chart = _Chart(wall, on, system, how)
    said = note(chart_note(wall, system), 0.5, _NOTE_TOP_MM, _WIDTH_MM - 1.0, _MOST_NOTE_LINES)
    height = _NOTE_TOP_MM + len(said) * LEADING_MM + 0.8
    shapes = (*chart.ground(), *chart.lines(), *chart.points(), *said)
    return Drawing(_WIDTH_MM, height, shapes, tr("The wall over the years"), in_words(wall, system))


class _Chart:
    """One chart in the making."""

    def __init__(self, wall: WallForecast, on: date, system: System, how: How) -> None:
        self.wall, self.on, self.system, self.how = wall, on, system, how
        self.first, self.last = wall_span.day_range(wall, on)
        self.high_m = wall_span.highest_m(wall)
        self.across = Scale(self.first, self.last, _PLOT.left, _PLOT.right)
        self.down = Scale(0.0, self.high_m, _PLOT.bottom, _PLOT.top)
        self.labels = Labels(_PLOT)

    def ground(self) -> list[Shape]:
        """Axes with ticks, and what lies below the limit as a band."""
        limit = self.down.at(self.wall.required_m)
        least = length_text(self.wall.required_m, self.system)
        said = tr("Below {wall} the piece is not used: {why}", wall=least, why=self.wall.required_because)
        corner = (_PLOT.left, limit)
        band = RoundedRect(corner, _PLOT.width, _PLOT.bottom - limit, ink=None, fill=Ink.BAND, tells=said)
        base = Line((_PLOT.left, _PLOT.bottom), (_PLOT.right, _PLOT.bottom), ink=Ink.FAINT)
        sure = band_shapes(self.wall.band, self.across, self.down, _PLOT, self.system)
        for shape in sure:
            if isinstance(shape, Polyline):  # the line in the middle of the band; its face may lie under words
                self.labels.keep_run_clear(shape)
        return [band, *sure, *self._length_ticks(), base, *self._day_ticks()]

    def _length_ticks(self) -> list[Shape]:
        shapes: list[Shape] = []
        for tick in length_ticks(self.high_m, self.system):
            y = self.down.at(tick.value)
            shapes.append(Line((_PLOT.left, y), (_PLOT.right, y), ink=Ink.HAIR, width_mm=0.1))
            at = (_PLOT.left - 1.0, y + 0.35 * LABEL_MM)
            shapes.append(Text(at, tick.words, LABEL_MM, anchor=Anchor.END, ink=Ink.FAINT))
        return shapes

    def _day_ticks(self) -> list[Shape]:
        room = Labels(Box(0.0, _PLOT.bottom, _WIDTH_MM, _NOTE_TOP_MM))
        shapes: list[Shape] = []
        for tick in day_ticks(self.first, self.last):
            x = self.across.at(tick.value)
            shapes.append(Line((x, _PLOT.bottom), (x, _PLOT.bottom + 1.0), ink=Ink.FAINT))
            words = Text((x, _PLOT.bottom + 4.2), tick.words, LABEL_MM, anchor=Anchor.MIDDLE, ink=Ink.FAINT)
            shapes.extend(room.take(words))
        return shapes

    def lines(self) -> list[Shape]:
        """As new, the limit, and the wall's own line until now and ahead."""
        return [*self._level_lines(), *self._level_words(), *self._stretches()]

    def _level_lines(self) -> list[Shape]:
        new, limit = self.down.at(self.wall.nominal_m), self.down.at(self.wall.required_m)
        as_new = tr("Wall as new: {wall}", wall=length_text(self.wall.nominal_m, self.system))
        must = limit_words(self.wall, self.system)
        lines = [
            Line((_PLOT.left, new), (_PLOT.right, new), ink=Ink.FAINT, dash_mm=(0.5, 0.7), tells=as_new),
            Line((_PLOT.left, limit), (_PLOT.right, limit), ink=Ink.LIMIT, width_mm=0.5, tells=must),
        ]
        for line in lines:
            self.labels.keep_clear(extent(line))
        return list(lines)

    def _level_words(self) -> list[Shape]:
        """The words of both lines in the right margin, pushed apart where the lines lie close."""
        wall, system = self.wall, self.system
        new = MarginLabel((tr("as new"), length_text(wall.nominal_m, system)), self.down.at(wall.nominal_m), Ink.FAINT)
        words = (tr("must keep"), length_text(wall.required_m, system))
        limit = MarginLabel(words, self.down.at(wall.required_m), Ink.LIMIT)
        return margin_words(new, limit, Box(_PLOT.right + 1.2, 0.0, _WIDTH_MM - 0.3, _PLOT.bottom + 1.5))

    def _stretches(self) -> list[Shape]:
        wall, on = self.wall, self.on
        now = tr("Estimated: no reading stands behind it") if wall.estimated else tr("What may be relied on")
        rate = tr("At {rate} a year: {why}", rate=rate_text(wall, self.system), why=wall.rate_because)
        found = (
            (wall_span.past(wall), Ink.FAINT, _DASH, tr("At the long-term rate from new")),
            (wall_span.until_now(wall, on), Ink.INK, _DASH if wall.estimated else (), now),
            (wall_span.ahead(wall, on), Ink.INK, _DASH, rate),
        )
        shapes = [self._stretch(one, ink, dash, tells) for one, ink, dash, tells in found if one]
        for shape in shapes:
            self.labels.keep_line_clear(shape)
        return list(shapes)

    def _stretch(self, one: wall_span.Stretch, ink: Ink, dash: tuple[float, ...], tells: str) -> Line:
        start = (self.across.at(one.from_day), self.down.at(max(one.from_m, 0.0)))
        end = (self.across.at(one.to_day), self.down.at(max(one.to_m, 0.0)))
        return Line(start, end, ink=ink, width_mm=0.35, dash_mm=dash, tells=tells)

    def points(self) -> list[Shape]:
        """The readings, the wall now and the day it reaches the limit; the latest is labelled first."""
        history = sorted(self.wall.history, key=lambda point: point.on)
        dots = [self._dot(point) for point in history]
        now = self._now()
        for mark in (*dots, now):
            self.labels.keep_clear(extent(mark))
        named = list(zip(reversed(history), reversed(dots), strict=True))
        words = [*self._values(named[:1]), *self._now_words(now), *self._end_words(), *self._values(named[1:])]
        return [*dots, now, *words]

    def _values(self, named: list[tuple[WallPoint, Circle]]) -> list[Shape]:
        """The values as typed, beside their dots where there is room; every dot tells its own on hover."""
        return [label for point, dot in named for label in _some(self.labels.place(point.as_typed, dot.centre))]

    def _dot(self, point: WallPoint) -> Circle:
        at = (self.across.at(point.on.toordinal()), self.down.at(max(point.read_m, 0.0)))
        said = point_words(point, self.how.get(point, ""))
        if point.upper_bound:
            return Circle(at, 0.75, ink=Ink.INK, width_mm=0.3, fill=Ink.PAPER, tells=said)
        return Circle(at, 0.85, ink=Ink.PAPER, width_mm=0.25, fill=Ink.INK, tells=said)

    def _now(self) -> Circle:
        at = (self.across.at(self.on.toordinal()), self.down.at(max(self.wall.wall_now_m, 0.0)))
        said = now_words(self.wall, self.on, self.system)
        return Circle(at, 1.0, ink=Ink.INK, width_mm=0.35, fill=Ink.PAPER, tells=said)

    def _now_words(self, now: Circle) -> list[Shape]:
        said = tr("estimated {wall}") if self.wall.estimated else tr("now {wall}")
        words = said.format(wall=length_text(self.wall.wall_now_m, self.system))
        return _some(self.labels.place(words, now.centre, bold=True))

    def _end_words(self) -> list[Shape]:
        """A mark where the line meets the limit, with its day; none where it does so beyond the chart."""
        one, day = wall_span.ahead(self.wall, self.on), self.wall.reaches_required_on
        if one is None or day is None or one.to_m > self.wall.required_m * 1.001:
            return []
        at = (self.across.at(one.to_day), self.down.at(self.wall.required_m))
        said = end_words(self.wall, day, self.system)
        mark = Circle(at, 0.9, ink=Ink.LIMIT, width_mm=0.4, fill=Ink.PAPER, tells=said)
        self.labels.keep_clear(extent(mark))
        return [mark, *_some(self.labels.place(show_day(day), at, ink=Ink.LIMIT))]


def _some(label: Text | None) -> list[Shape]:
    return [label] if label else []
