"""Strokes of a hand with a pen, drawn on a page picture. Lengths in millimetres on the sheet."""

import math
from itertools import pairwise
from random import Random

from msgspec import Struct
from PIL import Image, ImageDraw, ImageFilter

Point = tuple[float, float]
Colour = tuple[int, int, int]
_OVER = 2  # dots drawn for each that is kept, so that edges are soft


class Pen(Struct, frozen=True):
    name: str
    colour: Colour
    width_mm: float
    covers: float  # of the paper's light that it takes where it presses fully


def any_pen(rng: Random) -> Pen:
    """One of those that lie in a car."""
    name, colour, thin, thick, covers = rng.choice(_PENS)
    return Pen(name, colour, rng.uniform(thin, thick), covers * rng.uniform(0.9, 1.0))


_PENS = [
    ("black ballpoint", (30, 30, 32), 0.35, 0.6, 0.95),
    ("blue ballpoint", (35, 50, 145), 0.35, 0.6, 0.95),
    ("dark blue ink", (40, 45, 110), 0.4, 0.7, 0.97),
    ("pencil", (70, 70, 72), 0.4, 0.7, 0.8),
    ("felt pen", (20, 20, 22), 0.8, 1.2, 1.0),
    ("red ballpoint", (185, 40, 45), 0.4, 0.65, 0.95),
    ("green pen", (30, 110, 60), 0.45, 0.7, 0.95),
]


class Hand:
    """A hand that holds one pen over one page picture. dots_per_mm: of the picture."""

    def __init__(self, page: Image.Image, dots_per_mm: float, pen: Pen, rng: Random) -> None:
        self.page, self.pen, self.rng = page, pen, rng
        self._scale = dots_per_mm * _OVER

    def stroke(self, points: list[Point], pen: Pen | None = None) -> None:
        """Through the points, with the wobble of a hand and the pressure of a pen."""
        pen = pen or self.pen
        way = self._wobbled(points)
        reach = pen.width_mm * 2
        left, top = min(x for x, _ in way) - reach, min(y for _, y in way) - reach
        width, height = max(x for x, _ in way) + reach - left, max(y for _, y in way) + reach - top
        # whole dots of the page, so that the smaller patch lies where it was drawn
        at = round(left * self._scale / _OVER), round(top * self._scale / _OVER)
        size = math.ceil(width * self._scale / _OVER) * _OVER, math.ceil(height * self._scale / _OVER) * _OVER
        patch = Image.new("L", size, 0)
        draw = ImageDraw.Draw(patch)
        dots = [(x * self._scale - at[0] * _OVER, y * self._scale - at[1] * _OVER) for x, y in way]
        for one, other in pairwise(dots):
            self._piece(draw, one, other, pen)
        self.page.paste(pen.colour, at, patch.reduce(_OVER))

    def dot(self, at: Point, across_mm: float) -> None:
        """A stray dot."""
        around = [(at[0] + self.rng.gauss(0, 0.15), at[1] + self.rng.gauss(0, 0.15)) for _ in range(3)]
        self.stroke(around, Pen(self.pen.name, self.pen.colour, across_mm, self.pen.covers))

    def smudge(self, at: Point, across_mm: float, grey: int) -> None:
        """A dirty finger: no edge, no stroke."""
        size = int(across_mm * 2 * self._scale / _OVER)
        mask = Image.new("L", (size, size), 0)
        draw = ImageDraw.Draw(mask)
        for _ in range(6):
            x, y, r = (
                self.rng.uniform(0.3, 0.7) * size,
                self.rng.uniform(0.3, 0.7) * size,
                self.rng.uniform(0.1, 0.22) * size,
            )
            draw.ellipse((x - r, y - r * 0.6, x + r, y + r * 0.6), fill=self.rng.randint(60, 130))
        mask = mask.filter(ImageFilter.GaussianBlur(size / 16))
        x, y = (round(place * self._scale / _OVER - size / 2) for place in at)
        self.page.paste((grey, grey - 8, grey - 20), (x, y), mask)

    def _wobbled(self, points: list[Point]) -> list[Point]:
        way = [points[0]]
        for (x0, y0), (x1, y1) in pairwise(points):
            steps = max(2, int(math.dist((x0, y0), (x1, y1)) / 0.6))
            bow = self.rng.gauss(0, 0.05) * math.dist((x0, y0), (x1, y1))
            for step in range(1, steps + 1):
                t = step / steps
                off = bow * math.sin(math.pi * t)
                x, y = x0 + (x1 - x0) * t - off * (y1 - y0) * 0.2, y0 + (y1 - y0) * t + off * (x1 - x0) * 0.2
                way.append((x + self.rng.gauss(0, 0.04), y + self.rng.gauss(0, 0.04)))
        return way

    def _piece(self, draw: ImageDraw.ImageDraw, one: Point, other: Point, pen: Pen) -> None:
        width = max(1.0, pen.width_mm * self._scale * self.rng.uniform(0.85, 1.1))
        fill = round(255 * pen.covers * self.rng.uniform(0.82, 1.0))
        draw.line([one, other], fill=fill, width=round(width))
        for x, y in (one, other):
            draw.ellipse((x - width / 2, y - width / 2, x + width / 2, y + width / 2), fill=fill)
