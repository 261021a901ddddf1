"""The commands about the rulebook: what it says, and a club's own limits checked, compared, adopted and dropped."""

from datetime import date
from pathlib import Path

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.drawings.marks import outcome_word
from inspector.duties import adopt_rulebook as adopting
from inspector.duties import compare_rulebooks as comparing
from inspector.duties import tell_rules
from inspector.duties.named_files import read_bytes
from inspector.duties.rulebook_in_force import fault_words
from inspector.gear.outcome import Outcome
from inspector.gear.rulebooks import Adopted, BookFault, Change, Compared, Direction, PieceDiffers, RuleShown, Standing
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.units import Dimension, System, show

_FAULTS_FOUND = 1
_TODAY = "today"
_LOOSENED = "!"
_TIGHTENED = "+"


@click.group()
def rules() -> None:
    """What the rulebook says, and the club's own limits."""


@rules.command(name="list")
@click.argument("words", nargs=-1)
@click.option("--kind", default="", help="Only rules that speak of this kind, for example bow_shackle.")
@click.option("--words", "in_words", is_flag=True, help="Also why each rule stands.")
@click.option("--profiles", is_flag=True, help="List the packaged sets that a club may take instead.")
@click.pass_obj
def list_command(desk: Desk, words: tuple[str, ...], kind: str, in_words: bool, profiles: bool) -> None:
    """List the rules that hold all WORDS; one that the club has loosened has a ! before it, a tightened one a +."""
    if profiles:
        for name, says, source in tell_rules.list_profiles():
            click.echo(name)
            say.paragraph(f"{says} [{source}]", "    ")
        return
    found = tell_rules.list_rules(desk.office_if_any(), kind, " ".join(words))
    for one in found:
        mark = " " if not one.club else _LOOSENED if one.loosened else _TIGHTENED
        says = tr("{what}: {demand}, else {outcome}", what=one.quantity, demand=one.demand, outcome=one.otherwise)
        club = tr(" · club: {club}", club=one.club) if one.club else ""
        say.paragraph(f"{one.id}  {says}{club}", f"{mark} ", "      ")
        if in_words:
            say.paragraph(one.says, "      ")
    click.echo(tr("{count} rules", count=len(found)))


@rules.command(name="show")
@click.argument("name", metavar="RULE")
@click.pass_obj
def show_command(desk: Desk, name: str) -> None:
    """Show RULE with its limit, its source and its examples."""
    shown = tell_rules.show_rule(desk.office_if_any(), name)
    say.heading(shown.line.id)
    say.paragraph(shown.line.says)
    click.echo()
    say.facts(_rule_facts(shown))
    click.echo()
    rows = [(one.given, one.limit or "–", one.found, _beside(one.expected, one.found)) for one in shown.examples]
    say.table((tr("Found"), tr("Limit"), tr("Outcome"), ""), rows)


def _rule_facts(shown: RuleShown) -> list[Fact]:
    lines = [
        Fact(tr("Asks"), tr("{what}: {demand}", what=shown.line.quantity, demand=shown.line.demand)),
        Fact(tr("Else"), f"{shown.line.otherwise} ({shown.missing})"),
        Fact(tr("Uses"), shown.purposes),
        Fact(tr("Speaks of"), ", ".join(shown.kinds)),
        Fact(tr("Club"), _club_words(shown)),
        Fact(tr("Source"), shown.source),
        Fact(tr("Certainty"), shown.certainty),
        Fact(tr("Since"), show_day(shown.since)),
    ]
    return [line for line in lines if line.text]


def _club_words(shown: RuleShown) -> str:
    if not shown.line.club:
        return ""
    direction = tr("loosened") if shown.line.loosened else tr("made stricter")
    return tr("{direction}: {club}. {why}", direction=direction, club=shown.line.club, why=shown.club_why)


def _beside(expected: str, found: str) -> str:
    return "" if expected == found else tr("packaged rulebook: {outcome}", outcome=expected)


@rules.command()
@click.argument("file", type=click.Path(path_type=Path))
def check(file: Path) -> int:
    """Check FILE, a club's own limits, and say what it would change."""
    found = adopting.check_rulebook(read_bytes(file), file.name)
    for fault in found.faults:
        _say_fault(fault)
    if found.faults:
        click.echo(tr("{count} faults. Nothing was adopted.", count=len(found.faults)))
        return _FAULTS_FOUND
    begins = show_day(found.from_on) if found.from_on else "–"
    click.echo(tr("{title}, {club}, from {day}", title=found.title, club=found.club, day=begins))
    for change in found.changes:
        _say_change(change)
    loosened = sum(one.direction is Direction.LOOSER for one in found.changes)
    click.echo(
        tr(
            "It can be adopted. {count} changes, {loosened} of them looser.",
            count=len(found.changes),
            loosened=loosened,
        )
    )
    return 0


def _say_fault(fault: BookFault) -> None:
    say.paragraph(fault_words(fault), "", "    ")


