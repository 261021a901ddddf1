"""Commands for papers on the whole: the record of a piece and the report on all the gear."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties.print_kept import print_kept
from inspector.duties.print_record import print_record
from inspector.duties.print_report import print_report, print_report_again


@click.command()
@click.argument("tag")
@click.option("--again", default="", help="Print the document of TAG with this number again, as it was said.")
@click.pass_obj
def record(desk: Desk, tag: str, again: str) -> None:
    """Print the record of TAG: verdict, reasons, pictures and all that ever happened to it."""
    office = desk.office()
    say.paper(print_kept(office, tag, again) if again else print_record(office, tag))


@click.command()
@click.option("--since", default="", help="Tell what changed from this day on; a year back where none is given.")
@click.option("--again", is_flag=True, help="Print the last report again, as it was said.")
@click.pass_obj
def report(desk: Desk, since: str, again: bool) -> None:
    """Print the report on all the gear, for the club's meeting or an insurer."""
    office = desk.office()
    if again:
        say.paper(print_report_again(office))
    else:
        say.paper(print_report(office, typed.day(since, office.today) if since else None))
