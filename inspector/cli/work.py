"""Commands for work on a piece and what is written down of it anew: repair, tag, label, owner, value, files."""

from pathlib import Path

import click

from inspector.cli import say, typed
from inspector.cli.passphrase import with_second
from inspector.cli.wiring import Desk, choice
from inspector.duties import change_item, look_up
from inspector.duties.attach import attach as put_in
from inspector.duties.attach import attachments as files_of
from inspector.duties.attach import take_out
from inspector.duties.named_files import read_bytes
from inspector.duties.office import Office
from inspector.duties.read_marks import read_marks
from inspector.duties.repair_item import repair_item
from inspector.duties.tell_work import paper_word
from inspector.duties.value_gear import ValueLine, read_worth, sum_words, value_list
from inspector.gear.attachment import PaperKind
from inspector.gear.item import Rating
from inspector.gear.kind import Basis
from inspector.gear.repair import NewRepair, Work
from inspector.language import show_day, tr, tr_n
from inspector.units import Dimension, read

_BY = click.option("--by", default="", help="Who writes it down; the officer where nobody is named.")
_WHY = click.option("--why", required=True, help="Why, in a sentence.")


@click.command()
@click.argument("tag")
@click.option("--work", type=choice(Work), required=True, help="What was done.")
@click.option("--done-by", required=True, help="Who did the work: the maker, a workshop, a person.")
@click.option("--part", default="", help="What was put in, with its marking.")
@click.option("--maker", default="", help="The maker's mark on the new part.")
@click.option("--own/--strange", default=False, help="Whether it is the maker's own part for this very piece.")
@click.option(
    "--size",
    "sizes",
    multiple=True,
    help='Of the new part, or of the piece since: "pin_diameter=22 mm", "bolt_count=4".',
)
@click.option("--rating", default="", help="What the new part or the splice is marked with.")
@click.option("--basis", type=choice(Basis), default=Basis.WLL.value, show_default=True)
@click.option("--factor", default="", help="Design factor behind a working load limit.")
@click.option("--on", default="", help="Day of the work; today where none is given.")
@click.option("--note", default="")
@_BY
@click.pass_obj
def repair(desk: Desk, /, tag: str, work: str, done_by: str, sizes: tuple[str, ...], **more: str) -> None:
    """Write down a repair of TAG or a part put in; it is held until inspected."""
    office = desk.office()
    kind = look_up.open_item(office, tag).dossier.kind
    facts = NewRepair(
        on=typed.day(more["on"], office.today),
        work=Work(work),
        done_by=done_by,
        by=more["by"],
        part=more["part"],
        rating=_rating(office, more, "certificate") if more["rating"] else None,
        note=more["note"],
        maker=more["maker"],
        own=bool(more["own"]),
        sizes=typed.sizes(office, kind, sizes),
    )
    say.verdict_in_full(repair_item(office, tag, facts))


def _rating(office: Office, more: dict[str, str], stated_on: str) -> Rating:
    basis = Basis(more["basis"])
    dimension = Dimension.MASS if basis is Basis.TOWED_MASS else Dimension.FORCE
    figure = read(more["rating"], dimension, field=tr("rating"), decimal=office.decimal)
    factor = read(more["factor"], Dimension.FACTOR, field=tr("design factor")).si if more["factor"] else None
    return Rating(basis, figure, factor, stated_on)


@click.command()
@click.argument("tag")
@click.argument("new_tag")
@_WHY
@_BY
@click.pass_obj
def retag(desk: Desk, tag: str, new_tag: str, why: str, by: str) -> None:
    """Give TAG another tag; the one before still finds it and is never free again."""
    say.verdict_in_full(change_item.retag(desk.office(), tag, new_tag, why, by))


@click.command(name="label-lost")
@click.argument("tag")
@_WHY
@_BY
@click.pass_obj
def label_lost(desk: Desk, tag: str, why: str, by: str) -> None:
    """Write down that the rating on TAG cannot be read any more."""
    say.verdict_in_full(change_item.label_lost(desk.office(), tag, why, by))


