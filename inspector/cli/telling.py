"""The command that reads the ledger back as sentences."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties.tell_ledger import told_ledger
from inspector.language import tr

_HASH_SIGNS = 8


@click.command()
@click.option("--last", type=int, default=None, help="Only so many lines; all where none is given.")
@click.option("--of", "name", default="", help="Only what concerns a piece, a vehicle, a trip or a person.")
@click.option("--from", "since", default="", help="Only from this day on.")
@click.pass_obj
def ledger(desk: Desk, last: int | None, name: str, since: str) -> None:
    """Tell every deed of the register as a sentence, the newest first, with its line's number and short hash."""
    office = desk.office()
    day = typed.day(since, office.today) if since else None
    found = told_ledger(office, last=last, of=name, since=day)
    if not found:
        click.echo(tr("No line of the ledger tells of that."))
        return
    rows = [(str(one.number), one.hash[:_HASH_SIGNS], one.when, one.sentence) for one in found]
    say.table((tr("Line"), tr("Hash"), tr("When"), tr("What was done")), rows)
