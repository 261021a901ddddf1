"""What a member answers on a sheet, and how his hand writes it down. Each row is a box for good and one for fault.

The shares are what a sheet shows that was filled in outdoors: mostly clean ticks, a correction on every second page,
now and then dirt, a dot where the pen rested, a line that slipped.
"""

import math
from collections.abc import Callable
from random import Random

from msgspec import Struct

from inspector.gear.photo_read import Answer
from inspector.gear.sheet_layout import Spot
from tests.paper.photo_sheets.pens import Hand, Point

Row = tuple[Spot, Spot]


class Told(Struct, frozen=True):
    """What a row truly says. UNSURE: nobody could tell. good, fault: whether there is a mark in that box."""

    answer: Answer
    good: bool
    fault: bool
    how: str


_SHARES: list[tuple[float, Answer, str]] = [
    (0.74, Answer.GOOD, "marked"),
    (0.14, Answer.FAULT, "marked"),
    (0.09, Answer.NONE, "left"),
    (0.01, Answer.GOOD, "corrected"),
    (0.01, Answer.FAULT, "corrected"),
    (0.005, Answer.UNSURE, "both"),
    (0.005, Answer.UNSURE, "taken back"),
]
_DOT, _SMUDGE, _SLIP = 0.01, 0.005, 0.002


def tick_rows(hand: Hand, rows: list[Row], rng: Random) -> list[Told]:
    """Answer every row."""
    sloppy = rng.choice([0.25, 0.4, 0.6, 0.8])  # how far from the middle this hand sets its marks, millimetres
    told = []
    for row in rows:
        _, answer, how = rng.choices(_SHARES, [share for share, _, _ in _SHARES])[0]
        told.append(_answer(hand, row, answer, how, sloppy, rng))
        _stray(hand, row, told[-1], rng)
    return told


def _answer(hand: Hand, row: Row, answer: Answer, how: str, sloppy: float, rng: Random) -> Told:
    good, fault = row
    if how == "left":
        return Told(answer, good=False, fault=False, how=how)
    if how == "marked":
        kind = rng.choices(_KINDS, [0.52, 0.33, 0.09, 0.06])[0]
        kind(hand, _about(good if answer is Answer.GOOD else fault, sloppy, rng), rng)
        return Told(answer, good=answer is Answer.GOOD, fault=answer is Answer.FAULT, how=kind.__name__)
    if how == "both":
        for spot in row:
            rng.choice([tick, cross])(hand, _about(spot, sloppy, rng), rng)
        return Told(answer, good=True, fault=True, how=how)
    if how == "taken back":
        spot = rng.choice(row)
        filled(hand, spot.middle, rng)
        return Told(answer, good=spot is good, fault=spot is fault, how=how)
    right, wrong = (good, fault) if answer is Answer.GOOD else (fault, good)
    tick(hand, _about(wrong, sloppy, rng), rng)
    filled(hand, wrong.middle, rng)
    rng.choice([tick, cross])(hand, _about(right, sloppy, rng), rng)
    ring(hand, right.middle, rng)
    return Told(answer, good=True, fault=True, how=how)


def _stray(hand: Hand, row: Row, told: Told, rng: Random) -> None:
    for spot, marked in zip(row, (told.good, told.fault), strict=True):
        if not marked and rng.random() < _DOT:
            x, y = spot.middle
            hand.dot((x + rng.uniform(-2, 2), y + rng.uniform(-2, 2)), rng.uniform(0.5, 1.3))
    if rng.random() < _SMUDGE:
        x, y = rng.choice(row).middle
        hand.smudge((x + rng.gauss(0, 3), y + rng.gauss(0, 2)), rng.uniform(3, 8), rng.randint(90, 150))
    if rng.random() < _SLIP:
        x, y = rng.choice(row).middle
        along = rng.uniform(0, math.tau)
        far = rng.uniform(4, 15)
        off = rng.gauss(0, 3)
        hand.stroke([(x + off, y + off), (x + off + far * math.cos(along), y + off + far * math.sin(along))])


def _about(spot: Spot, sloppy: float, rng: Random) -> Point:
    x, y = spot.middle
    return x + max(-1.6, min(1.6, rng.gauss(0, sloppy))), y + max(-1.6, min(1.6, rng.gauss(0, sloppy)))


def tick(hand: Hand, at: Point, rng: Random) -> None:
    """It may begin outside the box and ends beyond it."""
    x, y = at
    size = rng.uniform(0.75, 1.35)

    def near(value: float) -> float:
        return value * size + rng.gauss(0, 0.25)

    hand.stroke([(x + near(-1.7), y + near(-0.1)), (x + near(-0.5), y + near(1.6)), (x + near(2.8), y + near(-2.4))])


def cross(hand: Hand, at: Point, rng: Random) -> None:
    x, y = at
    half = 2.0 * rng.uniform(0.75, 1.3)

    def near(value: float) -> float:
        return value + rng.gauss(0, 0.25)

    hand.stroke([(near(x - half), near(y - half)), (near(x + half), near(y + half))])
    hand.stroke([(near(x + half), near(y - half)), (near(x - half), near(y + half))])


def slash(hand: Hand, at: Point, rng: Random) -> None:
    x, y = at
    half = 2.0 * rng.uniform(0.85, 1.3)
    hand.stroke([(x - half + rng.gauss(0, 0.25), y + half + rng.gauss(0, 0.25)),
                 (x + half + rng.gauss(0, 0.25), y - half + rng.gauss(0, 0.25))])  # fmt: skip


def scribble(hand: Hand, at: Point, rng: Random) -> None:
    """To and fro, not filled."""
    x, y = at
    half, turns = rng.uniform(1.6, 2.4), rng.randint(3, 5)
    way = [(x - half, y + rng.uniform(-1, 1))]
    for turn in range(turns):
        way.append((x - half + 2 * half * (turn + 0.5) / turns, y + (half if turn % 2 else -half) + rng.gauss(0, 0.3)))
    hand.stroke(way)


def filled(hand: Hand, at: Point, rng: Random) -> None:
    """As the sheet asks for: lines so close that no paper is left between them, frame to frame."""
    x, y = at
    half, pitch = 2.75, max(0.25, hand.pen.width_mm * 0.7)
    level, way = y - half + 0.1, []
    side = -1
    while level < y + half:
        way.append((x + side * (half - 0.1 + rng.gauss(0, 0.2)), level + rng.gauss(0, 0.06)))
        side, level = -side, level + pitch
    hand.stroke(way)
    hand.stroke(way)


def ring(hand: Hand, at: Point, rng: Random) -> None:
    """Round the frame, its end past its beginning."""
    x, y = at[0] + rng.gauss(0, 0.25), at[1] + rng.gauss(0, 0.25)
    across, down = rng.uniform(4.4, 5.4), rng.uniform(4.2, 5.0)
    begin, turn = rng.uniform(0, math.tau), rng.choice([-1, 1])
    whole = math.tau + rng.uniform(0.05, 0.5)
    way = []
    for step in range(33):
        angle = begin + turn * whole * step / 32
        drift = 1 + 0.06 * step / 32
        way.append((x + across * drift * math.cos(angle), y + down * drift * math.sin(angle)))
    hand.stroke(way)


_KINDS: list[Callable[[Hand, Point, Random], None]] = [tick, cross, slash, scribble]
