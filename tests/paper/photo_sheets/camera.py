"""A photo of a page picture, made from a `Shot`. Pillow alone; every figure comes from the shot and one seeded die."""

import math
from io import BytesIO
from random import Random
from statistics import NormalDist

from PIL import Image, ImageChops, ImageDraw, ImageFilter

from tests.paper.photo_sheets.clean_sheet import DOTS_PER_MM
from tests.paper.photo_sheets.pens import Point
from tests.paper.photo_sheets.shots import Shot

_CELL = 40  # dots of the photo that are moved together
_QUANTILES = [NormalDist().inv_cdf((value + 0.5) / 256) for value in range(256)]

Matrix = tuple[tuple[float, float, float], ...]


def photo_of(page: Image.Image, shot: Shot, rng: Random) -> bytes:
    """The photo as JPEG. page: in colour, DOTS_PER_MM to the millimetre of its paper."""
    paper = page.width / DOTS_PER_MM, page.height / DOTS_PER_MM
    shaded = _creased(page, shot, rng)
    mask = _paper_mask(paper, shot)
    mesh = _mesh(shot, paper, rng)

    def seen_through(picture: Image.Image, beyond: int | tuple[int, int, int]) -> Image.Image:
        """The picture as the camera sees it; beyond: what lies around it."""
        how = Image.Transform.MESH, mesh, Image.Resampling.BILINEAR
        return picture.transform(shot.size, *how, fillcolor=beyond)

    seen = _table(shot.size, rng)
    seen.paste(seen_through(shaded, (235, 235, 232)), (0, 0), seen_through(mask, 0))
    if shot.cut == "thumb":
        _thumb(seen, _View(shot, paper).dot(*_corner_mm(shot, paper)), shot, rng)
    lit = _lit(seen, shot, rng)
    return _jpeg(_noisy(_blurred(lit, shot, rng), shot, rng), shot)


