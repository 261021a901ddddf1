"""Commands against loss: copies by a plan, a damaged register saved, a clock that was set back."""

from pathlib import Path

import click
from msgspec.structs import replace

from inspector.cli import say
from inspector.cli.wiring import Desk
from inspector.duties import copy_by_plan
from inspector.duties.office import Office
from inspector.duties.set_clock_right import clock_is_right as keep_clock
from inspector.duties.tell_copies import copies_told, plan_words
from inspector.duties.tell_rescue import held_words, rescue_words
from inspector.language import show_day, tr, tr_n


@click.command()
@click.option("--every", type=int, help="A copy every so many days; 0: none by itself.")
@click.option("--keep", type=int, help="How many of the last ones are kept.")
@click.option("--months", type=int, help="For how many months one copy each is kept.")
@click.option("--now", is_flag=True, help="Make the copy if one is due.")
@click.pass_obj
def copies(desk: Desk, every: int | None, keep: int | None, months: int | None, now: bool) -> None:
    """Tell which copies there are and how they are planned; change the plan; make the copy that is due."""
    office = desk.office()
    _change(office, {"days": every, "last": keep, "months": months})
    if now:
        _make(office)
    told = copies_told(office)
    say.paragraph(plan_words(told.plan))
    rows = [(one.name, show_day(one.on), tr("{size} kB", size=-(-one.size_bytes // 1000))) for one in told.files]
    say.table((tr("File"), tr("Day"), tr("Size")), rows)


def _change(office: Office, given: dict[str, int | None]) -> None:
    wanted = {key: value for key, value in given.items() if value is not None}
    if wanted:
        copy_by_plan.change_copy_plan(office, replace(copy_by_plan.copy_plan(office), **wanted))


def _make(office: Office) -> None:
    done = copy_by_plan.copy_if_due(office)
    if done.made is None:
        click.echo(tr("No copy is due."))
        return
    click.echo(tr("{file} was made; it was opened and is whole.", file=done.made.file.name))
    if done.gone:
        click.echo(tr_n("One older copy was let go.", "{count} older copies were let go.", len(done.gone)))


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--to", "folder", required=True, type=click.Path(path_type=Path), help="Folder without a register.")
@click.pass_obj
def rescue(desk: Desk, file: Path, folder: Path) -> None:
    """Save what can be proved of a damaged register FILE into a new one; FILE stays as it is."""
    done = desk.wiring.rescue(file, folder)
    for line in rescue_words(done.rescued):
        say.paragraph(line)
    say.paragraph(held_words(done.held, done.rescued))
    click.echo(tr("The new register lies in {folder}.", folder=folder))
    click.echo(tr("What was lost is listed in {file}.", file=done.list_file))


@click.command(name="clock-is-right")
@click.option("--why", required=True, help="How you know it, in a sentence.")
@click.pass_obj
def clock_is_right(desk: Desk, why: str) -> None:
    """Say that this machine's clock is right though the last entry was made later: that clock ran ahead."""
    held = keep_clock(desk.office(), why)
    desk.office()  # judge what was put off
    click.echo(tr("It is entered. Entries are taken again."))
    if held:
        say.paragraph(
            tr("Held until inspected, since that clock entered something of them: {tags}.", tags=", ".join(held))
        )
