"""Commands that list the gear, and the kinds of it."""

from datetime import date

import click

from inspector.cli import say
from inspector.cli.wiring import Desk, choice
from inspector.drawings.marks import outcome_word
from inspector.duties import look_up
from inspector.gear.lists import GearRow
from inspector.gear.outcome import Outcome
from inspector.language import show_day, tr


@click.command(name="list")
@click.argument("words", nargs=-1)
@click.option("--outcome", type=choice(Outcome), help="Only pieces with this verdict.")
@click.option("--kind", default="", help="Only this kind, for example bow_shackle.")
@click.option("--order", type=click.Choice(["tag", "due", "worst"]), default="tag", show_default=True)
@click.pass_obj
def list_command(desk: Desk, words: tuple[str, ...], outcome: str | None, kind: str, order: str) -> None:
    """List the gear whose record holds all WORDS."""
    wanted = Outcome(outcome) if outcome else None
    found = look_up.list_gear(desk.office(), " ".join(words), outcome=wanted, kind=kind, order=order)
    head = (tr("Tag"), tr("Kind"), tr("Verdict"), tr("Next due"), tr("Marked"), tr("Owner"), tr("Place"))
    say.table(head, [_cells(row) for row in found.rows])
    click.echo(tr("{shown} of {count} pieces", shown=len(found.rows), count=found.count))


def _cells(row: GearRow) -> tuple[str, ...]:
    verdict = outcome_word(row.outcome) if row.outcome else ""
    if row.unloosened:
        verdict += tr(" (loosened, else {outcome})", outcome=outcome_word(row.unloosened).lower())
    place = row.place or tr("in store, place not written down")
    return row.tag, row.kind_name, verdict, _day(row.next_due), row.marked, row.owner, place


def _day(value: date | None) -> str:
    return show_day(value) if value else "–"


@click.command()
@click.pass_obj
def kinds(desk: Desk) -> None:
    """List the kinds of gear with their checks, measures and sizes."""
    office = desk.office()
    for kind in look_up.kinds(office):
        say.heading(f"{kind.name} ({kind.key})")
        say.paragraph(tr("sizes: {names}", names=", ".join(size.key for size in kind.sizes) or "–"), "  ", "    ")
        measures = ", ".join("/".join((one.key, *one.points)) for one in kind.measures) or "–"
        say.paragraph(tr("measures: {names}", names=measures), "  ", "    ")
        say.paragraph(tr("checks: {names}", names=", ".join(check.key for check in kind.checks)), "  ", "    ")