class _View:
    """The sheet's plane before the camera."""

    def __init__(self, shot: Shot, paper: Point) -> None:
        self._paper = paper
        wide, high = paper
        way, tilt, turn = (math.radians(angle) for angle in (shot.tilt_way, shot.tilt, shot.turn))
        across = _turned_about(way, tilt, (math.cos(turn), math.sin(turn), 0.0))
        down = _turned_about(way, tilt, (-math.sin(turn), math.cos(turn), 0.0))
        far = shot.far * high
        self._plane: Matrix = tuple((across[axis], down[axis], far if axis == 2 else 0.0) for axis in range(3))
        corners = [self._flat(x, y) for x in (0, wide) for y in (0, high)]
        left, right = min(x for x, _ in corners), max(x for x, _ in corners)
        top, bottom = min(y for _, y in corners), max(y for _, y in corners)
        width, height = shot.size
        self._zoom = shot.fill * min(width / (right - left), height / (bottom - top))
        self._middle = (left + right) / 2, (top + bottom) / 2
        self._to = width * (0.5 + shot.shift[0]), height * (0.5 + shot.shift[1])
        if shot.cut == "beyond":
            self._push_out(shot)
        self._back = _inverse(self._plane)

    def _push_out(self, shot: Shot) -> None:
        """Move the page until its corner lies cut_mm beyond the nearest edge of the picture."""
        x, y = self.dot(*_corner_mm(shot, self._paper))
        width, height = shot.size
        beyond = shot.cut_mm * self._zoom / (shot.far * self._paper[1]) * 0.75
        to_x = -beyond if x < width / 2 else width + beyond
        to_y = -beyond if y < height / 2 else height + beyond
        self._to = self._to[0] + to_x - x, self._to[1] + to_y - y

    def _flat(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        x, y = x_mm - self._paper[0] / 2, y_mm - self._paper[1] / 2
        a, b, c = (row[0] * x + row[1] * y + row[2] for row in self._plane)
        return a / c, b / c

    def dot(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        a, b = self._flat(x_mm, y_mm)
        return (a - self._middle[0]) * self._zoom + self._to[0], (b - self._middle[1]) * self._zoom + self._to[1]

    def place(self, u: float, v: float) -> tuple[float, float]:
        """What place of the sheet (mm) a dot of the photo shows."""
        ray = (u - self._to[0]) / self._zoom + self._middle[0], (v - self._to[1]) / self._zoom + self._middle[1], 1.0
        a, b, c = (sum(row[k] * ray[k] for k in range(3)) for row in self._back)
        return a / c + self._paper[0] / 2, b / c + self._paper[1] / 2


def _turned_about(way: float, by: float, vector: tuple[float, float, float]) -> tuple[float, float, float]:
    """A vector turned about an axis that lies in the plane of the picture."""
    x, y, _ = vector
    ax, ay = math.cos(way), math.sin(way)
    along = x * ax + y * ay
    side = y * ax - x * ay
    return (
        along * ax - side * ay * math.cos(by),
        along * ay + side * ax * math.cos(by),
        side * math.sin(by),
    )


def _inverse(m: Matrix) -> Matrix:
    (a, b, c), (d, e, f), (g, h, i) = m
    det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
    rows = (
        (e * i - f * h, c * h - b * i, b * f - c * e),
        (f * g - d * i, a * i - c * g, c * d - a * f),
        (d * h - e * g, b * g - a * h, a * e - b * d),
    )
    return tuple((x / det, y / det, z / det) for x, y, z in rows)


def _mesh(shot: Shot, paper: Point, rng: Random) -> list[tuple[tuple[int, int, int, int], tuple[float, ...]]]:
    """For each cell of the photo the four corners of what it shows of the page, curl and creases and all."""
    view, bend = _View(shot, paper), _Bend(shot, paper, rng)
    width, height = shot.size
    columns, lines = -(-width // _CELL), -(-height // _CELL)
    grid = {}
    for column in range(columns + 1):
        for line in range(lines + 1):
            x, y = view.place(min(column * _CELL, width), min(line * _CELL, height))
            dx, dy = bend.at(x, y)
            grid[column, line] = (x + dx) * DOTS_PER_MM, (y + dy) * DOTS_PER_MM
    mesh = []
    for column in range(columns):
        for line in range(lines):
            box = column * _CELL, line * _CELL, min((column + 1) * _CELL, width), min((line + 1) * _CELL, height)
            corners = (grid[column, line], grid[column, line + 1], grid[column + 1, line + 1], grid[column + 1, line])
            mesh.append((box, tuple(value for corner in corners for value in corner)))
    return mesh


class _Bend:
    """How far paper that is not flat shows its places elsewhere, in millimetres."""

    def __init__(self, shot: Shot, paper: Point, rng: Random) -> None:
        self._paper = paper
        self._waves = [(rng.uniform(-1, 1) * shot.curl_mm, rng.uniform(0.5, 1.2), rng.uniform(0, 1)) for _ in range(3)]
        self._creases = [
            [(rng.gauss(0, shot.crumple_mm / 2), rng.gauss(0, shot.crumple_mm / 2)) for _ in range(14)]
            for _ in range(19)
        ]

    def at(self, x: float, y: float) -> tuple[float, float]:
        across, down = x / self._paper[0], y / self._paper[1]
        (a, often_a, late_a), (b, often_b, late_b), (c, often_c, late_c) = self._waves
        dx = a * math.sin(math.pi * (often_a * down + late_a)) + 0.4 * c * math.sin(
            math.pi * (2 * often_c * down + late_c)
        )
        dy = b * math.sin(math.pi * (often_b * across + late_b))
        crease = self._crease(min(max(across, 0), 0.999) * 13, min(max(down, 0), 0.999) * 18)
        return dx + crease[0], dy + crease[1]

    def _crease(self, across: float, down: float) -> tuple[float, float]:
        column, line = int(across), int(down)
        right, low = across - column, down - line
        corners = (
            (self._creases[line][column], (1 - right) * (1 - low)),
            (self._creases[line][column + 1], right * (1 - low)),
            (self._creases[line + 1][column], (1 - right) * low),
            (self._creases[line + 1][column + 1], right * low),
        )
        return sum(at[0] * share for at, share in corners), sum(at[1] * share for at, share in corners)


def _creased(page: Image.Image, shot: Shot, rng: Random) -> Image.Image:
    """Crumpled paper has lighter and darker facets, and a folded sheet a dark line."""
    if not shot.crumple_mm:
        return page
    deep = 90 * shot.crumple_mm
    facets = Image.new("L", (14, 19))
    facets.putdata([round(255 - rng.uniform(0, deep)) for _ in range(14 * 19)])
    light = facets.resize(page.size, Image.Resampling.BILINEAR)
    draw = ImageDraw.Draw(light)
    for _ in range(rng.randint(0, 3)):
        ends = [(rng.uniform(0, page.width), rng.choice([0, page.height])) for _ in range(2)]
        draw.line(ends, fill=round(255 - rng.uniform(20, 60)), width=rng.randint(2, 5))
    return ImageChops.multiply(page, Image.merge("RGB", [light.filter(ImageFilter.GaussianBlur(1))] * 3))


def _corner_mm(shot: Shot, paper: Point) -> Point:
    wide, high = paper
    return (0.0, wide, wide, 0.0)[shot.corner], (0.0, 0.0, high, high)[shot.corner]


def _paper_mask(paper: Point, shot: Shot) -> Image.Image:
    mask = Image.new("L", (round(paper[0] * DOTS_PER_MM), round(paper[1] * DOTS_PER_MM)), 255)
    if shot.cut == "torn":
        x, y = (value * DOTS_PER_MM for value in _corner_mm(shot, paper))
        by = 1.4 * shot.cut_mm * DOTS_PER_MM
        along, up = (by if x == 0 else -by), (by if y == 0 else -by)
        ImageDraw.Draw(mask).polygon([(x, y), (x + along, y), (x, y + up)], fill=0)
    return mask


def _table(size: tuple[int, int], rng: Random) -> Image.Image:
    """Wood, stone or cloth: a colour, large patches, and lines."""
    colour = [rng.randint(35, 170) for _ in range(3)]
    patches = Image.new("L", (24, 32))
    patches.putdata([rng.randint(90, 165) for _ in range(24 * 32)])
    grain = patches.resize(size, Image.Resampling.BICUBIC)
    draw = ImageDraw.Draw(grain)
    for _ in range(rng.randint(0, 25)):
        x = rng.randint(-200, size[0])
        draw.line([(x, 0), (x + rng.randint(-80, 200), size[1])], fill=rng.randint(60, 190), width=rng.randint(1, 7))
    return Image.merge("RGB", [grain.point([min(255, value * one // 128) for value in range(256)]) for one in colour])


def _thumb(seen: Image.Image, at: tuple[float, float], shot: Shot, rng: Random) -> None:
    """A thumb that holds the corner down, as long as it reaches into the page."""
    reach = shot.cut_mm * shot.dots_per_mm
    mask = Image.new("L", seen.size, 0)
    ImageDraw.Draw(mask).ellipse((at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach), fill=255)
    tone = rng.choice([(214, 165, 140), (150, 100, 75), (90, 60, 45)])
    seen.paste(tone, (0, 0), mask.filter(ImageFilter.GaussianBlur(2)))


def _lit(seen: Image.Image, shot: Shot, rng: Random) -> Image.Image:
    """A light that falls off, a shadow across, a lamp that shines back."""
    width, height = shot.size[0] // 5, shot.size[1] // 5
    along = rng.uniform(0, 360)
    fall = Image.linear_gradient("L").rotate(along, Image.Resampling.BILINEAR).crop((50, 50, 206, 206))
    fall = fall.point([round(255 * shot.light * (shot.dim + (1 - shot.dim) * value / 255)) for value in range(256)])
    light = fall.resize((width, height), Image.Resampling.BICUBIC)
    if shot.shadow:
        mask = Image.new("L", (width, height), 0)
        x, y, lean = rng.uniform(0.2, 0.8) * width, rng.uniform(0.2, 0.8) * height, rng.uniform(-1, 1) * width
        ImageDraw.Draw(mask).polygon(
            [(x - lean, 0), (x + lean, height), (rng.choice([-width, 2 * width]), y)], fill=255
        )
        mask = mask.filter(ImageFilter.GaussianBlur(rng.uniform(0.5, 12)))
        light = Image.composite(light.point([round(value * (1 - shot.shadow)) for value in range(256)]), light, mask)
    whole = light.resize(shot.size, Image.Resampling.BICUBIC)
    lit = ImageChops.multiply(
        seen, Image.merge("RGB", [whole.point([round(v * c) for v in range(256)]) for c in shot.cast])
    )
    return ImageChops.add(lit, Image.merge("RGB", [_glare(shot, rng)] * 3)) if shot.glare else lit


def _glare(shot: Shot, rng: Random) -> Image.Image:
    width, height = shot.size
    side = round(rng.uniform(0.3, 0.7) * width)
    spot = ImageChops.invert(Image.radial_gradient("L")).resize((side, side))
    spot = spot.point([round(shot.glare * (value / 255) ** 1.5) for value in range(256)])
    glare = Image.new("L", shot.size, 0)
    glare.paste(
        spot, (round(rng.uniform(0.1, 0.9) * width - side / 2), round(rng.uniform(0.1, 0.9) * height - side / 2))
    )
    return glare


def _blurred(lit: Image.Image, shot: Shot, rng: Random) -> Image.Image:
    soft = lit.filter(ImageFilter.GaussianBlur(shot.blur_px))
    if shot.motion_px < 1:
        return soft
    along, steps = rng.uniform(0, math.pi), max(3, round(shot.motion_px))
    moved = soft
    for step in range(1, steps):
        by = shot.motion_px * step / (steps - 1)
        factors = (1, 0, by * math.cos(along), 0, 1, by * math.sin(along))
        later = soft.transform(soft.size, Image.Transform.AFFINE, factors, Image.Resampling.BILINEAR)
        moved = Image.blend(moved, later, 1 / (step + 1))
    return moved


def _noisy(seen: Image.Image, shot: Shot, rng: Random) -> Image.Image:
    bands = []
    for band in seen.split():
        grain = Image.frombytes("L", seen.size, rng.randbytes(seen.width * seen.height))
        grain = grain.point([min(255, max(0, round(128 + shot.noise * q))) for q in _QUANTILES])
        bands.append(ImageChops.add(band, grain, 1, -128))
    return Image.merge("RGB", bands)


def _jpeg(seen: Image.Image, shot: Shot) -> bytes:
    out = BytesIO()
    seen.save(out, "JPEG", quality=shot.quality)
    return out.getvalue()
