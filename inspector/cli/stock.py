"""Commands for counting what is there."""

from pathlib import Path

import click

from inspector.cli import say
from inspector.cli.wiring import Desk, choice
from inspector.duties import look_up
from inspector.duties.close_count import Closed
from inspector.duties.close_count import close_count as close_the_count
from inspector.duties.named_files import read_bytes
from inspector.duties.print_count import print_count, type_list
from inspector.duties.take_stock import Scanned, begin_count, count_states, mark, tags_in
from inspector.duties.take_stock import left as left_to_find
from inspector.duties.tell_count import closed_parts, labels_words, not_counted_words
from inspector.gear.stock_take import Counted
from inspector.language import show_day, tr, tr_n

_REFUSED_SOME = 2


@click.group()
def stock() -> None:
    """Count what is there, by scanning tags or by ticking a printed list."""


@stock.command()
@click.argument("ref")
@click.option(
    "--place", default="", help="Only this place, or the vehicle with this tag; everything where none is named."
)
@click.pass_obj
def begin(desk: Desk, ref: str, place: str) -> None:
    """Begin the count REF."""
    facts = begin_count(desk.office(), ref, place).facts
    expected = len(facts.expected)
    click.echo(tr_n("{count} piece is to be looked for.", "{count} pieces are to be looked for.", expected))
    if facts.elsewhere:
        click.echo(tr("Out or on a vehicle, and not looked for here:"))
        say.table((tr("Tag"), tr("Where")), facts.elsewhere)


@stock.command()
@click.argument("ref")
@click.argument("tags", nargs=-1)
@click.option("--as", "counted", type=choice(Counted), default=Counted.PRESENT.value, show_default=True)
@click.option("--at", "place", default="", help="Where they lie, if it is another place, or the tag of their vehicle.")
@click.option("--from", "file", type=click.Path(path_type=Path), help="A file with the tags that a scanner wrote.")
@click.option("--note", default="")
@click.pass_obj
def scan(desk: Desk, ref: str, tags: tuple[str, ...], counted: str, place: str, file: Path | None, note: str) -> int:
    """Mark the pieces TAGS of the count REF: present, absent, or unknown to take a mark back."""
    scanned = tags_in(read_bytes(file), file.name) if file else ()
    return _say_scanned(mark(desk.office(), ref, (*tags, *scanned), Counted(counted), place, note))


def _say_scanned(found: Scanned) -> int:
    click.echo(tr("Marked: {tags}", tags=", ".join(found.kept) or "–"))
    if found.labels:
        click.echo(labels_words(found.labels))
    for one in found.told:
        say.paragraph(f"{one.tag}  {one.why} {one.what_to_do}", "! ", "  ")
    for one in found.not_counted:
        say.paragraph(not_counted_words(one), "! ", "  ")
    return _REFUSED_SOME if found.not_counted else 0


@stock.command()
@click.argument("ref")
@click.pass_obj
def left(desk: Desk, ref: str) -> None:
    """List what the count REF has not seen yet."""
    office = desk.office()
    names = {one.key: one.name for one in look_up.kinds(office)}
    rows = [
        (one.tag, names.get(one.facts.kind, one.facts.kind), where.at or "–")
        for one, where in left_to_find(office, ref)
    ]
    if not rows:
        click.echo(tr("Every expected piece is marked. Close the count: inspector stock close {ref}", ref=ref))
        return
    say.table((tr("Tag"), tr("Piece"), tr("Where it ought to be")), rows)


@stock.command()
@click.argument("ref")
@click.pass_obj
def close(desk: Desk, ref: str) -> None:
    """Close the count REF: what differs goes into the register; what nobody looked for is told as not seen."""
    _say_closed(close_the_count(desk.office(), ref))


def _say_closed(told: Closed) -> None:
    click.echo(
        tr_n(
            "The count {ref} is closed. {count} piece was seen.",
            "The count {ref} is closed. {count} pieces were seen.",
            len(told.present),
            ref=told.ref,
        )
    )
    for part in closed_parts(told):
        tags = ", ".join(f"{tag} ({place})" if place else tag for tag, place in part.pieces)
        say.paragraph(f"{part.title}: {tags}", "", "  ")
    for one in told.judged:
        if one.dossier.item.tag in told.found:
            say.paragraph(f"{one.dossier.item.tag}  {one.explanation.headline}", "  ", "      ")


@stock.command(name="list")
@click.pass_obj
def list_command(desk: Desk) -> None:
    """List the counts: what each looked for, and what was seen."""
    rows = [
        (
            one.ref,
            show_day(one.begun),
            one.scope or tr("everything"),
            tr("{seen} of {total} seen, {absent} absent", seen=one.seen, total=one.expected, absent=one.absent),
            tr("closed on {day}", day=show_day(one.closed)) if one.closed else tr("open"),
        )
        for one in count_states(desk.office())
    ]
    say.table((tr("Count"), tr("Begun"), tr("Counted is"), tr("Result"), ""), rows)


@stock.command(name="print")
@click.argument("ref")
@click.pass_obj
def print_command(desk: Desk, ref: str) -> None:
    """Print the list of the count REF, to tick by hand."""
    say.paper(print_count(desk.office(), ref))


@stock.command(name="type")
@click.argument("number")
@click.option("--present", default="", help='Lines ticked as there, "1-14, 16".')
@click.option("--absent", default="", help='Lines ticked as not there, "15".')
@click.option("--label", "labels", multiple=True, help="A label written in by hand; may be given again.")
@click.pass_obj
def type_command(desk: Desk, number: str, present: str, absent: str, labels: tuple[str, ...]) -> int:
    """Type in the ticked list NUMBER. A line without a tick stays not looked for."""
    return max(_say_scanned(one) for one in type_list(desk.office(), number, present, absent, labels))
