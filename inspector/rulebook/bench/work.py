"""The topics of the bench in the order of teaching, and one of them worked with its figures."""

from collections.abc import Callable, Iterable

from inspector.gear.bench import BenchFigure, BenchTopic, Dial, Given, Worked
from inspector.language import tr
from inspector.refused import Refused
from inspector.rulebook.bench.lines import speed_topic, strap_topic
from inspector.rulebook.bench.parts import Maker, Told, Topic, Working, came_words
from inspector.rulebook.bench.pins import ball_topic, pin_topic
from inspector.rulebook.bench.tubes import wall_topic, weld_topic
from inspector.rulebook.load import Rulebook
from inspector.rulebook.wording import cautions
from inspector.units import System, show

_MAKERS: tuple[Callable[[Maker], Topic], ...] = (
    pin_topic, ball_topic, weld_topic, wall_topic, strap_topic, speed_topic,
)  # fmt: skip
_SAME = 1e-9


def topics(book: Rulebook, system: System) -> tuple[BenchTopic, ...]:
    """What the bench shows, with dials in the club's units."""
    return tuple(make(Maker(book, system)).shown for make in _MAKERS)


def work_topic(key: str, given: Iterable[Given], book: Rulebook, system: System) -> Worked:
    """A topic worked with these figures; of the dials not given the usual figures stand.

    Refused, by the name of its dial: a figure out of its range, or one that does not go with another.
    """
    topic = _topic(key, book, system)
    by_key = {one.key: one for one in given}
    for dial in topic.shown.dials:
        if dial.key in by_key:
            check_dial(dial, by_key[dial.key].figure.si, system)
    working = Working(topic.shown, by_key, book, system)
    topic.check(working)
    told = topic.work(working)
    return _worked(working, told)


def check_dial(dial: Dial, si: float, system: System) -> None:
    """Refuse a value that the dial has no place for; both ends are allowed."""
    slack = _SAME * max(abs(dial.least_si), abs(dial.most_si))
    if dial.stops and min(abs(stop - si) for stop in dial.stops) > slack:
        listed = ", ".join(f"{stop:g}" for stop in dial.stops)
        raise Refused(dial.name, tr("There is no such class here."), tr("Use one of: {classes}.", classes=listed))
    if not dial.least_si - slack <= si <= dial.most_si + slack:
        least, most = (show(end, dial.dimension, system) for end in (dial.least_si, dial.most_si))
        why = tr("The sum is shown from {least} to {most}.", least=least, most=most)
        raise Refused(dial.name, why, tr("Give a figure between them."))


def _topic(key: str, book: Rulebook, system: System) -> Topic:
    made = [make(Maker(book, system)) for make in _MAKERS]
    found = next((one for one in made if one.shown.key == key), None)
    if found is None:
        listed = ", ".join(one.shown.key for one in made)
        raise Refused(tr("topic"), tr("The bench has no topic “{key}”.", key=key), tr("Use one of: {t}.", t=listed))
    return found


def _worked(working: Working, told: Told) -> Worked:
    topic = working.topic
    return Worked(
        topic=topic.key,
        title=topic.title,
        question=topic.question,
        figures=(*(_figure(working, dial) for dial in topic.dials), *working.fixed),
        lines=tuple(working.lines),
        means=told.means,
        left_out=told.left_out,
        sources=tuple(working.sources),
        cautions=(*bench_cautions(), *cautions(working.book)),
        amounts=tuple(told.amounts.items()),
    )


def _figure(working: Working, dial: Dial) -> BenchFigure:
    """A dial's figure. Its source is that of the usual figure, as long as that stands."""
    given = working.given.get(dial.key)
    return BenchFigure(dial.name, working.text(dial.key), came_words(given), "" if given else dial.source)


def bench_cautions() -> tuple[str, ...]:
    """What stands beside every topic, whatever its sums say."""
    return (
        tr("Never recover from a tow ball, a ball mount or a bare receiver (common practice, no published source)."),
        tr(
            "What practice accepts is a solid insert held by its pin in double shear, in a sound bar (common practice, "
            "no published source)."
        ),
        tr("These sums show why; they judge no piece. The record of a piece says what it may do."),
    )
