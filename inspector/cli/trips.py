"""Commands for trips: plan, change, show whether they are ready, exchange as files."""

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import click
from msgspec.structs import replace

from inspector.cli import say, typed
from inspector.cli.ready import say_lacks, say_ready
from inspector.cli.trip_rigs import pack, pairs
from inspector.cli.vehicles import history_cells
from inspector.cli.wiring import Desk, choice
from inspector.duties import look_up
from inspector.duties.exchange_trip import export_trip, import_trip
from inspector.duties.named_files import read_bytes, write_new
from inspector.duties.office import Office
from inspector.duties.overtaken import Noted
from inspector.duties.plan_rides import plan_rides
from inspector.duties.plan_trip import change_trip, plan_trip, retired_in_kit, trip_fields
from inspector.duties.tell_changes import trip_history
from inspector.duties.trip_readiness import readiness
from inspector.duties.work_rigs import kit_lacks
from inspector.gear.trip import Ground, Trip, ground_words
from inspector.gear.verdict import Fact
from inspector.language import later, show_day, tr
from inspector.refused import Refused

_LISTS = (later("vehicles"), later("kit"), later("people"))


@click.group()
def trip() -> None:
    """Trips: who goes where with what, and whether it is ready."""


trip.add_command(pairs)
trip.add_command(pack)


@trip.command()
@click.argument("ref")
@click.option("--name", required=True, help="What the trip is called.")
@click.option("--place", default="")
@click.option("--ground", type=choice(Ground), required=True, help="What it drives on.")
@click.option("--first", required=True, help="First day.")
@click.option("--last", default="", help="Last day; the first where none is given.")
@click.option("--leader", default="")
@click.option("--person", "people", multiple=True, help="Who goes; may be given again.")
@click.option("--vehicle", "vehicles", multiple=True, help="Tag of a vehicle; may be given again.")
@click.option("--kit", multiple=True, help="Tag of a piece that goes; may be given again.")
@click.option("--note", default="")
@click.pass_obj
def plan(desk: Desk, /, ref: str, ground: str, first: str, last: str, **more: Any) -> None:
    """Plan a trip under the reference REF."""
    office = desk.office()
    begins = typed.day(first, office.today)
    planned = Trip("", ref, ground=Ground(ground), first_on=begins, last_on=typed.day(last, begins), **more)
    _say_kept(office, plan_trip(office, planned))


@trip.command()
@click.argument("ref")
@click.option("--why", default="", help="Why the plan was changed.")
@click.option("--name")
@click.option("--place")
@click.option("--ground", type=choice(Ground))
@click.option("--first")
@click.option("--last")
@click.option("--leader")
@click.option("--note")
@click.option("--add-person", "add_people", multiple=True, help="Who goes as well; may be given again.")
@click.option("--drop-person", "drop_people", multiple=True, help="Who stays at home.")
@click.option("--add-vehicle", "add_vehicles", multiple=True)
@click.option("--drop-vehicle", "drop_vehicles", multiple=True)
@click.option("--add-kit", multiple=True, help="Tag of a piece that goes as well; may be given again.")
@click.option("--drop-kit", multiple=True, help="Tag of a piece that stays at home.")
@click.pass_obj
def change(desk: Desk, /, ref: str, why: str, **given: Any) -> None:
    """Change the plan of the trip REF; the plans before it stay in its history."""
    office = desk.office()
    edit = Noted(_edit(office, given), trip_fields())
    kept = change_trip(office, ref, edit, why)
    _say_kept(office, kept)
    for line in edit.words(kept):
        click.echo(line)


def _edit(office: Office, given: dict[str, Any]) -> Callable[[Trip], Trip]:
    """The change of what was typed: single facts replaced, lists with pieces added and dropped."""
    new: dict[str, Any] = {key: given[key] for key in ("name", "place", "leader", "note") if given[key] is not None}
    if given["ground"]:
        new["ground"] = Ground(given["ground"])
    days = {"first_on": given["first"], "last_on": given["last"]}
    new |= {key: typed.day(text, office.today) for key, text in days.items() if text}
    ids = {one.name: one.id for one in look_up.people(office)}

    def edited(stands: Trip) -> Trip:
        for key in _LISTS:
            drop = [ids.get(one, one) if key == "people" else one for one in given[f"drop_{key}"]]
            new[key] = (*_without(getattr(stands, key), drop, given[f"drop_{key}"], key), *given[f"add_{key}"])
        return replace(stands, **new)

    return edited


