"""Commands that show a piece and prove the register; they change nothing."""

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties import look_up
from inspector.duties.look_up import where_is
from inspector.duties.tags_left_on import tag_left_on
from inspector.duties.tell_history import history_of
from inspector.duties.verify_book import verified_words, verify_book
from inspector.duties.words_of_then import booked_facts, words_of_then
from inspector.gear.lists import HistoryRow
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr

_FAULTS_FOUND = 1


@click.command()
@click.argument("tag")
@click.pass_obj
def show(desk: Desk, tag: str) -> None:
    """Show a piece: its verdict with reasons and passes, and its history."""
    office = desk.office()
    outcome = look_up.open_item(office, tag)
    say.heading(tr("{tag} · {kind}", tag=outcome.dossier.item.tag, kind=outcome.dossier.kind.name))
    say.facts((Fact(tr("Where it is"), where_is(office, tag)), *booked_facts(outcome)))
    click.echo()
    say.paragraph(tr("Judged on {day}:", day=show_day(outcome.verdict.on)), "  ")
    if told := words_of_then(outcome):
        say.paragraph(told, "  ")
    say.verdict(outcome)
    if left := tag_left_on(office, outcome):
        say.paragraph(left, "  ")
    say.passes(outcome, sources=True)
    say.heading(tr("History"))
    rows = [(show_day(row.on), row.ref, row.what, _with_people(row)) for row in history_of(office, tag)]
    say.table((tr("Day"), tr("Entry"), tr("What"), ""), rows)
    say.cautions(outcome)


def _with_people(row: HistoryRow) -> str:
    return f"{row.text} ({row.by})" if row.by else row.text


@click.command()
@click.argument("tag")
@click.pass_obj
def where(desk: Desk, tag: str) -> None:
    """Say where TAG is."""
    click.echo(where_is(desk.office(), tag))


@click.command()
@click.option("--against", help="A ledger head printed on a document.")
@click.pass_obj
def verify(desk: Desk, against: str | None) -> int:
    """Prove that nothing in the register was changed."""
    found = verify_book(desk.office(), against)
    said, lines = verified_words(found, against)
    for line in (*lines, said):
        click.echo(line)
    return _FAULTS_FOUND if found.faults else 0
