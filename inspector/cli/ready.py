"""Whether a trip is ready, in plain words for a terminal."""

import click

from inspector.cli import say
from inspector.drawings.marks import outcome_word
from inspector.duties.before_use import why_not
from inspector.duties.plan_rides import ride_words
from inspector.duties.tell_readiness import (
    answer_words,
    due_words,
    judged_for_words,
    mass_words,
    part_words,
    turn_words,
)
from inspector.duties.trip_readiness import Ready, VehicleReady
from inspector.gear.judged import Judged
from inspector.language import show_day, tr, tr_n


def say_ready(ready: Ready, lacks: tuple[str, ...]) -> None:
    """Whether it is ready, what goes and what stays, what turns and falls due until then, what sits on the vehicles."""
    say.heading(tr("Ready for {day}?", day=show_day(ready.on)))
    say.paragraph(answer_words(ready, lacks))
    say.paragraph(judged_for_words(ready))
    click.echo()
    _kit(ready)
    _away(ready)
    _turning(ready)
    _due(ready)
    for one in ready.vehicles:
        _vehicle(one)


def say_lacks(lacks: tuple[str, ...]) -> None:
    """What the kit lacks for these vehicles."""
    if lacks:
        say.heading(tr("Lacking for these vehicles"))
    for one in lacks:
        say.paragraph(one, "  ", "    ")


def _kit(ready: Ready) -> None:
    going = tr_n("{count} piece of the kit goes", "{count} pieces of the kit go", len(ready.going))
    staying = tr_n("{count} stays at home", "{count} stay at home", len(ready.staying))
    gone = tr_n("{count} is not at hand", "{count} are not at hand", len(ready.gone)) if ready.gone else ""
    click.echo(", ".join(filter(None, (going, staying, gone))) + ".")
    if ready.going:
        say.heading(tr("These go"))
        columns = (tr("Tag"), tr("Kind"), tr("Verdict"), tr("May be used for"), tr("Where"))
        say.table(columns, [(*_piece(one), one.explanation.use_line, _rides(ready, one)) for one in ready.going])
    if ready.staying:
        say.heading(tr("These stay at home"))
        head = (tr("Tag"), tr("Kind"), tr("Verdict"), tr("Why"))
        say.table(head, [(*_piece(one), why_not(one)) for one in ready.staying])


def _piece(one: Judged) -> tuple[str, str, str]:
    return one.dossier.item.tag, one.dossier.kind.name, outcome_word(one.verdict.outcome)


def _rides(ready: Ready, one: Judged) -> str:
    tag = one.dossier.item.tag
    return ride_words(ready.trip, tag, ready.sits.get(tag, ""), ready.lies.get(tag, ""))


def _away(ready: Ready) -> None:
    if not ready.away:
        return
    say.heading(tr("These may not be at hand"))
    say.table((tr("Tag"), tr("Why")), [(one.tag, one.why) for one in ready.away])


def _turning(ready: Ready) -> None:
    if not ready.turning:
        return
    say.heading(tr("These change between today and then"))
    for one in ready.turning:
        say.paragraph(turn_words(one), "  ", "    ")


def _due(ready: Ready) -> None:
    if not ready.due:
        return
    say.heading(tr("These fall due by then"))
    rows = [(show_day(one.on), one.tag, one.kind_name, due_words(one)) for one in ready.due]
    say.table((tr("Day"), tr("Tag"), tr("Kind"), tr("What")), rows)


def _vehicle(one: VehicleReady) -> None:
    say.heading(f"{one.vehicle.tag} · {one.vehicle.name}")
    click.echo(mass_words(one.vehicle))
    if one.warning:
        say.paragraph(one.warning)
    if not one.parts:
        click.echo(tr("No part is written down for it, so nothing on it is known to be sound."))
        return
    head = (tr("Place"), tr("Tag"), tr("Kind"), tr("Verdict"), tr("May be used for"))
    say.table(head, [(part.place or "–", *_piece(part.judged), part_words(part)) for part in one.parts])