def _without(listed: tuple[str, ...], drop: Sequence[str], named: Sequence[str], key: str) -> tuple[str, ...]:
    """The list without what is dropped; refused where it does not stand in it."""
    standing = {one.casefold() for one in listed}
    for one, name in zip(drop, named, strict=True):
        if one.casefold() not in standing:
            why = tr("“{one}” does not stand in it.", one=name)
            raise Refused(tr(key), why, tr("Look at the trip: inspector trip show."))
    gone = {one.casefold() for one in drop}
    return tuple(one for one in listed if one.casefold() not in gone)


def _say_kept(office: Office, kept: Trip) -> None:
    """What was planned, and which of its pieces are retired."""
    say.heading(f"{kept.ref} · {kept.name}")
    say.facts(_facts(office, kept))
    for tag in retired_in_kit(office, kept):
        say.paragraph(tr("{tag} is retired: it stands in the kit and must stay at home.", tag=tag), "  ")


def _facts(office: Office, planned: Trip) -> list[Fact]:
    names = {one.id: one.name for one in look_up.people(office)}
    days = tuple(dict.fromkeys((show_day(planned.first_on), show_day(planned.last_on))))
    facts = [
        Fact(tr("Place"), planned.place),
        Fact(tr("Ground"), ground_words(planned.ground)),
        Fact(tr("Days"), tr("{first} to {last}", first=days[0], last=days[1]) if len(days) > 1 else days[0]),
        Fact(tr("Leader"), planned.leader),
        Fact(tr("People"), ", ".join(names.get(key, key) for key in planned.people)),
        Fact(tr("Vehicles"), ", ".join(planned.vehicles)),
        Fact(tr("Kit"), ", ".join(planned.kit)),
        Fact(tr("Rides"), "; ".join(_riding(planned))),
        Fact(tr("Note"), planned.note),
    ]
    return [one for one in facts if one.text]


@trip.command()
@click.argument("ref")
@click.argument("tags", nargs=-1, required=True)
@click.option("--on", "vehicle", default="", help="Tag of the vehicle that they ride on.")
@click.option("--nowhere", is_flag=True, help="They ride on no vehicle by plan.")
@click.option("--why", default="", help="Why it is planned so.")
@click.pass_obj
def rides(desk: Desk, /, ref: str, tags: tuple[str, ...], vehicle: str, nowhere: bool, why: str) -> None:
    """Plan on which vehicle TAGS of the kit of the trip REF ride."""
    if bool(vehicle.strip()) is nowhere:
        said = tr("It is not clear where they ride.")
        raise Refused(tr("vehicle"), said, tr("Say either --on VEHICLE or --nowhere."))
    office = desk.office()
    _say_kept(office, plan_rides(office, ref, dict.fromkeys(tags, vehicle), why))


@trip.command()
@click.argument("ref", default="next")
@click.pass_obj
def show(desk: Desk, ref: str) -> None:
    """Show the trip REF (or the next one): its plan, whether it is ready, its history."""
    office = desk.office()
    ready = readiness(office, ref)
    say.heading(f"{ready.trip.ref} · {ready.trip.name}")
    say.facts(_facts(office, ready.trip))
    lacks = kit_lacks(office, ready.trip.ref, ready)
    say_ready(ready, lacks)
    say_lacks(lacks)
    say.heading(tr("History"))
    say.table((tr("Day"), tr("What"), ""), [history_cells(row) for row in trip_history(office, ready.trip.ref)])
    if judged := (*ready.going, *ready.staying):
        say.cautions(judged[0])


def _riding(planned: Trip) -> list[str]:
    """What rides on each vehicle by plan."""
    listed = {one: [each.tag for each in planned.rides if each.vehicle == one] for one in planned.vehicles}
    return [tr("{tags} on {vehicle}", tags=", ".join(tags), vehicle=one) for one, tags in listed.items() if tags]


@trip.command(name="list")
@click.pass_obj
def list_trips(desk: Desk) -> None:
    """List the trips."""
    rows = [
        (
            one.ref,
            show_day(one.first_on),
            show_day(one.last_on),
            str(len(one.kit)),
            ", ".join(filter(None, (one.name, one.place))),
        )
        for one in look_up.trips(desk.office())
    ]
    say.table((tr("Ref"), tr("First day"), tr("Last day"), tr("Kit"), tr("Trip")), rows)


@trip.command()
@click.argument("ref")
@click.argument("file", type=click.Path(path_type=Path))
@click.pass_obj
def export(desk: Desk, ref: str, file: Path) -> None:
    """Write the trip REF into the new text file FILE, for another register."""
    write_new(file, export_trip(desk.office(), ref))
    click.echo(str(file))


@trip.command(name="import")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--as", "as_ref", default="", help="Another reference than the one in the file.")
@click.pass_obj
def import_command(desk: Desk, file: Path, as_ref: str) -> None:
    """Plan the trip that stands in FILE."""
    office = desk.office()
    _say_kept(office, import_trip(office, read_bytes(file), file.name, as_ref))
