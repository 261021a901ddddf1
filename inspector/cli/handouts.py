"""The command that prints a handout of the trainer's bench."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties.bench import HandoutAsked, begin_bench, bench_topics, turned, work_bench
from inspector.duties.office import Office
from inspector.duties.print_handout import print_handout
from inspector.gear.bench import BenchTopic, Given, Preset
from inspector.language import tr
from inspector.refused import Refused
from inspector.units import show_typed


@click.command()
@click.argument("topic", default="")
@click.option("--set", "settings", multiple=True, help='A dial, for example "pin=16 mm"; may be given several times.')
@click.option("--from", "tag", default="", help="Begin from the numbers of this piece or vehicle.")
@click.pass_obj
def handout(desk: Desk, topic: str, settings: tuple[str, ...], tag: str) -> None:
    """Print the handout of TOPIC: why some attachments kill. Without TOPIC, list the topics and their dials."""
    office = desk.office()
    topics = bench_topics(office)
    preset = _preset(office, tag, topic) if tag else None
    wanted = preset.topic if preset else topic
    if not wanted:
        _list(topics)
        return
    dials = next((one for one in topics if one.key == wanted), None)
    asked = {one.key: one for one in preset.given} if preset else {}
    asked |= _typed(office, dials, settings) if dials else {}
    worked = work_bench(office, wanted, asked.values())
    printed = print_handout(office, HandoutAsked(wanted, tuple(asked.values()), tag if preset else ""))
    say.paragraph(worked.means)
    for words in preset.said if preset else ():
        say.paragraph(words)
    for caution in worked.cautions:
        say.paragraph(caution)
    say.paper(printed)


def _preset(office: Office, tag: str, topic: str) -> Preset:
    """What the piece lends the topic; without a topic the one that fits it best."""
    begun = begin_bench(office, tag)
    found = next((one for one in begun.presets if topic in {"", one.topic}), None)
    if found:
        return found
    fits = ", ".join(one.topic for one in begun.presets)
    why = begun.why_none or tr("{tag} has no figures for “{topic}”.", tag=begun.tag, topic=topic)
    do = tr("It fits: {topics}.", topics=fits) if fits else tr("Leave --from out, and set the dials by --set.")
    raise Refused(tr("from"), why, do)


def _typed(office: Office, topic: BenchTopic, settings: tuple[str, ...]) -> dict[str, Given]:
    dials = {one.key: one for one in topic.dials}
    found = {}
    for text in settings:
        key, figure = typed.pair(text, tr("set"))
        if key not in dials:
            names = ", ".join(dials)
            raise Refused(
                tr("set"), tr("This topic has no dial “{key}”.", key=key), tr("It has: {names}.", names=names)
            )
        found[key] = turned(office, dials[key], figure)
    return found


def _list(topics: tuple[BenchTopic, ...]) -> None:
    for one in topics:
        say.heading(f"{one.title} ({one.key})")
        say.paragraph(one.question, "  ")
        for dial in one.dials:
            words = tr(
                "{key}: {name}, else {usual}", key=dial.key, name=dial.name, usual=show_typed(dial.usual.as_typed)
            )
            say.paragraph(words, "    ")
