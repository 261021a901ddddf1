"""Labels beside points, placed so that none lies on another or leaves its frame."""

from itertools import pairwise

from inspector.drawings.extent import Box, extent
from inspector.drawings.shapes import Anchor, Ink, Line, Point, Polyline, Text
from inspector.drawings.wording import LABEL_MM

_SPOTS = (
    (Anchor.MIDDLE, 0.0, -1.8),
    (Anchor.MIDDLE, 0.0, 3.8),
    (Anchor.START, 1.7, 1.0),
    (Anchor.END, -1.7, 1.0),
    (Anchor.START, 1.0, -1.8),
    (Anchor.END, -1.0, -1.8),
    (Anchor.START, 1.0, 3.8),
    (Anchor.END, -1.0, 3.8),
    (Anchor.MIDDLE, 0.0, -4.8),
    (Anchor.MIDDLE, 0.0, 6.8),
    (Anchor.START, 3.0, -4.0),
    (Anchor.END, -3.0, -4.0),
    (Anchor.START, 3.0, 6.0),
    (Anchor.END, -3.0, 6.0),
)


_STEP_MM = 1.0


class Labels:
    """Finds free room for labels, first come first served; the frame and all boxes in mm."""

    def __init__(self, frame: Box) -> None:
        self._frame = frame
        self._taken: list[Box] = []

    def keep_clear(self, box: Box) -> None:
        """Let no later label lie on this box."""
        self._taken.append(box)

    def keep_line_clear(self, line: Line) -> None:
        """Let no later label lie on this slanting line."""
        (x, y), (to_x, to_y) = line.start, line.end
        steps = max(int(max(abs(to_x - x), abs(to_y - y)) / _STEP_MM), 1)
        for step in range(steps):
            before, after = step / steps, (step + 1) / steps
            self.keep_clear(_between(line, before, after))

    def keep_run_clear(self, run: Polyline) -> None:
        """Let no later label lie on this run of lines."""
        for start, end in pairwise(run.points):
            self.keep_line_clear(Line(start, end, width_mm=run.width_mm))

    def take(self, label: Text) -> list[Text]:
        """The label itself where its own place is free, else nothing."""
        if not self._is_free(extent(label)):
            return []
        self._taken.append(extent(label))
        return [label]

    def place(self, words: str, beside: Point, *, bold: bool = False, ink: Ink = Ink.INK) -> Text | None:
        """The label in the first free spot beside the point; None where there is no room."""
        for anchor, across, down in _SPOTS:
            at = (beside[0] + across, beside[1] + down)
            label = Text(at, words, LABEL_MM, anchor=anchor, bold=bold, ink=ink)
            if self.take(label):
                return label
        return None

    def _is_free(self, box: Box) -> bool:
        return self._frame.holds(box) and not any(box.overlaps(other) for other in self._taken)


def _between(line: Line, before: float, after: float) -> Box:
    """The box of a part of a line, from one share of its length to another."""
    (x, y), (to_x, to_y) = line.start, line.end
    start = (x + (to_x - x) * before, y + (to_y - y) * before)
    end = (x + (to_x - x) * after, y + (to_y - y) * after)
    return extent(Line(start, end, width_mm=line.width_mm))
