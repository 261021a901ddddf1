"""Whether a rig holds together before it is kept: parts, vehicles, angles, figures. Its loads are another matter."""

import math
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from itertools import pairwise

from msgspec.structs import replace

from inspector.duties.plain_lines import check_line
from inspector.gear.fitting import Fitted, NewFitting
from inspector.gear.item import Item
from inspector.gear.rig import GROUND, LooseEnd, Method, Rig
from inspector.language import tr
from inspector.refused import Refused
from inspector.register.page import Page
from inspector.rulebook.load import Rulebook
from inspector.rulebook.rigs.resistance import scale_of
from inspector.units import Figure

RECEIVER, BAR = "hitch_receiver", "tow_bar"
_IN_THE_GROUND = {LooseEnd.TREE, LooseEnd.GROUND_ANCHOR}
_MOST_PARTS = 60
_MOST_LAYERS = 30
_MOST_DRIVE_RATIO = 2.0
_RIGHT_ANGLE = math.pi / 2


def known_parts(page: Page, rig: Rig, rules: Rulebook) -> Rig:
    """The rig with each tag as the register writes it; refused where it does not hold together."""
    check_form(rig)
    _check_words(rig, rules)
    vehicles = {one.tag.casefold(): one.tag for one in page.vehicles()}
    written = {tag: _part(page, tag, vehicles) for tag in rig.tags}
    known = replace(_rewritten(rig, written), dampers=tuple(page.item(tag).tag for tag in rig.dampers))
    known = replace(known, bogged=_vehicle(vehicles, rig.bogged, tr("bogged")))
    if rig.pulling:
        known = replace(known, pulling=_vehicle(vehicles, rig.pulling, tr("pulling")))
    trips = {one.ref.casefold(): one.ref for one in page.trips()}
    if rig.trip and rig.trip.casefold() not in trips:
        raise _refused(tr("trip"), tr("No trip has the reference “{ref}”.", ref=rig.trip), trips.values())
    known = replace(known, trip=trips[rig.trip.casefold()] if rig.trip else "")
    check_form(known)  # two spellings of one tag are one part
    return known


def pieces_of(page: Page, rig: Rig) -> tuple[Item, ...]:
    """The pieces of the register in it, each once, with what is laid over the line; loose ends are none."""
    return tuple(page.item(tag) for tag in dict.fromkeys((*rig.tags, *rig.dampers)) if "@" not in tag)


def pulled_with(page: Page, rig: Rig, on: date) -> tuple[Item, ...]:
    """The pieces in it, and the tow bars that its receivers may have hung on that day: those bear the pull unnamed."""
    return with_bars(page, pieces_of(page, rig), on)


def with_bars(page: Page, named: tuple[Item, ...], on: date) -> tuple[Item, ...]:
    """These pieces, and the tow bars that the receivers among them may have hung on that day."""
    if not any(item.facts.kind == RECEIVER for item in named):
        return named
    places = {item: _place_on(item, moves, on) for item, moves in page.all_fittings()}
    carried = [place for item in named if item.facts.kind == RECEIVER and (place := places.get(item))]
    bars = [
        item
        for item, place in places.items()
        if item.facts.kind == BAR and place and any(place.may_share_end(one) for one in carried)
    ]
    return tuple(dict.fromkeys((*named, *bars)))


def sat_on(item: Item, moves: Iterable[NewFitting], on: date) -> tuple[Fitted, ...]:
    """Every place where a piece sat at any time of a day: where the day found it, and where it was put on that day."""
    before = [one.to for one in moves if one.on < on]
    that_day = [one.to for one in moves if one.on == on]
    found = (before[-1] if before else item.facts.fitted, *that_day)
    return tuple(dict.fromkeys(place for place in found if place))


def _place_on(item: Item, moves: tuple[NewFitting, ...], on: date) -> Fitted | None:
    """Where a piece sat on a day; what was fitted or taken off that day itself counts both ways as it stood last."""
    until = [one.to for one in moves if one.on <= on]
    return until[-1] if until else item.facts.fitted


def _check_words(rig: Rig, rules: Rulebook) -> None:
    """Refuse a joint or a scale that the rulebook does not know."""
    scale_of(rig.conditions.scale)
    known = list(dict.fromkeys(one.key for one in rules.joints))
    for joint in rig.joints:
        if joint.how not in known:
            raise _refused("joint.how", tr("“{how}” is no joint.", how=joint.how), known)


def check_form(rig: Rig) -> None:
    """Refuse what no register is needed to see: no name, no runs, an angle at a part that the rig does not have."""
    _check_ends(rig)
    if not rig.runs or any(len(run) < 2 for run in rig.runs):
        why = tr("A run joins at least two parts, and a rig has at least one run.")
        raise Refused(tr("runs"), why, tr("Write the tags in the order in which they are joined."))
    if len(rig.tags) > _MOST_PARTS:
        why = tr("It has more than {most} parts.", most=_MOST_PARTS)
        raise Refused(tr("runs"), why, tr("Write one rig at a time."))
    for run in rig.runs:
        for tag in run:
            if not tag.strip() or tag != tag.strip():
                raise Refused(tr("runs"), tr("“{tag}” is no tag.", tag=tag), tr("Write it as it stands on the piece."))
        for one, other in pairwise(run):
            if one == other:
                raise Refused(tr("runs"), tr("{tag} is joined to itself.", tag=one), tr("Name it once in a row."))
    for tag in rig.dampers:
        if tag in rig.tags or rig.dampers.count(tag) > 1:
            why = tr("{tag} stands there twice.", tag=tag)
            raise Refused(tr("dampers"), why, tr("Name what is laid over the line once, and in no run."))
    _check_angles(rig)
    _check_joints(rig)
    for field, figure, most in _figures(rig):
        _check_figure(field, figure, most)
    if rig.conditions.layers is not None and not 0 <= rig.conditions.layers <= _MOST_LAYERS:
        why = tr("A drum holds 0 to {most} layers.", most=_MOST_LAYERS)
        raise Refused("conditions.layers", why, tr("Write how many layers are left on it."))