@click.command()
@click.argument("tag")
@click.option("--rating", required=True, help='As it stands there, for example "4.75 t".')
@click.option("--basis", type=choice(Basis), required=True)
@click.option("--factor", default="", help="Design factor behind a working load limit.")
@click.option("--stated-on", type=click.Choice(["piece", "certificate"]), required=True)
@click.option("--second", default="", help="Another competent person; needed for more than was ever written down.")
@_WHY
@_BY
@click.pass_obj
def label(desk: Desk, /, tag: str, stated_on: str, why: str, by: str, second: str, **more: str) -> None:
    """Write down the rating of TAG as a competent person read it anew; it is held until inspected."""
    office = desk.office()
    rating = _rating(office, more, stated_on)
    proved = with_second(office, second)
    say.verdict_in_full(change_item.label_anew(proved, tag, rating, why, by, second))


@click.command()
@click.argument("tag")
@click.argument("name")
@click.option("--second", default="", help="Another person; needed where the writer owns it before or after.")
@_WHY
@_BY
@click.pass_obj
def owner(desk: Desk, tag: str, name: str, second: str, why: str, by: str) -> None:
    """Write down that TAG belongs to NAME from today on."""
    office = with_second(desk.office(), second)
    say.verdict_in_full(change_item.change_owner(office, tag, name, why, by, second))


@click.command()
@click.argument("tag", default="")
@click.argument("worth", default="")
@_BY
@click.pass_obj
def value(desk: Desk, tag: str, worth: str, by: str) -> None:
    """Write down what TAG is worth ("120 EUR", or "unknown"); without TAG list the value of all gear."""
    office = desk.office()
    if tag:
        read_as = None if worth.strip().casefold() == "unknown" else read_worth(worth, office.decimal)
        change_item.change_value(office, tag, read_as, by=by)
        click.echo(tr("{tag}: {worth}", tag=tag, worth=read_as.as_typed if read_as else tr("value not known")))
        return
    found = value_list(office)
    head = (tr("Owner"), tr("Place"), tr("Pieces"), tr("Value"), tr("Value not known"))
    say.table(head, [_value_cells(office, one) for one in found.lines])
    count = tr_n("{count} piece", "{count} pieces", found.total.piece_count)
    click.echo(
        tr("Together: {count}, {sum}", count=count, sum=sum_words(found.total, office.decimal) or tr("no value known"))
    )
    if found.total.unknown_tags:
        tags = ", ".join(found.total.unknown_tags)
        say.paragraph(tr("Too low: nobody wrote down the value of {tags}.", tags=tags))


def _value_cells(office: Office, line: ValueLine) -> tuple[str, ...]:
    missing = ", ".join(line.unknown_tags)
    return line.owner or "–", line.place or "–", str(line.piece_count), sum_words(line, office.decimal) or "–", missing


@click.command()
@click.argument("about")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--kind", type=choice(PaperKind), default=PaperKind.OTHER.value, show_default=True)
@click.option("--note", default="")
@_BY
@click.pass_obj
def attach(desk: Desk, about: str, file: Path, kind: str, note: str, by: str) -> None:
    """Put FILE to ABOUT: a piece's tag, an incident's or a trip's reference."""
    kept = put_in(desk.office(), about, file.name, read_bytes(file), PaperKind(kind), note=note, by=by)
    size = tr("{size} kB", size=-(-kept.facts.size_bytes // 1000))
    click.echo(tr("{name} is kept ({size}).", name=kept.facts.name, size=size))


@click.command()
@click.argument("about")
@click.option("--to", "folder", type=click.Path(path_type=Path), help="Write the files into this folder.")
@click.pass_obj
def attachments(desk: Desk, about: str, folder: Path | None) -> None:
    """List the files put to ABOUT, or write them out."""
    office = desk.office()
    if folder:
        for place in take_out(office, about, folder):
            click.echo(str(place))
        return
    rows = [
        (show_day(one.facts.on), paper_word(one.facts.kind), one.facts.name, one.facts.taken_at, one.facts.note)
        for one in files_of(office, about)
    ]
    say.table((tr("Day"), tr("Kind"), tr("Name"), tr("Taken"), tr("Note")), rows)


@click.command()
@click.argument("tag")
@click.option("--maker-mark", "mark", default="", help="The maker's mark as it stands on the piece.")
@click.option("--serial", default="", help="The serial as it stands on the piece.")
@click.option("--why", required=True, help="Why it is written down anew.")
@click.option("--by", default="", help="The competent person who read it; the officer where nobody is named.")
@click.pass_obj
def marks(desk: Desk, /, tag: str, mark: str, serial: str, why: str, by: str) -> None:
    """Write down anew the maker's mark and serial that a competent person read on TAG."""
    say.verdict_in_full(read_marks(desk.office(), tag, mark, serial, why, by=by))
