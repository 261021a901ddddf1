"""Commands for vehicles and for the parts that sit on them."""

from collections.abc import Callable
from typing import Any

import click
from msgspec.structs import replace

from inspector.cli import say, typed
from inspector.cli.wiring import Desk
from inspector.duties import look_up
from inspector.duties.fit_parts import fit_part, take_off_part
from inspector.duties.keep_vehicles import add_vehicle, change_vehicle, overload_words, vehicle_fields
from inspector.duties.office import Office
from inspector.duties.overtaken import Noted
from inspector.duties.vehicle_record import Part, vehicle_record
from inspector.gear.fitting import End, Fitted, Side
from inspector.gear.lists import HistoryRow
from inspector.gear.trip import Vehicle
from inspector.gear.verdict import Fact
from inspector.language import show_day, tr
from inspector.units import Dimension, Figure, read

UNKNOWN = "unknown"
_SPACING = "Between the middles of its two recovery points at that end, for example 0.85 m."

ENDS = click.Choice([one.value for one in End if one])
SIDES = click.Choice([one.value for one in Side if one])


@click.group()
def vehicle() -> None:
    """Vehicles: what they weigh, and what sits on them."""


@vehicle.command()
@click.argument("tag")
@click.option("--name", required=True, help="What it is, for example medium wagon, grey.")
@click.option("--owner", default="")
@click.option("--gvm", required=True, help='Greatest laden mass on its plate, for example "2700 kg".')
@click.option("--mass", default="", help="As it stands on the day, weighed.")
@click.option("--front-spacing", default="", help=_SPACING)
@click.option("--rear-spacing", default="", help=_SPACING)
@click.option("--note", default="")
@click.pass_obj
def add(desk: Desk, /, tag: str, name: str, owner: str, gvm: str, mass: str, **more: str) -> None:
    """Enter a vehicle under TAG."""
    office = desk.office()
    kept = add_vehicle(
        office,
        tag,
        name,
        owner,
        read(gvm, Dimension.MASS, field=tr("GVM"), decimal=office.decimal),
        _figure(office, mass, Dimension.MASS, tr("mass")),
        note=more["note"],
        front_spacing=_figure(office, more["front_spacing"], Dimension.LENGTH, tr("front spacing")),
        rear_spacing=_figure(office, more["rear_spacing"], Dimension.LENGTH, tr("rear spacing")),
    )
    _say_vehicle(kept)


def _figure(office: Office, text: str, dimension: Dimension, field: str) -> Figure | None:
    """The figure; None where nothing was typed."""
    return read(text, dimension, field=field, decimal=office.decimal) if text else None


@vehicle.command()
@click.argument("tag")
@click.option("--why", required=True, help="What happened, for example weighed with the canopy.")
@click.option("--on", default="", help="The day from which it holds; today where none is given.")
@click.option("--by", default="", help="Who says so; the officer where nobody is named.")
@click.option("--name")
@click.option("--owner")
@click.option("--gvm", help="After an upgrade, as on the new plate.")
@click.option("--mass", help=f"Weighed anew; {UNKNOWN} where nobody knows it any more.")
@click.option("--front-spacing", help=_SPACING)
@click.option("--rear-spacing", help=_SPACING)
@click.option("--note")
@click.pass_obj
def change(desk: Desk, /, tag: str, why: str, on: str, by: str, **given: str | None) -> None:
    """Write down what changed of the vehicle TAG; what stood before stays in its history."""
    office = desk.office()
    day = typed.day(on, office.today)
    edit = Noted(_edit(office, given), vehicle_fields())
    kept = change_vehicle(office, tag, edit, why, on=day, by=by)
    _say_vehicle(kept)
    for line in edit.words(kept):
        click.echo(line)


def _edit(office: Office, given: dict[str, str | None]) -> Callable[[Vehicle], Vehicle]:
    """The change of those facts that were typed."""
    figures = {"gvm": Dimension.MASS, "mass": Dimension.MASS}
    figures |= {"front_spacing": Dimension.LENGTH, "rear_spacing": Dimension.LENGTH}
    fields = {"gvm": tr("GVM"), "mass": tr("mass")}
    fields |= {"front_spacing": tr("front spacing"), "rear_spacing": tr("rear spacing")}
    new: dict[str, Any] = {}
    for key, text in given.items():
        if text is None:
            continue
        if key not in figures:
            new[key] = text
        elif text == UNKNOWN and key != "gvm":
            new[key] = None
        else:
            new[key] = read(text, figures[key], field=fields[key], decimal=office.decimal)
    return lambda stands: replace(stands, **new)


