"""Whether a trip is ready, in plain words for a terminal."""

import click

from inspector.cli import say
from inspector.drawings.marks import outcome_word
from inspector.duties.before_use import goes
from inspector.duties.trip_readiness import Due, PartReady, Ready, Turns, VehicleReady
from inspector.gear.judged import Judged
from inspector.language import show_day, tr, tr_n


def say_ready(ready: Ready) -> None:
    """What goes and what stays, what turns and falls due until the last day, and what sits on the vehicles."""
    say.heading(tr("Ready for {day}?", day=show_day(ready.on)))
    said = tr("Every piece is judged for that day, the last of the trip, on what is known today.")
    say.paragraph(said if ready.on == ready.trip.last_on else tr("The trip is over; every piece is judged for today."))
    click.echo()
    _kit(ready)
    _turning(ready)
    _due(ready)
    for one in ready.vehicles:
        _vehicle(one)


def _kit(ready: Ready) -> None:
    going = tr_n("{count} piece of the kit goes", "{count} pieces of the kit go", len(ready.going))
    staying = tr_n("{count} stays at home", "{count} stay at home", len(ready.staying))
    click.echo(f"{going}, {staying}.")
    if ready.going:
        say.heading(tr("These go"))
        head = (tr("Tag"), tr("Kind"), tr("Verdict"), tr("May be used for"))
        say.table(head, [(*_piece(one), one.explanation.use_line) for one in ready.going])
    if ready.staying:
        say.heading(tr("These stay at home"))
        head = (tr("Tag"), tr("Kind"), tr("Verdict"), tr("Why"))
        say.table(head, [(*_piece(one), _why(one)) for one in ready.staying])


def _piece(one: Judged) -> tuple[str, str, str]:
    return one.dossier.item.tag, one.dossier.kind.name, outcome_word(one.verdict.outcome)


def _why(one: Judged) -> str:
    """The first reason, or the headline where a piece has none."""
    reasons = one.explanation.reasons
    return reasons[0].sentence if reasons else one.explanation.headline


def _turning(ready: Ready) -> None:
    if not ready.turning:
        return
    say.heading(tr("These change between today and then"))
    for one in ready.turning:
        say.paragraph(_turn(one), "  ", "    ")


def _turn(one: Turns) -> str:
    tag, _, then = _piece(one.then)
    today = outcome_word(one.today)
    return tr("{tag}: {today} today, {then} then. {why}", tag=tag, today=today, then=then, why=_why(one.then))


def _due(ready: Ready) -> None:
    if not ready.due:
        return
    say.heading(tr("These fall due by then"))
    words = {
        Due.INSPECTION: tr("next inspection"),
        Due.READING: tr("next reading of the wall"),
        Due.VERDICT: tr("its verdict holds only until that day"),
    }
    rows = []
    for one in ready.due:
        what = tr("{what}, overdue", what=words[one.what]) if one.overdue else words[one.what]
        rows.append((show_day(one.on), one.tag, one.kind_name, what))
    say.table((tr("Day"), tr("Tag"), tr("Kind"), tr("What")), rows)


def _vehicle(one: VehicleReady) -> None:
    weighs = one.vehicle.mass.as_typed if one.vehicle.mass else tr("nobody weighed it")
    say.heading(f"{one.vehicle.tag} · {one.vehicle.name}")
    click.echo(tr("GVM {gvm}, mass {mass}", gvm=one.vehicle.gvm.as_typed, mass=weighs))
    if one.warning:
        say.paragraph(one.warning)
    if not one.parts:
        click.echo(tr("No part is written down for it, so nothing on it is known to be sound."))
        return
    head = (tr("Place"), tr("Tag"), tr("Kind"), tr("Verdict"), tr("May be used for"))
    say.table(head, [(part.place or "–", *_piece(part.judged), _part(part)) for part in one.parts])


def _part(part: PartReady) -> str:
    said = part.judged.explanation.use_line if goes(part.judged) else _why(part.judged)
    if part.moved_on is None:
        return said
    moved = tr("Fitted there on {day}, and no competent person has inspected it since.", day=show_day(part.moved_on))
    return f"{said} {moved}"
