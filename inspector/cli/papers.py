"""Commands for papers on the whole: the record of a piece, the report on all the gear, letters that call pieces in."""

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties.print_kept import print_kept
from inspector.duties.print_recall import Recalled, print_recall
from inspector.duties.print_record import print_record
from inspector.duties.print_report import print_report, print_report_again
from inspector.duties.recall import kin_of_broken
from inspector.language import tr


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


@click.command()
@click.argument("tags", nargs=-1)
@click.option("--why", default="", help="What is known of the pieces, and from whom; everybody reads it.")
@click.option("--like", "ref", default="", help="Also what may be of one batch with what broke in this incident.")
@click.option("--send-to", default="", help="Where the pieces are to be sent or brought.")
@click.option("--by", "send_by", default="", help="By which day.")
@click.pass_obj
def recall(desk: Desk, tags: tuple[str, ...], why: str, ref: str, send_to: str, send_by: str) -> None:
    """Call the pieces TAGS in: a letter to everybody who has one, owns it or bought it. It holds nothing by itself."""
    office = desk.office()
    kin = tuple(one.tag for one in kin_of_broken(office, ref)) if ref else ()
    day = typed.day(send_by, office.today) if send_by else None
    _say(print_recall(office, (*tags, *kin), why, send_to=send_to, send_by=day))


def _say(done: Recalled) -> None:
    for one in done.papers:
        say.paper(one)
    if done.unwritten:
        say.heading(tr("No letter goes out for these: see to them yourself"))
        for said in done.unwritten:
            say.paragraph(said, "  ", "    ")
    if done.not_held:
        tags = ", ".join(done.not_held)
        say.paragraph(tr("The register still lets these go; put them on hold: {tags}", tags=tags), "", "  ")


COMMANDS = (record, report, recall)
