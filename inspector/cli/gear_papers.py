"""Commands for papers that go with the gear: labels, tags for what is not free for use, and the lending slip."""

import click

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties.print_labels import print_labels, print_labels_again
from inspector.duties.print_lending_slip import print_lending_slip, print_lending_slip_again
from inspector.duties.print_tags import print_tags, print_tags_again
from inspector.gear.label_sizes import CUT_TAG, LABEL_SIZES, size_words
from inspector.language import tr
from inspector.refused import Refused

_AGAIN = click.option("--again", "number", default="", help="Print the one with this number once more, as it was.")


@click.command()
@click.argument("tags", nargs=-1)
@click.option(
    "--size", default=CUT_TAG.key, show_default=True, help="Size of the labels; --sizes tells which there are."
)
@click.option("--start", type=int, default=1, show_default=True, help="First free place on a begun sheet.")
@click.option("--sizes", is_flag=True, help="Tell the sizes and print nothing.")
@_AGAIN
@click.pass_obj
def labels(desk: Desk, tags: tuple[str, ...], size: str, start: int, sizes: bool, number: str) -> None:
    """Print labels with QR code for the pieces TAGS, on sheets of labels or as large tags to cut apart."""
    if sizes:
        say.table((tr("Size"), ""), [(one.key, size_words(one)) for one in LABEL_SIZES])
        return
    office = desk.office()
    say.paper(print_labels_again(office, number) if number else print_labels(office, tags, size, start))


@click.command()
@click.argument("tags", nargs=-1)
@_AGAIN
@click.pass_obj
def tags(desk: Desk, tags: tuple[str, ...], number: str) -> None:
    """Print tags to tie to the pieces TAGS, which are on hold, derated or retired: what each must not be used for."""
    office = desk.office()
    say.paper(print_tags_again(office, number) if number else print_tags(office, tags))


@click.command(name="lending-slip")
@click.argument("tags", nargs=-1)
@click.option("--to", "holder", default="", help="Who has them on loan.")
@click.option("--trip", default="", help="Only what is out for this trip.")
@_AGAIN
@click.pass_obj
def lending_slip(desk: Desk, tags: tuple[str, ...], holder: str, trip: str, number: str) -> None:
    """Print the slip that a borrower signs: all that he has on loan, or the pieces TAGS of it."""
    office = desk.office()
    if number:
        say.paper(print_lending_slip_again(office, number))
        return
    if not holder:
        why = tr("Nobody said whose slip it is.")
        raise Refused(tr("lending slip"), why, tr("Write --to NAME, or --again NUMBER."))
    say.paper(print_lending_slip(office, holder, tags, trip))