def _check_ends(rig: Rig) -> None:
    if not rig.name.strip():
        raise Refused(tr("name"), tr("It is empty."), tr("Give the rig a name that people will know it by."))
    check_line(tr("name"), rig.name)
    if not rig.bogged.strip():
        raise Refused(tr("bogged"), tr("It is empty."), tr("Write the tag of the stuck vehicle."))
    if not rig.pulling.strip() and rig.method is not Method.WINCH:
        why = tr("Only a winch on the stuck vehicle itself pulls without another one.")
        raise Refused(tr("pulling"), why, tr("Write the tag of the vehicle that pulls."))
    if rig.pulling == rig.bogged:
        why = tr("{tag} cannot pull itself out.", tag=rig.bogged)
        raise Refused(tr("pulling"), why, tr("Leave it empty where the winch is on the stuck vehicle."))


def _check_angles(rig: Rig) -> None:
    at = [one.at for one in rig.angles]
    for tag in at:
        if tag not in rig.tags:
            why = tr("{tag} is no part of the rig.", tag=tag)
            raise Refused(f"angles.{tag}", why, tr("Use one of: {parts}.", parts=", ".join(rig.tags)))
        if at.count(tag) > 1:
            raise Refused(f"angles.{tag}", tr("It stands there twice."), tr("Write one angle for each part."))


def _check_joints(rig: Rig) -> None:
    pairs = [frozenset(pair) for run in rig.runs for pair in pairwise(run)]
    named = [frozenset((joint.one, joint.other)) for joint in rig.joints]
    for joint, pair in zip(rig.joints, named, strict=True):
        if pair not in pairs:
            why = tr("{one} and {other} are not joined in any run.", one=joint.one, other=joint.other)
            raise Refused("joint", why, tr("Name two parts that stand side by side in a run."))
        if named.count(pair) > 1:
            why = tr("{one} and {other} stand there twice.", one=joint.one, other=joint.other)
            raise Refused("joint", why, tr("Name how they are joined once."))
        if not joint.how.strip():
            raise Refused("joint.how", tr("It is empty."), tr("Write how the two are joined, or leave the joint out."))


def _figures(rig: Rig) -> Iterator[tuple[str, Figure | None, float]]:
    """Each figure with its field and the most it can be."""
    known = rig.conditions
    yield "conditions.slope", known.slope, _RIGHT_ANGLE
    yield "conditions.speed", known.speed, math.inf
    yield "conditions.slack", known.slack, math.inf
    yield "conditions.drive", known.drive, _MOST_DRIVE_RATIO
    for one in rig.angles:
        yield f"angles.{one.at}", one.figure, 2 * _RIGHT_ANGLE


def _check_figure(field: str, figure: Figure | None, most: float) -> None:
    if figure is not None and not 0 <= figure.si <= most * (1 + 1e-9):
        why = tr("{figure} cannot be.", figure=figure.as_typed)
        raise Refused(field, why, tr("Write the figure as it was measured or planned."))


def _part(page: Page, tag: str, vehicles: Mapping[str, str]) -> str:
    """The part as the register writes it: the tag of a piece, or a loose end with what it stands on."""
    word, at, stands_on = tag.partition("@")
    if not at:
        return page.item(tag).tag
    if word not in set(LooseEnd):
        why = tr("“{word}” is no loose end.", word=word)
        raise _refused(tr("runs"), why, [one.value for one in LooseEnd])
    end = LooseEnd(word)
    if (end in _IN_THE_GROUND) != (stands_on == GROUND):
        why = tr("“{tag}”: that does not stand there.", tag=tag)
        what = tr(
            "A tree or a ground anchor stands in the ground (tree@ground); the others are on a vehicle, by its tag."
        )
        raise Refused(tr("runs"), why, what)
    return tag if stands_on == GROUND else f"{word}@{_vehicle(vehicles, stands_on, tr('runs'))}"


def _vehicle(vehicles: Mapping[str, str], tag: str, field: str) -> str:
    if tag.casefold() not in vehicles:
        raise _refused(field, tr("No vehicle has the tag “{tag}”.", tag=tag), vehicles.values())
    return vehicles[tag.casefold()]


def _refused(field: str, why: str, known: Iterable[str]) -> Refused:
    return Refused(field, why, tr("Use one of: {words}.", words=", ".join(sorted(known)) or tr("none yet")))


def _rewritten(rig: Rig, written: Mapping[str, str]) -> Rig:
    return replace(
        rig,
        runs=tuple(tuple(written[tag] for tag in run) for run in rig.runs),
        angles=tuple(replace(one, at=written[one.at]) for one in rig.angles),
        joints=tuple(replace(one, one=written[one.one], other=written[one.other]) for one in rig.joints),
    )
