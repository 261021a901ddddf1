"""A made-up world of rusting tubes: what their walls truly are, and what people read of them. It knows no judge.

Everything here is set before any result is looked at and stays as it is; a bar that is missed is mended in the rules.
Lengths in millimetres, times in days since the piece's life began, rates in millimetres a year.

- loss in a year: log-normal, median 0.15, 5 to 95 % from 0.056 to 0.40. Splash rates in print: 0.05 to 0.40, the field
  default 0.15, the worst 1.30.
- loss of the first year under the power law: log-normal, median 0.20, same scatter. ISO 9223: C5 ends, CX begins there.
- exponent of the power law: even, 0.5 to 0.9. ISO 9224: steel 0.523 and 0.575, zinc to 0.873.
- points of one piece: a log-normal factor of scatter 0.3. Own choice; point readings in print vary by 8 to 14 %.
- pits: on a fifth of the pieces; factor log-normal, 3 in the middle, 5 at 90 %: the defaults of one public code.
- gauge on a dressed face: normal, 0.1. The trade claims 0.1, a port code bounds it by 0.2.
- rough face: 0.6 to 2.2 too thick, even. J. JSNDI 53(5).
- gauge not tried on its block: three in ten are set to another steel and read 3 % too thick, as stainless would.
- how often each of these happens: own choice, beside each figure below.
"""

import math
from random import Random

from msgspec import Struct

DAYS_PER_YEAR = 365.25

MEDIAN_RATE, RATE_SCATTER = 0.15, 0.6
MEDIAN_FIRST_YEAR = 0.20
EXPONENTS = (0.5, 0.9)
POINT_SCATTER = 0.3
PIT_SHARE, MEDIAN_PIT, PIT_SCATTER = 0.2, 3.0, math.log(5 / 3) / 1.2816
GAUGE_NOISE = 0.1
ROUGH_OVER = (0.6, 2.2)
UNTRIED_SHARE, MISSET_SHARE, MISSET_FACTOR = 0.15, 0.3, 1.03

USED_SHARE, LONGEST_BEFORE_DAYS = 0.25, 5 * 365  # of the pieces that came in used, and how old they then were
ROUGH_SHARE = 0.15  # of the readings, said to be rough or not said at all
MEMBER_SHARE = 0.2  # of the days on which walls are read; a member's hand is less steady
MEMBER_NOISE, MEMBER_ROUGH_SHARE = 0.2, 0.5
POINT_LEFT_OUT_SHARE = 0.08
CAREFUL_SHARE = 0.5  # of the clubs read every point as they should; a late reading may happen to them too
LATE_SHARE = 0.2
WATCHED_DAYS = 8 * 365


class Process(Struct, frozen=True):
    """How walls go in one run: by a power of time or straight, and whether pits lie where nobody reads."""

    name: str
    power: bool = False
    pits_between: bool = False


LINEAR = Process("straight line")
POWER = Process("power law", power=True)
BETWEEN = Process("straight line, pits between the points", pits_between=True)


class Truth(Struct, frozen=True):
    """The walls of one piece as they truly are."""

    nominal: float
    points: tuple[str, ...]
    rates: tuple[float, ...]  # of each point
    exponent: float
    between: float  # rate of the deepest pit between the points; 0 where there is none

    def wall(self, place: int, day: float) -> float:
        """The wall at a named point."""
        return self._left(self.rates[place], day)

    def thinnest(self, day: float) -> float:
        """The thinnest of the named points."""
        return self._left(max(self.rates), day)

    def thinnest_anywhere(self, day: float) -> float:
        """The thinnest of all, pits between the points too."""
        return self._left(max(*self.rates, self.between), day)

    def _left(self, rate: float, day: float) -> float:
        return max(self.nominal - rate * math.pow(day / DAYS_PER_YEAR, self.exponent), 0.0)


class Read(Struct, frozen=True):
    """One reading as it was written down. rough and tried: None where nobody said."""

    point: str
    typed: str
    rough: bool | None
    tried: bool | None


