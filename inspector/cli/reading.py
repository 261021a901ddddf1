"""Commands that look and change nothing."""

from datetime import date

import click

from inspector.cli import say
from inspector.cli.wiring import Desk, choice
from inspector.drawings.marks import outcome_word
from inspector.duties import look_up
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verified_words, verify_book
from inspector.duties.whereabouts import where_is
from inspector.gear.lists import GearRow, HistoryRow
from inspector.gear.outcome import Outcome
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr

_FAULTS_FOUND = 1


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
@click.argument("tag")
@click.pass_obj
def show(desk: Desk, tag: str) -> None:
    """Show a piece: its verdict with reasons and passes, and its history."""
    office = desk.office()
    outcome = look_up.open_item(office, tag)
    say.heading(tr("{tag} · {kind}", tag=outcome.dossier.item.tag, kind=outcome.dossier.kind.name))
    say.facts((Fact(tr("Where it is"), where_is(office, tag)), *outcome.explanation.piece))
    click.echo()
    say.paragraph(tr("Judged on {day}:", day=show_day(outcome.verdict.on)), "  ")
    say.verdict(outcome)
    say.passes(outcome, sources=True)
    say.heading(tr("History"))
    rows = [(show_day(row.on), row.ref, row.what, _with_people(row)) for row in history_of(office, tag)]
    say.table((tr("Day"), tr("Entry"), tr("What"), ""), rows)
    say.cautions(outcome)


def _with_people(row: HistoryRow) -> str:
    return f"{row.text} ({row.by})" if row.by else row.text


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


@click.command()
@click.option("--against", default="", help="A ledger head printed on a document.")
@click.pass_obj
def verify(desk: Desk, against: str) -> int:
    """Prove that nothing in the register was changed."""
    found = verify_book(desk.office(), against)
    said, lines = verified_words(found, against)
    for line in (*lines, said):
        click.echo(line)
    return _FAULTS_FOUND if found.faults else 0
