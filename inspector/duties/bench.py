"""The trainer's bench: what it shows, a topic worked with its dials, and a start from a real piece. Writes nothing."""

from collections.abc import Iterable

from msgspec import Struct

from inspector.duties.look_up import open_item, vehicles
from inspector.duties.office import Office
from inspector.gear.bench import BenchStart, BenchTopic, Came, Dial, Given, Worked
from inspector.rulebook.bench import start, work
from inspector.rulebook.bench.parts import came_words
from inspector.units import Figure, System, read

__all__ = ["HandoutAsked", "begin_bench", "bench_topics", "came_words", "set_to", "step_of", "turned", "work_bench"]


def bench_topics(office: Office) -> tuple[BenchTopic, ...]:
    """The topics in the order of teaching, with dials in the club's units."""
    return work.topics(office.rules, office.system)


def work_bench(office: Office, topic: str, given: Iterable[Given] = ()) -> Worked:
    """A topic worked; of dials that are not given the usual figures stand. Touches neither book nor disk.

    Refused, by the name of its dial: a figure out of its range or one that does not go with another.
    """
    return work.work_topic(topic, given, office.rules, office.system)


def turned(office: Office, dial: Dial, typed: str) -> Given:
    """A figure for a dial as it was typed; refused where it cannot be read or lies out of the dial's range."""
    return set_to(office, dial, read(typed, dial.dimension, field=dial.name, decimal=office.decimal))


def set_to(office: Office, dial: Dial, figure: Figure) -> Given:
    """A figure for a dial; refused where it lies out of the dial's range."""
    work.check_dial(dial, figure.si, office.system)
    return Given(dial.key, figure, Came.SET)


def step_of(office: Office, dial: Dial) -> float:
    """How far one turn of a dial goes, in SI: a round figure of the club's units."""
    metric, imperial = dial.steps
    text = metric if office.system is System.METRIC else imperial
    return read(text, dial.dimension, field=dial.name).si


def begin_bench(office: Office, tag: str) -> BenchStart:
    """The topics that fit a piece or a vehicle of the register, with what is known of it.

    Refused where neither has this tag.
    """
    wanted = tag.strip().casefold()
    car = next((one for one in vehicles(office) if one.tag.casefold() == wanted), None)
    if car:
        return start.start_of_vehicle(car, office.rules, office.system)
    judged = open_item(office, tag)
    return start.start_of_piece(judged.dossier, judged.verdict, office.rules, office.system)


class HandoutAsked(Struct, frozen=True):
    """A handout to print: a topic with its figures. tag: the piece that lent some, if any."""

    topic: str
    given: tuple[Given, ...] = ()
    tag: str = ""