def _direction(direction: Direction) -> str:
    words = {Direction.STRICTER: tr("stricter"), Direction.SAME: tr("same"), Direction.LOOSER: tr("looser")}
    return words[direction]


def _say_change(change: Change) -> None:
    what = f"{change.part.value} {change.about} {change.key}"
    line = tr(
        "line {line}: {what} {club}, packaged {packaged}: {direction}",
        line=change.line,
        what=what,
        club=change.club,
        packaged=change.packaged,
        direction=_direction(change.direction),
    )
    say.paragraph(line, f"{_LOOSENED if change.direction is Direction.LOOSER else ' '} ", "      ")


@rules.command()
@click.argument("first")
@click.argument("second", default=comparing.CURRENT)
@click.pass_obj
def compare(desk: Desk, first: str, second: str) -> None:
    """Compare two books on every piece: FIRST and SECOND are files, `packaged` or `current`. Nothing is kept.

    One file alone is compared with the book in force.
    """
    names = (second, first) if second == comparing.CURRENT and first != comparing.CURRENT else (first, second)
    office = desk.office()
    books = [comparing.named_book(office, one, _named_body(one)) for one in names]
    compared = comparing.compare_rulebooks(office, *books)
    click.echo(tr("from {first} to {second}", first=compared.first, second=compared.second))
    for piece in compared.pieces:
        _say_piece(piece, office.system)
    _say_counts(compared)


def _named_body(name: str) -> bytes:
    return b"" if name in {comparing.PACKAGED, comparing.CURRENT} else read_bytes(Path(name))


def _say_piece(piece: PieceDiffers, system: System) -> None:
    before, after = piece.before, piece.after
    turns = "; ".join(_turns(piece, before, after, system))
    say.paragraph(f"{piece.tag}  {piece.kind_name}: {turns}", "", "      ")
    for why in piece.because:
        say.paragraph(why, "    – ", "      ")


def _turns(piece: PieceDiffers, before: Standing, after: Standing, system: System) -> list[str]:
    """What differs: the outcome or that of single uses, strength, day."""
    turns = []
    if before.outcome is not after.outcome:
        turns.append(f"{outcome_word(before.outcome)} → {outcome_word(after.outcome)}")
    elif piece.purposes:
        turns += piece.purposes
    if before.now_n != after.now_n:
        turns.append(f"{_force(before.now_n, system)} → {_force(after.now_n, system)}")
    if before.next_due != after.next_due:
        days = [show_day(one.next_due) if one.next_due else "–" for one in (before, after)]
        turns.append(tr("due {before} → {after}", before=days[0], after=days[1]))
    return turns


def _force(value: float | None, system: System) -> str:
    return show(value, Dimension.FORCE, system) if value is not None else tr("not known")


def _say_counts(compared: Compared) -> None:
    click.echo()
    moved = [(one.before.outcome, one.after.outcome) for one in compared.pieces]
    for was in Outcome:
        for now in Outcome:
            if was is not now and (count := moved.count((was, now))):
                click.echo(f"{outcome_word(was)} → {outcome_word(now)}: {count}")
    same = sum(was is now for was, now in moved)
    click.echo(tr("only strength, uses or day: {count}", count=same))
    click.echo(tr("{count} of {all} pieces differ.", count=len(moved), all=compared.piece_count))
    if compared.retires:
        tags = ", ".join(compared.retires)
        say.paragraph(tr("Only the second retires, and a retirement is final: {tags}.", tags=tags))


@rules.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--from", "from_on", default="", help="Day from which it holds, or today; the file's own where none is given."
)
@click.option("--retires", type=int, default=0, help="How many pieces it may retire at once.")
@click.pass_obj
def adopt(desk: Desk, file: Path, from_on: str, retires: int) -> None:
    """Adopt FILE as the club's limits and judge every piece by them."""
    office = desk.office()
    begins = _day(from_on, office.today) if from_on else None
    _say_adopted(adopting.adopt_rulebook(office, read_bytes(file), file.name, begins, retires))


def _day(text: str, today: date) -> date:
    return today if text.strip() == _TODAY else typed.day(text, today)


@rules.command()
@click.option("--from", "from_on", default="", help="Day from which it holds; today where none is given.")
@click.option("--retires", type=int, default=0, help="How many pieces it may retire at once.")
@click.pass_obj
def drop(desk: Desk, from_on: str, retires: int) -> None:
    """Go back to the packaged rulebook and judge every piece by it."""
    office = desk.office()
    _say_adopted(adopting.drop_rulebook(office, _day(from_on, office.today), retires))


def _say_adopted(kept: Adopted) -> None:
    what = tr("The club's rulebook") if kept.text else tr("The packaged rulebook")
    click.echo(
        tr(
            "{what} holds from {day}. Past verdicts keep the rulebook of their day.",
            what=what,
            day=show_day(kept.from_on),
        )
    )
