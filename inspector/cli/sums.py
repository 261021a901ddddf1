"""The command that works a sum for an audience."""

import click

from inspector.cli import say, typed
from inspector.duties.work_a_sum import list_sums, work_a_sum
from inspector.gear.sums import NamedSum, WorkedSum
from inspector.language import tr


@click.command()
@click.argument("words", nargs=-1)
@click.option("--units", type=click.Choice(["metric", "imperial"]), default="metric", show_default=True)
def sums(words: tuple[str, ...], units: str) -> None:
    """Work a sum: its NAME, then each input as name=figure, such as pull_n="30 kN".

    With no figures it lists the sums that hold all WORDS, with what each wants.
    """
    figures = dict(typed.pair(word, tr("figure")) for word in words if "=" in word)
    names = [word for word in words if "=" not in word]
    if figures:
        _show(work_a_sum(" ".join(names), figures, system=typed.system(units)))
        return
    found = list_sums(" ".join(names).replace("-", "_"))
    for one in found:
        _list(one)
    click.echo(tr("{count} sums", count=len(found)))


def _list(one: NamedSum) -> None:
    click.echo(f"{one.name}  [{one.topic}]")
    say.paragraph(one.title, "    ")
    for wanted in one.inputs:
        otherwise = tr(" (else {value})", value=wanted.otherwise) if wanted.otherwise else ""
        say.paragraph(f"{wanted.name}: {wanted.how}{otherwise}", "      ", "        ")


def _show(worked: WorkedSum) -> None:
    say.heading(worked.name)
    say.paragraph(worked.title)
    click.echo()
    say.paragraph(tr("Formula: {formula}", formula=worked.formula), "  ", "    ")
    say.facts(worked.inputs, "  ")
    click.echo()
    say.facts(worked.results, "  = ")
    click.echo()
    say.paragraph(tr("Valid: {valid}", valid=worked.valid), "  ", "    ")
    for source in worked.sources:
        say.paragraph(tr("Source: {source}", source=source), "  ", "    ")
