"""How a photo is taken: all that is drawn by lot for one, and which photos a reader has to accept.

`Shot.usable` was written down before anything was read from photos with an odd seed, and is not to be changed to fit
what a reader can do: it says what a member may expect of a photo that looks all right to him.
"""

import math
from random import Random

from msgspec import Struct

_MOST_TILT_DEG = 30.0
_LEAST_DOTS_PER_MM = 4.5
_MOST_BLUR_MM = 0.28
_LEAST_LIGHT = 0.25
_MOST_NOISE_SHARE = 0.08
_MOST_CURL_MM, _MOST_CRUMPLE_MM = 2.0, 0.6
_MOST_GLARE = 70
_LEAST_QUALITY = 35
_MOST_CUT_MM, _MOST_BEYOND_MM = 24, 6


class Shot(Struct, frozen=True):
    """tilt: of the camera, degrees, towards tilt_way; turn: of the page in the picture; fill: share of the picture that
    the page takes; shift: of its middle, as a share of the picture; far: distance of the camera in page heights.

    blur_px, motion_px: of the lens and of the hand; light: of the brightest part; dim: what the far end has of it;
    shadow: share of light that a cast shadow takes; glare: added to each dot, 0 to 255; noise: of each dot, 0 to 255.
    cut: "", "torn" (a corner of the paper is gone), "beyond" (a corner lies outside the picture), "thumb"; on the
    corner `corner` (0 top left, 1 top right with the code, 2 bottom right, 3 bottom left), cut_mm deep.
    """

    size: tuple[int, int]
    tilt: float
    tilt_way: float
    turn: float
    fill: float
    shift: tuple[float, float]
    far: float
    curl_mm: float
    crumple_mm: float
    blur_px: float
    motion_px: float
    light: float
    dim: float
    shadow: float
    glare: float
    noise: float
    cast: tuple[float, float, float]
    quality: int
    cut: str
    corner: int
    cut_mm: float

    @property
    def dots_per_mm(self) -> float:
        """About; of the sheet seen from straight above, turned as it is."""
        across, down = abs(math.cos(math.radians(self.turn))), abs(math.sin(math.radians(self.turn)))
        return self.fill * min(self.size[0] / (210 * across + 297 * down), self.size[1] / (210 * down + 297 * across))

    @property
    def usable(self) -> bool:
        """Whether a reader has to accept it. By these figures alone."""
        blur_mm = math.hypot(self.blur_px, self.motion_px / math.sqrt(12)) / self.dots_per_mm
        darkest = self.light * self.dim * (1 - self.shadow)
        return (
            self.tilt <= _MOST_TILT_DEG
            and self.dots_per_mm >= _LEAST_DOTS_PER_MM
            and blur_mm <= _MOST_BLUR_MM
            and darkest >= _LEAST_LIGHT
            and self.noise <= _MOST_NOISE_SHARE * darkest * 235
            and self.curl_mm <= _MOST_CURL_MM
            and self.crumple_mm <= _MOST_CRUMPLE_MM
            and self.glare <= _MOST_GLARE
            and self.quality >= _LEAST_QUALITY
            and self._shows_enough
        )

    @property
    def _shows_enough(self) -> bool:
        """Not the code's corner, and of another one no more than its mark; beyond the picture lies only bare paper."""
        most = _MOST_BEYOND_MM if self.cut == "beyond" else _MOST_CUT_MM
        return not self.cut or (self.corner != 1 and self.cut_mm <= most)


def any_shot(rng: Random) -> Shot:
    """Mostly photos as they are taken; about one in six has something that may be too much."""
    spoilt = rng.choice(_SPOILS) if rng.random() < 0.17 else ""
    size = rng.choice([(1500, 2000), (1500, 2000), (1800, 2400), (2100, 2800)])
    quarter = rng.choice([0, 0, 90, 180, 270])
    turn = quarter + rng.gauss(0, 4) if rng.random() < 0.85 else rng.uniform(0, 360)
    if quarter in {90, 270} and rng.random() < 0.7:  # mostly the telephone is held as the page lies
        size = size[1], size[0]
    dim = rng.uniform(0.6, 1.0)
    light = rng.uniform(0.2, 0.4) if spoilt == "dark" else rng.choice([rng.uniform(0.75, 1.0), rng.uniform(0.5, 0.8)])
    cut = rng.choice(["torn", "beyond", "thumb"]) if spoilt == "cut" or rng.random() < 0.06 else ""
    return Shot(
        size=size,
        tilt=rng.uniform(30, 45) if spoilt == "tilt" else rng.choice([rng.uniform(0, 12), rng.uniform(0, 30)]),
        tilt_way=rng.uniform(0, 360),
        turn=turn,
        fill=rng.uniform(0.3, 0.6) if spoilt == "small" else rng.uniform(0.8, 0.97),
        shift=(rng.uniform(-0.01, 0.01), rng.uniform(-0.01, 0.01)),
        far=rng.uniform(1.3, 2.2),
        curl_mm=rng.uniform(2.0, 6.0) if spoilt == "curl" else rng.uniform(0.0, 1.8),
        crumple_mm=rng.uniform(0.6, 1.5) if spoilt == "curl" else rng.choice([0.0, 0.0, rng.uniform(0.1, 0.6)]),
        blur_px=rng.uniform(1.5, 4.5) if spoilt == "blur" else rng.uniform(0.5, 1.5),
        motion_px=rng.uniform(4, 14) if spoilt == "blur" else rng.choice([0.0, 0.0, rng.uniform(1, 5)]),
        light=light,
        dim=dim,
        shadow=rng.choice([0.0, 0.0, rng.uniform(0.1, 0.45)]),
        glare=rng.uniform(70, 190) if spoilt == "glare" else rng.choice([0.0, 0.0, 0.0, rng.uniform(20, 70)]),
        noise=rng.uniform(5, 14) if spoilt == "dark" else rng.uniform(1.0, 5.0),
        cast=(rng.uniform(0.9, 1.0), rng.uniform(0.9, 1.0), rng.uniform(0.72, 1.0)),
        quality=rng.randint(20, 40) if spoilt == "blur" else rng.randint(40, 92),
        cut=cut,
        corner=rng.choice([0, 1, 2, 3]) if spoilt == "cut" else rng.choice([0, 2, 3]),
        cut_mm=rng.uniform(20, 60) if spoilt == "cut" else rng.uniform(2, 20),
    )


_SPOILS = ["dark", "tilt", "small", "curl", "blur", "glare", "cut"]


PLAIN = Shot(
    size=(1500, 2000),
    tilt=0.0,
    tilt_way=0.0,
    turn=0.0,
    fill=0.92,
    shift=(0.0, 0.0),
    far=1.8,
    curl_mm=0.0,
    crumple_mm=0.0,
    blur_px=0.6,
    motion_px=0.0,
    light=0.9,
    dim=0.95,
    shadow=0.0,
    glare=0.0,
    noise=1.0,
    cast=(1.0, 1.0, 1.0),
    quality=85,
    cut="",
    corner=0,
    cut_mm=0.0,
)  # a photo without a fault, to be spoilt in one way
