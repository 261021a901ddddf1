"""Commands for what goes out and comes back: lending, returning, who has what, and the trip told afterwards."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

import click

from inspector.cli import say, typed
from inspector.cli.wiring import Desk, choice
from inspector.duties import look_up
from inspector.duties.debrief import debrief as keep_debrief
from inspector.duties.debrief_files import read_debrief
from inspector.duties.give_back import give_back, give_back_kit
from inspector.duties.lend import lend as lend_pieces
from inspector.duties.lend import lend_kit, loans
from inspector.duties.office import Office
from inspector.duties.record_use import MOST_DAYS
from inspector.duties.typed_tables import decoded
from inspector.duties.went_through import ToldBack, went_through
from inspector.duties.work_rigs import shares_of
from inspector.gear.custody import Loan, WentThrough
from inspector.gear.judged import Judged
from inspector.gear.use import Event, Weather
from inspector.language import show_day, tr, tr_n
from inspector.refused import Refused
from inspector.units import Dimension, read

Command = TypeVar("Command", bound=Callable[..., Any])


@click.command()
@click.argument("tags", nargs=-1)
@click.option("--to", "holder", required=True, help="Who gets them: a person of the register.")
@click.option("--due", default="", help="Day they are to be back; the trip's last day where none is given.")
@click.option("--trip", default="", help="The trip they go on; with no TAGS its whole kit goes out.")
@click.option("--note", default="")
@click.pass_obj
def lend(desk: Desk, tags: tuple[str, ...], holder: str, due: str, trip: str, note: str) -> None:
    """Hand out the pieces TAGS, all of them or none, or the whole kit of a trip."""
    office = desk.office()
    day = typed.day(due, office.today) if due else None
    if trip and not tags:
        lent = lend_kit(office, trip, holder, day, note)
    else:
        lent = lend_pieces(office, tags, holder, day, trip, note)
    _say_loans(office, lent)
    for one in lent:
        _say_limits(office, one)


def _say_limits(office: Office, loan: Loan) -> None:
    """What whoever takes the piece must know: what it may be used for, and what falls due meanwhile."""
    words = look_up.open_item(office, loan.tag).explanation
    say.paragraph(tr("{tag}: {use}", tag=loan.tag, use=words.use_line), "  ", "      ")
    if loan.look_due:
        told = tr("An inspection or reading falls due on {day}, before it is to be back.", day=show_day(loan.look_due))
        say.paragraph(told, "      ")


def _say_loans(office: Office, lent: tuple[Loan, ...]) -> None:
    head = (tr("Tag"), tr("Kind"), tr("Holder"), tr("Since"), tr("Due"), tr("Trip"), "")
    say.table(head, [_cells(one, office.today) for one in lent])


def _cells(loan: Loan, today: date) -> tuple[str, ...]:
    days = loan.overdue_days(today)
    late = tr_n("{count} day overdue", "{count} days overdue", days) if days else ""
    due = show_day(loan.due) if loan.due else "–"
    return loan.tag, loan.kind_name, loan.holder, show_day(loan.since), due, loan.trip or "–", late


def _weather_options(command: Command) -> Command:
    """An option for each weather: how many days of it, up to the day it came back."""
    for weather in reversed(Weather):
        name = weather.value
        told = click.IntRange(1, MOST_DAYS)
        command = click.option(f"--{name}", type=told, help=f"Days of {name} while it was out.")(command)
    return command


@click.command(name="return")
@click.argument("tags", nargs=-1)
@click.option("--by", required=True, help="Who brought them and tells what happened.")
@click.option("--trip", default="", help="Take back all that is out for this trip.")
@click.option("--but", "stay_out", multiple=True, help="With --trip: a piece that was not brought; may be given again.")
@click.option("--on", default="", help="Day they came back; today where none is given.")
@click.option("--pulls", type=int, help="Pulls each bore; 0 for none.")
@click.option("--event", type=choice(Event), help="What happened beyond an ordinary pull.")
@_weather_options
@click.option("--hottest", default="", help='Greatest temperature of a heat, "95 °C".')
@click.option("--rinsed/--not-rinsed", default=None)
@click.option("--dried/--not-dried", default=None)
@click.option("--no-weather", is_flag=True, help="No salt, mud, sun, heat, chemicals or frost reached them.")
@click.option("--nothing-happened", is_flag=True, help="No pulls, no event and no weather, in the bringer's own words.")
@click.option("--note", default="")
@click.pass_obj
def return_command(desk: Desk, /, tags: tuple[str, ...], by: str, trip: str, on: str, **more: Any) -> None:
    """Take back the pieces TAGS, or a trip's whole kit. What is not told about them holds them until a look."""
    office = desk.office()
    day = typed.day(on, office.today)
    told = _told(day, more)
    if bool(tags) == bool(trip) or (more["stay_out"] and not trip):
        why = tr("Either pieces are named by their tags, or a trip by --trip, with --but for what was not brought.")
        raise Refused(tr("return"), why, tr("Write the tags, or --trip."))
    if tags:
        with office.book.together():
            outcomes = [give_back(office, tag, by, told, day, more["note"]) for tag in tags]
    else:
        outcomes = list(_kit(office, trip, by, told, day, more))
    _say_outcomes(outcomes)


def _kit(office: Office, trip: str, by: str, told: WentThrough, day: date, more: dict[str, Any]) -> tuple[Judged, ...]:
    return give_back_kit(office, trip, by, told, stay_out=more["stay_out"], on=day, note=more["note"])


def _told(day: date, said: dict[str, Any]) -> WentThrough:
    """What the options tell; what they leave out stays untold."""
    hot = said["hottest"]
    told = ToldBack(
        pulls=said["pulls"],
        event=Event(said["event"] or Event.NONE),
        days={one: said[one.value] for one in Weather if said[one.value]},
        hottest=read(hot, Dimension.TEMPERATURE, field=tr("hottest")) if hot else None,
        rinsed=said["rinsed"],
        dried=said["dried"],
        nothing=said["nothing_happened"],
        no_weather=said["no_weather"],
    )
    return went_through(told, day)


def _say_outcomes(outcomes: list[Judged]) -> None:
    """One piece in full, several in short; the cautions stand once."""
    if len(outcomes) == 1:
        say.verdict_in_full(outcomes[0])
        return
    for one in outcomes:
        say.paragraph(f"{one.dossier.item.tag}  {one.explanation.headline}", "  ", "      ")
    if outcomes:
        say.cautions(outcomes[0])


@click.command(name="loans")
@click.pass_obj
def loans_command(desk: Desk) -> None:
    """Tell who has what since when, what is overdue at the head."""
    office = desk.office()
    out = loans(office)
    if not out:
        click.echo(tr("Nothing is out."))
        return
    _say_loans(office, out)


@click.command()
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.pass_obj
def debrief(desk: Desk, file: Path) -> None:
    """Keep what FILE tells of a trip: the rigs used, their pulls, jerks and near misses, logged on every piece."""
    office = desk.office()
    kept = keep_debrief(office, read_debrief(office, decoded(file.read_bytes(), file.name)), shares_of(office))
    facts = kept.debrief.facts
    click.echo(tr("Trip {ref} was told on {day}.", ref=facts.trip, day=show_day(facts.on)))
    for tag in kept.destroyed:
        click.echo(tr("{tag} was made unusable since; its pulls stand in the debrief alone.", tag=tag))
    _say_outcomes(list(kept.pieces))
