"""Commands for recalls: look, call in, write to whoever has a piece, track the answers, settle, close, withdraw."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

from inspector.cli import say, typed
from inspector.cli.passphrase import with_second
from inspector.cli.wiring import Desk
from inspector.duties.call_in import CalledIn, call_in, hold_more
from inspector.duties.print_recall import Recalled, print_recall, recall_pieces
from inspector.duties.print_withdrawal import print_letter_again, print_withdrawal
from inspector.duties.recall import kin_of_broken
from inspector.duties.recall_answers import close_recall, note_answer
from inspector.duties.recall_search import Match, search_recall
from inspector.duties.settle_recall import ReadOnIt, not_of_it, remedied
from inspector.duties.tags_left_on import tag_left_on
from inspector.duties.tell_recall import RecallTold, recall_told, recalls
from inspector.duties.withdraw_recall import WithdrawnRecall, withdraw_recall
from inspector.gear.recall_notice import Answer, Issuer, Meant, NewRecall
from inspector.language import show_day, tr

_Command = TypeVar("_Command", bound=Callable[..., Any])
_MEANT = (
    click.option("--maker-mark", "mark", default="", help="The maker's mark as the notice writes it."),
    click.option("--kind", "kinds", multiple=True, help="A kind of gear it means; may be given again."),
    click.option("--batch", "batches", multiple=True, help="A batch; may be given again."),
    click.option("--first", default="", help="The first serial of a range."),
    click.option("--last", default="", help="The last serial of a range."),
    click.option("--made-from", default="", help="Made on this day or later."),
    click.option("--made-until", default="", help="Made on this day or before."),
    click.option("--piece", "tags", multiple=True, help="Tag of a piece it means in any case; may be given again."),
)
_SEND = (
    click.option("--send-to", default="", help="Where the pieces are to be sent or brought."),
    click.option("--by", "send_by", default="", help="By which day."),
)


def _with(options: tuple[Any, ...]) -> Callable[[_Command], _Command]:
    def add(command: _Command) -> _Command:
        for option in reversed(options):
            command = option(command)
        return command

    return add


def _meant(desk: Desk, told: dict[str, Any]) -> Meant:
    today = desk.office().today
    made = (told[key] for key in ("made_from", "made_until"))
    first, last = (typed.day(one, today) if one else None for one in made)
    ends = (told["first"].strip(), told["last"].strip())
    return Meant(told["mark"].strip(), told["kinds"], told["batches"], *ends, first, last, told["tags"])


@click.group()
def recall() -> None:
    """Find all pieces of a batch, hold them, write to whoever has one, track the answers."""


@recall.command()
@_with(_MEANT)
@click.pass_obj
def search(desk: Desk, /, **told: Any) -> None:
    """Look through all pieces ever booked in by what a notice says. Nothing is held by it."""
    found = search_recall(desk.office(), _meant(desk, told))
    _say_matches(tr("Meant for certain"), found.certain)
    _say_matches(tr("To be asked: nobody can tell them from those"), found.to_ask)
    _say_matches(tr("Not meant"), found.not_meant)


def _say_matches(title: str, found: tuple[Match, ...]) -> None:
    say.heading(tr("{title} ({count})", title=title, count=len(found)))
    for one in found:
        said = tr("{tag} · {kind} · {marks} · {place}: {why}", tag=one.item.tag, kind=one.kind_name, marks=one.marks,
                  place=one.place, why=one.why)  # fmt: skip
        say.paragraph(said, "  – ", "    ")


@recall.command(name="enter")
@click.option("--whose", type=click.Choice([one.value for one in Issuer]), default="maker", help="Whose notice it is.")
@_with(_MEANT)
@click.option("--why", required=True, help="What is wrong with the pieces; everybody reads it.")
@click.option("--do", "remedy", default="", help="What the notice asks whoever has a piece to do.")
@click.option("--source", default="", help="Where the notice can be read, its number.")
@click.option("--issued", default="", help="The day that stands on the notice.")
@click.pass_obj
def enter_command(desk: Desk, /, whose: str, why: str, remedy: str, source: str, issued: str, **told: Any) -> None:
    """Enter a notice and hold every piece that it means or that nobody can tell from those."""
    office = desk.office()
    day = typed.day(issued, office.today) if issued else None
    meant = _meant(desk, told)
    _say_called(call_in(office, NewRecall(office.today, Issuer(whose), meant, why, remedy, source, day)))


def _say_called(done: CalledIn) -> None:
    click.echo(tr("{ref} is kept.", ref=done.recall.ref))
    _say_matches(tr("Meant for certain"), done.found.certain)
    _say_matches(tr("To be asked: nobody can tell them from those"), done.found.to_ask)
    click.echo(tr("All of these are held. Not meant: {count}.", count=len(done.found.not_meant)))
    if done.pieces:
        say.cautions(done.pieces[0])


@recall.command()
@click.argument("tags", nargs=-1)
@click.option("--why", default="", help="What is known of the pieces, and from whom; everybody reads it.")
@click.option("--like", "ref", default="", help="Also what may be of one batch with what broke in this incident.")
@_with(_SEND)
@click.pass_obj
def pieces(desk: Desk, tags: tuple[str, ...], why: str, ref: str, send_to: str, send_by: str) -> None:
    """Call the pieces TAGS in: hold them, and print a letter to everybody who has one, owns it or bought it."""
    office = desk.office()
    kin = tuple(one.tag for one in kin_of_broken(office, ref)) if ref else ()
    day = typed.day(send_by, office.today) if send_by else None
    _say(recall_pieces(office, (*tags, *kin), why, send_to=send_to, send_by=day))


@recall.command()
@click.argument("ref")
@_with(_SEND)
@click.option("--remind", is_flag=True, help="Write again to those who have not answered.")
@click.option("--again", default="", help="Print the letter with this number again, as it was said.")
@click.pass_obj
def letters(desk: Desk, /, ref: str, send_to: str, send_by: str, remind: bool, again: str) -> None:
    """Print a letter to everybody whom the open pieces of REF concern and who was not written to yet.

    Of a recall that was withdrawn: to everybody who was written to by it, that it counts no more.
    """
    office = desk.office()
    if again:
        say.paper(print_letter_again(office, again))
        return
    if recall_told(office, ref).withdrawn and not (remind or send_to or send_by):
        for one in print_withdrawal(office, ref):
            say.paper(one)
        return
    day = typed.day(send_by, office.today) if send_by else None
    _say(print_recall(office, ref, send_to=send_to, send_by=day, remind=remind))


def _say(done: Recalled) -> None:
    click.echo(tr("{ref} is kept.", ref=done.ref))
    for one in done.papers:
        say.paper(one)
    if done.unwritten:
        say.heading(tr("No letter goes out for these: see to them yourself"))
        for said in done.unwritten:
            say.paragraph(said, "  ", "    ")


@recall.command()
@click.argument("ref")
@click.argument("tags", nargs=-1)
@click.option("--from", "name", required=True, help="Who answered, by the name that was written to.")
@click.option("--said", "answer", required=True, type=click.Choice([one.value for one in Answer]), help="What.")
@click.option("--text", default="", help="To whom it was passed on, what was read on it, or a remark.")
@click.option("--on", default="", help="Day it came; today where none is given.")
@click.pass_obj
def answer(desk: Desk, /, ref: str, tags: tuple[str, ...], name: str, answer: str, text: str, on: str) -> None:
    """Write down what somebody answered of the pieces TAGS. It lets nothing go."""
    office = desk.office()
    note_answer(office, ref, tags, name, Answer(answer), text, on=typed.day(on, office.today))
    click.echo(tr("The answer of {name} is kept.", name=name.strip()))


@recall.command()
@click.argument("ref")
@click.argument("tag")
@click.option("--why", required=True, help="Why it belongs to the recall.")
@click.pass_obj
def hold(desk: Desk, ref: str, tag: str, why: str) -> None:
    """Hold a further piece TAG under the recall REF."""
    say.verdict_in_full(hold_more(desk.office(), ref, tag, why))


@recall.command()
@click.argument("ref")
@click.argument("tag")
@click.option("--serial", default="", help="The serial as it stands on the piece.")
@click.option("--maker-mark", "mark", default="", help="The maker's mark as it stands on the piece.")
@click.option("--made", default="", help="The day of making as stamped into the piece.")
@click.option("--by", default="", help="The competent person who read it; the officer where nobody is named.")
@click.pass_obj
def clear(desk: Desk, /, ref: str, tag: str, serial: str, mark: str, made: str, by: str) -> None:
    """Let TAG go from the recall REF, by what a competent person read on it."""
    office = desk.office()
    read = ReadOnIt(serial, mark, typed.day(made, office.today) if made else None)
    freed = not_of_it(office, ref, tag, read, by=by)
    say.verdict_in_full(freed, tag_left_on(office, freed))


@recall.command()
@click.argument("ref")
@click.argument("tag")
@click.option("--done", required=True, help="What was replaced or looked at as the notice asks, and by whom.")
@click.option("--by", default="", help="The competent person who says so; the officer where nobody is named.")
@click.pass_obj
def remedy(desk: Desk, ref: str, tag: str, done: str, by: str) -> None:
    """Write down that what the recall REF asks for was done to TAG; it is held until inspected."""
    say.verdict_in_full(remedied(desk.office(), ref, tag, done, by=by))


@recall.command()
@click.argument("ref")
@click.option("--outcome", "text", required=True, help="What came of it.")
@click.pass_obj
def close(desk: Desk, ref: str, text: str) -> None:
    """Close the recall, once every piece of it is settled."""
    close_recall(desk.office(), ref, text)
    click.echo(tr("{ref} is closed.", ref=ref))


@recall.command()
@click.argument("ref")
@click.option("--second", required=True, help="The other competent person.")
@click.option("--why", required=True, help="What was wrong with the entry.")
@click.option("--by", default="", help="The first competent person; the officer where nobody is named.")
@click.pass_obj
def withdraw(desk: Desk, /, ref: str, second: str, why: str, by: str) -> None:
    """Withdraw the recall REF, which was entered wrongly: what it alone held stands as it did without it."""
    _say_withdrawn(withdraw_recall(with_second(desk.office(), second), ref, why, second=second, by=by))


def _say_withdrawn(done: WithdrawnRecall) -> None:
    click.echo(tr("{ref} is withdrawn.", ref=done.ref))
    for one in done.pieces:
        tag = one.dossier.item.tag
        say.paragraph(f"{tag}  {one.explanation.headline} {done.tags_left.get(tag, '')}", "  ", "      ")
    if done.doubted:
        say.heading(tr("These stay on hold until somebody competent has inspected them"))
        for tag, why in done.doubted:
            say.paragraph(tr("{tag}: {why}", tag=tag, why=why), "  – ", "    ")
    if done.written:
        say.heading(tr("These were written to and do not know it yet"))
        click.echo(f"  {', '.join(done.written)}\n{tr('  Write to them: recall letters {ref}', ref=done.ref)}")
    if done.pieces:
        say.cautions(done.pieces[0])


@recall.command(name="list")
@click.pass_obj
def list_command(desk: Desk) -> None:
    """List the recalls and how many pieces are not settled."""
    found = recalls(desk.office())
    if not found:
        click.echo(tr("No recall was entered."))
        return
    head = (tr("Ref"), tr("Day"), tr("Notice"), tr("State"), tr("Not settled"))
    say.table(head, [(one.ref, one.day, one.notice, one.state, one.left) for one in found])


@recall.command()
@click.argument("ref")
@click.pass_obj
def show(desk: Desk, ref: str) -> None:
    """Show a recall: what it says, its pieces, who was written to, and what came back."""
    found = recall_told(desk.office(), ref)
    say.heading(found.ref)
    if found.withdrawn:
        say.paragraph(found.withdrawn, "  ")
    say.facts(tuple(one for one in found.facts if one.text))
    say.paragraph(found.reason, "  ")
    if found.remedy:
        say.paragraph(tr("Asked for: {what}", what=found.remedy), "  ")
    if found.untold:
        say.paragraph(tr("Not told yet that it was withdrawn: {names}", names=", ".join(found.untold)), "  ")
    _say_pieces(found)
    if found.letters:
        say.heading(tr("Who was written to"))
    for one in found.letters:
        said = tr("{name}: {letters}, about {tags}", name=one.name, letters=one.letters, tags=one.tags)
        say.paragraph(said, "  – ", "    ")
        if one.answers:
            say.paragraph(one.answers, "    ", "    ")
        if one.due:
            say.paragraph(tr("no answer, remind on {day}", day=show_day(one.due)), "    ", "    ")


def _say_pieces(found: RecallTold) -> None:
    say.heading(tr("The pieces"))
    for one in found.pieces:
        said = tr("{tag} · {kind} · {marks} · {place}: {sure}, {why}. {state}", tag=one.tag, kind=one.kind_name,
                  marks=one.marks, place=one.place, sure=one.sure_name, why=one.why, state=one.state)  # fmt: skip
        say.paragraph(said, "  – ", "    ")
        if one.open_why:
            say.paragraph(tr("Open: {what}", what=one.open_why), "    ", "    ")