@vehicle.command()
@click.argument("tag")
@click.pass_obj
def show(desk: Desk, tag: str) -> None:
    """Show the vehicle TAG: its facts, its parts with their verdicts, its history."""
    record = vehicle_record(desk.office(), tag)
    say.heading(f"{record.vehicle.tag} · {record.vehicle.name}")
    say.facts(_facts(record.vehicle))
    if record.warning:
        click.echo()
        say.paragraph(record.warning, "  ")
    say.heading(tr("Parts"))
    if record.parts:
        head = (tr("Place"), tr("Tag"), tr("Kind"), tr("Next due"), tr("Verdict"))
        say.table(head, [_part(one) for one in record.parts])
        for one in record.parts:
            say.paragraph(f"{one.row.tag}: {' '.join(one.tells)}", "  · ", "    ")
    else:
        click.echo(tr("No part is written down for it. Use `inspector fit`."))
    say.heading(tr("History"))
    say.table((tr("Day"), tr("What"), ""), [history_cells(row) for row in record.history])


def _facts(shown: Vehicle) -> list[Fact]:
    unknown = tr("not known")
    facts = [
        Fact(tr("Owner"), shown.owner),
        Fact(tr("GVM"), shown.gvm.as_typed),
        Fact(tr("Mass"), shown.mass.as_typed if shown.mass else unknown),
        Fact(tr("Front points apart"), shown.front_spacing.as_typed if shown.front_spacing else unknown),
        Fact(tr("Rear points apart"), shown.rear_spacing.as_typed if shown.rear_spacing else unknown),
        Fact(tr("Note"), shown.note),
    ]
    return [one for one in facts if one.text]


def _part(part: Part) -> tuple[str, ...]:
    row = part.row
    due = show_day(row.next_due) if row.next_due else "–"
    return part.place or "–", row.tag, row.kind_name, due, row.headline


def history_cells(row: HistoryRow) -> tuple[str, ...]:
    """A line of a history: day, what, and the rest with who did it."""
    return show_day(row.on), row.what, f"{row.text} ({row.by})" if row.by else row.text


def _say_vehicle(kept: Vehicle) -> None:
    say.heading(f"{kept.tag} · {kept.name}")
    say.facts(_facts(kept))
    if warning := overload_words(kept):
        say.paragraph(warning, "  ")


@vehicle.command(name="list")
@click.pass_obj
def list_vehicles(desk: Desk) -> None:
    """List the vehicles."""
    rows = [
        (one.tag, one.gvm.as_typed, one.mass.as_typed if one.mass else "–", one.owner, _named(one))
        for one in look_up.vehicles(desk.office())
    ]
    say.table((tr("Tag"), tr("GVM"), tr("Mass"), tr("Owner"), tr("Vehicle")), rows)


def _named(one: Vehicle) -> str:
    return tr("{name} (overloaded)", name=one.name) if overload_words(one) else one.name


@click.command()
@click.argument("tag")
@click.argument("vehicle_tag", metavar="VEHICLE")
@click.option("--end", type=ENDS, default=None, help="Which end of the vehicle.")
@click.option("--side", type=SIDES, default=None, help="Which side, as the driver sees it.")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--by", default="", help="Who fitted it; the officer where nobody is named.")
@click.option("--note", default="")
@click.pass_obj
def fit(desk: Desk, /, tag: str, vehicle_tag: str, end: str | None, side: str | None, **more: str) -> None:
    """Write down that the part TAG sits on VEHICLE."""
    office = desk.office()
    to = Fitted(vehicle_tag, End(end or ""), Side(side or ""))
    day = typed.day(more["on"], office.today)
    outcome = fit_part(office, tag, to, on=day, by=more["by"], note=more["note"])
    say.verdict_in_full(outcome)


@click.command()
@click.argument("tag")
@click.option("--on", default="", help="The day; today where none is given.")
@click.option("--by", default="", help="Who took it off; the officer where nobody is named.")
@click.option("--note", default="")
@click.pass_obj
def unfit(desk: Desk, tag: str, on: str, by: str, note: str) -> None:
    """Write down that the part TAG was taken off its vehicle."""
    office = desk.office()
    say.verdict_in_full(take_off_part(office, tag, on=typed.day(on, office.today), by=by, note=note))
