"""The parts of a trip's page: its head, how ready it is at a glance, what stays and falls due, its vehicles."""

from collections.abc import Iterable, Sequence

from PySide6.QtWidgets import QWidget

from inspector.desk.look import GRID, Look, Type
from inspector.desk.plain import Fold, column, facts, figures, hairline, said
from inspector.desk.record_parts import section
from inspector.desk.tag_lines import Open, judged_line, tag_lines
from inspector.desk.trip_opened import OpenedTrip
from inspector.duties.before_use import why_not
from inspector.duties.plan_rides import ride_words
from inspector.duties.tell_readiness import (
    answer_words,
    days_words,
    due_words,
    judged_for_words,
    mass_words,
    part_words,
    turn_words,
)
from inspector.duties.trip_readiness import FallsDue, Ready, VehicleReady
from inspector.gear.judged import Judged
from inspector.gear.outcome import Outcome
from inspector.gear.trip import ground_words
from inspector.language import show_day, tr, tr_n


def head_part(opened: OpenedTrip) -> QWidget:
    """Name, place, days, ground, who leads and who goes."""
    trip = opened.trip
    names = said(trip.name, Type.DISPLAY)
    where = ", ".join(filter(None, (trip.place, days_words(trip), ground_words(trip.ground))))
    cars = ", ".join(f"{one.vehicle.tag} {one.vehicle.name}" for one in opened.ready.vehicles)
    lines = [
        (tr("Leader"), trip.leader),
        (tr("Who goes"), ", ".join(opened.people)),
        (tr("Vehicles"), cars),
        (tr("Note"), trip.note),
    ]
    answer, told = answer_words(opened.ready, opened.lacks), judged_for_words(opened.ready)
    known = facts([line for line in lines if line[1]])
    return column(
        [names, said(where, Type.HEAD, faint=True), known, said(answer, bold=True), said(told, faint=True)], GRID // 2
    )


def glance_part(opened: OpenedTrip) -> QWidget:
    """The figures that tell at a glance how ready the trip is."""
    ready = opened.ready
    parts = [part.judged.verdict.outcome for one in ready.vehicles for part in one.parts]
    bad = [one for one in parts if one in {Outcome.HOLD, Outcome.RETIRE}]
    warned = [one for one in ready.vehicles if one.warning]
    counted = (
        (len(ready.going), tr_n("piece of the kit goes", "pieces of the kit go", len(ready.going))),
        (len(ready.staying), tr_n("piece stays at home", "pieces stay at home", len(ready.staying))),
        *([(len(ready.gone), tr("not at hand"))] if ready.gone else []),
        (len(opened.lacks), tr_n("need is not met", "needs are not met", len(opened.lacks))),
        (len(_due_tags(ready)), tr_n("piece falls due by then", "pieces fall due by then", len(_due_tags(ready)))),
        (
            len(bad),
            tr_n("part on a vehicle is on hold or retired", "parts on vehicles are on hold or retired", len(bad)),
        ),
        (len(warned), tr_n("vehicle carries a warning", "vehicles carry a warning", len(warned))),
    )
    return column([hairline(), figures(counted)])


def _due_tags(ready: Ready) -> set[str]:
    return {one.tag for one in ready.due}


def empty_kit_part(ready: Ready) -> list[QWidget]:
    """What to do where the kit is empty."""
    if ready.trip.kit:
        return []
    return [section(tr("The kit is empty."), said(tr("Press “Propose a kit”: it takes what these vehicles need.")))]


def staying_part(ready: Ready, look: Look, opens: Open) -> list[QWidget]:
    """What stays at home and why; nothing where everything goes."""
    if not ready.staying:
        return []
    lines = [judged_line(one, why_not(one)) for one in ready.staying]
    return [section(tr("Stays at home"), tag_lines(lines, look, opens))]


def away_part(ready: Ready) -> list[QWidget]:
    """What may not be at hand and why; nothing where all of it is."""
    if not ready.away:
        return []
    lines = (said(tr("{tag}: {why}", tag=one.tag, why=one.why)) for one in ready.away)
    return [section(tr("May not be at hand"), *lines)]


def lacks_part(lacks: Sequence[str]) -> list[QWidget]:
    """What the kit lacks for these vehicles."""
    if not lacks:
        return []
    return [section(tr("Missing in the kit"), *(said(one) for one in lacks))]


def due_part(ready: Ready, look: Look, opens: Open) -> list[QWidget]:
    """What falls due, and what is judged otherwise then than today."""
    made: list[QWidget] = []
    if ready.due:
        lines = [(None, one.tag, (said(_due(one)), said(one.kind_name, Type.SMALL, faint=True))) for one in ready.due]
        made.append(section(tr("Falls due before or during the trip"), tag_lines(lines, look, opens)))
    if ready.turning:
        made.append(section(tr("Changes between today and then"), *(said(turn_words(one)) for one in ready.turning)))
    return made


def _due(one: FallsDue) -> str:
    return tr("{day}: {what}", day=show_day(one.on), what=due_words(one))


def going_part(ready: Ready, look: Look, opens: Open) -> list[QWidget]:
    """What goes, folded away."""
    if not ready.going:
        return []
    lines = [judged_line(one, _goes_as(ready, one)) for one in ready.going]
    title = tr("Goes ({count})", count=len(lines))
    return [column([hairline(), Fold(title, lambda: tag_lines(lines, look, opens))])]


def _goes_as(ready: Ready, one: Judged) -> str:
    """What it may be used for, and where it rides."""
    tag = one.dossier.item.tag
    rides = ride_words(ready.trip, tag, ready.sits.get(tag, ""), ready.lies.get(tag, ""))
    return tr("Use: {line}. {rides}.", line=one.explanation.use_line, rides=rides)


def vehicles_part(vehicles: Iterable[VehicleReady], look: Look, opens: Open) -> list[QWidget]:
    """Each vehicle with what sits on it, front to rear."""
    return [_vehicle(one, look, opens) for one in vehicles]


def _vehicle(one: VehicleReady, look: Look, opens: Open) -> QWidget:
    parts: list[QWidget] = [said(mass_words(one.vehicle), faint=True)]
    parts += [said(one.warning, bold=True)] if one.warning else []
    if one.parts:
        lines = [judged_line(part.judged, part_words(part), part.place) for part in one.parts]
        parts.append(tag_lines(lines, look, opens))
    else:
        parts.append(said(tr("No part is written down for it, so nothing on it is known to be sound.")))
        parts.append(said(tr("Write down what is fitted on the page of the vehicles."), faint=True))
    return section(f"{one.vehicle.tag}  {one.vehicle.name}", *parts)
