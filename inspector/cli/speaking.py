"""Commands for what people say of a piece: doubts, opinions, strikes, and that it is no more."""

import click

from inspector.cli import say
from inspector.cli.passphrase import with_second
from inspector.cli.wiring import Desk
from inspector.duties import give_opinion
from inspector.duties.strike_entry import strike_entry
from inspector.duties.tags_left_on import tag_left_on


@click.command()
@click.argument("tag")
@click.option("--why", required=True, help="What makes you doubt it.")
@click.option("--by", default="", help="Who doubts it; the officer where nobody is named.")
@click.pass_obj
def doubt(desk: Desk, tag: str, why: str, by: str) -> None:
    """Hold TAG until a competent person has inspected it."""
    say.verdict_in_full(give_opinion.doubt(desk.office(), tag, why, by))


@click.command()
@click.argument("tag")
@click.argument("rules", nargs=-1)
@click.option("--why", required=True, help="What you saw, and why it may be used in spite of the finding.")
@click.option("--by", default="", help="Whose opinion; the officer where nobody is named.")
@click.pass_obj
def answer(desk: Desk, tag: str, rules: tuple[str, ...], why: str, by: str) -> None:
    """Answer slight faults that hold TAG, named by their RULES, by a second competent person's opinion."""
    office = desk.office()
    judged = give_opinion.answer_findings(office, tag, rules, why, by)
    say.verdict_in_full(judged, tag_left_on(office, judged))


@click.command()
@click.argument("tag")
@click.argument("entry")
@click.option("--second", required=True, help="The second competent person's name.")
@click.option("--why", required=True, help="What was wrong with the entry.")
@click.option("--by", default="", help="The first name; the officer where nobody is named.")
@click.pass_obj
def strike(desk: Desk, tag: str, entry: str, second: str, why: str, by: str) -> None:
    """Strike a wrong ENTRY of TAG, named by the sign that `show` prints beside it."""
    office = with_second(desk.office(), second)
    say.verdict_in_full(strike_entry(office, tag, entry, second, why, by))
