"""How often a new reading lies in the band that a verdict states for it.

What is tested is what the words claim: of 100 new readings at the band's place, dressed and by a tried gauge, 95 lie in
it, on the judging day and on the day the next reading is due. The band is for a reading, not for the wall itself.
"""

from collections import Counter
from random import Random

from inspector.gear.wall_band import BandAt, BandFrom
from inspector.rulebook.judge import judge
from inspector.rulebook.load import Rulebook
from inspector.units import Dimension, read
from tests.calibration import world
from tests.calibration.simulate import BEGAN, Gear, dossier, gear, with_rounds
from tests.calibration.world import Process, Round

READINGS = (3, 7)  # days with readings, from and to
LONGEST_WAIT_DAYS = 120  # from the last reading to the judging day


def trial(rng: Random, process: Process, rules: Rulebook, count: Counter[str]) -> None:
    """One piece read well on three days or more, judged, and read again at the place of its band."""
    made = well_read(rng, gear(rng, process, rules))
    day = made.rounds[-1].day + rng.randrange(0, LONGEST_WAIT_DAYS)
    wall = judge(dossier(made, day, made.rounds[-1].day), rules, "calibration").wall
    count["tried"] += 1
    if wall is None or wall.band is None or wall.band.made_from is not BandFrom.LINE:
        return
    for name, at in (("today", wall.band.now), ("next reading", wall.band.at_due)):
        if at is not None:
            tally(rng, made, wall.band.point, name, at, count)


def well_read(rng: Random, made: Gear) -> Gear:
    """The piece with every point read as it should be, on days that lie a third of a year to a year apart."""
    day, rounds = made.booked + rng.randrange(0, 60), list[Round]()
    finer = rng.random() < 0.5
    for _ in range(rng.randint(*READINGS)):
        rounds.append(world.sound_round(rng, made.truth, day, finer=finer))
        day += rng.randrange(120, 365)
    return with_rounds(made, rounds)


def tally(rng: Random, made: Gear, point: str, name: str, at: BandAt, count: Counter[str]) -> None:
    """Read once more on the band's day, as the gauge shows it, and see on which side it falls."""
    day, place = (at.on - BEGAN).days, made.truth.points.index(point)
    finer = made.rounds[0].reads[0].typed.partition(".")[2].index(" ") == 2
    shown = read(world.sound_reading(rng, made.truth, place, day, finer=finer), Dimension.LENGTH, field="wall").si
    count[name] += 1
    count[f"{name}, below"] += shown < at.low_m
    count[f"{name}, above"] += shown > at.high_m
    count[f"{name}, wall below"] += made.truth.wall(place, day) / 1e3 < at.low_m


def tried(process: Process, seed: int, pieces: int, rules: Rulebook) -> Counter[str]:
    """So many pieces of one process."""
    rng, count = Random(f"bands {process.name} {seed}"), Counter[str]()
    for _ in range(pieces):
        trial(rng, process, rules, count)
    return count
