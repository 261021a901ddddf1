"""Sentences of the ledger about vehicles, trips, rigs, and who has what."""

from inspector.duties.ledger_line import Line, Sentence, listed, on_day, said
from inspector.gear.changes import NewTripChange, NewVehicleChange
from inspector.gear.custody import NewCustody, WentThrough
from inspector.gear.debrief import NewDebrief
from inspector.gear.item import NewItem
from inspector.gear.papers import SheetScope
from inspector.gear.rig import Rig
from inspector.gear.trip import Ride, Trip, Vehicle
from inspector.language import show_day, tr, tr_n
from inspector.register.rows import from_facts


def _vehicle(line: Line) -> str:
    car = line.whole(Vehicle)
    return tr("{who} wrote the vehicle {tag}, {name}, into the register.", who=line.who, tag=car.tag, name=car.name)


def _vehicle_changed(line: Line) -> str:
    change = line.shape("as", NewVehicleChange)
    return tr(
        "{name} changed what is written of the vehicle {tag} from {day} on{why}.",
        name=line.name(change.by),
        tag=line.text("tag"),
        day=show_day(change.on),
        why=said(change.why),
    )


def _planned(line: Line) -> str:
    trip = line.whole(Trip)
    return tr(
        "{who} planned the trip {ref}, {name}, from {first} to {last}, with a kit of {count}.",
        who=line.who,
        ref=trip.ref,
        name=trip.name,
        first=show_day(trip.first_on),
        last=show_day(trip.last_on),
        count=_pieces(len(trip.kit)),
    )


def _replanned(line: Line) -> str:
    change = line.shape("as", NewTripChange)
    return tr(
        "{name} changed the plan of the trip {ref}{why}. Its kit is {count} since.",
        name=line.name(change.by),
        ref=line.text("ref"),
        why=said(change.why),
        count=_pieces(len(change.trip.kit)),
    )


def _rides_planned(line: Line) -> str:
    change = line.shape("as", NewTripChange)
    told = [from_facts(one, Ride) for one in line.many("rides")]
    by_vehicle = {one.vehicle: [each.tag for each in told if each.vehicle == one.vehicle] for one in told}
    said_of = [_on_vehicle(vehicle, tags) for vehicle, tags in by_vehicle.items()]
    return tr(
        "{name} planned what rides where on the trip {ref}: {rides}{why}.",
        name=line.name(change.by),
        ref=line.text("ref"),
        rides="; ".join(said_of),
        why=said(change.why),
    )


def _on_vehicle(vehicle: str, tags: list[str]) -> str:
    if vehicle:
        return tr("{tags} on {vehicle}", tags=listed(tags), vehicle=vehicle)
    return tr("{tags} on no vehicle", tags=listed(tags))


def _visited(line: Line) -> str:
    piece = line.shape("as", NewItem)
    return tr(
        "{who} took {tag} ({kind}), {owner}'s own, along on the trip {ref} alone.",
        who=line.who,
        tag=piece.tag,
        kind=line.kind(piece.kind),
        owner=piece.owner,
        ref=line.text("trip"),
    )


def _pieces(count: int) -> str:
    return tr_n("{count} piece", "{count} pieces", count)


def _lent(line: Line) -> str:
    hands = line.shape("as", NewCustody)
    back = tr(", to be back by {day}", day=on_day(hands.due)) if hands.due else ""
    return tr(
        "{name} lent {tags} to {holder}{back}{trip}{note}.",
        name=line.name(hands.by),
        tags=listed(line.texts("tags")),
        holder=line.name(hands.holder),
        back=back,
        trip=_for_trip(hands.trip),
        note=said(hands.note),
    )


def _for_trip(ref: str) -> str:
    return tr(", for the trip {ref}", ref=ref) if ref else ""


def _brought(line: Line) -> str:
    entries = [from_facts(one["as"], NewCustody) for one in line.many("pieces")]
    told = [from_facts(one["told"], WentThrough) for one in line.many("pieces")]
    tags = [str(one["tag"]) for one in line.many("pieces")]
    untold = [tag for tag, entry in zip(tags, entries, strict=True) if entry.untold]
    went = sum(len(one.uses or ()) + len(one.exposures or ()) for one in told)
    back = tr(
        "{name} brought back {tags} on {day}{trip}{went}.",
        name=line.name(entries[0].by),
        tags=listed(tags),
        trip=tr(", from the trip {ref}", ref=entries[0].trip) if entries[0].trip else "",
        day=show_day(entries[0].on),
        went=tr_n(", with one use or exposure told", ", with {count} uses or exposures told", went) if went else "",
    )
    silent = tr("Of {tags} nobody told all of it.", tags=listed(untold)) if untold else ""
    return f"{back} {silent}".strip()


def _debriefed(line: Line) -> str:
    told = line.shape("as", NewDebrief)
    tags = sorted({str(one["tag"]) for one in line.many("uses")})
    said_of = tr_n("one rig", "{count} rigs", len(told.rigs))
    return tr(
        "{name} told of the trip {ref}: {rigs}; pulls were logged of {tags}.",
        name=line.name(told.by),
        ref=line.text("trip"),
        rigs=said_of,
        tags=listed(tags),
    )


def _rig_kept(line: Line) -> str:
    rig = line.shape("as", Rig)
    return tr("{who} kept the rig {ref}, {name}.", who=line.who, ref=line.text("ref"), name=rig.name)


def _rig_printed(line: Line) -> str:
    return tr(
        "{who} printed the rig sheet {number} of {rig}{trip}.",
        who=line.who,
        number=line.text("number"),
        rig=line.text("rig"),
        trip=_for_trip(line.text("trip")),
    )


def _sheet_printed(line: Line) -> str:
    scope = from_facts(line.facts.get("of", {}), SheetScope)
    of = tr(", for {vehicle}", vehicle=scope.vehicle) if scope.vehicle else ""
    of = tr(", for what rides on no vehicle") if scope.is_rest else of
    return tr(
        "{who} printed the inspection sheet {number} of the trip {ref}{of}.",
        who=line.who,
        number=line.text("number"),
        ref=line.text("trip"),
        of=of,
    )


def _handout_printed(line: Line) -> str:
    tag = line.text("tag")
    return tr(
        "{who} printed the handout {number}, {title}{piece}.",
        who=line.who,
        number=line.text("number"),
        title=line.text("title"),
        piece=tr(", with figures of {tag}", tag=tag) if tag else "",
    )


SENTENCES: dict[str, Sentence] = {
    "add vehicle": _vehicle,
    "change vehicle": _vehicle_changed,
    "plan trip": _planned,
    "visit": _visited,
    "change trip": _replanned,
    "plan rides": _rides_planned,
    "lend": _lent,
    "take back": _brought,
    "take back kit": _brought,
    "debrief": _debriefed,
    "keep rig": _rig_kept,
    "print rig sheet": _rig_printed,
    "print sheet": _sheet_printed,
    "print handout": _handout_printed,
}