class Round(Struct, frozen=True):
    """The readings of one day."""

    day: int
    competent: bool
    reads: tuple[Read, ...]

    def is_sound(self, count: int) -> bool:
        """Whether every point was read by a competent person, dressed, with a gauge that was tried."""
        good = all(one.rough is False and one.tried is True for one in self.reads)
        return self.competent and good and len(self.reads) == count


def truth(rng: Random, process: Process, nominal: float, points: tuple[str, ...]) -> Truth:
    """A piece drawn from the world."""
    piece = rng.lognormvariate(math.log(MEDIAN_FIRST_YEAR if process.power else MEDIAN_RATE), RATE_SCATTER)
    rates = [piece * rng.lognormvariate(0.0, POINT_SCATTER) for _ in points]
    between = 0.0
    if rng.random() < PIT_SHARE:
        factor = max(rng.lognormvariate(math.log(MEDIAN_PIT), PIT_SCATTER), 1.0)
        place = rng.randrange(len(points))
        if process.pits_between:
            between = rates[place] * factor
        else:
            rates[place] *= factor
    exponent = rng.uniform(*EXPONENTS) if process.power else 1.0
    return Truth(nominal, points, tuple(rates), exponent, between)


def booked_day(rng: Random) -> int:
    """How old the piece was when it came into the book; most come new."""
    return rng.randrange(1, LONGEST_BEFORE_DAYS) if rng.random() < USED_SHARE else 0


def rounds(rng: Random, piece: Truth, booked: int) -> list[Round]:
    """The days on which somebody read its walls, some late, some sloppy."""
    day = booked + (rng.randrange(0, 60) if rng.random() < 0.7 else rng.randrange(60, 500))
    careful, found = rng.random() < CAREFUL_SHARE, []
    while day < booked + WATCHED_DAYS:
        found.append(sound_round(rng, piece, day, finer=rng.random() < 0.5) if careful else one_round(rng, piece, day))
        day += rng.randrange(420, 900) if rng.random() < LATE_SHARE else rng.randrange(120, 420)
    return found


def one_round(rng: Random, piece: Truth, day: int) -> Round:
    """The readings of one day as the world has them: sloppy at times."""
    competent = rng.random() >= MEMBER_SHARE
    untried = rng.random() < UNTRIED_SHARE
    factor = MISSET_FACTOR if untried and rng.random() < MISSET_SHARE else 1.0
    tried = rng.choice([None, False]) if untried else True
    finer = rng.random() < 0.5
    reads = []
    for place, point in enumerate(piece.points):
        if rng.random() < POINT_LEFT_OUT_SHARE:
            continue
        rough = rng.random() < (ROUGH_SHARE if competent else MEMBER_ROUGH_SHARE)
        noise = rng.gauss(0.0, GAUGE_NOISE if competent else MEMBER_NOISE)
        over = rng.uniform(*ROUGH_OVER) if rough else 0.0
        shown = max(piece.wall(place, day) * factor + noise + over, 0.0)
        said = rng.choice([True, True, None]) if rough else False
        reads.append(Read(point, typed(shown, finer=finer), said, tried))
    return Round(day, competent, tuple(reads))


def sound_round(rng: Random, piece: Truth, day: int, *, finer: bool) -> Round:
    """Every point read as it should be: dressed, by a competent person, with a gauge tried on its block."""
    reads = tuple(
        Read(point, sound_reading(rng, piece, place, day, finer=finer), False, True)
        for place, point in enumerate(piece.points)
    )
    return Round(day, True, reads)


def sound_reading(rng: Random, piece: Truth, place: int, day: float, *, finer: bool) -> str:
    """One reading as it should be, as typed."""
    return typed(max(piece.wall(place, day) + rng.gauss(0.0, GAUGE_NOISE), 0.0), finer=finer)


def typed(shown: float, *, finer: bool) -> str:
    """What the gauge shows: tenths, or hundredths of a millimetre."""
    return f"{shown:.2f} mm" if finer else f"{shown:.1f} mm"
